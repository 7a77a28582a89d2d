//! The core behind UniFFI: conversions only.

#![warn(missing_docs)]

mod book;
mod figure;
mod length;
mod planner;
mod refusal;

pub use book::{Book, BookAccount};
pub use figure::figure;
pub use length::length_text;
pub use planner::Planner;
pub use refusal::Refusal;

uniffi::setup_scaffolding!();

/// The version of the core, such as `0.1.0`.
#[uniffi::export]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}
