//! Ticks on the steps of a board or a penetration: what was signed, as a view shows it, and one more sign-off.

use crate::book::{Book, DraftKey, Operation, OperationKind};
use crate::measure::{Reader, Unit};
use crate::steps::{Act, MeasuredKind, SignError, Step, StepSignOff, check, differs, state_of};
use crate::store::{Hash, Id, Signed, State, Value};
use crate::views::{Code, Note, Problem, Reading, Source, StepHow, StepLine, StepSaid, StepState};
use crate::work::{Work, sign_offs};

use super::ask::accept;
use super::cautions;
use super::context::Terms;
use super::error::{FormError, Result};
use super::parts::join_nonempty;
use super::photo;
use super::step_asks;

/// The steps that are signed on, and what they belong to.
pub(crate) struct Signing<'a> {
    /// The house.
    pub(crate) work: &'a Work,
    /// The board or penetration.
    pub(crate) subject: Id,
    /// What the done list calls it: a text or the key of a phrase.
    pub(crate) about: &'a str,
    /// Its steps in their order.
    pub(crate) steps: &'a [Step],
    /// What they are signed for.
    pub(crate) detail: DetailHashes,
}

/// The hash of what a thing is now, of its [`crate::steps::Canonical::detail_text`], and what earlier programs took of the
/// same: a sign-off on any of these is for what is there.
pub(crate) struct DetailHashes {
    /// What a sign-off carries from now on.
    pub(crate) hash: Hash,
    /// What it may carry in books made before.
    pub(crate) earlier: Vec<Hash>,
}

impl DetailHashes {
    fn differs(&self, step: &str, history: &[StepSignOff]) -> bool {
        std::iter::once(&self.hash).chain(&self.earlier).all(|hash| differs(step, history, &hash.to_string()))
    }
}

/// The steps of a thing with what was said of each.
pub(crate) fn step_lines(book: &Book, terms: &Terms<'_>, on: &Signing<'_>) -> Result<Vec<StepLine>> {
    let signed: Vec<&Signed> = on.work.house().signed(on.subject).collect();
    let history = sign_offs(signed.iter().copied());
    let lines = on.steps.iter().map(|step| {
        let mut line = line(terms, step, &signed, &history);
        line.differs = on.detail.differs(step.code, &history);
        line.cautions_read = cautions::read(book, terms, on.work.id(), step)?;
        line.photo = photo::of_step(book, on.subject, step.code, &signed)?;
        if line.state == StepState::Open {
            line.asks = step_asks::asks(book, terms, on.subject, step)?;
        }
        Ok(line)
    });
    lines.collect()
}

/// Signs a step and gives the group to undo it by.
pub(crate) fn sign(book: &mut Book, terms: &Terms<'_>, on: &Signing<'_>, step: &str, said: &StepSaid) -> Result<Id> {
    let operation = signed(book, terms, on, step, said)?;
    accept_signed(book, terms, operation, on, step, said)
}

/// Accepts an answer that signs a step, and drops what was begun for it.
pub(crate) fn accept_signed(
    book: &mut Book,
    terms: &Terms<'_>,
    operation: Operation,
    on: &Signing<'_>,
    step: &str,
    said: &StepSaid,
) -> Result<Id> {
    let mut used = step_asks::drafts(on.subject, step);
    if said.photo.is_some() {
        used.push(DraftKey::photo(on.subject, step));
    }
    let group = accept(book, terms, operation, &used)?.group;
    if let Some(step) = on.steps.iter().find(|known| known.code == step && said.how == StepHow::Tick) {
        // The step is signed: an error now would say that it is not. A caution that is not known as read is shown once more.
        let _ = cautions::keep_read(book, terms, on.work.id(), step);
    }
    Ok(group)
}

/// The answer that signs a step, not yet accepted: a caller may add what is kept with it, such as the lengths of a cut.
pub(crate) fn signed(
    book: &Book,
    terms: &Terms<'_>,
    on: &Signing<'_>,
    step: &str,
    said: &StepSaid,
) -> Result<Operation> {
    let history = sign_offs(on.work.house().signed(on.subject));
    signed_after(book, terms, on, &history, step, said).map(|(operation, _)| operation)
}

/// What an answer that signs a step is called, and what the step is by it.
pub(crate) const fn operation_of(how: StepHow) -> (OperationKind, State) {
    match how {
        StepHow::Tick => (OperationKind::StepDone, State::Done),
        StepHow::Skip => (OperationKind::StepSkipped, State::Skipped),
        StepHow::TakeBack => (OperationKind::StepTakenBack, State::Undone),
    }
}

