//! Small cut lists with joints against an exact method written apart: all joints are counted through, and for each set
//! of pieces the least cost is found over all partitions of the set.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a check stops at what it did not expect"
)]

use std::collections::BTreeMap;

use lapwright::measure::{Length, Rounding};
use lapwright::saw::{CutList, JointFree, Planner, RunToCut, SawError, Stock, StudCenters};
use lapwright_tests::plan_check;
use lapwright_tests::random::Random;

fn inches(count: i64) -> Length {
    Length::from_inches(count)
}

/// The least cost of boards for these pieces; `None` where they do not suffice.
fn least_cost(list: &CutList, pieces: &[i64]) -> Option<u64> {
    let full = (1_usize << pieces.len()) - 1;
    let kerf = list.kerf.nm();
    let taken: Vec<i64> = (0..=full)
        .map(|set| (0..pieces.len()).filter(|at| set >> at & 1 == 1).map(|at| pieces[at] + kerf).sum::<i64>() - kerf)
        .collect();
    // Boards that are there so often one by one, then those without end.
    let mut single: Vec<(i64, u64)> = list.offcuts.iter().map(|length| (length.nm(), 0)).collect();
    for stock in &list.stock {
        for _ in 0..stock.count.map_or(0, |count| count.min(pieces.len() as u32)) {
            single.push((stock.length.nm(), stock.cost));
        }
    }
    let mut best: Vec<Option<u64>> = vec![None; full + 1];
    best[0] = Some(0);
    let better = |old: Option<u64>, new: Option<u64>| match (old, new) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    };
    for (length, cost) in single {
        let before = best.clone();
        for (set, slot) in best.iter_mut().enumerate().skip(1) {
            let mut part = set;
            while part > 0 {
                if taken[part] <= length {
                    *slot = better(*slot, before[set ^ part].map(|known| known + cost));
                }
                part = (part - 1) & set;
            }
        }
    }
    for set in 1..=full {
        let mut part = set;
        while part > 0 {
            let fitting = list.stock.iter().filter(|stock| stock.count.is_none() && stock.length.nm() >= taken[part]);
            if let Some(cost) = fitting.map(|stock| stock.cost).min() {
                best[set] = better(best[set], best[set ^ part].map(|known| known + cost));
            }
            part = (part - 1) & set;
        }
    }
    best[full]
}

/// All ways to joint a run with at most so many joints.
fn ways(list: &CutList, run: &RunToCut, longest: Length, most: usize) -> Vec<Vec<i64>> {
    let Some(StudCenters::Spaced { first, spacing }) = &list.studs else { return Vec::new() };
    let studs: Vec<i64> = (-40..80)
        .map(|k| first.nm() + k * spacing.nm())
        .filter(|at| run.from.nm() < *at && *at < run.to.nm())
        .filter(|at| {
            !list.avoid.iter().any(|zone| {
                zone.from.nm() < *at
                    && *at < zone.to.nm()
                    && zone.courses.as_ref().is_none_or(|courses| courses.contains(&run.course))
            })
        })
        .collect();
    let mut ways = Vec::new();
    for set in 1_u32..1 << studs.len() {
        let joints: Vec<i64> = (0..studs.len()).filter(|at| set >> at & 1 == 1).map(|at| studs[at]).collect();
        let sound = joints.len() <= most
            && cut(list, run, &joints)
                .iter()
                .all(|piece| *piece <= longest.nm() && *piece >= list.piece_min.nm() && *piece > 0);
        if sound {
            ways.push(joints);
        }
    }
    ways
}

fn cut(list: &CutList, run: &RunToCut, joints: &[i64]) -> Vec<i64> {
    let half = list.joint_gap.nm() / 2;
    let mut start = run.from.nm() + list.end_gap.nm();
    let mut pieces = Vec::new();
    let round = |nm: i64| list.division.round(Length::from_nm(nm), Rounding::Down).nm();
    for joint in joints {
        pieces.push(round(joint - half - start));
        start = joint + half;
    }
    pieces.push(round(run.to.nm() - list.end_gap.nm() - start));
    pieces
}

enum Answer {
    Cost(u64, bool),
    NoBoards,
    NoStagger,
}

