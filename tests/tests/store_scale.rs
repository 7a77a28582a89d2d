//! Many phones and many years: a crew that hands files to each other in random pairs, and a book of a thousand houses. Short in
//! the tests; `cargo xtask bench --scale` runs them in full, optimised, and holds the times to their goals.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use lapwright::store::{
    AHEAD, Change, ExchangeOffer, Hash, Id, Now, Op, OpenOptions, Overwrite, SignOff, State, Store, Value,
};
use lapwright_tests::book::{author, below, count, entries, now, op, tell};
use lapwright_tests::random::Random;
use tempfile::TempDir;

/// Noon of a day of this project.
const TODAY: i64 = 1_780_000_000_000;
const DAY: i64 = 86_400_000;

fn id(number: u64) -> Id {
    let mut bytes = [11; 16];
    bytes.iter_mut().zip(number.to_be_bytes()).for_each(|(to, from)| *to = from);
    Id::from_bytes(bytes)
}

fn make(number: u64, kind: &str, parent: Option<Id>) -> Change {
    Change::Create { subject: id(number), kind: kind.to_owned(), parent, sort_key: format!("{number:08}") }
}

fn set(subject: Id, value: i64) -> Change {
    Change::Set { subject, field: format!("f{}", value % 7), value: Value::Whole(value) }
}

fn sign(subject: Id, step: i64) -> Change {
    Change::SignOff(SignOff {
        subject,
        step: format!("step-{}", step % 9),
        state: State::Done,
        signer: "Ada".to_owned(),
        note: String::new(),
        reason: String::new(),
        measured: None,
        photo: None,
        detail_hash: Hash::NONE,
    })
}

/// How often something was done and how long it took.
#[derive(Default)]
struct Times {
    all: Vec<Duration>,
}

impl Times {
    fn of<T>(&mut self, work: impl FnOnce() -> T) -> T {
        let start = Instant::now();
        let done = work();
        self.all.push(start.elapsed());
        done
    }

    fn told(&mut self) -> String {
        self.all.sort_unstable();
        let ms = |time: Option<&Duration>| time.map_or(0.0, |time| time.as_secs_f64() * 1000.0);
        let (middle, last) = (ms(self.all.get(self.all.len() / 2)), ms(self.all.last()));
        format!("{} times, {middle:.0} ms in the middle, {last:.0} ms at most", self.all.len())
    }
}

struct Phone {
    folder: TempDir,
    store: Store,
    /// What its clock says on the day that it is.
    clock: fn(i64) -> i64,
}

impl Phone {
    fn new(number: usize) -> Self {
        let clock: fn(i64) -> i64 = match number {
            0 => |ms| ms + 70 * 365 * DAY,
            1 => |_| 1_000,
            2 => |ms| ms - 3 * 3_600_000,
            _ => |ms| ms,
        };
        Self { folder: tempfile::tempdir().unwrap(), store: Store::in_memory().unwrap(), clock }
    }

    fn answer(&mut self, ms: i64, house: u64, change: Change) {
        let op = Op { job: Some(id(house)), ..op(vec![change]) };
        self.store.transact(&op, &author(), now((self.clock)(ms)), &[]).unwrap();
    }

    /// A file for a colleague: one house of it, or all.
    fn hand_over(&mut self, house: Option<u64>) -> PathBuf {
        let path = self.folder.path().join("for-a-colleague");
        let _ = fs::remove_file(&path);
        match house {
            Some(house) => drop(self.store.hand_over(id(house), &path, true, Overwrite::Never).unwrap()),
            None => self.store.copy(&path).unwrap(),
        }
        path
    }

    /// Takes a file in as a person does: looks at it, compares the words, says yes to a clock that is wrong.
    fn take_in(&mut self, file: &Path, ms: i64, look: &mut Times, take: &mut Times) {
        let here = now((self.clock)(ms));
        let (offer, preview) = look.of(|| {
            let offer = ExchangeOffer::read(file).unwrap();
            let preview = self.store.preview(&offer, None, here).unwrap();
            (offer, preview)
        });
        assert_eq!(preview.refused, []);
        for sender in &preview.senders {
            self.store.trust(sender.device).unwrap();
        }
        let latest = if preview.ahead.is_some() { i64::MAX } else { here.ms + AHEAD };
        let copies = self.folder.path().join("copies");
        let (taken, _) = take.of(|| self.store.take_in_offer(&offer, None, latest, copies, here).unwrap());
        assert_eq!(taken.new, preview.new);
    }
}

