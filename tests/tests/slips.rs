//! What becomes of a slip: every length of a real house, typed wrongly in each way that thumbs and eyes slip; and whether
//! true houses are taken without a question. The counts are printed.
//!
//! The ways to slip are common knowledge of the tape (common practice, no source): digits in each other's place, a fraction
//! left out, feet for inches and back, the other scale of the tape, left for right, a point for a stroke, the row beside.

#![allow(clippy::unwrap_used, clippy::panic, clippy::print_stdout, reason = "a check stops at what it did not expect")]

use std::collections::BTreeMap;
use std::fmt;

use lapwright::book::Book;
use lapwright::measure::{Length, Reader, Show};
use lapwright::screens::take_in_document;
use lapwright::views::{
    Action, BoardAction, DoneListAction, HouseAction, NotchView, Outcome, Place, PoleAction, Problem, View, WallAction,
};
use lapwright_tests::desk::Desk;
use lapwright_tests::random::Random;
use lapwright_tests::{context, fixtures};
use serde_json::{Map, Value, json};

/// A way to slip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Slip {
    Digits,
    NoFraction,
    FeetForInches,
    InchesForFeet,
    MillimetresForInches,
    InchesForMillimetres,
    LeftForRight,
    PointForStroke,
    WrongRow,
}

impl Slip {
    const ALL: [Self; 9] = [
        Self::Digits,
        Self::NoFraction,
        Self::FeetForInches,
        Self::InchesForFeet,
        Self::MillimetresForInches,
        Self::InchesForMillimetres,
        Self::LeftForRight,
        Self::PointForStroke,
        Self::WrongRow,
    ];

    /// A length written with this slip; `beside` is what stands in the next row, `mirrored` what is read from the other end.
    fn of(self, text: &str, beside: Option<&str>, mirrored: Option<&str>) -> Option<String> {
        let (number, unit) = text.rsplit_once(' ')?;
        let (sign, number) = number.strip_prefix('-').map_or(("", number), |number| ("-", number));
        let (whole, fraction) = match number.split_once(' ') {
            Some((whole, fraction)) => (whole, fraction),
            None if number.contains('/') => ("", number),
            None => (number, ""),
        };
        let inches = unit == "in";
        match self {
            Self::Digits => {
                let mut digits: Vec<char> = whole.chars().collect();
                let at = digits.windows(2).position(|pair| matches!(pair, [a, b] if a != b))?;
                digits.swap(at, at + 1);
                let whole: String = digits.into_iter().collect();
                Some(format!("{sign}{whole} {fraction} {unit}").replace("  ", " "))
            }
            Self::NoFraction if whole.is_empty() => {
                fraction.split_once('/').map(|(above, _)| format!("{above} {unit}"))
            }
            Self::NoFraction => (!fraction.is_empty()).then(|| format!("{sign}{whole} {unit}")),
            Self::FeetForInches => (inches && number != "0").then(|| format!("{sign}{number} ft")),
            Self::InchesForFeet => (unit == "ft").then(|| format!("{sign}{number} in")),
            Self::MillimetresForInches => {
                let mm = Reader::default().length(text).ok()?.nm() / 1_000_000;
                (mm != 0).then(|| format!("{mm} in"))
            }
            Self::InchesForMillimetres => (inches && number != "0").then(|| format!("{sign}{number} mm")),
            Self::LeftForRight => mirrored.map(str::to_owned),
            Self::PointForStroke => {
                let digits = fraction.replace('/', "");
                let (front, back) = if whole.is_empty() { fraction.split_once('/')? } else { (whole, digits.as_str()) };
                (!back.is_empty()).then(|| format!("{sign}{front}.{back} {unit}"))
            }
            Self::WrongRow => beside.map(str::to_owned),
        }
        .filter(|slipped| length(slipped) != length(text))
    }
}

fn length(text: &str) -> Option<Length> {
    Reader::default().length(text).ok()
}

fn inches(length: Length) -> String {
    format!("{} in", Show::Inches(16).text(length).trim_end_matches('"'))
}

/// What became of slips.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Count {
    refused: u32,
    asked: u32,
    /// Taken, and off by no more than tape and plan may differ by the rules before the book asks which is right.
    harmless: u32,
    /// Taken for true: nothing on the house tells it from what could be.
    unseen: u32,
}

