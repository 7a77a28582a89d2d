//! A board once more: one that was spoiled, and one like the last.

use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::Done;
use crate::screens::ask::{accept, op, sort_key};
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job, Wall, first};
use crate::screens::kinds;
use crate::screens::signing::signed;
use crate::screens::trouble::Kept;
use crate::store::{Id, Store, Value};
use crate::views::{Code, Place, Problem, StepHow, StepSaid, StepState};

use super::hand::InHand;
use super::notches;

/// A spoiled board is planned again: its ticks are taken back, it counts once more as spoiled, the board of the stock that
/// it came from is gone, and what is left of the piece is an offcut where it is worth keeping. All in one answer.
pub(super) fn spoiled(store: &mut Store, terms: &Terms<'_>, hand: &InHand, left: &str) -> Kept<Id> {
    if hand.state() == "planned" {
        let text = terms.phrase(key("board-not-cut"), &[]);
        return Err(Problem::new(Code::Order, "board", text).into());
    }
    let left = match left.trim() {
        "" => None,
        typed => {
            let (length, unit) = terms.typed("left", typed)?;
            if !length.is_positive() || hand.facts.length("length").is_some_and(|whole| length > whole) {
                return Err(Problem::new(Code::Range, "left", terms.phrase(key("board-left-range"), &[])).into());
            }
            Some((length, typed.to_owned(), unit.code().to_owned()))
        }
    };
    let (board, job) = (hand.facts.id(), hand.job.as_ref().map(Job::id));
    let name = hand.name();
    let said_left = left.as_ref().map(|(_, typed, _)| typed.clone()).unwrap_or_default();
    let mut answer = op("board-spoiled", job, [&name, &said_left]);

    // The ticks that made it: a step is taken back as it was signed, each by itself.
    let views = notches::views(store, terms, hand)?;
    let detail = hand.detail(!views.is_empty());
    let steps = detail.steps();
    let on = hand.signing(&name, &steps, hand.hash(&detail, &views)?);
    let lines = super::step_lines(store, terms, &on)?;
    for line in lines.iter().rev().filter(|line| line.state != StepState::Open) {
        let said = StepSaid {
            how: StepHow::TakeBack,
            note: terms.phrase(key("board-spoiled-note"), &[]),
            measured: String::new(),
            photo: None,
        };
        for change in signed(store, terms, &on, &line.code, &said)?.0.changes {
            answer = answer.with(change);
        }
    }
    let times = hand.facts.whole("spoiled").unwrap_or(0).saturating_add(1);
    answer = answer.set(board, "state", Value::Text("planned".to_owned())).set(board, "spoiled", Value::Whole(times));
    if let Some(job) = &hand.job {
        if let Some((stock, count)) = used_up(store, job, hand)? {
            answer = answer.set(stock, "count", Value::Whole(count));
        }
        // It is no longer cut from that board of the stock: the next plan says from which.
        for field in ["cut-from", "stock", "offcut"] {
            if hand.facts.field(field).is_some() {
                answer = answer.set(board, field, Value::Absent);
            }
        }
        let least = job.rules.get_length(keys::OFFCUT_KEEP_LEAST)?;
        if let Some((length, typed, unit)) = left.filter(|(length, ..)| *length >= least) {
            let offcut = terms.fresh(0);
            answer = answer.create(offcut, kinds::OFFCUT, Some(job.id()), sort_key(terms, 0));
            answer = answer.set(offcut, "length", Value::Length { length, typed, unit });
        }
    }
    Ok(accept(store, terms, answer, &[])?.group)
}

/// The stock that a spoiled board leaves with one board less, where its boards are counted and nothing else that is cut
/// or up came out of the same one.
fn used_up(store: &Store, job: &Job, hand: &InHand) -> Kept<Option<(Id, i64)>> {
    let from = (hand.facts.whole("cut-from"), hand.facts.length("stock"));
    let (Some(number), Some(length)) = from else { return Ok(None) };
    for wall in Wall::of_job(store, job.id())? {
        for other in Facts::children(store, wall.id(), kinds::BOARD)? {
            let stands = other.text("state").is_some_and(|state| state != "planned");
            let same = other.whole("cut-from") == Some(number) && other.length("stock") == Some(length);
            if stands && same && other.id() != hand.facts.id() {
                return Ok(None);
            }
        }
    }
    let stock = Facts::children(store, job.id(), kinds::STOCK)?;
    let counted = |stock: &Facts| Some((stock.id(), stock.whole("count").filter(|count| *count > 0)? - 1));
    Ok(stock.iter().filter(|stock| stock.length("length") == Some(length)).find_map(counted))
}

/// Whether a house, or no house, has a loose board that another one can be the same as.
pub(in crate::screens) fn has_loose(store: &Store, job: Option<Id>) -> Kept<bool> {
    Ok(!store.loose(job, kinds::BOARD)?.is_empty())
}

/// A loose board with the sizes and the taped blocks of the last loose one.
pub(super) fn same_as_last(store: &mut Store, terms: &Terms<'_>, job: Option<&str>) -> Kept<Done> {
    let job = job.map(|job| Job::of(store, terms, terms.id("job", job)?)).transpose()?;
    let mut loose = Vec::new();
    for subject in store.loose(job.as_ref().map(Job::id), kinds::BOARD)? {
        loose.push(Facts::kept(store, subject)?);
    }
    loose.sort_by(|a, b| (&a.subject.sort_key, a.id()).cmp(&(&b.subject.sort_key, b.id())));
    let last = loose.last().ok_or_else(|| first(terms, "length", key("ask-board-length")))?;
    let id = terms.fresh(0);
    let shown = last.length("length").map(|length: Length| terms.shown(length)).unwrap_or_default();
    let mut answer = op("board-loose", job.as_ref().map(Job::id), [&shown]);
    answer = answer.create(id, kinds::BOARD, None, sort_key(terms, 0));
    for ask in kinds::BOARD_ASKS {
        if let Some(kept) = last.field(ask.field) {
            answer = answer.set(id, ask.field, kept.value.clone());
        }
    }
    for (n, notch) in (1..).zip(Facts::children(store, last.id(), kinds::NOTCH)?) {
        let copy = terms.fresh(n);
        answer = answer.create(copy, kinds::NOTCH, Some(id), notch.subject.sort_key.clone());
        for ask in kinds::NOTCH_ASKS {
            if let Some(kept) = notch.field(ask.field) {
                answer = answer.set(copy, ask.field, kept.value.clone());
            }
        }
    }
    let group = accept(store, terms, answer, &[])?.group;
    Ok(Done::at(Place::Board { board: id.to_string() }, group))
}
