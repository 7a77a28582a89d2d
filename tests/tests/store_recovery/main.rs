//! What is left of a book when its file was not found as it was left: damaged, missing, cut short, older. Nothing that can
//! still be read is lost, nothing that is lost is passed over in silence, and what is no damage moves nothing.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use lapwright::store::{BookOpening, Found, Store, StoreError};
use lapwright_tests::book::{answer, below, count, entries, fill, now, open, options, tell};
use lapwright_tests::random::Random;

mod beside;
mod histories;
mod place;
mod signature;
mod was_here;

use place::{PAGE, Place, hashes, lost};

fn is_blank(page: &[u8]) -> bool {
    page.iter().all(|byte| *byte == 0)
}

#[test]
fn any_page_of_a_book_may_be_blank() {
    let first = Place::with(90);
    let pages = fs::read(first.taken_up().book()).unwrap().len() / PAGE;
    let step = count(6, 1);
    let (mut tried, mut whole, mut told) = (0, 0, 0);
    for page in (0..pages).step_by(step) {
        let place = first.taken_up();
        let mut bytes = fs::read(place.book()).unwrap();
        let hurt = &mut bytes[page * PAGE..(page + 1) * PAGE];
        if is_blank(hurt) {
            continue;
        }
        hurt.fill(0);
        fs::write(place.book(), &bytes).unwrap();
        let (store, account) = place.opens(&format!("page {page}"));
        tried += 1;
        // A page of an index or of the tables that nobody reads at an opening is found by a check.
        let Some(account) = account else { continue };
        assert_eq!(account.found, Found::Damaged, "page {page}");
        assert_eq!(fs::read(account.kept.clone().unwrap()).unwrap(), bytes, "page {page}: kept as it was found");
        assert!(account.typed_lost || store.draft_get("key").unwrap().as_deref() == Some("typed"), "page {page}");
        whole += usize::from(lost(&account) == 0);
        told += lost(&account);
    }
    tell(
        "a page of the book blank",
        tried,
        &format!("{whole} saved whole, {told} answers of the others told of as lost"),
    );
    assert!(tried > 4 && whole * 2 > tried, "{tried} {whole}");
}

/// A file that was cut is read to its last byte, though a page of it is not whole.
#[test]
fn a_book_may_be_cut_anywhere() {
    let first = Place::with(90);
    let bytes = fs::read(first.taken_up().book()).unwrap().len();
    let step = count(3 * PAGE - 100, 500);
    let (mut tried, mut told) = (0, 0);
    for end in (1..bytes).step_by(step) {
        let place = first.taken_up();
        let whole = fs::read(place.book()).unwrap();
        fs::write(place.book(), &whole[..end.min(whole.len() - 1)]).unwrap();
        let (_, account) = place.opens(&format!("cut behind {end}"));
        let account = account.unwrap();
        assert_eq!(account.found, Found::Damaged, "cut behind {end}");
        tried += 1;
        told += lost(&account);
    }
    tell("a book cut short", tried, &format!("{told} answers told of as lost, the others saved"));
    assert!(told > 0 && told < tried * 90);
}

#[test]
fn what_the_log_has_lost_comes_from_the_copies() {
    let first = Place::with(60);
    let step = count(5, 1);
    let pages = fs::read(first.book()).unwrap().len() / PAGE;
    let (mut tried, mut from_copies) = (0, 0);
    for page in (1..pages).step_by(step) {
        let mut place = first.taken_up();
        let mut store = open(&place.book()).unwrap().store;
        store.backup(place.copies(), now(5_000)).unwrap();
        answer(&mut store, 2_000_000).unwrap();
        place.entries = entries(&store).unwrap();
        drop(store);
        let mut bytes = fs::read(place.book()).unwrap();
        bytes[page * PAGE..(page + 1) * PAGE].fill(0);
        fs::write(place.book(), &bytes).unwrap();
        let (_, account) = place.opens(&format!("page {page}"));
        tried += 1;
        if let Some(account) = account {
            assert!(lost(&account) <= 1, "page {page}: only what came after the copy can be lost: {account:?}");
            let copies = place.copies();
            assert!(account.sources.iter().all(|from| Path::new(&from.path).starts_with(&copies)), "page {page}");
            from_copies += account.sources.iter().map(|from| from.answers).sum::<u64>();
        }
    }
    tell("a page blank, with a copy", tried, &format!("{from_copies} answers taken from it"));
    assert!(from_copies > 0);
}

