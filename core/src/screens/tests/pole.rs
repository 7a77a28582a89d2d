//! The story pole by taps.

use super::*;
use crate::book::{Field, Kind};

fn pole(book: &Book, job: &str) -> PoleView {
    shown(book, "en", Place::Pole { job: job.to_owned() })
}

/// The marks of a document steer the pole like those that are tapped in, and a mark goes only with its own pole.
#[test]
fn marks_of_a_document_are_the_poles_own() {
    let (mut book, job) = demo_house();
    let own = |view: &PoleView| view.marks.iter().filter(|mark| !mark.mark.is_empty()).count();
    let before = pole(&book, &job);
    assert_eq!(own(&before), 5, "the five of the document");
    let add = |book: &mut Book, at: &str| {
        let given = |field: &str, text: &str| Given { field: field.to_owned(), text: text.to_owned() };
        let answers = vec![given("name", "Belt"), given("at", at), given("want", "land")];
        tap(book, 2, PoleAction::AddMark { job: job.clone(), answers })
    };
    add(&mut book, "100 1/8 in").unwrap();
    assert_eq!(own(&pole(&book, &job)), 6);
    assert_eq!(add(&mut book, "high").unwrap_err().field, "at");
    assert_eq!(own(&pole(&book, &job)), 6, "nothing was changed");
    let foreign = PoleAction::RemoveMark { job: job.clone(), mark: before.job.clone() };
    assert!(tap(&mut book, 3, foreign).is_err());
}

/// A house with a line every 7 in whose board of a course is nailed.
fn nailed(course: i64) -> (Book, String) {
    let (mut book, job, wall) = super::penetration::wall();
    let stock = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    tap(&mut book, 10, stock).unwrap();
    super::penetration::lay_out_pole(&mut book, &job);
    tap(&mut book, 11, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
    let wall = wall.parse().unwrap();
    let work = lookup::of(&book, wall, Kind::Wall).unwrap();
    let board = work.boards(wall).iter().find(|board| board.whole(Field::Course) == Some(course)).unwrap();
    let board = board.id().to_string();
    let view: BoardView = shown(&book, "en", Place::Board { board: board.clone() });
    for step in view.steps {
        let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
        tap(&mut book, 13, BoardAction::SignStep { board: board.clone(), step: step.code, said }).unwrap();
    }
    (book, job)
}

/// A board of course 1 stands on the first line, which stays; one of course 2 stands on the second, which would move.
#[test]
fn lines_above_what_is_up_may_move() {
    for (course, allowed) in [(1, true), (2, false)] {
        let (mut book, job) = nailed(course);
        for (field, text) in [("reveal-min", "6"), ("reveal", "6")] {
            let (job, field, text) = (job.clone(), field.to_owned(), text.to_owned());
            tap(&mut book, 14, PoleAction::Answer { job, field, text }).unwrap();
        }
        let laid = tap(&mut book, 15, PoleAction::LayOut { job });
        assert_eq!(
            laid.map(|_| ()).map_err(|problem| problem.code),
            if allowed { Ok(()) } else { Err("first".to_owned()) }
        );
    }
}
