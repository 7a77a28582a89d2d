use super::apart::Apart;
use super::demand::{Choices, Demand, TiedRuns};
use super::master::{ColumnPart, Master};
use super::pattern::{Packing, Pattern};

/// The most sizes of a list that is searched in branches.
const SIZES: usize = 250;
/// The most arrangements of all its runs.
const WAYS: usize = 4_000;
/// How many columns a branch takes over.
const COLUMNS: usize = 3;
/// How far from a whole number a part of the programme's solution is open.
const OPEN: f64 = 1e-4;

/// What a branch of the search has settled. Every plan belongs to one of the two branches that a split makes:
/// - a kind of board is taken at most so often, or more often;
/// - a run is pieced in one of some ways, or in one of the others;
/// - a pair of pieces is cut from one board somewhere, or nowhere (Ryan and Foster 1981).
///
/// The joints may still be open when pairs are settled: what is bound together is then taken off the pieces that the
/// joints give, and joints that do not give it lack it.
#[derive(Clone, Debug)]
pub(super) struct Branch {
    /// The pieces by length, longest first.
    items: Vec<JoinedPieces>,
    /// For each size of the demand the item that is nothing else.
    places: Vec<usize>,
    /// For each wall and each of its runs the arrangements that are left, ascending.
    ways: Vec<Vec<Vec<usize>>>,
    /// For each kind how many boards of it are taken at least, and at most.
    boards: Vec<(u32, Option<u32>)>,
    apart: Apart,
    pub(super) bound: i128,
    /// Patterns of items to start with.
    pub(super) start: Vec<Pattern>,
    /// Joints of walls to start with, in the demand's numbers.
    joints: Vec<(usize, Vec<usize>)>,
}

/// Pieces that are cut from one board, as one.
#[derive(Clone, Debug)]
struct JoinedPieces {
    length: i64,
    /// As the demand's `fixed`.
    count: i64,
    /// The sizes in it.
    sizes: Vec<usize>,
}

impl Branch {
    /// Nothing is settled yet; `None` where there are too many sizes, or walls whose arrangements are not all at hand.
    pub(super) fn root(demand: &Demand, master: &Master) -> Option<Self> {
        let all = |wall: &TiedRuns| wall.sizes.iter().map(|run| (0..run.len()).collect()).collect();
        let ways: Vec<Vec<Vec<usize>>> = demand.walls.iter().map(all).collect();
        let count: usize = ways.iter().flatten().map(Vec::len).sum();
        if demand.sizes.len() > SIZES || count > WAYS || !demand.walls.iter().all(TiedRuns::exact) {
            return None;
        }
        let sizes = demand.sizes.iter().zip(&demand.fixed).enumerate();
        let items =
            sizes.map(|(size, (length, count))| JoinedPieces { length: *length, count: *count, sizes: vec![size] });
        Some(Self {
            items: items.collect(),
            places: (0..demand.sizes.len()).collect(),
            ways,
            boards: demand.kinds.iter().map(|kind| (kind.least, kind.count)).collect(),
            apart: Apart::default(),
            bound: master.bound,
            start: master.near(COLUMNS * demand.sizes.len() + 20),
            joints: used_joints(master).map(|(wall, choice, _)| (wall, choice.clone())).collect(),
        })
    }

    /// What is left to decide.
    pub(super) fn demand(&self, demand: &Demand) -> Demand {
        let mut kinds = demand.kinds.clone();
        for (kind, (least, most)) in kinds.iter_mut().zip(&self.boards) {
            (kind.least, kind.count) = (*least, *most);
        }
        let place = |size: usize| self.places.get(size).copied().unwrap_or(size);
        let walls = demand.walls.iter().zip(&self.ways).map(|(wall, ways)| wall.only(ways, place)).collect();
        let lengths = self.items.iter().map(|item| item.length).collect();
        let counts = self.items.iter().map(|item| item.count).collect();
        let mut own = demand.with(lengths, counts, kinds, walls);
        own.apart = self.apart.clone();
        own
    }

