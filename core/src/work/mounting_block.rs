//! How the mounting block of a penetration is made.

use num_rational::BigRational;

use crate::flashing::{BlockError, BlockLimits, Layer, SlipBlock, SlipError, SlipRequest, SplitBlock, SplitRequest};
use crate::measure::Division;
use crate::rules::keys;

use super::error::Result;
use super::{MountingBlock, PenetrationSite};

/// A mounting block as it is made, or why it cannot be.
#[derive(Clone, Debug)]
pub enum MadeBlock {
    /// Sawn apart at a slope, to go round what stays in the wall.
    Split(Result<SplitBlock, BlockError>),
    /// Of one piece, to slip over what goes through it.
    Slip(Result<SlipBlock, SlipError>),
}

impl PenetrationSite {
    /// How the block is made for a tape of these divisions; `None` where there is none, but a collar or trim.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn made_block(&self, division: Division) -> Result<Option<MadeBlock>> {
        let Some(block) = self.penetration.block else { return Ok(None) };
        let assembly = self.detail.assembly();
        Ok(if assembly.block_is_split() {
            Some(MadeBlock::Split(SplitBlock::lay_out(&self.split_request(&block, division)?)))
        } else if assembly.has(Layer::Block) {
            Some(MadeBlock::Slip(SlipBlock::lay_out(&self.slip_request(&block)?)))
        } else {
            None
        })
    }

    fn split_request(&self, block: &MountingBlock, division: Division) -> Result<SplitRequest> {
        Ok(SplitRequest {
            width: block.x.length(),
            height: block.y.length(),
            thickness: block.thickness,
            through: self.penetration.shape,
            center: block.hole,
            angle: BigRational::from_integer(self.work.rules().get_whole(keys::BLOCK_ANGLE)?.into()),
            kerf: self.rule(keys::SAW_KERF)?,
            gap: self.rule(keys::GAP_BLOCK_MOST)?,
            bits: None,
            board_thickness: Some(self.work.board_thickness()?),
            division,
            limits: self.block_limits()?,
        })
    }

    fn slip_request(&self, block: &MountingBlock) -> Result<SlipRequest> {
        Ok(SlipRequest {
            width: block.x.length(),
            height: block.y.length(),
            thickness: block.thickness,
            through: self.penetration.shape,
            center: block.hole,
            gap: self.rule(keys::GAP_BLOCK_MOST)?,
            board_thickness: self.work.board_thickness()?,
            limits: self.block_limits()?,
        })
    }

    fn block_limits(&self) -> Result<BlockLimits> {
        Ok(BlockLimits {
            bit_step: self.rule(keys::BLOCK_BIT_STEP)?,
            side_least: self.rule(keys::BLOCK_SIDE_LEAST)?,
            thickness_margin: self.rule(keys::BLOCK_THICKNESS_MARGIN)?,
        })
    }
}
