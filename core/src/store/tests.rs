//! Tests of the store as a whole.

use std::fs;

use proptest::prelude::*;

use super::*;
use crate::measure::Length;

fn id(number: u8) -> Id {
    Id::from_bytes([number; 16])
}

fn now(ms: i64) -> Now {
    Now { ms, utc_offset_minutes: -300 }
}

fn author() -> Author {
    Author { signer: "Ada".to_owned(), program: "0.1.0".to_owned() }
}

fn op(changes: Vec<Change>) -> Op {
    Op { kind: "wall.measured".to_owned(), version: 1, job: Some(id(200)), args: vec!["North".to_owned()], changes }
}

fn create(number: u8) -> Change {
    Change::Create { subject: id(number), kind: "wall".to_owned(), parent: None, sort_key: "a".to_owned() }
}

fn reading(mm: i64) -> Value {
    Value::Length { length: Length::from_mm(mm), typed: format!("{mm} mm"), unit: "mm".to_owned() }
}

fn set(number: u8, mm: i64) -> Change {
    Change::Set { subject: id(number), field: "width".to_owned(), value: reading(mm) }
}

fn keep(number: u8, mm: i64) -> Change {
    Change::Keep { subject: id(number), field: "width".to_owned(), value: reading(mm) }
}

fn width(store: &Store, number: u8) -> Option<Value> {
    store.fields(id(number)).unwrap().get("width").map(|field| field.value.clone())
}

#[test]
fn an_answer_is_undone_with_its_old_text_and_put_back() {
    let mut store = Store::in_memory().unwrap();
    let first = store.transact(&op(vec![create(1), set(1, 10)]), &author(), now(5), &[]).unwrap();
    store.draft_put("wall.width", "2").unwrap();
    let second = store.transact(&op(vec![set(1, 20)]), &author(), now(1), &["wall.width"]).unwrap();
    assert!(second.stamp > first.stamp, "the clock never runs backwards");
    assert_eq!(store.draft_get("wall.width").unwrap(), None);
    assert_eq!(store.dependents(first.group).unwrap().len(), 1);
    let undone = store.undo(second.group, &author(), now(9), |_| None).unwrap();
    assert_eq!(undone.reopened[0].before, reading(10));
    assert_eq!(undone.reopened[0].answered.typed(), "20 mm");
    assert_eq!(width(&store, 1), Some(reading(10)));
    assert!(matches!(store.undo(second.group, &author(), now(9), |_| None), Err(StoreError::CannotUndo(_))));
    assert_eq!(store.done(None, 10).unwrap()[1].undone_by, Some(undone.outcome.group));
    store.undo(undone.outcome.group, &author(), now(10), |_| None).unwrap();
    assert_eq!(width(&store, 1), Some(reading(20)));
    assert!(store.check().unwrap().is_good());
}

#[test]
fn what_is_kept_is_never_rewritten() {
    let mut store = Store::in_memory().unwrap();
    store.transact(&op(vec![create(1), keep(1, 7)]), &author(), now(1), &[]).unwrap();
    let refused = store.transact(&op(vec![set(1, 8)]), &author(), now(2), &[]);
    assert!(matches!(refused, Err(StoreError::BadChange { ref field, .. }) if field == "width"));
    assert_eq!(width(&store, 1), Some(reading(7)));
    assert!(store.transact(&op(vec![create(1)]), &author(), now(3), &[]).is_err());
}

#[test]
fn both_phones_show_the_value_that_lost_until_it_is_answered() {
    let (mut one, mut two) = (Store::in_memory().unwrap(), Store::in_memory().unwrap());
    one.transact(&op(vec![create(1), set(1, 1)]), &author(), now(1), &[]).unwrap();
    two.take_in(&one.entries_since(&two.peers().unwrap()).unwrap(), 86_400_000).unwrap();
    one.transact(&op(vec![set(1, 2)]), &author(), now(2), &[]).unwrap();
    two.transact(&op(vec![set(1, 3)]), &author(), now(3), &[]).unwrap();
    let sent = two.entries_since(&one.peers().unwrap()).unwrap();
    assert_eq!(sent.len(), 1);
    one.take_in(&sent, 86_400_000).unwrap();
    two.take_in(&one.entries_since(&two.peers().unwrap()).unwrap(), 86_400_000).unwrap();
    assert_eq!(one.content_hash().unwrap(), two.content_hash().unwrap());
    assert_eq!(width(&one, 1), Some(reading(3)));
    assert_eq!(one.clashes().unwrap(), two.clashes().unwrap());
    assert_eq!(one.clashes().unwrap()[0].value, reading(2));
    one.transact(&op(vec![set(1, 4)]), &author(), now(4), &[]).unwrap();
    assert_eq!(one.clashes().unwrap(), Vec::new());
}

