//! The reach of a sealant cartridge, and what is said of a joint that is narrow or deep, as a script asks for them.
//!
//! Reach is volume over section (geometry); the volumes are those of NIST SP 811 and 16 CFR 500.19. The joint rules are
//! quoted from Allen & Rand, Architectural Detailing.

#![allow(clippy::unwrap_used, reason = "a check without its answer must fail")]

use lapwright::figure;
use lapwright::flashing::JointSection;
use lapwright::measure::{Length, Show};
use lapwright::rules::RuleSet;
use serde_json::{Value, json};

const FOOT: i64 = 304_800_000;
const INCH: i64 = 25_400_000;
const METRE: i64 = 1_000_000_000;

fn ask(request: &Value) -> Value {
    let answered = figure::answer("bead", &request.to_string());
    assert!(!answered.is_error, "{}", answered.json);
    serde_json::from_str(&answered.json).unwrap()
}

fn bead(width: &str, depth: &str, shape: &str, cartridge: &str) -> Value {
    ask(&json!({"width": width, "depth": depth, "length": "1 m", "shape": shape, "cartridge": cartridge}))
}

fn reach(width: &str, depth: &str, cartridge: &str) -> i64 {
    bead(width, depth, "square", cartridge)["per_cartridge"]["nm"].as_i64().unwrap()
}

/// Whether a length is `printed` hundredths of `unit`, as rounded to `step` hundredths.
fn prints_as(nm: i64, unit: i64, printed: i64, step: i64) -> bool {
    (nm * 100 - printed * unit).abs() * 2 <= step * unit
}

/// 10.1 US fl oz of 231/128 cu in (NIST SP 811) are 18.227 cu in; reach by section, printed to a tenth of a foot.
#[test]
fn an_ounce_cartridge_reaches_as_far_as_its_volume() {
    // A bead of a square inch is as many inches long as the cartridge holds cubic inches.
    let cubic = reach("1 in", "1 in", "10.1 fl oz");
    assert!((cubic * 1000 - 18_227 * INCH).abs() * 2 <= INCH, "{cubic}");
    for (width, depth, hundredths) in
        [("1/4 in", "1/4 in", 2430), ("3/8 in", "1/4 in", 1620), ("1/2 in", "1/4 in", 1220), ("1/2 in", "1/2 in", 610)]
    {
        let nm = reach(width, depth, "10.1 fl oz");
        assert!(prints_as(nm, FOOT, hundredths, 10), "{width} x {depth}: {nm}");
    }
    // A triangle has half the section of its square, so the cartridge reaches twice as far.
    let fillet = bead("1/2 in", "1/2 in", "fillet", "10.1 fl oz")["per_cartridge"]["nm"].as_i64().unwrap();
    assert!(prints_as(fillet, FOOT, 1220, 10), "{fillet}");
}

/// 300 mL are 300,000 cubic millimetres (NIST SP 811: 1 mL = 1 cm3); over the section in square millimetres, the reach.
#[test]
fn a_millilitre_cartridge_reaches_as_far_as_its_volume() {
    for (width, depth, hundredths) in [(5, 5, 1200), (6, 6, 833), (10, 5, 600), (10, 10, 300)] {
        let nm = reach(&format!("{width} mm"), &format!("{depth} mm"), "300 mL");
        assert!(prints_as(nm, METRE, hundredths, 1), "{width} x {depth}: {nm}");
        assert_eq!((300_000 * METRE / 1000 + width * depth / 2) / (width * depth), nm);
    }
}

/// 16 CFR 500.19 prints 1 US fl oz as 29.5735 mL; half of its last digit is 1.7 millionths.
#[test]
fn a_fluid_ounce_is_that_of_the_regulation() {
    let (ounce, printed) = (reach("1 in", "1 in", "1 fl oz"), reach("1 in", "1 in", "29.5735 mL"));
    assert!((ounce - printed).abs() * 1_000_000 <= printed * 2, "{ounce} {printed}");
}

/// NIST Handbook 44, appendix C (quoted): a US fluid ounce is 1.804 69 cu in; tables of yield print 48.7 cu in for a
/// quart cartridge filled with 27 fl oz and 54.1 for one with 30.
#[test]
fn a_cartridge_holds_the_cubic_inches_of_its_ounces() {
    for (cartridge, printed, places) in [("1 fl oz", "1.80469", 5), ("27 fl oz", "48.7", 1), ("30 fl oz", "54.1", 1)] {
        // A bead of a square inch is as many inches long as the cartridge holds cubic inches.
        let cubic = reach("1 in", "1 in", cartridge) as f64 / INCH as f64;
        assert_eq!(format!("{cubic:.places$}"), printed, "{cartridge}");
    }
}

