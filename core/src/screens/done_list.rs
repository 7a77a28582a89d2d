//! Done list: what happened, newest first, and how to take it back.

use crate::book::{Book, DraftKey, Field, Kind, all_fields, field_of};
use crate::store::{DeviceId, HistoryEntry, Id, Reopened, Stamp};
use crate::views::{Code, DoneLine, DoneListAction, DoneListView, Place, Problem, ReopenedAnswer, View};

use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::moment::{clock, day};
use crate::forms::place::place_of;
use crate::forms::stored_phrase;
use crate::screens::result::ActionResult;

/// How many lines a page has.
const PAGE: u32 = 50;

pub(super) fn view(book: &Book, terms: &Terms<'_>, job: Option<&str>) -> Result<DoneListView> {
    page(book, terms, job, None)
}

fn page(book: &Book, terms: &Terms<'_>, job: Option<&str>, from: Option<Stamp>) -> Result<DoneListView> {
    let id = job.map(|job| terms.id("job", job)).transpose()?;
    // One more than is shown tells whether there is another page.
    let mut entries = book.history(id, from, PAGE + 1)?;
    let more = entries.len() > PAGE as usize;
    entries.truncate(PAGE as usize);
    let older = entries.last().filter(|_| more).map(|entry| mark(entry.stamp));
    let lines = entries.iter().map(|entry| line(terms, entry)).collect();
    let job = job.map(str::to_owned);
    Ok(DoneListView { job, lines, older, looked_at: None, depends: Vec::new(), reopened: Vec::new() })
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &DoneListAction) -> Result<ActionResult> {
    let unknown = |field| Problem::new(Code::Unknown, field, terms.phrase("screen-unknown", &[]));
    match action {
        DoneListAction::Older { job, from } => {
            let from = read_mark(from).ok_or_else(|| unknown("from"))?;
            Ok(showing(job, page(book, terms, job.as_deref(), Some(from))?))
        }
        DoneListAction::LookAt { job, group } => {
            let id = terms.id("group", group)?;
            let entry = book.history_entry(id)?.ok_or_else(|| unknown("group"))?;
            let mut view = view(book, terms, job.as_deref())?;
            view.looked_at = Some(line(terms, &entry));
            view.depends = book.dependents(id)?.iter().map(|entry| line(terms, entry)).collect();
            Ok(showing(job, view))
        }
        DoneListAction::Undo { job, group } => {
            let id = terms.id("group", group)?;
            let entry = book.history_entry(id)?.ok_or_else(|| unknown("group"))?;
            if entry.undone_by.is_some() {
                return Err(Problem::new(Code::Order, "group", terms.phrase("done-already", &[])).into());
            }
            let (group, reopened) = take_back(book, terms, id)?;
            // It is undone: where the list cannot be shown, that is no reason to say that it is not.
            let view = view(book, terms, job.as_deref()).ok();
            let view = view.map(|view| View::DoneListKind { view: DoneListView { reopened, ..view } });
            Ok(ActionResult { place: Place::DoneList { job: job.clone() }, group: Some(group), view })
        }
    }
}

fn showing(job: &Option<String>, view: DoneListView) -> ActionResult {
    ActionResult { place: Place::DoneList { job: job.clone() }, group: None, view: Some(View::DoneListKind { view }) }
}

/// Takes an answer back and keeps what it had said as drafts, so that its questions stand open again, filled in: all of it
/// or nothing. Gives the undo's own group and those questions.
fn take_back(book: &mut Book, terms: &Terms<'_>, group: Id) -> Result<(Id, Vec<ReopenedAnswer>)> {
    let undone = book.undo(group, &terms.author(), terms.now(), draft)?;
    let mut reopened = Vec::new();
    for answer in &undone.reopened {
        reopened.extend(reopen(book, terms, answer)?);
    }
    Ok((undone.outcome.group, reopened))
}

/// Where the keys of an undone answer are kept, and what they were; none where no person had answered a question.
fn draft(answer: &Reopened) -> Option<(DraftKey, String)> {
    let (kind, field, text) =
        (Kind::from_code(&answer.kind)?, Field::from_code(&answer.field)?, answer.answered.typed());
    let spec = field_of(kind, field).filter(|_| !text.is_empty())?;
    Some((DraftKey::field(answer.subject, spec.field), text))
}

/// The question of an undone answer; none where no person had answered one.
fn reopen(book: &Book, terms: &Terms<'_>, answer: &Reopened) -> Result<Option<ReopenedAnswer>> {
    let Some((_, text)) = draft(answer) else { return Ok(None) };
    let Some(house) = book.house_of(answer.subject)? else { return Ok(None) };
    let Some(record) = house.any(answer.subject) else { return Ok(None) };
    let spec = Field::from_code(&answer.field).and_then(|field| field_of(record.kind, field));
    Ok(spec.map(|spec| {
        let (subject, field) = (answer.subject.to_string(), spec.field.code().to_owned());
        ReopenedAnswer { subject, field, title: terms.phrase(spec.title, &[]), text, place: place_of(record) }
    }))
}

/// What an answer that was just accepted did; empty where its entry cannot be read, since the answer is kept all the same.
pub(super) fn said(book: &Book, terms: &Terms<'_>, group: Id) -> String {
    let entry = book.history_entry(group).ok().flatten();
    entry.map_or_else(String::new, |entry| line(terms, &entry).text)
}

fn line(terms: &Terms<'_>, entry: &HistoryEntry) -> DoneLine {
    let text = match &entry.undoes_kind {
        Some(undone) => terms.phrase("done-undo", &[("a", text(terms, undone, &entry.args).into())]),
        None => text(terms, &entry.kind, &entry.args),
    };
    DoneLine {
        group: entry.group.to_string(),
        text,
        signer: entry.signer.clone(),
        at_ms: entry.stamp.ms,
        day: day(entry.stamp.ms, entry.utc_offset),
        time: clock(entry.stamp.ms, entry.utc_offset),
        undone: entry.undone_by.is_some(),
        is_undo: entry.undoes.is_some(),
    }
}

/// What an answer of a kind says, in the reader's language, whoever wrote it in whichever.
fn text(terms: &Terms<'_>, kind: &str, args: &[String]) -> String {
    let key = format!("done-{kind}");
    if !terms.phrases.has(&key) {
        return terms.phrase("done-newer", &[("a", kind.into())]);
    }
    let arg = |at: usize| args.get(at).map(String::as_str).unwrap_or_default();
    let words = |text: &str| stored_phrase::say(terms, text);
    let second = choice(arg(0), arg(1)).map_or_else(|| words(arg(1)), |label| terms.phrase(label, &[]));
    let args = [("a", words(arg(0)).into()), ("b", second.into()), ("c", words(arg(2)).into())];
    terms.phrase(&key, &args).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The label of a code that answered a question, by the key of the question.
fn choice(title: &str, code: &str) -> Option<&'static str> {
    all_fields().find(|spec| spec.title == title)?.label(code)
}

fn mark(stamp: Stamp) -> String {
    format!("{}/{}/{}", stamp.ms, stamp.counter, stamp.device)
}

fn read_mark(mark: &str) -> Option<Stamp> {
    let mut parts = mark.split('/');
    let ms = parts.next()?.parse().ok()?;
    let counter = parts.next()?.parse().ok()?;
    let device = DeviceId(parts.next()?.parse().ok()?);
    parts.next().is_none().then_some(Stamp { ms, counter, device })
}
