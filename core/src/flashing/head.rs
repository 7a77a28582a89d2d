use thiserror::Error;

use super::fixed::Fixed;
use super::{Profile, WallRectangle};
use crate::measure::Length;
use crate::rules::{RuleError, RuleSet, keys};
use crate::wall::Finish;

/// Whether a block or trim of a width gets a head flashing where nobody says otherwise: by the rules, a narrow block's
/// top holds no water, and codes ask for one over all projecting trim. A collar has none.
///
/// # Errors
/// A rule that is missing or of another kind.
pub fn head_needed(rules: &RuleSet, finish: Finish, width: Length) -> Result<bool, RuleError> {
    let key = match finish {
        Finish::Block => keys::HEAD_FLASHING_OVER_BLOCK,
        Finish::Trim => keys::HEAD_FLASHING_OVER_TRIM,
        Finish::Collar => return Ok(false),
    };
    Ok(width > rules.get_length(key)?)
}

/// The gap over a head flashing, which stays open: what the rules ask for, and no less than the rules' own clearance of
/// siding above a head flashing.
///
/// # Errors
/// A rule that is missing or of another kind.
pub fn head_gap(rules: &RuleSet) -> Result<Length, RuleError> {
    let clearance = rules.get_own_length(keys::CLEARANCE_HEAD_FLASHING)?.unwrap_or_default();
    Ok(rules.get_length(keys::GAP_HEAD_FLASHING)?.max(clearance))
}

/// What a head flashing is bent from. The lengths of its legs are rules: NBC 9.27.3.8 has a slope of 6 %, 50 mm behind
/// the barrier, end dams of 25 mm, 10 mm down over the face and 5 mm out from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeadRequest {
    /// The block or trim below it, on the wall.
    pub block: WallRectangle,
    /// From the wall to the face of the block.
    pub thickness: Length,
    /// The least that the leg up the wall stands behind the barrier.
    pub up_leg: Length,
    /// The gap under the board above, left open: so much of the leg is not behind the barrier.
    pub gap: Length,
    /// How far it falls outward, as numerator and denominator.
    pub slope: (i64, i64),
    /// The height of the dams at its ends.
    pub end_dam: Length,
    /// How far it laps down over the block's face.
    pub down_lap: Length,
    /// How far its drip edge stands out from that face.
    pub drip: Length,
}

/// A sloped sheet on top of a block, its leg up the wall behind the barrier, dammed at both ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeadFlashing {
    /// What it covers on the wall, from its drip edge to the top of its leg.
    pub area: WallRectangle,
    /// Where the slope meets the wall: the leg starts here.
    pub bend: Length,
    /// The lower edge of the board above, and of the barrier over the leg.
    pub open_to: Length,
    /// From the wall to its drip edge.
    pub out: Length,
    /// How far it falls from the wall to its drip edge.
    pub fall: Length,
    /// The width of the strip that it is bent from: leg, slope and down-lap.
    pub strip: Length,
    /// The length of that strip: the block's width and both dams.
    pub cut_length: Length,
}

/// Why a head flashing cannot be bent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum HeadError {
    /// The block, its thickness, a leg or the slope is not over zero, or an amount is under zero.
    #[error("a head flashing's block, legs and slope must be over zero, its amounts not under zero")]
    NotPositive,
    /// A size does not fit a length.
    #[error("a head flashing's size is too large")]
    TooBig,
}

impl HeadFlashing {
    /// How it stands in a section: its leg on the wall, its slope down to the top of the block, and down over that.
    pub fn profile(&self) -> Profile {
        Profile::bent(self.out, (self.bend - self.fall, self.bend))
    }

