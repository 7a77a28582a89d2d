//! The book under faults: killed writers, cut logs, damaged bytes, a full disk, foreign files, two writers.
//!
//! The outside check is SQLite's own `PRAGMA integrity_check` over a plain connection
//! (<https://www.sqlite.org/pragma.html#pragma_integrity_check>).

use std::collections::BTreeSet;
use std::io::{BufRead as _, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use lapwright::store::{Author, BookOpening, Change, Entry, Id, Now, Op, OpenOptions, Store, StoreError, Value};
use lapwright_tests::book::{count, tell};
use lapwright_tests::random::Random;

fn op(changes: Vec<Change>) -> Op {
    Op { kind: "tick".to_owned(), version: 1, job: None, args: Vec::new(), changes }
}

fn author() -> Author {
    Author { signer: "Ada".to_owned(), program: "test".to_owned() }
}

fn now(ms: i64) -> Now {
    Now { ms, utc_offset_minutes: 0 }
}

fn open(path: &Path) -> lapwright::store::Opened {
    Store::open(path, &OpenOptions::default()).unwrap()
}

fn wall() -> Id {
    Id::from_bytes([1; 16])
}

fn fill(store: &mut Store, count: i64) {
    let make = Change::Create { subject: wall(), kind: "wall".to_owned(), parent: None, sort_key: String::new() };
    store.transact(&op(vec![make]), &author(), now(0), &[]).unwrap();
    for ms in 1..count {
        set(store, ms).unwrap();
    }
}

fn set(store: &mut Store, ms: i64) -> Result<(), StoreError> {
    let change = Change::Set { subject: wall(), field: format!("f{}", ms % 9), value: Value::Whole(ms) };
    store.transact(&op(vec![change]), &author(), now(ms), &[]).map(|_| ())
}

fn entries(store: &Store) -> Vec<Entry> {
    store.entries_since(&Default::default()).unwrap()
}

fn sqlite_says(path: &Path) -> String {
    let conn = rusqlite::Connection::open(path).unwrap();
    conn.query_row("PRAGMA integrity_check", [], |row| row.get(0)).unwrap()
}

/// The kill lands somewhere in the write after the last line that was read.
#[test]
fn nothing_acknowledged_is_lost_when_the_writer_is_killed() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let mut acknowledged = BTreeSet::new();
    let mut random = Random::new(1);
    let (kills, mut lately) = (count(12, 2_000), 0);
    for round in 1..=kills {
        let mut child =
            Command::new(env!("CARGO_BIN_EXE_store_writer")).arg(&path).stdout(Stdio::piped()).spawn().unwrap();
        let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
        let seen = 1 + random.below(9);
        acknowledged.extend(lines.by_ref().take(seen).map(|line| line.unwrap().parse::<Id>().unwrap()));
        std::thread::sleep(Duration::from_micros(random.below(6000) as u64));
        child.kill().unwrap();
        child.wait().unwrap();
        acknowledged.extend(lines.map_while(Result::ok).filter_map(|line| line.parse::<Id>().ok()));
        let store = open(&path).store;
        let kept: BTreeSet<Id> = entries(&store).iter().map(Entry::group).collect();
        assert!(kept.is_superset(&acknowledged), "an acknowledged answer is lost");
        assert!(kept.len() <= acknowledged.len() + round, "a writer has at most one answer on its way");
        // To check a book that grows by every kill would take an hour.
        lately = (lately + 1) % 25;
        assert!(lately != 1 || store.check().unwrap().is_good());
        assert_eq!(store.peers().unwrap().len(), 1, "the file stays one device");
    }
    assert!(open(&path).store.check().unwrap().is_good());
    assert_eq!(sqlite_says(&path), "ok");
    tell("kills at any time", kills, &format!("{} answers acknowledged, none lost", acknowledged.len()));
}

