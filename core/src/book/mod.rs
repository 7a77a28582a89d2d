//! The book as the trade reads it: a house whole in memory, one table of fields, one way to change anything.
//!
//! [`Book`] owns the store. A house is read in a handful of statements, the same number at any age and size of the book,
//! and kept until an answer changes it; no room above names a field by text, sees the store, or knows SQL.

mod board_state;
mod cut_record;
mod cut_shape;
mod field;
mod fields;
mod gaps;
mod house;
mod kept;
mod kind;
mod load;
mod memory;
mod offcut_state;
mod operation;
mod owner;
mod record;
mod settings;
mod store_texts;

pub use board_state::BoardState;
pub use cut_record::{CutNotch, CutRecord};
pub use cut_shape::CutShape;
pub use field::Field;
pub use fields::{
    Allowed, FieldSpec, RULE_FAMILIES, SPOILED_FIELDS, all_fields, field_of, fields_of, written_fields_of,
};
pub use gaps::Gaps;
pub use house::{House, Missing};
pub use kept::{lines_value, offcut_value};
pub use kind::Kind;
pub use offcut_state::OffcutState;
pub use operation::{Operation, OperationKind};
pub use owner::{Book, JobRow};
pub use record::{Measured, Record, field_of_code, sure_code, taped_code};
pub use settings::{DraftKey, Setting};
