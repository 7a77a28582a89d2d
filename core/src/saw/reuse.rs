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
    let near_before = |wall: &super::demand::TiedRuns| -> Option<Vec<usize>> {
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
        let same = |kind: &super::demand::BoardKind| kind.length == was.length && kind.offcut == was.offcut;
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

#[cfg(test)]
mod tests {
    use super::super::cut_list::{CutList, RunToCut, Stock};
    use super::*;

    const ONE_BOARD: Length = Length::from_inches(144);

    /// Pieces in 64ths of an inch, out of boards of 12 ft.
    fn demand(pieces: &[i64], kerf: i64) -> Demand {
        let mut list = CutList::new();
        list.joints = false;
        list.kerf = Length::from_inches_64(0, kerf);
        list.stock.push(Stock { length: ONE_BOARD, cost: 1, count: None });
        for (course, piece) in (0..).zip(pieces) {
            let to = Length::from_inches_64(0, *piece);
            list.runs.push(RunToCut { wall: String::new(), course, from: Length::ZERO, to });
        }
        Demand::new(&list).unwrap()
    }

    /// By hand: with a kerf of 1/8 in three boards hold 71 and 71 in, 60, 40 and 40 in, and twice 71 15/16 in, the last one
    /// without a rest. A kerf wider by 1/16 in leaves no room for that one; a narrower one leaves all three. With one of 2 in
    /// the other two come out exactly, with any wider one neither does.
    #[test]
    fn boards_are_kept_over_another_kerf_as_long_as_they_hold_their_pieces() {
        let (long, longer) = (71 * 64, 71 * 64 + 60);
        let boards_of: [&[i64]; 3] = [&[long, long], &[60 * 64, 40 * 64, 40 * 64], &[longer, longer]];
        let pieces: Vec<i64> = boards_of.concat();
        let before = demand(&pieces, 8);
        let place = |piece: &i64| {
            let size = Length::from_inches_64(0, piece + 8).nm();
            before.sizes.iter().position(|own| *own == size).unwrap()
        };
        let pattern = |pieces: &&[i64]| Pattern { kind: 0, pieces: pieces.iter().map(place).collect() };
        let old = Packing { boards: boards_of.iter().map(pattern).collect() };
        for (kerf, kept_boards) in [(8, 3), (4, 3), (0, 3), (12, 2), (128, 2), (132, 0)] {
            let now = demand(&pieces, kerf);
            let kept = boards(&now, &before, &old, &Choices::default());
            assert_eq!(kept.boards.len(), kept_boards, "a kerf of {kerf}/64 in");
            // What is kept holds the same pieces, now with the new kerf.
            let cut = |pattern: &Pattern| -> Vec<i64> {
                pattern.pieces.iter().map(|piece| now.size(*piece) - now.list.kerf.nm()).collect()
            };
            let nm = |pieces: &&[i64]| pieces.iter().map(|piece| Length::from_inches_64(0, *piece).nm()).collect();
            let was: Vec<Vec<i64>> = boards_of.iter().map(nm).collect();
            assert!(kept.boards.iter().all(|board| was.contains(&cut(board))));
            // What is left to cut is the rest.
            let open: u32 = kept.counts.iter().sum();
            let on_boards: usize = kept.boards.iter().map(|board| board.pieces.len()).sum();
            assert_eq!(open as usize + on_boards, pieces.len());
        }
    }
}
