//! Two phones put together by a file, and a book put back to a copy of it: all or nothing, with nothing forged in it.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use lapwright::store::{
    AHEAD, BadEntry, BookOpening, Change, DeviceId, Entry, ExchangeOffer, Hash, Id, Op, OpenOptions, Opened, Overwrite,
    PhotoState, SignOff, Standing, State, Store, StoreError, Value,
};
use lapwright_tests::book::{author, below, count, entries, make, now, op, open, options, tell, thing};
use lapwright_tests::random::Random;
use tempfile::TempDir;

/// Noon of a day of this project.
const TODAY: i64 = 1_780_000_000_000;

struct Phone {
    folder: TempDir,
    store: Store,
}

impl Phone {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let store = open(&folder.path().join("book")).unwrap().store;
        Self { folder, store }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn answer(&mut self, job: Option<Id>, ms: i64, changes: Vec<Change>) -> Id {
        let op = Op { job, ..op(changes) };
        self.store.transact(&op, &author(), now(TODAY + ms), &[]).unwrap().group
    }

    /// Takes a file in as a person does: looks at it, compares the words, takes it.
    fn take(&mut self, file: &Path, house: Option<Id>) -> usize {
        let offer = ExchangeOffer::read(file).unwrap();
        let preview = self.store.preview(&offer, house, now(TODAY)).unwrap();
        assert_eq!(preview.refused, []);
        for sender in &preview.senders {
            self.store.trust(sender.device).unwrap();
        }
        let copies = self.path("book.copies");
        let (taken, copy) = self.store.take_in_offer(&offer, house, TODAY + AHEAD, copies, now(TODAY)).unwrap();
        Store::verify_copy(&copy.path).unwrap();
        assert_eq!(taken.new, preview.new);
        taken.new
    }

    fn whole(&self) -> PathBuf {
        let file = self.path("whole.lapwright");
        self.store.copy(&file).unwrap();
        file
    }

    fn reopen(self, with: impl FnOnce(&Path) -> Opened) -> Self {
        let Self { folder, store } = self;
        drop(store);
        let store = with(&folder.path().join("book")).store;
        Self { folder, store }
    }
}

fn set(number: u8, field: &str, value: i64) -> Change {
    Change::Set { subject: thing(number), field: field.to_owned(), value: Value::Whole(value) }
}

fn sign(number: u8, photo: Option<Id>) -> Change {
    Change::SignOff(SignOff {
        subject: thing(number),
        step: "tight".to_owned(),
        state: State::Done,
        signer: "Ada".to_owned(),
        note: String::new(),
        reason: String::new(),
        measured: None,
        photo,
        detail_hash: Hash::NONE,
    })
}

fn groups(store: &Store) -> BTreeSet<Id> {
    entries(store).unwrap().iter().map(Entry::group).collect()
}

#[test]
fn two_phones_that_exchange_their_books_hold_the_same() {
    let (mut one, mut two) = (Phone::new(), Phone::new());
    one.answer(None, 0, vec![make(1)]);
    one.answer(Some(thing(1)), 1, vec![set(1, "lap", 5)]);
    let offer = ExchangeOffer::read(one.whole()).unwrap();
    let preview = two.store.preview(&offer, None, now(TODAY)).unwrap();
    let sender = &preview.senders[0];
    assert_eq!((preview.new, sender.device, sender.trusted, sender.signs), (2, one.store.device(), false, true));
    assert_eq!(sender.device.words(), one.store.device().words());
    let before = two.store.content_hash().unwrap();
    let copies = two.path("book.copies");
    let untrusted = two.store.take_in_offer(&offer, None, TODAY + AHEAD, &copies, now(TODAY));
    assert!(matches!(untrusted, Err(StoreError::Untrusted { words }) if words == one.store.device().words()));
    assert_eq!(two.store.content_hash().unwrap(), before);
    assert_eq!(two.take(&one.whole(), None), 2);
    // Both answer the same, neither having seen the other's.
    one.answer(Some(thing(1)), 2, vec![set(1, "lap", 6)]);
    two.answer(Some(thing(1)), 3, vec![set(1, "lap", 7)]);
    let preview = one.store.preview(&ExchangeOffer::read(two.whole()).unwrap(), None, now(TODAY)).unwrap();
    assert_eq!((preview.new, preview.known, preview.changed, preview.clashes), (1, 2, 1, 1));
    assert_eq!((one.take(&two.whole(), None), two.take(&one.whole(), None)), (1, 1));
    assert_eq!((one.take(&two.whole(), None), two.take(&one.whole(), None)), (0, 0), "twice is once");
    assert_eq!(one.store.content_hash().unwrap(), two.store.content_hash().unwrap());
    assert!(one.store.check().unwrap().is_good() && two.store.check().unwrap().is_good());
}

