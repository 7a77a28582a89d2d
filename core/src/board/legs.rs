use super::line::Line;
use super::number::Number;
use super::parts::{Part, Turn};
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
struct Edge<'a> {
    line: &'a Line,
    ends: [&'a Turn; 2],
}

/// A direction in which a part is looked through, with how far the part reaches in it.
struct Look<'a> {
    /// How far along the direction something lies; for plumb edges looked at across, their `x`.
    along: fn(&Line) -> Option<i64>,
    /// The coordinate by which the rows are told apart.
    row: fn(&Turn) -> &Number,
    /// Where an edge's line crosses the middle of a row.
    position: fn(&Line, &Number) -> Option<Number>,
    /// The part from end to end.
    whole: (&'a Number, &'a Number),
}

/// The ways in which a part has a leg thinner than `least`, in half nanometres: a stretch between two edges square to it
/// that is not the whole of the part's box from end to end.
pub(super) fn thin(part: &Part, x: (&Number, &Number), y: (&Number, &Number), least: i64) -> Vec<Leg> {
    let rings = || std::iter::once(&part.outer).chain(&part.holes);
    let edges: Vec<Edge<'_>> = rings()
        .flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)))
        .map(|(from, to)| Edge { line: &from.line, ends: [from, to] })
        .collect();
    let across = Look {
        along: |line| if let Line::Plumb(x) = line { Some(*x) } else { None },
        row: |turn| &turn.spot.y,
        position: Line::x_at,
        whole: x,
    };
    let upright = Look {
        along: |line| if let Line::Level(y) = line { Some(*y) } else { None },
        row: |turn| &turn.spot.x,
        position: Line::y_at,
        whole: y,
    };
    let looks = [(Leg::Across, across), (Leg::Upright, upright)];
    looks.into_iter().filter(|(_, look)| look.is_thin(&edges, least)).map(|(leg, _)| leg).collect()
}

impl Look<'_> {
    fn is_thin(&self, edges: &[Edge<'_>], least: i64) -> bool {
        let rows = marks(edges.iter().map(|edge| (self.row)(edge.ends[0]).clone()).collect());
        let reach = |edge: &Edge<'_>| {
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
            |_, active| {
                // From outside one comes in, then goes out.
                for pair in active.chunks_exact(2) {
                    let [Some(from), Some(to)] =
                        [pair.first(), pair.last()].map(|end| end.and_then(|(at, _)| line(*at)).and_then(self.along))
                    else {
                        continue;
                    };
                    let whole = *self.whole.0 == Number::Whole(from) && *self.whole.1 == Number::Whole(to);
                    found |= to - from < least && !whole;
                }
            },
        );
        found
    }
}
