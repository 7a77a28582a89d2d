use super::font::Weight;
use super::role::{Dash, Role};

/// A point of a drawing in dp, right of its left and below its top edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// To the right.
    pub x: f32,
    /// Down.
    pub y: f32,
}

/// Which part of a text lies at its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Where it begins.
    Start,
    /// Its middle.
    Middle,
    /// Where it ends.
    End,
}

/// One thing that is drawn; the first of a list lies lowest.
#[derive(Clone, Debug, PartialEq)]
pub enum Stroke {
    /// A filled polygon without an outline.
    Fill {
        /// What it stands for.
        role: Role,
        /// Its corners; the last one joins the first.
        corners: Vec<Spot>,
    },
    /// A line through points, with flat ends and mitred corners.
    Line {
        /// What it stands for.
        role: Role,
        /// How it is broken.
        pattern: Dash,
        /// How thick it is, in dp.
        thickness: f32,
        /// Whether the last point joins the first.
        closed: bool,
        /// The points.
        points: Vec<Spot>,
    },
    /// A polygon hatched at 45 degrees, rising to the right: the lines `x + y = n * spacing * sqrt(2)` for whole `n`.
    Hatch {
        /// What it stands for.
        role: Role,
        /// From line to line, square to them, in dp.
        spacing: f32,
        /// How thick the lines are, in dp.
        thickness: f32,
        /// The corners of what is hatched; the last one joins the first.
        corners: Vec<Spot>,
    },
    /// A text of one line.
    Text {
        /// What it stands for.
        role: Role,
        /// How heavy it is.
        weight: Weight,
        /// Which part of it lies at `at`.
        anchor: Anchor,
        /// A point of its base line.
        at: Spot,
        /// How high it is set, in dp.
        em: f32,
        /// How far it is turned about `at`, in degrees counter-clockwise.
        turn: f32,
        /// How wide it is, in dp.
        width: f32,
        /// What it says.
        text: String,
    },
}
