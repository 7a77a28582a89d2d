//! Order: what to buy.

use super::parts::Note;

/// What a house takes.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct OrderView {
    /// The house.
    pub job: String,
    /// What the crew calls it.
    pub name: String,
    /// Everything to buy, in the order in which it is loaded.
    pub lines: Vec<OrderLine>,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// The list to share as a message.
    pub text: String,
    /// The list to share as comma-separated values.
    pub csv: String,
    /// The list to share as JSON.
    pub json: String,
}

/// A material.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct OrderLine {
    /// A stable code.
    pub code: String,
    /// What it is called.
    pub name: String,
    /// What goes on the house, with its unit.
    pub net: String,
    /// The allowance for what is spoilt.
    pub waste: String,
    /// Both together.
    pub amount: String,
    /// How many packs that is, rounded up.
    pub packs: i64,
    /// What one pack is.
    pub pack: String,
    /// How many are at hand; absent where nobody counts them.
    pub have: Option<i64>,
    /// How many to buy.
    pub buy: i64,
    /// What the amount was computed from.
    pub from: String,
    /// Packs, waste and what to buy in words.
    pub said: String,
}