    /// The flashing over a block.
    ///
    /// # Errors
    /// [`HeadError`], by what is wrong with the request.
    pub fn bend(request: &HeadRequest) -> Result<Self, HeadError> {
        let HeadRequest { block, thickness, up_leg, gap, slope, end_dam, down_lap, drip } = *request;
        let over = [block.width(), block.height(), thickness, up_leg, down_lap].iter().all(|size| size.is_positive());
        let under = [gap, end_dam, drip].iter().any(|size| size.is_negative());
        if !over || under || slope.0 <= 0 || slope.1 <= 0 {
            return Err(HeadError::NotPositive);
        }
        let out = thickness + drip;
        // Rounded up: a slope is a least.
        let (rise, run) = (i128::from(out.nm()) * i128::from(slope.0), i128::from(slope.1));
        let fall = i64::try_from((rise + run - 1) / run).map(Length::from_nm).map_err(|_| HeadError::TooBig)?;
        let bend = block.top + fall;
        let open_to = bend + gap;
        let top = open_to + up_leg;
        let sloped = Fixed::from(out).hypotenuse(&Fixed::from(fall)).round().ok_or(HeadError::TooBig)?;
        Ok(Self {
            area: WallRectangle { left: block.left, right: block.right, bottom: block.top - down_lap, top },
            bend,
            open_to,
            out,
            fall,
            strip: (top - bend) + sloped + down_lap,
            cut_length: block.width() + end_dam + end_dam,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::{Family, Quantity, RuleChange, RuleUnit};

    fn request() -> HeadRequest {
        let mm = Length::from_mm;
        HeadRequest {
            block: WallRectangle { left: mm(1000), right: mm(1200), bottom: mm(500), top: mm(700) },
            thickness: mm(45),
            up_leg: mm(50),
            gap: mm(6),
            slope: (6, 100),
            end_dam: mm(25),
            down_lap: mm(10),
            drip: mm(5),
        }
    }

    /// NBC 9.27.3.8, by hand: 50 mm out at 6 % falls 3 mm; the slope is sqrt(50² + 3²) = 50.089919 mm long.
    #[test]
    fn is_bent_by_the_code() {
        let head = HeadFlashing::bend(&request()).unwrap();
        let mm = Length::from_mm;
        assert_eq!((head.out, head.fall, head.bend, head.open_to), (mm(50), mm(3), mm(703), mm(709)));
        assert_eq!((head.area.bottom, head.area.top), (mm(690), mm(759)));
        assert_eq!((head.area.left, head.area.right, head.cut_length), (mm(1000), mm(1200), mm(250)));
        assert_eq!(head.strip, mm(6 + 50 + 10) + Length::from_nm(50_089_919));
    }

    #[test]
    fn a_slope_that_does_not_come_out_even_is_rounded_up() {
        let head = HeadFlashing::bend(&HeadRequest { slope: (1, 3), ..request() }).unwrap();
        assert_eq!(head.fall, Length::from_nm(16_666_667));
    }

    #[test]
    fn says_what_cannot_be() {
        let zero = Length::ZERO;
        let cases = [
            HeadRequest { thickness: zero, ..request() },
            HeadRequest { slope: (0, 1), ..request() },
            HeadRequest { drip: -Length::from_mm(1), ..request() },
            HeadRequest { block: WallRectangle { right: Length::from_mm(1000), ..request().block }, ..request() },
        ];
        for case in cases {
            assert_eq!(HeadFlashing::bend(&case), Err(HeadError::NotPositive), "{case:?}");
        }
    }

    /// Common practice, no source: a block up to 6 in wide needs none. IRC R703.4, item 4: all projecting trim does.
    #[test]
    fn what_holds_water_is_told_by_the_rules() {
        let rules = RuleSet::standard();
        let needed = |finish, width| head_needed(&rules, finish, width).unwrap();
        assert!(!needed(Finish::Block, Length::from_inches(6)));
        assert!(needed(Finish::Block, Length::from_inches_64(6, 1)));
        assert!(needed(Finish::Trim, Length::from_inches(1)));
        assert!(!needed(Finish::Collar, Length::from_inches(20)));
    }

    /// E2/AS1 (quoted): 5 mm, less than the 1/4 in of common practice; a greater clearance widens the gap.
    #[test]
    fn the_open_gap_is_the_wider_of_gap_and_clearance() {
        let mut rules = RuleSet::of(Family::NewZealand);
        assert_eq!(head_gap(&rules), Ok(Length::from_inches_64(0, 16)));
        let value = Quantity::new(10, 1, RuleUnit::Millimetre).unwrap();
        let change = RuleChange { value, by: "Ana".into(), at_ms: 0, reason: "local code".into() };
        rules.set(keys::CLEARANCE_HEAD_FLASHING, change).unwrap();
        assert_eq!(head_gap(&rules), Ok(Length::from_mm(10)));
    }
}
