use proptest::prelude::*;

use super::*;
use crate::measure::{Division, Length};

fn inch(inches: f64) -> Length {
    Length::from_inches_64(0, (inches * 64.0) as i64)
}

/// A board 8 in by 100 in with a lap of 1 1/4 in, wanted gap 0 to 1/8 in, so that marks lie 1/16 in outside the block.
fn request(left: f64, right: f64, bottom: [f64; 2], top: [f64; 2]) -> NotchRequest {
    NotchRequest {
        board: BoardInHand { height: inch(8.0), length: inch(100.0), lap: Some(inch(1.25)) },
        block: Block {
            left: inch(left),
            right: inch(right),
            bottom: Sides::new(inch(bottom[0]), inch(bottom[1])),
            top: Sides::new(inch(top[0]), inch(top[1])),
        },
        gap: GapRule::One(Gap { min: Length::ZERO, max: inch(0.125) }),
        overcut: Overcut::default(),
        tape: Length::ZERO,
        division: Division::SIXTEENTH,
        leg_min: inch(2.0),
        level: EIGHTH,
        below: true,
        open_above: false,
    }
}

fn kind(left: f64, right: f64, bottom: f64, top: f64) -> &'static str {
    Notch::lay_out(&request(left, right, [bottom; 2], [top; 2])).unwrap().kind.code()
}

#[test]
fn every_kind_of_cut() {
    for (left, right, bottom, top, want) in [
        (40.0, 46.0, -1.0, 3.0, "bottom"),
        (40.0, 46.0, 1.0, 3.0, "bottom"),
        (40.0, 46.0, 1.25, 3.0, "hole"),
        (40.0, 46.0, 3.0, 9.0, "top"),
        (40.0, 46.0, 3.0, 7.9375, "top"),
        (40.0, 46.0, 3.0, 7.921_875, "hole"),
        (40.0, 46.0, -1.0, 8.0, "through"),
        (40.0, 46.0, 1.0, 8.0, "through"),
        (0.0625, 6.0, -1.0, 3.0, "bottom-left"),
        (0.078_125, 6.0, -1.0, 3.0, "bottom"),
        (94.0, 99.9375, -1.0, 3.0, "bottom-right"),
        (-1.0, 6.0, 3.0, 9.0, "top-left"),
        (94.0, 101.0, 3.0, 9.0, "top-right"),
        (-1.0, 6.0, 3.0, 6.0, "left-end"),
        (94.0, 101.0, 3.0, 6.0, "right-end"),
        (-1.0, 6.0, -1.0, 9.0, "cut-short-left"),
        (94.0, 101.0, -1.0, 9.0, "cut-short-right"),
        (-1.0, 101.0, -1.0, 3.0, "rip-bottom"),
        (-1.0, 101.0, 3.0, 9.0, "rip-top"),
        (-1.0, 101.0, 3.0, 6.0, "rip-top"),
        (-1.0, 101.0, -1.0, 9.0, "whole"),
        (0.0, 100.0, 0.0, 8.0, "whole"),
        (40.0, 46.0, -3.0, 0.0, "none"),
        (40.0, 46.0, 8.0, 10.0, "none"),
        (-6.0, 0.0, 2.0, 4.0, "none"),
        (100.0, 106.0, 2.0, 4.0, "none"),
    ] {
        assert_eq!(kind(left, right, bottom, top), want, "{left} {right} {bottom} {top}");
    }
}

#[test]
fn the_deeper_side_decides_and_the_other_depth_may_be_zero() {
    let bottom = request(40.0, 46.0, [-3.0, -3.0], [-1.0, 3.0]);
    let notch = Notch::lay_out(&bottom).unwrap();
    assert_eq!(notch.kind, CutKind::Bottom);
    assert_eq!(notch.depth(&bottom.board), Some(Sides::new(Length::ZERO, inch(3.0625))));
    assert!(notch.warnings.contains(&Warning::OutOfLevel { edge: Edge::Top, by: inch(3.0625) }));
    let through = Notch::lay_out(&request(40.0, 46.0, [-3.0, 2.0], [7.0, 8.0])).unwrap();
    assert_eq!(through.kind, CutKind::Through);
    assert_eq!(through.cut.map(|cut| (cut.bottom, cut.top)), Some((Sides::both(Length::ZERO), Sides::both(inch(8.0)))));
    assert_eq!(through.legs, Legs::default());
}

