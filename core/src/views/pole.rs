//! Story pole: where the lines go.

use super::parts::{Given, Note, Question, Reading};

/// The story pole of a house.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PoleView {
    /// The house.
    pub job: String,
    /// Its questions with their answers.
    pub questions: Vec<Question>,
    /// The one that is asked now: with keys typed and not accepted, else the first that the work needs.
    pub asked: Option<Question>,
    /// The heights that the lines should meet or stay clear of, and how they come out.
    pub marks: Vec<MarkLine>,
    /// The lines for the stick, from the bottom; empty until the questions are answered.
    pub lines: Vec<PoleLine>,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// Whether a layout is kept: the walls are planned from it.
    pub laid_out: bool,
    /// Whether the kept layout is the one that is shown.
    pub up_to_date: bool,
    /// Whether no other layout misses the marks by less.
    pub proved: bool,
    /// Whether these lines are kept and whether there are better ones, in words; empty where there are none.
    pub said: String,
    /// The courses that were taped as they hang, wall by wall, and what they change.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub as_built: Vec<AsBuiltLine>,
    /// What is asked of a course that hangs.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub as_built_questions: Vec<Question>,
    /// Changes when the drawing does.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub revision: i64,
    /// The walls on which a course can be taped as it hangs; empty until a layout is kept.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub walls: Vec<PoleWall>,
}

/// A wall that the lines of the pole go on.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PoleWall {
    /// The wall.
    pub wall: String,
    /// What the crew calls it.
    pub name: String,
}

/// One line of the pole.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PoleLine {
    /// The course whose bottom edge lies here; one more than there are for the end.
    pub course: u32,
    /// The height above the datum.
    pub height: Reading,
    /// What of the course stays visible; absent for the end.
    pub reveal: Option<Reading>,
    /// Which line it is and what it shows, in words.
    pub said: String,
}

/// A height that lines should meet or stay clear of.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MarkLine {
    /// Its id; empty for one that comes from a wall.
    pub mark: String,
    /// What is there.
    pub name: String,
    /// How high it is above the datum.
    pub at: Reading,
    /// `land` or `clear`.
    pub want: String,
    /// By how much the nearest line misses it; absent until there is a layout.
    pub miss: Option<Reading>,
    /// What is wanted and how it comes out, in words.
    pub said: String,
}

/// A course as it hangs on a wall, and what that changes.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct AsBuiltLine {
    /// Its id.
    pub as_built: String,
    /// The wall.
    pub wall: String,
    /// What the crew calls the wall.
    pub wall_name: String,
    /// The course whose bottom edge was taped.
    pub course: i64,
    /// Its height above the datum where the pole has it.
    pub planned: Option<Reading>,
    /// At the left end, above the datum.
    pub left: Reading,
    /// In the middle: taped, else straight between the ends.
    pub middle: Reading,
    /// At the right end.
    pub right: Reading,
    /// How far it hangs out of level.
    pub out_of_level: Reading,
    /// After how many courses the line is level again; zero where it is, absent where it cannot be.
    pub courses: Option<u32>,
    /// The lines above it that are not where the pole has them, from the lowest up.
    pub changed: Vec<ChangedLine>,
    /// What it changes, in words, and what needs attention.
    pub notes: Vec<Note>,
}

/// A line of a wall that is not where the pole has it.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChangedLine {
    /// The course whose bottom edge lies here; one more than there are for the end.
    pub course: u32,
    /// Where the pole has it; absent for a course that it does not have.
    pub planned: Option<Reading>,
    /// Its height above the datum at the left end.
    pub left: Reading,
    /// In the middle.
    pub middle: Reading,
    /// At the right end.
    pub right: Reading,
}

/// What can be done with the story pole.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum PoleAction {
    /// An answer to one of its questions.
    Answer {
        /// The house.
        job: String,
        /// The question's field.
        field: String,
        /// The answer as typed.
        text: String,
    },
    /// Keys that are typed and not yet accepted.
    KeepDraft {
        /// The house.
        job: String,
        /// The question's field.
        field: String,
        /// The keys.
        text: String,
    },
    /// A height of one's own to meet or stay clear of.
    AddMark {
        /// The house.
        job: String,
        /// The answers to its questions.
        answers: Vec<Given>,
    },
    /// A height of one's own is no longer asked for.
    RemoveMark {
        /// The house.
        job: String,
        /// The mark.
        mark: String,
    },
    /// Keep the lines that are shown.
    LayOut {
        /// The house.
        job: String,
    },
    /// What the tape reads at the bottom edge of a course that hangs on a wall; the lines above it follow.
    SayAsBuilt {
        /// The wall.
        wall: String,
        /// Course, left, right, and the middle where it was taped.
        answers: Vec<Given>,
    },
    /// What was said of a course as it hangs no longer holds.
    RemoveAsBuilt {
        /// The entry.
        as_built: String,
    },
}
