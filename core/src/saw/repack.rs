use super::demand::{Choices, Demand};
use super::fill::Fill;
use super::pattern::{Left, Packing, Pattern};
use super::random::Random;

/// Takes some boards apart, the wasteful ones first, perhaps moves the joints of one run, and packs their pieces anew.
/// Keeps what costs less, or the same with its waste on fewer boards. Returns whether the cost fell.
pub(super) fn repack(
    demand: &Demand,
    values: &[f64],
    packing: &mut Packing,
    choices: &mut Choices,
    random: &mut Random,
    work: &mut u64,
) -> bool {
    let moved = if random.below(2) == 0 { change(demand, choices, random) } else { None };
    let mut needed: Vec<usize> = moved.iter().flat_map(|change| change.out.iter().copied()).collect();
    let mut pool: Vec<usize> = Vec::new();
    // Boards with the pieces that go.
    while let Some(size) = needed.pop() {
        let holds = |place: &usize| {
            !pool.contains(place) && packing.boards.get(*place).is_some_and(|board| board.pieces.contains(&size))
        };
        let start = random.below(packing.boards.len());
        let count = packing.boards.len();
        let again = moved.iter().flat_map(|change| &change.out).filter(|other| **other == size).count();
        let have = pool
            .iter()
            .filter_map(|place| packing.boards.get(*place))
            .flat_map(|board| &board.pieces)
            .filter(|piece| **piece == size)
            .count();
        if have >= again {
            continue;
        }
        match (0..count).map(|step| (start + step) % count).find(holds) {
            Some(place) => {
                pool.push(place);
                needed.push(size);
            }
            None => return false,
        }
    }
    let waste = |board: &Pattern| {
        let worth: f64 = board.pieces.iter().filter_map(|size| values.get(*size)).sum();
        board.cost(demand) as f64 - worth
    };
    let mut order: Vec<(f64, usize)> =
        packing.boards.iter().enumerate().map(|(place, board)| (waste(board), place)).collect();
    order.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    let wasteful = 1 + random.below(4);
    let target = pool.len() + wasteful + 1 + random.below(6);
    for (_, place) in order.iter().take(24) {
        if pool.len() < target - 1 && !pool.contains(place) && random.below(3) > 0 {
            pool.push(*place);
        }
    }
    while pool.len() < target.min(packing.boards.len()) {
        let place = random.below(packing.boards.len());
        if !pool.contains(&place) {
            pool.push(place);
        }
    }
    *work += (packing.boards.len() + demand.sizes.len()) as u64 * 2;
    let mut left = Left::new(demand);
    for (place, board) in packing.boards.iter().enumerate() {
        if !pool.contains(&place) {
            left.take(board.kind);
        }
    }
    let old: Vec<&Pattern> = pool.iter().filter_map(|place| packing.boards.get(*place)).collect();
    let mut counts = vec![0_u32; demand.sizes.len()];
    for size in old.iter().flat_map(|board| &board.pieces) {
        if let Some(slot) = counts.get_mut(*size) {
            *slot += 1;
        }
    }
    if let Some(change) = &moved {
        for size in &change.out {
            if let Some(slot) = counts.get_mut(*size) {
                *slot = slot.saturating_sub(1);
            }
        }
        for size in &change.into {
            if let Some(slot) = counts.get_mut(*size) {
                *slot += 1;
            }
        }
    }
    let before: i128 = old.iter().map(|board| i128::from(board.cost(demand))).sum();
    let spread = |boards: &mut dyn Iterator<Item = &Pattern>| -> f64 {
        boards
            .map(|board| {
                let room = demand.kinds.get(board.kind).map_or(0, |kind| kind.capacity) - board.used(demand);
                room as f64 * room as f64
            })
            .sum()
    };
    let held = spread(&mut old.iter().copied());
    for skip in [0, 100, 300] {
        let fill = Fill { demand, values, nodes: 600, skip };
        let Some(mut new) = fill.pack(&counts, &mut left.clone(), random, work) else { continue };
        let mut whole = Packing::default();
        for (place, board) in packing.boards.iter().enumerate() {
            if !pool.contains(&place) {
                whole.boards.push(board.clone());
            }
        }
        let cost = new.cost(demand);
        if cost > before || (cost == before && spread(&mut new.boards.iter()) < held) {
            continue;
        }
        whole.boards.append(&mut new.boards);
        if !whole.possible(demand) {
            continue;
        }
        *packing = whole;
        if let Some(change) = moved
            && let Some(pick) = choices.get_mut(change.wall).and_then(|wall| wall.get_mut(change.run))
        {
            *pick = change.pick;
        }
        return cost < before;
    }
    false
}

/// Another arrangement for one run.
struct Rearrangement {
    wall: usize,
    run: usize,
    pick: usize,
    out: Vec<usize>,
    into: Vec<usize>,
}

fn change(demand: &Demand, choices: &Choices, random: &mut Random) -> Option<Rearrangement> {
    let index = random.below(demand.walls.len());
    let wall = demand.walls.get(index)?;
    let choice = choices.get(index)?;
    for _ in 0..8 {
        let run = random.below(wall.sizes.len());
        let own = wall.sizes.get(run)?;
        let pick = random.below(own.len());
        let now = choice.get(run).copied()?;
        if pick != now && wall.allows(choice, run, pick) {
            return Some(Rearrangement {
                wall: index,
                run,
                pick,
                out: own.get(now)?.clone(),
                into: own.get(pick)?.clone(),
            });
        }
    }
    None
}
