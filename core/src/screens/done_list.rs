//! Done list: what happened, newest first, and how to take it back.

use crate::store::{DeviceId, Done as Entry, Reopened, Stamp, Store};
use crate::views::{Code, DoneLine, DoneListAction, DoneListView, Place, Problem, ReopenedAnswer, View};

use super::Done;
use super::ask::draft_key;
use super::context::Terms;
use super::kept_phrase;
use super::kinds::{self, ALL_ASKS, Allowed, asks};
use super::moment::{clock, day};
use super::trouble::Kept;

/// How many lines a page has.
const PAGE: u32 = 50;

pub(super) fn view(store: &Store, terms: &Terms<'_>, job: Option<&str>) -> Kept<DoneListView> {
    page(store, terms, job, None)
}

fn page(store: &Store, terms: &Terms<'_>, job: Option<&str>, from: Option<Stamp>) -> Kept<DoneListView> {
    // One more than is shown tells whether there is another page.
    let mut entries = match job {
        Some(job) => store.done_in(Some(terms.id("job", job)?), from, PAGE + 1)?,
        None => store.done(from, PAGE + 1)?,
    };
    let more = entries.len() > PAGE as usize;
    entries.truncate(PAGE as usize);
    let older = entries.last().filter(|_| more).map(|entry| mark(entry.stamp));
    let lines = entries.iter().map(|entry| line(store, terms, entry)).collect::<Kept<_>>()?;
    let job = job.map(str::to_owned);
    Ok(DoneListView { job, lines, older, looked_at: None, depends: Vec::new(), reopened: Vec::new() })
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &DoneListAction) -> Kept<Done> {
    let unknown = |field| Problem::new(Code::Unknown, field, terms.phrase("screen-unknown", &[]));
    match action {
        DoneListAction::Older { job, from } => {
            let from = read_mark(from).ok_or_else(|| unknown("from"))?;
            Ok(showing(job, page(store, terms, job.as_deref(), Some(from))?))
        }
        DoneListAction::LookAt { job, group } => {
            let id = terms.id("group", group)?;
            let entry = store.done_one(id)?.ok_or_else(|| unknown("group"))?;
            let mut view = view(store, terms, job.as_deref())?;
            view.looked_at = Some(line(store, terms, &entry)?);
            let depends = store.dependents(id)?;
            view.depends = depends.iter().map(|entry| line(store, terms, entry)).collect::<Kept<_>>()?;
            Ok(showing(job, view))
        }
        DoneListAction::Undo { job, group } => {
            let id = terms.id("group", group)?;
            let entry = store.done_one(id)?.ok_or_else(|| unknown("group"))?;
            if entry.undone_by.is_some() {
                return Err(Problem::new(Code::Order, "group", terms.phrase("done-already", &[])).into());
            }
            let undone = store.undo(id, &terms.author(), terms.now())?;
            let mut reopened = Vec::new();
            for answer in undone.reopened {
                reopened.extend(reopen(store, terms, &answer)?);
            }
            let mut view = view(store, terms, job.as_deref())?;
            view.reopened = reopened;
            Ok(Done { group: Some(undone.outcome.group), ..showing(job, view) })
        }
    }
}

fn showing(job: &Option<String>, view: DoneListView) -> Done {
    Done { place: Place::DoneList { job: job.clone() }, group: None, view: Some(View::DoneListKind { view }) }
}

/// Opens the question of an undone answer again, where a person had answered one and the thing is still there.
fn reopen(store: &mut Store, terms: &Terms<'_>, answer: &Reopened) -> Kept<Option<ReopenedAnswer>> {
    let typed = answer.answered.typed();
    let Some(subject) = store.subject(answer.subject)?.filter(|subject| subject.removed.is_none()) else {
        return Ok(None);
    };
    let Some(ask) = asks(&subject.kind).iter().find(|ask| ask.field == answer.field) else { return Ok(None) };
    if typed.is_empty() {
        return Ok(None);
    }
    store.draft_put(&draft_key(answer.subject, ask.field), &typed)?;
    let own = answer.subject.to_string();
    let parent = subject.parent.map(|parent| parent.to_string()).unwrap_or_default();
    let job = subject.job.map(|job| job.to_string()).unwrap_or_default();
    let place = match subject.kind.as_str() {
        kinds::JOB => Place::House { job: own.clone() },
        kinds::WALL => Place::Measure { wall: own.clone() },
        kinds::BASE_STEP | kinds::STUD | kinds::OPENING | kinds::ABUTMENT => Place::Measure { wall: parent },
        kinds::PENETRATION => Place::Penetration { penetration: own.clone() },
        kinds::BOARD => Place::Board { board: own.clone() },
        kinds::NOTCH => Place::Board { board: parent },
        kinds::POLE | kinds::MARK => Place::Pole { job },
        kinds::RULE => Place::Rules { job },
        _ => Place::House { job },
    };
    let (field, title) = (answer.field.clone(), terms.phrase(ask.title, &[]));
    Ok(Some(ReopenedAnswer { subject: own, field, title, text: typed, place }))
}

fn line(store: &Store, terms: &Terms<'_>, entry: &Entry) -> Kept<DoneLine> {
    let undone = match entry.undoes {
        Some(group) => store.done_one(group)?,
        None => None,
    };
    let text = match &undone {
        Some(undone) => terms.phrase("done-undo", &[("a", text(terms, undone).into())]),
        None => text(terms, entry),
    };
    Ok(DoneLine {
        group: entry.group.to_string(),
        text,
        signer: entry.signer.clone(),
        at_ms: entry.stamp.ms,
        day: day(entry.stamp.ms, entry.utc_offset),
        time: clock(entry.stamp.ms, entry.utc_offset),
        undone: entry.undone_by.is_some(),
        is_undo: entry.undoes.is_some(),
    })
}

/// What an entry says, in the reader's language, whoever wrote it in whichever.
fn text(terms: &Terms<'_>, entry: &Entry) -> String {
    let key = format!("done-{}", entry.kind);
    if !terms.phrases.has(&key) {
        return terms.phrase("done-newer", &[("a", entry.kind.as_str().into())]);
    }
    let arg = |at: usize| entry.args.get(at).map(String::as_str).unwrap_or_default();
    let words = |text: &str| kept_phrase::say(terms, text);
    let second = choice(arg(0), arg(1)).map_or_else(|| words(arg(1)), |label| terms.phrase(label, &[]));
    let args = [("a", words(arg(0)).into()), ("b", second.into()), ("c", words(arg(2)).into())];
    terms.phrase(&key, &args).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The label of a code that answered a question, by the key of the question.
fn choice(title: &str, code: &str) -> Option<&'static str> {
    let ask = ALL_ASKS.iter().flat_map(|asks| asks.iter()).find(|ask| ask.title == title)?;
    let Allowed::OneOf(choices) = ask.allowed else { return None };
    choices.iter().find_map(|(own, label)| (*own == code).then_some(*label))
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
