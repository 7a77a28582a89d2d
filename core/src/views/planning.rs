//! How far the boards of a whole house are planned.

use super::parts::Reading;

/// How far the planning of a house is.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PlanProgress {
    /// Whether more steps can change nothing.
    pub done: bool,
    /// Whether no plan takes less: proved in whole numbers.
    pub proved: bool,
    /// New boards in the best plan so far.
    pub boards: u32,
    /// Offcuts in it.
    pub offcuts: u32,
    /// The length of all its new boards.
    pub used: Reading,
    /// No plan takes less than this length of new boards.
    pub least: Reading,
    /// How far it is, in words.
    pub text: String,
}
