//! The largest house that a document may tell of goes out and comes in again, and one that is larger is refused at both ends.
//! Short in the tests; `cargo xtask bench --scale` runs it in full, optimised.

use std::time::Instant;

use lapwright::book::Book;
use lapwright::handover::job_document;
use lapwright::screens::take_in_document;
use lapwright::views::{Context, Place, Problem};
use lapwright_tests::book::{count, tell};
use serde_json::{Value, json};

/// The most things of a house that a document may tell of, as its refusal says.
const THINGS: usize = 50_000;
const BOARDS_OF_A_WALL: usize = 49;

fn context(n: u8) -> Context {
    Context {
        now_ms: 1_777_896_000_000,
        utc_offset_minutes: -420,
        signer: "Ines".to_owned(),
        language: "en".to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        entropy: vec![n; 16],
    }
}

/// A house of so many things, itself among them: walls of 49 boards each.
fn house(things: usize) -> Value {
    let board = |at: usize| json!({ "length": { "planned": "96 in" }, "from": { "planned": format!("{} in", at % 2 * 96) }, "course": at / 2 + 1 });
    let wall = |number: usize, boards: usize| {
        json!({
            "name": format!("Wall {number}"), "width": "16 ft", "left-height": "20 ft", "right-height": "20 ft",
            "boards": (0..boards).map(board).collect::<Vec<_>>(),
        })
    };
    let (mut walls, mut left) = (Vec::new(), things - 1);
    while left > 0 {
        let boards = BOARDS_OF_A_WALL.min(left - 1);
        walls.push(wall(walls.len() + 1, boards));
        left -= boards + 1;
    }
    json!({ "lapwright": 1, "name": "Lot 7", "board-height": "8 1/4 in", "lap": "1 1/4 in", "walls": walls })
}

fn take_in(book: &mut Book, n: u8, text: &str) -> Result<String, Problem> {
    let Place::House { job } = take_in_document(book, &context(n), text)?.place else { panic!("a house opens") };
    Ok(job)
}

#[test]
fn the_largest_house_goes_out_and_comes_in_again() {
    let things = count(2_000, THINGS);
    let text = house(things).to_string();
    let refused = refused_in(&mut Book::in_memory().unwrap(), house(things));
    let (mut first, mut second) = (Book::in_memory().unwrap(), Book::in_memory().unwrap());
    let start = Instant::now();
    let job = take_in(&mut first, 1, &text).unwrap();
    let taken = start.elapsed().as_secs_f64();
    let start = Instant::now();
    let out = job_document(&first, &context(2), &job).unwrap();
    let written = start.elapsed().as_secs_f64();
    let start = Instant::now();
    let again = take_in(&mut second, 3, &out).unwrap();
    let taken_again = start.elapsed().as_secs_f64();
    assert_eq!(job_document(&second, &context(2), &again).unwrap(), out);
    tell(
        "things of a house in a document",
        things,
        &format!(
            "read, judged and refused for its last field in {refused:.2} s, taken in in {taken:.2} s, written in {written:.2} s ({} MB), taken in again in {taken_again:.2} s",
            out.len() / 1_000_000
        ),
    );
}

/// How long it takes until the last field of a house is found to be wrong: all of it was read and nothing built.
fn refused_in(book: &mut Book, mut house: Value) -> f64 {
    let walls = house["walls"].as_array_mut().unwrap();
    let last = walls.len() - 1;
    walls[last]["right-height"] = json!("20 furlongs");
    let text = house.to_string();
    let start = Instant::now();
    let refused = take_in(book, 1, &text).unwrap_err();
    let seconds = start.elapsed().as_secs_f64();
    assert_eq!(refused.field, format!("walls[{last}].right-height"));
    assert!(book.jobs().unwrap().is_empty());
    // Only the optimised run in full is held to it.
    assert!(cfg!(debug_assertions) || seconds < 1.0, "{seconds} s");
    seconds
}

#[test]
fn a_house_that_is_larger_is_refused() {
    let mut book = Book::in_memory().unwrap();
    let refused = take_in(&mut book, 1, &house(THINGS + 1).to_string()).unwrap_err();
    assert_eq!((refused.code.as_str(), refused.field.as_str()), ("too-big", ""));
    assert!(refused.text.contains("50000"), "{}", refused.text);
}