#[test]
fn an_account_goes_when_it_is_acknowledged_and_into_no_copy() {
    let place = Place::with(30);
    let mut bytes = fs::read(place.book()).unwrap();
    bytes[..PAGE].fill(0);
    fs::write(place.book(), &bytes).unwrap();
    let (mut store, account) = place.opens("no first page");
    let account = account.unwrap();
    assert_eq!((lost(&account), &account.sources[..]), (0, &[][..]), "the log alone gives all of it");
    let copy = place.folder.path().join("copy");
    store.copy(&copy).unwrap();
    assert_eq!(open(&copy).unwrap().store.accounts().unwrap(), []);
    store.acknowledge().unwrap();
    drop(store);
    assert_eq!(open(&place.book()).unwrap().store.accounts().unwrap(), []);
    assert!(place.aside(1).exists() && !place.aside(2).exists());
}

#[test]
fn a_file_that_was_set_aside_is_no_book_to_open_and_stays_as_it_was_found() {
    let place = Place::with(30);
    let mut bytes = fs::read(place.book()).unwrap();
    bytes[PAGE..2 * PAGE].fill(0);
    fs::write(place.book(), &bytes).unwrap();
    drop(place.opens("a page of zeros"));
    let there = || {
        let files = fs::read_dir(place.folder.path()).unwrap().map(|entry| entry.unwrap().path());
        files.filter(|path| path.is_file()).map(|path| (fs::read(&path).unwrap(), path)).collect::<BTreeSet<_>>()
    };
    let before = there();
    let refused = |done: Result<_, StoreError>| match done {
        Err(StoreError::SetAside { file, book }) => assert_eq!((file, book), (place.aside(1), place.book())),
        other => panic!("{:?}", other.map(drop)),
    };
    refused(open(&place.aside(1)));
    refused(Store::repair(place.aside(1), &options(&place.aside(1))));
    assert!(before == there(), "nothing was moved or made");
    // Taken elsewhere it is all that there is of its book.
    let elsewhere = tempfile::tempdir().unwrap();
    let path = elsewhere.path().join("book.damaged-1");
    fs::copy(place.aside(1), &path).unwrap();
    assert_eq!(entries(&open(&path).unwrap().store).unwrap().len(), place.entries.len());
}

/// A log of writes that was cut, or hurt, or is gone: SQLite passes over it in silence.
#[test]
fn a_log_of_writes_that_was_cut_or_hurt_is_told_of() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let mut store = open(&path).unwrap().store;
    fill(&mut store, 14).unwrap();
    let all = entries(&store).unwrap();
    let files = ["book", "book-wal", "book.device"].map(|name| (name, fs::read(folder.path().join(name)).unwrap()));
    drop(store);
    let log = files[1].1.clone();
    let mut random = Random::new(5);
    let cuts = (0..log.len()).step_by(1024 * count(18, 1)).map(|at| log[..at].to_vec());
    let hurts = (0..count(8, 400)).map(|_| {
        let mut hurt = log.clone();
        hurt[below(&mut random, log.len())] ^= 1 << below(&mut random, 8);
        hurt
    });
    let (mut tried, mut saved, mut told) = (0, 0, 0);
    for log in cuts.chain(hurts).collect::<Vec<_>>() {
        let place = Place { folder: tempfile::tempdir().unwrap(), entries: all.clone() };
        for (name, bytes) in &files {
            fs::write(place.folder.path().join(name), if *name == "book-wal" { &log } else { bytes }).unwrap();
        }
        let (store, account) = place.opens(&format!("the log with {} bytes, case {tried}", log.len()));
        tried += 1;
        saved += hashes(&store).len();
        told += account.as_ref().map_or(0, lost);
        assert!(account.as_ref().is_none_or(|account| account.found == Found::Older), "{account:?}");
    }
    tell(
        "the log of writes cut at every KiB and hurt",
        tried,
        &format!("{saved} answers saved, {told} told of as lost"),
    );
    assert!(told > 0 && saved > told);
}

