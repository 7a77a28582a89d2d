//! Jobs: which house.

/// The houses of a book.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct JobsView {
    /// Every house, the archived ones last.
    pub jobs: Vec<JobLine>,
    /// How old the last copy of the book is, in words.
    pub copied: String,
    /// That no copy could be kept when the program was last left, and why; empty where one was.
    pub copy_failed: String,
    /// How many things were answered differently on two phones and not looked at yet, in words; empty where none were.
    pub differences: String,
    /// What was found wrong with the book, saved and lost, in sentences: shown until somebody says that it was read.
    pub account: Vec<String>,
    /// Whether the demo house is among them: it is not offered twice.
    #[cfg_attr(feature = "uniffi", uniffi(default = false))]
    pub has_demo: bool,
}

/// One house.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct JobLine {
    /// Its id.
    pub job: String,
    /// What the crew calls it.
    pub name: String,
    /// Whether it is out of the way.
    pub archived: bool,
    /// How many walls it has.
    pub walls: u32,
    /// How many walls it has, in words.
    pub said: String,
}

/// What can be done with the houses of a book. Nothing is deleted.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum JobsAction {
    /// A new house, also with boards, rules and stock of another.
    Create {
        /// What the crew calls it.
        name: String,
        /// The house to take boards, rules and stock from.
        like: Option<String>,
    },
    /// Another name.
    Rename {
        /// The house.
        job: String,
        /// Its new name.
        name: String,
    },
    /// Out of the way; its data stays.
    Archive {
        /// The house.
        job: String,
    },
    /// Back again.
    BringBack {
        /// The house.
        job: String,
    },
    /// The demo house, taken in as a further house.
    OpenDemo,
    /// The account of what was saved and what was lost was read: it goes.
    Acknowledge,
}
