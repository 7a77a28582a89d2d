//! Joints of neighbouring courses keep their stagger: runs as variables, their arrangements as values, and exact
//! elimination of one run after the other.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::measure::Length;

use super::arrangement::Arrangement;
use super::marks::JointBits;
use super::{RunToCut, SawError};

/// No arrangement can have this price.
const NEVER: i64 = i64::MAX;
/// The largest table of one elimination.
const TABLE: usize = 1 << 20;
/// The most pairs of neighbours.
const PAIRS: usize = 100_000;

/// Runs that are tied to one another by stagger, with their ways to be pieced.
#[derive(Clone, Debug)]
pub(super) struct Group {
    /// Indices of the runs in the cut list.
    pub(super) runs: Vec<usize>,
    /// The arrangements of each run.
    pub(super) choices: Vec<Arc<Vec<Arrangement>>>,
    /// For each run its neighbours in the group.
    neighbours: Vec<BTreeSet<usize>>,
    stagger: Length,
    /// The joints as bits, where there are not too many.
    marks: Option<JointBits>,
    /// The order in which runs are eliminated, each with the runs that its table depends on; `None` where the tables
    /// would be too large.
    order: Option<Vec<(usize, Vec<usize>)>>,
}

/// Pairs of pieced runs that must keep their stagger: of one wall, courses that differ by one, overlapping in x.
pub(super) fn pairs(runs: &[RunToCut], pieced: &[usize]) -> Result<Vec<(usize, usize)>, SawError> {
    let mut courses: BTreeMap<(&str, i64), Vec<usize>> = BTreeMap::new();
    for index in pieced {
        if let Some(run) = runs.get(*index) {
            courses.entry((&run.wall, run.course)).or_default().push(*index);
        }
    }
    let mut pairs = Vec::new();
    for ((wall, course), lower) in &courses {
        let Some(upper) = course.checked_add(1).and_then(|next| courses.get(&(*wall, next))) else { continue };
        for a in lower {
            for b in upper {
                if let (Some(x), Some(y)) = (runs.get(*a), runs.get(*b))
                    && x.from < y.to
                    && y.from < x.to
                {
                    pairs.push((*a, *b));
                    if pairs.len() > PAIRS {
                        return Err(SawError::TooMany { what: "runs" });
                    }
                }
            }
        }
    }
    Ok(pairs)
}

/// Connected groups of the pieced runs, in the order of their first run.
pub(super) fn groups(pieced: &[usize], pairs: &[(usize, usize)]) -> Vec<Vec<usize>> {
    let mut neighbours: BTreeMap<usize, Vec<usize>> = pieced.iter().map(|run| (*run, Vec::new())).collect();
    for (a, b) in pairs {
        neighbours.entry(*a).or_default().push(*b);
        neighbours.entry(*b).or_default().push(*a);
    }
    let mut seen = BTreeSet::new();
    let mut groups = Vec::new();
    for start in neighbours.keys() {
        if !seen.insert(*start) {
            continue;
        }
        let mut group = vec![*start];
        let mut next = 0;
        while let Some(run) = group.get(next).copied() {
            next += 1;
            for other in neighbours.get(&run).into_iter().flatten() {
                if seen.insert(*other) {
                    group.push(*other);
                }
            }
        }
        group.sort_unstable();
        groups.push(group);
    }
    groups
}

impl Group {
    pub(super) fn new(
        runs: Vec<usize>,
        choices: Vec<Arc<Vec<Arrangement>>>,
        pairs: &[(usize, usize)],
        stagger: Length,
    ) -> Self {
        let place: BTreeMap<usize, usize> = runs.iter().enumerate().map(|(place, run)| (*run, place)).collect();
        let mut neighbours = vec![BTreeSet::new(); runs.len()];
        for (a, b) in pairs {
            if let (Some(a), Some(b)) = (place.get(a), place.get(b)) {
                neighbours.get_mut(*a).map(|set| set.insert(*b));
                neighbours.get_mut(*b).map(|set| set.insert(*a));
            }
        }
        let marks = JointBits::new(&choices, stagger);
        let mut group = Self { runs, choices, neighbours, stagger, marks, order: None };
        group.order = group.elimination();
        group
    }

