//! Boards once more, and blocks that sit better: by taps.

use super::penetration::{hose_bib, lay_out_pole, wall};
use super::*;
use crate::book::{Field, Kind};
use crate::measure::Length;
use crate::work::Penetration;

fn inches(whole: i64, sixteenths: i64) -> i64 {
    Length::from_inches_64(whole, 4 * sixteenths).nm()
}

fn given(answers: &[(&str, &str)]) -> Vec<Given> {
    answers.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect()
}

fn house_action(book: &mut Book, n: u8, action: HouseAction) -> Outcome {
    act(book, &context("en", n), &Action::HouseKind { action }).unwrap()
}

fn tap(book: &mut Book, n: u8, action: BoardAction) -> Result<Outcome, Problem> {
    act(book, &context("en", n), &Action::BoardKind { action })
}

fn undo(book: &mut Book, n: u8, group: String) {
    let action = DoneListAction::Undo { job: None, group };
    act(book, &context("en", n), &Action::DoneListKind { action }).unwrap();
}

fn penetration(book: &Book, language: &str, id: &str) -> PenetrationView {
    let place = Place::Penetration { penetration: id.to_owned() };
    let View::PenetrationKind { view } = view(book, &context(language, 0), &place).unwrap() else { panic!("hole") };
    view
}

fn board(book: &Book, id: &str) -> BoardView {
    let View::BoardKind { view } = view(book, &context("en", 0), &Place::Board { board: id.to_owned() }).unwrap()
    else {
        panic!("board")
    };
    view
}

fn of_course(book: &Book, wall: &str, course: i64) -> String {
    let View::WallKind { view } = view(book, &context("en", 0), &Place::Wall { wall: wall.to_owned() }).unwrap() else {
        panic!("wall")
    };
    view.boards.into_iter().find(|board| board.course == course).unwrap().board
}

fn planned() -> (Book, String, String) {
    let (mut book, job, wall) = wall();
    house_action(
        &mut book,
        10,
        HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() },
    );
    lay_out_pole(&mut book, &job);
    let action = WallAction::PlanBoards { wall: wall.clone() };
    act(&mut book, &context("en", 11), &Action::WallKind { action }).unwrap();
    (book, job, wall)
}

fn tick(book: &mut Book, n: u8, board: &str, step: &str) {
    let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    tap(book, n, BoardAction::SignStep { board: board.to_owned(), step: step.to_owned(), said }).unwrap();
}

/// A block 6 in high from 22 3/4 to 28 3/4 in, boards every 7 in: half an inch of a board would stay over it.
#[test]
fn a_block_moves_round_its_hole_and_the_hole_stays() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    let sizes = [("block-width", "6"), ("block-height", "6"), ("hole-from-bottom", "3"), ("from-base", "25 3/4")];
    let hole = hose_bib(&mut book, &wall, &[&sizes[..], &[("mounting", "slip-over")]].concat());
    let advice = penetration(&book, "en", &hole).advice.unwrap();
    assert_eq!((advice.height.nm, advice.hole_from_bottom.nm), (inches(6, 0), inches(2, 8)));
    assert_eq!(advice.gain, "Thin legs: 0 instead of 2. Thin strips over or under it: 0 instead of 1.");
    assert!(penetration(&book, "es", &hole).advice.unwrap().gain.starts_with("Patas angostas: 0 en vez de 2."));
    let before = book.store().content_hash().unwrap();
    let action = PenetrationAction::TakeAdvice { penetration: hole.clone() };
    let taken = act(&mut book, &context("en", 20), &Action::PenetrationKind { action: action.clone() }).unwrap();
    assert_eq!(penetration(&book, "en", &hole).advice, None);
    let centre = |book: &Book| {
        let house = book.house(Some(job.parse().unwrap())).unwrap();
        let work = crate::work::Work::of(&house, None);
        Penetration::of(&work, house.get(hole.parse().unwrap(), Kind::Penetration).unwrap()).unwrap().centre
    };
    assert_eq!(centre(&book).y.nm(), inches(25, 12), "the hole is where it is");
    let again = act(&mut book, &context("en", 21), &Action::PenetrationKind { action }).unwrap_err();
    assert_eq!((again.code.as_str(), again.field.as_str()), ("first", "block-height"));
    undo(&mut book, 22, taken.group);
    assert!(penetration(&book, "en", &hole).advice.is_some());
    assert_ne!(book.store().content_hash().unwrap(), before, "taking back is an entry of its own");
}

