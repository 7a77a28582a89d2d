//! Lapwright: the core that does all the thinking for fibre-cement lap siding at penetrations.
//!
//! The rooms from `measure` to `amounts` are pure functions over plain data; `store` keeps the book; `views` is what
//! crosses to a shell; `screens` turns taps into entries and entries into views; `figure` answers single questions.

pub mod amounts;
pub mod board;
pub mod book;
pub mod drawing;
pub mod figure;
pub mod flashing;
mod forms;
pub mod handover;
pub mod measure;
pub mod notch;
pub mod phrases;
pub mod rules;
pub mod saw;
pub mod screens;
pub mod siding;
pub mod steps;
pub mod store;
pub mod views;
pub mod wall;
pub mod work;

#[cfg(feature = "uniffi")]
uniffi::setup_scaffolding!();
