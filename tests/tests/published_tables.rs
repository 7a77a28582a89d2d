//! Tables that handbooks and codes print, against what the program computes: every row comes out of a calculation.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check without its answer must fail")]

use lapwright::figure;
use serde_json::{Value, json};

fn ask(question: &str, request: &Value) -> Value {
    let answered = figure::answer(question, &request.to_string());
    assert!(!answered.is_error, "{}", answered.json);
    serde_json::from_str(&answered.json).unwrap()
}

fn nm(value: &Value) -> i64 {
    value["nm"].as_i64().unwrap()
}

/// Whether nanometres print as so many hundredths of an inch.
fn hundredths(nm: i64, printed: i64) -> bool {
    (nm - printed * 254_000).abs() <= 127_000
}

fn gable(base: &str, rise: i64, run: i64) -> Value {
    ask(
        "gable",
        &json!({"base": base, "pitch": {"rise": rise, "run": run}, "reveal": "7 in", "board_height": "8 1/4 in"}),
    )
}

/// Framing square, "length common rafters per foot run", rise 2 to 18 in 12 (the table stamped on every square; NAVEDTRA
/// 14043/14044, quoted): half a base of 24 in is a foot of run.
#[test]
fn the_common_rafter_line_of_the_square() {
    for (rise, printed) in [
        (2, 1217),
        (3, 1237),
        (4, 1265),
        (5, 1300),
        (6, 1342),
        (7, 1389),
        (8, 1442),
        (9, 1500),
        (10, 1562),
        (11, 1628),
        (12, 1697),
        (13, 1769),
        (14, 1844),
        (15, 1921),
        (16, 2000),
        (17, 2081),
        (18, 2163),
    ] {
        let rake = nm(&gable("24 in", rise, 12)["rake"]);
        assert!(hundredths(rake, printed), "{rise} in 12: {rake}");
    }
}

/// Framing square, "difference in length of jacks", 16 inches and 2 feet centers (quoted): half a base of 32 in is 16 in of run.
#[test]
fn the_jack_rafter_line_of_the_square() {
    let of_16 =
        [(4, 1687), (5, 1733), (6, 1789), (8, 1923), (9, 2000), (10, 2083), (12, 2263)].map(|row| ("32 in", row));
    let of_24 = [(4, 2530), (6, 2683), (8, 2884), (10, 3124), (12, 3394)].map(|row| ("48 in", row));
    for (base, (rise, printed)) in of_16.into_iter().chain(of_24) {
        let rake = nm(&gable(base, rise, 12)["rake"]);
        assert!(hundredths(rake, printed), "{rise} in 12: {rake}");
    }
}

/// Roof pitch in degrees, as pitch tables print it to a hundredth (arithmetic: the arc tangent).
#[test]
fn the_degrees_of_a_pitch() {
    for (rise, printed) in [
        (1, 4.76),
        (2, 9.46),
        (3, 14.04),
        (4, 18.43),
        (5, 22.62),
        (6, 26.57),
        (7, 30.26),
        (8, 33.69),
        (9, 36.87),
        (10, 39.81),
        (11, 42.51),
        (12, 45.00),
        (18, 56.31),
    ] {
        let angle = gable("24 in", rise, 12)["angle_deg"].as_f64().unwrap();
        assert!((angle - printed).abs() <= 0.005 + 1e-9, "{rise} in 12: {angle}");
    }
}

/// Inch fractions in millimetres (NIST SP 811: 1 in is 25.4 mm; conversion tables of the trade print these).
#[test]
fn fractions_of_an_inch_in_millimetres() {
    for (text, printed) in [
        ("1/64 in", 396_875),
        ("1/32 in", 793_750),
        ("1/16 in", 1_587_500),
        ("1/8 in", 3_175_000),
        ("3/16 in", 4_762_500),
        ("1/4 in", 6_350_000),
        ("5/16 in", 7_937_500),
        ("3/8 in", 9_525_000),
        ("7/16 in", 11_112_500),
        ("1/2 in", 12_700_000),
        ("9/16 in", 14_287_500),
        ("5/8 in", 15_875_000),
        ("11/16 in", 17_462_500),
        ("3/4 in", 19_050_000),
        ("13/16 in", 20_637_500),
        ("7/8 in", 22_225_000),
        ("15/16 in", 23_812_500),
    ] {
        assert_eq!(nm(&ask("length", &json!({"text": text}))["length"]), printed, "{text}");
    }
}