#[test]
fn a_changed_entry_is_refused_and_a_newer_form_is_kept() {
    let (mut one, mut two) = (Store::in_memory().unwrap(), Store::in_memory().unwrap());
    one.transact(&op(vec![create(1), set(1, 1)]), &author(), now(1), &[]).unwrap();
    let mut entry = one.entries_since(&Default::default()).unwrap().remove(0);
    assert_eq!(Entry::from_text(&entry.to_text()), Some(entry.clone()));
    entry.signer.push('!');
    assert!(matches!(two.take_in(&[entry.clone()], 86_400_000), Err(StoreError::BadEntry { .. })));
    entry.form = 99;
    entry.payload = "{ not ours ]".to_owned();
    entry.hash = entry.true_hash();
    let forged = two.take_in(std::slice::from_ref(&entry), 86_400_000);
    assert!(matches!(forged, Err(StoreError::BadEntry { why: BadEntry::Forged, .. })));
    // As a newer program would have made it before devices signed.
    entry.signature.clear();
    two.take_in(std::slice::from_ref(&entry), 86_400_000).unwrap();
    assert_eq!(two.entries_since(&Default::default()).unwrap(), vec![entry]);
    assert_eq!(two.subject(id(1)).unwrap(), None);
    assert!(two.check().unwrap().is_good());
}

#[test]
fn a_file_book_opens_again_copies_become_new_devices_and_foreign_files_stay() {
    let folder = tempfile::tempdir().unwrap();
    let (path, backups) = (folder.path().join("book"), folder.path().join("backups"));
    let options = OpenOptions { backups: Some(backups.clone()) };
    let mut opened = Store::open(&path, &options).unwrap();
    assert_eq!(opened.opening, BookOpening::New);
    opened.store.transact(&op(vec![create(1), set(1, 1)]), &author(), now(1), &[]).unwrap();
    opened.store.setting_put("unit", "mm").unwrap();
    let (device, hash) = (opened.store.device(), opened.store.content_hash().unwrap());
    let backup = opened.store.backup(&backups, now(86_400_000)).unwrap();
    assert!(matches!(opened.store.copy(&path), Err(StoreError::InTheWay(_))));
    drop(opened);
    let again = Store::open(&path, &options).unwrap();
    assert_eq!((again.opening, again.store.device()), (BookOpening::Existing, device));
    drop(again.store);
    let moved = folder.path().join("moved");
    std::fs::copy(&backup.path, &moved).unwrap();
    let copy = Store::open(&moved, &options).unwrap().store;
    assert_ne!(copy.device(), device);
    assert_eq!((copy.content_hash().unwrap(), copy.setting_get("unit").unwrap()), (hash, None));

    std::fs::write(&path, b"no longer a book, but the side file knows it").unwrap();
    let restored = Store::open(&path, &options).unwrap();
    assert_eq!(restored.opening, BookOpening::Recovered);
    assert_eq!(restored.store.accounts().unwrap()[0].found, Found::Damaged);
    assert_eq!(restored.store.content_hash().unwrap(), hash);

    let foreign = folder.path().join("letter");
    std::fs::write(&foreign, b"Dear neighbour").unwrap();
    assert!(matches!(Store::open(&foreign, &options), Err(StoreError::NotABook(_))));
    assert_eq!(std::fs::read(&foreign).unwrap(), b"Dear neighbour");
    assert!(matches!(Store::verify_copy(&foreign), Err(StoreError::NotABook(_))));
}