#[test]
fn a_log_cut_at_every_kib_leaves_a_prefix() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let mut store = open(&path).store;
    fill(&mut store, 12);
    let whole = entries(&store);
    let (main, wal) = (std::fs::read(&path).unwrap(), std::fs::read(folder.path().join("book-wal")).unwrap());
    assert!(wal.len() > 64 * 1024);
    let mut lengths = BTreeSet::new();
    for cut in (0..wal.len()).step_by(1024) {
        let place = tempfile::tempdir().unwrap();
        let copy = place.path().join("book");
        std::fs::write(&copy, &main).unwrap();
        std::fs::write(place.path().join("book-wal"), &wal[..cut]).unwrap();
        let opened = open(&copy);
        let found = entries(&opened.store);
        assert!(whole.starts_with(&found), "cut at {cut}");
        assert!(opened.store.check().unwrap().is_good(), "cut at {cut}");
        lengths.insert(found.len());
    }
    assert!(lengths.len() > 8, "{lengths:?}");
    let mut random = Random::new(2);
    for _ in 0..20 {
        let place = tempfile::tempdir().unwrap();
        let copy = place.path().join("book");
        let (mut hurt, at) = (wal.clone(), random.below(wal.len()));
        hurt[at] ^= 0x10;
        std::fs::write(&copy, &main).unwrap();
        std::fs::write(place.path().join("book-wal"), &hurt).unwrap();
        let opened = open(&copy);
        assert!(whole.starts_with(&entries(&opened.store)), "byte {at}");
        assert!(opened.store.check().unwrap().is_good(), "byte {at}");
    }
}

/// Three programs meet a damaged book at once: one of them puts it right, and none loses what another has accepted.
#[test]
fn several_programs_that_open_a_damaged_book_lose_nothing_that_one_accepted() {
    let rounds = count(3, 60);
    let mut answers = 0;
    for round in 0..rounds {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("book");
        let mut store = open(&path).store;
        fill(&mut store, 30);
        drop(store);
        let mut bytes = std::fs::read(&path).unwrap();
        let page = 1 + round % (bytes.len() / 4096 - 1);
        bytes[page * 4096..(page + 1) * 4096].fill(0);
        std::fs::write(&path, bytes).unwrap();
        let start = |_| {
            Command::new(env!("CARGO_BIN_EXE_store_writer"))
                .arg(&path)
                .stdout(Stdio::piped())
                .stderr(Stdio::null())
                .spawn()
                .unwrap()
        };
        let mut children: Vec<_> = (0..3).map(start).collect();
        std::thread::sleep(Duration::from_millis(300));
        let mut acknowledged = BTreeSet::new();
        for child in &mut children {
            child.kill().unwrap();
            let lines = BufReader::new(child.stdout.take().unwrap()).lines();
            acknowledged.extend(lines.map_while(Result::ok).filter_map(|line| line.parse::<Id>().ok()));
            child.wait().unwrap();
        }
        let store = open(&path).store;
        let kept: BTreeSet<Id> = entries(&store).iter().map(Entry::group).collect();
        assert!(kept.is_superset(&acknowledged), "round {round}, page {page}: an acknowledged answer is lost");
        assert!(store.check().unwrap().is_good(), "round {round}, page {page}");
        answers += acknowledged.len();
    }
    tell("three programs on a damaged book", rounds, &format!("{answers} answers acknowledged, none lost"));
}

/// A limit on the size of files stands in for a full disk: the write that passes it fails, in the log or in a
/// checkpoint, as a short write does.
#[cfg(unix)]
#[test]
fn a_full_disk_is_an_error_and_leaves_whole_answers() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    drop(open(&path));
    for blocks in [100_u8, 125, 150, 187] {
        let output = Command::new("sh")
            .args([
                "-c",
                "trap '' XFSZ; ulimit -f \"$1\"; exec \"$2\" \"$3\"",
                "sh",
                &(4 * u32::from(blocks)).to_string(),
            ])
            .args([Path::new(env!("CARGO_BIN_EXE_store_writer")), &path])
            .output()
            .unwrap();
        assert_eq!(output.status.code(), Some(1), "the writer says that it failed: {output:?}");
        assert!(!output.stderr.is_empty());
        let acknowledged: Vec<Id> =
            String::from_utf8(output.stdout).unwrap().lines().map(|line| line.parse().unwrap()).collect();
        let opened = open(&path);
        assert_eq!(opened.opening, BookOpening::Existing);
        let mut store = opened.store;
        assert!(acknowledged.iter().all(|group| store.done_one(*group).unwrap().is_some()));
        assert!(store.check().unwrap().is_good());
        let change = Change::Create {
            subject: Id::from_bytes([blocks; 16]),
            kind: "wall".to_owned(),
            parent: None,
            sort_key: String::new(),
        };
        store.transact(&op(vec![change]), &author(), now(0), &[]).expect("with room again, the book goes on");
    }
    assert!(entries(&open(&path).store).len() > 20);
    assert_eq!(sqlite_says(&path), "ok");
}

