use proptest::prelude::*;

use super::*;
use crate::drawing::board::{CutMarks, Level, ShownLength};
use crate::measure::{Division, Length, Show};
use crate::notch::{self, Block, EIGHTH, EdgeName, Gap, GapRule, Notch, NotchRequest, Overcut, Sides};
use crate::phrases::{Language, Phrases};

fn measure(length: Length, show: Show) -> ShownLength {
    ShownLength { nm: length.nm(), text: show.text(length) }
}

/// What the board's view says of a laid out notch.
fn marks(notch: &Notch, board: &notch::BoardInHand, from_back: bool, show: Show) -> Option<CutMarks> {
    let marks = notch::marks(notch, board, from_back)?;
    let level = |mark: &notch::NotchMark| Level {
        from_top: mark.from == EdgeName::Top,
        left: measure(mark.at.left, show),
        right: measure(mark.at.right, show),
    };
    Some(CutMarks {
        uprights: marks.uprights.iter().map(|upright| measure(*upright, show)).collect(),
        levels: marks.levels.iter().map(level).collect(),
        corners: marks.cut.outline().iter().map(|point| (point.x.nm(), point.y.nm())).collect(),
    })
}

fn board(length: Length, height: Length, blocks: &[Block], show: Show, language: Language) -> BoardDrawing {
    let cut = notch::BoardInHand { height, length, lap: Some(height.half().half()) };
    let gap = GapRule::One(Gap { min: Length::from_mm(1), max: Length::from_mm(3) });
    let side = |from_back: bool| {
        let lay_out = |block: &Block| {
            let request = NotchRequest {
                board: cut,
                block: *block,
                gap,
                overcut: Overcut { min: Length::ZERO, max: Length::from_mm(1) },
                tape: Length::from_mm(1),
                division: Division::SIXTEENTH,
                leg_min: Length::from_inches(2),
                level: EIGHTH,
                below: true,
                open_above: false,
            };
            marks(&Notch::lay_out(&request).ok()?, &cut, from_back, show)
        };
        let mut side: Vec<CutMarks> = blocks.iter().filter_map(lay_out).collect();
        side.sort_by_key(CutMarks::span);
        side
    };
    let phrases = Phrases::for_language(language);
    let word = |key: &str| phrases.phrase(key, &[]);
    BoardDrawing {
        length: Some(measure(length, show)),
        height: measure(height, show),
        words: ["screen-face", "screen-behind", "screen-cut", "drawing-not-to-scale"].map(word),
        face: side(false),
        back: side(true),
        lost: Vec::new(),
    }
}

fn inches(whole: i64, sixteenths: i64) -> Length {
    Length::from_inches_64(whole, sixteenths * 4)
}

/// A board of 12 ft with a notch from below, out of level by 1/8 in.
fn one_notch() -> BoardDrawing {
    let block = Block {
        left: inches(57, 3),
        right: inches(63, 9),
        bottom: Sides::both(inches(-2, 0)),
        top: Sides { left: inches(3, 1), right: inches(3, 3) },
    };
    board(inches(144, 0), inches(8, 4), &[block], Show::Inches(16), Language::English)
}

/// A board of 2.4 m with a hole, and a notch from above that is open to its right end.
fn hole_and_end() -> BoardDrawing {
    let mm = Length::from_mm;
    let hole = Block { left: mm(400), right: mm(520), bottom: Sides::both(mm(80)), top: Sides::both(mm(140)) };
    let end = Block { left: mm(2300), right: mm(2500), bottom: Sides::both(mm(150)), top: Sides::both(mm(400)) };
    board(mm(2400), mm(210), &[hole, end], Show::Millimetres(2), Language::Spanish)
}

/// The drawings that the shells' decoders are tried on.
pub(super) fn golden() -> Vec<Golden> {
    let phone = Page::new([360.0, 640.0, 18.0, 16.0], false);
    let large = Page::new([412.0, 900.0, 36.0, 32.0], false);
    vec![
        ("board-face", one_notch().draw(&phone, Side::Face), 360.0),
        ("board-back", one_notch().draw(&phone, Side::Back), 360.0),
        ("board-large-text", hole_and_end().draw(&large, Side::Face), 412.0),
    ]
}

