//! A book in memory with somebody at it: houses come in, answers are given, and everything that follows is looked at.

use lapwright::book::Book;
use lapwright::screens::{act, take_in_document, view};
use lapwright::views::{
    Action, Context, DoneListAction, Outcome, PenetrationAction, Place, PoleAction, Problem, SawListAction, View,
    WallAction,
};
use serde_json::Value;

use crate::context;

/// A book with the calls that were made of it so far.
pub struct Desk {
    book: Book,
    calls: u32,
}

impl Default for Desk {
    fn default() -> Self {
        Self::new()
    }
}

impl Desk {
    /// An empty book.
    ///
    /// # Panics
    /// Where no book can be made.
    #[allow(clippy::panic, reason = "a check that has no book must fail")]
    pub fn new() -> Self {
        let book = Book::in_memory().unwrap_or_else(|error| panic!("{error}"));
        Self { book, calls: 0 }
    }

    fn context(&mut self) -> Context {
        self.calls += 1;
        let entropy = self.calls.to_be_bytes().into();
        Context { now_ms: 1_780_000_000_000 + i64::from(self.calls) * 1_000, entropy, ..context(1) }
    }

    /// What was said.
    ///
    /// # Errors
    /// Why it is not taken.
    pub fn act(&mut self, action: &Action) -> Result<Outcome, Problem> {
        let context = self.context();
        act(&mut self.book, &context, action)
    }

    /// What is shown.
    ///
    /// # Errors
    /// Why there is nothing to be shown.
    pub fn view(&mut self, place: &Place) -> Result<View, Problem> {
        let context = self.context();
        view(&self.book, &context, place)
    }

    /// Takes a document in, and gives the house.
    ///
    /// # Errors
    /// Why it is not taken.
    ///
    /// # Panics
    /// Where another place than a house opens.
    #[allow(clippy::panic, reason = "a check that has no house must fail")]
    pub fn take_in(&mut self, document: &Value) -> Result<String, Problem> {
        let context = self.context();
        match take_in_document(&mut self.book, &context, &document.to_string())?.place {
            Place::House { job } => Ok(job),
            place => panic!("{place:?}"),
        }
    }

    /// Takes an answer back.
    ///
    /// # Errors
    /// Why it is not.
    pub fn undo(&mut self, group: &str) -> Result<Outcome, Problem> {
        self.act(&Action::DoneListKind { action: DoneListAction::Undo { job: None, group: group.to_owned() } })
    }

    /// Says it, and where it is asked about says it again.
    ///
    /// # Errors
    /// Why it is not taken.
    pub fn insist<T>(&mut self, say: impl Fn(&mut Self) -> Result<T, Problem>) -> Result<T, Problem> {
        match say(self) {
            Err(problem) if problem.code == "unlikely" => say(self),
            said => said,
        }
    }

    /// The walls of a house.
    pub fn walls(&mut self, job: &str) -> Vec<String> {
        let Ok(View::HouseKind { view }) = self.view(&Place::House { job: job.to_owned() }) else { return Vec::new() };
        view.walls.into_iter().map(|wall| wall.wall).collect()
    }

    /// Everything that a house that was taken can be asked for: what of it was refused.
    pub fn later_steps(&mut self, job: &str) -> Vec<Problem> {
        let own = || job.to_owned();
        let mut problems = Vec::new();
        let mut tried = |answer: Result<(), Problem>| problems.extend(answer.err());
        tried(self.act(&Action::PoleKind { action: PoleAction::LayOut { job: own() } }).map(|_| ()));
        for place in [Place::House { job: own() }, Place::Pole { job: own() }, Place::Rules { job: own() }] {
            tried(self.view(&place).map(|_| ()));
        }
        for wall in self.walls(job) {
            tried(self.act(&Action::WallKind { action: WallAction::PlanBoards { wall: wall.clone() } }).map(|_| ()));
            let view = self.view(&Place::Wall { wall });
            if let Ok(View::WallKind { view }) = &view {
                for one in &view.penetrations {
                    let penetration = one.penetration.clone();
                    tried(self.view(&Place::Penetration { penetration: penetration.clone() }).map(|_| ()));
                    // Nothing better to be had is no failure.
                    let _ =
                        self.act(&Action::PenetrationKind { action: PenetrationAction::TakeAdvice { penetration } });
                }
                for board in view.boards.iter().take(6) {
                    tried(self.view(&Place::Board { board: board.board.clone() }).map(|_| ()));
                }
            }
            tried(view.map(|_| ()));
        }
        tried(self.act(&Action::SawListKind { action: SawListAction::Plan { job: own() } }).map(|_| ()));
        for place in [Place::SawList { job: own() }, Place::Order { job: own() }] {
            tried(self.view(&place).map(|_| ()));
        }
        problems
    }
}
