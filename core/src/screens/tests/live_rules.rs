//! Every rule that a crew can change changes something that somebody reads.

use std::collections::BTreeSet;
use std::fmt::Write;

use super::*;
use crate::book::{Book, Kind};
use crate::rules::{Quantity, Rule, RuleSet};

/// Rules that change something which none of the houses here meets, each with the test that meets it: two phones' tapes at
/// one block, a course that hangs out of level, an offcut that is or is not worth keeping. The list may only get shorter: a
/// rule that is met and stands here fails the test as well.
const NOT_MET: &[(&str, fn())] = &[
    ("cross-check.tolerance", board::how_far_two_notches_may_miss_is_the_houses_rule),
    ("level.change.most", as_built::how_fast_courses_come_back_to_level_is_the_houses_rule),
    ("level.tolerance", board::how_far_a_block_may_lean_is_the_houses_rule),
    ("offcut.keep.least", again::what_is_left_of_a_spoiled_board_is_kept_by_the_houses_rule),
    ("tape.plan-tolerance", board::how_far_tape_and_plan_may_differ_is_the_houses_rule),
];

/// A house with a little of everything: a jointed wall with a window, a door, ground and a roof below, and what goes
/// through a wall in every finish.
const HOUSE: &str = r#"{
  "lapwright": 1, "name": "Little house", "board-height": "8 1/4 in", "nail-line": "7/8 in", "rules": "us",
  "stock": [{ "length": "12 ft" }],
  "pole": { "from": "0 in", "to": "91 in", "mode": "fixed", "reveal": "7 in", "reveal-max": "7 in", "reveal-min": "6 in" },
  "walls": [{
    "name": "Front", "width": "20 ft", "left-height": "87 in", "right-height": "87 in", "base": "0 in",
    "first-stud": "0 in", "stud-spacing": "16 in", "trim-left": "3 1/2 in", "trim-right": "0 in",
    "openings": [
      { "what": "window", "from-left": "40 in", "width": "30 in", "from-base": "29 in", "height": "34 in" },
      { "what": "door", "from-left": "150 in", "width": "36 in", "from-base": "0 in", "height": "66 in" }],
    "abutments": [
      { "what": "ground", "from-left": "0 in", "width": "100 in", "top": "-7 in" },
      { "what": "paving", "from-left": "100 in", "width": "20 in", "top": "-7 in" },
      { "what": "roof", "from-left": "120 in", "width": "20 in", "top": "-3 in" },
      { "what": "deck", "from-left": "186 in", "width": "10 in", "top": "-3 in" },
      { "what": "roof", "from-left": "200 in", "width": "40 in", "top": "4 in", "rise": "10 in" }],
    "penetrations": [
      { "id": "tap", "what": "hose-bib", "width": "1 in", "from-left": "20 in", "from-base": "18 in", "painted": "yes" },
      { "id": "duct", "what": "vent-hood", "width": "4 in", "from-left": "90 in", "from-base": "40 in" },
      { "id": "meter", "what": "meter-base", "width": "8 in", "height": "10 in", "from-left": "120 in", "from-base": "44 in" },
      { "id": "pipe", "what": "pipe", "width": "2 in", "from-left": "210 in", "from-base": "40 in", "finish": "collar" },
      { "id": "lamp", "what": "light", "width": "1 1/2 in", "from-left": "225 in", "from-base": "80 in" }]
  }]
}"#;

/// What else may stand behind and between the boards.
const OTHER: &[(&str, &str)] = &[
    ("foam.thickness", "1 in"),
    ("furring.thickness", "3/4 in"),
    ("gap.trim", "1/2 in"),
    ("sealant.depth.share", "100 %"),
    ("board.thickness", "3/4 in"),
    ("paint.coats", "0"),
    ("soffit.width", "12 in"),
];

/// The country whose rules a house has, and what else stands behind its boards.
type Ruled = (&'static str, &'static [(&'static str, &'static str)]);

