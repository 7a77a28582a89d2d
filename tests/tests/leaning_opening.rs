//! A window out of plumb from the job document to the order, by hand. Its left side stands at 100 in at the sill (28 in above
//! the base line) and at 100 1/2 in at the head (76 in), its right side at 141 and 140 in; it leans by 1/96 and -1/48 an
//! inch. Elementary geometry throughout.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a check stops at what it did not expect"
)]

use lapwright::book::Book;
use lapwright::handover::job_document;
use lapwright::measure::Length;
use lapwright::screens::take_in_document;
use lapwright::screens::{act, view};
use lapwright::views::{
    Action, BoardLine, BoardView, Corner, Given, MeasureAction, Outcome, Place, PoleAction, Problem, View, WallAction,
    WallView,
};
use lapwright_tests::context;

const INCH: i64 = Length::NM_PER_INCH;

/// `HEAD` stands where the readings at the head do.
const HOUSE: &str = r#"{
  "lapwright": 1, "name": "Old Forge",
  "board-height": "8 1/4 in", "board-thickness": "5/16 in", "lap": "1 1/4 in", "nail-line": "3/4 in",
  "stock": [{ "length": "12 ft" }],
  "pole": { "from": "0 in", "to": "96 in", "mode": "fixed", "reveal": "7 in", "reveal-max": "7 in", "reveal-min": "5 in" },
  "walls": [{
    "name": "Lane", "width": "240 in", "left-height": "96 in", "right-height": "96 in", "base": "0 in",
    "first-stud": "0 in", "stud-spacing": "16 in", "trim-left": "0 in", "trim-right": "0 in",
    "openings": [{
      "what": "window", "from-left": "100 in", "width": "41 in", "from-base": "28 in", "height": "48 in"HEAD
    }]
  }]
}"#;
const LEANS: &str = r#", "head-from-left": "100 1/2 in", "head-width": "39 1/2 in""#;

fn planned(head: &str) -> (Book, String, WallView) {
    let mut book = Book::in_memory().unwrap();
    let outcome = take_in_document(&mut book, &context(1), &HOUSE.replace("HEAD", head)).unwrap();
    let (Place::House { job }, View::HouseKind { view }) = (outcome.place, outcome.view) else { panic!("a house") };
    let wall = view.walls[0].wall.clone();
    act(&mut book, &context(2), &Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } }).unwrap();
    act(&mut book, &context(3), &Action::WallKind { action: WallAction::PlanBoards { wall: wall.clone() } }).unwrap();
    let wall = shown(&book, &wall);
    (book, job, wall)
}

fn shown(book: &Book, wall: &str) -> WallView {
    match view(book, &context(0), &Place::Wall { wall: wall.to_owned() }).unwrap() {
        View::WallKind { view } => view,
        other => panic!("{other:?}"),
    }
}

fn board(book: &Book, line: &BoardLine) -> BoardView {
    match view(book, &context(0), &Place::Board { board: line.board.clone() }).unwrap() {
        View::BoardKind { view } => view,
        other => panic!("{other:?}"),
    }
}

fn course(wall: &WallView, course: i64) -> Vec<&BoardLine> {
    wall.boards.iter().filter(|board| board.course == course).collect()
}

fn note(view: &BoardView, code: &str) -> String {
    view.notes.iter().find(|note| note.code == code).map(|note| note.text.clone()).unwrap_or_default()
}