    /// Whether [`Self::cheapest`] is exact.
    pub(super) fn exact(&self) -> bool {
        self.order.is_some()
    }

    fn size(&self, run: usize) -> usize {
        self.choices.get(run).map_or(0, |choices| choices.len())
    }

    /// The run with the smallest table goes first.
    fn elimination(&self) -> Option<Vec<(usize, Vec<usize>)>> {
        let mut graph = self.neighbours.clone();
        let table = |run: usize, graph: &[BTreeSet<usize>]| {
            let near = graph.get(run).into_iter().flatten();
            near.fold(self.size(run).max(1), |size, other| size.saturating_mul(self.size(*other).max(1)))
        };
        let mut queue: BTreeSet<(usize, usize)> = (0..graph.len()).map(|run| (table(run, &graph), run)).collect();
        let mut order = Vec::new();
        while let Some((size, run)) = queue.pop_first() {
            if size > TABLE {
                return None;
            }
            let near: Vec<usize> = graph.get_mut(run).map(std::mem::take).into_iter().flatten().collect();
            for a in &near {
                queue.remove(&(table(*a, &graph), *a));
            }
            // Out with the run, and its neighbours are tied to one another.
            for a in &near {
                if let Some(set) = graph.get_mut(*a) {
                    set.remove(&run);
                    set.extend(near.iter().copied().filter(|b| b != a));
                }
            }
            for a in &near {
                queue.insert((table(*a, &graph), *a));
            }
            order.push((run, near));
        }
        Some(order)
    }

    fn joints(&self, run: usize, choice: usize) -> &[Length] {
        self.choices.get(run).and_then(|choices| choices.get(choice)).map_or(&[], |choice| &choice.joints)
    }

    fn keeps(&self, a: (usize, usize), b: (usize, usize)) -> bool {
        match &self.marks {
            Some(marks) => marks.keep(a, b),
            None => apart(self.joints(a.0, a.1), self.joints(b.0, b.1), self.stagger),
        }
    }

    /// The choice for each run whose prices have the least sum, and that sum; `None` where stagger allows no choice.
    ///
    /// Exact where [`Self::exact`] says so. Otherwise the choices are found by a search that may miss some.
    pub(super) fn cheapest(&self, prices: &[Vec<i64>]) -> Option<(i64, Vec<usize>)> {
        match &self.order {
            Some(order) => self.eliminate(order, prices),
            None => self.settle(prices),
        }
    }

    /// For each run one more arrangement, course by course beside those of its neighbours, where there is one: for long
    /// runs, of whose arrangements only some are at hand.
    pub(super) fn widen(&mut self, beside: impl Fn(usize, &[Length]) -> Option<Arrangement>) {
        let mut placed: BTreeMap<usize, Vec<Length>> = BTreeMap::new();
        for place in 0..self.runs.len() {
            let Some(run) = self.runs.get(place).copied() else { continue };
            let near = self.neighbours.get(place).into_iter().flatten();
            let others: Vec<Length> = near.filter_map(|other| placed.get(other)).flatten().copied().collect();
            let Some(arrangement) = beside(run, &others) else { continue };
            placed.insert(place, arrangement.joints.clone());
            if let Some(choices) = self.choices.get_mut(place)
                && !choices.contains(&arrangement)
            {
                Arc::make_mut(choices).push(arrangement);
            }
        }
        self.marks = JointBits::new(&self.choices, self.stagger);
        self.order = self.elimination();
    }

    /// The group with some of the arrangements of each run only, in this order.
    pub(super) fn only(&self, ways: &[Vec<usize>]) -> Self {
        let mut group = Self { marks: None, order: None, ..self.clone() };
        for (choices, ways) in group.choices.iter_mut().zip(ways) {
            *choices = Arc::new(ways.iter().filter_map(|way| choices.get(*way).cloned()).collect());
        }
        group.marks = JointBits::new(&group.choices, group.stagger);
        group.order = group.elimination();
        group
    }

