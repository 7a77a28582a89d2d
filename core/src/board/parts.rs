//! What is left of a strip inside the outline, as rings of exact corners.
//!
//! The strip is cut into rows at every height where something begins, ends or crosses. Within a row nothing crosses, so
//! that the stretches that are left, its spans, follow from the order of what bounds them. Spans of neighbouring rows that
//! meet along more than a point belong together: a cell goes on as long as its two sides do. The rings are the sides of
//! the cells and, at each height, what is covered on one side of it only.

use std::cmp::Ordering;

use super::line::{EdgeLine, ExactPoint};
use super::number::Coordinate;
use super::rows::{Reach, place, walk};

/// Something upright that bounds spans, from a height to a greater one.
#[derive(Clone, Debug)]
pub(super) struct Upright {
    pub(super) line: EdgeLine,
    pub(super) low: Coordinate,
    pub(super) high: Coordinate,
    pub(super) kind: BoundKind,
}

/// What a bound is the edge of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum BoundKind {
    /// The outline: inside on one side, outside on the other.
    Outline,
    /// The left side of something that is taken out.
    Enters,
    /// The right side of something that is taken out.
    Leaves,
    /// A joint without width.
    Joint,
}

/// A corner of a ring and the line from it to the next one.
#[derive(Clone, Debug)]
pub(super) struct Turn {
    pub(super) spot: ExactPoint,
    pub(super) line: EdgeLine,
}

/// A closed way round that does not touch itself, what it bounds to its left; from its lowest, then leftmost corner.
pub(super) type Ring = Vec<Turn>;

/// One connected part of what is left.
#[derive(Clone, Debug)]
pub(super) struct BoardPart {
    /// Counter-clockwise.
    pub(super) outer: Ring,
    /// Clockwise, in the order of their first corners.
    pub(super) holes: Vec<Ring>,
}

/// The parts that are left between two heights, in the order of their lowest, then leftmost corners.
pub(super) fn parts(bounds: &[Upright], low: i64, high: i64) -> Vec<BoardPart> {
    let (low, high) = (Coordinate::Whole(low), Coordinate::Whole(high));
    let bounds: Vec<Upright> = bounds.iter().filter_map(|bound| bound.within(&low, &high)).collect();
    let mut levels = vec![low, high];
    levels.extend(bounds.iter().flat_map(|bound| [bound.low.clone(), bound.high.clone()]));
    levels.extend(crossings(&bounds));
    let levels = super::rows::marks(levels);
    let reach = |bound: &Upright| Reach { from: place(&levels, &bound.low), to: place(&levels, &bound.high) };
    let reaches: Vec<Reach> = bounds.iter().map(reach).collect();
    let mut trace = Trace { bounds: &bounds, ..Trace::default() };
    let mut open: Vec<Open> = Vec::new();
    let across = |at: usize, y: &Coordinate| bounds.get(at).and_then(|bound| bound.line.x_at(y));
    walk(&levels, &reaches, across, |row, active| {
        let spans = spans(&bounds, active);
        if let Some(level) = levels.get(row) {
            open = trace.pass(level, &open, &spans);
        }
    });
    if let Some(level) = levels.last() {
        trace.pass(level, &open, &[]);
    }
    trace.rings()
}

impl Upright {
    /// What of it lies between two heights.
    fn within(&self, low: &Coordinate, high: &Coordinate) -> Option<Self> {
        let (own_low, own_high) = ((&self.low).max(low), (&self.high).min(high));
        (own_low < own_high).then(|| Self { low: own_low.clone(), high: own_high.clone(), ..self.clone() })
    }

    /// Whole half nanometres within which it lies from left to right.
    fn extent(&self) -> (i64, i64) {
        let ends = [&self.low, &self.high].map(|y| self.line.x_at(y).map_or(0, |x| x.floor()));
        let [a, b] = ends;
        (a.min(b), a.max(b).saturating_add(1))
    }
}

