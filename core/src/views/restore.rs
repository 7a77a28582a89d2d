//! Restore: going back to a copy of the book.

/// What going back to a copy would do.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RestoreView {
    /// The copy's file.
    pub copy: String,
    /// Which copy it is: when it was made, or the name of its file.
    pub name: String,
    /// What is in it and what would change, in sentences.
    pub lines: Vec<String>,
}

/// What can be done with a copy of the book.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum RestoreAction {
    /// The copy takes the place of the book; a copy of the book as it is is made before.
    Restore {
        /// The copy's file.
        copy: String,
    },
}
