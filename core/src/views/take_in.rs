//! Take in: what a colleague handed over.

/// What taking in a colleague's file would do.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct TakeInView {
    /// The file.
    pub file: String,
    /// Answers in it that are altered or forged, and why, in sentences: with them nothing is taken in.
    pub refused: Vec<String>,
    /// What is in it and what would change, in sentences.
    pub lines: Vec<String>,
    /// Whose answers these are.
    pub senders: Vec<SenderLine>,
    /// That an answer is dated ahead, in a sentence: taking it in says yes to that. Empty where none is.
    pub ahead: String,
    /// Whether it can be taken in now.
    pub ready: bool,
}

/// A device that made some of the answers.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SenderLine {
    /// Its id.
    pub device: String,
    /// Its four words.
    pub words: String,
    /// Whose answers come from it, and whether its words are to be compared, in a sentence.
    pub said: String,
    /// Whether somebody here has compared its words.
    pub trusted: bool,
}

/// What can be done with a colleague's file.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum TakeInAction {
    /// The words of a device are those that it shows of itself.
    Trust {
        /// The file.
        file: String,
        /// The device.
        device: String,
    },
    /// All of it comes into the book; a copy of the book as it is is made before.
    TakeIn {
        /// The file.
        file: String,
        /// Also answers whose clock is more than a day ahead.
        even_ahead: bool,
    },
}