/// The sixth course lies from 35 to 43 1/4 in. There the left side runs from 100 7/96 = 100.072917 to 100 15.25/96 =
/// 100.158854 in, the right side from 141 - 7/48 = 140.854167 to 141 - 15.25/48 = 140.682292 in.
#[test]
fn boards_beside_it_get_their_end_cuts() {
    let (book, _, wall) = planned(LEANS);
    let [left, right] = course(&wall, 6)[..] else { panic!("{:?}", course(&wall, 6)) };
    // 100.158854 less 1/8 in at each end is 99.908854 in, down to the sixteenth; 240 - 140.682292 - 1/4 is 99.067708 in.
    assert_eq!((left.length.text.as_str(), right.length.text.as_str()), ("99 7/8\"", "99 1/16\""));
    let near = |at: i64, millionths: i64| (at - millionths * INCH / 1_000_000).abs() <= INCH / 1_000_000;
    assert!(near(left.at.right, 100_033_854) && near(right.at.left, 140_807_292), "{left:?} {right:?}");
    // 8 1/4 in of 1/96 is 11/128 in, of 1/48 is 11/64 in; half a sixteenth matters for a mark.
    let (beside, after) = (board(&book, left), board(&book, right));
    assert!(note(&beside, "bevel-right").contains("ends 3/32\" to the right"), "{}", note(&beside, "bevel-right"));
    assert!(note(&after, "bevel-left").contains("begins 3/16\" to the left"), "{}", note(&after, "bevel-left"));
    assert_eq!((note(&beside, "bevel-left"), note(&after, "bevel-right")), (String::new(), String::new()));
    assert!(!left.notched && !right.notched && beside.notches.is_empty() && after.notches.is_empty());
    assert!(beside.steps.iter().any(|step| step.text.contains("both edges")), "{:?}", beside.steps);
}

/// Every course is covered: what its boards and the opening take at a board's upper edge makes the wall.
#[test]
fn boards_and_opening_share_the_wall() {
    let (_, _, wall) = planned(LEANS);
    for number in 1..=13 {
        let boards = course(&wall, number);
        let covered: i64 = boards.iter().map(|board| board.at.right - board.at.left).sum();
        let gaps = if boards.len() == 2 && boards[0].at.right < boards[1].at.left { 4 } else { 2 };
        let (low, high) = (boards[0].at.bottom, boards[0].at.top);
        // The window parts the courses from 28 in on up to 76 in, and that of which only the lap would be left.
        let open = if low >= 28 * INCH && high <= (76 * INCH + 5 * INCH / 4) {
            // Each board reaches as far as the window leaves it at its upper edge, where both sides leave most.
            let (left, right) = ((high - 28 * INCH) / 96, (high - 28 * INCH) / 48);
            41 * INCH - left - right
        } else {
            0
        };
        assert_eq!(gaps == 4, open > 0, "course {number}");
        assert!((covered + open + gaps * INCH / 8 - 240 * INCH).abs() <= 4, "course {number}: {covered} and {open}");
    }
}

/// The fourth course lies from 21 to 29 1/4 in, the eleventh from 70 to 78 1/4 in: the window is widest there at its sill,
/// 100 to 141 in, and at 70 in, 100 42/96 = 100 7/16 to 141 - 42/48 = 140 1/8 in.
#[test]
fn boards_at_sill_and_head_are_notched_as_wide_as_it_is_there() {
    let (book, _, wall) = planned(LEANS);
    let read = |number: i64| {
        let boards = course(&wall, number);
        let (line, notch) = boards
            .iter()
            .find_map(|line| board(&book, line).notches.first().cloned().map(|notch| (*line, notch)))
            .unwrap_or_else(|| panic!("course {number} is notched"));
        let of = |field: &str| {
            let question = notch.questions.iter().find(|question| question.field == field).unwrap();
            line.at.left + question.reading.clone().unwrap().nm
        };
        (of("left"), of("right"))
    };
    assert_eq!(read(4), (100 * INCH, 141 * INCH));
    assert_eq!(read(11), (100 * INCH + 7 * INCH / 16, 140 * INCH + INCH / 8));
}

