//! What is drawn: one list of lines, fills, hatches and texts, from which the phones and SVG are drawn.
//!
//! Everything is laid out here, in dp for one frame, from what the records of `views` hold: the marks of a board, the
//! rectangles of a wall, the lines of a pole. No other geometry is computed. Colours are roles; a shell gives each the
//! colour of its theme. Texts are laid out with the widths of the one bundled font (`font`), never overlap and never run
//! off the drawing.
//!
//! `sheet` is a drawing in the making, `dimension` the lines of measure on it; a file for each thing that is drawn
//! (`board` …) puts it there; `pack` turns the list into the bytes of `core/docs/drawing-format.md`.

mod block;
mod board;
mod clip;
mod dimension;
mod elevation;
mod flag;
mod font;
mod layers;
mod pack;
mod page;
mod pole;
mod role;
mod saw_pattern;
mod sheet;
mod stroke;
mod svg;
mod tape_place;

pub(crate) use block::BlockDrawing;
pub(crate) use board::{BoardDrawing, Side};
pub(crate) use elevation::{Elevation, Hit, letter};
pub use font::Weight;
pub(crate) use layers::{Layers, Look};
pub use pack::{PackError, Packed, VERSION, pack, unpack};
pub(crate) use page::Page;
pub(crate) use pole::Stick;
pub use role::{Dash, Role};
pub(crate) use saw_pattern::SawPattern;
pub use stroke::{Anchor, Spot, Stroke};
pub use svg::{Theme, svg};
pub(crate) use tape_place::{TapePlace, has_tape_place};

#[cfg(test)]
mod tests;