/// ASTM C1193 (quoted): a joint is half as deep as it is wide, within 1/4 to 1/2 in (Allen & Rand, quoted). Between boards 1 in
/// thick: 1/2 in wide and 1/4 deep, 3/4 and 3/8, 1 and 1/2, and no deeper however wide; a board of 5/16 in ends it there.
#[test]
fn a_joint_is_half_as_deep_as_wide() {
    let text = |width, board| {
        let section = JointSection::of(&RuleSet::standard(), width, board).unwrap();
        Show::Inches(16).text(section.depth)
    };
    let sixteenths = |count: i64| Length::from_inches_64(0, 4 * count);
    for (width, board, depth) in
        [(8, 16, "1/4\""), (12, 16, "3/8\""), (16, 16, "1/2\""), (32, 16, "1/2\""), (12, 5, "5/16\"")]
    {
        assert_eq!(text(sixteenths(width), sixteenths(board)), depth, "{width} sixteenths");
    }
}

/// Allen & Rand, Architectural Detailing (quoted): a joint is at least 1/4 in wide, its depth half the width within 1/4 to
/// 1/2 in. So none that keeps the rule may be warned of, and a bead of 1/16 to 1/8 in round a block is called narrow.
#[test]
fn joints_against_the_rule_are_warned_of_by_its_source() {
    for (width, depth, shape, codes) in [
        ("1/4 in", "1/4 in", "square", &[][..]),
        ("1/2 in", "1/4 in", "square", &[]),
        ("1 in", "1/2 in", "square", &[]),
        ("1/16 in", "1/16 in", "square", &["joint-narrow"]),
        ("1/8 in", "1/8 in", "square", &["joint-narrow"]),
        ("6.349999 mm", "6 mm", "square", &["joint-narrow"]),
        ("3/16 in", "3/16 in", "square", &["joint-narrow"]),
        ("1/4 in", "5/16 in", "square", &["joint-deep"]),
        ("1/4 in", "3/8 in", "square", &["joint-deep"]),
        ("1/8 in", "1/4 in", "square", &["joint-narrow", "joint-deep"]),
        // A fillet has two legs and no depth behind its width.
        ("1/4 in", "5/16 in", "fillet", &[]),
    ] {
        let answer = bead(width, depth, shape, "10.1 fl oz");
        let warnings = answer["warnings"].as_array().unwrap();
        let told: Vec<&str> = warnings.iter().map(|warning| warning["code"].as_str().unwrap()).collect();
        assert_eq!(told, codes, "{width} x {depth} {shape}");
        for warning in warnings {
            assert!(warning["text"].as_str().unwrap().contains("Allen and Rand"), "{warning}");
        }
    }
}

/// A day of painted beads by hand: 62 ft of 1/8 x 1/8 in are 11.625 cu in; with 15 % 13.37, so one cartridge of 18.227;
/// 84 ft are 15.75, with 15 % 18.11, still one; 85 ft are 15.9375, with 15 % 18.33, two.
#[test]
fn cartridges_by_hand() {
    for (feet, cartridges) in [(62, 1), (84, 1), (85, 2)] {
        let answer =
            ask(&json!({"width": "1/8 in", "depth": "1/8 in", "length": format!("{feet} ft"), "shape": "square",
            "cartridge": "10.1 fl oz", "waste": 0.15}));
        assert_eq!(answer["cartridges"], cartridges, "{feet} ft");
    }
}

/// A joint of 1/2 by 1/2 in takes a cartridge for 6.076 ft: one for 6 ft, two for 7 and for 12, a third for 13.
#[test]
fn cartridges_are_counted_whole() {
    for (feet, cartridges) in [(6, 1), (7, 2), (12, 2), (13, 3)] {
        let answer =
            ask(&json!({"width": "1/2 in", "depth": "1/2 in", "length": format!("{feet} ft"), "shape": "square",
            "cartridge": "10.1 fl oz"}));
        assert_eq!(answer["cartridges"], cartridges, "{feet} ft");
    }
}
