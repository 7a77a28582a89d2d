//! What goes through a wall as a line of a list: its letter, its wall, and how far it is.

use crate::drawing::letter;
use crate::forms::context::Terms;
use crate::phrases::key;
use crate::views::{PenetrationLine, Rectangle};
use crate::work::{PenetrationProgress, ProgressOnWall};

/// What goes through a wall, in the order of its letters.
pub(crate) fn of_wall(terms: &Terms<'_>, wall: &ProgressOnWall) -> Vec<PenetrationLine> {
    let in_order = wall.wall.penetrations.iter().enumerate();
    in_order
        .filter_map(|(at, own)| {
            let found = wall.penetrations.iter().find(|one| one.penetration.id() == own.id())?;
            Some(line(terms, wall, found, at))
        })
        .collect()
}

fn line(terms: &Terms<'_>, wall: &ProgressOnWall, one: &PenetrationProgress, at: usize) -> PenetrationLine {
    let (x, y) = one.penetration.outer();
    let signed = one.steps.len().saturating_sub(one.open.len());
    let boarded = wall.is_boarded(one);
    let said = match (one.open.is_empty(), boarded) {
        (true, true) => terms.phrase(key("penetration-done"), &[]),
        (true, false) => terms.phrase(key("penetration-not-boarded"), &[]),
        (false, _) => {
            let args = [("done", signed.into()), ("all", one.steps.len().into())];
            terms.phrase(key("penetration-steps-done"), &args)
        }
    };
    PenetrationLine {
        penetration: one.penetration.id().to_string(),
        name: terms.phrase(&format!("wall-kind-{}", one.penetration.kind.code()), &[]),
        at: Rectangle::of(x, y),
        letter: letter(at),
        wall: wall.wall.name().to_owned(),
        done: one.open.is_empty() && boarded,
        said,
    }
}
