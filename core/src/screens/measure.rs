//! Measure: set up a wall, one question at a time.

mod fits;
mod pitch;
mod square;

use std::sync::Arc;

use crate::book::{Book, Field, Kind, Operation, OperationKind, Record, field_of, fields_of};
use crate::views::{Code, Given, MeasureAction, MeasureView, PartView, Place, Problem, Question};
use crate::work::{WallSite, Work};

use crate::forms::ask::{self, accept, keep_draft, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::offer;
use crate::forms::parts::given;
use crate::screens::result::ActionResult;

/// The kinds of parts of a wall.
const PARTS: [Kind; 4] = [Kind::BaseStep, Kind::Stud, Kind::Opening, Kind::Abutment];

pub(super) fn view(book: &Book, terms: &Terms<'_>, wall: &str) -> Result<MeasureView> {
    let (work, wall) = lookup::wall(book, terms, wall)?;
    let mut questions = ask::questions(book, terms, &wall.record)?;
    offer::of_wall(terms, &work, &wall.record, &mut questions)?;
    let part = |part: &Arc<Record>| {
        let questions = ask::questions(book, terms, part)?;
        let title = terms.phrase(&format!("wall-part-{}", part.kind), &[]);
        Ok(PartView { part: part.id().to_string(), kind: part.kind.code().to_owned(), title, questions })
    };
    let parts = parts(&work, &wall).map(part).collect::<Result<Vec<PartView>>>()?;
    let all: Vec<Question> = questions.iter().chain(parts.iter().flat_map(|part| &part.questions)).cloned().collect();
    Ok(MeasureView {
        wall: wall.id().to_string(),
        job: lookup::job_id(&work),
        name: wall.name().to_owned(),
        questions,
        parts,
        asked: ask::asked(&all),
        notes: square::notes(terms, &wall.record),
    })
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &MeasureAction) -> Result<ActionResult> {
    match action {
        MeasureAction::Answer { wall, field, text } => {
            let (work, wall) = lookup::wall(book, terms, wall)?;
            if field == pitch::PITCH {
                let group = pitch::answer(book, terms, (&work, &wall), text)?;
                return Ok(ActionResult::at(here(&wall), group));
            }
            let Some(spec) = Field::from_code(field).and_then(|field| field_of(Kind::Wall, field)) else {
                let fields = fields_of(Kind::Wall).iter().map(|spec| spec.field.code()).chain([pitch::PITCH]);
                let said = terms.phrases.not_asked(field, fields.map(str::to_owned).collect());
                return Err(Problem::new(Code::Unknown, field, said).into());
            };
            let value = ask::value(terms, spec, text)?;
            fits::wall(terms, (&work, &wall), spec.field, value)?;
            let group = ask::answer(book, terms, &wall.record, field, text)?.group;
            Ok(ActionResult::at(here(&wall), group))
        }
        MeasureAction::KeepDraft { wall, subject, field, text } => {
            let (work, wall) = lookup::wall(book, terms, wall)?;
            let asked =
                if *subject == wall.id().to_string() { &wall.record } else { part(terms, (&work, &wall), subject)? };
            keep_draft(book, terms, asked, field, text)?;
            Ok(ActionResult::without_answer(here(&wall)))
        }
        MeasureAction::AddPart { wall, kind, answers } => add(book, terms, wall, kind, answers),
        MeasureAction::AnswerPart { wall, part: id, field, text } => {
            let (work, wall) = lookup::wall(book, terms, wall)?;
            let part = part(terms, (&work, &wall), id)?;
            let spec = ask::spec_of(terms, part.kind, field)?;
            let value = ask::value(terms, spec, text)?;
            fits::part(terms, (&work, &wall), &part.with(spec.field, value))?;
            let group = ask::answer(book, terms, part, field, text)?.group;
            Ok(ActionResult::at(here(&wall), group))
        }
        MeasureAction::RemovePart { wall, part: id } => {
            let (work, wall) = lookup::wall(book, terms, wall)?;
            let part = part(terms, (&work, &wall), id)?;
            let name = format!("wall-part-{}", part.kind);
            let operation = Operation::new(OperationKind::Removed, work.id(), [&*name]).remove(part.id());
            let group = accept(book, terms, operation, &[])?.group;
            Ok(ActionResult::at(here(&wall), group))
        }
    }
}

fn here(wall: &WallSite) -> Place {
    Place::Measure { wall: wall.id().to_string() }
}

/// The parts of a wall, kind by kind.
fn parts<'a>(work: &'a Work, wall: &WallSite) -> impl Iterator<Item = &'a Arc<Record>> {
    let wall = wall.id();
    PARTS.into_iter().flat_map(move |kind| work.house().under(wall, kind))
}

/// A part of this wall.
fn part<'a>(terms: &Terms<'_>, (work, wall): (&'a Work, &WallSite), id: &str) -> Result<&'a Arc<Record>> {
    let id = terms.id("part", id)?;
    let unknown = || Problem::new(Code::Unknown, "part", terms.phrase("screen-unknown", &[]));
    Ok(parts(work, wall).find(|part| part.id() == id).ok_or_else(unknown)?)
}

fn add(book: &mut Book, terms: &Terms<'_>, wall: &str, kind: &str, answers: &[Given]) -> Result<ActionResult> {
    let (work, wall) = lookup::wall(book, terms, wall)?;
    let Some(kind) = PARTS.into_iter().find(|known| known.code() == kind) else {
        let text = terms.phrase("screen-pick", &[("choices", PARTS.map(Kind::code).join(", ").into())]);
        return Err(Problem::new(Code::Choice, "kind", text).into());
    };
    let fields = ask::fields(terms, fields_of(kind), &given(answers))?;
    let id = terms.fresh(0);
    fits::part(terms, (&work, &wall), &Record::unsaved(id, kind, wall.id(), &fields))?;
    let name = format!("wall-part-{kind}");
    let operation = Operation::new(OperationKind::PartAdded, work.id(), [&*name, wall.name()])
        .create(id, kind, Some(wall.id()), sort_key(terms, 0))
        .set_all(id, fields);
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(here(&wall), group))
}
