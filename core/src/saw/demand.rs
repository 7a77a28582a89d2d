use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use num_integer::Integer;

use crate::measure::Length;

use super::apart::Apart;
use super::arrangement::{Arrangement, Piecing};
use super::cut_list::{CutList, LIMIT};
use super::stagger::{self, Group};
use super::{Piece, SawError};

/// The price of a joint beyond the allowed ones, far above any sum of true prices.
const OVER: i64 = 1 << 52;
/// How many arrangements are held for all runs together.
const ARRANGEMENTS: usize = 100_000;
/// How many joints are held in all arrangements of one run.
const JOINTS: usize = 20_000;

/// Boards of one length and price.
#[derive(Clone, Debug)]
pub(super) struct BoardKind {
    /// Where they stand in the stock (one index) or among the offcuts (one for each board).
    pub(super) sources: Vec<usize>,
    pub(super) offcut: bool,
    pub(super) length: Length,
    /// Length and one kerf: what pieces with a kerf each may fill.
    pub(super) capacity: i64,
    /// In the demand's cost unit.
    pub(super) cost: i64,
    /// `None` for more than can be needed.
    pub(super) count: Option<u32>,
    /// How many a plan must take: a branch of the search has settled it.
    pub(super) least: u32,
}

/// Runs that are tied by stagger, ready to be priced.
#[derive(Clone, Debug)]
pub(super) struct TiedRuns {
    pub(super) group: Group,
    /// The sizes of the pieces, for each run and each of its arrangements.
    pub(super) sizes: Vec<Vec<Vec<usize>>>,
    /// Whether an arrangement has the joint beyond the allowed ones.
    over: Vec<Vec<bool>>,
    /// How many runs must have one.
    forced: i64,
    /// Where not all arrangements are at hand, or not all their ties can be honoured: its runs for a bound that leaves
    /// stagger aside.
    loose: Option<Vec<Loose>>,
}

/// How a run may be pieced, and the most joints it may have.
#[derive(Clone, Debug)]
struct Loose {
    run: usize,
    piecing: Arc<Piecing>,
    most: usize,
}

/// A cut list in the terms of the optimisation. A piece takes its length and one kerf, a board gives its length and one
/// kerf, so that `n` pieces need `n - 1` kerfs; costs are whole multiples of one unit.
#[derive(Clone, Debug)]
pub(super) struct Demand {
    pub(super) list: CutList,
    /// What the cost unit is worth in the cut list's billionths.
    pub(super) unit: u64,
    pub(super) kinds: Vec<BoardKind>,
    /// The different sizes that pieces may have, descending.
    pub(super) sizes: Vec<i64>,
    /// How many pieces of each size there are in runs that stay whole, less those that a branch has bound into longer ones:
    /// under zero where they are bound out of runs whose joints are open.
    pub(super) fixed: Vec<i64>,
    pub(super) walls: Vec<TiedRuns>,
    /// What no board may hold together.
    pub(super) apart: Apart,
    /// Runs that stay whole.
    whole: Vec<usize>,
    /// Runs whose pieces take half their length of a board.
    halves: BTreeSet<usize>,
}

/// One arrangement for each run of each wall.
pub(super) type Choices = Vec<Vec<usize>>;

impl Demand {
    pub(super) fn new(list: &CutList) -> Result<Self, SawError> {
        Self::of(list, BTreeSet::new())
    }

