//! Amounts against published quantities: what they are counted on is asked as a question, the numbers come from outside.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::float_cmp,
    reason = "a check stops at what it did not expect"
)]

use std::collections::BTreeMap;

use lapwright::book::Book;
use lapwright::figure;
use lapwright::handover::job_document;
use lapwright::screens::{act, take_in_document};
use lapwright::views::{Action, Place, PoleAction, SawListAction};
use lapwright_tests::context;
use serde_json::{Value, json};

/// A wall 16 ft wide and 10 ft high, 1.6 squares, in 20 courses of 6 in, boards of 16 ft, studs from 8 in every 16 in.
fn wall(gap_trim: &str) -> Value {
    let lines: Vec<String> = (0..=20).map(|n| format!("{} in", 6 * n)).collect();
    json!({
        "lapwright": 1, "name": "A wall", "board-height": "7 1/4 in", "board-thickness": "5/16 in", "lap": "1 1/4 in",
        "nail-line": "3/4 in", "stock": [{"length": "16 ft"}],
        "rules-changed": [{"key": "gap.trim", "value": gap_trim, "reason": "to be checked"}],
        "pole": {"from": "0 in", "to": "120 in", "mode": "fixed", "reveal": "6 in", "reveal-max": "6 in",
            "reveal-min": "1 in", "lines": lines},
        "walls": [{"name": "Wall", "width": "16 ft", "left-height": "120 in", "right-height": "120 in", "base": "0 in",
            "first-stud": "8 in", "stud-spacing": "16 in", "trim-left": "0 in", "trim-right": "0 in"}]
    })
}

fn net(job: &Value, name: &str) -> f64 {
    let answered = figure::answer("amounts", &json!({ "job": job }).to_string());
    let answer: Value = serde_json::from_str(&answered.json).unwrap();
    let items = answer["items"].as_array().unwrap_or_else(|| panic!("{}", answered.json));
    let item = items
        .iter()
        .find(|item| item["name"].as_str().is_some_and(|own| own.starts_with(name)))
        .unwrap_or_else(|| panic!("no {name}: {answer}"));
    item["net"].as_f64().unwrap()
}

fn close(found: f64, wanted: f64, share: f64) {
    assert!((found - wanted).abs() <= share * wanted, "{found}, not {wanted}");
}

/// Lineal feet a square: 1200 over the reveal in inches, 200 at 6 in (arithmetic; the lineal foot factor 12 / exposed
/// face of the Western Wood Products Association, times 100 sq ft, quoted).
#[test]
fn boards_cover_a_square_with_200_lineal_feet_at_6_in() {
    let job = wall("0 in");
    close(net(&job, "Boards 16 ft") * 16.0 / 1.6, 1200.0 / 6.0, 1e-12);
}

/// Board feet: a board 1 in thick, 12 in wide and 1 ft long is one board foot (NIST Handbook 130, lumber). A square of
/// 7 1/4 in boards at 6 in to the weather counted as 1 x 8 takes 200 ft x 8/12 = 133 1/3 board feet.
#[test]
fn a_square_of_nominal_eight_at_6_in_takes_133_board_feet() {
    let lineal = net(&wall("0 in"), "Boards 16 ft") * 16.0 / 1.6;
    close(lineal * 8.0 / 12.0, 400.0 / 3.0, 1e-12);
}

/// Nails a square: 100 * 144 / (reveal * stud spacing), 150 at 6 in and 16 in (arithmetic).
#[test]
fn a_square_takes_150_nails_at_6_in_over_studs_at_16_in() {
    close(net(&wall("0 in"), "Siding nails") / 1.6, 100.0 * 144.0 / (6.0 * 16.0), 1e-12);
}

