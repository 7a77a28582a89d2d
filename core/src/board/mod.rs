//! The true shape of every board: what of a course lies inside the wall's outline, less its gaps and less everything that
//! the boards go round, parted at joints.
//!
//! [`MovedOutline::new`] moves a wall's outline inwards, once for all its courses; [`Course::boards`] gives the boards of
//! one course. Everything is decided in exact arithmetic and rounded to nanometres once, at the end; the decision record
//! `exact-boards` tells how.

mod course;
mod legs;
mod line;
mod number;
mod outline;
mod parts;
mod root;
mod rows;
mod shape;

pub use course::{BoardError, Course, Obstruction, ObstructionGaps};
pub use legs::Leg;
pub use outline::{MovedOutline, OutlineGaps};
pub use shape::{BoardCut, BoardShape, BoxSide, Rip, ShapeLimits, ShapeWarning};
