use proptest::prelude::*;

use super::*;
use crate::drawing::layers::{Layer, Layers, Look};

const EIGHTH: i64 = 3_175_000;

/// A hose bib's layers in eighths of an inch: barrier, lower board, patch, cover, block, upper boards.
fn layers(pipe: i64, texts: &[&str]) -> Layers {
    let scaled = |piece: [i64; 4]| piece.map(|n| n * EIGHTH);
    let layer = |code: &str, text: usize, pieces: &[[i64; 4]], hole: Option<i64>, profile: [i64; 3]| Layer {
        code: code.to_owned(),
        text: texts[text % texts.len()].to_owned(),
        number: u32::try_from(text % texts.len() + 1).unwrap(),
        pieces: pieces.iter().copied().map(scaled).collect(),
        hole: hole.map(|hole| [hole * EIGHTH; 2]),
        slit: None,
        profile: profile.map(|n| n * EIGHTH / 4),
    };
    let mut all = vec![
        layer("barrier", 0, &[[0, 128, 0, 96]], None, [0, 0, 0]),
        layer("board", 1, &[[0, 128, -10, 56]], None, [4, 0, 10]),
        layer("patch", 2, &[[32, 96, 46, 130]], Some(pipe), [10, 0, 0]),
        layer("cover", 3, &[[48, 80, 90, 120]], None, [2, 2, 0]),
        layer("block", 4, &[[40, 88, 58, 106]], Some(pipe + 2), [2, 2, 40]),
        layer("board", 1, &[[0, 39, 46, 112], [89, 128, 46, 112], [39, 89, 107, 112]], None, [14, 4, 10]),
    ];
    all[2].slit = Some([82 * EIGHTH, 130 * EIGHTH]);
    Layers {
        frame: scaled([0, 128, -10, 140]),
        centre: [64 * EIGHTH, 80 * EIGHTH],
        pipe: [pipe * EIGHTH; 2],
        round: true,
        layers: all,
    }
}

const TEXTS: [&str; 5] = [
    "Water barrier, slit above or sealed to the pipe",
    "Boards, cut edges primed, with their gap",
    "Membrane patch, slit UP, bottom over the face of the board below",
    "Second piece over the slit, top under the barrier",
    "Mounting block in two pieces, the cut rising toward the wall",
];

/// The layers that the shells' decoders are tried on.
pub(super) fn golden() -> Vec<Golden> {
    let page = Page::new([360.0, 800.0, 18.0, 16.0], false);
    let layers = layers(8, &TEXTS);
    vec![
        ("layers-front", layers.draw(&page, Look::Front, "patch"), 360.0),
        ("layers-section", layers.draw(&page, Look::Section, "patch"), 360.0),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn layers_are_well_laid(
        pipe in 2_i64..20,
        (width, height, text, front) in (320.0_f32..1200.0, 48.0_f32..1500.0, 1.0_f32..=2.0, any::<bool>()),
    ) {
        let layers = layers(pipe, &TEXTS);
        let page = Page::new([width, height, 18.0 * text, 16.0 * text], false);
        let (strokes, high) = layers.draw(&page, if front { Look::Front } else { Look::Section }, "");
        prop_assert!(high <= f64::from(height));
        assert_well_laid(&strokes, width, high as f32);
        if height > 1_300.0 {
            let texts = texts(&strokes);
            // What the numbers stand for is said under the drawing.
            for number in ["1", "2", "3", "4", "5"] {
                let found = texts.iter().filter(|text| **text == number).count();
                prop_assert!(found == 1, "{number} once on the drawing: {texts:?}");
            }
        }
    }
}

/// What the later layer covers of an earlier one lies behind it: in the section each stands further out.
#[test]
fn a_later_layer_stands_further_out() {
    let layers = layers(8, &TEXTS);
    let (strokes, _) = layers.draw(&Page::new([360.0, 800.0, 18.0, 16.0], false), Look::Section, "patch");
    let left = |role: Role| {
        let points = strokes.iter().filter_map(move |stroke| match stroke {
            Stroke::Line { role: own, thickness, points, .. } if *own == role && alike(*thickness, 3.0) => {
                Some(points.clone())
            }
            _ => None,
        });
        points.flatten().map(|spot| spot.x).fold(f32::MAX, f32::min)
    };
    // The wall's own line is ink and leftmost; the patch is picked out in chalk.
    assert!(left(Role::Ink) <= left(Role::Chalk));
}
