//! What is known to have been in a book, and no more, comes back when its file is hurt, gone or older than it was left.

use std::fs;

use lapwright::store::{Account, BookOpening, Entry, ExchangeOffer, Found, Store, StoreError, backups};
use lapwright_tests::book::{answer, entries, now, open, options};

use crate::place::{PAGE, Place, hashes, lost, sources};

/// A book that somebody took back to the copy that was made before its last answers.
fn gone_back_from(later: &[i64]) -> Place {
    let mut place = Place::with(6);
    let mut store = open(&place.book()).unwrap().store;
    let copy = store.backup(place.copies(), now(1_000)).unwrap();
    later.iter().for_each(|ms| drop(answer(&mut store, *ms).unwrap()));
    drop(store);
    let (opened, aside) = Store::restore(place.book(), &copy.path, &options(&place.book()), now(90_000)).unwrap();
    assert_eq!(aside, place.folder.path().join("book.replaced-1"));
    place.entries = entries(&opened.store).unwrap();
    place
}

/// None of the later ones is a sign-off, which would stay.
fn gone_back() -> Place {
    let place = gone_back_from(&[20, 23, 24, 25]);
    assert_eq!(place.entries.len(), 6);
    place
}

/// The third of the later ones is a sign-off: it stays, and the numbers before and behind it are gone.
fn gone_back_behind_a_sign_off() -> Place {
    let place = gone_back_from(&[23, 24, 27, 28]);
    assert_eq!(place.entries.iter().map(|entry| entry.sequence).collect::<Vec<_>>(), [1, 2, 3, 4, 5, 6, 9]);
    place
}

/// A book that holds some of what a colleague answered in it, as where one house alone was handed over.
fn with_some_of_a_colleagues() -> (Place, Vec<Entry>) {
    let mut place = Place::with(8);
    let other = place.taken_up();
    let mut theirs = open(&other.book()).unwrap().store;
    (23..31).for_each(|ms| drop(answer(&mut theirs, ms).unwrap()));
    let device = theirs.device();
    let all: Vec<Entry> = entries(&theirs).unwrap().into_iter().filter(|entry| entry.stamp.device == device).collect();
    let (some, rest): (Vec<Entry>, Vec<Entry>) =
        all.into_iter().partition(|entry| [2, 3, 6, 8].contains(&entry.sequence));
    let mut store = open(&place.book()).unwrap().store;
    assert_eq!(store.take_in(&some, i64::MAX).unwrap().new, 4);
    answer(&mut store, 40).unwrap();
    place.entries = entries(&store).unwrap();
    (place, rest)
}

impl Place {
    pub(crate) fn blank(&self, page: usize) {
        let mut bytes = fs::read(self.book()).unwrap();
        bytes[page * PAGE..(page + 1) * PAGE].fill(0);
        fs::write(self.book(), &bytes).unwrap();
    }

    /// The first page of a table or index, counted from nought.
    pub(crate) fn page_of(&self, which: &str) -> usize {
        let conn = rusqlite::Connection::open(self.book()).unwrap();
        let sql = format!("SELECT rootpage FROM sqlite_schema WHERE {which}");
        conn.query_row(&sql, [], |row| row.get::<_, u32>(0)).unwrap() as usize - 1
    }

    pub(crate) fn remove(&self, tails: &[&str]) {
        for tail in tails {
            let _ = fs::remove_file(self.folder.path().join(format!("book{tail}")));
        }
    }

    /// All of it comes back, nothing else does, and nothing is told of as lost.
    pub(crate) fn comes_back(&self, what: &str) -> Account {
        let opened = open(&self.book()).unwrap();
        assert_eq!(opened.opening, BookOpening::Recovered, "{what}");
        let account = opened.store.accounts().unwrap().pop().unwrap();
        assert_eq!(hashes(&opened.store), self.hashes(), "{what}: {account:?}");
        assert_eq!(account.lost, [], "{what}");
        account
    }
}

