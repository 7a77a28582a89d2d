use num_rational::BigRational;
use num_traits::Signed;
use thiserror::Error;

use super::fixed::{Fixed, Slope};
use crate::measure::{Division, Length};

/// The flattest and the steepest cut through a split block, in degrees.
pub const ANGLES: (i64, i64) = (0, 75);

/// Sizes a block is judged by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BlockLimits {
    /// The steps in which drill bits are sold.
    pub bit_step: Length,
    /// What must stay beside, above and below the hole.
    pub side_least: Length,
    /// By how much the block must be thicker than the two boards that stand between it and the wall.
    pub thickness_margin: Length,
}

impl Default for BlockLimits {
    /// Bits in eighths of an inch, 1/2 in beside the hole, 1/4 in past two boards.
    fn default() -> Self {
        Self {
            bit_step: Length::from_inches_64(0, 8),
            side_least: Length::from_inches_64(0, 32),
            thickness_margin: Length::from_inches_64(0, 16),
        }
    }
}

/// What a split mounting block is made from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SplitRequest {
    /// From left to right; the hole is in the middle.
    pub width: Length,
    /// The finished height, pieces closed.
    pub height: Length,
    /// From the wall to the face.
    pub thickness: Length,
    /// The outer diameter of the pipe.
    pub pipe: Length,
    /// The pipe's center above the bottom of the finished block.
    pub center: Length,
    /// How steeply the cut rises toward the wall, in degrees.
    pub angle: BigRational,
    /// What the saw takes, square to the cut.
    pub kerf: Length,
    /// What is left open round the pipe.
    pub gap: Length,
    /// The bits at hand; `None` is any multiple of [`BlockLimits::bit_step`].
    pub bits: Option<Vec<Length>>,
    /// The thickness of the boards that butt on the block, where it is to be checked.
    pub board_thickness: Option<Length>,
    /// The smallest mark used on the tape.
    pub division: Division,
    /// What the block is judged by.
    pub limits: BlockLimits,
}

/// The two heights of a piece of the block at the cut, above the bottom of the lower or below the top of the upper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CutHeights {
    /// At the face.
    pub face: Length,
    /// At the wall.
    pub back: Length,
}

/// A split mounting block.
///
/// All sizes follow from the exact angle; each is rounded to the nearest nanometre by itself, once. Only `upper` is
/// taken from the rounded `lower`, so that the two pieces close on the height to the nanometre.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SplitBlock {
    /// What the saw takes out of the height: `kerf / cos(angle)`.
    pub kerf_up: Length,
    /// The blank before it is cut, rounded up to the division; the excess comes off the upper piece.
    pub blank_height: Length,
    /// The center of the hole above the bottom of the blank: `center + kerf_up / 2`.
    pub drill_at: Length,
    /// The drill bit: at least `pipe + 2 gap + kerf_up`, as the cut takes `kerf_up` out of the hole's height too.
    pub bit: Length,
    /// How far water would have to climb in the cut: `thickness * tan(angle)`.
    pub climb: Length,
    /// The lower piece: `center - climb / 2` at the face, `center + climb / 2` at the wall.
    pub lower: CutHeights,
    /// The upper piece: the height less the lower one.
    pub upper: CutHeights,
    /// The opening through which each piece goes over the pipe: `sqrt(bit^2 - max(0, climb - kerf_up)^2)`.
    pub mouth: Length,
    /// What is doubtful about it.
    pub warnings: Vec<BlockWarning>,
}

/// What is doubtful about a block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BlockWarning {
    /// The mouth leaves less play than the gap.
    MouthTight,
    /// Less than [`BlockLimits::side_least`] stays beside, above or below the hole.
    ThinSide,
    /// Lapped boards stand out past the block: they stand two thicknesses off the wall and must butt on its edge.
    Shallow,
}

/// A way out where the pieces do not go over the pipe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WayOut {
    /// The steepest angle, in half degrees and not over the one asked for, at which the pieces go on.
    pub half_degrees: i64,
    /// The least bit that goes on at the angle asked for, where the block is wide enough for it.
    pub bit: Option<Length>,
}

impl WayOut {
    /// The angle's text, such as `38` or `38.5`.
    pub fn angle_text(&self) -> String {
        format!("{}{}", self.half_degrees / 2, if self.half_degrees % 2 == 0 { "" } else { ".5" })
    }
}

