use super::BoardShape;
use super::shape::BoxSide;
use crate::measure::Length;
use crate::siding::Pitch;
use crate::wall::Point;

/// An end of a board, seen from its face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BoardEnd {
    /// The left one.
    Left,
    /// The right one.
    Right,
}

/// A long edge of a board.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LongEdge {
    /// The lower one, which shows.
    Bottom,
    /// The upper one, which the next course hides.
    Top,
}

/// A corner of a board, seen from its face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct BoardCorner {
    /// At which end.
    pub end: BoardEnd,
    /// At which long edge.
    pub edge: LongEdge,
}

/// One cut of a board, or one way of the saw. Lengths are measured along the board from its left end and up from its lower
/// edge, as it hangs, seen from its face.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SawCut {
    /// Square across, to this length: from the board's leftmost to its rightmost point.
    Length(Length),
    /// Along the whole board.
    Rip {
        /// The edge that something is taken off.
        edge: LongEdge,
        /// How much at the left end.
        left: Length,
        /// How much at the right end.
        right: Length,
    },
    /// Across the whole height, out of square.
    Bevel {
        /// The end.
        end: BoardEnd,
        /// How far from the end the cut meets the bottom edge.
        bottom: Length,
        /// How far from the end the cut meets the top edge.
        top: Length,
    },
    /// A corner cut off straight.
    Clip {
        /// The corner.
        corner: BoardCorner,
        /// How much of the long edge it takes.
        along: Length,
        /// How much of the end it takes.
        up: Length,
    },
    /// A corner taken out square: an L.
    Step {
        /// The corner.
        corner: BoardCorner,
        /// How much of the long edge it takes.
        along: Length,
        /// How much of the end it takes.
        up: Length,
    },
    /// A notch with square sides in one side of the board.
    Notch {
        /// The side.
        side: BoxSide,
        /// Where along the side it begins: the lesser of both.
        from: Length,
        /// Where along the side it ends.
        to: Length,
        /// How deep it is where it begins and where it ends.
        depth: [Length; 2],
    },
    /// A hole with square corners.
    Hole {
        /// Its left edge.
        left: Length,
        /// Its right edge.
        right: Length,
        /// Its lower edge.
        bottom: Length,
        /// Its upper edge.
        top: Length,
    },
    /// Any other way of the saw.
    Contour {
        /// The corners it goes by.
        corners: Vec<Point>,
        /// Whether it ends where it begins: a hole.
        is_closed: bool,
    },
}

