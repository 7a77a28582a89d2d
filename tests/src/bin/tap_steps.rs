//! A day of taps on the phone, drawn by a number: houses come in and are made, walls are measured, laid out and planned, boards
//! and penetrations are ticked off, answers are taken back, copies are kept. Prints each answer once it is acknowledged.
//! What is refused must have changed nothing; anything else that goes wrong ends the day.

use std::io::Write as _;
use std::path::PathBuf;

use lapwright::book::Book;
use lapwright::handover::DEMO_HOUSE;
use lapwright::screens::{act, keep_copy, take_in_document, view};
use lapwright::views::{
    Action, BackupsAction, BoardAction, Context, DoneListAction, Given, HouseAction, HouseView, JobsAction, JobsView,
    MeasureAction, Outcome, PenetrationAction, Place, PoleAction, Problem, SawListAction, StepHow, StepLine, StepSaid,
    StepState, View, WallAction, WallView,
};
use lapwright_tests::book::{TYPED, entries, now, options};
use lapwright_tests::random::Random;

const TAPS: usize = 10;
type Failed = Box<dyn std::error::Error>;

/// One phone, one day.
struct Day {
    book: Book,
    copies: PathBuf,
    random: Random,
    seed: i64,
    calls: i64,
    /// The last answer of the day that was not taken back.
    last: Option<String>,
}

fn main() -> Result<(), Failed> {
    let mut args = std::env::args_os().skip(1);
    let path: PathBuf = args.next().ok_or("name a book")?.into();
    let seed: Option<i64> = args.next().and_then(|seed| seed.to_str()?.parse().ok());
    let (book, opening) = Book::open(&path, &options(&path))?;
    eprintln!("opened: {opening:?}");
    // Without a number it is a day that no other day on this book is like.
    let seed = match seed {
        Some(seed) => seed,
        None => 1_000_000 + entries(book.store())?.len() as i64,
    };
    let copies = options(&path).backups.unwrap_or_default();
    let mut day = Day { book, copies, random: Random::new(seed.unsigned_abs()), seed, calls: 0, last: None };
    for _ in 0..TAPS {
        day.tap()?;
    }
    // The program is left.
    let end = now(day.now_ms());
    keep_copy(&mut day.book, &day.copies, end)?;
    Ok(())
}

impl Day {
    fn now_ms(&self) -> i64 {
        1_780_000_000_000 + self.seed * 1_000_000 + self.calls * 1_000
    }

    fn context(&mut self) -> Context {
        self.calls += 1;
        let entropy = [self.seed.to_be_bytes(), self.calls.to_be_bytes()].concat();
        Context { now_ms: self.now_ms(), entropy, ..lapwright_tests::context(1) }
    }

    fn act(&mut self, action: Action) -> Result<(), Failed> {
        let context = self.context();
        self.said(|book| act(book, &context, &action))
    }

    /// Does it, and acknowledges what was kept.
    fn said(&mut self, act: impl FnOnce(&mut Book) -> Result<Outcome, Problem>) -> Result<(), Failed> {
        let before = entries(self.book.store())?.len();
        match act(&mut self.book) {
            Ok(outcome) if outcome.group.is_empty() => {}
            Ok(outcome) => {
                let mut out = std::io::stdout().lock();
                writeln!(out, "{}", outcome.group)?;
                out.flush()?;
                self.last = Some(outcome.group);
            }
            Err(problem) if problem.code == "book" => return Err(problem.text.into()),
            Err(problem) => {
                eprintln!("{}: {}", problem.code, problem.text);
                if entries(self.book.store())?.len() != before {
                    return Err("what was refused has changed something".into());
                }
            }
        }
        Ok(())
    }

    fn view(&mut self, place: Place) -> Option<View> {
        let context = self.context();
        view(&self.book, &context, &place).ok()
    }

    fn jobs(&mut self) -> Vec<String> {
        let Some(View::JobsKind { view: JobsView { jobs, .. } }) = self.view(Place::Jobs) else { return Vec::new() };
        jobs.into_iter().map(|job| job.job).collect()
    }

    /// Some wall of some house.
    fn wall(&mut self) -> Option<WallView> {
        let jobs = self.jobs();
        let job = self.some(&jobs)?;
        let View::HouseKind { view: HouseView { walls, .. } } = self.view(Place::House { job })? else { return None };
        let walls: Vec<String> = walls.into_iter().map(|wall| wall.wall).collect();
        let wall = self.some(&walls)?;
        match self.view(Place::Wall { wall })? {
            View::WallKind { view } => Some(view),
            _ => None,
        }
    }

    fn some<T: Clone>(&mut self, all: &[T]) -> Option<T> {
        all.get(self.random.below(all.len())).cloned()
    }

