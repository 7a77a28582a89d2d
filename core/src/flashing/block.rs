use num_rational::BigRational;
use num_traits::Signed;
use thiserror::Error;

use super::fixed::{Fixed, FixedSlope};
use crate::measure::{Division, Length, Rounding};
use crate::wall::Shape;

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
    /// What goes through it: a pipe, or a rectangle such as a box, or several lines taken together.
    pub through: Shape,
    /// Its center above the bottom of the finished block.
    pub center: Length,
    /// How steeply the cut rises toward the wall, in degrees.
    pub angle: BigRational,
    /// What the saw takes, square to the cut.
    pub kerf: Length,
    /// What is left open round it.
    pub gap: Length,
    /// The bits at hand for a round hole; `None` is any multiple of [`BlockLimits::bit_step`].
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
    /// The hole. Round, a drill bit of at least `pipe + 2 gap + kerf_up`, as the cut takes `kerf_up` out of the hole's
    /// height too; for a rectangle an opening of `width + 2 gap` by `height + 2 gap + kerf_up`, rounded up to the
    /// division.
    pub hole: Shape,
    /// How far water would have to climb in the cut: `thickness * tan(angle)`.
    pub climb: Length,
    /// The lower piece: `center - climb / 2` at the face, `center + climb / 2` at the wall.
    pub lower: CutHeights,
    /// The upper piece: the height less the lower one.
    pub upper: CutHeights,
    /// The opening through which each piece goes over the pipe: `sqrt(bit^2 - max(0, climb - kerf_up)^2)`, or the whole
    /// width of a rectangular hole.
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
    /// The least bit, or the least height of a rectangular opening, that goes on at the angle asked for, where the block
    /// is large enough for it.
    pub hole: Option<Length>,
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
    #[error("a hole {width:?} wide is not narrower than the block")]
    HoleTooWide {
        /// The width of the hole that is needed.
        width: Length,
    },
    /// The hole would leave the block at the bottom or the top: the block would fall apart.
    #[error("a hole {height:?} high does not lie inside the block")]
    HoleTooHigh {
        /// The height of the hole that is needed.
        height: Length,
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
}

impl Sizes {
    /// How far the hole is closed by the cut, measured up the block.
    fn closed(&self) -> Fixed {
        (self.climb.clone() - self.kerf_up.clone()).max(Fixed::zero())
    }
}

impl SplitRequest {
    fn sizes(&self, angle: &BigRational) -> Sizes {
        let slope = FixedSlope::of(angle);
        Sizes { kerf_up: Fixed::scaled(self.kerf, &slope.secant), climb: Fixed::scaled(self.thickness, &slope.tangent) }
    }

    /// What a hole for `size` takes, without the saw's loss.
    fn open(&self, size: Length) -> Length {
        size + self.gap + self.gap
    }

    /// The least that a hole must be high, its loss to the saw with it.
    fn need(&self, sizes: &Sizes) -> Fixed {
        Fixed::from(self.open(self.through.height())) + sizes.kerf_up.clone()
    }

    /// The steps in which holes are made.
    fn steps(&self) -> Division {
        match self.through {
            Shape::Round { .. } => Division::new(self.limits.bit_step.nm(), 1).unwrap_or_default(),
            Shape::Rectangle { .. } => self.division,
        }
    }

    /// The hole for what goes through.
    fn hole(&self, sizes: &Sizes) -> Result<Shape, BlockError> {
        let need = self.need(sizes);
        let stepped = need.round_up(self.steps()).ok_or(BlockError::TooBig)?;
        match (self.through, &self.bits) {
            (Shape::Rectangle { width, .. }, _) => {
                let width = self.division.round(self.open(width), Rounding::Up);
                Ok(Shape::Rectangle { width, height: stepped })
            }
            (Shape::Round { .. }, None) => Ok(Shape::Round { diameter: stepped }),
            (Shape::Round { .. }, Some(bits)) => {
                let enough = bits.iter().copied().filter(|bit| Fixed::from(*bit) >= need).min();
                enough.map(|diameter| Shape::Round { diameter }).ok_or(BlockError::NoBit { least: stepped })
            }
        }
    }

