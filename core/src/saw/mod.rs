//! Pieces to boards: where the joints of long runs fall and how all pieces are cut from the boards at hand, planned as
//! one problem, with a lower bound and, where both meet, a proof.
//!
//! A [`CutList`] is the question, a [`Planner`] works on it in slices and gives the best [`Plan`] so far at any time.
//! The design is told in `core/docs/decisions/cutting-plan.md`. A [`RipPlanner`] also uses the strips that are ripped off.

mod apart;
mod arrangement;
mod bound;
mod branch;
mod cut_list;
mod demand;
mod dive;
mod error;
mod exchange;
mod exhaust;
mod factor;
mod fill;
mod first_fit;
mod marks;
mod master;
mod pattern;
mod plan;
mod planner;
mod price;
mod random;
mod repack;
mod reuse;
mod rips;
mod scarce;
mod simplex;
mod spans;
mod stagger;
mod tree;

pub use cut_list::{CutList, JointFree, LowOffcut, Rips, RunToCut, Stock, StudCenters};
pub use error::SawError;
pub use plan::{Piece, Plan, SawnBoard};
pub use planner::{DEFAULT_EFFORT, Planner, PlannerProgress};
pub use rips::RipPlanner;
