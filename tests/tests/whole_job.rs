//! One house from the tape to the replanning, by the actions that the phone sends: a gable over a stepped base with a
//! window, a course that hangs out of level, a spoiled board and shorter stock. What is planned is checked against the
//! outline, reckoned here: a board's ends lie on the rakes of the gable (elementary geometry), a course covers its whole
//! width less the gaps.
//!
//! A board whose bottom edge is out of level meets the rake where both lie. With the edge at `l` above the base line at the
//! wall's left end and at `m` in the middle of its width `w`, it is at `l + 2 x (m - l) / w` over `x`; the rake, two along
//! for one up, is at `e + x / 2` over the eave `e`. Both are equal at `x = 2 (l - e) / (1 - 4 (m - l) / w)`, and from the
//! right end likewise. By hand for the seventeenth course of this job: the sixteenth hangs at 98 3/16 in left and 98 in right,
//! the eighteenth is level at 112 in; half way up are 105 3/32, on the tape `l = 105 1/8`, in the middle 105 3/64, on the
//! tape `m = 105 1/16`, and 105 in right. Boards keep 1/8 in off the rake, square to it, so that they end where the rake would be if it
//! lay `sqrt(5) / 2` of that lower: `e = 96 - 0.1397542`. With `w = 288`, `x = 18.5295085 / (1 + 1/1152) = 18.513438 in`; the height
//! at the wall's end instead of that at the board's would give 18.5295 in, a 64th too far, and more where the gable narrows.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a check stops at what it did not expect"
)]

use lapwright::book::Book;
use lapwright::handover::job_document;
use lapwright::measure::Length;
use lapwright::screens::{act, view};
use lapwright::views::{
    Action, BoardAction, BoardLine, BoardView, DoneListAction, Given, HouseAction, HouseView, JobsAction,
    MeasureAction, OrderView, Outcome, Place, PoleAction, PoleView, SawListAction, SawListView, StepHow, StepSaid,
    View, WallAction, WallView,
};
use lapwright_tests::{context, taken_in};

const INCH: i64 = Length::NM_PER_INCH;
const SIXTEENTH: i64 = INCH / 16;

/// The wall: 24 ft wide, 8 ft high at both ends, 14 ft at its peak in the middle; its base steps up 10 in at 16 ft.
const WIDTH: i64 = 288 * INCH;
const EAVE: i64 = 96 * INCH;
const PEAK: i64 = 168 * INCH;
const STEP: (i64, i64) = (192 * INCH, 10 * INCH);
/// The gap at trim and rake (the rule's default).
const GAP: i64 = INCH / 8;
/// How much lower the rake would lie that boards end at: two along for one up.
const LOWERED: i64 = (GAP as f64 * 1.118_033_988_75) as i64;

struct Job {
    book: Book,
    calls: u8,
    job: String,
    wall: String,
}

fn given(answers: &[(&str, &str)]) -> Vec<Given> {
    answers.iter().map(|(field, text)| Given { field: (*field).to_owned(), text: (*text).to_owned() }).collect()
}

impl Job {
    fn tap(&mut self, action: Action) -> Outcome {
        self.calls += 1;
        act(&mut self.book, &context(self.calls), &action).unwrap_or_else(|problem| panic!("{action:?}: {problem:?}"))
    }

