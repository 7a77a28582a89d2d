use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::ToPrimitive;

use super::CourseToHang;
use super::legs::{Leg, thin};
use super::line::EdgeLine;
use super::number::Coordinate;
use super::parts::{BoardPart, Ring, Turn};
use super::root::PLACES;
use crate::measure::Length;
use crate::siding::{End, Run};
use crate::wall::Point;

/// The true shape of a board, seen from its face. All but `at` is measured from the lower left corner of its box.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardShape {
    /// The lower left corner of its box, on the wall.
    pub at: Point,
    /// How many of its course's joints lie to its left: boards with as many are pieces of one that is cut right through.
    pub section: usize,
    /// From its leftmost to its rightmost point.
    pub length: Length,
    /// From its lowest to its highest point.
    pub height: Length,
    /// Its corners counter-clockwise, from the lowest, then leftmost one.
    pub corners: Vec<Point>,
    /// The corners of its holes clockwise, each from its lowest, then leftmost one, in the order of these.
    pub holes: Vec<Vec<Point>>,
    /// Its area in square millimetres, the float nearest to the exact one.
    pub area_mm2: f64,
    /// What its full height loses over its whole length.
    pub rip: Rip,
    /// What it goes round, in the order of the course's obstructions.
    pub cuts: Vec<BoardCut>,
    /// What to look at before it is cut.
    pub warnings: Vec<ShapeWarning>,
}

/// What the full height of a board loses over its whole length.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Rip {
    /// At its top edge.
    pub top: Length,
    /// At its bottom edge.
    pub bottom: Length,
}

/// What a board goes round: the grown obstruction clipped to the board's box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BoardCut {
    /// The obstruction's place in its course.
    pub around: usize,
    /// The sides of the box that it reaches or passes, in the order of [`BoxSide`]; none for a hole.
    pub sides: Vec<BoxSide>,
    /// Its left edge.
    pub left: Length,
    /// Its right edge.
    pub right: Length,
    /// Its lower edge at its left and its right edge: two heights where it slopes, or the course hangs out of level.
    pub bottom: [Length; 2],
    /// Its upper edge at its left and its right edge.
    pub top: [Length; 2],
}

/// A side of a board's box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BoxSide {
    /// The left one.
    Left,
    /// The right one.
    Right,
    /// The lower one.
    Bottom,
    /// The upper one.
    Top,
}

/// What is thin or short.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShapeLimits {
    /// A leg narrower than this is thin, and a board shorter than this is short.
    pub leg: Length,
    /// A board lower than this is a strip.
    pub strip: Length,
}

/// What to look at before a board is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShapeWarning {
    /// A leg is thin: a level line through the board, but through none of its corners, meets a short stretch between two
    /// plumb edges, or a plumb line one between two level edges; what goes from end to end of the box is none.
    ThinLeg(Leg),
    /// The board is a thin strip.
    ThinStrip,
    /// The board is a short piece.
    ShortPiece,
}

/// What boards are sorted by: their least `x`, their least `y`, then their first corner.
pub(super) type Order = (Coordinate, Coordinate, Coordinate);

impl Default for ShapeLimits {
    /// Two inches each (common practice).
    fn default() -> Self {
        Self { leg: Length::from_inches(2), strip: Length::from_inches(2) }
    }
}

impl BoardShape {
    /// The shape of a part of a course, rounded to nanometres; `None` where a corner is too far for a [`Length`].
    pub(super) fn of(part: &BoardPart, course: &CourseToHang<'_>, limits: &ShapeLimits) -> Option<(Order, Self)> {
        let first = part.outer.first()?;
        let xs = || part.outer.iter().map(|turn| &turn.spot.x);
        let ys = || part.outer.iter().map(|turn| &turn.spot.y);
        let (left, right, bottom, top) = (xs().min()?, xs().max()?, &first.spot.y, ys().max()?);
        let near = Point::new(left.nearest()?, bottom.nearest()?);
        let far = Point::new(right.nearest()?, top.nearest()?);
        let corner = |turn: &Turn| Some(Point::new(turn.spot.x.nearest()? - near.x, turn.spot.y.nearest()? - near.y));
        let corners = |ring: &Ring| ring.iter().map(corner).collect::<Option<Vec<Point>>>();
        let hung = course.rise(left).less(&Coordinate::ZERO.less(bottom));
        let at = Point::new(near.x, hung.nearest()?);
        let left_of = |joint: &&Length| Coordinate::of(**joint) <= *left;
        let mut warnings = Vec::new();
        // A board of four corners is one stretch from end to end, or has no two edges facing each other square.
        let legs = if part.outer.len() > 4 || !part.holes.is_empty() {
            thin(part, (left, right), (bottom, top), &Coordinate::of(limits.leg))
        } else {
            Vec::new()
        };
        warnings.extend(legs.first().map(|leg| ShapeWarning::ThinLeg(*leg)));
        let under = |from: &Coordinate, to: &Coordinate, least: Length| to.less(from) < Coordinate::of(least);
        warnings.extend(under(bottom, top, limits.strip).then_some(ShapeWarning::ThinStrip));
        warnings.extend(under(left, right, limits.leg).then_some(ShapeWarning::ShortPiece));
        let order = (left.clone(), bottom.clone(), first.spot.x.clone());
        let shape = Self {
            at,
            section: course.joints.iter().filter(left_of).count(),
            length: far.x - near.x,
            height: far.y - near.y,
            corners: corners(&part.outer)?,
            holes: part.holes.iter().map(corners).collect::<Option<_>>()?,
            area_mm2: area_mm2(part),
            rip: Rip { bottom: near.y - course.bottom, top: course.bottom + course.height - far.y },
            cuts: cuts(course, near, far, [left, right, bottom, top]),
            warnings,
        };
        Some((order, shape))
    }
}

