//! Board: the board in hand, of a wall's plan or loose.

use super::parts::{Given, Note, Question, Reading, Size};
use super::pole::PoleWall;
use super::shape::ShapeView;
use super::steps::{StepLine, StepSaid, StepState};
use super::wall::Corner;

/// The board in hand.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BoardView {
    /// The board.
    pub board: String,
    /// Its wall; empty for a loose board.
    pub wall: String,
    /// Its house; empty where it belongs to none.
    pub job: String,
    /// What it is, in words: wall and course, or a loose board.
    pub title: String,
    /// Its course, counted on the pole from one; absent for a loose board.
    pub course: Option<i64>,
    /// How long it is cut; absent until it is known.
    pub length: Option<Reading>,
    /// How high it is.
    pub height: Reading,
    /// Its own questions.
    pub questions: Vec<Question>,
    /// The question that is asked now, of the board or of a notch: with keys typed and not accepted, else the first that
    /// nobody put a tape to while the board is not cut.
    pub asked: Option<Question>,
    /// Its notches, one a block that it meets.
    pub notches: Vec<NotchView>,
    /// The shortest stock that is long enough; absent where none is, or where there is no house.
    pub stock: Option<Reading>,
    /// `planned`, `cut` or `fixed`.
    pub state: String,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// Its steps in their order.
    pub steps: Vec<StepLine>,
    /// Changes when the drawing does.
    pub revision: i64,
    /// Where its bottom edge will lie at its left end, above the datum of the pole; absent for a loose board.
    #[cfg_attr(feature = "uniffi", uniffi(default = None))]
    pub line_left: Option<Reading>,
    /// Where its bottom edge will lie at its right end: not where the left one does, where the course is out of level.
    #[cfg_attr(feature = "uniffi", uniffi(default = None))]
    pub line_right: Option<Reading>,
    /// The walls that it can be attached to; empty for a board that has one, or no house.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub walls: Vec<PoleWall>,
    /// How many gaps of this signer's saw are known.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub gaps_known: u32,
    /// Its true shape; absent until its length is known, or where none of it lies on the wall.
    #[cfg_attr(feature = "uniffi", uniffi(default = None))]
    #[serde(flatten)]
    pub shape: Option<ShapeView>,
    /// The other pieces of a board that something goes right through, from left to right.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub further_pieces: Vec<ShapeView>,
    /// How it is cut, in the order of the cuts.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub instructions: Vec<InstructionLine>,
    /// Which of its wall's boards it is, in words: `3 of 58`; empty for a loose board.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub said: String,
    /// What is checked of it, in order: each for all the steps that it stands for.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub checks: Vec<CheckLine>,
    /// The next board of its wall that is not up; empty where there is none.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub next_board: String,
    /// That board in words; empty where there is none.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub next_said: String,
}

/// What is checked of a board with one tap: a plain board is cut, primed and up.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct CheckLine {
    /// `cut`, `primed` or `up`; the code of a step that is checked by itself.
    pub code: String,
    /// What is checked.
    pub text: String,
    /// The codes of the steps that it stands for, in their order.
    pub steps: Vec<String>,
    /// Done once the last of its steps is.
    pub state: StepState,
    /// Who said it and when, in words; empty while it is open.
    pub said: String,
    /// What there is to mind at its open steps.
    pub cautions: Vec<Note>,
    /// Whether all of that was read today in this house.
    pub cautions_read: bool,
    /// The code of its step whose photo is asked for and not there; empty for none.
    pub camera: String,
    /// The question that is asked before it is checked; absent where nothing is measured.
    pub opens: Option<Question>,
}

/// One cut of a board.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct InstructionLine {
    /// `length`, `rip`, `bevel`, `clip`, `step`, `notch`, `hole`, `contour` or `pieces`.
    pub code: String,
    /// What to do, seen from the face.
    pub text: String,
    /// Where its marks lie along the face, from the left end, in nanometres; none for a cut along the whole board.
    pub marks: Vec<i64>,
    /// The same on the back, from the end that is the left one there.
    pub marks_behind: Vec<i64>,
}