/// The same after sign-offs that need not be accepted yet either, with the sign-off that it is.
pub(crate) fn signed_after(
    book: &Book,
    terms: &Terms<'_>,
    on: &Signing<'_>,
    history: &[StepSignOff],
    step: &str,
    said: &StepSaid,
) -> Result<(Operation, StepSignOff)> {
    let act = match said.how {
        StepHow::Tick => Act::Tick,
        StepHow::Skip => Act::Skip,
        StepHow::TakeBack => Act::Undo,
    };
    let one = StepSignOff {
        step: step.to_owned(),
        act,
        by: terms.context.signer.clone(),
        at_ms: terms.context.now_ms,
        reason: said.note.trim().to_owned(),
        detail: on.detail.hash.to_string(),
        length: None,
        millidegrees: None,
        photo: String::new(),
    };
    check(on.steps, history, &one).map_err(|error| refused(terms, on.steps, &error))?;
    let found = on.steps.iter().find(|known| known.code == step);
    let measured = found.map_or(Ok(None), |found| measured(terms, found, &said.measured))?;
    let photo = said.photo.as_deref().map(|photo| photo::here(book, terms, photo)).transpose()?;
    let (kind, state) = operation_of(said.how);
    let text = found.map_or(step, |found| found.text);
    let operation = Operation::new(kind, on.work.id(), [on.about, text, said.note.trim()]);
    let operation = operation.sign(crate::store::SignOff {
        subject: on.subject,
        step: step.to_owned(),
        state,
        signer: terms.context.signer.clone(),
        note: if act == Act::Tick { said.note.trim().to_owned() } else { String::new() },
        reason: if act == Act::Tick { String::new() } else { said.note.trim().to_owned() },
        measured,
        photo,
        detail_hash: on.detail.hash,
    });
    Ok((operation, one))
}

/// The answer that signs an open step with what was just measured at it; none where it is not open, or cannot be signed yet.
pub(crate) fn signed_by_reading(
    book: &Book,
    terms: &Terms<'_>,
    on: &Signing<'_>,
    step: &str,
    typed: &str,
) -> Result<Option<Operation>> {
    use crate::steps::StepStanding as Stands;
    let history = sign_offs(on.work.house().signed(on.subject));
    if !matches!(state_of(step, &history), Stands::Open | Stands::Undone(_)) {
        return Ok(None);
    }
    let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: typed.to_owned(), photo: None };
    match signed(book, terms, on, step, &said) {
        Ok(operation) => Ok(Some(operation)),
        Err(FormError::Said(_)) => Ok(None),
        Err(error) => Err(error),
    }
}

fn line(terms: &Terms<'_>, step: &Step, signed: &[&Signed], history: &[StepSignOff]) -> StepLine {
    use crate::steps::StepStanding as Stands;
    let (state, by) = match state_of(step.code, history) {
        Stands::Open | Stands::Undone(_) => (StepState::Open, None),
        Stands::Done(sign) => (StepState::Done, Some(sign)),
        Stands::Skipped(sign) => (StepState::Skipped, Some(sign)),
    };
    let kept = by.and_then(|_| signed.iter().rev().find(|signed| signed.sign_off.step == step.code));
    let mut note = by.map(|sign| sign.reason.clone()).unwrap_or_default();
    if let Some(angle) = by.and_then(|sign| sign.millidegrees) {
        let space = if note.is_empty() { "" } else { " " };
        note = format!("{}{space}{note}", degrees(angle));
    }
    let mut line = StepLine {
        code: step.code.to_owned(),
        text: terms.phrase(step.text, &[]),
        reason: terms.phrase(step.reason, &[]),
        cautions: step
            .cautions
            .iter()
            .map(|caution| Note::check(caution.code(), terms.phrase(caution.phrase(), &[])))
            .collect(),
        cautions_read: false,
        hidden_later: step.hidden_by_later,
        state,
        signer: by.map(|sign| sign.by.clone()).unwrap_or_default(),
        at_ms: by.map(|sign| sign.at_ms),
        note,
        measured: kept.and_then(|signed| reading(terms, signed)),
        differs: false,
        photo_asked: step.photo,
        photo: None,
        asks: Vec::new(),
        said: String::new(),
        sizes: Vec::new(),
        opens: None,
        layer: String::new(),
    };
    let when = line.at_ms.map(|at| terms.moment(at)).unwrap_or_default();
    let measured = line.measured.as_ref().map_or("", |reading| &reading.text);
    line.said = join_nonempty(&[&line.signer, &when, measured, &line.note]);
    line
}

fn reading(terms: &Terms<'_>, signed: &Signed) -> Option<Reading> {
    let Some(Value::Length { length, unit, .. }) = &signed.sign_off.measured else { return None };
    let mut reading = terms.reading(*length, Source::Taped, Unit::from_code(unit));
    terms.by(&mut reading, &signed.sign_off.signer, signed.stamp.ms);
    Some(reading)
}

/// What was measured at a step: a length as it was typed, or an angle in thousandths of a degree.
fn measured(terms: &Terms<'_>, step: &Step, text: &str) -> Result<Option<Value>> {
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
        Some(MeasuredKind::Angle) => match slope(&terms.reader, text) {
            Some(angle) => Ok(Some(Value::Whole(angle))),
            None => Err(refuse("signing-angle").into()),
        },
    }
}

/// An angle from level to plumb, in thousandths of a degree.
fn slope(reader: &Reader, text: &str) -> Option<i64> {
    reader.millidegrees(text).ok().filter(|angle| (0..=90_000).contains(angle))
}

fn degrees(angle: i64) -> String {
    let (whole, part) = (angle / 1000, format!("{:03}", angle % 1000));
    let part = part.trim_end_matches('0');
    let point = if part.is_empty() { "" } else { "." };
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
    fn an_angle_lies_between_level_and_plumb() {
        let reader = Reader::default();
        for (text, angle) in [("0", Some(0)), ("45", Some(45_000)), ("22 1/2°", Some(22_500)), ("90", Some(90_000))] {
            assert_eq!(slope(&reader, text), angle, "{text}");
        }
        for text in ["", "90.001", "91", "-3", "1.2345", "4 5", "45 in"] {
            assert_eq!(slope(&reader, text), None, "{text}");
        }
    }
}