#[test]
fn one_house_goes_over_with_all_that_is_about_it_and_nothing_else() {
    let (mut one, mut two) = (Phone::new(), Phone::new());
    let (house, other, board) = (thing(1), thing(2), thing(3));
    let file = one.path("house.exchange");
    one.answer(None, 0, vec![make(1)]);
    let secret = [one.answer(None, 1, vec![make(2)]), one.answer(Some(other), 2, vec![set(2, "lap", 9)])];
    // A board that was loose, and an answer about it that was taken back before it came to the house.
    one.answer(None, 3, vec![make(3)]);
    let wrong = one.answer(None, 4, vec![set(3, "length", 1)]);
    one.store.undo(wrong, &author(), now(TODAY + 5), |_| None).unwrap();
    let wall = Change::Set { subject: board, field: "wall".to_owned(), value: Value::Reference(house) };
    one.answer(Some(house), 6, vec![wall]);
    assert_eq!(one.store.hand_over(house, &file, false, Overwrite::Never).unwrap().answers, 5);
    assert_eq!(ExchangeOffer::read(&file).unwrap().house(), Some(house));
    assert_eq!(two.take(&file, None), 5);
    assert!(groups(&two.store).is_disjoint(&secret.into()), "an exchange holds the house chosen");
    assert_eq!(two.store.standing(&ExchangeOffer::read(&file).unwrap()).unwrap(), Standing::Same);
    // What came since the last one, and then a file that went lost.
    one.answer(Some(house), 7, vec![set(1, "lap", 5)]);
    assert_eq!(one.store.hand_over(house, &file, false, Overwrite::PlainFiles).unwrap().answers, 1);
    one.answer(Some(house), 8, vec![set(1, "lap", 6)]);
    assert_eq!(one.store.hand_over(house, &file, false, Overwrite::PlainFiles).unwrap().answers, 1);
    assert_eq!(two.take(&file, None), 1);
    let offer = ExchangeOffer::read(&file).unwrap();
    assert_eq!(two.store.standing(&offer).unwrap(), Standing::ThisLacks);
    assert_eq!(one.store.hand_over(house, &file, true, Overwrite::PlainFiles).unwrap().answers, 7);
    assert_eq!(two.take(&file, None), 1);
    assert_eq!(two.store.standing(&ExchangeOffer::read(&file).unwrap()).unwrap(), Standing::Same);
    two.answer(Some(house), 9, vec![set(1, "lap", 7)]);
    assert_eq!(two.store.standing(&ExchangeOffer::read(&file).unwrap()).unwrap(), Standing::OtherLacks);
    // One house out of a whole book is the same.
    let mut three = Phone::new();
    three.take(&one.whole(), Some(house));
    assert_eq!(three.store.standing(&ExchangeOffer::read(&file).unwrap()).unwrap(), Standing::Same);
    assert!(three.store.check().unwrap().is_good());
}

/// What somebody does to an entry.
type Forger<'a> = &'a dyn Fn(&mut Entry);

