use super::saw_cut::along_side;
use super::{BoardEnd, BoardShape, BoxSide, LongEdge, SawCut};
use crate::measure::{Length, round_half_away};
use crate::wall::{Point, Span};

/// What a carpenter does with a factory board to get a shape.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Instructions {
    /// The factory edge that stays: the bottom one, which shows, wherever any of it can; a rip is taken off the other one.
    pub kept: LongEdge,
    /// The end that marks are measured from: one that is square over the whole height, where there is one.
    pub measured_from: BoardEnd,
    /// How long the bottom edge is from its first to its last point, and the top edge.
    pub edges: EdgeLengths,
    /// The cuts in their order.
    pub cuts: Vec<Instruction>,
    /// Where it is nailed.
    pub nailing: Nailing,
    /// The edges that are cut, and primed before the board goes up: all that the factory did not make. Whether an end is one
    /// of the stock's own is not known here.
    pub primed: Vec<[Point; 2]>,
}

/// How long a board is at its two long edges.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct EdgeLengths {
    /// At the bottom; zero where it is a point.
    pub bottom: Length,
    /// At the top.
    pub top: Length,
}

/// One cut, with what it is for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Instruction {
    /// The cut.
    pub cut: SawCut,
    /// The obstructions that it lets the board go round, by their places in the course; none where the outline asks for it.
    pub around: Vec<usize>,
    /// The narrowest that stays beside it, over it or under it: what may break off.
    pub leaves: Length,
}

/// Where a board is nailed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Nailing {
    /// How high over the bottom of the board's box its nail line lies.
    pub line: Length,
    /// Where the nail line lies on the board.
    pub blind: Vec<Span>,
    /// Where the board goes on but its nail line is cut away: nailed through the face.
    pub face: Vec<Span>,
}

/// The boards between two joints: more than one where the board is cut right through.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Section {
    /// Their places among the course's boards, from left to right.
    pub boards: Vec<usize>,
    /// How far each begins to the right of all before it; under zero where one lies over another.
    pub open: Vec<Length>,
}

impl Instructions {
    /// How a shape is cut out of a factory board whose nail line lies so far below its top edge.
    ///
    /// The order keeps the board as strong as it can be for as long as possible (common practice, no source): first to
    /// length, since all marks go from an end; holes while the board has its full height; then the rip, before there are
    /// legs that a saw along the edge would shake; then the ends and corners; notches last, those that leave the thinnest
    /// leg at the very end.
    pub fn of(shape: &BoardShape, nail_line: Length) -> Self {
        let ends = EdgeLengths {
            bottom: from_end_to_end(shape, |own| own.y == Length::ZERO),
            top: from_end_to_end(shape, |own| own.y == shape.height),
        };
        let kept = if ends.bottom == Length::ZERO && ends.top.is_positive() { LongEdge::Top } else { LongEdge::Bottom };
        let mut within = SawCut::within(shape);
        let rips = rips(shape, kept, &mut within);
        let all: Vec<SawCut> = std::iter::once(SawCut::Length(shape.length)).chain(rips).chain(within).collect();
        let leaves: Vec<Length> = all.iter().map(|cut| leaves(shape, cut, &all)).collect();
        let with_leg = |(cut, leaves): (SawCut, Length)| Instruction { around: around(shape, &cut), cut, leaves };
        let mut cuts: Vec<Instruction> = all.into_iter().zip(leaves).map(with_leg).collect();
        cuts.sort_by_key(|own| (turn(&own.cut), std::cmp::Reverse(own.leaves)));
        Self {
            kept,
            measured_from: measured_from(shape),
            edges: ends,
            cuts,
            nailing: Nailing::of(shape, nail_line),
            primed: primed(shape, kept),
        }
    }
}

impl Nailing {
    /// Where a board is nailed whose nail line lies so far below the top edge of its full height.
    pub fn of(shape: &BoardShape, nail_line: Length) -> Self {
        let line = shape.height + shape.rip.top - nail_line;
        let blind = stretches_at(shape, line);
        let starts = std::iter::once(Length::ZERO).chain(blind.iter().map(|span| span.to));
        let ends = blind.iter().map(|span| span.from).chain([shape.length]);
        let face = starts.zip(ends).filter(|(from, to)| from < to).map(|(from, to)| Span { from, to });
        Self { line, face: face.collect(), blind }
    }