    fn measured() -> Self {
        let mut job = Self { book: Book::in_memory().unwrap(), calls: 0, job: String::new(), wall: String::new() };
        let action = JobsAction::Create { name: "Sedge End".to_owned(), like: None };
        let Place::House { job: id } = job.tap(Action::JobsKind { action }).place else { panic!("a house") };
        job.job = id;
        let boards = [("board-height", "8 1/4"), ("board-thickness", "5/16"), ("lap", "1 1/4"), ("nail-line", "3/4")];
        for (field, text) in boards {
            let (id, field, text) = (job.job.clone(), field.to_owned(), text.to_owned());
            job.tap(Action::HouseKind { action: HouseAction::Answer { job: id, field, text } });
        }
        job.stock("12'");
        let action = HouseAction::AddWall { job: job.job.clone(), name: "Gable".to_owned() };
        let Place::Measure { wall } = job.tap(Action::HouseKind { action }).place else { panic!("a wall") };
        job.wall = wall;
        let sizes = [
            ("width", "24'"),
            ("left-height", "8'"),
            ("right-height", "8'"),
            ("base", "0"),
            ("first-stud", "0"),
            ("stud-spacing", "16"),
            ("trim-left", "0"),
            ("trim-right", "0"),
            ("peak-from-left", "12'"),
            ("peak-height", "14'"),
        ];
        for (field, text) in sizes {
            let (wall, field, text) = (job.wall.clone(), field.to_owned(), text.to_owned());
            job.tap(Action::MeasureKind { action: MeasureAction::Answer { wall, field, text } });
        }
        job.part("base-step", &[("from-left", "16'"), ("rise", "10")]);
        let window = [("what", "window"), ("from-left", "40"), ("width", "36"), ("from-base", "37"), ("height", "47")];
        job.part("opening", &window);
        let hole = [("what", "vent-hood"), ("width", "4"), ("from-left", "120"), ("from-base", "60")];
        let action = WallAction::AddPenetration { wall: job.wall.clone(), answers: given(&hole) };
        job.tap(Action::WallKind { action });
        let pole = [("from", "0"), ("to", "14'"), ("mode", "fit"), ("reveal-max", "7"), ("reveal-min", "6 1/4")];
        for (field, text) in pole {
            let (job_id, field, text) = (job.job.clone(), field.to_owned(), text.to_owned());
            job.tap(Action::PoleKind { action: PoleAction::Answer { job: job_id, field, text } });
        }
        job.tap(Action::PoleKind { action: PoleAction::LayOut { job: job.job.clone() } });
        job
    }

    fn part(&mut self, kind: &str, answers: &[(&str, &str)]) {
        let action = MeasureAction::AddPart { wall: self.wall.clone(), kind: kind.to_owned(), answers: given(answers) };
        self.tap(Action::MeasureKind { action });
    }

    fn stock(&mut self, length: &str) {
        let action = HouseAction::AddStock { job: self.job.clone(), length: length.to_owned(), count: String::new() };
        self.tap(Action::HouseKind { action });
    }

    fn plan(&mut self) -> WallView {
        let action = WallAction::PlanBoards { wall: self.wall.clone() };
        let View::WallKind { view } = self.tap(Action::WallKind { action }).view else { panic!("wall") };
        view
    }

    fn tick(&mut self, board: &str, steps: &[&str]) {
        for step in steps {
            let said = StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None };
            let action = BoardAction::SignStep { board: board.to_owned(), step: (*step).to_owned(), said };
            self.tap(Action::BoardKind { action });
        }
    }

    fn wall(&self) -> WallView {
        match view(&self.book, &context(0), &Place::Wall { wall: self.wall.clone() }).unwrap() {
            View::WallKind { view } => view,
            other => panic!("{other:?}"),
        }
    }

    fn pole(&self) -> PoleView {
        match view(&self.book, &context(0), &Place::Pole { job: self.job.clone() }).unwrap() {
            View::PoleKind { view } => view,
            other => panic!("{other:?}"),
        }
    }

    fn saw_list(&self) -> SawListView {
        match view(&self.book, &context(0), &Place::SawList { job: self.job.clone() }).unwrap() {
            View::SawListKind { view } => view,
            other => panic!("{other:?}"),
        }
    }

    fn order(&self) -> OrderView {
        match view(&self.book, &context(0), &Place::Order { job: self.job.clone() }).unwrap() {
            View::OrderKind { view } => view,
            other => panic!("{other:?}"),
        }
    }

    fn house(&self) -> HouseView {
        match view(&self.book, &context(0), &Place::House { job: self.job.clone() }).unwrap() {
            View::HouseKind { view } => view,
            other => panic!("{other:?}"),
        }
    }

    fn board(&self, board: &str) -> BoardView {
        match view(&self.book, &context(0), &Place::Board { board: board.to_owned() }).unwrap() {
            View::BoardKind { view } => view,
            other => panic!("{other:?}"),
        }
    }
}