    /// All choices that keep their stagger; `None` where there are more than `most`.
    pub(super) fn all(&self, most: usize) -> Option<Vec<Vec<usize>>> {
        let mut all: Vec<Vec<usize>> = vec![Vec::new()];
        for run in 0..self.runs.len() {
            let mut next = Vec::new();
            for choice in &all {
                for pick in 0..self.size(run) {
                    let near = self.neighbours.get(run).into_iter().flatten();
                    let mut set = near.filter_map(|other| Some((*other, choice.get(*other).copied()?)));
                    if set.all(|other| self.keeps((run, pick), other)) {
                        next.push(choice.iter().copied().chain([pick]).collect());
                    }
                }
                if next.len() > most {
                    return None;
                }
            }
            all = next;
        }
        Some(all)
    }

    fn eliminate(&self, order: &[(usize, Vec<usize>)], prices: &[Vec<i64>]) -> Option<(i64, Vec<usize>)> {
        // For each run the tables, as places in `decided`, that wait for its elimination.
        let mut waiting: Vec<Vec<usize>> = vec![Vec::new(); self.runs.len()];
        let mut position = vec![0; self.runs.len()];
        for (place, (run, _)) in order.iter().enumerate() {
            if let Some(slot) = position.get_mut(*run) {
                *slot = place;
            }
        }
        let mut total: i64 = 0;
        let mut decided: Vec<(usize, Table)> = Vec::new();
        for (run, near) in order {
            let own = prices.get(*run)?;
            let inner = waiting.get_mut(*run).map(std::mem::take).unwrap_or_default();
            let inner: Vec<&Table> =
                inner.iter().filter_map(|place| decided.get(*place)).map(|(_, table)| table).collect();
            let table = self.table(*run, near, own, &inner);
            // The table goes to the neighbour that is eliminated first.
            match near.iter().min_by_key(|other| position.get(**other).copied()) {
                Some(first) => waiting.get_mut(*first)?.push(decided.len()),
                None => {
                    let (value, _) = table.cells.first().copied()?;
                    if value == NEVER {
                        return None;
                    }
                    total = total.saturating_add(value);
                }
            }
            decided.push((*run, table));
        }
        let mut choice = vec![0; self.runs.len()];
        for (run, table) in decided.iter().rev() {
            let (value, pick) = table.at(&choice);
            if value == NEVER {
                return None;
            }
            *choice.get_mut(*run)? = pick;
        }
        Some((total, choice))
    }

    /// The least price of a run and all that was eliminated before it, for every choice of its neighbours.
    fn table(&self, run: usize, near: &[usize], own: &[i64], inner: &[&Table]) -> Table {
        let direct = self.neighbours.get(run);
        let tied: Vec<usize> =
            near.iter().copied().filter(|other| direct.is_some_and(|set| set.contains(other))).collect();
        let sizes: Vec<usize> = near.iter().map(|other| self.size(*other)).collect();
        let mut table = Table { scope: near.to_vec(), sizes: sizes.clone(), cells: Vec::new() };
        let mut choice = vec![0; self.runs.len()];
        // With one neighbour, and what was eliminated hanging on this run alone, the cheapest that keeps its stagger is
        // found by going through the choices in the order of their price.
        let alone = inner.iter().all(|inner| inner.scope.len() == 1);
        if alone {
            let mut sorted: Vec<(i64, usize)> = Vec::with_capacity(own.len());
            for (pick, price) in own.iter().enumerate() {
                if let Some(slot) = choice.get_mut(run) {
                    *slot = pick;
                }
                sorted.push((inner.iter().fold(*price, |sum, inner| add(sum, inner.at(&choice).0)), pick));
            }
            sorted.sort_unstable();
            each(near, &sizes, &mut choice, |choice| {
                let keeps = |pick: usize| {
                    tied.iter().all(|other| self.keeps((run, pick), (*other, choice.get(*other).copied().unwrap_or(0))))
                };
                let found = sorted.iter().find(|(price, pick)| *price == NEVER || keeps(*pick));
                table.cells.push(found.copied().unwrap_or((NEVER, 0)));
            });
            return table;
        }
        if let Some(cells) = self.between(run, near, own, inner) {
            table.cells = cells;
            return table;
        }
        each(near, &sizes, &mut choice, |choice| {
            let mut best = (NEVER, 0);
            for (pick, price) in own.iter().enumerate() {
                if *price >= best.0 {
                    continue;
                }
                if let Some(slot) = choice.get_mut(run) {
                    *slot = pick;
                }
                let sum = inner.iter().fold(*price, |sum, inner| add(sum, inner.at(choice).0));
                let keeps = || {
                    tied.iter().all(|other| self.keeps((run, pick), (*other, choice.get(*other).copied().unwrap_or(0))))
                };
                if sum < best.0 && keeps() {
                    best = (sum, pick);
                }
            }
            table.cells.push(best);
        });
        table
    }