/// One notch of the board in hand.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct NotchView {
    /// The notch, or the penetration that it is planned round: answers go to this.
    pub notch: String,
    /// What is there, in words.
    pub name: String,
    /// Whether anything of it was taped; else all is planned.
    pub taped: bool,
    /// The code of the cut, such as `bottom`; empty until the readings are there.
    pub cut: String,
    /// The cut in words.
    pub cut_text: String,
    /// How far outside the block the marks lie.
    pub offset: Option<Reading>,
    /// The least gap to expect.
    pub gap_least: Option<Reading>,
    /// The greatest gap to expect.
    pub gap_most: Option<Reading>,
    /// The marks on the face.
    pub face: Option<MarksView>,
    /// The marks on the back, where left and right change places.
    pub back: Option<MarksView>,
    /// What is left beside, above or below it.
    pub legs: Vec<Size>,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// Its questions.
    pub questions: Vec<Question>,
}

/// The marks to transfer to one side of the board; drawings show these and nothing else.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MarksView {
    /// Upright lines, from the left end as this side shows it.
    pub uprights: Vec<Reading>,
    /// Lines along the board.
    pub levels: Vec<LevelView>,
    /// The corners of what is cut out, in nanometres from the left end and the bottom edge.
    pub corners: Vec<Corner>,
}

/// A line along the board.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct LevelView {
    /// `bottom` or `top`: the edge that it is measured from.
    pub from: String,
    /// Its distance at the left mark.
    pub left: Reading,
    /// Its distance at the right mark.
    pub right: Reading,
}

/// What can be done with the board in hand.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum BoardAction {
    /// A loose board, with or without a house.
    CreateLoose {
        /// The house whose boards and rules apply.
        job: Option<String>,
        /// Its own answers: length, and height and lap where there is no house.
        answers: Vec<Given>,
    },
    /// An answer to one of its own questions.
    Answer {
        /// The board.
        board: String,
        /// The question's field.
        field: String,
        /// The answer as typed.
        text: String,
    },
    /// Answers to a new notch of a block that no plan knows: four readings are enough.
    AddNotch {
        /// The board.
        board: String,
        /// What the tape reads.
        answers: Vec<Given>,
    },
    /// An answer to a question of a notch, planned or taped.
    AnswerNotch {
        /// The board.
        board: String,
        /// The notch, or the penetration that it is planned round.
        notch: String,
        /// The question's field; `gap` for the gap that came out, once the board is cut.
        field: String,
        /// The answer as typed.
        text: String,
    },
    /// Keys of a question of the board or of a notch that are typed and not yet accepted.
    KeepDraft {
        /// The board.
        board: String,
        /// The board or the notch.
        subject: String,
        /// The question's field.
        field: String,
        /// The keys.
        text: String,
    },
    /// A loose board goes on a wall.
    Attach {
        /// The board.
        board: String,
        /// The wall.
        wall: String,
    },
    /// Something is said of a step: ticked, left out or taken back.
    SignStep {
        /// The board.
        board: String,
        /// The step's code.
        step: String,
        /// What is said.
        said: StepSaid,
    },
    /// Every open step that a check stands for is done.
    TickCheck {
        /// The board.
        board: String,
        /// The check's code.
        check: String,
    },
    /// Every step that a check stands for is open again.
    TakeCheckBack {
        /// The board.
        board: String,
        /// The check's code.
        check: String,
    },
    /// What there is to mind at a step, or at the steps of a check, was read: it is shown no more today in this house.
    ReadCautions {
        /// The board.
        board: String,
        /// The code of the step or of the check.
        step: String,
    },
    /// A photo of a step is about to be taken: the view then names the file to fill.
    BeginPhoto {
        /// The board.
        board: String,
        /// The step's code.
        step: String,
    },
    /// The camera is back, or the program is after a stop: what is in the file is looked at and taken in.
    TakePhotoIn {
        /// The board.
        board: String,
        /// The step's code.
        step: String,
        /// Whether the camera is closed, so that a photo that is not whole by now never will be.
        closed: bool,
    },
    /// What was learned of this signer's saw and hands no longer holds.
    ForgetHabit {
        /// The board.
        board: String,
    },
    /// A board that was cut is spoiled: it is planned again, and what is left of the piece is an offcut.
    SayItIsSpoiled {
        /// The board.
        board: String,
        /// How long a usable piece is left, as typed; empty for none.
        left: String,
    },
    /// A loose board like the last loose one: its sizes and its blocks.
    CreateSameAsLast {
        /// The house whose loose boards are meant; absent for those of none.
        job: Option<String>,
    },
}