#[test]
fn a_missing_book_comes_back_from_its_newest_good_copy_and_is_never_taken_for_a_new_one() {
    let mut place = Place::with(20);
    let mut store = open(&place.book()).unwrap().store;
    store.backup(place.copies(), now(1_000)).unwrap();
    answer(&mut store, 77).unwrap();
    let newest = store.backup(place.copies(), now(90_000)).unwrap();
    drop(store);
    let mut bytes = fs::read(&newest.path).unwrap();
    bytes[PAGE..2 * PAGE].fill(0xa5);
    fs::write(&newest.path, bytes).unwrap();
    fs::remove_file(place.book()).unwrap();
    let (_, account) = place.opens_missing(20 + 1);
    assert!(!account.sources.is_empty() && lost(&account) <= 1, "{account:?}");

    // No copy, but the file beside it: a new book with a word.
    fs::remove_dir_all(place.copies()).unwrap();
    fs::remove_file(place.book()).unwrap();
    for number in 1..5 {
        let _ = fs::remove_file(place.aside(number));
    }
    let opened = open(&place.book()).unwrap();
    assert_eq!(opened.opening, BookOpening::Recovered);
    assert_eq!(opened.store.accounts().unwrap()[0].found, Found::Missing);
    place.entries.clear();

    // Copies alone, as on a new phone.
    let other = Place::with(9);
    open(&other.book()).unwrap().store.backup(other.copies(), now(1)).unwrap();
    let new = tempfile::tempdir().unwrap();
    let path = new.path().join("book");
    fs::create_dir(options(&path).backups.unwrap()).unwrap();
    for copy in fs::read_dir(other.copies()).unwrap() {
        let copy = copy.unwrap();
        fs::copy(copy.path(), options(&path).backups.unwrap().join(copy.file_name())).unwrap();
    }
    let opened = open(&path).unwrap();
    assert_eq!((opened.opening, hashes(&opened.store)), (BookOpening::Recovered, other.hashes()));
}

#[test]
fn an_older_file_put_in_the_books_place_is_told_of_and_left_as_it_is() {
    let place = Place::with(8);
    let old = fs::read(place.book()).unwrap();
    let mut store = open(&place.book()).unwrap().store;
    let device = store.device();
    for ms in 23..26 {
        answer(&mut store, ms).unwrap();
    }
    drop(store);
    fs::write(place.book(), &old).unwrap();
    let opened = open(&place.book()).unwrap();
    let account = opened.store.accounts().unwrap().pop().unwrap();
    let (opening, kept) = (opened.opening.clone(), account.kept.clone());
    assert_eq!((opening, account.found, lost(&account), kept), (BookOpening::Recovered, Found::Older, 3, None));
    assert_ne!(opened.store.device(), device, "numbers that are lost are not used again");
    assert_eq!(hashes(&opened.store), place.hashes());
    drop(opened);
    assert_eq!(open(&place.book()).unwrap().opening, BookOpening::Existing);
}

#[test]
fn what_is_no_damage_moves_nothing() {
    let place = Place::with(5);
    let names = |place: &Place| {
        let files = fs::read_dir(place.folder.path()).unwrap();
        files.map(|file| file.unwrap().file_name()).collect::<BTreeSet<_>>()
    };
    let before = names(&place);
    let folder = place.folder.path().join("folder");
    fs::create_dir(&folder).unwrap();
    assert!(matches!(open(&folder), Err(StoreError::NotABook(_))));
    fs::remove_dir(&folder).unwrap();
    let nowhere = place.folder.path().join("no folder/book");
    assert!(matches!(open(&nowhere), Err(StoreError::Io(error)) if error.kind() == std::io::ErrorKind::NotFound));
    assert_eq!(names(&place), before);
}

#[cfg(unix)]
#[test]
fn a_pipe_is_no_book_and_hangs_nobody() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("pipe");
    assert!(std::process::Command::new("mkfifo").arg(&path).status().unwrap().success());
    assert!(matches!(open(&path), Err(StoreError::NotABook(_))));
    assert!(matches!(Store::verify_copy(&path), Err(StoreError::NotABook(_))));
}

#[test]
fn a_book_that_somebody_has_open_is_not_moved_under_them() {
    let place = Place::with(12).taken_up();
    let held = open(&place.book()).unwrap().store;
    let mut bytes = fs::read(place.book()).unwrap();
    bytes[..PAGE].fill(0);
    fs::write(place.book(), &bytes).unwrap();
    assert!(matches!(open(&place.book()), Err(StoreError::Busy)));
    assert_eq!(fs::read(place.book()).unwrap(), bytes);
    drop(held);
    let (_, account) = place.opens("when they are done");
    assert_eq!(account.map(|account| lost(&account)), Some(0));
}

