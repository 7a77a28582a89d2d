use super::{Action, BoardAction, HouseAction, MeasureAction, NewAction, PenetrationAction, PoleAction, RulesAction};

/// The answer of who wants to type a value anew.
pub(crate) const TYPE_ANEW: &str = "type-anew";

/// What an answer means that asks for the keys again: nothing is typed of the question any more.
pub(crate) fn retyped(action: &Action) -> Option<Action> {
    let anew = |text: &str| text == TYPE_ANEW;
    let text = String::new();
    Some(match action.clone() {
        Action::BoardKind { action: BoardAction::Answer { board, field, text: said } } if anew(&said) => {
            let subject = board.clone();
            Action::BoardKind { action: BoardAction::KeepDraft { board, subject, field, text } }
        }
        Action::BoardKind { action: BoardAction::AnswerNotch { board, notch, field, text: said } } if anew(&said) => {
            Action::BoardKind { action: BoardAction::KeepDraft { board, subject: notch, field, text } }
        }
        Action::HouseKind { action: HouseAction::Answer { job, field, text: said } } if anew(&said) => {
            Action::HouseKind { action: HouseAction::KeepDraft { job, field, text } }
        }
        Action::MeasureKind { action: MeasureAction::Answer { wall, field, text: said } } if anew(&said) => {
            let subject = wall.clone();
            Action::MeasureKind { action: MeasureAction::KeepDraft { wall, subject, field, text } }
        }
        Action::MeasureKind { action: MeasureAction::AnswerPart { wall, part, field, text: said } } if anew(&said) => {
            Action::MeasureKind { action: MeasureAction::KeepDraft { wall, subject: part, field, text } }
        }
        Action::NewKind { action: NewAction::Answer { what, parent, field, text: said } } if anew(&said) => {
            Action::NewKind { action: NewAction::KeepDraft { what, parent, field, text } }
        }
        Action::PenetrationKind { action: PenetrationAction::Answer { penetration, field, text: said } }
            if anew(&said) =>
        {
            Action::PenetrationKind { action: PenetrationAction::KeepDraft { penetration, field, text } }
        }
        Action::PoleKind { action: PoleAction::Answer { job, field, text: said } } if anew(&said) => {
            Action::PoleKind { action: PoleAction::KeepDraft { job, field, text } }
        }
        Action::RulesKind { action: RulesAction::Answer { job, field, text: said } } if anew(&said) => {
            Action::RulesKind { action: RulesAction::KeepDraft { job, field, text } }
        }
        _ => return None,
    })
}
