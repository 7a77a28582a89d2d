//! The demonstration's house, planned anew after one change.

use std::time::Instant;

use lapwright::book::Book;
use lapwright::handover::DEMO_HOUSE;
use lapwright::screens::take_in_document;
use lapwright::screens::{HousePlanner, act};
use lapwright::views::{Action, Context, MeasureAction, Place, PoleAction};

fn context(n: u8) -> Context {
    Context {
        now_ms: 1_777_896_000_000 + i64::from(n) * 1_000,
        utc_offset_minutes: 0,
        signer: "Ines".to_owned(),
        language: "en".to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        entropy: vec![n; 16],
    }
}

pub(crate) fn run() {
    let mut book = Book::in_memory().expect("a book");
    let outcome = take_in_document(&mut book, &context(1), DEMO_HOUSE).expect("the house");
    let Place::House { job } = outcome.place else { return };
    let action = Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } };
    act(&mut book, &context(2), &action).expect("a pole");
    let start = Instant::now();
    let mut planner = HousePlanner::of(&book, &context(3), &job).expect("a plan");
    let first = start.elapsed();
    let mut progress = planner.step(&context(3), 0).expect("a plan");
    while !progress.done && start.elapsed().as_secs() < 5 {
        progress = planner.step(&context(3), 10).expect("a plan");
    }
    println!("demo house: first plan {first:.1?}, {:.1?}: {}", start.elapsed(), progress.text);
    // A wall turns out a little wider than it was.
    let wall = lapwright::screens::view(&book, &context(4), &Place::House { job: job.clone() });
    let Ok(lapwright::views::View::HouseKind { view }) = wall else { return };
    let Some(wall) = view.walls.first().map(|wall| wall.wall.clone()) else { return };
    let action = MeasureAction::Answer { wall, field: "width".to_owned(), text: "289\"".to_owned() };
    act(&mut book, &context(5), &Action::MeasureKind { action }).expect("a width");
    let start = Instant::now();
    let mut next = planner.again(&book, &context(6)).expect("a plan");
    let spent = start.elapsed();
    let progress = next.step(&context(6), 0).expect("a plan");
    println!("demo house, one wall wider: planned again in {spent:.1?}: {}", progress.text);
}
