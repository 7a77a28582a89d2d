use super::line::EdgeLine;
use super::number::Coordinate;
use super::parts::{BoardPart, Turn};
use super::rows::{Reach, marks, place, walk};

/// Which way a leg is thin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Leg {
    /// From left to right, between two plumb edges.
    Across,
    /// From the bottom up, between two level edges.
    Upright,
}

/// An edge of a part with both its ends.
struct PartEdge<'a> {
    line: &'a EdgeLine,
    ends: [&'a Turn; 2],
}

/// A direction in which a part is looked through.
struct LookThrough<'a> {
    /// Whether an edge's line lies square to it.
    is_square: fn(&EdgeLine) -> bool,
    /// The coordinate by which the rows along it are told apart.
    row: fn(&Turn) -> &Coordinate,
    /// Where an edge's line crosses a line along it.
    position: fn(&EdgeLine, &Coordinate) -> Option<Coordinate>,
    /// The part from end to end.
    whole: (&'a Coordinate, &'a Coordinate),
}

/// The ways in which a part has a leg thinner than `least`: a stretch between two edges square to it that is not the whole
/// of the part's box from end to end. On a course out of level an edge that is level on the wall counts as square.
pub(super) fn thin(
    part: &BoardPart,
    x: (&Coordinate, &Coordinate),
    y: (&Coordinate, &Coordinate),
    least: &Coordinate,
) -> Vec<Leg> {
    let rings = || std::iter::once(&part.outer).chain(&part.holes);
    let edges: Vec<PartEdge<'_>> = rings()
        .flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)))
        .map(|(from, to)| PartEdge { line: &from.line, ends: [from, to] })
        .collect();
    let across =
        LookThrough { is_square: EdgeLine::is_plumb, row: |turn| &turn.spot.y, position: EdgeLine::x_at, whole: x };
    let upright =
        LookThrough { is_square: EdgeLine::is_level, row: |turn| &turn.spot.x, position: EdgeLine::y_at, whole: y };
    let looks = [(Leg::Across, across), (Leg::Upright, upright)];
    looks.into_iter().filter(|(_, look)| look.is_thin(&edges, least)).map(|(leg, _)| leg).collect()
}

impl LookThrough<'_> {
    fn is_thin(&self, edges: &[PartEdge<'_>], least: &Coordinate) -> bool {
        let rows = marks(edges.iter().map(|edge| (self.row)(edge.ends[0]).clone()).collect());
        let reach = |edge: &PartEdge<'_>| {
            let [from, to] = edge.ends.map(|end| place(&rows, (self.row)(end)));
            Reach { from: from.min(to), to: from.max(to) }
        };
        let reaches: Vec<Reach> = edges.iter().map(reach).collect();
        let line = |at: usize| edges.get(at).map(|edge| edge.line);
        let mut found = false;
        walk(
            &rows,
            &reaches,
            |at, middle| line(at).and_then(|line| (self.position)(line, middle)),
            |row, active| {
                // From outside one comes in, then goes out.
                for pair in active.chunks_exact(2) {
                    let [Some(from), Some(to)] =
                        [pair.first(), pair.last()].map(|end| end.and_then(|(at, _)| line(*at)))
                    else {
                        continue;
                    };
                    if !found && (self.is_square)(from) && (self.is_square)(to) {
                        found = self.narrows(from, to, rows.iter().skip(row).take(2), least);
                    }
                }
            },
        );
        found
    }

    /// Whether two lines come nearer to each other than `least` at the ends of a row, and are not the box's both ends.
    fn narrows<'a>(
        &self,
        from: &EdgeLine,
        to: &EdgeLine,
        ends: impl Iterator<Item = &'a Coordinate>,
        least: &Coordinate,
    ) -> bool {
        let (mut narrow, mut whole) = (false, true);
        for end in ends {
            let Some((from, to)) = (self.position)(from, end).zip((self.position)(to, end)) else { continue };
            narrow |= to.less(&from) < *least;
            whole &= from == *self.whole.0 && to == *self.whole.1;
        }
        narrow && !whole
    }
}
