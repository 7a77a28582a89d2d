use std::sync::Arc;

use crate::book::{Book, DraftKey, Field, Kind, Operation, OperationKind, field_of, fields_of};
use crate::forms::ask::{self, accept, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::parts::given;
use crate::forms::signing::{accept_signed, signed, signed_by_reading};
use crate::forms::{cautions, photo, step_asks};
use crate::phrases::key;
use crate::screens::result::ActionResult;
use crate::store::{Id, Value};
use crate::views::{BoardAction, Code, Given, Place, Problem, StepHow, StepSaid};
use crate::work::{BoardNotch, WorkError};

use super::hand::InHand;
use super::{GAP_STEP, again, checks, notches, overcut, right};

pub(in crate::screens) fn act(book: &mut Book, terms: &Terms<'_>, action: &BoardAction) -> Result<ActionResult> {
    let id = |board: &str| terms.id("board", board);
    let here = |board: &str| Place::Board { board: board.to_owned() };
    match action {
        BoardAction::CreateLoose { job, answers } => create_loose(book, terms, job.as_deref(), answers),
        BoardAction::Answer { board, field, text } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            let steps = hand.steps()?;
            let group = match step_asks::said(book, terms, hand.id(), &steps, field, text)? {
                Some((step, said)) => sign_step(book, terms, &hand, step, &said)?,
                None => ask::answer(book, terms, &hand.board.record, field, text)?.group,
            };
            Ok(ActionResult::at(here(board), group))
        }
        BoardAction::AddNotch { board, answers } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            Ok(ActionResult::at(here(board), add_notch(book, terms, &hand, answers)?))
        }
        BoardAction::AnswerNotch { board, notch, field, text } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            let group = if field == Field::Gap.code() {
                say_gap(book, terms, &hand, notch, text)?
            } else if field == right::RIGHT {
                right::say(book, terms, &hand, notch, text)?
            } else {
                answer_notch(book, terms, &hand, notch, field, text)?
            };
            Ok(ActionResult::at(here(board), group))
        }
        BoardAction::KeepDraft { board, subject, field, text } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            draft(book, terms, &hand, subject, field, text)?;
            Ok(ActionResult::without_answer(here(board)))
        }
        BoardAction::Attach { board, wall } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            let (to, wall) = lookup::wall(book, terms, wall)?;
            if hand.board.site.is_some() {
                let text = terms.phrase("board-already-attached", &[]);
                return Err(Problem::new(Code::Order, "wall", text).into());
            }
            let operation = Operation::new(OperationKind::BoardAttached, to.id(), [wall.name()]);
            let operation = operation.set(hand.id(), Field::Wall, Value::Reference(wall.id()));
            Ok(ActionResult::at(here(board), accept(book, terms, operation, &[])?.group))
        }
        BoardAction::SignStep { board, step, said } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            Ok(ActionResult::at(here(board), sign_step(book, terms, &hand, step, said)?))
        }
        BoardAction::TickCheck { board, check } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            Ok(ActionResult::at(here(board), checks::sign(book, terms, &hand, check, StepHow::Tick)?))
        }
        BoardAction::TakeCheckBack { board, check } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            Ok(ActionResult::at(here(board), checks::sign(book, terms, &hand, check, StepHow::TakeBack)?))
        }
        BoardAction::ReadCautions { board, step } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            let steps = hand.steps()?;
            let read = checks::steps_of(&steps, step);
            if read.is_empty() {
                return Err(Problem::new(Code::Unknown, "step", terms.phrase("screen-unknown", &[])).into());
            }
            for step in read {
                cautions::keep_read(book, terms, hand.work.id(), step)?;
            }
            Ok(ActionResult::without_answer(here(board)))
        }
        BoardAction::BeginPhoto { board, step } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            let steps = hand.steps()?;
            photo::begin(book, terms, hand.id(), &steps, step)?;
            Ok(ActionResult::without_answer(here(board)))
        }
        BoardAction::TakePhotoIn { board, step, closed } => {
            let id = id(board)?;
            lookup::of(book, id, Kind::Board)?;
            photo::take_in(book, terms, id, step, *closed)?;
            Ok(ActionResult::without_answer(here(board)))
        }
        BoardAction::SayItIsSpoiled { board, left } => {
            let hand = InHand::of(book, terms, id(board)?)?;
            Ok(ActionResult::at(here(board), again::spoiled(book, terms, &hand, left)?))
        }
        BoardAction::CreateSameAsLast { job } => again::same_as_last(book, terms, job.as_deref()),
        BoardAction::ForgetHabit { board } => {
            let signer = &terms.context.signer;
            let mut operation = Operation::new(OperationKind::OvercutForgotten, None, [signer]);
            for gap in book.gaps()?.of(signer, &overcut::saw(book)?) {
                operation = operation.remove(*gap);
            }
            if operation.is_empty() {
                return Ok(ActionResult::without_answer(here(board)));
            }
            Ok(ActionResult::at(here(board), accept(book, terms, operation, &[])?.group))
        }
    }
}

