//! The drawings of the demo house: what the views promise of them holds.

use super::*;
use crate::drawing::{Stroke, unpack};
use crate::handover::{DEMO_HOUSE, take_in_document};

const PHONE: Frame =
    Frame { width_dp: 360.0, height_dp: 800.0, answer_dp: 44.0, label_dp: 18.0, small_dp: 16.0, left_hand: false };

/// The demo house with its pole laid out and its first wall planned.
struct Demo {
    store: Store,
    job: String,
    wall: String,
}

impl Demo {
    fn new() -> Self {
        let mut store = Store::in_memory().unwrap();
        let outcome = take_in_document(&mut store, &context("en", 1), DEMO_HOUSE).unwrap();
        let (Place::House { job }, View::HouseKind { view }) = (outcome.place, outcome.view) else { panic!("a house") };
        let wall = view.walls[0].wall.clone();
        let mut demo = Self { store, job, wall };
        demo.tap(2, Action::PoleKind { action: PoleAction::LayOut { job: demo.job.clone() } });
        demo.tap(3, Action::WallKind { action: WallAction::PlanBoards { wall: demo.wall.clone() } });
        demo
    }

    fn tap(&mut self, n: u8, action: Action) {
        act(&mut self.store, &context("en", n), &action).unwrap();
    }

    fn draw(&self, language: &str, subject: &Subject) -> Drawing {
        drawing(&self.store, &context(language, 0), subject, &PHONE).unwrap()
    }

    fn view(&self, place: &Place) -> View {
        view(&self.store, &context("en", 0), place).unwrap()
    }

    fn wall(&self) -> WallView {
        let View::WallKind { view } = self.view(&Place::Wall { wall: self.wall.clone() }) else { panic!("a wall") };
        view
    }

    fn board(&self, board: &str) -> BoardView {
        let View::BoardKind { view } = self.view(&Place::Board { board: board.to_owned() }) else { panic!("a board") };
        view
    }

    /// A board with a notch.
    fn notched(&self) -> String {
        self.wall().boards.into_iter().find(|board| board.notched).unwrap().board
    }

    fn subjects(&self) -> Vec<Subject> {
        let wall = self.wall();
        let mut subjects =
            vec![Subject::Elevation { wall: wall.wall.clone() }, Subject::PoleStick { job: self.job.clone() }];
        for board in &wall.boards {
            subjects.push(Subject::BoardFace { board: board.board.clone() });
            subjects.push(Subject::BoardBack { board: board.board.clone() });
        }
        for line in &wall.penetrations {
            let penetration = || line.penetration.clone();
            subjects.push(Subject::BlockSplit { penetration: penetration() });
            subjects.push(Subject::LayersFront { penetration: penetration() });
            subjects.push(Subject::LayersSection { penetration: penetration() });
        }
        subjects
    }
}

#[test]
fn every_drawing_of_the_demo_can_be_read_and_is_of_its_view() {
    let demo = Demo::new();
    for subject in demo.subjects() {
        let drawing = demo.draw("es", &subject);
        let strokes = unpack(&drawing.bytes, &drawing.texts).unwrap();
        assert!(strokes.len() > 3 && drawing.height_dp <= PHONE.height_dp && !drawing.spoken.is_empty(), "{subject:?}");
        let drawn = strokes.iter().filter(|stroke| matches!(stroke, Stroke::Text { .. })).count();
        assert!(drawn >= drawing.texts.len(), "{subject:?}");
        // The number of the view is of the same language.
        let revision = match (&subject, demo.draw("en", &subject).revision) {
            (Subject::BoardFace { board } | Subject::BoardBack { board }, english) => {
                assert_eq!(demo.board(board).revision, english);
                english
            }
            (Subject::Elevation { .. }, english) => {
                assert_eq!(demo.wall().revision, english);
                english
            }
            (_, english) => english,
        };
        assert_ne!(revision, 0);
    }
}

