use super::penetration::{hose_bib, lay_out_pole, wall};
use super::*;
use crate::book::{CutRecord, Field, Kind};
use crate::measure::Length;

fn shown(book: &Book, language: &str, board: &str) -> BoardView {
    let place = Place::Board { board: board.to_owned() };
    let View::BoardKind { view } = view(book, &context(language, 0), &place).unwrap() else { panic!("board") };
    view
}

fn tap(book: &mut Book, n: u8, action: BoardAction) -> Result<Outcome, Problem> {
    act(book, &context("en", n), &Action::BoardKind { action })
}

fn undo(book: &mut Book, n: u8, group: String) {
    let action = DoneListAction::Undo { job: None, group };
    act(book, &context("en", n), &Action::DoneListKind { action }).unwrap();
}

fn answers(given: &[(&str, &str)]) -> Vec<Given> {
    given.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect()
}

fn inches(whole: i64, parts: i64) -> i64 {
    Length::from_inches_64(whole, parts).nm()
}

fn nm(readings: &[Reading]) -> Vec<i64> {
    readings.iter().map(|reading| reading.nm).collect()
}

fn said(board: &str, step: &str, how: StepHow) -> BoardAction {
    let said = StepSaid { how, note: String::new(), measured: String::new(), photo: None };
    BoardAction::SignStep { board: board.to_owned(), step: step.to_owned(), said }
}

const LOOSE: [(&str, &str); 3] = [("length", "96"), ("height", "8 1/4"), ("lap", "1 1/4")];
const FOUR: [(&str, &str); 4] = [("left", "40"), ("right", "46 1/2"), ("bottom-left", "-2"), ("top-left", "3")];

fn loose(book: &mut Book, job: Option<String>) -> String {
    loose_at(book, 20, job)
}

fn loose_at(book: &mut Book, n: u8, job: Option<String>) -> String {
    let made = tap(book, n, BoardAction::CreateLoose { job, answers: answers(&LOOSE) }).unwrap();
    let Place::Board { board } = made.place else { panic!("a new board opens") };
    board
}

/// A wall with its boards planned round a hose bib: the board under its block and the board over it. Block height 5 13/16
/// in, from 28 1/4 to 34 1/16 in; the boards lie at 21 and 28 in.
fn planned() -> (Book, String, String, [String; 2]) {
    let (mut book, job, wall) = wall();
    let action = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
    act(&mut book, &context("en", 10), &Action::HouseKind { action }).unwrap();
    lay_out_pole(&mut book, &job);
    let hole = hose_bib(
        &mut book,
        &wall,
        &[("from-base", "31 1/16"), ("block-width", "5"), ("block-height", "5 13/16"), ("hole-from-bottom", "2 13/16")],
    );
    let action = WallAction::PlanBoards { wall: wall.clone() };
    act(&mut book, &context("en", 11), &Action::WallKind { action }).unwrap();
    let boards = [4, 5].map(|course| on_course(&book, &job, &wall, course));
    (book, job, hole, boards)
}

/// The first board of a course of a wall.
fn on_course(book: &Book, job: &str, wall: &str, course: i64) -> String {
    let house = book.house(Some(job.parse().unwrap())).unwrap();
    let boards = house.under(wall.parse().unwrap(), Kind::Board);
    let board = boards.iter().find(|board| board.whole(Field::Course) == Some(course)).unwrap();
    board.id().to_string()
}

/// Tapes the round of a block, one answer a reading.
fn tape(book: &mut Book, n: u8, board: &str, readings: &[(&str, &str)]) {
    for (at, (field, text)) in readings.iter().enumerate() {
        let notch = shown(book, "en", board).notches[0].notch.clone();
        let (board, field, text) = (board.to_owned(), (*field).to_owned(), (*text).to_owned());
        let n = n + u8::try_from(at).unwrap();
        tap(book, n, BoardAction::AnswerNotch { board, notch, field, text }).unwrap();
    }
}

/// Whether something is told of the first notch of a board.
fn has_note(book: &Book, board: &str, code: &str) -> bool {
    shown(book, "en", board).notches[0].notes.iter().any(|note| note.code == code)
}

/// Two actions: the board, then four readings; the answer is in what the second gives back.
#[test]
fn four_readings_on_a_loose_board_give_the_notch_at_once() {
    for with_house in [false, true] {
        let (mut book, job) = house();
        let board = loose(&mut book, with_house.then_some(job));
        let action = BoardAction::AddNotch { board, answers: answers(&FOUR) };
        let View::BoardKind { view } = tap(&mut book, 21, action).unwrap().view else { panic!("board") };
        let notch = &view.notches[0];
        assert_eq!((notch.cut.as_str(), notch.taped), ("bottom", true));
        // The rules' gap and overcut are alike, so the marks lie on the block.
        assert_eq!(notch.offset.as_ref().unwrap().nm, 0);
        let (face, back) = (notch.face.as_ref().unwrap(), notch.back.as_ref().unwrap());
        assert_eq!(nm(&face.uprights), [inches(40, 0), inches(46, 32)]);
        assert_eq!(nm(&back.uprights), [inches(49, 32), inches(56, 0)], "left and right change places");
        assert_eq!((face.levels[0].from.as_str(), face.levels[0].left.nm), ("bottom", inches(3, 0)));
        assert_eq!(face.corners.len(), 4);
        assert_eq!(notch.legs.iter().find(|leg| leg.code == "above").unwrap().reading.nm, inches(5, 16));
    }
}

