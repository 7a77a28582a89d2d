//! Exact lengths, tape divisions, parsing and showing.

mod division;
mod exact;
mod length;

pub use division::{Division, Rounding};
pub use exact::Exact;
pub use length::Length;
