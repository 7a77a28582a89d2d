use std::collections::BTreeMap;

use crate::measure::Division;
use crate::saw::{Plan, PlannerProgress, RipPlanner, SawError};
use crate::store::Id;

use super::cut_list::HouseCutList;
use super::plan_error::PlanError;
use super::planned_board::{BoardLayout, CutFrom, PlannedBoard, bevels};
use super::{Work, WorkError};

/// The boards of a whole house planned as one, and bettered step by step.
#[derive(Clone, Debug)]
pub struct HousePlan {
    cuts: HouseCutList,
    planner: RipPlanner,
}

impl HousePlan {
    /// A plan for what no board covers that is cut or up, with the boards at hand. Lengths are rounded down to the tape.
    ///
    /// # Errors
    /// [`PlanError`].
    pub fn of(work: &Work, division: Division) -> Result<Self, PlanError> {
        let cuts = open_cuts(work, division)?;
        let planner = RipPlanner::new(&cuts.list).map_err(|error| refused(&cuts, error))?;
        Ok(Self { cuts, planner })
    }

    /// A plan of the same house as it is now, with what this one found: after one change most joints and boards stay.
    ///
    /// # Errors
    /// [`PlanError`].
    pub fn again(&self, work: &Work, division: Division) -> Result<Self, PlanError> {
        let cuts = open_cuts(work, division)?;
        let planner = RipPlanner::again(&cuts.list, &self.planner).map_err(|error| refused(&cuts, error))?;
        Ok(Self { cuts, planner })
    }

    /// A plan of a house to order for: where the boards at hand do not suffice, as if more were bought.
    ///
    /// # Errors
    /// [`PlanError`]; a house with nothing left to plan has a plan of no boards.
    pub fn buying(work: &Work, division: Division) -> Result<Self, PlanError> {
        let mut cuts = HouseCutList::of(work, division)?;
        let planner = match RipPlanner::new(&cuts.list) {
            Err(SawError::NotEnough) => {
                cuts.list.stock.iter_mut().for_each(|stock| stock.count = None);
                RipPlanner::new(&cuts.list)
            }
            planner => planner,
        };
        let planner = planner.map_err(|error| refused(&cuts, error))?;
        Ok(Self { cuts, planner })
    }

    /// Goes on for about so many steps. The same steps give the same plan everywhere.
    pub fn step(&mut self, effort: u64) -> PlannerProgress {
        self.planner.step(effort)
    }

    /// The best plan so far, on the axis on which the walls stand side by side. The cost of a board is its length: a
    /// billionth is a nanometre.
    pub fn plan(&self) -> Plan {
        self.planner.plan()
    }

    /// The boards that give way to it.
    pub fn give_way(&self) -> &[Id] {
        &self.cuts.give_way
    }

    /// Whether it was made from the house as it is now.
    ///
    /// # Errors
    /// [`WorkError`] where the pole, a wall or the stock is no longer known.
    pub fn is_of(&self, work: &Work, division: Division) -> Result<bool, WorkError> {
        Ok(HouseCutList::of(work, division)? == self.cuts)
    }

    /// The boards of the best plan so far, each with its wall, in the plan's order.
    pub fn boards(&self) -> Vec<(Id, PlannedBoard)> {
        let plan = self.plan();
        let cut_from = self.cut_from(&plan);
        let board = |(at, piece): (usize, &crate::saw::Piece)| {
            let open = self.cuts.runs.get(piece.run)?;
            let ends = (piece.from - open.moved, piece.to - open.moved);
            // A run of several pieces has joints, and a rake or an end out of plumb has a bevel: both add steps.
            let beside = [at.wrapping_sub(1), at + 1].into_iter().filter_map(|other| plan.pieces.get(other));
            let joint = beside.into_iter().any(|other| other.run == piece.run);
            let bevels = bevels(&open.run, ends, self.cuts.list.end_gap);
            let layout = BoardLayout::on(&open.course, ends, piece.length, bevels);
            Some((open.wall, PlannedBoard { layout, joint, cut_from: cut_from.get(&at).copied() }))
        };
        plan.pieces.iter().enumerate().filter_map(board).collect()
    }

    /// What each piece of a plan is cut from. Boards are numbered in cutting order: pieces are in the order of walls and
    /// courses.
    fn cut_from(&self, plan: &Plan) -> BTreeMap<usize, CutFrom> {
        let mut boards: Vec<_> = plan.boards.iter().collect();
        boards.sort_by_key(|board| board.pieces.iter().chain(&board.strips).min());
        let mut cut_from = BTreeMap::new();
        for (number, board) in (self.cuts.last + 1..).zip(boards) {
            let offcut = self.cuts.offcuts.get(board.source).filter(|_| board.offcut).copied();
            let from = |strip| CutFrom { number, stock: board.length, offcut, strip };
            cut_from.extend(board.pieces.iter().map(|piece| (*piece, from(false))));
            cut_from.extend(board.strips.iter().map(|piece| (*piece, from(true))));
        }
        cut_from
    }
}

/// The list of a house in which something is left to plan.
fn open_cuts(work: &Work, division: Division) -> Result<HouseCutList, PlanError> {
    let cuts = HouseCutList::of(work, division)?;
    if cuts.runs.is_empty() { Err(PlanError::NothingLeft) } else { Ok(cuts) }
}

fn refused(cuts: &HouseCutList, error: SawError) -> PlanError {
    match error {
        SawError::NoJoints { run } | SawError::NoStud { run } | SawError::NoStagger { run } => {
            PlanError::NoJoints { course: cuts.runs.get(run).map_or(0, |open| open.run.course) }
        }
        SawError::NoBoard => WorkError::First { field: "stock", title: "ask-stock-length" }.into(),
        SawError::NotEnough => PlanError::NotEnough,
        error => PlanError::Saw(error),
    }
}
