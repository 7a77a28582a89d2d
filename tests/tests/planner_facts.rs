//! Plans that anyone can check by hand.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a check stops at what it did not expect"
)]

use lapwright::measure::Length;
use lapwright::saw::{CutList, DEFAULT_EFFORT, Plan, Planner, RunToCut, Stock, StudCenters};
use lapwright_tests::plan_check;

fn cut(stock: &[i64], kerf_64: i64, pieces: &[(i64, usize)]) -> Plan {
    let mut list = CutList::new();
    list.joints = false;
    list.kerf = Length::from_inches_64(0, kerf_64);
    list.stock = stock
        .iter()
        .map(|inches| Length::from_inches(*inches))
        .map(|length| Stock { length, cost: length.nm() as u64, count: None })
        .collect();
    for (inches, count) in pieces {
        for _ in 0..*count {
            let course = list.runs.len() as i64;
            let to = Length::from_inches(*inches);
            list.runs.push(RunToCut { wall: String::new(), course, from: Length::ZERO, to });
        }
    }
    solve(&list)
}

fn solve(list: &CutList) -> Plan {
    let mut planner = Planner::new(list).expect("a plan");
    planner.step(DEFAULT_EFFORT);
    let plan = planner.plan();
    assert_eq!(plan_check::faults(list, &plan, false), Vec::<String>::new());
    plan
}

/// Worked by hand: the boards' lengths give the bound, and the packings are easily found. With a kerf two pieces of 72 in,
/// three of 48 in or four of 36 in do not come out of one board.
#[test]
fn boards_of_twelve_feet() {
    let mixed = [(95, 6), (61, 4), (47, 8), (33, 10), (22, 7)];
    for kerf in [0, 8] {
        let plan = cut(&[144], kerf, &mixed);
        assert_eq!((plan.count, plan.proved), (12, true), "kerf {kerf}/64");
    }
    let exact = [(72, 6), (48, 9), (36, 8)];
    let plan = cut(&[144], 0, &exact);
    assert_eq!((plan.count, plan.proved), (8, true));
    let plan = cut(&[144], 8, &exact);
    assert_eq!((plan.count, plan.proved), (10, true));
}

/// Four pieces of 24 in take three kerfs: 3/8 in more than 96 in (arithmetic).
#[test]
fn four_pieces_of_two_feet_do_not_come_out_of_eight_feet() {
    assert_eq!(cut(&[96], 8, &[(24, 4)]).count, 2);
    assert_eq!(cut(&[96], 0, &[(24, 4)]).count, 1);
    assert_eq!(cut(&[96], 8, &[(24, 3)]).count, 1);
}

/// No runs yet, on studs at 16 in, from boards of 12 and of 16 ft.
fn on_studs() -> CutList {
    let mut list = CutList::new();
    list.kerf = Length::from_inches_64(0, 8);
    list.end_gap = Length::from_inches_64(0, 8);
    list.stagger = Length::from_inches(32);
    list.piece_min = Length::from_inches(24);
    list.studs = Some(StudCenters::Spaced { first: Length::ZERO, spacing: Length::from_inches(16) });
    list.stock = [144, 192]
        .map(Length::from_inches)
        .map(|length| Stock { length, cost: length.nm() as u64, count: None })
        .to_vec();
    list
}

/// Two neighbouring courses of 230 in on studs at 16 in, one piece of 81 in and one of 111 in: the boards' lengths are
/// the least multiple of 48 in that is not under the pieces' sum.
#[test]
fn a_small_wall() {
    let mut list = on_studs();
    for (course, from, to) in [(1, 0, 230), (2, 0, 230), (3, 0, 81), (3, 119, 230)] {
        let (from, to) = (Length::from_inches(from), Length::from_inches(to));
        list.runs.push(RunToCut { wall: String::new(), course, from, to });
    }
    let plan = solve(&list);
    assert_eq!((plan.cost, plan.bound), (17_068_800_000, 17_068_800_000));
    assert_eq!(plan.count, 4);
}

/// One window more in a wall: what has not changed is kept, and the plan is sound and no worse than one packed by hand.
#[test]
fn a_wall_with_one_change_is_planned_again() {
    let mut list = on_studs();
    for course in 1..=20 {
        let to = Length::from_inches(if course < 15 { 330 } else { 330 - 4 * (course - 14) });
        list.runs.push(RunToCut { wall: String::new(), course, from: Length::ZERO, to });
    }
    let mut before = Planner::new(&list).expect("a plan");
    before.step(200);
    let old = before.plan();
    let whole = list.runs.remove(9);
    for (from, to) in [(0, 110), (158, 330)] {
        let (from, to) = (Length::from_inches(from), Length::from_inches(to));
        list.runs.insert(9, RunToCut { from, to, ..whole.clone() });
    }
    let plan = Planner::again(&list, &before).expect("a plan").plan();
    assert_eq!(plan_check::faults(&list, &plan, false), Vec::<String>::new());
    let packed = plan_check::packed(&list, &plan).expect("boards for all");
    assert!(u128::from(plan.cost) <= packed, "{} for {packed} packed by hand", plan.cost);
    let lengths = |plan: &Plan| -> Vec<Vec<Length>> {
        let cut =
            |board: &lapwright::saw::SawnBoard| board.pieces.iter().map(|piece| plan.pieces[*piece].length).collect();
        plan.boards.iter().map(cut).collect()
    };
    let (mut kept, now) = (0, lengths(&plan));
    for board in lengths(&old) {
        kept += i32::from(now.contains(&board));
    }
    assert!(kept * 2 >= old.boards.len() as i32, "{kept} of {} boards are cut as before", old.boards.len());
}
