//! Courses that hang out of level, by taps.

use super::penetration::{hose_bib, wall};
use super::*;
use crate::book::{Field, Kind};
use crate::handover::job_document;

fn sixteenths(count: i64) -> i64 {
    inches(0, 4 * count)
}

fn pole(book: &Book, language: &str, job: &str) -> PoleView {
    shown(book, language, Place::Pole { job: job.to_owned() })
}

fn board(book: &Book, wall: &str, course: i64) -> BoardView {
    let wall = wall.parse().unwrap();
    let work = lookup::of(book, wall, Kind::Wall).unwrap();
    let board = work.boards(wall).iter().find(|board| board.whole(Field::Course) == Some(course)).unwrap();
    shown(book, "en", Place::Board { board: board.id().to_string() })
}

/// A wall 12 ft wide with a line about every 6 13/16 in, one board a course and a hose bib at the fifth.
fn planned() -> (Book, String, String) {
    let (mut book, job, wall) = wall();
    let action = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    tap(&mut book, 10, action).unwrap();
    for (field, text) in [("from", "0"), ("to", "102"), ("mode", "fit"), ("reveal-max", "7"), ("reveal-min", "6 1/4")] {
        let action = PoleAction::Answer { job: job.clone(), field: field.to_owned(), text: text.to_owned() };
        tap(&mut book, 11, action).unwrap();
    }
    let more = [("from-base", "29 1/2"), ("block-width", "5"), ("block-height", "6"), ("hole-from-bottom", "3")];
    hose_bib(&mut book, &wall, &more);
    let action = PoleAction::LayOut { job: job.clone() };
    tap(&mut book, 12, action).unwrap();
    let action = WallAction::PlanBoards { wall: wall.clone() };
    tap(&mut book, 13, action).unwrap();
    (book, job, wall)
}

fn say(book: &mut Book, n: u8, wall: &str, given: &[(&str, &str)]) -> Result<Outcome, Problem> {
    let answers =
        given.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect();
    let action = PoleAction::SayAsBuilt { wall: wall.to_owned(), answers };
    tap(book, n, action)
}

