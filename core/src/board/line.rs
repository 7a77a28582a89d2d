use std::cmp::Ordering;
use std::sync::Arc;

use num_bigint::BigInt;
use num_integer::Integer;
use num_traits::One;

use super::number::{Coordinate, halves};
use super::root::Root;
use crate::measure::Length;
use crate::wall::Point;

/// A point of the wall, exactly.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct ExactPoint {
    pub(super) x: Coordinate,
    pub(super) y: Coordinate,
}

/// The line that an edge lies on, in half nanometres.
#[derive(Clone, Debug)]
pub(super) enum EdgeLine {
    /// Vertical, at an `x`.
    Plumb(i64),
    /// At a height.
    Level(Coordinate),
    /// Neither.
    Sloped(Arc<SlopedLine>),
}

/// `a x + b y = c`; `a` over zero, `b` not zero, both without a common factor.
#[derive(Debug)]
pub(super) struct SlopedLine {
    a: BigInt,
    b: BigInt,
    c: Coordinate,
    /// Whether it counts as level: it is level on the wall and slopes against a course that hangs out of level, or it is an
    /// edge that should be level.
    counts_as_level: bool,
}

impl EdgeLine {
    /// The line through two points, moved square to itself by `gap` to the left of the way from one to the other.
    pub(super) fn through(from: Point, to: Point, gap: Length) -> Self {
        let (dx, dy) = (halves(to.x) - halves(from.x), halves(to.y) - halves(from.y));
        let gap = halves(gap);
        if dx == 0 {
            return Self::Plumb(halves(from.x) - gap * dy.signum());
        }
        if dy == 0 {
            return Self::Level(Coordinate::Whole(halves(from.y) + gap * dx.signum()));
        }
        // To the left of (dx, dy) lies (-dy, dx): `a x + b y` grows that way, by its own length for each unit.
        let common = dx.gcd(&dy);
        let (a, b) = (-dy / common, dx / common);
        let (a, b) = (i128::from(a), i128::from(b));
        let c = BigInt::from(a * i128::from(halves(from.x)) + b * i128::from(halves(from.y)));
        let c = match Root::of(a.unsigned_abs().pow(2) + b.unsigned_abs().pow(2)) {
            Ok(whole) => Coordinate::whole(c + BigInt::from(gap) * whole),
            Err(root) => Coordinate::with_root(c, BigInt::from(gap), Arc::new(root)),
        };
        Self::of(BigInt::from(a), BigInt::from(b), c, false)
    }

    /// The same line, where it counts as level though it slopes a little.
    pub(super) fn counted_as_level(self) -> Self {
        match self {
            Self::Sloped(slope) => {
                let SlopedLine { a, b, c, .. } = &*slope;
                Self::Sloped(Arc::new(SlopedLine { a: a.clone(), b: b.clone(), c: c.clone(), counts_as_level: true }))
            }
            line => line,
        }
    }

    /// `a x + b y = c`, where `b` is not zero; `a` and `b` need not be without a common factor.
    fn of(a: BigInt, b: BigInt, c: Coordinate, counts_as_level: bool) -> Self {
        if a == BigInt::ZERO {
            return Self::Level(Coordinate::sum(&[(&BigInt::one(), &c)], &b));
        }
        let common = if a > BigInt::ZERO { a.gcd(&b) } else { -a.gcd(&b) };
        let c = if common.is_one() { c } else { Coordinate::sum(&[(&BigInt::one(), &c)], &common) };
        Self::Sloped(Arc::new(SlopedLine { a: a / &common, b: b / &common, c, counts_as_level }))
    }

