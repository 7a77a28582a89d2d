//! Every board of a house its true shape, checked from outside by what a house says of itself: the shapes stand in its job
//! document. Elementary geometry throughout; every expected length is worked out beside its check.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a check stops at what it did not expect"
)]

use std::collections::BTreeMap;

use lapwright::book::Book;
use lapwright::handover::job_document;
use lapwright::measure::Length;
use lapwright::screens::{act, view};
use lapwright::views::{Action, BoardView, Place, PoleAction, View, WallAction, WallView};
use lapwright_tests::random::Random;
use lapwright_tests::{context, taken_in};
use serde_json::{Value, json};

const INCH: i64 = Length::NM_PER_INCH;
const SIXTEENTH: i64 = INCH / 16;
/// The gap at trim, rake and soffit, and the one aimed at round a block (the rules' defaults).
const GAP: i64 = INCH / 8;
const BLOCK_GAP: i64 = 3 * INCH / 32;
/// Over the head flashing of a casing by hand: 1/4 in and the fall of 6 % over 1 in and 5 mm, 1.824 mm.
const HEAD_GAP: i64 = 6_350_000 + 1_824_000;
/// The same over a block of 7/8 in: 6 % of 27.225 mm, 1.6335 mm.
const BLOCK_HEAD_GAP: i64 = 6_350_000 + 1_633_500;

/// A wall 120 in wide and 56 in high, boards 8 in high with a lap of 1 in on a pole of 7 in from its base line.
fn wall() -> Value {
    json!({
        "name": "W", "width": "120 in", "left-height": "56 in", "right-height": "56 in", "base": "0 in",
        "first-stud": "0 in", "stud-spacing": "16 in", "trim-left": "0 in", "trim-right": "0 in"
    })
}

struct House {
    book: Book,
    wall: String,
    boards: Vec<Value>,
}

/// A house with this one wall, its boards planned.
fn house(wall: &Value, pole: &Value) -> House {
    planned(wall, pole, "12 ft").unwrap()
}

/// The same with such stock; none where no studs are free for the joints.
fn planned(wall: &Value, pole: &Value, stock: &str) -> Option<House> {
    let document = json!({
        "lapwright": 1, "name": "Reed House", "board-height": "8 in", "board-thickness": "5/16 in", "lap": "1 in",
        "nail-line": "3/4 in", "stock": [{ "length": stock }], "pole": pole, "walls": [wall]
    });
    let mut book = Book::in_memory().unwrap();
    let outcome = taken_in(&mut book, &context(1), &document.to_string());
    let (Place::House { job }, View::HouseKind { view }) = (outcome.place, outcome.view) else { panic!("a house") };
    let wall = view.walls[0].wall.clone();
    act(&mut book, &context(2), &Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } }).unwrap();
    let plan = Action::WallKind { action: WallAction::PlanBoards { wall: wall.clone() } };
    match act(&mut book, &context(3), &plan) {
        Err(problem) if problem.field == "studs" => return None,
        outcome => outcome.unwrap(),
    };
    let document: Value = serde_json::from_str(&job_document(&book, &context(4), &job).unwrap()).unwrap();
    let boards = document["walls"][0]["boards"].as_array().unwrap().clone();
    Some(House { book, wall, boards })
}

/// A pole in reveals of 7 in.
fn pole(from: &str, to: &str) -> Value {
    let reveal = "7 in";
    json!({ "from": from, "to": to, "mode": "fixed", "reveal": reveal, "reveal-max": reveal, "reveal-min": "4 in" })
}

/// The same wall with something more.
fn with(more: Value) -> Value {
    let mut wall = wall();
    wall.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
    wall
}

impl House {
    fn of(more: Value) -> Self {
        house(&with(more), &pole("0 in", "56 in"))
    }

    fn course(&self, course: i64) -> Vec<&Value> {
        self.boards.iter().filter(|board| board["course"] == course).collect()
    }

    /// The only board of a course.
    fn one(&self, course: i64) -> &Value {
        let boards = self.course(course);
        assert_eq!(boards.len(), 1, "course {course}: {boards:?}");
        boards[0]
    }

    fn line(&self) -> WallView {
        match view(&self.book, &context(0), &Place::Wall { wall: self.wall.clone() }).unwrap() {
            View::WallKind { view } => view,
            other => panic!("{other:?}"),
        }
    }

