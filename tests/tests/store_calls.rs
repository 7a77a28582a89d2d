//! Every call that a program makes of the file system fails once, comes out short once, and is once the last thing that
//! the program does. What was acknowledged is there afterwards; a book that is whole is never taken for a damaged one; a
//! damaged one is put together by whoever comes next; nothing of the user's is gone, and nothing of ours is left lying.
#![cfg(target_os = "linux")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::os::unix::process::ExitStatusExt as _;
use std::path::{Path, PathBuf};
use std::process::Output;

use lapwright::store::{Account, BookOpening, Entry, Found, Id, Lost, Store, backups};
use lapwright_tests::book::{TYPED, count, entries, fill, open, tell};
use lapwright_tests::random::Random;
use lapwright_tests::shim::{Fault, run};
use tempfile::TempDir;

const STEPS: &str = env!("CARGO_BIN_EXE_store_steps");
const TAPS: &str = env!("CARGO_BIN_EXE_tap_steps");
/// Input or output error, no space left, permission denied, as numbers of Linux.
const ERRORS: [&str; 3] = ["5", "28", "13"];
const WHOLE: Fault<'static> = Fault { sort: "any", at: 0, what: "5" };

struct Place {
    folder: TempDir,
    /// What an app does on the book there.
    program: &'static str,
}

impl Place {
    /// A book with some answers and a file of the user's that has a name like ours.
    fn new() -> Self {
        Self::of(STEPS)
    }

    fn of(program: &'static str) -> Self {
        let place = Self { folder: tempfile::tempdir().unwrap(), program };
        fs::write(place.path("notes.part"), b"the user's own").unwrap();
        place
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn run(&self, fault: Fault<'_>) -> (Output, usize) {
        run(self.program, &[&self.path("book")], self.folder.path(), fault)
    }

    /// A day of its own.
    fn day(&self, number: usize, fault: Fault<'_>) -> (Output, usize) {
        run(self.program, &[&self.path("book"), &PathBuf::from(number.to_string())], self.folder.path(), fault)
    }

    fn names(&self) -> BTreeSet<String> {
        let mut names = BTreeSet::new();
        for folder in [self.folder.path().to_owned(), self.path("book.copies")] {
            for file in fs::read_dir(folder).into_iter().flatten() {
                names.insert(file.unwrap().file_name().into_string().unwrap());
            }
        }
        names
    }

    /// The copies, whole ones or not, which go where others can look into them.
    fn handed_on(&self) -> Vec<PathBuf> {
        let files = |folder: &Path| fs::read_dir(folder).into_iter().flatten().map(|file| file.unwrap().path());
        let copies = files(&self.path("book.copies")).collect::<Vec<_>>();
        let by_hand = files(self.folder.path()).filter(|file| {
            let name = file.file_name().unwrap().to_str().unwrap();
            name.starts_with("copy") || name.starts_with("by-hand")
        });
        by_hand.chain(copies).collect()
    }
}

/// What must be in a book, whatever became of the runs so far.
struct Kept {
    groups: BTreeSet<Id>,
    /// What may stand in the draft: what is known to stand there, or what was being put there since.
    drafts: BTreeSet<Option<String>>,
}

impl Kept {
    fn new() -> Self {
        Self { groups: BTreeSet::new(), drafts: BTreeSet::from([None]) }
    }

