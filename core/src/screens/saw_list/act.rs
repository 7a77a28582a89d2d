use crate::measure::{Length, Rounding};
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::Done;
use crate::screens::ask::{self, Answer, accept, op, sort_key};
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job};
use crate::screens::kinds;
use crate::screens::planning::HousePlanner;
use crate::screens::trouble::Kept;
use crate::store::{Change, Id, Store, Value};
use crate::views::{Code, Place, Problem, SawListAction};

use super::boards::{Boards, SawBoard};

/// The planner's steps of a first plan: over in a moment on a phone.
const FIRST: u64 = 400;
/// The planner's steps of a better plan: some seconds where a proof is hard.
const MORE: u64 = crate::saw::DEFAULT_EFFORT;

pub(in crate::screens) fn act(store: &mut Store, terms: &Terms<'_>, action: &SawListAction) -> Kept<Done> {
    let of = |store: &Store, job: &str| Job::of(store, terms, terms.id("job", job)?);
    let (job, group) = match action {
        SawListAction::Plan { job } => {
            let job = of(store, job)?;
            let mut planner = HousePlanner::buying(store, terms, job.id())?;
            planner.work(FIRST);
            let group = planner.keep(store, terms)?;
            (job, group)
        }
        SawListAction::Improve { job } => {
            let job = of(store, job)?;
            let group = improve(store, terms, &job)?;
            (job, group)
        }
        SawListAction::MarkCut { job, number } => {
            let job = of(store, job)?;
            let group = mark_cut(store, terms, &job, *number)?;
            (job, group)
        }
        SawListAction::AddOffcut { job, length } => {
            let job = of(store, job)?;
            let fields = ask::fields(terms, kinds::OFFCUT, &[("length", length.as_str())].into())?;
            let id = terms.fresh(0);
            let mut answer = op("offcut-added", Some(job.id()), [length.trim()]);
            answer = answer.create(id, kinds::OFFCUT, Some(job.id()), sort_key(terms, 0));
            for (field, value) in fields {
                if let Value::Length { length, .. } = value {
                    answer = with_offcut(answer, store, &job, length)?;
                }
                answer = answer.set(id, field, value);
            }
            let group = accept(store, terms, answer, &[])?.group;
            (job, group)
        }
        SawListAction::DropOffcut { job, offcut } => {
            let job = of(store, job)?;
            let group = put(store, terms, &job, offcut, ("offcut-dropped", Value::Text("dropped".to_owned())))?;
            (job, group)
        }
        SawListAction::KeepOffcut { job, offcut } => {
            let job = of(store, job)?;
            let group = put(store, terms, &job, offcut, ("offcut-kept", Value::Absent))?;
            (job, group)
        }
        SawListAction::SayStock { job, stock, count } => {
            let job = of(store, job)?;
            let facts = child(store, terms, &job, ("stock", kinds::STOCK), stock)?;
            let group = ask::answer(store, terms, &facts, "count", count)?.group;
            (job, group)
        }
        SawListAction::KeepDraft { job, stock, text } => {
            let job = of(store, job)?;
            let facts = child(store, terms, &job, ("stock", kinds::STOCK), stock)?;
            ask::keep_draft(store, terms, &facts, "count", text)?;
            return Ok(Done::without_answer(Place::SawList { job: job.id().to_string() }));
        }
    };
    Ok(Done::at(Place::SawList { job: job.id().to_string() }, group))
}

/// Plans with more effort, and takes the plan where it is better or better known.
fn improve(store: &mut Store, terms: &Terms<'_>, job: &Job) -> Kept<Id> {
    let mut planner = HousePlanner::buying(store, terms, job.id())?;
    planner.work(MORE);
    let plan = planner.plan();
    let list = Boards::of(store, job)?;
    // Boards that are begun stay as they are: the plan is of the rest alone.
    let in_all = |nm: u64| list.begun() + Length::from_nm(i64::try_from(nm).unwrap_or(i64::MAX));
    let (used, least) = (in_all(plan.cost), in_all(plan.bound));
    let none = list.boards.is_empty() || list.unlisted > 0;
    let better = none || used < list.used() || used == list.used() && least > list.least(job);
    if !better {
        return Err(Problem::new(Code::Infeasible, "job", terms.phrase(key("saw-no-better"), &[])).into());
    }
    planner.keep(store, terms)
}

