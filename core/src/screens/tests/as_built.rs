//! Courses that hang out of level, by taps.

use super::penetration::{hose_bib, wall};
use super::*;
use crate::handover::{job_document, take_in_document};
use crate::measure::Length;

fn inches(whole: i64, sixteenths: i64) -> i64 {
    Length::from_inches_64(whole, 4 * sixteenths).nm()
}

fn pole(store: &Store, language: &str, job: &str) -> PoleView {
    match view(store, &context(language, 0), &Place::Pole { job: job.to_owned() }).unwrap() {
        View::PoleKind { view } => view,
        other => panic!("{other:?}"),
    }
}

fn board(store: &Store, wall: &str, course: i64) -> BoardView {
    let boards = spoken(&context("en", 0), |_| kept::Facts::children(store, wall.parse().unwrap(), kinds::BOARD));
    let board = boards.unwrap().into_iter().find(|board| board.whole("course") == Some(course)).unwrap();
    let View::BoardKind { view } =
        view(store, &context("en", 0), &Place::Board { board: board.id().to_string() }).unwrap()
    else {
        panic!("board")
    };
    view
}

/// A wall 12 ft wide with a line about every 6 13/16 in, one board a course and a hose bib at the fifth.
fn planned() -> (Store, String, String) {
    let (mut store, job, wall) = wall();
    let action = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    act(&mut store, &context("en", 10), &Action::HouseKind { action }).unwrap();
    for (field, text) in [("from", "0"), ("to", "102"), ("mode", "fit"), ("reveal-max", "7"), ("reveal-min", "6 1/4")] {
        let action = PoleAction::Answer { job: job.clone(), field: field.to_owned(), text: text.to_owned() };
        act(&mut store, &context("en", 11), &Action::PoleKind { action }).unwrap();
    }
    let more = [("from-base", "29 1/2"), ("block-width", "5"), ("block-height", "6"), ("hole-from-bottom", "3")];
    hose_bib(&mut store, &wall, &more);
    let action = PoleAction::LayOut { job: job.clone() };
    act(&mut store, &context("en", 12), &Action::PoleKind { action }).unwrap();
    let action = WallAction::PlanBoards { wall: wall.clone() };
    act(&mut store, &context("en", 13), &Action::WallKind { action }).unwrap();
    (store, job, wall)
}

fn say(store: &mut Store, n: u8, wall: &str, given: &[(&str, &str)]) -> Result<Outcome, Problem> {
    let answers =
        given.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect();
    let action = PoleAction::SayAsBuilt { wall: wall.to_owned(), answers };
    act(store, &context("en", n), &Action::PoleKind { action })
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
    let (mut store, job, wall) = planned();
    let before = pole(&store, "en", &job);
    let (first, third) = (board(&store, &wall, 1), board(&store, &wall, 3));
    let (fourth, fifth) = (board(&store, &wall, 4), board(&store, &wall, 5));
    let readings = readings(&before);
    let said = say(&mut store, 20, &wall, &given(&readings)).unwrap();
    let View::PoleKind { view: after } = said.view.clone() else { panic!("pole") };
    let entry = &after.as_built[0];
    assert_eq!((entry.course, entry.courses, entry.out_of_level.nm), (3, Some(2), inches(0, 3)));
    assert_eq!(entry.left.source, Source::Taped, "taped beats planned");
    assert_eq!(entry.left.nm - entry.planned.as_ref().unwrap().nm, inches(0, 4));
    // Level again at the fifth course, on the line that the other walls keep.
    assert_eq!(entry.changed.len(), 1);
    let (fourth_left, fourth_right) = (&entry.changed[0].left, &entry.changed[0].right);
    assert!(fourth_left.nm - fourth_right.nm > 0 && fourth_left.nm - fourth_right.nm <= inches(0, 2));
    assert_eq!(after.lines, before.lines, "the pole is the house's");

    assert_eq!(board(&store, &wall, 1), first);
    assert_eq!(board(&store, &wall, 5).line_left, fifth.line_left);
    let now = board(&store, &wall, 4);
    let ends = |board: &BoardView| {
        (board.line_left.as_ref().unwrap().nm, board.line_right.as_ref().unwrap().nm, board.height.nm)
    };
    assert!(ends(&now).0 > ends(&now).1 && ends(&now).2 == ends(&fourth).2);
    assert!(ends(&board(&store, &wall, 3)).0 > ends(&third).0, "the course itself lies where it was taped");
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
    act(&mut store, &context("en", 21), &Action::DoneListKind { action }).unwrap();
    assert_eq!(pole(&store, "en", &job), before);
    assert_eq!(board(&store, &wall, 4), fourth);
}

#[test]
fn what_is_cut_or_up_keeps_its_numbers() {
    let (mut store, job, wall) = planned();
    let cut = board(&store, &wall, 4);
    let tick = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    let action = BoardAction::SignStep { board: cut.board.clone(), step: "board-notch".to_owned(), said: tick };
    act(&mut store, &context("en", 20), &Action::BoardKind { action }).unwrap();
    let cut = board(&store, &wall, 4);
    let readings = readings(&pole(&store, "en", &job));
    say(&mut store, 21, &wall, &given(&readings)).unwrap();
    assert_eq!(board(&store, &wall, 4), cut);
}

#[test]
fn materials_are_counted_on_the_courses_as_they_hang() {
    let (mut store, job, wall) = planned();
    let hung = readings(&pole(&store, "en", &job));
    say(&mut store, 20, &wall, &given(&hung)).unwrap();
    let middle = pole(&store, "en", &job).as_built[0].middle.nm;
    let clad = spoken(&context("en", 0), |terms| {
        let job = kept::Job::of(&store, terms, job.parse().unwrap())?;
        kept::CladWall::of_job(&store, terms, &job, &job.lines(&store)?.unwrap())
    });
    let clad = clad.unwrap().remove(0);
    assert_eq!(clad.courses[2].bottom.nm(), middle, "the wall's base line lies on the datum");
}