#[test]
fn a_cut_number_stands_against_the_other_phone() {
    let (mut one, mut two) = (Store::in_memory().unwrap(), Store::in_memory().unwrap());
    one.transact(&op(vec![create(1), set(1, 1)]), &author(), now(1), &[]).unwrap();
    two.take_in(&one.entries_since(&two.peers().unwrap()).unwrap(), 86_400_000).unwrap();
    let clear = Change::Set { subject: id(1), field: "width".to_owned(), value: Value::Absent };
    one.transact(&op(vec![clear]), &author(), now(2), &[]).unwrap();
    let cut = one.transact(&op(vec![keep(1, 7)]), &author(), now(3), &[]).unwrap();
    two.transact(&op(vec![set(1, 8)]), &author(), now(9), &[]).unwrap();
    let sent = two.entries_since(&one.peers().unwrap()).unwrap();
    two.take_in(&one.entries_since(&two.peers().unwrap()).unwrap(), 86_400_000).unwrap();
    one.take_in(&sent, 86_400_000).unwrap();
    for store in [&mut one, &mut two] {
        assert_eq!(width(store, 1), Some(reading(7)));
        assert_eq!(store.clashes().unwrap()[0].value, reading(8), "the later value is shown, not taken");
        assert!(store.transact(&op(vec![set(1, 9)]), &author(), now(10), &[]).is_err());
        assert!(store.check().unwrap().is_good());
    }
    one.undo(cut.group, &author(), now(11), |_| None).unwrap();
    assert_eq!(width(&one, 1), Some(reading(8)), "undoing the cut frees it");
}

#[test]
fn of_two_cuts_the_first_stands() {
    let (mut one, mut two) = (Store::in_memory().unwrap(), Store::in_memory().unwrap());
    one.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    two.take_in(&one.entries_since(&two.peers().unwrap()).unwrap(), 86_400_000).unwrap();
    one.transact(&op(vec![keep(1, 8)]), &author(), now(5), &[]).unwrap();
    two.transact(&op(vec![keep(1, 7)]), &author(), now(4), &[]).unwrap();
    one.take_in(&two.entries_since(&one.peers().unwrap()).unwrap(), 86_400_000).unwrap();
    assert_eq!(width(&one, 1), Some(reading(7)));
    assert_eq!(one.clashes().unwrap()[0].value, reading(8));
}

#[test]
fn what_points_to_a_thing_depends_on_its_making() {
    let mut store = Store::in_memory().unwrap();
    let made = store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    store.transact(&op(vec![create(2)]), &author(), now(2), &[]).unwrap();
    let point = |to| Change::Set { subject: id(2), field: "block".to_owned(), value: to };
    let pointed = store.transact(&op(vec![point(Value::Reference(id(1)))]), &author(), now(3), &[]).unwrap();
    let groups =
        |store: &Store| store.dependents(made.group).unwrap().iter().map(|done| done.group).collect::<Vec<_>>();
    assert_eq!(groups(&store), vec![pointed.group]);
    store.transact(&op(vec![point(Value::Absent)]), &author(), now(4), &[]).unwrap();
    assert_eq!(groups(&store), Vec::new());
}

#[test]
fn a_clock_that_is_far_ahead_is_asked_about() {
    let (mut one, mut two) = (Store::in_memory().unwrap(), Store::in_memory().unwrap());
    one.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    one.transact(&op(vec![set(1, 1)]), &author(), now(AHEAD + 2), &[]).unwrap();
    let sent = one.entries_since(&Default::default()).unwrap();
    assert!(matches!(two.take_in(&sent, AHEAD + 1), Err(StoreError::Ahead { ms, .. }) if ms == AHEAD + 2));
    assert_eq!(two.entries_since(&Default::default()).unwrap(), Vec::new());
    assert_eq!(two.take_in(&sent, AHEAD + 2).unwrap().new, 2);
    assert_eq!(two.take_in(&sent, 0).unwrap().new, 0, "what is here already harms no clock");
}

#[test]
fn an_old_file_put_in_the_books_place_becomes_a_new_device() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let open = || Store::open(&path, &OpenOptions::default()).unwrap();
    let mut store = open().store;
    let device = store.device();
    store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    drop(store);
    let old = std::fs::read(&path).unwrap();
    let mut store = open().store;
    assert_eq!(store.device(), device);
    store.transact(&op(vec![set(1, 1)]), &author(), now(2), &[]).unwrap();
    drop(store);
    assert_eq!(open().store.device(), device);
    // The same inode, an older content: as a file manager that writes over a file does it.
    std::fs::write(&path, old).unwrap();
    let mut store = open().store;
    assert_ne!(store.device(), device);
    store.transact(&op(vec![set(1, 2)]), &author(), now(3), &[]).unwrap();
    assert!(store.check().unwrap().is_good());
}

