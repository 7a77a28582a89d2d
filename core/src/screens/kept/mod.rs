//! What the book holds of a thing, as the rooms of the trade take it: fields become houses, walls and penetrations.

mod clad;
mod detail;
mod facts;
mod job;
mod lines;
mod penetration;
mod wall;

pub(super) use clad::CladWall;
pub(super) use facts::{Facts, first};
pub(super) use job::Job;
pub(super) use lines::{AsBuiltFacts, Course, hung, overlaid};
pub(super) use penetration::{Block, Penetration};
pub(super) use wall::{Wall, head};
