use std::fs;
use std::path::Path;

use super::penetration::{hose_bib, lay_out_pole, wall};
use super::*;
use crate::store::{Id, OpenOptions, PhotoState};

const STEP: &str = "look-over";

/// The shortest file that has the frame of a JPEG: tables, one scan, an end.
const JPEG: &[u8] = b"\xFF\xD8\xFF\xDB\0\x03\0\xFF\xDA\0\x03\0\x12\xFF\xD9";

/// A book on a disk with one hose bib.
fn book(folder: &Path) -> (Book, String) {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let bib = hose_bib(&mut book, &wall, &[]);
    let path = folder.join("book.lapwright");
    book.store_mut().copy(&path).unwrap();
    (Book::open(&path, &OpenOptions::default()).unwrap().0, bib)
}

fn photo(book: &mut Book, n: u8, action: PenetrationAction) -> Result<Option<StepPhoto>, Problem> {
    let view: PenetrationView = OfScreen::of(tap(book, n, action)?.view);
    Ok(view.steps.into_iter().find(|line| line.code == STEP).unwrap().photo)
}

fn state(book: &Book, photo: &StepPhoto) -> Option<PhotoState> {
    book.store().photo(photo.photo.parse::<Id>().unwrap()).unwrap()
}

fn begin(bib: &str) -> PenetrationAction {
    PenetrationAction::BeginPhoto { penetration: bib.to_owned(), step: STEP.to_owned() }
}

fn back(bib: &str, closed: bool) -> PenetrationAction {
    PenetrationAction::TakePhotoIn { penetration: bib.to_owned(), step: STEP.to_owned(), closed }
}

fn tick(bib: &str, photo: &str) -> PenetrationAction {
    // Done before the earlier steps, so a reason is asked for.
    let (note, measured) = ("seen by Lea".to_owned(), String::new());
    let said = StepSaid { how: StepHow::Tick, note, measured, photo: Some(photo.to_owned()) };
    PenetrationAction::SignStep { penetration: bib.to_owned(), step: STEP.to_owned(), said }
}

#[test]
fn a_photo_outlives_a_stop_while_the_camera_is_open_and_is_signed_with_the_tick() {
    let folder = tempfile::tempdir().unwrap();
    let (mut book, bib) = book(folder.path());
    let waiting = photo(&mut book, 20, begin(&bib)).unwrap().unwrap();
    assert_eq!((waiting.place, waiting.signed), (PhotoPlace::Waiting, false));
    let refused = photo(&mut book, 21, tick(&bib, &waiting.photo)).unwrap_err();
    assert_eq!(refused.field, "photo", "a tick names no photo that nobody can show");
    drop(book);
    fs::write(&waiting.file, JPEG).unwrap();
    let path = folder.path().join("book.lapwright");
    let (mut book, _) = Book::open(path, &OpenOptions::default()).unwrap();
    let here = photo(&mut book, 22, back(&bib, false)).unwrap().unwrap();
    assert_eq!((here.place, here.signed), (PhotoPlace::Here, false));
    assert_eq!(fs::read(&here.file).unwrap(), JPEG);
    assert_eq!(photo(&mut book, 23, back(&bib, true)).unwrap().unwrap(), here, "once more changes nothing");
    let signed = photo(&mut book, 24, tick(&bib, &here.photo)).unwrap().unwrap();
    assert_eq!(signed, StepPhoto { signed: true, ..here.clone() });
    fs::remove_file(&here.file).unwrap();
    let view: PenetrationView = shown(&book, "es", Place::Penetration { penetration: bib });
    let line = view.steps.iter().find(|line| line.code == STEP).unwrap();
    assert_eq!(line.photo.as_ref().unwrap().place, PhotoPlace::Missing);
    assert_eq!(line.state, StepState::Done);
}

#[test]
fn a_camera_that_took_nothing_leaves_nothing_and_half_a_photo_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let (mut book, bib) = book(folder.path());
    let first = photo(&mut book, 20, begin(&bib)).unwrap().unwrap();
    assert_eq!(photo(&mut book, 21, back(&bib, false)).unwrap(), Some(first.clone()), "the camera may still be open");
    let again = photo(&mut book, 22, begin(&bib)).unwrap().unwrap();
    assert_eq!(state(&book, &first), None, "a second try gives the first up");
    assert_eq!(photo(&mut book, 23, back(&bib, true)).unwrap(), None);
    assert_eq!(state(&book, &again), None);
    let third = photo(&mut book, 24, begin(&bib)).unwrap().unwrap();
    assert_eq!(state(&book, &third), Some(PhotoState::Waiting));
    fs::write(&third.file, &JPEG[..9]).unwrap();
    let told = photo(&mut book, 25, back(&bib, true)).unwrap_err();
    assert_eq!((told.code.as_str(), told.field.as_str()), ("range", "photo"));
}
