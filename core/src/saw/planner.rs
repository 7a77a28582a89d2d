use super::demand::{Choices, Demand};
use super::dive::{self, Dive};
use super::exchange::Exchange;
use super::fill::Fill;
use super::master::{ColumnPart, Master};
use super::pattern::{Left, Packing, Pattern};
use super::random::Random;
use super::tree::Tree;
use super::{CutList, Plan, SawError, SawnBoard, bound, exhaust, first_fit, repack, reuse, scarce};

/// The steps that suit a house: a few seconds where a proof is hard, far less where it is not.
pub const DEFAULT_EFFORT: u64 = 4_000;
/// Elementary operations in a step.
const STEP: u64 = 1_000_000;

/// How many pairs of boards exchange pieces between times.
const PAIRS: usize = 2_000;
/// How often boards are packed anew once that has made the plan cheaper.
const KEEN: usize = 400;

/// Work on branches before boards are packed anew.
const BRANCH: u64 = 50 * STEP;
/// With more sizes than these the programme is first solved in spans.
const MANY: usize = 120;
/// So many spans, then more, then each size for itself.
const LEVELS: [Option<usize>; 3] = [Some(12), Some(50), None];

/// Where the planner stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlannerProgress {
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
    /// Of the best plan, in the demand's cost unit.
    cost: i128,
    bound: i128,
    /// Whether there is a bound at all.
    bounded: bool,
    random: Random,
    work: u64,
    stage: Stage,
    master: Option<Master>,
    tree: Option<Tree>,
    /// What a piece of each size is worth.
    values: Vec<f64>,
    rounds: usize,
    /// How fine the programme is.
    level: usize,
    /// Boards of the first fillings: columns to start with.
    seeds: Vec<Pattern>,
    /// Work on columns since boards were last packed anew.
    columns: u64,
}

#[derive(Clone, Debug)]
enum Stage {
    /// Boards filled one after the other, by length.
    Fill,
    /// Columns for the bound.
    Columns,
    /// Other joints are chosen where there are any.
    Choose,
    /// Rounding for the joints chosen.
    Dive(Box<Dive>, Choices),
    /// Branches, up to so much work.
    Branch(u64),
    /// Some boards packed anew, so many times.
    Repack(usize),
}

impl Planner {
    /// Reads the cut list, and makes a first plan and a first bound.
    ///
    /// # Errors
    /// Whatever makes a plan impossible, see [`SawError`].
    pub fn new(list: &CutList) -> Result<Self, SawError> {
        Self::of(Demand::new(list)?)
    }

    /// The same for what may be less than the list asks for.
    pub(super) fn of(demand: Demand) -> Result<Self, SawError> {
        // Where there are always more boards, the first bound waits for the first step.
        let endless = demand.kinds.iter().any(|kind| kind.count.is_none());
        let bound = if endless { None } else { Some(bound::by_length(&demand).ok_or(SawError::NotEnough)?) };
        let run = demand.walls.iter().find_map(|wall| wall.group.runs.first().copied()).unwrap_or(0);
        let choices = demand.start(|size| demand.size(size) >> 12).ok_or(SawError::NoStagger { run })?;
        let counts = demand.counts(&choices);
        let values = dive::by_length(&demand);
        let mut random = Random::new(1);
        let (best, choices) = match first_fit::pack(&demand, &counts) {
            Some(best) => (best, choices),
            None => {
                let found = scarce::first(&demand, &choices, &values, &mut random);
                found.ok_or(SawError::NotEnough)?
            }
        };
        let cost = best.cost(&demand);
        Ok(Self {
            demand,
            best,
            choices,
            cost,
            bound: bound.unwrap_or(0),
            bounded: bound.is_some(),
            random,
            work: 0,
            stage: Stage::Fill,
            master: None,
            tree: None,
            values,
            rounds: 0,
            level: 0,
            seeds: Vec::new(),
            columns: 0,
        })
    }

    /// The same with what another planner found for much the same list: joints of runs that have not changed stay, and so
    /// do boards whose pieces are all still wanted. One change in a house is planned in a few milliseconds that way.
    ///
    /// # Errors
    /// As [`Planner::new`].
    pub fn again(list: &CutList, before: &Self) -> Result<Self, SawError> {
        Self::of_again(Demand::new(list)?, before)
    }

    /// The same for what may be less than the list asks for.
    pub(super) fn of_again(demand: Demand, before: &Self) -> Result<Self, SawError> {
        let mut planner = Self::of(demand)?;
        let choices = reuse::choices(&planner.demand, &before.demand, &before.choices, &planner.choices);
        let kept = reuse::boards(&planner.demand, &before.demand, &before.best, &choices);
        planner.seeds.extend(kept.boards.iter().cloned());
        let fill = Fill { demand: &planner.demand, values: &planner.values, nodes: 1_500, skip: 0 };
        let tail = fill.pack(&kept.counts, &mut kept.left.clone(), &mut planner.random, &mut planner.work);
        if let Some(mut packing) = tail {
            packing.boards.splice(0..0, kept.boards);
            packing.shrink(&planner.demand, Left::new(&planner.demand));
            planner.take(Some(packing), &choices);
        }
        if planner.bound < planner.cost {
            planner.repack(100);
        }
        Ok(planner)
    }