    /// The joints to start with, in the branch's own numbers.
    pub(super) fn joints(&self) -> Vec<(usize, Vec<usize>)> {
        let own = |(wall, choice): &(usize, Vec<usize>)| {
            let ways = self.ways.get(*wall)?;
            let picks = ways.iter().zip(choice).map(|(ways, pick)| ways.binary_search(pick).ok());
            Some((*wall, picks.collect::<Option<_>>()?))
        };
        self.joints.iter().filter_map(own).collect()
    }

    /// Joints and a packing of the items in the numbers of the demand.
    pub(super) fn unbind(&self, choices: &Choices, packing: &Packing) -> (Choices, Packing) {
        let board = |board: &Pattern| {
            let items = board.pieces.iter().filter_map(|item| self.items.get(*item));
            Pattern { kind: board.kind, pieces: items.flat_map(|item| item.sizes.iter().copied()).collect() }
        };
        let choices = choices.iter().enumerate().map(|(wall, choice)| self.choice(wall, choice)).collect();
        (choices, Packing { boards: packing.boards.iter().map(board).collect() })
    }

    /// The arrangements of a wall in the numbers of the demand.
    fn choice(&self, wall: usize, choice: &[usize]) -> Vec<usize> {
        let ways = self.ways.get(wall).into_iter().flatten();
        ways.zip(choice).filter_map(|(ways, pick)| ways.get(*pick).copied()).collect()
    }

    /// Two branches about what the solved programme leaves open, the one to look at first at the end; `None` where all of
    /// it is whole.
    pub(super) fn split(mut self, master: &Master) -> Option<[Self; 2]> {
        self.start = master.near(COLUMNS * self.items.len() + 20);
        self.joints = used_joints(master).map(|(wall, choice, _)| (wall, self.choice(wall, choice))).collect();
        self.by_boards(master).or_else(|| self.by_joints(master)).or_else(|| {
            let (a, b) = self.pair(master)?;
            // Plans are sooner found where pieces are bound together.
            Some([self.apart(a, b), self.together(a, b)])
        })
    }

    /// At most so many boards of a kind, or more: of the kind about which the programme is least sure.
    fn by_boards(&self, master: &Master) -> Option<[Self; 2]> {
        // One kind alone: what it costs says how many there are.
        if self.boards.len() < 2 {
            return None;
        }
        let mut totals = vec![0.0_f64; self.boards.len()];
        for (part, share) in master.solution() {
            if let ColumnPart::Cut { kind, .. } = part
                && let Some(total) = totals.get_mut(*kind)
            {
                *total += share;
            }
        }
        let open = totals.iter().enumerate().map(|(kind, total)| (unsure(*total), kind, *total));
        let (_, kind, total) = open.filter(|(open, ..)| *open > OPEN).max_by(|a, b| a.0.total_cmp(&b.0))?;
        let (mut fewer, mut more) = (self.clone(), self.clone());
        if let (Some((_, most)), Some((least, _))) = (fewer.boards.get_mut(kind), more.boards.get_mut(kind)) {
            *most = Some(total as u32);
            *least = total as u32 + 1;
        }
        Some(if total - f64::from(total as u32) > 0.5 { [fewer, more] } else { [more, fewer] })
    }

