//! Ticks on the steps of a board or a penetration: what was signed, as a view shows it, and one more sign-off.

use std::collections::BTreeSet;

use crate::measure::Unit;
use crate::steps::{Act, MeasuredKind, SignError, SignOff, Step, check, differs, state_of};
use crate::store::{Change, Hash, Id, Signed, State, Store, Value};
use crate::views::{Code, Note, Problem, Reading, Source, StepHow, StepLine, StepSaid, StepState};

use super::ask::{Answer, accept, op};
use super::cautions;
use super::context::Terms;
use super::parts::together;
use super::photo;
use super::step_asks;
use super::trouble::Kept;

/// The steps that are signed on, and what they belong to.
pub(super) struct Signing<'a> {
    /// The board or penetration.
    pub(super) subject: Id,
    /// Its job; none for a loose board.
    pub(super) job: Option<Id>,
    /// What the done list calls it: a text or the key of a phrase.
    pub(super) about: &'a str,
    /// Its steps in their order.
    pub(super) steps: &'a [Step],
    /// The hash of [`crate::steps::Canonical::detail_text`] of its present detail.
    pub(super) detail: Hash,
}

/// The steps of a thing with what was said of each.
pub(super) fn step_lines(store: &Store, terms: &Terms<'_>, on: &Signing<'_>) -> Kept<Vec<StepLine>> {
    let (subject, steps) = (on.subject, on.steps);
    let signed = in_force(store, subject)?;
    let history: Vec<SignOff> = signed.iter().filter_map(as_step).collect();
    let detail = on.detail.to_string();
    let lines = steps.iter().map(|step| {
        let mut line = line(terms, step, &signed, &history, &detail);
        line.cautions_read = cautions::read(store, terms, on.job, step)?;
        line.photo = photo::of_step(store, subject, step.code, &signed)?;
        if line.state == StepState::Open {
            line.asks = step_asks::asks(store, terms, subject, step)?;
        }
        Ok(line)
    });
    lines.collect()
}

/// The codes of the steps that are open.
pub(super) fn open_steps(store: &Store, subject: Id, steps: &[Step]) -> Kept<BTreeSet<&'static str>> {
    let history: Vec<SignOff> = in_force(store, subject)?.iter().filter_map(as_step).collect();
    let open = steps.iter().filter(|step| state_of(step.code, &history).is_open());
    Ok(open.map(|step| step.code).collect())
}

/// Whether a step of a thing is done or left out.
pub(super) fn is_signed(store: &Store, subject: Id, step: &str) -> Kept<bool> {
    let history: Vec<SignOff> = in_force(store, subject)?.iter().filter_map(as_step).collect();
    Ok(!state_of(step, &history).is_open())
}

/// Signs a step and gives the group to undo it by.
pub(super) fn sign(store: &mut Store, terms: &Terms<'_>, on: &Signing<'_>, step: &str, said: &StepSaid) -> Kept<Id> {
    let answer = signed(store, terms, on, step, said)?;
    accept_signed(store, terms, answer, on, step, said)
}

/// Accepts an answer that signs a step, and drops what was begun for it.
pub(super) fn accept_signed(
    store: &mut Store,
    terms: &Terms<'_>,
    answer: Answer,
    on: &Signing<'_>,
    step: &str,
    said: &StepSaid,
) -> Kept<Id> {
    let mut used = step_asks::drafts(on.subject, step);
    if said.photo.is_some() {
        used.push(photo::draft_key(on.subject, step));
    }
    let used: Vec<&str> = used.iter().map(String::as_str).collect();
    let group = accept(store, terms, answer, &used)?.group;
    if let Some(step) = on.steps.iter().find(|known| known.code == step && said.how == StepHow::Tick) {
        cautions::keep_read(store, terms, on.job, step)?;
    }
    Ok(group)
}

