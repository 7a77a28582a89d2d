//! The house, its walls and what sits in them.

mod detail;
mod opening;
mod outline;
mod penetration;
mod studs;

pub use detail::{CornerKind, DetailPlace};
pub use opening::{Abutment, Opening, OpeningKind};
pub use outline::{Outline, OutlineError, Point, Span};
pub(crate) use penetration::coded;
pub use penetration::{Finish, Mounting, PenetrationKind, Shape};
pub use studs::Studs;