/// The notch from below as SVG.
pub(super) fn golden_svg() -> String {
    let (strokes, height) = one_notch().draw(&Page::new([360.0, 640.0, 18.0, 16.0], false), Side::Face);
    svg(&strokes, (360.0, height as f32), Theme::Sun, "a board & its \"notch\"")
}

fn lengths() -> impl Strategy<Value = (Length, Length)> {
    (300_i64..4_300, 80_i64..400).prop_map(|(length, height)| (Length::from_mm(length), Length::from_mm(height)))
}

prop_compose! {
    /// A block that comes into the board or by it, anywhere, also out of level.
    fn block(board: (Length, Length))(
        left in -0.1..1.0_f64, width in 12_i64..900, bottom in -0.5..0.9_f64, height in 20_i64..400, slope in -9_i64..9,
    ) -> Block {
        let (length, tall) = (board.0.nm() as f64, board.1.nm() as f64);
        let left = Length::from_nm((left * length) as i64);
        let bottom = Length::from_nm((bottom * tall) as i64);
        let slope = Length::from_mm(slope);
        Block {
            left,
            right: left + Length::from_mm(width),
            bottom: Sides { left: bottom, right: bottom + slope },
            top: Sides { left: bottom + Length::from_mm(height), right: bottom + Length::from_mm(height) + slope },
        }
    }
}

fn boards() -> impl Strategy<Value = BoardDrawing> {
    let show = (proptest::sample::select(Show::ALL.to_vec()), any::<bool>());
    let language = proptest::sample::select(vec![Language::English, Language::Spanish]);
    (lengths(), show, language).prop_flat_map(|(size, (show, finer), language)| {
        let show = if finer { show.finer(Division::SIXTEENTH.half()) } else { show };
        proptest::collection::vec(block(size), 0..4)
            .prop_map(move |blocks| board(size.0, size.1, &blocks, show, language))
    })
}

fn pages(heights: std::ops::Range<f32>) -> impl Strategy<Value = Page> {
    (320.0_f32..1200.0, heights, 1.0_f32..=2.0)
        .prop_map(|(width, height, text)| Page::new([width, height, 18.0 * text, 16.0 * text], false))
}

/// How high each board of a drawing is drawn.
fn boards_drawn(strokes: &[Stroke]) -> Vec<f32> {
    let high = |corners: &[Spot]| {
        let ys = || corners.iter().map(|spot| spot.y);
        ys().fold(f32::MIN, f32::max) - ys().fold(f32::MAX, f32::min)
    };
    let drawn = strokes.iter().filter_map(|stroke| match stroke {
        Stroke::Fill { role: Role::Board, corners } => Some(high(corners)),
        _ => None,
    });
    drawn.collect()
}