#[test]
fn the_house_says_which_blocks_there_are() {
    let (mut book, job, wall) = wall();
    lay_out_pole(&mut book, &job);
    // 14 in high, it meets four boards wherever the hole is in it; 6 in would meet two.
    let sizes = [("block-width", "8"), ("block-height", "14"), ("from-base", "40"), ("mounting", "slip-over")];
    let hole = hose_bib(&mut book, &wall, &sizes);
    let (width, height) = ("8".to_owned(), "6".to_owned());
    let added = house_action(&mut book, 20, HouseAction::AddBlockSize { job: job.clone(), width, height });
    let View::HouseKind { view } = added.view else { panic!("house") };
    assert_eq!(view.block_sizes[0].height.nm, inches(6, 0));
    assert_eq!(penetration(&book, "en", &hole).advice.unwrap().height.nm, inches(6, 0));
    let part = view.block_sizes[0].block_size.clone();
    house_action(&mut book, 21, HouseAction::RemovePart { job: job.clone(), part });
    assert!(penetration(&book, "en", &hole).advice.is_none_or(|advice| advice.height.nm == inches(14, 0)));
    let action = HouseAction::AddBlockSize { job, width: "0".to_owned(), height: "6".to_owned() };
    let refused = act(&mut book, &context("en", 22), &Action::HouseKind { action }).unwrap_err();
    assert_eq!(refused.field, "width");
}

#[test]
fn a_spoiled_board_is_planned_again_and_what_is_left_is_an_offcut() {
    let (mut book, job, wall) = planned();
    let id = of_course(&book, &wall, 3);
    let spoil = |left: &str| BoardAction::SayItIsSpoiled { board: id.clone(), left: left.to_owned() };
    assert_eq!(tap(&mut book, 20, spoil("")).unwrap_err().code, "order", "nothing is cut yet");
    tick(&mut book, 30, &id, "board-cut");
    tick(&mut book, 31, &id, "board-prime");
    let cut = board(&book, &id);
    assert_eq!(tap(&mut book, 21, spoil("13'")).unwrap_err().field, "left");
    let spoiled = tap(&mut book, 22, spoil("5'")).unwrap();
    let now = board(&book, &id);
    assert_eq!((now.state.as_str(), now.length.as_ref().unwrap().nm), ("planned", cut.length.as_ref().unwrap().nm));
    assert!(now.steps.iter().all(|step| step.state == StepState::Open), "{:?}", now.steps);
    let offcuts = |book: &Book| {
        let house = book.house(Some(job.parse().unwrap())).unwrap();
        let offcuts = house.own(Kind::Offcut).iter();
        offcuts.filter_map(|offcut| offcut.length(Field::Length)).map(Length::nm).collect::<Vec<_>>()
    };
    assert_eq!(offcuts(&book), [inches(60, 0)]);
    undo(&mut book, 23, spoiled.group);
    assert_eq!((board(&book, &id).state.as_str(), offcuts(&book).len()), ("cut", 0));
    tap(&mut book, 24, spoil("4 in")).unwrap();
    assert!(offcuts(&book).is_empty(), "too short to keep");
    tick(&mut book, 32, &id, "board-cut");
    assert_eq!(board(&book, &id).state, "cut", "cut once more");
}

/// Eighteen inches of a spoiled board are left.
#[test]
pub(super) fn what_is_left_of_a_spoiled_board_is_kept_by_the_houses_rule() {
    for (least, kept) in [("12", 1), ("18", 1), ("20", 0)] {
        let (mut book, job, wall) = planned();
        change_rule(&mut book, 20, &job, "offcut.keep.least", least);
        let id = of_course(&book, &wall, 3);
        tick(&mut book, 30, &id, "board-cut");
        tap(&mut book, 31, BoardAction::SayItIsSpoiled { board: id, left: "18".to_owned() }).unwrap();
        let house = book.house(Some(job.parse().unwrap())).unwrap();
        let offcuts = house
            .own(Kind::Offcut)
            .iter()
            .filter(|offcut| offcut.length(Field::Length) == Length::from_inches_64(18, 0).into());
        assert_eq!(offcuts.count(), kept, "{least}");
    }
}