/// By hand: a trapezium of (41 + 39 1/2) / 2 by 48 in, 1932 sq in, out of 240 by 96 in leaves 21108 sq in, 146.6 sq ft;
/// the sides measure `sqrt(48^2 + 1/4) = 48.0026` and `sqrt(48^2 + 1) = 48.0104` in, with 39 1/2 and 41 in 176.513 in, which
/// are 14.71 ft, up to the tenth. Plumb it were 41 by 48 in: 146.4 sq ft (146.33, up), 178 in or 14.84 ft.
#[test]
fn amounts_follow() {
    for (head, paint, trim) in [(LEANS, "146.6", "14.8 ft"), ("", "146.4", "14.9 ft")] {
        let (book, job, _) = planned(head);
        let View::OrderKind { view } = view(&book, &context(0), &Place::Order { job }).unwrap() else {
            panic!("order")
        };
        let line = |code: &str| view.lines.iter().find(|line| line.code == code).unwrap();
        assert!(line("paint").from.contains(paint), "{}", line("paint").from);
        // 3 1/2 in wide, as the rules have it round windows and doors.
        assert_eq!(line(&format!("trim-{}", 7 * INCH / 2)).net, trim);
    }
}

#[test]
fn it_is_drawn_and_goes_through_a_document() {
    let (book, job, wall) = planned(LEANS);
    let opening = &wall.openings[0];
    let at = |x: i64, y: i64| Corner { x: x * INCH / 2, y: y * INCH };
    assert_eq!(opening.corners, [at(201, 76), at(280, 76), at(282, 28), at(200, 28)]);
    assert_eq!((opening.at.left, opening.at.right), (100 * INCH, 141 * INCH));
    let document = job_document(&book, &context(0), &job).unwrap();
    assert!(document.contains("\"head-from-left\": \"100 1/2 in\""), "{document}");
    let mut other = Book::in_memory().unwrap();
    let taken = take_in_document(&mut other, &context(9), &document).unwrap();
    let Place::House { job: copy } = taken.place else { panic!("a house") };
    assert_eq!(job_document(&other, &context(0), &copy).unwrap(), document);
    // Without readings at the head it is as it always was.
    let (_, _, plumb) = planned("");
    assert_eq!(plumb.openings[0].corners, [at(200, 76), at(282, 76), at(282, 28), at(200, 28)]);
    let [left, right] = course(&plumb, 6)[..] else { panic!("two boards") };
    assert_eq!((left.length.text.as_str(), right.length.text.as_str()), ("99 3/4\"", "98 3/4\""));
}

fn say(book: &mut Book, wall: &str, given: &[(&str, &str)]) -> Result<Outcome, Problem> {
    let place = [("what", "window"), ("from-left", "10"), ("width", "30"), ("from-base", "28"), ("height", "48")];
    let answers = place.iter().chain(given);
    let answers = answers.map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect();
    let (wall, kind) = (wall.to_owned(), "opening".to_owned());
    act(book, &context(20), &Action::MeasureKind { action: MeasureAction::AddPart { wall, kind, answers } })
}

/// Over 48 in a side leans by 4 in at most: the left one stands from 6 to 14 in, the width from 30 - 4 to 30 + 4 in.
#[test]
fn what_leans_too_far_is_refused_with_what_is_allowed() {
    let (mut book, _, wall) = planned("");
    let before = book.store().content_hash().unwrap();
    for (given, field, allowed) in [
        (&[("head-from-left", "14 1/16")][..], "head-from-left", ["6\"", "14\""]),
        (&[("head-from-left", "5")][..], "head-from-left", ["6\"", "14\""]),
        (&[("head-width", "35")][..], "head-width", ["26\"", "34\""]),
        (&[("head-from-left", "12"), ("head-width", "20")][..], "head-width", ["24\"", "32\""]),
    ] {
        let problem = say(&mut book, &wall.wall, given).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), ("range", field), "{given:?}");
        assert!(allowed.iter().all(|allowed| problem.text.contains(allowed)), "{}", problem.text);
    }
    for (given, code, field) in [
        (&[("head-width", "0")][..], "range", "head-width"),
        (&[("head-from-left", "-1")][..], "range", "head-from-left"),
        (&[("head-from-left", "far")][..], "length", "head-from-left"),
    ] {
        let problem = say(&mut book, &wall.wall, given).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{given:?}");
    }
    assert_eq!(book.store().content_hash().unwrap(), before);
    say(&mut book, &wall.wall, &[("head-from-left", "10 1/4")]).unwrap();
}
