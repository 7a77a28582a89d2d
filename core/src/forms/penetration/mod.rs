//! What is said of a penetration: its sizes, its layers, whether they shed water, and how far it is.

pub(crate) mod block;
pub(crate) mod hood;
pub(crate) mod layers;
pub(crate) mod line;
pub(crate) mod patch;
pub(crate) mod shed;
pub(crate) mod step_sizes;
