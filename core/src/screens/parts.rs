//! The pieces that several views are made of.

/// Where a number comes from; taped beats planned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    /// Somebody read it on the tape.
    Taped,
    /// It was planned or computed.
    Planned,
    /// A rule gives it.
    Ruled,
}

/// A length as every view shows it.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Reading {
    /// What a person reads, with a sign where it is not what was typed: `≈ 154 mm`.
    pub text: String,
    /// What a person hears.
    pub spoken: String,
    /// The exact length in nanometres.
    pub nm: i64,
    /// Where it comes from.
    pub source: Source,
    /// Whether the text is converted or rounded.
    pub approximate: bool,
    /// Who read it; empty where nobody did.
    pub signer: String,
    /// When, in milliseconds since 1970-01-01 UTC; absent where it was not read.
    pub at_ms: Option<i64>,
    /// Who read it and when, in words; empty where nobody did.
    pub said: String,
}

/// A named length in a view.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Size {
    /// A stable name.
    pub code: String,
    /// The name a person reads.
    pub label: String,
    /// The length.
    pub reading: Reading,
}

/// Something that needs attention.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Note {
    /// A stable code.
    pub code: String,
    /// What it says.
    pub text: String,
}

/// One of a few answers.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Choice {
    /// What is kept.
    pub code: String,
    /// What a person reads.
    pub label: String,
}

/// What kind of answer a question takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum AnswerKind {
    /// A length, from the tape keypad.
    LengthKind,
    /// One of the choices.
    ChoiceKind,
    /// A whole number.
    WholeKind,
    /// Free text.
    TextKind,
}

/// One question of a view: one at a time on a phone.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Question {
    /// The thing that the answer belongs to.
    pub subject: String,
    /// The field that the answer is kept in.
    pub field: String,
    /// The question.
    pub title: String,
    /// Where to hook the tape, or how to answer.
    pub hint: String,
    /// What kind of answer it takes.
    pub kind: AnswerKind,
    /// The answers to choose from, for a choice.
    pub choices: Vec<Choice>,
    /// What is answered so far, as text to show; empty where nothing is.
    pub answer: String,
    /// The answer as a length, where it is one.
    pub reading: Option<Reading>,
    /// Keys that were typed and not yet accepted.
    pub draft: String,
    /// Whether the work can go on without it.
    pub optional: bool,
    /// The picture of where to put the tape for it; empty where there is none.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    // JSON has no drawings.
    #[serde(skip)]
    pub picture: String,
}

/// What has been said of a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum StepState {
    /// Nothing yet, or taken back.
    Open,
    /// Ticked.
    Done,
    /// Left out, with a reason.
    Skipped,
}

/// Where a photo is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum PhotoPlace {
    /// Not here yet: a camera is to fill its file, or another device has it.
    Waiting,
    /// On this device.
    Here,
    /// Was here, and cannot be found.
    Missing,
}

/// A photo of a step.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StepPhoto {
    /// Its id.
    pub photo: String,
    /// Where it is.
    pub place: PhotoPlace,
    /// The absolute path of its file, to show or to fill.
    pub file: String,
    /// Whether the step was signed with it; else it goes into the next tick of the step.
    pub signed: bool,
}

/// One step of a penetration or a board.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StepLine {
    /// A stable code.
    pub code: String,
    /// What to do.
    pub text: String,
    /// Why.
    pub reason: String,
    /// What to mind.
    pub cautions: Vec<Note>,
    /// Whether all of that was read today in this house: it need not be shown again unasked.
    pub cautions_read: bool,
    /// Whether a later step hides it, so that it cannot be left out without a reason.
    pub hidden_later: bool,
    /// What has been said of it.
    pub state: StepState,
    /// Who said it; empty where nobody did.
    pub signer: String,
    /// When, in milliseconds since 1970-01-01 UTC.
    pub at_ms: Option<i64>,
    /// A note or a reason; empty where there is none.
    pub note: String,
    /// What was measured, if anything.
    pub measured: Option<Reading>,
    /// Whether the thing has changed since it was ticked.
    pub differs: bool,
    /// Whether a photo is asked for.
    pub photo_asked: bool,
    /// The photo of it, if any.
    pub photo: Option<StepPhoto>,
    /// What can be answered instead of a mere tick: what was measured, a note, and last the reason why it is left out.
    /// Empty once something was said of it.
    pub asks: Vec<Question>,
    /// Who said it, when, what was measured and the note, in words; empty where nobody said anything.
    pub said: String,
}

/// An answer to one field of a new thing, as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Given {
    /// The question's field.
    pub field: String,
    /// The answer as typed.
    pub text: String,
}

/// The answers by field.
pub(super) fn given(answers: &[Given]) -> std::collections::BTreeMap<&str, &str> {
    answers.iter().map(|given| (given.field.as_str(), given.text.as_str())).collect()
}

/// What there is to say of several things, one after the other.
pub(super) fn together(said: &[&str]) -> String {
    said.iter().filter(|text| !text.is_empty()).copied().collect::<Vec<_>>().join(", ")
}
