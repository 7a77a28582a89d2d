//! Whether an answer leaves a wall that can stand: asked before anything is kept.

use crate::measure::Length;
use crate::phrases::key;
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Wall};
use crate::screens::kinds;
use crate::screens::problem::{Code, Problem};
use crate::screens::trouble::Kept;
use crate::store::{Store, Value};

/// Whether the wall stands with this answer; a wall that is not measured through yet always does.
pub(super) fn wall(store: &Store, terms: &Terms<'_>, wall: &Wall, field: &str, value: Value) -> Kept<()> {
    let imagined = Wall { facts: wall.facts.with(field, value), job: wall.job };
    let sizes = ["width", "left-height", "right-height"];
    if sizes.iter().any(|size| imagined.facts.length(size).is_none()) {
        return Ok(());
    }
    let outline = imagined.outline(store, terms).map_err(|_| impossible(terms, field))?;
    // What is already on the wall must stay on it.
    for (_, opening) in imagined.openings(store)? {
        if opening.right > outline.width() || opening.top > outline.top() {
            return Err(Problem::new(Code::Range, field, terms.phrase(key("measure-opening-outside"), &[])).into());
        }
    }
    Ok(())
}

/// Whether a part lies on its wall.
pub(super) fn part(store: &Store, terms: &Terms<'_>, wall: &Wall, part: &Facts) -> Kept<()> {
    let width = wall.facts.length("width").ok_or_else(|| super::needs(terms, "width", key("ask-wall-width")))?;
    let outside = |field: &str| {
        let text = terms.phrase(key("measure-outside"), &[("width", terms.shown(width).into())]);
        Problem::new(Code::Range, field, text)
    };
    let from = part.length(if part.subject.kind == kinds::STUD { "at" } else { "from-left" }).unwrap_or_default();
    if from > width {
        return Err(outside(if part.subject.kind == kinds::STUD { "at" } else { "from-left" }).into());
    }
    if part.length("width").is_some_and(|own| from + own > width) {
        return Err(outside("width").into());
    }
    if part.subject.kind == kinds::OPENING
        && let Ok(outline) = wall.outline(store, terms)
        && part.length("from-base").unwrap_or_default() + part.length("height").unwrap_or_default() > outline.top()
    {
        return Err(Problem::new(Code::Range, "height", terms.phrase(key("measure-over-top"), &[])).into());
    }
    if part.subject.kind == kinds::BASE_STEP {
        step(terms, wall, part)?;
    }
    Ok(())
}

/// A step of the base line must leave some wall above it.
fn step(terms: &Terms<'_>, wall: &Wall, part: &Facts) -> Kept<()> {
    let rise = part.length("rise").unwrap_or_default();
    let least = ["left-height", "right-height"].into_iter().filter_map(|field| wall.facts.length(field)).min();
    if least.is_some_and(|least| rise >= least) || rise == Length::ZERO {
        return Err(impossible(terms, "rise").into());
    }
    Ok(())
}

fn impossible(terms: &Terms<'_>, field: &str) -> Problem {
    Problem::new(Code::Range, field, terms.phrase(key("measure-impossible"), &[]))
}
