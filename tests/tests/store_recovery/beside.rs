//! What the file beside a book says of it is true whoever writes it and whenever a program is stopped, and where it is hurt itself
//! nothing is told by it.

use std::fs;
use std::path::PathBuf;

use lapwright::store::{BookOpening, Entry, Found, Hash, Store};
use lapwright_tests::book::{answer, count, entries, now, open, options, tell};

use crate::place::{PAGE, Place, hashes, lost, sources};

impl Place {
    fn side(&self) -> PathBuf {
        self.folder.path().join("book.device")
    }

    /// What a colleague answers in a copy of this book.
    fn answers_of_a_colleague(&self, answers: i64) -> Vec<Entry> {
        let other = self.taken_up();
        let mut theirs = open(&other.book()).unwrap().store;
        (23..22 + answers).for_each(|ms| drop(answer(&mut theirs, ms).unwrap()));
        let device = theirs.device();
        entries(&theirs).unwrap().into_iter().filter(|entry| entry.stamp.device == device).collect()
    }

    fn take_in(&self, entries: &[Entry]) {
        let taken = open(&self.book()).unwrap().store.take_in(entries, i64::MAX).unwrap();
        assert_eq!(taken.new, entries.len());
    }
}

/// The sum that stands in the file beside a book, put right for what it says now.
fn summed(said: &str) -> String {
    let (said, rest) = said.split_once("sum ").unwrap();
    let (_, tip) = rest.split_once('\n').unwrap();
    format!("{said}sum {}\n{tip}", Hash::of(said))
}

#[test]
fn two_programs_that_have_a_book_open_both_note_what_they_accept() {
    let place = Place::with(6);
    let old = fs::read(place.book()).unwrap();
    let colleagues = place.answers_of_a_colleague(2);
    let mut one = open(&place.book()).unwrap().store;
    place.take_in(&colleagues);
    for ms in [30, 31, 33, 34] {
        answer(&mut one, ms).unwrap();
    }
    let device = one.device();
    drop(one);
    fs::write(place.book(), old).unwrap();
    let opened = open(&place.book()).unwrap();
    let account = opened.store.accounts().unwrap().pop().unwrap();
    assert_eq!((account.found, lost(&account)), (Found::Older, 4 + 2));
    assert_ne!(opened.store.device(), device);
}

/// A folder that was put back as it was makes a device use its numbers again; what it had made before comes back from a colleague.
#[test]
fn a_device_that_is_handed_back_what_it_made_goes_on_as_another() {
    let place = Place::with(6);
    let files = [place.book(), place.side()].map(|path| (fs::read(&path).unwrap(), path));
    let mut store = open(&place.book()).unwrap().store;
    (20..25).for_each(|ms| drop(answer(&mut store, ms).unwrap()));
    let all = entries(&store).unwrap();
    drop(store);
    for (bytes, path) in files {
        fs::write(path, bytes).unwrap();
    }
    let mut store = open(&place.book()).unwrap().store;
    let mut second = open(&place.book()).unwrap().store;
    let device = store.device();
    let some: Vec<Entry> = all.into_iter().filter(|entry| [8, 9].contains(&entry.sequence)).collect();
    assert_eq!(store.take_in(&some, i64::MAX).unwrap().new, 2);
    let accepted = answer(&mut store, 30).unwrap();
    assert!(store.device() != device && accepted.stamp.device == store.device());
    // A second program that has it open goes on as that device, too, once something comes in.
    let colleagues = place.answers_of_a_colleague(2);
    assert_eq!(second.take_in(&colleagues, i64::MAX).unwrap().new, 2);
    assert_eq!(second.device(), store.device());
    drop((store, second));
    for _ in 0..2 {
        let opened = open(&place.book()).unwrap();
        assert_eq!((opened.opening, opened.store.accounts().unwrap()), (BookOpening::Existing, Vec::new()));
        assert_eq!(opened.store.device(), accepted.stamp.device);
        assert!(opened.store.check().unwrap().is_good());
    }
}

#[test]
fn as_many_other_answers_are_not_the_same_answers() {
    let place = Place::with(4);
    let first = fs::read(place.book()).unwrap();
    place.take_in(&place.answers_of_a_colleague(2));
    let second = fs::read(place.book()).unwrap();
    fs::write(place.book(), first).unwrap();
    open(&place.book()).unwrap().store.acknowledge().unwrap();
    place.take_in(&place.answers_of_a_colleague(2));
    fs::write(place.book(), second).unwrap();
    let mut store = open(&place.book()).unwrap().store;
    assert_eq!(store.accounts().unwrap().iter().map(lost).sum::<usize>(), 2);
    store.acknowledge().unwrap();
    drop(store);
    assert_eq!(open(&place.book()).unwrap().opening, BookOpening::Existing, "once is enough");
}