/// Why a block cannot be made.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum BlockError {
    /// A size that must be over zero is not.
    #[error("a block's sizes must be over zero, its kerf and gap not under zero")]
    NotPositive,
    /// The angle is outside [`ANGLES`].
    #[error("the angle of the cut must lie between 0 and 75 degrees")]
    Angle,
    /// The hole would leave the block at the sides.
    #[error("a bit of {bit:?} is not narrower than the block")]
    BitTooWide {
        /// The bit that is needed.
        bit: Length,
    },
    /// The cut would leave the block at the bottom or the top.
    #[error("the cut leaves the block: from {face:?} at the face to {back:?} at the wall")]
    CutLeaves {
        /// The height of the cut at the face.
        face: Length,
        /// The height of the cut at the wall.
        back: Length,
    },
    /// No bit at hand is wide enough.
    #[error("no bit at hand is at least {least:?}")]
    NoBit {
        /// The least bit that would do.
        least: Length,
    },
    /// Looked at from below, the two halves of the hole no longer meet: each piece is a closed ring.
    #[error("the cut climbs past the hole, so each piece stays a closed ring")]
    RingClosed(WayOut),
    /// The opening of each piece is narrower than the pipe.
    #[error("the opening of each piece, {mouth:?}, is narrower than the pipe")]
    MouthNarrow {
        /// The opening.
        mouth: Length,
        /// What goes on instead.
        way_out: WayOut,
    },
    /// A size beyond what a length can hold.
    #[error("a size is too big")]
    TooBig,
}

/// The sizes of a block before rounding and judging.
struct Sizes {
    kerf_up: Fixed,
    climb: Fixed,
    need: Fixed,
}

impl SplitRequest {
    fn sizes(&self, angle: &BigRational) -> Sizes {
        let slope = Slope::of(angle);
        let kerf_up = Fixed::scaled(self.kerf, &slope.secant);
        let climb = Fixed::scaled(self.thickness, &slope.tangent);
        let need = Fixed::from(self.pipe + self.gap + self.gap) + kerf_up.clone();
        Sizes { kerf_up, climb, need }
    }

    /// The bit for a need; `Err` holds the least that would do.
    fn bit(&self, need: &Fixed) -> Result<Length, BlockError> {
        let stepped = need.round_up(self.bit_steps()).ok_or(BlockError::TooBig)?;
        match &self.bits {
            None => Ok(stepped),
            Some(bits) => {
                let enough = bits.iter().copied().filter(|bit| Fixed::from(*bit) >= *need).min();
                enough.ok_or(BlockError::NoBit { least: stepped })
            }
        }
    }

    fn bit_steps(&self) -> Division {
        Division::new(self.limits.bit_step.nm(), 1).unwrap_or_default()
    }

    /// How far the hole is closed by the cut, measured up the block.
    fn closed(sizes: &Sizes) -> Fixed {
        (sizes.climb.clone() - sizes.kerf_up.clone()).max(Fixed::zero())
    }

    fn goes_on(&self, angle: &BigRational) -> bool {
        let sizes = self.sizes(angle);
        self.bit(&sizes.need)
            .is_ok_and(|bit| bit < self.width && Fixed::from(bit).leg(&Self::closed(&sizes)) >= Fixed::from(self.pipe))
    }

    fn way_out(&self, sizes: &Sizes) -> Result<WayOut, BlockError> {
        let half = |count: i64| BigRational::new(count.into(), 2.into());
        // A flat cut always goes on: the mouth is then the whole bit.
        let steepest = (ANGLES.0 * 2..=ANGLES.1 * 2).rev().find(|&count| {
            let angle = half(count);
            angle <= self.angle && self.goes_on(&angle)
        });
        let least = Fixed::from(self.pipe).hypotenuse(&Self::closed(sizes)).max(sizes.need.clone());
        let bit = least.round_up(self.bit_steps()).ok_or(BlockError::TooBig)?;
        Ok(WayOut { half_degrees: steepest.unwrap_or(0), bit: (bit < self.width).then_some(bit) })
    }

    fn check(&self) -> Result<(), BlockError> {
        let bits = self.bits.iter().flatten();
        let positive = [self.width, self.height, self.thickness, self.pipe, self.limits.bit_step];
        if positive.iter().chain(bits).chain(&self.board_thickness).any(|size| !size.is_positive())
            || self.kerf.is_negative()
            || self.gap.is_negative()
        {
            return Err(BlockError::NotPositive);
        }
        let within = |least: i64, most: i64| {
            self.angle >= BigRational::from_integer(least.into())
                && self.angle <= BigRational::from_integer(most.into())
        };
        if self.angle.is_negative() || !within(ANGLES.0, ANGLES.1) {
            return Err(BlockError::Angle);
        }
        Ok(())
    }
}

