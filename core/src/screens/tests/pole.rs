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

/// A house with a line every 7 in whose board of a course is nailed.
fn nailed(course: i64) -> (Store, String) {
    let (mut store, job, wall) = super::penetration::wall();
    let action = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    act(&mut store, &context("en", 10), &Action::HouseKind { action }).unwrap();
    super::penetration::lay_out_pole(&mut store, &job);
    let action = WallAction::PlanBoards { wall: wall.clone() };
    act(&mut store, &context("en", 11), &Action::WallKind { action }).unwrap();
    let boards = spoken(&context("en", 0), |_| kept::Facts::children(&store, wall.parse().unwrap(), kinds::BOARD));
    let board = boards.unwrap().into_iter().find(|board| board.whole("course") == Some(course)).unwrap();
    let board = board.id().to_string();
    let place = Place::Board { board: board.clone() };
    let View::BoardKind { view } = view(&store, &context("en", 12), &place).unwrap() else { panic!("board") };
    for step in view.steps {
        let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
        let action = BoardAction::SignStep { board: board.clone(), step: step.code.clone(), said };
        act(&mut store, &context("en", 13), &Action::BoardKind { action }).unwrap();
    }
    (store, job)
}

/// A board of course 1 stands on the first line, which stays; one of course 2 stands on the second, which would move.
#[test]
fn lines_above_what_is_up_may_move() {
    for (course, allowed) in [(1, true), (2, false)] {
        let (mut store, job) = nailed(course);
        for (field, text) in [("reveal-min", "6"), ("reveal", "6")] {
            let action = PoleAction::Answer { job: job.clone(), field: field.to_owned(), text: text.to_owned() };
            act(&mut store, &context("en", 14), &Action::PoleKind { action }).unwrap();
        }
        let laid = act(&mut store, &context("en", 15), &Action::PoleKind { action: PoleAction::LayOut { job } });
        assert_eq!(
            laid.map(|_| ()).map_err(|problem| problem.code),
            if allowed { Ok(()) } else { Err("first".to_owned()) }
        );
    }
}