#[test]
fn a_backup_of_another_book_neither_replaces_this_one_nor_is_thinned() {
    let folder = tempfile::tempdir().unwrap();
    let [path, demo, backups] = ["book", "demo", "backups"].map(|name| folder.path().join(name));
    let options = OpenOptions { backups: Some(backups.clone()) };
    let mut store = Store::open(&path, &options).unwrap().store;
    store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    let own = store.backup(&backups, now(0)).unwrap();
    let hash = store.content_hash().unwrap();
    drop(store);
    let mut other = Store::open(&demo, &OpenOptions::default()).unwrap().store;
    other.transact(&op(vec![create(2)]), &author(), now(1), &[]).unwrap();
    for ms in 1..9 {
        other.backup(&backups, now(ms * 60_000)).unwrap();
    }
    assert!(own.path.exists(), "the demo's backups push none of the book's out");
    assert_eq!(super::backups(&backups).unwrap().len(), 1 + 3);
    std::fs::write(&path, b"spoilt").unwrap();
    let restored = Store::open(&path, &options).unwrap();
    assert_eq!(restored.opening, BookOpening::Recovered);
    assert_eq!(restored.store.accounts().unwrap()[0].sources[0].path, own.path.display().to_string());
    assert_eq!(restored.store.content_hash().unwrap(), hash);
    std::fs::remove_file(&own.path).unwrap();
    drop(restored);
    std::fs::write(&path, b"spoilt again").unwrap();
    let accounts = Store::open(&path, &options).unwrap().store.accounts().unwrap();
    assert_eq!((accounts[0].saved, accounts[0].lost[0].count()), (0, 1), "one answer was in it, and is lost");
}

#[test]
fn a_column_of_the_wrong_type_is_damage() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let mut store = Store::open(&path, &OpenOptions::default()).unwrap().store;
    store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    // What a flipped serial type looks like: an id of the wrong length.
    store.conn.execute_batch("PRAGMA ignore_check_constraints = ON; UPDATE book SET id = x'00'").unwrap();
    drop(store);
    let opened = Store::open(&path, &OpenOptions::default()).unwrap();
    assert_eq!(
        (opened.opening, opened.store.entries_since(&Default::default()).unwrap().len()),
        (BookOpening::Recovered, 1)
    );
}

