//! A plan knows what no longer fits: every kind of change marks the boards that it makes wrong, and no others.

use std::collections::BTreeSet;

use super::penetration::lay_out_pole;
use super::*;
use crate::book::Field;

const GAP: i64 = 3_175_000;

/// A house of two walls, 20 ft and 11 ft wide, with courses of 7 in and a saw list.
fn planned() -> (Book, String, [String; 2]) {
    let (mut book, job, south) = super::penetration::wall();
    for (field, text) in [("width", "20'"), ("trim-left", "0"), ("trim-right", "0")] {
        answer(&mut book, 8, &south, field, text);
    }
    let added = tap(&mut book, 9, HouseAction::AddWall { job: job.clone(), name: "North".to_owned() }).unwrap();
    let Place::Measure { wall: north } = added.place else { panic!("a new wall is measured") };
    for (field, text) in [
        ("width", "11'"),
        ("left-height", "9'"),
        ("right-height", "9'"),
        ("base", "0"),
        ("first-stud", "0"),
        ("stud-spacing", "16"),
        ("trim-left", "0"),
        ("trim-right", "0"),
    ] {
        answer(&mut book, 10, &north, field, text);
    }
    let stock = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    tap(&mut book, 11, stock).unwrap();
    lay_out_pole(&mut book, &job);
    tap(&mut book, 12, SawListAction::Plan { job: job.clone() }).unwrap();
    (book, job, [south, north])
}

fn answer(book: &mut Book, n: u8, wall: &str, field: &str, text: &str) -> Outcome {
    let (field, text) = (field.to_owned(), text.to_owned());
    tap(book, n, MeasureAction::Answer { wall: wall.to_owned(), field, text }).unwrap()
}

fn rule(book: &mut Book, n: u8, job: &str, key: &str, value: &str) -> Outcome {
    let (job, key, value) = (job.to_owned(), key.to_owned(), value.to_owned());
    tap(book, n, RulesAction::Change { job, key, value, reason: "the maker’s sheet".to_owned() }).unwrap()
}

fn given(answers: &[(&str, &str)]) -> Vec<Given> {
    let given = |(field, text): &(&str, &str)| Given { field: (*field).to_owned(), text: (*text).to_owned() };
    answers.iter().map(given).collect()
}

fn undo(book: &mut Book, outcome: Outcome) {
    tap(book, 99, DoneListAction::Undo { job: None, group: outcome.group }).unwrap();
}

fn wall_view(book: &Book, wall: &str) -> WallView {
    shown(book, "en", Place::Wall { wall: wall.to_owned() })
}

fn boards(book: &Book, walls: &[String]) -> Vec<BoardLine> {
    walls.iter().flat_map(|wall| wall_view(book, wall).boards).collect()
}

/// The boards that say so on their own screens, and which of them are cut.
fn marked(book: &Book, walls: &[String]) -> (BTreeSet<String>, BTreeSet<String>) {
    let (mut planned, mut cut) = (BTreeSet::new(), BTreeSet::new());
    for line in boards(book, walls) {
        let board: BoardView = shown(book, "en", Place::Board { board: line.board.clone() });
        let codes: Vec<&str> = board.notes.iter().map(|note| note.code.as_str()).collect();
        let marks = (codes.contains(&"no-longer-fits"), codes.contains(&"cut-no-longer-fits"));
        assert_eq!(line.said.ends_with("no longer fits"), marks.0 || marks.1, "{}", line.said);
        assert!(!marks.0 || board.state == "planned");
        assert!(!marks.1 || board.state == "cut");
        if marks.0 {
            planned.insert(line.board.clone());
        }
        if marks.1 {
            cut.insert(line.board);
        }
    }
    (planned, cut)
}

/// The boards of some walls for which something holds.
fn those(book: &Book, walls: &[String], wrong: impl Fn(&BoardLine) -> bool) -> BTreeSet<String> {
    boards(book, walls).into_iter().filter(|board| wrong(board)).map(|board| board.board).collect()
}

