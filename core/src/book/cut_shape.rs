use crate::measure::Length;
use crate::wall::Point;

/// A piece of board as it was cut, seen from its face and measured from the lower left corner of its box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutShape {
    /// Its corners counter-clockwise, from the lowest, then leftmost one.
    pub corners: Vec<Point>,
    /// The corners of its holes, clockwise.
    pub holes: Vec<Vec<Point>>,
}

impl CutShape {
    /// Whether it is another shape but for corners that lie no farther apart than `by`, along the board and up.
    pub fn is_within(&self, other: &Self, by: Length) -> bool {
        let near = |(one, other): (&Point, &Point)| (one.x - other.x).abs() <= by && (one.y - other.y).abs() <= by;
        let same = |one: &[Point], other: &[Point]| one.len() == other.len() && one.iter().zip(other).all(near);
        let holes = self.holes.len() == other.holes.len();
        holes && same(&self.corners, &other.corners) && self.holes.iter().zip(&other.holes).all(|(a, b)| same(a, b))
    }

    /// Pieces as the book keeps them: nanometres, `x,y x,y …` for each outline and behind a `;` for each of its holes, pieces
    /// parted by `|`.
    pub(super) fn text(pieces: &[Self]) -> String {
        let corner = |own: &Point| format!("{},{}", own.x.nm(), own.y.nm());
        let ring = |ring: &Vec<Point>| ring.iter().map(corner).collect::<Vec<_>>().join(" ");
        let piece =
            |own: &Self| std::iter::once(&own.corners).chain(&own.holes).map(ring).collect::<Vec<_>>().join(";");
        pieces.iter().map(piece).collect::<Vec<_>>().join("|")
    }

    /// Reads what [`CutShape::text`] wrote.
    pub(super) fn read(text: &str) -> Option<Vec<Self>> {
        text.split('|').map(Self::piece).collect()
    }

    fn piece(text: &str) -> Option<Self> {
        let corner = |text: &str| {
            let (x, y) = text.split_once(',')?;
            let [x, y] = [x, y].map(|nm| nm.parse().ok().map(Length::from_nm));
            Some(Point::new(x?, y?))
        };
        let ring = |text: &str| {
            let corners: Option<Vec<Point>> = text.split(' ').map(corner).collect();
            corners.filter(|corners| corners.len() > 2)
        };
        let mut rings = text.split(';').map(ring);
        Some(Self { corners: rings.next()??, holes: rings.collect::<Option<_>>()? })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(corners: &[(i64, i64)]) -> Vec<Point> {
        corners.iter().map(|(x, y)| Point::new(Length::from_nm(*x), Length::from_nm(*y))).collect()
    }

    #[test]
    fn what_is_kept_is_read_again_and_nothing_else() {
        let plain = CutShape { corners: ring(&[(0, 0), (90, 0), (90, 8), (0, 8)]), holes: Vec::new() };
        let holed =
            CutShape { holes: vec![ring(&[(2, 2), (2, 4), (5, 4)]), ring(&[(7, 1), (7, 2), (9, 1)])], ..plain.clone() };
        for pieces in [vec![plain.clone()], vec![holed.clone(), plain.clone()]] {
            assert_eq!(CutShape::read(&CutShape::text(&pieces)), Some(pieces));
        }
        assert_eq!(CutShape::text(&[plain]), "0,0 90,0 90,8 0,8");
        for bad in ["", "0,0", "0,0 1,0", "0,0 1,0 1,1;", "0,0 1,0 1,1|", "0,0 1,0 1", "0,0 1,0 1,y", "0,0  1,0 1,1"] {
            assert_eq!(CutShape::read(bad), None, "{bad}");
        }
    }

    #[test]
    fn shapes_are_the_same_up_to_what_is_asked() {
        let shape = |x: i64| CutShape {
            corners: ring(&[(0, 0), (90, 0), (x, 8)]),
            holes: vec![ring(&[(2, 2), (2, 4), (x, 4)])],
        };
        let nm = Length::from_nm;
        assert!(shape(50).is_within(&shape(53), nm(3)) && !shape(50).is_within(&shape(54), nm(3)));
        let whole = CutShape { holes: Vec::new(), ..shape(50) };
        assert!(!whole.is_within(&shape(50), nm(100)) && !shape(50).is_within(&whole, nm(100)));
    }
}
