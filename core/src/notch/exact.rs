use std::ops::{Add, Sub};

use super::{BoardInHand, Sides};
use crate::measure::Length;

/// A length in halves of a nanometre. A mark lies half a division from the block at the finest, and half of 1/64 in is
/// 198,437.5 nm: what is shown is rounded once, at the end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Halves(Length);

impl Halves {
    pub(super) const ZERO: Self = Self(Length::ZERO);

    pub(super) const fn new(halves: i64) -> Self {
        Self(Length::from_nm(halves))
    }

    pub(super) fn of(length: Length) -> Self {
        Self(length + length)
    }

    /// The nearest length, halves away from zero.
    pub(super) fn round(self) -> Length {
        self.0.half()
    }
}

impl Add for Halves {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Halves {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
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
    pub(super) fn mirrored(&self, board: &BoardInHand) -> Self {
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
pub(super) fn down(heights: Sides<Halves>, board: &BoardInHand) -> Sides<Halves> {
    heights.map(|height| Halves::of(board.height) - height)
}