impl BoardEnd {
    /// The same end seen from behind the board.
    #[must_use]
    pub const fn from_behind(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

impl BoardCorner {
    /// The same corner seen from behind the board.
    #[must_use]
    pub const fn from_behind(self) -> Self {
        Self { end: self.end.from_behind(), edge: self.edge }
    }
}

impl SawCut {
    /// The same cut seen from behind a board of this length.
    #[must_use]
    pub fn from_behind(&self, length: Length) -> Self {
        match self {
            Self::Length(_) => self.clone(),
            Self::Rip { edge, left, right } => Self::Rip { edge: *edge, left: *right, right: *left },
            Self::Bevel { end, bottom, top } => Self::Bevel { end: end.from_behind(), bottom: *bottom, top: *top },
            Self::Clip { corner, along, up } => Self::Clip { corner: corner.from_behind(), along: *along, up: *up },
            Self::Step { corner, along, up } => Self::Step { corner: corner.from_behind(), along: *along, up: *up },
            Self::Notch { side, from, to, depth: [at_from, at_to] } => match side {
                BoxSide::Left => Self::Notch { side: BoxSide::Right, from: *from, to: *to, depth: [*at_from, *at_to] },
                BoxSide::Right => Self::Notch { side: BoxSide::Left, from: *from, to: *to, depth: [*at_from, *at_to] },
                BoxSide::Bottom | BoxSide::Top => {
                    Self::Notch { side: *side, from: length - *to, to: length - *from, depth: [*at_to, *at_from] }
                }
            },
            Self::Hole { left, right, bottom, top } => {
                Self::Hole { left: length - *right, right: length - *left, bottom: *bottom, top: *top }
            }
            Self::Contour { corners, is_closed } => Self::Contour {
                corners: corners.iter().rev().map(|own| Point::new(length - own.x, own.y)).collect(),
                is_closed: *is_closed,
            },
        }
    }

    /// Where the cut is marked along the board, as distances from one end, the nearest first. They hold on the face and on
    /// the back alike: there the end is the other hand's.
    pub fn marks(&self, from: BoardEnd, length: Length) -> Vec<Length> {
        let at_end = |end: BoardEnd, inset: Length| if end == BoardEnd::Left { inset } else { length - inset };
        let mut xs = match self {
            Self::Length(own) => vec![if from == BoardEnd::Left { *own } else { Length::ZERO }],
            Self::Rip { .. } => Vec::new(),
            Self::Bevel { end, bottom, top } => vec![at_end(*end, *bottom), at_end(*end, *top)],
            Self::Clip { corner, along, .. } | Self::Step { corner, along, .. } => vec![at_end(corner.end, *along)],
            Self::Notch { side: BoxSide::Left, depth, .. } => depth.to_vec(),
            Self::Notch { side: BoxSide::Right, depth, .. } => depth.iter().map(|depth| length - *depth).collect(),
            Self::Notch { from, to, .. } => vec![*from, *to],
            Self::Hole { left, right, .. } => vec![*left, *right],
            Self::Contour { corners, .. } => corners.iter().map(|corner| corner.x).collect(),
        };
        if from == BoardEnd::Right {
            xs.iter_mut().for_each(|x| *x = length - *x);
        }
        xs.sort();
        xs.dedup();
        xs
    }

    /// The angle of a slanting cut in degrees: of a bevel from square across, of a clipped corner from the long edge.
    pub fn degrees(&self, height: Length) -> Option<f64> {
        let (rise, run) = match self {
            Self::Bevel { bottom, top, .. } => ((*top - *bottom).abs(), height),
            Self::Clip { along, up, .. } => (*up, *along),
            _ => return None,
        };
        let whole = |length: Length| num_rational::BigRational::from_integer(length.nm().into());
        Pitch::new(&whole(rise), &whole(run)).map(|pitch| pitch.degrees())
    }

    /// The cuts of a board's outline and holes within its box, on the way round it from its lowest, then leftmost corner.
    pub(super) fn within(shape: &BoardShape) -> Vec<Self> {
        let mut cuts: Vec<Self> = chains(shape).iter().map(|chain| Self::of_chain(shape, chain)).collect();
        cuts.extend(shape.holes.iter().map(|ring| Self::of_hole(ring)));
        cuts
    }

    fn of_hole(ring: &[Point]) -> Self {
        // From its lowest, then leftmost corner clockwise.
        match ring {
            [one, two, three, four] if one.x == two.x && two.y == three.y && three.x == four.x && four.y == one.y => {
                Self::Hole { left: one.x, right: three.x, bottom: one.y, top: three.y }
            }
            _ => Self::Contour { corners: ring.to_vec(), is_closed: true },
        }
    }

    fn of_chain(shape: &BoardShape, chain: &[Point]) -> Self {
        let (length, height) = (shape.length, shape.height);
        let found = match chain {
            [from, to] => Self::straight(length, height, *from, *to),
            [from, corner, to] => Self::square_corner(*from, *corner, *to),
            [from, near, far, to] => Self::notch(length, height, [*from, *near, *far, *to]),
            _ => None,
        };
        found.unwrap_or_else(|| Self::Contour { corners: chain.to_vec(), is_closed: false })
    }

    /// The board lies to the left of the way from one point to the other.
    fn straight(length: Length, height: Length, from: Point, to: Point) -> Option<Self> {
        let (across, up) = ((to.x - from.x).abs(), (to.y - from.y).abs());
        if up == height {
            let rises = to.y > from.y;
            let (low, high) = if rises { (from, to) } else { (to, from) };
            let end = if rises { BoardEnd::Right } else { BoardEnd::Left };
            let inset = |own: Point| if rises { length - own.x } else { own.x };
            return Some(Self::Bevel { end, bottom: inset(low), top: inset(high) });
        }
        if across == length {
            let edge = if to.x > from.x { LongEdge::Bottom } else { LongEdge::Top };
            let (left, right) = if to.x > from.x { (from, to) } else { (to, from) };
            let taken = |own: Point| if edge == LongEdge::Bottom { own.y } else { height - own.y };
            return Some(Self::Rip { edge, left: taken(left), right: taken(right) });
        }
        let corner = BoardCorner::cut_off(from, to)?;
        Some(Self::Clip { corner, along: across, up })
    }

    fn square_corner(from: Point, corner: Point, to: Point) -> Option<Self> {
        let is_square = (from.x == corner.x && corner.y == to.y) || (from.y == corner.y && corner.x == to.x);
        let own = BoardCorner::cut_off(from, to)?;
        // An L has its own corner towards the middle of the board.
        let inside = match own.end {
            BoardEnd::Left => from.x.max(to.x),
            BoardEnd::Right => from.x.min(to.x),
        };
        let (along, up) = ((to.x - from.x).abs(), (to.y - from.y).abs());
        (is_square && corner.x == inside).then_some(Self::Step { corner: own, along, up })
    }

    fn notch(length: Length, height: Length, [from, near, far, to]: [Point; 4]) -> Option<Self> {
        let plumb = from.x == near.x && far.x == to.x && from.y == to.y;
        let level = from.y == near.y && far.y == to.y && from.x == to.x;
        let notch = |side, from, to, depth| Some(Self::Notch { side, from, to, depth });
        if plumb && from.y == Length::ZERO {
            notch(BoxSide::Bottom, from.x, to.x, [near.y, far.y])
        } else if plumb && from.y == height {
            notch(BoxSide::Top, to.x, from.x, [height - far.y, height - near.y])
        } else if level && from.x == length {
            notch(BoxSide::Right, from.y, to.y, [length - near.x, length - far.x])
        } else if level && from.x == Length::ZERO {
            notch(BoxSide::Left, to.y, from.y, [far.x, near.x])
        } else {
            None
        }
    }
}

impl BoardCorner {
    /// The corner that a way from one side of the box to the next one cuts off, the board to its left.
    fn cut_off(from: Point, to: Point) -> Option<Self> {
        let (end, edge) = match (to.x.cmp(&from.x), to.y.cmp(&from.y)) {
            (std::cmp::Ordering::Greater, std::cmp::Ordering::Greater) => (BoardEnd::Right, LongEdge::Bottom),
            (std::cmp::Ordering::Less, std::cmp::Ordering::Greater) => (BoardEnd::Right, LongEdge::Top),
            (std::cmp::Ordering::Less, std::cmp::Ordering::Less) => (BoardEnd::Left, LongEdge::Top),
            (std::cmp::Ordering::Greater, std::cmp::Ordering::Less) => (BoardEnd::Left, LongEdge::Bottom),
            _ => return None,
        };
        Some(Self { end, edge })
    }
}

/// The ways of a board's outline through the inside of its box, from one of the box's sides to another.
fn chains(shape: &BoardShape) -> Vec<Vec<Point>> {
    let on_side =
        |own: &Point| own.x == Length::ZERO || own.x == shape.length || own.y == Length::ZERO || own.y == shape.height;
    // The first corner is the lowest one, so it lies on a side.
    let mut chains = Vec::new();
    let mut chain: Vec<Point> = Vec::new();
    for own in shape.corners.iter().chain(shape.corners.first()) {
        chain.push(*own);
        if on_side(own) {
            if !along_side(shape, &chain) && chain.len() > 1 {
                chains.push(chain);
            }
            chain = vec![*own];
        }
    }
    chains
}

/// Whether an edge runs along a side of the box.
pub(super) fn along_side(shape: &BoardShape, edge: &[Point]) -> bool {
    let [from, to] = edge else { return false };
    (from.x == to.x && (from.x == Length::ZERO || from.x == shape.length))
        || (from.y == to.y && (from.y == Length::ZERO || from.y == shape.height))
}
