use std::ops::{Add, Sub};

use num_bigint::{BigInt, Sign};
use num_rational::BigRational;
use num_traits::{One, Signed, ToPrimitive, Zero};

use crate::measure::{Division, Length, Rounding};

/// Binary places behind the nanometre.
const BITS: usize = 192;
/// Binary places that are kept where a length meets a tape division.
const DIVISION_BITS: usize = 32;
/// Pi times 10^62.
const PI: &[u8] = b"314159265358979323846264338327950288419716939937510582097494459";
const PI_PLACES: u32 = 62;

/// A length, or a plain ratio, to 192 binary places: what trigonometry gives before it is rounded, once, at the end.
///
/// Floats would serve for the sizes of a block, but not for its decisions: a drill of exactly the size that is needed
/// must not look too small by the noise of a cosine.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Fixed(BigInt);

impl Fixed {
    pub(super) fn zero() -> Self {
        Self(BigInt::zero())
    }

    fn one() -> Self {
        Self(BigInt::one() << BITS)
    }

    /// `length * ratio`.
    pub(super) fn scaled(length: Length, ratio: &Self) -> Self {
        Self(&ratio.0 * length.nm())
    }

    pub(super) fn half(&self) -> Self {
        Self(&self.0 >> 1_u32)
    }

    /// `sqrt(self^2 - other^2)`, zero where `other` is the greater.
    pub(super) fn leg(&self, other: &Self) -> Self {
        let square = &self.0 * &self.0 - &other.0 * &other.0;
        Self(if square.is_negative() { BigInt::zero() } else { square.sqrt() })
    }

    /// `sqrt(self^2 + other^2)`.
    pub(super) fn hypotenuse(&self, other: &Self) -> Self {
        Self((&self.0 * &self.0 + &other.0 * &other.0).sqrt())
    }

    /// To the nearest nanometre, halves away from zero; `None` where that does not fit.
    pub(super) fn round(&self) -> Option<Length> {
        let half = BigInt::one() << (BITS - 1);
        let size = (self.0.abs() + half) >> BITS;
        let nm = size.to_i64()?;
        Some(Length::from_nm(if self.0.is_negative() { -nm } else { nm }))
    }

    /// The next mark of a division that is not below.
    pub(super) fn round_up(&self, division: Division) -> Option<Length> {
        let whole = self.round()?;
        if Self::from(whole) == *self {
            return Some(division.round(whole, Rounding::Up));
        }
        // Shifting rounds toward minus infinity; negated twice, it rounds up.
        let numerator = -((-&self.0) >> (BITS - DIVISION_BITS));
        let count = division.count_of(numerator.to_i128()?, 1_i128 << DIVISION_BITS, Rounding::Up)?;
        division.multiple(count)
    }
}

impl From<Length> for Fixed {
    fn from(length: Length) -> Self {
        Self(BigInt::from(length.nm()) << BITS)
    }
}

impl Add for Fixed {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Fixed {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

/// Tangent and secant of an angle in degrees, from 0 to 75.
///
/// Within these bounds only 0, 45 and 60 degrees have a rational tangent or secant (Niven's theorem); there the exact
/// value is given, so that nothing drifts off a mark of the tape.
pub(super) struct FixedSlope {
    pub(super) tangent: Fixed,
    pub(super) secant: Fixed,
}

impl FixedSlope {
    pub(super) fn of(degrees: &BigRational) -> Self {
        let (sine, cosine) = sine_and_cosine(degrees);
        let is = |whole: i64| *degrees == BigRational::from_integer(whole.into());
        let divided = |upper: &BigInt| Fixed((upper << BITS) / if cosine.is_zero() { &sine } else { &cosine });
        let tangent = if is(0) {
            Fixed::zero()
        } else if is(45) {
            Fixed::one()
        } else {
            divided(&sine)
        };
        let secant = if is(0) {
            Fixed::one()
        } else if is(60) {
            Fixed(BigInt::one() << (BITS + 1))
        } else {
            divided(&Fixed::one().0)
        };
        Self { tangent, secant }
    }
}

/// The two power series, term by term until a term vanishes.
fn sine_and_cosine(degrees: &BigRational) -> (BigInt, BigInt) {
    let pi = BigInt::parse_bytes(PI, 10).unwrap_or_default();
    let below = degrees.denom() * BigInt::from(180) * BigInt::from(10).pow(PI_PLACES);
    let x: BigInt = ((degrees.numer() * pi) << BITS) / below;
    let (mut sine, mut cosine) = (BigInt::zero(), BigInt::zero());
    let mut term = Fixed::one().0;
    let mut order = 0_u32;
    while term.sign() != Sign::NoSign {
        match order % 4 {
            0 => cosine += &term,
            1 => sine += &term,
            2 => cosine -= &term,
            _ => sine -= &term,
        }
        order += 1;
        term = ((term * &x) >> BITS) / order;
    }
    (sine, cosine)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn degrees(n: i64, d: i64) -> BigRational {
        BigRational::new(n.into(), d.into())
    }

    fn float(fixed: &Fixed) -> f64 {
        (&fixed.0 >> 128_u32).to_f64().unwrap() / 2_f64.powi(64)
    }

    #[test]
    fn agrees_with_the_float_functions() {
        for tenth in 0..=750_i64 {
            let slope = FixedSlope::of(&degrees(tenth, 10));
            let angle = (tenth as f64 / 10.0).to_radians();
            assert!((float(&slope.tangent) - angle.tan()).abs() < 1e-14, "{tenth}");
            assert!((float(&slope.secant) - 1.0 / angle.cos()).abs() < 1e-14, "{tenth}");
        }
    }

    #[test]
    fn identities_hold_to_the_last_places() {
        for (n, d) in [(1, 3), (30, 1), (44, 1), (45, 1), (60, 1), (149, 2)] {
            let slope = FixedSlope::of(&degrees(n, d));
            // 1 + tan^2 = sec^2
            let left = slope.tangent.hypotenuse(&Fixed::one());
            let off = (left.0 - slope.secant.0).abs();
            assert!(off < BigInt::one() << 24, "{n}/{d}: {off}");
        }
    }

    #[test]
    fn rounds_up_to_a_mark_and_stays_on_one() {
        let eighth = Division::new(Length::NM_PER_INCH, 8).unwrap();
        let mark = Length::from_inches_64(1, 24);
        assert_eq!(Fixed::from(mark).round_up(eighth), Some(mark));
        let next = (Fixed::from(mark) + Fixed(BigInt::one())).round_up(Division::SIXTEENTH);
        assert_eq!(next, Some(Length::from_inches_64(1, 28)));
        let above = Fixed::from(mark) + Fixed(BigInt::one() << 161_u32);
        assert_eq!(above.round_up(eighth), Some(Length::from_inches_64(1, 32)));
    }
}