    /// The first house, with boards to tick off.
    fn begin(&mut self) -> Result<(), Failed> {
        self.act(Action::JobsKind { action: JobsAction::OpenDemo })?;
        if let Some(job) = self.jobs().pop() {
            self.act(Action::PoleKind { action: PoleAction::LayOut { job } })?;
        }
        match self.wall() {
            Some(wall) => self.act(Action::WallKind { action: WallAction::PlanBoards { wall: wall.wall } }),
            None => Ok(()),
        }
    }

    /// One tap, or what was typed before it.
    fn tap(&mut self) -> Result<(), Failed> {
        let jobs = self.jobs();
        let Some(job) = self.some(&jobs) else { return self.begin() };
        let which = self.random.below(16);
        let action = match which {
            0 => Action::JobsKind { action: JobsAction::Create { name: format!("House {}", self.calls), like: None } },
            1 => Action::JobsKind { action: JobsAction::Archive { job } },
            2 if jobs.len() < 3 => {
                let context = self.context();
                let mut document: serde_json::Value = serde_json::from_str(DEMO_HOUSE)?;
                document["name"] = format!("House {} {}", self.seed, self.calls).into();
                let text = document.to_string();
                return self.said(|book| take_in_document(book, &context, &text));
            }
            3 => Action::BackupsKind { action: BackupsAction::Keep },
            4 | 5 => match self.last.take() {
                Some(group) => Action::DoneListKind { action: DoneListAction::Undo { job: None, group } },
                None => return Ok(()),
            },
            6 => Action::PoleKind { action: PoleAction::LayOut { job } },
            7 => Action::SawListKind { action: SawListAction::AddOffcut { job, length: "40".to_owned() } },
            8 => {
                let length = format!("{}'", 8 + self.random.below(12));
                Action::HouseKind { action: HouseAction::AddStock { job, length, count: String::new() } }
            }
            _ => match self.wall() {
                Some(wall) => self.on_wall(&wall, which),
                None => return Ok(()),
            },
        };
        self.act(action)
    }

    fn on_wall(&mut self, wall: &WallView, which: usize) -> Action {
        let own = wall.wall.clone();
        match which {
            9 => {
                let (subject, field) = (own.clone(), "name".to_owned());
                let text = format!("{TYPED} {}", self.calls);
                Action::MeasureKind { action: MeasureAction::KeepDraft { wall: own, subject, field, text } }
            }
            10 => {
                let text = format!("Wall {}", self.calls);
                let field = "name".to_owned();
                Action::MeasureKind { action: MeasureAction::Answer { wall: own, field, text } }
            }
            11 => {
                let place = |at: usize| format!("{}", 10 + at);
                let answers = [
                    ("what", "hose-bib".to_owned()),
                    ("width", "1".to_owned()),
                    ("from-left", place(self.random.below(200))),
                    ("from-base", place(self.random.below(60))),
                ];
                let answers = answers.map(|(field, text)| Given { field: field.to_owned(), text }).to_vec();
                Action::WallKind { action: WallAction::AddPenetration { wall: own, answers } }
            }
            12 => Action::WallKind { action: WallAction::PlanBoards { wall: own } },
            13 => {
                let all: Vec<String> = wall.penetrations.iter().map(|own| own.penetration.clone()).collect();
                self.on_penetration(&own, &all)
            }
            _ => {
                let boards: Vec<String> = wall.boards.iter().map(|own| own.board.clone()).collect();
                self.on_board(&own, &boards)
            }
        }
    }

    fn on_penetration(&mut self, wall: &str, all: &[String]) -> Action {
        let plan = Action::WallKind { action: WallAction::PlanBoards { wall: wall.to_owned() } };
        let Some(penetration) = self.some(all) else { return plan };
        let Some(View::PenetrationKind { view }) = self.view(Place::Penetration { penetration: penetration.clone() })
        else {
            return plan;
        };
        match next(&view.steps) {
            Some(step) => {
                Action::PenetrationKind { action: PenetrationAction::SignStep { penetration, step, said: tick() } }
            }
            None => plan,
        }
    }

    fn on_board(&mut self, wall: &str, all: &[String]) -> Action {
        let plan = Action::WallKind { action: WallAction::PlanBoards { wall: wall.to_owned() } };
        let Some(board) = self.some(all) else { return plan };
        let Some(View::BoardKind { view }) = self.view(Place::Board { board: board.clone() }) else { return plan };
        match next(&view.steps) {
            Some(step) => Action::BoardKind { action: BoardAction::SignStep { board, step, said: tick() } },
            None => plan,
        }
    }
}

/// The first step that nothing was said of.
fn next(steps: &[StepLine]) -> Option<String> {
    steps.iter().find(|step| step.state == StepState::Open).map(|step| step.code.clone())
}

fn tick() -> StepSaid {
    StepSaid { how: StepHow::Tick, note: String::new(), measured: String::new(), photo: None }
}
