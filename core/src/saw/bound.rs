use std::collections::BTreeSet;

use num_integer::Integer;

use super::demand::Demand;

/// What is known from lengths alone: pieces with their kerfs against boards with theirs, at the best price for a length.
/// `None` where all boards together are too short.
///
/// With a price `r` for each nanometre, a board of a kind with `n` boards that gives more than it costs is worth the
/// difference at most `n` times: `r * pieces - sum(n * max(0, r * board - cost))` is a lower bound for every `r` at which
/// no kind without a count gains. It is largest where some kind gains nothing.
pub(super) fn by_length(demand: &Demand) -> Option<i128> {
    // Far below the price of a joint too many; the shift does nothing to boards of houses.
    let shift = if demand.sizes.first().is_some_and(|size| *size >= 1 << 38) { 12 } else { 0 };
    let needed = demand.cheapest(&demand.sizes.iter().map(|size| *size >> shift).collect::<Vec<_>>()) << shift;
    let endless = demand.kinds.iter().any(|kind| kind.count.is_none());
    let total: i128 =
        demand.kinds.iter().map(|kind| i128::from(kind.capacity) * i128::from(kind.count.unwrap_or(0))).sum();
    if !endless && needed > total {
        return None;
    }
    let worth = |chosen: &super::demand::BoardKind| {
        let (cost, capacity) = (i128::from(chosen.cost), i128::from(chosen.capacity));
        let mut value = cost * needed;
        for kind in &demand.kinds {
            let gain = cost * i128::from(kind.capacity) - i128::from(kind.cost) * capacity;
            match kind.count {
                _ if gain <= 0 => {}
                Some(count) => value -= gain * i128::from(count),
                None => return 0,
            }
        }
        Integer::div_ceil(&value, &capacity)
    };
    Some(demand.kinds.iter().map(worth).max().unwrap_or(0).max(0))
}

/// The scale of whole dual prices: a power of two for one cost unit.
#[derive(Clone, Copy, Debug)]
pub(super) struct DualScale {
    shift: i32,
    most: i64,
}

impl DualScale {
    /// The finest scale at which the sum over all pieces stays below 2^51, and the kinds' costs in it, rounded down. No
    /// piece is worth more than `dearest` times the dearest board.
    pub(super) fn of(demand: &Demand, dearest: i64) -> (Self, Vec<i64>) {
        let reach = dearest.max(1);
        let dearest = demand.kinds.iter().map(|kind| kind.cost).max().unwrap_or(0).max(1);
        let pieces: u64 = demand.most().iter().map(|count| u64::from(*count)).sum();
        let bits = 128 - (dearest as u128 * u128::from(pieces.max(1))).leading_zeros();
        let bits = bits + 64 - (reach - 1).leading_zeros();
        let shift = 51 - i32::try_from(bits).unwrap_or(51);
        let scaled = |cost: i64| if shift >= 0 { cost << shift } else { cost >> -shift };
        (Self { shift, most: scaled(dearest) * reach }, demand.kinds.iter().map(|kind| scaled(kind.cost)).collect())
    }

    /// A price in whole numbers, rounded down.
    pub(super) fn one(&self, price: f64) -> i64 {
        let unit = if self.shift >= 0 { (1_i64 << self.shift) as f64 } else { 1.0 / (1_i64 << -self.shift) as f64 };
        ((price * unit) as i64).clamp(0, self.most)
    }

    pub(super) fn whole(&self, prices: &[f64]) -> Vec<i64> {
        prices.iter().map(|price| self.one(*price)).collect()
    }
}

/// A lower bound from whole dual prices, in cost units: `total` is the least worth of all pieces, `worth` the greatest worth
/// of one board of each kind.
///
/// Where a kind without a count is worth more than it costs, all prices shrink until it is not (Farley 1990); a counted
/// kind gives the difference at most as often as it is there. A kind that must be taken so often costs what it is not worth
/// as often.
pub(super) fn certified(demand: &Demand, scale: &DualScale, costs: &[i64], total: i128, worth: &[i64]) -> i128 {
    let mut share = (1_i128, 1_i128);
    for ((kind, cost), worth) in demand.kinds.iter().zip(costs).zip(worth) {
        let (cost, worth) = (i128::from(*cost), i128::from(*worth));
        if kind.count.is_none() && worth * share.0 > cost * share.1 {
            share = (cost, worth);
        }
    }
    let mut value = total * share.0;
    for ((kind, cost), worth) in demand.kinds.iter().zip(costs).zip(worth) {
        if let Some(count) = kind.count {
            let gain = i128::from(*worth) * share.0 - i128::from(*cost) * share.1;
            value -= gain.max(0) * i128::from(count);
        }
        let loss = i128::from(*cost) * share.1 - i128::from(*worth) * share.0;
        value += loss.max(0) * i128::from(kind.least);
    }
    if scale.shift >= 0 {
        Integer::div_ceil(&value, &(share.1 << scale.shift))
    } else {
        Integer::div_ceil(&(value << -scale.shift), &share.1)
    }
}

/// The least sum of board costs that is not under a bound: some sums no boards make. `limit` where there is none under it.
pub(super) fn reachable(demand: &Demand, bound: i128, limit: i128) -> i128 {
    const MOST: usize = 1 << 20;
    let Some(size) = usize::try_from(limit).ok().filter(|size| *size <= MOST) else { return bound };
    let mut sums = vec![false; size + 1];
    if let Some(first) = sums.first_mut() {
        *first = true;
    }
    // Counts of boards are left aside: that only makes more sums.
    let costs: BTreeSet<usize> =
        demand.kinds.iter().filter_map(|kind| usize::try_from(kind.cost).ok()).filter(|cost| *cost > 0).collect();
    if costs.len() > 64 {
        return bound;
    }
    for cost in costs {
        for sum in cost..=size {
            if sums.get(sum - cost) == Some(&true)
                && let Some(slot) = sums.get_mut(sum)
            {
                *slot = true;
            }
        }
    }
    let start = usize::try_from(bound.max(0)).unwrap_or(0);
    (start..size).find(|sum| sums.get(*sum) == Some(&true)).map_or(limit.max(bound), |sum| sum as i128)
}

/// The least whole number that is not under a float.
pub(super) fn ceil(value: f64) -> i128 {
    let whole = value as i128;
    if (whole as f64) < value { whole + 1 } else { whole }
}