#[test]
fn a_peer_counts_up_to_its_first_gap() {
    let (mut one, mut two) = (Store::in_memory().unwrap(), Store::in_memory().unwrap());
    one.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    for ms in 2..5 {
        one.transact(&op(vec![set(1, ms)]), &author(), now(ms), &[]).unwrap();
    }
    let all = one.entries_since(&Default::default()).unwrap();
    let unbroken = |store: &Store| store.peers().unwrap().get(&one.device()).copied();
    assert_eq!((unbroken(&one), unbroken(&two)), (Some(4), None));
    for (taken, counted) in [(1, 0), (3, 0), (0, 2), (2, 4)] {
        two.take_in(&all[taken..=taken], 86_400_000).unwrap();
        assert_eq!(unbroken(&two), Some(counted), "after entry {}", taken + 1);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn the_tables_do_not_depend_on_the_order_of_arrival(
        steps in prop::collection::vec((0_usize..2, 0_u8..7, 0_usize..8, 1_i64..9), 1..25),
        order in prop::collection::vec(any::<u32>(), 80),
        cut in 1_usize..6,
    ) {
        let mut stores = [Store::in_memory().unwrap(), Store::in_memory().unwrap()];
        stores[0].transact(&op(vec![create(1)]), &author(), now(0), &[]).unwrap();
        let base = stores[0].entries_since(&Default::default()).unwrap();
        stores[1].take_in(&base, 86_400_000).unwrap();
        for (at, what, which, mm) in steps {
            let groups = stores[at].done(None, 100).unwrap();
            let done = groups.get(which % groups.len()).map(|done| done.group).unwrap();
            // Refused answers are part of the game: they must leave nothing.
            let _ = match what {
                0 => stores[at].undo(done, &author(), now(mm), |_| None).map(|_| ()),
                1 => stores[at].transact(&op(vec![Change::Remove { subject: id(1) }]), &author(), now(mm), &[]).map(|_| ()),
                2 => {
                    let other = stores[1 - at].entries_since(&stores[at].peers().unwrap()).unwrap();
                    stores[at].take_in(&other, 86_400_000).map(|_| ())
                }
                3 => stores[at].transact(&op(vec![keep(1, mm)]), &author(), now(mm), &[]).map(|_| ()),
                _ => stores[at].transact(&op(vec![set(1, mm)]), &author(), now(mm), &[]).map(|_| ()),
            };
        }
        let mut all: Vec<Entry> = stores.iter().flat_map(|store| store.entries_since(&Default::default()).unwrap()).collect();
        let (mut plain, mut mixed) = (Store::in_memory().unwrap(), Store::in_memory().unwrap());
        plain.take_in(&all, 86_400_000).unwrap();
        let keys: Vec<(u32, Hash)> = all.iter().zip(order.iter().cycle()).map(|(entry, key)| (*key, entry.hash)).collect();
        all.sort_by_key(|entry| keys.iter().filter(|(_, hash)| *hash == entry.hash).map(|(key, _)| *key).min());
        for part in all.chunks(cut) {
            mixed.take_in(part, 86_400_000).unwrap();
        }
        prop_assert_eq!(mixed.take_in(&all, 86_400_000).unwrap().new, 0);
        prop_assert_eq!(plain.content_hash().unwrap(), mixed.content_hash().unwrap());
        let tables = project::dump(&mixed.conn).unwrap();
        prop_assert_eq!(&project::dump(&plain.conn).unwrap(), &tables);
        prop_assert!(agree::tables_agree(&mixed.conn).unwrap());
        mixed.rebuild().unwrap();
        prop_assert_eq!(&project::dump(&mixed.conn).unwrap(), &tables);
    }
}

#[test]
fn several_answers_of_one_tap_are_kept_together_or_not_at_all() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let open = || Store::open(&path, &OpenOptions::default()).unwrap().store;
    let mut store = open();
    store.draft_put("left", "3").unwrap();
    store.begin_together();
    store.transact(&op(vec![create(1)]), &author(), now(1), &["left"]).unwrap();
    store.begin_together();
    store.transact(&op(vec![set(1, 5)]), &author(), now(1), &[]).unwrap();
    assert!(matches!(store.transact(&op(vec![set(2, 5)]), &author(), now(1), &[]), Err(StoreError::BadChange { .. })));
    store.end_together(false).unwrap();
    assert_eq!(width(&store, 1), None, "the inner ones are gone");
    assert!(open().subject(id(1)).unwrap().is_none(), "the outer ones are nobody else's yet");
    store.end_together(false).unwrap();
    drop(store);
    let mut store = open();
    assert_eq!((store.subject(id(1)).unwrap(), store.draft_get("left").unwrap().as_deref()), (None, Some("3")));
    assert_eq!((store.entries_since(&Default::default()).unwrap(), store.accounts().unwrap()), (vec![], vec![]));
    store.begin_together();
    store.begin_together();
    store.transact(&op(vec![create(1)]), &author(), now(1), &["left"]).unwrap();
    store.end_together(true).unwrap();
    let last = store.transact(&op(vec![set(1, 5)]), &author(), now(1), &[]).unwrap();
    store.draft_put("right", "4").unwrap();
    store.end_together(true).unwrap();
    drop(store);
    let mut store = open();
    assert_eq!(width(&store, 1), Some(reading(5)));
    assert_eq!((store.draft_get("left").unwrap(), store.draft_get("right").unwrap().as_deref()), (None, Some("4")));
    store.undo(last.group, &author(), now(2), |_| None).unwrap();
    assert_eq!((width(&store, 1), store.check().unwrap().is_good()), (None, true));
}

#[test]
fn an_undo_opens_its_questions_again_in_the_same_transaction() {
    let mut store = Store::in_memory().unwrap();
    store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    let answered = store.transact(&op(vec![set(1, 5)]), &author(), now(2), &[]).unwrap();
    let ask = |again: &Reopened| Some((format!("{}/{}", again.kind, again.field), again.answered.typed()));
    // A table that takes no draft stands in for a disk that is full between two transactions.
    let refuse = "CREATE TEMP TRIGGER full BEFORE INSERT ON draft BEGIN SELECT RAISE(ABORT, 'no room'); END";
    store.conn.execute_batch(refuse).unwrap();
    assert!(store.undo(answered.group, &author(), now(3), ask).is_err());
    assert_eq!(width(&store, 1), Some(reading(5)), "nothing was changed");
    store.conn.execute_batch("DROP TRIGGER full").unwrap();
    store.undo(answered.group, &author(), now(3), ask).unwrap();
    assert_eq!(store.draft_get("wall/width").unwrap().as_deref(), Some("5 mm"));
}

