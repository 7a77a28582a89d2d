use super::Caution;
use crate::flashing::Layer;

/// What kind of value an installer may enter when ticking a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredKind {
    /// A length off the tape.
    Length,
    /// An angle in degrees.
    Angle,
}

impl MeasuredKind {
    /// The stable text code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Angle => "angle",
        }
    }
}

/// A value that may be measured at a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MeasuredAtStep {
    /// The key of the phrase that says what to measure.
    pub phrase: &'static str,
    /// What kind of value it is.
    pub kind: MeasuredKind,
}

/// One step of the work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// The stable code, as sign-offs keep it. Once in a list.
    pub code: &'static str,
    /// The key of the phrase that says what to do.
    pub text: &'static str,
    /// The key of the phrase that says why.
    pub reason: &'static str,
    /// The layer of the assembly that it puts in place.
    pub puts: Option<Layer>,
    /// What can hurt here.
    pub cautions: Vec<Caution>,
    /// Whether later work covers it, so that nobody can look at it again.
    pub hidden_by_later: bool,
    /// Whether it keeps somebody safe.
    pub keeps_safe: bool,
    /// What may be measured, if anything.
    pub measured: Option<MeasuredAtStep>,
    /// Whether a photo is worth taking.
    pub photo: bool,
}

impl Step {
    pub(super) const fn new(code: &'static str, text: &'static str, reason: &'static str) -> Self {
        Self {
            code,
            text,
            reason,
            puts: None,
            cautions: Vec::new(),
            hidden_by_later: false,
            keeps_safe: false,
            measured: None,
            photo: false,
        }
    }

    pub(super) fn puts(mut self, layer: Layer) -> Self {
        self.puts = Some(layer);
        self
    }

    pub(super) fn hidden(mut self) -> Self {
        self.hidden_by_later = true;
        self
    }

    pub(super) fn safe(mut self) -> Self {
        self.keeps_safe = true;
        self
    }

    pub(super) fn photo(mut self) -> Self {
        self.photo = true;
        self
    }

    pub(super) fn cautions(mut self, cautions: &[Caution]) -> Self {
        self.cautions.extend_from_slice(cautions);
        self
    }

    pub(super) fn length(mut self, phrase: &'static str) -> Self {
        self.measured = Some(MeasuredAtStep { phrase, kind: MeasuredKind::Length });
        self
    }

    pub(super) fn angle(mut self, phrase: &'static str) -> Self {
        self.measured = Some(MeasuredAtStep { phrase, kind: MeasuredKind::Angle });
        self
    }

    /// Whether the step may not be skipped silently.
    pub fn needs_reason(&self) -> bool {
        self.hidden_by_later || self.keeps_safe
    }
}

/// A step whose text and reason are named after its code; the text, or both, may be a variant of its own.
macro_rules! step {
    ($code:literal) => {
        step!($code, $code)
    };
    ($code:literal, $text:literal) => {
        step!($code, $text, $code)
    };
    ($code:literal, $text:literal, $reason:literal) => {
        Step::new($code, concat!("step-", $text), concat!("step-", $reason, "-why"))
    };
}
pub(super) use step;