    /// The same line where every point is lowered by `(rise * (x - x0) + height * run) / run`: seen from a course that
    /// rises by `rise` in `run` and lies `height` higher at `x0`. `run` is over zero.
    pub(super) fn lowered(&self, (x0, height): (i64, i64), (run, rise): (i64, i64)) -> Self {
        let [x0, height, run, rise] = [x0, height, run, rise].map(BigInt::from);
        // b y + a x = c with y = lowered + (rise (x - x0) + height run) / run, times run.
        let less = &height * &run - &rise * &x0;
        let lowered = |a: &BigInt, b: &BigInt, c: &Coordinate, counts_as_level: bool| {
            let c = Coordinate::sum(&[(&run, c), (&-(b * &less), &Coordinate::Whole(1))], &BigInt::one());
            Self::of(a * &run + b * &rise, b * &run, c, counts_as_level)
        };
        match self {
            Self::Plumb(_) => self.clone(),
            Self::Level(y) => lowered(&BigInt::ZERO, &BigInt::one(), y, true),
            Self::Sloped(slope) => lowered(&slope.a, &slope.b, &slope.c, slope.counts_as_level),
        }
    }

    /// Where it meets a level; `None` for a level line.
    pub(super) fn x_at(&self, y: &Coordinate) -> Option<Coordinate> {
        match self {
            Self::Plumb(x) => Some(Coordinate::Whole(*x)),
            Self::Level(_) => None,
            Self::Sloped(slope) => Some(Coordinate::sum(&[(&BigInt::one(), &slope.c), (&-&slope.b, y)], &slope.a)),
        }
    }

    /// Where it meets a plumb line; `None` for a plumb one.
    pub(super) fn y_at(&self, x: &Coordinate) -> Option<Coordinate> {
        match self {
            Self::Plumb(_) => None,
            Self::Level(y) => Some(y.clone()),
            Self::Sloped(slope) => Some(Coordinate::sum(&[(&BigInt::one(), &slope.c), (&-&slope.a, x)], &slope.b)),
        }
    }

    /// Where two lines meet; `None` for parallel ones.
    pub(super) fn meet(&self, other: &Self) -> Option<ExactPoint> {
        match (self, other) {
            (Self::Plumb(x), line) | (line, Self::Plumb(x)) => {
                let x = Coordinate::Whole(*x);
                Some(ExactPoint { y: line.y_at(&x)?, x })
            }
            (Self::Level(y), line) | (line, Self::Level(y)) => Some(ExactPoint { x: line.x_at(y)?, y: y.clone() }),
            (Self::Sloped(own), Self::Sloped(other)) => {
                let turn = &own.a * &other.b - &other.a * &own.b;
                if turn == BigInt::ZERO {
                    return None;
                }
                let x = Coordinate::sum(&[(&other.b, &own.c), (&-&own.b, &other.c)], &turn);
                let y = Coordinate::sum(&[(&own.a, &other.c), (&-&other.a, &own.c)], &turn);
                Some(ExactPoint { x, y })
            }
        }
    }

    /// On which side a point lies, and whether on the line itself. The sides have no names.
    pub(super) fn side(&self, spot: &ExactPoint) -> Ordering {
        match self {
            Self::Plumb(x) => spot.x.cmp(&Coordinate::Whole(*x)),
            Self::Level(y) => spot.y.cmp(y),
            Self::Sloped(slope) => {
                let minus = BigInt::from(-1);
                let terms = [(&slope.a, &spot.x), (&slope.b, &spot.y), (&minus, &slope.c)];
                Coordinate::sum(&terms, &BigInt::one()).sign()
            }
        }
    }

