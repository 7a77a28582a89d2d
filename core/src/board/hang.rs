use num_bigint::BigInt;
use num_traits::One;

use super::BoardError;
use super::line::{EdgeLine, ExactPoint};
use super::number::{Coordinate, halves};
use super::obstruction::Grown;
use super::parts::{BoundKind, Upright};
use crate::measure::Length;
use crate::wall::Point;

/// How a course hangs out of level: the heights of its bottom edge over its `bottom` at some places on the wall, straight
/// from each to the next and level beyond the outermost ones.
///
/// Boards are seen from a course that hangs as if it were level: everything is lowered by as much as the course is higher
/// there. That moves nothing to the left or right, leaves plumb lines plumb and keeps every height over the board's own
/// bottom edge. What a board is longer along its slope is left out: a hundredth of a millimetre on a course that falls half
/// an inch in thirty feet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hang {
    knots: Vec<Point>,
}

/// A stretch of a wall along which a course is straight.
#[derive(Clone, Copy, Debug)]
struct Stretch {
    /// From and to where, in half nanometres; beyond the outermost knots as far as lengths go.
    from: i64,
    to: i64,
    /// A point of the course on it.
    at: (i64, i64),
    /// Run over zero, and rise.
    slope: (i64, i64),
}

impl Hang {
    /// The most knots.
    pub const LIMIT: usize = super::error::KNOTS_MOST;

    /// A course whose bottom edge lies `y` over its `bottom` at each of the places `x`, given from left to right.
    ///
    /// # Errors
    /// [`BoardError::Knots`] for no knots, for too many, or for such that do not go to the right; [`BoardError::TooFar`].
    pub fn new(knots: Vec<Point>) -> Result<Self, BoardError> {
        let rising = knots.iter().zip(knots.iter().skip(1)).all(|(from, to)| from.x < to.x);
        if knots.is_empty() || knots.len() > Self::LIMIT || !rising {
            return Err(BoardError::Knots);
        }
        if knots.iter().any(|knot| knot.x.abs() > Length::LIMIT || knot.y.abs() > Length::LIMIT) {
            return Err(BoardError::TooFar);
        }
        Ok(Self { knots })
    }

    /// How much higher than its `bottom` the course lies at a place, exactly.
    pub(super) fn rise(&self, x: &Coordinate) -> Coordinate {
        let floor = x.floor();
        let stretches = self.stretches();
        let own = stretches.iter().find(|own| floor < own.to).or(stretches.last());
        own.map_or(Coordinate::ZERO, |own| own.rise(x))
    }

    fn stretches(&self) -> Vec<Stretch> {
        let place = |knot: &Point| (halves(knot.x), halves(knot.y));
        let level = |from, to, at| Stretch { from, to, at, slope: (1, 0) };
        let ends = self.knots.first().zip(self.knots.last()).map(|(first, last)| (place(first), place(last)));
        let Some((first, last)) = ends else { return Vec::new() };
        let between = self.knots.iter().map(place).zip(self.knots.iter().map(place).skip(1));
        let between = between.map(|(at, to)| Stretch { from: at.0, to: to.0, at, slope: (to.0 - at.0, to.1 - at.1) });
        std::iter::once(level(i64::MIN, first.0, first)).chain(between).chain([level(last.0, i64::MAX, last)]).collect()
    }

    /// An edge of the outline, seen from the course.
    pub(super) fn edge(&self, line: &EdgeLine, from: &ExactPoint, to: &ExactPoint) -> Vec<Upright> {
        self.pieces(line, from, to).into_iter().map(|(bound, _)| bound).collect()
    }

    /// The pieces of a line from one point to another, seen from the course, each with whether the way rises.
    fn pieces(&self, line: &EdgeLine, from: &ExactPoint, to: &ExactPoint) -> Vec<(Upright, bool)> {
        let leftwards = to.x < from.x;
        let (left, right) = if leftwards { (&to.x, &from.x) } else { (&from.x, &to.x) };
        let mut found = Vec::new();
        for own in self.stretches() {
            if line.is_plumb() {
                // A plumb edge belongs to one stretch.
                let floor = left.floor();
                if own.from <= floor && floor < own.to {
                    let rise = own.rise(left);
                    found.extend(bound(line.clone(), from.y.less(&rise), to.y.less(&rise)));
                }
                continue;
            }
            let start = left.max(&Coordinate::Whole(own.from)).clone();
            let end = right.min(&Coordinate::Whole(own.to)).clone();
            if start < end {
                let piece = own.lowered(line, &start, &end);
                found.extend(piece.map(|(bound, rises)| (bound, rises != leftwards)));
            }
        }
        found
    }

    /// What boards go round, grown by its gaps, seen from the course.
    pub(super) fn obstruction(&self, grown: &Grown) -> Vec<Upright> {
        let Some(ring) = grown.ring() else { return Vec::new() };
        let next = ring.iter().cycle().skip(1);
        let mut bounds = Vec::new();
        for ((from, line), (to, _)) in ring.iter().zip(next) {
            for (mut bound, rises) in self.pieces(line, from, to) {
                // Counter-clockwise it lies to the left of a way up.
                bound.kind = if rises { BoundKind::Leaves } else { BoundKind::Enters };
                bounds.push(bound);
            }
        }
        bounds
    }
}

impl Stretch {
    fn rise(&self, x: &Coordinate) -> Coordinate {
        let ((x0, height), (run, rise)) = (self.at, self.slope);
        let [run_number, rise_number, minus] = [run, rise, -1].map(BigInt::from);
        let along =
            Coordinate::sum(&[(&rise_number, x), (&(&minus * &rise_number), &Coordinate::Whole(x0))], &run_number);
        Coordinate::sum(&[(&BigInt::one(), &along), (&BigInt::one(), &Coordinate::Whole(height))], &BigInt::one())
    }

    /// What of a line that is not plumb lies over this stretch between two places, and whether it rises to the right; none
    /// where it is level to the course.
    fn lowered(&self, line: &EdgeLine, from: &Coordinate, to: &Coordinate) -> Option<(Upright, bool)> {
        let lowered = line.lowered(self.at, self.slope);
        let (start, end) = (lowered.y_at(from)?, lowered.y_at(to)?);
        bound(lowered, start, end)
    }
}

/// A bound of the outline from one height to another, and whether that is up; none where they are the same.
fn bound(line: EdgeLine, from: Coordinate, to: Coordinate) -> Option<(Upright, bool)> {
    let rises = from < to;
    let (low, high) = if rises { (from, to) } else { (to, from) };
    (low < high).then_some((Upright { line, low, high, kind: BoundKind::Outline }, rises))
}
