use super::line::EdgeLine;
use super::number::{Coordinate, halves};
use super::parts::{BoundKind, Upright, parts};
use super::{BoardError, BoardShape, Hang, MovedOutline, Obstruction, ShapeLimits};
use crate::measure::Length;

/// A course of a wall, with what parts it and what it goes round.
#[derive(Clone, Copy, Debug)]
pub struct CourseToHang<'a> {
    /// The bottom edge of its boards, on the wall; of a course that hangs out of level the height that its knots go from.
    pub bottom: Length,
    /// How it hangs out of level; none where it is level.
    pub hang: Option<&'a Hang>,
    /// The full height of its boards.
    pub height: Length,
    /// Where its boards end on one another, in any order.
    pub joints: &'a [Length],
    /// What is left open at each joint, half of it to each side; a joint of no width parts, too.
    pub joint_gap: Length,
    /// What its boards go round, in any order. Their cuts name them by their places here.
    pub around: &'a [Obstruction],
}

impl CourseToHang<'_> {
    /// The most boards of a course, and the most corners and holes of a board.
    pub const LIMIT: usize = super::error::BOARDS_MOST;

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
            |part: &super::parts::BoardPart| part.holes.iter().map(Vec::len).max().unwrap_or(0).max(part.holes.len());
        if parts.len() > Self::LIMIT || parts.iter().any(|part| part.outer.len().max(holes(part)) > Self::LIMIT) {
            return Err(BoardError::TooMany);
        }
        let shapes = parts.iter().map(|part| BoardShape::of(part, self, limits));
        let mut shapes: Vec<_> = shapes.collect::<Option<_>>().ok_or(BoardError::TooFar)?;
        shapes.sort_by(|a, b| a.0.cmp(&b.0));
        Ok(shapes.into_iter().map(|(_, shape)| shape).collect())
    }

    /// How much higher than `bottom` its lower edge lies at a place.
    pub(super) fn rise(&self, x: &Coordinate) -> Coordinate {
        self.hang.map_or(Coordinate::ZERO, |hang| hang.rise(x))
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
    fn bounds(&self, outline: &MovedOutline, low: i64, high: i64) -> Vec<Upright> {
        let mut bounds: Vec<Upright> = Vec::new();
        let upright = |x: i64, low: i64, high: i64, kind| Upright {
            line: EdgeLine::Plumb(x),
            low: Coordinate::Whole(low),
            high: Coordinate::Whole(high),
            kind,
        };
        for edge in outline.edges() {
            let (from, to) = (&edge.from.y, &edge.to.y);
            match (self.hang, &edge.line) {
                (Some(hang), line) => bounds.extend(hang.edge(line, &edge.from, &edge.to)),
                (None, EdgeLine::Level(_)) => {}
                (None, line) => bounds.push(Upright {
                    line: line.clone(),
                    low: from.min(to).clone(),
                    high: from.max(to).clone(),
                    kind: BoundKind::Outline,
                }),
            }
        }
        for own in self.around.iter().map(Obstruction::grown) {
            let meets = own.low < Coordinate::Whole(high) && Coordinate::Whole(low) < own.high;
            match self.hang {
                Some(hang) => bounds.extend(hang.obstruction(&own)),
                None if meets && own.is_level() => {
                    let [left, right] = own.sides();
                    for (line, kind) in [(left, BoundKind::Enters), (right, BoundKind::Leaves)] {
                        let (low, high) = (own.low.clone(), own.high.clone());
                        bounds.push(Upright { line, low, high, kind });
                    }
                }
                None if meets => bounds.extend(own.bounds()),
                None => {}
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
