use num_rational::BigRational;

use super::fixed::{Fixed, FixedSlope};
use crate::measure::Length;

/// A distance square to a slope, measured straight up from it, to the next nanometre up: a clearance is a least. `slope` is
/// rise and run; without a run there is no slope.
pub fn square_to(distance: Length, (rise, run): (Length, Length)) -> Length {
    if !run.is_positive() {
        return distance;
    }
    let along = Fixed::from(run).hypotenuse(&Fixed::from(rise)).round().unwrap_or(run);
    let (over, under) = (distance.wide() * along.wide(), run.wide());
    i64::try_from((over + under - 1) / under).map_or(distance, Length::from_nm)
}

/// How far something falls over a length at an angle of up to 45 degrees; `None` for a length that is too large.
pub fn fall(over: Length, degrees: &BigRational) -> Option<Length> {
    Fixed::scaled(over, &FixedSlope::of(degrees).tangent).round()
}

/// By how much the bottom edge of the siding stands too near to the surface under it: ground, paving, a roof or a deck;
/// `None` where it keeps clear. All heights are on one scale.
///
/// The clearance itself is a rule: IRC, NBC 9.27.2.4, NCC 7.5.7 and the makers differ.
pub fn too_near(bottom_edge: Length, surface: Length, clearance: Length) -> Option<Length> {
    let short = clearance - (bottom_edge - surface);
    short.is_positive().then_some(short)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A 3-4-5 slope: 4 in square to it are 5 in straight up, whichever way it falls.
    #[test]
    fn what_is_square_to_a_slope_is_more_straight_up() {
        let n = Length::from_inches;
        assert_eq!(square_to(n(4), (n(3), n(4))), n(5));
        assert_eq!(square_to(n(4), (n(-3), n(4))), n(5));
        assert_eq!(square_to(n(4), (n(3), n(0))), n(4));
    }

    /// By hand: tan 1.5 degrees is 0.026186, so that 12 in fall 0.314 in; at 45 degrees they fall 12 in.
    #[test]
    fn a_slope_falls_by_its_tangent() {
        let fall = |n: i64, d: i64| fall(Length::from_inches(12), &BigRational::new(n.into(), d.into())).unwrap();
        assert_eq!(fall(45, 1), Length::from_inches(12));
        assert!((fall(3, 2).nm() - 7_981_500).abs() < 1_000, "{:?}", fall(3, 2));
    }

    #[test]
    fn just_clear_is_clear() {
        // NAVEDTRA 14044: 2 in above a roof.
        let n = Length::from_inches;
        assert_eq!(too_near(n(0), n(-2), n(2)), None);
        assert_eq!(too_near(n(0), n(-1), n(2)), Some(n(1)));
        assert_eq!(too_near(n(0), n(3), n(2)), Some(n(5)));
    }
}
