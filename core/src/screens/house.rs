//! House: how far a house is, what comes next, and what is open to the weather now.

mod next;
mod said;
mod small;
mod weather;

use crate::book::{BoardState, Book, Field, Kind, Operation, OperationKind, Record};
use crate::store::{Id, Value};
use crate::views::{BlockSizeLine, Code, HouseAction, HouseView, Place, Problem, StockLine};
use crate::work::{self, NextInHouse, Work};

use crate::exchange::copied;
use crate::forms::ask::{self, accept, keep_draft, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::offer;
use crate::forms::penetration::line;
use crate::screens::result::ActionResult;

pub(super) use small::small;

pub(super) fn view(book: &Book, terms: &Terms<'_>, job: &str) -> Result<HouseView> {
    let work = lookup::house(book, terms, job)?;
    let house = work.house();
    let walls = work::ProgressOnWall::of_house(&work);
    let first = NextInHouse::of(&work, &walls)?;
    let then = first.then(&walls).map(|then| next::view(book, terms, &work, &then)).transpose()?;
    let next = next::view(book, terms, &work, &first)?;
    let boards = walls.iter().flat_map(|wall| &wall.boards);
    let up = boards.clone().filter(|board| board.state == BoardState::Fixed).count();
    let (boards, up) = (said::count(boards.count()), said::count(up));
    let mut questions = ask::questions(book, terms, work.job()?)?;
    offer::of_house(terms, &work, &mut questions)?;
    Ok(HouseView {
        job: lookup::job_id(&work),
        name: work.name().to_owned(),
        next_said: said::next(terms, &next),
        next,
        open_to_weather: work::open_to_weather(&work, &walls).iter().map(|open| weather::line(terms, open)).collect(),
        walls: walls.iter().map(|wall| said::progress(terms, wall)).collect(),
        asked: ask::asked(&questions),
        questions,
        stock: house.own(Kind::Stock).iter().filter_map(|stock| stock_line(terms, stock)).collect(),
        copied_at_ms: copied::at_ms(book)?,
        copied: copied::said(book, terms)?,
        block_sizes: house.own(Kind::BlockSize).iter().filter_map(|size| block_size_line(terms, size)).collect(),
        has_loose_board: house.loose_boards().next().is_some(),
        archived: work.job()?.yes(Field::Archived) == Some(true),
        then_said: then.as_ref().map_or_else(String::new, |then| said::next(terms, then)),
        then,
        boards,
        boards_up: up,
        progress: said::boards_up(terms, up, boards),
        penetrations: walls.iter().flat_map(|wall| line::of_wall(terms, wall)).collect(),
    })
}

fn stock_line(terms: &Terms<'_>, stock: &Record) -> Option<StockLine> {
    let length = terms.answer(stock, Field::Length)?;
    let count = stock.whole(Field::Count);
    let said = said::stock(terms, &length.text, count);
    Some(StockLine { stock: stock.id().to_string(), length, count, said })
}

fn block_size_line(terms: &Terms<'_>, size: &Record) -> Option<BlockSizeLine> {
    let (width, height) = (terms.answer(size, Field::Width)?, terms.answer(size, Field::Height)?);
    let said = format!("{} × {}", width.text, height.text);
    Some(BlockSizeLine { block_size: size.id().to_string(), width, height, said })
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &HouseAction) -> Result<ActionResult> {
    match action {
        HouseAction::Answer { job, field, text } => {
            let work = lookup::house(book, terms, job)?;
            let outcome = ask::answer(book, terms, work.job()?, field, text)?;
            Ok(ActionResult::at(here(&work), outcome.group))
        }
        HouseAction::KeepDraft { job, field, text } => {
            let work = lookup::house(book, terms, job)?;
            keep_draft(book, terms, work.job()?, field, text)?;
            Ok(ActionResult::without_answer(here(&work)))
        }
        HouseAction::AddStock { job, length, count } => {
            let given = [(Field::Length, length.as_str()), (Field::Count, count)];
            add(book, terms, job, (Kind::Stock, OperationKind::StockAdded), given)
        }
        HouseAction::AddBlockSize { job, width, height } => {
            let given = [(Field::Width, width.as_str()), (Field::Height, height)];
            add(book, terms, job, (Kind::BlockSize, OperationKind::BlockSizeAdded), given)
        }
        HouseAction::AddWall { job, name } => add_wall(book, terms, job, name),
        HouseAction::RemovePart { job, part } => remove(book, terms, job, part),
    }
}

fn here(work: &Work) -> Place {
    Place::House { job: lookup::job_id(work) }
}

/// A further part of a house with two answers.
fn add(
    book: &mut Book,
    terms: &Terms<'_>,
    job: &str,
    (kind, operation): (Kind, OperationKind),
    given: [(Field, &str); 2],
) -> Result<ActionResult> {
    let work = lookup::house(book, terms, job)?;
    let answers = given.into_iter().map(|(field, text)| (field.code(), text)).collect();
    let fields = ask::fields(terms, crate::book::fields_of(kind), &answers)?;
    let id = terms.fresh(0);
    let operation = Operation::new(operation, work.id(), given.map(|(_, text)| text.trim()))
        .create(id, kind, work.id(), sort_key(terms, 0))
        .set_all(id, fields);
    Ok(ActionResult::at(here(&work), accept(book, terms, operation, &[])?.group))
}

fn add_wall(book: &mut Book, terms: &Terms<'_>, job: &str, name: &str) -> Result<ActionResult> {
    let work = lookup::house(book, terms, job)?;
    let named = ask::value(terms, ask::spec_of(terms, Kind::Wall, Field::Name.code())?, name)?;
    if named == Value::Absent {
        return Err(Problem::new(Code::Missing, Field::Name.code(), terms.phrase("screen-empty", &[])).into());
    }
    let id = terms.fresh(0);
    let operation = Operation::new(OperationKind::WallAdded, work.id(), [name.trim()])
        .create(id, Kind::Wall, work.id(), sort_key(terms, 0))
        .set(id, Field::Name, named);
    let outcome = accept(book, terms, operation, &[])?;
    Ok(ActionResult::at(Place::Measure { wall: id.to_string() }, outcome.group))
}

fn remove(book: &mut Book, terms: &Terms<'_>, job: &str, part: &str) -> Result<ActionResult> {
    let work = lookup::house(book, terms, job)?;
    let id = terms.id("part", part)?;
    let unknown = || Problem::new(Code::Unknown, "part", terms.phrase("screen-unknown", &[]));
    let what = name_of(terms, &work, id).ok_or_else(unknown)?;
    let operation = Operation::new(OperationKind::Removed, work.id(), [&*what]).remove(id);
    let outcome = accept(book, terms, operation, &[])?;
    Ok(ActionResult::at(here(&work), outcome.group))
}

/// What a part of a house is called: a wall by its name, anything else by its sizes.
fn name_of(terms: &Terms<'_>, work: &Work, part: Id) -> Option<String> {
    let mut sized = [Kind::Stock, Kind::BlockSize].into_iter().flat_map(|kind| work.house().own(kind));
    let Some(part) = sized.find(|sized| sized.id() == part) else {
        return Some(work.wall(part).ok()?.name().to_owned());
    };
    let sizes = [Field::Length, Field::Width, Field::Height].into_iter().filter_map(|field| terms.answer(part, field));
    Some(sizes.map(|size| size.text).collect::<Vec<_>>().join(" × "))
}
