//! The layers round a penetration, from the wall outward.

use crate::flashing::{LayerBoard, LayersRequest, Outer, WallLayers};
use crate::rules::keys;
use crate::siding::CourseLine;

use super::PenetrationSite;
use super::error::Result;

impl PenetrationSite {
    /// The layers with their extents; `None` where the patch cannot be told.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn wall_layers(&self) -> Result<Option<WallLayers>> {
        let Some(Ok(patch)) = self.patch()? else { return Ok(None) };
        let board = |course: &CourseLine| LayerBoard { bottom: course.bottom, height: course.height };
        let board_thickness = self.work.board_thickness()?;
        let thickness = self.penetration.block.map_or(board_thickness, |block| block.thickness);
        let request = LayersRequest {
            assembly: self.detail.assembly(),
            boards: self.courses.iter().map(board).collect(),
            board_thickness,
            lap: self.work.lap()?,
            patch,
            pipe: self.pipe(),
            outer: Outer { area: self.outer(), thickness },
            head: self.head_flashing()?,
            gap: self.rule(keys::GAP_BLOCK_MOST)?,
            barrier_lap: self.rule(keys::BARRIER_LAP_HORIZONTAL)?,
            head_laps: (self.rule(keys::HEAD_FLASHING_DOWN_LAP)?, self.rule(keys::HEAD_FLASHING_UP_LEG)?),
            patch_lap: self.rule(keys::NAIL_LINE_LEAST)?,
            shadow: self.rule(keys::SHADOW_MOST)?,
        };
        Ok(WallLayers::build(&request).ok())
    }
}