/// The metric values that the codes print beside their inches (IRC R703.2, R703.3, R703.3.4, R703.10.2, R703.15,
/// R905.2.8.3, R507.9.1.5, M1502.3; read): the program shows the same whole millimetres.
#[test]
fn the_codes_metric_values() {
    for (inches, printed) in [
        ("1/4 in", "6 mm"),
        ("1 in", "25 mm"),
        ("1 1/4 in", "32 mm"),
        ("1 1/2 in", "38 mm"),
        ("2 in", "51 mm"),
        ("4 in", "102 mm"),
        ("6 in", "152 mm"),
        ("12 in", "305 mm"),
        ("16 in", "406 mm"),
        ("3 ft", "914 mm"),
    ] {
        let shown = ask("length", &json!({"text": inches, "show": "mm"}));
        assert_eq!(shown["length"]["text"], printed, "{inches}");
    }
}

/// Lumber lengths in metres (NIST SP 811: 1 ft is 0.3048 m).
#[test]
fn stock_lengths_in_metres() {
    for (feet, printed) in [(8, "2.4384 m"), (10, "3.048 m"), (12, "3.6576 m"), (14, "4.2672 m"), (16, "4.8768 m")] {
        let (foot, metre) = (format!("{feet} ft"), printed);
        let both = [foot.as_str(), metre].map(|text| nm(&ask("length", &json!({"text": text}))["length"]));
        assert_eq!(both[0], both[1], "{foot}");
    }
}

/// Gable studs: the common difference at 16 and 24 in centers (NAVEDTRA 14044's rule, spacing x rise / run; quoted in
/// framing tables): a course whose reveal is that difference steps in by the spacing.
#[test]
fn the_common_difference_of_gable_studs() {
    for (rise, spacing, difference) in [
        (3, "16 in", "4 in"),
        (6, "16 in", "8 in"),
        (9, "16 in", "12 in"),
        (12, "16 in", "16 in"),
        (3, "24 in", "6 in"),
        (4, "24 in", "8 in"),
        (5, "24 in", "10 in"),
        (8, "24 in", "16 in"),
        (12, "24 in", "24 in"),
    ] {
        let request = json!({"base": "400 in", "pitch": {"rise": rise, "run": 12}, "reveal": difference, "board_height": "8 1/4 in"});
        let step = nm(&ask("gable", &request)["step"]);
        let spacing = nm(&ask("length", &json!({"text": spacing}))["length"]);
        assert!((step - spacing).abs() <= 1, "{rise} in 12: {step}");
    }
}

/// Right triangles in whole numbers (Euclid X.29): rise, half base and rake.
#[test]
fn triangles_in_whole_numbers() {
    for (rise, half, rake) in [(3, 4, 5), (5, 12, 13), (8, 15, 17), (7, 24, 25), (20, 21, 29)] {
        let request = json!({"base": format!("{} in", 2 * half), "pitch": {"rise": rise, "run": half}, "reveal": "1 in",
            "board_height": "8 in"});
        assert_eq!(nm(&ask("gable", &request)["rake"]), rake * 25_400_000, "{rise} {half} {rake}");
    }
}

/// Equal courses, `ceil(height / greatest exposure)`, by the rule of NAVEDTRA 14044, p. 4-4, for heights and exposures of its
/// kind (arithmetic).
#[test]
fn equal_courses_by_the_handbooks_rule() {
    for (height, most, courses) in
        [(96, 10, 10), (96, 8, 12), (108, 7, 16), (97, 7, 14), (91, 7, 13), (100, 6, 17), (120, 10, 12)]
    {
        let request =
            json!({"from": "0 in", "to": format!("{height} in"), "mode": "equal", "reveal_max": format!("{most} in")});
        assert_eq!(ask("pole", &request)["courses"], courses, "{height} in at {most} in");
    }
}

/// The split block: what a saw of 1/8 in takes out of the height at an angle, `kerf / cos`, and how far water climbs in a
/// block 1 1/2 in thick, `thickness x tan` (tables of secants and tangents, to four decimals).
#[test]
fn secants_and_tangents_of_a_sloped_cut() {
    for (angle, secant, tangent) in [
        (15, 10_353, 2_679),
        (20, 10_642, 3_640),
        (25, 11_034, 4_663),
        (30, 11_547, 5_774),
        (35, 12_208, 7_002),
        (40, 13_054, 8_391),
        (45, 14_142, 10_000),
    ] {
        let request = json!({"width": "8 in", "height": "8 in", "thickness": "1 1/2 in", "pipe": "2 in", "center": "4 in",
            "angle": angle, "kerf": "1/8 in", "gap": "1/8 in"});
        let block = ask("block", &request);
        let near = |got: i64, of: i64, printed: i64| (got * 10_000 - of * printed).abs() <= of / 2 + 10_000;
        assert!(near(nm(&block["kerf_up"]), 3_175_000, secant), "{angle}: {}", block["kerf_up"]);
        assert!(near(nm(&block["climb"]), 38_100_000, tangent), "{angle}: {}", block["climb"]);
    }
}