#[test]
fn a_block_that_does_not_enter_is_warned_of_under_the_least_gap_only() {
    let mut near = request(40.0, 46.0, [-3.0; 2], [-0.0625; 2]);
    near.gap = GapRule::One(Gap { min: inch(0.0625), max: inch(0.125) });
    assert_eq!(Notch::lay_out(&near).unwrap().warnings, []);
    near.block.top = Sides::both(inch(-0.046_875));
    let tight = Warning::GapTight { edge: Edge::Top, least: inch(0.046_875), wanted: inch(0.0625) };
    assert_eq!(Notch::lay_out(&near).unwrap().warnings, [tight]);
}

/// Distances by 3-4-5 triangles: off a corner it is the slanting one that counts, not the longer leg, in either direction.
#[test]
fn off_a_corner_the_gap_is_that_between_the_corners() {
    let part = |parts: i64| Length::from_inches_64(0, parts);
    for (beside, over, apart) in [(3, 4, 5), (4, 3, 5), (5, 12, 13), (12, 5, 13), (6, 8, 10)] {
        for (left, above) in [(true, true), (true, false), (false, true), (false, false)] {
            let warned = |wanted: Length| {
                let mut request = request(0.0, 6.0, [0.0; 2], [2.0; 2]);
                let (board, wide, high) = (request.board, inch(6.0), inch(2.0));
                let x = if left { -part(beside) - wide } else { board.length + part(beside) };
                let y = if above { board.height + part(over) } else { -part(over) - high };
                request.block = Block { left: x, right: x + wide, bottom: Sides::both(y), top: Sides::both(y + high) };
                request.gap = GapRule::One(Gap { min: wanted, max: inch(1.0) });
                Notch::lay_out(&request).unwrap().warnings
            };
            assert_eq!(warned(part(apart)), [], "{beside} and {over}/64 in are {apart}/64 in apart");
            let wider = part(apart) + Length::from_nm(1);
            assert!(
                matches!(warned(wider)[..], [Warning::GapTight { least, wanted, .. }] if least == part(apart) && wanted == wider),
                "{beside} and {over}/64 in: {:?}",
                warned(wider)
            );
        }
    }
}

/// By hand: a block 6 in high and a lap of 1 1/4 in ask for 7 1/4 in of the two depths together. One side closes exactly,
/// on the other the block is 3/8 in higher: it is that side that counts, whichever it is.
#[test]
fn the_cross_check_is_that_of_the_worse_side() {
    let (zero, lap, other) = (Length::ZERO, inch(1.25), inch(4.25));
    for (tops, off) in [([3.0, 3.375], 0), ([3.375, 3.0], 0), ([3.0, 3.0], 0)] {
        // What the notch is deeper by, the block is higher by as well: both sides close.
        let asked = request(40.0, 46.0, [-3.0; 2], tops);
        let notch = Notch::lay_out(&asked).unwrap();
        let miss = notch.cross_check(&asked.board, &asked.block, other, lap, zero);
        assert_eq!(miss, Some(Length::from_inches_64(0, off)), "{tops:?}");
    }
    for (bottoms, off) in [([-3.0, -3.375], -24), ([-3.375, -3.0], -24), ([-3.0, -2.625], 24), ([-2.625, -3.0], 24)] {
        let asked = request(40.0, 46.0, bottoms, [3.0; 2]);
        let notch = Notch::lay_out(&asked).unwrap();
        let miss = notch.cross_check(&asked.board, &asked.block, other, lap, zero);
        assert_eq!(miss, Some(Length::from_inches_64(0, off)), "{bottoms:?}");
        assert!(miss.is_some_and(Notch::is_off));
    }
}

