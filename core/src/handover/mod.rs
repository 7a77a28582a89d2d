//! What is handed over: a house as a job document, for a colleague, a record or another program.
//!
//! A document is made from what the screens hold, and taken in through the same questions as what a person taps, so it
//! lives with them; this is its door.

pub use crate::screens::document::{job_document, job_document_schema, take_in_document};

/// The demo house as a job document: invented, small, and with everything on it that the trade meets.
pub const DEMO_HOUSE: &str = include_str!("../../../fixtures/demo/house.json");
