//! Jobs: which house.

use std::path::Path;
use std::sync::LazyLock;

use crate::book::{Book, Field, JobRow, Kind, Operation, OperationKind, sure_code};
use crate::handover::{self, DEMO_HOUSE};
use crate::store::{Account, Value};
use crate::views::{JobLine, JobsAction, JobsView, Place};

use crate::exchange::{copied, differences, restore};
use crate::forms::ask::{self, accept, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::screens::result::ActionResult;

/// What a house takes over from the one that it is like.
const LIKE: [Field; 5] = [Field::BoardHeight, Field::BoardThickness, Field::Lap, Field::NailLine, Field::Rules];

pub(super) fn view(book: &Book, terms: &Terms<'_>) -> Result<JobsView> {
    let line = |job: JobRow| JobLine {
        job: job.record.id().to_string(),
        name: job.record.text(Field::Name).unwrap_or_default().to_owned(),
        archived: job.record.yes(Field::Archived) == Some(true),
        walls: job.walls,
        said: terms.phrase("jobs-walls", &[("count", job.walls.into())]),
    };
    let mut jobs: Vec<JobLine> = book.jobs()?.into_iter().map(line).collect();
    jobs.sort_by_key(|job| job.archived);
    let accounts = book.accounts()?.into_iter();
    let account = accounts.flat_map(|account| called(book, terms, account).lines(terms.phrases)).collect();
    let has_demo = jobs.iter().any(|job| job.name == *DEMO_NAME);
    Ok(JobsView {
        jobs,
        copied: copied::said(book, terms)?,
        copy_failed: copied::failed(book, terms)?,
        differences: differences::said(book, terms)?,
        account,
        has_demo,
    })
}

/// An account with its files by the names that a person here knows them by: the folders of a phone tell nobody anything.
fn called(book: &Book, terms: &Terms<'_>, mut account: Account) -> Account {
    let sources = account.sources.iter_mut().chain(&mut account.untaken).map(|from| &mut from.path);
    for path in sources.chain(&mut account.kept) {
        if let Ok(name) = restore::named_source(book, terms, Path::new(path.as_str())) {
            *path = name;
        }
    }
    account
}

/// What the demo house is called, in its own document, which is read once.
static DEMO_NAME: LazyLock<String> = LazyLock::new(|| {
    let document: serde_json::Value = serde_json::from_str(DEMO_HOUSE).unwrap_or_default();
    document.get("name").and_then(serde_json::Value::as_str).unwrap_or_default().to_owned()
});

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &JobsAction) -> Result<ActionResult> {
    match action {
        JobsAction::Create { name, like } => create(book, terms, name, like.as_deref()),
        JobsAction::Rename { job, name } => {
            let work = lookup::house(book, terms, job)?;
            let outcome = ask::answer(book, terms, work.job()?, Field::Name.code(), name)?;
            Ok(ActionResult::at(Place::Jobs, outcome.group))
        }
        JobsAction::Archive { job } => archive(book, terms, job, true),
        JobsAction::BringBack { job } => archive(book, terms, job, false),
        JobsAction::Acknowledge => {
            book.acknowledge()?;
            Ok(ActionResult::without_answer(Place::Jobs))
        }
        JobsAction::OpenDemo => {
            let (job, group) = handover::take_in(book, terms, DEMO_HOUSE)?;
            Ok(ActionResult::at(Place::House { job: job.to_string() }, group))
        }
    }
}

fn create(book: &mut Book, terms: &Terms<'_>, name: &str, like: Option<&str>) -> Result<ActionResult> {
    let id = terms.fresh(0);
    let named = ask::value(terms, ask::spec_of(terms, Kind::Job, Field::Name.code())?, name)?;
    let mut operation = Operation::new(OperationKind::JobCreated, None, [name.trim()])
        .create(id, Kind::Job, None, sort_key(terms, 0))
        .set(id, Field::Name, named);
    if let Some(like) = like {
        let work = lookup::work(book, Some(terms.id("like", like)?))?;
        let model = work.job()?;
        let taken_over = LIKE.into_iter().filter_map(|field| Some((field, model.written(field)?.value.clone())));
        operation = operation.set_all(id, taken_over);
        for (field, length) in LIKE.into_iter().filter_map(|field| Some((field, model.length(field)?))) {
            if model.is_sure(field, length) {
                operation = operation.set_code(id, sure_code(field), Value::Whole(length.nm()));
            }
        }
        let parts = [Kind::Stock, Kind::BlockSize, Kind::Rule].into_iter().flat_map(|kind| work.house().own(kind));
        for (n, part) in (1..).zip(parts) {
            let copy = terms.fresh(n);
            operation = operation.create(copy, part.kind, Some(id), part.sort_key.clone());
            // What lies at hand there does not lie here: a length is bought here as well, its boards are not.
            for (code, written) in part.iter().filter(|(code, _)| code != Field::Count.code()) {
                operation = operation.set_code(copy, code, written.value.clone());
            }
        }
    }
    let outcome = accept(book, terms, operation, &[])?;
    Ok(ActionResult::at(Place::House { job: id.to_string() }, outcome.group))
}

fn archive(book: &mut Book, terms: &Terms<'_>, job: &str, archived: bool) -> Result<ActionResult> {
    let work = lookup::house(book, terms, job)?;
    let (kind, word) = match archived {
        true => (OperationKind::JobArchived, "yes"),
        false => (OperationKind::JobBroughtBack, "no"),
    };
    let operation = Operation::new(kind, work.id(), [work.name()]).set(
        work.job()?.id(),
        Field::Archived,
        Value::Text(word.to_owned()),
    );
    let outcome = accept(book, terms, operation, &[])?;
    Ok(ActionResult::at(Place::Jobs, outcome.group))
}