/// The heights at which a sloped bound crosses another one. Edges of the outline do not cross each other.
fn crossings(bounds: &[Upright]) -> Vec<Coordinate> {
    let mut found = Vec::new();
    if !bounds.iter().any(|bound| bound.line.is_sloped()) {
        return found;
    }
    let extents: Vec<(i64, i64)> = bounds.iter().map(Upright::extent).collect();
    for (at, (bound, extent)) in
        bounds.iter().zip(&extents).enumerate().filter(|(_, (bound, _))| bound.line.is_sloped())
    {
        for (other_at, (other, other_extent)) in bounds.iter().zip(&extents).enumerate() {
            let both_outline = bound.kind == BoundKind::Outline && other.kind == BoundKind::Outline;
            let twice = other.line.is_sloped() && other_at <= at;
            if both_outline || twice || other_extent.1 < extent.0 || extent.1 < other_extent.0 {
                continue;
            }
            let Some(spot) = bound.line.meet(&other.line) else { continue };
            let low = (&bound.low).max(&other.low);
            let high = (&bound.high).min(&other.high);
            if *low < spot.y && spot.y < *high {
                found.push(spot.y);
            }
        }
    }
    found
}

/// A stretch of a row that is left, by its left and right bound.
#[derive(Clone, Copy, Debug)]
struct RowSpan {
    left: usize,
    right: usize,
}

/// The stretches that are left, from the bounds across a row in their order.
fn spans(bounds: &[Upright], active: &[(usize, Coordinate)]) -> Vec<RowSpan> {
    let (mut inside, mut covered, mut left) = (false, 0_usize, None);
    let mut spans = Vec::new();
    for together in active.chunk_by(|(_, one), (_, next)| one == next) {
        let Some((first, _)) = together.first() else { continue };
        let mut joint = false;
        for (at, _) in together {
            match bounds.get(*at).map(|bound| bound.kind) {
                Some(BoundKind::Outline) => inside = !inside,
                Some(BoundKind::Enters) => covered += 1,
                Some(BoundKind::Leaves) => covered = covered.saturating_sub(1),
                Some(BoundKind::Joint) => joint = true,
                None => {}
            }
        }
        let open = inside && covered == 0;
        if let (Some(from), true) = (left, joint || !open) {
            spans.push(RowSpan { left: from, right: *first });
            left = None;
        }
        if open && left.is_none() {
            left = Some(*first);
        }
    }
    spans
}

/// A span of the row below a height, with its cell.
#[derive(Clone, Copy, Debug)]
struct Open {
    span: RowSpan,
    cell: usize,
}

/// Spans of following rows between the same two sides. Corners are places among [`Trace::spots`].
#[derive(Clone, Debug)]
struct Cell {
    span: RowSpan,
    /// The cell that it belongs together with.
    joined: usize,
    bottom: [usize; 2],
    top: [usize; 2],
    /// Its place from the left in its first and its last row.
    places: [usize; 2],
}

/// A way from one corner to another, what is left to its left.
#[derive(Clone, Copy, Debug)]
struct Way {
    cell: usize,
    from: usize,
    to: usize,
    leaves: Ray,
    /// The direction in which it is seen from where it arrives.
    arrives: Ray,
    /// The bound that it runs along, none where it is level.
    bound: Option<usize>,
}

/// A direction seen from a corner, counter-clockwise from the right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Ray {
    Right,
    /// Among those upward: the more to the left, the later.
    Up(std::cmp::Reverse<usize>),
    Left,
    /// Among those downward: the more to the right, the later.
    Down(usize),
}

#[derive(Debug, Default)]
struct Trace<'a> {
    bounds: &'a [Upright],
    cells: Vec<Cell>,
    /// Corners from below, at one height from the left.
    spots: Vec<ExactPoint>,
    ways: Vec<Way>,
}

/// A span with its left and right end at a height.
struct Stretch {
    span: RowSpan,
    ends: [Coordinate; 2],
}

/// A left or right end at a height.
struct RowEnd {
    x: Coordinate,
    /// The cell that ends or begins there.
    cell: usize,
    begins: bool,
    /// 0 left, 1 right.
    side: usize,
}

