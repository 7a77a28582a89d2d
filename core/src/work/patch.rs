//! The membrane patch of a penetration.

use crate::flashing::{Patch, PatchBoard, PatchEnd, PatchError, PatchRequest};
use crate::measure::Length;
use crate::rules::keys;

use super::PenetrationSite;
use super::error::Result;

impl PenetrationSite {
    /// The patch, or why it cannot be cut; `None` where there are no courses to lap over.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn patch(&self) -> Result<Option<Result<Patch, PatchError>>> {
        // A penetration is there before the boards are: without their height there are no courses either.
        let (Some(first), Ok(height)) = (self.courses.first(), self.work.board_height()) else { return Ok(None) };
        let mut request = self.patch_request(height)?;
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

    fn patch_request(&self, height: Length) -> Result<PatchRequest> {
        Ok(PatchRequest {
            board: PatchBoard { height, lap: self.work.lap()?, nail_line: self.work.nail_line()? },
            // Where the courses would start at their full height.
            bottoms: self.courses.iter().map(|course| course.bottom + course.height - height).collect(),
            block: self.outer(),
            pipe: self.pipe(),
            beyond_side: self.rule(keys::PATCH_BEYOND_SIDE)?,
            beyond_top: self.rule(keys::PATCH_BEYOND_TOP)?,
            snug: self.rule(keys::PATCH_SNUG)?,
            cover_beyond: self.rule(keys::PATCH_COVER_BEYOND)?,
        })
    }
}

/// What a patch is cut to, each length under a code that is never given a second meaning: sign-offs rest on them.
pub fn patch_lengths(patch: &Patch) -> Vec<(&'static str, Length)> {
    let mut lengths = vec![
        ("width", patch.outline.width()),
        ("height", patch.outline.height()),
        ("hole", patch.hole),
        ("hole-from-left", patch.hole_from_left),
        ("hole-from-bottom", patch.hole_from_bottom),
        ("slit", patch.slit_length),
        ("cover-width", patch.cover_width),
        ("cover-height", patch.cover_height),
        ("cover-from-bottom", patch.cover_from_bottom),
    ];
    if let PatchEnd::Course { over_board, hidden_by, .. } = patch.end {
        lengths.extend([("over-board", over_board), ("hidden-by", hidden_by)]);
    }
    lengths
}
