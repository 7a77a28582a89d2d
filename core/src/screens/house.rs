//! House: how far a house is, what comes next, and what is open to the weather now.

mod next;
mod said;
mod state;
mod weather;

use crate::store::{Change, Store, Value};

use super::ask::{self, accept, keep_draft, op, sort_key};
use super::context::Terms;
use super::kept::{Facts, Job, Wall};
use super::parts::{Question, Reading};
use super::problem::{Code, Problem};
use super::trouble::Kept;
use super::{Done, Place, copied, kinds};

use state::House;

pub use next::NextWork;
pub(super) use state::small;
pub use weather::{OpenToWeather, WeatherKind};

/// One house.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct HouseView {
    /// The house.
    pub job: String,
    /// What the crew calls it.
    pub name: String,
    /// What comes next.
    pub next: NextWork,
    /// What comes next, in words.
    pub next_said: String,
    /// What rain would get into now.
    pub open_to_weather: Vec<OpenToWeather>,
    /// The walls and how far each is.
    pub walls: Vec<WallProgress>,
    /// The questions of the house: its boards and whose rules apply.
    pub questions: Vec<Question>,
    /// The one that is asked now: with keys typed and not accepted, else the first that the work needs.
    pub asked: Option<Question>,
    /// The stock lengths.
    pub stock: Vec<StockLine>,
    /// When the book was last copied from this phone, in milliseconds since 1970-01-01 UTC.
    pub copied_at_ms: Option<i64>,
    /// How old that copy is, in words.
    pub copied: String,
    /// The sizes of mounting blocks that the house has: the advice for a penetration chooses among them.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub block_sizes: Vec<BlockSizeLine>,
    /// Whether it has a loose board, so that another one can be the same.
    #[cfg_attr(feature = "uniffi", uniffi(default = false))]
    pub has_loose_board: bool,
    /// Whether it is out of the way.
    #[cfg_attr(feature = "uniffi", uniffi(default = false))]
    pub archived: bool,
}

/// How far a wall is.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WallProgress {
    /// The wall.
    pub wall: String,
    /// What the crew calls it.
    pub name: String,
    /// Whether every question that the work needs is answered.
    pub measured: bool,
    /// Boards that are planned and not yet cut.
    pub planned: u32,
    /// Boards that are cut and not yet fixed.
    pub cut: u32,
    /// Boards that are fixed.
    pub fixed: u32,
    /// What goes through it.
    pub penetrations: u32,
    /// How many of these have open steps.
    pub penetrations_open: u32,
    /// How far it is, in words.
    pub said: String,
    /// Changes when, and only when, the wall looks different drawn small; zero where it cannot be drawn yet.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub revision: i64,
}

/// A stock length.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StockLine {
    /// Its id.
    pub stock: String,
    /// The length of one board.
    pub length: Reading,
    /// How many there are; absent for as many as are wanted.
    pub count: Option<i64>,
    /// Length and count in words.
    pub said: String,
}

/// A size of mounting block that the house has.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BlockSizeLine {
    /// Its id.
    pub block_size: String,
    /// From left to right.
    pub width: Reading,
    /// From bottom to top.
    pub height: Reading,
    /// Both, as a person reads them.
    pub said: String,
}

/// What can be done with a house.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum HouseAction {
    /// Answers a question of the house.
    Answer {
        /// The house.
        job: String,
        /// The field.
        field: String,
        /// What was typed.
        text: String,
    },
    /// Keeps what is typed so far.
    KeepDraft {
        /// The house.
        job: String,
        /// The field.
        field: String,
        /// What is typed so far.
        text: String,
    },
    /// A further stock length.
    AddStock {
        /// The house.
        job: String,
        /// The length of one board, as typed.
        length: String,
        /// How many there are, as typed; empty for as many as are wanted.
        count: String,
    },
    /// A further wall.
    AddWall {
        /// The house.
        job: String,
        /// What the crew calls it.
        name: String,
    },
    /// Takes a stock length or a wall off the house. It stays in the book, and an undo brings it back.
    RemovePart {
        /// The house.
        job: String,
        /// The stock length, the wall or the size of blocks.
        part: String,
    },
    /// A further size of mounting block.
    AddBlockSize {
        /// The house.
        job: String,
        /// From left to right, as typed.
        width: String,
        /// From bottom to top, as typed.
        height: String,
    },
}

