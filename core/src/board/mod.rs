//! The true shape of every board: what of a course lies inside the wall's outline, less its gaps and less everything that
//! the boards go round, parted at joints.
//!
//! [`MovedOutline::new`] moves a wall's outline inwards, once for all its courses; [`CourseToHang::boards`] gives the boards of
//! one course. Everything is decided in exact arithmetic and rounded to nanometres once, at the end; the decision record
//! `exact-boards` tells how.

mod course;
mod error;
mod hang;
mod instructions;
mod legs;
mod line;
mod number;
mod obstruction;
mod outline;
mod parts;
mod root;
mod rows;
mod saw_cut;
mod shape;

pub use course::CourseToHang;
pub use error::BoardError;
pub use hang::Hang;
pub use instructions::{EdgeLengths, Instruction, Instructions, Nailing, Section};
pub use legs::Leg;
pub use obstruction::{Lean, Obstruction, ObstructionGaps, Slope};
pub use outline::{MovedOutline, OutlineGaps};
pub use saw_cut::{BoardCorner, BoardEnd, LongEdge, SawCut};
pub use shape::{BoardCut, BoardShape, BoxSide, Rip, ShapeLimits, ShapeWarning};

#[cfg(test)]
mod tests;
