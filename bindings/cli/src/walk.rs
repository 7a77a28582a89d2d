//! The walk through the main job on the demo house: the same views and actions as everywhere, in the order in which the
//! house itself says what comes next.

mod ask;
mod board;
mod readings;

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use lapwright::handover::DEMO_HOUSE;
use lapwright::phrases::{Arg, Phrases, key};
use lapwright::screens::remembered;
use lapwright::screens::take_in_document;
use lapwright::views::{
    Action, HouseView, NextWork, PenetrationAction, PenetrationView, Place, PoleAction, SawListAction, StepHow,
    StepLine, StepSaid, View,
};

use crate::book::{Book, COPIES, beside, data_folder};
use crate::fault::Fault;
use crate::options::Options;
use crate::paper::{Ink, Paper};
use crate::show;

/// A walk through the demo house.
pub(crate) struct Walk {
    book: Book,
    phrases: &'static Phrases,
    json: bool,
    job: String,
    /// Whether somebody answers at a terminal.
    asks: bool,
    /// The cautions that were said in this run.
    said: BTreeSet<String>,
    /// The penetration that was shown last.
    shown: String,
}

/// How many boards of the saw list the walk shows.
const FIRST_BOARDS: usize = 3;

/// Whether the walk goes on.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Goes {
    On,
    /// Enough for this run.
    Enough,
}

/// Walks on from where the demo's book is; `anew` puts that book aside first.
pub(crate) fn run(options: &Options, anew: bool) -> Result<(), Fault> {
    let path = match &options.book {
        Some(path) => path.clone(),
        None => data_folder()?.join("demo.lapwright"),
    };
    let aside = if anew { put_aside(&path, options)? } else { None };
    let mut walk = Walk::open(&path, options)?;
    if let Some(aside) = aside {
        walk.say("cli-demo-aside", &[("path", aside.display().to_string().into())])?;
    }
    walk.begin()?;
    walk.finish_boards()?;
    while walk.next()? == Goes::On {}
    if walk.json {
        let view = walk.book.view(&Place::House { job: walk.job.clone() })?;
        let text = serde_json::to_string_pretty(&view).map_err(|error| Fault::other(error.to_string()))?;
        return crate::run::out(&text);
    }
    Ok(())
}

/// Gives the demo's book another name. Opening and closing it first brings everything into the one file.
fn put_aside(path: &Path, options: &Options) -> Result<Option<PathBuf>, Fault> {
    if !path.exists() {
        return Ok(None);
    }
    drop(Book::open_at(path, options)?);
    let name = |n: u32| path.with_extension(format!("{n}.lapwright"));
    let Some(aside) = (1..10_000).map(name).find(|name| !name.exists()) else { return Ok(None) };
    // What lies beside the book goes first: what a device remembers of a book that is gone is a loss to the next one there.
    let with = [".device", ".photos", COPIES].map(|tail| (beside(path, tail), beside(&aside, tail)));
    for (from, to) in with.into_iter().filter(|(from, _)| from.exists()) {
        std::fs::rename(&from, to).map_err(|error| Fault::file(&from, &error))?;
    }
    std::fs::rename(path, &aside).map_err(|error| Fault::file(path, &error))?;
    Ok(Some(aside))
}

impl Walk {
    fn open(path: &Path, options: &Options) -> Result<Self, Fault> {
        let mut book = Book::open_at(path, options)?;
        let phrases = book.phrases()?;
        if options.signer.is_none() && remembered(&book.inner).signer.is_empty() {
            book.sign_as(&phrases.phrase("cli-demo-signer", &[]));
        }
        let json = options.json;
        let asks = !json && ask::somebody();
        Ok(Self { book, phrases, json, job: String::new(), asks, said: BTreeSet::new(), shown: String::new() })
    }

    /// Takes the demo house in where the book is empty, and says where the walk stands.
    fn begin(&mut self) -> Result<(), Fault> {
        let View::JobsKind { view } = self.book.view(&Place::Jobs)? else { return Ok(()) };
        let name = readings::house();
        match view.jobs.iter().find(|job| job.name == name) {
            Some(job) => {
                self.job = job.job.clone();
                self.say("cli-demo-goes-on", &[])?;
            }
            None if view.jobs.is_empty() => {
                let context = self.book.context()?;
                let taken = take_in_document(&mut self.book.inner, &context, DEMO_HOUSE)?;
                if let Place::House { job } = taken.place {
                    self.job = job;
                }
                self.say("cli-demo-begins", &[("path", self.book.path.display().to_string().into())])?;
            }
            None => return Err(Fault::said("first", "book", "cli-demo-other-book", &[])),
        }
        self.say("screen-local-code", &[])?;
        if self.asks {
            self.say("cli-demo-keys", &[])?;
        }
        let house = self.house()?;
        self.print(|paper| {
            paper.gap();
            show::house::walls(paper, &house);
        })
    }

    fn house(&self) -> Result<HouseView, Fault> {
        match self.book.view(&Place::House { job: self.job.clone() })? {
            View::HouseKind { view } => Ok(view),
            _ => Err(Fault::unknown("house", &self.job, &[])),
        }
    }

    /// Does what comes next.
    fn next(&mut self) -> Result<Goes, Fault> {
        let next = self.house()?.next;
        match next {
            NextWork::LayOutPole => self.lay_out(),
            NextWork::PlanWall { .. } => self.plan(),
            NextWork::MakeTight { penetration, step, .. } => self.make_tight(penetration, step),
            NextWork::HangBoard { board, wall, name, .. } => self.hang(&board, &wall, &name),
            NextWork::NothingLeft => {
                self.say("cli-demo-nothing-left", &[])?;
                Ok(Goes::Enough)
            }
            // The demo's document answers every question; somebody took an answer back.
            other => {
                self.print(|paper| {
                    let next = show::house::next(paper, &other);
                    paper.line(&next);
                })?;
                Ok(Goes::Enough)
            }
        }
    }