#[test]
fn an_edge_that_is_open_has_no_gap_warning() {
    let mut wide = request(40.0, 46.0, [-1.0; 2], [3.0; 2]);
    let none = Gap { min: Length::ZERO, max: Length::ZERO };
    wide.gap = GapRule::Edges { sides: none, top: none, bottom: none };
    wide.overcut = Overcut { min: Length::ZERO, max: inch(0.0625) };
    let edges: Vec<Edge> = Notch::lay_out(&wide)
        .unwrap()
        .warnings
        .iter()
        .filter_map(|warning| if let Warning::GapWide { edge, .. } = warning { Some(*edge) } else { None })
        .collect();
    assert_eq!(edges, [Edge::Sides, Edge::Top]);
}

/// By hand: an offset of 11/128 in is 2,182,812.5 nm. Every number is rounded once, halves away from zero: what is taken away
/// from a whole number of nanometres is rounded up as well.
#[test]
fn half_a_nanometre_is_rounded_once() {
    let part = |parts: i64| Length::from_inches_64(0, parts);
    let mut asked = request(52.375, 59.875, [-1.5; 2], [4.125; 2]);
    asked.gap = GapRule::One(Gap { min: part(4), max: part(8) });
    asked.overcut = Overcut { min: Length::ZERO, max: part(1) };
    asked.division = Division::new(Length::NM_PER_INCH, 64).unwrap();
    (asked.board.height, asked.board.length) = (inch(7.25), inch(118.5));
    let notch = Notch::lay_out(&asked).unwrap();
    // What lies half a nanometre over a whole number of inches' parts, after it is rounded.
    let over = |parts: i64, length: Length| length.nm() * 2 - part(parts).nm() * 2;
    let half_division = 396_875;
    let cut = notch.cut.unwrap();
    assert_eq!(notch.offset, GapRule::One(Length::from_nm(2_182_813)));
    // 52 3/8 in less 11/128 in: 3,346 and a half 64ths.
    assert_eq!((over(3346, cut.left), over(3837, cut.right)), (half_division + 1, half_division + 1));
    let back = notch.behind(&asked.board).unwrap();
    assert_eq!((over(3746, back.left), over(4237, back.right)), (half_division + 1, half_division + 1));
    let legs = [notch.legs.above, notch.legs.left, notch.legs.right].map(Option::unwrap);
    assert_eq!([over(194, legs[0]), over(3346, legs[1]), over(3746, legs[2])], [half_division + 1; 3]);
    assert_eq!(over(269, notch.depth(&asked.board).unwrap().left), half_division + 1);
    // From the top edge: 3 1/8 in and the offset.
    asked.block = Block { bottom: Sides::both(inch(4.125)), top: Sides::both(inch(9.0)), ..asked.block };
    let notch = Notch::lay_out(&asked).unwrap();
    assert_eq!(over(205, notch.depth(&asked.board).unwrap().left), half_division + 1);
    let mark = marks(&notch, &asked.board, true).unwrap().levels[0];
    assert_eq!((mark.from, over(205, mark.at.left)), (EdgeName::Top, half_division + 1));
}

/// A block that stands on the board's edge is near by its bottom, and one at the board's end by its side; which gap is zero
/// there is kept.
#[test]
fn what_touches_is_judged_by_the_edge_that_touches() {
    let gap = |min: f64| Gap { min: inch(min), max: inch(1.0) };
    let wants =
        |sides: f64, top: f64, bottom: f64| GapRule::Edges { sides: gap(sides), top: gap(top), bottom: gap(bottom) };
    let board = request(0.0, 6.0, [0.0; 2], [2.0; 2]).board;
    let (length, height) =
        (board.length.nm() as f64 / Length::NM_PER_INCH as f64, board.height.nm() as f64 / Length::NM_PER_INCH as f64);
    let edges = |left: f64, bottom: f64, gap: GapRule<Gap>| {
        let mut asked = request(left, left + 10.0, [bottom; 2], [bottom + 2.0; 2]);
        asked.gap = gap;
        let warnings = Notch::lay_out(&asked).unwrap().warnings;
        warnings
            .iter()
            .map(|warning| match warning {
                Warning::GapTight { edge, .. } => *edge,
                other => panic!("{other:?}"),
            })
            .collect::<Vec<Edge>>()
    };
    assert_eq!(edges(10.0, height, wants(0.125, 0.125, 0.0)), []);
    assert_eq!(edges(10.0, height, wants(0.0, 0.0, 0.125)), [Edge::Bottom]);
    assert_eq!(edges(10.0, -2.0, wants(0.125, 0.0, 0.125)), []);
    assert_eq!(edges(10.0, -2.0, wants(0.0, 0.125, 0.0)), [Edge::Top]);
    assert_eq!(edges(length, 2.0, wants(0.0, 0.125, 0.125)), []);
    assert_eq!(edges(-10.0, 2.0, wants(0.125, 0.0, 0.0)), [Edge::Sides]);
    // At a corner both are near.
    assert_eq!(edges(length, height, wants(0.125, 0.0, 0.125)), [Edge::Sides, Edge::Bottom]);
}

