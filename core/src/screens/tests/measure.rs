//! A wall measured by taps: what cannot stand is refused before it is kept.

use super::penetration::wall;
use super::*;

fn answer(book: &mut Book, n: u8, wall: &str, field: &str, text: &str) -> Result<Outcome, Problem> {
    let (wall, field, text) = (wall.to_owned(), field.to_owned(), text.to_owned());
    tap(book, n, MeasureAction::Answer { wall, field, text })
}

fn add(book: &mut Book, n: u8, wall: &str, kind: &str, given: &[(&str, &str)]) -> Result<Outcome, Problem> {
    let answers = given.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() });
    let (wall, kind, answers) = (wall.to_owned(), kind.to_owned(), answers.collect());
    tap(book, n, MeasureAction::AddPart { wall, kind, answers })
}

fn window(from_left: &'static str, from_base: &'static str, height: &'static str) -> [(&'static str, &'static str); 5] {
    [("what", "window"), ("from-left", from_left), ("width", "24"), ("from-base", from_base), ("height", height)]
}

fn refused(outcome: Result<Outcome, Problem>) -> (String, String) {
    let problem = outcome.unwrap_err();
    (problem.code, problem.field)
}

/// By hand: the rake rises from 108 in at the corner to 156 in over 72 in, 2 in 3; at 10 in it is at 114 2/3 in, at 60 in
/// at 148 in, and with a peak of 130 in only at 126 1/3 in.
#[test]
fn a_window_stays_under_the_rake() {
    let (mut book, _, wall) = wall();
    answer(&mut book, 10, &wall, "peak-from-left", "72").unwrap();
    answer(&mut book, 11, &wall, "peak-height", "156").unwrap();
    let low = refused(add(&mut book, 12, &wall, "opening", &window("10", "100", "30")));
    assert_eq!(low, ("range".to_owned(), "height".to_owned()));
    add(&mut book, 13, &wall, "opening", &window("60", "100", "40")).unwrap();
    let lower = refused(answer(&mut book, 14, &wall, "peak-height", "130"));
    assert_eq!(lower, ("range".to_owned(), "peak-height".to_owned()));
}

#[test]
fn steps_of_the_base_are_looked_at_together_and_with_what_is_on_the_wall() {
    let (mut book, _, wall) = wall();
    let step = |from_left, rise| [("from-left", from_left), ("rise", rise)];
    add(&mut book, 10, &wall, "base-step", &step("40", "60")).unwrap();
    let over = refused(add(&mut book, 11, &wall, "base-step", &step("80", "60")));
    assert_eq!(over, ("range".to_owned(), "rise".to_owned()), "60 and 60 in leave nothing of 108 in");
    let under = refused(add(&mut book, 12, &wall, "opening", &window("60", "30", "40")));
    assert_eq!(under, ("range".to_owned(), "from-base".to_owned()));
    add(&mut book, 13, &wall, "opening", &window("100", "65", "30")).unwrap();
    let into = refused(add(&mut book, 14, &wall, "base-step", &step("90", "10")));
    assert_eq!(into, ("range".to_owned(), "rise".to_owned()));
    add(&mut book, 15, &wall, "base-step", &step("130", "10")).unwrap();
}
