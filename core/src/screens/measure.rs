//! Measure: set up a wall, one question at a time.

mod fits;
mod square;

use crate::store::{Change, Id, Store};
use crate::views::{Code, Given, MeasureAction, MeasureView, PartView, Place, Problem, Question};

use super::ask::{self, accept, keep_draft, op, sort_key};
use super::context::Terms;
use super::kept::{Facts, Wall, first};
use super::parts::given;
use super::trouble::Kept;
use super::{Done, kinds};

/// The kinds of parts.
const PARTS: [&str; 4] = [kinds::BASE_STEP, kinds::STUD, kinds::OPENING, kinds::ABUTMENT];

pub(super) fn view(store: &Store, terms: &Terms<'_>, wall: &str) -> Kept<MeasureView> {
    let wall = Wall::of(store, terms, terms.id("wall", wall)?)?;
    let questions = ask::questions(store, terms, &wall.facts)?;
    let mut parts: Vec<PartView> = Vec::new();
    for kind in PARTS {
        for facts in Facts::children(store, wall.id(), kind)? {
            let questions = ask::questions(store, terms, &facts)?;
            let title = terms.phrase(&format!("wall-part-{kind}"), &[]);
            parts.push(PartView { part: facts.id().to_string(), kind: kind.to_owned(), title, questions });
        }
    }
    let all: Vec<Question> = questions.iter().chain(parts.iter().flat_map(|part| &part.questions)).cloned().collect();
    Ok(MeasureView {
        wall: wall.id().to_string(),
        job: wall.job.to_string(),
        name: wall.name().to_owned(),
        questions,
        parts,
        asked: ask::asked(&all),
        notes: square::notes(terms, &wall.facts),
    })
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &MeasureAction) -> Kept<Done> {
    let of = |store: &Store, wall: &str| Wall::of(store, terms, terms.id("wall", wall)?);
    let here = |wall: &Wall| Place::Measure { wall: wall.id().to_string() };
    match action {
        MeasureAction::Answer { wall, field, text } => {
            let wall = of(store, wall)?;
            let value = ask::value(terms, ask::ask_of(terms, kinds::WALL, field)?, text)?;
            fits::wall(store, terms, &wall, field, value)?;
            let group = ask::answer(store, terms, &wall.facts, field, text)?.group;
            Ok(Done::at(here(&wall), group))
        }
        MeasureAction::KeepDraft { wall, subject, field, text } => {
            let wall = of(store, wall)?;
            if *subject == wall.id().to_string() {
                keep_draft(store, terms, &wall.facts, field, text)?;
            } else {
                keep_draft(store, terms, &part(store, terms, &wall, subject)?, field, text)?;
            }
            Ok(Done::without_answer(here(&wall)))
        }
        MeasureAction::AddPart { wall, kind, answers } => {
            let wall = of(store, wall)?;
            let group = add(store, terms, &wall, kind, answers)?;
            Ok(Done::at(here(&wall), group))
        }
        MeasureAction::AnswerPart { wall, part: id, field, text } => {
            let wall = of(store, wall)?;
            let facts = part(store, terms, &wall, id)?;
            let value = ask::value(terms, ask::ask_of(terms, &facts.subject.kind, field)?, text)?;
            fits::part(store, terms, &wall, &facts.with(field, value))?;
            let group = ask::answer(store, terms, &facts, field, text)?.group;
            Ok(Done::at(here(&wall), group))
        }
        MeasureAction::RemovePart { wall, part: id } => {
            let wall = of(store, wall)?;
            let facts = part(store, terms, &wall, id)?;
            let name = format!("wall-part-{}", facts.subject.kind);
            let answer = op("removed", Some(wall.job), [&name]).with(Change::Remove { subject: facts.id() });
            let group = accept(store, terms, answer, &[])?.group;
            Ok(Done::at(here(&wall), group))
        }
    }
}

/// A part of this wall.
fn part(store: &Store, terms: &Terms<'_>, wall: &Wall, id: &str) -> Kept<Facts> {
    let id = terms.id("part", id)?;
    for kind in PARTS {
        if let Some(facts) = Facts::children(store, wall.id(), kind)?.into_iter().find(|facts| facts.id() == id) {
            return Ok(facts);
        }
    }
    Err(Problem::new(Code::Unknown, "part", terms.phrase("screen-unknown", &[])).into())
}

fn add(store: &mut Store, terms: &Terms<'_>, wall: &Wall, kind: &str, answers: &[Given]) -> Kept<Id> {
    let Some(kind) = PARTS.into_iter().find(|known| *known == kind) else {
        let text = terms.phrase("screen-pick", &[("choices", PARTS.join(", ").into())]);
        return Err(Problem::new(Code::Choice, "kind", text).into());
    };
    let fields = ask::fields(terms, kind, &given(answers))?;
    let id = terms.fresh(0);
    fits::part(store, terms, wall, &Facts::imagined(id, kind, wall.id(), &fields))?;
    let mut answer = op("part-added", Some(wall.job), [&format!("wall-part-{kind}"), wall.name()]);
    answer = answer.create(id, kind, Some(wall.id()), sort_key(terms, 0));
    for (field, value) in fields {
        answer = answer.set(id, field, value);
    }
    Ok(accept(store, terms, answer, &[])?.group)
}

/// A wall that other sizes lean on must be measured first.
fn needs(terms: &Terms<'_>, field: &str, title: &str) -> Problem {
    first(terms, field, title)
}
