use thiserror::Error;

use crate::measure::Length;

/// A point of a wall, seen from outside: `x` right from the wall's left datum, `y` up from its base line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Point {
    /// To the right.
    pub x: Length,
    /// Up.
    pub y: Length,
}

impl Point {
    /// The point at `x`, `y`.
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }
}

/// A stretch of a wall at one height.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Span {
    /// The left end.
    pub from: Length,
    /// The right end.
    pub to: Length,
}

impl Span {
    /// From end to end.
    pub fn length(self) -> Length {
        self.to - self.from
    }
}

/// The outline of a wall's siding: a simple polygon, counter-clockwise from the left end of the base line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outline {
    points: Vec<Point>,
}

/// Why some points are not the outline of a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum OutlineError {
    /// Fewer than three corners.
    #[error("an outline has at least three corners, not {0}")]
    TooFew(usize),
    /// More corners than are taken.
    #[error("an outline has at most {limit} corners", limit = Outline::LIMIT)]
    TooMany,
    /// A side without length.
    #[error("corner {0} lies on the corner before it")]
    Repeated(usize),
    /// Two sides meet where they should not.
    #[error("the side from corner {0} crosses the side from corner {1}")]
    Crossing(usize, usize),
    /// No area, or drawn clockwise.
    #[error("the corners do not run counter-clockwise round an area")]
    Clockwise,
    /// A measured size that is not over zero.
    #[error("{0} must be more than zero")]
    NotPositive(&'static str),
}

impl Outline {
    /// The most corners of an outline.
    pub const LIMIT: usize = 10_000;

    /// The outline through these corners, counter-clockwise.
    ///
    /// # Errors
    /// [`OutlineError`] where the corners do not make a simple polygon.
    pub fn new(points: Vec<Point>) -> Result<Self, OutlineError> {
        if points.len() < 3 {
            return Err(OutlineError::TooFew(points.len()));
        }
        if points.len() > Self::LIMIT {
            return Err(OutlineError::TooMany);
        }
        let outline = Self { points };
        let sides: Vec<(Point, Point)> = outline.sides().collect();
        if let Some(at) = sides.iter().position(|side| side.0 == side.1) {
            return Err(OutlineError::Repeated((at + 1) % sides.len()));
        }
        if let Some((at, other_at)) = crossing(&sides) {
            return Err(OutlineError::Crossing(at, other_at));
        }
        if outline.twice_area() <= 0 { Err(OutlineError::Clockwise) } else { Ok(outline) }
    }

    /// The outline through these corners, either way round.
    ///
    /// # Errors
    /// As [`Outline::new`], but for [`OutlineError::Clockwise`].
    pub fn either_way(mut points: Vec<Point>) -> Result<Self, OutlineError> {
        match Self::new(points.clone()) {
            Err(OutlineError::Clockwise) => {
                points.reverse();
                Self::new(points)
            }
            outline => outline,
        }
    }

    /// A wall of this width with a height at each end.
    ///
    /// # Errors
    /// [`OutlineError::NotPositive`] for a size that is not over zero.
    pub fn with_ends(width: Length, left: Length, right: Length) -> Result<Self, OutlineError> {
        for (size, name) in [(width, "width"), (left, "left height"), (right, "right height")] {
            if !size.is_positive() {
                return Err(OutlineError::NotPositive(name));
            }
        }
        let zero = Length::ZERO;
        Self::new(vec![
            Point::new(zero, zero),
            Point::new(width, zero),
            Point::new(width, right),
            Point::new(zero, left),
        ])
    }

    /// A wall of this width and end heights under a gable whose peak stands over `peak_x` at the height `peak`.
    ///
    /// # Errors
    /// As [`Outline::new`].
    pub fn with_gable(
        width: Length,
        left: Length,
        right: Length,
        peak_x: Length,
        peak: Length,
    ) -> Result<Self, OutlineError> {
        let zero = Length::ZERO;
        Self::new(vec![
            Point::new(zero, zero),
            Point::new(width, zero),
            Point::new(width, right),
            Point::new(peak_x, peak),
            Point::new(zero, left),
        ])
    }

    /// The corners, counter-clockwise.
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// The sides, each from its first corner to its second.
    pub fn sides(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        self.points.iter().copied().zip(self.points.iter().copied().cycle().skip(1))
    }