    /// The first board of a course as its screen has it.
    fn view(&self, course: i64) -> BoardView {
        let line = self.line().boards.into_iter().find(|board| board.course == course).unwrap();
        match view(&self.book, &context(0), &Place::Board { board: line.board }).unwrap() {
            View::BoardKind { view } => view,
            other => panic!("{other:?}"),
        }
    }
}

fn ring(corners: &Value) -> Vec<(i64, i64)> {
    corners.as_array().unwrap().iter().map(|at| (at["x"].as_i64().unwrap(), at["y"].as_i64().unwrap())).collect()
}

fn shape(board: &Value) -> Vec<(i64, i64)> {
    ring(&board["shape"])
}

fn at(board: &Value) -> (i64, i64) {
    (board["at"]["x"].as_i64().unwrap(), board["at"]["y"].as_i64().unwrap())
}

/// Whether two numbers of nanometres differ by no more than a millionth of an inch.
fn near(a: i64, b: i64) -> bool {
    (a - b).abs() <= 26
}

fn inches(inches: f64) -> i64 {
    (inches * INCH as f64).round() as i64
}

fn looks_like(board: &Value, corners: &[(f64, f64)]) {
    let found = shape(board);
    let wanted: Vec<(i64, i64)> = corners.iter().map(|(x, y)| (inches(*x), inches(*y))).collect();
    let same = found.len() == wanted.len()
        && found.iter().zip(&wanted).all(|(found, wanted)| near(found.0, wanted.0) && near(found.1, wanted.1));
    assert!(same, "{found:?} for {wanted:?}");
}

/// A gable whose rake begins 3 in over the bottom of course 5 (28 in): eaves 31 in, peak 61 in over 60 in, 1 in 2. The rake's
/// gap, 1/8 in square to it, lies sqrt(5)/2 of that lower: 0.1397542 in. At the end gap, 1/8 in from the corner, the rake is
/// 3 + 0.0625 - 0.1397542 = 2.9227458 in up; it reaches the full 8 in where x = 2 (8 - 3 + 0.1397542) = 10.2795085 in.
#[test]
fn a_board_under_an_eave_is_plumb_and_then_cut_along_the_rake() {
    let eaves =
        json!({ "left-height": "31 in", "right-height": "31 in", "peak-from-left": "60 in", "peak-height": "61 in" });
    let house = House::of(eaves);
    let board = house.one(5);
    assert_eq!(at(board), (GAP, 28 * INCH));
    let (up, along) = (2.922_745_8, 10.279_508_5 - 0.125);
    let length = 120.0 - 0.25;
    looks_like(board, &[(0.0, 0.0), (length, 0.0), (length, up), (length - along, 8.0), (along, 8.0), (0.0, up)]);
    assert!(board.get("bevel-left").is_none(), "one bevel over the whole height is what it is not");
    let told: Vec<String> = house.view(5).instructions.into_iter().map(|line| line.code).collect();
    assert_eq!(told, ["length", "clip", "clip"]);
    // Between the rakes the whole end is one bevel, 16 in over the full 8 in at 1 in 2.
    let bevel = board_bevel(house.one(6));
    assert!(bevel.iter().all(|by| near(by.abs(), 16 * INCH)), "{bevel:?}");
}

/// How far the upper corners of a board lie to the right of its lower ones, at its left and its right end.
fn board_bevel(board: &Value) -> Vec<i64> {
    let corners = shape(board);
    let top = corners.iter().map(|corner| corner.1).max().unwrap();
    let xs = |y: i64| {
        let xs = || corners.iter().filter(move |corner| corner.1 == y).map(|corner| corner.0);
        (xs().min().unwrap(), xs().max().unwrap())
    };
    let (low, high) = (xs(0), xs(top));
    vec![high.0 - low.0, high.1 - low.1]
}

