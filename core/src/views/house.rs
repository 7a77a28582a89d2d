//! House: how far a house is, what comes next, and what is open to the weather now.

use super::parts::{Question, Reading};
use super::place::Place;
use super::wall::PenetrationLine;

/// One house.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct HouseView {
    /// The house.
    pub job: String,
    /// What the crew calls it.
    pub name: String,
    /// What comes next.
    pub next: NextWork,
    /// What comes next, in words.
    pub next_said: String,
    /// What rain would get into now.
    pub open_to_weather: Vec<OpenToWeather>,
    /// The walls and how far each is.
    pub walls: Vec<WallProgress>,
    /// The questions of the house: its boards and whose rules apply.
    pub questions: Vec<Question>,
    /// The one that is asked now: with keys typed and not accepted, else the first that the work needs.
    pub asked: Option<Question>,
    /// The stock lengths.
    pub stock: Vec<StockLine>,
    /// When the book was last copied from this phone, in milliseconds since 1970-01-01 UTC.
    pub copied_at_ms: Option<i64>,
    /// How old that copy is, in words.
    pub copied: String,
    /// The sizes of mounting blocks that the house has: the advice for a penetration chooses among them.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub block_sizes: Vec<BlockSizeLine>,
    /// Whether it has a loose board, so that another one can be the same.
    #[cfg_attr(feature = "uniffi", uniffi(default = false))]
    pub has_loose_board: bool,
    /// Whether it is out of the way.
    #[cfg_attr(feature = "uniffi", uniffi(default = false))]
    pub archived: bool,
    /// What comes after what comes next, where both can be told.
    #[cfg_attr(feature = "uniffi", uniffi(default = None))]
    pub then: Option<NextWork>,
    /// What comes after that, in words; empty where it cannot be told.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub then_said: String,
    /// All boards of all walls.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub boards: u32,
    /// Those that are up.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub boards_up: u32,
    /// How far it is, in words: `Up: 13 of 95`; empty where no board is planned.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub progress: String,
    /// Everything that goes through its walls, wall by wall.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub penetrations: Vec<PenetrationLine>,
}

/// What comes next on a house.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum NextWork {
    /// A question of the house is open.
    AnswerJob {
        /// The question.
        question: Question,
    },
    /// No stock length is known.
    AddStock,
    /// There is no wall yet.
    AddWall,
    /// A question of a wall is open.
    MeasureWall {
        /// The wall.
        wall: String,
        /// What the crew calls it.
        name: String,
        /// The question.
        question: Question,
    },
    /// The story pole has no lines yet.
    LayOutPole,
    /// A wall has no boards yet, or the next one no longer fits it.
    PlanWall {
        /// The wall.
        wall: String,
        /// What the crew calls it.
        name: String,
    },
    /// A penetration's next step.
    MakeTight {
        /// The penetration.
        penetration: String,
        /// What it is.
        name: String,
        /// The code of the step.
        step: String,
        /// What to do.
        text: String,
    },
    /// The next board: to cut, or to fix where it is cut.
    HangBoard {
        /// The board.
        board: String,
        /// The wall.
        wall: String,
        /// What the crew calls the wall.
        name: String,
        /// Its course, counted from one on the pole.
        course: i64,
        /// Whether it is cut already.
        cut: bool,
    },
    /// Nothing is left to do.
    NothingLeft,
}

/// What rain would get into now.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct OpenToWeather {
    /// What is missing.
    pub kind: WeatherKind,
    /// What is missing, and where.
    pub text: String,
    /// The screen to close it on.
    pub place: Place,
}

/// What is missing against rain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum WeatherKind {
    /// A membrane patch is on, and not lapped, rolled or closed on every side.
    PatchNotLapped,
    /// A cut edge is bare.
    EdgeNotPrimed,
    /// A joint has no bead.
    BeadMissing,
    /// The steps at a penetration are done, and no boards are up round it.
    BoardsMissing,
}

/// How far a wall is.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WallProgress {
    /// The wall.
    pub wall: String,
    /// What the crew calls it.
    pub name: String,
    /// Whether every question that the work needs is answered.
    pub measured: bool,
    /// Boards that are planned and not yet cut.
    pub planned: u32,
    /// Boards that are cut and not yet fixed.
    pub cut: u32,
    /// Boards that are fixed.
    pub fixed: u32,
    /// What goes through it.
    pub penetrations: u32,
    /// How many of these have open steps.
    pub penetrations_open: u32,
    /// How far it is, in words.
    pub said: String,
    /// Changes when, and only when, the wall looks different drawn small; zero where it cannot be drawn yet.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub revision: i64,
}

/// A stock length.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StockLine {
    /// Its id.
    pub stock: String,
    /// The length of one board.
    pub length: Reading,
    /// How many there are; absent for as many as are wanted.
    pub count: Option<i64>,
    /// Length and count in words.
    pub said: String,
}

/// A size of mounting block that the house has.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BlockSizeLine {
    /// Its id.
    pub block_size: String,
    /// From left to right.
    pub width: Reading,
    /// From bottom to top.
    pub height: Reading,
    /// Both, as a person reads them.
    pub said: String,
}

/// What can be done with a house.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum HouseAction {
    /// Answers a question of the house.
    Answer {
        /// The house.
        job: String,
        /// The field.
        field: String,
        /// What was typed.
        text: String,
    },
    /// Keeps what is typed so far.
    KeepDraft {
        /// The house.
        job: String,
        /// The field.
        field: String,
        /// What is typed so far.
        text: String,
    },
    /// A further stock length.
    AddStock {
        /// The house.
        job: String,
        /// The length of one board, as typed.
        length: String,
        /// How many there are, as typed; empty for as many as are wanted.
        count: String,
    },
    /// A further wall.
    AddWall {
        /// The house.
        job: String,
        /// What the crew calls it.
        name: String,
    },
    /// Takes a stock length or a wall off the house. It stays in the book, and an undo brings it back.
    RemovePart {
        /// The house.
        job: String,
        /// The stock length, the wall or the size of blocks.
        part: String,
    },
    /// A further size of mounting block.
    AddBlockSize {
        /// The house.
        job: String,
        /// From left to right, as typed.
        width: String,
        /// From bottom to top, as typed.
        height: String,
    },
}
