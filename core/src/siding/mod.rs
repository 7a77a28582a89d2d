//! Courses, story pole, runs, joints and gables.

mod as_built;
mod fit;
mod gable;
mod joint;
mod mark;
mod movement;
mod piece;
mod pitch;
mod pole;
mod run;
mod wall_line;

pub use as_built::{AsBuilt, AsBuiltError, Correction, Needs};
pub use gable::{Gable, GableCourse, GableCourses, GableError, GableRequest};
pub use joint::{Avoid, JointRules};
pub use mark::{Mark, MarkResult, Want};
pub use movement::{STRAIN_LIMIT_PERCENT, gap_takes, movement};
pub use piece::{CoursePiece, CoursePlan, PieceError};
pub use pitch::Pitch;
pub use pole::{COURSES_LIMIT, Mode, Pole, PoleError, PoleRequest};
pub use run::{CourseLine, End, Run};
pub use wall_line::WallLine;
