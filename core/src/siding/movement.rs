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
    // `round` takes halves away from zero.
    change(length, strain)?.round().to_integer().to_i64().map(Length::from_nm)
}

/// Whether an end gap takes a movement up, before it is rounded; none where the strain is beyond [`STRAIN_LIMIT_PERCENT`].
pub fn gap_takes(length: Length, strain: &BigRational, gap: Length) -> Option<bool> {
    Some(change(length, strain)?.abs() <= BigRational::from_integer(gap.nm().into()))
}

fn change(length: Length, strain: &BigRational) -> Option<BigRational> {
    if strain.abs() > BigRational::new(STRAIN_LIMIT_PERCENT.into(), 100.into()) {
        return None;
    }
    Some(strain * BigInt::from(length.nm()))
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
        let takes = |n: i64, d: i64, gap: i64| {
            gap_takes(Length::from_mm(1_000), &BigRational::new(n.into(), d.into()), Length::from_nm(gap)).unwrap()
        };
        assert!(takes(1, 1_000, 1_000_000) && takes(-1, 1_000, 1_000_000));
        assert!(!takes(1, 1_000, 999_999) && !takes(-1, 1_000, 999_999));
        // A third of a nanometre over the gap is over it, whatever it is rounded to.
        assert!(!takes(1, 3_000, 333_333) && takes(1, 3_000, 333_334));
    }
}
