use std::collections::BTreeSet;

use crate::book::House;
use crate::steps::{Act, Step, StepSignOff, state_of};
use crate::store::{Id, Signed, State, Value};

/// Sign-offs as a step list takes them, in their order; a word that a newer program wrote is left out.
pub fn sign_offs<'a>(signed: impl IntoIterator<Item = &'a Signed>) -> Vec<StepSignOff> {
    signed.into_iter().filter_map(sign_off).collect()
}

fn sign_off(signed: &Signed) -> Option<StepSignOff> {
    let one = &signed.sign_off;
    let act = match one.state {
        State::Done => Act::Tick,
        State::Skipped => Act::Skip,
        State::Undone => Act::Undo,
        State::Other(_) => return None,
    };
    Some(StepSignOff {
        step: one.step.clone(),
        act,
        by: one.signer.clone(),
        at_ms: signed.stamp.ms,
        reason: if one.reason.is_empty() { one.note.clone() } else { one.reason.clone() },
        detail: one.detail_hash.to_string(),
        length: match one.measured {
            Some(Value::Length { length, .. }) => Some(length),
            _ => None,
        },
        millidegrees: match one.measured {
            Some(Value::Whole(whole)) => Some(whole),
            _ => None,
        },
        photo: one.photo.map(|photo| photo.to_string()).unwrap_or_default(),
    })
}

/// The codes of the steps of a thing that are open.
pub fn open_steps(house: &House, subject: Id, steps: &[Step]) -> BTreeSet<&'static str> {
    let history = sign_offs(house.signed(subject));
    steps.iter().filter(|step| state_of(step.code, &history).is_open()).map(|step| step.code).collect()
}

/// Whether a step of a thing is done or left out.
pub(super) fn is_signed(house: &House, subject: Id, step: &str) -> bool {
    !state_of(step, &sign_offs(house.signed(subject))).is_open()
}
