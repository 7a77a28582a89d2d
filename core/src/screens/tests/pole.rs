//! The story pole by taps.

use super::*;
use crate::handover::{DEMO_HOUSE, take_in_document};

fn pole(store: &Store, job: &str) -> PoleView {
    match view(store, &context("en", 99), &Place::Pole { job: job.to_owned() }).unwrap() {
        View::PoleKind { view } => view,
        other => panic!("{other:?}"),
    }
}

/// The marks of a document steer the pole like those that are tapped in, and a mark goes only with its own pole.
#[test]
fn marks_of_a_document_are_the_poles_own() {
    let mut store = Store::in_memory().unwrap();
    let outcome = take_in_document(&mut store, &context("en", 1), DEMO_HOUSE).unwrap();
    let Place::House { job } = outcome.place else { panic!("a house") };
    let own = |view: &PoleView| view.marks.iter().filter(|mark| !mark.mark.is_empty()).count();
    let before = pole(&store, &job);
    assert_eq!(own(&before), 5, "the five of the document");
    let add = |store: &mut Store, at: &str| {
        let given = |field: &str, text: &str| Given { field: field.to_owned(), text: text.to_owned() };
        let answers = vec![given("name", "Belt"), given("at", at), given("want", "land")];
        let action = PoleAction::AddMark { job: job.clone(), answers };
        act(store, &context("en", 2), &Action::PoleKind { action })
    };
    add(&mut store, "100 1/8 in").unwrap();
    assert_eq!(own(&pole(&store, &job)), 6);
    assert_eq!(add(&mut store, "high").unwrap_err().field, "at");
    assert_eq!(own(&pole(&store, &job)), 6, "nothing was changed");
    let foreign = PoleAction::RemoveMark { job: job.clone(), mark: before.job.clone() };
    assert!(act(&mut store, &context("en", 3), &Action::PoleKind { action: foreign }).is_err());
}
