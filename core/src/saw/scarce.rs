use super::demand::{Choices, Demand};
use super::fill::Fill;
use super::first_fit;
use super::pattern::{Left, Packing};
use super::random::Random;

/// What a piece costs more where a scarce board alone takes it: more than all pieces of a run by length.
const DEAR: i64 = 1 << 30;
/// How many joints by chance are tried, and after how many elementary operations no more are.
const TRIES: usize = 200;
const MOST: u64 = 40_000_000;

/// A first packing where first fit ran out of boards with the joints by length: filled as well as can be with the joints by length, then with
/// joints that spare the long boards, then with joints by chance. `None` where none of these suffices.
pub(super) fn first(
    demand: &Demand,
    by_length: &Choices,
    values: &[f64],
    random: &mut Random,
) -> Option<(Packing, Choices)> {
    let mut spent = 0;
    let fill = |counts: &[u32], rounds: u64, random: &mut Random, work: &mut u64| {
        (0..rounds).find_map(|round| {
            let fill = Fill { demand, values, nodes: 5_000, skip: 5 * round };
            fill.pack(counts, &mut Left::new(demand), random, work)
        })
    };
    let pack = |choices: &Choices, rounds: u64, random: &mut Random, work: &mut u64| {
        let counts = demand.counts(choices);
        first_fit::pack(demand, &counts).or_else(|| fill(&counts, rounds, random, work))
    };
    if let Some(packing) = fill(&demand.counts(by_length), 200, random, &mut spent) {
        return Some((packing, by_length.clone()));
    }
    let mut lengths: Vec<i64> = demand.kinds.iter().map(|kind| kind.capacity).collect();
    lengths.sort_unstable();
    lengths.dedup();
    for length in lengths {
        let dear = |size| (demand.size(size) >> 12) + if demand.size(size) > length { DEAR } else { 0 };
        let choices = demand.choose(dear)?;
        if let Some(packing) = pack(&choices, 20, random, &mut spent) {
            return Some((packing, choices));
        }
    }
    let end = spent.saturating_add(MOST);
    for _ in 0..TRIES {
        if spent > end {
            break;
        }
        let prices: Vec<i64> =
            demand.sizes.iter().map(|size| (size >> 12) / 2 + (random.below(1 << 16) as i64)).collect();
        let choices = demand.choose(|size| prices.get(size).copied().unwrap_or(0))?;
        if let Some(packing) = pack(&choices, 5, random, &mut spent) {
            return Some((packing, choices));
        }
    }
    None
}
