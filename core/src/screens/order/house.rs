use std::collections::BTreeMap;

use crate::amounts::{Board, CutBoard, Hole, House, RunPieces, Wall};
use crate::measure::Length;
use crate::phrases::key;
use crate::saw;
use crate::screens::context::Terms;
use crate::screens::kept::{CladWall, Facts, Job, Penetration, first};
use crate::screens::planning::{HousePlanner, OnWall};
use crate::screens::trouble::Kept;
use crate::store::Store;
use crate::wall::Span;

/// A house as materials are counted on it: its boards as the saw list of the book has them, or as one planned here.
pub(super) fn house(store: &Store, terms: &Terms<'_>, job: &Job, effort: u64) -> Kept<House> {
    let lines = job.lines(store)?.ok_or_else(|| first(terms, "lines", key("screen-pole")))?;
    let walls = CladWall::of_job(store, terms, job, &lines)?;
    if walls.is_empty() {
        return Err(first(terms, "walls", key("screen-wall")).into());
    }
    let boards: Vec<&Facts> = walls.iter().flat_map(|wall| &wall.boards).collect();
    let listed = !boards.is_empty() && boards.iter().all(|board| board.whole("cut-from").is_some());
    let stays = |board: &&Facts| listed || board.text("state").unwrap_or("planned") != "planned";
    let kept: Vec<&Facts> = boards.into_iter().filter(stays).collect();
    let mut pieces: Vec<OnWall> = kept.iter().filter_map(|board| on_wall(board)).collect();
    let mut cut = from_book(job, store, &kept)?;
    if !listed {
        let mut planner = HousePlanner::buying(store, terms, job.id())?;
        planner.work(effort);
        pieces.extend(planner.on_walls());
        cut.extend(planner.plan().boards.iter().map(planned));
    }
    Ok(House {
        board: Board {
            height: job.board_height(terms)?,
            thickness: job.board_thickness()?,
            lap: job.lap()?,
            nail_line: job.nail_line()?,
        },
        walls: walls.iter().map(|wall| clad(job, wall, &pieces)).collect(),
        cut,
        rules: job.rules.clone(),
    })
}

fn planned(board: &saw::Board) -> CutBoard {
    let (pieces, rest) = (board.pieces.len(), board.left.is_positive());
    CutBoard { length: board.length, offcut: board.offcut, pieces, rest }
}

fn on_wall(board: &Facts) -> Option<OnWall> {
    let x = Span { from: board.length("from")?, to: board.length("to")? };
    Some(OnWall { wall: board.subject.parent?, course: board.whole("course")?, x })
}

/// The boards that the book's pieces are cut from: those of one number from one, any other from one of its own.
fn from_book(job: &Job, store: &Store, pieces: &[&Facts]) -> Kept<Vec<CutBoard>> {
    let stock = job.stock(store)?;
    let mut numbered: BTreeMap<i64, CutBoard> = BTreeMap::new();
    let mut cut = Vec::new();
    let mut taken: BTreeMap<i64, Length> = BTreeMap::new();
    for piece in pieces {
        let length = piece.length("length").unwrap_or(Length::ZERO);
        let least = stock.iter().map(|(stock, _)| *stock).filter(|stock| *stock >= length).min();
        let board = piece.length("stock").or(least).unwrap_or(length);
        let offcut = piece.text("offcut").is_some();
        match piece.whole("cut-from") {
            Some(number) => {
                let entry = numbered.entry(number);
                entry.or_insert(CutBoard { length: board, offcut, pieces: 0, rest: true }).pieces += 1;
                let taken = taken.entry(number).or_insert(Length::ZERO);
                *taken = *taken + length;
            }
            None => cut.push(CutBoard { length: board, offcut, pieces: 1, rest: length < board }),
        }
    }
    for (number, mut board) in numbered {
        board.rest = taken.get(&number).is_none_or(|taken| *taken < board.length);
        cut.push(board);
    }
    Ok(cut)
}

fn clad(job: &Job, wall: &CladWall, pieces: &[OnWall]) -> Wall {
    let runs = wall.runs.iter().map(|run| {
        let on_run = |piece: &&OnWall| {
            let own = piece.wall == wall.wall.id() && piece.course == i64::from(run.course);
            own && run.from() <= piece.x.from && piece.x.to <= run.to()
        };
        RunPieces { run: *run, pieces: pieces.iter().filter(on_run).count().max(1) }
    });
    let trim = |name: &str| wall.wall.facts.length(name).unwrap_or(Length::ZERO).max(Length::ZERO);
    Wall {
        outline: wall.outline.clone(),
        studs: wall.studs.clone(),
        courses: wall.courses.clone(),
        runs: runs.collect(),
        openings: wall.openings.clone(),
        trim_left: trim("trim-left"),
        trim_right: trim("trim-right"),
        holes: wall.penetrations.iter().map(|penetration| hole(job, wall, penetration)).collect(),
    }
}

fn hole(job: &Job, wall: &CladWall, penetration: &Penetration) -> Hole {
    let detail = penetration.detail(job, &wall.courses);
    let (x, y) = penetration.outer();
    Hole {
        shape: penetration.shape,
        centre: penetration.centre,
        x,
        y,
        finish: penetration.finish,
        thickness: penetration.block.map(|block| block.thickness),
        mounting: penetration.mounting,
        head_flashing: detail.has_head_flashing(),
        bottom_open: detail.bottom_open,
    }
}
