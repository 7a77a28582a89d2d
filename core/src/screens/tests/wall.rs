//! A wall planned by taps.

use super::*;
use crate::handover::{DEMO_HOUSE, take_in_document};

fn shown(store: &Store, wall: &str) -> WallView {
    match view(store, &context("en", 99), &Place::Wall { wall: wall.to_owned() }).unwrap() {
        View::WallKind { view } => view,
        other => panic!("{other:?}"),
    }
}

fn tap(store: &mut Store, n: u8, action: Action) -> Outcome {
    act(store, &context("en", n), &action).unwrap()
}

/// The demo house with its pole laid out, and its first wall planned.
fn planned() -> (Store, String) {
    let mut store = Store::in_memory().unwrap();
    let outcome = take_in_document(&mut store, &context("en", 1), DEMO_HOUSE).unwrap();
    let Place::House { job } = outcome.place else { panic!("a house") };
    let View::HouseKind { view } = outcome.view else { panic!("a house") };
    let wall = view.walls[0].wall.clone();
    tap(&mut store, 2, Action::PoleKind { action: PoleAction::LayOut { job } });
    tap(&mut store, 3, Action::WallKind { action: WallAction::PlanBoards { wall: wall.clone() } });
    (store, wall)
}

/// What boards cover of each course, left to right.
fn covered(view: &WallView) -> std::collections::BTreeMap<i64, i64> {
    let mut courses = std::collections::BTreeMap::new();
    for board in &view.boards {
        *courses.entry(board.course).or_insert(0) += board.at.right - board.at.left;
    }
    courses
}

/// What is up stays when a wall is planned again, and no wall stays bare beside it.
#[test]
fn planning_again_goes_round_what_is_up() {
    let (mut store, wall) = planned();
    let before = shown(&store, &wall);
    let up = before.boards[1].board.clone();
    let View::BoardKind { view } = view(&store, &context("en", 4), &Place::Board { board: up.clone() }).unwrap() else {
        panic!("a board")
    };
    for (n, step) in (10..).zip(&view.steps) {
        let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
        let action = BoardAction::SignStep { board: up.clone(), step: step.code.clone(), said };
        tap(&mut store, n, Action::BoardKind { action });
    }
    tap(&mut store, 50, Action::WallKind { action: WallAction::PlanBoards { wall: wall.clone() } });
    let after = shown(&store, &wall);
    let kept = after.boards.iter().find(|board| board.board == up).expect("what is up stays");
    assert_eq!((kept.state.as_str(), kept.at), ("fixed", before.boards[1].at));
    assert_eq!(covered(&after), covered(&before));
    assert!(after.boards.iter().all(|board| board.board == up || board.state == "planned"));
}

/// Both walls of the demo house take their lines from one pole: every line meets at the corner.
#[test]
fn lines_meet_at_the_corner() {
    let (mut store, first) = planned();
    let job = shown(&store, &first).job;
    let View::HouseKind { view } = view(&store, &context("en", 5), &Place::House { job }).unwrap() else {
        panic!("a house")
    };
    let second = view.walls[1].wall.clone();
    tap(&mut store, 6, Action::WallKind { action: WallAction::PlanBoards { wall: second.clone() } });
    // The second base line lies 14 in above the datum of the pole, the first on it.
    let heights = |wall: &str, base: i64| -> std::collections::BTreeSet<i64> {
        shown(&store, wall).courses.iter().map(|line| line + base * 25_400_000).collect()
    };
    let (first, second) = (heights(&first, 0), heights(&second, 14));
    let common = second.iter().filter(|height| first.contains(height)).count();
    assert!(common >= second.len() - 1 && common > 10, "{first:?} {second:?}");
}
