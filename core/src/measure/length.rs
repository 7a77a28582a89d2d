use std::iter::Sum;
use std::ops::{Add, Neg, Sub};

/// An exact length in whole nanometres.
///
/// Every input is bounded by [`Length::LIMIT`]. The operators saturate at the bounds of the type, about 9.2 million
/// kilometres, which no fewer than nine thousand of the longest inputs can reach; where more are added up, or a product
/// is taken, use the `checked_` forms.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// No length at all.
    pub const ZERO: Self = Self(0);
    /// The longest length that is taken in: 1,000 km.
    pub const LIMIT: Self = Self(1_000_000_000_000_000);
    /// Nanometres in an inch, exactly (NIST SP 811: 1 in = 25.4 mm).
    pub const NM_PER_INCH: i64 = 25_400_000;
    /// Nanometres in a millimetre.
    pub const NM_PER_MM: i64 = 1_000_000;

    /// A length of so many nanometres.
    pub const fn from_nm(nm: i64) -> Self {
        Self(nm)
    }

    /// Whole inches and sixty-fourths of an inch, both exact; saturates.
    pub const fn from_inches_64(inches: i64, sixty_fourths: i64) -> Self {
        Self(
            inches
                .saturating_mul(Self::NM_PER_INCH)
                .saturating_add(sixty_fourths.saturating_mul(Self::NM_PER_INCH / 64)),
        )
    }

    /// Whole inches; saturates.
    pub const fn from_inches(inches: i64) -> Self {
        Self::from_inches_64(inches, 0)
    }

    /// Whole millimetres; saturates.
    pub const fn from_mm(mm: i64) -> Self {
        Self(mm.saturating_mul(Self::NM_PER_MM))
    }

    /// The length in nanometres.
    pub const fn nm(self) -> i64 {
        self.0
    }

    /// The length in nanometres, wide enough for any product of two lengths.
    pub const fn wide(self) -> i128 {
        self.0 as i128
    }

    /// The length of `nm` nanometres, if the type can hold it.
    pub fn from_wide(nm: i128) -> Option<Self> {
        i64::try_from(nm).ok().map(Self)
    }

    /// Metres as a float, for areas and for display only: never for a decision.
    pub fn metres(self) -> f64 {
        self.0 as f64 / 1e9
    }

    /// The length without its sign; saturates.
    pub const fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }

    /// Whether the length is under zero.
    pub const fn is_negative(self) -> bool {
        self.0 < 0
    }

    /// Whether the length is over zero.
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// The sum, if the type can hold it.
    pub fn checked_add(self, other: Self) -> Option<Self> {
        self.0.checked_add(other.0).map(Self)
    }

    /// The difference, if the type can hold it.
    pub fn checked_sub(self, other: Self) -> Option<Self> {
        self.0.checked_sub(other.0).map(Self)
    }

    /// The length taken so many times, if the type can hold it.
    pub fn checked_mul(self, times: i64) -> Option<Self> {
        self.0.checked_mul(times).map(Self)
    }

    /// `self * numerator / denominator`, rounded to the nearest nanometre, halves away from zero; `None` where the
    /// denominator is zero or the result does not fit.
    pub fn scaled(self, numerator: i64, denominator: i64) -> Option<Self> {
        let product = self.wide() * i128::from(numerator);
        round_half_away(product, i128::from(denominator)).and_then(Self::from_wide)
    }

    /// Half the length, rounded to the nearest nanometre, halves away from zero.
    pub fn half(self) -> Self {
        Self(self.0 / 2 + self.0 % 2)
    }

    /// The sum of a list, if the type can hold it.
    pub fn checked_sum(lengths: impl IntoIterator<Item = Self>) -> Option<Self> {
        lengths.into_iter().try_fold(Self::ZERO, Self::checked_add)
    }
}

/// `numerator / denominator` to the nearest whole number, halves away from zero; `None` for a zero denominator.
pub(crate) fn round_half_away(numerator: i128, denominator: i128) -> Option<i128> {
    if denominator == 0 {
        return None;
    }
    let (n, d) =
        if denominator < 0 { (numerator.checked_neg()?, denominator.checked_neg()?) } else { (numerator, denominator) };
    let (quotient, rest) = (n / d, n % d);
    let away = rest.unsigned_abs() >= d.unsigned_abs() - rest.unsigned_abs();
    Some(if !away || rest == 0 { quotient } else { quotient + n.signum() })
}

impl Add for Length {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Length {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Neg for Length {
    type Output = Self;
    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
        iter.fold(Self::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn halves_round_away_from_zero() {
        for (n, d, want) in [(5, 2, 3), (-5, 2, -3), (5, -2, -3), (4, 3, 1), (-4, 3, -1), (0, 7, 0), (6, 3, 2)] {
            assert_eq!(round_half_away(n, d), Some(want), "{n}/{d}");
        }
        assert_eq!(round_half_away(1, 0), None);
        assert_eq!(Length::from_nm(3).half().nm(), 2);
        assert_eq!(Length::from_nm(-3).half().nm(), -2);
    }

    #[test]
    fn a_sixty_fourth_is_whole_nanometres() {
        assert_eq!(Length::from_inches_64(6, 4).nm(), 153_987_500);
    }

    #[test]
    fn sums_that_do_not_fit_are_refused() {
        assert_eq!(Length::checked_sum(vec![Length::from_nm(i64::MAX), Length::from_nm(1)]), None);
    }
}
