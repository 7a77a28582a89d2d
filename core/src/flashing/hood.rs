use num_bigint::BigInt;
use num_rational::BigRational;

use super::WallRectangle;
use super::fixed::Fixed;
use crate::measure::Length;
use crate::rules::{RuleError, RuleSet, RuleUnit, keys};
use crate::wall::Shape;

/// Whether a duct is too narrow to be a dryer's: its open area is less than the rules' (IRC M1502.3.1).
///
/// # Errors
/// A rule that is missing or of another kind.
pub fn duct_narrow(rules: &RuleSet, through: Shape) -> Result<bool, RuleError> {
    let least = rules.get(keys::DRYER_OPEN_AREA)?.value_in(RuleUnit::SquareInch).unwrap_or_default();
    let square = BigInt::from(through.width().nm()) * through.height().nm();
    let inch = BigInt::from(Length::NM_PER_INCH);
    let area = match through {
        // 355/113 is pi to three parts in ten million.
        Shape::Round { .. } => BigRational::new(square * 355, BigInt::from(4 * 113) * &inch * &inch),
        Shape::Rectangle { .. } => BigRational::new(square, &inch * &inch),
    };
    Ok(area < least)
}

/// The straight way between two areas of a wall, edge to edge; nothing where they meet.
pub fn way_between(one: WallRectangle, other: WallRectangle) -> Length {
    let apart = |low: Length, high: Length, other_low: Length, other_high: Length| {
        (other_low - high).max(low - other_high).max(Length::ZERO)
    };
    let across = apart(one.left, one.right, other.left, other.right);
    let up = apart(one.bottom, one.top, other.bottom, other.top);
    Fixed::from(across).hypotenuse(&Fixed::from(up)).round().unwrap_or(across.max(up))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IRC M1502.3.1 (from memory): 12.5 sq in. A 4 in duct has 12.57, a 3 1/4 x 3 3/4 in one 12.19 sq in.
    #[test]
    fn a_four_inch_duct_is_wide_enough_for_a_dryer() {
        let rules = RuleSet::standard();
        let narrow = |through| duct_narrow(&rules, through).unwrap();
        assert!(!narrow(Shape::Round { diameter: Length::from_inches(4) }));
        assert!(narrow(Shape::Round { diameter: Length::from_inches_64(3, 62) }));
        let flat = |height| Shape::Rectangle { width: Length::from_inches_64(3, 16), height };
        assert!(narrow(flat(Length::from_inches_64(3, 48))));
        assert!(!narrow(flat(Length::from_inches(4))));
    }

    #[test]
    fn the_way_is_straight_and_edge_to_edge() {
        let area = |left: i64, right: i64, bottom: i64, top: i64| {
            let [left, right, bottom, top] = [left, right, bottom, top].map(Length::from_inches);
            WallRectangle { left, right, bottom, top }
        };
        let hood = area(0, 4, 0, 4);
        assert_eq!(way_between(hood, area(7, 20, 8, 30)), Length::from_inches(5));
        assert_eq!(way_between(hood, area(10, 20, -9, 30)), Length::from_inches(6));
        assert_eq!(way_between(hood, area(-20, -3, 4, 30)), Length::from_inches(3));
        assert_eq!(way_between(hood, area(2, 20, 2, 30)), Length::ZERO);
    }
}
