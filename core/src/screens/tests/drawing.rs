//! The drawings of the demo house: what the views promise of them holds.

use super::*;
use crate::drawing::{Stroke, unpack};

const PHONE: Frame =
    Frame { width_dp: 360.0, height_dp: 800.0, answer_dp: 44.0, label_dp: 18.0, small_dp: 16.0, left_hand: false };

/// The demo house with its pole laid out and its first wall planned.
struct Demo {
    book: Book,
    job: String,
    wall: String,
}

impl Demo {
    fn new() -> Self {
        let (book, job) = demo_laid_out();
        let house: HouseView = shown(&book, "en", Place::House { job: job.clone() });
        let mut demo = Self { book, job, wall: house.walls[0].wall.clone() };
        demo.tap(3, WallAction::PlanBoards { wall: demo.wall.clone() });
        demo
    }

    fn tap(&mut self, n: u8, action: impl Into<Action>) {
        tap(&mut self.book, n, action).unwrap();
    }

    fn draw(&self, language: &str, subject: &Subject) -> Drawing {
        drawing(&self.book, &context(language, 0), subject, &PHONE).unwrap()
    }

    fn wall(&self) -> WallView {
        shown(&self.book, "en", Place::Wall { wall: self.wall.clone() })
    }

    fn board(&self, board: &str) -> BoardView {
        shown(&self.book, "en", Place::Board { board: board.to_owned() })
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
            subjects.push(Subject::LayersFront { penetration: penetration(), layer: String::new() });
            subjects.push(Subject::LayersSection { penetration: penetration(), layer: "patch".to_owned() });
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
    demo.tap(10, JobsAction::Rename { job, name: "Lot 9".to_owned() });
    let notch = demo.board(&board).notches[0].notch.clone();
    let keys = ("left".to_owned(), "12".to_owned());
    let (subject, (field, text)) = (notch.clone(), keys);
    demo.tap(11, BoardAction::KeepDraft { board: board.clone(), subject, field, text });
    assert_eq!(face(&demo), before);
    // A reading of the tape is.
    let (field, text) = ("top-left".to_owned(), "3 3/8".to_owned());
    insist(&mut demo.book, 12, BoardAction::AnswerNotch { board: board.clone(), notch, field, text });
    let taped = face(&demo);
    assert_ne!(taped.revision, before.revision);
    assert_ne!(taped.bytes, before.bytes);
    let metric = Context { show: "mm".to_owned(), ..context("en", 0) };
    let shown = drawing(&demo.book, &metric, &Subject::BoardFace { board: board.clone() }, &PHONE).unwrap();
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
    demo.tap(10, BoardAction::SignStep { board, step, said });
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
        view(&demo.book, &context("en", 0), &target.place).unwrap();
    }
}

#[test]
fn an_unknown_subject_is_refused() {
    let demo = Demo::new();
    let subject = Subject::BoardFace { board: "nothing".to_owned() };
    assert_eq!(drawing(&demo.book, &context("en", 0), &subject, &PHONE).unwrap_err().code, "unknown");
}

/// Every length that the guided set-up of a wall asks for has its picture, and so have the readings at a board.
#[test]
fn every_length_of_the_set_up_has_a_picture() {
    let (book, job) = demo_laid_out();
    let house: HouseView = shown(&book, "en", Place::House { job });
    let frame = Frame { width_dp: 344.0, height_dp: 130.0, ..PHONE };
    let mut seen = 0;
    for wall in house.walls {
        let view: MeasureView = shown(&book, "en", Place::Measure { wall: wall.wall });
        for question in view.questions.iter().chain(view.parts.iter().flat_map(|part| &part.questions)) {
            assert_eq!(question.kind == AnswerKind::LengthKind, !question.picture.is_empty(), "{}", question.title);
            if question.kind == AnswerKind::LengthKind {
                let subject = Subject::TapePlace { picture: question.picture.clone() };
                let drawn = drawing(&book, &context("en", 0), &subject, &frame).unwrap();
                assert!(drawn.spoken.contains(&question.title), "{}", drawn.spoken);
                seen += 1;
            }
        }
    }
    assert!(seen > 20, "{seen}");
    let unknown = Subject::TapePlace { picture: "ask-nothing".to_owned() };
    assert_eq!(drawing(&book, &context("en", 0), &unknown, &frame).unwrap_err().code, "unknown");
}

/// A wall drawn small changes when a board of it goes up, and the other walls do not.
#[test]
fn a_wall_drawn_small_changes_with_its_own_boards_alone() {
    let (mut book, job) = demo_laid_out();
    let walls = |book: &Book| shown::<HouseView>(book, "en", Place::House { job: job.clone() }).walls;
    let frame = Frame { width_dp: 300.0, height_dp: 110.0, ..PHONE };
    let before = walls(&book);
    let wall = before[0].wall.clone();
    tap(&mut book, 9, WallAction::PlanBoards { wall }).unwrap();
    let planned = walls(&book);
    assert_ne!(before[0].revision, planned[0].revision);
    assert_eq!(before[1].revision, planned[1].revision);
    for line in &planned {
        let subject = Subject::WallSmall { wall: line.wall.clone() };
        let drawn = drawing(&book, &context("en", 0), &subject, &frame).unwrap();
        assert_eq!(drawn.revision, line.revision);
        assert!(drawn.texts.is_empty() && drawn.height_dp <= 110.0);
    }
}
