//! A checker of cutting plans, written apart from the planner: it knows the rules and nothing of the search.
#![allow(clippy::indexing_slicing, reason = "a plan that points nowhere may stop the check")]

use std::collections::BTreeMap;

use lapwright::measure::{Length, Rounding};
use lapwright::saw::{CutList, Plan, RunToCut, StudCenters};

/// Everything that is wrong with a plan; empty for a sound one.
///
/// With `forced` a run may have one joint beyond the allowed ones; whether stagger really forces it is not looked into.
pub fn faults(list: &CutList, plan: &Plan, forced: bool) -> Vec<String> {
    let mut faults = Vec::new();
    cover(list, plan, forced, &mut faults);
    stagger(list, plan, &mut faults);
    boards(list, plan, &mut faults);
    faults
}

fn nm(length: Length) -> i128 {
    i128::from(length.nm())
}

fn joints_of(list: &CutList, plan: &Plan, run: usize) -> Vec<(i128, i128)> {
    // Left and right end of each joint's gap.
    let pieces: Vec<_> = plan.pieces.iter().filter(|piece| piece.run == run).collect();
    let _ = list;
    pieces.windows(2).map(|pair| (nm(pair[0].to), nm(pair[1].from))).collect()
}

fn centre(list: &CutList, joint: (i128, i128)) -> i128 {
    // The gap is centred to the nanometre; of an odd one the larger half lies on the left.
    joint.0 + (nm(list.joint_gap) + 1) / 2
}

fn on_stud(list: &CutList, at: i128) -> bool {
    match &list.studs {
        None => false,
        Some(StudCenters::Listed(studs)) => studs.iter().any(|stud| nm(*stud) == at),
        Some(StudCenters::Spaced { first, spacing }) => (at - nm(*first)).rem_euclid(nm(*spacing)) == 0,
    }
}

fn avoided(list: &CutList, run: &RunToCut, at: i128) -> bool {
    list.avoid.iter().any(|zone| {
        (zone.wall.is_none() || zone.wall.as_ref() == Some(&run.wall))
            && (zone.courses.is_none() || zone.courses.as_ref().is_some_and(|c| c.contains(&run.course)))
            && nm(zone.from) < at
            && at < nm(zone.to)
    })
}

/// The fewest joints of a run by itself: how far one, two … pieces can reach.
pub fn fewest_joints(list: &CutList, run: &RunToCut, longest: Length) -> Option<usize> {
    let (start, end) = (run.from + list.end_gap, run.to - list.end_gap);
    let half = Length::from_nm((list.joint_gap.nm() + 1) / 2);
    let rest = list.joint_gap - half;
    let fits = |from: Length, to: Length| {
        let cut = list.division.round(to - from, Rounding::Down);
        cut <= longest && cut >= list.piece_min && cut > Length::ZERO
    };
    let studs: Vec<Length> = match &list.studs {
        None => Vec::new(),
        Some(StudCenters::Listed(studs)) => studs.clone(),
        Some(StudCenters::Spaced { first, spacing }) => {
            let low = (start - *first).nm().div_euclid(spacing.nm());
            let high = (end - *first).nm().div_euclid(spacing.nm());
            (low..=high).map(|k| Length::from_nm(first.nm() + k * spacing.nm())).collect()
        }
    };
    let studs: Vec<Length> =
        studs.into_iter().filter(|s| start < *s && *s < end && !avoided(list, run, nm(*s))).collect();
    let mut reached: Vec<Length> = studs.iter().copied().filter(|stud| fits(start, *stud - half)).collect();
    for count in 1..=studs.len() {
        if reached.iter().any(|stud| fits(*stud + rest, end)) {
            return Some(count);
        }
        reached = studs
            .iter()
            .copied()
            .filter(|next| reached.iter().any(|stud| stud < next && fits(*stud + rest, *next - half)))
            .collect();
    }
    None
}

