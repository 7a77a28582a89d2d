use std::sync::Arc;

use crate::book::{BoardState, Book, Field, Kind, OffcutState, Operation, OperationKind, Record, fields_of};
use crate::forms::ask::{self, accept, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::measure::Length;
use crate::phrases::key;
use crate::saw::DEFAULT_EFFORT;
use crate::screens::board::sawn;
use crate::screens::planning::{self, refused};
use crate::screens::result::ActionResult;
use crate::store::{Id, Value};
use crate::views::{Code, Place, Problem, SawListAction};
use crate::work::{HousePlan, SawBoard, SawBoards, Work, least_with_offcut, planned};

use super::pattern;

/// The planner's steps of a first plan: over in a moment on a phone.
const FIRST: u64 = 400;
/// The planner's steps of a better plan: some seconds where a proof is hard.
const MORE: u64 = DEFAULT_EFFORT;

pub(in crate::screens) fn act(book: &mut Book, terms: &Terms<'_>, action: &SawListAction) -> Result<ActionResult> {
    let (SawListAction::Plan { job }
    | SawListAction::Improve { job }
    | SawListAction::MarkCut { job, .. }
    | SawListAction::AddOffcut { job, .. }
    | SawListAction::DropOffcut { job, .. }
    | SawListAction::KeepOffcut { job, .. }
    | SawListAction::SayStock { job, .. }
    | SawListAction::KeepDraft { job, .. }) = action;
    let work = lookup::house(book, terms, job)?;
    let id = work.job()?.id();
    let place = Place::SawList { job: lookup::job_id(&work) };
    let group = match action {
        SawListAction::Plan { .. } => planning::accept(book, terms, id, &plan(terms, &work, FIRST)?)?,
        SawListAction::Improve { .. } => {
            let plan = plan(terms, &work, MORE)?;
            if !SawBoards::of(&work)?.is_bettered_by(&plan.plan()) {
                return Err(Problem::new(Code::Infeasible, "job", terms.phrase(key("saw-no-better"), &[])).into());
            }
            planning::accept(book, terms, id, &plan)?
        }
        SawListAction::MarkCut { number, .. } => mark_cut(book, terms, &work, *number)?,
        SawListAction::AddOffcut { length, .. } => add_offcut(book, terms, &work, length)?,
        SawListAction::DropOffcut { offcut, .. } => drop_offcut(book, terms, &work, offcut)?,
        SawListAction::KeepOffcut { offcut, .. } => keep_offcut(book, terms, &work, offcut)?,
        SawListAction::SayStock { stock, count, .. } => {
            let stock = part(terms, &work, (Kind::Stock, "stock"), stock)?;
            ask::answer(book, terms, stock, Field::Count.code(), count)?.group
        }
        SawListAction::KeepDraft { stock, text, .. } => {
            let stock = part(terms, &work, (Kind::Stock, "stock"), stock)?;
            ask::keep_draft(book, terms, stock, Field::Count.code(), text)?;
            return Ok(ActionResult::without_answer(place));
        }
    };
    Ok(ActionResult::at(place, group))
}

fn plan(terms: &Terms<'_>, work: &Work, effort: u64) -> Result<HousePlan> {
    let mut plan = HousePlan::buying(work, terms.division).map_err(|error| refused(terms, "job", error))?;
    plan.step(effort);
    Ok(plan)
}

/// All pieces of a board are cut: each keeps its length, and what is left and worth keeping becomes an offcut each.
fn mark_cut(book: &mut Book, terms: &Terms<'_>, work: &Work, number: i64) -> Result<Id> {
    let list = SawBoards::of(work)?;
    let board = pattern::board(terms, &list, number)?;
    if board.is_cut() {
        return Err(Problem::new(Code::Order, "number", terms.phrase(key("saw-already-cut"), &[])).into());
    }
    let mut operation = Operation::new(OperationKind::SawCut, work.id(), [&*number.to_string(), &*cuts(terms, board)]);
    for piece in board.pieces.iter().filter(|piece| piece.is_planned()) {
        let id = piece.board.id();
        operation = operation.set(id, Field::State, BoardState::Cut.into()).keep_code(
            id,
            Field::SawnLength.code().to_owned(),
            planned(piece.length),
        );
    }
    for (nth, piece) in (0..).zip(board.pieces.iter().filter(|piece| piece.is_planned())) {
        operation = sawn(book, terms, (piece.board.id(), nth), operation)?;
    }
    if let Some(offcut) = board.offcut {
        operation = operation.set(offcut, Field::Used, OffcutState::CutUp.into());
    }
    let rest = board.offcut_left(work, terms.division)?;
    // Behind what the pieces make.
    let first = board.pieces.len() + 1;
    for (nth, left) in (first..).zip(rest.into_iter().chain(board.strips_left(work, terms.division)?)) {
        let id = terms.fresh(u32::try_from(nth).unwrap_or(u32::MAX));
        operation = operation
            .create(id, Kind::Offcut, work.id(), sort_key(terms, nth))
            .set(id, Field::Length, planned(left.length))
            .set(id, Field::CutFrom, Value::Whole(number));
        if let Some(height) = left.height {
            operation = operation.set(id, Field::Height, planned(height));
        }
    }
    Ok(accept(book, terms, operation, &[])?.group)
}

fn cuts(terms: &Terms<'_>, board: &SawBoard) -> String {
    board.pieces.iter().map(|piece| terms.shown(piece.length)).collect::<Vec<_>>().join(" + ")
}

fn add_offcut(book: &mut Book, terms: &Terms<'_>, work: &Work, length: &str) -> Result<Id> {
    let given = [(Field::Length.code(), length)].into();
    let fields = ask::fields(terms, fields_of(Kind::Offcut), &given)?;
    let id = terms.fresh(0);
    let offcut = Record::unsaved(id, Kind::Offcut, work.job()?.id(), &fields);
    let operation = Operation::new(OperationKind::OffcutAdded, work.id(), [length.trim()])
        .create(id, Kind::Offcut, work.id(), sort_key(terms, 0))
        .set_all(id, fields);
    Ok(accept(book, terms, at_hand(operation, work, &offcut)?, &[])?.group)
}

/// Puts an offcut away.
fn drop_offcut(book: &mut Book, terms: &Terms<'_>, work: &Work, offcut: &str) -> Result<Id> {
    let (offcut, length) = whole_offcut(terms, work, offcut)?;
    let operation = Operation::new(OperationKind::OffcutDropped, work.id(), [&*length]);
    let operation = operation.set(offcut.id(), Field::Used, OffcutState::Dropped.into());
    Ok(accept(book, terms, operation, &[])?.group)
}

/// Takes an offcut that was put away back.
fn keep_offcut(book: &mut Book, terms: &Terms<'_>, work: &Work, offcut: &str) -> Result<Id> {
    let (offcut, length) = whole_offcut(terms, work, offcut)?;
    let operation = Operation::new(OperationKind::OffcutKept, work.id(), [&*length]);
    let operation = at_hand(operation, work, offcut)?.set(offcut.id(), Field::Used, OffcutState::AtHand.into());
    Ok(accept(book, terms, operation, &[])?.group)
}

/// An offcut that is not cut up, and its length as it is shown.
fn whole_offcut<'a>(terms: &Terms<'_>, work: &'a Work, offcut: &str) -> Result<(&'a Arc<Record>, String)> {
    let offcut = part(terms, work, (Kind::Offcut, "offcut"), offcut)?;
    if matches!(offcut.offcut_state(), OffcutState::CutUp | OffcutState::Spoiled) {
        return Err(Problem::new(Code::Order, "offcut", terms.phrase(key("saw-offcut-gone"), &[])).into());
    }
    let length = terms.answer(offcut, Field::Length).map(|length| length.text).unwrap_or_default();
    Ok((offcut, length))
}

/// The answer with what is known of the least once a further offcut is at hand.
fn at_hand(operation: Operation, work: &Work, offcut: &Record) -> Result<Operation> {
    let least = least_with_offcut(work, offcut.length(Field::Length).unwrap_or(Length::ZERO));
    Ok(operation.set_all(work.job()?.id(), least.map(|least| (Field::PlanLeast, planned(least)))))
}

/// A part of this house.
fn part<'a>(terms: &Terms<'_>, work: &'a Work, (kind, field): (Kind, &str), id: &str) -> Result<&'a Arc<Record>> {
    let id = terms.id(field, id)?;
    let unknown = || Problem::new(Code::Unknown, field, terms.phrase("screen-unknown", &[]));
    Ok(work.house().own(kind).iter().find(|part| part.id() == id).ok_or_else(unknown)?)
}
