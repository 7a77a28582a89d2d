use crate::measure::Length;
use crate::notch::{Edge, Notch};
use crate::phrases::key;
use crate::screens::Done;
use crate::screens::ask::{self, Answer, accept, draft_key, keep_keys, op, sort_key};
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job, Wall};
use crate::screens::kinds;
use crate::screens::parts::given;
use crate::screens::photo;
use crate::screens::signing::{accept_signed, signed};
use crate::screens::step_asks;
use crate::screens::trouble::Kept;
use crate::store::{Change, Id, Store, Value};
use crate::views::{BoardAction, Code, Given, Place, Problem, StepHow, StepSaid};

use super::hand::{CUT, InHand};
use super::{again, habit, notches};

pub(in crate::screens) fn act(store: &mut Store, terms: &Terms<'_>, action: &BoardAction) -> Kept<Done> {
    let id = |board: &str| terms.id("board", board);
    let here = |board: &str| Place::Board { board: board.to_owned() };
    match action {
        BoardAction::CreateLoose { job, answers } => create_loose(store, terms, job.as_deref(), answers),
        BoardAction::Answer { board, field, text } => {
            let hand = InHand::of(store, terms, id(board)?)?;
            let steps = hand.steps(store, terms)?;
            let group = match step_asks::said(store, terms, hand.facts.id(), &steps, field, text)? {
                Some((step, said)) => sign_step(store, terms, &hand, step, &said)?,
                None => ask::answer(store, terms, &hand.facts, field, text)?.group,
            };
            Ok(Done::at(here(board), group))
        }
        BoardAction::AddNotch { board, answers } => {
            let hand = InHand::of(store, terms, id(board)?)?;
            Ok(Done::at(here(board), add_notch(store, terms, &hand, answers)?))
        }
        BoardAction::AnswerNotch { board, notch, field, text } => {
            let hand = InHand::of(store, terms, id(board)?)?;
            let group = if field == kinds::GAP {
                say_gap(store, terms, &hand, notch, text)?
            } else {
                answer_notch(store, terms, &hand, notch, field, text)?
            };
            Ok(Done::at(here(board), group))
        }
        BoardAction::KeepDraft { board, subject, field, text } => {
            let hand = InHand::of(store, terms, id(board)?)?;
            draft(store, terms, &hand, subject, field, text)?;
            Ok(Done::without_answer(here(board)))
        }
        BoardAction::Attach { board, wall } => {
            let hand = InHand::of(store, terms, id(board)?)?;
            let wall = Wall::of(store, terms, terms.id("wall", wall)?)?;
            if hand.wall.is_some() {
                let text = terms.phrase("board-already-attached", &[]);
                return Err(Problem::new(Code::Order, "wall", text).into());
            }
            let answer = op("board-attached", Some(wall.job), [wall.name()]);
            let answer = answer.set(hand.facts.id(), "wall", Value::Reference(wall.id()));
            Ok(Done::at(here(board), accept(store, terms, answer, &[])?.group))
        }
        BoardAction::SignStep { board, step, said } => {
            let hand = InHand::of(store, terms, id(board)?)?;
            Ok(Done::at(here(board), sign_step(store, terms, &hand, step, said)?))
        }
        BoardAction::BeginPhoto { board, step } => {
            let hand = InHand::of(store, terms, id(board)?)?;
            let steps = hand.steps(store, terms)?;
            photo::begin(store, terms, hand.facts.id(), &steps, step)?;
            Ok(Done::without_answer(here(board)))
        }
        BoardAction::TakePhotoIn { board, step, closed } => {
            let facts = Facts::of(store, terms, id(board)?, kinds::BOARD)?;
            photo::take_in(store, terms, facts.id(), step, *closed)?;
            Ok(Done::without_answer(here(board)))
        }
        BoardAction::SayItIsSpoiled { board, left } => {
            let hand = InHand::of(store, terms, id(board)?)?;
            Ok(Done::at(here(board), again::spoiled(store, terms, &hand, left)?))
        }
        BoardAction::CreateSameAsLast { job } => again::same_as_last(store, terms, job.as_deref()),
        BoardAction::ForgetHabit { board } => {
            let mut answer = op("habit-forgotten", None, [&terms.context.signer]);
            for (fitted, _) in habit::fitted(store, &terms.context.signer, &habit::saw(store)?)? {
                answer = answer.with(Change::Remove { subject: fitted });
            }
            if answer.0.changes.is_empty() {
                return Ok(Done::without_answer(here(board)));
            }
            Ok(Done::at(here(board), accept(store, terms, answer, &[])?.group))
        }
    }
}

