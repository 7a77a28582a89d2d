//! Where the mounting block of a penetration would sit better.

use crate::book::{BoardState, Field, Kind, Record};
use crate::flashing::SplitBlock;
use crate::measure::{Division, Length};
use crate::notch::{Advice, AdviceRequest, BlockSize, Gap, Overcut, PlacedBlock};
use crate::rules::keys;

use super::error::Result;
use super::{MadeBlock, PenetrationSite};

impl PenetrationSite {
    /// The advice for a block that is not made yet and whose boards are not cut, at the marks of a tape of these
    /// divisions; `None` where it sits well.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn block_advice(&self, division: Division) -> Result<Option<Advice>> {
        let Some(block) = self.penetration.block else { return Ok(None) };
        let (Some(hole_least), Ok(board_height)) = (self.hole_least(division)?, self.work.board_height()) else {
            return Ok(None);
        };
        if self.courses.is_empty() || self.begun() {
            return Ok(None);
        }
        let side = self.rule(keys::BLOCK_SIDE_LEAST)?;
        let size = BlockSize { width: block.x.length(), height: block.y.length() };
        let request = AdviceRequest {
            centre: self.penetration.centre.y,
            placed: PlacedBlock { size, hole: block.hole },
            sizes: self.block_sizes(),
            width_least: self.penetration.shape.width() + side + side,
            hole_least,
            // The first board may be ripped: its line is that of its full height.
            bottoms: self.courses.iter().map(|course| course.top() - board_height).collect(),
            board_height,
            lap: self.work.lap()?,
            gap: Gap { min: self.rule(keys::GAP_BLOCK_LEAST)?, max: self.rule(keys::GAP_BLOCK_MOST)? },
            overcut: Overcut { min: self.rule(keys::SAW_OVER_LEAST)?, max: self.rule(keys::SAW_OVER_MOST)? },
            leg_min: self.rule(keys::LEG_LEAST)?,
            strip_min: self.rule(keys::STRIP_LEAST)?,
            division,
        };
        // Boards or a block that make no sense are told where they are asked for.
        Ok(request.advise().unwrap_or(None))
    }

    /// The sizes of blocks that the house has.
    fn block_sizes(&self) -> Vec<BlockSize> {
        let sizes = self.work.house().own(Kind::BlockSize).iter();
        let size =
            |size: &Record| Some(BlockSize { width: size.length(Field::Width)?, height: size.length(Field::Height)? });
        sizes.filter_map(|record| size(record)).collect()
    }

    /// How far the hole's centre stays from the block's bottom and top: wood beside the hole, and room for the sloped cut.
    fn hole_least(&self, division: Division) -> Result<Option<Length>> {
        let (side, gap) = (self.rule(keys::BLOCK_SIDE_LEAST)?, self.rule(keys::GAP_BLOCK_MOST)?);
        Ok(match self.made_block(division)? {
            // A cut that cannot be made at all is told at the block; the climb must end inside it.
            Some(MadeBlock::Split(split)) => {
                let least =
                    |split: SplitBlock| (split.hole.height().half() + side).max(split.climb.half() + division.length());
                split.ok().map(least)
            }
            Some(MadeBlock::Slip(_)) => Some(self.penetration.shape.height().half() + gap + side),
            None => None,
        })
    }

    /// Whether the block stands already, or a board at it is cut or up.
    fn begun(&self) -> bool {
        if self.work.house().signed(self.penetration.id()).next().is_some() {
            return true;
        }
        let (x, y) = self.penetration.outer();
        let at_block = |board: &Record| {
            let (from, to) = (board.length(Field::From)?, board.length(Field::To)?);
            let (bottom, height) = (board.length(Field::Bottom)?, board.length(Field::Height)?);
            Some(from < x.to && x.from < to && bottom < y.to && y.from < bottom + height)
        };
        let stands = |board: &Record| board.board_state() != BoardState::Planned;
        self.work.boards(self.wall.id()).iter().any(|board| stands(board) && at_block(board) == Some(true))
    }
}
