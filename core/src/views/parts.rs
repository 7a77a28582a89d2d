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

/// An answer to one field of a new thing, as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Given {
    /// The question's field.
    pub field: String,
    /// The answer as typed.
    pub text: String,
}
