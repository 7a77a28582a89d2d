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
    let worth = |chosen: &super::demand::Kind| {
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
