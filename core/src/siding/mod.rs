//! Courses, story pole, runs, joints and gables.

mod fit;
mod mark;
mod pole;

pub use mark::{Mark, MarkResult, Want};
pub use pole::{COURSES_LIMIT, Mode, Pole, PoleError, PoleRequest};
