use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::ToPrimitive;

use super::Course;
use super::legs::{Leg, thin};
use super::number::{Number, halves};
use super::parts::{Part, Ring, Turn};
use super::root::PLACES;
use crate::measure::Length;
use crate::wall::Point;

/// The true shape of a board, seen from its face. All but `at` is measured from the lower left corner of its box.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardShape {
    /// The lower left corner of its box, on the wall.
    pub at: Point,
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
    /// Its lower edge.
    pub bottom: Length,
    /// Its upper edge.
    pub top: Length,
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
pub(super) type Order = (Number, Number, Number);

impl Default for ShapeLimits {
    /// Two inches each (common practice).
    fn default() -> Self {
        Self { leg: Length::from_inches(2), strip: Length::from_inches(2) }
    }
}

impl BoardShape {
    /// The shape of a part of a course, rounded to nanometres; `None` where a corner is too far for a [`Length`].
    pub(super) fn of(part: &Part, course: &Course<'_>, limits: &ShapeLimits) -> Option<(Order, Self)> {
        let first = part.outer.first()?;
        let xs = || part.outer.iter().map(|turn| &turn.spot.x);
        let ys = || part.outer.iter().map(|turn| &turn.spot.y);
        let (left, right, bottom, top) = (xs().min()?, xs().max()?, &first.spot.y, ys().max()?);
        let at = Point::new(left.nearest()?, bottom.nearest()?);
        let far = Point::new(right.nearest()?, top.nearest()?);
        let corner = |turn: &Turn| Some(Point::new(turn.spot.x.nearest()? - at.x, turn.spot.y.nearest()? - at.y));
        let corners = |ring: &Ring| ring.iter().map(corner).collect::<Option<Vec<Point>>>();
        let mut warnings = Vec::new();
        // A board of four corners is one stretch from end to end, or has no two edges facing each other square.
        let legs = if part.outer.len() > 4 || !part.holes.is_empty() {
            thin(part, (left, right), (bottom, top), halves(limits.leg))
        } else {
            Vec::new()
        };
        warnings.extend(legs.first().map(|leg| ShapeWarning::ThinLeg(*leg)));
        let under = |from: &Number, to: &Number, least: Length| to.less(from) < Number::of(least);
        warnings.extend(under(bottom, top, limits.strip).then_some(ShapeWarning::ThinStrip));
        warnings.extend(under(left, right, limits.leg).then_some(ShapeWarning::ShortPiece));
        let order = (left.clone(), bottom.clone(), first.spot.x.clone());
        let shape = Self {
            at,
            length: far.x - at.x,
            height: far.y - at.y,
            corners: corners(&part.outer)?,
            holes: part.holes.iter().map(corners).collect::<Option<_>>()?,
            area_mm2: area_mm2(part),
            rip: Rip { bottom: at.y - course.bottom, top: course.bottom + course.height - far.y },
            cuts: cuts(course, at, far, [left, right, bottom, top]),
            warnings,
        };
        Some((order, shape))
    }
}

/// The grown obstructions that share an area with a board's box, clipped to it.
fn cuts(course: &Course<'_>, at: Point, far: Point, [left, right, bottom, top]: [&Number; 4]) -> Vec<BoardCut> {
    let mut cuts = Vec::new();
    for (place, own) in course.around.iter().enumerate() {
        let own = own.grown();
        let [own_left, own_right, own_bottom, own_top] = [own.left, own.right, own.bottom, own.top].map(Number::of);
        if own_left >= *right || own_right <= *left || own_bottom >= *top || own_top <= *bottom {
            continue;
        }
        let reached = [
            (BoxSide::Left, own_left <= *left),
            (BoxSide::Right, own_right >= *right),
            (BoxSide::Bottom, own_bottom <= *bottom),
            (BoxSide::Top, own_top >= *top),
        ];
        cuts.push(BoardCut {
            around: place,
            sides: reached.into_iter().filter_map(|(side, reached)| reached.then_some(side)).collect(),
            left: own.left.max(at.x) - at.x,
            right: own.right.min(far.x) - at.x,
            bottom: own.bottom.max(at.y) - at.y,
            top: own.top.min(far.y) - at.y,
        });
    }
    cuts
}

/// The area of a part, less its holes.
fn area_mm2(part: &Part) -> f64 {
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
        (Number::Whole(x), Number::Whole(y)) => Some((i128::from(*x), i128::from(*y))),
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
