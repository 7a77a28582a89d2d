use super::Step;
use crate::measure::Length;
use crate::phrases::Phrases;

/// What a sign-off says of its step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Act {
    /// Done.
    Tick,
    /// Left out.
    Skip,
    /// The sign-off before no longer holds.
    Undo,
}

impl Act {
    /// The stable text code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Tick => "tick",
            Self::Skip => "skip",
            Self::Undo => "undo",
        }
    }

    /// The act of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        [Self::Tick, Self::Skip, Self::Undo].into_iter().find(|act| act.code() == code)
    }
}

/// One entry on a step, never edited.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepSignOff {
    /// The code of the step.
    pub step: String,
    /// What it says.
    pub act: Act,
    /// Who signs.
    pub by: String,
    /// When, in milliseconds since the start of 1970, UTC.
    pub at_ms: i64,
    /// The reason or note; empty for none.
    pub reason: String,
    /// The hash of the detail, rules and readings that it was made under, see [`super::Canonical::hash`].
    pub detail: String,
    /// What was measured, where the step asks for a length.
    pub length: Option<Length>,
    /// What was measured in thousandths of a degree, where the step asks for an angle.
    pub millidegrees: Option<i64>,
    /// The id of a photo; empty for none.
    pub photo: String,
}

/// What a step stands at, with the entry that put it there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StepStanding<'a> {
    /// Nothing was signed.
    Open,
    /// Done.
    Done(&'a StepSignOff),
    /// Left out.
    Skipped(&'a StepSignOff),
    /// It was done or skipped, and that was taken back: open again.
    Undone(&'a StepSignOff),
}

impl StepStanding<'_> {
    /// Whether the step still has to be done.
    pub const fn is_open(self) -> bool {
        matches!(self, Self::Open | Self::Undone(_))
    }

    /// The stable text code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Done(_) => "done",
            Self::Skipped(_) => "skipped",
            Self::Undone(_) => "undone",
        }
    }
}

/// Why a sign-off is not taken.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SignError {
    /// The list has no such step.
    #[error("there is no step {step:?} here")]
    Unknown {
        /// The code that was signed.
        step: String,
    },
    /// Nobody signs.
    #[error("step {step:?} needs the name of who signs")]
    Signer {
        /// The code of the step.
        step: String,
    },
    /// A step that gets hidden, or that keeps somebody safe, is skipped without a reason.
    #[error("step {step:?} is not skipped without a reason")]
    SkipReason {
        /// The code of the step.
        step: String,
    },
    /// An earlier step that gets hidden, or that keeps somebody safe, is still open.
    #[error("before step {step:?} these are open: {earlier:?}; do them, or give a reason")]
    EarlierOpen {
        /// The code of the step.
        step: String,
        /// The codes of the open steps, in order.
        earlier: Vec<&'static str>,
    },
    /// The step is done or skipped already.
    #[error("step {step:?} is signed already; undo it first")]
    Already {
        /// The code of the step.
        step: String,
    },
    /// There is nothing to take back.
    #[error("step {step:?} is open; there is nothing to undo")]
    NothingToUndo {
        /// The code of the step.
        step: String,
    },
}

impl SignError {
    /// The stable code of the fault.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Unknown { .. } => "step-unknown",
            Self::Signer { .. } => "step-signer",
            Self::SkipReason { .. } => "step-skip-reason",
            Self::EarlierOpen { .. } => "step-earlier-open",
            Self::Already { .. } => "step-already",
            Self::NothingToUndo { .. } => "step-nothing-to-undo",
        }
    }

    /// The fault in the user's words; `steps` is the list that was signed in.
    pub fn text(&self, steps: &[Step], phrases: &Phrases) -> String {
        let name = |code: &str| {
            steps
                .iter()
                .find(|step| step.code == code)
                .map_or_else(|| code.to_owned(), |step| phrases.phrase(step.text, &[]))
        };
        match self {
            Self::Unknown { step } => {
                let known = steps.iter().map(|step| step.code).collect::<Vec<_>>().join(", ");
                phrases.phrase("error-step-unknown", &[("step", step.into()), ("known", known.into())])
            }
            Self::Signer { step } => phrases.phrase("error-step-signer", &[("step", name(step).into())]),
            Self::SkipReason { step } => phrases.phrase("error-step-skip-reason", &[("step", name(step).into())]),
            Self::EarlierOpen { earlier, .. } => {
                let open = earlier.iter().map(|code| name(code)).collect::<Vec<_>>().join(" ");
                phrases.phrase("error-step-earlier-open", &[("open", open.into())])
            }
            Self::Already { step } => phrases.phrase("error-step-already", &[("step", name(step).into())]),
            Self::NothingToUndo { step } => {
                phrases.phrase("error-step-nothing-to-undo", &[("step", name(step).into())])
            }
        }
    }
}