fn cover(list: &CutList, plan: &Plan, forced: bool, faults: &mut Vec<String>) {
    let boards = list.stock.iter().filter(|stock| stock.count != Some(0)).map(|stock| stock.length);
    let longest = boards.chain(list.offcuts.iter().copied()).max().unwrap_or_default();
    for (index, run) in list.runs.iter().enumerate() {
        let pieces: Vec<_> = plan.pieces.iter().filter(|piece| piece.run == index).collect();
        let (Some(first), Some(last)) = (pieces.first(), pieces.last()) else {
            faults.push(format!("run {index} has no pieces"));
            continue;
        };
        if nm(first.from) != nm(run.from) + nm(list.end_gap) || nm(last.to) != nm(run.to) - nm(list.end_gap) {
            faults.push(format!("run {index} is not covered to its end gaps"));
        }
        for piece in &pieces {
            if piece.length != list.division.round(piece.to - piece.from, Rounding::Down) {
                faults.push(format!("run {index}: a piece is not as long as its ends say"));
            }
            if pieces.len() > 1 && piece.length < list.piece_min {
                faults.push(format!("run {index}: a piece is under the least"));
            }
        }
        for joint in joints_of(list, plan, index) {
            let at = centre(list, joint);
            if joint.1 - joint.0 != nm(list.joint_gap) {
                faults.push(format!("run {index}: a joint is not as wide as its gap"));
            }
            if !on_stud(list, at) {
                faults.push(format!("run {index}: a joint at {at} lies on no stud"));
            }
            if avoided(list, run, at) {
                faults.push(format!("run {index}: a joint at {at} lies where none may"));
            }
        }
        let whole = list.division.round(run.to - run.from - list.end_gap - list.end_gap, Rounding::Down);
        let most = if whole <= longest {
            0
        } else if !list.joints {
            faults.push(format!("run {index} is longer than any board"));
            0
        } else {
            let fewest = fewest_joints(list, run, longest).unwrap_or(usize::MAX / 2);
            fewest + list.extra_joints as usize + usize::from(forced)
        };
        if pieces.len() - 1 > most {
            faults.push(format!("run {index} has {} joints, not at most {most}", pieces.len() - 1));
        }
    }
}

fn stagger(list: &CutList, plan: &Plan, faults: &mut Vec<String>) {
    let joints: Vec<Vec<i128>> = (0..list.runs.len())
        .map(|run| joints_of(list, plan, run).into_iter().map(|joint| centre(list, joint)).collect())
        .collect();
    for (a, x) in list.runs.iter().enumerate() {
        for (b, y) in list.runs.iter().enumerate().skip(a + 1) {
            let neighbours = x.wall == y.wall && (i128::from(x.course) - i128::from(y.course)).abs() == 1;
            if !neighbours || x.from >= y.to || y.from >= x.to {
                continue;
            }
            for p in &joints[a] {
                for q in &joints[b] {
                    if (p - q).abs() < nm(list.stagger) {
                        faults.push(format!("runs {a} and {b}: joints at {p} and {q} are too close"));
                    }
                }
            }
        }
    }
}

fn boards(list: &CutList, plan: &Plan, faults: &mut Vec<String>) {
    let mut cut = vec![0_usize; plan.pieces.len()];
    let mut stock = vec![0_u64; list.stock.len()];
    let mut offcuts = vec![0_u64; list.offcuts.len()];
    let mut cost: u128 = 0;
    for (index, board) in plan.boards.iter().enumerate() {
        let length = if board.offcut {
            offcuts[board.source] += 1;
            list.offcuts[board.source]
        } else {
            stock[board.source] += 1;
            cost += u128::from(list.stock[board.source].cost);
            list.stock[board.source].length
        };
        if length != board.length {
            faults.push(format!("board {index} is not of its length"));
        }
        if board.pieces.is_empty() {
            faults.push(format!("board {index} gives no piece"));
        }
        let sum: i128 = board.pieces.iter().map(|piece| nm(plan.pieces[*piece].length)).sum();
        let left = nm(length) - sum - (board.pieces.len() as i128 - 1) * nm(list.kerf);
        if left < 0 {
            faults.push(format!("board {index} is too short by {}", -left));
        }
        if left != nm(board.left) {
            faults.push(format!("board {index} leaves {left}, not {}", board.left.nm()));
        }
        if board.keep != list.keep_min.is_some_and(|least| left >= nm(least)) {
            faults.push(format!("board {index}: wrong about keeping its rest"));
        }
        for piece in &board.pieces {
            cut[*piece] += 1;
        }
    }
    if let Some(piece) = cut.iter().position(|count| *count != 1) {
        faults.push(format!("piece {piece} is cut {} times", cut[piece]));
    }
    if offcuts.iter().any(|count| *count > 1) {
        faults.push("an offcut is used twice".into());
    }
    if stock.iter().zip(&list.stock).any(|(used, stock)| stock.count.is_some_and(|count| *used > u64::from(count))) {
        faults.push("more boards than there are".into());
    }
    if cost != u128::from(plan.cost) {
        faults.push(format!("the cost is {cost}, not {}", plan.cost));
    }
    if plan.count as u64 != stock.iter().sum::<u64>() {
        faults.push("the count is wrong".into());
    }
    if plan.proved != (plan.bound == plan.cost) {
        faults.push("bound, cost and proof do not agree".into());
    }
    // The planner never says a bound over its own cost, whatever it found. So the bound is held against boards that were
    // filled without it.
    if let Some(other) = packed(list, plan) {
        if other < u128::from(plan.bound) {
            faults.push(format!("the bound is {}, though {other} is enough", plan.bound));
        }
        if plan.proved && other < u128::from(plan.cost) {
            faults.push(format!("{} is not the least, {other} is enough", plan.cost));
        }
    }
}