#[test]
fn what_somebody_took_out_stays_out_though_a_sign_off_behind_it_was_kept() {
    let place = gone_back_behind_a_sign_off();
    place.blank(0);
    assert_eq!(sources(&place.comes_back("the first page is hurt")), [""; 0]);

    let place = gone_back_behind_a_sign_off();
    place.remove(&["", "-wal", "-shm"]);
    place.comes_back("the book is gone");

    // The copies alone, as on a new phone.
    let place = gone_back_behind_a_sign_off();
    place.remove(&["", "-wal", "-shm", ".device", ".replaced-1", ".replaced-1.device", ".lock"]);
    place.comes_back("the copies are all there is");

    // The copy that was made of it after is gone, or hurt.
    for hurt in [false, true] {
        let place = gone_back_behind_a_sign_off();
        place.remove(&["", "-wal", "-shm"]);
        let newest = backups(place.copies()).unwrap().remove(0).path;
        if hurt {
            let mut bytes = fs::read(&newest).unwrap();
            bytes[..PAGE].fill(0);
            fs::write(&newest, &bytes).unwrap();
        } else {
            fs::remove_file(&newest).unwrap();
        }
        place.comes_back("the newest copy is no good");
    }
}

#[test]
fn what_a_colleague_did_not_hand_over_is_not_lost() {
    let (place, _) = with_some_of_a_colleagues();
    place.blank(0);
    place.comes_back("the first page is hurt");

    let (place, _) = with_some_of_a_colleagues();
    open(&place.book()).unwrap().store.backup(place.copies(), now(1_000)).unwrap();
    place.remove(&["", "-wal", "-shm", ".device", ".lock"]);
    place.comes_back("the copies are all there is");

    let (place, _) = with_some_of_a_colleagues();
    open(&place.book()).unwrap().store.backup(place.copies(), now(1_000)).unwrap();
    place.remove(&["", "-wal", "-shm"]);
    place.comes_back("the book is gone");
}

#[test]
fn what_a_colleague_handed_over_is_told_of_when_it_is_gone() {
    let (mut place, rest) = with_some_of_a_colleagues();
    let old = fs::read(place.book()).unwrap();
    let before = std::mem::take(&mut place.entries);
    // What fills the gaps of a device changes nothing of how far it had come.
    let gap: Vec<Entry> = rest.into_iter().filter(|entry| [4, 5].contains(&entry.sequence)).collect();
    assert_eq!(open(&place.book()).unwrap().store.take_in(&gap, i64::MAX).unwrap().new, 2);
    fs::write(place.book(), old).unwrap();
    let opened = open(&place.book()).unwrap();
    let account = opened.store.accounts().unwrap().pop().unwrap();
    assert_eq!((account.found, lost(&account), account.kept), (Found::Older, 2, None));
    assert_eq!(account.lost.iter().map(|lost| (lost.first, lost.last)).collect::<Vec<_>>(), [(4, 5)]);
    assert_eq!(entries(&opened.store).unwrap().len(), before.len());
    drop(opened);
    assert_eq!(open(&place.book()).unwrap().opening, BookOpening::Existing, "once is enough");
}

/// What came in is noted beside the book after it is in the book; a program that was stopped between the two does it later.
#[test]
fn what_was_not_noted_beside_the_book_is_noted_when_it_is_opened_next() {
    let (place, rest) = with_some_of_a_colleagues();
    let side = place.folder.path().join("book.device");
    let before = fs::read(&side).unwrap();
    let mut store = open(&place.book()).unwrap().store;
    let gap: Vec<Entry> = rest.into_iter().filter(|entry| entry.sequence == 4).collect();
    assert_eq!(store.take_in(&gap, i64::MAX).unwrap().new, 1);
    drop(store);
    let after = fs::read_to_string(&side).unwrap();
    fs::write(&side, before).unwrap();
    assert_eq!(open(&place.book()).unwrap().opening, BookOpening::Existing);
    assert_eq!(fs::read_to_string(&side).unwrap(), after);
}

/// As a program leaves it that was stopped while it set a book aside.
#[test]
fn a_book_that_was_being_set_aside_is_taken_up_again_whole() {
    for files in [&["", "-wal"][..], &[""]] {
        let place = Place::with(5).taken_up();
        let held = open(&place.book()).unwrap().store;
        let wal = fs::read(place.folder.path().join("book-wal")).unwrap_or_default();
        drop(held);
        fs::write(place.folder.path().join("book-wal"), wal).unwrap();
        let name = |tail: &str| {
            (place.folder.path().join(format!("book{tail}")), place.folder.path().join(format!("book.damaged-1{tail}")))
        };
        let (side, copy) = name(".device");
        fs::copy(side, copy).unwrap();
        for tail in files {
            let (from, to) = name(tail);
            fs::rename(from, to).unwrap();
        }
        let account = place.comes_back("stopped while it was set aside");
        assert_eq!((account.found, account.typed_lost), (Found::Damaged, false));
        assert_eq!(account.kept.as_deref(), place.aside(1).to_str());
        assert_eq!(sources(&account), [format!("{} from book.damaged-1", place.entries.len())]);
        let store = open(&place.book()).unwrap().store;
        assert_eq!(store.draft_get("key").unwrap().as_deref(), Some("typed"));
    }
}

