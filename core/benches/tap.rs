//! Taps on a board with a notch, in a book on disk: on the demo house, and on a large one of 40 walls, 2,500 boards and 300
//! penetrations. Each prints the statements that it costs. The goal is a view under 1 ms, and a tick that costs little more
//! than its commit.

#![allow(clippy::expect_used, clippy::panic, missing_docs, reason = "a bench that cannot go on must fail")]

mod bare;

use bare::{Bare, quartiles, timed};
use criterion::{Criterion, criterion_group, criterion_main};
use lapwright::book::Book;
use lapwright::handover::DEMO_HOUSE;
use lapwright::screens::take_in_document;
use lapwright::screens::{act, drawing, view};
use lapwright::store::{OpenOptions, Store};
use lapwright::views::{
    Action, BoardAction, Context, Frame, Place, PoleAction, SawListAction, StepHow, StepSaid, Subject, View, WallAction,
};
use serde_json::{Value, json};

fn context(n: u64) -> Context {
    Context {
        now_ms: 1_777_896_000_000 + i64::try_from(n).unwrap_or_default() * 1_000,
        utc_offset_minutes: 0,
        signer: "Ines".to_owned(),
        language: "en".to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        entropy: n.to_be_bytes().repeat(2),
    }
}

fn wall(n: usize) -> Value {
    let penetration = |at: usize| {
        json!({"what": "hose-bib", "width": "1 in",
               "from-left": format!("{} in", 40 + 52 * at), "from-base": format!("{} in", 16 + 9 * at)})
    };
    // 20 walls with eight and 20 with seven make 300.
    let penetrations: Vec<Value> = (0..7 + n % 2).map(penetration).collect();
    json!({"name": format!("Wall {n}"), "width": "40 ft", "left-height": "9 ft", "right-height": "9 ft", "base": "0 in",
           "first-stud": "0 in", "stud-spacing": "16 in", "trim-left": "0 in", "trim-right": "0 in",
           "penetrations": penetrations})
}

fn house() -> Value {
    json!({"lapwright": 1, "name": "Large house", "board-height": "8 1/4 in", "board-thickness": "5/16 in",
           "lap": "1 1/4 in", "nail-line": "3/4 in", "stock": [{"length": "12 ft"}],
           "pole": {"from": "0 in", "to": "108 in", "mode": "equal", "reveal-max": "7 in", "reveal-min": "5 in"},
           "walls": (0..40).map(wall).collect::<Vec<_>>()})
}

/// The large house, and a board of its last wall that meets a block.
fn fill(book: &mut Book) -> Result<String, Box<dyn std::error::Error>> {
    let Place::House { job } = take_in_document(book, &context(1), &house().to_string())?.place else {
        return Err("a house opens".into());
    };
    let laid_out = act(book, &context(2), &Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } })?;
    assert!(matches!(laid_out.place, Place::Pole { .. }));
    let View::HouseKind { view: house } = view(book, &context(3), &Place::House { job })? else {
        return Err("a house".into());
    };
    let (mut boards, mut penetrations, mut notched) = (0, 0, String::new());
    for (n, line) in (10..).zip(&house.walls) {
        let action = WallAction::PlanBoards { wall: line.wall.clone() };
        let View::WallKind { view: wall } = act(book, &context(n), &Action::WallKind { action })?.view else {
            return Err("a wall".into());
        };
        boards += wall.boards.len();
        penetrations += wall.penetrations.len();
        notched = wall.boards.into_iter().find(|board| board.notched).map(|board| board.board).unwrap_or(notched);
    }
    println!("{} walls, {boards} boards, {penetrations} penetrations", house.walls.len());
    assert!(house.walls.len() == 40 && boards >= 2_500 && penetrations == 300);
    Ok(notched)
}

/// The demo house with its boards planned, and its first board that meets a block.
fn fill_small(book: &mut Book) -> Result<String, Box<dyn std::error::Error>> {
    let Place::House { job } = take_in_document(book, &context(1), DEMO_HOUSE)?.place else {
        return Err("a house opens".into());
    };
    act(book, &context(2), &Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } })?;
    act(book, &context(3), &Action::SawListKind { action: SawListAction::Plan { job: job.clone() } })?;
    let View::HouseKind { view: house } = view(book, &context(4), &Place::House { job })? else {
        return Err("a house".into());
    };
    for line in &house.walls {
        let View::WallKind { view } = view(book, &context(5), &Place::Wall { wall: line.wall.clone() })? else {
            continue;
        };
        if let Some(board) = view.boards.into_iter().find(|board| board.notched) {
            return Ok(board.board);
        }
    }
    Err("no board meets a block".into())
}

fn counted<T>(book: &Book, what: &str, work: impl FnOnce() -> T) -> T {
    book.store().count_statements();
    let done = work();
    let run = Store::take_statements();
    println!("{what}: {} statements, {} of them reads", run.all, run.reads);
    done
}

/// The boards of a wall on which measuring comes first.
fn measured_first(book: &Book, wall: &str) -> Vec<String> {
    let Ok(View::WallKind { view: wall }) = view(book, &context(999), &Place::Wall { wall: wall.to_owned() }) else {
        panic!("a wall");
    };
    let first = |board: &String| match view(book, &context(999), &Place::Board { board: board.clone() }) {
        Ok(View::BoardKind { view }) => view.steps.first().is_some_and(|step| step.code == "board-measure"),
        other => panic!("{other:?}"),
    };
    wall.boards.into_iter().map(|line| line.board).filter(first).collect()
}

