//! The steps of a penetration or a board, and what a person says of one.

use super::parts::{Note, Question, Reading, Size};

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
    /// The sizes that it needs, and no others.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub sizes: Vec<Size>,
    /// The question whose answer signs it, so that its tick asks for a number; absent where a mere tick does.
    #[cfg_attr(feature = "uniffi", uniffi(default = None))]
    pub opens: Option<Question>,
    /// The code of the layer that it works on, to be picked out in the drawing; empty where it is none.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub layer: String,
}

/// What a person says of a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum StepHow {
    /// Done.
    Tick,
    /// Left out; where later work hides the step, the note must say why.
    Skip,
    /// What was said before no longer holds.
    TakeBack,
}

/// Everything that a person says of a step; only `how` is needed.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StepSaid {
    /// Done, left out or taken back.
    pub how: StepHow,
    /// A note or a reason; may be empty.
    pub note: String,
    /// What was measured, as typed: a length with its unit, or degrees; may be empty.
    pub measured: String,
    /// The id of a photo that the phone has kept.
    pub photo: Option<String>,
}