/// The base line steps up 10 in at 80 in: course 2, from 7 to 15 in, loses 3 in of its height over the step.
#[test]
fn a_board_over_a_step_in_the_base_is_an_l() {
    let house = House::of(json!({ "base-steps": [{ "from-left": "80 in", "rise": "10 in" }] }));
    let board = house.one(2);
    // The upright of the step keeps its gap: the corner is at 80 - 1/8 in.
    let (step, length) = (80.0 - 0.25, 120.0 - 0.25);
    looks_like(board, &[(0.0, 0.0), (step, 0.0), (step, 3.0), (length, 3.0), (length, 8.0), (0.0, 8.0)]);
    let view = house.view(2);
    let step = view.instructions.iter().find(|line| line.code == "step").unwrap();
    assert_eq!(
        step.text,
        "Right end: take the bottom corner out square, 40\" along the edge and 3\" high. Stop the saw short of the corner."
    );
    assert_eq!(step.marks, [80 * INCH - 2 * GAP]);
    assert_eq!(step.marks_behind, [40 * INCH]);
    assert!(view.notes.iter().all(|note| note.code != "thin-leg"));
    let cut = view.steps.iter().find(|step| step.code == "board-cut").unwrap();
    assert!(cut.text.contains("corners"), "{}", cut.text);
}

/// The wall ends 56 in up, 5 in over the last course's line (49 in + 7 in is 56): its boards are ripped to 7 in less the gap.
#[test]
fn the_top_course_is_ripped_and_nailed_through_its_face() {
    let house = house(&with(json!({ "left-height": "54 in", "right-height": "54 in" })), &pole("0 in", "54 in"));
    let board = house.one(8);
    // 49 in to 54 in less 1/8 in.
    assert_eq!(board["rip"], json!({ "top": 8 * INCH - (5 * INCH - GAP) }));
    looks_like(board, &[(0.0, 0.0), (119.75, 0.0), (119.75, 4.875), (0.0, 4.875)]);
    let view = house.view(8);
    assert_eq!(view.height.nm, 5 * INCH - GAP);
    let steps: Vec<&str> = view.steps.iter().map(|step| step.code.as_str()).collect();
    assert!(steps.windows(2).any(|pair| pair == ["board-cut", "board-rip"]), "{steps:?}");
    let nail = view.steps.iter().find(|step| step.code == "board-nail").unwrap();
    assert!(nail.text.contains("through the face"), "{}", nail.text);
    let told: Vec<&str> = view.instructions.iter().map(|line| line.text.as_str()).collect();
    assert_eq!(
        told[1],
        "Rip 3 1/8\" off the top edge, the whole length of the board. It ends up 4 7/8\" high. Keep the factory edge at the bottom."
    );
    // A board below it has its nail line.
    let below = house.view(7);
    assert!(below.steps.iter().all(|step| step.code != "board-rip" && !step.text.contains("through the face")));
}

/// At a gable's tip the angle is the rake's own: 1 in 2 is 63.4 degrees out of square, whatever height is left.
#[test]
fn the_tip_of_a_gable_has_the_rakes_angle() {
    let eaves =
        json!({ "left-height": "31 in", "right-height": "31 in", "peak-from-left": "60 in", "peak-height": "61 in" });
    let house = house(&with(eaves), &pole("0 in", "61 in"));
    let tip = house.one(9);
    let corners = shape(tip);
    assert_eq!(corners.len(), 3, "{corners:?}");
    // The moved peak lies 61 - 0.1397542 in up, 4.8602458 in over the line at 56 in; twice that to each side.
    looks_like(tip, &[(0.0, 0.0), (4.0 * 4.860_245_8, 0.0), (2.0 * 4.860_245_8, 4.860_245_8)]);
    let told = house.view(9).instructions;
    assert_eq!(told.iter().filter(|line| line.code == "bevel" && line.text.contains("63.4°")).count(), 2, "{told:?}");
}