/// The third course as the pole has it, a quarter high at the left and a sixteenth at the right.
fn readings(view: &PoleView) -> [(&'static str, String); 3] {
    let line = Length::from_nm(view.lines[2].height.nm);
    let text = |more: i64| crate::measure::Show::Inches(16).text(line + Length::from_inches_64(0, 4 * more));
    [("course", "3".to_owned()), ("left", text(4)), ("right", text(1))]
}

fn given<'a>(readings: &'a [(&'static str, String); 3]) -> Vec<(&'static str, &'a str)> {
    readings.iter().map(|(field, text)| (*field, text.as_str())).collect()
}

#[test]
fn the_boards_above_follow_a_course_that_hangs_out_of_level() {
    let (mut book, job, wall) = planned();
    let before = pole(&book, "en", &job);
    let (first, third) = (board(&book, &wall, 1), board(&book, &wall, 3));
    let (fourth, fifth) = (board(&book, &wall, 4), board(&book, &wall, 5));
    let readings = readings(&before);
    let said = say(&mut book, 20, &wall, &given(&readings)).unwrap();
    let View::PoleKind { view: after } = said.view.clone() else { panic!("pole") };
    let entry = &after.as_built[0];
    assert_eq!((entry.course, entry.courses, entry.out_of_level.nm), (3, Some(2), sixteenths(3)));
    assert_eq!(entry.left.source, Source::Taped, "taped beats planned");
    assert_eq!(entry.left.nm - entry.planned.as_ref().unwrap().nm, sixteenths(4));
    // Level again at the fifth course, on the line that the other walls keep.
    assert_eq!(entry.changed.len(), 1);
    let (fourth_left, fourth_right) = (&entry.changed[0].left, &entry.changed[0].right);
    assert!(fourth_left.nm - fourth_right.nm > 0 && fourth_left.nm - fourth_right.nm <= sixteenths(2));
    assert_eq!(after.lines, before.lines, "the pole is the house's");

    assert_eq!(board(&book, &wall, 1), first);
    assert_eq!(board(&book, &wall, 5).line_left, fifth.line_left);
    let now = board(&book, &wall, 4);
    let ends = |board: &BoardView| {
        (board.line_left.as_ref().unwrap().nm, board.line_right.as_ref().unwrap().nm, board.height.nm)
    };
    assert!(ends(&now).0 > ends(&now).1 && ends(&now).2 == ends(&fourth).2);
    assert!(ends(&board(&book, &wall, 3)).0 > ends(&third).0, "the course itself lies where it was taped");
    // The block stands level: the board under it slopes, so that its notch does, the other way.
    let depth = |board: &BoardView| {
        let level = &board.notches[0].face.as_ref().unwrap().levels[0];
        (level.from.clone(), level.left.nm, level.right.nm)
    };
    let (was, is) = (depth(&fourth), depth(&now));
    assert_eq!((was.0.as_str(), is.0.as_str()), ("top", "top"));
    assert_eq!(was.1, was.2);
    assert!(is.1 > is.2 && is.2 > was.2, "{was:?} {is:?}");

    let action = DoneListAction::Undo { job: None, group: said.group };
    tap(&mut book, 21, action).unwrap();
    assert_eq!(pole(&book, "en", &job), before);
    assert_eq!(board(&book, &wall, 4), fourth);
}

#[test]
fn what_is_cut_or_up_keeps_its_numbers() {
    let (mut book, job, wall) = planned();
    let cut = board(&book, &wall, 4);
    let tick = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    let action = BoardAction::SignStep { board: cut.board.clone(), step: "board-notch".to_owned(), said: tick };
    tap(&mut book, 20, action).unwrap();
    let cut = board(&book, &wall, 4);
    let readings = readings(&pole(&book, "en", &job));
    say(&mut book, 21, &wall, &given(&readings)).unwrap();
    assert_eq!(board(&book, &wall, 4), cut);
}

#[test]
fn materials_are_counted_on_the_courses_as_they_hang() {
    let (mut book, job, wall) = planned();
    let hung = readings(&pole(&book, "en", &job));
    say(&mut book, 20, &wall, &given(&hung)).unwrap();
    let middle = pole(&book, "en", &job).as_built[0].middle.nm;
    let wall = wall.parse().unwrap();
    let work = lookup::of(&book, wall, Kind::Wall).unwrap();
    let counted = crate::work::materials(&work, crate::measure::Division::SIXTEENTH, ORDER_EFFORT).unwrap();
    let third = counted.walls[0].courses[2];
    assert_eq!(third.bottom.nm(), middle, "the wall's base line lies on the datum");
}

#[test]
fn one_entry_a_course_and_the_last_word_holds() {
    let (mut book, job, wall) = planned();
    let before = pole(&book, "en", &job);
    let (third, boards) = (readings(&before), board(&book, &wall, 4));
    say(&mut book, 20, &wall, &given(&third)).unwrap();
    let level = before.lines[2].height.text.clone();
    say(&mut book, 21, &wall, &[("course", "3"), ("left", &level), ("right", &level)]).unwrap();
    let view = pole(&book, "en", &job);
    assert_eq!((view.as_built.len(), view.as_built[0].courses), (1, Some(0)));
    assert_eq!(board(&book, &wall, 4), boards);
    say(&mut book, 22, &wall, &given(&third)).unwrap();
    let as_built = pole(&book, "en", &job).as_built[0].as_built.clone();
    let action = PoleAction::RemoveAsBuilt { as_built };
    tap(&mut book, 23, action).unwrap();
    assert_eq!(pole(&book, "en", &job), before);
    assert_eq!(board(&book, &wall, 4), boards);
}

#[test]
fn what_cannot_be_worked_out_is_kept_and_says_what_it_would_need() {
    let (mut book, job, wall) = planned();
    let action = RulesAction::Change {
        job: job.clone(),
        key: "level.change.most".to_owned(),
        value: "0".to_owned(),
        reason: "the owner’s eye".to_owned(),
    };
    insist(&mut book, 20, action);
    let readings = readings(&pole(&book, "en", &job));
    say(&mut book, 21, &wall, &given(&readings)).unwrap();
    let entry = pole(&book, "en", &job).as_built.remove(0);
    assert_eq!((entry.courses, entry.changed.len()), (None, 0));
    let need = entry.notes.iter().find(|note| note.code == "need-change").unwrap();
    assert!(need.text.contains("1/16\""), "{}", need.text);
}

/// A course 3/16 in out of level: an eighth a course takes two courses back to level, a sixteenth three.
#[test]
pub(super) fn how_fast_courses_come_back_to_level_is_the_houses_rule() {
    for (change, courses) in [("1/8", 2), ("1/16", 3)] {
        let (mut book, job, wall) = planned();
        if change != "1/8" {
            change_rule(&mut book, 20, &job, "level.change.most", change);
        }
        let readings = readings(&pole(&book, "en", &job));
        say(&mut book, 21, &wall, &given(&readings)).unwrap();
        let entry = pole(&book, "en", &job).as_built.remove(0);
        assert_eq!(entry.courses, Some(courses), "{change}");
        let back = entry.notes.iter().find(|note| note.code == "back-to-level").unwrap();
        assert!(back.text.contains(&format!("{change}\"")), "{}", back.text);
    }
}

#[test]
fn bad_readings_change_nothing() {
    let (mut book, _, wall) = planned();
    let before = book.store().content_hash().unwrap();
    for (given, code, field) in [
        (&[("course", "3"), ("left", "13 1/2")][..], "first", "right"),
        (&[("course", "99"), ("left", "1"), ("right", "1")][..], "range", "course"),
        (&[("course", "0"), ("left", "1"), ("right", "1")][..], "range", "course"),
        (&[("course", "3"), ("left", "13 1/2"), ("right", "22")][..], "range", "right"),
        (&[("course", "3"), ("left", "6"), ("right", "13 1/2")][..], "range", "left"),
        (&[("course", "3"), ("left", "low"), ("right", "13 1/2")][..], "length", "left"),
        (&[("course", "3"), ("left", "13"), ("right", "13"), ("sag", "1")][..], "unknown", "sag"),
    ] {
        let problem = say(&mut book, 20, &wall, given).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{given:?}");
    }
    assert_eq!(book.store().content_hash().unwrap(), before);
}

#[test]
fn a_job_document_carries_the_courses_as_they_hang() {
    let (mut book, job, wall) = planned();
    let readings = readings(&pole(&book, "en", &job));
    say(&mut book, 20, &wall, &given(&readings)).unwrap();
    let document = job_document(&book, &context("en", 0), &job).unwrap();
    let mut other = Book::in_memory().unwrap();
    let taken = take_in_document(&mut other, &context("en", 30), &document).unwrap();
    let Place::House { job: copy } = taken.place else { panic!("a house") };
    assert_eq!(job_document(&other, &context("en", 0), &copy).unwrap(), document);
    let (own, theirs) = (pole(&book, "en", &job), pole(&other, "en", &copy));
    assert_eq!(theirs.as_built[0].changed, own.as_built[0].changed);
    let broken = document.replacen("\"as-built\": [", "\"as-built\": [{ \"lines\": [\"1 in\"] },", 1);
    assert_eq!(take_in_document(&mut other, &context("en", 31), &broken).unwrap_err().code, "missing");
}

#[test]
fn shows_what_it_showed() {
    let (mut book, job, wall) = planned();
    let readings = readings(&pole(&book, "en", &job));
    say(&mut book, 20, &wall, &given(&readings)).unwrap();
    insta::assert_json_snapshot!("as-built", pole(&book, "en", &job).as_built);
}

/// Boards of 8 1/4 in over a first course at 0: hung at 7 1/2 they lap 3/4 in where 1 1/4 is the least, at 8 3/8 the wall
/// is open.
#[test]
fn a_course_that_laps_too_little_is_told() {
    let (mut book, job, wall) = planned();
    let mut note = |n, left: &str, right: &str| {
        say(&mut book, n, &wall, &[("course", "2"), ("left", left), ("right", right)]).unwrap();
        let shown = pole(&book, "en", &job);
        let first = shown.as_built[0].notes[0].clone();
        (first.code, first.text)
    };
    assert_ne!(note(20, "7", "6 15/16").0, "lap-short");
    let (code, text) = note(21, "7", "7 1/2");
    assert_eq!(code, "lap-short");
    assert!(text.contains("only 3/4\"") && text.contains("1 1/4\""), "{text}");
    let asked = say(&mut book, 22, &wall, &[("course", "2"), ("left", "8 3/8"), ("right", "7")]).unwrap_err();
    assert_eq!((asked.code.as_str(), asked.field.as_str()), ("unlikely", "left"));
    let mut note = |n, left: &str, right: &str| {
        say(&mut book, n, &wall, &[("course", "2"), ("left", left), ("right", right)]).unwrap();
        pole(&book, "en", &job).as_built[0].notes[0].code.clone()
    };
    assert_eq!(note(22, "8 3/8", "7"), "no-lap");
}
