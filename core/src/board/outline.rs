use std::cmp::Ordering;

use super::BoardError;
use super::line::{EdgeLine, ExactPoint};
use super::number::Coordinate;
use crate::measure::Length;
use crate::wall::{Outline, Point};

/// How far each kind of the outline's edges moves inwards: the gap between the boards and what ends them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OutlineGaps {
    /// At a plumb edge.
    pub side: Length,
    /// At a sloped edge, square to it.
    pub rake: Length,
    /// At a level edge with the wall below it.
    pub top: Length,
    /// At a level edge with the wall above it.
    pub base: Length,
}

/// A wall's outline, each edge moved inwards by its gap: all that boards may cover.
#[derive(Clone, Debug)]
pub struct MovedOutline {
    edges: Vec<MovedEdge>,
}

/// An edge between the corners where it meets its moved neighbours, the wall to the left of its way.
#[derive(Clone, Debug)]
pub(super) struct MovedEdge {
    pub(super) line: EdgeLine,
    pub(super) from: ExactPoint,
    pub(super) to: ExactPoint,
}

impl MovedOutline {
    /// Moves every edge inwards, parallel to itself; the corners are where neighbouring moved edges meet. Edges in one line
    /// with their neighbour are one edge.
    ///
    /// # Errors
    /// [`BoardError::Negative`] for a gap under zero, [`BoardError::TooFar`] for a length beyond [`Length::LIMIT`],
    /// [`BoardError::Gaps`] where an edge would shrink to nothing or turn round, or the moved outline would cross or touch
    /// itself.
    pub fn new(outline: &Outline, gaps: &OutlineGaps) -> Result<Self, BoardError> {
        let own = [gaps.side, gaps.rake, gaps.top, gaps.base];
        if own.iter().any(|gap| gap.is_negative()) {
            return Err(BoardError::Negative);
        }
        let ends = [outline.bottom(), outline.top()].into_iter().chain(outline.points().iter().map(|point| point.x));
        if own.into_iter().chain(ends).any(|length| length.abs() > Length::LIMIT) {
            return Err(BoardError::TooFar);
        }
        let corners = without_straight(outline.points());
        let next = || corners.iter().cycle().skip(1);
        let lines: Vec<EdgeLine> = corners.iter().zip(next()).map(|(from, to)| gaps.moved(*from, *to)).collect();
        let before = lines.iter().cycle().skip(lines.len().saturating_sub(1));
        let met: Option<Vec<ExactPoint>> = before.zip(&lines).map(|(before, line)| before.meet(line)).collect();
        // Neighbours in one line are one edge, and an outline does not fold back: they always meet.
        let met = met.ok_or(BoardError::Gaps)?;
        let sides = corners.iter().zip(next());
        let ends = met.iter().zip(met.iter().cycle().skip(1));
        let keeps_its_way = |((from, to), (own_from, own_to)): ((&Point, &Point), (&ExactPoint, &ExactPoint))| {
            let across = own_to.x.cmp(&own_from.x);
            if from.x == to.x { own_to.y.cmp(&own_from.y) == to.y.cmp(&from.y) } else { across == to.x.cmp(&from.x) }
        };
        if !sides.zip(ends.clone()).all(keeps_its_way) {
            return Err(BoardError::Gaps);
        }
        let edge = |(line, (from, to)): (EdgeLine, (&ExactPoint, &ExactPoint))| MovedEdge {
            line,
            from: from.clone(),
            to: to.clone(),
        };
        let edges: Vec<MovedEdge> = lines.into_iter().zip(ends).map(edge).collect();
        if touches_itself(&edges) { Err(BoardError::Gaps) } else { Ok(Self { edges }) }
    }

    pub(super) fn edges(&self) -> &[MovedEdge] {
        &self.edges
    }
}

impl OutlineGaps {
    /// The line of the edge from one corner to the next, the wall to its left, moved inwards.
    fn moved(&self, from: Point, to: Point) -> EdgeLine {
        let gap = match (to.x.cmp(&from.x), to.y.cmp(&from.y)) {
            (Ordering::Equal, _) => self.side,
            (Ordering::Greater, Ordering::Equal) => self.base,
            (Ordering::Less, Ordering::Equal) => self.top,
            _ => self.rake,
        };
        EdgeLine::through(from, to, gap)
    }
}

/// The corners without those in a straight line with their neighbours.
fn without_straight(points: &[Point]) -> Vec<Point> {
    let before = points.iter().cycle().skip(points.len().saturating_sub(1));
    let after = points.iter().cycle().skip(1);
    let turns = |(before, (point, after)): (&Point, (&Point, &Point))| {
        let (x, y) = ((point.x - before.x).wide(), (point.y - before.y).wide());
        let (x_on, y_on) = ((after.x - point.x).wide(), (after.y - point.y).wide());
        (x * y_on != y * x_on).then_some(*point)
    };
    before.zip(points.iter().zip(after)).filter_map(turns).collect()
}

/// Whether two edges that are no neighbours share a point. Neighbours never lie in one line: they share their corner only.
fn touches_itself(edges: &[MovedEdge]) -> bool {
    let mut boxes: Vec<(usize, Extent, &MovedEdge)> =
        edges.iter().enumerate().map(|(at, edge)| (at, Extent::of(edge), edge)).collect();
    boxes.sort_by_key(|(_, extent, _)| extent.left);
    let last = edges.len().saturating_sub(1);
    boxes.iter().enumerate().any(|(place, (at, extent, edge))| {
        let near = boxes.iter().skip(place + 1).take_while(|(_, other, _)| other.left <= extent.right);
        near.filter(|(_, other, _)| other.bottom <= extent.top && extent.bottom <= other.top).any(
            |(other_at, _, other)| {
                let neighbours = at.abs_diff(*other_at) == 1 || (*at.min(other_at) == 0 && *at.max(other_at) == last);
                !neighbours && touch(edge, other)
            },
        )
    })
}

/// The half nanometres within which an edge lies.
struct Extent {
    left: i64,
    right: i64,
    bottom: i64,
    top: i64,
}

impl Extent {
    fn of(edge: &MovedEdge) -> Self {
        let ends = |from: &Coordinate, to: &Coordinate| {
            let (from, to) = (from.floor(), to.floor());
            (from.min(to), from.max(to).saturating_add(1))
        };
        let ((left, right), (bottom, top)) = (ends(&edge.from.x, &edge.to.x), ends(&edge.from.y, &edge.to.y));
        Self { left, right, bottom, top }
    }
}

fn touch(edge: &MovedEdge, other: &MovedEdge) -> bool {
    let sides = |line: &EdgeLine, edge: &MovedEdge| (line.side(&edge.from), line.side(&edge.to));
    let (own, others) = (sides(&other.line, edge), sides(&edge.line, other));
    let apart = |(from, to): (Ordering, Ordering)| from == to.reverse() && from != Ordering::Equal;
    (apart(own) && apart(others))
        || (own.0.is_eq() && holds(other, &edge.from))
        || (own.1.is_eq() && holds(other, &edge.to))
        || (others.0.is_eq() && holds(edge, &other.from))
        || (others.1.is_eq() && holds(edge, &other.to))
}

/// Whether a point on an edge's line lies on the edge.
fn holds(edge: &MovedEdge, spot: &ExactPoint) -> bool {
    let within = |from: &Coordinate, to: &Coordinate, own: &Coordinate| from.min(to) <= own && own <= from.max(to);
    within(&edge.from.x, &edge.to.x, &spot.x) && within(&edge.from.y, &edge.to.y, &spot.y)
}
