//! Column generation: boards' patterns and walls' joints as columns, piece sizes as rows.
#![expect(clippy::indexing_slicing, reason = "rows, kinds and sizes are numbered by the demand that made them")]

use super::bound::{self, DualScale};
use super::demand::{Demand, TiedRuns};
use super::pattern::Pattern;
use super::price::{Grid, Priced};
use super::simplex::{Column, Simplex};
use super::spans::Spans;

/// What a column stands for.
#[derive(Clone, Debug)]
pub(super) enum ColumnPart {
    /// A board's pattern: sizes with counts.
    Cut { kind: usize, pieces: Vec<(usize, u32)> },
    /// The joints of a wall.
    Joints { wall: usize, choice: Vec<usize> },
    /// Slack, surplus or a helper at the start.
    Other,
}

/// The linear programme of a demand and how far its columns go.
#[derive(Clone, Debug)]
pub(super) struct Master {
    simplex: Simplex,
    /// The right side before it was moved a little.
    right: Vec<f64>,
    pub(super) parts: Vec<ColumnPart>,
    /// The rows of each size; sizes without demand have none.
    spans: Spans,
    /// The row of each counted kind.
    kind_rows: Vec<Option<usize>>,
    /// The row of each kind that must be taken so often.
    least_rows: Vec<Option<usize>>,
    wall_rows: Vec<usize>,
    /// What each pricing leaves out, so that sizes that are to be kept apart never meet.
    left_out: Vec<Vec<usize>>,
    grid: Grid,
    scale: DualScale,
    costs: Vec<i64>,
    upward: bool,
    solved: bool,
    /// Slices of pivots since the last pricing.
    slices: usize,
    /// The best bound so far, in the demand's cost unit, and the prices that gave it.
    pub(super) bound: i128,
    pub(super) prices: Vec<f64>,
    /// Whether more columns cannot change the rounded bound.
    pub(super) done: bool,
    rounds: usize,
    pub(super) work: u64,
}

/// Slices of pivots before new columns are looked for, though the programme may not be solved yet; later ones get more.
const SLICES: usize = 8;

/// More rows than this are left to the bound by length.
pub(super) const ROWS: usize = 1_800;

/// How often one pricing may look at the boards.
const SETS: usize = 200;

/// What a piece may be worth at most in a branch, in the price of the dearest board: prices far above it show that what a
/// branch leaves does not suffice.
const BRANCH_DEAREST: i64 = 1 << 10;

impl Master {
    /// The programme for pieces that are all decided, or, with `walls`, for the whole demand with its joints open.
    ///
    /// `start` are patterns known to be good. `None` where the programme would be too large.
    pub(super) fn new(
        demand: &Demand,
        counts: &[u32],
        walls: bool,
        start: &[Pattern],
        spans: Option<usize>,
    ) -> Option<Self> {
        Self::within(demand, counts, walls, start, spans, 1)
    }

    /// The programme of a branch, from patterns and joints that are known to be good.
    pub(super) fn of_branch(demand: &Demand, start: &[Pattern], joints: Vec<(usize, Vec<usize>)>) -> Option<Self> {
        let walls = !demand.walls.is_empty();
        let counts = demand.counts(&Vec::new());
        let mut master = Self::within(demand, &counts, walls, start, None, BRANCH_DEAREST)?;
        for (wall, choice) in joints {
            let column = master.joints(demand, wall, &choice);
            master.simplex.add(column);
            master.parts.push(ColumnPart::Joints { wall, choice });
        }
        Some(master)
    }