    /// From the leftmost to the rightmost corner.
    pub fn width(&self) -> Length {
        let xs = || self.points.iter().map(|point| point.x);
        xs().max().unwrap_or_default() - xs().min().unwrap_or_default()
    }

    /// The highest corner.
    pub fn top(&self) -> Length {
        self.points.iter().map(|point| point.y).max().unwrap_or_default()
    }

    /// The lowest corner.
    pub fn bottom(&self) -> Length {
        self.points.iter().map(|point| point.y).min().unwrap_or_default()
    }

    /// Twice the area in square nanometres; over zero for a valid outline.
    pub fn twice_area(&self) -> i128 {
        self.sides().map(|(a, b)| a.x.wide() * b.y.wide() - b.x.wide() * a.y.wide()).sum()
    }

    /// Whether a rectangle lies on the wall; it may touch its sides.
    pub fn holds(&self, x: Span, y: Span) -> bool {
        // Between two corners' heights the sides run straight, so looking at both ends of each such stretch is enough.
        let below = |height: Length| height - Length::from_nm(1);
        let between = self.points.iter().map(|point| point.y).filter(|height| y.from < *height && *height < y.to);
        let mut heights = vec![y.from, below(y.to).max(y.from)];
        heights.extend(between.flat_map(|height| [height, below(height)]));
        let on_wall = |height: Length| self.spans_at(height).iter().any(|span| span.from <= x.from && x.to <= span.to);
        heights.into_iter().all(on_wall)
    }

    /// The stretches of the wall at a height, from left to right, each end to the nearest nanometre.
    ///
    /// A height on a corner counts as just above it.
    pub fn spans_at(&self, y: Length) -> Vec<Span> {
        let mut crossings: Vec<Length> = self
            .sides()
            .filter(|(a, b)| (a.y <= y) != (b.y <= y))
            .filter_map(|(a, b)| {
                let rise = (b.y - a.y).wide();
                let along = (b.x - a.x).wide() * (y - a.y).wide();
                crate::measure::round_half_away(along, rise).and_then(Length::from_wide).map(|along| a.x + along)
            })
            .collect();
        crossings.sort_unstable();
        crossings.chunks_exact(2).filter_map(|pair| Some(Span { from: *pair.first()?, to: *pair.get(1)? })).collect()
    }
}

/// Two sides that share more than the corner of neighbours.
fn crossing(sides: &[(Point, Point)]) -> Option<(usize, usize)> {
    let mut order: Vec<(usize, &(Point, Point))> = sides.iter().enumerate().collect();
    order.sort_by_key(|(_, side)| side.0.x.min(side.1.x));
    let last = sides.len().saturating_sub(1);
    // Only sides that lie over or beside each other are looked at.
    order.iter().enumerate().find_map(|(place, (at, side))| {
        let (right, low, high) = (side.0.x.max(side.1.x), side.0.y.min(side.1.y), side.0.y.max(side.1.y));
        let near = order.iter().skip(place + 1).take_while(|(_, other)| other.0.x.min(other.1.x) <= right);
        near.filter(|(_, other)| other.0.y.min(other.1.y) <= high && low <= other.0.y.max(other.1.y)).find_map(
            |(other_at, other)| {
                let (first, second) = (*at.min(other_at), *at.max(other_at));
                let neighbours = second == first + 1 || (first == 0 && second == last);
                let (one, two) = if at < other_at { (*side, *other) } else { (*other, *side) };
                let meet = if neighbours { fold_back(*one, *two) } else { touch(*one, *two) };
                meet.then_some((first, second))
            },
        )
    })
}

/// Which side of the line through `a` and `b` the point `c` lies on.
fn turn(a: Point, b: Point, c: Point) -> i128 {
    ((b.x - a.x).wide() * (c.y - a.y).wide() - (b.y - a.y).wide() * (c.x - a.x).wide()).signum()
}

fn within(a: Point, b: Point, c: Point) -> bool {
    c.x >= a.x.min(b.x) && c.x <= a.x.max(b.x) && c.y >= a.y.min(b.y) && c.y <= a.y.max(b.y)
}