#[test]
fn copies_cut_at_every_length_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    let (path, copy, cut_file) = (folder.path().join("book"), folder.path().join("copy"), folder.path().join("cut"));
    let mut store = open(&path).store;
    fill(&mut store, 20);
    store.copy(&copy).unwrap();
    Store::verify_copy(&copy).unwrap();
    assert_eq!(sqlite_says(&copy), "ok");
    let whole = std::fs::read(&copy).unwrap();
    let step = count(4001, 7);
    for cut in (0..whole.len()).step_by(step).chain([1, 99, 100, 4096, whole.len() - 1]) {
        std::fs::write(&cut_file, &whole[..cut]).unwrap();
        assert!(Store::verify_copy(&cut_file).is_err(), "cut at {cut} of {}", whole.len());
    }
    tell("backups cut", whole.len() / step, "all refused");
}

#[test]
fn damaged_bytes_are_found_or_harmless() {
    let folder = tempfile::tempdir().unwrap();
    let (path, copy) = (folder.path().join("book"), folder.path().join("copy"));
    let mut store = open(&path).store;
    fill(&mut store, 100);
    store.copy(&copy).unwrap();
    let (good, whole) = (entries(&store), std::fs::read(&copy).unwrap());
    let mut random = Random::new(3);
    let mut found = 0;
    let flips = count(80, 400);
    for _ in 0..flips {
        let mut bytes = whole.clone();
        let at = random.below(bytes.len());
        bytes[at] ^= 1 << random.below(8);
        let place = tempfile::tempdir().unwrap();
        let hurt = place.path().join("book");
        std::fs::write(&hurt, &bytes).unwrap();
        let refused = Store::verify_copy(&hurt).is_err();
        match Store::open(&hurt, &OpenOptions::default()) {
            Ok(opened) if opened.opening == BookOpening::Recovered => {
                assert!(refused, "byte {at}: what opening finds, the check of a copy finds too");
                found += 1;
            }
            Ok(opened) => match opened.store.check() {
                Ok(report) if report.is_good() => assert_eq!(entries(&opened.store), good, "byte {at}"),
                _ => found += 1,
            },
            Err(_) => found += 1,
        }
    }
    assert!(found * 4 > flips, "about half of the bytes are in use, and only {found} of {flips} were found");
    tell("bits of a copy flipped", flips, &format!("{found} found, the others in bytes that say nothing"));
}

#[test]
fn foreign_files_stay_byte_for_byte() {
    let folder = tempfile::tempdir().unwrap();
    let other = folder.path().join("other.db");
    rusqlite::Connection::open(&other).unwrap().execute_batch("CREATE TABLE a (b); INSERT INTO a VALUES (1)").unwrap();
    let database = std::fs::read(&other).unwrap();
    for bytes in [database, b"%PDF-1.7".to_vec(), b"x".to_vec(), vec![0; 5000], b"SQLite format 3\0".to_vec()] {
        let path = folder.path().join("foreign");
        std::fs::write(&path, &bytes).unwrap();
        assert!(matches!(Store::open(&path, &OpenOptions::default()), Err(StoreError::NotABook(_))));
        assert_eq!(std::fs::read(&path).unwrap(), bytes);
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 2, "nothing is left beside it");
    }
}

#[test]
fn two_connections_take_turns() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book");
    let mut one = open(&path).store;
    fill(&mut one, 2);
    let mut two = open(&path).store;
    assert_eq!(one.device(), two.device());
    let other = std::thread::spawn(move || (100..140).try_for_each(|ms| set(&mut two, ms)));
    (10..50).try_for_each(|ms| set(&mut one, ms)).unwrap();
    other.join().unwrap().unwrap();
    let sequences: Vec<i64> = entries(&one).iter().map(|entry| entry.sequence).collect();
    assert_eq!(sequences, (1..=82).collect::<Vec<_>>());
    assert!(one.check().unwrap().is_good());
}
