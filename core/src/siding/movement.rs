use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Signed, ToPrimitive};

use crate::measure::Length;

/// The greatest strain either way that is taken in, in hundredths.
pub const STRAIN_LIMIT_PERCENT: i64 = 5;

/// The change of a board's length: `length * strain`, to the nearest nanometre, halves away from zero.
///
/// `None` where the strain is beyond [`STRAIN_LIMIT_PERCENT`].
pub fn movement(length: Length, strain: &BigRational) -> Option<Length> {
    if strain.abs() > BigRational::new(STRAIN_LIMIT_PERCENT.into(), 100.into()) {
        return None;
    }
    let change = strain * BigInt::from(length.nm());
    // `round` takes halves away from zero.
    change.round().to_integer().to_i64().map(Length::from_nm)
}

/// Whether an end gap takes a movement up.
pub fn gap_takes(change: Length, gap: Length) -> bool {
    change.abs() <= gap
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn halves_go_away_from_zero() {
        let strain = |n: i64, d: i64| BigRational::new(n.into(), d.into());
        let thousand = Length::from_nm(1_000);
        for (n, d, want) in [(5, 10_000, 1), (-5, 10_000, -1), (4, 10_000, 0), (5, 100, 50), (-15, 10_000, -2)] {
            assert_eq!(movement(thousand, &strain(n, d)), Some(Length::from_nm(want)), "{n}/{d}");
        }
        assert_eq!(movement(thousand, &strain(501, 10_000)), None);
        assert_eq!(movement(thousand, &strain(-501, 10_000)), None);
    }

    #[test]
    fn a_gap_as_wide_as_the_movement_is_enough() {
        let mm = Length::from_mm(1);
        assert!(gap_takes(-mm, mm) && gap_takes(mm, mm));
        assert!(!gap_takes(mm + Length::from_nm(1), mm));
    }
}
