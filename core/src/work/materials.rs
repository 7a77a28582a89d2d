use std::collections::BTreeMap;

use crate::amounts::{Board, CutBoard, Hole, House, RunPieces, Wall};
use crate::book::{BoardState, Field, Record};
use crate::measure::{Division, Length};
use crate::saw;
use crate::siding::CourseLine;
use crate::wall::Span;

use super::house_plan::{CoursePiece, HousePlan};
use super::plan_error::PlanError;
use super::wall_board::state_of;
use super::{Penetration, Site, Stock, Work, WorkError};

/// A house as materials are counted on it: its boards as the saw list of the book has them, or, where some of them are in
/// none, as a plan of so many steps has what is neither cut nor up.
///
/// # Errors
/// [`PlanError`] where the pole is not laid out, or a wall is not measured yet.
pub fn materials(work: &Work, division: Division, effort: u64) -> Result<House, PlanError> {
    work.need_lines()?;
    if work.walls().is_empty() {
        return Err(WorkError::First { field: "walls", title: "screen-wall" }.into());
    }
    let boards: Vec<&Record> =
        work.walls().iter().flat_map(|wall| work.boards(wall.id())).map(|board| &**board).collect();
    let listed = !boards.is_empty() && boards.iter().all(|board| board.whole(Field::CutFrom).is_some());
    let stays = |board: &&Record| listed || state_of(board) != BoardState::Planned;
    let kept: Vec<&Record> = boards.into_iter().filter(stays).collect();
    let mut pieces: Vec<CoursePiece> = kept.iter().filter_map(|board| piece(board)).collect();
    let mut cut = cut_boards(&work.stock(), &kept);
    if !listed {
        let mut plan = HousePlan::buying(work, division)?;
        plan.step(effort);
        pieces.extend(plan.pieces());
        cut.extend(plan.plan().boards.iter().map(planned));
    }
    let walls = work.walls().iter().map(|wall| clad(work, wall, &pieces));
    Ok(House {
        walls: walls.collect::<Result<_, _>>()?,
        board: Board {
            height: work.board_height()?,
            thickness: work.board_thickness()?,
            lap: work.lap()?,
            nail_line: work.nail_line()?,
        },
        cut,
        rules: work.rules().clone(),
    })
}

fn planned(board: &saw::Board) -> CutBoard {
    let (pieces, rest) = (board.pieces.len() + board.strips.len(), board.left.is_positive());
    CutBoard { length: board.length, offcut: board.offcut, pieces, rest }
}

fn piece(board: &Record) -> Option<CoursePiece> {
    let x = Span { from: board.length(Field::From)?, to: board.length(Field::To)? };
    Some(CoursePiece { wall: board.parent?, course: board.whole(Field::Course)?, x })
}

/// The boards that pieces are cut from: those of one number from one, any other from one of its own.
fn cut_boards(stock: &[Stock], pieces: &[&Record]) -> Vec<CutBoard> {
    let mut numbered: BTreeMap<i64, (CutBoard, Length)> = BTreeMap::new();
    let mut cut = Vec::new();
    for piece in pieces {
        let length = piece.length(Field::Length).unwrap_or(Length::ZERO);
        let least = stock.iter().map(|(stock, _)| *stock).filter(|stock| *stock >= length).min();
        let board = piece.length(Field::Stock).or(least).unwrap_or(length);
        let offcut = piece.text(Field::Offcut).is_some();
        match piece.whole(Field::CutFrom) {
            Some(number) => {
                let new = CutBoard { length: board, offcut, pieces: 0, rest: true };
                let (board, taken) = numbered.entry(number).or_insert((new, Length::ZERO));
                board.pieces += 1;
                if piece.yes(Field::Strip) != Some(true) {
                    *taken = *taken + length;
                }
            }
            None => cut.push(CutBoard { length: board, offcut, pieces: 1, rest: length < board }),
        }
    }
    let rest = |(board, taken): (CutBoard, Length)| CutBoard { rest: taken < board.length, ..board };
    cut.extend(numbered.into_values().map(rest));
    cut
}

fn clad(work: &Work, wall: &Site, pieces: &[CoursePiece]) -> Result<Wall, WorkError> {
    let courses: Vec<CourseLine> = wall.courses()?.iter().map(|course| course.middle).collect();
    let runs = wall.runs()?.map(|(_, run)| {
        let on_run = |piece: &&CoursePiece| {
            let own = piece.wall == wall.id() && piece.course == i64::from(run.course);
            own && run.from() <= piece.x.from && piece.x.to <= run.to()
        };
        RunPieces { run: *run, pieces: pieces.iter().filter(on_run).count().max(1) }
    });
    let trim = |field| wall.record.length(field).unwrap_or(Length::ZERO).max(Length::ZERO);
    Ok(Wall {
        outline: wall.outline()?.clone(),
        studs: wall.studs()?.clone(),
        runs: runs.collect(),
        openings: wall.openings.iter().map(|(_, opening)| *opening).collect(),
        trim_left: trim(Field::TrimLeft),
        trim_right: trim(Field::TrimRight),
        holes: wall.penetrations.iter().map(|penetration| hole(work, &courses, penetration)).collect(),
        courses,
    })
}

fn hole(work: &Work, courses: &[CourseLine], penetration: &Penetration) -> Hole {
    let detail = penetration.detail(work, courses);
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