#[test]
fn the_plan_shows_a_notch_before_it_is_taped_and_the_tape_replaces_it() {
    let (mut book, _, hole, [lower, upper]) = planned();
    let view = shown(&book, "en", &upper);
    let notch = &view.notches[0];
    assert_eq!((notch.notch.as_str(), notch.taped, notch.cut.as_str()), (hole.as_str(), false, "bottom"));
    assert_eq!(notch.face.as_ref().unwrap().levels[0].left.nm, inches(6, 4));
    let top = |view: &BoardView| {
        let questions = &view.notches[0].questions;
        questions.iter().find(|question| question.field == "top-left").unwrap().reading.clone().unwrap()
    };
    assert_eq!((top(&view).source, top(&view).nm), (Source::Planned, inches(6, 4)));
    assert_eq!(shown(&book, "en", &lower).notches[0].cut, "top");

    let action = BoardAction::AnswerNotch {
        board: upper.clone(),
        notch: hole,
        field: "top-left".to_owned(),
        text: "6 1/2".to_owned(),
    };
    let taped = tap(&mut book, 30, action).unwrap();
    let after = shown(&book, "en", &upper);
    assert_eq!((top(&after).source, top(&after).nm, after.notches.len()), (Source::Taped, inches(6, 32), 1));
    assert_ne!(after.revision, view.revision);
    let off = after.notches[0].notes.iter().find(|note| note.code == "off-plan").unwrap();
    assert!(off.text.contains("6 1/2\"") && off.text.contains("6 1/16\""), "{}", off.text);
    undo(&mut book, 31, taped.group);
    assert_eq!(shown(&book, "en", &upper), view, "taken back, the plan speaks again");
}

/// A fact of the trade (common practice, no source): 1 in of notch in the top of one board and 6 1/16 in in the bottom of
/// the next, lapped 1 1/4 in, close on a block of 5 13/16 in.
#[test]
fn two_notches_close_on_their_block() {
    let (mut book, _, _, [lower, upper]) = planned();
    let crossed = |book: &Book, board: &str| {
        let notes = shown(book, "en", board).notches.swap_remove(0).notes;
        notes.into_iter().find(|note| note.code == "cross-check").map(|note| note.text)
    };
    tape(&mut book, 30, &upper, &[("bottom-left", "1/4"), ("top-left", "6 1/16")]);
    assert_eq!(crossed(&book, &upper), None, "one board alone says nothing");
    tape(&mut book, 40, &lower, &[("bottom-left", "7 1/4"), ("top-left", "13 1/16")]);
    assert_eq!((crossed(&book, &lower), crossed(&book, &upper)), (None, None));
    // An eighth is what a tape explains, a quarter is not.
    tape(&mut book, 50, &lower, &[("bottom-left", "7 1/8")]);
    assert_eq!(crossed(&book, &upper), None);
    tape(&mut book, 60, &lower, &[("bottom-left", "7")]);
    for board in [&lower, &upper] {
        let text = crossed(&book, board).unwrap();
        assert!(text.contains("1/4\""), "{text}");
    }
}

/// Two notches that miss their block by a quarter of an inch.
#[test]
pub(super) fn how_far_two_notches_may_miss_is_the_houses_rule() {
    let (mut book, job, _, [lower, upper]) = planned();
    tape(&mut book, 30, &upper, &[("bottom-left", "1/4"), ("top-left", "6 1/16")]);
    tape(&mut book, 40, &lower, &[("bottom-left", "7"), ("top-left", "13 1/16")]);
    assert!(has_note(&book, &lower, "cross-check"));
    for (n, tolerance, told) in [(50, "1/4", false), (51, "3/16", true)] {
        change_rule(&mut book, n, &job, "cross-check.tolerance", tolerance);
        assert_eq!(has_note(&book, &lower, "cross-check"), told, "{tolerance}");
    }
}

/// The plan has the block's top at 6 1/16 in, the tape 7/16 in higher.
#[test]
pub(super) fn how_far_tape_and_plan_may_differ_is_the_houses_rule() {
    let (mut book, job, _, [_, upper]) = planned();
    tape(&mut book, 30, &upper, &[("top-left", "6 1/2")]);
    assert!(has_note(&book, &upper, "off-plan"));
    for (n, tolerance, told) in [(50, "7/16", false), (51, "3/8", true)] {
        change_rule(&mut book, n, &job, "tape.plan-tolerance", tolerance);
        assert_eq!(has_note(&book, &upper, "off-plan"), told, "{tolerance}");
    }
}