/// Whether two sides share a point.
fn touch((a, b): (Point, Point), (c, d): (Point, Point)) -> bool {
    let (abc, abd, cda, cdb) = (turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b));
    (abc * abd < 0 && cda * cdb < 0)
        || (abc == 0 && within(a, b, c))
        || (abd == 0 && within(a, b, d))
        || (cda == 0 && within(c, d, a))
        || (cdb == 0 && within(c, d, b))
}

/// Whether two sides that share a corner share more than it.
fn fold_back(first: (Point, Point), second: (Point, Point)) -> bool {
    let (corner, far, other) =
        if first.1 == second.0 { (first.1, first.0, second.1) } else { (first.0, first.1, second.0) };
    turn(far, corner, other) == 0 && (within(corner, far, other) || within(corner, other, far))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(x: i64, y: i64) -> Point {
        Point::new(Length::from_inches(x), Length::from_inches(y))
    }

    #[test]
    fn a_gable_narrows_upward() {
        let n = Length::from_inches;
        let gable = Outline::with_gable(n(240), n(96), n(96), n(120), n(156)).unwrap();
        assert_eq!(gable.spans_at(n(10)), [Span { from: n(0), to: n(240) }]);
        assert_eq!(gable.spans_at(n(126)), [Span { from: n(60), to: n(180) }]);
        assert_eq!(gable.spans_at(n(156)), []);
        assert_eq!(gable.twice_area(), i128::from(2 * (240 * 96 + 240 * 60 / 2)) * n(1).wide() * n(1).wide());
    }

    #[test]
    fn a_rectangle_stays_under_the_rake_and_over_the_base() {
        let n = Length::from_inches;
        let span = |from, to| Span { from: n(from), to: n(to) };
        let gable = Outline::with_gable(n(240), n(96), n(96), n(120), n(156)).unwrap();
        // The rake rises 1 in 2: at 126 in the wall reaches from 60 to 180 in.
        assert!(gable.holds(span(60, 180), span(100, 126)));
        assert!(!gable.holds(span(59, 180), span(100, 126)));
        assert!(!gable.holds(span(60, 181), span(100, 126)));
        assert!(gable.holds(span(0, 240), span(0, 96)));
        let stepped = Outline::new(vec![
            inches(0, 0),
            inches(40, 0),
            inches(40, 20),
            inches(100, 20),
            inches(100, 90),
            inches(0, 90),
        ]);
        let stepped = stepped.unwrap();
        assert!(stepped.holds(span(40, 100), span(20, 90)));
        assert!(!stepped.holds(span(30, 60), span(10, 30)));
        assert!(!stepped.holds(span(90, 101), span(30, 40)));
    }

    #[test]
    fn a_notched_base_has_two_stretches() {
        let points = vec![
            inches(0, 0),
            inches(40, 0),
            inches(40, 20),
            inches(60, 20),
            inches(60, 0),
            inches(100, 0),
            inches(100, 90),
            inches(0, 90),
        ];
        let outline = Outline::new(points).unwrap();
        let n = Length::from_inches;
        assert_eq!(outline.spans_at(n(5)), [Span { from: n(0), to: n(40) }, Span { from: n(60), to: n(100) }]);
        assert_eq!(outline.spans_at(n(20)), [Span { from: n(0), to: n(100) }]);
    }

    #[test]
    fn refuses_what_is_not_simple() {
        assert_eq!(Outline::new(vec![inches(0, 0), inches(1, 0)]), Err(OutlineError::TooFew(2)));
        let bow = vec![inches(0, 0), inches(10, 10), inches(10, 0), inches(0, 10)];
        assert!(matches!(Outline::new(bow), Err(OutlineError::Crossing(..))));
        let clockwise = vec![inches(0, 0), inches(0, 10), inches(10, 10), inches(10, 0)];
        assert_eq!(Outline::new(clockwise), Err(OutlineError::Clockwise));
        let spike = vec![inches(0, 0), inches(10, 0), inches(5, 0), inches(5, 10)];
        assert!(matches!(Outline::new(spike), Err(OutlineError::Crossing(..))));
        assert_eq!(
            Outline::with_ends(Length::ZERO, Length::from_mm(1), Length::from_mm(1)),
            Err(OutlineError::NotPositive("width"))
        );
    }
}