/// The answer that signs a step, not yet accepted: a caller may add what is kept with it, such as the lengths of a cut.
pub(super) fn signed(store: &Store, terms: &Terms<'_>, on: &Signing<'_>, step: &str, said: &StepSaid) -> Kept<Answer> {
    let act = match said.how {
        StepHow::Tick => Act::Tick,
        StepHow::Skip => Act::Skip,
        StepHow::TakeBack => Act::Undo,
    };
    let history: Vec<SignOff> = in_force(store, on.subject)?.iter().filter_map(as_step).collect();
    let one = SignOff {
        step: step.to_owned(),
        act,
        by: terms.context.signer.clone(),
        at_ms: terms.context.now_ms,
        reason: said.note.trim().to_owned(),
        detail: on.detail.to_string(),
        length: None,
        millidegrees: None,
        photo: String::new(),
    };
    check(on.steps, &history, &one).map_err(|error| refused(terms, on.steps, &error))?;
    let found = on.steps.iter().find(|known| known.code == step);
    let measured = found.map_or(Ok(None), |found| measured(terms, found, &said.measured))?;
    let photo = said.photo.as_deref().map(|photo| photo::here(store, terms, photo)).transpose()?;
    let (kind, state) = match said.how {
        StepHow::Tick => ("step-done", State::Done),
        StepHow::Skip => ("step-skipped", State::Skipped),
        StepHow::TakeBack => ("step-taken-back", State::Undone),
    };
    let text = found.map_or(step, |found| found.text);
    Ok(op(kind, on.job, [on.about, text, said.note.trim()]).with(Change::SignOff(crate::store::SignOff {
        subject: on.subject,
        step: step.to_owned(),
        state,
        signer: terms.context.signer.clone(),
        note: if act == Act::Tick { said.note.trim().to_owned() } else { String::new() },
        reason: if act == Act::Tick { String::new() } else { said.note.trim().to_owned() },
        measured,
        photo,
        detail_hash: on.detail,
    })))
}

/// The sign-offs of a thing that nobody undid, oldest first.
fn in_force(store: &Store, subject: Id) -> Kept<Vec<Signed>> {
    Ok(store.sign_offs(subject)?.into_iter().filter(|signed| !signed.undone).collect())
}

/// A sign-off as the step list takes it; none for a word that a newer program wrote.
fn as_step(signed: &Signed) -> Option<SignOff> {
    let kept = &signed.sign_off;
    let act = match kept.state {
        State::Done => Act::Tick,
        State::Skipped => Act::Skip,
        State::Undone => Act::Undo,
        State::Other(_) => return None,
    };
    Some(SignOff {
        step: kept.step.clone(),
        act,
        by: kept.signer.clone(),
        at_ms: signed.stamp.ms,
        reason: if kept.reason.is_empty() { kept.note.clone() } else { kept.reason.clone() },
        detail: kept.detail_hash.to_string(),
        length: match kept.measured {
            Some(Value::Length { length, .. }) => Some(length),
            _ => None,
        },
        millidegrees: match kept.measured {
            Some(Value::Whole(whole)) => Some(whole),
            _ => None,
        },
        photo: kept.photo.map(|photo| photo.to_string()).unwrap_or_default(),
    })
}

fn line(terms: &Terms<'_>, step: &Step, signed: &[Signed], history: &[SignOff], detail: &str) -> StepLine {
    use crate::steps::StepState as Stands;
    let (state, by) = match state_of(step.code, history) {
        Stands::Open | Stands::Undone(_) => (StepState::Open, None),
        Stands::Done(sign) => (StepState::Done, Some(sign)),
        Stands::Skipped(sign) => (StepState::Skipped, Some(sign)),
    };
    let kept = by.and_then(|_| signed.iter().rev().find(|signed| signed.sign_off.step == step.code));
    let mut note = by.map(|sign| sign.reason.clone()).unwrap_or_default();
    if let Some(angle) = by.and_then(|sign| sign.millidegrees) {
        let space = if note.is_empty() { "" } else { " " };
        note = format!("{}{space}{note}", degrees(terms, angle));
    }
    let mut line = StepLine {
        code: step.code.to_owned(),
        text: terms.phrase(step.text, &[]),
        reason: terms.phrase(step.reason, &[]),
        cautions: step
            .cautions
            .iter()
            .map(|caution| Note { code: caution.code().to_owned(), text: terms.phrase(caution.phrase(), &[]) })
            .collect(),
        cautions_read: false,
        hidden_later: step.hidden_by_later,
        state,
        signer: by.map(|sign| sign.by.clone()).unwrap_or_default(),
        at_ms: by.map(|sign| sign.at_ms),
        note,
        measured: kept.and_then(|signed| reading(terms, signed)),
        differs: differs(step.code, history, detail),
        photo_asked: step.photo,
        photo: None,
        asks: Vec::new(),
        said: String::new(),
    };
    let when = line.at_ms.map(|at| terms.moment(at)).unwrap_or_default();
    let measured = line.measured.as_ref().map_or("", |reading| &reading.text);
    line.said = together(&[&line.signer, &when, measured, &line.note]);
    line
}

