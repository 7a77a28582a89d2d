use proptest::prelude::*;

use super::*;
use crate::drawing::layers::{DrawnLayer, Layers, Look};

const EIGHTH: i64 = 3_175_000;

/// A hose bib's layers in eighths of an inch: barrier, lower board, patch, cover, block, upper boards.
fn layers(pipe: i64, texts: &[&str]) -> Layers {
    let scaled = |piece: [i64; 4]| piece.map(|n| n * EIGHTH);
    let layer = |code: &str, text: usize, pieces: &[[i64; 4]], hole: Option<i64>, profile: [i64; 3]| DrawnLayer {
        code: code.to_owned(),
        text: texts[text % texts.len()].to_owned(),
        number: u32::try_from(text % texts.len() + 1).unwrap(),
        pieces: pieces.iter().copied().map(scaled).collect(),
        hole: hole.map(|hole| [hole * EIGHTH; 2]),
        slit: None,
        profile: profile.map(|n| n * EIGHTH / 4),
        bends: None,
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

/// What is seen of a board round a block is the board with its notch: no edge runs on from the block's sides, where no joint
/// is.
#[test]
fn a_board_round_a_block_is_drawn_as_one() {
    let layers = layers(8, &TEXTS);
    let page = Page::new([360.0, 800.0, 18.0, 16.0], false);
    let (strokes, _) = layers.draw(&page, Look::Front, "");
    // The frame is 128 eighths wide; the block's gaps lie at 39 and 89, the board over the block between 107 and 112.
    let upright: Vec<(f32, f32)> = strokes
        .iter()
        .filter_map(|stroke| match stroke {
            Stroke::Line { role: Role::Ink, points, .. } => Some(points.clone()),
            _ => None,
        })
        .filter(|points| points.len() == 2 && alike(points[0].x, points[1].x))
        .map(|points| ((points[0].y - points[1].y).abs(), points[0].x))
        .collect();
    // As high as the sheet is wide, at the most: 150 eighths in 360 dp.
    let scale = 360.0 / 150.0;
    let left = (360.0 - 128.0 * scale) / 2.0;
    let beside: Vec<f32> = upright
        .iter()
        .filter(|(_, x)| [39.0, 89.0].iter().any(|at| (x - (left + at * scale)).abs() < 1.0))
        .map(|(high, _)| high / scale)
        .collect();
    // From 46 up to 107, where the pieces meet: not to 112.
    assert_eq!(beside.len(), 2, "{upright:?}");
    assert!(beside.iter().all(|high| (high - 61.0).abs() < 0.5), "{beside:?}");
}

/// A head flashing lies flat on the wall above its bend, runs out over the block, and hangs down over its face.
#[test]
fn a_bent_sheet_is_drawn_bent() {
    let mut layers = layers(8, &TEXTS);
    let (top, out) = (106 * EIGHTH, 12 * EIGHTH);
    layers.layers.push(DrawnLayer {
        code: "head-flashing".to_owned(),
        text: "Sloped head flashing".to_owned(),
        number: 6,
        pieces: vec![[40 * EIGHTH, 88 * EIGHTH, top - 3 * EIGHTH, top + 20 * EIGHTH]],
        hole: None,
        slit: None,
        profile: [out, 0, 0],
        bends: Some([top, top + EIGHTH]),
    });
    let (strokes, _) = layers.draw(&Page::new([360.0, 800.0, 18.0, 16.0], false), Look::Section, "head-flashing");
    let bent = strokes.iter().find_map(|stroke| match stroke {
        Stroke::Line { role: Role::Chalk, points, .. } => Some(points.clone()),
        _ => None,
    });
    let bent = bent.unwrap();
    assert_eq!(bent.len(), 4, "{bent:?}");
    assert!(alike(bent[0].x, bent[1].x) && alike(bent[2].x, bent[3].x) && bent[1].x > bent[2].x, "{bent:?}");
    assert!(bent.windows(2).all(|pair| pair[0].y > pair[1].y), "{bent:?}");
    // Its number is led to its leg, not to the air under its bend.
    let six = strokes.iter().find_map(|stroke| match stroke {
        Stroke::Text { text, at, .. } if text == "6" => Some(*at),
        _ => None,
    });
    let six = six.unwrap();
    let near = |spot: &Spot| (spot.x - six.x).abs() < 16.0 && (spot.y - six.y).abs() < 20.0;
    let led = strokes.iter().filter_map(|stroke| match stroke {
        Stroke::Line { points, .. } if points.len() == 2 && points.iter().any(near) => Some(points.clone()),
        _ => None,
    });
    for spot in led.flatten() {
        assert!(spot.x < bent[3].x + 3.0, "{spot:?} {six:?} {bent:?}");
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