/// Forty phones for a year: two hundred houses, of ten files one is lost, one clock is seventy years ahead, one stands in 1970 and
/// one goes three hours after. In the end everybody gives the foreman a copy of the book, who gives one to everybody.
#[test]
fn a_crew_that_hands_files_to_each_other_for_a_year_ends_with_the_same() {
    let (phones, weeks, houses) = (count(4, 40), count(4, 52), count(4, 200) as u64);
    let (answers, meetings) = (count(2, 6), count(3, 8));
    let mut random = Random::new(41);
    let mut crew: Vec<Phone> = (0..phones).map(Phone::new).collect();
    for house in 0..houses {
        crew[3].answer(TODAY, house, make(house, "job", None));
    }
    let (mut look, mut take, mut hand) = (Times::default(), Times::default(), Times::default());
    let (mut made, mut lost, mut largest_house) = (houses as usize, 0, 0);
    let first = crew[3].hand_over(None);
    for phone in (0..phones).filter(|phone| *phone != 3) {
        crew[phone].take_in(&first, TODAY, &mut look, &mut take);
    }
    for week in 0..weeks as i64 {
        for (number, phone) in crew.iter_mut().enumerate() {
            for answer in 0..answers as i64 {
                let ms = TODAY + week * 7 * DAY + answer * DAY + number as i64;
                let house = below(&mut random, houses as usize) as u64;
                let change = if answer % 3 == 2 { sign(id(house), ms) } else { set(id(house), ms) };
                phone.answer(ms, house, change);
                made += 1;
            }
        }
        let ms = TODAY + (week + 1) * 7 * DAY;
        for _ in 0..meetings {
            let (one, other) = (below(&mut random, phones), below(&mut random, phones));
            for (from, to) in [(one, other), (other, one)].into_iter().filter(|(from, to)| from != to) {
                let house = (below(&mut random, 4) > 0).then(|| below(&mut random, houses as usize) as u64);
                let file = hand.of(|| crew[from].hand_over(house));
                if below(&mut random, 10) == 0 {
                    lost += 1;
                    continue;
                }
                if house.is_some() {
                    largest_house = largest_house.max(fs::metadata(&file).unwrap().len());
                }
                crew[to].take_in(&file, ms, &mut look, &mut take);
            }
        }
    }
    let ms = TODAY + (weeks as i64 + 1) * 7 * DAY;
    for from in 1..phones {
        let file = crew[from].hand_over(None);
        crew[0].take_in(&file, ms, &mut look, &mut take);
    }
    let whole = crew[0].hand_over(None);
    for phone in crew.iter_mut().skip(1) {
        phone.take_in(&whole, ms, &mut look, &mut take);
    }
    let hashes: BTreeSet<Hash> = crew.iter().map(|phone| phone.store.content_hash().unwrap()).collect();
    assert_eq!(hashes.len(), 1);
    for phone in [0, 1, phones - 1] {
        assert_eq!(entries(&crew[phone].store).unwrap().len(), made);
        assert!(crew[phone].store.check().unwrap().is_good());
    }
    let kb = |bytes: u64| bytes.div_ceil(1000);
    tell(
        "phones of a crew that hand over files",
        phones,
        &format!(
            "{made} answers in {weeks} weeks and {houses} houses, all hold the same; {lost} files lost; a house at most {} KB, the \
             book {} KB; handing over {}; looking {}; taking in {}",
            kb(largest_house),
            kb(fs::metadata(&whole).unwrap().len()),
            hand.told(),
            look.told(),
            take.told(),
        ),
    );
}

/// Answers to as many houses, on the disk, ten thousand held together.
fn fill(store: &mut Store, houses: u64, answers: u64) {
    const TOGETHER: u64 = 10_000;
    for from in (0..answers).step_by(TOGETHER as usize) {
        store.begin_together();
        for number in from..(from + TOGETHER).min(answers) {
            let house = number % houses;
            let change = match number / houses {
                0 => make(house, "job", None),
                round if round % 3 == 2 => sign(id(house), number as i64),
                _ => set(id(house), number as i64),
            };
            let op = Op { job: Some(id(house)), ..op(vec![change]) };
            store.transact(&op, &author(), now(TODAY + number as i64), &[]).unwrap();
        }
        store.end_together(true).unwrap();
    }
}

