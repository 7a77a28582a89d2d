//! What of a plan can be kept for a list that differs a little.

use std::collections::BTreeMap;

use crate::measure::Length;

use super::demand::{Choices, Demand};
use super::pattern::{Left, Packing, Pattern};

/// The price of a run with other joints than before.
const CHANGE: i64 = 1 << 20;

/// Boards that are kept, and what is left to cut and to cut from.
pub(super) struct Kept {
    pub(super) boards: Vec<Pattern>,
    pub(super) counts: Vec<u32>,
    pub(super) left: Left,
}

/// Joints for every wall: those of before for as many runs as still have them and keep their stagger with the others.
pub(super) fn choices(demand: &Demand, before: &Demand, old: &Choices, fresh: &Choices) -> Choices {
    let mut known: BTreeMap<(&str, i64, Length, Length), &[Length]> = BTreeMap::new();
    for (wall, choice) in before.walls.iter().zip(old) {
        for ((run, arrangements), pick) in wall.group.runs.iter().zip(&wall.group.choices).zip(choice) {
            if let (Some(run), Some(arrangement)) = (before.list.runs.get(*run), arrangements.get(*pick)) {
                known.insert((&run.wall, run.course, run.from, run.to), &arrangement.joints);
            }
        }
    }
    let near_before = |wall: &super::demand::Wall| -> Option<Vec<usize>> {
        let mut prices = wall.prices(|_| 0);
        for ((run, arrangements), own) in wall.group.runs.iter().zip(&wall.group.choices).zip(&mut prices) {
            let run = demand.list.runs.get(*run)?;
            let Some(joints) = known.get(&(run.wall.as_str(), run.course, run.from, run.to)) else { continue };
            for (arrangement, price) in arrangements.iter().zip(own) {
                *price += if arrangement.joints == **joints { 0 } else { CHANGE };
            }
        }
        wall.group.cheapest(&prices).map(|(_, choice)| choice)
    };
    demand.walls.iter().zip(fresh).map(|(wall, fresh)| near_before(wall).unwrap_or_else(|| fresh.clone())).collect()
}

/// The boards of before whose pieces are all still wanted.
pub(super) fn boards(demand: &Demand, before: &Demand, old: &Packing, choices: &Choices) -> Kept {
    let mut kept = Kept { boards: Vec::new(), counts: demand.counts(choices), left: Left::new(demand) };
    for board in &old.boards {
        let Some(was) = before.kinds.get(board.kind) else { continue };
        let same = |kind: &super::demand::Kind| kind.length == was.length && kind.offcut == was.offcut;
        let Some(kind) = demand.kinds.iter().position(same).filter(|kind| kept.left.has(*kind)) else { continue };
        let mut counts = kept.counts.clone();
        let mut pieces = Vec::new();
        for piece in &board.pieces {
            let length = before.size(*piece) - before.list.kerf.nm() + demand.list.kerf.nm();
            let size = demand.sizes.partition_point(|other| *other > length);
            match counts.get_mut(size) {
                Some(count) if demand.size(size) == length && *count > 0 => *count -= 1,
                _ => break,
            }
            pieces.push(size);
        }
        let pattern = Pattern { kind, pieces };
        let fits = demand.kinds.get(kind).is_some_and(|own| pattern.used(demand) <= own.capacity);
        if pattern.pieces.len() == board.pieces.len() && fits {
            kept.counts = counts;
            kept.left.take(kind);
            kept.boards.push(pattern);
        }
    }
    kept
}
