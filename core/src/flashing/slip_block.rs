use thiserror::Error;

use super::block::BlockLimits;
use crate::measure::{Division, Length, Rounding};
use crate::wall::Shape;

/// What a block that slips over the fixture is made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SlipRequest {
    /// From left to right; the hole is in the middle.
    pub width: Length,
    /// From bottom to top.
    pub height: Length,
    /// From the wall to the face.
    pub thickness: Length,
    /// What goes through it.
    pub through: Shape,
    /// The fixture's center above the bottom of the block.
    pub center: Length,
    /// What is left open round the fixture.
    pub gap: Length,
    /// The thickness of the boards that butt on the block.
    pub board_thickness: Length,
    /// What the block is judged by.
    pub limits: BlockLimits,
}

/// A one-piece mounting block: no split, no kerf.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SlipBlock {
    /// The hole: a bit in its steps, or a cut-out.
    pub hole: Shape,
    /// The hole's center above the bottom of the block.
    pub hole_at: Length,
    /// Whether less than the least stays beside, above or below the hole.
    pub thin_side: bool,
    /// Whether lapped boards stand out past the block.
    pub shallow: bool,
}

/// Why a one-piece block cannot be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum SlipError {
    /// A size that must be over zero is not.
    #[error("a block's sizes must be over zero, its gap not under zero")]
    NotPositive,
    /// The hole leaves the block.
    #[error("the hole {hole:?} leaves the block")]
    HoleLeaves {
        /// The hole that is needed.
        hole: Shape,
    },
}

impl SlipBlock {
    /// The block for a request.
    ///
    /// # Errors
    /// [`SlipError`].
    pub fn lay_out(request: &SlipRequest) -> Result<Self, SlipError> {
        let SlipRequest { width, height, thickness, through, center, gap, board_thickness, limits } = *request;
        let sizes = [width, height, thickness, through.width(), through.height(), board_thickness, limits.bit_step];
        if sizes.iter().any(|size| !size.is_positive()) || gap.is_negative() {
            return Err(SlipError::NotPositive);
        }
        let open = |size: Length| size + gap + gap;
        let hole = match through {
            Shape::Round { diameter } => {
                let steps = Division::new(limits.bit_step.nm(), 1).unwrap_or_default();
                Shape::Round { diameter: steps.round(open(diameter), Rounding::Up) }
            }
            Shape::Rectangle { width, height } => Shape::Rectangle { width: open(width), height: open(height) },
        };
        // Twice what stays on each side, so that no half is rounded.
        let below = center + center - hole.height();
        let above = height + height - center - center - hole.height();
        let least = [width - hole.width(), below, above].into_iter().fold(width, Ord::min);
        if !least.is_positive() {
            return Err(SlipError::HoleLeaves { hole });
        }
        let thin_side = least < limits.side_least + limits.side_least;
        let shallow = thickness < board_thickness + board_thickness + limits.thickness_margin;
        Ok(Self { hole, hole_at: center, thin_side, shallow })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(whole: i64, sixty_fourths: i64) -> Length {
        Length::from_inches_64(whole, sixty_fourths)
    }

    fn request() -> SlipRequest {
        SlipRequest {
            width: inches(6, 0),
            height: inches(8, 0),
            thickness: inches(1, 0),
            through: Shape::Round { diameter: inches(1, 3) },
            center: inches(4, 0),
            gap: inches(0, 8),
            board_thickness: inches(0, 20),
            limits: BlockLimits::default(),
        }
    }

    #[test]
    fn a_round_hole_takes_the_next_bit() {
        let block = SlipBlock::lay_out(&request()).unwrap();
        assert_eq!(block.hole, Shape::Round { diameter: inches(1, 24) });
        assert!(!block.thin_side && !block.shallow);
    }

    #[test]
    fn a_box_takes_its_own_size_and_the_gaps() {
        let through = Shape::Rectangle { width: inches(3, 0), height: inches(5, 0) };
        let block = SlipBlock::lay_out(&SlipRequest { through, ..request() }).unwrap();
        assert_eq!(block.hole, Shape::Rectangle { width: inches(3, 16), height: inches(5, 16) });
        let wide = Shape::Rectangle { width: inches(5, 48), height: inches(5, 0) };
        assert!(matches!(
            SlipBlock::lay_out(&SlipRequest { through: wide, ..request() }),
            Err(SlipError::HoleLeaves { .. })
        ));
    }

    #[test]
    fn thin_and_shallow_blocks_are_told() {
        let low = SlipBlock::lay_out(&SlipRequest { center: inches(1, 0), ..request() }).unwrap();
        assert!(low.thin_side);
        assert!(SlipBlock::lay_out(&SlipRequest { thickness: inches(0, 48), ..request() }).unwrap().shallow);
    }
}
