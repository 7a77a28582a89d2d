//! The best pattern at given prices: an exact bounded knapsack by dynamic programming over lengths, for all kinds of
//! board in one table.
#![expect(
    clippy::indexing_slicing,
    reason = "places in the table are made from its own size; every other way hides the recurrence"
)]

use num_integer::Integer;

use super::demand::Demand;

/// The most cells of the table, one for each step of length.
const CELLS: i64 = 1 << 16;
/// The most bits that remember what was taken.
const BITS: usize = 1 << 27;

/// The table's grid: lengths as whole steps.
#[derive(Clone, Debug)]
pub(super) struct Grid {
    weights: Vec<usize>,
    /// The cell of each kind's full length.
    cells: Vec<usize>,
    /// How many pieces of each size a plan may need.
    copies: Vec<u32>,
    /// How many of them one board may hold.
    together: Vec<u32>,
}

/// What pricing found.
#[derive(Clone, Debug, Default)]
pub(super) struct Priced {
    /// For each kind the greatest worth of a pattern, exact or, on a rounded grid, not below it.
    pub(super) worth: Vec<i64>,
    /// Patterns: kind, sizes with counts.
    pub(super) patterns: Vec<(usize, Vec<(usize, u32)>)>,
    /// Cells that were worked on.
    pub(super) work: u64,
}

struct KnapsackItem {
    size: usize,
    count: u32,
    weight: usize,
    value: f64,
}

impl Grid {
    pub(super) fn new(demand: &Demand, copies: Vec<u32>) -> Self {
        let wanted = || demand.sizes.iter().zip(&copies).filter(|(_, copies)| **copies > 0);
        let longest = demand.kinds.iter().map(|kind| kind.capacity).max().unwrap_or(0);
        let common = wanted().fold(0, |step, (size, _)| size.gcd(&step)).max(1);
        let items: usize = wanted().map(|(_, copies)| copies.ilog2() as usize + 1).sum();
        let most = CELLS.min((BITS / items.max(1)) as i64).max(64);
        // Where the true step makes too large a table, pieces and boards are rounded down: every true pattern still fits.
        let step = if longest / common < most { common } else { longest / most + 1 };
        let cell = |length: i64| usize::try_from(length / step).unwrap_or(0);
        Self {
            weights: demand.sizes.iter().map(|size| cell(*size)).collect(),
            cells: demand.kinds.iter().map(|kind| cell(kind.capacity)).collect(),
            together: copies
                .iter()
                .enumerate()
                .map(|(size, copies)| (*copies).min(demand.apart.copies(size)))
                .collect(),
            copies,
        }
    }

    /// How many pieces of each size a plan may need.
    pub(super) fn copies(&self) -> &[u32] {
        &self.copies
    }

    /// Prices all kinds. `prices` are whole and not negative, and so small that sums over a board are exact in 53 bits;
    /// `costs` are what a board must be worth more than to be among the patterns, of which there are at most `most`.
    pub(super) fn price(&self, prices: &[i64], costs: &[i64], upward: bool, most: usize) -> Priced {
        let mut items = self.items(prices);
        if upward {
            items.reverse();
        }
        let top = self.cells.iter().copied().max().unwrap_or(0);
        let words = top / 64 + 1;
        let mut free = 0.0;
        let mut old = vec![0.0_f64; top + 1];
        let mut new = vec![0.0_f64; top + 1];
        let mut taken = vec![0_u64; words * items.len()];
        let mut found: Vec<(f64, usize, usize)> = Vec::new();
        let mut work = 0;
        for (place, item) in items.iter().enumerate() {
            if item.weight == 0 {
                free += item.value;
                continue;
            }
            if item.weight > top {
                continue;
            }
            work += (top + 1 - item.weight) as u64;
            let mut best: Option<(f64, usize)> = None;
            for (kind, cell) in self.cells.iter().enumerate() {
                if *cell >= item.weight {
                    let gain = old[cell - item.weight] + item.value - costs[kind] as f64;
                    if gain > 0.0 && best.is_none_or(|(known, _)| gain > known) {
                        best = Some((gain, kind));
                    }
                }
            }
            if let Some((gain, kind)) = best {
                found.push((gain, kind, place));
            }
            new[..item.weight].copy_from_slice(&old[..item.weight]);
            let (skip, rest) = (item.weight, &old[item.weight..]);
            for ((slot, stay), under) in new[skip..].iter_mut().zip(rest).zip(&old) {
                let with = under + item.value;
                *slot = if with > *stay { with } else { *stay };
            }
            let bits = &mut taken[place * words..(place + 1) * words];
            for (word, (now, before)) in bits.iter_mut().zip(new.chunks(64).zip(old.chunks(64))) {
                let mut mask = 0;
                for (bit, (now, before)) in now.iter().zip(before).enumerate() {
                    mask |= u64::from(now > before) << bit;
                }
                *word = mask;
            }
            std::mem::swap(&mut old, &mut new);
        }
        let worth = self.cells.iter().map(|cell| (old[*cell] + free) as i64).collect();
        found.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.2.cmp(&b.2)));
        found.truncate(most);
        let mut patterns = Vec::new();
        for (_, kind, place) in found {
            let mut pieces = vec![(items[place].size, items[place].count)];
            let mut cell = self.cells[kind] - items[place].weight;
            for (before, item) in items[..place].iter().enumerate().rev() {
                if (taken[before * words + cell / 64] >> (cell % 64)) & 1 == 1 {
                    cell -= item.weight;
                    match pieces.iter_mut().find(|(size, _)| *size == item.size) {
                        Some((_, count)) => *count += item.count,
                        None => pieces.push((item.size, item.count)),
                    }
                }
            }
            patterns.push((kind, pieces));
        }
        Priced { worth, patterns, work }
    }

    /// Each size in bundles of one, two, four … pieces, so that every count up to its copies can be put together.
    fn items(&self, prices: &[i64]) -> Vec<KnapsackItem> {
        let top = self.cells.iter().copied().max().unwrap_or(0);
        let mut items = Vec::new();
        for (size, price) in prices.iter().enumerate().filter(|(_, price)| **price > 0) {
            let weight = self.weights[size];
            let mut left = (self.together[size] as usize).min(top.checked_div(weight).unwrap_or(usize::MAX));
            let mut bundle = 1;
            while left > 0 {
                let count = bundle.min(left);
                left -= count;
                bundle *= 2;
                items.push(KnapsackItem {
                    size,
                    count: count as u32,
                    weight: weight * count,
                    value: (*price * count as i64) as f64,
                });
            }
        }
        items
    }
}