    /// The cells of a run's table where it has one or two neighbours and no earlier table ties all three: for both a matrix
    /// of what this run's choices cost beside theirs, and the least sum over both. `None` for other runs.
    fn between(&self, run: usize, near: &[usize], own: &[i64], inner: &[&Table]) -> Option<Vec<(i64, usize)>> {
        let (first, second) = match near {
            [first] => (*first, None),
            [first, second] => (*first, Some(*second)),
            _ => return None,
        };
        if inner.iter().any(|table| table.scope.len() > 2) {
            return None;
        }
        let mut choice = vec![0; self.runs.len()];
        // What a choice of the run costs beside every choice of a neighbour.
        let mut beside = |other: usize| -> Option<Vec<Vec<i64>>> {
            let tables: Vec<&&Table> = inner.iter().filter(|table| table.scope.contains(&other)).collect();
            let tied = self.neighbours.get(run)?.contains(&other);
            let mut rows = Vec::with_capacity(own.len());
            for pick in 0..own.len() {
                *choice.get_mut(run)? = pick;
                let mut row = Vec::with_capacity(self.size(other));
                for its in 0..self.size(other) {
                    *choice.get_mut(other)? = its;
                    let keeps = !tied || self.keeps((run, pick), (other, its));
                    let sum = || tables.iter().fold(0, |sum, table| add(sum, table.at(&choice).0));
                    row.push(if keeps { sum() } else { NEVER });
                }
                rows.push(row);
            }
            Some(rows)
        };
        let one = beside(first)?;
        let other = match second {
            Some(second) => beside(second)?,
            None => vec![vec![0]; own.len()],
        };
        let alone = |pick: usize, choice: &mut Vec<usize>| {
            if let Some(slot) = choice.get_mut(run) {
                *slot = pick;
            }
            let tables = inner.iter().filter(|table| table.scope.len() == 1);
            tables.fold(own.get(pick).copied().unwrap_or(NEVER), |sum, table| add(sum, table.at(choice).0))
        };
        let width = second.map_or(1, |second| self.size(second));
        let mut cells = vec![(NEVER, 0); self.size(first) * width];
        let bases: Vec<i64> = (0..own.len()).map(|pick| alone(pick, &mut choice)).collect();
        for (its, cells) in cells.chunks_mut(width.max(1)).enumerate() {
            for (pick, ((base, row), other)) in bases.iter().zip(&one).zip(&other).enumerate() {
                let base = add(*base, row.get(its).copied().unwrap_or(NEVER));
                if base == NEVER {
                    continue;
                }
                for (cell, more) in cells.iter_mut().zip(other) {
                    let sum = base.saturating_add(*more);
                    if sum < cell.0 {
                        *cell = (sum, pick);
                    }
                }
            }
        }
        Some(cells)
    }

    /// Whether there are choices that keep their stagger: one is soon found, or all are looked at.
    pub(super) fn possible(&self) -> bool {
        let free: Vec<Vec<i64>> = self.choices.iter().map(|choices| vec![0; choices.len()]).collect();
        self.settle(&free).is_some() || self.cheapest(&free).is_some()
    }