/// The places of joints in a course of a wall.
fn joints(book: &Book, wall: &str, course: i64) -> Vec<i64> {
    let mut ends: Vec<(i64, i64)> = wall_view(book, wall)
        .boards
        .iter()
        .filter(|board| board.course == course)
        .map(|board| (board.at.left, board.at.right))
        .collect();
    ends.sort_unstable();
    ends.windows(2).filter(|pair| pair[0].1 == pair[1].0).map(|pair| pair[0].1).collect()
}

#[test]
fn each_change_marks_the_boards_that_it_makes_wrong_and_no_others() {
    let (mut book, job, walls) = planned();
    let south = walls[0].clone();
    let ours = std::slice::from_ref(&walls[0]);
    assert_eq!(marked(&book, &walls), Default::default());
    let lengths: BTreeSet<String> = boards(&book, &walls).into_iter().map(|board| board.board).collect();
    assert!(lengths.len() >= 45, "two boards to a course of one wall, one of the other");

    // A measure: what ended at the corner.
    let wrong = those(&book, ours, |board| board.at.right == inches(240, 0) - GAP);
    assert_eq!(wrong.len(), 15);
    let outcome = answer(&mut book, 20, &south, "width", "19' 7\"");
    assert_eq!(marked(&book, &walls), (wrong.clone(), BTreeSet::new()));
    let house: HouseView = shown(&book, "en", Place::House { job: job.clone() });
    assert!(house.walls[0].said.contains("15 boards no longer fit: plan again"), "{}", house.walls[0].said);
    assert!(!house.walls[1].said.contains("no longer"), "{}", house.walls[1].said);
    let lowest = wall_view(&book, &south).boards.into_iter().find(|board| board.course == 1).expect("a board").board;
    assert_eq!(matches!(house.next, NextWork::PlanWall { .. }), wrong.contains(&lowest), "{:?}", house.next);
    for language in ["en", "es"] {
        let list: SawListView = shown(&book, language, Place::SawList { job: job.clone() });
        let note = list.notes.iter().find(|note| note.code == "no-longer-fits").expect("a note");
        assert!(note.text.contains("15") && note.text.contains("South"), "{}", note.text);
    }
    let list: SawListView = shown(&book, "en", Place::SawList { job: job.clone() });
    let pieces = list.boards.iter().flat_map(|board| &board.pieces);
    let said = pieces.filter(|piece| piece.said.ends_with("no longer fits")).map(|piece| piece.board.clone());
    assert_eq!(said.collect::<BTreeSet<_>>(), wrong);
    undo(&mut book, outcome);
    assert_eq!(marked(&book, &walls), Default::default());

    // Trim at one end.
    let wrong = those(&book, ours, |board| board.at.left == GAP);
    let outcome = answer(&mut book, 21, &south, "trim-left", "3 1/2");
    assert_eq!(marked(&book, &walls).0, wrong);
    undo(&mut book, outcome);

    // A rule that every end keeps to, and one that none does.
    let outcome = rule(&mut book, 22, &job, "gap.trim", "1/4");
    assert_eq!(marked(&book, &walls).0, lengths);
    undo(&mut book, outcome);
    let outcome = rule(&mut book, 23, &job, "offcut.keep.least", "20");
    assert_eq!(marked(&book, &walls), Default::default());
    undo(&mut book, outcome);

    // A window: what runs into it, and joints in line with its sides.
    let at = |board: &BoardLine| board.at.left < inches(100, 0) && inches(60, 0) < board.at.right;
    let high = |board: &BoardLine| board.at.bottom < inches(51, 0) && inches(21, 0) < board.at.top;
    let near = |x: i64| [60, 100].iter().any(|side| (x - inches(*side, 0)).abs() < inches(8, 0));
    let jointed = |board: &BoardLine| {
        let joints = joints(&book, &south, board.course);
        joints.iter().any(|x| near(*x) && (board.at.left == *x || board.at.right == *x))
    };
    let wrong = those(&book, ours, |board| at(board) && high(board) || jointed(board));
    let answers = [("what", "window"), ("from-left", "60"), ("width", "40"), ("from-base", "21"), ("height", "30")];
    let window = MeasureAction::AddPart { wall: south.clone(), kind: "opening".to_owned(), answers: given(&answers) };
    let outcome = tap(&mut book, 24, window).unwrap();
    assert_eq!(marked(&book, &walls).0, wrong);
    undo(&mut book, outcome);

    // A penetration away from all joints changes no board; one on a joint moves the joint.
    let hole = |x: i64| {
        let x = format!("{} mm", x / 1_000_000);
        let answers = [("what", "hose-bib"), ("width", "1"), ("from-left", x.as_str()), ("from-base", "24")];
        WallAction::AddPenetration { wall: south.clone(), answers: given(&answers) }
    };
    let course = 4;
    let joint = joints(&book, &south, course)[0];
    let away = joint - inches(24, 0);
    let free = (3..=5).all(|course| joints(&book, &south, course).iter().all(|x| (x - away).abs() > inches(8, 0)));
    if free {
        let outcome = tap(&mut book, 25, hole(away)).unwrap();
        assert_eq!(marked(&book, &walls), Default::default());
        undo(&mut book, outcome);
    }
    let outcome = tap(&mut book, 26, hole(joint)).unwrap();
    let found = marked(&book, &walls).0;
    let beside =
        those(&book, ours, |board| board.course == course && (board.at.left == joint || board.at.right == joint));
    assert!(beside.len() == 2 && beside.is_subset(&found), "{beside:?} {found:?}");
    let reach = inches(8, 0);
    let around = those(&book, ours, |board| {
        (3..=5).contains(&board.course)
            && [board.at.left, board.at.right]
                .iter()
                .any(|x| (x - joint).abs() < reach && joints(&book, &south, board.course).contains(x))
    });
    assert!(found.is_subset(&around), "{found:?} {around:?}");
    undo(&mut book, outcome);

    // Other stock beside the old, and the old one gone.
    let other = HouseAction::AddStock { job: job.clone(), length: "16'".to_owned(), count: String::new() };
    tap(&mut book, 27, other).unwrap();
    assert_eq!(marked(&book, &walls), Default::default());
    let house: HouseView = shown(&book, "en", Place::House { job: job.clone() });
    let part = house.stock.iter().find(|line| line.length.nm == inches(144, 0)).unwrap().stock.clone();
    let outcome = tap(&mut book, 28, HouseAction::RemovePart { job: job.clone(), part }).unwrap();
    assert_eq!(marked(&book, &walls).0, lengths);
    undo(&mut book, outcome);

    // A wider kerf: what no longer goes into its board.
    let kerf = inches(0, 32);
    let list: SawListView = shown(&book, "en", Place::SawList { job: job.clone() });
    let full = list.boards.iter().filter(|board| {
        let sum: i64 = board.pieces.iter().map(|piece| piece.length.nm).sum();
        sum + kerf * (board.pieces.len() as i64 - 1) > board.length.nm
    });
    let wrong: BTreeSet<String> = full.flat_map(|board| &board.pieces).map(|piece| piece.board.clone()).collect();
    let outcome = rule(&mut book, 29, &job, "saw.kerf", "3/16");
    assert_eq!(marked(&book, &walls).0, wrong);
    undo(&mut book, outcome);
    assert_eq!(marked(&book, &walls), Default::default());
}

