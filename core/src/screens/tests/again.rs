//! Boards once more, and blocks that sit better: by taps.

use super::penetration::{hose_bib, lay_out_pole, wall};
use super::*;
use crate::measure::Length;

fn inches(whole: i64, sixteenths: i64) -> i64 {
    Length::from_inches_64(whole, 4 * sixteenths).nm()
}

fn given(answers: &[(&str, &str)]) -> Vec<Given> {
    answers.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect()
}

fn house_action(store: &mut Store, n: u8, action: HouseAction) -> Outcome {
    act(store, &context("en", n), &Action::HouseKind { action }).unwrap()
}

fn tap(store: &mut Store, n: u8, action: BoardAction) -> Result<Outcome, Problem> {
    act(store, &context("en", n), &Action::BoardKind { action })
}

fn undo(store: &mut Store, n: u8, group: String) {
    let action = DoneListAction::Undo { job: None, group };
    act(store, &context("en", n), &Action::DoneListKind { action }).unwrap();
}

fn penetration(store: &Store, language: &str, id: &str) -> PenetrationView {
    let place = Place::Penetration { penetration: id.to_owned() };
    let View::PenetrationKind { view } = view(store, &context(language, 0), &place).unwrap() else { panic!("hole") };
    view
}

fn board(store: &Store, id: &str) -> BoardView {
    let View::BoardKind { view } = view(store, &context("en", 0), &Place::Board { board: id.to_owned() }).unwrap()
    else {
        panic!("board")
    };
    view
}

fn of_course(store: &Store, wall: &str, course: i64) -> String {
    let View::WallKind { view } = view(store, &context("en", 0), &Place::Wall { wall: wall.to_owned() }).unwrap()
    else {
        panic!("wall")
    };
    view.boards.into_iter().find(|board| board.course == course).unwrap().board
}

fn planned() -> (Store, String, String) {
    let (mut store, job, wall) = wall();
    house_action(
        &mut store,
        10,
        HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() },
    );
    lay_out_pole(&mut store, &job);
    let action = WallAction::PlanBoards { wall: wall.clone() };
    act(&mut store, &context("en", 11), &Action::WallKind { action }).unwrap();
    (store, job, wall)
}

fn tick(store: &mut Store, n: u8, board: &str, step: &str) {
    let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    tap(store, n, BoardAction::SignStep { board: board.to_owned(), step: step.to_owned(), said }).unwrap();
}

/// A block 6 in high from 22 3/4 to 28 3/4 in, boards every 7 in: half an inch of a board would stay over it.
#[test]
fn a_block_moves_round_its_hole_and_the_hole_stays() {
    let (mut store, job, wall) = wall();
    lay_out_pole(&mut store, &job);
    let sizes = [("block-width", "6"), ("block-height", "6"), ("hole-from-bottom", "3"), ("from-base", "25 3/4")];
    let hole = hose_bib(&mut store, &wall, &[&sizes[..], &[("mounting", "slip-over")]].concat());
    let advice = penetration(&store, "en", &hole).advice.unwrap();
    assert_eq!((advice.height.nm, advice.hole_from_bottom.nm), (inches(6, 0), inches(2, 8)));
    assert_eq!(advice.gain, "Thin legs: 0 instead of 2. Thin strips over or under it: 0 instead of 1.");
    assert!(penetration(&store, "es", &hole).advice.unwrap().gain.starts_with("Tiras débiles: 0 en vez de 2."));
    let before = store.content_hash().unwrap();
    let action = PenetrationAction::TakeAdvice { penetration: hole.clone() };
    let taken = act(&mut store, &context("en", 20), &Action::PenetrationKind { action: action.clone() }).unwrap();
    assert_eq!(penetration(&store, "en", &hole).advice, None);
    let centre = |store: &Store| {
        spoken(&context("en", 0), |terms| {
            let job = kept::Job::of(store, terms, job.parse().unwrap())?;
            Ok(kept::Penetration::of(store, terms, &job, hole.parse().unwrap())?.centre)
        })
        .unwrap()
    };
    assert_eq!(centre(&store).y.nm(), inches(25, 12), "the hole is where it is");
    let again = act(&mut store, &context("en", 21), &Action::PenetrationKind { action }).unwrap_err();
    assert_eq!((again.code.as_str(), again.field.as_str()), ("first", "block-height"));
    undo(&mut store, 22, taken.group);
    assert!(penetration(&store, "en", &hole).advice.is_some());
    assert_ne!(store.content_hash().unwrap(), before, "taking back is an entry of its own");
}

#[test]
fn the_house_says_which_blocks_there_are() {
    let (mut store, job, wall) = wall();
    lay_out_pole(&mut store, &job);
    // 14 in high, it meets four boards wherever the hole is in it; 6 in would meet two.
    let sizes = [("block-width", "8"), ("block-height", "14"), ("from-base", "40"), ("mounting", "slip-over")];
    let hole = hose_bib(&mut store, &wall, &sizes);
    let (width, height) = ("8".to_owned(), "6".to_owned());
    let added = house_action(&mut store, 20, HouseAction::AddBlockSize { job: job.clone(), width, height });
    let View::HouseKind { view } = added.view else { panic!("house") };
    assert_eq!(view.block_sizes[0].height.nm, inches(6, 0));
    assert_eq!(penetration(&store, "en", &hole).advice.unwrap().height.nm, inches(6, 0));
    let part = view.block_sizes[0].block_size.clone();
    house_action(&mut store, 21, HouseAction::RemovePart { job: job.clone(), part });
    assert!(penetration(&store, "en", &hole).advice.is_none_or(|advice| advice.height.nm == inches(14, 0)));
    let action = HouseAction::AddBlockSize { job, width: "0".to_owned(), height: "6".to_owned() };
    let refused = act(&mut store, &context("en", 22), &Action::HouseKind { action }).unwrap_err();
    assert_eq!(refused.field, "width");
}

