use super::BoardError;
use super::line::{EdgeLine, ExactPoint};
use super::number::{Coordinate, halves};
use super::parts::{BoundKind, Upright};
use crate::measure::Length;
use crate::wall::Point;

/// A rectangle on the wall that boards go round: an opening with its trim, a block, a roof. It may reach past the outline
/// and lie over another one; its sides may be out of plumb, and its lower and upper edge out of level.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Obstruction {
    /// Its left edge, at the bottom.
    pub left: Length,
    /// Its right edge, at the bottom.
    pub right: Length,
    /// Its lower edge, at the left.
    pub bottom: Length,
    /// Its upper edge, at the left.
    pub top: Length,
    /// How far its sides are out of plumb.
    pub lean: Lean,
    /// How far its lower and upper edge are out of level.
    pub slope: Slope,
    /// How far boards stay off it.
    pub gap: ObstructionGaps,
}

/// How much higher than its left end the right end of each edge of a rectangle lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Slope {
    /// Of its lower edge.
    pub bottom: Length,
    /// Of its upper edge.
    pub top: Length,
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
    /// A rectangle without lean and slope.
    #[must_use]
    pub fn plumb((left, right): (Length, Length), (bottom, top): (Length, Length), gap: ObstructionGaps) -> Self {
        Self { left, right, bottom, top, lean: Lean::default(), slope: Slope::default(), gap }
    }

    /// Its lower edge at its left and its right end.
    pub fn bottoms(&self) -> [Length; 2] {
        [self.bottom, self.bottom + self.slope.bottom]
    }

    /// Its upper edge at its left and its right end.
    pub fn tops(&self) -> [Length; 2] {
        [self.top, self.top + self.slope.top]
    }

    /// The same grown by its gaps, without gaps of its own. Its sides move level and go on straight; its lower and upper edge
    /// move plumb and have their heights at the sides as these lie then, as the marks of a notch have.
    pub(super) fn grown(&self) -> Grown {
        let ObstructionGaps { side, top, bottom } = self.gap;
        let (left, right) = (self.left - side, self.right + side);
        let upright = |x: Length, lean: Length| match lean {
            Length::ZERO => EdgeLine::Plumb(halves(x)),
            lean => EdgeLine::through(Point::new(x, self.bottom), Point::new(x + lean, self.top), Length::ZERO),
        };
        let across = |[from, to]: [Length; 2], up: Length| {
            let line = EdgeLine::through(Point::new(left, from + up), Point::new(right, to + up), Length::ZERO);
            line.counted_as_level()
        };
        let ends = |ends: [Length; 2], up: Length| ends.map(|y| Coordinate::of(y + up));
        let [lower, upper] = [ends(self.bottoms(), Length::ZERO - bottom), ends(self.tops(), top)];
        let [low, high] = [lower.iter().min(), upper.iter().max()].map(|y| y.cloned().unwrap_or(Coordinate::ZERO));
        Grown {
            left: upright(left, self.lean.left),
            right: upright(right, self.lean.right),
            bottom: across(self.bottoms(), Length::ZERO - bottom),
            top: across(self.tops(), top),
            low,
            high,
        }
    }

    pub(super) fn check(&self, at: usize) -> Result<(), BoardError> {
        let gaps = [self.gap.side, self.gap.top, self.gap.bottom];
        let far = |length: &Length| length.abs() > Length::LIMIT;
        let Lean { left, right } = self.lean;
        let Slope { bottom, top } = self.slope;
        let own = [self.left, self.right, self.bottom, self.top, left, right, bottom, top];
        if gaps.iter().any(|gap| gap.is_negative()) {
            Err(BoardError::Negative)
        } else if own.iter().chain(&gaps).any(far) {
            Err(BoardError::TooFar)
        } else if self.right <= self.left || self.right + right <= self.left + left {
            Err(BoardError::Width(at))
        } else if self.tops().iter().zip(self.bottoms()).any(|(top, bottom)| *top <= bottom) {
            Err(BoardError::Top(at))
        } else {
            Ok(())
        }
    }
}

/// A rectangle grown by its gaps.
#[derive(Clone, Debug)]
pub(super) struct Grown {
    left: EdgeLine,
    right: EdgeLine,
    pub(super) bottom: EdgeLine,
    pub(super) top: EdgeLine,
    /// Its lowest and its highest point.
    pub(super) low: Coordinate,
    pub(super) high: Coordinate,
}

impl Grown {
    /// The lines of its left and its right side.
    pub(super) fn sides(&self) -> [EdgeLine; 2] {
        [self.left.clone(), self.right.clone()]
    }

    /// Whether its lower and its upper edge are level.
    pub(super) const fn is_level(&self) -> bool {
        !self.bottom.is_sloped() && !self.top.is_sloped()
    }

    /// From its leftmost to its rightmost point between two heights; beyond its own heights those of its ends.
    pub(super) fn across(&self, low: &Coordinate, high: &Coordinate) -> Option<(Coordinate, Coordinate)> {
        let within = |y: &Coordinate| y.max(&self.low).min(&self.high).clone();
        let at = |line: &EdgeLine| Some([line.x_at(&within(low))?, line.x_at(&within(high))?]);
        let ([left, left_high], [right, right_high]) = (at(&self.left)?, at(&self.right)?);
        Some((left.min(left_high), right.max(right_high)))
    }

    /// Its corners counter-clockwise, each with the line from it to the next one. A side that leans far may cross the other
    /// one within the gaps: then it has none.
    pub(super) fn ring(&self) -> Option<[(ExactPoint, EdgeLine); 4]> {
        let corner = |side: &EdgeLine, edge: &EdgeLine, next: &EdgeLine| Some((side.meet(edge)?, next.clone()));
        Some([
            corner(&self.left, &self.bottom, &self.bottom)?,
            corner(&self.right, &self.bottom, &self.right)?,
            corner(&self.right, &self.top, &self.top)?,
            corner(&self.left, &self.top, &self.left)?,
        ])
    }

    /// Its edges that are not level, for a course that is.
    pub(super) fn bounds(&self) -> Vec<Upright> {
        let Some(ring) = self.ring() else { return Vec::new() };
        let next = ring.iter().cycle().skip(1);
        let bound = |((from, line), (to, _)): (&(ExactPoint, EdgeLine), &(ExactPoint, EdgeLine))| {
            let rises = from.y < to.y;
            let (low, high) = if rises { (&from.y, &to.y) } else { (&to.y, &from.y) };
            // Counter-clockwise it lies to the left of a way up.
            let kind = if rises { BoundKind::Leaves } else { BoundKind::Enters };
            (low < high).then(|| Upright { line: line.clone(), low: low.clone(), high: high.clone(), kind })
        };
        ring.iter().zip(next).filter_map(bound).collect()
    }
}
