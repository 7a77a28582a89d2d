//! The layers round a penetration, from the wall outward.

use crate::flashing::{LayerBoard, LayerKind, LayersRequest, Outer, WallLayers};
use crate::rules::keys;
use crate::siding::CourseLine;
use crate::wall::Finish;

use super::PenetrationSite;
use super::error::Result;

impl PenetrationSite {
    /// The layers with their extents; `None` where the patch cannot be told.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn wall_layers(&self) -> Result<Option<WallLayers>> {
        let Some(Ok(patch)) = self.patch()? else { return Ok(None) };
        let kind = match self.detail.finish {
            Finish::Block => LayerKind::Block,
            Finish::Collar => LayerKind::Collar,
            Finish::Trim => LayerKind::Trim,
        };
        let board = |course: &CourseLine| LayerBoard { bottom: course.bottom, height: course.height };
        let board_thickness = self.work.board_thickness()?;
        let thickness = self.penetration.block.map_or(board_thickness, |block| block.thickness);
        let request = LayersRequest {
            boards: self.courses.iter().map(board).collect(),
            board_thickness,
            lap: self.work.lap()?,
            patch,
            pipe: self.pipe(),
            outer: Outer { kind, area: self.outer(), thickness },
            head: self.head_flashing()?,
            gap: self.rule(keys::GAP_BLOCK_MOST)?,
            barrier_lap: self.rule(keys::BARRIER_LAP_HORIZONTAL)?,
            head_laps: (self.rule(keys::HEAD_FLASHING_DOWN_LAP)?, self.rule(keys::HEAD_FLASHING_UP_LEG)?),
            patch_lap: self.work.nail_line()?,
            shadow: self.rule(keys::SHADOW_MOST)?,
        };
        Ok(WallLayers::build(&request).ok())
    }
}