    /// How far apart the walls of a hole stand where its two halves meet; `None` where they do not meet.
    fn mouth(&self, hole: Shape, sizes: &Sizes) -> Option<Fixed> {
        let closed = sizes.closed();
        let open = match hole {
            Shape::Round { diameter } => Fixed::from(diameter).leg(&closed),
            Shape::Rectangle { width, .. } => Fixed::from(width),
        };
        (closed < Fixed::from(hole.height())).then_some(open)
    }

    /// Whether wood is left between a hole and the block's edges.
    fn holds(&self, hole: Shape, sizes: &Sizes) -> Result<(), BlockError> {
        if hole.width() >= self.width {
            return Err(BlockError::HoleTooWide { width: hole.width() });
        }
        let half = half_hole(hole, sizes);
        if self.stays(&half, Length::ZERO, |left, least| left > least) {
            Ok(())
        } else {
            Err(BlockError::HoleTooHigh { height: hole.height() })
        }
    }

    /// Whether what is left below and above the hole compares so with an amount.
    fn stays(&self, half: &Fixed, amount: Length, compares: fn(&Fixed, &Fixed) -> bool) -> bool {
        [self.center, self.height - self.center]
            .into_iter()
            .all(|from_center| compares(&(Fixed::from(from_center) - half.clone()), &Fixed::from(amount)))
    }

    fn goes_on(&self, angle: &BigRational) -> bool {
        let sizes = self.sizes(angle);
        self.hole(&sizes).is_ok_and(|hole| {
            let wide_enough = |mouth: Fixed| mouth >= Fixed::from(self.through.width());
            hole.width() < self.width && self.mouth(hole, &sizes).is_some_and(wide_enough)
        })
    }

    fn way_out(&self, sizes: &Sizes) -> Result<WayOut, BlockError> {
        let half = |count: i64| BigRational::new(count.into(), 2.into());
        // A flat cut always goes on: the mouth is then the whole hole.
        let steepest = (ANGLES.0 * 2..=ANGLES.1 * 2).rev().find(|&count| {
            let angle = half(count);
            angle <= self.angle && self.goes_on(&angle)
        });
        Ok(WayOut { half_degrees: steepest.unwrap_or(0), hole: self.least_hole(sizes)? })
    }

    /// The least bit, or the least height of an opening, that goes on.
    fn least_hole(&self, sizes: &Sizes) -> Result<Option<Length>, BlockError> {
        let closed = sizes.closed();
        let (need, steps) = (self.need(sizes), self.steps());
        let round_up = |least: &Fixed| least.round_up(steps).ok_or(BlockError::TooBig);
        let hole = match self.through {
            Shape::Round { diameter } => {
                Shape::Round { diameter: round_up(&Fixed::from(diameter).hypotenuse(&closed).max(need))? }
            }
            Shape::Rectangle { width, .. } => {
                let stepped = round_up(&need.max(closed.clone()))?;
                // An opening as high as what closes it is closed.
                let next = round_up(&(Fixed::from(stepped) + Fixed::from(Length::from_nm(1))))?;
                let height = if Fixed::from(stepped) > closed { stepped } else { next };
                Shape::Rectangle { width: self.division.round(self.open(width), Rounding::Up), height }
            }
        };
        Ok(self.holds(hole, sizes).is_ok().then_some(hole.height()))
    }

