//! The `figure` questions: one request in, one answer out, no book.
//!
//! A request is one JSON object; so is the answer. Every question declares the shape of its request and of its answer
//! ([`FigureQuestion`]), from which unknown and missing fields are found, the help is printed and the JSON Schemas under
//! `fixtures/schemas` are made. What is wrong with a request is one [`Fault`], with the path of the field.

mod amounts;
mod assembly;
mod bead;
mod block;
mod board;
mod detail;
mod fault;
mod gable;
mod json;
mod length;
mod movement;
mod notch;
mod patch;
mod pieces;
mod pole;
mod question;
mod questions;
mod reply;
mod request;
mod schema;
mod shape;
mod shed;
mod through;

pub use fault::{Fault, FaultCode, Say};
pub use question::FigureQuestion;
pub use questions::{Answered, QUESTIONS, answer, answer_bytes, answer_timed, question};
pub use request::Clock;
pub use schema::{answer_schema, request_schema};

use json::Json;
use reply::Reply;
use request::{Common, Node};
use shape::{FigureField, FigureShape};