pub(super) fn view(store: &Store, terms: &Terms<'_>, job: &str) -> Kept<HouseView> {
    let house = House::of(store, terms, terms.id("job", job)?)?;
    let copied_at_ms = copied::at_ms(store)?;
    let stock = Facts::children(store, house.job.id(), kinds::STOCK)?;
    let line = |facts: &Facts| {
        let length = facts.reading(terms, "length")?;
        let count = facts.whole("count");
        let said = said::stock(terms, &length.text, count);
        Some(StockLine { stock: facts.id().to_string(), length, count, said })
    };
    let block_sizes = Facts::children(store, house.job.id(), kinds::BLOCK_SIZE)?;
    let size = |facts: &Facts| {
        let (width, height) = (facts.reading(terms, "width")?, facts.reading(terms, "height")?);
        let said = format!("{} × {}", width.text, height.text);
        Some(BlockSizeLine { block_size: facts.id().to_string(), width, height, said })
    };
    let next = next::next(store, terms, &house)?;
    let questions = ask::questions(store, terms, &house.job.facts)?;
    Ok(HouseView {
        job: house.job.id().to_string(),
        name: house.job.name().to_owned(),
        next_said: said::next(terms, &next),
        next,
        open_to_weather: weather::open(store, terms, &house)?,
        walls: house.walls.iter().map(|wall| wall.progress(terms)).collect(),
        asked: ask::asked(&questions),
        questions,
        stock: stock.iter().filter_map(line).collect(),
        copied_at_ms,
        copied: copied::said(terms, copied_at_ms),
        block_sizes: block_sizes.iter().filter_map(size).collect(),
        has_loose_board: super::board::has_loose(store, Some(house.job.id()))?,
        archived: house.job.archived(),
    })
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &HouseAction) -> Kept<Done> {
    let of = |store: &Store, job: &str| Job::of(store, terms, terms.id("job", job)?);
    match action {
        HouseAction::Answer { job, field, text } => {
            let job = of(store, job)?;
            let outcome = ask::answer(store, terms, &job.facts, field, text)?;
            Ok(Done::at(here(&job), outcome.group))
        }
        HouseAction::KeepDraft { job, field, text } => {
            let job = of(store, job)?;
            keep_draft(store, terms, &job.facts, field, text)?;
            Ok(Done::without_answer(here(&job)))
        }
        HouseAction::AddStock { job, length, count } => add_stock(store, terms, &of(store, job)?, length, count),
        HouseAction::AddWall { job, name } => add_wall(store, terms, &of(store, job)?, name),
        HouseAction::AddBlockSize { job, width, height } => {
            let job = of(store, job)?;
            let fields =
                ask::fields(terms, kinds::BLOCK_SIZE, &[("width", width.as_str()), ("height", height)].into())?;
            let id = terms.fresh(0);
            let mut answer = op("block-size-added", Some(job.id()), [width.trim(), height.trim()]);
            answer = answer.create(id, kinds::BLOCK_SIZE, Some(job.id()), sort_key(terms, 0));
            for (field, value) in fields {
                answer = answer.set(id, field, value);
            }
            Ok(Done::at(here(&job), accept(store, terms, answer, &[])?.group))
        }
        HouseAction::RemovePart { job, part } => remove(store, terms, &of(store, job)?, part),
    }
}

fn here(job: &Job) -> Place {
    Place::House { job: job.id().to_string() }
}

fn add_stock(store: &mut Store, terms: &Terms<'_>, job: &Job, length: &str, count: &str) -> Kept<Done> {
    let given = [("length", length), ("count", count)].into();
    let fields = ask::fields(terms, kinds::STOCK, &given)?;
    let id = terms.fresh(0);
    let mut answer = op("stock-added", Some(job.id()), [length.trim(), count.trim()]);
    answer = answer.create(id, kinds::STOCK, Some(job.id()), sort_key(terms, 0));
    for (field, value) in fields {
        answer = answer.set(id, field, value);
    }
    let outcome = accept(store, terms, answer, &[])?;
    Ok(Done::at(here(job), outcome.group))
}

fn add_wall(store: &mut Store, terms: &Terms<'_>, job: &Job, name: &str) -> Kept<Done> {
    let named = ask::value(terms, ask::ask_of(terms, kinds::WALL, "name")?, name)?;
    if named == Value::Absent {
        return Err(Problem::new(Code::Missing, "name", terms.phrase("screen-empty", &[])).into());
    }
    let id = terms.fresh(0);
    let answer = op("wall-added", Some(job.id()), [name.trim()])
        .create(id, kinds::WALL, Some(job.id()), sort_key(terms, 0))
        .set(id, "name", named);
    let outcome = accept(store, terms, answer, &[])?;
    Ok(Done::at(Place::Measure { wall: id.to_string() }, outcome.group))
}

fn remove(store: &mut Store, terms: &Terms<'_>, job: &Job, part: &str) -> Kept<Done> {
    let id = terms.id("part", part)?;
    let mut parts = Facts::children(store, job.id(), kinds::STOCK)?;
    parts.extend(Facts::children(store, job.id(), kinds::BLOCK_SIZE)?);
    let what = match parts.iter().find(|part| part.id() == id) {
        Some(part) => {
            let sizes = ["length", "width", "height"].into_iter().filter_map(|field| part.reading(terms, field));
            sizes.map(|size| size.text).collect::<Vec<_>>().join(" × ")
        }
        None => match Wall::of_job(store, job.id())?.iter().find(|wall| wall.id() == id) {
            Some(wall) => wall.name().to_owned(),
            None => return Err(Problem::new(Code::Unknown, "part", terms.phrase("screen-unknown", &[])).into()),
        },
    };
    let answer = op("removed", Some(job.id()), [&*what]).with(Change::Remove { subject: id });
    let outcome = accept(store, terms, answer, &[])?;
    Ok(Done::at(here(job), outcome.group))
}