impl Count {
    fn add(&mut self, slipped: &str, truth: &str, answer: Result<(), &Problem>) {
        match answer {
            Err(problem) if problem.code == "unlikely" => self.asked += 1,
            Err(problem) => {
                assert!(!problem.field.is_empty() && !problem.text.is_empty(), "{problem:?}");
                self.refused += 1;
            }
            Ok(()) if off(slipped, truth) <= Length::NM_PER_INCH / 4 => self.harmless += 1,
            Ok(()) => self.unseen += 1,
        }
    }

    const fn all(self) -> u32 {
        self.refused + self.asked + self.harmless + self.unseen
    }
}

impl fmt::Display for Count {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { refused, asked, harmless, unseen } = self;
        write!(f, "{refused} refused, {asked} asked about, {harmless} harmless, {unseen} not told from true ones")
    }
}

fn off(slipped: &str, truth: &str) -> i64 {
    let nm = |text: &str| length(text).unwrap().nm();
    (nm(slipped) - nm(truth)).abs()
}

/// The places in a document where a length stands, each with the length of the row behind it.
fn lengths(json: &Value, path: &str, all: &mut Vec<(String, String, Option<String>)>) {
    let Value::Object(object) = json else { return };
    let own: Vec<(&String, &str)> = FIELDS_IN_ORDER
        .iter()
        .filter_map(|field| object.get_key_value(*field))
        .filter_map(|(name, value)| Some((name, value.as_str().filter(|text| length(text).is_some())?)))
        .collect();
    for (at, (name, text)) in own.iter().enumerate() {
        let beside = own.get(at + 1).map(|(_, text)| (*text).to_owned());
        all.push((format!("{path}/{name}"), (*text).to_owned(), beside));
    }
    for (name, value) in object {
        match value {
            Value::Array(parts) if name != "readings" => {
                for (at, part) in parts.iter().enumerate() {
                    lengths(part, &format!("{path}/{name}/{at}"), all);
                }
            }
            Value::Object(_) => lengths(value, &format!("{path}/{name}"), all),
            _ => {}
        }
    }
}

/// The fields in the order in which a screen asks them, so that the row beside is the one below it there.
const FIELDS_IN_ORDER: [&str; 36] = [
    "board-height",
    "board-thickness",
    "lap",
    "nail-line",
    "length",
    "from",
    "to",
    "reveal-max",
    "reveal-min",
    "change-max",
    "at",
    "clear",
    "from-left",
    "width",
    "from-base",
    "height",
    "left-height",
    "right-height",
    "base",
    "first-stud",
    "stud-spacing",
    "trim-left",
    "trim-right",
    "diagonal-up",
    "diagonal-down",
    "peak-from-left",
    "peak-height",
    "rise",
    "top",
    "block-width",
    "block-height",
    "block-thickness",
    "hole-from-bottom",
    "left",
    "right",
    "bottom-left",
];

fn demo() -> Value {
    let text = std::fs::read_to_string(fixtures().join("demo/house.json")).unwrap();
    let mut house: Value = serde_json::from_str(&text).unwrap();
    house.as_object_mut().unwrap().remove("readings");
    house
}

fn take_in(document: &Value) -> Result<Outcome, Problem> {
    take_in_document(&mut Book::in_memory().unwrap(), &context(1), &document.to_string())
}

/// What a window, a door or a penetration reads from the wall's right corner.
fn mirrored(house: &Value, path: &str) -> Option<String> {
    let thing = path.strip_suffix("/from-left")?;
    let wall = house.pointer(thing.rsplitn(3, '/').nth(2)?)?;
    let of = |json: &Value, field: &str| json.get(field).and_then(Value::as_str).and_then(length);
    let thing = house.pointer(thing)?;
    let own = if thing.get("id").is_some() { Length::ZERO } else { of(thing, "width").unwrap_or_default() };
    Some(inches(of(wall, "width")? - of(thing, "from-left")? - own))
}

