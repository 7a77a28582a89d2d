use num_integer::Integer;
use num_traits::{Signed, ToPrimitive};

use super::length::round_half_away;
use super::{Exact, Length};

/// Which way a length goes to a mark of the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest mark, halves away from zero.
    Nearest,
    /// Toward minus infinity: the safe side for a piece that must fit.
    Down,
    /// Toward plus infinity: the safe side for a blank that is cut down later.
    Up,
}

/// The smallest mark that is used on the tape: an exact fraction of nanometres over zero.
///
/// Multiples of it are taken exactly and only then rounded to nanometres, so that a 128th of an inch does not drift.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Division {
    numerator: i64,
    denominator: i64,
}

impl Division {
    /// A sixteenth of an inch, the division of a carpenter's tape.
    pub const SIXTEENTH: Self = Self { numerator: Length::NM_PER_INCH / 16, denominator: 1 };
    /// A thirty-second of an inch.
    pub const THIRTY_SECOND: Self = Self { numerator: Length::NM_PER_INCH / 32, denominator: 1 };
    /// A millimetre.
    pub const MILLIMETRE: Self = Self { numerator: Length::NM_PER_MM, denominator: 1 };

    /// `numerator / denominator` nanometres; `None` unless both are over zero and each, reduced, at most 1e15.
    pub fn new(numerator: i64, denominator: i64) -> Option<Self> {
        if numerator <= 0 || denominator <= 0 {
            return None;
        }
        let common = numerator.gcd(&denominator);
        let (numerator, denominator) = (numerator / common, denominator / common);
        let limit = Length::LIMIT.nm();
        (numerator <= limit && denominator <= limit).then_some(Self { numerator, denominator })
    }

    /// The division that was written; `None` unless it is over zero, within 1,000 km and a fraction of a moderate size.
    pub fn from_exact(exact: &Exact) -> Option<Self> {
        if !exact.0.is_positive() {
            return None;
        }
        Self::new(exact.0.numer().to_i64()?, exact.0.denom().to_i64()?)
    }

    /// The division as an exact fraction of nanometres, numerator and denominator over zero.
    pub const fn fraction(self) -> (i64, i64) {
        (self.numerator, self.denominator)
    }

    /// Half of this division: the finest step in which an offset is marked.
    pub fn half(self) -> Self {
        if self.numerator % 2 == 0 {
            Self { numerator: self.numerator / 2, denominator: self.denominator }
        } else {
            // A denominator beyond the bound could only come from an absurd division; the whole one is then kept.
            Self::new(self.numerator, self.denominator.saturating_mul(2)).unwrap_or(self)
        }
    }

    /// The division as the nearest whole number of nanometres.
    pub fn length(self) -> Length {
        self.multiple(1).unwrap_or(Length::ZERO)
    }

    /// `count` divisions, exact and then rounded to the nearest nanometre; `None` where that does not fit.
    pub fn multiple(self, count: i64) -> Option<Length> {
        let product = i128::from(count) * i128::from(self.numerator);
        round_half_away(product, i128::from(self.denominator)).and_then(Length::from_wide)
    }

    /// The same in halves of a nanometre: exact where it is a whole number of them, else twice the nearest nanometre.
    pub(crate) fn halves(self, count: i64) -> Option<i64> {
        let (twice, denominator) = (2 * i128::from(count) * i128::from(self.numerator), i128::from(self.denominator));
        if twice % denominator == 0 {
            return i64::try_from(twice / denominator).ok();
        }
        self.multiple(count)?.nm().checked_mul(2)
    }

    /// The whole number of divisions that `length` is rounded to; `None` where that does not fit.
    pub fn count(self, length: Length, rounding: Rounding) -> Option<i64> {
        self.count_of(length.wide(), 1, rounding)
    }

    /// The whole number of divisions that `numerator / denominator` nanometres is rounded to, in exact arithmetic;
    /// `None` for a denominator that is not over zero or where it does not fit.
    pub fn count_of(self, numerator: i128, denominator: i128, rounding: Rounding) -> Option<i64> {
        if denominator <= 0 {
            return None;
        }
        let n = numerator.checked_mul(i128::from(self.denominator))?;
        let d = denominator.checked_mul(i128::from(self.numerator))?;
        let count = match rounding {
            Rounding::Nearest => round_half_away(n, d)?,
            Rounding::Down => Integer::div_floor(&n, &d),
            Rounding::Up => Integer::div_ceil(&n, &d),
        };
        i64::try_from(count).ok()
    }

    /// `length` on a mark of the tape.
    ///
    /// A length that already stands on a mark (to the nearest nanometre) stays there, whichever way it is rounded.
    /// Saturates like [`Length`]'s operators.
    pub fn round(self, length: Length, rounding: Rounding) -> Length {
        if self.multiple_at(length).is_some() {
            return length;
        }
        self.count(length, rounding).and_then(|count| self.multiple(count)).unwrap_or(length)
    }

    /// The number of divisions at whose mark `length` stands, where it stands on one.
    pub fn multiple_at(self, length: Length) -> Option<i64> {
        let count = self.count(length, Rounding::Nearest)?;
        (self.multiple(count)? == length).then_some(count)
    }

    /// Whether `unit` nanometres are a whole number of divisions, and of how many.
    pub fn parts_of(self, unit: i64) -> Option<i64> {
        let n = i128::from(unit) * i128::from(self.denominator);
        (n % i128::from(self.numerator) == 0).then(|| i64::try_from(n / i128::from(self.numerator)).ok()).flatten()
    }
}

impl Default for Division {
    fn default() -> Self {
        Self::SIXTEENTH
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn multiples_are_exact_before_they_are_rounded() {
        let d = Division::new(Length::NM_PER_INCH, 128).unwrap();
        assert_eq!(d.multiple(1).unwrap().nm(), 198_438);
        assert_eq!(d.multiple(3).unwrap().nm(), 595_313);
        assert_eq!(d.multiple(128).unwrap(), Length::from_inches(1));
    }

    #[test]
    fn a_mark_rounds_to_itself() {
        let d = Division::new(Length::NM_PER_INCH, 128).unwrap();
        for count in [-3_i64, -1, 0, 1, 3, 5, 127] {
            let mark = d.multiple(count).unwrap();
            for way in [Rounding::Nearest, Rounding::Down, Rounding::Up] {
                assert_eq!(d.round(mark, way), mark, "{count} {way:?}");
            }
        }
    }

    #[test]
    fn rounds_each_way() {
        let d = Division::SIXTEENTH;
        let x = Length::from_inches_64(1, 2);
        assert_eq!(d.round(x, Rounding::Nearest), Length::from_inches_64(1, 4));
        assert_eq!(d.round(x, Rounding::Down), Length::from_inches(1));
        assert_eq!(d.round(-x, Rounding::Down), Length::from_inches_64(-1, -4));
        assert_eq!(d.round(-x, Rounding::Up), Length::from_inches(-1));
        assert_eq!(d.round(-x, Rounding::Nearest), Length::from_inches_64(-1, -4));
    }

    #[test]
    fn parts_of_an_inch() {
        assert_eq!(Division::SIXTEENTH.half().parts_of(Length::NM_PER_INCH), Some(32));
        assert_eq!(Division::MILLIMETRE.half().parts_of(Length::NM_PER_MM), Some(2));
        assert_eq!(Division::SIXTEENTH.parts_of(Length::NM_PER_MM), None);
    }
}