/// The published reach of a 10.1 fl oz cartridge in a 1/4 x 1/4 in joint: 24.3 ft (volume over section). Both ends of
/// the wall are 20 ft of such a joint, less the gap that the top course keeps from the top: half of 1/4 in is under the least
/// depth, 1/4 in (Allen & Rand, quoted).
#[test]
fn a_quarter_inch_joint_takes_a_cartridge_every_24_3_ft() {
    close(net(&wall("1/4 in"), "Sealant"), (20.0 - 0.5 / 12.0) / 24.3 * 10.1, 0.002);
    // 1/2 x 1/4 in: 12.2 ft a cartridge.
    close(net(&wall("1/2 in"), "Sealant"), (20.0 - 1.0 / 12.0) / 12.2 * 10.1, 0.004);
}

/// A gallon is what covers its label's area once: two coats over 160 sq ft at 350 sq ft a gallon (arithmetic).
#[test]
fn paint_follows_its_coverage() {
    close(net(&wall("0 in"), "Paint"), 2.0 * 160.0 / 350.0, 1e-12);
}

/// A corner of a shape, in inches.
type Corner = (f64, f64);

/// The demo house with its saw list, as its document has it.
fn planned_demo() -> Value {
    let mut book = Book::in_memory().unwrap();
    let house = std::fs::read_to_string(lapwright_tests::fixtures().join("demo/house.json")).unwrap();
    let Place::House { job } = take_in_document(&mut book, &context(1), &house).unwrap().place else {
        panic!("a house")
    };
    act(&mut book, &context(2), &Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } }).unwrap();
    act(&mut book, &context(3), &Action::SawListKind { action: SawListAction::Plan { job: job.clone() } }).unwrap();
    serde_json::from_str(&job_document(&book, &context(4), &job).unwrap()).unwrap()
}

fn inches(nm: &Value) -> f64 {
    nm.as_f64().unwrap() / 25_400_000.0
}

fn rings(board: &Value) -> Vec<Vec<Corner>> {
    let ring = |ring: &Value| -> Vec<Corner> {
        ring.as_array().unwrap().iter().map(|at| (inches(&at["x"]), inches(&at["y"]))).collect()
    };
    std::iter::once(ring(&board["shape"])).chain(board["holes"].as_array().into_iter().flatten().map(ring)).collect()
}

fn edges(rings: &[Vec<Corner>]) -> Vec<(Corner, Corner)> {
    let next = |ring: &Vec<Corner>| {
        let after: Vec<Corner> = ring.iter().copied().cycle().skip(1).take(ring.len()).collect();
        ring.iter().copied().zip(after).collect::<Vec<_>>()
    };
    rings.iter().flat_map(next).collect()
}

/// What is primed and nailed of the demo house, counted on the shapes of its document: all the way round each board less its
/// factory edges and ends, and one nail at each stud under it, two at a joint.
#[test]
fn primer_and_nails_of_a_house_are_those_of_its_shapes() {
    let job = planned_demo();
    let (mut primed, mut studs, mut joints) = (0.0, 0, 0);
    let mut ends: BTreeMap<i64, Vec<f64>> = BTreeMap::new();
    let mut taken: BTreeMap<i64, (f64, f64)> = BTreeMap::new();
    let length = |board: &Value| -> f64 {
        let rings = rings(board);
        rings[0].iter().map(|corner| corner.0).fold(0.0, f64::max)
    };
    for wall in job["walls"].as_array().unwrap() {
        let boards = wall["boards"].as_array().unwrap();
        for board in boards {
            let rings = rings(board);
            let edges = edges(&rings);
            let (right, top) =
                rings[0].iter().fold((0.0, 0.0), |most: Corner, at| (most.0.max(at.0), most.1.max(at.1)));
            let ripped = board.get("rip").is_some();
            for ((x0, y0), (x1, y1)) in &edges {
                let factory = y0 == y1 && (*y0 == 0.0 || (*y0 == top && !ripped));
                primed += if factory { 0.0 } else { (x1 - x0).hypot(y1 - y0) };
            }
            let number = board["cut-from"].as_i64().unwrap();
            for x in [0.0, right] {
                let at = edges.iter().filter(|((x0, _), (x1, _))| *x0 == x && *x1 == x);
                let square: f64 = at.map(|((_, y0), (_, y1))| (y1 - y0).abs()).sum();
                ends.entry(number).or_default().extend((square > 0.0).then_some(square));
            }
            let own = taken.entry(number).or_insert((0.0, 144.0));
            own.0 += right;
            // Studs stand at 3/4 in and every 16 in.
            let from = inches(&board["at"]["x"]);
            let under = (0..40).map(|n| 0.75 + 16.0 * f64::from(n)).filter(|at| from <= *at && *at <= from + right);
            let course = &board["course"];
            let meets = |x: f64, other: &Value| {
                let at = inches(&other["at"]["x"]);
                &other["course"] == course && ((at - x).abs() < 1e-6 || (at + length(other) - x).abs() < 1e-6)
            };
            let jointed = |x: f64| boards.iter().filter(|other| meets(x, other)).count() == 2;
            studs += under.filter(|at| !jointed(*at)).count();
            joints += usize::from(jointed(from + right));
        }
    }
    for (number, ends) in &mut ends {
        ends.sort_by(f64::total_cmp);
        let (along, board) = taken[number];
        primed -= ends.iter().take(if along < board { 1 } else { 2 }).sum::<f64>();
    }
    assert!(joints > 5 && studs > 300, "{joints} joints, {studs} studs");
    // 5/16 in thick at 300 sq ft a gallon.
    close(net(&job, "Primer"), primed * 5.0 / 16.0 / 144.0 / 300.0, 1e-9);
    close(net(&job, "Siding nails"), (studs + 2 * joints) as f64, 1e-12);
}

