//! Wall: what is where on it.

use super::parts::{Given, Note, Reading};
use super::shape::ShapeView;

/// A wall to scale and what sits in it.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WallView {
    /// The wall.
    pub wall: String,
    /// The house.
    pub job: String,
    /// What the crew calls it.
    pub name: String,
    /// Its width.
    pub width: Reading,
    /// Its outline, counter-clockwise, in nanometres from the left corner and the base line.
    pub outline: Vec<Corner>,
    /// The bottom edges of its courses, in nanometres above the base line; empty without a pole.
    pub courses: Vec<i64>,
    /// The centres of its studs, in nanometres from the left corner.
    pub studs: Vec<i64>,
    /// Its windows and doors.
    pub openings: Vec<OpeningLine>,
    /// What goes through it.
    pub penetrations: Vec<PenetrationLine>,
    /// Its boards, from the lowest course up and from left to right.
    pub boards: Vec<BoardLine>,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// Changes when the drawing does.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub revision: i64,
    /// The details that every house has, in the order in which a crew comes to them; empty where a wall is not measured.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub details: Vec<DetailLine>,
}

/// A detail of a wall: a corner, an opening's casing, the foot of the siding. It is shown as a penetration is, under
/// this name of its own.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct DetailLine {
    /// What names it in the place of a penetration's id.
    pub detail: String,
    /// What it is, in words.
    pub name: String,
    /// How far it is, in words.
    pub said: String,
}

/// A window or a door.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct OpeningLine {
    /// Its id.
    pub opening: String,
    /// What it is, in words.
    pub name: String,
    /// Where it lies, with its trim: from its leftmost to its rightmost point.
    pub at: Rectangle,
    /// Its corners: the ends of its head, left and right, then those of its sill, right and left; its sides may lean.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub corners: Vec<Corner>,
}

/// What goes through a wall.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PenetrationLine {
    /// Its id.
    pub penetration: String,
    /// What it is, in words.
    pub name: String,
    /// What the boards are cut round: its block, or itself.
    pub at: Rectangle,
    /// Its letter in the wall's drawing.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub letter: String,
    /// What the crew calls its wall.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub wall: String,
    /// Whether its steps are done and the boards up round it.
    #[cfg_attr(feature = "uniffi", uniffi(default = false))]
    pub done: bool,
    /// How far it is, in words.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub said: String,
}

/// A board of the wall.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BoardLine {
    /// Its id.
    pub board: String,
    /// Its course, counted on the pole from one.
    pub course: i64,
    /// How long it is cut.
    pub length: Reading,
    /// Where it lies.
    pub at: Rectangle,
    /// `planned`, `cut` or `fixed`.
    pub state: String,
    /// Whether it is cut round a block, a window or a door.
    pub notched: bool,
    /// Course, state and notch in words.
    pub said: String,
    /// Its true shape: more than one where something goes right through it.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub shapes: Vec<ShapeView>,
    /// How much higher its right end hangs than its left one, in nanometres.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub rise: i64,
}

/// What can be done with a wall.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum WallAction {
    /// A new penetration: kind, size and two offsets are enough.
    AddPenetration {
        /// The wall.
        wall: String,
        /// The answers to its questions.
        answers: Vec<Given>,
    },
    /// A penetration like the last one, at another place.
    AddSameAsLast {
        /// The wall.
        wall: String,
        /// Its center from the left corner, as typed.
        from_left: String,
        /// Its center above the base line, as typed.
        from_base: String,
    },
    /// A penetration is no longer there.
    RemovePenetration {
        /// The wall.
        wall: String,
        /// The penetration.
        penetration: String,
    },
    /// Plan the boards from the pole; what is cut or fixed stays.
    PlanBoards {
        /// The wall.
        wall: String,
    },
}

/// A corner of an outline, in nanometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Corner {
    /// To the right of the left corner.
    pub x: i64,
    /// Above the base line.
    pub y: i64,
}

/// A rectangle on the wall, in nanometres from the left corner and the base line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Rectangle {
    /// Its left edge.
    pub left: i64,
    /// Its right edge.
    pub right: i64,
    /// Its bottom edge.
    pub bottom: i64,
    /// Its top edge.
    pub top: i64,
}
