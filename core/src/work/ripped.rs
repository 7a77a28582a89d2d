use crate::board::{BoardShape, Instructions, SawCut};
use crate::book::{Field, Kind, Record};
use crate::measure::Length;
use crate::store::Id;

use super::Work;
use super::placement::Placement;

/// How high a board is, where a strip of one width comes off along the whole of it.
pub fn ripped_to(work: &Work, board: &Record) -> Option<Length> {
    let wall = work.wall(board.parent?).ok()?;
    let (place, height) = (Placement::of(board)?, board.length(Field::Height)?);
    let shapes = wall.board_shapes(board.whole(Field::Course), place, height).ok()?;
    let [shape] = &*shapes else { return None };
    is_ripped(shape).then_some(shape.height)
}

/// How high the offcut is that a board is cut from, where it is a strip left over.
pub(super) fn strip_height(work: &Work, offcut: Option<Id>) -> Option<Length> {
    work.house().get(offcut?, Kind::Offcut).ok()?.length(Field::Height)
}

/// Whether a strip of one width comes off along the whole of a shape.
pub(super) fn is_ripped(shape: &BoardShape) -> bool {
    let cuts = Instructions::of(shape, Length::ZERO).cuts;
    let mut rips = cuts.iter().filter_map(|own| match own.cut {
        SawCut::Rip { left, right, .. } => Some(left == right),
        _ => None,
    });
    rips.next() == Some(true) && rips.next().is_none()
}
