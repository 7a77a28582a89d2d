//! Rule sets: value, unit, source, edition, edited by whom and why.
//!
//! Every number that the program works with is a [`Rule`]: a default in its source's own unit, with the source, and how
//! well it is known. A [`RuleSet`] holds what a crew changed and why. The board maker's printed instructions and the
//! local code always win (phrase `rule-who-wins`).
//!
//! To add a rule: one line in `table.rs`, its name as `rule-…` in both `rules.ftl`, and, where a published number comes out
//! of it, a check in the workspace's `tests`. A rule must change something that somebody reads: a test of the screens tries it.

pub mod keys;
pub mod plausible;
mod quantity;
mod rule;
mod set;
mod table;
mod wind;

pub use quantity::{Quantity, RuleUnit};
pub use rule::{Family, Rule, Status, UNWRITTEN};
pub use set::{RuleChange, RuleError, RuleSet};
pub use table::RULES;
pub use wind::{Exposure, NailedTo, nailed_to};
