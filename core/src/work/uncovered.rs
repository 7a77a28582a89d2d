use crate::book::{Field, Record};
use crate::measure::Length;
use crate::siding::{End, JointRules, Run};

/// What is narrower than this beside a board that stays is a gap, not uncovered wall.
const SLIVER: Length = Length::from_inches_64(1, 0);

/// What of a run is not covered by boards that are cut or up: they stay, with a joint gap at their ends.
pub(super) fn uncovered(run: Run, stay: &[&Record], rules: &JointRules) -> Vec<Run> {
    // Each part of a run gets the end gap at its ends; at a board that stays it is the joint gap that is wanted.
    let reach = rules.end_gap - rules.joint_gap;
    let mut covered: Vec<(Length, Length)> = stay
        .iter()
        .filter(|board| board.whole(Field::Course) == Some(i64::from(run.course)))
        .filter_map(|board| Some((board.length(Field::From)?, board.length(Field::To)?)))
        .filter(|(from, to)| *from < run.to() && run.from() < *to)
        .collect();
    covered.sort_unstable();
    let mut parts = Vec::new();
    let mut left = run.left;
    for (from, to) in covered {
        parts.push(Run { course: run.course, left, right: End::plumb(from + reach) });
        left = End::plumb(to - reach);
    }
    parts.push(Run { course: run.course, left, right: run.right });
    // A sliver between a board and the trim is the gap itself.
    parts.retain(|part| part.to() - part.from() > rules.end_gap + rules.end_gap + SLIVER);
    parts
}
