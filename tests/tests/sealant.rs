//! How far a cartridge of sealant reaches, and what is said of a joint's section, against volumes and a handbook.
//!
//! A US fluid ounce is 231/128 cubic inches (a gallon is 231 cubic inches: NIST Handbook 44, appendix C; from memory).
//! A cartridge of 10.1 fl oz thus holds 18.227 cubic inches.

#![allow(clippy::unwrap_used, reason = "a check that cannot read its answer must fail")]

use lapwright::figure;
use serde_json::{Value, json};

fn bead(width: &str, depth: &str, shape: &str, feet: u32) -> Value {
    let request = json!({"width": width, "depth": depth, "length": format!("{feet}'"), "shape": shape,
        "cartridge": "10.1 fl oz"});
    let answered = figure::answer("bead", &request.to_string());
    assert!(!answered.is_error, "{}", answered.json);
    serde_json::from_str(&answered.json).unwrap()
}

/// Tenths of a foot, rounded.
fn reach(answer: &Value) -> i64 {
    (answer["per_cartridge"]["nm"].as_i64().unwrap() + 15_240_000) / 30_480_000
}

fn codes(answer: &Value) -> Vec<&str> {
    answer["warnings"].as_array().unwrap().iter().map(|warning| warning["code"].as_str().unwrap()).collect()
}

/// 18.227 cubic inches over the section: 24.3, 16.2, 12.2 and 6.1 ft.
#[test]
fn a_cartridge_reaches_as_far_as_its_volume() {
    for (width, depth, tenths) in
        [("1/4\"", "1/4\"", 243), ("3/8\"", "1/4\"", 162), ("1/2\"", "1/4\"", 122), ("1/2\"", "1/2\"", 61)]
    {
        assert_eq!(reach(&bead(width, depth, "square", 10)), tenths, "{width} by {depth}");
    }
    // A triangle has half the section of its square, so the cartridge reaches twice as far.
    assert_eq!(reach(&bead("1/2\"", "1/2\"", "fillet", 10)), 122);
}

/// A joint of 1/2 by 1/2 in takes a cartridge for 6.076 ft: one for 6 ft, two for 7, and a second one for 12.
#[test]
fn cartridges_are_counted_whole() {
    let counts = [6, 7, 12, 13].map(|feet| bead("1/2\"", "1/2\"", "square", feet)["cartridges"].as_i64().unwrap());
    assert_eq!(counts, [1, 2, 2, 3]);
}

/// Allen and Rand, Architectural Detailing (quoted): at least 1/4 in wide, and not deeper than wide.
#[test]
fn the_section_is_held_to_the_handbook() {
    assert_eq!(codes(&bead("1/4\"", "1/4\"", "square", 10)), Vec::<&str>::new());
    assert_eq!(codes(&bead("3/16\"", "3/16\"", "square", 10)), ["joint-narrow"]);
    assert_eq!(codes(&bead("1/4\"", "5/16\"", "square", 10)), ["joint-deep"]);
    assert_eq!(codes(&bead("1/4\"", "5/16\"", "fillet", 10)), Vec::<&str>::new());
}