impl SplitBlock {
    /// The block for a request.
    ///
    /// # Errors
    /// [`BlockError`]; where more than one thing is wrong, the width is named before the center, the center before the
    /// angle, and the bits last.
    pub fn lay_out(request: &SplitRequest) -> Result<Self, BlockError> {
        request.check()?;
        let sizes = request.sizes(&request.angle);
        let bit = request.bit(&sizes.need);
        if let Ok(bit) = bit
            && bit >= request.width
        {
            return Err(BlockError::BitTooWide { bit });
        }
        let rounded = |fixed: Fixed| fixed.round().ok_or(BlockError::TooBig);
        let (face, back) =
            (Fixed::from(request.center) - sizes.climb.half(), Fixed::from(request.center) + sizes.climb.half());
        let leaves = face <= Fixed::zero() || back >= Fixed::from(request.height);
        let lower = CutHeights { face: rounded(face)?, back: rounded(back)? };
        if leaves {
            return Err(BlockError::CutLeaves { face: lower.face, back: lower.back });
        }
        let bit = bit?;
        let closed = SplitRequest::closed(&sizes);
        if closed >= Fixed::from(bit) {
            return Err(BlockError::RingClosed(request.way_out(&sizes)?));
        }
        let open = Fixed::from(bit).leg(&closed);
        let mouth = rounded(open.clone())?;
        if open < Fixed::from(request.pipe) {
            return Err(BlockError::MouthNarrow { mouth, way_out: request.way_out(&sizes)? });
        }
        let blank = Fixed::from(request.height) + sizes.kerf_up.clone();
        let warnings = warnings(request, &sizes, bit, &open);
        Ok(Self {
            kerf_up: rounded(sizes.kerf_up.clone())?,
            blank_height: blank.round_up(request.division).ok_or(BlockError::TooBig)?,
            drill_at: rounded(Fixed::from(request.center) + sizes.kerf_up.half())?,
            bit,
            climb: rounded(sizes.climb)?,
            lower,
            upper: CutHeights { face: request.height - lower.face, back: request.height - lower.back },
            mouth,
            warnings,
        })
    }
}