/// Three answers make a loose board: how long, how high, and what it laps; a house knows the last two.
fn create_loose(store: &mut Store, terms: &Terms<'_>, job: Option<&str>, answers: &[Given]) -> Kept<Done> {
    let job = job.map(|job| Job::of(store, terms, terms.id("job", job)?)).transpose()?;
    let fields = ask::fields(terms, kinds::BOARD, &given(answers))?;
    if job.is_none() && !fields.iter().any(|(field, _)| *field == "height") {
        return Err(crate::screens::kept::first(terms, "height", key("ask-board-height")).into());
    }
    let id = terms.fresh(0);
    let length = answers.iter().find(|given| given.field == "length").map_or("", |given| given.text.trim());
    let mut answer = op("board-loose", job.as_ref().map(Job::id), [length]);
    answer = answer.create(id, kinds::BOARD, None, sort_key(terms, 0));
    for (field, value) in fields {
        answer = answer.set(id, field, value);
    }
    let group = accept(store, terms, answer, &[])?.group;
    Ok(Done::at(Place::Board { board: id.to_string() }, group))
}

fn add_notch(store: &mut Store, terms: &Terms<'_>, hand: &InHand, answers: &[Given]) -> Kept<Id> {
    let fields = ask::fields(terms, kinds::NOTCH, &given(answers))?;
    let id = terms.fresh(0);
    let mut answer = op("notch-added", hand.facts.subject.job, [&hand.name()]);
    answer = answer.create(id, kinds::NOTCH, Some(hand.facts.id()), sort_key(terms, 0));
    for (field, value) in fields {
        answer = answer.set(id, field, value);
    }
    Ok(accept(store, terms, answer, &[])?.group)
}

/// An answer to a notch; the first one to a planned notch makes it a taped one.
fn answer_notch(store: &mut Store, terms: &Terms<'_>, hand: &InHand, notch: &str, field: &str, text: &str) -> Kept<Id> {
    let notch = terms.id("notch", notch)?;
    // Once it was taped its own notch takes the answers, also of who still names the planned one.
    let is_its_own = |facts: &&Facts| facts.id() == notch || facts.reference("penetration") == Some(notch);
    if let Some(facts) = hand.taped.iter().find(is_its_own) {
        return Ok(ask::answer(store, terms, facts, field, text)?.group);
    }
    if !hand.met.iter().any(|met| met.id == notch) {
        return Err(Problem::new(Code::Unknown, "notch", terms.phrase("screen-unknown", &[])).into());
    }
    let question = ask::ask_of(terms, kinds::NOTCH, field)?;
    let value = ask::value(terms, question, text)?;
    let id = terms.fresh(0);
    let answer = op("answered", hand.facts.subject.job, [question.title, text.trim()])
        .create(id, kinds::NOTCH, Some(hand.facts.id()), sort_key(terms, 0))
        .set(id, "penetration", Value::Reference(notch))
        .set(id, field, value);
    Ok(accept(store, terms, answer, &[&draft_key(notch, field)])?.group)
}

fn draft(store: &mut Store, terms: &Terms<'_>, hand: &InHand, subject: &str, field: &str, text: &str) -> Kept<()> {
    let id = terms.id("subject", subject)?;
    let is_notch = || hand.taped.iter().any(|facts| facts.id() == id) || hand.met.iter().any(|met| met.id == id);
    let kind = match field {
        _ if hand.facts.id() == id => kinds::BOARD,
        _ if !is_notch() => {
            return Err(Problem::new(Code::Unknown, "subject", terms.phrase("screen-unknown", &[])).into());
        }
        kinds::GAP => kinds::FITTED,
        _ => kinds::NOTCH,
    };
    if kind == kinds::BOARD {
        let steps = hand.steps(store, terms)?;
        if step_asks::keep(store, id, &steps, field, text)? {
            return Ok(());
        }
    }
    ask::ask_of(terms, kind, field)?;
    keep_keys(store, &draft_key(id, field), text)
}