/// A window from 14 to 37 in: course 6 begins at 35 in, and over the head its edge is cut away to the flashing's gap. One
/// whose head lies on the line of course 5 (28 in) is cut, too.
#[test]
fn over_a_head_flashing_boards_keep_the_wider_gap() {
    for (height, course) in [("23 in", 6), ("14 in", 5)] {
        let window =
            json!({ "what": "window", "from-left": "40 in", "width": "30 in", "from-base": "14 in", "height": height });
        let house = House::of(json!({ "openings": [window] }));
        let board = house.one(course);
        let cut = &board["cuts"][0];
        assert_eq!((&cut["name"], &cut["edges"]), (&json!("window"), &json!(["bottom"])));
        let head = if course == 6 { 2 * INCH } else { 0 };
        assert_eq!(cut["top"], head + HEAD_GAP);
        assert_eq!((&cut["left"], &cut["right"]), (&json!(40 * INCH - 2 * GAP), &json!(70 * INCH)));
    }
    // A block that is flashed, from 40 to 48 in: the board over it.
    let block = json!({
        "id": "vent", "what": "vent-hood", "width": "4 in", "from-left": "60 in", "from-base": "40 in",
        "block-width": "8 in", "block-height": "8 in", "block-thickness": "7/8 in", "head-flashing": "yes"
    });
    let house = House::of(json!({ "penetrations": [block] }));
    // Its top lies 44 in up, 2 in over the line of course 7 (42 in).
    let cut = &house.one(7)["cuts"][0];
    assert_eq!((&cut["name"], &cut["top"]), (&json!("p1"), &json!(2 * INCH + BLOCK_HEAD_GAP)));
    let cut = &house.one(6)["cuts"][0];
    assert_eq!(cut["bottom"], INCH - BLOCK_GAP, "under it there is none");
}

/// The base line falls 7 in at 180 in of 240: left of it the first course would be hidden behind the second, all of it.
#[test]
fn what_the_next_course_hides_is_no_board() {
    let steps = json!({ "width": "240 in", "base": "7 in", "left-height": "49 in", "right-height": "49 in",
        "base-steps": [{ "from-left": "180 in", "rise": "-7 in" }] });
    let house = house(&with(steps), &pole("0 in", "56 in"));
    let first = house.one(1);
    assert_eq!(at(first), (180 * INCH + GAP, -7 * INCH));
    looks_like(first, &[(0.0, 0.0), (59.75, 0.0), (59.75, 8.0), (0.0, 8.0)]);
    // A door whose head lies 3/4 in under the next line: the strip over it would be hidden there.
    let door =
        json!({ "what": "door", "from-left": "40 in", "width": "30 in", "from-base": "0 in", "height": "41 3/4 in" });
    let house = House::of(json!({ "openings": [door] }));
    let ends: Vec<(i64, i64)> = house.course(6).iter().map(|board| (at(board).0, shape(board).len() as i64)).collect();
    assert_eq!(ends, [(GAP, 4), (70 * INCH + GAP, 4)], "parted at its trim, and no strip between");
    // Where the real lap is wider than the least one, it counts: reveals of 6 in leave a lap of 2 in.
    let mut close = pole("0 in", "54 in");
    close.as_object_mut().unwrap().extend(json!({ "reveal": "6 in" }).as_object().unwrap().clone());
    let door =
        json!({ "what": "door", "from-left": "40 in", "width": "30 in", "from-base": "0 in", "height": "36 in" });
    let house = self::house(&with(json!({ "openings": [door] })), &close);
    assert_eq!(house.course(6).len(), 2, "a strip of 1 3/4 in behind the next course is not run over the door");
    assert_eq!(house.course(7).len(), 1);
}

/// Two blocks 5 in wide whose edges lie 9 in apart leave 9 in; 1 in apart they leave a leg under 2 in.
#[test]
fn two_notches_are_judged_together() {
    for (second, thin) in [("70 in", false), ("62 1/2 in", true)] {
        let block = |id: &str, from_left: &str| {
            json!({ "id": id, "what": "hose-bib", "width": "7/8 in", "from-left": from_left, "from-base": "31 in",
                "block-width": "5 in", "block-height": "5 in", "hole-from-bottom": "2 1/2 in" })
        };
        let house = House::of(json!({ "penetrations": [block("one", "56 in"), block("two", second)] }));
        let notes = house.view(5).notches.into_iter().flat_map(|notch| notch.notes);
        assert_eq!(notes.filter(|note| note.code == "thin-between").count(), if thin { 2 } else { 0 });
    }
}

