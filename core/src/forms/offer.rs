//! What another answer or a rule already says of a question that nobody answered. It is offered: a tap takes it, and
//! nothing is filled in unasked.

use crate::book::{Field, Kind, Record};
use crate::measure::Length;
use crate::phrases::{Arg, key};
use crate::rules::{RuleSet, keys};
use crate::views::{Offer, Question};
use crate::work::Work;

use super::context::Terms;
use super::error::Result;

/// What the rules of a house say of its boards.
pub(crate) fn of_house(terms: &Terms<'_>, work: &Work, questions: &mut [Question]) -> Result<()> {
    let fields = [
        (Field::BoardThickness, keys::BOARD_THICKNESS),
        (Field::Lap, keys::LAP_LEAST),
        (Field::NailLine, keys::NAIL_LINE_LEAST),
    ];
    for (field, rule) in fields {
        offer(questions, field, || by_rule(terms, work.rules(), rule))?;
    }
    Ok(())
}

/// What the other end of a wall, another wall or a rule says of a wall.
pub(crate) fn of_wall(terms: &Terms<'_>, work: &Work, wall: &Record, questions: &mut [Question]) -> Result<()> {
    let as_left = |field| {
        let left = wall.length(field)?;
        exact(terms, left, key("offer-as-left"), &[])
    };
    let as_other = |field| {
        let other = |other: &&Record| other.id() != wall.id() && other.length(field).is_some();
        let other = work.house().own(Kind::Wall).iter().map(AsRef::as_ref).rfind(other)?;
        let named = [("wall", other.text(Field::Name).unwrap_or_default().into())];
        exact(terms, other.length(field)?, key("offer-as-wall"), &named)
    };
    offer(questions, Field::RightHeight, || Ok(as_left(Field::LeftHeight)))?;
    offer(questions, Field::Base, || Ok(as_other(Field::Base)))?;
    offer(questions, Field::StudSpacing, || match as_other(Field::StudSpacing) {
        Some(same) => Ok(Some(same)),
        None => by_rule(terms, work.rules(), keys::STUD_SPACING),
    })?;
    offer(questions, Field::TrimLeft, || Ok(as_other(Field::TrimLeft)))?;
    offer(questions, Field::TrimRight, || Ok(as_left(Field::TrimLeft)))
}

/// What the last loose board or a rule says of a loose board that belongs to no house.
pub(crate) fn of_loose_board(terms: &Terms<'_>, work: &Work, questions: &mut [Question]) -> Result<()> {
    let last = work.house().loose_boards().last();
    let as_last = |field| exact(terms, last?.length(field)?, key("offer-as-last-board"), &[]);
    offer(questions, Field::Height, || Ok(as_last(Field::Height)))?;
    offer(questions, Field::Lap, || match as_last(Field::Lap) {
        Some(same) => Ok(Some(same)),
        None => by_rule(terms, work.rules(), keys::LAP_LEAST),
    })
}

/// Offers an answer to a question that has none.
fn offer(questions: &mut [Question], field: Field, what: impl FnOnce() -> Result<Option<Offer>>) -> Result<()> {
    let open = |question: &&mut Question| question.field == field.code() && question.answer.is_empty();
    if let Some(question) = questions.iter_mut().find(open) {
        question.offer = what()?;
    }
    Ok(())
}

fn by_rule(terms: &Terms<'_>, rules: &RuleSet, rule: &str) -> Result<Option<Offer>> {
    let (value, length) = (rules.get(rule)?, rules.get_length(rule)?);
    let text = value.text_in(terms.phrases.language());
    let name = terms.phrase(&rules.rule(rule)?.name_phrase(), &[]);
    let said = terms.phrase(key("offer-by-rule"), &[("value", text.as_str().into()), ("rule", name.into())]);
    Ok(is_read_as(terms, &text, length).then_some(Offer { text, said }))
}

/// Another answer, where it is not rounded as it is shown.
fn exact(terms: &Terms<'_>, length: Length, phrase: &str, named: &[(&str, Arg<'_>)]) -> Option<Offer> {
    let text = terms.shown(length);
    let args = [("value", Arg::from(text.as_str()))].into_iter().chain(named.iter().cloned()).collect::<Vec<_>>();
    let said = terms.phrase(phrase, &args);
    is_read_as(terms, &text, length).then_some(Offer { text, said })
}

fn is_read_as(terms: &Terms<'_>, text: &str, length: Length) -> bool {
    terms.typed("", text).is_ok_and(|(read, _)| read == length)
}