/// Signs a step. Cutting keeps the numbers that the board was cut with; nailing makes it fixed.
fn sign_step(store: &mut Store, terms: &Terms<'_>, hand: &InHand, step: &str, said: &StepSaid) -> Kept<Id> {
    let views = notches::views(store, terms, hand)?;
    let notched = !views.is_empty();
    let detail = hand.detail(notched);
    let name = hand.name();
    let steps = detail.steps();
    let on = hand.signing(&name, &steps, hand.hash(&detail, &views)?);
    let mut answer = signed(store, terms, &on, step, said)?;
    let cut_step = if notched { "board-notch" } else { "board-cut" };
    let state = match (step, said.how) {
        ("board-nail", StepHow::Tick) => Some("fixed"),
        ("board-nail", StepHow::TakeBack) => Some("cut"),
        (step, StepHow::Tick) if step == cut_step => Some("cut"),
        (step, StepHow::TakeBack) if step == cut_step => Some("planned"),
        _ => None,
    };
    if let Some(state) = state {
        answer = answer.set(hand.facts.id(), "state", Value::Text(state.to_owned()));
    }
    if step == cut_step && said.how == StepHow::Tick {
        let field = format!("{CUT}{:016}", terms.context.now_ms.max(0));
        answer = keep(answer, hand.facts.id(), field, hand.numbers(&views)?);
    }
    accept_signed(store, terms, answer, &on, step, said)
}

fn keep(answer: Answer, subject: Id, field: String, text: String) -> Answer {
    answer.with(Change::Keep { subject, field, value: Value::Text(text) })
}

/// The gap that came out: with the offset that it was marked with it tells what the saw took.
fn say_gap(store: &mut Store, terms: &Terms<'_>, hand: &InHand, notch: &str, text: &str) -> Kept<Id> {
    let value = ask::value(terms, ask::ask_of(terms, kinds::FITTED, kinds::GAP)?, text)?;
    let Value::Length { unit, .. } = &value else {
        return Err(Problem::new(Code::Missing, kinds::GAP, terms.phrase("screen-empty", &[])).into());
    };
    let unknown = || Problem::new(Code::Unknown, "notch", terms.phrase("screen-unknown", &[]));
    let known = notches::known(hand);
    let known = known.iter().find(|known| known.id() == notch).ok_or_else(unknown)?;
    let request = notches::request(store, terms, hand, known.block(hand).ok_or_else(unknown)?)?;
    // A board that is cut was marked with the offset of that day, whatever the saw has taught since.
    let cut = hand.cut_with().filter(|_| hand.state() != "planned");
    let offset = cut.and_then(|(_, marks)| notches::marked_offset(marks, known));
    let today = || Notch::lay_out(&request).map_or(Length::ZERO, |notch| notch.offset.at(Edge::Sides));
    let offset = offset.unwrap_or_else(today);
    let (id, of) = (terms.fresh(0), terms.id("notch", notch)?);
    let offset = Value::Length { length: offset, typed: String::new(), unit: unit.clone() };
    let answer = op("gap-fitted", None, [&terms.context.signer, text.trim()])
        .create(id, kinds::FITTED, None, sort_key(terms, 0))
        .set(id, "signer", Value::Text(terms.context.signer.clone()))
        .set(id, "saw", Value::Text(habit::saw(store)?))
        .set(id, kinds::GAP, value)
        .set(id, "offset", offset)
        .set(id, "board", Value::Reference(hand.facts.id()))
        .set(id, "notch", Value::Reference(of));
    Ok(accept(store, terms, answer, &[&draft_key(of, kinds::GAP)])?.group)
}
