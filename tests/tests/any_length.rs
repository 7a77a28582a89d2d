//! No length that a house, a board in hand or a course that hangs is taken with makes a later step fail without naming the
//! field: every field that takes a length is given lengths of all sizes, likely ones and others, over a house that has one
//! of everything.

#![allow(clippy::unwrap_used, clippy::panic, clippy::print_stdout, reason = "a check stops at what it did not expect")]

use std::collections::BTreeSet;

use lapwright::book::{Allowed, Kind, fields_of};
use lapwright::measure::{Length, Reader};
use lapwright::views::{Action, BoardAction, Given, HouseAction, MeasureAction, Place, PoleAction, View};
use lapwright_tests::desk::Desk;
use serde_json::{Value, json};

/// The parts of a document that hold things with lengths, by their names; the house itself has none.
const PARTS: [(&str, Kind); 12] = [
    ("", Kind::Job),
    ("stock", Kind::Stock),
    ("offcuts", Kind::Offcut),
    ("block-sizes", Kind::BlockSize),
    ("pole", Kind::Pole),
    ("marks", Kind::Mark),
    ("walls", Kind::Wall),
    ("base-steps", Kind::BaseStep),
    ("studs", Kind::Stud),
    ("openings", Kind::Opening),
    ("abutments", Kind::Abutment),
    ("penetrations", Kind::Penetration),
];

/// A small house with one of everything, in numbers that a crew could read off its tape.
const HOUSE: &str = r#"{
    "lapwright": 1, "name": "One of everything", "rules": "us", "roof-height": "12 ft",
    "board-height": "8 1/4 in", "board-thickness": "5/16 in", "lap": "1 1/4 in", "nail-line": "1 in",
    "stock": [{"length": "12 ft", "count": 60}],
    "offcuts": [{"length": "40 in"}],
    "block-sizes": [{"width": "8 in", "height": "10 in"}],
    "pole": {
        "from": "0 in", "to": "84 in", "mode": "fit", "reveal-max": "7 in", "reveal-min": "6 in", "reveal": "7 in",
        "change-max": "1/8 in", "marks": [{"name": "Ledge", "at": "30 in", "want": "clear", "clear": "1 in"}]
    },
    "walls": [{
        "name": "Front", "width": "144 in", "left-height": "60 in", "right-height": "60 in", "base": "0 in",
        "first-stud": "16 in", "stud-spacing": "16 in", "trim-left": "3 1/2 in", "trim-right": "3 1/2 in",
        "diagonal-up": "156 in", "diagonal-down": "156 in", "peak-from-left": "72 in", "peak-height": "84 in",
        "base-steps": [{"from-left": "100 in", "rise": "8 in"}],
        "studs": [{"at": "17 in"}],
        "openings": [{
            "what": "window", "from-left": "24 in", "width": "24 in", "from-base": "24 in", "height": "24 in",
            "head-from-left": "24 in", "head-width": "20 in"
        }],
        "abutments": [{"what": "roof", "from-left": "110 in", "width": "20 in", "top": "-6 in", "rise": "2 in"}],
        "penetrations": [{
            "id": "light", "what": "light", "width": "4 in", "height": "4 in", "from-left": "80 in",
            "from-base": "36 in", "block-width": "7 in", "block-height": "7 in", "block-thickness": "1 1/8 in",
            "hole-from-bottom": "3 1/2 in"
        }]
    }]
    }"#;

fn house() -> Value {
    serde_json::from_str(HOUSE).unwrap()
}

fn takes_length(allowed: Allowed) -> bool {
    matches!(allowed, Allowed::Positive | Allowed::NotNegative | Allowed::AnyLength)
}

/// The fields of a kind of thing that take a length.
fn length_fields(kind: Kind) -> impl Iterator<Item = &'static str> {
    fields_of(kind).iter().filter(|spec| takes_length(spec.allowed)).map(|spec| spec.field.code())
}

