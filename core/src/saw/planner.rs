use super::demand::{Choices, Demand};
use super::fill::Fill;
use super::pattern::{Left, Packing};
use super::random::Random;
use super::{Board, CutList, Plan, SawError, bound, first_fit};

/// The steps that suit a house: a few seconds where a proof is hard, far less where it is not.
pub const DEFAULT_EFFORT: u64 = 4_000;
/// Elementary operations in a step.
const STEP: u64 = 1_000_000;

/// Where the planner stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Whether there is nothing more to do: the plan is proved, or no way to improve it is left.
    pub done: bool,
    /// The cost of the best plan so far, in the cut list's billionths.
    pub cost: u64,
    /// The bound so far, in the cut list's billionths.
    pub bound: u64,
}

/// Works on a cut list in slices; the same steps give the same plan on every machine.
#[derive(Clone, Debug)]
pub struct Planner {
    demand: Demand,
    best: Packing,
    choices: Choices,
    cost: i128,
    bound: i128,
    random: Random,
    work: u64,
}

impl Planner {
    /// Reads the cut list, and makes a first plan and a first bound.
    ///
    /// # Errors
    /// Whatever makes a plan impossible, see [`SawError`].
    pub fn new(list: &CutList) -> Result<Self, SawError> {
        let demand = Demand::new(list)?;
        let bound = bound::by_length(&demand).ok_or(SawError::NotEnough)?;
        let run = demand.walls.iter().find_map(|wall| wall.group.runs.first().copied()).unwrap_or(0);
        let choices = demand.choose(|size| demand.size(size) >> 12).ok_or(SawError::NoStagger { run })?;
        let counts = demand.counts(&choices);
        let best = first_fit::pack(&demand, &counts).ok_or(SawError::NotEnough)?;
        let cost = best.cost(&demand);
        Ok(Self { demand, best, choices, cost, bound, random: Random::new(1), work: 0 })
    }

    /// Goes on for about so many steps.
    pub fn step(&mut self, effort: u64) -> Progress {
        let end = self.work.saturating_add(effort.saturating_mul(STEP));
        let values = self.by_length();
        let counts = self.demand.counts(&self.choices);
        while self.work < end && self.bound < self.cost {
            let fill = Fill { demand: &self.demand, values: &values, nodes: 2_000, skip: 100 };
            let mut left = Left::new(&self.demand);
            self.work += 1000;
            let packing = fill.pack(&counts, &mut left, &mut self.random, &mut self.work);
            if let Some(packing) = packing {
                let cost = packing.cost(&self.demand);
                if cost < self.cost {
                    self.cost = cost;
                    self.best = packing;
                }
            }
        }
        self.progress()
    }

    fn progress(&self) -> Progress {
        Progress {
            done: self.bound >= self.cost,
            cost: self.billionths(self.cost),
            bound: self.billionths(self.bound.min(self.cost)),
        }
    }

    /// The share of a board that each size takes, at the best price for a length.
    fn by_length(&self) -> Vec<f64> {
        let kinds = self.demand.kinds.iter().filter(|kind| !kind.offcut);
        let rate = kinds.map(|kind| kind.cost as f64 / kind.capacity as f64).fold(f64::INFINITY, f64::min);
        let rate = if rate.is_finite() && rate > 0.0 { rate } else { 1e-9 };
        self.demand.sizes.iter().map(|size| *size as f64 * rate).collect()
    }

    fn billionths(&self, cost: i128) -> u64 {
        u64::try_from(cost.max(0) * i128::from(self.demand.unit)).unwrap_or(u64::MAX)
    }

    /// The best plan so far.
    pub fn plan(&self) -> Plan {
        let pieces = self.demand.pieces(&self.choices);
        let mut waiting: Vec<Vec<usize>> = vec![Vec::new(); self.demand.sizes.len()];
        for (index, (_, size)) in pieces.iter().enumerate().rev() {
            if let Some(slot) = waiting.get_mut(*size) {
                slot.push(index);
            }
        }
        let mut sources: Vec<Vec<usize>> =
            self.demand.kinds.iter().map(|kind| kind.sources.iter().rev().copied().collect()).collect();
        let mut boards = Vec::new();
        for board in &self.best.boards {
            let Some(kind) = self.demand.kinds.get(board.kind) else { continue };
            let own = sources.get_mut(board.kind);
            let source = if kind.offcut { own.and_then(Vec::pop) } else { kind.sources.first().copied() };
            let left = crate::measure::Length::from_nm(kind.capacity - board.used(&self.demand));
            boards.push(Board {
                source: source.unwrap_or(0),
                offcut: kind.offcut,
                length: kind.length,
                pieces: board.pieces.iter().filter_map(|size| waiting.get_mut(*size)?.pop()).collect(),
                left,
                keep: self.demand.list.keep_min.is_some_and(|least| left >= least),
            });
        }
        let progress = self.progress();
        Plan {
            pieces: pieces.into_iter().map(|(piece, _)| piece).collect(),
            count: boards.iter().filter(|board| !board.offcut).count(),
            boards,
            cost: progress.cost,
            bound: progress.bound,
            proved: progress.cost == progress.bound,
        }
    }
}
