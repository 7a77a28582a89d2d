//! The membrane patch and the movement of a board, by hand arithmetic and by properties over numbers by chance.
//!
//! Where the patch ends follows the water: over the face of the last board wholly below the block, on its nail line, hidden
//! by the next board (common practice, no source). A board's change of length is its length times its strain (definition
//! of strain).

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check without its answer must fail")]

use lapwright::figure;
use lapwright_tests::random::Random;
use serde_json::{Value, json};

const INCH: i64 = 25_400_000;

fn ask(question: &str, request: &Value) -> Value {
    serde_json::from_str(&figure::answer(question, &request.to_string()).json).unwrap()
}

fn nm(answer: &Value, path: &str) -> i64 {
    answer.pointer(path).unwrap_or_else(|| panic!("{path} in {answer}"))["nm"].as_i64().unwrap()
}

/// So many nanometres as a text in millimetres.
fn mm(nm: i64) -> String {
    let sign = if nm < 0 { "-" } else { "" };
    format!("{sign}{}.{:06} mm", nm.abs() / 1_000_000, nm.abs() % 1_000_000)
}

/// By hand, in inches: boards of 7 1/4 with 1 1/4 lap on 0, 6, 12, 18; the block from 15 to 22 1/2. Tops lie at 7 1/4,
/// 13 1/4, 19 1/4: the second is the last not over 15. Its nail line is at 13 1/4 - 3/4 = 12 1/2, 1/2 over the third
/// board's bottom. Top: 22 1/2 + 4 = 26 1/2, so 14 high; left 30 - 4 = 26, right 40, so 14 wide. Hole: 1 - 1/8 = 7/8, 7
/// from the left, 18 3/4 - 12 1/2 = 6 1/4 up. Slit: from 6 1/4 + 7/16 = 6 11/16, 14 - 6 11/16 = 7 5/16 long. Cover: from
/// 6 1/4 + 1/2 = 6 3/4 to 14 + 2, so 9 1/4 high, 4 wide.
#[test]
fn a_patch_by_hand() {
    let answer = ask(
        "patch",
        &json!({"board": {"height": "7 1/4\"", "lap": "1 1/4\"", "nail_line": "3/4\""},
            "bottoms": ["0\"", "6\"", "12\"", "18\""],
            "block": {"left": "30\"", "right": "36\"", "bottom": "15\"", "top": "22 1/2\""},
            "pipe": {"diameter": "1\"", "x": "33\"", "y": "18 3/4\""},
            "beyond": {"side": "4\"", "top": "4\""}, "snug": "1/8\""}),
    );
    assert_eq!((&answer["course"], &answer["warnings"]), (&json!(2), &json!([])));
    for (path, sixteenths) in [
        ("/left", 416),
        ("/right", 640),
        ("/bottom", 200),
        ("/top", 424),
        ("/width", 224),
        ("/height", 224),
        ("/hole/diameter", 14),
        ("/hole/from_left", 112),
        ("/hole/from_bottom", 100),
        ("/slit/from_bottom", 107),
        ("/slit/length", 117),
        ("/cover/width", 64),
        ("/cover/height", 148),
        ("/cover/from_bottom", 108),
        ("/over_board", 12),
        ("/hidden_by", 8),
    ] {
        assert_eq!(nm(&answer, path) * 16, sixteenths * INCH, "{path}");
    }
}

