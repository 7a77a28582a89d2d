//! A screen and what it is about.

use super::new::NewThing;

/// A screen and what it is about: ids as text.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// Which house.
    Jobs,
    /// How far a house is and what is next.
    House {
        /// The house.
        job: String,
    },
    /// What is where on a wall.
    Wall {
        /// The wall.
        wall: String,
    },
    /// Setting up a wall, question by question.
    Measure {
        /// The wall.
        wall: String,
    },
    /// The board in hand.
    Board {
        /// The board.
        board: String,
    },
    /// A penetration, or a detail that every house has, made weathertight.
    Penetration {
        /// The penetration; or what names a detail: the wall, the opening or the abutment, a slash, and its place.
        penetration: String,
    },
    /// Where the lines go.
    Pole {
        /// The house.
        job: String,
    },
    /// Which numbers apply.
    Rules {
        /// The house.
        job: String,
    },
    /// Who holds this phone, and how it speaks.
    Settings,
    /// What happened.
    DoneList {
        /// The house; absent for the whole book.
        job: Option<String>,
    },
    /// A new thing in the making.
    New {
        /// What is being made.
        what: NewThing,
        /// The house, wall or board that it belongs to; empty where it belongs to none.
        parent: String,
    },
    /// What to cut from what.
    SawList {
        /// The house.
        job: String,
    },
    /// What to buy.
    Order {
        /// The house.
        job: String,
    },
    /// The copies that the book keeps of itself.
    Backups,
    /// Going back to a copy.
    Restore {
        /// The copy's file.
        copy: String,
    },
    /// A file for a colleague.
    HandOver {
        /// The house; absent for the whole book.
        job: Option<String>,
    },
    /// A colleague's file.
    TakeIn {
        /// The file.
        file: String,
    },
    /// What was answered differently on two phones.
    Differences,
}