    /// Goes on for about so many steps.
    pub fn step(&mut self, effort: u64) -> PlannerProgress {
        if !std::mem::replace(&mut self.bounded, true) {
            self.bound = bound::by_length(&self.demand).unwrap_or(0);
            self.work += 1_000 + self.demand.walls.iter().map(super::demand::TiedRuns::effort).sum::<u64>();
        }
        let end = self.work.saturating_add(effort.saturating_mul(STEP));
        while self.work < end && self.bound < self.cost {
            self.work += 1_000;
            self.advance();
        }
        self.progress()
    }

    fn advance(&mut self) {
        let stage = std::mem::replace(&mut self.stage, Stage::Choose);
        self.stage = match stage {
            Stage::Fill => self.fill(),
            Stage::Columns => self.columns(),
            Stage::Choose => self.choose(),
            Stage::Dive(dive, choices) => self.dive(dive, choices),
            Stage::Branch(end) => self.branch(end),
            Stage::Repack(times) => self.repack(times),
        };
    }

    fn fill(&mut self) -> Stage {
        let counts = self.demand.counts(&self.choices);
        let skip = [0, 50, 150].get(self.rounds).copied().unwrap_or(200);
        let fill = Fill { demand: &self.demand, values: &self.values, nodes: 400, skip };
        let found = fill.pack(&counts, &mut Left::new(&self.demand), &mut self.random, &mut self.work);
        let choices = self.choices.clone();
        self.seeds.extend(found.iter().flat_map(|packing| packing.boards.iter().cloned()));
        self.take(found, &choices);
        self.rounds += 1;
        if self.rounds < 4 {
            return Stage::Fill;
        }
        self.rounds = 0;
        let seeds = self.seeds.clone();
        self.level = if self.demand.sizes.len() > MANY { 0 } else { LEVELS.len() - 1 };
        self.master = Master::new(&self.demand, &self.decided(), !self.demand.walls.is_empty(), &seeds, self.spans());
        Stage::Repack(200)
    }

    /// How many pieces there are of each size, where no joints are open.
    fn decided(&self) -> Vec<u32> {
        if self.demand.walls.is_empty() { self.demand.counts(&self.choices) } else { Vec::new() }
    }

    /// How many spans the programme has now; `None` where each size stands for itself.
    fn spans(&self) -> Option<usize> {
        LEVELS.get(self.level).copied().flatten()
    }

    fn columns(&mut self) -> Stage {
        let Some(master) = &mut self.master else { return Stage::Repack(1_000) };
        let before = master.work;
        master.advance(&self.demand);
        self.work += master.work - before;
        self.bound = self.bound.max(master.bound);
        if !master.done {
            // Where columns take long, boards are packed anew in between.
            self.columns += master.work - before;
            if self.columns > 20 * STEP {
                self.columns = 0;
                return Stage::Repack(200);
            }
            return Stage::Columns;
        }
        self.values = dive::mixed(&self.demand, &master.prices);
        self.bound = bound::reachable(&self.demand, self.bound, self.cost);
        if self.bound < self.cost && !master.full() {
            self.level += 1;
            let start: Vec<Pattern> = self.seeds.iter().chain(&self.best.boards).cloned().collect();
            let finer = self.master.as_ref();
            let finer = finer.and_then(|master| master.refine(&self.demand, &self.decided(), &start, self.spans()));
            if finer.is_some() {
                self.master = finer;
                return Stage::Columns;
            }
        }
        if self.bound < self.cost {
            let before = self.work;
            self.work = 0;
            if let Some(found) = exhaust::exhaust(&self.demand, self.cost, &mut self.work) {
                if let Some((choices, packing)) = found {
                    self.take(Some(packing), &choices);
                }
                self.bound = self.cost;
            }
            self.work += before;
        }
        self.tree =
            self.master.as_ref().filter(|master| master.full()).and_then(|master| Tree::new(&self.demand, master));
        Stage::Choose
    }

    /// Joints by the programme's prices, later ones with some noise, or the best so far again.
    fn choose(&mut self) -> Stage {
        self.rounds += 1;
        if self.rounds.is_multiple_of(2) && self.tree.as_ref().is_some_and(|tree| !tree.over()) {
            return Stage::Branch(self.work + BRANCH);
        }
        if self.demand.walls.is_empty() {
            return match &self.master {
                Some(master) if master.full() => {
                    let counts = self.demand.counts(&self.choices);
                    let noise = if self.rounds == 1 { 0.0 } else { 0.4 };
                    Stage::Dive(Box::new(Dive::new(&self.demand, master.clone(), counts, noise)), self.choices.clone())
                }
                _ => Stage::Repack(1_000),
            };
        }
        let mut tried: Vec<(i128, Choices, Packing)> = Vec::new();
        for _ in 0..6 {
            let Some(choices) = self.draw() else { continue };
            let counts = self.demand.counts(&choices);
            for skip in [0, 100] {
                let fill = Fill { demand: &self.demand, values: &self.values, nodes: 400, skip };
                let left = &mut Left::new(&self.demand);
                if let Some(packing) = fill.pack(&counts, left, &mut self.random, &mut self.work) {
                    tried.push((packing.cost(&self.demand), choices.clone(), packing));
                }
            }
        }
        let Some((_, choices, packing)) = tried.into_iter().min_by_key(|(cost, _, _)| *cost) else {
            return Stage::Repack(1_000);
        };
        self.take(Some(packing), &choices);
        let counts = self.demand.counts(&choices);
        match Master::new(&self.demand, &counts, false, &self.best.boards, None) {
            Some(master) if !self.rounds.is_multiple_of(4) => {
                Stage::Dive(Box::new(Dive::new(&self.demand, master, counts, 0.0)), choices)
            }
            _ => Stage::Repack(1_000),
        }
    }