#[test]
fn legs_between_two_cuts() {
    let first = request(40.0, 46.0, [-1.0; 2], [3.0; 2]);
    let second = Block { left: inch(47.0), right: inch(50.0), ..first.block };
    let lay_out = |block: Block| Notch::lay_out(&NotchRequest { block, ..first }).unwrap();
    let both = several(vec![lay_out(second), lay_out(first.block)], first.leg_min);
    assert_eq!(both.between, [(1, 0, inch(0.875))]);
    assert_eq!(both.thin, [0]);
    assert_eq!(both.notches[0].legs.left, Some(inch(0.875)));
    assert_eq!(both.notches[1].legs.right, Some(inch(0.875)));
}

#[test]
fn marks_are_measured_from_the_edge_that_the_notch_opens_to() {
    let top = request(40.0, 46.0, [3.0, 3.25], [9.0; 2]);
    let notch = Notch::lay_out(&top).unwrap();
    let back = marks(&notch, &top.board, true).unwrap();
    assert_eq!(back.uprights, [inch(53.9375), inch(60.0625)]);
    assert_eq!(back.levels, [NotchMark { from: EdgeName::Top, at: Sides::new(inch(4.8125), inch(5.0625)) }]);
}

proptest! {
    #[test]
    fn cuts_stay_on_the_board_and_outside_the_block(
        left in -20_i64..120, width in 1_i64..130, low in -12_i64..12, high in 1_i64..20,
        slope in -40_i64..40, below: bool,
    ) {
        let (left, right) = (left as f64, (left + width) as f64);
        let (low, high, slope) = (low as f64, (low + high) as f64, slope as f64 / 64.0);
        let mut asked = request(left, right, [low, low + slope], [high, high + slope]);
        asked.below = below;
        let (board, block) = (asked.board, asked.block);
        let notch = Notch::lay_out(&asked).unwrap();
        let Some(cut) = notch.cut else {
            prop_assert!(Touch::of(&board, &block).is_some());
            return Ok(());
        };
        prop_assert_eq!(cut.mirrored(board.length).mirrored(board.length), cut);
        let behind = NotchRequest { block: block.mirrored(board.length), ..asked };
        let behind = Notch::lay_out(&behind).unwrap();
        prop_assert_eq!(behind.cut, Some(cut.mirrored(board.length)));
        prop_assert_eq!(behind.kind, notch.kind.mirrored());
        prop_assert!(cut.left <= block.left.max(Length::ZERO) && cut.right >= block.right.min(board.length));
        prop_assert!(cut.left < cut.right && cut.bottom.least() >= Length::ZERO && cut.top.most() <= board.height);
        for (mark, own) in [(cut.bottom.left, block.bottom.left), (cut.bottom.right, block.bottom.right)] {
            prop_assert!(mark <= own.clamp(Length::ZERO, board.height));
        }
        for (mark, own) in [(cut.top.left, block.top.left), (cut.top.right, block.top.right)] {
            prop_assert!(mark >= own.clamp(Length::ZERO, board.height));
        }
        if !notch.kind.is_through() {
            let zero = Length::ZERO;
            let across = notch.legs.left.unwrap_or(zero) + (cut.right - cut.left) + notch.legs.right.unwrap_or(zero);
            prop_assert_eq!(across, board.length);
            let up = notch.legs.below.unwrap_or(zero) + (cut.top.most() - cut.bottom.least()) + notch.legs.above.unwrap_or(zero);
            prop_assert_eq!(up, board.height);
        }
    }
}
