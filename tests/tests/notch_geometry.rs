//! Outside check: what is cut out of a board, against the polygon operations of the `geo` crate.

use geo::{Area, BooleanOps, BoundingRect, Coord, LineString, Polygon};
use lapwright::measure::{Division, Length};
use lapwright::notch::{Block, BoardInHand, BoardPoint, EIGHTH, Gap, GapRule, Notch, NotchRequest, Overcut, Sides};
use lapwright_tests::random::Random;

/// A random length in sixteenths of an inch.
fn length(random: &mut Random, least: i64, most: i64) -> Length {
    Length::from_inches_64(0, 4 * random.between(least, most))
}

/// Sixteenths of an inch as a float.
fn sixteenths(length: Length) -> f64 {
    length.nm() as f64 / (Length::NM_PER_INCH / 16) as f64
}

fn polygon(points: &[BoardPoint]) -> Polygon {
    let ring = points.iter().map(|point| Coord { x: sixteenths(point.x), y: sixteenths(point.y) });
    Polygon::new(LineString(ring.collect()), vec![])
}

fn quad(left: Length, right: Length, bottom: Sides<Length>, top: Sides<Length>) -> Polygon {
    polygon(&[
        BoardPoint { x: left, y: bottom.left },
        BoardPoint { x: right, y: bottom.right },
        BoardPoint { x: right, y: top.right },
        BoardPoint { x: left, y: top.left },
    ])
}

fn request(random: &mut Random, sloped: bool) -> NotchRequest {
    let left = length(random, -200, 1_650);
    let bottom = length(random, -100, 130);
    let top = bottom + length(random, 16, 160);
    let slope = if sloped { length(random, -12, 12) } else { Length::ZERO };
    let gap_max = Length::from_inches_64(0, 8 * random.between(0, 4));
    NotchRequest {
        board: BoardInHand { height: Length::from_inches(8), length: Length::from_inches(100), lap: None },
        block: Block {
            left,
            right: left + length(random, 16, 400),
            bottom: Sides::new(bottom, bottom + slope),
            top: Sides::new(top, top + slope),
        },
        gap: GapRule::One(Gap { min: Length::ZERO, max: gap_max }),
        overcut: Overcut::default(),
        tape: Length::ZERO,
        division: Division::SIXTEENTH,
        leg_min: Length::ZERO,
        level: EIGHTH,
        below: true,
        open_above: false,
    }
}

/// Level blocks: the cut is exactly the grown block's part of the board, so what is left has the area that board minus
/// grown block has, in as many pieces, and their corners are the cut's.
#[test]
fn a_level_cut_is_the_grown_block_taken_from_the_board() {
    let mut random = Random::new(0x5EED_0001);
    let mut cuts = 0;
    for case in 0..1_000 {
        let asked = request(&mut random, false);
        let (board, block) = (asked.board, asked.block);
        let notch = Notch::lay_out(&asked).unwrap();
        let sheet = quad(Length::ZERO, board.length, Sides::both(Length::ZERO), Sides::both(board.height));
        let own = quad(block.left, block.right, block.bottom, block.top);
        let Some(cut) = notch.cut else {
            assert!(sheet.intersection(&own).unsigned_area() < 1e-6, "case {case}: {block:?}");
            continue;
        };
        cuts += 1;
        let GapRule::One(offset) = notch.offset else { panic!("one gap, one offset") };
        let grown = quad(
            block.left - offset,
            block.right + offset,
            block.bottom.map(|y| y - offset),
            block.top.map(|y| y + offset),
        );
        let left_over = sheet.difference(&grown);
        let part = sheet.unsigned_area() - polygon(&cut.outline()).unsigned_area();
        assert!((left_over.unsigned_area() - part).abs() < 1e-6, "case {case}: {block:?} {cut:?}");
        assert!(left_over.intersection(&geo::MultiPolygon(vec![own])).unsigned_area() < 1e-6, "case {case}");
        let bounds = sheet.intersection(&grown).bounding_rect().unwrap();
        for (ours, theirs) in [
            (cut.left, bounds.min().x),
            (cut.right, bounds.max().x),
            (cut.bottom.left, bounds.min().y),
            (cut.top.left, bounds.max().y),
        ] {
            assert!((sixteenths(ours) - theirs).abs() < 1e-6, "case {case}: {cut:?} {bounds:?}");
        }
        let pieces = match notch.kind.code() {
            "whole" => 0,
            "through" => 2,
            "rip-top" if notch.legs.above.is_some() => 2,
            _ => 1,
        };
        assert_eq!(left_over.0.len(), pieces, "case {case}: {:?} {block:?}", notch.kind);
        assert_eq!(left_over.0.iter().any(|p| !p.interiors().is_empty()), notch.kind.code() == "hole", "case {case}");
    }
    assert!(cuts > 500, "only {cuts} blocks entered the board");
}

/// Sloped blocks whose sides lie on the board: nothing of the block is left in the way, and the cut stays on the board.
#[test]
fn nothing_of_a_sloped_block_is_left_in_the_way() {
    let mut random = Random::new(0x5EED_0002);
    let mut cuts = 0;
    for case in 0..1_000 {
        let asked = request(&mut random, true);
        let (board, block) = (asked.board, asked.block);
        let Some(cut) = Notch::lay_out(&asked).unwrap().cut else { continue };
        if block.left.is_negative() || block.right > board.length {
            continue;
        }
        cuts += 1;
        let sheet = quad(Length::ZERO, board.length, Sides::both(Length::ZERO), Sides::both(board.height));
        let opening = polygon(&cut.outline());
        let own = quad(block.left, block.right, block.bottom, block.top);
        let rest = sheet.difference(&opening);
        // A slope is carried from the block's side to the mark; over one offset it lifts the line by at most
        // offset * slope / width, which stays under the offset itself for the slopes of these cases.
        assert!(
            rest.intersection(&geo::MultiPolygon(vec![own])).unsigned_area() < 1e-6,
            "case {case}: {block:?} {cut:?}"
        );
        assert!(opening.exterior().0.iter().all(|c| (0.0..=1_600.0).contains(&c.x) && (0.0..=128.0).contains(&c.y)));
    }
    assert!(cuts > 300, "only {cuts} blocks entered the board");
}
