//! Views and actions of every screen as plain data.
//!
//! A screen is a file here: `view` makes what is shown, `act` turns a tap into one answer of the book. Nothing below is
//! drawn here, and no shell computes a length, formats a number, picks a warning or knows a rule.
//!
//! `kinds` names the things of the book and their questions, `ask` reads and writes answers, `kept` makes the trade's
//! own types from what the book holds, `parts` are pieces that several views share.

mod ask;
mod context;
mod kept;
mod kinds;
mod parts;
mod problem;
mod trouble;

pub use context::Context;
pub use parts::{AnswerKind, Choice, Note, Question, Reading, Size, Source, StepLine, StepState};
pub use problem::Problem;