/// SQLite keeps its log beside what a link names.
#[cfg(unix)]
#[test]
fn a_book_may_lie_behind_a_link() {
    let place = Place::with(6);
    let work = tempfile::tempdir().unwrap();
    let link = work.path().join("lot");
    std::os::unix::fs::symlink(place.book(), &link).unwrap();
    let mut store = open(&link).unwrap().store;
    (20..60).for_each(|ms| drop(answer(&mut store, ms).unwrap()));
    let all = hashes(&store);
    let second = open(&link).unwrap();
    assert_eq!((second.opening, hashes(&second.store)), (BookOpening::Existing, all.clone()));
    // As a program leaves it that is killed.
    let log = fs::read(place.folder.path().join("book-wal")).unwrap();
    let book = fs::read(place.book()).unwrap();
    drop((store, second.store));
    fs::write(place.folder.path().join("book-wal"), log).unwrap();
    fs::write(place.book(), book).unwrap();
    let opened = open(&link).unwrap();
    assert_eq!((opened.opening, hashes(&opened.store)), (BookOpening::Existing, all));
    drop(opened.store);
    // Where the disk that it lies on is not there nothing is made in its stead.
    fs::rename(place.book(), place.folder.path().join("away")).unwrap();
    assert!(open(&link).is_err() && fs::symlink_metadata(&link).unwrap().is_symlink());
}

/// The numbers of a device were used twice: what is here is one line of answers, and the other is told of as such.
#[test]
fn answers_of_another_line_are_not_mixed_in() {
    let mut place = Place::with(6);
    let files = [place.book(), place.side()].map(|path| (fs::read(&path).unwrap(), path));
    let mut store = open(&place.book()).unwrap().store;
    (20..25).for_each(|ms| drop(answer(&mut store, ms).unwrap()));
    store.backup(place.copies(), now(1_000)).unwrap();
    let other = entries(&store).unwrap().len() - 6;
    drop(store);
    for (bytes, path) in files {
        fs::write(path, bytes).unwrap();
    }
    let mut store = open(&place.book()).unwrap().store;
    (30..32).for_each(|ms| drop(answer(&mut store, ms).unwrap()));
    place.entries = entries(&store).unwrap();
    drop(store);
    place.blank(0);
    let account = place.comes_back("the first page is hurt");
    assert_eq!(account.untaken.iter().map(|from| from.answers as usize).collect::<Vec<_>>(), [other]);
}

#[test]
fn a_name_that_leaves_no_further_number_is_somebody_elses() {
    let place = Place::with(6);
    let theirs = place.folder.path().join(format!("book.damaged-{}", u64::MAX));
    fs::write(&theirs, "theirs").unwrap();
    place.blank(0);
    let hurt = fs::read(place.book()).unwrap();
    place.comes_back("the first page is hurt");
    assert_eq!((fs::read(&theirs).unwrap(), fs::read(place.aside(1)).unwrap()), (b"theirs".to_vec(), hurt));
}

/// A book of which three answers are lost, as it lies once that is said in it.
fn with_losses() -> Place {
    let mut place = Place::with(8).taken_up();
    let old = fs::read(place.book()).unwrap();
    let mut store = open(&place.book()).unwrap().store;
    [20, 23, 24].into_iter().for_each(|ms| drop(answer(&mut store, ms).unwrap()));
    place.entries = entries(&store).unwrap();
    drop(store);
    fs::write(place.book(), old).unwrap();
    place.blank(place.page_of("type = 'index' AND tbl_name = 'entry'"));
    place
}

/// Between the name of a new book and what is said beside it of what it holds, a program may be stopped: nothing is told twice.
#[test]
fn a_program_that_is_stopped_at_the_very_end_tells_nothing_twice() {
    let place = with_losses();
    let told = open(&place.book()).unwrap().store.accounts().unwrap();
    assert_eq!(told.iter().map(lost).collect::<Vec<_>>(), [3]);
    let side = fs::read_to_string(place.side()).unwrap();
    let end = told[0].lost[0].last;
    let device = &told[0].lost[0].device;
    // What it was to hold, the lost ones among it.
    let meanwhile: String = side
        .lines()
        .map(|line| match line.strip_prefix(&format!("with {device} ")) {
            Some(_) => format!("replaces .damaged-1\nwith {device} 1-{end}\n"),
            None => format!("{line}\n"),
        })
        .collect();
    assert_ne!(meanwhile, side);
    fs::write(place.side(), summed(&meanwhile)).unwrap();
    let opened = open(&place.book()).unwrap();
    assert_eq!((opened.opening, opened.store.accounts().unwrap()), (BookOpening::Existing, told.clone()));
    drop(opened.store);
    assert_eq!(fs::read_to_string(place.side()).unwrap(), side, "and it is put right");

    // One step before, the new book had no name yet.
    fs::write(place.side(), summed(&meanwhile)).unwrap();
    fs::remove_file(place.book()).unwrap();
    let opened = open(&place.book()).unwrap();
    let again = opened.store.accounts().unwrap().pop().unwrap();
    assert_eq!((again.found, &again.kept, &again.lost), (Found::Damaged, &told[0].kept, &told[0].lost));
    assert_eq!((again.typed_lost, opened.store.draft_get("key").unwrap().as_deref()), (false, Some("typed")));
}

