use super::apart::Apart;
use super::bound;
use super::demand::Demand;
use super::fill::Fill;
use super::master::{Master, Part};
use super::pattern::{Left, Packing, Pattern};
use super::random::Random;

/// The most sizes of a list that is searched in branches.
const SIZES: usize = 250;
/// How many columns a branch takes over.
const COLUMNS: usize = 3;

/// Branch and price: pairs of pieces are cut from one board or never (Ryan and Foster 1981), each branch with its own
/// programme and a bound in whole numbers. The least bound of the open branches bounds the whole.
#[derive(Clone, Debug)]
pub(super) struct Tree {
    open: Vec<Node>,
    now: Option<(Node, Demand, Master)>,
    /// The least bound of branches that are given up.
    given_up: Option<i128>,
}

/// A branch: pieces, some of them bound together, and pairs that no board holds.
#[derive(Clone, Debug)]
struct Node {
    /// The pieces by length, longest first.
    items: Vec<Item>,
    apart: Apart,
    bound: i128,
    start: Vec<Pattern>,
}

/// Pieces that are cut from one board, as one.
#[derive(Clone, Debug)]
struct Item {
    length: i64,
    count: u32,
    /// The sizes in it.
    sizes: Vec<usize>,
}

impl Tree {
    /// Starts from a solved programme for these pieces; `None` where there are too many sizes.
    pub(super) fn new(demand: &Demand, counts: &[u32], master: &Master) -> Option<Self> {
        let wanted = |size: &usize| counts.get(*size).is_some_and(|count| *count > 0);
        let sizes: Vec<usize> = (0..counts.len()).filter(wanted).collect();
        if sizes.len() > SIZES {
            return None;
        }
        let item = |size: &usize| {
            let count = counts.get(*size).copied().unwrap_or(0);
            Item { length: demand.size(*size), count, sizes: vec![*size] }
        };
        let place = |size: &usize| sizes.binary_search(size).ok();
        let start = master.near(COLUMNS * sizes.len() + 20).into_iter().filter_map(|pattern| {
            Some(Pattern { kind: pattern.kind, pieces: pattern.pieces.iter().map(place).collect::<Option<_>>()? })
        });
        let (items, start) = (sizes.iter().map(item).collect(), start.collect());
        let root = Node { items, apart: Apart::default(), bound: master.bound, start };
        Some(Self { open: vec![root], now: None, given_up: None })
    }

    /// What no plan can cost less than, if every plan from `cost` on is of no interest.
    pub(super) fn bound(&self, cost: i128) -> i128 {
        let open = self.open.iter().chain(self.now.as_ref().map(|(node, _, _)| node)).map(|node| node.bound);
        open.chain(self.given_up).min().unwrap_or(cost).min(cost)
    }

    /// Whether nothing is left to look at.
    pub(super) fn over(&self) -> bool {
        self.open.is_empty() && self.now.is_none()
    }

    /// One slice of work for plans under `cost`; a packing that was found on the way, if there is one.
    pub(super) fn advance(
        &mut self,
        demand: &Demand,
        cost: i128,
        random: &mut Random,
        work: &mut u64,
    ) -> Option<Packing> {
        let Some((mut node, own, mut master)) = self.now.take() else {
            let node = self.open.pop()?;
            *work += 1_000;
            if node.bound < cost {
                let own = node.demand(demand);
                match Master::new(&own, &own.fixed, false, &node.start, None) {
                    Some(master) => self.now = Some((node, own, master)),
                    None => self.give_up(node.bound),
                }
            }
            return None;
        };
        let before = master.work;
        master.advance(&own);
        *work += master.work - before;
        let reached = bound::reachable(demand, node.bound.max(master.bound), cost);
        if reached >= cost {
            return None;
        }
        if !master.done {
            self.now = Some((node, own, master));
            return None;
        }
        node.bound = reached;
        let values = super::dive::mixed(&own, &master.prices);
        let found = round(&own, &master, &values, random, work).map(|packing| node.unbind(&packing));
        match node.pair(&master) {
            Some((a, b)) => {
                node.start = master.near(COLUMNS * node.items.len() + 20);
                self.open.push(node.apart(a, b));
                // Plans are sooner found where pieces are bound together.
                self.open.push(node.together(a, b));
            }
            None => self.give_up(node.bound),
        }
        found
    }

    fn give_up(&mut self, bound: i128) {
        self.given_up = Some(self.given_up.map_or(bound, |known| known.min(bound)));
    }
}