#[test]
fn stock_that_came_shorter_changes_the_plan_and_the_wall_says_what() {
    let (mut book, job, wall) = planned();
    let up = of_course(&book, &wall, 2);
    tick(&mut book, 30, &up, "board-cut");
    let kept_up = board(&book, &up);
    let action = WallAction::PlanBoards { wall: wall.clone() };
    let same = act(&mut book, &context("en", 20), &Action::WallKind { action: action.clone() }).unwrap();
    let noted = |outcome: &Outcome| match &outcome.view {
        View::WallKind { view } => {
            view.notes.iter().find(|note| note.code == "plan-changed").map(|note| note.text.clone())
        }
        _ => None,
    };
    assert_eq!(noted(&same), None);
    let part = book.house(Some(job.parse().unwrap())).unwrap().own(Kind::Stock)[0].id().to_string();
    house_action(&mut book, 21, HouseAction::RemovePart { job: job.clone(), part });
    house_action(&mut book, 22, HouseAction::AddStock { job, length: "8'".to_owned(), count: String::new() });
    let other = act(&mut book, &context("en", 23), &Action::WallKind { action }).unwrap();
    let text = noted(&other).unwrap();
    assert!(text.contains("1, 3, 4"), "{text}");
    // The stock that it would come out of is no more; what was cut is as it was.
    let now = board(&book, &up);
    // Which of the wall's boards it is, and which comes next, is of the new plan.
    let BoardView { said, next_board, next_said, .. } = now.clone();
    assert_eq!(now, BoardView { stock: None, said, next_board, next_said, ..kept_up });
}

#[test]
fn a_loose_board_like_the_last_one_has_its_blocks() {
    let mut book = Book::in_memory().unwrap();
    let same = BoardAction::CreateSameAsLast { job: None };
    assert_eq!(tap(&mut book, 1, same.clone()).unwrap_err().code, "first");
    let answers = given(&[("length", "96"), ("height", "8 1/4"), ("lap", "1 1/4")]);
    let made = tap(&mut book, 2, BoardAction::CreateLoose { job: None, answers }).unwrap();
    let Place::Board { board: first } = made.place else { panic!("board") };
    let answers = given(&[("left", "40"), ("right", "46 1/2"), ("bottom-left", "-2"), ("top-left", "3")]);
    tap(&mut book, 3, BoardAction::AddNotch { board: first.clone(), answers }).unwrap();
    let made = tap(&mut book, 4, same).unwrap();
    let Place::Board { board: second } = made.place else { panic!("board") };
    let (first, second) = (board(&book, &first), board(&book, &second));
    assert_ne!(first.board, second.board);
    assert_eq!(first.notches[0].face, second.notches[0].face);
    assert_eq!((first.length.unwrap().text, first.height.text), (second.length.unwrap().text, second.height.text));
}

/// The number of cuts behind the overcut is shown from the first board with a notch on, before anything was measured.
#[test]
fn saw_and_hands_are_always_shown_at_a_notch() {
    let mut book = Book::in_memory().unwrap();
    let answers = given(&[("length", "96"), ("height", "8 1/4")]);
    let made = tap(&mut book, 2, BoardAction::CreateLoose { job: None, answers }).unwrap();
    let Place::Board { board: id } = made.place else { panic!("board") };
    let habit = |book: &Book| board(book, &id).notes.into_iter().find(|note| note.code == "habit");
    assert_eq!(habit(&book), None, "nothing to cut round");
    let answers = given(&[("left", "40"), ("right", "46 1/2"), ("bottom-left", "-2"), ("top-left", "3")]);
    tap(&mut book, 3, BoardAction::AddNotch { board: id.clone(), answers }).unwrap();
    assert!(habit(&book).unwrap().text.contains("0 of 3"), "{:?}", habit(&book));
}
