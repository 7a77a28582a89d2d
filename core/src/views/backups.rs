//! Backups: the copies that a book keeps of itself.

/// The copies of the book.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BackupsView {
    /// The copies that are kept on this phone, newest first.
    pub copies: Vec<CopyLine>,
    /// How old the last copy is that left this phone, in words.
    pub copied: String,
    /// What is to be known of them, such as that no cloud takes so many bytes.
    pub notes: Vec<String>,
    /// What was just done, in sentences.
    pub done: Vec<String>,
}

/// One copy.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct CopyLine {
    /// Its file.
    pub copy: String,
    /// When it was made, in words.
    pub said: String,
    /// How large it is, in words.
    pub size: String,
}

/// What can be done with the copies of a book.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum BackupsAction {
    /// One more copy, now.
    Keep,
    /// The book and its photos as one file.
    Share {
        /// Where the file is made; nothing is there, or an older file.
        path: String,
    },
}