/// Noon of a day of this project, and one seventy years on.
const TODAY: i64 = 1_780_000_000_000;
const FAR: i64 = TODAY + 70 * 365 * 86_400_000;

#[test]
fn a_clock_that_ran_ahead_dates_no_later_answer_and_wins_against_none() {
    let mut store = Store::in_memory().unwrap();
    store.transact(&op(vec![create(1), set(1, 1)]), &author(), now(TODAY), &[]).unwrap();
    let far = store.transact(&op(vec![set(1, 2)]), &author(), now(FAR), &[]).unwrap();
    assert_eq!((far.stamp.ms, width(&store, 1)), (FAR, Some(reading(2))));
    let next = store.transact(&op(vec![set(1, 3)]), &author(), now(TODAY + 1), &[]).unwrap();
    assert_eq!((next.stamp.ms, width(&store, 1)), (TODAY + 1, Some(reading(3))), "what was written last holds");
    assert_eq!(store.dependents(far.group).unwrap().len(), 1, "it depends on what was there before it");
    store.transact(&op(vec![set(1, 4)]), &author(), now(FAR + 1), &[]).unwrap();
    store.undo(next.group, &author(), now(TODAY + 2), |_| None).unwrap();
    assert_eq!(width(&store, 1), Some(reading(4)));
    let sequences: Vec<i64> =
        store.entries_since(&Default::default()).unwrap().iter().map(|entry| entry.sequence).collect();
    assert_eq!(sequences, [1, 2, 3, 4, 5]);
    assert!(store.check().unwrap().is_good());
    let mut other = Store::in_memory().unwrap();
    let all = store.entries_since(&Default::default()).unwrap();
    assert!(matches!(other.take_in(&all, TODAY + AHEAD), Err(StoreError::Ahead { .. })), "it is asked about");
    other.take_in(&all, FAR + AHEAD).unwrap();
    assert_eq!(width(&other, 1), Some(reading(4)));
    let own = other.transact(&op(vec![set(1, 5)]), &author(), now(TODAY + 3), &[]).unwrap();
    assert_eq!((own.stamp.ms, width(&other, 1)), (TODAY + 3, Some(reading(5))));
}

#[test]
fn a_clock_that_stands_before_this_program_counts_on_from_the_last_answer() {
    let mut store = Store::in_memory().unwrap();
    store.transact(&op(vec![create(1), set(1, 1)]), &author(), now(TODAY), &[]).unwrap();
    for ms in [0, -1, -86_400_000_000, i64::MIN] {
        let outcome = store.transact(&op(vec![set(1, 2)]), &author(), now(ms), &[]).unwrap();
        assert_eq!(outcome.stamp.ms, TODAY);
    }
    store.transact(&op(vec![set(1, 9)]), &author(), now(i64::MAX), &[]).unwrap();
    let back = store.transact(&op(vec![set(1, 3)]), &author(), now(TODAY + 5), &[]).unwrap();
    assert_eq!((back.stamp.ms, width(&store, 1)), (TODAY + 5, Some(reading(3))));
    let mut empty = Store::in_memory().unwrap();
    let first = empty.transact(&op(vec![create(1)]), &author(), now(i64::MIN), &[]).unwrap();
    assert_eq!(first.stamp.ms, 0);
}

/// What is this device's own is in no byte of a copy, nor what was deleted; and a folder may have any name.
#[test]
fn a_copy_holds_nothing_of_the_device_whatever_its_path_is() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::open(folder.path().join("book"), &OpenOptions::default()).unwrap().store;
    store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    // Longer than a page, so that some of it lies on pages of its own.
    let typed = |word: &str| word.repeat(2_000);
    store.draft_put("gone", &typed("fourteen")).unwrap();
    store.draft_put("here", &typed("thirteen")).unwrap();
    store.draft_clear("gone").unwrap();
    let mut names = vec![std::ffi::OsString::from("100 % sure? #1 'a' \"b\" ü &x=1")];
    #[cfg(target_os = "linux")]
    names.push(std::os::unix::ffi::OsStringExt::from_vec(b"not \xff text".to_vec()));
    for name in names {
        let copies = folder.path().join(&name);
        let copy = store.backup(&copies, now(2)).unwrap().path;
        assert_eq!(fs::read_dir(&copies).unwrap().count(), 1, "{name:?}");
        let bytes = fs::read(&copy).unwrap();
        for word in ["fourteen", "thirteen"] {
            assert!(!bytes.windows(word.len()).any(|at| at == word.as_bytes()), "{name:?}: {word}");
        }
        assert_eq!(store.keep_backup(&copies, now(9)).unwrap().path, copy, "{name:?}: nothing was answered since");
        Store::verify_copy(&copy).unwrap();
    }
}