/// Ticks by themselves, each on the disk, in microseconds: the middle one.
fn tick(store: &mut Store, from: i64, many: usize) -> f64 {
    let mut times = Times::default();
    for number in 0..many as i64 {
        times.of(|| store.transact(&op(vec![sign(id(0), number)]), &author(), now(from + number), &[]).unwrap());
    }
    times.all.sort_unstable();
    times.all[many / 2].as_secs_f64() * 1e6
}

/// A thousand houses and two million answers: opened, ticked and merged about as fast as a young book.
#[test]
fn a_book_of_a_thousand_houses_opens_ticks_and_merges() {
    let full = count(0, 1) == 1;
    let (houses, answers) = (count(20, 1_000) as u64, count(1_000, 2_000_000) as u64);
    let (many, ticks) = (count(500, 50_000), count(40, 400));
    let folder = tempfile::tempdir().unwrap();
    let open = |name: &str| Store::open(folder.path().join(name), &OpenOptions::default()).unwrap().store;
    let mut young = open("young");
    fill(&mut young, 1, 1);
    let mut store = open("old");
    fill(&mut store, houses, answers);
    drop(store);
    let path = folder.path().join("old");
    let mut opening = Times::default();
    for _ in 0..5 {
        drop(opening.of(|| open("old")));
    }
    opening.all.sort_unstable();
    let opened = opening.all[2].as_secs_f64() * 1000.0;
    let mut store = open("old");
    // By turns, so that whatever else the machine does falls on both; the first of each warm up.
    let mut ratios: Vec<f64> = (0..7)
        .map(|round| {
            let from = TODAY + answers as i64 + round * 10_000;
            let old = tick(&mut store, from, ticks);
            old / tick(&mut young, from, ticks)
        })
        .collect();
    ratios.sort_unstable_by(f64::total_cmp);
    let ratio = ratios[3];
    let mut other = Store::in_memory().unwrap();
    fill(&mut other, many as u64, many as u64);
    let theirs: Vec<_> = entries(&other).unwrap();
    let start = Instant::now();
    let taken = store.take_in(&theirs, i64::MAX).unwrap();
    let merged = start.elapsed().as_secs_f64();
    assert_eq!(taken.new, many);
    let bytes = fs::metadata(&path).unwrap().len();
    tell(
        "answers of a large book",
        answers as usize,
        &format!(
            "{houses} houses, {} MB; opened in {opened:.1} ms, a tick {ratio:.2} times that of an empty book, {many} answers merged in \
             {merged:.2} s",
            bytes / 1_000_000
        ),
    );
    let backed_up = backed_up(&store, folder.path());
    tell("answers of a large book that was backed up", answers as usize, &backed_up);
    if full {
        assert!(opened < 100.0 && ratio <= 1.3 && merged < 5.0, "{opened} ms, {ratio}, {merged} s");
    }
}

/// Backs a book up, checked from end to end before it counts, and says how long that takes beside writing as many bytes.
fn backed_up(store: &Store, folder: &Path) -> String {
    let start = Instant::now();
    let backup = store.backup(folder.join("copies"), Now { ms: TODAY, utc_offset_minutes: 0 }).unwrap();
    let all = start.elapsed();
    let plain = folder.join("plain");
    let start = Instant::now();
    fs::copy(&backup.path, &plain).unwrap();
    fs::File::open(&plain).unwrap().sync_all().unwrap();
    let alone = start.elapsed();
    fs::remove_file(plain).unwrap();
    let (seconds, mb) = (|time: Duration| time.as_secs_f64(), backup.bytes().unwrap() / 1_000_000);
    let memory = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let most = memory.lines().find_map(|line| line.strip_prefix("VmHWM:")).unwrap_or("?").trim().to_owned();
    format!(
        "{mb} MB in {:.2} s, all checked; writing alone {:.2} s; so far {most} of memory at most",
        seconds(all),
        seconds(alone)
    )
}

/// A book of some years, and nobody else at work.
#[test]
fn a_backup_is_made_and_checked() {
    let (houses, answers) = (count(5, 50) as u64, count(500, 100_000) as u64);
    let folder = tempfile::tempdir().unwrap();
    let mut store = Store::open(folder.path().join("book"), &OpenOptions::default()).unwrap().store;
    fill(&mut store, houses, answers);
    tell("answers of a book that was backed up", answers as usize, &backed_up(&store, folder.path()));
    let copy = lapwright::store::backups(folder.path().join("copies")).unwrap().remove(0);
    Store::verify_copy(&copy.path).unwrap();
}