fn warnings(request: &SplitRequest, sizes: &Sizes, bit: Length, open: &Fixed) -> Vec<BlockWarning> {
    let limits = request.limits;
    // In the finished block the hole is lower than wide by what the saw took.
    let half_hole = (Fixed::from(bit) - sizes.kerf_up.clone()).half();
    let stays = |from_center: Length| Fixed::from(from_center) - half_hole.clone() >= Fixed::from(limits.side_least);
    let beside = request.width - bit >= limits.side_least + limits.side_least;
    let thin = !beside || !stays(request.center) || !stays(request.height - request.center);
    let deep_enough = |boards: Length| request.thickness >= boards + boards + limits.thickness_margin;
    [
        (*open < Fixed::from(request.pipe + request.gap)).then_some(BlockWarning::MouthTight),
        thin.then_some(BlockWarning::ThinSide),
        request.board_thickness.filter(|boards| !deep_enough(*boards)).map(|_| BlockWarning::Shallow),
    ]
    .into_iter()
    .flatten()
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn inches(whole: i64, sixty_fourths: i64) -> Length {
        Length::from_inches_64(whole, sixty_fourths)
    }

    fn whole(degrees: i64) -> BigRational {
        BigRational::from_integer(degrees.into())
    }

    fn one_inch() -> SplitRequest {
        SplitRequest {
            width: inches(6, 0),
            height: inches(7, 32),
            thickness: inches(1, 0),
            pipe: inches(1, 0),
            center: inches(3, 48),
            angle: whole(45),
            kerf: inches(0, 6),
            gap: inches(0, 8),
            bits: None,
            board_thickness: None,
            division: Division::SIXTEENTH,
            limits: BlockLimits::default(),
        }
    }

    #[test]
    fn a_block_at_45_degrees_climbs_its_thickness() {
        let block = SplitBlock::lay_out(&one_inch()).unwrap();
        assert_eq!(block.climb, inches(1, 0));
        // The square of kerf_up is twice the square of the kerf: the nearest whole nanometre by integers alone.
        let kerf = i128::from(inches(0, 6).nm());
        let up = i128::from(block.kerf_up.nm());
        assert!((2 * up - 1).pow(2) <= 8 * kerf * kerf && 8 * kerf * kerf < (2 * up + 1).pow(2));
        assert_eq!(block.lower, CutHeights { face: inches(3, 16), back: inches(4, 16) });
        assert_eq!(block.upper, CutHeights { face: inches(4, 16), back: inches(3, 16) });
        assert_eq!(block.bit, inches(1, 32));
        assert!(block.warnings.is_empty());
    }

    #[test]
    fn a_bit_that_is_just_enough_is_not_rounded_up() {
        // kerf_up at 60 degrees is twice the kerf: 1 + 2/8 + 2/16 = 1 3/8 in.
        let request = SplitRequest { angle: whole(60), kerf: inches(0, 4), thickness: inches(0, 48), ..one_inch() };
        let sizes = request.sizes(&request.angle);
        assert_eq!(request.bit(&sizes.need), Ok(inches(1, 24)));
        let flat = SplitRequest { angle: whole(0), kerf: inches(0, 8), ..one_inch() };
        let block = SplitBlock::lay_out(&flat).unwrap();
        assert_eq!((block.bit, block.mouth, block.climb), (inches(1, 24), inches(1, 24), Length::ZERO));
        assert_eq!(block.blank_height, inches(7, 40));
    }

    #[test]
    fn a_thick_block_stays_a_ring_and_says_what_goes_on() {
        let thick = SplitRequest { thickness: inches(2, 0), height: inches(9, 0), center: inches(4, 32), ..one_inch() };
        let Err(BlockError::RingClosed(out)) = SplitBlock::lay_out(&thick) else { panic!("a ring") };
        let at = |half: i64| SplitRequest { angle: BigRational::new(half.into(), 2.into()), ..thick.clone() };
        assert!(SplitBlock::lay_out(&at(out.half_degrees)).is_ok());
        assert!(SplitBlock::lay_out(&at(out.half_degrees + 1)).is_err());
        let bit = out.bit.unwrap();
        let with = |bit: Length| SplitRequest { bits: Some(vec![bit]), ..thick.clone() };
        assert!(SplitBlock::lay_out(&with(bit)).is_ok());
        assert!(SplitBlock::lay_out(&with(bit - inches(0, 8))).is_err());
    }

    #[test]
    fn a_narrow_mouth_is_refused_and_a_tight_one_is_told() {
        // kerf 0, climb 3/4: with a 1 1/4 in bit the mouth is 1 in (3-4-5), just the pipe.
        let exact = SplitRequest {
            kerf: Length::ZERO,
            thickness: inches(0, 48),
            bits: Some(vec![inches(1, 16)]),
            ..one_inch()
        };
        let block = SplitBlock::lay_out(&exact).unwrap();
        assert_eq!(block.mouth, inches(1, 0));
        assert_eq!(block.warnings, [BlockWarning::MouthTight]);
        let narrow = SplitRequest { thickness: inches(0, 48) + Length::from_nm(1), ..exact };
        assert!(matches!(SplitBlock::lay_out(&narrow), Err(BlockError::MouthNarrow { .. })));
    }

    #[test]
    fn says_what_cannot_be() {
        let base = one_inch();
        for (request, want) in [
            (SplitRequest { angle: BigRational::new(751.into(), 10.into()), ..base.clone() }, BlockError::Angle),
            (SplitRequest { kerf: -inches(0, 1), ..base.clone() }, BlockError::NotPositive),
            (SplitRequest { width: inches(1, 32), ..base.clone() }, BlockError::BitTooWide { bit: inches(1, 32) }),
            (
                SplitRequest { center: inches(0, 32), ..base.clone() },
                BlockError::CutLeaves { face: Length::ZERO, back: inches(1, 0) },
            ),
            (
                SplitRequest { bits: Some(vec![inches(1, 0)]), ..base.clone() },
                BlockError::NoBit { least: inches(1, 32) },
            ),
        ] {
            assert_eq!(SplitBlock::lay_out(&request), Err(want));
        }
    }

    #[test]
    fn warns_of_thin_sides_and_a_shallow_block() {
        let thin = SplitRequest { width: inches(2, 31), ..one_inch() };
        assert_eq!(SplitBlock::lay_out(&thin).unwrap().warnings, [BlockWarning::ThinSide]);
        let just = SplitRequest { width: inches(2, 32), ..one_inch() };
        assert!(SplitBlock::lay_out(&just).unwrap().warnings.is_empty());
        let shallow = SplitRequest { board_thickness: Some(inches(0, 25)), ..one_inch() };
        assert_eq!(SplitBlock::lay_out(&shallow).unwrap().warnings, [BlockWarning::Shallow]);
        let deep = SplitRequest { board_thickness: Some(inches(0, 24)), ..one_inch() };
        assert!(SplitBlock::lay_out(&deep).unwrap().warnings.is_empty());
    }

    proptest! {
        #[test]
        fn nothing_makes_it_panic(
            sizes in proptest::array::uniform8(-2_i64..1_000_000_000_000_001),
            tenths in -10_i64..800,
        ) {
            let [width, height, thickness, pipe, center, kerf, gap, bit] = sizes.map(Length::from_nm);
            let angle = BigRational::new(tenths.into(), 10.into());
            for bits in [None, Some(vec![bit])] {
                let request = SplitRequest { width, height, thickness, pipe, center, angle: angle.clone(), kerf, gap, bits, ..one_inch() };
                if let Ok(block) = SplitBlock::lay_out(&request) {
                    prop_assert_eq!(block.lower.face + block.upper.face, height);
                    prop_assert!(block.lower.face <= block.lower.back);
                }
            }
        }
    }
}
