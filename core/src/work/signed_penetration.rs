//! What a penetration is signed for.

use crate::flashing::Patch;
use crate::steps::{Canonical, PenetrationDetail};
use crate::store::Hash;

use super::error::Result;
use super::patch::patch_lengths;
use super::{MountingBlock, PenetrationSite};

impl PenetrationSite {
    /// What the sign-offs are made under: place, block and patch, so that a step that was signed for other sizes says so.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn canonical(&self) -> Result<Canonical> {
        // A patch that cannot be cut yet has no sizes to sign for.
        let patch = self.patch()?.and_then(std::result::Result::ok);
        Ok(self.canonical_of(&self.detail, self.penetration.block, patch.as_ref()))
    }

    /// What is signed for of a detail with its block and its patch.
    pub(super) fn canonical_of(
        &self,
        detail: &PenetrationDetail,
        block: Option<MountingBlock>,
        patch: Option<&Patch>,
    ) -> Canonical {
        let centre = self.penetration.centre;
        let mut detail = detail.canonical().length("centre.x", centre.x).length("centre.y", centre.y);
        if let Some(block) = block {
            detail = detail
                .length("block.width", block.x.length())
                .length("block.height", block.y.length())
                .length("block.thickness", block.thickness)
                .length("block.hole", block.hole);
        }
        let lengths = patch.into_iter().flat_map(patch_lengths);
        lengths.fold(detail, |detail, (code, length)| detail.length(&format!("patch.{code}"), length))
    }

    /// The hash of [`PenetrationSite::canonical`].
    ///
    /// # Errors
    /// As there.
    pub fn hash(&self) -> Result<Hash> {
        Ok(Hash::of(self.canonical()?.detail_text()))
    }
}