    /// Repairs the cheapest choices until all keep their stagger, or gives up.
    pub(super) fn settle(&self, prices: &[Vec<i64>]) -> Option<(i64, Vec<usize>)> {
        let mut choice: Vec<usize> = prices
            .iter()
            .map(|prices| prices.iter().enumerate().min_by_key(|(_, price)| **price).map_or(0, |(pick, _)| pick))
            .collect();
        let broken = |run: usize, pick: usize, choice: &[usize]| {
            let near = self.neighbours.get(run).into_iter().flatten();
            near.filter(|other| !self.keeps((run, pick), (**other, choice.get(**other).copied().unwrap_or(0)))).count()
        };
        let mut weight = vec![1_usize; self.runs.len()];
        for _ in 0..20 {
            let mut sound = true;
            for run in 0..self.runs.len() {
                let now = choice.get(run).copied().unwrap_or(0);
                if broken(run, now, &choice) == 0 {
                    continue;
                }
                sound = false;
                let own = prices.get(run)?;
                let heavy = |pick: usize| {
                    let near = self.neighbours.get(run).into_iter().flatten();
                    near.filter(|other| !self.keeps((run, pick), (**other, choice.get(**other).copied().unwrap_or(0))))
                        .map(|other| weight.get(*other).copied().unwrap_or(1))
                        .sum::<usize>()
                };
                let best = own
                    .iter()
                    .enumerate()
                    .filter(|(_, price)| **price != NEVER)
                    .min_by_key(|(pick, price)| (heavy(*pick), **price, *pick));
                let pick = best?.0;
                if let Some(slot) = weight.get_mut(run) {
                    *slot += 1;
                }
                *choice.get_mut(run)? = pick;
            }
            if sound {
                let total = choice.iter().zip(prices).map(|(pick, own)| own.get(*pick).copied().unwrap_or(0));
                return Some((total.fold(0, i64::saturating_add), choice));
            }
        }
        None
    }

    /// Whether a run may change to another choice while its neighbours stay.
    pub(super) fn allows(&self, choice: &[usize], run: usize, pick: usize) -> bool {
        let near = self.neighbours.get(run).into_iter().flatten();
        near.copied().all(|other| self.keeps((run, pick), (other, choice.get(other).copied().unwrap_or(0))))
    }
}

/// The least price for every choice of the runs in `scope`, the last one turning fastest, and the pick that has it.
#[derive(Clone, Debug)]
struct Table {
    scope: Vec<usize>,
    sizes: Vec<usize>,
    cells: Vec<(i64, usize)>,
}

impl Table {
    fn at(&self, choice: &[usize]) -> (i64, usize) {
        let place = self
            .scope
            .iter()
            .zip(&self.sizes)
            .fold(0, |place, (run, size)| place * size + choice.get(*run).copied().unwrap_or(0));
        self.cells.get(place).copied().unwrap_or((NEVER, 0))
    }
}

fn add(a: i64, b: i64) -> i64 {
    if a == NEVER || b == NEVER { NEVER } else { a.saturating_add(b) }
}

/// Calls `visit` for every choice of the runs in `scope`, the last one turning fastest.
fn each(scope: &[usize], sizes: &[usize], choice: &mut Vec<usize>, mut visit: impl FnMut(&mut Vec<usize>)) {
    let total = sizes.iter().product::<usize>();
    for number in 0..total {
        let mut rest = number;
        for (run, size) in scope.iter().zip(sizes).rev() {
            if let Some(slot) = choice.get_mut(*run) {
                *slot = rest % size;
            }
            rest /= size;
        }
        visit(choice);
    }
}

