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

/// How much a note weighs; the worst comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum NoteLevel {
    /// Whoever goes on spoils material, leaves the wall open or gets hurt.
    Stop,
    /// To be looked at before going on.
    Check,
    /// Good to know: nothing is wrong.
    Know,
}

/// Something that needs attention, or is good to know.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Note {
    /// How much it weighs.
    pub level: NoteLevel,
    /// A stable code.
    pub code: String,
    /// What it says.
    pub text: String,
}

impl Note {
    /// Going on does harm.
    pub(crate) fn stop(code: &str, text: String) -> Self {
        Self { level: NoteLevel::Stop, code: code.to_owned(), text }
    }

    /// To be looked at before going on.
    pub(crate) fn check(code: &str, text: String) -> Self {
        Self { level: NoteLevel::Check, code: code.to_owned(), text }
    }

    /// Good to know.
    pub(crate) fn know(code: &str, text: String) -> Self {
        Self { level: NoteLevel::Know, code: code.to_owned(), text }
    }
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
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum AnswerKind {
    /// A length, from the tape keypad.
    LengthKind,
    /// One of the choices.
    ChoiceKind,
    /// A whole number.
    WholeKind,
    /// A number with a decimal point, in a unit that goes without saying.
    NumberKind,
    /// Free text.
    #[default]
    TextKind,
}

/// One question of a view: one at a time on a phone.
#[derive(Clone, Debug, Default, PartialEq, Eq, serde::Serialize)]
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
    /// Which of several like things it is asked of: `Window`, `Hose bib`; empty where that is plain.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub about: String,
    /// Which one it is of those that must be answered: `1 of 4`; empty for one by itself.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub nth: String,
    /// What another answer or a rule already says, where nobody answered yet: it is offered, and a tap takes it.
    #[cfg_attr(feature = "uniffi", uniffi(default = None))]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offer: Option<Offer>,
    /// The picture of where to put the tape for it; empty where there is none.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    // JSON has no drawings.
    #[serde(skip)]
    pub picture: String,
}

/// An answer that need not be typed.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Offer {
    /// The answer, as it would be typed.
    pub text: String,
    /// The answer and where it comes from, in words.
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
