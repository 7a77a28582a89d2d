//! Differences: what two phones answered differently, each without having seen the other's answer.

use super::place::Place;

/// What was answered differently and nobody here has looked at yet.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct DifferencesView {
    /// What was just done, in sentences.
    pub done: Vec<String>,
    /// Each thing that was answered twice.
    pub differences: Vec<DifferenceLine>,
}

/// Something that was answered twice.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct DifferenceLine {
    /// Its id.
    pub difference: String,
    /// The question, and what it is asked of.
    pub title: String,
    /// The answer that stands, with who gave it and when.
    pub stands: String,
    /// The other one.
    pub other: String,
    /// The screen that asks it.
    pub place: Place,
}

/// What can be done with differences.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum DifferencesAction {
    /// These were looked at: they are shown no longer.
    LookedAt {
        /// Their ids.
        differences: Vec<String>,
    },
}
