//! Whether an answer leaves a wall that can stand: asked before anything is kept.

use crate::measure::Length;
use crate::phrases::key;
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Wall, head as head_of};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{Store, Value};
use crate::views::{Code, Problem};
use crate::wall::{Outline, Span};

/// Whether the wall stands with this answer; a wall that is not measured through yet always does.
pub(super) fn wall(store: &Store, terms: &Terms<'_>, wall: &Wall, field: &str, value: Value) -> Kept<()> {
    let imagined = Wall { facts: wall.facts.with(field, value), job: wall.job };
    let sizes = ["width", "left-height", "right-height"];
    if sizes.iter().any(|size| imagined.facts.length(size).is_none()) {
        return Ok(());
    }
    let outline = imagined.outline(store, terms).map_err(|_| impossible(terms, field))?;
    openings_stay(store, terms, &imagined, &outline, field)
}

/// What is already on the wall must stay on it.
fn openings_stay(store: &Store, terms: &Terms<'_>, wall: &Wall, outline: &Outline, field: &str) -> Kept<()> {
    for (_, opening) in wall.openings(store)? {
        if !outline.holds(opening.across(), Span { from: opening.bottom, to: opening.top }) {
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
    if part.subject.kind == kinds::OPENING {
        head(terms, width, part)?;
    }
    if part.subject.kind == kinds::OPENING
        && let Ok(outline) = wall.outline(store, terms)
    {
        opening(terms, &outline, part)?;
    }
    if part.subject.kind == kinds::BASE_STEP {
        step(store, terms, wall, part)?;
    }
    Ok(())
}

/// A side that leans by more than an inch in a foot was read or typed wrongly (common practice, no source).
const LEAN: (i64, i64) = (1, 12);

/// The readings at the head of an opening lie on the wall, and its sides lean by a little only.
fn head(terms: &Terms<'_>, wall: Length, part: &Facts) -> Kept<()> {
    let (Some(left), Some(width), Some(height)) =
        (part.length("from-left"), part.length("width"), part.length("height"))
    else {
        return Ok(());
    };
    let (from, over) = (part.length("head-from-left"), part.length("head-width"));
    let right = left + width;
    let Span { from: head_left, to: head_right } = head_of(part, left, width);
    let most = height.scaled(LEAN.0, LEAN.1).unwrap_or(height);
    let sides = [("head-from-left", head_left - left), ("head-width", head_right - right)];
    let field = match sides.into_iter().find(|(_, lean)| lean.abs() > most) {
        Some((field, _)) => field,
        None if head_right > wall => "head-width",
        None => return Ok(()),
    };
    // Where only one of the two was read, that is the one to look at.
    let field = match (from, over) {
        (Some(_), None) => "head-from-left",
        (None, _) => "head-width",
        _ => field,
    };
    // Measured from the corner: each side's reading less its lean.
    let own = if field == "head-width" { right - head_left } else { left };
    let (least, greatest) = ((own - most).max(Length::ZERO), (own + most).min(wall));
    let args = [("least", terms.shown(least).into()), ("most", terms.shown(greatest).into())];
    Err(Problem::new(Code::Range, field, terms.phrase(key("measure-head-range"), &args)).into())
}

/// A window or a door lies under the wall's top, a rake too, and over its base line, where that steps up too.
fn opening(terms: &Terms<'_>, outline: &Outline, part: &Facts) -> Kept<()> {
    let of = |field: &str| part.length(field).unwrap_or_default();
    let (left, right) = (of("from-left"), of("from-left") + of("width"));
    let head = head_of(part, left, of("width"));
    let across = Span { from: left.min(head.from), to: right.max(head.to) };
    let (bottom, top) = (of("from-base"), of("from-base") + of("height"));
    if outline.holds(across, Span { from: bottom, to: top }) {
        return Ok(());
    }
    // Where the wall is wide enough at the opening's foot, it is its head that leaves it.
    let (field, text) = match outline.holds(across, Span { from: bottom, to: bottom + Length::from_nm(1) }) {
        true => ("height", key("measure-over-top")),
        false if bottom >= outline.top() => ("height", key("measure-over-top")),
        false => ("from-base", key("measure-under-base")),
    };
    Err(Problem::new(Code::Range, field, terms.phrase(text, &[])).into())
}

/// The base line with this step among the others must leave a wall above it, with all that is on it.
fn step(store: &Store, terms: &Terms<'_>, wall: &Wall, part: &Facts) -> Kept<()> {
    let rise = part.length("rise").unwrap_or_default();
    let ends = ["left-height", "right-height"].map(|field| wall.facts.length(field));
    let least = ends.into_iter().flatten().min();
    if least.is_some_and(|least| rise >= least) || rise == Length::ZERO {
        return Err(impossible(terms, "rise").into());
    }
    if ends.contains(&None) {
        return Ok(());
    }
    let mut steps = Facts::children(store, wall.id(), kinds::BASE_STEP)?;
    steps.retain(|step| step.id() != part.id());
    steps.push(part.clone());
    let outline = wall.outline_of(terms, &steps).map_err(|_| impossible(terms, "rise"))?;
    openings_stay(store, terms, wall, &outline, "rise")
}

fn impossible(terms: &Terms<'_>, field: &str) -> Problem {
    Problem::new(Code::Range, field, terms.phrase(key("measure-impossible"), &[]))
}
