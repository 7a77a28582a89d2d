//! Saw list: what to cut from what.

use super::parts::{Note, Question, Reading};

/// The boards of a house in cutting order.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SawListView {
    /// The house.
    pub job: String,
    /// What the crew calls it.
    pub name: String,
    /// Whether there is a list; without one it must be planned first.
    pub planned: bool,
    /// How many new boards it takes, against the least possible, in words.
    pub text: String,
    /// New boards, cut and to cut.
    pub used_boards: u32,
    /// The length of all of them.
    pub used: Reading,
    /// No plan takes less than this length.
    pub least: Reading,
    /// No plan takes fewer boards, where all are of one length.
    pub least_boards: Option<u32>,
    /// Whether no plan takes less: proved in whole numbers.
    pub proved: bool,
    /// Boards that are cut, offcuts too.
    pub boards_cut: u32,
    /// How far the cutting is, in words.
    pub progress: String,
    /// How many are cut, in words: what their folded list is called; empty where none is.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub cut_said: String,
    /// The number of the next board to cut.
    pub next: Option<i64>,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// The boards, in cutting order: wall by wall, the lowest course first.
    pub boards: Vec<SawBoardLine>,
    /// The stock lengths.
    pub stock: Vec<StockNeed>,
    /// What is left over from before, the dropped ones last.
    pub offcuts: Vec<OffcutLine>,
    /// The count that is asked now: the one with keys typed and not accepted.
    pub asked: Option<Question>,
}

/// A board and what is cut from it.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SawBoardLine {
    /// The number that it is called by.
    pub number: i64,
    /// Its length.
    pub length: Reading,
    /// Whether it is left over from before.
    pub offcut: bool,
    /// Whether all of it is cut.
    pub cut: bool,
    /// What is cut from it, in the order of the cuts.
    pub pieces: Vec<SawPieceLine>,
    /// What is left of it.
    pub rest: Reading,
    /// Whether the rest is worth keeping.
    pub keep: bool,
    /// The cuts in words: `60 1/2" + 41"`.
    pub cuts: String,
    /// What to do with the rest, in words.
    pub rest_said: String,
    /// The revision of its drawing.
    pub revision: i64,
    /// All of it as plain text, for who stands at the saw without this phone.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub ticket: String,
}

/// A piece and where it goes.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SawPieceLine {
    /// The board of the wall's plan.
    pub board: String,
    /// The length to cut.
    pub length: Reading,
    /// What the crew calls its wall.
    pub wall: String,
    /// Its course.
    pub course: i64,
    /// Its left end from the wall's left corner.
    pub from: Reading,
    /// Where it goes, in words.
    pub said: String,
    /// Whether something is to be cut into it beside its length.
    #[cfg_attr(feature = "uniffi", uniffi(default = false))]
    pub notched: bool,
}

/// How many boards of a stock length the list takes.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StockNeed {
    /// The stock length.
    pub stock: String,
    /// The length of one board.
    pub length: Reading,
    /// How many there are; absent for as many as are wanted.
    pub have: Option<i64>,
    /// How many the list takes.
    pub used: i64,
    /// How many are lacking.
    pub short: i64,
    /// The same in words.
    pub said: String,
    /// The question how many there are.
    pub asks: Question,
}

/// A piece of board left over.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct OffcutLine {
    /// Its id.
    pub offcut: String,
    /// Its length.
    pub length: Reading,
    /// Whether it is at hand: neither cut up nor thrown away.
    pub at_hand: bool,
}

/// What can be done with the saw list.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum SawListAction {
    /// Plan what is not cut yet; boards of the walls' plans give way.
    Plan {
        /// The house.
        job: String,
    },
    /// Look for a better plan, with more effort.
    Improve {
        /// The house.
        job: String,
    },
    /// Everything is cut from a board; a rest worth keeping becomes an offcut.
    MarkCut {
        /// The house.
        job: String,
        /// The board's number.
        number: i64,
    },
    /// An offcut that lies about, as measured.
    AddOffcut {
        /// The house.
        job: String,
        /// Its length, as typed.
        length: String,
    },
    /// An offcut is thrown away.
    DropOffcut {
        /// The house.
        job: String,
        /// The offcut.
        offcut: String,
    },
    /// An offcut is kept after all.
    KeepOffcut {
        /// The house.
        job: String,
        /// The offcut.
        offcut: String,
    },
    /// How many boards of a length there are.
    SayStock {
        /// The house.
        job: String,
        /// The stock length.
        stock: String,
        /// The count, as typed; empty for as many as are wanted.
        count: String,
    },
    /// Keys of a count that are typed and not yet accepted.
    KeepDraft {
        /// The house.
        job: String,
        /// The stock length.
        stock: String,
        /// The keys.
        text: String,
    },
}
