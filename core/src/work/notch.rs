use std::sync::Arc;

use crate::book::{Field, Record};
use crate::measure::{Division, Length, Rounding};
use crate::notch::{Block, CutKind, Gap, GapRule, Notch, NotchRequest, Overcut, Sides};
use crate::rules::keys;
use crate::store::Id;

use super::board::{Board, Met};
use super::error::{Result, WorkError};
use super::placement::Placement;

/// What somebody cuts and measures with: it moves the marks and widens the gap to expect, and is no part of what is signed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tools {
    /// What the saw takes beyond its line.
    pub overcut: Overcut,
    /// How far the tape may be off.
    pub tape: Length,
    /// The tape's smallest mark.
    pub division: Division,
}

/// A notch of a board: what was taped, and what the plan says where it was not.
#[derive(Clone, Debug)]
pub struct BoardNotch {
    /// What the tape read, where it was put to it.
    pub taped: Option<Arc<Record>>,
    /// What stands there by the plan.
    pub planned: Option<Met>,
    /// The block in the board's frame; `None` until four readings are there. Without a right one the block is level.
    pub block: Option<Block>,
    place: Option<Placement>,
}

/// The six readings of a block.
pub const READINGS: [Field; 6] =
    [Field::Left, Field::Right, Field::BottomLeft, Field::BottomRight, Field::TopLeft, Field::TopRight];

/// Every notch of a board, from left to right: those that were taped, and those that the plan expects.
pub(super) fn notches(place: Option<Placement>, taped: &[Arc<Record>], obstructions: Vec<Met>) -> Vec<BoardNotch> {
    let of = |record: &Record| record.reference(Field::Penetration);
    let mut notches = Vec::new();
    for record in taped {
        let planned = obstructions.iter().find(|met| of(record) == Some(met.id)).cloned();
        notches.push(BoardNotch::new(Some(Arc::clone(record)), planned, place));
    }
    for met in obstructions {
        if !taped.iter().any(|record| of(record) == Some(met.id)) {
            notches.push(BoardNotch::new(None, Some(met), place));
        }
    }
    notches.sort_by_key(|notch| notch.reading(Field::Left));
    notches
}

impl BoardNotch {
    pub(super) fn new(taped: Option<Arc<Record>>, planned: Option<Met>, place: Option<Placement>) -> Self {
        let mut notch = Self { taped, planned, block: None, place };
        notch.block = notch.measured_block();
        notch
    }

    /// Whether somebody put a tape to it.
    pub fn is_taped(&self) -> bool {
        self.taped.is_some()
    }

    /// The id that answers go to: its own, or that of what it is planned round.
    pub fn id(&self) -> Option<Id> {
        self.ids().first().copied()
    }

    /// All ids that it goes by.
    pub fn ids(&self) -> Vec<Id> {
        let (taped, planned) = (self.taped.as_ref().map(|record| record.id()), self.planned.as_ref().map(|met| met.id));
        taped.into_iter().chain(planned).collect()
    }

    /// Whether it goes by an id.
    pub fn goes_by(&self, id: Id) -> bool {
        self.ids().contains(&id)
    }

    /// The gap over a head flashing on top of what it goes round, the flashing's fall included.
    pub fn head(&self) -> Option<Length> {
        self.planned.as_ref()?.head
    }

    /// A reading in the board's own frame: taped, else planned.
    pub fn reading(&self, field: Field) -> Option<Length> {
        self.taped.as_ref().and_then(|record| record.length(field)).or_else(|| self.planned_reading(field))
    }

    /// What the plan says of a reading.
    pub fn planned_reading(&self, field: Field) -> Option<Length> {
        let Met { x, y, .. } = self.planned.as_ref()?;
        let place = self.place?;
        Some(match field {
            Field::Left => x.from - place.from,
            Field::Right => x.to - place.from,
            Field::BottomLeft => y.from - place.bottom_at(x.from),
            Field::BottomRight => y.from - place.bottom_at(x.to),
            Field::TopLeft => y.to - place.bottom_at(x.from),
            Field::TopRight => y.to - place.bottom_at(x.to),
            _ => return None,
        })
    }

    fn measured_block(&self) -> Option<Block> {
        let side = |left: Field, right: Field| {
            let left_side = self.reading(left)?;
            let taped = |field| self.taped.as_ref().and_then(|record| record.length(field));
            // A taped left side without a right one is that of a level block, whatever the plan says of the right.
            let level = || if taped(left).is_some() { Some(left_side) } else { self.reading(right) };
            Some(Sides::new(left_side, taped(right).or_else(level)?))
        };
        Some(Block {
            left: self.reading(Field::Left)?,
            right: self.reading(Field::Right)?,
            bottom: side(Field::BottomLeft, Field::BottomRight)?,
            top: side(Field::TopLeft, Field::TopRight)?,
        })
    }
}

/// What the notch of a block is laid out from.
pub(super) fn request(board: &Board, notch: &BoardNotch, block: Block, tools: &Tools) -> Result<NotchRequest> {
    Ok(NotchRequest {
        board: crate::notch::BoardInHand { height: board.height, length: board.length()?, lap: board.lap_at(&block) },
        block,
        gap: gaps(board.gap()?, notch.head(), tools.division),
        overcut: tools.overcut,
        tape: tools.tape,
        division: tools.division,
        leg_min: board.rules.get_length(keys::LEG_LEAST)?,
        level: board.rules.get_length(keys::LEVEL_TOLERANCE)?,
        below: board.below,
        open_above: notch.head().is_some(),
    })
}

/// The gaps at the edges of what a notch goes round. Over a head flashing it is at least `head`, up to the next mark of the
/// tape, and may come out wider by as much as at the other edges.
fn gaps(gap: Gap, head: Option<Length>, division: Division) -> GapRule<Gap> {
    let Some(head) = head else { return GapRule::One(gap) };
    let min = division.half().round(head, Rounding::Up);
    GapRule::Edges { sides: gap, top: Gap { min, max: min + (gap.max - gap.min) }, bottom: gap }
}

/// Whether the rules' own saw would have anything to do at a planned notch, or anything to say of it. A block that only
/// comes near is no notch of this board.
pub(super) fn by_rule(board: &Board, notch: &BoardNotch) -> Result<bool> {
    let tape = board.rules.get_length(keys::TAPE_ERROR)?;
    let tools = Tools { overcut: board.ruled_overcut()?, tape, division: Division::SIXTEENTH };
    let request = match notch.block.map(|block| request(board, notch, block, &tools)).transpose() {
        Ok(Some(request)) => request,
        // What is not measured yet may well be one.
        Ok(None) | Err(WorkError::First { .. }) => return Ok(true),
        Err(error) => return Err(error),
    };
    Ok(Notch::lay_out(&request).map_or(true, |notch| notch.kind != CutKind::None || !notch.warnings.is_empty()))
}