/// Every length of a document: where it stands, and the kind of thing and the field that it is of.
fn lengths(json: &Value, (name, path): (&str, &str), all: &mut Vec<(String, Kind, &'static str)>) {
    let Some((_, kind)) = PARTS.iter().find(|(part, _)| *part == name) else { return };
    for field in length_fields(*kind).filter(|field| json.get(field).is_some()) {
        all.push((format!("{path}/{field}"), *kind, field));
    }
    for (name, value) in json.as_object().unwrap() {
        match value {
            Value::Array(things) => {
                for (at, thing) in things.iter().enumerate() {
                    lengths(thing, (name, &format!("{path}/{name}/{at}")), all);
                }
            }
            Value::Object(_) => lengths(value, (name, &format!("{path}/{name}")), all),
            _ => {}
        }
    }
}

/// Lengths of all sizes, with one near what stands there.
fn odd(truth: Length) -> Vec<String> {
    let mm = truth.nm() / 1_000_000;
    let near = [mm / 9, mm * 11].map(|mm| format!("{mm} mm"));
    let any = ["0 in", "-1 in", "1/64 in", "17 1/2 in", "143 in", "90 ft", "999 km"];
    near.into_iter().chain(any.map(str::to_owned)).collect()
}

#[test]
fn no_length_of_a_house_makes_a_later_step_fail_without_naming_its_field() {
    let house = house();
    let mut all = Vec::new();
    lengths(&house, ("", ""), &mut all);
    for (_, kind) in PARTS {
        for field in length_fields(kind) {
            assert!(all.iter().any(|(_, own, of)| (*own, *of) == (kind, field)), "no {field} of a {kind} is tried");
        }
    }
    let mut base = Desk::new();
    let job = base.insist(|desk| desk.take_in(&house)).unwrap();
    let failed = base.later_steps(&job);
    assert!(failed.is_empty(), "the house itself: {failed:?}");
    let (mut refused, mut taken, mut failed) = (0, 0, 0);
    for (path, _, field) in &all {
        let truth = Reader::default().length(house.pointer(path).and_then(Value::as_str).unwrap()).unwrap();
        for text in odd(truth) {
            let mut document = house.clone();
            *document.pointer_mut(path).unwrap() = json!(text);
            let mut desk = Desk::new();
            match desk.insist(|desk| desk.take_in(&document)) {
                Err(problem) => {
                    assert!(!problem.field.is_empty() && problem.code != "book", "{path} {text}: {problem:?}");
                    assert_ne!(problem.code, "unlikely", "{path} {text}: a yes is remembered: {problem:?}");
                    refused += 1;
                }
                Ok(job) => {
                    taken += 1;
                    for problem in desk.later_steps(&job) {
                        let says = !problem.field.is_empty() && problem.code != "book" && !problem.text.is_empty();
                        assert!(says, "{path} ({field}) {text}: {problem:?}");
                        failed += 1;
                    }
                }
            }
        }
    }
    println!(
        "{} fields, {} lengths: {refused} refused, {taken} taken; {failed} later steps refused, each naming its field",
        all.len(),
        refused + taken
    );
    assert!(all.len() >= 45 && refused > 100 && taken > 100, "{refused} refused, {taken} taken");
}

fn given(answers: &[(&str, &str)]) -> Vec<Given> {
    answers.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect()
}

/// The same at the board in hand, of a loose board, of what is said of a course that hangs, and of a board that is spoiled.
#[test]
fn no_reading_makes_a_later_step_fail_without_naming_its_field() {
    let mut desk = Desk::new();
    let job = desk.insist(|desk| desk.take_in(&house())).unwrap();
    assert!(desk.later_steps(&job).is_empty());
    let wall = desk.walls(&job).remove(0);
    // Planning anew makes other boards of what is not cut.
    let in_hand = |desk: &mut Desk| {
        let View::WallKind { view } = desk.view(&Place::Wall { wall: wall.clone() }).unwrap() else { panic!("a wall") };
        let board = view.boards.iter().find(|board| board.notched).expect("a notched board").board.clone();
        let View::BoardKind { view } = desk.view(&Place::Board { board: board.clone() }).unwrap() else { panic!() };
        (board, view.notches.first().unwrap().notch.clone())
    };
    let mut tried = BTreeSet::new();
    let (mut refused, mut taken) = (0, 0);
    let mut count = |desk: &mut Desk, what: (Kind, &'static str), text: &str, action: Action| {
        tried.insert(what);
        match desk.insist(|desk| desk.act(&action)) {
            Err(problem) => {
                let says = !problem.field.is_empty() && problem.code != "book" && problem.code != "unlikely";
                assert!(says, "{what:?} {text}: {problem:?}");
                refused += 1;
            }
            Ok(outcome) => {
                taken += 1;
                for problem in desk.later_steps(&job).into_iter().chain(desk.view(&outcome.place).err()) {
                    let says = !problem.field.is_empty() && problem.code != "book";
                    assert!(says, "{what:?} {text}: {problem:?}");
                }
                let undone = desk.undo(&outcome.group);
                assert!(undone.is_ok(), "{what:?} {text}: {undone:?}");
            }
        }
    };
    for text in odd(Length::from_inches(12)) {
        for field in length_fields(Kind::Notch).chain(length_fields(Kind::Gap)) {
            let kind = if field == "gap" { Kind::Gap } else { Kind::Notch };
            let (board, notch) = in_hand(&mut desk);
            let action = BoardAction::AnswerNotch { board, notch, field: field.to_owned(), text: text.clone() };
            count(&mut desk, (kind, field), &text, Action::BoardKind { action });
        }
        for field in length_fields(Kind::Board) {
            let usual = [("length", "100 in"), ("height", "8 1/4 in"), ("lap", "1 1/4 in")];
            let answers: Vec<(&str, &str)> =
                usual.map(|(own, usual)| (own, if own == field { text.as_str() } else { usual })).to_vec();
            let action = BoardAction::CreateLoose { job: Some(job.clone()), answers: given(&answers) };
            count(&mut desk, (Kind::Board, field), &text, Action::BoardKind { action });
        }
        for field in length_fields(Kind::AsBuilt) {
            let usual = [("course", "2"), ("left", "7 in"), ("middle", "7 in"), ("right", "7 in")];
            let answers: Vec<(&str, &str)> =
                usual.map(|(own, usual)| (own, if own == field { text.as_str() } else { usual })).to_vec();
            let action = PoleAction::SayAsBuilt { wall: wall.clone(), answers: given(&answers) };
            count(&mut desk, (Kind::AsBuilt, field), &text, Action::PoleKind { action });
        }
        // By hand as well as in a document: the two ways in are one.
        let action = HouseAction::AddBlockSize { job: job.clone(), width: text.clone(), height: "9 in".to_owned() };
        count(&mut desk, (Kind::BlockSize, "width"), &text, Action::HouseKind { action });
        for field in length_fields(Kind::Wall) {
            let action = MeasureAction::Answer { wall: wall.clone(), field: field.to_owned(), text: text.clone() };
            count(&mut desk, (Kind::Wall, field), &text, Action::MeasureKind { action });
        }
    }
    for kind in [Kind::Notch, Kind::Gap, Kind::Board, Kind::AsBuilt] {
        for field in length_fields(kind) {
            assert!(tried.contains(&(kind, field)), "no {field} of a {kind} is tried");
        }
    }
    println!("{} readings: {refused} refused, {taken} taken", refused + taken);
    assert!(refused > 50 && taken > 50, "{refused} refused, {taken} taken");
}
