//! Lapwright: the core that does all the thinking for fibre-cement lap siding at penetrations.
//!
//! From the ground up: `measure`, `wall`, `siding`, `board`, `notch`, `saw`, `rules`, `flashing`, `steps` and `amounts`
//! are pure functions over plain data; `phrases` has every text. `store` keeps entries and knows no trade; `book` reads a
//! house from it, typed and whole; `work` is what follows from a house. `views` is what crosses to a shell, `drawing` draws
//! it, `forms` are its questions, `handover` takes documents in and out, `exchange` copies of the book and what colleagues
//! give each other. `screens` makes views and carries out taps; `figure` answers single questions.

pub mod amounts;
pub mod board;
pub mod book;
pub mod drawing;
mod exchange;
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
