use num_rational::BigRational;
use proptest::prelude::*;

use super::*;
use crate::drawing::block::{BlockDrawing, BlockMeasure};
use crate::flashing::{BlockLimits, SplitBlock, SplitRequest};
use crate::measure::{Division, Length, Show};
use crate::wall::Shape;

/// The sizes of a split block, as its view holds them.
fn block(request: &SplitRequest, show: Show) -> Option<BlockDrawing> {
    let split = SplitBlock::lay_out(request).ok()?;
    let size = |(code, length): (&str, Length)| BlockMeasure {
        code: code.to_owned(),
        label: code.to_owned(),
        nm: length.nm(),
        text: show.text(length),
    };
    let sizes = [
        ("width", request.width),
        ("height", request.height),
        ("thickness", request.thickness),
        ("blank-height", split.blank_height),
        ("drill-at", split.drill_at),
        ("bit", split.hole.width()),
        ("lower-face", split.lower.face),
        ("lower-back", split.lower.back),
    ];
    let words = ["CARA", "PARED", "COSTADO"].map(str::to_owned);
    Some(BlockDrawing { sizes: sizes.map(size).to_vec(), words })
}

fn request(width: i64, height: i64, thickness: i64, pipe: i64, angle: i64) -> SplitRequest {
    let eighths = |n: i64| Length::from_inches_64(0, n * 8);
    SplitRequest {
        width: eighths(width),
        height: eighths(height),
        thickness: eighths(thickness),
        through: Shape::Round { diameter: eighths(pipe) },
        center: eighths(height).half(),
        angle: BigRational::from_integer(angle.into()),
        kerf: Length::from_inches_64(0, 6),
        gap: eighths(1),
        bits: None,
        board_thickness: None,
        division: Division::SIXTEENTH,
        limits: BlockLimits::default(),
    }
}

/// The block that the shells' decoders are tried on.
pub(super) fn golden() -> Golden {
    let page = Page::new([360.0, 800.0, 18.0, 16.0], false);
    ("block-split", block(&request(48, 60, 8, 8, 45), Show::Inches(16)).unwrap().draw(&page), 360.0)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(800))]

    #[test]
    fn blocks_are_well_laid(
        (width, height, thickness, pipe, angle) in (16_i64..200, 16_i64..200, 4_i64..24, 2_i64..60, 0_i64..60),
        show in proptest::sample::select(Show::ALL.to_vec()),
        (page_width, page_height, text) in (320.0_f32..1200.0, 48.0_f32..1500.0, 1.0_f32..=2.0),
    ) {
        let Some(block) = block(&request(width, height, thickness, pipe, angle), show) else { return Ok(()) };
        let page = Page::new([page_width, page_height, 18.0 * text, 16.0 * text], false);
        let (strokes, high) = block.draw(&page);
        prop_assert!(high <= f64::from(page_height));
        assert_well_laid(&strokes, page_width, high as f32);
        if page_height > 700.0 * text {
            let texts = texts(&strokes);
            let measured = ["width", "blank-height", "drill-at", "lower-face", "lower-back"];
            for size in block.sizes.iter().filter(|size| measured.contains(&size.code.as_str())) {
                let named = format!("{} {}", size.label, size.text);
                prop_assert!(texts.contains(&size.text.as_str()) || texts.contains(&named.as_str()), "{} {} is missing: {texts:?}", size.code, size.text);
            }
            for word in &block.words {
                prop_assert!(texts.contains(&word.as_str()), "{word}: {texts:?}");
            }
        }
    }
}

/// Beside a long flat blank no text stands upright: what it says is named under the front.
#[test]
fn a_flat_blank_keeps_its_measures() {
    let block = block(&request(141, 16, 11, 2, 0), Show::Inches(16)).unwrap();
    let (strokes, high) = block.draw(&Page::new([391.873_78, 1480.0, 28.7, 25.5], false));
    assert_well_laid(&strokes, 391.873_78, high as f32);
    assert!(texts(&strokes).contains(&"drill-at 1 1/16\""), "{:?}", texts(&strokes));
}

/// A cut low on the face: its measure is not written over the row under the section.
#[test]
fn a_low_measure_stays_off_the_row_under_the_figure() {
    let bits = Some(vec![Length::from_inches_64(2, 56)]);
    let block = block(&SplitRequest { bits, ..request(52, 22, 13, 12, 55) }, Show::Inches(16)).unwrap();
    let text = 1.753_671_5;
    let (strokes, high) = block.draw(&Page::new([653.0552, 1341.9165, 18.0 * text, 16.0 * text], false));
    assert_well_laid(&strokes, 653.0552, high as f32);
    assert!(texts(&strokes).contains(&"3/16\""), "{:?}", texts(&strokes));
}

/// The cut rises toward the wall, which is drawn at the left: a block cut the other way leads water in.
#[test]
fn the_cut_rises_toward_the_wall() {
    let (strokes, _) = golden().1;
    let cuts = strokes.iter().filter_map(|stroke| match stroke {
        Stroke::Line { role: Role::Chalk, thickness, points, closed: false, .. } if alike(*thickness, 3.0) => {
            Some(points.clone())
        }
        _ => None,
    });
    let slopes: Vec<Vec<Spot>> = cuts.filter(|points| !alike(points[0].y, points[points.len() - 1].y)).collect();
    let [slope] = slopes.as_slice() else { panic!("one sloped cut: {slopes:?}") };
    let (right, left) = (slope[0], slope[1]);
    assert!(left.x < right.x && left.y < right.y, "higher at the left: {slope:?}");
    let place = |word: &str| {
        strokes.iter().rev().find_map(|stroke| match stroke {
            Stroke::Text { text, at, .. } if text == word => Some(at.x),
            _ => None,
        })
    };
    assert!(place("PARED").unwrap() < place("CARA").unwrap());
}
