use crate::measure::{Division, Length, Rounding};
use crate::rules::{RuleError, RuleSet, keys};

/// The shortest nail, as it is sold, that holds a blind-nailed board: through the board, the furring, the foam and the
/// sheathing and as far into the stud as the rules ask, where there is foam as far as they ask for that (IRC R703.3.4); and no shorter
/// than the country's least nail, or its least over sheathing of any kind (IRC Table R703.3(1)).
///
/// # Errors
/// A rule that is missing or of another kind.
pub fn siding_nail(rules: &RuleSet, board: Length) -> Result<Length, RuleError> {
    let (foam, sheathing) = (rules.get_length(keys::FOAM_THICKNESS)?, rules.get_length(keys::SHEATHING_THICKNESS)?);
    let into = if foam.is_positive() { keys::NAIL_OVER_FOAM } else { keys::NAIL_INTO_STUD };
    let through = board + rules.get_length(keys::FURRING_THICKNESS)? + foam + sheathing;
    let own = |key: &str| Ok::<_, RuleError>(rules.get_own_length(key)?.unwrap_or_default());
    let over = if (foam + sheathing).is_positive() { own(keys::NAIL_LENGTH_OVER_SHEATHING)? } else { Length::ZERO };
    let least = (through + rules.get_length(into)?).max(own(keys::NAIL_LENGTH_LEAST)?).max(over);
    let steps = Division::new(rules.get_length(keys::NAIL_LENGTH_STEP)?.nm(), 1).unwrap_or_default();
    Ok(steps.round(least, Rounding::Up))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::{Family, Quantity, RuleChange, RuleUnit};

    fn change(rules: &mut RuleSet, key: &str, n: i64, d: i64) {
        let value = Quantity::new(n, d, RuleUnit::Inch).unwrap();
        rules.set(key, RuleChange { value, by: "Ana".into(), at_ms: 0, reason: "as built".into() }).unwrap();
    }

    /// 5/16 + 7/16 + 1 in is 1 3/4 in, but over sheathing the code's table has 2 in; with 1 in of foam 5/16 + 1 + 7/16 +
    /// 1 1/2 is 3 1/4 in.
    #[test]
    fn a_nail_reaches_into_the_stud() {
        let board = Length::from_inches_64(0, 20);
        let mut rules = RuleSet::standard();
        assert_eq!(siding_nail(&rules, board), Ok(Length::from_inches(2)));
        change(&mut rules, keys::NAIL_LENGTH_OVER_SHEATHING, 0, 1);
        assert_eq!(siding_nail(&rules, board), Ok(Length::from_inches_64(1, 48)));
        change(&mut rules, keys::SHEATHING_THICKNESS, 3, 4);
        assert_eq!(siding_nail(&rules, board), Ok(Length::from_inches_64(2, 16)));
        change(&mut rules, keys::SHEATHING_THICKNESS, 7, 16);
        change(&mut rules, keys::FOAM_THICKNESS, 1, 1);
        assert_eq!(siding_nail(&rules, board), Ok(Length::from_inches_64(3, 16)));
        // Furring of 3/4 in between board and foam: 4 in.
        change(&mut rules, keys::FURRING_THICKNESS, 3, 4);
        assert_eq!(siding_nail(&rules, board), Ok(Length::from_inches(4)));
    }

    /// NBC 9.27.5: at least 51 mm long; without sheathing a board of 5/16 in would do with 33 mm.
    #[test]
    fn a_countrys_least_nail_is_kept() {
        let mut rules = RuleSet::of(Family::Canada);
        change(&mut rules, keys::SHEATHING_THICKNESS, 0, 1);
        let nail = siding_nail(&rules, Length::from_inches_64(0, 20)).unwrap();
        assert_eq!(nail, Length::from_inches_64(2, 16));
    }
}
