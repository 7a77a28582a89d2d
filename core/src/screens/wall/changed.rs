use std::collections::BTreeSet;

use crate::measure::Length;
use crate::phrases::key;
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Wall};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::Store;
use crate::views::Note;

/// A planned board: its course, and where it begins and ends.
type Planned = (i64, Length, Length);

/// The boards of a wall that are neither cut nor up.
pub(super) fn planned(store: &Store, wall: &Wall) -> Kept<BTreeSet<Planned>> {
    let read = |board: &Facts| {
        let planned = board.text("state").unwrap_or("planned") == "planned";
        Some((board.whole("course").filter(|_| planned)?, board.length("from")?, board.length("to")?))
    };
    Ok(Facts::children(store, wall.id(), kinds::BOARD)?.iter().filter_map(read).collect())
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
    Some(Note { code: "plan-changed".to_owned(), text: terms.phrase(key("wall-plan-changed"), &args) })
}