/// All pieces of a board are cut: each keeps its length, and a rest worth keeping becomes an offcut.
fn mark_cut(store: &mut Store, terms: &Terms<'_>, job: &Job, number: i64) -> Kept<Id> {
    let list = Boards::of(store, job)?;
    let unknown = || Problem::new(Code::Unknown, "number", terms.phrase("screen-unknown", &[]));
    let board = list.boards.iter().find(|board| board.number == number).ok_or_else(unknown)?;
    if board.cut() {
        return Err(Problem::new(Code::Order, "number", terms.phrase(key("saw-already-cut"), &[])).into());
    }
    let mut answer = op("saw-cut", Some(job.id()), [&number.to_string(), &cuts(terms, board)]);
    for piece in board.pieces.iter().filter(|piece| piece.planned()) {
        let id = piece.facts.id();
        answer = answer.set(id, "state", Value::Text("cut".to_owned())).with(Change::Keep {
            subject: id,
            field: "sawn-length".to_owned(),
            value: planned(piece.length),
        });
    }
    let source = board.offcut.as_deref().and_then(|offcut| offcut.parse().ok());
    if let Some(offcut) = source {
        answer = answer.set(offcut, "used", Value::Text("cut".to_owned()));
    }
    // The cut that frees the rest takes a kerf, too.
    let rest = board.rest - job.rules.get_length(keys::SAW_KERF)?;
    let rest = terms.division.round(rest, Rounding::Down);
    if board.rest >= job.rules.get_length(keys::OFFCUT_KEEP_LEAST)? && rest.is_positive() {
        let id = terms.fresh(0);
        answer = answer
            .create(id, kinds::OFFCUT, Some(job.id()), sort_key(terms, 0))
            .set(id, "length", planned(rest))
            .set(id, "cut-from", Value::Whole(number));
    }
    Ok(accept(store, terms, answer, &[])?.group)
}

fn cuts(terms: &Terms<'_>, board: &SawBoard) -> String {
    board.pieces.iter().map(|piece| terms.shown(piece.length)).collect::<Vec<_>>().join(" + ")
}

fn planned(length: Length) -> Value {
    Value::Length { length, typed: String::new(), unit: "mm".to_owned() }
}

/// Puts an offcut away, or back; one that is cut up stays so.
fn put(store: &mut Store, terms: &Terms<'_>, job: &Job, offcut: &str, (kind, used): (&str, Value)) -> Kept<Id> {
    let facts = child(store, terms, job, ("offcut", kinds::OFFCUT), offcut)?;
    if facts.text("used") == Some("cut") {
        return Err(Problem::new(Code::Order, "offcut", terms.phrase(key("saw-offcut-gone"), &[])).into());
    }
    let length = facts.reading(terms, "length").map(|length| length.text).unwrap_or_default();
    let mut answer = op(kind, Some(job.id()), [&*length]);
    if used == Value::Absent {
        answer = with_offcut(answer, store, job, facts.length("length").unwrap_or(Length::ZERO))?;
    }
    let answer = answer.set(facts.id(), "used", used);
    Ok(accept(store, terms, answer, &[])?.group)
}

/// Takes from what is known of the least: an offcut that the plan did not have may stand for one new board, at most the
/// longest, so that a list may take so much less.
fn with_offcut(answer: Answer, store: &Store, job: &Job, offcut: Length) -> Kept<Answer> {
    let Some(least) = job.facts.length("plan-least") else { return Ok(answer) };
    let stock = Facts::children(store, job.id(), kinds::STOCK)?;
    let longest = stock.iter().filter_map(|stock| stock.length("length")).max();
    let left = longest.filter(|longest| *longest >= offcut).map_or(Length::ZERO, |longest| least - longest);
    Ok(answer.set(job.id(), "plan-least", planned(left.max(Length::ZERO))))
}

/// A thing of this house.
fn child(store: &Store, terms: &Terms<'_>, job: &Job, (field, kind): (&str, &str), id: &str) -> Kept<Facts> {
    let id = terms.id(field, id)?;
    let found = Facts::children(store, job.id(), kind)?.into_iter().find(|facts| facts.id() == id);
    Ok(found.ok_or_else(|| Problem::new(Code::Unknown, field, terms.phrase("screen-unknown", &[])))?)
}
