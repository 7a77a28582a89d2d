//! The best reveals for a pole: a dynamic program over (height, reveal under it), proven by exhaustion.
//!
//! Read from the end downwards, `best(height, below)` is what the rest of the pole costs at best from a line at
//! `height` whose course below has the reveal `below`:
//!
//! `best(h, q) = min over r of marks(h, h + r) + change(q, r) + 1 course + best(h + r, r)`
//!
//! Every mark is charged to its nearest line, so that its cost belongs to the one course in which it lies. The three
//! aims (misses, changes, courses) are three fields of one integer, the first in the highest bits: adding them adds
//! each field, comparing them compares in order. The least `r` is kept on a tie, hence the pole that is read off from
//! the bottom is the lexicographically smallest of the best.
//!
//! `change(q, r)` is `|q - r|`, so that the minimum over a window of `r` moves along with `q`: two monotone queues,
//! one from each side, make it constant work per (height, reveal), however wide the window is.

use std::collections::VecDeque;

use num_traits::{PrimInt, Signed};

use super::mark::Want;
use super::pole::{COURSES_LIMIT, PoleError};

/// The most (height, reveal) pairs, and the most (height, mark in reach) pairs, that are looked at.
const PAIRS_LIMIT: usize = 1 << 24;

/// What a mark asks, above the pole's start.
#[derive(Clone, Copy, Debug)]
pub(super) struct MarkAim {
    pub(super) at: i64,
    pub(super) want: Want,
    pub(super) weight: i64,
}

impl MarkAim {
    fn charge(&self, line: i64) -> i128 {
        i128::from(self.want.miss((self.at - line).abs())) * i128::from(self.weight)
    }
}

/// The height and the limits of the reveals, in whole divisions: `1 <= least <= most <= steps`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounds {
    steps: usize,
    least: usize,
    most: usize,
    /// The greatest change between neighbours, at most `most - least`.
    change: usize,
}

impl Bounds {
    pub(super) fn new(steps: i64, least: i64, most: i64, change: Option<i64>) -> Result<Self, PoleError> {
        let (least, most) = (least.max(1), most.min(steps));
        if least > most {
            return Err(PoleError::NoLayout);
        }
        let size = |count: i64| usize::try_from(count).map_err(|_| PoleError::TooLarge);
        let (steps, least, most) = (size(steps)?, size(least)?, size(most)?);
        let change = change.map(size).transpose()?.unwrap_or(most - least).min(most - least);
        let bounds = Self { steps, least, most, change };
        if steps.div_ceil(most) > COURSES_LIMIT {
            return Err(PoleError::TooManyCourses);
        }
        if !bounds.joins(steps) {
            return Err(PoleError::NoLayout);
        }
        if steps > PAIRS_LIMIT || most - least > usize::from(u16::MAX) {
            return Err(PoleError::TooLarge);
        }
        Ok(bounds)
    }

    /// Whether reveals within the limits can add up to `height`, changes aside.
    fn joins(&self, height: usize) -> bool {
        height.div_ceil(self.most) * self.least <= height
    }

    /// Whether a line may lie at `height`: it joins up with the start and with the end.
    fn line_at(&self, height: usize) -> bool {
        height <= self.steps && self.joins(height) && self.joins(self.steps - height)
    }

    /// How many different reveals fit into `height`.
    fn reveals_in(&self, height: usize) -> usize {
        (self.most.min(height) + 1).saturating_sub(self.least)
    }
}

/// The steps at which the lines of the best pole lie, the end included.
///
/// `heights` are the nanometres of the steps 0 to `bounds.steps`.
pub(super) fn best(bounds: &Bounds, heights: &[i64], targets: &[MarkAim]) -> Result<Vec<usize>, PoleError> {
    let end = heights.last().copied().unwrap_or(0);
    // Marks below the start and above the end are charged to those, whatever lies between.
    let mut inside: Vec<MarkAim> =
        targets.iter().filter(|target| target.weight > 0 && target.at >= 0 && target.at < end).copied().collect();
    inside.sort_by_key(|target| target.at);

    let pairs = (0..=bounds.steps)
        .filter(|&height| bounds.line_at(height))
        .try_fold(0_usize, |sum, height| {
            let sum = sum + bounds.reveals_in(height);
            (sum <= PAIRS_LIMIT).then_some(sum)
        })
        .ok_or(PoleError::TooLarge)?;

    let reach = heights.get(bounds.most).copied().unwrap_or(end);
    let worst: i128 = inside
        .iter()
        .map(|target| {
            let miss = match target.want {
                Want::Land => reach,
                Want::Clear(clear) => clear.nm(),
            };
            i128::from(miss) * i128::from(target.weight)
        })
        .sum();
    // Sums of changes stay under twice the height, prefix sums of charges under twice the worst cost.
    let courses_bits = bits(bounds.steps.div_ceil(bounds.least) as i128 + 1);
    let change_bits = bits(2 * bounds.steps as i128 + 1);
    let cost_bits = bits(2 * worst + 1);
    let scale = AimBits { change: courses_bits, cost: courses_bits + change_bits };
    // The narrow integers are twice as fast and do for most poles; the wide ones hold any input within the limits.
    if cost_bits + scale.cost <= 62 {
        solve::<i64>(bounds, heights, &inside, scale, pairs)
    } else if cost_bits + scale.cost <= 126 {
        solve::<i128>(bounds, heights, &inside, scale, pairs)
    } else {
        Err(PoleError::TooLarge)
    }
}

