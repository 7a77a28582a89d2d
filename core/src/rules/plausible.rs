//! Whether what somebody typed can be: a question where a value is unlikely, an error where it is impossible.
//!
//! Every quantity of a house has the range that is possible at all and the one that is usual (jobsite habit: common
//! practice, no source), the bounds of the rules of the house, and those that follow from its other values. A value outside
//! is explained with where the bound comes from, and with what was probably meant: a number of feet typed for inches, a
//! fraction without its stroke, two digits that changed places. Nothing here knows a book or a screen.

mod around;
mod bound;
mod doubt;
mod judge;
mod measurand;
mod place;
mod slip;
mod suggestion;
#[cfg(test)]
mod tests;
mod verdict;

pub use around::{Surroundings, TypedForm};
pub use judge::{judge, judge_rule};
pub use measurand::Measurand;
pub use place::{Placed, judge_block, judge_name, judge_place, off_wall, plain_name};
pub use suggestion::{Slip, Suggestion};
pub use verdict::{AllowedLengths, Ground, Reason, Verdict, Why};
