use crate::measure::Length;

/// A value at the left and at the right side, seen from the face unless it is said otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sides<T> {
    /// At the left side.
    pub left: T,
    /// At the right side.
    pub right: T,
}

impl<T: Copy> Sides<T> {
    /// The same value at both sides.
    pub const fn both(value: T) -> Self {
        Self { left: value, right: value }
    }

    /// Left and right.
    pub const fn new(left: T, right: T) -> Self {
        Self { left, right }
    }

    /// The same seen from the other face: left and right change places.
    #[must_use]
    pub const fn swapped(self) -> Self {
        Self { left: self.right, right: self.left }
    }

    /// Each side's value through a function.
    pub fn map<U>(self, f: impl Fn(T) -> U) -> Sides<U> {
        Sides { left: f(self.left), right: f(self.right) }
    }
}

impl<T: Copy + Ord> Sides<T> {
    /// The lesser of the two.
    pub fn least(self) -> T {
        self.left.min(self.right)
    }

    /// The greater of the two.
    pub fn most(self) -> T {
        self.left.max(self.right)
    }
}

/// The board in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BoardInHand {
    /// From its bottom to its top edge.
    pub height: Length,
    /// From its left to its right end.
    pub length: Length,
    /// How far it laps over the course below; `None` where that is not known.
    pub lap: Option<Length>,
}

/// The mounting block in the board's frame: an upright at each side, its bottom and top level or sloped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Block {
    /// Its left side from the board's left end.
    pub left: Length,
    /// Its right side from the board's left end.
    pub right: Length,
    /// Its bottom above the board's bottom edge, measured at its own left and right side.
    pub bottom: Sides<Length>,
    /// Its top above the board's bottom edge, measured at its own left and right side.
    pub top: Sides<Length>,
}

impl Block {
    /// Its height at each side.
    pub fn height(&self) -> Sides<Length> {
        Sides::new(self.top.left - self.bottom.left, self.top.right - self.bottom.right)
    }

    /// The same block seen from behind a board of this length.
    #[must_use]
    pub fn mirrored(&self, length: Length) -> Self {
        Self {
            left: length - self.right,
            right: length - self.left,
            bottom: self.bottom.swapped(),
            top: self.top.swapped(),
        }
    }
}
