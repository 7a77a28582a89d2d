use thiserror::Error;

use crate::rules::RuleError;
use crate::saw::SawError;

/// Why amounts cannot be given.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum AmountError {
    /// A rule that is not there, or of another kind.
    #[error(transparent)]
    Rule(#[from] RuleError),
    /// Trim or flashing that no stock length can be cut into.
    #[error("the pieces of {material} cannot be cut from its stock: {why}")]
    Saw {
        /// The material's key.
        material: &'static str,
        /// Why.
        why: SawError,
    },
    /// More of a material than can be counted.
    #[error("more of {material} than can be counted")]
    TooMuch {
        /// The material's key.
        material: &'static str,
    },
}