/// A pole with more courses takes the boards along that were planned, and says where none is.
#[test]
fn courses_without_a_board_are_said() {
    let (mut book, job, walls) = planned();
    let reveals = [("reveal", "6 1/2"), ("reveal-min", "6 1/2"), ("reveal-max", "6 1/2")];
    for (field, text) in reveals {
        let (field, text) = (field.to_owned(), text.to_owned());
        tap(&mut book, 30, PoleAction::Answer { job: job.clone(), field, text }).unwrap();
    }
    tap(&mut book, 31, PoleAction::LayOut { job: job.clone() }).unwrap();
    // 105 in at 6 1/2 in are 17 courses; 15 were planned.
    for wall in &walls {
        let note = wall_view(&book, wall).notes.into_iter().find(|note| note.code == "bare").expect("a note");
        assert!(note.text.contains("2 stretches"), "{}", note.text);
    }
    tap(&mut book, 32, SawListAction::Plan { job }).unwrap();
    assert!(walls.iter().all(|wall| wall_view(&book, wall).notes.iter().all(|note| note.code != "bare")));
    assert_eq!(marked(&book, &walls), Default::default());
}

/// A cut board that no longer fits is named and stays as it was cut, also once the rest is planned again.
#[test]
fn a_cut_board_is_named_and_never_rewritten() {
    let (mut book, job, walls) = planned();
    let ours = std::slice::from_ref(&walls[0]);
    let list: SawListView = shown(&book, "en", Place::SawList { job: job.clone() });
    let right = those(&book, ours, |board| board.at.right == inches(240, 0) - GAP);
    let sawn = list.boards.iter().find(|board| board.pieces.iter().any(|piece| right.contains(&piece.board))).unwrap();
    let cut: BTreeSet<String> = sawn.pieces.iter().map(|piece| piece.board.clone()).collect();
    tap(&mut book, 40, SawListAction::MarkCut { job: job.clone(), number: sawn.number }).unwrap();
    assert_eq!(marked(&book, &walls), Default::default());
    let kept = |book: &Book| -> Vec<Vec<Option<Length>>> {
        let work = lookup::work(book, Some(job.parse().unwrap())).unwrap();
        let records = work.walls().iter().flat_map(|wall| work.boards(wall.id()));
        let lengths = |board: &crate::book::Record| {
            [Field::From, Field::To, Field::Length, Field::Height, Field::Stock]
                .map(|field| board.length(field))
                .to_vec()
        };
        records.filter(|board| cut.contains(&board.id().to_string())).map(|board| lengths(board)).collect()
    };
    let before = kept(&book);
    assert_eq!(before.len(), cut.len());
    answer(&mut book, 41, &walls[0], "width", "19' 7\"");
    let wrong = &right & &cut;
    assert_eq!(marked(&book, &walls), (&right - &cut, wrong.clone()));
    let note = wall_view(&book, &walls[0]).notes.into_iter().find(|note| note.code == "cut-no-longer-fits");
    assert!(note.expect("a note").text.contains("South, courses"));
    tap(&mut book, 42, SawListAction::Plan { job: job.clone() }).unwrap();
    assert_eq!(marked(&book, &walls), (BTreeSet::new(), wrong));
    assert_eq!(kept(&book), before);
}

