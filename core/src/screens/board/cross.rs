use crate::measure::Length;
use crate::notch::{Block, Sides};
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::context::Terms;
use crate::screens::kept::Facts;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{Id, Store};
use crate::views::Note;

use super::hand::{InHand, Met, OnWall};
use super::notches::Known;

/// A note where the notches of two boards over one block do not close on it: both depths, measured to the block itself,
/// make the block's height and the lap. Only what was taped on both boards is compared.
pub(super) fn check(store: &Store, terms: &Terms<'_>, hand: &InHand, known: &Known<'_>) -> Kept<Option<Note>> {
    let (Some(_), Some(planned), Some(block)) = (known.taped, known.planned, known.block(hand)) else {
        return Ok(None);
    };
    let tolerance = hand.rules.get_length(keys::CROSS_CHECK_TOLERANCE)?;
    for (other, readings) in others(store, hand, planned.id)? {
        let Some(miss) = miss(hand, &block, &other, &readings, planned) else { continue };
        if miss.abs() > tolerance {
            let text = terms.phrase(key("notch-cross-check"), &[("by", terms.shown_finely(miss.abs()).into())]);
            return Ok(Some(Note { code: "cross-check".to_owned(), text }));
        }
    }
    Ok(None)
}

/// The other boards of the wall that were taped round the same block, each with what the tape read. Only the boards'
/// notches are looked at, and only for a notch that was taped itself.
fn others(store: &Store, hand: &InHand, penetration: Id) -> Kept<Vec<(Facts, Facts)>> {
    let Some(wall) = &hand.wall else { return Ok(Vec::new()) };
    let mut others = Vec::new();
    for board in store.children(wall.id(), kinds::BOARD)? {
        if board.removed.is_some() || board.id == hand.facts.id() {
            continue;
        }
        for notch in Facts::children(store, board.id, kinds::NOTCH)? {
            if notch.reference("penetration") == Some(penetration) {
                others.push((Facts::kept(store, board.clone())?, notch));
            }
        }
    }
    Ok(others)
}

/// By how much the two depths miss the block's height and the lap, on the worse side; `None` where the two boards do not
/// meet at the block from below and from above.
fn miss(hand: &InHand, block: &Block, other: &Facts, readings: &Facts, planned: &Met) -> Option<Length> {
    // Both edges where the block is: a course may be out of level.
    let (x, height) = (planned.x.from + planned.x.length().half(), planned.y.length());
    let bottom = hand.place()?.bottom_at(x);
    let (other_bottom, other_height) = (OnWall::of(other)?.bottom_at(x), other.length("height")?);
    let side = |left: &str, right: &str| {
        let first = readings.length(left)?;
        Some(Sides::new(first, readings.length(right).unwrap_or(first)))
    };
    // The upper board's notch is as deep as the block's top lies above its bottom edge, the lower board's as the block's
    // bottom lies below its top edge. From the lower top edge to the upper bottom edge is the lap, less the reveals of
    // boards that are cut right through between the two.
    let above = bottom > other_bottom;
    let upper = if above { block.top } else { side("top-left", "top-right")? };
    let under = if above { side("bottom-left", "bottom-right")? } else { block.bottom };
    let (lower_height, lap) = if above {
        (other_height, other_bottom + other_height - bottom)
    } else {
        (hand.height, bottom + hand.height - other_bottom)
    };
    let lower = under.map(|at| lower_height - at);
    if !upper.least().is_positive() || !lower.least().is_positive() {
        return None;
    }
    let (left, right) = (upper.left + lower.left - height - lap, upper.right + lower.right - height - lap);
    Some(if right.abs() > left.abs() { right } else { left })
}