/// Whether every joint of one run stays `stagger` away from every joint of the other; both ascending.
fn apart(a: &[Length], b: &[Length], stagger: Length) -> bool {
    let (mut i, mut j) = (0, 0);
    while let (Some(x), Some(y)) = (a.get(i), b.get(j)) {
        if (*x - *y).abs() < stagger {
            return false;
        }
        if x < y { i += 1 } else { j += 1 }
    }
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Bits say what a walk along the joints says, for every distance.
    #[test]
    fn marks_agree_with_the_walk() {
        let all = choices(&[&[16, 48], &[32], &[17, 49, 80], &[], &[64], &[0, 100]]);
        for stagger in 0..40 {
            let stagger = Length::from_inches(stagger);
            let marks = JointBits::new(&[Arc::clone(&all), Arc::clone(&all)], stagger).unwrap();
            for a in 0..all.len() {
                for b in 0..all.len() {
                    let want = apart(&all[a].joints, &all[b].joints, stagger);
                    assert_eq!(marks.keep((0, a), (1, b)), want, "{a} {b} {stagger:?}");
                }
            }
        }
    }

    fn choices(joints: &[&[i64]]) -> Arc<Vec<Arrangement>> {
        let arrangement = |joints: &&[i64]| Arrangement {
            joints: joints.iter().map(|at| Length::from_inches(*at)).collect(),
            pieces: Vec::new(),
        };
        Arc::new(joints.iter().map(arrangement).collect())
    }

    /// All choices by counting through them.
    fn by_hand(group: &Group, prices: &[Vec<i64>]) -> Option<i64> {
        let sizes: Vec<usize> = group.choices.iter().map(|c| c.len()).collect();
        let scope: Vec<usize> = (0..sizes.len()).collect();
        let mut best = None;
        each(&scope, &sizes, &mut vec![0; sizes.len()], |choice| {
            if (0..sizes.len()).all(|run| group.allows(choice, run, choice[run])) {
                let sum = choice.iter().zip(prices).map(|(pick, own)| own[*pick]).sum();
                best = Some(best.map_or(sum, |best: i64| best.min(sum)));
            }
        });
        best
    }

    #[test]
    fn elimination_agrees_with_counting() {
        let mut random = super::super::random::Random::new(7);
        let mut solvable = 0;
        for _ in 0..300 {
            let count = 2 + random.below(4);
            let lists: Vec<Arc<Vec<Arrangement>>> = (0..count)
                .map(|_| {
                    let lists: Vec<Vec<i64>> = (0..1 + random.below(3))
                        .map(|_| {
                            let mut joints: Vec<i64> =
                                (0..1 + random.below(2)).map(|_| 16 * random.below(8) as i64).collect();
                            joints.sort_unstable();
                            joints
                        })
                        .collect();
                    choices(&lists.iter().map(Vec::as_slice).collect::<Vec<_>>())
                })
                .collect();
            let mut pairs = Vec::new();
            for a in 0..count {
                for b in a + 1..count {
                    if random.below(3) > 0 {
                        pairs.push((a, b));
                    }
                }
            }
            let prices: Vec<Vec<i64>> =
                lists.iter().map(|list| list.iter().map(|_| random.below(50) as i64).collect()).collect();
            let group = Group::new((0..count).collect(), lists, &pairs, Length::from_inches(32));
            assert!(group.exact());
            let found = group.cheapest(&prices);
            let wanted = by_hand(&group, &prices);
            assert_eq!(found.as_ref().map(|(sum, _)| *sum), wanted);
            if let Some((sum, choice)) = found {
                solvable += 1;
                assert!((0..count).all(|run| group.allows(&choice, run, choice[run])));
                assert_eq!(choice.iter().zip(&prices).map(|(pick, own)| own[*pick]).sum::<i64>(), sum);
            }
        }
        assert!(solvable > 50);
    }

    #[test]
    fn runs_that_only_touch_need_no_stagger() {
        let run = |course, from, to| RunToCut {
            wall: "a".into(),
            course,
            from: Length::from_inches(from),
            to: Length::from_inches(to),
        };
        let runs = [run(1, 0, 100), run(2, 100, 200), run(2, 50, 100), run(3, 0, 10)];
        assert_eq!(pairs(&runs, &[0, 1, 2, 3]).unwrap(), [(0, 2)]);
        assert_eq!(groups(&[0, 1, 2, 3], &[(0, 2)]), [vec![0, 2], vec![1], vec![3]]);
    }
}
