//! Story pole: where the lines go.

mod as_built;
mod correction;
mod marks;
mod preview;

use crate::book::{BoardState, Book, DraftKey, Field, Kind, Operation, OperationKind, fields_of, lines_value};
use crate::store::Id;
use crate::views::{Code, Given, Place, PoleAction, PoleView, Problem};
use crate::work::{Work, WorkError};

use super::revision::pole_revision;
use crate::forms::ask::{self, accept, keep_draft, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::parts::given;
use crate::screens::result::ActionResult;

pub(super) fn view(book: &Book, terms: &Terms<'_>, job: &str) -> Result<PoleView> {
    let work = lookup::house(book, terms, job)?;
    let mut view = preview::view(book, terms, &work)?;
    view.revision = pole_revision(terms.phrases, &view);
    Ok(view)
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &PoleAction) -> Result<ActionResult> {
    match action {
        PoleAction::Answer { job, field, text } => {
            let work = lookup::house(book, terms, job)?;
            let group = answer(book, terms, &work, field, text)?;
            Ok(ActionResult::at(here(&work), group))
        }
        PoleAction::KeepDraft { job, field, text } => {
            let work = lookup::house(book, terms, job)?;
            // Before the pole has an id its drafts have no place; the first accepted answer makes it.
            if let Some(pole) = work.pole() {
                keep_draft(book, terms, pole, field, text)?;
            }
            Ok(ActionResult::without_answer(here(&work)))
        }
        PoleAction::AddMark { job, answers } => add_mark(book, terms, job, answers),
        PoleAction::RemoveMark { job, mark } => remove_mark(book, terms, job, mark),
        PoleAction::LayOut { job } => {
            let work = lookup::house(book, terms, job)?;
            let group = lay_out(book, terms, &work)?;
            Ok(ActionResult::at(here(&work), group))
        }
        PoleAction::SayAsBuilt { wall, answers } => as_built::say(book, terms, wall, answers),
        PoleAction::RemoveAsBuilt { as_built } => as_built::remove(book, terms, as_built),
    }
}

fn here(work: &Work) -> Place {
    Place::Pole { job: lookup::job_id(work) }
}

fn answer(book: &mut Book, terms: &Terms<'_>, work: &Work, field: &str, text: &str) -> Result<Id> {
    if let Some(pole) = work.pole() {
        return Ok(ask::answer(book, terms, pole, field, text)?.group);
    }
    let spec = ask::spec_of(terms, Kind::Pole, field)?;
    let value = ask::value(terms, spec, text)?;
    let id = terms.fresh(0);
    let operation = Operation::new(OperationKind::Answered, work.id(), [spec.title, text.trim()])
        .create(id, Kind::Pole, work.id(), sort_key(terms, 0))
        .set(id, spec.field, value);
    Ok(accept(book, terms, operation, &[DraftKey::field(id, spec.field)])?.group)
}

fn add_mark(book: &mut Book, terms: &Terms<'_>, job: &str, answers: &[Given]) -> Result<ActionResult> {
    let work = lookup::house(book, terms, job)?;
    let answers = given(answers);
    let fields = ask::fields(terms, fields_of(Kind::Mark), &answers)?;
    let id = terms.fresh(0);
    let name = answers.get(Field::Name.code()).map_or("", |name| name.trim());
    let mut operation = Operation::new(OperationKind::MarkAdded, work.id(), [name]);
    let pole = match work.pole() {
        Some(pole) => pole.id(),
        None => {
            let pole = terms.fresh(1);
            operation = operation.create(pole, Kind::Pole, work.id(), sort_key(terms, 0));
            pole
        }
    };
    operation = operation.create(id, Kind::Mark, Some(pole), sort_key(terms, 0)).set_all(id, fields);
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(here(&work), group))
}

fn remove_mark(book: &mut Book, terms: &Terms<'_>, job: &str, mark: &str) -> Result<ActionResult> {
    let work = lookup::house(book, terms, job)?;
    let mark = work.house().get(terms.id("mark", mark)?, Kind::Mark)?;
    if work.pole().is_none_or(|pole| mark.parent != Some(pole.id())) {
        return Err(Problem::new(Code::Unknown, "mark", terms.phrase("screen-unknown", &[])).into());
    }
    let name = mark.text(Field::Name).unwrap_or_default();
    let operation = Operation::new(OperationKind::Removed, work.id(), [name]).remove(mark.id());
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(here(&work), group))
}

/// Keeps the layout: what is up stays, so no line that a fixed board stands on may move.
fn lay_out(book: &mut Book, terms: &Terms<'_>, work: &Work) -> Result<Id> {
    let pole = work.pole().ok_or_else(|| WorkError::first(Kind::Pole, Field::From))?;
    let lines = preview::lines(terms, work, pole)?;
    let up = fixed_courses(work);
    if let Some(kept) = work.lines() {
        let same = kept.iter().zip(&lines).take_while(|(old, new)| old == new).count();
        if same < up {
            let text = terms.phrase("pole-boards-are-up", &[("course", up.into())]);
            return Err(Problem::new(Code::First, Field::Lines.code(), text).into());
        }
    }
    let courses = lines.len().saturating_sub(1).to_string();
    let operation = Operation::new(OperationKind::PoleLaidOut, work.id(), [&*courses]);
    let operation = operation.set(pole.id(), Field::Lines, lines_value(lines.iter().copied()));
    let operation = as_built::laid_out(operation, terms, work, &lines)?;
    Ok(accept(book, terms, operation, &[])?.group)
}

/// The highest course of which a board is fixed; zero where none is.
fn fixed_courses(work: &Work) -> usize {
    let boards = work.walls().iter().flat_map(|wall| work.boards(wall.id()));
    let fixed = boards.filter(|board| board.board_state() == BoardState::Fixed);
    let course = |course: i64| usize::try_from(course).ok();
    fixed.filter_map(|board| board.whole(Field::Course).and_then(course)).max().unwrap_or(0)
}
