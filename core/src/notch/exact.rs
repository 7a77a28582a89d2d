use std::ops::{Add, Neg, Sub};

use super::{Board, Sides};
use crate::measure::Length;

/// A length in halves of a nanometre. A mark lies half a division from the block at the finest, and half of 1/64 in is
/// 198,437.5 nm: what is shown is rounded once, at the end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Halves(i64);

impl Halves {
    pub(super) const ZERO: Self = Self(0);

    pub(super) const fn new(halves: i64) -> Self {
        Self(halves)
    }

    pub(super) const fn of(length: Length) -> Self {
        Self(length.nm().saturating_mul(2))
    }

    /// The nearest length, halves away from zero.
    pub(super) fn round(self) -> Length {
        Length::from_nm(self.0).half()
    }
}

impl Add for Halves {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Halves {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Neg for Halves {
    type Output = Self;
    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

/// A [`Cut`](super::Cut) before it is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct ExactCut {
    pub(super) left: Halves,
    pub(super) right: Halves,
    pub(super) bottom: Sides<Halves>,
    pub(super) top: Sides<Halves>,
}

impl ExactCut {
    /// The same seen from behind.
    pub(super) fn mirrored(&self, board: &Board) -> Self {
        let length = Halves::of(board.length);
        Self {
            left: length - self.right,
            right: length - self.left,
            bottom: self.bottom.swapped(),
            top: self.top.swapped(),
        }
    }
}

/// How far heights lie under the board's top edge.
pub(super) fn down(heights: Sides<Halves>, board: &Board) -> Sides<Halves> {
    heights.map(|height| Halves::of(board.height) - height)
}