    /// Whether it runs the same way as another line.
    pub(super) fn is_parallel(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Plumb(_), Self::Plumb(_)) | (Self::Level(_), Self::Level(_)) => true,
            (Self::Sloped(own), Self::Sloped(other)) => {
                Arc::ptr_eq(own, other) || (own.a == other.a && own.b == other.b)
            }
            _ => false,
        }
    }

    pub(super) const fn is_sloped(&self) -> bool {
        matches!(self, Self::Sloped(_))
    }

    pub(super) const fn is_plumb(&self) -> bool {
        matches!(self, Self::Plumb(_))
    }

    /// Whether it is level on the wall or along its course, or should be.
    pub(super) fn is_level(&self) -> bool {
        match self {
            Self::Plumb(_) => false,
            Self::Level(_) => true,
            Self::Sloped(slope) => slope.counts_as_level,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spot(x: i64, y: i64) -> ExactPoint {
        ExactPoint { x: Coordinate::of(Length::from_nm(x)), y: Coordinate::of(Length::from_nm(y)) }
    }

    fn point(x: i64, y: i64) -> Point {
        Point::new(Length::from_nm(x), Length::from_nm(y))
    }

    #[test]
    fn a_line_moves_to_the_left_of_its_way() {
        let moved = |from: (i64, i64), to: (i64, i64)| {
            EdgeLine::through(point(from.0, from.1), point(to.0, to.1), Length::from_nm(13))
        };
        assert!(matches!(moved((0, 0), (9, 0)), EdgeLine::Level(Coordinate::Whole(26))));
        assert!(matches!(moved((9, 0), (0, 0)), EdgeLine::Level(Coordinate::Whole(-26))));
        assert!(matches!(moved((5, 0), (5, 9)), EdgeLine::Plumb(-16)));
        assert!(matches!(moved((5, 9), (5, 0)), EdgeLine::Plumb(36)));
        // 5-12-13: (12, 5) from the origin moves up by 13 / cos = 13 * 13 / 12.
        let rake = moved((0, 0), (24, 10));
        let up = rake.y_at(&Coordinate::ZERO).unwrap();
        assert_eq!(up, Coordinate::sum(&[(&BigInt::from(2 * 169), &Coordinate::Whole(1))], &BigInt::from(12)));
        let down = moved((24, 10), (0, 0)).y_at(&Coordinate::ZERO).unwrap();
        assert_eq!(down, Coordinate::sum(&[(&BigInt::from(-2 * 169), &Coordinate::Whole(1))], &BigInt::from(12)));
    }

    #[test]
    fn lowered_lines_pass_lowered_points() {
        // A course that rises by 3 in 100 and lies 7 higher at 40.
        let rise =
            |x: i64| Coordinate::sum(&[(&BigInt::from(3 * (x - 40) + 700), &Coordinate::Whole(1))], &BigInt::from(100));
        for line in [
            EdgeLine::through(point(0, 0), point(30, 11), Length::from_nm(5)),
            EdgeLine::through(point(0, 0), point(100, 3), Length::from_nm(5)),
            EdgeLine::through(point(0, 20), point(30, 20), Length::from_nm(5)),
        ] {
            let lowered = line.lowered((40, 7), (100, 3));
            for x in [-50, 0, 40, 77] {
                let x_number = Coordinate::Whole(x);
                let wanted = line.y_at(&x_number).unwrap().less(&rise(x));
                assert_eq!(lowered.y_at(&x_number).unwrap(), wanted, "{line:?} at {x}");
            }
            assert_eq!(lowered.is_level(), matches!(line, EdgeLine::Level(_)) || matches!(lowered, EdgeLine::Level(_)));
        }
        assert!(matches!(EdgeLine::Plumb(4).lowered((40, 7), (100, 3)), EdgeLine::Plumb(4)));
    }

    #[test]
    fn two_rakes_meet_over_the_middle() {
        // 1 in 1, moved square to itself by 10: 10 sqrt(2) down.
        let left = EdgeLine::through(point(50, 50), point(0, 0), Length::from_nm(10));
        let right = EdgeLine::through(point(100, 0), point(50, 50), Length::from_nm(10));
        let peak = left.meet(&right).unwrap();
        assert_eq!(peak.x, Coordinate::Whole(100));
        assert_eq!(peak.y.floor(), 100 - 29, "20 sqrt(2) = 28.28 half nanometres lower");
        assert_eq!(left.side(&peak), Ordering::Equal);
        assert_eq!(right.side(&peak), Ordering::Equal);
        assert_ne!(left.side(&spot(0, -50)), left.side(&spot(0, 50)));
        assert!(left.meet(&left).is_none() && left.is_parallel(&left) && !left.is_parallel(&right));
    }
}
