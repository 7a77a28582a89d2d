//! Copies of the book, and what colleagues hand over to each other: what their screens show, and what a tap leads to.

pub(crate) mod backups;
pub(crate) mod copied;
pub(crate) mod differences;
mod fault;
pub(crate) mod hand_over;
pub(crate) mod restore;
pub(crate) mod take_in;