impl Trace<'_> {
    /// Passes a height: spans below it end or go on, those above it begin or go on. Gives the spans above with their cells.
    fn pass(&mut self, y: &Coordinate, lower: &[Open], upper: &[RowSpan]) -> Vec<Open> {
        let below: Vec<Stretch> = lower.iter().map(|open| self.stretch(open.span, y)).collect();
        let above: Vec<Stretch> = upper.iter().map(|span| self.stretch(*span, y)).collect();
        let (mut at_below, mut at_above) = (0, 0);
        let mut open = Vec::with_capacity(upper.len());
        while at_below < below.len() || at_above < above.len() {
            let (to_below, to_above) = self.meeting(&below, &above, at_below, at_above);
            let ending = lower.get(at_below..to_below).unwrap_or_default();
            let beginning = upper.get(at_above..to_above).unwrap_or_default();
            match (ending, beginning) {
                ([one], [other]) if self.goes_on(one.span, *other) => {
                    if let Some(cell) = self.cells.get_mut(one.cell) {
                        cell.places[1] = at_above;
                    }
                    open.push(Open { span: *other, cell: one.cell });
                }
                _ => {
                    let begun = self.begin(beginning, at_above);
                    let ending: Vec<usize> = ending.iter().map(|open| open.cell).collect();
                    let stretches = |all: &[Stretch], from: usize, cells: &[usize], begins: bool| {
                        let each = all.iter().skip(from).zip(cells).flat_map(|(own, cell)| {
                            let [left, right] = own.ends.clone();
                            [(left, 0), (right, 1)].map(|(x, side)| RowEnd { x, cell: *cell, begins, side })
                        });
                        each.collect::<Vec<RowEnd>>()
                    };
                    let mut ends = stretches(&below, at_below, &ending, false);
                    ends.extend(stretches(&above, at_above, &begun, true));
                    self.weld(y, &ending, &begun, ends);
                    open.extend(beginning.iter().zip(begun).map(|(span, cell)| Open { span: *span, cell }));
                }
            }
            (at_below, at_above) = (to_below, to_above);
        }
        open
    }

    fn stretch(&self, span: RowSpan, y: &Coordinate) -> Stretch {
        let x = |bound: usize| self.bounds.get(bound).and_then(|own| own.line.x_at(y)).unwrap_or(Coordinate::ZERO);
        Stretch { span, ends: [x(span.left), x(span.right)] }
    }

    /// Up to which stretch below and above a height those from two places on meet one another, if only in a point.
    fn meeting(
        &self,
        below: &[Stretch],
        above: &[Stretch],
        mut at_below: usize,
        mut at_above: usize,
    ) -> (usize, usize) {
        let mut reach: Option<&Coordinate> = None;
        loop {
            let (next_below, next_above) = (below.get(at_below), above.get(at_above));
            let takes_below = match (next_below, next_above) {
                (Some(own), Some(other)) => own.ends[0] <= other.ends[0],
                (own, _) => own.is_some(),
            };
            let Some(Stretch { span, ends: [from, to] }) = (if takes_below { next_below } else { next_above }) else {
                break;
            };
            // Across a joint nothing belongs together, even where both sides touch all along.
            let meets = |reach: &Coordinate| match from.cmp(reach) {
                Ordering::Less => true,
                Ordering::Equal => !self.is_joint(span.left),
                Ordering::Greater => false,
            };
            if !reach.is_none_or(meets) {
                break;
            }
            reach = Some(reach.map_or(to, |reach| reach.max(to)));
            if takes_below { at_below += 1 } else { at_above += 1 }
        }
        (at_below, at_above)
    }

    /// Begins a cell for each span, the first of them at a place from the left.
    fn begin(&mut self, spans: &[RowSpan], place: usize) -> Vec<usize> {
        let first = self.cells.len();
        let cell = |(at, span): (usize, &RowSpan)| Cell {
            span: *span,
            joined: first + at,
            bottom: [0; 2],
            top: [0; 2],
            places: [place + at; 2],
        };
        self.cells.extend(spans.iter().enumerate().map(cell));
        (first..self.cells.len()).collect()
    }

    fn is_joint(&self, bound: usize) -> bool {
        self.bounds.get(bound).is_some_and(|bound| bound.kind == BoundKind::Joint)
    }

    /// Whether a span lies between the same two lines as another.
    fn goes_on(&self, one: RowSpan, other: RowSpan) -> bool {
        let same = |one: usize, other: usize| {
            let line = |at: usize| self.bounds.get(at).map(|bound| &bound.line);
            one == other
                || matches!((line(one), line(other)), (Some(EdgeLine::Plumb(a)), Some(EdgeLine::Plumb(b))) if a == b)
        };
        same(one.left, other.left) && same(one.right, other.right)
    }

    /// Sets the corners where cells end and begin at one height and meet, and what is covered on one side only.
    fn weld(&mut self, y: &Coordinate, lower: &[usize], upper: &[usize], mut ends: Vec<RowEnd>) {
        ends.sort_by(|a, b| a.x.cmp(&b.x));
        let first = self.spots.len();
        for together in ends.chunk_by(|one, next| one.x == next.x) {
            let corner = self.spots.len();
            for end in together {
                let Some(cell) = self.cells.get_mut(end.cell) else { continue };
                let corners = if end.begins { &mut cell.bottom } else { &mut cell.top };
                if let Some(own) = corners.get_mut(end.side) {
                    *own = corner;
                }
            }
            self.spots.extend(together.first().map(|end| ExactPoint { x: end.x.clone(), y: y.clone() }));
        }
        let (mut lower, mut upper) = (lower.iter().copied().peekable(), upper.iter().copied().peekable());
        for from in first..self.spots.len().saturating_sub(1) {
            let to = from + 1;
            let covers = |cell: &usize, corners: fn(&Cell) -> [usize; 2]| {
                self.cells.get(*cell).is_some_and(|cell| {
                    let [left, right] = corners(cell);
                    left <= from && from < right
                })
            };
            let ended = |cell: &usize, corners: fn(&Cell) -> [usize; 2]| {
                self.cells.get(*cell).is_none_or(|cell| corners(cell)[1] <= from)
            };
            while lower.next_if(|cell| ended(cell, |cell| cell.top)).is_some() {}
            while upper.next_if(|cell| ended(cell, |cell| cell.bottom)).is_some() {}
            let below = lower.peek().copied().filter(|cell| covers(cell, |cell| cell.top));
            let above = upper.peek().copied().filter(|cell| covers(cell, |cell| cell.bottom));
            let (right, left) = (Ray::Right, Ray::Left);
            match (below, above) {
                (Some(below), Some(above)) => self.join(below, above),
                (None, Some(cell)) => {
                    self.ways.push(Way { cell, from, to, leaves: right, arrives: left, bound: None });
                }
                (Some(cell), None) => {
                    self.ways.push(Way { cell, from: to, to: from, leaves: left, arrives: right, bound: None });
                }
                (None, None) => {}
            }
        }
    }

    fn root(&mut self, mut cell: usize) -> usize {
        while let Some(above) = self.cells.get(cell).map(|own| own.joined).filter(|joined| *joined != cell) {
            let next = self.cells.get(above).map_or(above, |own| own.joined);
            if let Some(own) = self.cells.get_mut(cell) {
                own.joined = next;
            }
            cell = above;
        }
        cell
    }

    fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.root(one), self.root(other));
        if let Some(cell) = self.cells.get_mut(one.max(other)) {
            cell.joined = one.min(other);
        }
    }

    /// Adds the sides of the cells to the ways, each with the cell that it belongs together with.
    fn ways(&mut self) -> Vec<Way> {
        let mut ways = std::mem::take(&mut self.ways);
        for (at, cell) in self.cells.iter().enumerate() {
            let [first, last] = cell.places;
            let up = |side: usize| Ray::Up(std::cmp::Reverse(2 * first + side));
            let down = |side: usize| Ray::Down(2 * last + side);
            let ([bottom_left, bottom_right], [top_left, top_right]) = (cell.bottom, cell.top);
            let (left, right) = (Some(cell.span.left), Some(cell.span.right));
            ways.push(Way { cell: at, from: top_left, to: bottom_left, leaves: down(0), arrives: up(0), bound: left });
            ways.push(Way {
                cell: at,
                from: bottom_right,
                to: top_right,
                leaves: up(1),
                arrives: down(1),
                bound: right,
            });
        }
        for way in &mut ways {
            way.cell = self.root(way.cell);
        }
        ways.sort_by_key(|way| (way.cell, way.from, way.leaves));
        ways
    }

    /// Links the ways to rings. Where a ring would touch itself in a point, what is outside stays together and the ring is
    /// parted: from a corner it goes on along the way that bounds the same outside, the next one counter-clockwise.
    fn rings(mut self) -> Vec<BoardPart> {
        let ways = self.ways();
        let mut used = vec![false; ways.len()];
        let mut found: Vec<(usize, usize, bool, Ring)> = Vec::new();
        for start in 0..ways.len() {
            let mut ring: Vec<Way> = Vec::new();
            let mut at = start;
            while let Some(way) = ways.get(at).filter(|_| used.get(at) == Some(&false)) {
                ring.push(*way);
                if let Some(used) = used.get_mut(at) {
                    *used = true;
                }
                at = next(&ways, way).unwrap_or(start);
            }
            if let Some((first, cell, outer, ring)) = self.ring(&ring) {
                found.push((cell, first, outer, ring));
            }
        }
        // Of a part's rings the outer one comes first: no hole reaches below it, and where one touches its lowest corner
        // the flag decides.
        found.sort_by_key(|(cell, first, outer, _)| (*cell, !*outer, *first));
        let mut parts: Vec<(usize, usize, BoardPart)> = Vec::new();
        for (cell, first, outer, ring) in found {
            match parts.last_mut().filter(|(own, ..)| *own == cell) {
                Some((.., part)) => part.holes.push(ring),
                None if outer => parts.push((cell, first, BoardPart { outer: ring, holes: Vec::new() })),
                None => {}
            }
        }
        parts.sort_by_key(|(_, first, _)| *first);
        parts.into_iter().map(|(.., part)| part).collect()
    }

    /// A ring from its lowest, then leftmost corner, without corners in a straight line; with that corner's place, the
    /// ring's cell and whether it runs counter-clockwise.
    fn ring(&self, ways: &[Way]) -> Option<(usize, usize, bool, Ring)> {
        let line = |way: &Way| way.bound.and_then(|bound| self.bounds.get(bound)).map(|bound| &bound.line);
        let straight = |before: &Way, way: &Way| match (line(before), line(way)) {
            (None, None) => true,
            (Some(before), Some(line)) => before.is_parallel(line),
            _ => false,
        };
        let before = ways.iter().cycle().skip(ways.len().saturating_sub(1));
        let mut turns: Vec<(&Way, &Way)> = before.zip(ways).filter(|(before, way)| !straight(before, way)).collect();
        let first = turns.iter().enumerate().min_by_key(|(_, (_, way))| way.from).map(|(at, _)| at)?;
        turns.rotate_left(first);
        let (last, start) = *turns.first()?;
        let turn = |(_, way): &(&Way, &Way)| {
            let spot = self.spots.get(way.from)?.clone();
            let line = line(way).cloned().unwrap_or_else(|| EdgeLine::Level(spot.y.clone()));
            Some(Turn { spot, line })
        };
        let ring: Ring = turns.iter().map(turn).collect::<Option<_>>()?;
        // Its lowest, then leftmost corner has the whole ring from the right over upwards.
        Some((start.from, start.cell, start.leaves < last.arrives, ring))
    }
}

/// The way on from where one arrives.
fn next(ways: &[Way], way: &Way) -> Option<usize> {
    let first = ways.partition_point(|own| (own.cell, own.from) < (way.cell, way.to));
    let leaving =
        || ways.iter().enumerate().skip(first).take_while(|(_, own)| own.cell == way.cell && own.from == way.to);
    let later = leaving().find(|(_, own)| own.leaves > way.arrives);
    later.or_else(|| leaving().next()).map(|(at, _)| at)
}
