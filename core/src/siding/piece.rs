use thiserror::Error;

use super::joint::{self, JointRules};
use super::run::Run;
use crate::measure::{Division, Length, Rounding};

/// One board to cut, or part of one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CoursePiece {
    /// The run's place in the list of runs.
    pub run: usize,
    /// The run's course.
    pub course: u32,
    /// The piece's left end on the wall.
    pub from: Length,
    /// The piece's right end on the wall.
    pub to: Length,
    /// Its length to cut, rounded down.
    pub length: Length,
}

/// The pieces of a list of runs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CoursePlan {
    /// The pieces, run by run and from left to right.
    pub pieces: Vec<CoursePiece>,
    /// Whether the plan is proven to be the best there is.
    pub proved: bool,
    /// A lower bound on the new boards of any plan, where one was worked out.
    pub bound: Option<u64>,
}

/// Why a run cannot be pieced.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum PieceError {
    /// The run's place in the list.
    #[error("run {run} has no studs for joints that keep to the rules")]
    NoJoints {
        /// The run's place in the list of runs.
        run: usize,
    },
    /// A gap, the stagger or the least piece is under zero, or the stock is not over zero.
    #[error("gaps, stagger and least piece must be at least zero and the stock over zero")]
    Rules,
}

impl CoursePlan {
    /// Pieces for each run in turn, every board cut as long as the stock and the studs allow, from the left. It keeps to
    /// all the rules and takes the fewest joints for each run by itself, but claims no optimum over the house: an earlier
    /// run never makes way for a later one.
    ///
    /// # Errors
    /// [`PieceError`] for the first run that has no joints that keep to the rules.
    pub fn from_the_left(runs: &[Run], rules: &JointRules, division: Division) -> Result<Self, PieceError> {
        if !rules.make_sense() {
            return Err(PieceError::Rules);
        }
        let mut placed: Vec<Vec<Length>> = Vec::with_capacity(runs.len());
        let mut pieces = Vec::new();
        for (index, run) in runs.iter().enumerate() {
            let near: Vec<Length> = runs
                .iter()
                .zip(&placed)
                .filter(|(other, _)| other.course.abs_diff(run.course) == 1)
                .filter(|(other, _)| other.from() < run.to() && run.from() < other.to())
                .flat_map(|(_, joints)| joints.iter().copied())
                .collect();
            let joints = joint::place(run, rules, &near).ok_or(PieceError::NoJoints { run: index })?;
            // An odd gap leaves its last nanometre to the right of the stud.
            let half = Length::from_nm(rules.joint_gap.nm() / 2);
            let mut from = run.from() + rules.end_gap;
            for end in joints.iter().map(|&joint| joint - half).chain([run.to() - rules.end_gap]) {
                if end > from {
                    let length = division.round(end - from, Rounding::Down);
                    pieces.push(CoursePiece { run: index, course: run.course, from, to: end, length });
                }
                from = end + rules.joint_gap;
            }
            placed.push(joints);
        }
        Ok(Self { pieces, proved: false, bound: None })
    }
}
