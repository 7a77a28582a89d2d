//! What is said of boards that no longer fit the house as it is now.

use std::collections::BTreeSet;

use crate::forms::context::Terms;
use crate::phrases::key;
use crate::store::Id;
use crate::views::Note;
use crate::work::{Misfits, WallBoard, WallSite};

const CODE: &str = "no-longer-fits";
const CUT_CODE: &str = "cut-no-longer-fits";

/// What is to be done on a wall, for its line on the house.
pub(crate) fn on_house(terms: &Terms<'_>, misfits: &Misfits) -> Vec<String> {
    let said = |text: &str, count: usize| (count > 0).then(|| terms.phrase(text, &[("count", count.into())]));
    let lines = [
        said(key("wall-misfits-short"), misfits.planned.len()),
        said(key("wall-bare-short"), misfits.bare),
        said(key("wall-cut-misfits-short"), misfits.cut.len()),
    ];
    lines.into_iter().flatten().collect()
}

/// The notes of one wall, or of all walls of a house; `boards` are those of the walls.
pub(crate) fn notes<'a>(
    terms: &Terms<'_>,
    walls: impl IntoIterator<Item = (&'a WallSite, &'a Misfits)>,
    boards: &[WallBoard],
) -> Vec<Note> {
    let walls: Vec<_> = walls.into_iter().collect();
    let all = |of: fn(&Misfits) -> &BTreeSet<Id>| walls.iter().map(|(_, misfits)| of(misfits).len()).sum::<usize>();
    let places = |of: fn(&Misfits) -> &BTreeSet<Id>| {
        let on = |(wall, misfits): &(&WallSite, &Misfits)| on_wall(terms, wall, of(misfits), boards);
        walls.iter().filter_map(on).collect::<Vec<_>>().join("; ")
    };
    let mut notes = Vec::new();
    let mut say = |code: &str, text: &str, count: usize, places: String| {
        if count > 0 {
            let args = [("count", count.into()), ("boards", places.into())];
            notes.push(Note::stop(code, terms.phrase(text, &args)));
        }
    };
    say(CODE, key("wall-misfits"), all(|misfits| &misfits.planned), places(|misfits| &misfits.planned));
    let bare = walls.iter().map(|(_, misfits)| misfits.bare).sum();
    say("bare", key("wall-bare"), bare, String::new());
    say(CUT_CODE, key("wall-cut-misfits"), all(|misfits| &misfits.cut), places(|misfits| &misfits.cut));
    notes
}

/// A wall with the courses of some of its boards; none where it has none of them.
fn on_wall(terms: &Terms<'_>, wall: &WallSite, misfits: &BTreeSet<Id>, boards: &[WallBoard]) -> Option<String> {
    let marked = boards.iter().filter(|board| misfits.contains(&board.id()));
    let courses: BTreeSet<i64> = marked.map(|board| board.course).collect();
    if courses.is_empty() {
        return None;
    }
    let courses = courses.iter().map(|course| course.to_string()).collect::<Vec<_>>().join(", ");
    Some(terms.phrase(key("wall-courses"), &[("wall", wall.name().into()), ("courses", courses.into())]))
}

/// The note of one board.
pub(crate) fn note_of(terms: &Terms<'_>, misfits: &Misfits, board: Id) -> Option<Note> {
    let (code, text) = if misfits.planned.contains(&board) {
        (CODE, key("board-misfit"))
    } else if misfits.cut.contains(&board) {
        (CUT_CODE, key("board-cut-misfit"))
    } else {
        return None;
    };
    Some(Note::stop(code, terms.phrase(text, &[])))
}

/// What is said of a board, and that it no longer fits.
pub(crate) fn said_of(terms: &Terms<'_>, said: String, misfits: &Misfits, board: Id) -> String {
    if misfits.planned.contains(&board) || misfits.cut.contains(&board) {
        format!("{said}; {}", terms.phrase(key("wall-misfit"), &[]))
    } else {
        said
    }
}
