use super::exact::Halves;
use crate::measure::{Division, Length};

/// The least and the greatest of a gap, wanted or predicted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gap {
    /// The least.
    pub min: Length,
    /// The greatest.
    pub max: Length,
}

/// What a saw and a pair of hands take beyond the line: the least and the greatest.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Overcut {
    /// The least; under zero where the cut stays inside the line.
    pub min: Length,
    /// The greatest.
    pub max: Length,
}

/// An edge of the block, as far as gaps are told apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// Its left and right side.
    Sides,
    /// Its top.
    Top,
    /// Its bottom.
    Bottom,
}

impl Edge {
    /// Every edge.
    pub const ALL: [Self; 3] = [Self::Sides, Self::Top, Self::Bottom];
}

/// One value for the whole block, or one for each of its edges.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GapRule<T> {
    /// The same all round.
    One(T),
    /// One at each edge of the block, as over a head flashing, where the joint is wider.
    Edges {
        /// At its left and right side.
        sides: T,
        /// At its top.
        top: T,
        /// At its bottom.
        bottom: T,
    },
}

impl<T: Copy> GapRule<T> {
    /// The value at an edge of the block.
    pub const fn at(&self, edge: Edge) -> T {
        match (self, edge) {
            (Self::One(value), _)
            | (Self::Edges { sides: value, .. }, Edge::Sides)
            | (Self::Edges { top: value, .. }, Edge::Top)
            | (Self::Edges { bottom: value, .. }, Edge::Bottom) => *value,
        }
    }

    /// Each value through a function.
    pub fn map<U>(&self, f: impl Fn(T) -> U) -> GapRule<U> {
        match self {
            Self::One(value) => GapRule::One(f(*value)),
            Self::Edges { sides, top, bottom } => GapRule::Edges { sides: f(*sides), top: f(*top), bottom: f(*bottom) },
        }
    }
}

impl Gap {
    /// How far outside the block's edge the line is drawn, so that the middle of the wanted gap comes out:
    /// `max(0, mid(gap) - mid(overcut))`, rounded down to half a division. Down is the safe side: material can still
    /// be removed, never put back.
    pub fn offset(self, overcut: Overcut, division: Division) -> Length {
        self.exact_offset(overcut, division).round()
    }

    /// The same before it is rounded to the nanometre.
    pub(super) fn exact_offset(self, overcut: Overcut, division: Division) -> Halves {
        let twice = self.min.wide() + self.max.wide() - overcut.min.wide() - overcut.max.wide();
        if twice <= 0 {
            return Halves::ZERO;
        }
        let half = division.half();
        let Some(count) = half.count_of(twice, 2, crate::measure::Rounding::Down) else { return Halves::ZERO };
        // A middle that stands on the next mark to the nearest nanometre stays there.
        let next = count.saturating_add(1);
        let stands_on_next = half.multiple(next).is_some_and(|mark| mark.wide() == twice / 2);
        half.halves(if stands_on_next { next } else { count }).map_or(Halves::ZERO, Halves::new)
    }

    /// The gap that comes out of a line drawn at `offset`: `[offset + over_min - tape, offset + over_max + tape]`, where
    /// `tape` is how far a mark may lie from where it should.
    pub fn predicted(offset: Length, overcut: Overcut, tape: Length) -> Self {
        Self::of_exact(Halves::of(offset), overcut, tape)
    }

    pub(super) fn of_exact(offset: Halves, overcut: Overcut, tape: Length) -> Self {
        let of = Halves::of;
        Self { min: (offset + of(overcut.min) - of(tape)).round(), max: (offset + of(overcut.max) + of(tape)).round() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gap(min: i64, max: i64) -> Gap {
        Gap { min: Length::from_nm(min), max: Length::from_nm(max) }
    }

    #[test]
    fn the_offset_is_rounded_down_to_half_a_division() {
        let sixteenth = Division::SIXTEENTH;
        let over = Overcut { min: Length::ZERO, max: Length::from_inches_64(0, 4) };
        let wanted = Gap { min: Length::from_inches_64(0, 4), max: Length::from_inches_64(0, 8) };
        assert_eq!(wanted.offset(over, sixteenth), Length::from_inches_64(0, 4));
        assert_eq!(wanted.offset(Overcut::default(), sixteenth), Length::from_inches_64(0, 6));
        let less = Overcut { min: Length::ZERO, max: Length::from_inches_64(0, 1) };
        assert_eq!(wanted.offset(less, sixteenth), Length::from_inches_64(0, 4));
        let wild = Overcut { min: Length::from_inches(1), max: Length::from_inches(1) };
        assert_eq!(wanted.offset(wild, sixteenth), Length::ZERO);
    }

    #[test]
    fn a_middle_on_a_mark_that_is_no_whole_nanometre_stays_there() {
        let sixty_fourth = Division::new(Length::NM_PER_INCH, 64).unwrap();
        assert_eq!(gap(0, 396_875).offset(Overcut::default(), sixty_fourth).nm(), 198_438);
        let two_thirds = Division::new(2_000_000, 3).unwrap();
        assert_eq!(gap(333_333, 333_333).offset(Overcut::default(), two_thirds).nm(), 333_333);
        assert_eq!(gap(333_332, 333_332).offset(Overcut::default(), two_thirds).nm(), 0);
    }
}
