//! Questions as a view shows them, what a typed answer says, and how an answer is written: what screens and documents share.
//!
//! [`lookup`] finds the house that something is about and what follows from it, [`ask`] reads and writes answers,
//! [`signing`] ticks steps, [`context`] is who asks and how to speak, [`error`] puts into words why something could not be done.

pub(crate) mod ask;
pub(crate) mod board_shape;
pub(crate) mod cautions;
pub(crate) mod context;
pub(crate) mod error;
pub(crate) mod instructions;
pub(crate) mod lookup;
pub(crate) mod misfits;
pub(crate) mod moment;
pub(crate) mod offer;
pub(crate) mod parts;
pub(crate) mod penetration;
pub(crate) mod photo;
pub(crate) mod place;
pub(crate) mod plausible;
pub(crate) mod quantity;
pub(crate) mod signing;
pub(crate) mod step_asks;
pub(crate) mod stored_phrase;