#[test]
fn a_patch_ends_on_a_nail_line_that_is_hidden() {
    let mut random = Random::new(7);
    let [mut cut, mut shown] = [0; 2];
    for _ in 0..2_000 {
        let height = random.between(150_000_000, 300_000_000);
        let lap = random.between(25_000_000, 40_000_000);
        let nail = random.between(15_000_000, lap - 1);
        // Courses that are stretched or pressed a little, so that some patches show.
        let mut bottoms = vec![random.between(-50_000_000, 50_000_000)];
        for _ in 0..8 {
            bottoms.push(bottoms.last().unwrap() + height - lap + random.between(-20_000_000, 20_000_000).min(lap - 1));
        }
        let bottom = bottoms[0] + height + random.between(0, 5 * height);
        let (left, wide, high) =
            (random.between(0, 5_000_000_000), random.between(80_000_000, 300_000_000), 200_000_000);
        let pipe = random.between(10_000_000, 60_000_000) / 2 * 2;
        let (x, y) = (left + wide / 2, bottom + high / 2);
        let (side, top, snug) =
            (random.between(0, 100_000_000), random.between(0, 100_000_000), 2 * random.between(0, 2_000_000));
        let answer = ask(
            "patch",
            &json!({"board": {"height": mm(height), "lap": mm(lap), "nail_line": mm(nail)},
                "bottoms": bottoms.iter().map(|bottom| mm(*bottom)).collect::<Vec<_>>(),
                "block": {"left": mm(left), "right": mm(left + wide), "bottom": mm(bottom), "top": mm(bottom + high)},
                "pipe": {"diameter": mm(pipe), "x": mm(x), "y": mm(y)},
                "beyond": {"side": mm(side), "top": mm(top)}, "snug": mm(snug)}),
        );
        let below = bottoms.iter().filter(|own| **own + height <= bottom).count();
        let line = bottoms[below - 1] + height - nail;
        let next = bottoms.get(below).copied().unwrap_or(bottoms[below - 1] + height - lap);
        if line <= next {
            assert_eq!(
                answer["error"],
                json!({"code": "patch-shows", "field": "bottoms", "text": answer["error"]["text"]})
            );
            shown += 1;
            continue;
        }
        cut += 1;
        assert_eq!(answer["course"], below);
        assert_eq!((nm(&answer, "/bottom"), nm(&answer, "/over_board")), (line, nail));
        assert_eq!(nm(&answer, "/hidden_by"), line - next);
        // The patch runs past the block, and under it at the bottom.
        assert_eq!((nm(&answer, "/left"), nm(&answer, "/right")), (left - side, left + wide + side));
        assert_eq!(nm(&answer, "/top"), bottom + high + top);
        assert!(line < bottom);
        // The hole is the pipe's, a little smaller; the slit goes up from its top to the patch's edge.
        assert_eq!((line + nm(&answer, "/hole/from_bottom"), left - side + nm(&answer, "/hole/from_left")), (y, x));
        assert_eq!(nm(&answer, "/hole/diameter"), pipe - snug);
        assert_eq!(answer["slit"]["direction"], "up");
        let slit = line + nm(&answer, "/slit/from_bottom");
        assert_eq!(slit, y + (pipe - snug) / 2);
        assert_eq!(slit + nm(&answer, "/slit/length"), bottom + high + top);
        // The cover hides the slit above the pipe, 2 in past it.
        let cover = line + nm(&answer, "/cover/from_bottom");
        assert_eq!((cover, nm(&answer, "/cover/width")), (y + pipe / 2, 4 * INCH));
        assert_eq!(cover + nm(&answer, "/cover/height"), bottom + high + top + 2 * INCH);
    }
    assert!(cut > 1_000 && shown > 50, "{cut} {shown}");
}

/// By hand: 12 ft are 3,657.6 mm; 0.06 % of them 2.19456 mm, which a gap of 1/8 in (3.175 mm) takes and one of 1/16 in
/// (1.5875 mm) does not; shrinking is the same the other way.
#[test]
fn movement_by_hand() {
    for (strain, gap, change, ok) in [
        (0.0006, "1/8\"", 2_194_560, true),
        (0.0006, "1/16\"", 2_194_560, false),
        (-0.0006, "1/8\"", -2_194_560, true),
        (-0.0006, "1/16\"", -2_194_560, false),
        (0.0006, "2.19456 mm", 2_194_560, true),
        (0.0006, "2.194559 mm", 2_194_560, false),
    ] {
        let answer = ask("movement", &json!({"length": "12'", "strain": strain, "gap": gap}));
        assert_eq!((nm(&answer, "/change"), &answer["ok"]), (change, &json!(ok)), "{strain} {gap}");
    }
}

/// Coefficients of expansion of building materials in millionths a degree Fahrenheit, over 360 in and 100 degrees (a public
/// worksheet, quoted): aluminum 12.3, concrete 8, steel 7.3, pine 2.8 along its grain.
#[test]
fn materials_beside_the_boards_move_as_the_table_has_it() {
    for (tenths, printed) in [(123, "0.4428"), (80, "0.2880"), (73, "0.2628"), (28, "0.1008")] {
        let strain = f64::from(tenths) / 1e5;
        let change = nm(&ask("movement", &json!({"length": "360 in", "strain": strain})), "/change");
        assert_eq!(format!("{:.4}", change as f64 / INCH as f64), printed);
    }
}

/// Calculating Wood Movement, Wood magazine, September 2021 (quoted): flatsawn red alder 8 in wide whose moisture changes by
/// 6 %, "8 x .0026 x 6 = .1248 (or about 1/8 in)".
#[test]
fn a_wide_board_moves_as_the_worked_example_has_it() {
    let answer = ask("movement", &json!({"length": "8 in", "strain": 0.0156, "show": "in/16", "gap": "1/8 in"}));
    assert_eq!(nm(&answer, "/change") * 10_000, INCH * 1248);
    assert_eq!((&answer["change"]["text"], &answer["ok"]), (&json!("1/8\""), &json!(true)));
}

/// The change is length times strain, an exact fraction, to the nearest nanometre, halves away from zero.
#[test]
fn movement_is_length_times_strain() {
    let mut random = Random::new(11);
    for _ in 0..2_000 {
        let (length, millionths) = (random.between(1, 20_000_000_000), random.between(-50_000, 50_000));
        let answer = ask("movement", &json!({"length": mm(length), "strain": millionths as f64 / 1e6}));
        let product = i128::from(length) * i128::from(millionths);
        let want = product.signum() * ((2 * product.abs() + 1_000_000) / 2_000_000);
        assert_eq!(i128::from(nm(&answer, "/change")), want, "{length} {millionths}");
    }
}