/// What was typed when a file was set aside is old by the time that the book which took its place is gone.
#[test]
fn what_was_typed_long_ago_does_not_come_back() {
    let place = Place::with(5).taken_up();
    place.blank(place.page_of("type = 'index' AND tbl_name = 'entry'"));
    let mut store = open(&place.book()).unwrap().store;
    assert_eq!(store.draft_get("key").unwrap().as_deref(), Some("typed"));
    store.acknowledge().unwrap();
    store.draft_put("key", "typed later").unwrap();
    drop(store);
    place.remove(&["", "-wal", "-shm"]);
    let account = place.comes_back("the book is gone");
    assert!(account.typed_lost, "{account:?}");
    assert_eq!(open(&place.book()).unwrap().store.draft_get("key").unwrap(), None);
}

#[test]
fn an_older_book_has_older_settings_and_it_is_said() {
    let place = Place::with(5);
    let old = fs::read(place.book()).unwrap();
    let mut store = open(&place.book()).unwrap().store;
    answer(&mut store, 23).unwrap();
    store.setting_put("show", "mm").unwrap();
    drop(store);
    fs::write(place.book(), old).unwrap();
    let account = open(&place.book()).unwrap().store.accounts().unwrap().pop().unwrap();
    assert_eq!((account.found, account.typed_lost), (Found::Older, true));
}

/// A row that can be read and does not fit its hash is no answer that is here.
#[test]
fn an_older_book_with_a_hurt_answer_is_not_left_as_it_lies() {
    let place = Place::with(8);
    let mut bytes = fs::read(place.book()).unwrap();
    let mut store = open(&place.book()).unwrap().store;
    answer(&mut store, 23).unwrap();
    drop(store);
    let at = (0..bytes.len()).find(|at| bytes[*at..].starts_with(b"a note of 3")).unwrap();
    bytes[at] = b'A';
    fs::write(place.book(), &bytes).unwrap();
    let opened = open(&place.book()).unwrap();
    let account = opened.store.accounts().unwrap().pop().unwrap();
    assert_eq!((account.found, lost(&account), account.kept.is_some()), (Found::Older, 2, true));
    assert!(opened.store.check().unwrap().is_good());
}

/// A book is not new where any file lies that was set aside from it, whatever became of the first of them.
#[test]
fn a_file_that_was_set_aside_is_found_though_those_before_it_are_gone() {
    let place = Place::with(5);
    for _ in 0..2 {
        place.blank(0);
        drop(open(&place.book()).unwrap());
    }
    assert!(place.aside(2).exists());
    place.remove(&["", "-wal", "-shm", ".device", ".damaged-1", ".damaged-1.device"]);
    let account = place.comes_back("the first of those that were set aside is gone");
    assert_eq!(sources(&account), ["5 from book.damaged-2"]);
    place.blank(0);
    drop(open(&place.book()).unwrap());
    assert!(place.aside(3).exists() && !place.aside(1).exists(), "the highest number is the last");
}

#[test]
fn a_folder_by_the_name_of_a_file_that_was_set_aside_bars_nobody_from_the_book() {
    let place = Place::with(5);
    open(&place.book()).unwrap().store.backup(place.copies(), now(1_000)).unwrap();
    fs::create_dir(place.aside(7)).unwrap();
    place.remove(&["", "-wal", "-shm"]);
    place.comes_back("the book is gone");
}

/// Where no entry fits its hash, and neither the book nor what lies beside it says which one it is, its copies tell.
#[test]
fn a_book_of_which_nothing_fits_its_hash_comes_from_its_copy() {
    let place = Place::with(3);
    open(&place.book()).unwrap().store.backup(place.copies(), now(1_000)).unwrap();
    let page = place.page_of("name = 'book'");
    let mut bytes = fs::read(place.book()).unwrap();
    bytes[page * PAGE..(page + 1) * PAGE].fill(0);
    let signed: Vec<usize> = (0..bytes.len()).filter(|at| bytes[*at..].starts_with(b"Ada")).collect();
    assert!(signed.len() >= 3);
    signed.into_iter().for_each(|at| bytes[at] = b'O');
    fs::write(place.book(), &bytes).unwrap();
    place.remove(&["-wal", "-shm", ".device"]);
    assert_eq!(place.comes_back("no entry fits its hash").found, Found::Damaged);
}