#[test]
fn looking_into_a_copy_changes_nothing_of_it() {
    let place = Place::with(6);
    let mut store = open(&place.book()).unwrap().store;
    let copy = place.folder.path().join("copy");
    store.copy(&copy).unwrap();
    let before = fs::read(&copy).unwrap();
    let look = open(&copy).unwrap();
    assert_eq!((look.opening.clone(), hashes(&look.store)), (BookOpening::Existing, place.hashes()));
    drop(look);
    assert_eq!(fs::read(&copy).unwrap(), before);
    answer(&mut store, 50).unwrap();
    store.copy(&copy).expect("an older copy is replaced, though somebody looked into it");
}

/// A part that nobody holds any more is what a copy left behind when it was killed; whatever else ends like one is the user's.
#[test]
fn what_a_killed_copy_left_behind_is_cleared_and_nothing_else() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let left = ["book.0123456789abcdef.lapwright-part", "other.fedcba9876543210.lapwright-part"];
    let kept = ["plan.part", "book.lapwright-part", "book.0123.lapwright-part", "book.0123456789abcdeg.lapwright-part"];
    for name in left.iter().chain(&kept) {
        fs::write(folder.path().join(name), b"half a book").unwrap();
    }
    drop(open(&path).unwrap());
    for name in left {
        assert!(!folder.path().join(name).exists(), "{name}");
    }
    for name in kept {
        assert_eq!(fs::read(folder.path().join(name)).unwrap(), b"half a book", "{name}");
    }
}

#[test]
fn what_a_killed_copy_left_behind_is_cleared_though_no_further_copy_is_needed() {
    let place = Place::with(5);
    let store = open(&place.book()).unwrap().store;
    let kept = store.keep_backup(place.copies(), now(1_000)).unwrap();
    let left = place.copies().join("book-20260616-135322000.lapwright.0123456789abcdef.lapwright-part");
    fs::write(&left, b"half a book").unwrap();
    assert_eq!(store.keep_backup(place.copies(), now(90_000)).unwrap(), kept, "nothing was answered since");
    assert!(!left.exists());
}

#[cfg(unix)]
#[test]
fn a_book_is_its_owners_alone() {
    use std::os::unix::fs::PermissionsExt as _;
    let place = Place::with(3);
    let store = open(&place.book()).unwrap().store;
    let backup = store.backup(place.copies(), now(1)).unwrap();
    for path in
        [place.book(), place.folder.path().join("book.device"), place.folder.path().join("book-wal"), backup.path]
    {
        let mode = fs::metadata(&path).unwrap().permissions().mode() & 0o777;
        assert_eq!(mode, 0o600, "{}", path.display());
    }
    assert_eq!(fs::metadata(place.copies()).unwrap().permissions().mode() & 0o777, 0o700);
}

#[test]
fn a_flipped_bit_of_a_number_is_found_before_it_is_copied_and_put_right() {
    let first = Place::with(40);
    let flips = count(16, 400);
    let mut random = Random::new(11);
    let (mut shown, mut found, mut harmless) = (0, 0, 0);
    let truth = views(&open(&first.taken_up().book()).unwrap().store);
    for _ in 0..flips {
        let place = first.taken_up();
        let mut bytes = fs::read(place.book()).unwrap();
        let at = below(&mut random, bytes.len());
        bytes[at] ^= 1 << below(&mut random, 8);
        fs::write(place.book(), &bytes).unwrap();
        let what = format!("a bit of byte {at}");
        let Ok(opened) = open(&place.book()) else { panic!("{what}: not opened") };
        let copy = place.folder.path().join("copy");
        let (copied, report) = (opened.store.copy(&copy), opened.store.check().unwrap());
        assert_eq!(copied.is_ok(), report.is_good(), "{what}: {report:?}");
        if views(&opened.store) != truth && opened.opening == BookOpening::Existing {
            shown += 1;
            assert!(!report.is_good(), "{what}: a wrong number is shown after a check");
        }
        if report.is_good() && opened.opening == BookOpening::Existing {
            harmless += 1;
            continue;
        }
        found += 1;
        drop(opened);
        let repaired = Store::repair(place.book(), &options(&place.book())).unwrap().store;
        assert!(repaired.check().unwrap().is_good(), "{what}");
        let account = repaired.accounts().unwrap().pop().unwrap();
        assert_eq!(hashes(&repaired).len() + lost(&account), place.entries.len(), "{what}: {account:?}");
        if lost(&account) == 0 {
            assert_eq!(views(&repaired), truth, "{what}");
        }
    }
    tell("bits flipped", flips, &format!("{found} found, {harmless} in unused bytes, {shown} would have been shown"));
    assert!(found > flips / 4);
}

