use crate::saw::SawError;
use crate::siding::PieceError;

use super::WorkError;

/// Why boards cannot be planned.
#[derive(Debug, thiserror::Error)]
pub enum PlanError {
    /// Something of the house is lacking, or wrong.
    #[error(transparent)]
    Work(#[from] WorkError),
    /// Every run is covered by boards that are cut or up, or there is none.
    #[error("nothing is left to be planned")]
    NothingLeft,
    /// A course whose joints fall on no studs that keep to the rules.
    #[error("course {course} has no studs for joints that keep to the rules")]
    NoJoints {
        /// The course, counted on the pole from one.
        course: u32,
    },
    /// The boards at hand do not suffice.
    #[error("the boards at hand do not suffice")]
    NotEnough,
    /// What a wall's pieces were refused for.
    #[error(transparent)]
    Pieces(PieceError),
    /// What a house's list was refused for.
    #[error(transparent)]
    Saw(SawError),
}
