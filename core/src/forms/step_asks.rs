//! What is asked of an open step: what was measured, a note, and why it is left out.
//!
//! The answer signs the step; until then its keys are a draft like those of any other question.

use crate::book::{Book, DraftKey};
use crate::steps::{MeasuredKind, Step};
use crate::store::Id;
use crate::views::{AnswerKind, Code, PhotoPlace, Problem, Question, StepHow, StepLine, StepSaid};

use super::context::Terms;
use super::error::Result;
use super::photo;

/// One of the questions.
#[derive(Clone, Copy)]
enum About {
    /// What was measured at it.
    Measured,
    /// Something to be kept with its tick.
    Note,
    /// Why it is left out.
    Reason,
}

impl About {
    const ALL: [Self; 3] = [Self::Measured, Self::Note, Self::Reason];

    fn field(self, step: &str) -> String {
        let about = match self {
            Self::Measured => "measured",
            Self::Note => "note",
            Self::Reason => "reason",
        };
        format!("{step}/{about}")
    }

    /// What is asked, and the kind of its answer; none where the step has nothing to be measured.
    fn asked(self, step: &Step) -> Option<(&'static str, AnswerKind)> {
        match self {
            Self::Measured => step.measured.map(|measured| match measured.kind {
                MeasuredKind::Length => (measured.phrase, AnswerKind::LengthKind),
                MeasuredKind::Angle => (measured.phrase, AnswerKind::NumberKind),
            }),
            Self::Note => Some(("screen-note", AnswerKind::TextKind)),
            Self::Reason => Some(("screen-reason", AnswerKind::TextKind)),
        }
    }
}

/// The questions of an open step.
pub(crate) fn asks(book: &Book, terms: &Terms<'_>, subject: Id, step: &Step) -> Result<Vec<Question>> {
    let mut asks = Vec::new();
    for about in About::ALL {
        let Some((title, kind)) = about.asked(step) else { continue };
        let field = about.field(step.code);
        asks.push(Question {
            subject: subject.to_string(),
            title: terms.phrase(title, &[]),
            hint: terms.phrase(step.text, &[]),
            kind,
            draft: book.draft(&DraftKey::named(subject, &field))?,
            // What later work hides, or keeps somebody safe, is not left out without a word.
            optional: !(matches!(about, About::Reason) && step.needs_reason()),
            field,
            ..Question::default()
        });
    }
    Ok(asks)
}

/// The question of a step that was begun.
pub(crate) fn begun(steps: &[StepLine]) -> Option<Question> {
    steps.iter().flat_map(|step| &step.asks).find(|asks| !asks.draft.is_empty()).cloned()
}

/// The drafts of a step: once it is signed there is nothing more to be asked of it.
pub(crate) fn drafts(subject: Id, step: &str) -> Vec<DraftKey> {
    About::ALL.iter().map(|about| DraftKey::named(subject, &about.field(step))).collect()
}

/// Keeps the keys of an answer; false where the field is that of none of these steps.
pub(crate) fn keep(book: &mut Book, subject: Id, steps: &[Step], field: &str, text: &str) -> Result<bool> {
    let known = find(steps, field).is_some();
    if known {
        book.put_draft(&DraftKey::named(subject, field), text)?;
    }
    Ok(known)
}

/// What an answer says of its step, with the photo that was taken for it; none where the field is that of none of these
/// steps.
///
/// # Errors
/// [`Problem`] where nothing was measured or noted.
pub(crate) fn said(
    book: &Book,
    terms: &Terms<'_>,
    subject: Id,
    steps: &[Step],
    field: &str,
    text: &str,
) -> Result<Option<(&'static str, StepSaid)>> {
    let Some((step, about)) = find(steps, field) else { return Ok(None) };
    let text = text.trim().to_owned();
    if text.is_empty() && !matches!(about, About::Reason) {
        return Err(Problem::new(Code::Missing, field, terms.phrase("screen-empty", &[])).into());
    }
    let taken = photo::of_step(book, subject, step, &[])?.filter(|photo| photo.place == PhotoPlace::Here);
    let tick = StepSaid {
        how: StepHow::Tick,
        note: String::new(),
        measured: String::new(),
        photo: taken.map(|photo| photo.photo),
    };
    let said = match about {
        About::Measured => StepSaid { measured: text, ..tick },
        About::Note => StepSaid { note: text, ..tick },
        About::Reason => StepSaid { how: StepHow::Skip, note: text, photo: None, ..tick },
    };
    Ok(Some((step, said)))
}

fn find(steps: &[Step], field: &str) -> Option<(&'static str, About)> {
    steps.iter().find_map(|step| {
        let asked = About::ALL.iter().find(|about| about.asked(step).is_some() && about.field(step.code) == field);
        asked.map(|about| (step.code, *about))
    })
}
