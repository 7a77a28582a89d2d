use super::demand::Demand;
use super::fill::Fill;
use super::master::{Master, Part};
use super::pattern::{Left, Packing, Pattern};
use super::random::Random;

/// Rounds a programme's solution step by step: the surest patterns become boards, the rest is solved anew.
#[derive(Clone, Debug)]
pub(super) struct Dive {
    master: Master,
    counts: Vec<u32>,
    left: Left,
    boards: Vec<Pattern>,
}

impl Dive {
    /// A dive for pieces that are all decided, from a solved programme for them.
    pub(super) fn new(demand: &Demand, master: Master, counts: Vec<u32>) -> Self {
        Self { master, counts, left: Left::new(demand), boards: Vec::new() }
    }

    /// One slice of work. Packings found on the way go to `found`; returns whether the dive is over.
    pub(super) fn advance(
        &mut self,
        demand: &Demand,
        random: &mut Random,
        work: &mut u64,
        found: &mut Vec<Packing>,
    ) -> bool {
        if !self.master.done {
            let before = self.master.work;
            self.master.advance(demand);
            *work += self.master.work - before;
            return false;
        }
        let mut patterns: Vec<(f64, usize, Vec<(usize, u32)>)> = Vec::new();
        for (part, value) in self.master.solution() {
            if let Part::Cut { kind, pieces } = part {
                patterns.push((value, *kind, pieces.clone()));
            }
        }
        patterns.sort_by(|a, b| b.0.total_cmp(&a.0));
        let whole: u32 = self.counts.iter().sum();
        let mut fixed = 0;
        for (value, kind, pieces) in &patterns {
            let sure = (value + 1e-4).max(0.0) as u32;
            let times = if fixed == 0 {
                sure.max(1)
            } else if *value > 0.85 {
                sure.max(1)
            } else {
                sure
            };
            for _ in 0..times {
                if !self.fix(*kind, pieces) {
                    break;
                }
                fixed += 1;
            }
            // Not too much at once, so that the rest still fits together.
            if fixed > 0 && *value < 1.0 - 1e-4 && fixed as u32 * 40 > whole {
                break;
            }
        }
        let rest: u32 = self.counts.iter().sum();
        let values = mixed(demand, &self.master.prices);
        for skip in if rest <= 60 { &[0, 60, 200][..] } else { &[0][..] } {
            let fill = Fill { demand, values: &values, nodes: 1_500, skip: *skip };
            if let Some(tail) = fill.pack(&self.counts, &mut self.left.clone(), random, work) {
                let mut packing = Packing { boards: self.boards.clone() };
                packing.boards.extend(tail.boards);
                packing.shrink(demand);
                found.push(packing);
            }
        }
        if rest == 0 || fixed == 0 {
            return true;
        }
        let start: Vec<Pattern> = patterns
            .into_iter()
            .filter(|(_, _, pieces)| pieces.iter().all(|(size, count)| self.counts.get(*size) >= Some(count)))
            .map(|(_, kind, pieces)| Pattern {
                kind,
                pieces: pieces.iter().flat_map(|(size, count)| (0..*count).map(|_| *size)).collect(),
            })
            .collect();
        match Master::new(demand, &self.counts, false, &start) {
            Some(master) => {
                self.master = master;
                false
            }
            None => true,
        }
    }

    fn fix(&mut self, kind: usize, pieces: &[(usize, u32)]) -> bool {
        // What is there more often than needed is cut once less.
        let mut board = Vec::new();
        for (size, count) in pieces {
            let Some(have) = self.counts.get(*size) else { return false };
            if have < count {
                return false;
            }
            board.extend((0..*count).map(|_| *size));
        }
        if board.is_empty() || !self.left.has(kind) {
            return false;
        }
        for (size, count) in pieces {
            if let Some(slot) = self.counts.get_mut(*size) {
                *slot -= count;
            }
        }
        self.left.take(kind);
        self.boards.push(Pattern { kind, pieces: board });
        true
    }
}

/// The share of a board that each size takes, at the best price for a length.
pub(super) fn by_length(demand: &Demand) -> Vec<f64> {
    let kinds = demand.kinds.iter().filter(|kind| !kind.offcut);
    let rate = kinds.map(|kind| kind.cost as f64 / kind.capacity as f64).fold(f64::INFINITY, f64::min);
    let rate = if rate.is_finite() && rate > 0.0 { rate } else { 1e-9 };
    demand.sizes.iter().map(|size| *size as f64 * rate).collect()
}

/// Dual prices with a trace of length, so that what is worth nothing still fills a gap.
pub(super) fn mixed(demand: &Demand, prices: &[f64]) -> Vec<f64> {
    by_length(demand).iter().zip(prices).map(|(length, price)| 0.999 * price + 0.001 * length).collect()
}