    fn within(
        demand: &Demand,
        counts: &[u32],
        walls: bool,
        start: &[Pattern],
        spans: Option<usize>,
        reach: i64,
    ) -> Option<Self> {
        let copies = if walls { demand.most() } else { counts.to_vec() };
        let spans = match spans {
            Some(spans) => Spans::new(demand, &copies, spans),
            None => Spans::full(&copies),
        };
        let mut next = spans.rows;
        let mut row = |wanted: bool| {
            wanted.then(|| {
                next += 1;
                next - 1
            })
        };
        let kind_rows: Vec<Option<usize>> = demand.kinds.iter().map(|kind| row(kind.count.is_some())).collect();
        let least_rows: Vec<Option<usize>> = demand.kinds.iter().map(|kind| row(kind.least > 0)).collect();
        let open = if walls { demand.walls.as_slice() } else { &[] };
        let wall_rows: Vec<usize> = open.iter().filter_map(|_| row(true)).collect();
        let by_length = |wall: &TiedRuns| wall.choose(|size| demand.size(size) >> 12);
        let first_joints: Vec<Vec<usize>> = open.iter().map(by_length).collect::<Option<_>>()?;
        if next > ROWS {
            return None;
        }
        let left_out = demand.apart.sets(SETS)?;
        let mut right = vec![0.0; next];
        let mut columns = Vec::new();
        let mut parts = Vec::new();
        let mut basis = vec![0; next];
        // What each row of a size starts with: a board of nothing else.
        let mut first: Vec<Option<(Column, usize, usize, u32)>> = vec![None; spans.rows];
        let mut singles = Vec::new();
        let dearest = demand.kinds.iter().map(|kind| kind.cost).max().unwrap_or(1).max(1) as f64;
        for size in (0..copies.len()).filter(|size| copies[*size] > 0) {
            let fixed = if walls { demand.fixed[size] as f64 } else { f64::from(counts[size]) };
            for (row, share) in spans.of(size) {
                right[*row] += share * fixed;
            }
            let need = demand.sizes[size];
            let single = |counted: bool| {
                let fitting = demand.kinds.iter().enumerate().filter(|(_, kind)| kind.count.is_some() == counted);
                fitting
                    .filter_map(|(index, kind)| {
                        let count =
                            (kind.capacity / need.max(1)).min(i64::from(copies[size].min(demand.apart.copies(size))));
                        (count > 0).then(|| (kind.cost as f64 / count as f64, index, count))
                    })
                    .min_by(|a, b| a.0.total_cmp(&b.0))
            };
            match (single(false), spans.of(size)) {
                (Some((_, kind, count)), [(row, _)]) if spans.full => {
                    let cost = demand.kinds[kind].cost as f64;
                    first[*row] =
                        Some((Column { cost, entries: vec![(*row, count as f64)] }, kind, size, count as u32));
                }
                // Without these, pieces on no pattern yet would look dearer than any board.
                (free, _) => {
                    let single = free.or_else(|| single(true));
                    singles.extend(single.map(|(_, kind, count)| (kind, vec![(size, count as u32)])));
                }
            }
        }
        // What is to be cut at the start: with the first joints of every wall.
        let mut needed: Vec<f64> = right.clone();
        for (wall, choice) in open.iter().zip(&first_joints) {
            for (row, share) in wall.pieces(choice).flat_map(|size| spans.of(size)) {
                needed[*row] += share;
            }
        }
        for (row, single) in first.into_iter().enumerate() {
            columns.push(Column { cost: 0.0, entries: vec![(row, -1.0)] });
            parts.push(ColumnPart::Other);
            // Pieces that a branch has bound elsewhere and these joints do not give are left over at the start.
            basis[row] = if needed[row] < 0.0 { columns.len() - 1 } else { columns.len() };
            match single {
                Some((column, kind, size, count)) => {
                    columns.push(column);
                    parts.push(ColumnPart::Cut { kind, pieces: vec![(size, count)] });
                }
                None => {
                    columns.push(Column { cost: 1000.0 * dearest, entries: vec![(row, 1.0)] });
                    parts.push(ColumnPart::Other);
                }
            }
        }
        for (kind, row) in demand.kinds.iter().zip(&kind_rows) {
            if let (Some(count), Some(row)) = (kind.count, *row) {
                right[row] = f64::from(count);
                basis[row] = columns.len();
                columns.push(Column { cost: 0.0, entries: vec![(row, 1.0)] });
                parts.push(ColumnPart::Other);
            }
        }
        for (kind, row) in demand.kinds.iter().zip(&least_rows) {
            if let Some(row) = *row {
                right[row] = f64::from(kind.least);
                columns.push(Column { cost: 0.0, entries: vec![(row, -1.0)] });
                basis[row] = columns.len();
                columns.push(Column { cost: 1000.0 * dearest, entries: vec![(row, 1.0)] });
                parts.extend([ColumnPart::Other, ColumnPart::Other]);
            }
        }
        let (scale, costs) = DualScale::of(demand, reach);
        let mut master = Self {
            simplex: Simplex::new(Vec::new(), Vec::new(), Vec::new()),
            right: Vec::new(),
            parts,
            spans,
            kind_rows,
            least_rows,
            wall_rows,
            left_out,
            grid: Grid::new(demand, copies),
            scale,
            costs,
            upward: true,
            solved: false,
            slices: 0,
            bound: 0,
            prices: super::dive::by_length(demand),
            done: false,
            rounds: 0,
            work: 0,
        };
        for (wall, (row, choice)) in master.wall_rows.clone().into_iter().zip(first_joints).enumerate() {
            right[row] = 1.0;
            basis[row] = columns.len();
            columns.push(master.joints(demand, wall, &choice));
            master.parts.push(ColumnPart::Joints { wall, choice });
        }
        // A little more of each size, never twice the same, keeps the simplex from standing still.
        let moved = |(row, right): (usize, &f64)| {
            let sizes = row < master.spans.rows;
            right + if sizes { 1e-6 * (1.0 + (row * 7919 % 1009) as f64 / 1009.0) } else { 0.0 }
        };
        let moved = right.iter().enumerate().map(moved).collect();
        master.simplex = Simplex::new(columns, moved, basis);
        master.right = right;
        for (kind, pieces) in singles {
            master.add_cut(demand, kind, pieces);
        }
        for pattern in start {
            let mut pieces: Vec<(usize, u32)> = Vec::new();
            for size in &pattern.pieces {
                match pieces.iter_mut().find(|(known, _)| known == size) {
                    Some((_, count)) => *count += 1,
                    None => pieces.push((*size, 1)),
                }
            }
            master.add_cut(demand, pattern.kind, pieces);
        }
        Some(master)
    }