#[test]
fn one_entry_a_course_and_the_last_word_holds() {
    let (mut store, job, wall) = planned();
    let before = pole(&store, "en", &job);
    let (third, boards) = (readings(&before), board(&store, &wall, 4));
    say(&mut store, 20, &wall, &given(&third)).unwrap();
    let level = before.lines[2].height.text.clone();
    say(&mut store, 21, &wall, &[("course", "3"), ("left", &level), ("right", &level)]).unwrap();
    let view = pole(&store, "en", &job);
    assert_eq!((view.as_built.len(), view.as_built[0].courses), (1, Some(0)));
    assert_eq!(board(&store, &wall, 4), boards);
    say(&mut store, 22, &wall, &given(&third)).unwrap();
    let as_built = pole(&store, "en", &job).as_built[0].as_built.clone();
    let action = PoleAction::RemoveAsBuilt { as_built };
    act(&mut store, &context("en", 23), &Action::PoleKind { action }).unwrap();
    assert_eq!(pole(&store, "en", &job), before);
    assert_eq!(board(&store, &wall, 4), boards);
}

#[test]
fn what_cannot_be_worked_out_is_kept_and_says_what_it_would_need() {
    let (mut store, job, wall) = planned();
    let action = RulesAction::Change {
        job: job.clone(),
        key: "level.change.most".to_owned(),
        value: "0".to_owned(),
        reason: "the owner’s eye".to_owned(),
    };
    act(&mut store, &context("en", 20), &Action::RulesKind { action }).unwrap();
    let readings = readings(&pole(&store, "en", &job));
    say(&mut store, 21, &wall, &given(&readings)).unwrap();
    let entry = pole(&store, "en", &job).as_built.remove(0);
    assert_eq!((entry.courses, entry.changed.len()), (None, 0));
    let need = entry.notes.iter().find(|note| note.code == "need-change").unwrap();
    assert!(need.text.contains("1/16\""), "{}", need.text);
}

#[test]
fn bad_readings_change_nothing() {
    let (mut store, _, wall) = planned();
    let before = store.content_hash().unwrap();
    for (given, code, field) in [
        (&[("course", "3"), ("left", "13 1/2")][..], "first", "right"),
        (&[("course", "99"), ("left", "1"), ("right", "1")][..], "range", "course"),
        (&[("course", "0"), ("left", "1"), ("right", "1")][..], "range", "course"),
        (&[("course", "3"), ("left", "13 1/2"), ("right", "22")][..], "range", "right"),
        (&[("course", "3"), ("left", "6"), ("right", "13 1/2")][..], "range", "left"),
        (&[("course", "3"), ("left", "low"), ("right", "13 1/2")][..], "length", "left"),
        (&[("course", "3"), ("left", "13"), ("right", "13"), ("sag", "1")][..], "unknown", "sag"),
    ] {
        let problem = say(&mut store, 20, &wall, given).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{given:?}");
    }
    assert_eq!(store.content_hash().unwrap(), before);
}

#[test]
fn a_job_document_carries_the_courses_as_they_hang() {
    let (mut store, job, wall) = planned();
    let readings = readings(&pole(&store, "en", &job));
    say(&mut store, 20, &wall, &given(&readings)).unwrap();
    let document = job_document(&store, &context("en", 0), &job).unwrap();
    let mut other = Store::in_memory().unwrap();
    let taken = take_in_document(&mut other, &context("en", 30), &document).unwrap();
    let Place::House { job: copy } = taken.place else { panic!("a house") };
    assert_eq!(job_document(&other, &context("en", 0), &copy).unwrap(), document);
    let (own, theirs) = (pole(&store, "en", &job), pole(&other, "en", &copy));
    assert_eq!(theirs.as_built[0].changed, own.as_built[0].changed);
    let broken = document.replacen("\"as-built\": [", "\"as-built\": [{ \"lines\": [\"1 in\"] },", 1);
    assert_eq!(take_in_document(&mut other, &context("en", 31), &broken).unwrap_err().code, "missing");
}

#[test]
fn reads_well_in_both_languages() {
    let (mut store, job, wall) = planned();
    let readings = readings(&pole(&store, "en", &job));
    say(&mut store, 20, &wall, &given(&readings)).unwrap();
    for language in ["en", "es"] {
        insta::assert_json_snapshot!(format!("as-built-{language}"), pole(&store, language, &job).as_built);
    }
}

/// Boards of 8 1/4 in over a first course at 0: hung at 7 1/2 they lap 3/4 in where 1 1/4 is the least, at 8 3/8 the wall
/// is open.
#[test]
fn a_course_that_laps_too_little_is_told() {
    let (mut store, job, wall) = planned();
    let mut note = |n, left: &str, right: &str| {
        say(&mut store, n, &wall, &[("course", "2"), ("left", left), ("right", right)]).unwrap();
        let shown = pole(&store, "en", &job);
        let first = shown.as_built[0].notes[0].clone();
        (first.code, first.text)
    };
    assert_ne!(note(20, "7", "6 15/16").0, "lap-short");
    let (code, text) = note(21, "7", "7 1/2");
    assert_eq!(code, "lap-short");
    assert!(text.contains("only 3/4\"") && text.contains("1 1/4\""), "{text}");
    assert_eq!(note(22, "8 3/8", "7").0, "no-lap");
}
