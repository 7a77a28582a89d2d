//! New: a new thing in the making, one question at a time.

use super::parts::Question;

/// What is being made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum NewThing {
    /// A house; with a parent it takes boards, rules and stock of that one.
    House,
    /// A stock length of a house.
    Stock,
    /// A size of mounting block that a house has.
    BlockSize,
    /// A wall of a house.
    Wall,
    /// A height on the story pole of a house.
    Mark,
    /// A loose board, of a house or of none.
    LooseBoard,
    /// A step in the base line of a wall.
    BaseStep,
    /// A stud of a wall.
    Stud,
    /// A window or a door of a wall.
    Opening,
    /// What the siding of a wall must keep clear of.
    Abutment,
    /// What goes through a wall.
    Penetration,
    /// The same as the last penetration of a wall, at another place.
    SamePenetration,
    /// A notch of a board round a block that no plan knows.
    Notch,
    /// A piece of board that a house has left over.
    Offcut,
    /// A course of a wall as it hangs.
    AsBuilt,
    /// What is left of a board that is spoiled.
    Spoiled,
}

/// A new thing and its questions.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct NewView {
    /// What is being made.
    pub what: NewThing,
    /// The house, wall or board that it belongs to; empty where it belongs to none.
    pub parent: String,
    /// The house that it belongs to; absent where there is none.
    pub job: Option<String>,
    /// What it is, in words.
    pub title: String,
    /// Its questions in their order, with what was answered so far.
    pub questions: Vec<Question>,
    /// The one that is asked now.
    pub asked: Option<Question>,
}

/// What can be done with a new thing.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum NewAction {
    /// Keys that are typed and not yet accepted.
    KeepDraft {
        /// What is being made.
        what: NewThing,
        /// What it belongs to.
        parent: String,
        /// The question's field.
        field: String,
        /// The keys.
        text: String,
    },
    /// An answer; the last one makes the thing.
    Answer {
        /// What is being made.
        what: NewThing,
        /// What it belongs to.
        parent: String,
        /// The question's field.
        field: String,
        /// The answer as typed; empty to go without it where that is allowed.
        text: String,
    },
    /// Nothing comes of it.
    Leave {
        /// What is being made.
        what: NewThing,
        /// What it belongs to.
        parent: String,
    },
}
