//! The membrane patch of a penetration.

use crate::flashing::{Patch, PatchBoard, PatchEnd, PatchError, PatchRequest, Pipe};
use crate::measure::Length;
use crate::rules::keys;
use crate::wall::Shape;

use super::PenetrationSite;
use super::error::Result;

impl PenetrationSite {
    /// The patch, or why it cannot be cut; `None` where there are no courses to lap over.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn patch(&self) -> Result<Option<Result<Patch, PatchError>>> {
        self.patch_round(self.pipe(), self.detail.assembly().patch_is_slit())
    }

    /// The patch round what goes through, slit or whole.
    pub(super) fn patch_round(&self, pipe: Pipe, slit: bool) -> Result<Option<Result<Patch, PatchError>>> {
        // A penetration is there before the boards are: without their height there are no courses either.
        let (Some(first), Ok(height)) = (self.courses.first(), self.work.board_height()) else { return Ok(None) };
        let mut request = self.patch_request(height, pipe, slit)?;
        let patch = Patch::cut(&request);
        // A first course that is ripped starts at the base line, and so does a patch that laps over the starter.
        if let (Ok(Patch { end: PatchEnd::Starter, .. }), Some(bottom)) = (&patch, request.bottoms.first_mut())
            && *bottom != first.bottom
        {
            *bottom = first.bottom;
            return Ok(Some(Patch::cut(&request)));
        }
        Ok(Some(patch))
    }

    fn patch_request(&self, height: Length, pipe: Pipe, slit: bool) -> Result<PatchRequest> {
        Ok(PatchRequest {
            board: PatchBoard { height, lap: self.work.lap()?, nail_line: self.work.nail_line()? },
            // Where the courses would start at their full height.
            bottoms: self.courses.iter().map(|course| course.bottom + course.height - height).collect(),
            block: self.outer(),
            pipe,
            beyond_side: self.rule(keys::PATCH_BEYOND_SIDE)?,
            beyond_top: self.rule(keys::PATCH_BEYOND_TOP)?,
            snug: self.rule(keys::PATCH_SNUG)?,
            slit,
            cover_beyond: self.rule(keys::PATCH_COVER_BEYOND)?,
        })
    }
}

/// What a patch is cut to, each length under a code that is never given a second meaning: sign-offs rest on them.
pub fn patch_lengths(patch: &Patch) -> Vec<(&'static str, Length)> {
    let mut lengths = vec![("width", patch.outline.width()), ("height", patch.outline.height())];
    match patch.hole {
        Shape::Round { diameter } => lengths.push(("hole", diameter)),
        Shape::Rectangle { width, height } => lengths.extend([("hole-width", width), ("hole-height", height)]),
    }
    lengths.extend([("hole-from-left", patch.hole_from_left), ("hole-from-bottom", patch.hole_from_bottom)]);
    if let Some(slit) = patch.slit {
        lengths.extend([
            ("slit", slit.length),
            ("cover-width", slit.cover_width),
            ("cover-height", slit.cover_height),
            ("cover-from-bottom", slit.cover_from_bottom),
        ]);
    }
    if let PatchEnd::Course { over_board, hidden_by, .. } = patch.end {
        lengths.extend([("over-board", over_board), ("hidden-by", hidden_by)]);
    }
    lengths
}