/// Three answers make a loose board: how long, how high, and what it laps; a house knows the last two.
fn create_loose(book: &mut Book, terms: &Terms<'_>, job: Option<&str>, answers: &[Given]) -> Result<ActionResult> {
    let job = job.map(|job| lookup::house(book, terms, job)).transpose()?.and_then(|work| work.id());
    let fields = ask::fields(terms, fields_of(Kind::Board), &given(answers))?;
    if job.is_none() && !fields.iter().any(|(field, _)| *field == Field::Height) {
        let title = key("ask-board-height");
        return Err(WorkError::First { field: Field::Height.code(), title }.into());
    }
    let id = terms.fresh(0);
    let length = answers.iter().find(|given| given.field == Field::Length.code()).map_or("", |given| given.text.trim());
    let operation = Operation::new(OperationKind::BoardLoose, job, [length])
        .create(id, Kind::Board, None, sort_key(terms, 0))
        .set_all(id, fields);
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(Place::Board { board: id.to_string() }, group))
}

fn add_notch(book: &mut Book, terms: &Terms<'_>, hand: &InHand, answers: &[Given]) -> Result<Id> {
    let fields = ask::fields(terms, fields_of(Kind::Notch), &given(answers))?;
    let id = terms.fresh(0);
    let operation = Operation::new(OperationKind::NotchAdded, hand.board.record.made_in, [&hand.name()])
        .create(id, Kind::Notch, Some(hand.id()), sort_key(terms, 0))
        .set_all(id, fields);
    Ok(accept(book, terms, operation, &[])?.group)
}

/// An answer to a notch; the first one to a planned notch makes it a taped one.
fn answer_notch(book: &mut Book, terms: &Terms<'_>, hand: &InHand, notch: &str, field: &str, text: &str) -> Result<Id> {
    let id = terms.id("notch", notch)?;
    let unknown = || Problem::new(Code::Unknown, "notch", terms.phrase("screen-unknown", &[]));
    let found = hand.board.notches.iter().find(|known| known.goes_by(id)).ok_or_else(unknown)?;
    // Once it was taped its own notch takes the answers, also of who still names the planned one.
    if let Some(record) = &found.taped {
        return Ok(ask::answer(book, terms, record, field, text)?.group);
    }
    let spec = ask::spec_of(terms, Kind::Notch, field)?;
    let value = ask::value(terms, spec, text)?;
    let own = terms.fresh(0);
    let operation = Operation::new(OperationKind::Answered, hand.board.record.made_in, [spec.title, text.trim()])
        .create(own, Kind::Notch, Some(hand.id()), sort_key(terms, 0))
        .set(own, Field::Penetration, Value::Reference(id))
        .set(own, spec.field, value);
    Ok(accept(book, terms, operation, &[DraftKey::field(id, spec.field)])?.group)
}

fn draft(book: &mut Book, terms: &Terms<'_>, hand: &InHand, subject: &str, field: &str, text: &str) -> Result<()> {
    let id = terms.id("subject", subject)?;
    if hand.id() == id {
        if step_asks::keep(book, id, &hand.steps()?, field, text)? {
            return Ok(());
        }
        return ask::keep_draft(book, terms, &Arc::clone(&hand.board.record), field, text);
    }
    if !hand.board.notches.iter().any(|notch| notch.goes_by(id)) {
        return Err(Problem::new(Code::Unknown, "subject", terms.phrase("screen-unknown", &[])).into());
    }
    let kind = if field == Field::Gap.code() { Kind::Gap } else { Kind::Notch };
    let spec = ask::spec_of(terms, kind, field)?;
    Ok(book.put_draft(&DraftKey::field(id, spec.field), text)?)
}