    /// The same where pieces of some runs take half their length and kerf of a board.
    pub(super) fn of(list: &CutList, halves: BTreeSet<usize>) -> Result<Self, SawError> {
        list.check()?;
        let longest = match list.longest() {
            Some(longest) => longest,
            None if list.runs.is_empty() => Length::ZERO,
            None => return Err(SawError::NoBoard),
        };
        let mut whole = Vec::new();
        let mut pieced = Vec::new();
        let mut piecings: BTreeMap<usize, Arc<Piecing>> = BTreeMap::new();
        let mut known: BTreeMap<RunKey<'_>, Arc<Piecing>> = BTreeMap::new();
        let mut pieces = 0_usize;
        for (index, run) in list.runs.iter().enumerate() {
            if list.cut(run.to - run.from - list.end_gap - list.end_gap) <= longest {
                whole.push(index);
                pieces += 1;
                continue;
            }
            if !list.joints {
                return Err(SawError::TooLong { run: index });
            }
            if (run.to - run.from).wide() > longest.wide() * LIMIT as i128 {
                return Err(SawError::TooMany { what: "pieces" });
            }
            // Runs with the same ends are pieced alike, unless something is to be avoided.
            let place = (!list.avoid.is_empty()).then_some((run.wall.as_str(), run.course));
            let piecing = match known.get(&(run.from, run.to, place)) {
                Some(piecing) => Arc::clone(piecing),
                None => {
                    let piecing = Arc::new(Piecing::new(list, index, run, longest)?);
                    known.insert((run.from, run.to, place), Arc::clone(&piecing));
                    piecing
                }
            };
            pieces = pieces.saturating_add(piecing.fewest()).saturating_add(1);
            if pieces > LIMIT {
                return Err(SawError::TooMany { what: "pieces" });
            }
            pieced.push(index);
            piecings.insert(index, piecing);
        }
        let groups = arrange(list, &pieced, &piecings)?;
        let size = |run: usize, length: Length| size(list, &halves, run, length);
        let run_size = |at: &usize| {
            let run = list.runs.get(*at)?;
            Some(size(*at, list.cut(run.to - run.from - list.end_gap - list.end_gap)))
        };
        let mut sizes: BTreeSet<i64> = whole.iter().filter_map(run_size).collect();
        for (run, choices) in groups.iter().flat_map(|group| group.0.runs.iter().zip(&group.0.choices)) {
            let pieces = choices.iter().flat_map(|arrangement| &arrangement.pieces);
            sizes.extend(pieces.map(|length| size(*run, *length)));
        }
        let sizes: Vec<i64> = sizes.into_iter().rev().collect();
        let place: BTreeMap<i64, usize> = sizes.iter().enumerate().map(|(place, size)| (*size, place)).collect();
        let mut fixed = vec![0; sizes.len()];
        for size in whole.iter().filter_map(run_size) {
            if let Some(slot) = place.get(&size).and_then(|place| fixed.get_mut(*place)) {
                *slot += 1;
            }
        }
        let of = |run: usize, arrangement: &Arrangement| -> Vec<usize> {
            arrangement.pieces.iter().filter_map(|length| place.get(&size(run, *length)).copied()).collect()
        };
        let walls = groups
            .into_iter()
            .map(|(group, over, forced, loose)| {
                let runs = group.runs.iter().zip(&group.choices);
                let sizes = runs.map(|(run, choices)| choices.iter().map(|own| of(*run, own)).collect()).collect();
                TiedRuns { sizes, group, over, forced, loose }
            })
            .collect();
        let (kinds, unit) = kinds(list);
        Ok(Self { list: list.clone(), unit, kinds, sizes, fixed, walls, apart: Apart::default(), whole, halves })
    }

    /// The demand of a branch: other pieces, boards and walls at the same prices.
    pub(super) fn with(&self, sizes: Vec<i64>, fixed: Vec<i64>, kinds: Vec<BoardKind>, walls: Vec<TiedRuns>) -> Self {
        let (list, apart) = (CutList::new(), Apart::default());
        let (whole, halves) = (Vec::new(), BTreeSet::new());
        Self { list, unit: self.unit, kinds, sizes, fixed, walls, apart, whole, halves }
    }

    pub(super) fn size(&self, index: usize) -> i64 {
        self.sizes.get(index).copied().unwrap_or(0)
    }

    /// The least sum of prices over all pieces, for any joints; never above the true one. Also the joints that have it,
    /// where stagger could be honoured.
    ///
    /// Every price must be under 2^40.
    pub(super) fn cheapest(&self, prices: &[i64]) -> i128 {
        let price = |size: usize| prices.get(size).copied().unwrap_or(0);
        let mut total: i128 =
            self.fixed.iter().zip(prices).map(|(count, price)| i128::from(*count) * i128::from(*price)).sum();
        // A length that is none of the sizes counts as the dearest size that is not longer: dual values stay valid.
        let mut rising: Vec<i64> = prices.to_vec();
        for index in (1..rising.len()).rev() {
            let below = rising.get(index).copied().unwrap_or(0);
            if let Some(slot) = rising.get_mut(index - 1) {
                *slot = (*slot).max(below);
            }
        }
        for wall in &self.walls {
            total += match &wall.loose {
                None => {
                    let found = wall.group.cheapest(&wall.prices(price));
                    found.map_or(0, |(sum, _)| i128::from(sum) - i128::from(wall.forced * OVER))
                }
                Some(loose) => loose
                    .iter()
                    .map(|Loose { run, piecing, most }| {
                        i128::from(piecing.cheapest(&self.list, *most, |length| {
                            let size = size(&self.list, &self.halves, *run, length);
                            rising.get(self.sizes.partition_point(|other| *other > size)).copied().unwrap_or(0)
                        }))
                    })
                    .sum(),
            };
        }
        total
    }

