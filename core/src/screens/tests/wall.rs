//! A wall planned by taps.

use super::*;

fn wall_view(book: &Book, wall: &str) -> WallView {
    shown(book, "en", Place::Wall { wall: wall.to_owned() })
}

/// The demo house with its pole laid out, and its first wall planned.
fn planned() -> (Book, String) {
    let (mut book, job) = demo_laid_out();
    let house: HouseView = shown(&book, "en", Place::House { job });
    let wall = house.walls[0].wall.clone();
    tap(&mut book, 3, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
    (book, wall)
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
    let (mut book, wall) = planned();
    let before = wall_view(&book, &wall);
    let up = before.boards[1].board.clone();
    let board: BoardView = shown(&book, "en", Place::Board { board: up.clone() });
    for (n, step) in (10..).zip(&board.steps) {
        let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
        tap(&mut book, n, BoardAction::SignStep { board: up.clone(), step: step.code.clone(), said }).unwrap();
    }
    tap(&mut book, 50, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
    let after = wall_view(&book, &wall);
    let kept = after.boards.iter().find(|board| board.board == up).expect("what is up stays");
    assert_eq!((kept.state.as_str(), kept.at), ("fixed", before.boards[1].at));
    assert_eq!(covered(&after), covered(&before));
    assert!(after.boards.iter().all(|board| board.board == up || board.state == "planned"));
}

/// Both walls of the demo house take their lines from one pole: every line meets at the corner.
#[test]
fn lines_meet_at_the_corner() {
    let (mut book, first) = planned();
    let job = wall_view(&book, &first).job;
    let house: HouseView = shown(&book, "en", Place::House { job });
    let second = house.walls[1].wall.clone();
    tap(&mut book, 6, WallAction::PlanBoards { wall: second.clone() }).unwrap();
    // The second base line lies 10 in above the datum of the pole, the first on it.
    let heights = |wall: &str, base: i64| -> std::collections::BTreeSet<i64> {
        wall_view(&book, wall).courses.iter().map(|line| line + base * 25_400_000).collect()
    };
    let (first, second) = (heights(&first, 0), heights(&second, 10));
    let common = second.iter().filter(|height| first.contains(height)).count();
    assert!(common >= second.len() - 1 && common > 10, "{first:?} {second:?}");
}

/// What is like another one is so but for its place: that is what was typed for it, in the unit of whoever typed it.
#[test]
fn a_penetration_like_the_last_one_lies_where_it_was_put() {
    let (mut book, _, wall) = super::penetration::wall();
    super::penetration::hose_bib(&mut book, &wall, &[]);
    let metric = Context { show: "mm".to_owned(), division: "1 mm".to_owned(), ..context("en", 20) };
    let action =
        WallAction::AddSameAsLast { wall: wall.clone(), from_left: "60".to_owned(), from_base: "700".to_owned() };
    let action = action.into();
    // All else is in inches: whether it is 60 in is asked once.
    assert_eq!(act(&mut book, &metric, &action).unwrap_err().code, "unlikely");
    let added = act(&mut book, &metric, &action).unwrap();
    let PenetrationView { penetration, .. } = PenetrationView::of(added.view);
    let wall = wall_view(&book, &wall);
    let [first, second] = &wall.penetrations[..] else { panic!("two: {:?}", wall.penetrations) };
    assert_eq!((&second.penetration, &second.name), (&penetration, &first.name));
    let middle = |at: Rectangle| ((at.left + at.right) / 2, (at.bottom + at.top) / 2);
    assert_eq!(middle(first.at), (inches(60, 0), inches(24, 0)));
    assert_eq!(middle(second.at), (60_000_000, 700_000_000));
    assert_eq!(second.at.right - second.at.left, first.at.right - first.at.left);
}