/// What a step stands at after `history`, which is in clock order and may hold the entries of other steps too.
pub fn state_of<'a>(step: &str, history: &'a [StepSignOff]) -> StepStanding<'a> {
    match history.iter().rev().find(|sign| sign.step == step) {
        None => StepStanding::Open,
        Some(sign) => match sign.act {
            Act::Tick => StepStanding::Done(sign),
            Act::Skip => StepStanding::Skipped(sign),
            Act::Undo => StepStanding::Undone(sign),
        },
    }
}

/// Whether `sign` may follow `history` in a list of steps; the rules stand on the module.
///
/// # Errors
/// The first of [`SignError`] that applies.
pub fn check(steps: &[Step], history: &[StepSignOff], sign: &StepSignOff) -> Result<(), SignError> {
    let owned = || sign.step.clone();
    let Some(at) = steps.iter().position(|step| step.code == sign.step) else {
        return Err(SignError::Unknown { step: owned() });
    };
    if sign.by.trim().is_empty() {
        return Err(SignError::Signer { step: owned() });
    }
    let open = state_of(&sign.step, history).is_open();
    let silent = sign.reason.trim().is_empty();
    match sign.act {
        Act::Undo if open => Err(SignError::NothingToUndo { step: owned() }),
        Act::Undo => Ok(()),
        Act::Tick | Act::Skip if !open => Err(SignError::Already { step: owned() }),
        Act::Skip => match steps.get(at) {
            Some(step) if silent && step.needs_reason() => Err(SignError::SkipReason { step: owned() }),
            _ => Ok(()),
        },
        Act::Tick => {
            let earlier: Vec<_> = steps
                .iter()
                .take(at)
                .filter(|step| step.needs_reason() && state_of(step.code, history).is_open())
                .map(|step| step.code)
                .collect();
            if silent && !earlier.is_empty() {
                return Err(SignError::EarlierOpen { step: owned(), earlier });
            }
            Ok(())
        }
    }
}

/// Whether what is done was made under another detail than `detail`, the hash of the present one: "differs from what was
/// cut". A step that is open or skipped does not differ.
pub fn differs(step: &str, history: &[StepSignOff], detail: &str) -> bool {
    matches!(state_of(step, history), StepStanding::Done(sign) if sign.detail != detail)
}

/// How far a list of steps is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub done: u32,
    /// Steps skipped.
    pub skipped: u32,
    /// Steps open.
    pub open: u32,
    /// The first open step.
    pub next: Option<&'static str>,
    /// The steps that later work hides and that are open though a later one is done, in order: what the report shows.
    pub passed_over: Vec<&'static str>,
}

/// How far `steps` are after `history`.
pub fn progress(steps: &[Step], history: &[StepSignOff]) -> Progress {
    let mut progress = Progress::default();
    let last_done = steps.iter().rposition(|step| matches!(state_of(step.code, history), StepStanding::Done(_)));
    for (at, step) in steps.iter().enumerate() {
        match state_of(step.code, history) {
            StepStanding::Done(_) => progress.done += 1,
            StepStanding::Skipped(_) => progress.skipped += 1,
            StepStanding::Open | StepStanding::Undone(_) => {
                progress.open += 1;
                progress.next = progress.next.or(Some(step.code));
                if step.needs_reason() && last_done.is_some_and(|last| at < last) {
                    progress.passed_over.push(step.code);
                }
            }
        }
    }
    progress
}
