//! What a shell asks to be drawn, and the drawing that it gets.

use super::place::Place;

/// What is drawn: ids as text.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Subject {
    /// A board's face with its marks.
    BoardFace {
        /// The board.
        board: String,
    },
    /// A board's back with its marks, mirrored.
    BoardBack {
        /// The board.
        board: String,
    },
    /// A wall to scale.
    Elevation {
        /// The wall.
        wall: String,
    },
    /// The stick that carries the course lines.
    PoleStick {
        /// The house.
        job: String,
    },
    /// A mounting block: its blank with the hole, and its section with the cut.
    BlockSplit {
        /// The penetration.
        penetration: String,
    },
    /// A board of the saw list with its cuts.
    SawPattern {
        /// The house.
        job: String,
        /// The board's number.
        number: i64,
    },
    /// A wall small, with the boards by their state.
    WallSmall {
        /// The wall.
        wall: String,
    },
    /// Where to put the tape for a question, on a plain wall or board.
    TapePlace {
        /// The question's `picture`.
        picture: String,
    },
    /// The layers of a penetration, seen from outside.
    LayersFront {
        /// The penetration.
        penetration: String,
        /// The code of the layer that is picked out; empty for none.
        layer: String,
    },
    /// The layers of a penetration in a section through its middle, the wall at the left.
    LayersSection {
        /// The penetration.
        penetration: String,
        /// The code of the layer that is picked out; empty for none.
        layer: String,
    },
}

/// The frame that a drawing is laid out for: sizes in dp, as the shell will really draw them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Frame {
    /// How wide the drawing is.
    pub width_dp: f32,
    /// How high it may come out.
    pub height_dp: f32,
    /// The text size of answers.
    pub answer_dp: f32,
    /// The text size of labels.
    pub label_dp: f32,
    /// The text size of less weighty texts.
    pub small_dp: f32,
    /// Whether the left hand holds the phone.
    pub left_hand: bool,
}

/// A drawing: strokes as the bytes of `core/docs/drawing-format.md`, and the texts that they name.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Drawing {
    /// The same as in the view that it belongs to; changes when, and only when, what is drawn does.
    pub revision: i64,
    /// The frame's width.
    pub width_dp: f32,
    /// What it takes of the frame's height.
    pub height_dp: f32,
    /// The strokes.
    pub bytes: Vec<u8>,
    /// The texts that the strokes name by number.
    pub texts: Vec<String>,
    /// What a screen reader says.
    pub spoken: String,
    /// What a tap hits; where several hold a point, the first.
    pub targets: Vec<Target>,
}

/// A rectangle of a drawing, in dp from its left and top edge, and where a tap on it leads.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Target {
    /// Its left edge.
    pub left: f32,
    /// Its top edge.
    pub top: f32,
    /// Its right edge.
    pub right: f32,
    /// Its bottom edge.
    pub bottom: f32,
    /// Where a tap leads.
    pub place: Place,
    /// What a screen reader says of it.
    pub spoken: String,
}
