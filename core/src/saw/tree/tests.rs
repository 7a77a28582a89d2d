use crate::measure::Length;

use super::super::{CutList, RunToCut, Stock, StudCenters, exhaust, first_fit};
use super::*;

fn list(boards: &[(i64, u64, Option<u32>)], kerf: i64, pieces: &[i64]) -> CutList {
    let mut list = CutList::new();
    list.joints = false;
    list.division = crate::measure::Division::SIXTEENTH;
    list.kerf = Length::from_inches(kerf);
    let stock = |(length, cost, count): &(i64, u64, Option<u32>)| Stock {
        length: Length::from_inches(*length),
        cost: *cost,
        count: *count,
    };
    list.stock = boards.iter().map(stock).collect();
    for (course, piece) in pieces.iter().enumerate() {
        let (wall, course) = (String::new(), course as i64);
        list.runs.push(RunToCut { wall, course, from: Length::ZERO, to: Length::from_inches(*piece) });
    }
    list
}

/// The bound of the programme alone, that of the tree at its end, and the cost of the best plan.
fn search(demand: &Demand) -> (i128, i128, i128) {
    let open = !demand.walls.is_empty();
    let choices = demand.start(|size| demand.size(size) >> 12).expect("joints");
    let counts = demand.counts(&choices);
    let best = first_fit::pack(demand, &counts).expect("a plan");
    let mut master = Master::new(demand, &counts, open, &best.boards, None).expect("a programme");
    while !master.done {
        master.advance(demand);
    }
    let mut tree = Tree::new(demand, &master).expect("a tree");
    let (mut cost, mut random, mut work) = (best.cost(demand), Random::new(1), 0);
    while !tree.over() && work < 400_000_000 {
        let before = tree.bound(cost);
        if let Some((choices, found)) = tree.advance(demand, cost, &mut random, &mut work) {
            let mut all: Vec<usize> = found.boards.iter().flat_map(|board| board.pieces.clone()).collect();
            all.sort_unstable();
            let counts = demand.counts(&choices);
            let wanted = counts.iter().enumerate().flat_map(|(size, count)| (0..*count).map(move |_| size));
            assert_eq!(all, wanted.collect::<Vec<_>>(), "all pieces, once");
            assert!(demand.walls.iter().zip(&choices).all(|(wall, choice)| keeps_stagger(wall, choice)));
            assert!(found.boards.iter().all(|board| board.used(demand) <= demand.kinds[board.kind].capacity));
            if found.possible(demand) {
                cost = cost.min(found.cost(demand));
            }
        }
        assert!(tree.bound(cost) >= before.min(cost), "a bound never falls");
    }
    (bound::reachable(demand, master.bound, cost), tree.bound(cost), cost)
}

fn keeps_stagger(wall: &TiedRuns, choice: &[usize]) -> bool {
    choice.len() == wall.sizes.len() && (0..choice.len()).all(|run| wall.allows(choice, run, choice[run]))
}

/// Random lists against counting through all ways to cut them. Some have a gap between the programme and the optimum:
/// it is closed wherever boards are not counted, and nearly always where they are.
#[test]
fn branches_close_what_the_programme_leaves() {
    let mut random = Random::new(11);
    let (mut gaps, mut closed, mut lists) = ([0; 2], [0; 2], 0);
    for round in 0..600 {
        let kerf = random.below(2) as i64;
        let boards: Vec<(i64, u64, Option<u32>)> = match round % 4 {
            0 => vec![(100, 1, None)],
            1 => vec![(70, 7, None), (100, 10, None), (45, 5, None)],
            2 => vec![(60, 3, None), (84, 4, None), (100, 5, None)],
            _ => vec![(70, 7, Some(2)), (100, 10, None), (45, 5, Some(1))],
        };
        let count = 6 + random.below(7);
        let pieces: Vec<i64> = (0..count).map(|_| 12 + random.below(45) as i64).collect();
        let demand = Demand::new(&list(&boards, kerf, &pieces)).expect("a list");
        let Some(optimum) = exhaust::exhaust(&demand, i128::MAX, &mut 0) else { continue };
        let least = optimum.expect("a plan").1.cost(&demand);
        let (programme, bound, cost) = search(&demand);
        assert!(programme <= least && bound <= least && least <= cost, "{pieces:?}: {bound}, {least}, {cost}");
        lists += 1;
        let counted = usize::from(round % 4 == 3);
        gaps[counted] += i32::from(programme < least);
        closed[counted] += i32::from(programme < least && (bound, cost) == (least, least));
    }
    assert_eq!(closed[0], gaps[0]);
    assert!(lists > 200 && gaps[0] > 5 && gaps[1] > 5, "{gaps:?} gaps in {lists} lists");
    assert!(closed[1] * 5 >= gaps[1] * 4, "{closed:?} of {gaps:?} closed");
}

/// The same with the joints of a few courses open.
#[test]
fn branches_close_what_the_programme_leaves_of_open_joints() {
    let mut random = Random::new(12);
    let (mut gaps, mut lists) = (0, 0);
    for round in 0..120 {
        let boards: &[(i64, u64, Option<u32>)] = match round % 3 {
            0 => &[(100, 1, None)],
            1 => &[(100, 5, None), (84, 4, None)],
            _ => &[(100, 5, None), (84, 4, Some(2))],
        };
        let mut list = list(boards, random.below(2) as i64, &[]);
        list.joints = true;
        list.stagger = Length::from_inches(16 * random.below(3) as i64);
        list.studs = Some(StudCenters::Spaced { first: Length::ZERO, spacing: Length::from_inches(16) });
        list.piece_min = Length::from_inches(random.below(20) as i64);
        for course in 0..2 + random.below(3) as i64 {
            let (from, to) = (random.below(12) as i64, 60 + random.below(100) as i64);
            let (from, to) = (Length::from_inches(from), Length::from_inches(to));
            list.runs.push(RunToCut { wall: String::new(), course, from, to });
        }
        let Ok(demand) = Demand::new(&list) else { continue };
        let Some(optimum) = exhaust::exhaust(&demand, i128::MAX, &mut 0) else { continue };
        let least = optimum.expect("a plan").1.cost(&demand);
        let (programme, bound, cost) = search(&demand);
        assert!(programme <= least, "round {round}: {programme}, {least}");
        assert_eq!((bound, cost), (least, least), "round {round}");
        lists += 1;
        gaps += i32::from(programme < least);
    }
    assert!(lists > 60 && gaps > 2, "{gaps} gaps in {lists} lists");
}
