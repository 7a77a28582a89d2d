//! Cut lists that no house has: each gets a clear error or a sound plan, in slices of bounded work.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a check stops at what it did not expect"
)]

use lapwright::measure::Length;
use lapwright::saw::{CutList, Planner, RunToCut, SawError, Stock, StudCenters};
use lapwright_tests::plan_check;

const FOUR: &[i64] = &[96, 120, 144, 192];

fn inches(inches: i64) -> Length {
    Length::from_inches(inches)
}

fn house(stock: &[i64]) -> CutList {
    let mut list = CutList::new();
    list.kerf = Length::from_inches_64(0, 8);
    list.studs = Some(StudCenters::Spaced { first: Length::ZERO, spacing: inches(16) });
    for length in stock.iter().map(|length| inches(*length)) {
        list.stock.push(Stock { length, cost: length.nm().unsigned_abs(), count: None });
    }
    list
}

fn loose(stock: &[i64]) -> CutList {
    CutList { joints: false, ..house(stock) }
}

fn run(list: &mut CutList, to: Length) {
    let course = list.runs.len() as i64;
    list.runs.push(RunToCut { wall: String::new(), course, from: Length::ZERO, to });
}

fn refused(list: &CutList) -> SawError {
    Planner::new(list).expect_err("no plan")
}

/// So many steps, whatever they find, and a sound plan at their end.
fn bounded(list: &CutList, steps: u64) -> Planner {
    let planner = stepped(list, steps);
    assert_eq!(plan_check::faults(list, &planner.plan(), false), Vec::<String>::new());
    planner
}

/// So many steps: neither bound nor cost gets worse, and the bound stays under what the pieces cost packed by hand.
fn stepped(list: &CutList, steps: u64) -> Planner {
    let mut planner = Planner::new(list).expect("a plan");
    let mut before = planner.step(0);
    for _ in 0..steps {
        let now = planner.step(1);
        assert!(now.cost <= before.cost && now.bound >= before.bound);
        before = now;
        if now.done {
            break;
        }
    }
    let plan = planner.plan();
    assert_eq!((plan.cost, plan.bound), (before.cost, before.bound));
    if let Some(packed) = plan_check::packed(list, &plan) {
        assert!(u128::from(plan.bound) <= packed, "a bound of {} over {packed}", plan.bound);
    }
    planner
}

#[test]
fn what_cannot_be_planned_is_named() {
    let mut list = house(&[144]);
    run(&mut list, inches(300));
    assert_eq!(refused(&CutList { studs: None, ..list.clone() }), SawError::NoStud { run: 0 });
    assert_eq!(
        refused(&CutList { studs: Some(StudCenters::Listed(Vec::new())), ..list.clone() }),
        SawError::NoStud { run: 0 }
    );
    assert_eq!(refused(&CutList { end_gap: inches(-1), ..list.clone() }), SawError::Negative { what: "end_gap" });
    assert_eq!(refused(&CutList { kerf: inches(-1), ..list.clone() }), SawError::Negative { what: "kerf" });
    assert_eq!(refused(&CutList { end_gap: inches(150), ..list.clone() }), SawError::RunShort { run: 0 });
    assert_eq!(refused(&CutList { piece_min: inches(145), ..list.clone() }), SawError::NoJoints { run: 0 });
    assert_eq!(refused(&CutList { stock: Vec::new(), ..list.clone() }), SawError::NoBoard);
    list.stock[0].count = Some(0);
    assert_eq!(refused(&list), SawError::NoBoard);
    list.stock[0].count = Some(2);
    assert_eq!(refused(&list), SawError::NotEnough);
}

#[test]
fn too_much_of_anything_is_refused() {
    let mut list = loose(&[144]);
    for _ in 0..1_000_000 {
        run(&mut list, inches(100));
    }
    assert_eq!(refused(&list), SawError::TooMany { what: "runs" });
    // A million pieces in one run, a hundred million in ten.
    let mut list = house(&[1]);
    list.studs = Some(StudCenters::Spaced { first: Length::ZERO, spacing: inches(1) });
    for _ in 0..10 {
        run(&mut list, inches(1_000_000));
    }
    assert!(matches!(refused(&list), SawError::TooMany { .. }));
    let mut list = house(&[144]);
    list.studs = Some(StudCenters::Spaced { first: Length::ZERO, spacing: Length::from_nm(1) });
    run(&mut list, inches(300));
    assert_eq!(refused(&list), SawError::TooMany { what: "studs" });
}

/// The check of plans walks all studs for each joint: it takes the shorter runs only.
#[test]
fn runs_of_a_third_of_a_mile_are_planned_in_slices() {
    let mut list = house(&[144]);
    run(&mut list, inches(3_000));
    run(&mut list, inches(3_000));
    bounded(&list, 20);
    let mut list = house(&[144]);
    run(&mut list, inches(23_000));
    run(&mut list, inches(23_000));
    assert_eq!(stepped(&list, 20).plan().count, 320);
    let mut list = house(FOUR);
    for _ in 0..10 {
        run(&mut list, inches(23_000));
    }
    let plan = stepped(&list, 5).plan();
    assert!(plan.boards.iter().all(|board| !board.left.is_negative()));
    // Without gaps the pieces are as long as the runs.
    let cut: i64 = plan.pieces.iter().map(|piece| piece.length.nm()).sum();
    assert_eq!(cut, 10 * inches(23_000).nm());
}

#[test]
fn ten_thousand_pieces_are_planned_in_slices() {
    let mut list = loose(FOUR);
    for number in 0..10_000 {
        run(&mut list, Length::from_nm(inches(12).nm() + number * 7919 * 104_729 % inches(170).nm()));
    }
    bounded(&list, 5);
    let mut list = loose(&[192]);
    for _ in 0..10_000 {
        run(&mut list, inches(1));
    }
    // 171 pieces of an inch and 170 kerfs leave no room for one more.
    assert_eq!(bounded(&list, 1).plan().count, 59);
}

#[test]
fn ten_thousand_different_boards_are_planned_in_slices() {
    let mut list = loose(&[]);
    list.offcuts = (0..10_000).map(|more| Length::from_nm(inches(40).nm() + more)).collect();
    for number in 0..9_000 {
        run(&mut list, inches(12 + number * 7919 % 25));
    }
    let plan = bounded(&list, 1).plan();
    assert_eq!((plan.count, plan.cost, plan.proved), (0, 0, true));
    let mut list = loose(&[]);
    for more in 0..10_000 {
        list.stock.push(Stock {
            length: Length::from_nm(inches(40).nm() + more),
            cost: 1_000 + more as u64,
            count: None,
        });
    }
    for number in 0..2_000 {
        run(&mut list, inches(12 + number * 7919 % 25));
    }
    bounded(&list, 1);
}

#[test]
fn huge_lengths_stay_exact() {
    let mut list = loose(&[1]);
    list.kerf = inches(1_000_000);
    for _ in 0..100 {
        run(&mut list, inches(1));
    }
    let plan = bounded(&list, 1).plan();
    assert_eq!((plan.count, plan.proved), (100, true));
    let mut list = loose(&[39_000_000]);
    for number in 0..1_000 {
        run(&mut list, inches(1 + number * 7919 % 1_000_000));
    }
    bounded(&list, 5);
}
