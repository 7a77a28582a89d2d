//! How long the book takes: a tick, beside a bare commit on the same disk, and opening a large book.
//!
//! Goals: a tick in at most 1.3 times the bare commit, opening 30,000 fields in less than 50 ms.
#![allow(clippy::expect_used, clippy::print_stdout, missing_docs, reason = "a bench prints what it measures")]

mod bare;

use std::hint::black_box;

use bare::{Bare, quartiles, timed};
use criterion::{Criterion, criterion_group, criterion_main};
use lapwright::store::{Author, Change, Hash, Id, Now, Op, OpenOptions, SignOff, State, Store, Value};

type Outcome = Result<(), Box<dyn std::error::Error>>;

const ROUNDS: usize = 30;
const TURN: usize = 20;
const SUBJECTS: u32 = 3_000;
const FIELDS: u32 = 10;

fn id(number: u32) -> Id {
    let mut bytes = [7; 16];
    bytes.iter_mut().zip(number.to_be_bytes()).for_each(|(to, from)| *to = from);
    Id::from_bytes(bytes)
}

fn answer(store: &mut Store, ms: i64, kind: &str, changes: Vec<Change>) -> Outcome {
    let op = Op { kind: kind.to_owned(), version: 1, job: Some(id(0)), args: vec!["Vent, north".to_owned()], changes };
    let author = Author { signer: "Ada".to_owned(), program: "0.1.0".to_owned() };
    store.transact(&op, &author, Now { ms, utc_offset_minutes: 60 }, &[])?;
    Ok(())
}

fn create(number: u32) -> Change {
    Change::Create { subject: id(number), kind: "penetration".to_owned(), parent: None, sort_key: String::new() }
}

fn tick(store: &mut Store, ms: i64) -> Outcome {
    let sign_off = SignOff {
        subject: id(0),
        step: "prime-cut-edges".to_owned(),
        state: State::Done,
        signer: "Ada".to_owned(),
        note: String::new(),
        reason: String::new(),
        measured: None,
        photo: None,
        detail_hash: Hash::NONE,
    };
    answer(store, ms, "step.signed", vec![Change::SignOff(sign_off)])
}

/// Durable ticks and bare commits by turns of some each, so that whatever else the machine does falls on both.
fn tick_beside_bare(criterion: &mut Criterion) {
    let folder = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(folder.path().join("book"), &OpenOptions::default()).expect("a new book").store;
    let mut bare = Bare::open(&folder.path().join("bare")).expect("a bare database");
    answer(&mut store, 0, "penetration.added", vec![create(0)]).expect("a subject");
    let mut ms = 0;
    let mut one_tick = || {
        ms += 1;
        tick(&mut store, ms).expect("a tick");
    };
    let mut one_bare = || bare.commit().expect("a bare commit");
    // A log that still grows pays for its growth, so both are first written as long as they get: 1000 pages.
    (0..1100).for_each(|_| one_bare());
    (0..200).for_each(|_| one_tick());
    let (mut ticks, mut bares) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        (0..TURN).for_each(|_| bares.push(timed(&mut one_bare)));
        (0..TURN).for_each(|_| ticks.push(timed(&mut one_tick)));
    }
    for (what, of) in [("median", median as fn(&mut [f64]) -> f64), ("mean", mean)] {
        let (tick, bare) = (of(&mut ticks), of(&mut bares));
        let ratio = tick / bare;
        println!("{what}: tick {tick:.0} µs, bare commit {bare:.0} µs, ratio {ratio:.2} (goal: at most 1.3)");
    }
    criterion.bench_function("bare-commit", |bencher| bencher.iter(&mut one_bare));
    criterion.bench_function("tick", |bencher| bencher.iter(&mut one_tick));

    let mut memory = Store::in_memory().expect("a book in memory");
    answer(&mut memory, 0, "penetration.added", vec![create(0)]).expect("a subject");
    criterion.bench_function("tick-in-memory", |bencher| {
        bencher.iter(|| {
            ms += 1;
            tick(&mut memory, ms).expect("a tick");
        });
    });
}

fn median(times: &mut [f64]) -> f64 {
    let [_, middle, _] = quartiles(times);
    middle
}

fn mean(times: &mut [f64]) -> f64 {
    times.iter().sum::<f64>() / times.len() as f64
}

fn opening(criterion: &mut Criterion) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("book");
    let mut store = Store::in_memory().expect("a book in memory");
    for number in 0..SUBJECTS {
        let set = |field| Change::Set {
            subject: id(number),
            field: format!("reading.{field}"),
            value: Value::Whole(i64::from(number * field)),
        };
        let changes = std::iter::once(create(number)).chain((0..FIELDS).map(set)).collect();
        answer(&mut store, i64::from(number), "penetration.measured", changes).expect("an answer");
    }
    store.copy(&path).expect("a copy on the disk");
    let open = || Store::open(black_box(&path), &OpenOptions::default()).expect("the book");
    drop(open());
    criterion.bench_function("open-30000-fields", |bencher| bencher.iter(open));
}

criterion_group!(benches, tick_beside_bare, opening);
criterion_main!(benches);