fn reading(terms: &Terms<'_>, signed: &Signed) -> Option<Reading> {
    let Some(Value::Length { length, unit, .. }) = &signed.sign_off.measured else { return None };
    let mut reading = terms.reading(*length, Source::Taped, Unit::from_code(unit));
    terms.by(&mut reading, &signed.sign_off.signer, signed.stamp.ms);
    Some(reading)
}

/// What was measured at a step: a length as it was typed, or an angle in thousandths of a degree.
fn measured(terms: &Terms<'_>, step: &Step, text: &str) -> Kept<Option<Value>> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    let refuse = |key: &str| Problem::new(Code::Range, "measured", terms.phrase(key, &[("text", text.into())]));
    match step.measured.map(|measured| measured.kind) {
        None => Err(refuse("signing-nothing-to-measure").into()),
        Some(MeasuredKind::Length) => {
            let (length, unit) = terms.typed("measured", text)?;
            Ok(Some(Value::Length { length, typed: text.to_owned(), unit: unit.code().to_owned() }))
        }
        Some(MeasuredKind::Angle) => match millidegrees(text) {
            Some(angle) => Ok(Some(Value::Whole(angle))),
            None => Err(refuse("signing-angle").into()),
        },
    }
}

/// Degrees from 0 to 90 with up to three decimals, after a point or a comma, in thousandths.
fn millidegrees(text: &str) -> Option<i64> {
    let text = text.trim_end_matches('°').trim_end().replace(',', ".");
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty() || !digits(whole) || !digits(part) || part.len() > 3 {
        return None;
    }
    let angle = whole.parse::<i64>().ok()?.checked_mul(1000)? + format!("{part:0<3}").parse::<i64>().ok()?;
    (0..=90_000).contains(&angle).then_some(angle)
}

fn degrees(terms: &Terms<'_>, angle: i64) -> String {
    let (whole, part) = (angle / 1000, format!("{:03}", angle % 1000));
    let part = part.trim_end_matches('0');
    let point = match (part.is_empty(), terms.reader.decimal_comma) {
        (true, _) => "",
        (false, true) => ",",
        (false, false) => ".",
    };
    format!("{whole}{point}{part}°")
}

fn refused(terms: &Terms<'_>, steps: &[Step], error: &SignError) -> Problem {
    let (code, field) = match error {
        SignError::Unknown { .. } => (Code::Unknown, "step"),
        SignError::Signer { .. } => (Code::Missing, "signer"),
        SignError::SkipReason { .. } => (Code::Missing, "note"),
        SignError::EarlierOpen { .. } => (Code::First, "note"),
        SignError::Already { .. } | SignError::NothingToUndo { .. } => (Code::Order, "step"),
    };
    Problem::new(code, field, error.text(steps, terms.phrases))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_degrees_to_a_thousandth() {
        for (text, angle) in
            [("45", Some(45_000)), ("22.5", Some(22_500)), ("2,25°", Some(2_250)), ("90", Some(90_000))]
        {
            assert_eq!(millidegrees(text), angle, "{text}");
        }
        for text in ["", ".5", "91", "-3", "1.2345", "4 5", "4.5.6"] {
            assert_eq!(millidegrees(text), None, "{text}");
        }
    }
}