/// A notch of 48 in that is 1 3/8 in deep, on a board of 141 in: true to scale it would be 3 dp deep on a phone.
#[test]
fn a_shallow_notch_says_that_its_depth_is_not_to_scale() {
    let block = Block {
        left: inches(38, 6),
        right: inches(86, 6),
        bottom: Sides::both(inches(-2, 0)),
        top: Sides::both(inches(1, 6)),
    };
    let shallow = board(inches(141, 0), inches(8, 4), &[block], Show::Inches(16), Language::English);
    let (strokes, _) = shallow.draw(&Page::new([360.0, 640.0, 18.0, 16.0], false), Side::Face);
    assert_eq!(texts(&strokes).iter().filter(|text| **text == "depth not to scale").count(), 1);
    // The magnified board comes after the whole one; it is cut as deep as its marks say, gap and all.
    let ys = || shallow.face[0].corners.iter().map(|(_, y)| *y);
    let part = (ys().max().unwrap() - ys().min().unwrap()) as f32 / shallow.height.nm as f32;
    let deep = boards_drawn(&strokes)[1] * part;
    assert!(deep >= 23.9, "{deep}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1_500))]

    /// With room enough every number that the saw needs is there, and nothing lies over another.
    #[test]
    fn every_mark_has_its_number(board in boards(), page in pages(50_000.0..60_000.0)) {
        for side in [Side::Face, Side::Back] {
            let (strokes, height) = board.draw(&page, side);
            assert_well_laid(&strokes, page.width() as f32, height as f32);
            let mut texts = texts(&strokes);
            let (word, marks) = if side == Side::Face { (&board.words[0], &board.face) } else { (&board.words[1], &board.back) };
            let length = board.length.as_ref().unwrap();
            // How long a board is stands beside the picture of its marks, and in that of a board without any.
            let mut wanted = vec![word.as_str()];
            wanted.extend(marks.is_empty().then_some(length.text.as_str()));
            for cut in marks {
                wanted.push(&board.words[2]);
                wanted.extend(cut.uprights.iter().map(|upright| upright.text.as_str()));
                let (left, right) = cut.span();
                for level in &cut.levels {
                    wanted.extend((left > 0).then_some(level.left.text.as_str()));
                    wanted.extend((right < length.nm).then_some(level.right.text.as_str()));
                }
            }
            for wanted in wanted {
                let found = texts.iter().position(|text| text.trim_start_matches(['↑', '↓', ' ']) == wanted);
                prop_assert!(found.is_some(), "{wanted} is missing: {texts:?}");
                texts.swap_remove(found.unwrap());
            }
        }
    }

    /// However low the frame is.
    #[test]
    fn a_low_frame_is_kept_to(board in boards(), page in pages(48.0..700.0)) {
        let (strokes, height) = board.draw(&page, Side::Face);
        prop_assert!(height <= page.height);
        assert_well_laid(&strokes, page.width() as f32, height as f32);
    }

    /// What lies left on the face lies right on the back, as far from its end.
    #[test]
    fn the_back_mirrors_the_face(board in boards(), page in pages(400.0..900.0)) {
        let cuts = |side: Side| -> Vec<Vec<Spot>> {
            let strokes = board.draw(&page, side).0;
            strokes.into_iter().filter_map(|stroke| match stroke {
                Stroke::Hatch { spacing, corners, .. } if spacing < 5.0 => Some(corners),
                _ => None,
            }).collect()
        };
        let (face, back) = (cuts(Side::Face), cuts(Side::Back));
        prop_assert_eq!(face.len(), back.len());
        let scale = board_width(&board, &page);
        let bounds = |corners: &[Spot]| {
            let xs = || corners.iter().map(|spot| spot.x);
            (xs().fold(f32::MAX, f32::min), xs().fold(0.0, f32::max))
        };
        let mut mirrored: Vec<(f32, f32)> =
            back.iter().map(|corners| bounds(corners)).map(|(left, right)| (scale - right, scale - left)).collect();
        mirrored.sort_by(|a, b| a.partial_cmp(b).unwrap());
        let mut face: Vec<(f32, f32)> = face.iter().map(|corners| bounds(corners)).collect();
        face.sort_by(|a, b| a.partial_cmp(b).unwrap());
        for (face, back) in face.iter().zip(&mirrored) {
            prop_assert!((face.0 - back.0).abs() < 0.01 && (face.1 - back.1).abs() < 0.01, "{face:?} {back:?}");
        }
    }
}

/// Left edge and right edge of the whole board, added up: where a mirror stands twice.
fn board_width(board: &BoardDrawing, page: &Page) -> f32 {
    let strokes = board.draw(page, Side::Face).0;
    let Some(Stroke::Fill { corners, .. }) =
        strokes.iter().find(|stroke| matches!(stroke, Stroke::Fill { role: Role::Board, .. }))
    else {
        panic!("a board is drawn")
    };
    let xs = || corners.iter().map(|spot| spot.x);
    xs().fold(f32::MAX, f32::min) + xs().fold(0.0, f32::max)
}