    /// The joints of each run whose pieces cost the least together; `None` where none are allowed.
    pub(super) fn choose(&self, price: impl Fn(usize) -> i64) -> Option<Choices> {
        self.walls.iter().map(|wall| wall.choose(&price)).collect()
    }

    /// Joints for every wall that cost little and are soon found.
    pub(super) fn start(&self, price: impl Fn(usize) -> i64) -> Option<Choices> {
        self.walls.iter().map(|wall| wall.start(&price)).collect()
    }

    /// How many pieces of each size there can be, whatever the joints.
    pub(super) fn most(&self) -> Vec<u32> {
        let mut most: Vec<u32> = self.fixed.iter().map(|count| u32::try_from(*count).unwrap_or(0)).collect();
        for wall in &self.walls {
            for choices in &wall.sizes {
                let mut own: BTreeMap<usize, u32> = BTreeMap::new();
                for pieces in choices {
                    let mut counts: BTreeMap<usize, u32> = BTreeMap::new();
                    for size in pieces {
                        *counts.entry(*size).or_default() += 1;
                    }
                    for (size, count) in counts {
                        let slot = own.entry(size).or_default();
                        *slot = count.max(*slot);
                    }
                }
                for (size, count) in own {
                    if let Some(slot) = most.get_mut(size) {
                        *slot += count;
                    }
                }
            }
        }
        // A run whose arrangements are not all known may turn to any of the sizes.
        let loose: usize =
            self.walls.iter().filter_map(|wall| wall.loose.as_ref()).flatten().map(|loose| loose.most + 1).sum();
        most.into_iter().map(|count| count.saturating_add(loose as u32)).collect()
    }

    /// How many pieces of each size there are with these joints.
    pub(super) fn counts(&self, choices: &Choices) -> Vec<u32> {
        self.balance(choices).into_iter().map(|count| u32::try_from(count).unwrap_or(0)).collect()
    }

    /// The same; under zero where a branch has bound pieces that these joints do not give.
    pub(super) fn balance(&self, choices: &Choices) -> Vec<i64> {
        let mut counts = self.fixed.clone();
        for (wall, choice) in self.walls.iter().zip(choices) {
            for size in wall.pieces(choice) {
                if let Some(slot) = counts.get_mut(size) {
                    *slot += 1;
                }
            }
        }
        counts
    }

    /// The pieces with these joints, in the order of the runs, and the size of each.
    pub(super) fn pieces(&self, choices: &Choices) -> Vec<(Piece, usize)> {
        let list = &self.list;
        let mut joints: BTreeMap<usize, &[Length]> = self.whole.iter().map(|run| (*run, [].as_slice())).collect();
        for (wall, choice) in self.walls.iter().zip(choices) {
            for ((run, arrangements), pick) in wall.group.runs.iter().zip(&wall.group.choices).zip(choice) {
                joints.insert(*run, arrangements.get(*pick).map_or(&[], |arrangement| &arrangement.joints));
            }
        }
        let mut pieces = Vec::new();
        for (index, joints) in joints {
            let Some(run) = list.runs.get(index) else { continue };
            let starts = std::iter::once(run.from + list.end_gap).chain(joints.iter().map(|at| list.beside(*at).1));
            let ends = joints.iter().map(|at| list.beside(*at).0).chain(std::iter::once(run.to - list.end_gap));
            for (from, to) in starts.zip(ends) {
                let length = list.cut(to - from);
                let size = size(list, &self.halves, index, length);
                pieces
                    .push((Piece { run: index, from, to, length }, self.sizes.partition_point(|other| *other > size)));
            }
        }
        pieces
    }
}

impl TiedRuns {
    /// What each arrangement of each run costs, far more where it has a joint beyond the allowed ones.
    pub(super) fn prices(&self, price: impl Fn(usize) -> i64) -> Vec<Vec<i64>> {
        self.sizes
            .iter()
            .zip(&self.over)
            .map(|(choices, over)| {
                let sum = |pieces: &Vec<usize>| pieces.iter().map(|size| price(*size)).sum::<i64>();
                choices.iter().zip(over).map(|(pieces, over)| sum(pieces) + if *over { OVER } else { 0 }).collect()
            })
            .collect()
    }

    /// Joints with the least sum of prices.
    pub(super) fn choose(&self, price: impl Fn(usize) -> i64) -> Option<Vec<usize>> {
        self.group.cheapest(&self.prices(price)).map(|(_, choice)| choice)
    }

