//! Story pole: where the lines go.

mod as_built;
mod preview;

use crate::store::{Id, Store, Value};
use crate::views::{Code, Place, PoleAction, PoleView, Problem};

use super::ask::{self, accept, draft_key, keep_draft, op, sort_key};
use super::context::Terms;
use super::drawing::pole_revision;
use super::kept::{Facts, Job, Wall};
use super::trouble::Kept;
use super::{Done, kinds};

pub(super) fn view(store: &Store, terms: &Terms<'_>, job: &str) -> Kept<PoleView> {
    let job = Job::of(store, terms, terms.id("job", job)?)?;
    let mut view = preview::view(store, terms, &job)?;
    view.revision = pole_revision(terms.phrases, &view);
    Ok(view)
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &PoleAction) -> Kept<Done> {
    let of = |store: &Store, job: &str| Job::of(store, terms, terms.id("job", job)?);
    let here = |job: &Job| Place::Pole { job: job.id().to_string() };
    match action {
        PoleAction::Answer { job, field, text } => {
            let job = of(store, job)?;
            let group = answer(store, terms, &job, field, text)?;
            Ok(Done::at(here(&job), group))
        }
        PoleAction::KeepDraft { job, field, text } => {
            let job = of(store, job)?;
            // Before the pole has an id its drafts have no place; the first accepted answer makes it.
            if let Some(pole) = pole(store, &job)? {
                keep_draft(store, terms, &pole, field, text)?;
            }
            Ok(Done::without_answer(here(&job)))
        }
        PoleAction::AddMark { job, answers } => {
            let job = of(store, job)?;
            let fields = ask::fields(terms, kinds::MARK, &super::parts::given(answers))?;
            let id = terms.fresh(0);
            let name = answers.iter().find(|given| given.field == "name").map_or("", |given| &given.text);
            let mut answer = op("mark-added", Some(job.id()), [name.trim()]);
            let pole = match pole(store, &job)? {
                Some(pole) => pole.id(),
                None => {
                    answer = answer.create(terms.fresh(1), kinds::POLE, Some(job.id()), sort_key(terms, 0));
                    terms.fresh(1)
                }
            };
            answer = answer.create(id, kinds::MARK, Some(pole), sort_key(terms, 0));
            for (field, value) in fields {
                answer = answer.set(id, field, value);
            }
            let group = accept(store, terms, answer, &[])?.group;
            Ok(Done::at(here(&job), group))
        }
        PoleAction::RemoveMark { job, mark } => {
            let job = of(store, job)?;
            let mark = Facts::of(store, terms, terms.id("mark", mark)?, kinds::MARK)?;
            if pole(store, &job)?.is_none_or(|pole| mark.subject.parent != Some(pole.id())) {
                return Err(Problem::new(Code::Unknown, "mark", terms.phrase("screen-unknown", &[])).into());
            }
            let name = mark.text("name").unwrap_or_default().to_owned();
            let answer =
                op("removed", Some(job.id()), [&name]).with(crate::store::Change::Remove { subject: mark.id() });
            let group = accept(store, terms, answer, &[])?.group;
            Ok(Done::at(here(&job), group))
        }
        PoleAction::LayOut { job } => {
            let job = of(store, job)?;
            let group = lay_out(store, terms, &job)?;
            Ok(Done::at(here(&job), group))
        }
        PoleAction::SayAsBuilt { wall, answers } => as_built::say(store, terms, wall, answers),
        PoleAction::RemoveAsBuilt { as_built } => as_built::remove(store, terms, as_built),
    }
}

/// The pole of a job, where anything was said of it.
fn pole(store: &Store, job: &Job) -> Kept<Option<Facts>> {
    Ok(Facts::children(store, job.id(), kinds::POLE)?.into_iter().next())
}

fn answer(store: &mut Store, terms: &Terms<'_>, job: &Job, field: &str, text: &str) -> Kept<Id> {
    if let Some(pole) = pole(store, job)? {
        return Ok(ask::answer(store, terms, &pole, field, text)?.group);
    }
    let question = ask::ask_of(terms, kinds::POLE, field)?;
    let value = ask::value(terms, question, text)?;
    let id = terms.fresh(0);
    let answer = op("answered", Some(job.id()), [question.title, text.trim()])
        .create(id, kinds::POLE, Some(job.id()), sort_key(terms, 0))
        .set(id, field, value);
    Ok(accept(store, terms, answer, &[&draft_key(id, field)])?.group)
}

/// Keeps the layout: what is up stays, so no line that a fixed board stands on may move.
fn lay_out(store: &mut Store, terms: &Terms<'_>, job: &Job) -> Kept<Id> {
    let pole = pole(store, job)?.ok_or_else(|| super::kept::first(terms, "from", "ask-pole-from"))?;
    let lines = preview::lines(store, terms, job, &pole)?;
    let up = fixed_courses(store, job)?;
    if let Some(kept) = job.lines(store)? {
        let same = kept.iter().zip(&lines).take_while(|(old, new)| old == new).count();
        if same < up {
            let text = terms.phrase("pole-boards-are-up", &[("course", up.into())]);
            return Err(Problem::new(Code::First, "lines", text).into());
        }
    }
    let text = lines.iter().map(|line| line.nm().to_string()).collect::<Vec<_>>().join(",");
    let courses = lines.len().saturating_sub(1).to_string();
    let mut answer = op("pole-laid-out", Some(job.id()), [&courses]).set(pole.id(), "lines", Value::Text(text));
    let kept = job.lines(store)?.unwrap_or_default();
    answer = as_built::laid_out(answer, store, terms, job, (&kept, &lines))?;
    Ok(accept(store, terms, answer, &[])?.group)
}

/// The highest course of which a board is fixed; zero where none is.
fn fixed_courses(store: &Store, job: &Job) -> Kept<usize> {
    let mut highest = 0;
    for wall in Wall::of_job(store, job.id())? {
        for board in Facts::children(store, wall.id(), kinds::BOARD)? {
            if board.text("state") == Some("fixed") {
                highest =
                    highest.max(board.whole("course").and_then(|course| usize::try_from(course).ok()).unwrap_or(0));
            }
        }
    }
    Ok(highest)
}