#[test]
fn what_an_older_file_holds_of_settings_is_older_though_its_answers_are_not() {
    let mut place = Place::with(8);
    let old = fs::read(place.book()).unwrap();
    let mut store = open(&place.book()).unwrap().store;
    answer(&mut store, 20).unwrap();
    store.setting_put("show", "mm").unwrap();
    store.backup(place.copies(), now(1_000)).unwrap();
    place.entries = entries(&store).unwrap();
    drop(store);
    fs::write(place.book(), old).unwrap();
    let account = place.comes_back("older");
    assert_eq!((account.found, account.typed_lost), (Found::Older, true));
}

/// Whatever byte of it changed, the book is opened as it is, and nobody is told of answers that never were.
#[test]
fn a_hurt_file_beside_a_sound_book_tells_nothing() {
    let place = Place::with(6);
    place.take_in(&place.answers_of_a_colleague(3));
    let (side, book) = (fs::read(place.side()).unwrap(), fs::read(place.book()).unwrap());
    let all = hashes(&open(&place.book()).unwrap().store);
    let step = count(7, 1);
    let cuts = (0..side.len()).step_by(step).map(|end| side[..end].to_vec());
    let flips = (0..side.len()).step_by(step).map(|at| {
        let mut hurt = side.clone();
        hurt[at] ^= 1 << (at % 8);
        hurt
    });
    // And the last line torn, when the power went while it was written over.
    let torn = (1..90).step_by(step).map(|from| {
        let mut hurt = side.clone();
        let at = hurt.len() - from;
        hurt[at..].fill(b'0');
        hurt
    });
    let mut tried = 0;
    for hurt in cuts.chain(flips).chain(torn) {
        fs::write(place.book(), &book).unwrap();
        fs::write(place.side(), &hurt).unwrap();
        let mut store = open(&place.book()).unwrap_or_else(|error| panic!("{tried}: {error}")).store;
        assert_eq!((store.accounts().unwrap(), hashes(&store)), (Vec::new(), all.clone()), "{tried}");
        answer(&mut store, 50).unwrap();
        drop(store);
        assert_eq!(open(&place.book()).unwrap().opening, BookOpening::Existing, "{tried}");
        tried += 1;
    }
    tell("the file beside a sound book cut and hurt", tried, "nothing told of as lost");
    // Of a hurt book it is then as if there were none.
    for at in [10, side.len() - 150, side.len() - 5] {
        let mut hurt = side.clone();
        hurt[at] ^= 1;
        let place = Place {
            folder: tempfile::tempdir().unwrap(),
            entries: entries(&open(&place.book()).unwrap().store).unwrap(),
        };
        let mut bytes = book.clone();
        bytes[PAGE..2 * PAGE].fill(0);
        fs::write(place.book(), bytes).unwrap();
        fs::write(place.side(), hurt).unwrap();
        let opened = open(&place.book()).unwrap();
        assert!(opened.store.check().unwrap().is_good());
    }
}

/// A book was here, whatever the file beside it still says.
#[test]
fn a_book_is_not_new_beside_a_hurt_file() {
    let place = Place::with(6);
    fs::write(place.side(), "hurt").unwrap();
    place.remove(&["", "-wal", "-shm"]);
    let opened = open(&place.book()).unwrap();
    let account = opened.store.accounts().unwrap().pop().unwrap();
    assert_eq!((opened.opening, account.found, account.typed_lost), (BookOpening::Recovered, Found::Missing, true));
}

/// With nothing left but copies, the one that bears the latest date is taken for the book, and of what others hold beyond it is said
/// where it lies: a clock may have stood wrong when it was made.
#[test]
fn where_only_copies_are_left_what_others_of_them_hold_is_told() {
    let mut place = Place::with(6);
    let mut store = open(&place.book()).unwrap().store;
    store.backup(place.copies(), now(4_000_000_000_000)).unwrap();
    place.entries = entries(&store).unwrap();
    (20..23).for_each(|ms| drop(answer(&mut store, ms).unwrap()));
    let later = store.backup(place.copies(), now(1_800_000_000_000)).unwrap();
    let further = entries(&store).unwrap().len() - 6;
    drop(store);
    place.remove(&["", "-wal", "-shm", ".device", ".lock"]);
    let account = place.comes_back("only the copies are left");
    assert_eq!(sources(&account).len(), 1);
    let untaken: Vec<(PathBuf, usize)> =
        account.untaken.iter().map(|from| (PathBuf::from(&from.path), from.answers as usize)).collect();
    assert_eq!(untaken, [(later.path.clone(), further)]);
    let (opened, _) =
        Store::restore(place.book(), later.path, &options(&place.book()), now(4_000_000_100_000)).unwrap();
    assert_eq!(entries(&opened.store).unwrap().len(), 6 + further, "and it can be gone back to");
}
