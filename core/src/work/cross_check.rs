use crate::book::{Field, Kind, Record};
use crate::measure::Length;
use crate::notch::Sides;
use crate::rules::keys;

use super::board::{Board, Met};
use super::error::Result;
use super::placement::Placement;
use super::{BoardNotch, Work};

/// By how much the notches of two boards over one block do not close on it, where that is more than the rules let pass: both depths, measured
/// to the block itself, make the block's height and the lap. Only what was taped on both boards is compared.
///
/// # Errors
/// [`super::WorkError::Rule`].
pub fn cross_check(work: &Work, board: &Board, notch: &BoardNotch) -> Result<Option<Length>> {
    let (Some(_), Some(planned), Some(_), Some(site)) = (&notch.taped, &notch.planned, notch.block, &board.site) else {
        return Ok(None);
    };
    let tolerance = board.rules.get_length(keys::CROSS_CHECK_TOLERANCE)?;
    let others = work.boards(site.id()).iter().filter(|other| other.id() != board.id());
    let taped =
        others.flat_map(|other| work.house().under(other.id(), Kind::Notch).iter().map(move |notch| (other, notch)));
    let same = taped.filter(|(_, notch)| notch.reference(Field::Penetration) == Some(planned.id));
    let mut misses = same.filter_map(|(other, readings)| miss(board, notch, (other, readings), planned));
    Ok(misses.find(|miss| miss.abs() > tolerance).map(Length::abs))
}

/// By how much the two depths miss the block's height and the lap, on the worse side; `None` where the two boards do not
/// meet at the block from below and from above.
fn miss(board: &Board, notch: &BoardNotch, (other, readings): (&Record, &Record), planned: &Met) -> Option<Length> {
    let block = notch.block?;
    // Both edges where the block is: a course may be out of level.
    let (x, height) = (planned.x.from + planned.x.length().half(), planned.y.length());
    let bottom = board.place()?.bottom_at(x);
    let (other_bottom, other_height) = (Placement::of(other)?.bottom_at(x), other.length(Field::Height)?);
    let side = |left: Field, right: Field| {
        let first = readings.length(left)?;
        Some(Sides::new(first, readings.length(right).unwrap_or(first)))
    };
    // The upper board's notch is as deep as the block's top lies above its bottom edge, the lower board's as the block's
    // bottom lies below its top edge. From the lower top edge to the upper bottom edge is the lap, less the reveals of
    // boards that are cut right through between the two.
    let above = bottom > other_bottom;
    let upper = if above { block.top } else { side(Field::TopLeft, Field::TopRight)? };
    let under = if above { side(Field::BottomLeft, Field::BottomRight)? } else { block.bottom };
    let (lower_height, lap) = if above {
        (other_height, other_bottom + other_height - bottom)
    } else {
        (board.height, bottom + board.height - other_bottom)
    };
    let lower = under.map(|at| lower_height - at);
    if !upper.least().is_positive() || !lower.least().is_positive() {
        return None;
    }
    let (left, right) = (upper.left + lower.left - height - lap, upper.right + lower.right - height - lap);
    Some(if right.abs() > left.abs() { right } else { left })
}