    fn add(&mut self, output: &Output) {
        self.groups.extend(acknowledged(output));
        for line in String::from_utf8_lossy(&output.stdout).lines() {
            let (word, text) = line.split_once(' ').unwrap_or((line, ""));
            let text = Some(text.to_owned()).filter(|text| !text.is_empty());
            match word {
                "tries" => drop(self.drafts.insert(text)),
                "has" => self.drafts = BTreeSet::from([text]),
                _ => {}
            }
        }
    }
}

fn acknowledged(output: &Output) -> BTreeSet<Id> {
    String::from_utf8_lossy(&output.stdout).lines().filter_map(|line| line.parse().ok()).collect()
}

fn groups(store: &Store) -> BTreeSet<Id> {
    entries(store).unwrap().iter().map(Entry::group).collect()
}

/// Every fault of these sorts, or one in so many of them.
fn faults<'a>(calls: &[(&'a str, usize)], whats: &[&'a str], step: usize) -> Vec<Fault<'a>> {
    let each = |sort: &'a str, calls: usize, what: &'a str| (1..=calls).map(move |at| Fault { sort, at, what });
    let all = calls.iter().flat_map(|(sort, calls)| whats.iter().flat_map(move |what| each(sort, *calls, what)));
    all.skip(step / 2).step_by(step).collect()
}

fn calls(place: &Place, sorts: &[&'static str]) -> Vec<(&'static str, usize)> {
    sorts.iter().map(|sort| (*sort, place.run(Fault { sort, ..WHOLE }).1)).collect()
}

/// What must hold after a run that failed, came out short, or was stopped, whatever it was in the middle of; then a whole run.
fn survives(place: &Place, kept: &mut Kept, output: &Output, what: &str) {
    kept.add(output);
    for file in place.handed_on() {
        let bytes = fs::read(&file).unwrap();
        assert!(!bytes.windows(TYPED.len()).any(|part| part == TYPED.as_bytes()), "{what}: a draft in {file:?}");
    }
    let opened = open(&place.path("book")).unwrap_or_else(|error| panic!("{what}: {error}"));
    assert!(matches!(opened.opening, BookOpening::Existing | BookOpening::New), "{what}: {:?}", opened.opening);
    let here = groups(&opened.store);
    assert!(here.is_superset(&kept.groups), "{what}: an acknowledged answer is lost");
    let draft = opened.store.draft_get("key").unwrap();
    assert!(kept.drafts.contains(&draft), "{what}: {draft:?} is none of {:?}", kept.drafts);
    assert!(opened.store.check().unwrap().is_good(), "{what}");
    assert_eq!(opened.store.accounts().unwrap(), [], "{what}");
    if let Ok(text) = fs::read(place.path("house.json")) {
        assert_eq!(text, vec![b'x'; 9_000], "{what}: a file that is not whole");
    }
    if place.path("by-hand.zip").exists() {
        Store::verify_pack(place.path("by-hand.zip")).unwrap_or_else(|error| panic!("{what}: {error}"));
    }
    for copy in backups(place.path("book.copies")).unwrap() {
        Store::verify_copy(&copy.path).unwrap_or_else(|error| panic!("{what}: {error}"));
    }
    drop(opened);
    let (again, _) = place.run(WHOLE);
    assert!(again.status.success(), "{what}: then {again:?}");
    kept.add(&again);
    assert_eq!(fs::read(place.path("notes.part")).unwrap(), b"the user's own", "{what}");
    let left: Vec<String> =
        place.names().into_iter().filter(|name| name.contains("-part") || name.contains(".damaged")).collect();
    assert!(left.is_empty(), "{what}: {left:?}");
}

#[test]
fn a_call_that_fails_or_is_the_last_one_loses_nothing_and_is_no_damage() {
    let place = Place::new();
    let (output, _) = place.run(WHOLE);
    assert!(output.status.success(), "{output:?}");
    let sorts = calls(&place, &["open", "read", "write", "sync", "name"]);
    assert!(sorts.iter().all(|(_, calls)| *calls > 3), "{sorts:?}");
    let mut errors = faults(&sorts, &ERRORS, count(97, 1));
    errors.extend(faults(&sorts, &["short"], count(61, 1)));
    errors.extend(faults(&calls(&place, &["any"]), &["kill"], count(41, 1)));
    let mut told = 0;
    let mut place = Place::new();
    let mut kept = Kept::new();
    let mut sorts: BTreeMap<String, usize> = BTreeMap::new();
    for (round, fault) in errors.into_iter().enumerate() {
        if round % 20 == 0 {
            (place, kept) = (Place::new(), Kept::new());
        }
        let (output, _) = place.run(fault);
        told += usize::from(!output.status.success());
        let sort = match fault.what {
            "kill" => "stopped at any call".to_owned(),
            "short" => format!("short {}", fault.sort),
            _ => format!("failed {}", fault.sort),
        };
        *sorts.entry(sort).or_default() += 1;
        survives(&place, &mut kept, &output, &format!("{fault:?}: {output:?}"));
    }
    let each = sorts.iter().map(|(sort, many)| format!("{many} {sort}")).collect::<Vec<_>>().join(", ");
    tell(
        "calls that fail, come out short or are the last",
        sorts.values().sum(),
        &format!("{each}; {told} told of, nothing lost, no damage seen"),
    );
}

/// No day is like another: each is stopped at one of its calls.
fn stopped_days(program: &'static str, stops: usize, what: &str) {
    let (mut stopped, mut days) = (0, 0);
    let mut random = Random::new(17);
    let (mut place, mut kept) = (Place::of(program), Kept::new());
    let mut longest = (1..=5).map(|number| place.day(number, WHOLE).1).max().unwrap_or_default();
    while stopped < stops {
        if days % 20 == 0 {
            (place, kept) = (Place::of(program), Kept::new());
        }
        days += 1;
        assert!(days < 20 * stops, "{stopped} of {days} days were stopped");
        let fault = Fault { sort: "any", at: 1 + random.below(longest), what: "kill" };
        let (output, calls) = place.day(days, fault);
        let was_stopped = output.status.signal() == Some(9);
        assert!(was_stopped || output.status.success(), "day {days}: {output:?}");
        stopped += usize::from(was_stopped);
        // A day that ended says how many calls it had.
        longest = longest.max(calls);
        survives(&place, &mut kept, &output, &format!("day {days}, {fault:?}: {output:?}"));
    }
    tell(what, stopped, &format!("of {days} days of as many as {longest} calls, nothing lost"));
}

#[test]
fn a_day_that_is_stopped_at_any_call_loses_nothing() {
    stopped_days(STEPS, count(12, 500), "days of a book stopped at one of their calls");
}

#[test]
fn a_day_of_taps_that_is_stopped_at_any_call_loses_nothing() {
    stopped_days(TAPS, count(8, 2_000), "days of taps stopped at one of their calls");
}

/// A rename may reach the disk before what was written does, so that a file is flushed before it gets its name.
#[test]
fn a_file_is_on_the_disk_before_it_takes_the_place_of_the_old_one() {
    let place = Place::new();
    let file = place.path("house.json");
    let write = |fault: Fault<'_>| {
        fs::write(&file, "old").unwrap();
        let (output, calls) = run(env!("CARGO_BIN_EXE_file_writer"), &[&file], place.folder.path(), fault);
        (output.status.success(), calls, fs::read_to_string(&file).unwrap())
    };
    assert_eq!(write(Fault { sort: "sync", ..WHOLE }), (true, 2, "new".to_owned()), "the file and its folder");
    for what in ["5", "kill"] {
        for (sort, at) in [("open", 1), ("write", 1), ("sync", 1), ("name", 1)] {
            let (good, _, text) = write(Fault { sort, at, what });
            assert_eq!((good, &*text), (false, "old"), "{what} at {sort} {at}");
        }
        let (good, _, text) = write(Fault { sort: "sync", at: 2, what });
        assert_eq!((good, &*text), (false, "new"), "{what}: it may be gone again with the power, so it is no success");
    }
    assert!(write(WHOLE).0);
    assert!(!place.names().iter().any(|name| name.contains("-part")), "{:?}", place.names());
}

/// A damaged book with two copies, and what it and they hold.
fn damaged(first: &Path) -> (Place, BTreeSet<Id>) {
    let place = Place::new();
    let path = place.path("book");
    fs::copy(first, &path).unwrap();
    let (output, _) = place.run(WHOLE);
    assert!(output.status.success());
    let store = open(&path).unwrap().store;
    let all = groups(&store);
    drop(store);
    let mut bytes = fs::read(&path).unwrap();
    for page in [0, 5, 9] {
        bytes[page * 4096..(page + 1) * 4096].fill(0);
    }
    fs::write(&path, bytes).unwrap();
    (place, all)
}

#[test]
fn a_rescue_that_is_stopped_anywhere_is_taken_up_by_the_next_opening() {
    let first = Place::new();
    let mut store = open(&first.path("book")).unwrap().store;
    fill(&mut store, 40).unwrap();
    drop(store);
    let first = first.path("book");
    let (place, _) = damaged(&first);
    let calls = calls(&place, &["any"]);
    let mut faults = faults(&calls, &["kill"], count(37, 1));
    faults.extend(self::faults(&calls, &["5"], count(43, 2)));
    let tried = faults.len();
    let mut whole = 0;
    for fault in faults {
        let (place, all) = damaged(&first);
        let (output, _) = place.run(fault);
        let what = format!("{fault:?}: {output:?}");
        let opened = open(&place.path("book")).unwrap_or_else(|error| panic!("{what}: {error}"));
        let here = groups(&opened.store);
        assert!(here.is_superset(&acknowledged(&output)), "{what}: an acknowledged answer is lost");
        assert!(opened.store.check().unwrap().is_good(), "{what}");
        let accounts = opened.store.accounts().unwrap();
        assert!(!accounts.is_empty(), "{what}: nothing is told");
        assert!(accounts.iter().all(|account| account.found != Found::Another), "{what}: {accounts:?}");
        let told: u64 = accounts.iter().flat_map(|account: &Account| &account.lost).map(Lost::count).sum();
        assert!(all.difference(&here).count() as u64 <= told, "{what}: {accounts:?}");
        whole += usize::from(told == 0);
    }
    tell("rescues stopped at a call", tried, &format!("{whole} end whole, all others with an account"));
}