#[test]
fn slips_of_a_house_are_refused_asked_about_or_counted() {
    let house = demo();
    take_in(&house).unwrap_or_else(|problem| panic!("the house itself: {problem:?}"));
    let mut all = Vec::new();
    lengths(&house, "", &mut all);
    let mut counts: BTreeMap<Slip, Count> = BTreeMap::new();
    let mut unseen = Vec::new();
    for (path, truth, beside) in &all {
        for slip in Slip::ALL {
            let mirrored = mirrored(&house, path);
            let Some(slipped) = slip.of(truth, beside.as_deref(), mirrored.as_deref()) else { continue };
            let mut document = house.clone();
            *document.pointer_mut(path).unwrap() = json!(slipped);
            let answer = take_in(&document);
            let answer = answer.as_ref().map(|_| ());
            count(&mut counts, &mut unseen, (slip, &slipped, truth), path, answer);
        }
    }
    readings(&mut counts, &mut unseen);
    let total = counts.values().map(|count| count.all()).sum::<u32>();
    println!("{total} slips of a house:");
    for (slip, count) in &counts {
        println!("  {slip:?}: {count}");
    }
    unseen.iter().for_each(|slip| println!("    taken for true: {slip}"));
    assert!(total >= 400, "{total}");
    // What stays is a first reading that could be another house's. No share may grow past what was reached.
    let bounds = [
        (Slip::Digits, 42),
        (Slip::NoFraction, 40),
        (Slip::FeetForInches, 6),
        (Slip::InchesForFeet, 0),
        (Slip::MillimetresForInches, 1),
        (Slip::InchesForMillimetres, 0),
        (Slip::LeftForRight, 28),
        (Slip::PointForStroke, 0),
        (Slip::WrongRow, 33),
    ];
    for (slip, most) in bounds {
        let count = counts.get(&slip).copied().unwrap_or_default();
        assert!(count.all() > 0, "{slip:?} never happened");
        assert!(count.unseen * 100 <= count.all() * most, "{slip:?}: {count}, at most {most} % may stay unseen");
    }
}

/// Slips at the board in hand: the readings of the first notches of each wall, against what is planned there.
fn readings(counts: &mut BTreeMap<Slip, Count>, unseen: &mut Vec<String>) {
    let mut planned = Desk::new();
    let job = planned.take_in(&demo()).unwrap();
    planned.act(&Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } }).unwrap();
    for wall in planned.walls(&job) {
        planned.act(&Action::WallKind { action: WallAction::PlanBoards { wall: wall.clone() } }).unwrap();
        let View::WallKind { view } = planned.view(&Place::Wall { wall }).unwrap() else { panic!("a wall") };
        for board in view.boards.iter().filter(|board| board.notched).take(3) {
            let place = Place::Board { board: board.board.clone() };
            let View::BoardKind { view } = planned.view(&place).unwrap() else { panic!("a board") };
            for notch in view.notches.iter().filter(|notch| notch.cut != "none") {
                slip_at(&mut planned, (&board.board, notch), counts, unseen);
            }
        }
    }
}

fn slip_at(
    planned: &mut Desk,
    (board, notch): (&str, &NotchView),
    counts: &mut BTreeMap<Slip, Count>,
    unseen: &mut Vec<String>,
) {
    let truth = |field: &str| {
        let question = notch.questions.iter().find(|question| question.field == field)?;
        Some(inches(Length::from_nm(question.reading.as_ref()?.nm)))
    };
    let fields = ["left", "right", "bottom-left", "bottom-right", "top-left", "top-right"];
    for (at, field) in fields.iter().enumerate() {
        let Some(own) = truth(field) else { continue };
        let beside = fields.get(at + 1).and_then(|field| truth(field));
        let other = match *field {
            "left" => truth("right"),
            "right" => truth("left"),
            "bottom-left" => truth("top-left"),
            "top-left" => truth("bottom-left"),
            _ => None,
        };
        for slip in Slip::ALL {
            let Some(slipped) = slip.of(&own, beside.as_deref(), other.as_deref()) else { continue };
            let action = BoardAction::AnswerNotch {
                board: board.to_owned(),
                notch: notch.notch.clone(),
                field: (*field).to_owned(),
                text: slipped.clone(),
            };
            let answer = planned.act(&Action::BoardKind { action });
            if answer.as_ref().is_ok_and(|outcome| asks_which_is_right(&outcome.view)) {
                counts.entry(slip).or_default().asked += 1;
            } else {
                let at = format!("at a board, {field}");
                count(counts, unseen, (slip, &slipped, &own), &at, answer.as_ref().map(|_| ()));
            }
            if let Ok(Outcome { group, .. }) = answer {
                planned.act(&Action::DoneListKind { action: DoneListAction::Undo { job: None, group } }).unwrap();
            }
        }
    }
}