#[test]
fn a_spoiled_board_is_planned_again_and_what_is_left_is_an_offcut() {
    let (mut store, job, wall) = planned();
    let id = of_course(&store, &wall, 3);
    let spoil = |left: &str| BoardAction::SayItIsSpoiled { board: id.clone(), left: left.to_owned() };
    assert_eq!(tap(&mut store, 20, spoil("")).unwrap_err().code, "order", "nothing is cut yet");
    tick(&mut store, 30, &id, "board-cut");
    tick(&mut store, 31, &id, "board-prime");
    let cut = board(&store, &id);
    assert_eq!(tap(&mut store, 21, spoil("13'")).unwrap_err().field, "left");
    let spoiled = tap(&mut store, 22, spoil("5'")).unwrap();
    let now = board(&store, &id);
    assert_eq!((now.state.as_str(), now.length.as_ref().unwrap().nm), ("planned", cut.length.as_ref().unwrap().nm));
    assert!(now.steps.iter().all(|step| step.state == StepState::Open), "{:?}", now.steps);
    let offcuts = |store: &Store| {
        let offcuts = spoken(&context("en", 0), |_| kept::Facts::children(store, job.parse().unwrap(), kinds::OFFCUT));
        offcuts.unwrap().iter().filter_map(|offcut| offcut.length("length")).map(Length::nm).collect::<Vec<_>>()
    };
    assert_eq!(offcuts(&store), [inches(60, 0)]);
    undo(&mut store, 23, spoiled.group);
    assert_eq!((board(&store, &id).state.as_str(), offcuts(&store).len()), ("cut", 0));
    tap(&mut store, 24, spoil("4 in")).unwrap();
    assert!(offcuts(&store).is_empty(), "too short to keep");
    tick(&mut store, 32, &id, "board-cut");
    assert_eq!(board(&store, &id).state, "cut", "cut once more");
}

#[test]
fn stock_that_came_shorter_changes_the_plan_and_the_wall_says_what() {
    let (mut store, job, wall) = planned();
    let up = of_course(&store, &wall, 2);
    tick(&mut store, 30, &up, "board-cut");
    let kept_up = board(&store, &up);
    let action = WallAction::PlanBoards { wall: wall.clone() };
    let same = act(&mut store, &context("en", 20), &Action::WallKind { action: action.clone() }).unwrap();
    let noted = |outcome: &Outcome| match &outcome.view {
        View::WallKind { view } => {
            view.notes.iter().find(|note| note.code == "plan-changed").map(|note| note.text.clone())
        }
        _ => None,
    };
    assert_eq!(noted(&same), None);
    let stock = spoken(&context("en", 0), |_| kept::Facts::children(&store, job.parse().unwrap(), kinds::STOCK));
    let part = stock.unwrap()[0].id().to_string();
    house_action(&mut store, 21, HouseAction::RemovePart { job: job.clone(), part });
    house_action(&mut store, 22, HouseAction::AddStock { job, length: "8'".to_owned(), count: String::new() });
    let other = act(&mut store, &context("en", 23), &Action::WallKind { action }).unwrap();
    let text = noted(&other).unwrap();
    assert!(text.contains("1, 3, 4"), "{text}");
    // The stock that it would come out of is no more; what was cut is as it was.
    assert_eq!(board(&store, &up), BoardView { stock: None, ..kept_up });
}

#[test]
fn a_loose_board_like_the_last_one_has_its_blocks() {
    let mut store = Store::in_memory().unwrap();
    let same = BoardAction::CreateSameAsLast { job: None };
    assert_eq!(tap(&mut store, 1, same.clone()).unwrap_err().code, "first");
    let answers = given(&[("length", "96"), ("height", "8 1/4"), ("lap", "1 1/4")]);
    let made = tap(&mut store, 2, BoardAction::CreateLoose { job: None, answers }).unwrap();
    let Place::Board { board: first } = made.place else { panic!("board") };
    let answers = given(&[("left", "40"), ("right", "46 1/2"), ("bottom-left", "-2"), ("top-left", "3")]);
    tap(&mut store, 3, BoardAction::AddNotch { board: first.clone(), answers }).unwrap();
    let made = tap(&mut store, 4, same).unwrap();
    let Place::Board { board: second } = made.place else { panic!("board") };
    let (first, second) = (board(&store, &first), board(&store, &second));
    assert_ne!(first.board, second.board);
    assert_eq!(first.notches[0].face, second.notches[0].face);
    assert_eq!((first.length.unwrap().text, first.height.text), (second.length.unwrap().text, second.height.text));
}

/// The number of cuts behind the overcut is shown from the first board with a notch on, before anything was measured.
#[test]
fn saw_and_hands_are_always_shown_at_a_notch() {
    let mut store = Store::in_memory().unwrap();
    let answers = given(&[("length", "96"), ("height", "8 1/4")]);
    let made = tap(&mut store, 2, BoardAction::CreateLoose { job: None, answers }).unwrap();
    let Place::Board { board: id } = made.place else { panic!("board") };
    let habit = |store: &Store| board(store, &id).notes.into_iter().find(|note| note.code == "habit");
    assert_eq!(habit(&store), None, "nothing to cut round");
    let answers = given(&[("left", "40"), ("right", "46 1/2"), ("bottom-left", "-2"), ("top-left", "3")]);
    tap(&mut store, 3, BoardAction::AddNotch { board: id.clone(), answers }).unwrap();
    assert!(habit(&store).unwrap().text.contains("0 of 3"), "{:?}", habit(&store));
}
