use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Signed, ToPrimitive};

use crate::measure::{Division, Length};

/// The slope of a rake as rise over run, an exact fraction over zero.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pitch {
    rise: BigInt,
    run: BigInt,
}

impl Pitch {
    /// `rise` over `run`, in whatever common unit; `None` unless both are over zero.
    pub fn new(rise: &BigRational, run: &BigRational) -> Option<Self> {
        if !rise.is_positive() || !run.is_positive() {
            return None;
        }
        let (rise, run) = (rise / run).into_raw();
        Some(Self { rise, run })
    }

    /// So much rise in so much run, both whole: 5 in 12.
    pub fn in_whole(rise: u32, run: u32) -> Option<Self> {
        let whole = |number: u32| BigRational::from_integer(BigInt::from(number));
        Self::new(&whole(rise), &whole(run))
    }

    /// The slope's angle from level, in degrees: `atan(rise / run)`, the float nearest to it.
    ///
    /// Libraries differ in the last digit of an arc tangent, so it is taken in fixed point and rounded once.
    pub fn degrees(&self) -> f64 {
        let one = BigInt::from(1) << PLACES;
        let steep = self.rise > self.run;
        let (low, high) = if steep { (&self.run, &self.rise) } else { (&self.rise, &self.run) };
        let arc = arc_tangent(&((low << PLACES) / high));
        // Machin: pi / 4 = 4 atan(1/5) - atan(1/239).
        let quarter: BigInt = arc_tangent(&(&one / 5)) * 4 - arc_tangent(&(&one / 239));
        let arc = if steep { &quarter * 2 - arc } else { arc };
        BigRational::new(arc * 45, quarter).to_f64().unwrap_or(90.0)
    }

    /// The rise over a run of this length, exactly.
    pub(super) fn rise_over(&self, run: &Fraction) -> Fraction {
        run.times(&self.rise, &self.run)
    }

    /// The run in which it rises by this length, exactly.
    pub(super) fn run_under(&self, rise: &Fraction) -> Fraction {
        rise.times(&self.run, &self.rise)
    }

    /// The length along the slope over a level run: `run * sqrt(rise^2 + run^2) / run`, to the nearest nanometre.
    pub(super) fn along(&self, run: &Fraction) -> Option<Length> {
        // Twice the root, rounded down, tells which side of the half nanometre it lies on.
        let square: BigInt = &run.numerator * &run.numerator * (&self.rise * &self.rise + &self.run * &self.run) * 4;
        let twice: BigInt = BigInt::sqrt(&(square / (&run.denominator * &run.denominator * &self.run * &self.run)));
        let nearest: BigInt = (twice + 1) / 2;
        within_limit(nearest.to_i64()?)
    }
}

/// Binary places of the fixed point that arcs are taken in: far beyond a float's 53.
const PLACES: usize = 192;

/// `atan(tangent)` in fixed point, for a tangent in 0 to 1.
fn arc_tangent(tangent: &BigInt) -> BigInt {
    // atan(x) = 2 atan(x / (1 + sqrt(1 + x^2))); three halvings make the series short.
    const HALVINGS: usize = 3;
    let one = BigInt::from(1) << PLACES;
    let mut x = tangent.clone();
    for _ in 0..HALVINGS {
        let root: BigInt = BigInt::sqrt(&(&one * &one + &x * &x));
        x = (x << PLACES) / (&one + root);
    }
    let square: BigInt = (&x * &x) >> PLACES;
    let (mut sum, mut power, mut odd, mut sign) = (BigInt::ZERO, x, 1_u32, 1_i32);
    while power != BigInt::ZERO {
        sum += &power / odd * sign;
        power = (power * &square) >> PLACES;
        odd += 2;
        sign = -sign;
    }
    sum << HALVINGS
}

/// A length as an exact fraction of nanometres, not reduced: a step of a sum that is rounded once at its end.
#[derive(Clone, Debug)]
pub(super) struct Fraction {
    numerator: BigInt,
    /// Over zero.
    denominator: BigInt,
}

impl Fraction {
    pub(super) fn half_of(length: Length) -> Self {
        Self { numerator: BigInt::from(length.nm()), denominator: BigInt::from(2) }
    }

    fn times(&self, numerator: &BigInt, denominator: &BigInt) -> Self {
        Self { numerator: &self.numerator * numerator, denominator: &self.denominator * denominator }
    }

    /// This length less a whole number of times another.
    pub(super) fn less(&self, times: i64, other: &Self) -> Self {
        Self {
            numerator: &self.numerator * &other.denominator - &other.numerator * times * &self.denominator,
            denominator: &self.denominator * &other.denominator,
        }
    }

    /// Numerator and denominator.
    pub(super) fn parts(&self) -> (&BigInt, &BigInt) {
        (&self.numerator, &self.denominator)
    }

    /// Whether it is over a length.
    pub(super) fn is_over(&self, length: Length) -> bool {
        self.numerator > &self.denominator * length.nm()
    }

    /// To the nearest nanometre, halves away from zero; `None` beyond the limit of lengths. Not for lengths under zero.
    pub(super) fn nearest(&self) -> Option<Length> {
        let whole: BigInt = (&self.numerator * 2 + &self.denominator) / (&self.denominator * 2);
        within_limit(whole.to_i64()?)
    }

    /// Rounded down to a division and never under zero; a length on a mark, to the nanometre, stays there.
    pub(super) fn down_to(&self, division: Division) -> Option<Length> {
        if !self.numerator.is_positive() {
            return Some(Length::ZERO);
        }
        let (whole, rest) = (&self.numerator / &self.denominator, &self.numerator % &self.denominator);
        if rest == BigInt::ZERO {
            let length = Length::from_nm(whole.to_i64()?);
            return Some(division.round(length, crate::measure::Rounding::Down));
        }
        let (numerator, denominator) = division.fraction();
        let count = &self.numerator * denominator / (&self.denominator * numerator);
        division.multiple(count.to_i64()?)
    }
}

impl From<Length> for Fraction {
    fn from(length: Length) -> Self {
        Self { numerator: BigInt::from(length.nm()), denominator: BigInt::from(1) }
    }
}

fn within_limit(nm: i64) -> Option<Length> {
    Some(Length::from_nm(nm)).filter(|length| length.abs() <= Length::LIMIT)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    #[allow(clippy::float_cmp, clippy::excessive_precision, reason = "the nearest float to thirty true places")]
    fn the_angle_is_the_nearest_float() {
        // atan(1) is 45 degrees, atan(1/0+) goes to 90; the others to 30 places by mpmath, arbitrary precision.
        for (rise, run, degrees) in [
            (5, 12, 22.619_864_948_040_426_172_949_f64),
            (1, 1, 45.0),
            (12, 5, 67.380_135_051_959_573_827_050),
            (3, 12, 14.036_243_467_926_478_582_892),
            (7, 12, 30.256_437_163_529_264_838_608),
            (1, 1_000_000, 0.000_057_295_779_513_063_222),
        ] {
            assert_eq!(Pitch::in_whole(rise, run).unwrap().degrees(), degrees, "{rise}/{run}");
        }
    }
}
