//! The Board screen with a notch on a large house: 40 walls, 2,500 boards, 300 penetrations, made by the screens' own
//! actions in a book on disk. The goal is a view under 1 ms.

#![allow(clippy::expect_used, clippy::panic, missing_docs, reason = "a bench that cannot go on must fail")]

use criterion::{Criterion, criterion_group, criterion_main};
use lapwright::book::Book;
use lapwright::handover::take_in_document;
use lapwright::screens::{act, view};
use lapwright::store::OpenOptions;
use lapwright::views::{Action, Context, Place, PoleAction, View, WallAction};
use serde_json::{Value, json};

fn context(n: u64) -> Context {
    Context {
        now_ms: 1_777_896_000_000 + i64::try_from(n).unwrap_or_default() * 1_000,
        utc_offset_minutes: 0,
        signer: "Ines".to_owned(),
        language: "en".to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        dice: n.to_be_bytes().repeat(2),
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

/// The book, and a board of its last wall that meets a block.
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

fn board_view(criterion: &mut Criterion) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("large.lapwright");
    let (mut book, _) = Book::open(&path, &OpenOptions::default()).expect("a book");
    let place = Place::Board { board: fill(&mut book).expect("a large house") };
    let context = context(999);
    criterion.bench_function("board-view-large-house", |bencher| {
        bencher.iter(|| match view(&book, &context, &place) {
            Ok(View::BoardKind { view }) => assert!(!view.notches.is_empty()),
            other => panic!("{other:?}"),
        });
    });
    drop(book);
    criterion.bench_function("open-large-house", |bencher| {
        bencher.iter(|| Book::open(&path, &OpenOptions::default()).expect("a book"));
    });
}

criterion_group!(benches, board_view);
criterion_main!(benches);
