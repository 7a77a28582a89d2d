//! A board once more: one that was spoiled, and one like the last.

use crate::book::{BoardState, Book, Field, Kind, OffcutState, Operation, OperationKind, Record, fields_of};
use crate::forms::ask::{accept, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::signing::{signed, step_lines};
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::result::ActionResult;
use crate::store::{Id, Value};
use crate::views::{Code, Place, Problem, StepHow, StepSaid, StepState};
use crate::work::{WorkError, is_of_strip, planned, ripped_to};

use super::hand::InHand;

/// A spoiled board is planned again: its ticks are taken back, it counts once more as spoiled, the board of the stock that
/// it came from is gone, and what is left of the piece is an offcut where it is worth keeping. All in one answer.
pub(super) fn spoiled(book: &mut Book, terms: &Terms<'_>, hand: &InHand, left: &str) -> Result<Id> {
    if hand.board.state() == BoardState::Planned {
        let text = terms.phrase(key("board-not-cut"), &[]);
        return Err(Problem::new(Code::Order, "board", text).into());
    }
    let left = match left.trim() {
        "" => None,
        typed => {
            let (length, unit) = terms.typed(Field::Left.code(), typed)?;
            if !length.is_positive() || hand.board.record.length(Field::Length).is_some_and(|whole| length > whole) {
                let text = terms.phrase(key("board-left-range"), &[]);
                return Err(Problem::new(Code::Range, Field::Left.code(), text).into());
            }
            Some((length, typed.to_owned(), unit.code().to_owned()))
        }
    };
    let (board, job) = (hand.id(), hand.work.id());
    let name = hand.name();
    let said_left = left.as_ref().map(|(_, typed, _)| typed.clone()).unwrap_or_default();
    let mut operation = Operation::new(OperationKind::BoardSpoiled, job, [&name, &said_left]);

    // The ticks that made it: a step is taken back as it was signed, each by itself.
    let steps = hand.steps()?;
    let on = hand.signing(book, &name, &steps)?;
    let lines = step_lines(book, terms, &on)?;
    for line in lines.iter().rev().filter(|line| line.state != StepState::Open) {
        let said = StepSaid {
            how: StepHow::TakeBack,
            note: terms.phrase(key("board-spoiled-note"), &[]),
            measured: String::new(),
            photo: None,
        };
        operation = operation.also(signed(book, terms, &on, &line.code, &said)?);
    }
    let times = hand.board.record.whole(Field::Spoiled).unwrap_or(0).saturating_add(1);
    operation =
        operation.set(board, Field::State, BoardState::Planned.into()).set(board, Field::Spoiled, Value::Whole(times));
    if let Some(job) = job {
        if let Some((stock, count)) = used_up(hand) {
            operation = operation.set(stock, Field::Count, Value::Whole(count));
        }
        // The piece stays gone from the board that it was cut from; a strip took nothing of its length.
        let of_strip = is_of_strip(&hand.board.record);
        let cut_from = hand.board.record.whole(Field::CutFrom).filter(|_| !of_strip);
        if let (Some(number), Some(length)) = (cut_from, hand.board.record.length(Field::Length)) {
            let gone = terms.fresh(1);
            operation = operation
                .create(gone, Kind::Offcut, Some(job), sort_key(terms, 1))
                .set(gone, Field::Length, planned(length))
                .set(gone, Field::CutFrom, Value::Whole(number))
                .set(gone, Field::Used, OffcutState::Spoiled.into());
        }
        // It is no longer cut from that board of the stock: the next plan says from which.
        for field in [Field::CutFrom, Field::Stock, Field::Offcut, Field::Strip] {
            if hand.board.record.written(field).is_some() {
                operation = operation.set(board, field, Value::Absent);
            }
        }
        let least = hand.work.rules().get_length(keys::OFFCUT_KEEP_LEAST)?;
        if let Some((length, typed, unit)) = left.filter(|(length, ..)| *length >= least) {
            let offcut = terms.fresh(0);
            operation = operation.create(offcut, Kind::Offcut, Some(job), sort_key(terms, 0)).set(
                offcut,
                Field::Length,
                Value::Length { length, typed, unit },
            );
            // What is left of a piece that was ripped is no higher than it.
            if let Some(height) = ripped_to(&hand.work, &hand.board.record) {
                operation = operation.set(offcut, Field::Height, planned(height));
            }
        }
    }
    Ok(accept(book, terms, operation, &[])?.group)
}

/// The stock that a spoiled board leaves with one board less, where its boards are counted and nothing else that is cut
/// or up came out of the same one.
fn used_up(hand: &InHand) -> Option<(Id, i64)> {
    let (number, length) = (hand.board.record.whole(Field::CutFrom)?, hand.board.record.length(Field::Stock)?);
    let same = |other: &Record| {
        let stands = other.board_state() != BoardState::Planned;
        stands
            && other.id() != hand.id()
            && other.whole(Field::CutFrom) == Some(number)
            && other.length(Field::Stock) == Some(length)
    };
    if hand.work.walls().iter().flat_map(|wall| hand.work.boards(wall.id())).any(|other| same(other)) {
        return None;
    }
    let stock = hand.work.house().own(Kind::Stock).iter();
    let counted = |stock: &Record| Some((stock.id(), stock.whole(Field::Count).filter(|count| *count > 0)? - 1));
    stock.filter(|stock| stock.length(Field::Length) == Some(length)).find_map(|stock| counted(stock))
}

/// A loose board with the sizes and the taped blocks of the last loose one.
pub(super) fn same_as_last(book: &mut Book, terms: &Terms<'_>, job: Option<&str>) -> Result<ActionResult> {
    let work = match job {
        Some(job) => lookup::house(book, terms, job)?,
        None => lookup::work(book, None)?,
    };
    let last = work.house().loose_boards().last();
    let last = last.ok_or(WorkError::First { field: Field::Length.code(), title: key("ask-board-length") })?;
    let id = terms.fresh(0);
    let shown = last.length(Field::Length).map(|length| terms.shown(length)).unwrap_or_default();
    let mut operation = Operation::new(OperationKind::BoardLoose, work.id(), [&shown])
        .create(id, Kind::Board, None, sort_key(terms, 0))
        .set_all(id, answers(last));
    for (n, notch) in (1..).zip(work.house().under(last.id(), Kind::Notch)) {
        let copy = terms.fresh(n);
        operation = operation.create(copy, Kind::Notch, Some(id), notch.sort_key.clone()).set_all(copy, answers(notch));
    }
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(Place::Board { board: id.to_string() }, group))
}

/// What was answered of a thing, to say the same of another.
fn answers(record: &Record) -> impl Iterator<Item = (Field, Value)> {
    let specs = fields_of(record.kind).iter();
    specs.filter_map(|spec| Some((spec.field, record.written(spec.field)?.value.clone())))
}
