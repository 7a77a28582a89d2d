use crate::book::{Field, Record};
use crate::measure::Length;

/// Where a board lies on its wall. Its bottom edge is straight; where the course is out of level, it slopes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Placement {
    /// Its left end.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// Its bottom edge at the left end.
    pub left: Length,
    /// Its bottom edge at the right end.
    pub right: Length,
}

impl Placement {
    /// Where a board of a plan lies; none for a loose one.
    pub fn of(board: &Record) -> Option<Self> {
        let left = board.length(Field::Bottom)?;
        let right = board.length(Field::BottomRight).unwrap_or(left);
        Some(Self { from: board.length(Field::From)?, to: board.length(Field::To)?, left, right })
    }

    /// The same so much higher.
    #[must_use]
    pub fn lifted(self, by: Length) -> Self {
        Self { left: self.left + by, right: self.right + by, ..self }
    }

    /// Its bottom edge at `x` on the wall.
    pub fn bottom_at(&self, x: Length) -> Length {
        let (along, over) = ((x - self.from).nm(), (self.to - self.from).nm());
        if self.left == self.right || over <= 0 {
            return self.left;
        }
        (self.right - self.left).scaled(along, over).map_or(self.left, |rise| self.left + rise)
    }
}