/// Whether the board in hand asks which is right, the tape or the plan.
fn asks_which_is_right(view: &View) -> bool {
    let View::BoardKind { view } = view else { return false };
    view.notches.iter().any(|notch| notch.questions.iter().any(|question| question.field == "which-is-right"))
}

fn count(
    counts: &mut BTreeMap<Slip, Count>,
    unseen: &mut Vec<String>,
    (slip, slipped, truth): (Slip, &str, &str),
    at: &str,
    answer: Result<(), &Problem>,
) {
    let count = counts.entry(slip).or_default();
    let before = count.unseen;
    count.add(slipped, truth, answer);
    if count.unseen > before {
        unseen.push(format!("{at}: {slipped} for {truth}"));
    }
}

/// Houses as they stand, by sizes that are sold and built: none of these numbers is one of the program's bounds.
struct Builder {
    random: Random,
    metric: bool,
}

impl Builder {
    /// A length between two whole numbers of inches or of centimetres, to what a tape shows.
    fn between(&mut self, least: i64, most: i64) -> String {
        if self.metric {
            return format!("{} mm", self.random.between(least * 10, most * 10));
        }
        let eighths = self.random.between(least * 8, most * 8);
        match (eighths / 8, eighths % 8) {
            (whole, 0) => format!("{whole} in"),
            (whole, part) => format!("{whole} {part}/8 in"),
        }
    }

    fn nm(text: &str) -> i64 {
        length(text).unwrap().nm()
    }

