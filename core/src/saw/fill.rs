use super::demand::Demand;
use super::pattern::{Left, Packing, Pattern};
use super::random::Random;

/// How boards are filled one after the other.
#[derive(Clone, Debug)]
pub(super) struct Fill<'a> {
    pub(super) demand: &'a Demand,
    /// What a piece of each size is worth, in cost units: its length's share of a board, or its dual value.
    pub(super) values: &'a [f64],
    /// How many steps are spent on one board of one kind.
    pub(super) nodes: u32,
    /// How often a piece is passed over, in 1,024ths: the spread between two tries.
    pub(super) skip: u64,
}

/// The search for the best pieces beside the first one on a board.
struct Search<'a, 'b> {
    fill: &'b Fill<'a>,
    counts: &'b mut [u32],
    random: &'b mut Random,
    nodes: u32,
    /// The best worth of a nanometre.
    rate: f64,
    good: f64,
    best: f64,
    stack: Vec<usize>,
    found: Vec<usize>,
}

impl Fill<'_> {
    /// Packs the pieces: always the longest one left, with those beside it that leave the least value of the board
    /// unused (minimum bin slack, Gupta and Ho 1999, on values). `None` where the boards run out. `work` counts steps.
    pub(super) fn pack(&self, counts: &[u32], left: &mut Left, random: &mut Random, work: &mut u64) -> Option<Packing> {
        *work += 4 * counts.len() as u64;
        let all = left.clone();
        let mut counts = counts.to_vec();
        let mut packing = Packing::default();
        let rate = self
            .demand
            .sizes
            .iter()
            .zip(self.values)
            .zip(&counts)
            .filter(|(_, count)| **count > 0)
            .map(|((size, value), _)| value / (*size).max(1) as f64)
            .fold(0.0, f64::max);
        let mut first = 0;
        loop {
            while counts.get(first).is_some_and(|count| *count == 0) {
                first += 1;
            }
            if first >= counts.len() {
                packing.shrink(self.demand, all);
                return Some(packing);
            }
            let board = self.board(first, &mut counts, left, rate, random, work)?;
            for size in &board.pieces {
                if let Some(count) = counts.get_mut(*size) {
                    *count -= 1;
                }
            }
            left.take(board.kind);
            packing.boards.push(board);
        }
    }

    /// The board that holds a piece of size `first` and loses the least.
    fn board(
        &self,
        first: usize,
        counts: &mut [u32],
        left: &Left,
        rate: f64,
        random: &mut Random,
        work: &mut u64,
    ) -> Option<Pattern> {
        let size = self.demand.size(first);
        let value = self.values.get(first).copied().unwrap_or(0.0);
        let mut best: Option<(f64, Pattern)> = None;
        if let Some(count) = counts.get_mut(first) {
            *count -= 1;
        }
        let mut tried = 0;
        for (index, kind) in self.demand.kinds.iter().enumerate() {
            if kind.capacity < size || !left.has(index) {
                continue;
            }
            tried += 1;
            if tried > 12 {
                break;
            }
            let cost = kind.cost as f64;
            let loss = best.as_ref().map_or(f64::INFINITY, |(loss, _)| *loss);
            let mut search = Search {
                fill: self,
                counts,
                random,
                nodes: self.nodes,
                rate,
                good: cost - 1e-9 * (1.0 + cost) - value,
                best: (cost - loss - value).max(-1.0),
                stack: Vec::new(),
                found: Vec::new(),
            };
            let before = search.best;
            search.deepen(first, kind.capacity - size, 0.0);
            *work += 16 * u64::from(self.nodes - search.nodes) + 50;
            if search.best > before || best.is_none() {
                let loss = cost - value - search.best;
                let pieces = std::iter::once(first).chain(search.found).collect();
                best = Some((loss, Pattern { kind: index, pieces }));
            }
        }
        if let Some(count) = counts.get_mut(first) {
            *count += 1;
        }
        best.map(|(_, board)| board)
    }
}

impl Search<'_, '_> {
    /// Adds pieces not longer than `from` to what is on the board. Returns whether the search is over.
    fn deepen(&mut self, from: usize, room: i64, value: f64) -> bool {
        if value > self.best {
            self.best = value;
            self.found.clone_from(&self.stack);
            if value >= self.good {
                return true;
            }
        }
        let sizes = &self.fill.demand.sizes;
        let start = from.max(sizes.partition_point(|size| *size > room));
        for size in start..sizes.len() {
            if self.counts.get(size).is_none_or(|count| *count == 0) {
                continue;
            }
            if value + room as f64 * self.rate <= self.best {
                return false;
            }
            if self.nodes == 0 {
                return true;
            }
            self.nodes -= 1;
            if self.fill.skip > 0 && (self.random.below(1024) as u64) < self.fill.skip {
                continue;
            }
            let (Some(need), Some(worth)) = (sizes.get(size), self.fill.values.get(size)) else { return true };
            if let Some(count) = self.counts.get_mut(size) {
                *count -= 1;
            }
            self.stack.push(size);
            let over = self.deepen(size, room - need, value + worth);
            self.stack.pop();
            if let Some(count) = self.counts.get_mut(size) {
                *count += 1;
            }
            if over {
                return true;
            }
        }
        false
    }
}