/// A wall like the one above in twenty courses of another reveal, in eighths of an inch, and how many square feet it has.
fn wall_in_courses_of(reveal: i64) -> (Value, f64) {
    let mut job = wall("0 in");
    let inches = |eighths: i64| json!(format!("{} in", eighths as f64 / 8.0));
    job["board-height"] = inches(reveal + 10);
    for (field, value) in [("reveal", reveal), ("reveal-max", reveal), ("to", 20 * reveal)] {
        job["pole"][field] = inches(value);
    }
    job["pole"]["lines"] = (0..=20).map(|n| inches(n * reveal)).collect();
    for field in ["left-height", "right-height"] {
        job["walls"][0][field] = inches(20 * reveal);
    }
    (job, 16.0 * 20.0 * reveal as f64 / 96.0)
}

/// Lineal feet a square, 1200 over the reveal (the lineal foot factor of the Western Wood Products Association, quoted), and
/// nails a square over studs at 16 in, 14400 over reveal times spacing (arithmetic).
#[test]
fn a_square_by_the_reveal() {
    for (reveal, feet, nails) in [(4, 300.0, 225.0), (5, 240.0, 180.0), (8, 150.0, 112.5), (10, 120.0, 90.0)] {
        let (job, area) = wall_in_courses_of(8 * reveal);
        close(net(&job, "Boards 16 ft") * 1600.0 / area, feet, 1e-12);
        close(net(&job, "Siding nails") * 100.0 / area, nails, 1e-12);
    }
}

/// Western Wood Products Association, "Coverage Estimator" (quoted): the factor for lineal feet by the exposed face, of bevel
/// siding, of rabbeted bevel siding and of drop siding. The table prints two places.
#[test]
fn a_square_foot_takes_the_coverage_estimators_lineal_feet() {
    for (eighths, printed) in [
        // 2 1/2, 4 1/2, 6 1/4 and 8 1/4 in.
        (20, 4.8),
        (36, 2.67),
        (50, 1.92),
        (66, 1.45),
        // 3, 6 3/4, 8 3/4 and 10 3/4 in.
        (24, 4.0),
        (54, 1.78),
        (70, 1.37),
        (86, 1.12),
        // 3 1/8, 5 1/8, 6 7/8 and 8 7/8 in.
        (25, 3.84),
        (41, 2.34),
        (55, 1.75),
        (71, 1.35),
    ] {
        let (job, area) = wall_in_courses_of(eighths);
        let feet = net(&job, "Boards 16 ft") * 16.0 / area;
        assert!((feet - printed).abs() <= 0.005, "{eighths} eighths: {feet}, not {printed}");
    }
}
