use super::*;
use crate::store::{OpenOptions, jpeg::tests::photo};

fn book(folder: &Path) -> Store {
    Store::open(folder.join("book.lapwright"), &OpenOptions::default()).unwrap().store
}

#[test]
fn a_photo_is_kept_under_its_contents_and_found_by_a_new_start() {
    let folder = tempfile::tempdir().unwrap();
    let waiting = Id::from_bytes([7; 16]);
    let file = book(folder.path()).photo_begin("key", waiting).unwrap();
    assert!(file.ends_with(format!("incoming/{waiting}.jpg")));
    let mut store = book(folder.path());
    assert_eq!(store.photo_take_in("key", waiting).unwrap(), None, "the camera has not written yet");
    fs::write(&file, &photo()[..40]).unwrap();
    assert_eq!(store.photo_take_in("key", waiting).unwrap(), None, "half a photo is none");
    fs::write(&file, photo()).unwrap();
    let own = store.photo_take_in("key", waiting).unwrap().unwrap();
    assert_eq!(store.draft_get("key").unwrap(), Some(own.to_string()));
    assert_eq!(store.photo(waiting).unwrap(), None);
    let (state, kept) = store.photo_file(own).unwrap().unwrap();
    assert_eq!((state, fs::read(&kept).unwrap()), (PhotoState::Here, photo()));
    assert!(!file.exists());
    fs::remove_file(&kept).unwrap();
    assert_eq!(store.photo_file(own).unwrap().unwrap().0, PhotoState::Missing);
}

#[test]
fn what_is_exported_says_no_place_and_is_the_photo_that_was_taken() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = book(folder.path());
    let waiting = Id::from_bytes([8; 16]);
    fs::write(store.photo_begin("key", waiting).unwrap(), photo()).unwrap();
    let own = store.photo_take_in("key", waiting).unwrap().unwrap();
    let out = folder.path().join("out.jpg");
    store.photo_export(own, &out, Overwrite::Never).unwrap();
    let bytes = fs::read(&out).unwrap();
    assert!(jpeg::is_whole(&bytes) && !bytes.windows(8).any(|part| part == b"40.71280"));
    fs::write(store.photo_file(own).unwrap().unwrap().1, b"another").unwrap();
    assert!(matches!(store.photo_export(own, &out, Overwrite::Never), Err(StoreError::DamagedFile { .. })));
}

#[test]
fn a_photo_that_never_came_leaves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = book(folder.path());
    let waiting = Id::from_bytes([9; 16]);
    let file = store.photo_begin("key", waiting).unwrap();
    fs::write(&file, b"").unwrap();
    store.photo_drop("key", waiting).unwrap();
    assert_eq!((store.photo(waiting).unwrap(), store.draft_get("key").unwrap()), (None, None));
    assert!(!file.exists());
    assert!(matches!(Store::in_memory().unwrap().photo_begin("key", waiting), Err(StoreError::NoFolder)));
}