/// A course line: its height at the wall's left end, in the middle and at the right end.
type Line = [i64; 3];

/// Where the boards of a course on this line begin, from the wall's left end, and where they end.
fn ends(line: Line) -> (i64, i64) {
    let from = |end: i64, middle: i64| {
        let eave = EAVE - LOWERED;
        let (end, middle, width) = (i128::from(end - eave), i128::from(middle - eave), i128::from(WIDTH));
        // The peak stands over the middle: the rake runs half the width along for its rise.
        let rise = i128::from(PEAK - EAVE);
        let along = end * width / (2 * rise - 2 * (middle - end));
        (along as i64).max(GAP)
    };
    (from(line[0], line[1]), WIDTH - from(line[2], line[1]))
}

/// The line of a course as a board of it was planned: what is cut keeps the pole's.
fn line_of(pole: &PoleView, board: &BoardLine) -> Line {
    let course = board.course as usize;
    let level = pole.lines[course - 1].height.nm;
    let Some(entry) = pole.as_built.first().filter(|_| board.state == "planned") else { return [level; 3] };
    if entry.course == board.course {
        return [entry.left.nm, entry.middle.nm, entry.right.nm];
    }
    let changed = entry.changed.iter().find(|line| line.course as usize == course);
    changed.map_or([level; 3], |line| [line.left.nm, line.middle.nm, line.right.nm])
}

/// Every course is covered from rake to rake, less gaps at ends and at the window; boards stand end to end.
fn covered(job: &Job, wall: &WallView) {
    let pole = job.pole();
    let courses: std::collections::BTreeSet<i64> = wall.boards.iter().map(|board| board.course).collect();
    // By hand: 168 in in reveals of 6 1/4 to 7 in.
    assert!((24..=26).contains(&courses.len()), "{}", courses.len());
    for course in courses {
        let boards: Vec<&BoardLine> = wall.boards.iter().filter(|board| board.course == course).collect();
        let (first, last) = (boards[0], boards[boards.len() - 1]);
        let near = |a: i64, b: i64| (a - b).abs() <= 5;
        let left = ends(line_of(&pole, first)).0;
        assert!(near(first.at.left, left), "course {course}: {first:?} from {left}");
        // Below the step there is no wall on the right of it.
        let under = last.at.top <= STEP.1;
        let right = if under { STEP.0 - GAP } else { ends(line_of(&pole, last)).1 };
        assert!(near(last.at.right, right), "course {course}: {last:?} to {right}");
        for pair in boards.windows(2) {
            let between = pair[1].at.left - pair[0].at.right;
            let at_window = pair[0].at.right < 40 * INCH + 1 && pair[1].at.left > 76 * INCH - 1;
            assert_eq!(between, if at_window { 36 * INCH + 2 * GAP } else { 0 }, "course {course}: {pair:?}");
        }
        for board in boards {
            let whole = board.at.right - board.at.left;
            assert!(board.length.nm <= whole && whole - board.length.nm < SIXTEENTH, "{board:?}");
        }
    }
}

/// Each board to cut is cut once, from stock that it fits into with the kerfs, and no plan takes less than the bound.
fn cut_from_stock(list: &SawListView, wall: &WallView) {
    let mut cut: Vec<&str> = list.boards.iter().flat_map(|board| &board.pieces).map(|piece| &*piece.board).collect();
    let mut on_wall: Vec<&str> = wall.boards.iter().map(|board| &*board.board).collect();
    cut.sort_unstable();
    on_wall.sort_unstable();
    assert_eq!(cut, on_wall);
    let kerf = INCH / 8;
    for board in &list.boards {
        let taken: i64 = board.pieces.iter().map(|piece| piece.length.nm + kerf).sum();
        assert!(taken - kerf <= board.length.nm, "{board:?}");
    }
    let new = list.boards.iter().filter(|board| !board.offcut).map(|board| board.length.nm).sum::<i64>();
    assert_eq!(list.used.nm, new);
    assert!(list.least.nm <= list.used.nm && list.used.nm <= list.least.nm + 144 * INCH, "{}", list.text);
    let pieces: i64 = wall.boards.iter().map(|board| board.length.nm).sum();
    assert!(list.least.nm >= pieces, "no plan takes less than the pieces");
}