/// Bits that hold every whole number from 0 to `most`.
fn bits(most: i128) -> usize {
    (i128::BITS - most.leading_zeros()) as usize
}

/// Where the fields of the three aims begin, in bits; courses begin at zero.
#[derive(Clone, Copy)]
struct AimBits {
    change: usize,
    cost: usize,
}

/// What the marks cost, line by line: for each step the running sum over the marks within the greatest reveal.
struct Charges<'a, K> {
    heights: &'a [i64],
    targets: &'a [MarkAim],
    /// How many marks lie below each step.
    below: Vec<usize>,
    /// For each step the first mark of its sums, and its sums: `sums[i]` is that of the first `i` marks from there.
    lines: Vec<(usize, Vec<K>)>,
}

impl<'a, K: PrimInt> Charges<'a, K> {
    fn new(bounds: &Bounds, heights: &'a [i64], targets: &'a [MarkAim], scale: AimBits) -> Result<Self, PoleError> {
        let below: Vec<usize> =
            heights.iter().map(|&height| targets.partition_point(|target| target.at < height)).collect();
        let mut lines = Vec::with_capacity(heights.len());
        let mut pairs = 0_usize;
        for (step, &height) in heights.iter().enumerate() {
            if !bounds.line_at(step) {
                lines.push((0, Vec::new()));
                continue;
            }
            let first = below.get(step.saturating_sub(bounds.most)).copied().unwrap_or(0);
            let last = below.get(step + bounds.most).copied().unwrap_or(targets.len());
            pairs += last - first;
            if pairs > PAIRS_LIMIT {
                return Err(PoleError::TooLarge);
            }
            let mut sum = K::zero();
            let mut sums = Vec::with_capacity(last - first + 1);
            sums.push(sum);
            for target in targets.get(first..last).unwrap_or_default() {
                sum = sum + (K::from(target.charge(height)).ok_or(PoleError::TooLarge)? << scale.cost);
                sums.push(sum);
            }
            lines.push((first, sums));
        }
        Ok(Self { heights, targets, below, lines })
    }

    /// What the marks from the first to before the last cost on the line at `step`.
    fn on_line(&self, step: usize, first: usize, last: usize) -> K {
        let Some((start, sums)) = self.lines.get(step) else { return K::zero() };
        let at = |mark: usize| mark.checked_sub(*start).and_then(|i| sums.get(i)).copied().unwrap_or(K::zero());
        at(last) - at(first)
    }

    /// What the marks from `low` (a line) to before `high` (the next line) cost.
    ///
    /// `middle` is a mark at or below the first one that is nearer to `high`, and is moved up to it: for one `low`, it
    /// only grows with `high`.
    fn between(&self, low: usize, high: usize, middle: &mut usize) -> K {
        let (Some(&first), Some(&last)) = (self.below.get(low), self.below.get(high)) else { return K::zero() };
        if first == last {
            return K::zero();
        }
        let (Some(low_nm), Some(high_nm)) = (self.heights.get(low), self.heights.get(high)) else { return K::zero() };
        while *middle < last && self.targets.get(*middle).is_some_and(|t| t.at - low_nm <= high_nm - t.at) {
            *middle += 1;
        }
        self.on_line(low, first, *middle) + self.on_line(high, *middle, last)
    }
}

/// The least value in a window that moves one way over the reveals: a queue whose values never fall from the front.
struct Window<K> {
    queue: VecDeque<(K, usize)>,
}

impl<K: PrimInt> Window<K> {
    /// Adds a value that loses to an equal one that is there already.
    fn push_after(&mut self, value: K, reveal: usize) {
        while self.queue.back().is_some_and(|&(last, _)| last > value) {
            self.queue.pop_back();
        }
        self.queue.push_back((value, reveal));
    }

    /// Adds a value that wins over an equal one that is there already.
    fn push_before(&mut self, value: K, reveal: usize) {
        while self.queue.back().is_some_and(|&(last, _)| last >= value) {
            self.queue.pop_back();
        }
        self.queue.push_back((value, reveal));
    }