    /// Joints for every wall: of a column that the programme uses, drawn by its share, or by prices with some noise.
    fn draw(&mut self) -> Option<Choices> {
        let mut choices = Vec::new();
        for (index, wall) in self.demand.walls.iter().enumerate() {
            let columns: Vec<(f64, &Vec<usize>)> = self
                .master
                .iter()
                .flat_map(Master::solution)
                .filter_map(|(part, value)| match part {
                    ColumnPart::Joints { wall, choice } if *wall == index => Some((value, choice)),
                    _ => None,
                })
                .collect();
            let random = &mut self.random;
            if !columns.is_empty() && random.below(3) > 0 {
                let mut at = random.below(1 << 20) as f64 / (1 << 20) as f64;
                let mut pick = columns.last().map(|(_, choice)| (*choice).clone());
                for (value, choice) in columns {
                    if at < value {
                        pick = Some(choice.clone());
                        break;
                    }
                    at -= value;
                }
                choices.push(pick?);
            } else {
                let noise: Vec<i64> = self
                    .values
                    .iter()
                    .map(|value| (value * (1 << 20) as f64) as i64)
                    .map(|value| value.max(0) + random.below(1 + (value.max(0) >> 6) as usize) as i64)
                    .collect();
                choices.push(wall.choose(|size| noise.get(size).copied().unwrap_or(0))?);
            }
            self.work += wall.effort();
        }
        Some(choices)
    }

    fn dive(&mut self, mut dive: Box<Dive>, choices: Choices) -> Stage {
        let mut found = Vec::new();
        // Every other dive only wants what the bound allows.
        let target = if self.rounds.is_multiple_of(2) { self.cost } else { self.bound + 1 };
        let over = dive.advance(&self.demand, target, &mut self.random, &mut self.work, &mut found);
        for packing in found {
            self.take(Some(packing), &choices);
        }
        if over { Stage::Repack(300) } else { Stage::Dive(dive, choices) }
    }

    fn branch(&mut self, end: u64) -> Stage {
        let Some(tree) = &mut self.tree else { return Stage::Choose };
        let found = tree.advance(&self.demand, self.cost, &mut self.random, &mut self.work);
        if let Some((choices, packing)) = found {
            self.take(Some(packing), &choices);
        }
        let Some(tree) = &self.tree else { return Stage::Choose };
        self.bound = self.bound.max(tree.bound(self.cost));
        if self.work < end && !tree.over() { Stage::Branch(end) } else { Stage::Repack(100) }
    }

    fn repack(&mut self, times: usize) -> Stage {
        let pairs = PAIRS.min(self.best.boards.len() * 4);
        Exchange::new(&self.demand).pairs(&mut self.best, pairs, &mut self.random, &mut self.work);
        for _ in 0..20 {
            repack::repack(
                &self.demand,
                &self.values,
                &mut self.best,
                &mut self.choices,
                &mut self.random,
                &mut self.work,
            );
        }
        let cost = self.best.cost(&self.demand);
        // What has just helped goes on.
        let times = if cost < self.cost { times.max(KEEN) } else { times };
        self.cost = cost;
        match times.checked_sub(20) {
            Some(left) => Stage::Repack(left),
            None if self.master.as_ref().is_some_and(|master| !master.done) => Stage::Columns,
            None => Stage::Choose,
        }
    }

    fn take(&mut self, packing: Option<Packing>, choices: &Choices) {
        let Some(packing) = packing else { return };
        let cost = packing.cost(&self.demand);
        if cost < self.cost && packing.possible(&self.demand) {
            self.cost = cost;
            self.best = packing;
            self.choices.clone_from(choices);
        }
    }

    fn progress(&self) -> PlannerProgress {
        PlannerProgress {
            done: self.bound >= self.cost,
            cost: self.billionths(self.cost),
            bound: self.billionths(self.bound.min(self.cost)),
        }
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
            boards.push(SawnBoard {
                source: source.unwrap_or(0),
                offcut: kind.offcut,
                length: kind.length,
                pieces: board.pieces.iter().filter_map(|size| waiting.get_mut(*size)?.pop()).collect(),
                strips: Vec::new(),
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