/// A block that starts 1 1/4 in over a board that really laps 2 in: its strip would lie over the board below.
#[test]
fn the_lap_that_hangs_opens_a_notch() {
    let block = json!({ "id": "tap", "what": "hose-bib", "width": "7/8 in", "from-left": "60 in", "from-base": "33 3/4 in",
        "block-width": "5 in", "block-height": "3 in", "hole-from-bottom": "1 1/2 in" });
    let mut close = pole("0 in", "54 in");
    close.as_object_mut().unwrap().extend(json!({ "reveal": "6 in" }).as_object().unwrap().clone());
    let house = self::house(&with(json!({ "penetrations": [block] })), &close);
    // 33 3/4 - 1 1/2 = 32 1/4 in: 2 1/4 in over the line at 30 in is a hole, 1 1/4 in is none.
    assert_eq!(house.one(6)["cuts"][0]["edges"], json!([]));
    let block = json!({ "id": "tap", "what": "hose-bib", "width": "7/8 in", "from-left": "60 in", "from-base": "32 3/4 in",
        "block-width": "5 in", "block-height": "3 in", "hole-from-bottom": "1 1/2 in" });
    let house = self::house(&with(json!({ "penetrations": [block] })), &close);
    assert_eq!(house.one(6)["cuts"][0]["edges"], json!(["bottom"]));
}

/// A block from 27 to 47 in goes right through courses 5 and 6: each is two pieces, and each piece ends with its gap.
#[test]
fn a_board_cut_right_through_is_two_pieces() {
    let block = json!({ "id": "meter", "what": "meter-base", "width": "8 in", "height": "9 in", "from-left": "60 in",
        "from-base": "37 in", "block-width": "20 in", "block-height": "20 in", "hole-from-bottom": "10 in" });
    let house = House::of(json!({ "penetrations": [block] }));
    for course in [5, 6] {
        let ends: Vec<(i64, i64)> =
            house.course(course).iter().map(|board| (at(board).0, at(board).0 + shape(board)[1].0)).collect();
        assert_eq!(ends, [(GAP, 50 * INCH - BLOCK_GAP), (70 * INCH + BLOCK_GAP, 120 * INCH - GAP)], "course {course}");
    }
    for board in &house.boards {
        let length = board["length"]["planned"].as_str().unwrap();
        assert!(!length.is_empty());
    }
}

/// Trim 3 1/2 in wide (the rule's default) round a meter base of 8 by 9 in at 60, 37 in is one outline of 15 by 16 in, from 52 1/2 to
/// 67 1/2 and from 29 to 45 in: the boards end at it, the order buys twice 15 and twice 16 in of trim, 62 in.
#[test]
fn trim_round_a_fixture_is_one_outline_for_boards_and_order() {
    let meter = json!({ "id": "meter", "what": "meter-base", "width": "8 in", "height": "9 in", "from-left": "60 in",
        "from-base": "37 in", "finish": "trim" });
    let house = House::of(json!({ "penetrations": [meter] }));
    let (left, right) = (52 * INCH + INCH / 2, 67 * INCH + INCH / 2);
    let ends: Vec<(i64, i64)> =
        house.course(6).iter().map(|board| (at(board).0, at(board).0 + shape(board)[1].0)).collect();
    assert_eq!(ends, [(GAP, left - BLOCK_GAP), (right + BLOCK_GAP, 120 * INCH - GAP)]);
    // Course 5 hangs from 28 in: its notch begins an inch up, less the gap.
    let notch: Vec<(i64, i64)> = shape(house.one(5)).into_iter().filter(|(_, y)| *y == INCH - BLOCK_GAP).collect();
    let across: Vec<i64> = notch.iter().map(|(x, _)| x + at(house.one(5)).0).collect();
    assert_eq!(across, [right + BLOCK_GAP, left - BLOCK_GAP]);
    let job = house.line().job;
    let View::OrderKind { view: order } = view(&house.book, &context(0), &Place::Order { job }).unwrap() else {
        panic!("an order")
    };
    let trim: Vec<&str> =
        order.lines.iter().filter(|line| line.from.contains("fixtures: 1")).map(|line| &*line.net).collect();
    assert_eq!(trim, ["5.2 ft"], "62 in");
}

/// Twice the area of a triangle, over zero where the way turns left.
fn turn(a: (i64, i64), b: (i64, i64), c: (i64, i64)) -> i128 {
    let wide = |from: i64, to: i64| i128::from(to) - i128::from(from);
    wide(a.0, b.0) * wide(a.1, c.1) - wide(a.1, b.1) * wide(a.0, c.0)
}

