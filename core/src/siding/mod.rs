//! Courses, story pole, runs, joints and gables.

mod fit;
mod gable;
mod mark;
mod pitch;
mod pole;

pub use gable::{Gable, GableCourse, GableCourses, GableError, GableRequest};
pub use mark::{Mark, MarkResult, Want};
pub use pitch::Pitch;
pub use pole::{COURSES_LIMIT, Mode, Pole, PoleError, PoleRequest};