/// A letter that changes in what a table was made by is no fault to SQLite.
#[test]
fn a_column_under_another_name_is_damage() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let mut store = Store::open(&path, &OpenOptions::default()).unwrap().store;
    store.transact(&op(vec![create(1), set(1, 5)]), &author(), now(1), &[]).unwrap();
    drop(store);
    let mut bytes = fs::read(&path).unwrap();
    let old = b"value TEXT NOT NULL,\n    kept";
    // What SQLite moved to another page may still stand where it was.
    let places: Vec<usize> = (0..bytes.len()).filter(|at| bytes[*at..].starts_with(old)).collect();
    assert!(!places.is_empty());
    places.into_iter().for_each(|at| bytes[at..at + 5].copy_from_slice(b"valve"));
    fs::write(&path, bytes).unwrap();
    let store = Store::open(&path, &OpenOptions::default()).unwrap().store;
    assert!(matches!(store.fields(id(1)), Err(StoreError::Damaged(_))));
    let report = store.check().unwrap();
    assert!(!report.is_good());
    assert!(matches!(store.copy(folder.path().join("copy")), Err(StoreError::Damaged(_))));
    drop(store);
    let repaired = Store::repair(&path, &OpenOptions::default()).unwrap().store;
    assert!(repaired.check().unwrap().is_good());
    assert_eq!(width(&repaired, 1), Some(reading(5)));
}

/// Copies that only a newer program reads are not this program's to thin away, or to take for one that it could go back to.
#[test]
fn copies_of_a_newer_program_stay_and_count_for_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let copies = folder.path().join("copies");
    let mut store = Store::open(folder.path().join("book"), &OpenOptions::default()).unwrap().store;
    store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    let newer: Vec<_> = (1..=6).map(|ms| store.backup(&copies, now(ms)).unwrap().path).collect();
    let newer: Vec<_> = newer.into_iter().filter(|path| path.exists()).collect();
    for path in &newer {
        let conn = rusqlite::Connection::open(path).unwrap();
        conn.execute_batch("UPDATE book SET least_reader = 99; PRAGMA user_version = 99;").unwrap();
    }
    let kept = store.keep_backup(&copies, now(100)).unwrap().path;
    assert!(!newer.contains(&kept));
    (101..110).for_each(|ms| drop(store.backup(&copies, now(ms)).unwrap()));
    assert!(!newer.is_empty() && newer.iter().all(|path| path.exists()));
}

/// SQLite takes what stands between two strokes at the beginning of a name and the next for the name of a computer.
#[test]
fn a_copy_goes_to_a_path_that_begins_with_two_strokes() {
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::open(folder.path().join("book"), &OpenOptions::default()).unwrap().store;
    store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap();
    let to = std::path::PathBuf::from(format!("/{}", folder.path().join("copy").display()));
    store.copy(&to).unwrap();
    Store::verify_copy(&to).unwrap();
    assert!(super::at_rest::look_into(&to).is_ok());
}

/// Hashes name older ones only; in a file that somebody made up undos can name each other.
#[test]
fn undos_that_name_each_other_in_a_circle_end() {
    let mut store = Store::in_memory().unwrap();
    let made = store.transact(&op(vec![create(1)]), &author(), now(1), &[]).unwrap().group;
    let mut undone = made;
    for ms in 2..5 {
        undone = store.undo(undone, &author(), now(ms), |_| None).unwrap().outcome.group;
    }
    store.conn.execute_batch("DROP TRIGGER entry_stays").unwrap();
    // Of three that go round none can be in force without the one before it being undone.
    store.conn.execute("UPDATE entry SET undoes = ?1 WHERE sequence = 2", [undone]).unwrap();
    let (ended, end) = std::sync::mpsc::channel();
    std::thread::spawn(move || {
        let report = store.check().unwrap();
        store.rebuild().unwrap();
        ended.send(report.is_good()).unwrap();
    });
    assert_eq!(end.recv_timeout(std::time::Duration::from_secs(20)), Ok(false));
}
