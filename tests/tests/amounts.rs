//! Amounts against published quantities: what they are counted on is asked as a question, the numbers come from outside.

use lapwright::figure;
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
/// the wall are 20 ft of such a joint: half of 1/4 in is under the least depth, 1/4 in (Allen & Rand, quoted).
#[test]
fn a_quarter_inch_joint_takes_a_cartridge_every_24_3_ft() {
    close(net(&wall("1/4 in"), "Sealant"), 20.0 / 24.3 * 10.1, 0.002);
    // 1/2 x 1/4 in: 12.2 ft a cartridge.
    close(net(&wall("1/2 in"), "Sealant"), 20.0 / 12.2 * 10.1, 0.004);
}

/// A gallon is what covers its label's area once: two coats over 160 sq ft at 350 sq ft a gallon (arithmetic).
#[test]
fn paint_follows_its_coverage() {
    close(net(&wall("0 in"), "Paint"), 2.0 * 160.0 / 350.0, 1e-12);
}
