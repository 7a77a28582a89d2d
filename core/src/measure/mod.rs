//! Exact lengths, tape divisions, and the one grammar in which people write lengths and numbers.
//!
//! ```
//! use lapwright::measure::{Language, Length, Reader, Show, Unit};
//!
//! let reader = Reader { unit: Some(Unit::Inch), language: Language::English };
//! let length = reader.length("9'-4 3/8\"")?;
//! assert_eq!(length, Length::from_inches_64(112, 24));
//! assert_eq!(length.nm(), 2_854_325_000);
//! assert_eq!(Show::FeetInches(16).text(length), "9' 4 3/8\"");
//! # Ok::<(), lapwright::measure::ParseError>(())
//! ```

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
pub use parse::{ParseError, ParseErrorKind, Reader, WrittenLength};
pub use show::Show;
pub use unit::Unit;

pub(crate) use length::round_half_away;