    /// The same programme with more spans, or in full, with the columns that come near to being used.
    pub(super) fn refine(
        &self,
        demand: &Demand,
        counts: &[u32],
        start: &[Pattern],
        spans: Option<usize>,
    ) -> Option<Self> {
        let mut finer = Self::new(demand, counts, !self.wall_rows.is_empty(), start, spans)?;
        let mut near: Vec<(f64, usize)> = (0..self.parts.len())
            .filter(|at| !matches!(self.parts[*at], ColumnPart::Other))
            .map(|at| (self.simplex.reduced_cost(&self.simplex.columns[at]), at))
            .collect();
        near.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        for (_, at) in near.into_iter().take(200 + 3 * finer.right.len()) {
            match &self.parts[at] {
                ColumnPart::Cut { kind, pieces } => finer.add_cut(demand, *kind, pieces.clone()),
                ColumnPart::Joints { wall, choice } => {
                    let column = finer.joints(demand, *wall, choice);
                    finer.simplex.add(column);
                    finer.parts.push(ColumnPart::Joints { wall: *wall, choice: choice.clone() });
                }
                ColumnPart::Other => {}
            }
        }
        finer.bound = self.bound;
        finer.prices.clone_from(&self.prices);
        Some(finer)
    }

    /// Whether each size has a price of its own.
    pub(super) const fn full(&self) -> bool {
        self.spans.full
    }

    fn joints(&self, demand: &Demand, wall: usize, choice: &[usize]) -> Column {
        let mut entries: Vec<(usize, f64)> = vec![(self.wall_rows[wall], 1.0)];
        let mut counts = vec![0.0; demand.sizes.len()];
        for size in demand.walls[wall].pieces(choice) {
            counts[size] += 1.0;
        }
        let used = counts.into_iter().enumerate().filter(|(_, count)| *count > 0.0);
        entries.extend(self.spans.entries(used).into_iter().map(|(row, count)| (row, -count)));
        Column { cost: 0.0, entries }
    }

    fn cut(&self, demand: &Demand, kind: usize, pieces: &[(usize, u32)]) -> Column {
        let mut entries = self.spans.entries(pieces.iter().map(|(size, count)| (*size, f64::from(*count))));
        entries.extend(self.kind_rows[kind].map(|row| (row, 1.0)));
        entries.extend(self.least_rows[kind].map(|row| (row, 1.0)));
        Column { cost: demand.kinds[kind].cost as f64, entries }
    }

    fn add_cut(&mut self, demand: &Demand, kind: usize, pieces: Vec<(usize, u32)>) {
        let column = self.cut(demand, kind, &pieces);
        self.simplex.add(column);
        self.parts.push(ColumnPart::Cut { kind, pieces });
    }

    /// The columns in use and how much of each.
    pub(super) fn solution(&self) -> Vec<(&ColumnPart, f64)> {
        let used = self.simplex.solution().filter(|(_, value)| *value > 1e-5);
        used.map(|(column, value)| (&self.parts[column], value)).collect()
    }

