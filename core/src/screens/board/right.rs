//! Which is right where the tape and the plan differ: the plan follows the tape, or what was taped no longer holds.

use crate::book::{Book, Field, Kind, Operation, OperationKind, taped_code};
use crate::forms::ask::accept;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::phrases::key;
use crate::store::{Id, Value};
use crate::views::{Code, Problem};
use crate::work::BoardNotch;

use super::hand::InHand;

/// The name of the question, as a field.
pub(super) const RIGHT: &str = "which-is-right";
/// The key of the question.
pub(super) const TITLE: &str = key("notch-which-is-right");
/// The answer that the tape is right.
pub(super) const TAPE: &str = "tape";
/// The answer that the plan is right.
pub(super) const PLAN: &str = "plan";

/// Says which is right of a notch.
pub(super) fn say(book: &mut Book, terms: &Terms<'_>, hand: &InHand, notch: &str, text: &str) -> Result<Id> {
    let id = terms.id("notch", notch)?;
    let unknown = || Problem::new(Code::Unknown, "notch", terms.phrase("screen-unknown", &[]));
    let found = hand.board.notches.iter().find(|known| known.goes_by(id)).ok_or_else(unknown)?;
    let taped = found.taped.as_ref().ok_or_else(unknown)?;
    let operation = |said| Operation::new(OperationKind::Answered, hand.work.id(), [TITLE, said]);
    let operation = match text.trim().to_lowercase().as_str() {
        PLAN => operation(key("notch-right-plan")).remove(taped.id()),
        TAPE => moved(operation(key("notch-right-tape")), hand, found).ok_or_else(unknown)?,
        _ => {
            let choices = [TAPE, PLAN].join(", ");
            let text = terms.phrase("screen-pick", &[("choices", choices.into())]);
            return Err(Problem::new(Code::Choice, RIGHT, text).into());
        }
    };
    Ok(accept(book, terms, operation, &[])?.group)
}

/// What stands on the wall moves to where the tape found it: the measured twins of its place, never the plan itself.
fn moved(operation: Operation, hand: &InHand, notch: &BoardNotch) -> Option<Operation> {
    let thing = hand.work.house().any(notch.planned.as_ref()?.id)?;
    let by = |field| Some(notch.reading(field)? - notch.planned_reading(field)?);
    let (left, right) = (by(Field::Left)?, by(Field::Right)?);
    let (bottom, top) = (by(Field::BottomLeft)?, by(Field::TopLeft)?);
    // A block is as large as it was made: only its place can differ. An opening may be another size, too.
    let moves = match thing.kind {
        Kind::Opening => {
            vec![
                (Field::FromLeft, left),
                (Field::Width, right - left),
                (Field::FromBase, bottom),
                (Field::Height, top - bottom),
            ]
        }
        _ => vec![(Field::FromLeft, (left + right).half()), (Field::FromBase, (bottom + top).half())],
    };
    let moves = moves.into_iter().filter(|(_, by)| *by != Length::ZERO);
    moves.into_iter().try_fold(operation, |operation, (field, by)| {
        let length = thing.length(field)? + by;
        let value = Value::Length { length, typed: String::new(), unit: "mm".to_owned() };
        Some(operation.set_code(thing.id(), taped_code(field), value))
    })
}
