//! Whether an answer leaves a wall that can stand: asked before anything is kept.

use crate::book::{Field, Kind, Record};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::phrases::key;
use crate::store::Value;
use crate::views::{Code, Problem};
use crate::wall::{Outline, Span};
use crate::work::{WallSite, Work, WorkError, head_of, outline_with};

/// Whether the wall stands with this answer; a wall that is not measured through yet always does.
pub(super) fn wall(terms: &Terms<'_>, (work, wall): (&Work, &WallSite), field: Field, value: Value) -> Result<()> {
    wall_as(terms, (work, wall), &wall.record.with(field, value), field)
}

/// The same of a wall as it would be, for the answer of a field.
pub(super) fn wall_as(
    terms: &Terms<'_>,
    (work, wall): (&Work, &WallSite),
    answered: &Record,
    field: Field,
) -> Result<()> {
    let [width, left, right] = [Field::Width, Field::LeftHeight, Field::RightHeight].map(|size| answered.length(size));
    let ends = match left.zip(right) {
        // Nothing but its peak holds the triangle of a gable up.
        Some((Length::ZERO, Length::ZERO)) => {
            answered.length(Field::PeakFromLeft).and(answered.length(Field::PeakHeight))
        }
        ends => ends.map(|(left, _)| left),
    };
    if width.and(ends).is_none() {
        return Ok(());
    }
    let steps = work.house().under(wall.id(), Kind::BaseStep).iter().map(|step| &**step);
    let outline = outline_with(answered, steps).map_err(|_| impossible(terms, field))?;
    openings_stay(terms, wall, &outline, field)
}

/// What is already on the wall must stay on it.
fn openings_stay(terms: &Terms<'_>, wall: &WallSite, outline: &Outline, field: Field) -> Result<()> {
    let stays = |bottom, top, across| outline.holds(across, Span { from: bottom, to: top });
    if wall.openings.iter().all(|(_, opening)| stays(opening.bottom, opening.top, opening.across())) {
        return Ok(());
    }
    Err(range(field, terms.phrase(key("measure-opening-outside"), &[])).into())
}

fn range(field: Field, text: String) -> Problem {
    Problem::new(Code::Range, field.code(), text)
}

/// Whether a part lies on its wall.
pub(super) fn part(terms: &Terms<'_>, (work, wall): (&Work, &WallSite), part: &Record) -> Result<()> {
    let width = wall.record.length(Field::Width).ok_or_else(|| WorkError::first(Kind::Wall, Field::Width))?;
    let outside = |field| range(field, terms.phrase(key("measure-outside"), &[("width", terms.shown(width).into())]));
    let from_field = if part.kind == Kind::Stud { Field::At } else { Field::FromLeft };
    let from = part.length(from_field).unwrap_or_default();
    if from > width {
        return Err(outside(from_field).into());
    }
    if part.length(Field::Width).is_some_and(|own| from + own > width) {
        return Err(outside(Field::Width).into());
    }
    if part.kind == Kind::Opening {
        head(terms, width, part)?;
        if let Ok(outline) = wall.outline() {
            opening(terms, outline, part)?;
        }
    }
    if part.kind == Kind::BaseStep {
        step(terms, (work, wall), part)?;
    }
    Ok(())
}

/// A side that leans by more than an inch in a foot was read or typed wrongly (common practice, no source).
const LEAN: (i64, i64) = (1, 12);

/// The readings at the head of an opening lie on the wall, and its sides lean by a little only.
fn head(terms: &Terms<'_>, wall: Length, part: &Record) -> Result<()> {
    let (Some(left), Some(width), Some(height)) =
        (part.length(Field::FromLeft), part.length(Field::Width), part.length(Field::Height))
    else {
        return Ok(());
    };
    let (from, over) = (part.length(Field::HeadFromLeft), part.length(Field::HeadWidth));
    let right = left + width;
    let Span { from: head_left, to: head_right } = head_of(part, left, width);
    let most = height.scaled(LEAN.0, LEAN.1).unwrap_or(height);
    let sides = [(Field::HeadFromLeft, head_left - left), (Field::HeadWidth, head_right - right)];
    let field = match sides.into_iter().find(|(_, lean)| lean.abs() > most) {
        Some((field, _)) => field,
        None if head_right > wall => Field::HeadWidth,
        None => return Ok(()),
    };
    // Where only one of the two was read, that is the one to look at.
    let field = match (from, over) {
        (Some(_), None) => Field::HeadFromLeft,
        (None, _) => Field::HeadWidth,
        _ => field,
    };
    // Measured from the corner: each side's reading less its lean.
    let own = if field == Field::HeadWidth { right - head_left } else { left };
    let (least, greatest) = ((own - most).max(Length::ZERO), (own + most).min(wall));
    let args = [("least", terms.shown(least).into()), ("most", terms.shown(greatest).into())];
    Err(range(field, terms.phrase(key("measure-head-range"), &args)).into())
}

/// A window or a door lies under the wall's top, a rake too, and over its base line, where that steps up too.
fn opening(terms: &Terms<'_>, outline: &Outline, part: &Record) -> Result<()> {
    let of = |field| part.length(field).unwrap_or_default();
    let (left, width) = (of(Field::FromLeft), of(Field::Width));
    let head = head_of(part, left, width);
    let across = Span { from: left.min(head.from), to: (left + width).max(head.to) };
    let (bottom, top) = (of(Field::FromBase), of(Field::FromBase) + of(Field::Height));
    if outline.holds(across, Span { from: bottom, to: top }) {
        return Ok(());
    }
    // Where the wall is wide enough at the opening's foot, it is its head that leaves it.
    let (field, text) = match outline.holds(across, Span { from: bottom, to: bottom + Length::from_nm(1) }) {
        true => (Field::Height, key("measure-over-top")),
        false if bottom >= outline.top() => (Field::Height, key("measure-over-top")),
        false => (Field::FromBase, key("measure-under-base")),
    };
    Err(range(field, terms.phrase(text, &[])).into())
}

/// The base line with this step among the others must leave a wall above it, with all that is on it.
fn step(terms: &Terms<'_>, (work, wall): (&Work, &WallSite), part: &Record) -> Result<()> {
    let rise = part.length(Field::Rise).unwrap_or_default();
    let ends = [Field::LeftHeight, Field::RightHeight].map(|field| wall.record.length(field));
    let least = ends.into_iter().flatten().min();
    if least.is_some_and(|least| rise >= least) || rise == Length::ZERO {
        return Err(impossible(terms, Field::Rise).into());
    }
    if ends.contains(&None) {
        return Ok(());
    }
    let steps = work.house().under(wall.id(), Kind::BaseStep).iter().map(|step| &**step);
    let steps = steps.filter(|step| step.id() != part.id()).chain([part]);
    let outline = outline_with(&wall.record, steps).map_err(|_| impossible(terms, Field::Rise))?;
    openings_stay(terms, wall, &outline, Field::Rise)
}

fn impossible(terms: &Terms<'_>, field: Field) -> Problem {
    range(field, terms.phrase(key("measure-impossible"), &[]))
}