/// The least cost over all joints, and whether stagger forced one more joint somewhere.
fn exact(list: &CutList) -> Option<Answer> {
    let longest = list.longest_board();
    let whole = |run: &RunToCut| {
        list.division.round(run.to - run.from - list.end_gap - list.end_gap, Rounding::Down) <= longest
    };
    let mut known: BTreeMap<Vec<i64>, Option<u64>> = BTreeMap::new();
    let pieced: Vec<&RunToCut> = list.runs.iter().filter(|run| !whole(run)).collect();
    let mut fewest = Vec::new();
    for run in &pieced {
        fewest.push(plan_check::fewest_joints(list, run, longest)? + list.extra_joints as usize);
    }
    let options: Vec<Vec<Vec<i64>>> =
        pieced.iter().zip(&fewest).map(|(run, most)| ways(list, run, longest, most + 1)).collect();
    if options.iter().map(Vec::len).product::<usize>() > 20_000 {
        return None;
    }
    // By how many runs with one joint more, the least cost.
    let mut found: BTreeMap<usize, Option<u64>> = BTreeMap::new();
    let mut pick = vec![0; pieced.len()];
    loop {
        let chosen: Vec<&Vec<i64>> = pick.iter().zip(&options).map(|(at, ways)| &ways[*at]).collect();
        let apart = (0..chosen.len()).all(|a| {
            (a + 1..chosen.len()).all(|b| {
                let (x, y) = (pieced[a], pieced[b]);
                (x.course - y.course).abs() != 1
                    || x.from >= y.to
                    || y.from >= x.to
                    || chosen[a].iter().all(|p| chosen[b].iter().all(|q| (p - q).abs() >= list.stagger.nm()))
            })
        });
        if apart {
            let over = chosen.iter().zip(&fewest).filter(|(joints, most)| joints.len() > **most).count();
            let mut pieces: Vec<i64> =
                list.runs.iter().filter(|run| whole(run)).flat_map(|run| cut(list, run, &[])).collect();
            pieces.extend(pieced.iter().zip(&chosen).flat_map(|(run, joints)| cut(list, run, joints)));
            pieces.sort_unstable();
            if pieces.len() > 10 {
                return None;
            }
            let cost = *known.entry(pieces.clone()).or_insert_with(|| least_cost(list, &pieces));
            let slot = found.entry(over).or_insert(cost);
            *slot = match (*slot, cost) {
                (Some(a), Some(b)) => Some(a.min(b)),
                (a, b) => a.or(b),
            };
        }
        let Some(at) = (0..pick.len()).find(|at| pick[*at] + 1 < options[*at].len()) else { break };
        pick[at] += 1;
        pick[..at].fill(0);
    }
    Some(match found.into_iter().next() {
        None => Answer::NoStagger,
        Some((_, None)) => Answer::NoBoards,
        Some((over, Some(cost))) => Answer::Cost(cost, over > 0),
    })
}

fn any_list(random: &mut Random) -> CutList {
    let mut list = CutList::new();
    list.kerf = Length::from_inches_64(0, 8 * random.between(0, 2));
    list.end_gap = Length::from_inches_64(0, 8 * random.between(0, 1));
    list.joint_gap = Length::from_inches_64(0, 8 * random.between(0, 1));
    list.studs = Some(StudCenters::Spaced { first: inches(random.between(0, 15)), spacing: inches(16) });
    list.stagger = inches(16 * random.between(0, 4));
    list.piece_min = inches(random.between(0, 20));
    list.extra_joints = u32::from(random.between(0, 3) == 0);
    for at in 0..random.between(1, 3) {
        let length = inches(12 * random.between(6, 10));
        let count = (at > 0 && random.between(0, 3) == 0).then(|| random.between(0, 3) as u32);
        let cost = if random.between(0, 2) == 0 { random.between(1, 20) as u64 } else { length.nm().unsigned_abs() };
        list.stock.push(Stock { length, cost, count });
    }
    for _ in 0..random.between(0, 2) {
        list.offcuts.push(inches(random.between(20, 60)));
    }
    for course in 0..random.between(1, 4) {
        let from = inches(random.between(0, 20));
        list.runs.push(RunToCut { wall: "a".into(), course, from, to: from + inches(random.between(30, 170)) });
    }
    if random.between(0, 5) == 0 {
        // Courses that two boards just cover leave no room for stagger.
        let longest = list.longest_board();
        for run in &mut list.runs {
            run.from = Length::ZERO;
            run.to = longest + longest - inches(random.between(4, 24));
        }
    }
    if random.between(0, 2) == 0 {
        let from = inches(random.between(0, 100));
        list.avoid.push(JointFree {
            wall: None,
            from,
            to: from + inches(random.between(10, 40)),
            courses: Some(vec![0, 2]),
        });
    }
    list
}

#[test]
fn small_walls_cost_what_counting_through_finds() {
    let (mut compared, mut proved, mut forced, mut refused) = (0, 0, 0, 0);
    for seed in 0..260 {
        let list = any_list(&mut Random::new(seed));
        let planned = Planner::new(&list);
        if let Err(SawError::NoJoints { .. } | SawError::NoStud { .. }) = planned {
            let longest = list.longest_board();
            let stuck = list.runs.iter().any(|run| plan_check::fewest_joints(&list, run, longest).is_none());
            assert!(stuck, "seed {seed}: there are joints");
            continue;
        }
        let Some(wanted) = exact(&list) else { continue };
        match (planned, wanted) {
            (Ok(mut planner), Answer::Cost(cost, over)) => {
                planner.step(150);
                let plan = planner.plan();
                assert_eq!(plan_check::faults(&list, &plan, over), Vec::<String>::new(), "seed {seed}");
                assert_eq!(plan.cost, cost, "seed {seed}, bound {}", plan.bound);
                compared += 1;
                proved += i32::from(plan.proved);
                forced += i32::from(over);
            }
            (Err(SawError::NotEnough), Answer::NoBoards) | (Err(SawError::NoStagger { .. }), Answer::NoStagger) => {
                refused += 1;
            }
            (planned, Answer::Cost(cost, _)) => panic!("seed {seed}: {:?}, not a plan of {cost}", planned.err()),
            (planned, _) => panic!("seed {seed}: {:?}, but there is no plan", planned.map(|planner| planner.plan())),
        }
    }
    println!("{compared} compared, {proved} proved, {forced} forced, {refused} refused");
    assert!(compared >= 120 && proved * 10 >= compared * 8 && forced >= 2 && refused >= 1);
}

trait Longest {
    fn longest_board(&self) -> Length;
}

impl Longest for CutList {
    fn longest_board(&self) -> Length {
        let new = self.stock.iter().filter(|stock| stock.count != Some(0)).map(|stock| stock.length);
        new.chain(self.offcuts.iter().copied()).max().unwrap_or_default()
    }
}
