//! Jobs: which house.

use crate::handover::DEMO_HOUSE;
use crate::store::{Change, Store, Value};
use crate::views::{JobLine, JobsAction, JobsView, Place};

use super::ask::{self, accept, op, sort_key};
use super::context::Terms;
use super::kept::{Facts, Job, Wall};
use super::trouble::Kept;
use super::{Done, copied, document, kinds};

pub(super) fn view(store: &Store, terms: &Terms<'_>) -> Kept<JobsView> {
    let mut jobs = Vec::new();
    for subject in store.subjects(None, kinds::JOB)? {
        if subject.removed.is_none() {
            let job = Job::of(store, terms, subject.id)?;
            let walls = u32::try_from(Wall::of_job(store, job.id())?.len()).unwrap_or(u32::MAX);
            let name = job.name().to_owned();
            let said = terms.phrase("jobs-walls", &[("count", walls.into())]);
            jobs.push(JobLine { job: job.id().to_string(), name, archived: job.archived(), walls, said });
        }
    }
    jobs.sort_by_key(|job| job.archived);
    Ok(JobsView { jobs, copied: copied::said(terms, copied::at_ms(store)?) })
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &JobsAction) -> Kept<Done> {
    match action {
        JobsAction::Create { name, like } => create(store, terms, name, like.as_deref()),
        JobsAction::Rename { job, name } => {
            let job = Job::of(store, terms, terms.id("job", job)?)?;
            let outcome = ask::answer(store, terms, &job.facts, "name", name)?;
            Ok(Done::at(Place::Jobs, outcome.group))
        }
        JobsAction::Archive { job } => archive(store, terms, job, true),
        JobsAction::BringBack { job } => archive(store, terms, job, false),
        JobsAction::OpenDemo => document::take_in(store, terms, DEMO_HOUSE),
    }
}

fn create(store: &mut Store, terms: &Terms<'_>, name: &str, like: Option<&str>) -> Kept<Done> {
    let id = terms.fresh(0);
    let named = ask::value(terms, ask::ask_of(terms, kinds::JOB, "name")?, name)?;
    let mut answer =
        op("job-created", None, [name.trim()]).create(id, kinds::JOB, None, sort_key(terms, 0)).set(id, "name", named);
    if let Some(like) = like {
        let model = Job::of(store, terms, terms.id("like", like)?)?;
        for field in ["board-height", "board-thickness", "lap", "nail-line", "rules"] {
            if let Some(kept) = model.facts.field(field) {
                answer = answer.set(id, field, kept.value.clone());
            }
        }
        let mut n = 1;
        for kind in [kinds::STOCK, kinds::BLOCK_SIZE, kinds::RULE] {
            for facts in Facts::children(store, model.id(), kind)? {
                let copy = terms.fresh(n);
                answer = answer.create(copy, kind, Some(id), facts.subject.sort_key.clone());
                for (field, kept) in facts.iter() {
                    answer = answer.set(copy, field, kept.value.clone());
                }
                n += 1;
            }
        }
    }
    let outcome = accept(store, terms, answer, &[])?;
    Ok(Done::at(Place::House { job: id.to_string() }, outcome.group))
}

fn archive(store: &mut Store, terms: &Terms<'_>, job: &str, archived: bool) -> Kept<Done> {
    let job = Job::of(store, terms, terms.id("job", job)?)?;
    let (kind, word) = if archived { ("job-archived", "yes") } else { ("job-brought-back", "no") };
    let answer = op(kind, Some(job.id()), [job.name()]).with(Change::Set {
        subject: job.id(),
        field: "archived".to_owned(),
        value: Value::Text(word.to_owned()),
    });
    let outcome = accept(store, terms, answer, &[])?;
    Ok(Done::at(Place::Jobs, outcome.group))
}