#[test]
fn a_gable_over_a_stepped_base_goes_through_all_of_it() {
    let mut job = Job::measured();
    let first = job.plan();
    covered(&job, &first);
    job.tap(Action::SawListKind { action: SawListAction::Plan { job: job.job.clone() } });
    let first = job.wall();
    covered(&job, &first);
    cut_from_stock(&job.saw_list(), &first);
    // Paint by hand, a window of 36 by 47 in, a step of 96 by 10 in: 288 x 96 + 288 x 72 / 2 - 960 - 1692 = 35364 sq in
    // are 245.6 sq ft, up to the next tenth; starter by hand: 192 in below the step and 96 in on it, 24 ft.
    let order = job.order();
    let line = |code: &str| order.lines.iter().find(|line| line.code == code).unwrap();
    assert!(line("paint").from.contains("245.6"), "{:?}", line("paint"));
    assert_eq!(line("starter").net, "24 ft");
    // The window parts the courses beside it; the vent's block notches boards.
    assert!(first.boards.iter().any(|board| board.at.left > 76 * INCH - 1 && board.at.left < 77 * INCH));
    assert!(
        first.boards.iter().any(|board| board.notched && board.at.left < 120 * INCH && board.at.right > 120 * INCH)
    );

    // The sixteenth course, on the gable, hangs three sixteenths high at the left and right at its right end.
    let up: Vec<BoardLine> = first.boards.iter().filter(|board| board.course == 16).cloned().collect();
    assert!(ends([up[0].at.bottom; 3]).0 > GAP);
    for board in &up {
        job.tick(&board.board, &["board-cut", "board-prime"]);
    }
    // The board that comes after them is another one by then.
    let alone = |board: BoardView| BoardView { next_said: String::new(), ..board };
    let cut: Vec<BoardView> = up.iter().map(|board| alone(job.board(&board.board))).collect();
    let pole = job.pole();
    let line = pole.lines[15].height.nm;
    let text = |nm: i64| format!("{} mm", nm as f64 / 1e6);
    let (left, right) = (text(line + 3 * SIXTEENTH), text(line));
    let answers = given(&[("course", "16"), ("left", &left), ("right", &right)]);
    let said = job.tap(Action::PoleKind { action: PoleAction::SayAsBuilt { wall: job.wall.clone(), answers } });
    let entry = &job.pole().as_built[0];
    assert_eq!((entry.courses, entry.out_of_level.nm), (Some(2), 3 * SIXTEENTH));
    let followed = job.wall();
    let next: Vec<&BoardLine> = followed.boards.iter().filter(|board| board.course == 17).collect();
    // Its ends followed the rakes at their own heights; what is cut did not move.
    let hung = line_of(&job.pole(), next[0]);
    assert_eq!(hung, [105 * INCH + 2 * SIXTEENTH, 105 * INCH + SIXTEENTH, 105 * INCH], "as by hand");
    assert!((next[0].at.left - 18_513_438 * INCH / 1_000_000).abs() <= 13);
    covered(&job, &followed);
    // They were cut for the line as it was planned, which is said of them; else they are as they were.
    let now = up.iter().map(|board| {
        let mut board = alone(job.board(&board.board));
        board.notes.retain(|note| note.code != "cut-no-longer-fits");
        board
    });
    assert_eq!(now.collect::<Vec<_>>(), cut);
    let above = |wall: &WallView| wall.boards.iter().filter(|board| board.course > 17).cloned().collect::<Vec<_>>();
    assert_eq!(above(&followed), above(&first), "level again at the eighteenth");

    // Planning again from there, wall and house, covers the same by the same lines and leaves what is cut.
    let again = job.plan();
    covered(&job, &again);
    let ends = |wall: &WallView, course: i64| {
        let of: Vec<&BoardLine> = wall.boards.iter().filter(|board| board.course == course).collect();
        (of[0].at.left, of[of.len() - 1].at.right)
    };
    for course in 1..=25 {
        assert_eq!(ends(&again, course), ends(&followed, course));
    }
    let stays = |job: &Job, from: usize| {
        for (board, cut) in up.iter().zip(&cut).skip(from) {
            let own = |view: &BoardView| (view.length.clone(), view.line_left.clone(), view.line_right.clone());
            assert_eq!(own(&job.board(&board.board)), own(cut));
            let at = job.wall().boards.into_iter().find(|other| other.board == board.board).map(|other| other.at);
            assert_eq!(at, Some(board.at));
        }
    };
    stays(&job, 0);

    // A window out of level: the sill falls an eighth; the notch under it slopes as the tape says.
    let sill = again.boards.iter().find(|board| {
        board.notched && board.at.left < 40 * INCH && board.at.right > 76 * INCH && board.at.bottom < 37 * INCH
    });
    let sill = sill.unwrap().board.clone();
    let notch = job.board(&sill).notches[0].clone();
    let read = |field: &str| notch.questions.iter().find(|q| q.field == field).unwrap().reading.clone().unwrap().nm;
    for (field, at) in [("bottom-left", read("bottom-left")), ("bottom-right", read("bottom-left") - 2 * SIXTEENTH)] {
        let to = job.board(&sill).notches[0].notch.clone();
        let (board, field, text) = (sill.clone(), field.to_owned(), text(at));
        job.tap(Action::BoardKind { action: BoardAction::AnswerNotch { board, notch: to, field, text } });
    }
    let level = &job.board(&sill).notches[0].face.clone().unwrap().levels[0];
    assert_eq!((level.from.as_str(), level.right.nm - level.left.nm), ("top", 2 * SIXTEENTH), "deeper where it falls");

    // A board of the cut course is spoiled, and the stock comes in ten feet: what is up stays, all is covered again.
    let action = BoardAction::SayItIsSpoiled { board: up[0].board.clone(), left: "30".to_owned() };
    job.tap(Action::BoardKind { action });
    let house = job.house();
    let action = HouseAction::RemovePart { job: job.job.clone(), part: house.stock[0].stock.clone() };
    job.tap(Action::HouseKind { action });
    job.stock("10'");
    let planned = job.plan();
    assert!(planned.notes.iter().any(|note| note.code == "plan-changed"));
    assert!(planned.boards.iter().all(|board| board.state != "planned" || board.length.nm <= 120 * INCH));
    covered(&job, &job.wall());
    stays(&job, 1);
    job.tap(Action::SawListKind { action: SawListAction::Plan { job: job.job.clone() } });
    covered(&job, &job.wall());
    stays(&job, 1);
    let list = job.saw_list();
    assert!(list.boards.iter().all(|board| board.cut || board.offcut || board.length.nm == 120 * INCH));
    cut_from_stock(&list, &job.wall());
    assert!(job.order().lines.iter().any(|line| line.code.starts_with("boards") && line.packs > 0));

    // The document carries all of it, and the entries can be taken back one by one to where they began.
    let document = job_document(&job.book, &context(0), &job.job).unwrap();
    let mut other = Book::in_memory().unwrap();
    let taken = taken_in(&mut other, &context(200), &document);
    let Place::House { job: copy } = taken.place else { panic!("a house") };
    // Who signed is a report in it: sign-offs are made, never taken in.
    let facts = |document: &str| {
        let mut facts: serde_json::Value = serde_json::from_str(document).unwrap();
        facts.as_object_mut().unwrap().remove("report");
        facts
    };
    assert_eq!(facts(&job_document(&other, &context(0), &copy).unwrap()), facts(&document));
    let action = DoneListAction::Undo { job: None, group: said.group };
    job.tap(Action::DoneListKind { action });
    assert!(job.pole().as_built.is_empty());
}
