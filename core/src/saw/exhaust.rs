//! Small demands to the end: every set of joints, and for each the least cost over all ways to cut its pieces.

use std::collections::{BTreeMap, BTreeSet};

use super::demand::{Choices, Demand};
use super::pattern::{Packing, Pattern};

/// The most sets of joints that are counted through.
const JOINTS: usize = 3_000;
/// The most pieces.
const PIECES: u32 = 200;
/// The most sets of pieces that may be left to cut.
const SETS: u64 = 1 << 17;
/// The most states that are remembered.
const STATES: usize = 100_000;
/// The most operations.
const WORK: u64 = 30_000_000;

/// What is left to cut and to cut from: pieces by size, boards by counted kind.
type LeftToCut = (Vec<u8>, Vec<u8>);

/// The least cost for some pieces, and the board that it starts with.
struct Table<'a> {
    demand: &'a Demand,
    sizes: Vec<usize>,
    known: BTreeMap<LeftToCut, Option<(i128, Vec<u8>, usize)>>,
    work: u64,
}

/// The cheapest plan under `cost`, if there is one; `None` where the demand is too large to be sure.
pub(super) fn exhaust(demand: &Demand, cost: i128, work: &mut u64) -> Option<Option<(Choices, Packing)>> {
    let mut all: Vec<Choices> = vec![Vec::new()];
    for wall in &demand.walls {
        if !wall.exact() {
            return None;
        }
        let own = wall.all(JOINTS)?;
        if own.len() * all.len() > JOINTS {
            return None;
        }
        let with = |before: &Choices| {
            let before = before.clone();
            own.iter().map(move |choice| before.iter().cloned().chain([choice.clone()]).collect()).collect::<Vec<_>>()
        };
        all = all.iter().flat_map(with).collect();
    }
    let mut seen: BTreeSet<Vec<u32>> = BTreeSet::new();
    let mut best: Option<(i128, Choices, Packing)> = None;
    for choices in all {
        let counts = demand.counts(&choices);
        if !seen.insert(counts.clone()) {
            continue;
        }
        let sizes: Vec<usize> =
            counts.iter().enumerate().filter(|(_, count)| **count > 0).map(|(size, _)| size).collect();
        let pieces: Option<Vec<u8>> =
            sizes.iter().map(|size| counts.get(*size).and_then(|count| u8::try_from(*count).ok())).collect();
        let total: u32 = counts.iter().sum();
        let states = counts.iter().fold(1_u64, |states, count| states.saturating_mul(u64::from(*count) + 1));
        if total > PIECES || states > SETS {
            return None;
        }
        // More boards than pieces are never needed.
        let boards: Option<Vec<u8>> =
            demand.kinds.iter().map(|kind| u8::try_from(kind.count.unwrap_or(0).min(total)).ok()).collect();
        let state = (pieces?, boards?);
        let mut table = Table { demand, sizes, known: BTreeMap::new(), work: *work };
        let found = table.least(&state, WORK);
        *work = table.work;
        let found = found?;
        let limit = best.as_ref().map_or(cost, |(known, _, _)| *known);
        if let Some(value) = found.filter(|value| *value < limit) {
            best = Some((value, choices, table.packing(state)));
        }
    }
    Some(best.map(|(_, choices, packing)| (choices, packing)))
}

impl Table<'_> {
    /// `None` where the work runs out, `Some(None)` where the boards do.
    fn least(&mut self, state: &LeftToCut, most: u64) -> Option<Option<i128>> {
        if state.0.iter().all(|count| *count == 0) {
            return Some(Some(0));
        }
        if let Some(known) = self.known.get(state) {
            return Some(known.as_ref().map(|(cost, _, _)| *cost));
        }
        let mut best: Option<(i128, Vec<u8>, usize)> = None;
        for (kind, board) in self.demand.kinds.iter().enumerate() {
            if board.count.is_some() && state.1.get(kind) == Some(&0) {
                continue;
            }
            let mut patterns = Vec::new();
            self.patterns(state, board.capacity, &mut patterns);
            self.work += 100 * patterns.len() as u64;
            for pattern in patterns {
                if self.work > most {
                    return None;
                }
                let rest = state.0.iter().zip(&pattern).map(|(have, cut)| have - cut).collect();
                let mut boards = state.1.clone();
                if let (Some(_), Some(left)) = (board.count, boards.get_mut(kind)) {
                    *left -= 1;
                }
                if let Some(cost) = self.least(&(rest, boards), most)? {
                    let cost = cost + i128::from(board.cost);
                    if best.as_ref().is_none_or(|(known, _, _)| cost < *known) {
                        best = Some((cost, pattern, kind));
                    }
                }
            }
        }
        if self.known.len() >= STATES {
            return None;
        }
        let cost = best.as_ref().map(|(cost, _, _)| *cost);
        self.known.insert(state.clone(), best);
        Some(cost)
    }

    /// Everything that one board can give with the longest piece among it and no room for any other.
    fn patterns(&self, state: &LeftToCut, capacity: i64, out: &mut Vec<Vec<u8>>) {
        let mut pattern = vec![0; state.0.len()];
        let Some(first) = state.0.iter().position(|count| *count > 0) else { return };
        let size = |at: usize| self.sizes.get(at).map_or(i64::MAX, |size| self.demand.size(*size));
        let Some(room) = capacity.checked_sub(size(first)).filter(|room| *room >= 0) else { return };
        if let Some(slot) = pattern.get_mut(first) {
            *slot = 1;
        }
        self.extend(state, first, room, &mut pattern, out);
    }

    fn extend(&self, state: &LeftToCut, at: usize, room: i64, pattern: &mut Vec<u8>, out: &mut Vec<Vec<u8>>) {
        let size = |at: usize| self.sizes.get(at).map_or(i64::MAX, |size| self.demand.size(*size));
        if at >= state.0.len() {
            let fits = |at: usize| state.0.get(at) > pattern.get(at) && size(at) <= room;
            if !(0..state.0.len()).any(fits) {
                out.push(pattern.clone());
            }
            return;
        }
        let (have, cut) = (state.0.get(at).copied().unwrap_or(0), pattern.get(at).copied().unwrap_or(0));
        let mut room = room;
        for count in cut..=have {
            if count > cut {
                room -= size(at);
            }
            if room < 0 || out.len() > 100_000 {
                break;
            }
            if let Some(slot) = pattern.get_mut(at) {
                *slot = count;
            }
            self.extend(state, at + 1, room, pattern, out);
        }
        if let Some(slot) = pattern.get_mut(at) {
            *slot = cut;
        }
    }

    fn packing(&self, mut state: LeftToCut) -> Packing {
        let mut packing = Packing::default();
        while let Some(Some((_, pattern, kind))) = self.known.get(&state) {
            let pieces = self.sizes.iter().zip(pattern).flat_map(|(size, count)| (0..*count).map(|_| *size));
            packing.boards.push(Pattern { kind: *kind, pieces: pieces.collect() });
            for (have, cut) in state.0.iter_mut().zip(pattern) {
                *have -= cut;
            }
            if let Some(left) = state.1.get_mut(*kind) {
                *left = left.saturating_sub(1);
            }
        }
        packing
    }
}