    /// Joints that cost little: soon found where no run is forced to one more.
    fn start(&self, price: impl Fn(usize) -> i64) -> Option<Vec<usize>> {
        let soon = if self.forced == 0 { self.group.settle(&self.prices(&price)) } else { None };
        soon.map(|(_, choice)| choice).or_else(|| self.choose(price))
    }

    /// The sizes of all pieces with these joints.
    pub(super) fn pieces(&self, choice: &[usize]) -> impl Iterator<Item = usize> {
        self.sizes.iter().zip(choice).filter_map(|(choices, pick)| choices.get(*pick)).flatten().copied()
    }

    /// About how many operations one pricing takes.
    pub(super) fn effort(&self) -> u64 {
        let listed: u64 =
            self.sizes.iter().map(|choices| choices.len() as u64).map(|count| count * (count / 2 + 20)).sum();
        let loose = self.loose.iter().flatten().map(|loose| loose.piecing.effort(loose.most));
        listed + loose.sum::<u64>()
    }

    /// All joints that keep their stagger, with no more runs beyond the allowed joints than are forced to it; `None` where
    /// there are more than `most`.
    pub(super) fn all(&self, most: usize) -> Option<Vec<Vec<usize>>> {
        let all = self.group.all(most.saturating_mul(10))?;
        let over = |choice: &Vec<usize>| {
            let flags = choice.iter().zip(&self.over).filter(|(pick, over)| over.get(**pick) == Some(&true));
            flags.count() as i64
        };
        let kept: Vec<Vec<usize>> = all.into_iter().filter(|choice| over(choice) <= self.forced).collect();
        (kept.len() <= most).then_some(kept)
    }

    /// The wall with some of the arrangements of each run only, in this order, and other numbers for the sizes.
    pub(super) fn only(&self, ways: &[Vec<usize>], size: impl Fn(usize) -> usize) -> Self {
        let picked = |run: usize, ways: &Vec<usize>| -> (Vec<Vec<usize>>, Vec<bool>) {
            let (sizes, over) = (self.sizes.get(run), self.over.get(run));
            let pieces = |way: &usize| Some(sizes?.get(*way)?.iter().map(|piece| size(*piece)).collect());
            let over = |way: &usize| over?.get(*way).copied();
            (ways.iter().filter_map(pieces).collect(), ways.iter().filter_map(over).collect())
        };
        let (sizes, over) = ways.iter().enumerate().map(|(run, ways)| picked(run, ways)).unzip();
        Self { group: self.group.only(ways), sizes, over, forced: self.forced, loose: None }
    }

    /// Whether there are joints that keep their stagger, with no more runs beyond the allowed joints than are forced to it.
    pub(super) fn possible(&self) -> bool {
        self.group.cheapest(&self.prices(|_| 0)).is_some_and(|(over, _)| over <= self.forced * OVER)
    }

    /// Whether the choices are the true ones and their least price is exact.
    pub(super) fn exact(&self) -> bool {
        self.loose.is_none()
    }

    /// Whether a run may change to another arrangement while its neighbours stay.
    pub(super) fn allows(&self, choice: &[usize], run: usize, pick: usize) -> bool {
        let over = |pick: usize| self.over.get(run).and_then(|over| over.get(pick)).copied().unwrap_or(false);
        let now = choice.get(run).copied().unwrap_or(0);
        (!over(pick) || over(now)) && self.group.allows(choice, run, pick)
    }
}

/// What decides how a run is pieced: its ends, and its wall and course where something is to be avoided.
type RunKey<'a> = (Length, Length, Option<(&'a str, i64)>);

/// Arrangements of a run, and whether they are all.
type Ways = (Arc<Vec<Arrangement>>, bool);

/// A group, which of its arrangements have a joint beyond the allowed ones, how many runs are forced to one, and how its
/// runs may be pieced where that is not all known.
type Arranged = (Group, Vec<Vec<bool>>, i64, Option<Vec<Loose>>);

/// What a piece of a run takes of a board: its length and one kerf, or half of them, rounded down so that a bound stays one.
fn size(list: &CutList, halves: &BTreeSet<usize>, run: usize, length: Length) -> i64 {
    let whole = length.nm() + list.kerf.nm();
    if halves.contains(&run) { whole / 2 } else { whole }
}

