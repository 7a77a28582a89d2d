//! House: how far a house is, what comes next, and what is open to the weather now.

mod next;
mod said;
mod state;
mod weather;

use crate::store::{Change, Store, Value};
use crate::views::{BlockSizeLine, Code, HouseAction, HouseView, Place, Problem, StockLine};

use super::ask::{self, accept, keep_draft, op, sort_key};
use super::context::Terms;
use super::kept::{Facts, Job, Wall};
use super::trouble::Kept;
use super::{Done, copied, kinds};

use state::House;

pub(super) use state::small;

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