    /// The first or the later ways to piece a run: of the run about which the programme is least sure.
    fn by_joints(&self, master: &Master) -> Option<[Self; 2]> {
        let mut shares: Vec<Vec<Vec<f64>>> =
            self.ways.iter().map(|wall| wall.iter().map(|ways| vec![0.0; ways.len()]).collect()).collect();
        for (wall, choice, share) in used_joints(master) {
            for (run, pick) in shares.get_mut(wall).into_iter().flatten().zip(choice) {
                if let Some(slot) = run.get_mut(*pick) {
                    *slot += share;
                }
            }
        }
        let runs = shares.iter().enumerate().flat_map(|(wall, runs)| {
            let most = |run: &Vec<f64>| run.iter().copied().fold(0.0, f64::max);
            runs.iter().enumerate().map(move |(run, shares)| (most(shares), wall, run, shares))
        });
        let open = runs.filter(|(most, ..)| *most < 1.0 - OPEN);
        let (_, wall, run, shares) = open.min_by(|a, b| a.0.total_cmp(&b.0))?;
        // Cut where both sides weigh most nearly the same.
        let mut sum = 0.0;
        let mut best: Option<(f64, usize, f64)> = None;
        for (at, share) in shares.iter().enumerate() {
            sum += share;
            let off = (sum - 0.5).abs();
            if at + 1 < shares.len() && sum > OPEN && best.is_none_or(|(known, ..)| off < known) {
                best = Some((off, at + 1, sum));
            }
        }
        let (_, cut, before) = best?;
        let part = |first: bool| {
            let mut branch = self.clone();
            if let Some(ways) = branch.ways.get_mut(wall).and_then(|wall| wall.get_mut(run)) {
                *ways = if first {
                    ways.iter().take(cut).copied().collect()
                } else {
                    ways.iter().skip(cut).copied().collect()
                };
            }
            branch
        };
        Some(if before > 0.5 { [part(false), part(true)] } else { [part(true), part(false)] })
    }

    /// The pair about which the programme is least sure, the longest among equals.
    fn pair(&self, master: &Master) -> Option<(usize, usize)> {
        let count = self.items.len();
        let mut shares = vec![0.0_f64; count * count];
        for (part, share) in master.solution() {
            let ColumnPart::Cut { pieces, .. } = part else { continue };
            if unsure(share) < OPEN {
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
        let unsure = |share: f64| unsure(share) + 1e-3;
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
        let mut branch = self.clone();
        branch.apart.add(a, b);
        branch.start.retain(|pattern| {
            let holds = |item: usize| pattern.pieces.iter().filter(|piece| **piece == item).count();
            if a == b { holds(a) < 2 } else { holds(a) == 0 || holds(b) == 0 }
        });
        branch
    }

    /// One piece of each is cut from one board.
    fn together(&self, a: usize, b: usize) -> Self {
        let of = |item: usize| self.items.get(item);
        let length = [a, b].into_iter().filter_map(of).map(|item| item.length).sum();
        let sizes = [a, b].into_iter().filter_map(of).flat_map(|item| item.sizes.iter().copied()).collect();
        let place = self.items.partition_point(|item| item.length > length);
        let after = |item: usize| if item >= place { item + 1 } else { item };
        let mut branch = self.clone();
        branch.items.insert(place, JoinedPieces { length, count: 1, sizes });
        branch.places.iter_mut().for_each(|item| *item = after(*item));
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
        branch.apart = apart;
        let (a, b) = (after(a), after(b));
        for item in [a, b] {
            if let Some(item) = branch.items.get_mut(item) {
                item.count -= 1;
            }
        }
        for pattern in &mut branch.start {
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
        // Where joints are open, nobody knows yet how many pieces of a size there are.
        if branch.ways.is_empty() {
            let counts: Vec<i64> = branch.items.iter().map(|item| item.count).collect();
            branch.start.retain(|pattern| {
                pattern.pieces.iter().all(|item| {
                    let copies = pattern.pieces.iter().filter(|piece| *piece == item).count();
                    counts.get(*item).is_some_and(|count| *count >= copies as i64)
                })
            });
        }
        branch
    }
}

/// The joints of walls that the programme uses, and how much of each.
fn used_joints(master: &Master) -> impl Iterator<Item = (usize, &Vec<usize>, f64)> {
    master.solution().into_iter().filter_map(|(part, share)| match part {
        ColumnPart::Joints { wall, choice } => Some((*wall, choice, share)),
        _ => None,
    })
}

/// How far a share is from a whole number.
fn unsure(share: f64) -> f64 {
    let part = share - share as i64 as f64;
    part.min(1.0 - part)
}