/// Arrangements for the pieced runs, with one more joint only in as few runs as stagger forces to it.
fn arrange(
    list: &CutList,
    pieced: &[usize],
    piecings: &BTreeMap<usize, Arc<Piecing>>,
) -> Result<Vec<Arranged>, SawError> {
    let pairs = if list.stagger.is_positive() { stagger::pairs(&list.runs, pieced)? } else { Vec::new() };
    let extra = list.extra_joints as usize;
    let each = (ARRANGEMENTS / pieced.len().max(1)).clamp(16, 1000);
    // Runs that share their piecing share their arrangements.
    let mut known: BTreeMap<(*const Piecing, usize), Ways> = BTreeMap::new();
    let mut groups = Vec::new();
    for runs in stagger::groups(pieced, &pairs) {
        let mut build = |more: usize| {
            let mut complete = true;
            let mut choices = Vec::new();
            for run in &runs {
                let Some(piecing) = piecings.get(run) else { continue };
                let most = piecing.fewest() + extra + more;
                let (found, whole) = known.entry((Arc::as_ptr(piecing), most)).or_insert_with(|| {
                    let (found, whole) = piecing.arrangements(list, most, each.min(JOINTS / most).max(4));
                    (Arc::new(found), whole)
                });
                complete &= *whole;
                choices.push(Arc::clone(found));
            }
            (Group::new(runs.clone(), choices, &pairs, list.stagger), complete)
        };
        let beyond = |group: &Group| -> Vec<Vec<bool>> {
            let most = runs.iter().map(|run| piecings.get(run).map_or(0, |piecing| piecing.fewest() + extra));
            let over = most.zip(&group.choices);
            over.map(|(most, choices)| choices.iter().map(|choice| choice.joints.len() > most).collect()).collect()
        };
        let numbers = |over: &[Vec<bool>]| -> Vec<Vec<i64>> {
            over.iter().map(|over| over.iter().map(|over| i64::from(*over)).collect()).collect()
        };
        let (mut group, mut complete) = build(0);
        let mut over = beyond(&group);
        let mut forced = 0;
        let mut more = 0;
        let widen = |group: &mut Group, more: usize| {
            group.widen(|run, others| {
                let piecing = piecings.get(&run)?;
                piecing.beside(list, others, piecing.fewest() + extra + more)
            });
        };
        if !complete && !group.possible() {
            widen(&mut group, 0);
            over = beyond(&group);
        }
        if !group.possible() {
            (group, complete) = build(1);
            if !complete {
                widen(&mut group, 1);
            }
            over = beyond(&group);
            more = 1;
            let run = runs.first().copied().unwrap_or(0);
            forced = group.cheapest(&numbers(&over)).ok_or(SawError::NoStagger { run })?.0;
        }
        let loose = (!complete || !group.exact()).then(|| {
            runs.iter()
                .filter_map(|run| Some((*run, piecings.get(run)?)))
                .map(|(run, piecing)| Loose {
                    run,
                    piecing: Arc::clone(piecing),
                    most: piecing.fewest() + extra + more,
                })
                .collect()
        });
        groups.push((group, over, forced, loose));
    }
    Ok(groups)
}

/// The boards at hand without those that a longer one at the same price makes useless, and the cost unit.
fn kinds(list: &CutList) -> (Vec<BoardKind>, u64) {
    let unit = list.stock.iter().filter(|stock| stock.count != Some(0)).fold(0, |unit, stock| stock.cost.gcd(&unit));
    let unit = unit.max(1);
    let many = |count: u32| (count as usize) < LIMIT;
    let mut kinds: Vec<BoardKind> = Vec::new();
    for (index, stock) in list.stock.iter().enumerate() {
        let useless = |(other_index, other): (usize, &super::Stock)| {
            other_index != index
                && other.count.is_none_or(|count| !many(count))
                && other.length >= stock.length
                && other.cost <= stock.cost
                && (other.length > stock.length || other.cost < stock.cost || other_index < index)
        };
        if stock.count == Some(0) || list.stock.iter().enumerate().take(200).any(useless) {
            continue;
        }
        kinds.push(BoardKind {
            sources: vec![index],
            offcut: false,
            length: stock.length,
            capacity: stock.length.nm() + list.kerf.nm(),
            cost: (stock.cost / unit) as i64,
            count: stock.count.filter(|count| many(*count)),
            least: 0,
        });
    }
    let mut offcuts: BTreeMap<Length, Vec<usize>> = BTreeMap::new();
    for (index, length) in list.offcuts.iter().enumerate() {
        offcuts.entry(*length).or_default().push(index);
    }
    for (length, sources) in offcuts {
        let count = u32::try_from(sources.len()).ok();
        let capacity = length.nm() + list.kerf.nm();
        kinds.push(BoardKind { sources, offcut: true, length, capacity, cost: 0, count, least: 0 });
    }
    (kinds, unit)
}
