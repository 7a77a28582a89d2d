//! The house, its walls and what sits in them.

mod penetration;

pub use penetration::{Finish, Mounting, PenetrationKind, Shape};
