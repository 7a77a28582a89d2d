//! Exact lengths, tape divisions, and the one grammar in which people write lengths and numbers.

mod division;
mod exact;
mod language;
mod length;
mod number;
mod parse;
mod show;
#[cfg(test)]
mod spellings;
mod unit;

pub use division::{Division, Rounding};
pub use exact::Exact;
pub use language::Language;
pub use length::Length;
pub use parse::{ParseError, ParseErrorKind, Reader, Written};
pub use show::Show;
pub use unit::Unit;

pub(crate) use length::round_half_away;
