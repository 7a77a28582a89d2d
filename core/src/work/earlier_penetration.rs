//! What the first books hashed for a penetration's sign-offs. Kept so that what was signed there still holds.

use crate::book::Field;
use crate::flashing::{Patch, Pipe};
use crate::measure::Length;
use crate::steps::PenetrationDetail;
use crate::store::Hash;
use crate::wall::Shape;

use super::error::Result;
use super::{MountingBlock, PenetrationSite};

/// Over blocks and trim wider than this the first books had a head flashing where nobody said otherwise.
const HEAD_OVER: Length = Length::from_inches(6);

impl PenetrationSite {
    /// The hash of the penetration as the first books told it: the joint under it sealed where nobody said otherwise,
    /// every patch slit, what is not round cut round by its smaller side, and a block no thicker than it must be, whatever
    /// is sold.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn earlier_hash(&self) -> Result<Hash> {
        let record = &self.penetration.record;
        let wide = self.penetration.block.is_some_and(|block| block.x.length() > HEAD_OVER);
        let detail = PenetrationDetail {
            head_flashing: record.yes(Field::HeadFlashing).unwrap_or(wide),
            bottom_open: record.yes(Field::BottomOpen) == Some(true),
            ..self.detail
        };
        let thickness = match record.length(Field::BlockThickness) {
            Some(thickness) => thickness,
            None => self.work.least_block_thickness()?,
        };
        let block = self.penetration.block.map(|block| MountingBlock { thickness, ..block });
        let patch = self.earlier_patch()?;
        Ok(Hash::of(self.canonical_of(&detail, block, patch.as_ref()).detail_text()))
    }

    fn earlier_patch(&self) -> Result<Option<Patch>> {
        let shape = self.penetration.shape;
        let pipe = Pipe { shape: Shape::Round { diameter: shape.width().min(shape.height()) }, ..self.pipe() };
        Ok(self.patch_round(pipe, true)?.and_then(std::result::Result::ok))
    }
}
