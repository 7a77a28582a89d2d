/// What a text says, before it is put into a language: the key of a phrase and what fills its places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Say {
    /// The phrase's key in `phrases`.
    pub key: &'static str,
    /// Name and text of each place.
    pub places: Vec<(&'static str, String)>,
}

impl Say {
    /// A phrase without places.
    pub const fn new(key: &'static str) -> Self {
        Self { key, places: Vec::new() }
    }

    /// The same phrase with one more place filled.
    #[must_use]
    pub fn with(mut self, place: &'static str, text: impl Into<String>) -> Self {
        self.places.push((place, text.into()));
        self
    }
}

/// The stable code of what is wrong with a request.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FaultCode {
    /// The input is not JSON.
    Json,
    /// A value of the wrong kind.
    Type,
    /// A field that the question does not have.
    UnknownField,
    /// A field that the question needs.
    MissingField,
    /// A field that stands twice.
    DuplicateField,
    /// A length without a unit.
    UnitMissing,
    /// A text that is not a length.
    Length,
    /// A value outside what is allowed.
    Range,
    /// Two fields the wrong way round.
    Order,
    /// A text that is none of those to choose from.
    Choice,
    /// No answer exists.
    Infeasible,
    /// Over a limit.
    TooBig,
    /// The split block's cut meets itself round the pipe: neither piece goes on.
    RingClosed,
    /// The opening of the split block is narrower than the pipe.
    MouthNarrow,
    /// The patch would be seen below the next board.
    PatchShows,
}

impl FaultCode {
    /// The code's text.
    pub const fn text(self) -> &'static str {
        match self {
            Self::Json => "json",
            Self::Type => "type",
            Self::UnknownField => "unknown-field",
            Self::MissingField => "missing-field",
            Self::DuplicateField => "duplicate-field",
            Self::UnitMissing => "unit-missing",
            Self::Length => "length",
            Self::Range => "range",
            Self::Order => "order",
            Self::Choice => "choice",
            Self::Infeasible => "infeasible",
            Self::TooBig => "too-big",
            Self::RingClosed => "ring-closed",
            Self::MouthNarrow => "mouth-narrow",
            Self::PatchShows => "patch-shows",
        }
    }
}

/// What is wrong with a request, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The stable code.
    pub code: FaultCode,
    /// The path of the field, such as `marks[0].at`; empty for the whole input.
    pub field: String,
    /// What is wrong and what is allowed.
    pub say: Say,
}

impl Fault {
    /// A fault at a field.
    pub fn new(code: FaultCode, field: impl Into<String>, say: Say) -> Self {
        Self { code, field: field.into(), say }
    }
}
