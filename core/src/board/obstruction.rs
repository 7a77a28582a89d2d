use super::BoardError;
use super::line::{Line, Spot};
use super::number::{Number, halves};
use crate::measure::Length;
use crate::wall::Point;

/// A rectangle on the wall that boards go round: an opening with its trim, a block, a roof. It may reach past the outline
/// and lie over another one; its sides may be out of plumb.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Obstruction {
    /// Its left edge, at the bottom.
    pub left: Length,
    /// Its right edge, at the bottom.
    pub right: Length,
    /// Its lower edge.
    pub bottom: Length,
    /// Its upper edge.
    pub top: Length,
    /// How far its sides are out of plumb.
    pub lean: Lean,
    /// How far boards stay off it.
    pub gap: ObstructionGaps,
}

/// How far to the right of its lower end the upper end of each side of a rectangle lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Lean {
    /// At its left side.
    pub left: Length,
    /// At its right side.
    pub right: Length,
}

/// How far boards stay off a rectangle's edges.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ObstructionGaps {
    /// At its left and right.
    pub side: Length,
    /// Over it.
    pub top: Length,
    /// Under it.
    pub bottom: Length,
}

impl Obstruction {
    /// A rectangle without lean.
    #[must_use]
    pub fn plumb((left, right): (Length, Length), (bottom, top): (Length, Length), gap: ObstructionGaps) -> Self {
        Self { left, right, bottom, top, lean: Lean::default(), gap }
    }

    /// The same grown by its gaps, without gaps of its own; its sides move level and go on straight.
    pub(super) fn grown(&self) -> Grown {
        let ObstructionGaps { side, top, bottom } = self.gap;
        let line = |x: Length, lean: Length| match lean {
            Length::ZERO => Line::Plumb(halves(x)),
            lean => Line::through(Point::new(x, self.bottom), Point::new(x + lean, self.top), Length::ZERO),
        };
        Grown {
            left: line(self.left - side, self.lean.left),
            right: line(self.right + side, self.lean.right),
            bottom: self.bottom - bottom,
            top: self.top + top,
        }
    }

    pub(super) fn check(&self, at: usize) -> Result<(), BoardError> {
        let gaps = [self.gap.side, self.gap.top, self.gap.bottom];
        let far = |length: &Length| length.abs() > Length::LIMIT;
        let Lean { left, right } = self.lean;
        if gaps.iter().any(|gap| gap.is_negative()) {
            Err(BoardError::Negative)
        } else if [self.left, self.right, self.bottom, self.top, left, right].iter().chain(&gaps).any(far) {
            Err(BoardError::TooFar)
        } else if self.right <= self.left || self.right + right <= self.left + left {
            Err(BoardError::Width(at))
        } else if self.top <= self.bottom {
            Err(BoardError::Top(at))
        } else {
            Ok(())
        }
    }
}

/// A rectangle grown by its gaps.
#[derive(Clone, Debug)]
pub(super) struct Grown {
    left: Line,
    right: Line,
    pub(super) bottom: Length,
    pub(super) top: Length,
}

impl Grown {
    /// The lines of its left and its right side.
    pub(super) fn sides(&self) -> [Line; 2] {
        [self.left.clone(), self.right.clone()]
    }

    /// From its leftmost to its rightmost point between two heights; beyond its own heights those of its ends.
    pub(super) fn across(&self, low: &Number, high: &Number) -> Option<(Number, Number)> {
        let (bottom, top) = (Number::of(self.bottom), Number::of(self.top));
        let within = |y: &Number| y.max(&bottom).min(&top).clone();
        let at = |line: &Line| Some([line.x_at(&within(low))?, line.x_at(&within(high))?]);
        let ([left, left_high], [right, right_high]) = (at(&self.left)?, at(&self.right)?);
        Some((left.min(left_high), right.max(right_high)))
    }

    /// Its corners counter-clockwise, each with the line from it to the next one. A side that leans far may cross the other
    /// one within the gaps: then it has none.
    pub(super) fn ring(&self) -> Option<[(Spot, Line); 4]> {
        let [low, high] = [self.bottom, self.top].map(Number::of);
        let spot = |line: &Line, y: &Number| Some(Spot { x: line.x_at(y)?, y: y.clone() });
        let level = |y: &Number| Line::Level(y.clone());
        Some([
            (spot(&self.left, &low)?, level(&low)),
            (spot(&self.right, &low)?, self.right.clone()),
            (spot(&self.right, &high)?, level(&high)),
            (spot(&self.left, &high)?, self.left.clone()),
        ])
    }
}