/// Everything that is read of the house once its pole is laid out and its wall is planned, but the rules themselves.
fn read((country, others): &Ruled, key: &str, value: Option<Quantity>) -> Option<String> {
    let mut document: serde_json::Value = serde_json::from_str(HOUSE).unwrap();
    document["rules"] = serde_json::json!(country);
    let changed = others.iter().map(|(key, value)| ((*key).to_owned(), (*value).to_owned()));
    let changed = changed.filter(|(other, _)| other != key).chain(value.map(|value| (key.to_owned(), value.text())));
    let changed = changed.map(|(key, value)| serde_json::json!({ "key": key, "value": value, "reason": "maker" }));
    document["rules-changed"] = changed.collect();
    let mut book = Book::in_memory().unwrap();
    let mut take_in = || take_in_document(&mut book, &context("en", 1), &document.to_string());
    let mut asked = String::new();
    // What a rule makes unlikely is asked about.
    let taken = take_in().or_else(|problem| {
        asked = problem.text;
        take_in()
    });
    let taken = taken.ok()?;
    let Place::House { job } = taken.place else { return None };
    let of_kind = |book: &Book, kind: Kind, of: &str| -> Vec<String> {
        let house = book.house(Some(job.parse().unwrap())).unwrap();
        house.under(of.parse().unwrap(), kind).iter().map(|record| record.id().to_string()).collect()
    };
    let wall = of_kind(&book, Kind::Wall, &job)[0].clone();
    let mut text = asked;
    let laid_out = tap(&mut book, 2, PoleAction::LayOut { job: job.clone() }).err();
    let planned = tap(&mut book, 3, WallAction::PlanBoards { wall: wall.clone() }).err();
    writeln!(text, "{laid_out:?} {planned:?}").unwrap();
    let mut places = vec![
        Place::House { job: job.clone() },
        Place::Pole { job: job.clone() },
        Place::SawList { job: job.clone() },
        Place::Order { job: job.clone() },
        Place::Wall { wall: wall.clone() },
        Place::Measure { wall: wall.clone() },
    ];
    let on_wall: WallView = shown(&book, "en", Place::Wall { wall: wall.clone() });
    let details = on_wall.details.into_iter().map(|line| line.detail);
    places.extend(details.map(|penetration| Place::Penetration { penetration }));
    let penetrations = of_kind(&book, Kind::Penetration, &wall).into_iter();
    places.extend(penetrations.map(|penetration| Place::Penetration { penetration }));
    places.extend(of_kind(&book, Kind::Board, &wall).into_iter().map(|board| Place::Board { board }));
    for place in places {
        match view(&book, &context("en", 4), &place) {
            Ok(view) => writeln!(text, "{view:?}").unwrap(),
            Err(problem) => writeln!(text, "{}", problem.text).unwrap(),
        }
    }
    Some(text)
}

/// Other values that a rule may be given: its bounds, and what lies between them and the default.
fn others(rule: &Rule) -> Vec<Quantity> {
    let unit = rule.value.unit();
    let fraction = |quantity: Quantity| {
        let value = quantity.value_in(unit).unwrap();
        (value.numer().try_into().unwrap(), value.denom().try_into().unwrap())
    };
    let between = |one: Quantity, other: Quantity| -> Option<Quantity> {
        let ((a, b), (c, d)): ((i64, i64), (i64, i64)) = (fraction(one), fraction(other));
        Quantity::new(a * d + c * b, 2 * b * d, unit)
    };
    // A quarter and a sixteenth of the way: some rules have another one close by, which they must not pass.
    let part = |bound: Quantity, halvings: u32| (0..halvings).try_fold(bound, |at, _| between(rule.value, at));
    let near = [rule.least, rule.most].into_iter().flat_map(|bound| [part(bound, 2), part(bound, 4)]);
    let candidates = [
        Some(rule.most),
        Some(rule.least),
        between(rule.value, rule.least),
        between(rule.value, rule.most),
        between(rule.value, rule.value).and_then(|value| between(value, between(value, rule.most)?)),
    ];
    candidates.into_iter().chain(near).flatten().filter(|value| *value != rule.value).collect()
}

#[test]
fn every_rule_that_can_be_changed_changes_something() {
    // The same house, the same over foam and furring with wide joints, deep sealant and thick boards, and one in Canada.
    let houses: [Ruled; 3] = [("us", &[]), ("us", OTHER), ("ca", &[])];
    let plain = houses.map(|house| (house, read(&house, "", None).unwrap()));
    let rules = RuleSet::standard();
    let live = |rule: &&Rule| {
        plain.iter().any(|(house, plain)| {
            others(rule).into_iter().any(|value| read(house, rule.key, Some(value)).is_some_and(|text| text != *plain))
        })
    };
    let dead: BTreeSet<&str> =
        rules.rules().filter(|rule| !rule.is_fixed()).filter(|rule| !live(rule)).map(|rule| rule.key).collect();
    assert_eq!(dead, NOT_MET.iter().map(|(key, _)| *key).collect(), "left: dead rules");
}