/// A block whose top rises 3/16 in from left to right.
#[test]
pub(super) fn how_far_a_block_may_lean_is_the_houses_rule() {
    let (mut book, job) = house();
    let board = loose(&mut book, Some(job.clone()));
    let leaning = [&FOUR[..], &[("bottom-right", "-2"), ("top-right", "3 3/16")]].concat();
    tap(&mut book, 21, BoardAction::AddNotch { board: board.clone(), answers: answers(&leaning) }).unwrap();
    assert!(has_note(&book, &board, "out-of-level"));
    for (n, tolerance, told) in [(50, "3/16", false), (51, "1/8", true), (52, "1/4", false)] {
        change_rule(&mut book, n, &job, "level.tolerance", tolerance);
        assert_eq!(has_note(&book, &board, "out-of-level"), told, "{tolerance}");
    }
}

/// By hand: the flashing stands 7/8 in and 5 mm out and falls 6 % of that, 1.6335 mm, to the wall; with the 1/4 in that
/// stays open 7.9835 mm, up to the next half mark 11/32 in. The saw takes 3/32 in past the line in the middle, 1/32 in less
/// than the middle of what is wanted: the line lies 9/32 in over the block.
#[test]
fn over_a_head_flashing_the_gap_is_a_quarter_and_its_fall_and_stays_open() {
    let (mut book, _, hole, [lower, upper]) = planned();
    let before = (shown(&book, "en", &lower).notches, shown(&book, "en", &upper).notches.swap_remove(0));
    let (field, text) = ("head-flashing".to_owned(), "yes".to_owned());
    super::tap(&mut book, 30, PenetrationAction::Answer { penetration: hole, field, text }).unwrap();
    let notch = shown(&book, "en", &upper).notches.swap_remove(0);
    let (was, face) = (before.1.face.unwrap(), notch.face.unwrap());
    assert_eq!((was.levels[0].left.nm, face.levels[0].left.nm), (inches(6, 4), inches(6, 22)));
    assert_eq!(nm(&face.uprights), nm(&was.uprights), "the sides keep theirs");
    let said = |language: &str| {
        let notes = shown(&book, language, &upper).notches.swap_remove(0).notes;
        notes.iter().map(|note| (note.code.clone(), note.text.clone())).collect::<Vec<_>>()
    };
    // Above the notch less than 2 in of board stay, which is told before what is good to know.
    let (code, text) = said("en").pop().unwrap();
    assert!(code == "open-above" && text.contains("11/32\" to 13/32\""), "{text}");
    assert!(said("es").pop().unwrap().1.contains("de 11/32\" a 13/32\""), "{:?}", said("es"));
    // The board below enters from under the block: no flashing there.
    assert_eq!(shown(&book, "en", &lower).notches, before.0);
}

