use std::collections::{BTreeMap, BTreeSet};

use super::demand::Demand;
use super::pattern::{Left, Packing, Pattern};

/// How many kinds of board are tried as the one that is opened first.
const TRIES: usize = 6;

/// A first packing: the longest piece first, each onto the fullest board that still takes it (best fit decreasing). New
/// boards are of one favoured kind where it is long enough; the best of several favourites counts. `None` where the
/// boards ran out.
pub(super) fn pack(demand: &Demand, counts: &[u32]) -> Option<Packing> {
    let mut favourites: Vec<usize> = (0..demand.kinds.len()).collect();
    favourites.sort_by_key(|kind| demand.kinds.get(*kind).map(|kind| (kind.offcut, -kind.capacity)));
    favourites.truncate(TRIES);
    let packings = favourites.into_iter().filter_map(|kind| with(demand, counts, kind));
    packings.min_by_key(|packing| (packing.cost(demand), packing.boards.len()))
}

fn with(demand: &Demand, counts: &[u32], favourite: usize) -> Option<Packing> {
    let mut left = Left::new(demand);
    let mut packing = Packing::default();
    // Boards by the room that is left on them.
    let mut room: BTreeSet<(i64, usize)> = BTreeSet::new();
    // Kinds by capacity, the cheapest first among equals.
    let mut kinds: BTreeMap<(i64, i64, usize), usize> =
        demand.kinds.iter().enumerate().map(|(index, kind)| ((kind.capacity, kind.cost, index), index)).collect();
    // Those of them that cost nothing.
    let mut free: BTreeMap<(i64, i64, usize), usize> = kinds.clone();
    free.retain(|(_, cost, _), _| *cost == 0);
    for (size, count) in counts.iter().enumerate() {
        let need = demand.size(size);
        for _ in 0..*count {
            let place = match room.range((need, 0)..).next().copied() {
                Some((space, place)) => {
                    room.remove(&(space, place));
                    room.insert((space - need, place));
                    place
                }
                None => {
                    let fits = |kind: usize| demand.kinds.get(kind).is_some_and(|kind| kind.capacity >= need);
                    // What was cut before is used before new boards are.
                    let offcut = free.range((need, 0, 0)..).next();
                    let (key, kind) = match offcut {
                        Some((key, kind)) => (*key, *kind),
                        None if fits(favourite) && left.has(favourite) => {
                            let kind = demand.kinds.get(favourite)?;
                            ((kind.capacity, kind.cost, favourite), favourite)
                        }
                        None => kinds.range((need, 0, 0)..).next().map(|(key, kind)| (*key, *kind))?,
                    };
                    left.take(kind);
                    if !left.has(kind) {
                        kinds.remove(&key);
                        free.remove(&key);
                    }
                    let place = packing.boards.len();
                    packing.boards.push(Pattern { kind, pieces: Vec::new() });
                    room.insert((key.0 - need, place));
                    place
                }
            };
            packing.boards.get_mut(place)?.pieces.push(size);
        }
    }
    packing.shrink(demand, Left::new(demand));
    Some(packing)
}
