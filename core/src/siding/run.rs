use crate::measure::Length;

/// Where a board of a course lies on the wall: it covers `bottom..bottom + height`, its lap included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CourseLine {
    /// The course's number from the bottom, from 1.
    pub course: u32,
    /// The board's bottom edge above the base line.
    pub bottom: Length,
    /// The board's height.
    pub height: Length,
}

/// An end or a side at its bottom and top: they differ where the trim is out of plumb, or at a rake.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct End {
    /// Its `x` at the bottom edge.
    pub bottom: Length,
    /// Its `x` at the top edge.
    pub top: Length,
}

/// A course's way from trim to trim, before the end gaps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Run {
    /// The course's number from the bottom.
    pub course: u32,
    /// The left end.
    pub left: End,
    /// The right end.
    pub right: End,
}

impl End {
    /// A plumb end.
    pub const fn plumb(x: Length) -> Self {
        Self { bottom: x, top: x }
    }

    /// Its leftmost point.
    pub fn least(self) -> Length {
        self.bottom.min(self.top)
    }

    /// Its rightmost point.
    pub fn most(self) -> Length {
        self.bottom.max(self.top)
    }

    /// How far the top edge ends to the right of the bottom edge: the bevel to mark over the board's height.
    pub fn bevel(self) -> Length {
        self.top - self.bottom
    }
}

impl Run {
    /// The leftmost point of the run.
    pub fn from(&self) -> Length {
        self.left.least()
    }

    /// The rightmost point of the run.
    pub fn to(&self) -> Length {
        self.right.bottom.max(self.right.top)
    }
}

impl CourseLine {
    /// The board's top edge.
    pub fn top(&self) -> Length {
        self.bottom + self.height
    }
}