#[test]
fn going_back_is_done_though_no_copy_of_it_can_be_made() {
    let place = Place::with(5);
    let mut store = open(&place.book()).unwrap().store;
    let copy = store.backup(place.copies(), now(1_000)).unwrap();
    answer(&mut store, 23).unwrap();
    drop(store);
    let in_the_way = place.copies().join("book-19700101-000131000.lapwright");
    fs::create_dir(&in_the_way).unwrap();
    let (opened, _) = Store::restore(place.book(), &copy.path, &options(&place.book()), now(90_000)).unwrap();
    assert_eq!(hashes(&opened.store), place.hashes());
    assert!(in_the_way.is_dir());
}

#[test]
fn the_book_itself_is_no_copy_to_go_back_to() {
    let place = Place::with(5);
    let refused = Store::restore(place.book(), place.book(), &options(&place.book()), now(1_000));
    assert!(matches!(refused, Err(StoreError::Itself(path)) if path == place.book()));
    let opened = open(&place.book()).unwrap();
    assert_eq!(opened.opening, BookOpening::Existing);
    assert!(matches!(ExchangeOffer::read(place.book()), Err(StoreError::Itself(_))), "nor to take in");
}

#[test]
fn what_a_copy_took_the_place_of_is_no_book_to_open() {
    let place = gone_back();
    let aside = place.folder.path().join("book.replaced-1");
    let before = fs::read(&aside).unwrap();
    assert!(matches!(open(&aside), Err(StoreError::SetAside { file, book }) if file == aside && book == place.book()));
    assert_eq!(fs::read(&aside).unwrap(), before);
}

#[test]
fn what_somebody_took_out_by_going_back_to_a_copy_is_not_told_of_as_lost() {
    let mut place = gone_back();
    let mut store = open(&place.book()).unwrap().store;
    store.backup(place.copies(), now(200_000)).unwrap();
    answer(&mut store, 30).unwrap();
    drop(store);
    // Only the answer since is lost.
    fs::remove_file(place.book()).unwrap();
    for tail in ["-wal", "-shm"] {
        let _ = fs::remove_file(place.folder.path().join(format!("book{tail}")));
    }
    let (store, account) = place.opens_missing(7);
    assert_eq!(lost(&account), 1, "{account:?}");
    assert_eq!(hashes(&store), place.hashes());
    place.entries.clear();
}

#[test]
fn what_somebody_took_out_by_going_back_to_a_copy_does_not_come_back_when_the_book_is_gone() {
    let place = gone_back();
    for tail in ["", "-wal", "-shm"] {
        let _ = fs::remove_file(place.folder.path().join(format!("book{tail}")));
    }
    let (store, account) = place.opens_missing(6);
    assert_eq!((hashes(&store), lost(&account)), (place.hashes(), 0), "{account:?}");
}

#[test]
fn what_a_copy_took_the_place_of_is_read_where_nothing_else_is_left() {
    let place = gone_back();
    fs::remove_dir_all(place.copies()).unwrap();
    let bytes = fs::read(place.book()).unwrap();
    fs::write(place.book(), vec![0; bytes.len()]).unwrap();
    let account = place.comes_back("no page is left");
    assert_eq!(sources(&account), ["6 from book.replaced-1"]);

    // And where there is no book at all, and nothing says which one it was, or what was taken out of it.
    place.remove(&["", "-wal", "-shm", ".device", ".damaged-2", ".damaged-2.device"]);
    let (store, account) = place.opens_missing(6);
    assert!(hashes(&store).is_superset(&place.hashes()));
    assert_eq!(sources(&account), ["10 from book.replaced-1"]);
}

/// Only the file that was set aside is left of a book: where the answers came from is said.
#[test]
fn a_missing_book_that_was_set_aside_once_says_where_it_came_from() {
    let place = Place::with(30).taken_up();
    let mut bytes = fs::read(place.book()).unwrap();
    bytes[PAGE..2 * PAGE].fill(0);
    fs::write(place.book(), &bytes).unwrap();
    open(&place.book()).unwrap().store.acknowledge().unwrap();
    fs::remove_file(place.book()).unwrap();
    let (_, account) = place.opens_missing(31);
    let told = place.entries.len() - lost(&account);
    assert_eq!(sources(&account), [format!("{told} from book.damaged-1")]);
}
