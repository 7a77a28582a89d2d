//! The head flashing of a penetration.

use crate::flashing::{HeadFlashing, HeadRequest, head_gap};
use crate::rules::keys;

use super::PenetrationSite;
use super::error::Result;

impl PenetrationSite {
    /// The head flashing; `None` where there is none, or where it cannot be bent.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn head_flashing(&self) -> Result<Option<HeadFlashing>> {
        let (Some(block), true) = (self.penetration.block, self.detail.has_head_flashing()) else { return Ok(None) };
        let request = HeadRequest {
            block: self.outer(),
            thickness: block.thickness,
            up_leg: self.rule(keys::HEAD_FLASHING_UP_LEG)?,
            gap: head_gap(self.work.rules())?,
            slope: self.work.rules().get_share(keys::HEAD_FLASHING_SLOPE)?,
            end_dam: self.rule(keys::HEAD_FLASHING_END_DAM)?,
            down_lap: self.rule(keys::HEAD_FLASHING_DOWN_LAP)?,
            drip: self.rule(keys::HEAD_FLASHING_DRIP)?,
        };
        Ok(HeadFlashing::bend(&request).ok())
    }
}