/// Everything that a screen reads of the one thing that is in the book, without who and when.
fn views(store: &Store) -> Vec<String> {
    let Ok(fields) = store.fields(lapwright_tests::book::thing(1)) else { return vec!["unreadable".to_owned()] };
    let fields = fields.into_iter().filter(|(name, _)| name != "f1");
    let mut all: Vec<String> = fields.map(|(name, field)| format!("{name} {:?} {}", field.value, field.kept)).collect();
    match store.sign_offs(lapwright_tests::book::thing(1)) {
        Ok(signed) => all.extend(signed.iter().map(|signed| format!("{:?} {}", signed.sign_off, signed.undone))),
        Err(_) => all.push("unreadable".to_owned()),
    }
    all
}

/// Where the file system is told that everything may only be read, as on a card that was locked.
#[cfg(unix)]
#[test]
fn a_book_that_may_only_be_read_can_be_read() {
    use std::os::unix::fs::PermissionsExt as _;
    use std::os::unix::process::CommandExt as _;
    let place = Place::with(9);
    let reader = PathBuf::from(env!("CARGO_BIN_EXE_store_reader"));
    let mode = |path: &Path, mode: u32| fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
    mode(&place.book(), 0o444);
    mode(place.folder.path(), 0o555);
    let mut command = std::process::Command::new(&reader);
    command.arg(place.book());
    // Root may write everywhere; for the check it becomes nobody, who must be able to reach the program.
    let copy = std::env::temp_dir().join(format!("reader-{}", std::process::id()));
    if fs::metadata(place.folder.path()).unwrap().permissions().mode() & 0o200 == 0 && is_root() {
        fs::copy(&reader, &copy).unwrap();
        mode(&copy, 0o755);
        command = std::process::Command::new(&copy);
        command.arg(place.book()).uid(65_534).gid(65_534);
    }
    let output = command.output().unwrap();
    let _ = fs::remove_file(&copy);
    mode(place.folder.path(), 0o755);
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    assert_eq!(text.trim(), format!("{} read-only", place.entries.len()), "{output:?}");
}

#[cfg(unix)]
fn is_root() -> bool {
    let output = std::process::Command::new("id").arg("-u").output().unwrap();
    output.stdout.trim_ascii() == b"0"
}

#[test]
fn a_copy_that_was_altered_is_named_and_takes_no_books_place() {
    let place = Place::with(12);
    let store = open(&place.book()).unwrap().store;
    let copy = store.backup(place.copies(), now(1_000)).unwrap();
    drop(store);
    let conn = rusqlite::Connection::open(&copy.path).unwrap();
    assert!(conn.execute("UPDATE field SET value = '999'", []).unwrap() > 0);
    drop(conn);
    let before = fs::read(place.book()).unwrap();
    match Store::restore(place.book(), &copy.path, &options(&place.book()), now(90_000)) {
        Err(StoreError::DamagedFile { path, .. }) => assert_eq!(path, copy.path),
        other => panic!("{:?}", other.map(drop)),
    }
    assert_eq!(fs::read(place.book()).unwrap(), before);
    assert!(!place.folder.path().join("book.replaced-1").exists());
}

#[test]
fn a_book_with_something_wrong_in_it_is_put_right_and_gone_back_from() {
    let place = Place::with(12);
    let store = open(&place.book()).unwrap().store;
    let copy = store.backup(place.copies(), now(1_000)).unwrap();
    drop(store);
    let conn = rusqlite::Connection::open(place.book()).unwrap();
    assert!(conn.execute("UPDATE field SET value = '999'", []).unwrap() > 0);
    drop(conn);
    let (opened, aside) = Store::restore(place.book(), &copy.path, &options(&place.book()), now(90_000)).unwrap();
    assert_eq!(hashes(&opened.store), place.hashes());
    assert!(
        opened.store.check().unwrap().is_good()
            && aside.ends_with("book.replaced-2")
            && aside.exists()
            && place.aside(1).exists()
    );
    let account = opened.store.accounts().unwrap().pop().unwrap();
    assert_eq!((account.found, lost(&account)), (Found::Damaged, 0), "and it is told");
}