/// Boards of 8 1/4 in every 6 1/2 in lap 1 3/4 in, not the 1 1/4 in that they have to: a block that starts between the two
/// above a board's bottom edge would leave a strip over the notch of the board below. By hand: course 5 lies on 26 in.
#[test]
fn the_lap_that_hangs_decides_between_a_notch_and_a_hole() {
    // By the middle of a block 3 in high.
    let cases =
        [("104", "6 1/2", "28 3/4", "bottom"), ("104", "6 1/2", "29 1/4", "hole"), ("105", "7", "30 3/4", "hole")];
    for (to, reveal, middle, cut) in cases {
        let (mut book, job, wall) = wall();
        let action = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
        super::tap(&mut book, 10, action).unwrap();
        lay_out_pole(&mut book, &job);
        for (field, text) in [("to", to), ("reveal-min", "6"), ("reveal", reveal)] {
            let (field, text) = (field.to_owned(), text.to_owned());
            super::tap(&mut book, 11, PoleAction::Answer { job: job.clone(), field, text }).unwrap();
        }
        super::tap(&mut book, 12, PoleAction::LayOut { job: job.clone() }).unwrap();
        let block = [("block-width", "5"), ("block-height", "3"), ("hole-from-bottom", "1 1/2"), ("from-base", middle)];
        hose_bib(&mut book, &wall, &block);
        super::tap(&mut book, 13, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
        let notches = shown(&book, "en", &on_course(&book, &job, &wall, 5)).notches;
        assert_eq!(notches.iter().map(|notch| notch.cut.as_str()).collect::<Vec<_>>(), [cut], "{reveal} {middle}");
    }
}

/// By hand: two blocks 5 in wide with their centres at 60 and 65 1/2 in leave 1/2 in between them, at 60 and 67 in 2 in.
#[test]
fn a_thin_leg_between_two_notches_names_both() {
    for (second, thin) in [("65 1/2", true), ("67", false)] {
        let (mut book, job, wall) = wall();
        let action = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
        super::tap(&mut book, 10, action).unwrap();
        lay_out_pole(&mut book, &job);
        let sizes = [("from-base", "31"), ("block-width", "5"), ("block-height", "5"), ("hole-from-bottom", "2 1/2")];
        hose_bib(&mut book, &wall, &sizes);
        let light = [&sizes[..], &[("what", "light"), ("width", "3"), ("from-left", second)]].concat();
        let action = WallAction::AddPenetration { wall: wall.clone(), answers: answers(&light) };
        super::tap(&mut book, 11, action).unwrap();
        super::tap(&mut book, 12, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
        let board = on_course(&book, &job, &wall, 5);
        for (language, said) in [
            ("en", "Only 1/2\" of board stay between Hose bib and Light, under 2\"."),
            ("es", "quedan solo 1/2\" de tabla, menos de 2\"."),
        ] {
            let notches = shown(&book, language, &board).notches;
            assert_eq!(notches.len(), 2);
            for notch in &notches {
                let between = notch.notes.iter().filter(|note| note.code == "thin-between").collect::<Vec<_>>();
                assert_eq!(between.len(), usize::from(thin), "{second}");
                assert!(between.iter().all(|note| note.text.contains(said)), "{between:?}");
            }
        }
        let legs: Vec<_> = shown(&book, "en", &board).notches.into_iter().map(|notch| notch.legs).collect();
        let leg = |at: usize, side: &str| legs[at].iter().find(|leg| leg.code == side).unwrap().reading.nm;
        assert_eq!(leg(0, "right"), leg(1, "left"));
        assert_eq!(leg(0, "right"), if thin { inches(0, 32) } else { inches(2, 0) });
    }
}

/// Course 5 lies on 28 in: on the head of a window, or less than the gap over it, its bottom edge is cut away there.
#[test]
fn a_board_that_lies_on_a_head_is_cut_open_over_it() {
    for (height, mark) in [("24", Some(inches(0, 18))), ("23 15/16", Some(inches(0, 14))), ("23 1/2", None)] {
        let (mut book, job, wall) = wall();
        let action = HouseAction::AddStock { job: job.clone(), length: "12'".to_owned(), count: String::new() };
        super::tap(&mut book, 10, action).unwrap();
        lay_out_pole(&mut book, &job);
        let window = [("what", "window"), ("from-left", "60"), ("width", "30"), ("from-base", "4"), ("height", height)];
        let (kind, answers) = ("opening".to_owned(), answers(&window));
        super::tap(&mut book, 11, MeasureAction::AddPart { wall: wall.clone(), kind, answers }).unwrap();
        super::tap(&mut book, 12, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
        let notches = shown(&book, "en", &on_course(&book, &job, &wall, 5)).notches;
        let marks: Vec<_> = notches.iter().map(|notch| (notch.cut.as_str(), notch.face.as_ref())).collect();
        let level = |face: Option<&MarksView>| face.map(|face| face.levels[0].left.nm);
        match mark {
            Some(mark) => {
                assert_eq!(
                    marks.iter().map(|(cut, face)| (*cut, level(*face))).collect::<Vec<_>>(),
                    [("bottom", Some(mark))]
                );
            }
            None => assert_eq!(notches, [], "more than the gap over it"),
        }
    }
}

#[test]
fn what_is_cut_keeps_its_numbers_when_a_rule_changes() {
    let (mut book, job, _, [_, upper]) = planned();
    let differs = |book: &Book| shown(book, "en", &upper).notes.iter().any(|note| note.code == "differs-from-cut");
    let cut = tap(&mut book, 30, said(&upper, "board-notch", StepHow::Tick)).unwrap();
    assert_eq!((shown(&book, "en", &upper).state.as_str(), differs(&book)), ("cut", false));
    let numbers = |book: &Book| {
        let id = upper.parse().unwrap();
        let house = book.house_of(id).unwrap().unwrap();
        CutRecord::of(&house, house.get(id, Kind::Board).unwrap())
    };
    let kept = numbers(&book);
    assert_eq!(kept.as_ref().unwrap().notches.len(), 1);
    let action = RulesAction::Change {
        job,
        key: "gap.block.most".to_owned(),
        value: "1/2".to_owned(),
        reason: "swells".to_owned(),
    };
    let changed = insist(&mut book, 31, action);
    assert!(differs(&book));
    assert_eq!(numbers(&book), kept);
    undo(&mut book, 32, changed.group);
    assert!(!differs(&book));
    undo(&mut book, 33, cut.group);
    assert_eq!(shown(&book, "en", &upper).state, "planned");
}

#[test]
fn a_loose_board_of_no_house_keeps_what_it_was_cut_to() {
    let mut book = Book::in_memory().unwrap();
    let board = loose(&mut book, None);
    tap(&mut book, 21, BoardAction::AddNotch { board: board.clone(), answers: answers(&FOUR) }).unwrap();
    tap(&mut book, 22, said(&board, "board-notch", StepHow::Tick)).unwrap();
    let differs = |book: &Book| shown(book, "en", &board).notes.iter().any(|note| note.code == "differs-from-cut");
    assert_eq!((shown(&book, "en", &board).state.as_str(), differs(&book)), ("cut", false));
    let house = book.house(None).unwrap();
    let cut = CutRecord::of(&house, house.get(board.parse().unwrap(), Kind::Board).unwrap());
    assert_eq!(cut.unwrap().notches.len(), 1);
    tape(&mut book, 31, &board, &[("top-left", "3 1/2")]);
    assert!(differs(&book));
}

#[test]
fn nailing_fixes_a_board_and_taking_it_back_does_not_uncut_it() {
    let (mut book, _, _, [_, upper]) = planned();
    for step in ["board-notch", "board-prime", "board-nail"] {
        tap(&mut book, 30, said(&upper, step, StepHow::Tick)).unwrap();
    }
    assert_eq!(shown(&book, "en", &upper).state, "fixed");
    tap(&mut book, 31, said(&upper, "board-nail", StepHow::TakeBack)).unwrap();
    assert_eq!(shown(&book, "en", &upper).state, "cut");
}

/// Three gaps that came out 3/16 in at marks on the block: the saw takes 3/16 in, and the rules trust the tape.
#[test]
fn a_saw_is_learned_from_three_cuts_and_forgotten_on_demand() {
    let (mut book, _) = house();
    let board = loose(&mut book, None);
    let added = tap(&mut book, 21, BoardAction::AddNotch { board: board.clone(), answers: answers(&FOUR) }).unwrap();
    let View::BoardKind { view } = added.view else { panic!("board") };
    let notch = view.notches[0].notch.clone();
    let least = |book: &Book| shown(book, "en", &board).notches[0].gap_least.clone().unwrap().nm;
    assert_eq!(least(&book), inches(0, 4));
    let gap = |board: &str, notch: &str, text: &str| {
        let (board, notch, text) = (board.to_owned(), notch.to_owned(), text.to_owned());
        BoardAction::AnswerNotch { board, notch, field: "gap".to_owned(), text }
    };
    let uncut = tap(&mut book, 22, gap(&board, &notch, "3/16")).unwrap_err();
    assert_eq!((uncut.code.as_str(), uncut.field.as_str()), ("range", "gap"), "nothing came out of it yet");
    tap(&mut book, 23, said(&board, "board-notch", StepHow::Tick)).unwrap();
    for n in 30..33 {
        tap(&mut book, n, gap(&board, &notch, "3/16")).unwrap();
        assert_eq!(least(&book), inches(0, 4), "one cut that is told three times is one cut");
    }
    for n in [40, 50] {
        assert_eq!(least(&book), inches(0, 4), "the rule's until three cuts are known");
        let further = loose_at(&mut book, n, None);
        let added = tap(&mut book, n + 3, BoardAction::AddNotch { board: further.clone(), answers: answers(&FOUR) });
        let View::BoardKind { view } = added.unwrap().view else { panic!("board") };
        tap(&mut book, n + 1, said(&further, "board-notch", StepHow::Tick)).unwrap();
        tap(&mut book, n + 2, gap(&further, &view.notches[0].notch, "3/16")).unwrap();
    }
    assert_eq!(least(&book), inches(0, 12));
    let habit = shown(&book, "en", &board).notes.into_iter().find(|note| note.code == "habit").unwrap();
    assert!(habit.text.contains('3') && habit.text.contains("3/16\""), "{}", habit.text);
    // What strays from all that was seen is asked about.
    let stray = tap(&mut book, 60, gap(&board, &notch, "7/16")).unwrap_err();
    assert_eq!(stray.code, "unlikely", "{stray:?}");
    tap(&mut book, 61, BoardAction::ForgetHabit { board: board.clone() }).unwrap();
    assert_eq!(least(&book), inches(0, 4));
}

/// The gap is asked once the board is cut; its keys outlive a stop, and what was said stands there.
#[test]
fn the_gap_is_asked_of_a_cut_notch_and_learned_from() {
    let (mut book, _, hole, [_, upper]) = planned();
    let question = |book: &Book| {
        let questions = shown(book, "en", &upper).notches[0].questions.clone();
        questions.into_iter().find(|question| question.field == "gap")
    };
    assert_eq!(question(&book), None, "nothing came out of a board that is not cut");
    while shown(&book, "en", &upper).state == "planned" {
        let view = shown(&book, "en", &upper);
        let step = view.steps.iter().find(|step| step.state == StepState::Open).unwrap();
        tap(&mut book, 30, said(&upper, &step.code, StepHow::Tick)).unwrap();
    }
    let open = question(&book).unwrap();
    assert_eq!((open.subject.as_str(), open.answer.as_str(), open.optional), (hole.as_str(), "", true));
    let (board, subject, field) = (upper.clone(), open.subject.clone(), open.field.clone());
    let text = "3/1".to_owned();
    tap(&mut book, 40, BoardAction::KeepDraft { board, subject, field, text }).unwrap();
    let asked = shown(&book, "en", &upper).asked.unwrap();
    assert_eq!((asked.field.as_str(), asked.draft.as_str()), ("gap", "3/1"));
    let (board, notch, field, text) = (upper.clone(), open.subject, open.field, "3/16".to_owned());
    tap(&mut book, 41, BoardAction::AnswerNotch { board, notch, field, text }).unwrap();
    let said = question(&book).unwrap();
    assert_eq!((said.answer.as_str(), said.draft.as_str()), ("3/16\"", ""));
    assert_eq!(said.reading.unwrap().signer, "Ines");
    assert_eq!(shown(&book, "en", &upper).gaps_known, 1);
}

/// The step that asks for the gap opens its question, and the gap that came out signs it; one undo takes both back.
#[test]
fn a_gap_signs_the_step_that_asks_for_it() {
    let (mut book, _, _, [_, upper]) = planned();
    let step = |book: &Book, code: &str| {
        let steps = shown(book, "en", &upper).steps;
        steps.into_iter().find(|step| step.code == code).unwrap()
    };
    assert_eq!(step(&book, "board-measure-notch").opens.unwrap().field, "left");
    let mut n = 30;
    while let Some(open) = shown(&book, "en", &upper).steps.iter().find(|step| step.state == StepState::Open) {
        if open.code == "board-gap" {
            break;
        }
        n += 1;
        tap(&mut book, n, said(&upper, &open.code, StepHow::Tick)).unwrap();
    }
    let open = step(&book, "board-gap").opens.unwrap();
    assert_eq!(open.field, "gap");
    let (board, notch, field, text) = (upper.clone(), open.subject, open.field, "3/16".to_owned());
    let group = tap(&mut book, 60, BoardAction::AnswerNotch { board, notch, field, text }).unwrap().group;
    let signed = step(&book, "board-gap");
    assert_eq!(
        (signed.state, signed.measured.unwrap().text.as_str(), signed.differs),
        (StepState::Done, "3/16\"", false)
    );
    undo(&mut book, 61, group);
    let open = step(&book, "board-gap");
    assert_eq!((open.state, open.opens.unwrap().answer.as_str()), (StepState::Open, ""));
}

/// The reason why a step is left out is a question: its keys are kept, asked on after a stop, and gone with the answer.
#[test]
fn a_begun_reason_is_asked_on_until_the_step_is_signed() {
    let (mut book, _, _, [_, upper]) = planned();
    let step = shown(&book, "en", &upper).steps[0].clone();
    let asks = step.asks.last().cloned().unwrap();
    let keep = |field: &str| BoardAction::KeepDraft {
        board: upper.clone(),
        subject: asks.subject.clone(),
        field: field.to_owned(),
        text: "no time".to_owned(),
    };
    assert_eq!(tap(&mut book, 30, keep("no-such-step/reason")).unwrap_err().code, "unknown");
    tap(&mut book, 31, keep(&asks.field)).unwrap();
    let asked = shown(&book, "en", &upper).asked.unwrap();
    assert_eq!((asked.field, asked.draft.as_str()), (asks.field, "no time"));
    tap(&mut book, 32, said(&upper, &step.code, StepHow::Tick)).unwrap();
    let signed = shown(&book, "en", &upper).steps[0].clone();
    assert_eq!(signed.asks, [], "nothing is asked of what is done");
    tap(&mut book, 33, said(&upper, &step.code, StepHow::TakeBack)).unwrap();
    assert!(shown(&book, "en", &upper).steps[0].asks.iter().all(|asks| asks.draft.is_empty()));
}

/// What was measured at a step and a note are answers like any other; each ticks its step.
#[test]
fn a_measure_or_a_note_ticks_its_step() {
    let (mut book, _, _, [_, upper]) = planned();
    let step =
        |book: &Book, code: &str| shown(book, "en", &upper).steps.into_iter().find(|step| step.code == code).unwrap();
    let fields = |step: &StepLine| step.asks.iter().map(|asks| asks.field.clone()).collect::<Vec<_>>();
    let open = step(&book, "board-measure");
    assert_eq!(fields(&open), ["board-measure/measured", "board-measure/note", "board-measure/reason"]);
    assert_eq!(open.asks[0].kind, AnswerKind::LengthKind);
    assert_eq!(fields(&step(&book, "board-mark")), ["board-mark/note", "board-mark/reason"], "nothing to measure");
    let mut answer = |n, field: &str, text: &str| {
        let (board, field, text) = (upper.clone(), field.to_owned(), text.to_owned());
        tap(&mut book, n, BoardAction::Answer { board, field, text })
    };
    for (text, code) in [("", "missing"), ("wide", "length")] {
        assert_eq!(answer(30, "board-measure/measured", text).unwrap_err().code, code);
    }
    answer(31, "board-measure/measured", "143 1/2").unwrap();
    answer(32, "board-mark/note", "the face was up").unwrap();
    assert_eq!(answer(33, "board-mark/note", "again").unwrap_err().code, "order");
    let measured = step(&book, "board-measure");
    assert_eq!((measured.state, measured.measured.unwrap().text.as_str()), (StepState::Done, "143 1/2\""));
    let noted = step(&book, "board-mark");
    assert_eq!((noted.state, noted.said.as_str()), (StepState::Done, "Ines, 05:00, the face was up"));
}

/// Whoever still names the planned notch answers the one that was taped in its place.
#[test]
fn a_planned_notch_is_taped_once() {
    let (mut book, _, hole, [_, upper]) = planned();
    for (n, field, text) in [(30, "left", "58"), (31, "right", "63")] {
        let (board, notch, field, text) = (upper.clone(), hole.clone(), field.to_owned(), text.to_owned());
        tap(&mut book, n, BoardAction::AnswerNotch { board, notch, field, text }).unwrap();
    }
    assert_eq!(shown(&book, "en", &upper).notches.len(), 1);
}

/// Teaches a signer's saw by the gaps of three loose boards.
fn teach(book: &mut Book, signer: &str, gap: &str) {
    let by = |n| Context { signer: signer.to_owned(), ..context("en", n) };
    for n in [101, 111, 121] {
        let answers_of = |given: &[(&str, &str)]| answers(given);
        let size = [("length", "100"), ("height", "7 1/4"), ("lap", "1 1/4")];
        let mut tap = |n, action| act(book, &by(n), &Action::BoardKind { action }).unwrap();
        let made = tap(n, BoardAction::CreateLoose { job: None, answers: answers_of(&size) });
        let Place::Board { board } = made.place else { panic!("a board") };
        let added = tap(n + 1, BoardAction::AddNotch { board: board.clone(), answers: answers_of(&FOUR) });
        let View::BoardKind { view } = added.view else { panic!("board") };
        tap(n + 2, said(&board, "board-notch", StepHow::Tick));
        let (notch, text) = (view.notches[0].notch.clone(), gap.to_owned());
        tap(n + 3, BoardAction::AnswerNotch { board, notch, field: "gap".to_owned(), text });
    }
}

#[test]
fn another_hand_and_saw_make_no_cut_board_differ() {
    let (mut book, _, _, [_, upper]) = planned();
    tap(&mut book, 30, said(&upper, "board-notch", StepHow::Tick)).unwrap();
    teach(&mut book, "Ben", "0");
    let place = Place::Board { board: upper };
    let ben = Context { signer: "Ben".to_owned(), ..context("en", 60) };
    let View::BoardKind { view } = view(&book, &ben, &place).unwrap() else { panic!("board") };
    assert!(view.notes.iter().any(|note| note.code == "habit"), "Ben's saw was learned");
    assert!(view.notes.iter().all(|note| note.code != "differs-from-cut"), "{:?}", view.notes);
    assert!(view.steps.iter().all(|step| !step.differs));
}

/// The board was cut on the line of the block; later the saw was learned to take nothing, and marks moved out.
#[test]
fn a_gap_goes_with_the_offset_that_its_board_was_marked_with() {
    let (mut book, _, _, [_, upper]) = planned();
    assert_eq!(shown(&book, "en", &upper).notches[0].offset.as_ref().unwrap().nm, 0);
    tap(&mut book, 30, said(&upper, "board-notch", StepHow::Tick)).unwrap();
    teach(&mut book, "Ines", "0");
    let view = shown(&book, "en", &upper);
    assert!(view.notches[0].offset.as_ref().unwrap().nm > 0);
    let (board, notch, text) = (upper, view.notches[0].notch.clone(), "1/8".to_owned());
    insist(&mut book, 61, BoardAction::AnswerNotch { board, notch, field: "gap".to_owned(), text });
    let fitted = book.store().subjects(None, "fitted").unwrap();
    let length =
        |subject: &crate::store::StoredSubject, name: &str| match &book.store().fields(subject.id).unwrap()[name].value
        {
            crate::store::Value::Length { length, .. } => length.nm(),
            other => panic!("{other:?}"),
        };
    let last = fitted.iter().find(|subject| length(subject, "gap") == inches(0, 8)).unwrap();
    assert_eq!(length(last, "offset"), 0);
}

#[test]
fn a_signed_step_differs_once_a_reading_changes() {
    let (mut book, _, _, [_, upper]) = planned();
    tap(&mut book, 30, said(&upper, "board-notch", StepHow::Tick)).unwrap();
    let differs = |book: &Book| shown(book, "en", &upper).steps.iter().any(|step| step.differs);
    assert!(!differs(&book));
    tape(&mut book, 31, &upper, &[("top-left", "6 1/2")]);
    assert!(differs(&book));
}

#[test]
fn an_unknown_step_is_told_which_there_are() {
    let (mut book, _, _, [_, upper]) = planned();
    let problem = tap(&mut book, 30, said(&upper, "no-such-step", StepHow::Tick)).unwrap_err();
    assert!(problem.text.contains("board-notch") && problem.text.contains("board-nail"), "{}", problem.text);
}

#[test]
fn a_loose_board_goes_on_a_wall_once() {
    let (mut book, job, wall) = wall();
    let board = loose(&mut book, Some(job));
    let attach = BoardAction::Attach { board: board.clone(), wall: wall.clone() };
    tap(&mut book, 21, attach.clone()).unwrap();
    assert_eq!(shown(&book, "en", &board).wall, wall);
    assert_eq!(tap(&mut book, 22, attach).unwrap_err().code, "order");
}

#[test]
fn bad_input_changes_nothing() {
    let (mut book, _, hole, [_, upper]) = planned();
    let before = book.store().content_hash().unwrap();
    let answer = |notch: &str, field: &str, text: &str| BoardAction::AnswerNotch {
        board: upper.clone(),
        notch: notch.to_owned(),
        field: field.to_owned(),
        text: text.to_owned(),
    };
    for (action, code, field) in [
        (answer(&hole, "top-left", "high"), "length", "top-left"),
        (answer(&hole, "top-left", ""), "missing", "top-left"),
        (answer(&hole, "colour", "1"), "unknown", "colour"),
        (answer("none", "top-left", "1"), "unknown", "notch"),
        (answer(&upper, "top-left", "1"), "unknown", "notch"),
        (BoardAction::AddNotch { board: upper.clone(), answers: answers(&FOUR[..3]) }, "first", "top-left"),
        (BoardAction::CreateLoose { job: None, answers: answers(&LOOSE[..1]) }, "first", "height"),
        (BoardAction::CreateLoose { job: None, answers: answers(&[("length", "-1")]) }, "range", "length"),
        (said(&upper, "no-such-step", StepHow::Tick), "unknown", "step"),
        (answer(&hole, "gap", "-1"), "range", "gap"),
    ] {
        let shown = format!("{action:?}");
        let problem = tap(&mut book, 30, action).unwrap_err();
        assert_eq!((problem.code.as_str(), problem.field.as_str()), (code, field), "{shown}");
    }
    assert_eq!(book.store().content_hash().unwrap(), before);
}

#[test]
fn keys_that_are_typed_are_kept_as_a_draft() {
    let (mut book, _, hole, [_, upper]) = planned();
    let typed = BoardAction::KeepDraft {
        board: upper.clone(),
        subject: hole,
        field: "left".to_owned(),
        text: "57 1".to_owned(),
    };
    assert_eq!(tap(&mut book, 30, typed).unwrap().group, "");
    assert_eq!(shown(&book, "en", &upper).notches[0].questions[0].draft, "57 1");
    tape(&mut book, 31, &upper, &[("left", "57 1/2")]);
    assert_eq!(shown(&book, "en", &upper).notches[0].questions[0].draft, "");
}

#[test]
fn shows_what_it_showed() {
    let (mut book, _, _, [_, upper]) = planned();
    tape(&mut book, 30, &upper, &[("top-left", "6 1/2")]);
    insta::assert_json_snapshot!("board", shown(&book, "en", &upper));
}

/// What was done to a board is told in the language of who reads it, not of who did it.
#[test]
fn the_done_list_names_a_board_in_the_readers_language() {
    let (mut book, _, _, [_, upper]) = planned();
    let step = shown(&book, "en", &upper).steps[0].code.clone();
    tap(&mut book, 30, said(&upper, &step, StepHow::Tick)).unwrap();
    let loose = loose(&mut book, None);
    let step = shown(&book, "en", &loose).steps[0].code.clone();
    tap(&mut book, 50, said(&loose, &step, StepHow::Tick)).unwrap();
    let lines = |language: &str| {
        let shown = view(&book, &context(language, 60), &Place::DoneList { job: None }).unwrap();
        let View::DoneListKind { view } = shown else { panic!("done list") };
        view.lines.into_iter().map(|line| line.text).collect::<Vec<_>>()
    };
    let (english, spanish) = (lines("en"), lines("es"));
    assert!(english[0].starts_with("Loose board: "), "{english:?}");
    assert!(spanish[0].starts_with("Tabla suelta: "), "{spanish:?}");
    assert!(english.iter().any(|line| line.contains(", course 5: ")), "{english:?}");
    assert!(spanish.iter().any(|line| line.contains(", hilada 5: ")), "{spanish:?}");
    let left: Vec<_> = spanish.iter().filter(|line| line.contains(", course ") || line.contains('\u{1f}')).collect();
    assert!(left.is_empty(), "{left:?}");
}

/// The tape reads the block 1/4 in higher at its right: the board over it is cut as it was read, 3/32 in off it (halfway between
/// the gaps of the rules), and its notch is told as before.
#[test]
fn a_block_that_slopes_is_cut_as_it_was_read() {
    let (mut book, _, _, [_, upper]) = planned();
    tape(
        &mut book,
        40,
        &upper,
        &[("left", "57 1/2"), ("right", "62 1/2"), ("bottom-left", "1/4"), ("bottom-right", "1/2")],
    );
    tape(&mut book, 44, &upper, &[("top-left", "6 1/16"), ("top-right", "6 5/16")]);
    let view = shown(&book, "en", &upper);
    let [shape] = view.shape.as_slice() else { panic!("{:?}", view.shape) };
    let gap = inches(0, 6);
    let up = |sixteenths: i64| inches(6, 4 * sixteenths) + gap;
    let (left, right) = (inches(57, 32) - gap, inches(62, 32) + gap);
    let slopes = |x: i64, y: i64| shape.shape.iter().any(|corner| (corner.x, corner.y) == (x, y));
    let own: Vec<(i64, i64)> = shape.shape.iter().map(|corner| (corner.x, corner.y)).collect();
    assert!(slopes(left, up(1)) && slopes(right, up(5)), "{own:?}");
    assert_eq!(view.notches[0].cut, "bottom");
}