/// One tap that signs the first step of a board: the answer on the disk, the house brought up to date, the view of the board.
fn tick(book: &mut Book, board: &str, n: u64) {
    let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    let action = BoardAction::SignStep { board: board.to_owned(), step: "board-measure".to_owned(), said };
    act(book, &context(n), &Action::BoardKind { action }).expect("what was tapped");
}

/// Every board of a wall is ticked once, in a copy of the book, and as many bare commits are made by turns with them; then again
/// in another copy. Nobody signs one step a thousand times, so that no board is ticked twice.
fn tick_beside_bare(house: &str, book: &Book, boards: &[String]) {
    const BOOKS: usize = 20;
    let folder = tempfile::tempdir().expect("a folder");
    let mut bare = Bare::open(&folder.path().join("bare")).expect("a bare database");
    (0..1100).for_each(|_| bare.commit().expect("a bare commit"));
    let (mut ticks, mut bares, mut told) = (Vec::new(), Vec::new(), false);
    for number in 0..BOOKS {
        let path = folder.path().join(format!("book-{number}"));
        book.store().copy(&path).expect("a copy");
        let (mut book, _) = Book::open(&path, &OpenOptions::default()).expect("a book");
        // The first answer makes the copy a book of this device, and the second reads it anew for that.
        let (warm, boards) = boards.split_at(2);
        warm.iter().zip(1_000..).for_each(|(board, n)| tick(&mut book, board, n));
        for (n, board) in (1_002..).zip(boards) {
            bares.push(timed(|| bare.commit().expect("a bare commit")));
            if told {
                ticks.push(timed(|| tick(&mut book, board, n)));
            } else {
                book.store().count_statements();
                tick(&mut book, board, n);
                let run = Store::take_statements();
                println!("{house}: tick: {} statements, {} of them reads", run.all, run.reads);
                told = true;
            }
        }
    }
    let [_, bare, _] = quartiles(&mut bares);
    let [low, middle, high] = quartiles(&mut ticks);
    println!("{house}: a bare commit by turns with {} ticks: {bare:.0} µs", ticks.len());
    println!("tick-{house} time: [{low:.2} µs {middle:.2} µs {high:.2} µs]");
}

/// A view, a tick, a typed key and a drawing of a board.
fn taps(criterion: &mut Criterion, house: &str, fill: fn(&mut Book) -> Result<String, Box<dyn std::error::Error>>) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("book.lapwright");
    let (mut book, _) = Book::open(&path, &OpenOptions::default()).expect("a book");
    let board = fill(&mut book).expect("a house");
    let place = Place::Board { board: board.clone() };
    drop(book);
    let (mut book, _) = Book::open(&path, &OpenOptions::default()).expect("a book");
    let show = |book: &Book| match view(book, &context(999), &place) {
        Ok(View::BoardKind { view }) => assert!(!view.notches.is_empty()),
        other => panic!("{other:?}"),
    };
    counted(&book, &format!("{house}: first view after the start"), || show(&book));
    counted(&book, &format!("{house}: view"), || show(&book));
    criterion.bench_function(&format!("board-view-{house}"), |bencher| bencher.iter(|| show(&book)));

    let Ok(View::BoardKind { view: shown }) = view(&book, &context(999), &place) else { panic!("a board") };
    let turns = measured_first(&book, &shown.wall);
    tick_beside_bare(house, &book, &turns);

    let key = |book: &mut Book, text: &str| {
        let (board, text) = (board.clone(), text.to_owned());
        let action = BoardAction::KeepDraft { subject: board.clone(), board, field: "length".to_owned(), text };
        act(book, &context(999), &Action::BoardKind { action }).expect("a key")
    };
    key(&mut book, "1");
    book.store().count_statements();
    key(&mut book, "12");
    let run = Store::take_statements();
    println!("{house}: key: {} statements, {} of them reads", run.all, run.reads);
    let mut keys = ["1", "12"].into_iter().cycle();
    criterion.bench_function(&format!("key-{house}"), |bencher| {
        bencher.iter(|| key(&mut book, keys.next().unwrap_or_default()));
    });

    let frame =
        Frame { width_dp: 360.0, height_dp: 400.0, answer_dp: 24.0, label_dp: 16.0, small_dp: 14.0, left_hand: false };
    let subject = Subject::BoardFace { board: board.clone() };
    let draw = |book: &Book| drawing(book, &context(999), &subject, &frame).expect("a drawing");
    counted(&book, &format!("{house}: drawing"), || draw(&book));
    criterion.bench_function(&format!("drawing-{house}"), |bencher| bencher.iter(|| draw(&book)));

    drop(book);
    criterion.bench_function(&format!("open-{house}"), |bencher| {
        bencher.iter(|| Book::open(&path, &OpenOptions::default()).expect("a book"));
    });
}

fn small(criterion: &mut Criterion) {
    taps(criterion, "small-house", fill_small);
}

fn large(criterion: &mut Criterion) {
    taps(criterion, "large-house", fill);
}

criterion_group!(benches, small, large);
criterion_main!(benches);