    fn house(&mut self) -> Value {
        let pick = |random: &mut Random, all: &[&'static str]| random.of(all).to_owned();
        let boards: &[(&str, &str, &str, &str, &str, &str)] = if self.metric {
            &[
                ("180 mm", "30 mm", "20 mm", "150 mm", "135 mm", "7.5 mm"),
                ("230 mm", "30 mm", "20 mm", "200 mm", "180 mm", "7.5 mm"),
                ("170 mm", "30 mm", "20 mm", "140 mm", "125 mm", "9 mm"),
            ]
        } else {
            &[
                ("5 1/4 in", "1 1/4 in", "3/4 in", "4 in", "3 1/2 in", "5/16 in"),
                ("6 1/4 in", "1 1/4 in", "3/4 in", "5 in", "4 1/2 in", "5/16 in"),
                ("7 1/4 in", "1 1/4 in", "3/4 in", "6 in", "5 1/2 in", "5/16 in"),
                ("8 1/4 in", "1 1/4 in", "1 in", "7 in", "6 1/2 in", "5/16 in"),
                ("9 1/4 in", "1 1/2 in", "1 in", "7 3/4 in", "7 in", "7/16 in"),
                ("12 in", "1 1/4 in", "3/4 in", "10 3/4 in", "10 in", "5/16 in"),
            ]
        };
        let at = self.random.below(boards.len());
        let (height, lap, nail, most, least, thickness) = *boards.get(at).unwrap();
        let stock =
            if self.metric { &["4200 mm", "3600 mm", "3 m"][..] } else { &["12 ft", "10 ft", "16 ft", "14 ft"] };
        let family = if self.metric { "au" } else { "us" };
        let walls: Vec<Value> = (0..self.random.between(1, 4)).map(|n| self.wall(n)).collect();
        let top = walls.iter().map(|wall| {
            let of = |field: &str| wall.get(field).and_then(Value::as_str).map_or(0, Self::nm);
            of("base") + of("left-height").max(of("right-height")).max(of("peak-height"))
        });
        let top = top.max().unwrap_or_default();
        let top = if self.metric { format!("{} mm", top / 1_000_000) } else { inches(Length::from_nm(top)) };
        json!({
            "lapwright": 1,
            "name": "A house that stands",
            "rules": family,
            "board-height": height, "board-thickness": thickness, "lap": lap, "nail-line": nail,
            "stock": [{"length": pick(&mut self.random, stock)}],
            "pole": {"from": "0 in", "to": top, "mode": "fit", "reveal-max": most, "reveal-min": least},
            "walls": walls,
        })
    }

    fn wall(&mut self, n: i64) -> Value {
        let (unit, wide, high) =
            if self.metric { (10_000_000, (240, 1500), (240, 300)) } else { (25_400_000, (96, 600), (92, 126)) };
        let mut wall = Map::new();
        let width = self.between(wide.0, wide.1);
        let height = self.between(high.0, high.1);
        let studs: &[&str] = if self.metric { &["450 mm", "600 mm"] } else { &["16 in", "12 in"] };
        let trim: &[&str] = if self.metric { &["42 mm", "90 mm", "0 mm"] } else { &["3 1/2 in", "5 1/2 in", "0 in"] };
        for (field, text) in [
            ("name", format!("Wall {n}")),
            ("width", width.clone()),
            ("left-height", height.clone()),
            ("right-height", height.clone()),
            ("base", if self.metric { self.between(-30, 60) } else { self.between(0, 20) }),
            ("first-stud", if self.metric { "22 mm".to_owned() } else { self.between(1, 12) }),
            ("stud-spacing", self.random.of(studs).to_owned()),
            ("trim-left", self.random.of(trim).to_owned()),
            ("trim-right", self.random.of(trim).to_owned()),
        ] {
            wall.insert(field.to_owned(), json!(text));
        }
        let (across, up) = (Self::nm(&width), Self::nm(&height));
        if self.random.below(5) < 2 {
            let (rise, run) = *[(4, 12), (5, 12), (6, 12), (8, 12), (10, 12)].get(self.random.below(5)).unwrap();
            let metric = self.metric;
            let own = |nm: i64| if metric { format!("{} mm", nm / 1_000_000) } else { inches(Length::from_nm(nm)) };
            wall.insert("peak-from-left".to_owned(), json!(own(across / 2)));
            wall.insert("peak-height".to_owned(), json!(own(up + across / 2 * rise / run)));
        }
        // From left to right: a window, a door or something that goes through, each in its own stretch of the wall.
        let (mut openings, mut through) = (Vec::new(), Vec::new());
        let (windows, sills) = if self.metric { ((60, 180), (40, 100)) } else { ((24, 72), (14, 44)) };
        let mut left = 30 * unit;
        let mm = |nm: i64| format!("{} mm", nm / 1_000_000);
        let own = |nm: i64, metric: bool| if metric { mm(nm) } else { inches(Length::from_nm(nm)) };
        loop {
            let width = self.between(windows.0, windows.1);
            let next = left + Self::nm(&width) + 40 * unit;
            if next + 30 * unit > across {
                break;
            }
            let door = self.random.below(5) == 0;
            let (width, below, high) = if door {
                let sizes: &[(&str, &str)] =
                    if self.metric { &[("870 mm", "2100 mm")] } else { &[("38 in", "82 1/2 in"), ("72 in", "82 in")] };
                let (width, high) = *sizes.get(self.random.below(sizes.len())).unwrap();
                (width.to_owned(), "0 in".to_owned(), high.to_owned())
            } else {
                let (sill, most) = (self.between(sills.0, sills.1), if self.metric { 130 } else { 46 });
                (width, sill, self.between(if self.metric { 40 } else { 18 }, most))
            };
            if left + Self::nm(&width) + 40 * unit < across {
                let what = if door { "door" } else { "window" };
                openings.push(json!({"what": what, "from-left": own(left, self.metric), "width": width, "from-base": below, "height": high}));
            }
            let kinds: &[(&str, &str, i64)] = if self.metric {
                &[
                    ("hose-bib", "22 mm", 45),
                    ("light", "100 mm", 180),
                    ("vent-hood", "100 mm", 30),
                    ("cable", "20 mm", 220),
                ]
            } else {
                &[
                    ("hose-bib", "7/8 in", 18),
                    ("light", "4 in", 70),
                    ("vent-hood", "4 1/8 in", 12),
                    ("cable", "3/4 in", 84),
                    ("conduit", "1 5/16 in", 30),
                    ("pipe", "2 3/8 in", 24),
                ]
            };
            let (what, size, at) = *kinds.get(self.random.below(kinds.len())).unwrap();
            let centre = left + Self::nm(&width) + 25 * unit;
            through.push(json!({"what": what, "width": size, "from-left": own(centre, self.metric), "from-base": own(at * unit, self.metric)}));
            left = next.max(left + Self::nm(&width) + 50 * unit);
        }
        wall.insert("openings".to_owned(), Value::Array(openings));
        wall.insert("penetrations".to_owned(), Value::Array(through));
        Value::Object(wall)
    }
}

#[test]
fn true_houses_are_taken_without_a_question() {
    let (mut asked, mut lengths_in, mut why) = (0_u32, 0_usize, Vec::new());
    for n in 0..400 {
        let mut builder = Builder { random: Random::new(n), metric: n % 3 == 2 };
        let house = builder.house();
        let mut all = Vec::new();
        lengths(&house, "", &mut all);
        lengths_in += all.len();
        match take_in(&house) {
            Ok(_) => {}
            Err(problem) if problem.code == "unlikely" => {
                asked += u32::try_from(problem.text.lines().count()).unwrap() - 1;
                why.push(problem.text);
            }
            Err(problem) => panic!("a true house is refused: {problem:?}\n{house:#}"),
        }
    }
    println!("400 true houses with {lengths_in} lengths: {} asked about, {asked} questions", why.len());
    why.iter().for_each(|why| println!("    {why}"));
    assert!(lengths_in > 10_000, "{lengths_in}");
    // One false alarm in two thousand lengths.
    assert!(usize::try_from(asked).unwrap() * 2_000 <= lengths_in, "{asked} of {lengths_in}");
}

#[test]
fn no_accepted_house_makes_a_later_step_fail_without_naming_the_field() {
    let mut random = Random::new(17);
    let (mut taken, mut refused, mut failed) = (0, 0, 0);
    for n in 0..40 {
        let mut builder = Builder { random: Random::new(1_000 + n), metric: n % 4 == 3 };
        let mut house = builder.house();
        let walls = house.get_mut("walls").and_then(Value::as_array_mut).unwrap();
        walls.truncate(1);
        let mut all = Vec::new();
        lengths(&house, "", &mut all);
        // Any lengths at all for some of the fields, the insane ones among them.
        for _ in 0..random.between(1, 3) {
            let (path, truth, _) = all.get(random.below(all.len())).unwrap();
            let nm = length(truth).unwrap().nm();
            let odd = [
                format!("{} mm", random.between(-200, 4_000)),
                format!("{} in", random.between(0, 40)),
                format!("{} mm", nm / 1_000_000 * random.between(1, 3)),
                format!("{} mm", nm / 1_000_000 / random.between(2, 9)),
                "0 in".to_owned(),
            ];
            *house.pointer_mut(path).unwrap() = json!(odd.get(random.below(odd.len())).unwrap());
        }
        let mut planned = Desk::new();
        // Who is asked says yes.
        let job = planned.take_in(&house).or_else(|problem| match problem.code.as_str() {
            "unlikely" => planned.take_in(&house),
            _ => Err(problem),
        });
        match job {
            Err(problem) => {
                assert!(!problem.field.is_empty(), "{problem:?}");
                assert_ne!(problem.code, "unlikely", "a yes is remembered: {problem:?}");
                refused += 1;
            }
            Ok(job) => {
                taken += 1;
                for problem in planned.later_steps(&job) {
                    failed += 1;
                    assert!(!problem.field.is_empty() && problem.code != "book", "{problem:?}\n{house:#}");
                }
            }
        }
    }
    println!("40 odd houses: {refused} refused, {taken} taken; {failed} later steps refused, each naming its field");
    assert!(taken >= 5 && refused >= 5, "{taken} taken, {refused} refused");
}

/// What is asked is asked once; a yes is kept in the book, and holds for the next thing of the kind.
#[test]
fn a_yes_is_remembered() {
    let mut planned = Desk::new();
    let job = planned.take_in(&demo()).unwrap();
    let answer = |planned: &mut Desk, wall: &str, text: &str| {
        let (wall, field, text) = (wall.to_owned(), "stud-spacing".to_owned(), text.to_owned());
        let action = lapwright::views::MeasureAction::Answer { wall, field, text };
        planned.act(&Action::MeasureKind { action })
    };
    let walls = planned.walls(&job);
    let [first, second] = walls.as_slice() else { panic!("two walls") };
    let asked = answer(&mut planned, first, "24").unwrap_err();
    assert_eq!((asked.code.as_str(), asked.field.as_str()), ("unlikely", "stud-spacing"));
    assert!(asked.text.contains("24 in") && asked.text.contains("16\""), "{}", asked.text);
    answer(&mut planned, first, "24").unwrap();
    answer(&mut planned, first, "16").unwrap();
    answer(&mut planned, first, "24").unwrap();
    answer(&mut planned, second, "24").unwrap();
    let (job_own, field) = (job.clone(), "nail-line".to_owned());
    let action = HouseAction::Answer { job: job_own, field, text: "1/2".to_owned() };
    assert_eq!(planned.act(&Action::HouseKind { action }).unwrap_err().code, "unlikely");
}