    /// One slice of work: some pivots, or, once the columns at hand are used up, one pricing.
    pub(super) fn advance(&mut self, demand: &Demand) {
        if self.done {
            return;
        }
        let before = self.simplex.work;
        if !self.solved && self.slices < SLICES + 2 * self.rounds {
            self.solved = self.simplex.solve(100);
            self.slices += 1;
            self.work += (self.simplex.work - before) / 2;
            return;
        }
        self.slices = 0;
        self.rounds += 1;
        let duals: Vec<f64> = (0..demand.sizes.len()).map(|size| self.spans.price(size, &self.simplex.duals)).collect();
        // Between the duals of the programme and those of the best bound the way is shorter (Wentges 1997).
        let mixed: Vec<f64> = duals.iter().zip(&self.prices).map(|(new, best)| 0.3 * new + 0.7 * best).collect();
        // The first centre are the prices by length, for which there is no bound yet.
        let by_length = self.rounds == 1 && self.price(demand, &self.prices.clone()) > 0;
        let added = self.price(demand, &mixed) > 0 || by_length;
        let added = added || self.price(demand, &duals) > 0;
        let solved = std::mem::replace(&mut self.solved, false);
        let value = self.simplex.objective(&self.right) - 1e-6 * (1.0 + self.bound as f64);
        if (solved && !added) || bound::ceil(value) <= self.bound || self.rounds > 2_000 {
            self.done = true;
        }
    }

    /// Prices at these duals; returns how many columns came in.
    fn price(&mut self, demand: &Demand, duals: &[f64]) -> usize {
        let prices = self.scale.whole(duals);
        let costs: Vec<i64> = self
            .costs
            .iter()
            .zip(&self.kind_rows)
            .zip(&self.least_rows)
            .map(|((cost, most), least)| {
                let most = most.map_or(0, |row| self.scale.one((-self.simplex.duals[row]).max(0.0)));
                let least = least.map_or(0, |row| self.scale.one(self.simplex.duals[row].max(0.0)));
                cost + most - least
            })
            .collect();
        self.upward = !self.upward;
        let most = 20 + demand.sizes.len() / 4;
        let priced = self.allowed(&prices, &costs, most);
        self.work += priced.work + 1000;
        // With open joints each pricing looks at the walls, too.
        let total = if self.wall_rows.is_empty() {
            prices.iter().zip(self.copies()).map(|(price, count)| i128::from(*price) * i128::from(*count)).sum()
        } else {
            self.work += demand.walls.iter().map(TiedRuns::effort).sum::<u64>();
            demand.cheapest(&prices)
        };
        let bound = bound::certified(demand, &self.scale, &self.costs, total, &priced.worth);
        if bound > self.bound {
            self.bound = bound;
            self.prices = duals.to_vec();
        }
        let mut added = 0;
        for (kind, pieces) in priced.patterns {
            let used: i64 = pieces.iter().map(|(size, count)| demand.sizes[*size] * i64::from(*count)).sum();
            if used > demand.kinds[kind].capacity {
                continue;
            }
            let column = self.cut(demand, kind, &pieces);
            if self.simplex.reduced_cost(&column) < -1e-8 * (1.0 + column.cost) {
                self.simplex.add(column);
                self.parts.push(ColumnPart::Cut { kind, pieces });
                added += 1;
            }
        }
        for wall in 0..self.wall_rows.len() {
            let own = &demand.walls[wall];
            let Some(choice) = own.choose(|size| prices[size]) else { continue };
            self.work += own.effort();
            let column = self.joints(demand, wall, &choice);
            if self.simplex.reduced_cost(&column) < -1e-8 {
                self.simplex.add(column);
                self.parts.push(ColumnPart::Joints { wall, choice });
                added += 1;
            }
        }
        added
    }

    /// Prices all patterns that hold no two sizes that are to be kept apart.
    fn allowed(&self, prices: &[i64], costs: &[i64], most: usize) -> Priced {
        let mut all = Priced::default();
        for out in &self.left_out {
            let mut prices = prices.to_vec();
            for size in out {
                prices[*size] = 0;
            }
            let one = self.grid.price(&prices, costs, self.upward, most);
            all.work += one.work;
            all.patterns.extend(one.patterns);
            all.worth = match all.worth.len() {
                0 => one.worth,
                _ => all.worth.iter().zip(&one.worth).map(|(a, b)| *a.max(b)).collect(),
            };
        }
        all
    }

    /// Patterns that are in use or near to it, at most so many.
    pub(super) fn near(&self, most: usize) -> Vec<Pattern> {
        let mut near: Vec<(f64, Pattern)> = Vec::new();
        for (part, column) in self.parts.iter().zip(&self.simplex.columns) {
            if let ColumnPart::Cut { kind, pieces } = part {
                near.push((self.simplex.reduced_cost(column), Pattern::of(*kind, pieces)));
            }
        }
        near.sort_by(|a, b| a.0.total_cmp(&b.0));
        near.truncate(most);
        near.into_iter().map(|(_, pattern)| pattern).collect()
    }

    /// How many pieces of each size there are, where all are decided.
    fn copies(&self) -> &[u32] {
        self.grid.copies()
    }
}