    fn check(&self) -> Result<(), BlockError> {
        let bits = self.bits.iter().flatten();
        let (across, up) = (self.through.width(), self.through.height());
        let positive = [self.width, self.height, self.thickness, across, up, self.limits.bit_step];
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

/// In the finished block the hole is lower than in the blank by what the saw took.
fn half_hole(hole: Shape, sizes: &Sizes) -> Fixed {
    (Fixed::from(hole.height()) - sizes.kerf_up.clone()).half()
}

impl SplitBlock {
    /// The block for a request.
    ///
    /// # Errors
    /// [`BlockError`]; where more than one thing is wrong, the width is named before the height, the height before the
    /// center, the center before the angle, and the bits last.
    pub fn lay_out(request: &SplitRequest) -> Result<Self, BlockError> {
        request.check()?;
        let sizes = request.sizes(&request.angle);
        let hole = request.hole(&sizes);
        if let Ok(hole) = hole {
            request.holds(hole, &sizes)?;
        }
        let rounded = |fixed: Fixed| fixed.round().ok_or(BlockError::TooBig);
        let (face, back) =
            (Fixed::from(request.center) - sizes.climb.half(), Fixed::from(request.center) + sizes.climb.half());
        let leaves = face <= Fixed::zero() || back >= Fixed::from(request.height);
        let height = Fixed::from(request.height);
        let upper = CutHeights { face: rounded(height.clone() - face.clone())?, back: rounded(height - back.clone())? };
        let lower = CutHeights { face: rounded(face)?, back: rounded(back)? };
        if leaves {
            return Err(BlockError::CutLeaves { face: lower.face, back: lower.back });
        }
        let hole = hole?;
        let Some(open) = request.mouth(hole, &sizes) else {
            return Err(BlockError::RingClosed(request.way_out(&sizes)?));
        };
        let mouth = rounded(open.clone())?;
        if open < Fixed::from(request.through.width()) {
            return Err(BlockError::MouthNarrow { mouth, way_out: request.way_out(&sizes)? });
        }
        let blank = Fixed::from(request.height) + sizes.kerf_up.clone();
        let warnings = warnings(request, &sizes, hole, &open);
        Ok(Self {
            kerf_up: rounded(sizes.kerf_up.clone())?,
            blank_height: blank.round_up(request.division).ok_or(BlockError::TooBig)?,
            drill_at: rounded(Fixed::from(request.center) + sizes.kerf_up.half())?,
            hole,
            climb: rounded(sizes.climb)?,
            lower,
            upper,
            mouth,
            warnings,
        })
    }
}

fn warnings(request: &SplitRequest, sizes: &Sizes, hole: Shape, open: &Fixed) -> Vec<BlockWarning> {
    let limits = request.limits;
    let beside = request.width - hole.width() >= limits.side_least + limits.side_least;
    let above_and_below = request.stays(&half_hole(hole, sizes), limits.side_least, |left, least| left >= least);
    let deep_enough = |boards: Length| request.thickness >= boards + boards + limits.thickness_margin;
    let tight = match request.through {
        Shape::Round { diameter } => *open < Fixed::from(diameter + request.gap),
        // Each piece goes over with the whole width of its opening, whose play was asked for.
        Shape::Rectangle { .. } => false,
    };
    [
        tight.then_some(BlockWarning::MouthTight),
        (!beside || !above_and_below).then_some(BlockWarning::ThinSide),
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

    fn round(diameter: Length) -> Shape {
        Shape::Round { diameter }
    }

    fn whole(degrees: i64) -> BigRational {
        BigRational::from_integer(degrees.into())
    }

    fn one_inch() -> SplitRequest {
        SplitRequest {
            width: inches(6, 0),
            height: inches(7, 32),
            thickness: inches(1, 0),
            through: round(inches(1, 0)),
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
        assert_eq!(block.hole, round(inches(1, 32)));
        assert!(block.warnings.is_empty());
    }

    #[test]
    fn a_bit_that_is_just_enough_is_not_rounded_up() {
        // kerf_up at 60 degrees is twice the kerf: 1 + 2/8 + 2/16 = 1 3/8 in.
        let request = SplitRequest { angle: whole(60), kerf: inches(0, 4), thickness: inches(0, 48), ..one_inch() };
        let sizes = request.sizes(&request.angle);
        assert_eq!(request.hole(&sizes), Ok(round(inches(1, 24))));
        let flat = SplitRequest { angle: whole(0), kerf: inches(0, 8), ..one_inch() };
        let block = SplitBlock::lay_out(&flat).unwrap();
        assert_eq!((block.hole, block.mouth, block.climb), (round(inches(1, 24)), inches(1, 24), Length::ZERO));
        assert_eq!(block.blank_height, inches(7, 40));
    }

    #[test]
    fn a_thick_block_stays_a_ring_and_says_what_goes_on() {
        let thick = SplitRequest { thickness: inches(2, 0), height: inches(9, 0), center: inches(4, 32), ..one_inch() };
        let Err(BlockError::RingClosed(out)) = SplitBlock::lay_out(&thick) else { panic!("a ring") };
        let at = |half: i64| SplitRequest { angle: BigRational::new(half.into(), 2.into()), ..thick.clone() };
        assert!(SplitBlock::lay_out(&at(out.half_degrees)).is_ok());
        assert!(SplitBlock::lay_out(&at(out.half_degrees + 1)).is_err());
        let bit = out.hole.unwrap();
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
            (SplitRequest { width: inches(1, 32), ..base.clone() }, BlockError::HoleTooWide { width: inches(1, 32) }),
            (
                SplitRequest { center: inches(1, 0), thickness: inches(2, 0), ..base.clone() },
                BlockError::CutLeaves { face: Length::ZERO, back: inches(2, 0) },
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

    /// A box 4 1/2 x 2 1/2 in: 3/16 in of gaps, and 3/32 in / cos 45 = 0.1326 in of saw cut in the height.
    fn box_block() -> SplitRequest {
        SplitRequest {
            width: inches(10, 0),
            height: inches(11, 0),
            thickness: inches(0, 56),
            through: Shape::Rectangle { width: inches(4, 32), height: inches(2, 32) },
            center: inches(5, 0),
            gap: inches(0, 6),
            ..one_inch()
        }
    }

    #[test]
    fn an_opening_takes_both_sizes_and_the_saw_cut() {
        let block = SplitBlock::lay_out(&box_block()).unwrap();
        assert_eq!(block.hole, Shape::Rectangle { width: inches(4, 44), height: inches(2, 56) });
        assert_eq!((block.mouth, block.climb), (inches(4, 44), inches(0, 56)));
        assert!(block.warnings.is_empty());
    }

    /// Without a kerf and at 45 degrees, a block as thick as its opening is high is just closed.
    #[test]
    fn an_opening_that_the_cut_closes_is_a_ring() {
        let ring = SplitRequest {
            kerf: Length::ZERO,
            gap: Length::ZERO,
            thickness: inches(2, 32),
            board_thickness: None,
            ..box_block()
        };
        let Err(BlockError::RingClosed(out)) = SplitBlock::lay_out(&ring) else { panic!("a ring") };
        assert_eq!(out, WayOut { half_degrees: 89, hole: Some(inches(2, 36)) });
        let flatter = SplitRequest { angle: BigRational::new(89.into(), 2.into()), ..ring.clone() };
        assert!(SplitBlock::lay_out(&flatter).is_ok());
        assert!(SplitBlock::lay_out(&SplitRequest { thickness: inches(2, 31), ..ring }).is_ok());
    }

    /// The hole is 1 1/2 in, of which the saw takes 0.1326: half of the rest is 0.6837 in.
    #[test]
    fn a_hole_that_reaches_the_bottom_or_the_top_breaks_the_block() {
        let low = |center: Length| SplitBlock::lay_out(&SplitRequest { center, thickness: inches(0, 8), ..one_inch() });
        assert_eq!(low(inches(0, 43)), Err(BlockError::HoleTooHigh { height: inches(1, 32) }));
        assert!(low(inches(0, 44)).is_ok());
        let top = inches(7, 32) - inches(0, 43);
        assert_eq!(low(top), Err(BlockError::HoleTooHigh { height: inches(1, 32) }));
        let wide = SplitRequest { width: inches(4, 44), ..box_block() };
        assert_eq!(SplitBlock::lay_out(&wide), Err(BlockError::HoleTooWide { width: inches(4, 44) }));
        let touching = SplitRequest {
            kerf: Length::ZERO,
            gap: Length::ZERO,
            center: inches(1, 16),
            thickness: inches(1, 0),
            ..box_block()
        };
        assert_eq!(SplitBlock::lay_out(&touching), Err(BlockError::HoleTooHigh { height: inches(2, 32) }));
    }

    proptest! {
        #[test]
        fn nothing_makes_it_panic(
            sizes in proptest::array::uniform8(-2_i64..1_000_000_000_000_001),
            tenths in -10_i64..800,
        ) {
            let [width, height, thickness, pipe, center, kerf, gap, bit] = sizes.map(Length::from_nm);
            let shapes = [round(pipe), Shape::Rectangle { width: pipe, height: bit }];
            let angle = BigRational::new(tenths.into(), 10.into());
            for (through, bits) in shapes.iter().flat_map(|shape| [(*shape, None), (*shape, Some(vec![bit]))]) {
                let angle = angle.clone();
                let request = SplitRequest { width, height, thickness, through, center, angle, kerf, gap, bits, ..one_inch() };
                if let Ok(block) = SplitBlock::lay_out(&request) {
                    prop_assert_eq!(block.lower.face + block.upper.face, height);
                    prop_assert!(block.lower.face <= block.lower.back);
                }
            }
        }
    }
}