impl BoardShape {
    /// The run that it makes where it is all of a course between two ends: it goes past the board by `gap` at each. An end is out of plumb
    /// where one straight cut makes all of it.
    pub fn run(&self, course: u32, gap: Length) -> Run {
        let (from, to) = (self.at.x - gap, self.at.x + self.length + gap);
        let edge = |low: Length, high: Length| {
            let mut edges = self.corners.iter().zip(self.corners.iter().cycle().skip(1));
            // Counter-clockwise the right side goes up and the left one down.
            edges.find(|(a, b)| a.y == low && b.y == high).map(|(a, b)| (a.x, b.x))
        };
        let left = edge(self.height, Length::ZERO).filter(|(top, bottom)| *top.min(bottom) == Length::ZERO);
        let right = edge(Length::ZERO, self.height).filter(|(bottom, top)| *bottom.max(top) == self.length);
        Run {
            course,
            left: left.map_or(End::plumb(from), |(top, bottom)| End { bottom: from + bottom, top: from + top }),
            right: right.map_or(End::plumb(to), |(bottom, top)| End {
                bottom: to - self.length + bottom,
                top: to - self.length + top,
            }),
        }
    }
}

/// The grown obstructions that share an area with a board's box, clipped to it.
fn cuts(
    course: &CourseToHang<'_>,
    at: Point,
    far: Point,
    [left, right, bottom, top]: [&Coordinate; 4],
) -> Vec<BoardCut> {
    let mut cuts = Vec::new();
    for (place, own) in course.around.iter().enumerate() {
        let own = own.grown();
        let wall = |y: &Coordinate| y.less(&Coordinate::ZERO.less(&course.rise(left)));
        let Some((own_left, own_right)) = own.across(&wall(bottom), &wall(top)) else { continue };
        if own_left >= *right || own_right <= *left {
            continue;
        }
        // Seen from the course, at both ends of what of it lies in the box.
        let ends = [left.max(&own_left), right.min(&own_right)];
        let rises = ends.map(|x| course.rise(x));
        let seen = |edge: &EdgeLine| {
            let [from, to] = ends.map(|x| edge.y_at(x));
            let [from_rise, to_rise] = &rises;
            Some([from?.less(from_rise), to?.less(to_rise)])
        };
        let (Some(low), Some(high)) = (seen(&own.bottom), seen(&own.top)) else { continue };
        if low.iter().all(|y| y >= top) || high.iter().all(|y| y <= bottom) {
            continue;
        }
        let reached = [
            (BoxSide::Left, own_left <= *left),
            (BoxSide::Right, own_right >= *right),
            (BoxSide::Bottom, low.iter().any(|y| y <= bottom)),
            (BoxSide::Top, high.iter().any(|y| y >= top)),
        ];
        let height = |y: &Coordinate| y.nearest().map_or(Length::ZERO, |y| y.max(at.y).min(far.y) - at.y);
        cuts.push(BoardCut {
            around: place,
            sides: reached.into_iter().filter_map(|(side, reached)| reached.then_some(side)).collect(),
            left: own_left.nearest().map_or(Length::ZERO, |x| x.max(at.x) - at.x),
            right: own_right.nearest().map_or(far.x, |x| x.min(far.x)) - at.x,
            bottom: low.each_ref().map(height),
            top: high.each_ref().map(height),
        });
    }
    cuts
}

/// The area of a part, less its holes.
fn area_mm2(part: &BoardPart) -> f64 {
    /// Square half nanometres in a square millimetre.
    const IN_MM2: i64 = 4_000_000_000_000;
    let rings = || std::iter::once(&part.outer).chain(&part.holes);
    let whole: Option<i128> = rings().map(twice_area).sum();
    let (twice, places) = match whole {
        Some(twice) => (BigInt::from(twice), 0),
        None => (rings().map(twice_area_fixed).sum(), 2 * PLACES),
    };
    BigRational::new(twice, BigInt::from(2 * IN_MM2) << places).to_f64().unwrap_or(f64::MAX)
}

/// Twice the area to the left of a ring whose corners are all whole.
fn twice_area(ring: &Ring) -> Option<i128> {
    let whole = |turn: &Turn| match (&turn.spot.x, &turn.spot.y) {
        (Coordinate::Whole(x), Coordinate::Whole(y)) => Some((i128::from(*x), i128::from(*y))),
        _ => None,
    };
    let after = ring.iter().cycle().skip(1);
    ring.iter().zip(after).try_fold(0, |sum, (from, to)| {
        let ((x, y), (next_x, next_y)) = (whole(from)?, whole(to)?);
        Some(sum + x * next_y - next_x * y)
    })
}

/// Twice the area to the left of a ring, times two to the power of twice [`PLACES`].
fn twice_area_fixed(ring: &Ring) -> BigInt {
    let corners: Vec<(BigInt, BigInt)> = ring.iter().map(|turn| (turn.spot.x.fixed(), turn.spot.y.fixed())).collect();
    let after = corners.iter().cycle().skip(1);
    corners.iter().zip(after).map(|((x, y), (next_x, next_y))| x * next_y - next_x * y).sum()
}
