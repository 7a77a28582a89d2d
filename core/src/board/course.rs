use thiserror::Error;

use super::line::Line;
use super::number::{Number, halves};
use super::parts::{Bound, BoundKind, parts};
use super::{BoardShape, MovedOutline, ShapeLimits};
use crate::measure::Length;

/// A level course of a wall, with what parts it and what it goes round.
#[derive(Clone, Copy, Debug)]
pub struct Course<'a> {
    /// The bottom edge of its boards, on the wall.
    pub bottom: Length,
    /// The full height of its boards.
    pub height: Length,
    /// Where its boards end on one another, in any order.
    pub joints: &'a [Length],
    /// What is left open at each joint, half of it to each side; a joint of no width parts, too.
    pub joint_gap: Length,
    /// What its boards go round, in any order. Their cuts name them by their places here.
    pub around: &'a [Obstruction],
}

/// A rectangle on the wall that boards go round: an opening with its trim, a block, a roof. It may reach past the outline
/// and lie over another one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Obstruction {
    /// Its left edge.
    pub left: Length,
    /// Its right edge.
    pub right: Length,
    /// Its lower edge.
    pub bottom: Length,
    /// Its upper edge.
    pub top: Length,
    /// How far boards stay off it.
    pub gap: ObstructionGaps,
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

/// Why there are no shapes of boards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum BoardError {
    /// A gap or a limit is under zero.
    #[error("a gap or a least width must be at least zero")]
    Negative,
    /// The boards have no height.
    #[error("the height of the boards must be over zero")]
    Height,
    /// A rectangle has no width.
    #[error("the right edge of rectangle {0} must lie to the right of its left edge")]
    Width(usize),
    /// A rectangle has no height.
    #[error("the top of rectangle {0} must lie above its bottom")]
    Top(usize),
    /// A length is beyond what is taken in.
    #[error("a length is over 1,000 km")]
    TooFar,
    /// An edge of the outline would shrink to nothing or turn round, or the moved outline would cross or touch itself.
    #[error("the gaps leave no outline: an edge vanishes or turns round, or the outline crosses or touches itself")]
    Gaps,
    /// More than is worked through.
    #[error("more than {limit} boards, corners or holes", limit = Course::LIMIT)]
    TooMany,
}

impl Course<'_> {
    /// The most boards of a course, and the most corners and holes of a board.
    pub const LIMIT: usize = 10_000;

    /// The boards of the course, from left to right, then from the bottom up.
    ///
    /// # Errors
    /// [`BoardError`], but for [`BoardError::Gaps`].
    pub fn boards(&self, outline: &MovedOutline, limits: &ShapeLimits) -> Result<Vec<BoardShape>, BoardError> {
        self.check()?;
        if limits.leg.is_negative() || limits.strip.is_negative() {
            return Err(BoardError::Negative);
        }
        let (low, high) = (halves(self.bottom), halves(self.bottom + self.height));
        let parts = parts(&self.bounds(outline, low, high), low, high);
        let holes =
            |part: &super::parts::Part| part.holes.iter().map(Vec::len).max().unwrap_or(0).max(part.holes.len());
        if parts.len() > Self::LIMIT || parts.iter().any(|part| part.outer.len().max(holes(part)) > Self::LIMIT) {
            return Err(BoardError::TooMany);
        }
        let shapes = parts.iter().map(|part| BoardShape::of(part, self, limits));
        let mut shapes: Vec<_> = shapes.collect::<Option<_>>().ok_or(BoardError::TooFar)?;
        shapes.sort_by(|a, b| a.0.cmp(&b.0));
        Ok(shapes.into_iter().map(|(_, shape)| shape).collect())
    }

    fn check(&self) -> Result<(), BoardError> {
        if !self.height.is_positive() {
            return Err(BoardError::Height);
        }
        if self.joint_gap.is_negative() {
            return Err(BoardError::Negative);
        }
        let far = |length: &Length| length.abs() > Length::LIMIT;
        if [self.bottom, self.height, self.joint_gap].iter().chain(self.joints).any(far) {
            return Err(BoardError::TooFar);
        }
        self.around.iter().enumerate().try_for_each(|(at, own)| own.check(at))
    }

    /// What bounds its boards between two heights, in half nanometres.
    fn bounds(&self, outline: &MovedOutline, low: i64, high: i64) -> Vec<Bound> {
        let mut bounds: Vec<Bound> = Vec::new();
        for edge in outline.edges().iter().filter(|edge| !matches!(edge.line, Line::Level(_))) {
            let (from, to) = (&edge.from.y, &edge.to.y);
            let (own_low, own_high) = if from < to { (from, to) } else { (to, from) };
            bounds.push(Bound {
                line: edge.line.clone(),
                low: own_low.clone(),
                high: own_high.clone(),
                kind: BoundKind::Outline,
            });
        }
        let upright = |x: i64, low: i64, high: i64, kind| Bound {
            line: Line::Plumb(x),
            low: Number::Whole(low),
            high: Number::Whole(high),
            kind,
        };
        for own in self.around.iter().map(Obstruction::grown) {
            let [bottom, top] = [own.bottom, own.top].map(halves);
            if bottom < high && low < top {
                bounds.push(upright(halves(own.left), bottom, top, BoundKind::Enters));
                bounds.push(upright(halves(own.right), bottom, top, BoundKind::Leaves));
            }
        }
        // Half a gap in half nanometres is the gap in whole ones.
        let half = self.joint_gap.nm();
        for x in self.joints.iter().map(|joint| halves(*joint)) {
            if half == 0 {
                bounds.push(upright(x, low, high, BoundKind::Joint));
            } else {
                bounds.push(upright(x - half, low, high, BoundKind::Enters));
                bounds.push(upright(x + half, low, high, BoundKind::Leaves));
            }
        }
        bounds
    }
}

impl Obstruction {
    /// The rectangle grown by its gaps, without gaps of its own.
    #[must_use]
    pub fn grown(&self) -> Self {
        let ObstructionGaps { side, top, bottom } = self.gap;
        Self {
            left: self.left - side,
            right: self.right + side,
            bottom: self.bottom - bottom,
            top: self.top + top,
            gap: ObstructionGaps::default(),
        }
    }

    fn check(&self, at: usize) -> Result<(), BoardError> {
        let gaps = [self.gap.side, self.gap.top, self.gap.bottom];
        let far = |length: &Length| length.abs() > Length::LIMIT;
        if gaps.iter().any(|gap| gap.is_negative()) {
            Err(BoardError::Negative)
        } else if [self.left, self.right, self.bottom, self.top].iter().chain(&gaps).any(far) {
            Err(BoardError::TooFar)
        } else if self.right <= self.left {
            Err(BoardError::Width(at))
        } else if self.top <= self.bottom {
            Err(BoardError::Top(at))
        } else {
            Ok(())
        }
    }
}