    fn lay_out(&mut self) -> Result<Goes, Fault> {
        let action = PoleAction::LayOut { job: self.job.clone() };
        if let View::PoleKind { view } = self.book.act(&Action::PoleKind { action })?.view {
            self.print(|paper| {
                show::pole::lines(paper, &view);
                show::pole::marks(paper, &view);
            })?;
        }
        Ok(Goes::On)
    }

    /// Plans the whole house as one, and shows its walls, the saw list against the least possible, and the order.
    fn plan(&mut self) -> Result<Goes, Fault> {
        let action = SawListAction::Plan { job: self.job.clone() };
        let View::SawListKind { view: saw } = self.book.act(&Action::SawListKind { action })?.view else {
            return Ok(Goes::Enough);
        };
        for wall in self.house()?.walls {
            if let View::WallKind { view } = self.book.view(&Place::Wall { wall: wall.wall })? {
                self.print(|paper| {
                    paper.gap();
                    paper.title(&view.name);
                    show::wall::drawing(paper, &view);
                    paper.notes(&view.notes);
                    paper.gap();
                })?;
            }
        }
        self.print(|paper| {
            paper.heading(key("screen-saw-list"));
            show::saw_list::summary(paper, &saw);
            for board in saw.boards.iter().take(FIRST_BOARDS) {
                show::saw_list::line(paper, board);
            }
            let more = saw.boards.len().saturating_sub(FIRST_BOARDS);
            let more = paper.phrase("cli-saw-more", &[("count", more.into())]);
            paper.line(&more);
        })?;
        if let View::OrderKind { view } = self.book.view(&Place::Order { job: self.job.clone() })? {
            self.print(|paper| {
                paper.gap();
                paper.heading(key("screen-order"));
                show::order::lines(paper, &view);
            })?;
        }
        Ok(Goes::On)
    }
}

impl Walk {
    /// Ticks a step of a penetration; its layers and sizes are shown before its first one in this run.
    fn make_tight(&mut self, penetration: String, step: String) -> Result<Goes, Fault> {
        let place = Place::Penetration { penetration: penetration.clone() };
        let View::PenetrationKind { view } = self.book.view(&place)? else { return Ok(Goes::Enough) };
        if self.shown != penetration {
            self.shown.clone_from(&penetration);
            self.show_penetration(&view)?;
            if self.asks && !ask::go_on(&self.phrase("cli-demo-go-on", &[])) {
                return self.leave();
            }
        }
        let said = tick("");
        self.caution(&view.steps, &step)?;
        let action = PenetrationAction::SignStep { penetration, step: step.clone(), said };
        if let View::PenetrationKind { view } = self.book.act(&Action::PenetrationKind { action })?.view {
            self.ticked(&view.steps, &step)?;
        }
        Ok(Goes::On)
    }

    fn show_penetration(&self, view: &PenetrationView) -> Result<(), Fault> {
        let begun = view.steps.iter().any(|step| step.state != lapwright::views::StepState::Open);
        self.print(|paper| {
            paper.gap();
            paper.title(&view.name);
            if !begun {
                show::penetration::layers(paper, view);
                show::penetration::sizes(paper, view);
                paper.gap();
            }
            paper.notes(&view.notes);
        })
    }

    /// Says the cautions of a step, each once a run.
    fn caution(&mut self, steps: &[StepLine], code: &str) -> Result<(), Fault> {
        let cautions = steps.iter().find(|step| step.code == code).map(|step| step.cautions.clone());
        let mut cautions = cautions.unwrap_or_default();
        cautions.retain(|caution| self.said.insert(caution.code.clone()));
        if cautions.is_empty() { Ok(()) } else { self.print(|paper| paper.notes(&cautions)) }
    }

    /// Says that a step is ticked, after the book has it.
    fn ticked(&self, steps: &[StepLine], code: &str) -> Result<(), Fault> {
        let Some(step) = steps.iter().find(|step| step.code == code) else { return Ok(()) };
        self.print(|paper| {
            let measured = step.measured.as_ref().map(|measured| format!("  {}", measured.text)).unwrap_or_default();
            let done = paper.set(Ink::Done, "[✓]");
            paper.line(&format!("  {done} {}{measured}", step.text));
        })
    }

    fn leave(&self) -> Result<Goes, Fault> {
        self.say("cli-demo-left", &[])?;
        Ok(Goes::Enough)
    }

    fn phrase(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.phrases.phrase(key, args)
    }

    fn say(&self, key: &str, args: &[(&str, Arg<'_>)]) -> Result<(), Fault> {
        let text = self.phrase(key, args);
        self.print(|paper| paper.line(&text))
    }

    /// Writes a piece of the walk at once, so that a person sees what is kept when it is kept.
    fn print(&self, write: impl FnOnce(&mut Paper)) -> Result<(), Fault> {
        if self.json {
            return Ok(());
        }
        let mut paper = Paper::new(self.phrases);
        write(&mut paper);
        crate::run::out(paper.into_text().trim_end_matches('\n'))
    }
}

fn tick(measured: &str) -> StepSaid {
    StepSaid { how: StepHow::Tick, note: String::new(), measured: measured.to_owned(), photo: None }
}