/// The eaves come down by two inches, to 106 in: the board of the top course from 98 to 106 1/4 in is now ripped. What was cut of it
/// is too high, though no end of it moves; what is only planned is ripped as it has to be.
#[test]
fn a_cut_board_is_held_against_its_shape() {
    let (mut book, job, walls) = planned();
    let top_of = |book: &Book, wall: &str| {
        let board = wall_view(book, wall).boards.into_iter().max_by_key(|board| board.course).expect("a board");
        assert_eq!(board.course, 15);
        board.board
    };
    let [planned_top, cut_top] = [0, 1].map(|wall: usize| top_of(&book, &walls[wall]));
    let list: SawListView = shown(&book, "en", Place::SawList { job: job.clone() });
    let holds = |board: &&SawBoardLine| board.pieces.iter().any(|piece| piece.board == cut_top);
    let number = list.boards.iter().find(holds).expect("a board").number;
    tap(&mut book, 50, SawListAction::MarkCut { job, number }).unwrap();
    let lower = |book: &mut Book, n: u8, text: &str| {
        for wall in &walls {
            for field in ["left-height", "right-height"] {
                answer(book, n, wall, field, text);
            }
        }
    };
    lower(&mut book, 51, "106 3/8");
    assert_eq!(marked(&book, &walls), Default::default(), "1/8 in over the board is its gap");
    lower(&mut book, 52, "106 in");
    assert_eq!(marked(&book, &walls), (BTreeSet::new(), BTreeSet::from([cut_top.clone()])));
    let view: BoardView = shown(&book, "en", Place::Board { board: cut_top });
    assert!(view.notes.iter().any(|note| note.code == "differs-from-cut"), "{:?}", view.notes);
    let view: BoardView = shown(&book, "en", Place::Board { board: planned_top });
    assert_eq!(view.height.nm, inches(8, 0) - GAP);
    lower(&mut book, 53, "108 in");
    assert_eq!(marked(&book, &walls), Default::default());
}