    /// Whether nothing of the nail line is left.
    pub fn is_gone(&self) -> bool {
        self.blind.is_empty()
    }
}

impl Section {
    /// The boards of a course, in their order, by the joints they lie between.
    pub fn of(boards: &[BoardShape]) -> Vec<Self> {
        let places: Vec<(usize, &BoardShape)> = boards.iter().enumerate().collect();
        let section = |own: &[(usize, &BoardShape)]| {
            let mut reach: Option<Length> = None;
            let mut open = Vec::new();
            for (_, board) in own {
                open.extend(reach.map(|reach| board.at.x - reach));
                let end = board.at.x + board.length;
                reach = Some(reach.map_or(end, |reach| reach.max(end)));
            }
            Self { boards: own.iter().map(|(at, _)| *at).collect(), open }
        };
        places.chunk_by(|one, next| one.1.section == next.1.section).map(section).collect()
    }
}

/// The distance between the first and the last corner of those that lie on an edge.
fn from_end_to_end(shape: &BoardShape, on_edge: impl Fn(&Point) -> bool) -> Length {
    let xs = || shape.corners.iter().filter(|own| on_edge(own)).map(|own| own.x);
    xs().max().unwrap_or_default() - xs().min().unwrap_or_default()
}

/// The rips: what the full height loses over the whole length, and what slants along the whole board.
fn rips(shape: &BoardShape, kept: LongEdge, within: &mut Vec<SawCut>) -> Vec<SawCut> {
    let lost = shape.rip.top + shape.rip.bottom;
    let mut rips = Vec::new();
    for edge in [LongEdge::Top, LongEdge::Bottom] {
        let whole = if edge == kept { Length::ZERO } else { lost };
        let (mut left, mut right) = (whole, whole);
        within.retain(|cut| match cut {
            SawCut::Rip { edge: own, left: own_left, right: own_right } if *own == edge => {
                left = left + *own_left;
                right = right + *own_right;
                false
            }
            _ => true,
        });
        if left != Length::ZERO || right != Length::ZERO {
            rips.push(SawCut::Rip { edge, left, right });
        }
    }
    rips
}

/// When a cut comes.
const fn turn(cut: &SawCut) -> u8 {
    match cut {
        SawCut::Length(_) => 0,
        SawCut::Hole { .. } | SawCut::Contour { is_closed: true, .. } => 1,
        SawCut::Rip { .. } => 2,
        SawCut::Bevel { .. } | SawCut::Clip { .. } | SawCut::Step { .. } => 3,
        SawCut::Notch { .. } | SawCut::Contour { is_closed: false, .. } => 4,
    }
}

/// From where to where a cut reaches along the board and up.
fn reach(shape: &BoardShape, cut: &SawCut) -> Option<(Span, Span)> {
    let span = |from, to| Span { from, to };
    let (length, height) = (shape.length, shape.height);
    let at_end = |end: BoardEnd, along: Length| match end {
        BoardEnd::Left => span(Length::ZERO, along),
        BoardEnd::Right => span(length - along, length),
    };
    let at_edge = |edge: LongEdge, up: Length| match edge {
        LongEdge::Bottom => span(Length::ZERO, up),
        LongEdge::Top => span(height - up, height),
    };
    Some(match cut {
        SawCut::Length(_) | SawCut::Rip { .. } => return None,
        SawCut::Bevel { end, bottom, top } => (at_end(*end, (*bottom).max(*top)), span(Length::ZERO, height)),
        SawCut::Clip { corner, along, up } | SawCut::Step { corner, along, up } => {
            (at_end(corner.end, *along), at_edge(corner.edge, *up))
        }
        SawCut::Notch { side, from, to, depth: [one, other] } => {
            let (deep, own) = ((*one).max(*other), span(*from, *to));
            match side {
                BoxSide::Left => (at_end(BoardEnd::Left, deep), own),
                BoxSide::Right => (at_end(BoardEnd::Right, deep), own),
                BoxSide::Bottom => (own, at_edge(LongEdge::Bottom, deep)),
                BoxSide::Top => (own, at_edge(LongEdge::Top, deep)),
            }
        }
        SawCut::Hole { left, right, bottom, top } => (span(*left, *right), span(*bottom, *top)),
        SawCut::Contour { corners, .. } => {
            let xs = || corners.iter().map(|own| own.x);
            let ys = || corners.iter().map(|own| own.y);
            (span(xs().min()?, xs().max()?), span(ys().min()?, ys().max()?))
        }
    })
}