fn sign_step(book: &mut Book, terms: &Terms<'_>, hand: &InHand, step: &str, said: &StepSaid) -> Result<Id> {
    let (name, steps) = (hand.name(), hand.steps()?);
    let on = hand.signing(book, &name, &steps)?;
    let operation = hand.with_state(terms, signed(book, terms, &on, step, said)?, step, said.how)?;
    accept_signed(book, terms, operation, &on, step, said)
}

/// A sawn board ticks its step, with what it was cut to where nothing more is cut of it. Without a signer, or before what
/// must come first, the step stays open: the board is cut all the same.
pub(in crate::screens) fn sawn(
    book: &Book,
    terms: &Terms<'_>,
    (board, nth): (Id, u32),
    operation: Operation,
) -> Result<Operation> {
    let hand = InHand::of(book, terms, board)?;
    let (name, steps) = (hand.name(), hand.steps()?);
    let on = hand.signing(book, &name, &steps)?;
    let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    let Ok(ticked) = signed(book, terms, &on, "board-cut", &said) else { return Ok(operation) };
    let operation = operation.also(ticked);
    if hand.board.detail()?.notched {
        return Ok(operation);
    }
    let id = terms.fresh(1 + nth);
    Ok(hand.cut_now()?.write(operation, board, &[id], &sort_key(terms, 0)))
}

/// The gap that came out: with the offset that it was marked with it tells what the saw took.
fn say_gap(book: &mut Book, terms: &Terms<'_>, hand: &InHand, notch: &str, text: &str) -> Result<Id> {
    let unknown = || Problem::new(Code::Unknown, "notch", terms.phrase("screen-unknown", &[]));
    let spec = field_of(Kind::Gap, Field::Gap).ok_or_else(unknown)?;
    let value = ask::value(terms, spec, text)?;
    let Value::Length { unit, .. } = &value else {
        return Err(Problem::new(Code::Missing, Field::Gap.code(), terms.phrase("screen-empty", &[])).into());
    };
    let known = hand.board.notches.iter().find(|known| notches::id(known) == notch).ok_or_else(unknown)?;
    hand.board.request(known, &hand.tools)?.ok_or_else(unknown)?;
    // A board that is cut was marked with the offset of that day, whatever the saw has taught since.
    let offset = hand.cut().and_then(|cut| cut.offset(&known.ids())).unwrap_or_else(|| hand.offset(known));
    let (id, of) = (terms.fresh(0), terms.id("notch", notch)?);
    let offset = Value::Length { length: offset, typed: String::new(), unit: unit.clone() };
    let cut = hand.work.house().under(hand.id(), Kind::Cut).last();
    let mut operation = Operation::new(OperationKind::GapFitted, None, [&terms.context.signer, text.trim()])
        .create(id, Kind::Gap, None, sort_key(terms, 0))
        .set(id, Field::Signer, Value::Text(terms.context.signer.clone()))
        .set(id, Field::Saw, Value::Text(overcut::saw(book)?))
        .set(id, Field::Gap, value)
        .set(id, Field::Offset, offset)
        .set(id, Field::Board, Value::Reference(hand.id()))
        .set(id, Field::Notch, Value::Reference(of));
    if let Some(cut) = cut {
        operation = operation.set(id, Field::Cut, Value::Reference(cut.id()));
    }
    let mut used = vec![DraftKey::field(of, Field::Gap)];
    let operation = match measured_last(book, terms, hand, known, text)? {
        None => operation,
        Some(signed) => {
            used.extend(step_asks::drafts(hand.id(), GAP_STEP));
            operation.also(signed)
        }
    };
    Ok(accept(book, terms, operation, &used)?.group)
}

/// The step that the last gap of the board signs, where `gap` is that one.
fn measured_last(
    book: &Book,
    terms: &Terms<'_>,
    hand: &InHand,
    gap: &BoardNotch,
    text: &str,
) -> Result<Option<Operation>> {
    let gaps = book.gaps()?;
    let mut others = hand.board.cut_notches()?.into_iter().filter(|notch| !std::ptr::eq(*notch, gap));
    if others.any(|notch| gaps.last(hand.id(), &notch.ids()).is_none()) {
        return Ok(None);
    }
    let (name, steps) = (hand.name(), hand.steps()?);
    signed_by_reading(book, terms, &hand.signing(book, &name, &steps)?, GAP_STEP, text.trim())
}
