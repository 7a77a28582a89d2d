//! Done list: what happened.

use super::place::Place;

/// A page of what happened.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct DoneListView {
    /// The house; absent for the whole book.
    pub job: Option<String>,
    /// What happened, newest first.
    pub lines: Vec<DoneLine>,
    /// The mark that the next page, of older lines, is asked for by; absent on the last.
    pub older: Option<String>,
    /// The answer that is looked at before it is taken back.
    pub looked_at: Option<DoneLine>,
    /// What was answered later on what that answer made: it will hang in the air when it is taken back.
    pub depends: Vec<DoneLine>,
    /// The questions that an undo opened again, with what had been answered as their drafts.
    pub reopened: Vec<ReopenedAnswer>,
}

/// One thing that happened.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct DoneLine {
    /// The id to undo it by.
    pub group: String,
    /// What happened.
    pub text: String,
    /// Who did it; empty where nobody had said.
    pub signer: String,
    /// When, in milliseconds since 1970-01-01 UTC.
    pub at_ms: i64,
    /// The local day, as `2026-05-04`.
    pub day: String,
    /// The local time, as `07:05`.
    pub time: String,
    /// Whether it was taken back.
    pub undone: bool,
    /// Whether it is itself the taking back of another.
    pub is_undo: bool,
}

/// A question that was opened again.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ReopenedAnswer {
    /// The thing that it is asked of.
    pub subject: String,
    /// The field.
    pub field: String,
    /// The question.
    pub title: String,
    /// What had been typed.
    pub text: String,
    /// The screen that asks it.
    pub place: Place,
}

/// What can be done with what happened.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum DoneListAction {
    /// Shows older lines.
    Older {
        /// The house; absent for the whole book.
        job: Option<String>,
        /// The mark of the page, from the view.
        from: String,
    },
    /// Shows what depends on an answer, before it is taken back.
    LookAt {
        /// The house; absent for the whole book.
        job: Option<String>,
        /// The answer.
        group: String,
    },
    /// Takes an answer back; its questions open again, filled in.
    Undo {
        /// The house; absent for the whole book.
        job: Option<String>,
        /// The answer.
        group: String,
    },
}