    /// The least value, after dropping from the front what has left the window.
    fn least(&mut self, left: impl Fn(usize) -> bool) -> Option<(K, usize)> {
        while self.queue.front().is_some_and(|&(_, reveal)| left(reveal)) {
            self.queue.pop_front();
        }
        self.queue.front().copied()
    }
}

/// The dynamic program. Reveals are counted from `bounds.least`; a value of `K::max_value()` has no layout above it.
fn solve<K: PrimInt + Signed>(
    bounds: &Bounds,
    heights: &[i64],
    targets: &[MarkAim],
    scale: AimBits,
    pairs: usize,
) -> Result<Vec<usize>, PoleError> {
    let none = K::max_value();
    let course = K::one();
    let change = K::one() << scale.change;
    let times = |reveal: usize| K::from(reveal).map_or(K::zero(), |count| count * change);
    let charges = Charges::<K>::new(bounds, heights, targets, scale)?;

    // What remains from each line, by the reveal below it; a row is needed until the lines `most` below it are done.
    let mut rows: Vec<Vec<K>> = (0..=bounds.steps).map(|_| Vec::new()).collect();
    // The next reveal, for each line and reveal below it, and where each line's choices begin.
    let mut choices: Vec<u16> = vec![0; pairs];
    let mut starts: Vec<usize> = Vec::with_capacity(bounds.steps + 1);
    let mut start = 0;
    for height in 0..=bounds.steps {
        starts.push(start);
        if bounds.line_at(height) {
            start += bounds.reveals_in(height);
        }
    }
    if let Some(end) = rows.last_mut() {
        *end = vec![K::zero(); bounds.reveals_in(bounds.steps)];
    }

    let mut ahead: Vec<K> = Vec::new();
    let mut window = Window { queue: VecDeque::with_capacity(bounds.reveals_in(bounds.steps)) };
    for height in (0..bounds.steps).rev() {
        if !bounds.line_at(height) {
            continue;
        }
        // The cost of each next reveal and of all that follows it.
        ahead.clear();
        let mut middle = charges.below.get(height).copied().unwrap_or(0);
        for reveal in 0..bounds.reveals_in(bounds.steps - height) {
            let next = height + bounds.least + reveal;
            let above = rows.get(next).and_then(|row| row.get(reveal)).copied().unwrap_or(none);
            ahead.push(if above == none { none } else { above + charges.between(height, next, &mut middle) + course });
        }
        if height == 0 {
            break;
        }

        let below = bounds.reveals_in(height);
        let first = starts.get(height).copied().unwrap_or(0);
        let Some(choice) = choices.get_mut(first..first + below) else { return Err(PoleError::TooLarge) };
        let mut row = rows.get_mut(height + bounds.most).map(std::mem::take).unwrap_or_default();
        row.clear();

        // Next reveals no greater than the one below, from the least upwards.
        window.queue.clear();
        for (reveal, slot) in choice.iter_mut().enumerate() {
            if let Some(&value) = ahead.get(reveal)
                && value != none
            {
                window.push_after(value - times(reveal), reveal);
            }
            row.push(match window.least(|next| next + bounds.change < reveal) {
                Some((value, next)) => {
                    *slot = next as u16;
                    value + times(reveal)
                }
                None => none,
            });
        }
        // Next reveals that are greater, from the greatest downwards: they win only where they are better.
        window.queue.clear();
        for (reveal, &value) in ahead.iter().enumerate().take(below + bounds.change).rev() {
            if value != none {
                window.push_before(value + times(reveal), reveal);
            }
            let (Some(slot), Some(best)) = (choice.get_mut(reveal), row.get_mut(reveal)) else { continue };
            if let Some((value, next)) = window.least(|next| next > reveal + bounds.change) {
                let value = value - times(reveal);
                if value < *best {
                    *best = value;
                    *slot = next as u16;
                }
            }
        }
        // Where no next reveal reaches up to the one below, `ahead` is the shorter and there is nothing greater.
        if let Some(slot) = rows.get_mut(height) {
            *slot = row;
        }
    }

    let first = ahead.iter().enumerate().min_by_key(|&(reveal, &value)| (value, reveal));
    let Some((mut reveal, _)) = first.filter(|&(_, &value)| value != none) else { return Err(PoleError::NoLayout) };
    let mut lines = Vec::new();
    let mut height = 0;
    loop {
        height += bounds.least + reveal;
        lines.push(height);
        if height >= bounds.steps {
            return Ok(lines);
        }
        let choice = starts.get(height).and_then(|start| choices.get(start + reveal));
        reveal = choice.copied().map_or(0, usize::from);
    }
}
