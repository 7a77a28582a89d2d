//! Penetration: make it weathertight.

use super::parts::{Note, Question, Reading, Size};
use super::steps::{StepLine, StepSaid};

/// One penetration, or a detail that every house has: its layers, its sizes and its steps.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PenetrationView {
    /// The penetration.
    pub penetration: String,
    /// The wall that it goes through.
    pub wall: String,
    /// The house.
    pub job: String,
    /// What it is, in words.
    pub name: String,
    /// The stable code of what it is.
    pub what: String,
    /// Its questions with their answers.
    pub questions: Vec<Question>,
    /// The one that is asked now: with keys typed and not accepted, else the first that the work needs.
    pub asked: Option<Question>,
    /// Its layers, from the wall outward.
    pub layers: Vec<LayerLine>,
    /// Whether those layers shed water; `None` where they cannot be told yet.
    pub shedding: Option<Shedding>,
    /// The sizes of the membrane patch, its hole, slit and cover; empty where they cannot be told yet.
    pub patch: Vec<Size>,
    /// Where the patch ends below, in words; empty where it cannot be told yet.
    pub patch_ends: String,
    /// The sizes of the mounting block; of a split one with the heights of its cut. Empty where there is none.
    pub block: Vec<Size>,
    /// Whether the block is split on a slope.
    pub split: bool,
    /// The sizes of the head flashing; empty where there is none.
    pub head: Vec<Size>,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// Its steps in their order.
    pub steps: Vec<StepLine>,
    /// Changes when one of its drawings does.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub revision: i64,
    /// Another size of the block, or another place of the hole in it, that sits better; absent where it sits well.
    #[cfg_attr(feature = "uniffi", uniffi(default = None))]
    pub advice: Option<BlockAdvice>,
    /// The sizes of a detail that every house has, layer by layer; a penetration's stand above.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub sizes: Vec<Size>,
    /// Its letter in the wall's drawing, its wall, and which of the house's it is: `B, Street gable, 3 of 19`.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub said: String,
}

/// One layer of a penetration.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct LayerLine {
    /// Its number in the drawings, counted from the wall outward from one.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub number: u32,
    /// A stable code.
    pub code: String,
    /// What it is, and what it laps over.
    pub text: String,
}

/// Whether the layers of a penetration shed water.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Shedding {
    /// Whether they do.
    pub sheds: bool,
    /// That they do, or each lap that does not and what to do about it.
    pub lines: Vec<Note>,
}

/// Another size of the block, or the hole at another place in it, that sits better between the courses. The hole in the
/// wall stays where it is.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BlockAdvice {
    /// The block's width.
    pub width: Reading,
    /// Its height.
    pub height: Reading,
    /// The hole's centre above its bottom.
    pub hole_from_bottom: Reading,
    /// What it gains over the block as it is placed, in words.
    pub gain: String,
}

/// What can be done with a penetration.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum PenetrationAction {
    /// An answer to one of its questions.
    Answer {
        /// The penetration.
        penetration: String,
        /// The question's field.
        field: String,
        /// The answer as typed.
        text: String,
    },
    /// Keys that are typed and not yet accepted.
    KeepDraft {
        /// The penetration.
        penetration: String,
        /// The question's field.
        field: String,
        /// The keys.
        text: String,
    },
    /// The same finish and block as another one.
    TakeSameAs {
        /// The penetration.
        penetration: String,
        /// The other.
        like: String,
    },
    /// Something is said of a step: ticked, left out or taken back.
    SignStep {
        /// The penetration.
        penetration: String,
        /// The step's code.
        step: String,
        /// What is said.
        said: StepSaid,
    },
    /// What there is to mind at a step was read: it is shown no more today in this house.
    ReadCautions {
        /// The penetration.
        penetration: String,
        /// The step's code.
        step: String,
    },
    /// A photo of a step is about to be taken: the view then names the file to fill.
    BeginPhoto {
        /// The penetration.
        penetration: String,
        /// The step's code.
        step: String,
    },
    /// The camera is back, or the program is after a stop: what is in the file is looked at and taken in.
    TakePhotoIn {
        /// The penetration.
        penetration: String,
        /// The step's code.
        step: String,
        /// Whether the camera is closed, so that a photo that is not whole by now never will be.
        closed: bool,
    },
    /// The advised block instead of the one that is placed.
    TakeAdvice {
        /// The penetration.
        penetration: String,
    },
}
