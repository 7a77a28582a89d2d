//! Ordered steps made from a penetration's or a board's own detail.
//!
//! A list is made from the detail alone: [`PenetrationDetail::steps`], [`DetailSteps::steps`] and [`BoardDetail::steps`]. Each [`Step`] has a
//! stable code, the keys of its text and of its reason, its cautions, and says whether a later step hides it.
//! [`StepSignOff`]s are entries that are never edited; what a step stands at follows from them ([`state_of`]), and
//! [`check`] says whether one more may be added:
//!
//! - Any step may be ticked at any time, in any order, **unless** an earlier step that the rest will hide (or that keeps
//!   somebody safe) is still open: then a reason is needed, and the earlier step stays open for the report to show.
//! - A step that a later one hides, or that keeps somebody safe, is skipped with a reason only. Any other may be skipped
//!   without.
//! - What is done or skipped is undone by a further entry, and may then be ticked again.
//!
//! A sign-off keeps the hash of the detail that it was made under ([`Canonical`]), so that [`differs`] can say that the
//! plan is no longer what was cut or made.

mod board;
mod canonical;
mod caution;
mod detail;
mod penetration;
mod sign;
mod step;

pub use board::BoardDetail;
pub use canonical::Canonical;
pub use caution::Caution;
pub use detail::DetailSteps;
pub use penetration::PenetrationDetail;
pub use sign::{Act, Progress, SignError, StepSignOff, StepStanding, check, differs, progress, state_of};
pub use step::{MeasuredAtStep, MeasuredKind, Step};

#[cfg(test)]
mod tests;