/// Whether a point that lies on no edge lies within a ring.
fn within(ring: &[(i64, i64)], at: (i64, i64)) -> bool {
    let next = ring.iter().cycle().skip(1);
    let crossed = ring
        .iter()
        .zip(next)
        .filter(|(a, b)| (a.1 <= at.1) != (b.1 <= at.1) && (turn(**a, **b, at) > 0) == (b.1 > a.1));
    crossed.count() % 2 == 1
}

/// How far a point lies from a stretch, in nanometres.
fn distance(a: (i64, i64), b: (i64, i64), at: (i64, i64)) -> f64 {
    let (dx, dy) = ((b.0 - a.0) as f64, (b.1 - a.1) as f64);
    let (px, py) = ((at.0 - a.0) as f64, (at.1 - a.1) as f64);
    let along = ((px * dx + py * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
    (px - along * dx).hypot(py - along * dy)
}

/// The outline of a board and its holes, on the wall.
type Rings = Vec<Vec<(i64, i64)>>;

/// A rectangle on the wall with its gaps: at its sides, over it and under it.
struct Hole {
    left: i64,
    right: i64,
    bottom: i64,
    top: i64,
    gaps: (i64, i64, i64),
}

impl Hole {
    fn holds(&self, at: (i64, i64), more: i64) -> bool {
        let (side, over, under) = self.gaps;
        let (left, right) = (self.left - side - more, self.right + side + more);
        left < at.0 && at.0 < right && self.bottom - under - more < at.1 && at.1 < self.top + over + more
    }
}

/// A wall by chance: a gable, a shed or a plain one, over one or two steps, with windows and blocks; its outline, what
/// stands on it, and its document.
fn by_chance(random: &mut Random) -> (Value, Vec<(i64, i64)>, Vec<Hole>, Value) {
    let text = |sixteenths: i64| format!("{} mm", (sixteenths * SIXTEENTH) as f64 / 1e6);
    let width = random.between(1_600, 4_800);
    let (left, mut right) = (random.between(1_300, 1_700), random.between(1_300, 1_700));
    let kind = random.between(0, 2);
    if kind != 1 {
        right = left;
    }
    let mut steps = Vec::new();
    let mut outline = vec![(0, 0)];
    let mut level = 0;
    for place in [width / 3, 2 * width / 3] {
        if random.between(0, 1) == 0 {
            let rise = random.of(&[&-300_i64, &-112, &-40, &50, &112, &280]);
            steps.push(json!({ "from-left": text(place), "rise": text(*rise) }));
            outline.push((place, level));
            level += *rise;
            outline.push((place, level));
        }
    }
    outline.extend([(width, level), (width, right)]);
    let mut wall = json!({ "name": "W", "width": text(width), "left-height": text(left), "right-height": text(right),
        "first-stud": "0 in", "stud-spacing": "16 in", "trim-left": "0 in", "trim-right": "0 in", "base": "60 in" });
    if kind == 2 {
        let (x, peak) = (random.between(width / 3, 2 * width / 3), random.between(1_900, 2_600));
        outline.push((x, peak));
        let own = wall.as_object_mut().unwrap();
        own.insert("peak-from-left".to_owned(), text(x).into());
        own.insert("peak-height".to_owned(), text(peak).into());
    }
    outline.push((0, left));
    let (mut openings, mut penetrations, mut holes) = (Vec::new(), Vec::new(), Vec::new());
    let mut x = random.between(60, 300);
    while x < width - 900 && holes.len() < 5 {
        let (bottom, wide) = (random.between(320, 700), random.between(60, 700));
        let is_window = random.between(0, 1) == 0;
        let high = if is_window { random.between(200, 560) } else { random.between(40, 200) };
        if is_window {
            openings
                .push(json!({ "what": "window", "from-left": text(x), "width": text(wide), "from-base": text(bottom),
                "height": text(high) }));
        } else {
            let centre = format!("{} mm", ((2 * x + wide) * SIXTEENTH / 2) as f64 / 1e6);
            penetrations.push(
                json!({ "id": format!("p{x}"), "what": "hose-bib", "width": "1/2 in", "from-left": centre,
                "head-flashing": "no", "from-base": text(bottom + high / 2), "block-width": text(wide),
                "block-height": text(high), "hole-from-bottom": text(high / 2) }),
            );
        }
        let gaps = if is_window { (GAP, HEAD_GAP, GAP) } else { (BLOCK_GAP, BLOCK_GAP, BLOCK_GAP) };
        let scale = |sixteenths: i64| sixteenths * SIXTEENTH;
        holes.push(Hole {
            left: scale(x),
            right: scale(x + wide),
            bottom: scale(bottom),
            top: scale(bottom + high),
            gaps,
        });
        x += wide + random.between(100, 500);
    }
    let own = wall.as_object_mut().unwrap();
    own.insert("base-steps".to_owned(), steps.into());
    own.insert("openings".to_owned(), openings.into());
    own.insert("penetrations".to_owned(), penetrations.into());
    let outline = outline.into_iter().map(|(x, y)| (x * SIXTEENTH, y * SIXTEENTH)).collect();
    // The lowest step lies at most 600/16 in under the base: 22 1/2 in.
    let mut pole = pole("22 in", "240 in");
    let reveal = format!("{} in", random.of(&[&"6", &"6 3/8", &"7", &"6 3/4"]));
    pole.as_object_mut().unwrap().insert("reveal".to_owned(), reveal.into());
    (wall, outline, holes, pole)
}

/// Over random walls every point of the wall that lies off its gaps is covered by boards of one course, or where it laps of
/// two, and by one board of each; no board lies where something else is.
#[test]
fn all_courses_together_cover_the_wall_once() {
    let cases: u64 = std::env::var("CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(60);
    let mut random = Random::new(20_261_130);
    let mut points = 0;
    for case in 0..cases {
        let (wall, outline, holes, pole) = by_chance(&mut random);
        let Some(house) = planned(&wall, &pole, "20 ft") else { continue };
        let mut courses: BTreeMap<i64, Vec<Rings>> = BTreeMap::new();
        for board in &house.boards {
            let (x, y) = at(board);
            let placed = |ring: Vec<(i64, i64)>| ring.into_iter().map(|own| (own.0 + x, own.1 + y)).collect::<Vec<_>>();
            let holes = board["holes"].as_array().into_iter().flatten().map(ring);
            let rings = std::iter::once(shape(board)).chain(holes).map(placed).collect();
            courses.entry(board["course"].as_i64().unwrap()).or_default().push(rings);
            assert!(board.get("further-pieces").is_none(), "case {case}: each piece is a board of its own");
        }
        let right = outline.iter().map(|corner| corner.0).max().unwrap();
        let (low, high) = (
            outline.iter().map(|corner| corner.1).min().unwrap(),
            outline.iter().map(|corner| corner.1).max().unwrap(),
        );
        for _ in 0..400 {
            let at = (random.between(-INCH, right + INCH), random.between(low - INCH, high + INCH));
            let next = outline.iter().cycle().skip(1);
            let off = outline.iter().zip(next).map(|(a, b)| distance(*a, *b, at)).fold(f64::INFINITY, f64::min);
            let inside = within(&outline, at);
            let covered = |rings: &Rings| rings.iter().filter(|ring| within(ring, at)).count() % 2 == 1;
            let by: Vec<(i64, usize)> = courses
                .iter()
                .map(|(course, boards)| (*course, boards.iter().filter(|rings| covered(rings)).count()))
                .filter(|(_, count)| *count > 0)
                .collect();
            assert!(by.iter().all(|(_, count)| *count == 1), "case {case}: {by:?} at {at:?} of {wall}");
            assert!(
                by.len() <= 2 && by.windows(2).all(|pair| pair[1].0 == pair[0].0 + 1),
                "case {case}: {by:?} at {at:?}"
            );
            if !inside || holes.iter().any(|hole| hole.holds(at, -4)) {
                assert!(by.is_empty(), "case {case}: {by:?} at {at:?} of {wall}");
            } else if off > 1.5 * GAP as f64 && !holes.iter().any(|hole| hole.holds(at, 4)) {
                assert!(!by.is_empty(), "case {case}: bare at {at:?} of {wall}");
                points += 1;
            }
        }
    }
    assert!(points > cases * 100, "most walls are planned: {points}");
}
