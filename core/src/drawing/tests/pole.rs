use proptest::prelude::*;

use super::*;
use crate::drawing::pole::{Stick, StickLine, StickMark};

const EIGHTH: i64 = 3_175_000;

fn stick(lines: &[i64], marks: &[(i64, Option<bool>)], name: &str) -> Stick {
    let line = |(n, eighths): (usize, &i64)| StickLine {
        nm: eighths * EIGHTH,
        text: format!("{}:  {}\"", n + 1, eighths / 8),
    };
    Stick {
        lines: lines.iter().enumerate().map(line).collect(),
        marks: marks.iter().map(|(at, met)| StickMark { nm: at * EIGHTH, text: name.to_owned(), met: *met }).collect(),
        datum: "datum".to_owned(),
    }
}

/// The pole that the shells' decoders are tried on.
pub(super) fn golden() -> Golden {
    let lines: Vec<i64> = (0..16).map(|n| 16 + n * 55).collect();
    let marks = [(16 + 4 * 55, Some(true)), (16 + 9 * 55 + 4, Some(false))];
    let page = Page::new([360.0, 560.0, 18.0, 16.0], false);
    ("pole", stick(&lines, &marks, "Window sill, South").draw(&page), 360.0)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn poles_are_well_laid(
        steps in proptest::collection::vec(40_i64..80, 0..45),
        marks in proptest::collection::vec((0_i64..3_000, proptest::option::of(any::<bool>())), 0..9),
        name in "[A-Za-zñ][A-Za-zñ ]{0,39}",
        (width, height, text, left_hand) in (320.0_f32..1200.0, 48.0_f32..2_000.0, 1.0_f32..=2.0, any::<bool>()),
    ) {
        let mut at = 16;
        let lines: Vec<i64> = steps.iter().map(|step| { at += step; at }).collect();
        let page = Page::new([width, height, 18.0 * text, 16.0 * text], left_hand);
        let stick = stick(&lines, &marks, &name);
        let (strokes, high) = stick.draw(&page);
        prop_assert!(high <= f64::from(height));
        assert_well_laid(&strokes, width, high as f32);
        let texts = texts(&strokes);
        let room = ((high - 20.0) / (f64::from(16.0 * text) * 1.165 + 4.0)) as usize;
        // Heights and what is missed come before what is met.
        let missed = marks.iter().filter(|(_, met)| *met == Some(false)).count();
        let needed = lines.len() + missed + 1;
        prop_assert!(texts.len() >= room.saturating_sub(1).min(needed), "{} of {needed}, room for {room}", texts.len());
        if room > needed {
            prop_assert!(stick.lines.iter().all(|line| texts.contains(&line.text.as_str())));
            prop_assert_eq!(texts.iter().filter(|text| text.starts_with('▲')).count(), missed);
        }
    }
}