/// An exchange file of these entries, with its own hash right, as somebody who forges one would make it.
fn forge(file: &Path, change: impl Fn(&mut Entry)) {
    let text = fs::read_to_string(file).unwrap();
    let (body, _) = text.trim_end().rsplit_once('\n').unwrap();
    let mut lines: Vec<String> = body.lines().map(str::to_owned).collect();
    for line in lines.iter_mut().skip(1) {
        let mut entry = Entry::from_text(line).unwrap();
        if entry.kind == "sign" {
            change(&mut entry);
        }
        *line = entry.to_text();
    }
    let body = lines.join("\n");
    fs::write(file, format!("{body}\n{}\n", Hash::of(&body))).unwrap();
}

#[test]
fn a_sign_off_that_was_altered_or_forged_is_named_and_nothing_comes_in() {
    let (mut one, mut two) = (Phone::new(), Phone::new());
    let house = thing(1);
    one.answer(None, 0, vec![make(1)]);
    let file = one.path("house.exchange");
    one.store.hand_over(house, &file, true, Overwrite::Never).unwrap();
    two.take(&file, None);
    let signed = Op { job: Some(house), kind: "sign".to_owned(), ..op(vec![sign(1, None)]) };
    one.store.transact(&signed, &author(), now(TODAY + 1), &[]).unwrap();
    two.answer(Some(house), 2, vec![set(1, "lap", 1)]);
    let (mine, theirs) = (two.store.device(), entries(&two.store).unwrap().pop().unwrap().signature);
    let forgeries: [(Forger<'_>, BadEntry); 6] = [
        (&|entry| entry.signer = "Bob".to_owned(), BadEntry::Altered),
        (
            &|entry| {
                entry.payload = entry.payload.replace("done", "skipped");
                entry.hash = entry.true_hash();
            },
            BadEntry::Forged,
        ),
        (
            &|entry| {
                entry.signer = "Bob".to_owned();
                entry.hash = entry.true_hash();
                entry.signature.clear();
            },
            BadEntry::Unsigned,
        ),
        (&|entry| entry.signature = theirs.clone(), BadEntry::Forged),
        (
            &|entry| {
                entry.sequence = 1;
                entry.previous = Hash::NONE;
                entry.hash = entry.true_hash();
            },
            BadEntry::PlaceTaken,
        ),
        (
            &|entry| {
                entry.stamp.device = mine;
                entry.sequence = 7;
                entry.hash = entry.true_hash();
            },
            BadEntry::Forged,
        ),
    ];
    let before = two.store.content_hash().unwrap();
    for (number, (change, why)) in forgeries.into_iter().enumerate() {
        one.store.hand_over(house, &file, true, Overwrite::PlainFiles).unwrap();
        forge(&file, change);
        let offer = ExchangeOffer::read(&file).unwrap();
        let refused = two.store.preview(&offer, None, now(TODAY)).unwrap().refused;
        assert_eq!(refused.iter().map(|one| (one.why, one.signs_off)).collect::<Vec<_>>(), [(why, true)], "{number}");
        let taken = two.store.take_in_offer(&offer, None, TODAY + AHEAD, two.path("book.copies"), now(TODAY));
        assert!(matches!(taken, Err(StoreError::BadEntry { why: found, .. }) if found == why), "{number}: {taken:?}");
        assert_eq!(two.store.content_hash().unwrap(), before);
    }
    one.store.hand_over(house, &file, true, Overwrite::PlainFiles).unwrap();
    assert_eq!(two.take(&file, None), 1, "the true one comes in");
}

#[test]
fn an_exchange_file_that_was_cut_or_changed_is_none() {
    let mut one = Phone::new();
    let file = one.path("house.exchange");
    one.answer(None, 0, vec![make(1)]);
    for ms in 1..4 {
        one.answer(Some(thing(1)), ms, vec![set(1, "lap", ms)]);
    }
    one.store.hand_over(thing(1), &file, true, Overwrite::Never).unwrap();
    let whole = fs::read(&file).unwrap();
    let hurt = one.path("hurt.exchange");
    let mut tried = 0;
    let mut refused = |bytes: &[u8], what: &str| {
        fs::write(&hurt, bytes).unwrap();
        tried += 1;
        assert!(ExchangeOffer::read(&hurt).is_err(), "{what}");
    };
    for cut in (0..whole.len()).step_by(count(13, 1)) {
        refused(&whole[..cut], &format!("cut at {cut}"));
    }
    for at in (0..whole.len()).step_by(count(7, 1)) {
        for bit in (0..8).step_by(count(5, 1)) {
            let mut bytes = whole.clone();
            bytes[at] ^= 1 << bit;
            refused(&bytes, &format!("byte {at}, bit {bit}"));
        }
    }
    tell("exchange files cut or flipped", tried, "all refused");
}

#[test]
fn a_clock_that_is_far_ahead_is_asked_about() {
    let (mut one, mut two) = (Phone::new(), Phone::new());
    let far = TODAY + 70 * 365 * 86_400_000;
    one.store.transact(&op(vec![make(1)]), &author(), now(far), &[]).unwrap();
    let offer = ExchangeOffer::read(one.whole()).unwrap();
    assert_eq!(two.store.preview(&offer, None, now(TODAY)).unwrap().ahead.unwrap().ms, far);
    two.store.trust(one.store.device()).unwrap();
    let copies = two.path("book.copies");
    let taken = two.store.take_in_offer(&offer, None, TODAY + AHEAD, &copies, now(TODAY));
    assert!(matches!(taken, Err(StoreError::Ahead { ms, .. }) if ms == far));
    two.store.take_in_offer(&offer, None, i64::MAX, &copies, now(TODAY)).unwrap();
    let later = two.store.transact(&op(vec![make(2)]), &author(), now(TODAY), &[]).unwrap();
    assert_eq!(later.stamp.ms, TODAY, "it binds nobody");
}

fn photo() -> Vec<u8> {
    [&[0xFF, 0xD8, 0xFF, 0xDA, 0, 2][..], &[7; 900], &[0xFF, 0xD9]].concat()
}

/// A phone with a house, a photo of a sign-off, and a backup made by hand.
fn packed() -> (Phone, Id, PathBuf) {
    let mut one = Phone::new();
    let waiting = one.store.photo_begin("key", thing(9)).unwrap();
    fs::write(waiting, photo()).unwrap();
    let photo = one.store.photo_take_in("key", thing(9)).unwrap().unwrap();
    one.answer(None, 0, vec![make(1)]);
    one.answer(Some(thing(1)), 1, vec![sign(1, Some(photo))]);
    let file = one.path("by-hand.zip");
    let packed = one.store.pack(&file, Overwrite::Never, now(TODAY)).unwrap();
    assert_eq!((packed.answers, packed.photos, packed.missing), (2, 1, 0));
    (one, photo, file)
}

#[test]
fn a_backup_made_by_hand_brings_a_new_phone_everything() {
    let (mut one, photo, file) = packed();
    assert!(matches!(one.store.pack(&file, Overwrite::Never, now(TODAY)), Err(StoreError::Exists(_))));
    let own = one.path("book");
    assert!(matches!(one.store.pack(&own, Overwrite::PlainFiles, now(TODAY)), Err(StoreError::InTheWay(_))));
    let two = Phone::new();
    let would = two.store.preview_restore(&file).unwrap();
    assert_eq!((would.answers, would.gained, would.carried, would.photos), (2, 2, 0, 1));
    let two = two.reopen(|path| Store::restore(path, &file, &options(path), now(TODAY)).unwrap().0);
    assert_eq!((two.store.book(), groups(&two.store)), (one.store.book(), groups(&one.store)));
    assert_eq!(two.store.photo_file(photo).unwrap().unwrap().0, PhotoState::Here);
    assert!(two.store.check().unwrap().is_good());
    assert_ne!(two.store.device(), one.store.device());
    // A phone that has answers of its own keeps them.
    let mut three = Phone::new();
    three.answer(None, 0, vec![make(4)]);
    assert!(matches!(three.store.preview_restore(&file), Err(StoreError::OtherBook(_))));
    // A photo that is gone is told of and stops no backup.
    fs::remove_file(one.store.photo_file(photo).unwrap().unwrap().1).unwrap();
    let less = one.store.pack(one.path("less.zip"), Overwrite::Never, now(TODAY)).unwrap();
    assert_eq!((less.photos, less.missing), (0, 1));
    one.answer(Some(thing(1)), 2, vec![set(1, "lap", 1)]);
    Store::verify_pack(&file).unwrap();
}

#[test]
fn a_backup_made_by_hand_that_was_cut_or_changed_does_not_count() {
    let (one, _, file) = packed();
    let whole = fs::read(&file).unwrap();
    let hurt = one.path("hurt.zip");
    for cut in (0..whole.len()).step_by(count(4_001, 97)) {
        fs::write(&hurt, &whole[..cut]).unwrap();
        assert!(Store::verify_pack(&hurt).is_err(), "cut at {cut}");
        assert!(one.store.preview_restore(&hurt).is_err(), "cut at {cut}");
    }
    // Dates and versions in the file's own tables say nothing: what is read in spite of a flip is what was written.
    let good = one.store.preview_restore(&file).unwrap();
    let (mut tried, mut found) = (0, 0);
    for at in (0..whole.len()).step_by(count(997, 11)) {
        let mut bytes = whole.clone();
        bytes[at] ^= 1 << (at % 8);
        fs::write(&hurt, &bytes).unwrap();
        tried += 1;
        match one.store.preview_restore(&hurt) {
            Ok(would) => assert_eq!(would, good, "byte {at}"),
            Err(StoreError::DamagedFile { .. } | StoreError::NotABook(_)) => found += 1,
            Err(other) => panic!("byte {at}: {other}"),
        }
    }
    assert!(found * 100 > tried * 95, "{found} of {tried}");
    tell("backups made by hand with a flipped bit", tried, &format!("{found} refused, the others hold the same"));
}

#[test]
fn going_back_to_a_copy_keeps_what_was_signed_since_and_what_it_stands_on() {
    let mut one = Phone::new();
    one.answer(None, 0, vec![make(1)]);
    one.answer(Some(thing(1)), 1, vec![set(1, "lap", 5)]);
    let copy = one.whole();
    let wrong = one.answer(Some(thing(1)), 2, vec![set(1, "lap", 99)]);
    let made = one.answer(Some(thing(1)), 3, vec![make(2)]);
    let signed = one.answer(Some(thing(1)), 4, vec![sign(2, None)]);
    let undone = one.answer(Some(thing(1)), 5, vec![sign(1, None)]);
    one.store.undo(undone, &author(), now(TODAY + 6), |_| None).unwrap();
    one.store.draft_put("key", "typed").unwrap();
    let (before, all) = (one.store.content_hash().unwrap(), groups(&one.store));
    let would = one.store.preview_restore(&copy).unwrap();
    assert_eq!((would.answers, would.gained, would.carried, would.dropped.len()), (2, 0, 4, 1));
    assert_eq!(one.store.content_hash().unwrap(), before, "a look changes nothing");
    let mut aside = PathBuf::new();
    let one = one.reopen(|path| {
        let (opened, replaced) = Store::restore(path, &copy, &options(path), now(TODAY)).unwrap();
        aside = replaced;
        opened
    });
    let here = groups(&one.store);
    assert!(!here.contains(&wrong) && here.is_superset(&[made, signed, undone].into()));
    assert_eq!(here.len(), all.len() - 1);
    assert_eq!(one.store.draft_get("key").unwrap().as_deref(), Some("typed"));
    assert!(one.store.check().unwrap().is_good());
    assert_eq!(one.store.accounts().unwrap(), []);
    // All of what was there is in a copy, and in the file itself.
    Store::verify_copy(&aside).unwrap();
    let copies = lapwright::store::backups(one.path("book.copies")).unwrap();
    let held = |path: &Path| Store::open(path, &OpenOptions::default()).unwrap().store.content_hash().unwrap();
    assert!(copies.iter().any(|copy| held(&copy.path) == before));
    // And back again.
    let back = copies.into_iter().find(|copy| held(&copy.path) == before).unwrap().path;
    let one = one.reopen(|path| Store::restore(path, &back, &options(path), now(TODAY + 9)).unwrap().0);
    assert_eq!(one.store.content_hash().unwrap(), before);
}

#[test]
fn a_colleagues_work_is_taken_back_and_can_come_again() {
    let (mut one, mut two) = (Phone::new(), Phone::new());
    one.answer(None, 0, vec![make(1)]);
    two.answer(None, 0, vec![make(2)]);
    let mine = groups(&one.store);
    one.take(&two.whole(), None);
    let late = one.answer(Some(thing(2)), 5, vec![sign(2, None)]);
    let copy = lapwright::store::backups(one.path("book.copies")).unwrap().pop().unwrap().path;
    let mut one = one.reopen(|path| Store::restore(path, &copy, &options(path), now(TODAY + 1)).unwrap().0);
    let here = groups(&one.store);
    assert!(here.is_superset(&mine) && here.contains(&late), "what was signed since stays, with what it stands on");
    one.take(&two.whole(), None);
    two.take(&one.whole(), None);
    assert_eq!(one.store.content_hash().unwrap(), two.store.content_hash().unwrap());
}

#[test]
fn a_restore_that_is_refused_leaves_the_book_as_it_was() {
    let mut one = Phone::new();
    one.answer(None, 0, vec![make(1)]);
    let (before, path) = (one.store.content_hash().unwrap(), one.path("book"));
    let bad = one.path("bad.zip");
    fs::write(&bad, b"PK\x03\x04 and no more").unwrap();
    for copy in [bad, one.path("nowhere"), one.path("book.device")] {
        assert!(one.store.preview_restore(&copy).is_err(), "{copy:?}");
    }
    let copy = one.whole();
    // While somebody has it open, it is not replaced under them.
    assert!(matches!(Store::restore(&path, &copy, &options(&path), now(TODAY)), Err(StoreError::Busy)));
    let one = one.reopen(|path| open(path).unwrap());
    assert_eq!((one.store.content_hash().unwrap(), one.store.accounts().unwrap()), (before, vec![]));
    let again = one.reopen(|path| {
        let opened = open(path).unwrap();
        assert_eq!(opened.opening, BookOpening::Existing);
        opened
    });
    assert!(again.store.check().unwrap().is_good());
}

#[test]
fn an_automatic_copy_is_made_when_something_was_answered_since() {
    let mut one = Phone::new();
    one.answer(None, 0, vec![make(1)]);
    let copies = one.path("book.copies");
    let first = one.store.keep_backup(&copies, now(TODAY)).unwrap();
    assert_eq!(one.store.keep_backup(&copies, now(TODAY + 60_000)).unwrap(), first);
    one.answer(None, 1, vec![make(2)]);
    assert_ne!(one.store.keep_backup(&copies, now(TODAY + 90_000)).unwrap(), first);
    fs::write(&lapwright::store::backups(&copies).unwrap()[0].path, b"spoilt").unwrap();
    let again = one.store.keep_backup(&copies, now(TODAY + 99_000)).unwrap();
    Store::verify_copy(again.path).unwrap();
}

/// Histories of three devices that answer, take back, sign, and take in from each other in any order.
#[test]
fn three_devices_end_with_the_same_whatever_came_when() {
    let mut random = Random::new(31);
    let histories = count(25, 10_000);
    let mut answers = 0;
    for history in 0..histories {
        let mut stores: Vec<Store> = (0..3).map(|_| Store::in_memory().unwrap()).collect();
        stores[0].transact(&op(vec![make(1)]), &author(), now(TODAY), &[]).unwrap();
        for step in 0..14 {
            let (at, other) = (below(&mut random, 3), below(&mut random, 3));
            // A clock may be an hour off, or stand.
            let ms = TODAY + step + random.between(-3_600_000, 3_600_000) * i64::from(at == 2);
            let store = &mut stores[at];
            match below(&mut random, 7) {
                0 | 1 if at != other => {
                    let seen = stores[at].peers().unwrap();
                    let new = stores[other].entries_since(&seen).unwrap();
                    stores[at].take_in(&new, i64::MAX).unwrap();
                }
                2 => {
                    let done = store.done(None, 20).unwrap();
                    if !done.is_empty() {
                        let group = done[below(&mut random, done.len())].group;
                        let _ = store.undo(group, &author(), now(ms), |_| None);
                    }
                }
                3 => drop(store.transact(&op(vec![sign(1, None)]), &author(), now(ms), &[])),
                4 => drop(store.transact(&op(vec![make(10 + step as u8)]), &author(), now(ms), &[])),
                _ => drop(store.transact(&op(vec![set(1, "lap", step)]), &author(), now(ms), &[])),
            }
        }
        let all: Vec<Entry> = stores.iter().flat_map(|store| entries(store).unwrap()).collect();
        for store in &mut stores {
            store.take_in(&all, i64::MAX).unwrap();
        }
        let hashes: BTreeSet<Hash> = stores.iter().map(|store| store.content_hash().unwrap()).collect();
        assert_eq!(hashes.len(), 1, "history {history}");
        assert!(stores[history % 3].check().unwrap().is_good(), "history {history}");
        answers += entries(&stores[0]).unwrap().len();
        let devices: BTreeSet<DeviceId> = all.iter().map(|entry| entry.stamp.device).collect();
        assert!(devices.len() <= 3);
    }
    tell("histories of three devices", histories, &format!("{answers} answers, all three hold the same"));
}

/// A crew that exchanges in random pairs, loses some of its files, and has one clock that is years ahead and one that stands
/// long ago.
#[test]
fn a_crew_that_exchanges_in_random_pairs_ends_with_the_same() {
    let (phones, days) = (count(5, 40), count(8, 120));
    let mut random = Random::new(37);
    let mut stores: Vec<Store> = (0..phones).map(|_| Store::in_memory().unwrap()).collect();
    let hand_on = |stores: &mut [Store], from: usize, to: usize| {
        let new = stores[from].entries_since(&stores[to].peers().unwrap()).unwrap();
        stores[to].take_in(&new, i64::MAX).unwrap();
    };
    for house in 0..5 {
        stores[0].transact(&op(vec![make(house)]), &author(), now(TODAY), &[]).unwrap();
    }
    (1..phones).for_each(|to| hand_on(&mut stores, 0, to));
    let mut answers = 5;
    for day in 0..days {
        for (phone, store) in stores.iter_mut().enumerate() {
            let house = below(&mut random, 5) as u8;
            let right = TODAY + day as i64 * 86_400_000 + phone as i64;
            let ms = [right + 70 * 365 * 86_400_000, 1_000, right][phone.min(2)];
            let change =
                if day % 3 == 0 { sign(house, None) } else { set(house, "lap", day as i64 * 100 + phone as i64) };
            let op = Op { job: Some(thing(house)), ..op(vec![change]) };
            store.transact(&op, &author(), now(ms), &[]).unwrap();
            answers += 1;
        }
        for _ in 0..phones / 2 {
            let (one, other) = (below(&mut random, phones), below(&mut random, phones));
            // Of ten files one is lost.
            if one != other && below(&mut random, 10) > 0 {
                hand_on(&mut stores, one, other);
            }
            if one != other && below(&mut random, 10) > 0 {
                hand_on(&mut stores, other, one);
            }
        }
    }
    (1..phones).for_each(|from| hand_on(&mut stores, from, 0));
    (1..phones).for_each(|to| hand_on(&mut stores, 0, to));
    let hashes: BTreeSet<Hash> = stores.iter().map(|store| store.content_hash().unwrap()).collect();
    assert_eq!(hashes.len(), 1);
    assert_eq!(entries(&stores[phones - 1]).unwrap().len(), answers);
    assert!(stores[phones - 1].check().unwrap().is_good());
    tell("phones of a crew", phones, &format!("{answers} answers in {days} days, all hold the same"));
}
