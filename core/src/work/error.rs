use crate::board::BoardError;
use crate::book::{Field, FieldSpec, Kind, Missing, field_of};
use crate::rules::RuleError;
use crate::wall::OutlineError;

/// What a result of [`super::Work`] is where it can fail.
pub type Result<T, E = WorkError> = std::result::Result<T, E>;

/// Why something does not follow from a house.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum WorkError {
    /// There is no such thing in the house.
    #[error("{0:?}")]
    Missing(Missing),
    /// Something must be answered first: its field, and the key of its question.
    #[error("{field} must be answered first")]
    First {
        /// The field, as whoever answers it knows it.
        field: &'static str,
        /// The key of its question, or of the name of what is lacking.
        title: &'static str,
    },
    /// A rule that is not there, or is not what it is taken for.
    #[error(transparent)]
    Rule(#[from] RuleError),
    /// The sizes of a wall fit together to no outline.
    #[error(transparent)]
    Outline(#[from] OutlineError),
    /// A wall's peak does not stand above both ends and between them.
    #[error("the peak does not stand above both ends and between them")]
    Peak,
    /// The boards of a wall have no shapes: the gaps are larger than the wall, or a size is beyond what is worked through.
    #[error(transparent)]
    Board(#[from] BoardError),
}

impl From<Missing> for WorkError {
    fn from(missing: Missing) -> Self {
        Self::Missing(missing)
    }
}

impl WorkError {
    /// A field that must be answered first.
    pub fn first(kind: Kind, field: Field) -> Self {
        Self::First { field: field.code(), title: field_of(kind, field).map_or("", |spec: &FieldSpec| spec.title) }
    }
}
