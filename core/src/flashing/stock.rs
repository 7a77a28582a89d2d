use crate::measure::Length;

/// How many pieces of the thicker stock are laid together, at the most.
const THICK: i64 = 64;

/// The least thickness, of one piece of stock or of several on each other, that is no less than what is needed: blocks and
/// trim are sold in two thicknesses only.
pub fn stock_thickness(needed: Length, (thin, thick): (Length, Length)) -> Length {
    if !thin.is_positive() || !thick.is_positive() {
        return needed;
    }
    let with = |thicks: i64| {
        let laid = thick.nm().saturating_mul(thicks);
        let rest = (needed.nm() - laid).max(0);
        let thins = (rest + thin.nm() - 1) / thin.nm();
        laid.saturating_add(thins.saturating_mul(thin.nm()))
    };
    (0..=THICK).map(with).min().map_or(needed, Length::from_nm)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const STOCK: (Length, Length) = (Length::from_inches(1), Length::from_inches_64(1, 32));

    /// Common practice, no source: 7/8 in is sold nowhere. By hand: 1 5/8 in takes two pieces of 1 in, 2 1/4 in one of
    /// each.
    #[test]
    fn a_block_is_made_of_what_is_sold() {
        let of = |inches: i64, parts: i64| stock_thickness(Length::from_inches_64(inches, parts), STOCK);
        let sold = |halves: i64| Length::from_inches_64(0, 32 * halves);
        assert_eq!(of(0, 56), sold(2));
        assert_eq!(of(1, 0), sold(2));
        assert_eq!(of(1, 8), sold(3));
        assert_eq!(of(1, 40), sold(4));
        assert_eq!(of(2, 16), sold(5));
    }

    proptest! {
        #[test]
        fn it_is_enough_and_not_a_piece_too_much(needed in 1_i64..600_000_000, thin in 6_i64..50, more in 0_i64..50) {
            let (needed, thin) = (Length::from_nm(needed), Length::from_mm(thin));
            let thick = thin + Length::from_mm(more);
            let got = stock_thickness(needed, (thin, thick));
            prop_assert!(got >= needed && got - needed < thin);
            let rest = |thicks: i64| got.nm() - thick.nm() * thicks;
            let laid_up = (0..200).map(rest).any(|rest| rest >= 0 && rest % thin.nm() == 0);
            prop_assert!(laid_up);
        }
    }
}