/// The narrowest that stays of the board beside, over or under a cut: to its own edges, and to other cuts beside it.
fn leaves(shape: &BoardShape, cut: &SawCut, all: &[SawCut]) -> Length {
    let Some((x, y)) = reach(shape, cut) else { return shape.height.min(shape.length) };
    let mut left = vec![x.from, shape.length - x.to, y.from, shape.height - y.to];
    for other in all.iter().filter(|other| *other != cut) {
        let Some((other_x, other_y)) = reach(shape, other) else { continue };
        let beside = other_y.from < y.to && y.from < other_y.to;
        let over = other_x.from < x.to && x.from < other_x.to;
        left.extend(beside.then_some(other_x.from - x.to));
        left.extend(beside.then_some(x.from - other_x.to));
        left.extend(over.then_some(other_y.from - y.to));
        left.extend(over.then_some(y.from - other_y.to));
    }
    left.into_iter().filter(|width| width.is_positive()).min().unwrap_or_default()
}

/// The obstructions that a cut is for.
fn around(shape: &BoardShape, cut: &SawCut) -> Vec<usize> {
    let Some((x, y)) = reach(shape, cut) else { return Vec::new() };
    let meets = |own: &&super::BoardCut| {
        let (bottom, top) = (own.bottom[0].min(own.bottom[1]), own.top[0].max(own.top[1]));
        own.left < x.to && x.from < own.right && bottom < y.to && y.from < top
    };
    shape.cuts.iter().filter(meets).map(|own| own.around).collect()
}

/// The left end, unless only the right one is square over more of the height.
fn measured_from(shape: &BoardShape) -> BoardEnd {
    let plumb = |x: Length| {
        let after = shape.corners.iter().cycle().skip(1);
        let own = shape.corners.iter().zip(after).filter(|(from, to)| from.x == x && to.x == x);
        own.map(|(from, to)| (to.y - from.y).abs()).sum::<Length>()
    };
    if plumb(shape.length) > plumb(Length::ZERO) { BoardEnd::Right } else { BoardEnd::Left }
}

/// Every edge but what is left of the factory's own.
fn primed(shape: &BoardShape, kept: LongEdge) -> Vec<[Point; 2]> {
    let ripped = (shape.rip.top + shape.rip.bottom).is_positive();
    let factory = |edge: &[Point; 2]| {
        let [from, to] = edge;
        let own = if from.y == Length::ZERO { LongEdge::Bottom } else { LongEdge::Top };
        along_side(shape, edge) && from.y == to.y && (own == kept || !ripped)
    };
    let rings = std::iter::once(&shape.corners).chain(&shape.holes);
    let edges = rings.flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)).map(|(from, to)| [*from, *to]));
    edges.filter(|edge| !factory(edge)).collect()
}

/// The stretches of a board at a height over its box's bottom; a height on a corner counts as just above it.
fn stretches_at(shape: &BoardShape, y: Length) -> Vec<Span> {
    let rings = std::iter::once(&shape.corners).chain(&shape.holes);
    let edges = rings.flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)));
    let mut met: Vec<Length> = edges
        .filter(|(from, to)| (from.y <= y) != (to.y <= y))
        .filter_map(|(from, to)| {
            let along = (to.x - from.x).wide() * (y - from.y).wide();
            let along = round_half_away(along, (to.y - from.y).wide()).and_then(Length::from_wide)?;
            Some(from.x + along)
        })
        .collect();
    met.sort_unstable();
    met.chunks_exact(2).filter_map(|pair| Some(Span { from: *pair.first()?, to: *pair.get(1)? })).collect()
}
