//! Hand over: the book, or one house of it, as a file for a colleague.

/// What can be handed over.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct HandOverView {
    /// The house; absent for the whole book.
    pub job: Option<String>,
    /// What the crew calls it; empty for the whole book.
    pub name: String,
    /// The four words of this phone, for the colleague to compare, in a sentence; empty where the book is not this phone's yet.
    pub said: String,
    /// How old the last copy is that left this phone, in words.
    pub copied: String,
    /// What was just done, in sentences.
    pub done: Vec<String>,
}

/// What can be handed over.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum HandOverAction {
    /// A copy of the whole book.
    Book {
        /// Where the file is made; nothing is there, or an older copy of this book.
        path: String,
    },
    /// The answers of a house.
    House {
        /// The house.
        job: String,
        /// Also those that were handed over before.
        all: bool,
        /// Where the file is made; nothing is there, or an older file.
        path: String,
    },
}
