//! Out of square: what the diagonals and the ends of a wall tell.

use crate::book::{Field, Record};
use crate::forms::context::Terms;
use crate::measure::{Length, round_half_away};
use crate::phrases::key;
use crate::views::Note;

/// What differs by less than this is the tape (common practice, no source).
const TAPE: Length = Length::from_inches_64(0, 8);

/// What the sizes of a wall tell about its corners.
pub(super) fn notes(terms: &Terms<'_>, wall: &Record) -> Vec<Note> {
    let mut notes = Vec::new();
    let sizes = [Field::Width, Field::LeftHeight, Field::RightHeight].map(|field| wall.length(field));
    let [Some(width), Some(left), Some(right)] = sizes else { return notes };
    let gable = wall.length(Field::PeakHeight).is_some();
    if !gable && (left - right).abs() > TAPE {
        let higher = if left > right { key("measure-left-higher") } else { key("measure-right-higher") };
        let by = terms.shown((left - right).abs());
        notes.push(Note::know("ends-differ", terms.phrase(higher, &[("by", by.into())])));
    }
    let diagonals = [Field::DiagonalUp, Field::DiagonalDown].map(|field| wall.length(field));
    if let [Some(up), Some(down)] = diagonals
        && let Some(lean) = lean(width, left, right, up, down)
        && lean.abs() > TAPE
    {
        let way = if lean.is_positive() { key("measure-leans-right") } else { key("measure-leans-left") };
        let by = terms.shown(lean.abs());
        notes.push(Note::know("out-of-square", terms.phrase(way, &[("by", by.into())])));
    }
    notes
}

/// How far the top of the wall stands to the right of its base: from both diagonals,
/// `(up^2 - down^2 - (right^2 - left^2)) / 4 width`, as two right angles at the base would make the diagonals
/// `sqrt(width^2 + right^2)` and `sqrt(width^2 + left^2)` (Pythagoras).
fn lean(width: Length, left: Length, right: Length, up: Length, down: Length) -> Option<Length> {
    let square = |length: Length| length.wide() * length.wide();
    let excess = square(up) - square(down) - (square(right) - square(left));
    round_half_away(excess, 4 * width.wide()).and_then(Length::from_wide)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_lean_is_that_of_a_parallelogram() {
        // Outside check: a 3-4-5 wall (30 by 40 ft) stands square with both diagonals 50 ft; leaning by 5 ft to the
        // right its diagonals are sqrt(35^2 + 40^2) and sqrt(25^2 + 40^2), and up^2 - down^2 = 600 sq ft = 4 x 30 x 5.
        let ft = |feet: i64| Length::from_inches(12 * feet);
        assert_eq!(lean(ft(30), ft(40), ft(40), ft(50), ft(50)), Some(Length::ZERO));
        let root = |square: i64| {
            Length::from_nm(i64::try_from((i128::from(square) * ft(1).wide() * ft(1).wide()).isqrt()).unwrap())
        };
        let leaning = lean(ft(30), ft(40), ft(40), root(35 * 35 + 1600), root(25 * 25 + 1600)).unwrap();
        assert!((leaning - ft(5)).abs() <= Length::from_nm(10), "{leaning:?}");
    }
}
