use super::demand::Demand;
use super::fill::Fill;
use super::master::{ColumnPart, Master};
use super::pattern::{Left, Packing, Pattern};
use super::random::Random;

/// Rounds a programme's solution step by step: the surest patterns become boards, the rest is solved anew. Where the rest
/// turns out too dear, the last step is taken back and the next surest patterns are tried.
#[derive(Clone, Debug)]
pub(super) struct Dive {
    master: Master,
    now: DiveState,
    /// Where steps were taken: the state before, its patterns, and how many of them were passed over.
    trail: Vec<(DiveState, Vec<Rated>, usize)>,
    /// Steps that may still be taken back.
    returns: usize,
    /// How far chance may change the order of the patterns.
    noise: f64,
}

#[derive(Clone, Debug)]
struct DiveState {
    counts: Vec<u32>,
    left: Left,
    boards: Vec<Pattern>,
}

/// A pattern with its share in the programme's solution.
#[derive(Clone, Debug)]
struct Rated {
    share: f64,
    order: f64,
    kind: usize,
    pieces: Vec<(usize, u32)>,
}

impl Dive {
    /// A dive for pieces that are all decided, from a solved programme for them.
    pub(super) fn new(demand: &Demand, master: Master, counts: Vec<u32>, noise: f64) -> Self {
        let now = DiveState { counts, left: Left::new(demand), boards: Vec::new() };
        Self { master, now, trail: Vec::new(), returns: 60, noise }
    }

    /// One slice of work. Packings found on the way go to `found`; returns whether the dive is over, which it also is
    /// where nothing under `target` can come of it.
    pub(super) fn advance(
        &mut self,
        demand: &Demand,
        target: i128,
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
        let spent: i128 = self.now.boards.iter().map(|board| i128::from(board.cost(demand))).sum();
        if spent + self.master.bound >= target {
            return self.take_back(demand);
        }
        let mut patterns: Vec<Rated> = Vec::new();
        for (part, share) in self.master.solution() {
            if let ColumnPart::Cut { kind, pieces } = part {
                let chance = random.below(1 << 20) as f64 / (1 << 20) as f64;
                let order = share + self.noise * chance;
                patterns.push(Rated { share, order, kind: *kind, pieces: pieces.clone() });
            }
        }
        patterns.sort_by(|a, b| b.order.total_cmp(&a.order));
        let values = mixed(demand, &self.master.prices);
        let before = self.now.clone();
        let fixed = self.now.fix_some(&patterns, 0);
        let rest: u32 = self.now.counts.iter().sum();
        for skip in if rest <= 60 { &[0, 60, 200][..] } else { &[0][..] } {
            let fill = Fill { demand, values: &values, nodes: 1_500, skip: *skip };
            if let Some(tail) = fill.pack(&self.now.counts, &mut self.now.left.clone(), random, work) {
                let mut packing = Packing { boards: self.now.boards.clone() };
                packing.boards.extend(tail.boards);
                packing.shrink(demand, Left::new(demand));
                found.push(packing);
            }
        }
        if rest == 0 || fixed == 0 {
            return self.take_back(demand);
        }
        self.trail.push((before, patterns, 0));
        self.restart(demand)
    }

    /// Back to the last step, which passes over one pattern more. Returns whether that was the last.
    fn take_back(&mut self, demand: &Demand) -> bool {
        while let Some((state, patterns, passed)) = self.trail.pop() {
            let Some(returns) = self.returns.checked_sub(1) else { return true };
            self.returns = returns;
            if passed >= 3 || passed + 1 >= patterns.len() {
                continue;
            }
            self.now = state.clone();
            let fixed = self.now.fix_some(&patterns, passed + 1);
            if fixed == 0 {
                continue;
            }
            self.trail.push((state, patterns, passed + 1));
            return self.restart(demand);
        }
        true
    }

    /// A programme for the pieces that are left. Returns whether there can be none.
    fn restart(&mut self, demand: &Demand) -> bool {
        let counts = &self.now.counts;
        let start: Vec<Pattern> = self
            .trail
            .last()
            .iter()
            .flat_map(|(_, patterns, _)| patterns)
            .filter(|rated| rated.pieces.iter().all(|(size, count)| counts.get(*size) >= Some(count)))
            .map(|rated| Pattern::of(rated.kind, &rated.pieces))
            .collect();
        match Master::new(demand, counts, false, &start, None) {
            Some(master) => {
                self.master = master;
                false
            }
            None => true,
        }
    }
}

impl DiveState {
    /// Makes boards of the surest patterns after those that are passed over: of all that are whole, or of a few.
    fn fix_some(&mut self, patterns: &[Rated], passed: usize) -> usize {
        let whole: u32 = self.counts.iter().sum();
        let mut fixed = 0;
        for rated in patterns.iter().skip(passed) {
            let sure = (rated.share + 1e-4).max(0.0) as u32;
            let times = if fixed == 0 || rated.share > 0.85 { sure.max(1) } else { sure };
            for _ in 0..times {
                if !self.fix(rated.kind, &rated.pieces) {
                    break;
                }
                fixed += 1;
            }
            // Not too much at once, so that the rest still fits together.
            if fixed > 0 && rated.share < 1.0 - 1e-4 && fixed * 40 > whole as usize {
                break;
            }
        }
        fixed
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
