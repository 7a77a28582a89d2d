//! Measure: set up a wall, one question at a time.

use super::parts::{Given, Note, Question};

/// A wall as it is being measured.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MeasureView {
    /// The wall.
    pub wall: String,
    /// The house.
    pub job: String,
    /// What the crew calls it.
    pub name: String,
    /// Its questions in the order in which a person with a tape meets them.
    pub questions: Vec<Question>,
    /// Steps of the base line, studs, windows, doors and abutments.
    pub parts: Vec<PartView>,
    /// The question that is asked now, of the wall or of a part; absent where all that is needed is answered.
    pub asked: Option<Question>,
    /// What needs attention.
    pub notes: Vec<Note>,
}

/// A part of a wall.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PartView {
    /// Its id.
    pub part: String,
    /// `base-step`, `stud`, `opening` or `abutment`.
    pub kind: String,
    /// What it is, in words.
    pub title: String,
    /// Its questions.
    pub questions: Vec<Question>,
}

/// What can be done while a wall is measured.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum MeasureAction {
    /// An answer to one of the wall's questions.
    Answer {
        /// The wall.
        wall: String,
        /// The question's field.
        field: String,
        /// The answer as typed.
        text: String,
    },
    /// Keys that are typed and not yet accepted.
    KeepDraft {
        /// The wall.
        wall: String,
        /// The wall or its part.
        subject: String,
        /// The question's field.
        field: String,
        /// The keys.
        text: String,
    },
    /// A new step of the base line, stud, window, door or abutment, all its answers together.
    AddPart {
        /// The wall.
        wall: String,
        /// `base-step`, `stud`, `opening` or `abutment`.
        kind: String,
        /// The answers to its questions.
        answers: Vec<Given>,
    },
    /// An answer to a question of a part.
    AnswerPart {
        /// The wall.
        wall: String,
        /// The part.
        part: String,
        /// The question's field.
        field: String,
        /// The answer as typed.
        text: String,
    },
    /// A part is not there.
    RemovePart {
        /// The wall.
        wall: String,
        /// The part.
        part: String,
    },
}
