//! How many statements a tap costs, counted by SQLite's own trace hook: the same few at any age and size of the book.

use lapwright::book::Book;
use lapwright::handover::DEMO_HOUSE;
use lapwright::screens::take_in_document;
use lapwright::screens::{act, drawing, remember_place, view};
use lapwright::store::{Author, Change, Id, Now, Op, OpenOptions, Statements, Store, Value};
use lapwright::views::{
    Action, BoardAction, Context, Frame, PenetrationAction, Place, PoleAction, SawListAction, StepHow, StepSaid,
    Subject, View,
};

/// A tap: what a view reads.
const TAP: u64 = 12;
/// A typed key: its draft, whether another program has written, and the view.
const KEY: u64 = 3;

fn context(n: u8) -> Context {
    Context {
        now_ms: 1_777_896_000_000 + i64::from(n) * 1_000,
        utc_offset_minutes: -420,
        signer: "Ines".to_owned(),
        language: "en".to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        entropy: vec![n; 16],
    }
}

/// The demo house with its boards planned, in a book on the disk; its id.
fn planned(book: &mut Book) -> String {
    let Place::House { job } = take_in_document(book, &context(1), DEMO_HOUSE).unwrap().place else {
        panic!("a house")
    };
    act(book, &context(2), &Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } }).unwrap();
    act(book, &context(3), &Action::SawListKind { action: SawListAction::Plan { job: job.clone() } }).unwrap();
    job
}

/// So many gaps that were measured in other years, each an answer of its own.
fn age(book: &mut Book, gaps: u32) {
    for n in 0..gaps {
        let mut id = [9; 16];
        id.iter_mut().zip(n.to_be_bytes()).for_each(|(to, from)| *to = from);
        let subject = Id::from_bytes(id);
        let set = |field: &str, value| Change::Set { subject, field: field.to_owned(), value };
        let length = |nm| Value::Length {
            length: lapwright::measure::Length::from_nm(nm),
            typed: "x".to_owned(),
            unit: "in".to_owned(),
        };
        let changes = vec![
            Change::Create { subject, kind: "fitted".to_owned(), parent: None, sort_key: format!("{n:016}") },
            set("signer", Value::Text("Ines".to_owned())),
            set("saw", Value::Text(String::new())),
            set("gap", length(1_587_500 + i64::from(n))),
            set("offset", length(0)),
        ];
        let op = Op { kind: "gap-fitted".to_owned(), version: 1, job: None, args: Vec::new(), changes };
        let author = Author { signer: "Ines".to_owned(), program: "test".to_owned() };
        book.store_mut().transact(&op, &author, Now { ms: 1_700_000_000_000, utc_offset_minutes: 0 }, &[]).unwrap();
    }
}

struct Counted {
    what: String,
    run: Statements,
}

/// Every screen as the first after the start, then taps, keys and drawings on a book that is open.
fn counts(gaps: u32) -> Vec<Counted> {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("book.lapwright");
    let open = || Book::open(&path, &OpenOptions::default()).unwrap().0;
    // Made in memory, since ten thousand answers each flushed to a disk take their time.
    let mut book = Book::in_memory().unwrap();
    let job = planned(&mut book);
    age(&mut book, gaps);
    book.store().copy(&path).unwrap();
    let View::HouseKind { view: house } = view(&book, &context(0), &Place::House { job: job.clone() }).unwrap() else {
        panic!("a house")
    };
    let wall = house.walls[1].wall.clone();
    let View::WallKind { view: of_wall } = view(&book, &context(0), &Place::Wall { wall: wall.clone() }).unwrap()
    else {
        panic!("a wall")
    };
    let board = of_wall.boards.iter().find(|board| board.notched).unwrap().board.clone();
    let penetration = of_wall.penetrations[0].penetration.clone();
    let places = [
        Place::Jobs,
        Place::House { job: job.clone() },
        Place::Wall { wall: wall.clone() },
        Place::Measure { wall: wall.clone() },
        Place::Board { board: board.clone() },
        Place::Penetration { penetration: penetration.clone() },
        Place::Pole { job: job.clone() },
        Place::Rules { job: job.clone() },
        Place::Settings,
        Place::DoneList { job: Some(job.clone()) },
        Place::SawList { job: job.clone() },
        Place::Order { job: job.clone() },
    ];
    let mut counted = Vec::new();
    for place in places {
        let book = open();
        book.store().count_statements();
        view(&book, &context(0), &place).unwrap();
        let what = format!("cold {}", format!("{place:?}").split(' ').next().unwrap());
        counted.push(Counted { what, run: Store::take_statements() });
    }
    let mut book = open();
    view(&book, &context(0), &Place::Board { board: board.clone() }).unwrap();
    book.store().count_statements();
    let mut tapped = |what: &str, n: u8, action: Action| {
        let outcome = act(&mut book, &context(n), &action).unwrap();
        remember_place(&mut book, &context(n), &outcome.place).unwrap();
        counted.push(Counted { what: what.to_owned(), run: Store::take_statements() });
    };
    let key = |text: &str| Action::BoardKind {
        action: BoardAction::KeepDraft {
            board: board.clone(),
            subject: board.clone(),
            field: "length".to_owned(),
            text: text.to_owned(),
        },
    };
    tapped("first key", 20, key("1"));
    // The first write of a session settles whose book this is, which the next tap sees as news.
    tapped("first key again", 21, key("12"));
    tapped("key", 24, key("121"));
    let said =
        |note: &str| StepSaid { how: StepHow::Tick, note: note.to_owned(), measured: String::new(), photo: None };
    let tick = |step: &str| Action::BoardKind {
        action: BoardAction::SignStep { board: board.clone(), step: step.to_owned(), said: said("") },
    };
    tapped("tick of a board", 22, tick("board-measure"));
    let text = "11 1/2".to_owned();
    let answer = PenetrationAction::Answer { penetration: penetration.clone(), field: "block-width".to_owned(), text };
    tapped("answer of a penetration", 23, Action::PenetrationKind { action: answer });
    let frame =
        Frame { width_dp: 360.0, height_dp: 400.0, answer_dp: 24.0, label_dp: 16.0, small_dp: 14.0, left_hand: false };
    drawing(&book, &context(0), &Subject::BoardFace { board }, &frame).unwrap();
    counted.push(Counted { what: "drawing".to_owned(), run: Store::take_statements() });
    counted
}

#[test]
fn a_tap_reads_in_a_handful_of_statements_whatever_the_age_of_the_book() {
    let (young, old) = (counts(1), counts(10_000));
    for (young, old) in young.iter().zip(&old) {
        println!("{}: {} reads of {} statements", old.what, old.run.reads, old.run.all);
        assert_eq!(young.run, old.run, "{} at 1 and at 10,000 gaps", old.what);
        assert!(old.run.reads <= TAP, "{}: {:?}", old.what, old.run);
        if old.what.ends_with("key") {
            assert!(old.run.all <= KEY || old.what.starts_with("first"), "{}: {:?}", old.what, old.run);
        }
    }
}
