use crate::measure::Division;
use crate::siding::{CoursePlan, PieceError, Run};
use crate::store::Id;

use super::joints::joint_rules;
use super::plan_error::PlanError;
use super::planned_board::{BoardLayout, PlannedBoard, bevels};
use super::uncovered::uncovered;
use super::wall_board::stay_and_give_way;
use super::{WallSite, Work};

/// The boards of one wall, planned by itself.
#[derive(Clone, Debug)]
pub struct WallPlan {
    /// The new boards, course by course and from left to right.
    pub boards: Vec<PlannedBoard>,
    /// The boards that give way to them: those that are neither cut nor up.
    pub give_way: Vec<Id>,
}

impl WallPlan {
    /// A plan for what no board covers that is cut or up. Lengths are rounded down to the tape.
    ///
    /// # Errors
    /// [`PlanError`].
    pub fn of(work: &Work, wall: &WallSite, division: Division) -> Result<Self, PlanError> {
        work.need_lines()?;
        let (courses, whole) = (wall.courses()?, wall.runs()?);
        let rules = joint_rules(work, wall)?;
        let (stay, give_way) = stay_and_give_way(work.boards(wall.id()));
        let runs: Vec<Run> = whole.flat_map(|(_, run)| uncovered(*run, &stay, &rules)).collect();
        let plan = CoursePlan::from_the_left(&runs, &rules, division).map_err(|error| refused(&runs, error))?;
        let mut boards = Vec::new();
        for piece in &plan.pieces {
            let course = courses.iter().find(|course| course.middle.course == piece.course);
            let (Some(course), Some(run)) = (course, runs.get(piece.run)) else { continue };
            let ends = (piece.from, piece.to);
            // A run of several pieces has joints, which add steps.
            let joint = plan.pieces.iter().filter(|other| other.run == piece.run).count() > 1;
            let layout = BoardLayout::on(course, ends, piece.length, bevels(run, ends, rules.end_gap));
            boards.push(PlannedBoard { layout, joint, cut_from: None });
        }
        if boards.is_empty() && give_way.is_empty() {
            return Err(PlanError::NothingLeft);
        }
        Ok(Self { boards, give_way })
    }
}

fn refused(runs: &[Run], error: PieceError) -> PlanError {
    match error {
        PieceError::NoJoints { run } => PlanError::NoJoints { course: runs.get(run).map_or(0, |run| run.course) },
        error => PlanError::Pieces(error),
    }
}