/// What is whole in the programme's solution, and the rest filled up.
fn round(own: &Demand, master: &Master, values: &[f64], random: &mut Random, work: &mut u64) -> Option<Packing> {
    let (mut counts, mut left, mut boards) = (own.fixed.clone(), Left::new(own), Vec::new());
    for (part, share) in master.solution() {
        let Part::Cut { kind, pieces } = part else { continue };
        for _ in 0..(share + 1e-4).max(0.0) as u32 {
            let enough = pieces.iter().all(|(size, count)| counts.get(*size).is_some_and(|have| have >= count));
            if !enough || !left.has(*kind) {
                break;
            }
            for (size, count) in pieces {
                if let Some(have) = counts.get_mut(*size) {
                    *have -= count;
                }
            }
            left.take(*kind);
            boards.push(Pattern::of(*kind, pieces));
        }
    }
    let fill = Fill { demand: own, values, nodes: 1_500, skip: 0 };
    let rest = fill.pack(&counts, &mut left, random, work)?;
    boards.extend(rest.boards);
    let mut packing = Packing { boards };
    packing.shrink(own, Left::new(own));
    Some(packing)
}

impl Node {
    fn demand(&self, demand: &Demand) -> Demand {
        let sizes = self.items.iter().map(|item| item.length).collect();
        demand.with(sizes, self.items.iter().map(|item| item.count).collect(), self.apart.clone())
    }

    /// A packing of the items as one of the true sizes.
    fn unbind(&self, packing: &Packing) -> Packing {
        let board = |board: &Pattern| {
            let items = board.pieces.iter().filter_map(|item| self.items.get(*item));
            Pattern { kind: board.kind, pieces: items.flat_map(|item| item.sizes.iter().copied()).collect() }
        };
        Packing { boards: packing.boards.iter().map(board).collect() }
    }

    /// The pair about which the programme is least sure, the longest among equals.
    fn pair(&self, master: &Master) -> Option<(usize, usize)> {
        let count = self.items.len();
        let mut shares = vec![0.0_f64; count * count];
        for (part, share) in master.solution() {
            let Part::Cut { pieces, .. } = part else { continue };
            if (share - (share + 0.5).max(0.0) as i64 as f64).abs() < 1e-4 {
                continue;
            }
            for (place, (a, copies)) in pieces.iter().enumerate() {
                let twin = (*copies > 1).then_some(*a);
                for b in pieces.iter().skip(place + 1).map(|(b, _)| *b).chain(twin) {
                    if let Some(slot) = shares.get_mut(a.min(&b) * count + a.max(&b)) {
                        *slot += share;
                    }
                }
            }
        }
        let unsure = |share: f64| {
            let part = share - share as i64 as f64;
            part.min(1.0 - part) + 1e-3
        };
        let mut best: Option<(f64, usize)> = None;
        for (place, share) in shares.iter().enumerate().filter(|(_, share)| **share > 1e-5) {
            if best.is_none_or(|(known, _)| unsure(*share) > known + 1e-6) {
                best = Some((unsure(*share), place));
            }
        }
        best.map(|(_, place)| (place / count, place % count))
    }

    /// No board holds both.
    fn apart(&self, a: usize, b: usize) -> Self {
        let mut node = self.clone();
        node.apart.add(a, b);
        node.start.retain(|pattern| {
            let holds = |item: usize| pattern.pieces.iter().filter(|piece| **piece == item).count();
            if a == b { holds(a) < 2 } else { holds(a) == 0 || holds(b) == 0 }
        });
        node
    }

    /// One piece of each is cut from one board.
    fn together(&self, a: usize, b: usize) -> Self {
        let of = |item: usize| self.items.get(item);
        let length = [a, b].into_iter().filter_map(of).map(|item| item.length).sum();
        let sizes = [a, b].into_iter().filter_map(of).flat_map(|item| item.sizes.iter().copied()).collect();
        let place = self.items.partition_point(|item| item.length > length);
        let after = |item: usize| if item >= place { item + 1 } else { item };
        let mut node = self.clone();
        node.items.insert(place, Item { length, count: 1, sizes });
        // What either was kept apart from, both are.
        let mut apart = Apart::default();
        for (x, y) in self.apart.pairs() {
            apart.add(after(x), after(y));
            for (one, other) in [(x, y), (y, x)] {
                if one == a || one == b {
                    apart.add(place, after(other));
                    if other == a || other == b {
                        apart.add(place, place);
                    }
                }
            }
        }
        node.apart = apart;
        let (a, b) = (after(a), after(b));
        for item in [a, b] {
            if let Some(item) = node.items.get_mut(item) {
                item.count = item.count.saturating_sub(1);
            }
        }
        for pattern in &mut node.start {
            for piece in &mut pattern.pieces {
                *piece = after(*piece);
            }
            let first = pattern.pieces.iter().position(|piece| *piece == a);
            let second = pattern.pieces.iter().enumerate().position(|(at, piece)| *piece == b && Some(at) != first);
            if let (Some(first), Some(second)) = (first, second) {
                pattern.pieces.swap_remove(first.max(second));
                pattern.pieces.swap_remove(first.min(second));
                pattern.pieces.push(place);
            }
        }
        let counts: Vec<u32> = node.items.iter().map(|item| item.count).collect();
        node.start.retain(|pattern| {
            pattern.pieces.iter().all(|item| {
                let copies = pattern.pieces.iter().filter(|piece| *piece == item).count();
                counts.get(*item).is_some_and(|count| *count as usize >= copies)
            })
        });
        node
    }
}

