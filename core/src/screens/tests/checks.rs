//! What is checked of a board with one tap.

use super::*;

/// A tap among many: each has its own second and chance.
fn tap_nth(book: &mut Book, n: u32, action: impl Into<Action>) -> Result<Outcome, Problem> {
    let entropy = u128::from(n).to_be_bytes().to_vec();
    let context = Context { now_ms: 1_777_896_000_000 + i64::from(n) * 1_000, entropy, ..context("en", 0) };
    act(book, &context, &action.into())
}

fn board(book: &Book, board: &str) -> BoardView {
    shown(book, "en", Place::Board { board: board.to_owned() })
}

fn tick(board: &str, check: &str) -> BoardAction {
    BoardAction::TickCheck { board: board.to_owned(), check: check.to_owned() }
}

/// The demo house with its first wall planned; the wall's boards from the lowest up.
fn first_wall() -> (Book, String, Vec<String>) {
    let (mut book, job) = demo_laid_out();
    let house: HouseView = shown(&book, "en", Place::House { job: job.clone() });
    let wall = house.walls[0].wall.clone();
    tap(&mut book, 3, WallAction::PlanBoards { wall: wall.clone() }).unwrap();
    let view: WallView = shown(&book, "en", Place::Wall { wall: wall.clone() });
    let boards = view.boards.iter().map(|board| board.board.clone()).collect();
    (book, job, boards)
}

/// A board of the plan that is neither notched, nor of the first course, nor at a joint.
fn plain(book: &Book, boards: &[String]) -> String {
    let is_plain = |id: &&String| board(book, id).steps.len() == 6;
    boards.iter().find(is_plain).unwrap().clone()
}

/// Every board of the wall goes through all of its checks. What is measured is typed and ticks itself, so it is no tick.
#[test]
fn the_demos_first_wall_takes_180_ticks_at_most() {
    let (mut book, job, boards) = first_wall();
    let (mut ticks, mut readings, mut steps, mut n) = (0, 0, 0, 100);
    for id in &boards {
        let mut view = board(&book, id);
        steps += view.steps.len();
        while let Some(check) = view.checks.iter().find(|check| check.state == StepState::Open) {
            n += 1;
            assert!(n < 1_000, "no end of checks at {id}");
            let action = match &check.opens {
                Some(question) => {
                    readings += 1;
                    let text = question.reading.as_ref().map_or("1/8", |reading| &reading.text).to_owned();
                    let (notch, field) = (question.subject.clone(), question.field.clone());
                    BoardAction::AnswerNotch { board: id.clone(), notch, field, text }
                }
                None => {
                    ticks += 1;
                    tick(id, &check.code)
                }
            };
            view = BoardView::of(tap_nth(&mut book, n, action).unwrap().view);
        }
        assert_eq!(view.state, "fixed", "{id}");
    }
    println!("{} boards, {steps} steps, {ticks} ticks, {readings} readings", boards.len());
    assert!(steps > 400 && boards.len() > 50, "the wall is the one that was counted before: {steps} steps");
    assert!(ticks <= 180, "{ticks} ticks");
    let house: HouseView = shown(&book, "en", Place::House { job });
    assert_eq!(house.boards_up, u32::try_from(boards.len()).unwrap());
}

#[test]
fn a_plain_board_is_cut_primed_and_up() {
    let (mut book, _, boards) = first_wall();
    let id = plain(&book, &boards);
    let codes = |view: &BoardView| view.checks.iter().map(|check| check.code.clone()).collect::<Vec<_>>();
    assert_eq!(codes(&board(&book, &id)), ["cut", "primed", "up"]);
    for (n, (check, state)) in [("cut", "cut"), ("primed", "cut"), ("up", "fixed")].into_iter().enumerate() {
        tap(&mut book, 10 + u8::try_from(n).unwrap(), tick(&id, check)).unwrap();
        assert_eq!(board(&book, &id).state, state, "{check}");
    }
    let view = board(&book, &id);
    assert!(view.steps.iter().all(|step| step.state == StepState::Done && step.signer == "Ines" && !step.differs));
    assert!(view.checks.iter().all(|check| check.said.starts_with("Ines, ")), "{:?}", view.checks);
}

