//! Exact lengths, tape divisions, parsing and showing.

mod division;
mod exact;
mod length;
mod parse;
mod show;
mod unit;

pub use division::{Division, Rounding};
pub use exact::Exact;
pub use length::Length;
pub use parse::{ParseError, ParseErrorKind, Reader, Written};
pub use show::Show;
pub use unit::Unit;

pub(crate) use length::round_half_away;
