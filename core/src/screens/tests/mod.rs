//! The screens, tapped as a person taps them.

mod again;
mod as_built;
mod board;
mod demo;
mod document;
mod done_list;
mod drawing;
mod house;
mod measure;
mod new;
mod penetration;
mod photo;
mod planning;
mod pole;
mod rules;
mod saw_list;
mod settings;
mod signing;
mod voice;
mod wall;

use crate::handover::DEMO_HOUSE;
use crate::views::*;

use super::document::take_in_document;
use super::*;

/// A shell's context: noon UTC of a spring day, seven hours behind; `n` gives each action its own dice and second.
pub(super) fn context(language: &str, n: u8) -> Context {
    Context {
        now_ms: 1_777_896_000_000 + i64::from(n) * 1_000,
        utc_offset_minutes: -420,
        signer: "Ines".to_owned(),
        language: language.to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        dice: vec![n; 16],
    }
}

/// A book with one house.
pub(super) fn house() -> (Store, String) {
    let mut store = Store::in_memory().unwrap();
    let action = JobsAction::Create { name: "Lot 12".to_owned(), like: None };
    let outcome = act(&mut store, &context("en", 1), &Action::JobsKind { action }).unwrap();
    let Place::House { job } = outcome.place else { panic!("a new house opens") };
    (store, job)
}

/// A book with the demo house, its pole laid out.
pub(super) fn demo_laid_out() -> (Store, String) {
    let mut store = Store::in_memory().unwrap();
    let outcome = take_in_document(&mut store, &context("en", 1), DEMO_HOUSE).unwrap();
    let Place::House { job } = outcome.place else { panic!("a house") };
    let action = Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } };
    act(&mut store, &context("en", 2), &action).unwrap();
    (store, job)
}