/// What the plan's own pieces cost where the longest comes first and goes into the board with the least room for it
/// (best fit decreasing), the best of one such filling for each of the cheapest stock lengths; `None` where that finds no
/// boards.
pub fn packed(list: &CutList, plan: &Plan) -> Option<u128> {
    let mut pieces: Vec<i128> = plan.pieces.iter().map(|piece| nm(piece.length)).collect();
    pieces.sort_unstable_by(|a, b| b.cmp(a));
    let mut cheapest: Vec<usize> = (0..list.stock.len()).collect();
    cheapest.sort_by_key(|stock| list.stock[*stock].cost);
    let firsts = cheapest.iter().take(FILLINGS).map(|first| Some(*first));
    let firsts: Vec<Option<usize>> = if cheapest.is_empty() { vec![None] } else { firsts.collect() };
    firsts.into_iter().filter_map(|first| filled(list, &pieces, first, &cheapest)).min()
}

/// More stock lengths than any yard has; a list of thousands would otherwise be filled thousands of times.
const FILLINGS: usize = 16;

/// The cost of one filling: offcuts before new boards, of those the stock length `first` before the others, `cheapest` first.
fn filled(list: &CutList, pieces: &[i128], first: Option<usize>, cheapest: &[usize]) -> Option<u128> {
    let kerf = nm(list.kerf);
    // A board gives its length and one kerf, a piece takes its own and one kerf.
    let mut open: BTreeMap<i128, usize> = BTreeMap::new();
    let mut offcuts: BTreeMap<i128, usize> = BTreeMap::new();
    for offcut in &list.offcuts {
        *offcuts.entry(nm(*offcut) + kerf).or_default() += 1;
    }
    let mut left: Vec<u64> = list.stock.iter().map(|stock| stock.count.map_or(u64::MAX, u64::from)).collect();
    let mut cost = 0;
    for piece in pieces {
        let room = least_room(&mut open, piece + kerf).or_else(|| least_room(&mut offcuts, piece + kerf));
        let room = match room {
            Some(room) => room,
            None => {
                let fits = |stock: &usize| left[*stock] > 0 && nm(list.stock[*stock].length) >= *piece;
                let stock = first.filter(fits).or_else(|| cheapest.iter().copied().find(fits))?;
                left[stock] -= 1;
                cost += u128::from(list.stock[stock].cost);
                nm(list.stock[stock].length) + kerf
            }
        };
        *open.entry(room - piece - kerf).or_default() += 1;
    }
    Some(cost)
}

/// Takes the board with the least room that is enough.
fn least_room(boards: &mut BTreeMap<i128, usize>, enough: i128) -> Option<i128> {
    let room = *boards.range(enough..).next()?.0;
    let count = boards.get_mut(&room)?;
    *count -= 1;
    if *count == 0 {
        boards.remove(&room);
    }
    Some(room)
}

#[cfg(test)]
mod tests {
    use super::*;
    use lapwright::saw::{Planner, Stock};

    /// By hand: two pieces of 72 in and one of 40 in take two boards of 144 in with a kerf, and a plan that claims more,
    /// or that less is proved, is told.
    #[test]
    fn a_bound_that_is_too_high_and_a_proof_that_is_none_are_told() {
        let mut list = CutList::new();
        list.joints = false;
        list.kerf = Length::from_inches_64(0, 8);
        list.stock.push(Stock { length: Length::from_inches(144), cost: 10, count: None });
        for (course, inches) in [(0, 72), (1, 72), (2, 40)] {
            let to = Length::from_inches(inches);
            list.runs.push(RunToCut { wall: String::new(), course, from: Length::ZERO, to });
        }
        let plan = Planner::new(&list).unwrap().plan();
        assert_eq!((packed(&list, &plan), faults(&list, &plan, false)), (Some(20), Vec::new()));
        let high = Plan { bound: 30, cost: 30, proved: true, ..plan.clone() };
        assert!(faults(&list, &high, false).iter().any(|fault| fault.contains("the bound is 30")));
        assert!(faults(&list, &high, false).iter().any(|fault| fault.contains("not the least")));
    }
}