#[cfg(test)]
mod tests {
    use crate::measure::Length;

    use super::super::{CutList, Run, Stock, exhaust, first_fit};
    use super::*;

    fn list(boards: &[(i64, u64, Option<u32>)], kerf: i64, pieces: &[i64]) -> CutList {
        let mut list = CutList::new();
        list.joints = false;
        list.division = crate::measure::Division::SIXTEENTH;
        list.kerf = Length::from_inches(kerf);
        let stock = |(length, cost, count): &(i64, u64, Option<u32>)| Stock {
            length: Length::from_inches(*length),
            cost: *cost,
            count: *count,
        };
        list.stock = boards.iter().map(stock).collect();
        for (course, piece) in pieces.iter().enumerate() {
            let (wall, course) = (String::new(), course as i64);
            list.runs.push(Run { wall, course, from: Length::ZERO, to: Length::from_inches(*piece) });
        }
        list
    }

    /// The bound of the programme alone, that of the tree at its end, and the cost of the best plan.
    fn search(demand: &Demand) -> (i128, i128, i128) {
        let counts = demand.counts(&Vec::new());
        let best = first_fit::pack(demand, &counts).expect("a plan");
        let mut master = Master::new(demand, &counts, false, &best.boards, None).expect("a programme");
        while !master.done {
            master.advance(demand);
        }
        let mut tree = Tree::new(demand, &counts, &master).expect("a tree");
        let (mut cost, mut random, mut work) = (best.cost(demand), Random::new(1), 0);
        while !tree.over() && work < 400_000_000 {
            let before = tree.bound(cost);
            if let Some(found) = tree.advance(demand, cost, &mut random, &mut work) {
                let mut all: Vec<usize> = found.boards.iter().flat_map(|board| board.pieces.clone()).collect();
                all.sort_unstable();
                let wanted = counts.iter().enumerate().flat_map(|(size, count)| (0..*count).map(move |_| size));
                assert_eq!(all, wanted.collect::<Vec<_>>(), "all pieces, once");
                assert!(found.boards.iter().all(|board| board.used(demand) <= demand.kinds[board.kind].capacity));
                if found.possible(demand) {
                    cost = cost.min(found.cost(demand));
                }
            }
            assert!(tree.bound(cost) >= before.min(cost), "a bound never falls");
        }
        (bound::reachable(demand, master.bound, cost), tree.bound(cost), cost)
    }

    /// Random lists against counting through all ways to cut them. Some have a gap between the programme and the optimum:
    /// it is closed wherever boards are not counted, and never claimed to be where it is not.
    #[test]
    fn branches_close_what_the_programme_leaves() {
        let mut random = Random::new(11);
        let (mut gaps, mut lists) = (0, 0);
        for round in 0..600 {
            let kerf = random.below(2) as i64;
            let boards: Vec<(i64, u64, Option<u32>)> = match round % 4 {
                0 => vec![(100, 1, None)],
                1 => vec![(70, 7, None), (100, 10, None), (45, 5, None)],
                2 => vec![(60, 3, None), (84, 4, None), (100, 5, None)],
                _ => vec![(70, 7, Some(2)), (100, 10, None), (45, 5, Some(1))],
            };
            let count = 6 + random.below(7);
            let pieces: Vec<i64> = (0..count).map(|_| 12 + random.below(45) as i64).collect();
            let demand = Demand::new(&list(&boards, kerf, &pieces)).expect("a list");
            let Some(optimum) = exhaust::exhaust(&demand, i128::MAX, &mut 0) else { continue };
            let least = optimum.expect("a plan").1.cost(&demand);
            let (programme, bound, cost) = search(&demand);
            assert!(programme <= least && bound <= least && least <= cost, "{pieces:?}: {bound}, {least}, {cost}");
            lists += 1;
            if boards.iter().all(|(_, _, count)| count.is_none()) {
                assert_eq!((bound, cost), (least, least), "{boards:?}, kerf {kerf}: {pieces:?}");
                gaps += i32::from(programme < least);
            }
        }
        assert!(lists > 200 && gaps > 5, "{gaps} gaps in {lists} lists");
    }
}
