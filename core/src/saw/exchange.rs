use super::demand::Demand;
use super::pattern::{Packing, Pattern};
use super::random::Random;

/// The most pieces of two boards that are shared out anew; others stay where they are.
const MOVABLE: usize = 10;

/// Pairs of boards share their pieces out anew: cheaper, or with what they leave unused on one of them, so that the waste
/// of many boards gathers until a board becomes shorter or is saved.
pub(super) struct Exchange<'a> {
    demand: &'a Demand,
    /// Capacity, cost and number of kinds without a count, each dearer and longer than the one before.
    kinds: Vec<(i64, i64, usize)>,
    sums: Vec<i64>,
}

/// How two boards may look afterwards; the least is the best.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Rank {
    cost: i64,
    /// What the emptier of both leaves unused, negative.
    gathered: i64,
}

impl<'a> Exchange<'a> {
    pub(super) fn new(demand: &'a Demand) -> Self {
        let mut all: Vec<(i64, i64, usize)> = demand
            .kinds
            .iter()
            .enumerate()
            .filter(|(_, kind)| kind.count.is_none())
            .map(|(index, kind)| (kind.capacity, kind.cost, index))
            .collect();
        all.sort_unstable_by_key(|(capacity, cost, _)| (std::cmp::Reverse(*capacity), *cost));
        let mut kinds: Vec<(i64, i64, usize)> = Vec::new();
        for kind in all {
            if kinds.last().is_none_or(|longer| kind.1 < longer.1) {
                kinds.push(kind);
            }
        }
        kinds.reverse();
        Self { demand, kinds, sums: vec![0; 1 << MOVABLE] }
    }

    /// So many pairs; the boards that leave much come more often. Returns whether the cost fell.
    pub(super) fn pairs(&mut self, packing: &mut Packing, times: usize, random: &mut Random, work: &mut u64) -> bool {
        let mut used: Vec<i64> = packing.boards.iter().map(|board| board.used(self.demand)).collect();
        let mut fell = false;
        *work += 8 * used.len() as u64;
        for _ in 0..times {
            let count = packing.boards.len();
            if count < 2 {
                break;
            }
            let rest = |place: &usize| {
                let kind = packing.boards.get(*place).and_then(|board| self.demand.kinds.get(board.kind));
                kind.map_or(0, |kind| kind.capacity) - used.get(*place).copied().unwrap_or(0)
            };
            let draws = [random.below(count), random.below(count), random.below(count)];
            let Some(one) = draws.into_iter().max_by_key(rest) else { break };
            let other = (one + 1 + random.below(count - 1)) % count;
            let (Some(first), Some(second)) = (packing.boards.get(one), packing.boards.get(other)) else { break };
            let before = self.cost(first) + self.cost(second);
            let Some((first, second)) = self.share(first, second, random, work) else { continue };
            fell |= self.cost(&first) + self.cost(&second) < before;
            let saved = first.pieces.is_empty() || second.pieces.is_empty();
            for (place, board) in [(one, first), (other, second)] {
                if let (Some(slot), Some(sum)) = (packing.boards.get_mut(place), used.get_mut(place)) {
                    *sum = board.used(self.demand);
                    *slot = board;
                }
            }
            if saved {
                packing.boards.retain(|board| !board.pieces.is_empty());
                used = packing.boards.iter().map(|board| board.used(self.demand)).collect();
            }
        }
        fell
    }

    fn cost(&self, board: &Pattern) -> i64 {
        if board.pieces.is_empty() { 0 } else { board.cost(self.demand) }
    }

    /// The cheapest kind for what a board holds: one without a count, or its own. Capacity, cost, number.
    fn kind(&self, used: i64, own: (i64, i64, usize)) -> Option<(i64, i64, usize)> {
        if used == 0 {
            return Some((0, 0, own.2));
        }
        let free = self.kinds.get(self.kinds.partition_point(|kind| kind.0 < used)).copied();
        let own = Some(own).filter(|own| own.0 >= used);
        match (free, own) {
            (Some(free), Some(own)) => Some(if own.1 < free.1 { own } else { free }),
            (free, own) => free.or(own),
        }
    }

    /// Both boards with their pieces shared out as well as can be, by chance among equals; `None` where they stay.
    fn share(
        &mut self,
        first: &Pattern,
        second: &Pattern,
        random: &mut Random,
        work: &mut u64,
    ) -> Option<(Pattern, Pattern)> {
        let (mut here, mut there) = (first.pieces.clone(), second.pieces.clone());
        let mut movable = Vec::new();
        // Beyond what can be tried in every way, pieces are drawn from both.
        while movable.len() < MOVABLE && !(here.is_empty() && there.is_empty()) {
            let long = here.len() > there.len();
            let from = if long { &mut here } else { &mut there };
            movable.push(from.swap_remove(random.below(from.len())));
        }
        let sizes: Vec<i64> = movable.iter().map(|size| self.demand.size(*size)).collect();
        let (fixed, rest) = (self.sum(&here), self.sum(&there));
        let total: i64 = fixed + rest + sizes.iter().sum::<i64>();
        let of = |board: &Pattern| self.demand.kinds.get(board.kind).map(|kind| (kind.capacity, kind.cost, board.kind));
        let (own, its) = (of(first)?, of(second)?);
        let ways = 1_usize << sizes.len();
        *work += 4 * ways as u64 + 60;
        for way in 1..ways {
            let low = way.trailing_zeros() as usize;
            let sum = self.sums.get(way & (way - 1))? + sizes.get(low)?;
            *self.sums.get_mut(way)? = sum;
        }
        let turn = random.below(ways);
        let mut best: Option<(Rank, usize)> = None;
        for step in 0..ways {
            let way = step ^ turn;
            let used = fixed + self.sums.get(way)?;
            let (Some(one), Some(two)) = (self.kind(used, own), self.kind(total - used, its)) else { continue };
            let gathered = -(one.0 - used).max(two.0 - (total - used));
            let rank = Rank { cost: one.1 + two.1, gathered };
            if best.is_none_or(|(known, _)| rank < known) {
                best = Some((rank, way));
            }
        }
        let (rank, way) = best?;
        let held = |board: &Pattern, kind: (i64, i64, usize)| kind.0 - board.used(self.demand);
        let now = Rank { cost: own.1 + its.1, gathered: -held(first, own).max(held(second, its)) };
        if rank > now {
            return None;
        }
        for (place, size) in movable.iter().enumerate() {
            if way >> place & 1 == 1 { here.push(*size) } else { there.push(*size) }
        }
        let used = self.sum(&here);
        let (one, two) = (self.kind(used, own)?, self.kind(total - used, its)?);
        Some((Pattern { kind: one.2, pieces: here }, Pattern { kind: two.2, pieces: there }))
    }

    fn sum(&self, pieces: &[usize]) -> i64 {
        pieces.iter().map(|size| self.demand.size(*size)).sum()
    }
}