/// One tap is one answer: it is undone by one, says what it did, and is not done twice.
#[test]
fn a_check_is_one_answer() {
    let (mut book, job, boards) = first_wall();
    let id = plain(&book, &boards);
    let before = board(&book, &id);
    let ticked = tap(&mut book, 10, tick(&id, "cut")).unwrap();
    let done: DoneListView = shown(&book, "en", Place::DoneList { job: Some(job) });
    assert_eq!((done.lines[0].group.as_str(), done.lines[0].text.as_str()), (&*ticked.group, &*ticked.said));
    assert!(ticked.said.contains("Cut"), "{}", ticked.said);
    assert_eq!(tap(&mut book, 11, tick(&id, "cut")).unwrap_err().code, "order");
    tap(&mut book, 12, DoneListAction::Undo { job: None, group: ticked.group }).unwrap();
    let states = |view: &BoardView| (view.state.clone(), view.steps.iter().map(|step| step.state).collect::<Vec<_>>());
    assert_eq!(states(&board(&book, &id)), states(&before));
    tap(&mut book, 13, tick(&id, "cut")).unwrap();
    tap(&mut book, 14, BoardAction::TakeCheckBack { board: id.clone(), check: "cut".to_owned() }).unwrap();
    assert_eq!(states(&board(&book, &id)), states(&before), "taken back as undone");
    assert_eq!(tap(&mut book, 15, tick(&id, "no-such-check")).unwrap_err().code, "unknown");
}

/// What there is to mind at a check is that of its steps, and is read for all of them.
#[test]
fn the_cautions_of_a_check_are_read_together() {
    let (mut book, _, boards) = first_wall();
    let id = plain(&book, &boards);
    let cut = |book: &Book| board(book, &id).checks[0].clone();
    let codes: Vec<String> = cut(&book).cautions.iter().map(|caution| caution.code.clone()).collect();
    assert_eq!((codes.len(), cut(&book).cautions_read), (2, false), "{codes:?}: dust and saw");
    tap(&mut book, 10, BoardAction::ReadCautions { board: id.clone(), step: "cut".to_owned() }).unwrap();
    assert!(cut(&book).cautions_read && cut(&book).state == StepState::Open);
}

/// The photo of a step that a check stands for goes into the check.
#[test]
fn a_check_takes_the_photo_of_its_step_in() {
    let (book, _, boards) = first_wall();
    let id = plain(&book, &boards);
    let cameras: Vec<String> = board(&book, &id).checks.into_iter().map(|check| check.camera).collect();
    assert_eq!(cameras, ["", "board-prime", ""]);
}

/// Which board it is, and which comes after it, stand on the board.
#[test]
fn a_board_says_its_place_and_the_next_one() {
    let (mut book, _, boards) = first_wall();
    let first = board(&book, &boards[0]);
    assert_eq!(first.said, format!("1 of {}", boards.len()));
    assert_eq!(first.next_board, boards[1]);
    assert!(first.next_said.starts_with("Next: course 1, "), "{}", first.next_said);
    let made = tap(
        &mut book,
        20,
        BoardAction::CreateLoose {
            job: None,
            answers: [("length", "96"), ("height", "8 1/4"), ("lap", "1 1/4")]
                .map(|(field, text)| Given { field: field.to_owned(), text: text.to_owned() })
                .to_vec(),
        },
    )
    .unwrap();
    let Place::Board { board: loose } = made.place else { panic!("a new board opens") };
    let loose = board(&book, &loose);
    assert_eq!((&*loose.said, &*loose.next_board, &*loose.next_said), ("", "", ""));
}

#[test]
fn a_house_says_how_far_it_is_and_two_pieces_of_work() {
    let (book, job, boards) = first_wall();
    let house: HouseView = shown(&book, "en", Place::House { job: job.clone() });
    assert_eq!((house.boards_up, &*house.progress), (0, &*format!("Up: 0 of {}", boards.len())));
    let Some(NextWork::HangBoard { board, .. }) = &house.then else { panic!("{:?}", house.then) };
    match &house.next {
        NextWork::HangBoard { board: first, .. } => assert_eq!((first, board), (&boards[0], &boards[1])),
        _ => assert_eq!(board, &boards[0]),
    }
    let spanish: HouseView = shown(&book, "es", Place::House { job });
    assert!(spanish.progress.starts_with("Puestas: 0 de ") && spanish.then_said != house.then_said);
}