/// The revision of a board changes with its marks and with how they are shown, and with nothing else.
#[test]
fn a_boards_revision_changes_when_and_only_when_its_drawing_does() {
    let mut demo = Demo::new();
    let board = demo.notched();
    let face = |demo: &Demo| demo.draw("en", &Subject::BoardFace { board: board.clone() });
    let before = face(&demo);
    // A keyed in draft, a tick and another name of the house are no part of the drawing.
    let job = demo.job.clone();
    demo.tap(10, Action::JobsKind { action: JobsAction::Rename { job, name: "Lot 9".to_owned() } });
    let notch = demo.board(&board).notches[0].notch.clone();
    let keys = ("left".to_owned(), "12".to_owned());
    let (subject, (field, text)) = (notch.clone(), keys);
    demo.tap(11, Action::BoardKind { action: BoardAction::KeepDraft { board: board.clone(), subject, field, text } });
    assert_eq!(face(&demo), before);
    // A reading of the tape is.
    let (field, text) = ("top-left".to_owned(), "3 3/8".to_owned());
    demo.tap(12, Action::BoardKind { action: BoardAction::AnswerNotch { board: board.clone(), notch, field, text } });
    let taped = face(&demo);
    assert_ne!(taped.revision, before.revision);
    assert_ne!(taped.bytes, before.bytes);
    let metric = Context { show: "mm".to_owned(), ..context("en", 0) };
    let shown = drawing(&demo.store, &metric, &Subject::BoardFace { board: board.clone() }, &PHONE).unwrap();
    assert_ne!(shown.revision, taped.revision);
}

/// A wall's revision changes when a board goes up.
#[test]
fn a_walls_revision_changes_with_the_state_of_a_board() {
    let mut demo = Demo::new();
    let before = demo.wall().revision;
    let board = demo.notched();
    let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
    let step = "board-notch".to_owned();
    demo.tap(10, Action::BoardKind { action: BoardAction::SignStep { board, step, said } });
    assert_ne!(demo.wall().revision, before);
}

#[test]
fn a_tap_on_a_wall_leads_to_what_is_there() {
    let demo = Demo::new();
    let drawing = demo.draw("en", &Subject::Elevation { wall: demo.wall.clone() });
    let wall = demo.wall();
    assert_eq!(drawing.targets.len(), wall.boards.len() + wall.penetrations.len());
    for target in &drawing.targets {
        assert!(!target.spoken.is_empty());
        demo.view(&target.place);
    }
}

#[test]
fn an_unknown_subject_is_refused() {
    let demo = Demo::new();
    let subject = Subject::BoardFace { board: "nothing".to_owned() };
    assert_eq!(drawing(&demo.store, &context("en", 0), &subject, &PHONE).unwrap_err().code, "unknown");
}

/// Every length that the guided set-up of a wall asks for has its picture, and so have the readings at a board.
#[test]
fn every_length_of_the_set_up_has_a_picture() {
    let (store, job) = demo_laid_out();
    let View::HouseKind { view: house } = view(&store, &context("en", 0), &Place::House { job }).unwrap() else {
        panic!("house")
    };
    let frame = Frame { width_dp: 344.0, height_dp: 130.0, ..PHONE };
    let mut seen = 0;
    for wall in house.walls {
        let place = Place::Measure { wall: wall.wall };
        let View::MeasureKind { view } = view(&store, &context("en", 0), &place).unwrap() else { panic!("measure") };
        for question in view.questions.iter().chain(view.parts.iter().flat_map(|part| &part.questions)) {
            assert_eq!(question.kind == AnswerKind::LengthKind, !question.picture.is_empty(), "{}", question.title);
            if question.kind == AnswerKind::LengthKind {
                let subject = Subject::TapePlace { picture: question.picture.clone() };
                let drawn = drawing(&store, &context("en", 0), &subject, &frame).unwrap();
                assert!(drawn.spoken.contains(&question.title), "{}", drawn.spoken);
                seen += 1;
            }
        }
    }
    assert!(seen > 20, "{seen}");
    let unknown = Subject::TapePlace { picture: "ask-nothing".to_owned() };
    assert_eq!(drawing(&store, &context("en", 0), &unknown, &frame).unwrap_err().code, "unknown");
}

/// A wall drawn small changes when a board of it goes up, and the other walls do not.
#[test]
fn a_wall_drawn_small_changes_with_its_own_boards_alone() {
    let (mut store, job) = demo_laid_out();
    let house = |store: &Store| {
        let place = Place::House { job: job.clone() };
        let View::HouseKind { view } = view(store, &context("en", 0), &place).unwrap() else { panic!("house") };
        view.walls
    };
    let frame = Frame { width_dp: 300.0, height_dp: 110.0, ..PHONE };
    let before = house(&store);
    let wall = before[0].wall.clone();
    let action = Action::WallKind { action: WallAction::PlanBoards { wall: wall.clone() } };
    act(&mut store, &context("en", 9), &action).unwrap();
    let planned = house(&store);
    assert_ne!(before[0].revision, planned[0].revision);
    assert_eq!(before[1].revision, planned[1].revision);
    for line in &planned {
        let subject = Subject::WallSmall { wall: line.wall.clone() };
        let drawn = drawing(&store, &context("en", 0), &subject, &frame).unwrap();
        assert_eq!(drawn.revision, line.revision);
        assert!(drawn.texts.is_empty() && drawn.height_dp <= 110.0);
    }
}
