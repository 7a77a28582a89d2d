use std::collections::BTreeSet;

use crate::book::{BoardState, Field, Record};
use crate::forms::context::Terms;
use crate::measure::Length;
use crate::phrases::key;
use crate::views::Note;
use crate::work::{WallSite, Work};

/// A planned board: its course, and where it begins and ends.
pub(super) type Planned = (i64, Length, Length);

/// The boards of a wall that are neither cut nor up.
pub(super) fn planned(work: &Work, wall: &WallSite) -> BTreeSet<Planned> {
    let ends =
        |board: &Record| Some((board.whole(Field::Course)?, board.length(Field::From)?, board.length(Field::To)?));
    let planned = work.boards(wall.id()).iter().filter(|board| board.board_state() == BoardState::Planned);
    planned.filter_map(|board| ends(board)).collect()
}

/// What planning again changed; none for the first plan, and none where all is as it was.
pub(super) fn note(terms: &Terms<'_>, before: &BTreeSet<Planned>, after: &BTreeSet<Planned>) -> Option<Note> {
    if before.is_empty() || before == after {
        return None;
    }
    let courses: BTreeSet<i64> = before.symmetric_difference(after).map(|(course, ..)| *course).collect();
    let courses = courses.iter().map(i64::to_string).collect::<Vec<_>>().join(", ");
    let count = |count: usize| i64::try_from(count).unwrap_or(i64::MAX).into();
    let args = [
        ("new", count(after.difference(before).count())),
        ("same", count(after.intersection(before).count())),
        ("courses", courses.into()),
    ];
    Some(Note::check("plan-changed", terms.phrase(key("wall-plan-changed"), &args)))
}
