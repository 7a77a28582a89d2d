use std::collections::BTreeMap;

use crate::amounts::{BoardSizes, CountedBoard, CountedHouse, CountedWall, CutBoard, Hole, WallPart};
use crate::book::{BoardState, Field, Record};
use crate::measure::{Division, Length};
use crate::rules::keys;
use crate::siding::CourseLine;
use crate::store::Id;
use crate::wall::DetailPlace;

use super::house_plan::HousePlan;
use super::placement::Placement;
use super::plan_error::PlanError;
use super::planned_board::{PlannedBoard, is_of_strip};
use super::{Penetration, StockCount, WallSite, Work, WorkError};

/// A house as materials are counted on it: its boards as the saw list of the book has them, or, where some of them are in
/// none, as a plan of so many steps has what is neither cut nor up.
///
/// # Errors
/// [`PlanError`] where the pole is not laid out, or a wall is not measured yet.
pub fn materials(work: &Work, division: Division, effort: u64) -> Result<CountedHouse, PlanError> {
    work.need_lines()?;
    if work.walls().is_empty() {
        return Err(WorkError::First { field: "walls", title: "screen-wall" }.into());
    }
    let boards: Vec<&Record> =
        work.walls().iter().flat_map(|wall| work.boards(wall.id())).map(|board| &**board).collect();
    let listed = !boards.is_empty() && boards.iter().all(|board| board.whole(Field::CutFrom).is_some());
    let stays = |board: &&&Record| listed || board.board_state() != BoardState::Planned;
    let mut pieces: Vec<CountedPiece> = boards.iter().filter(stays).map(|board| CountedPiece::of(board)).collect();
    if !listed {
        let mut plan = HousePlan::buying(work, division)?;
        plan.step(effort);
        pieces.extend(plan.boards().iter().map(|(wall, board)| CountedPiece::planned(*wall, board)));
    }
    let (cut, from) = cut_boards(&work.stock(), &pieces);
    let pieces: Vec<(CountedPiece, usize)> = pieces.into_iter().zip(from).collect();
    let walls = work.walls().iter().map(|wall| clad(work, wall, &pieces));
    Ok(CountedHouse {
        walls: walls.collect::<Result<_, _>>()?,
        board: BoardSizes {
            height: work.board_height()?,
            thickness: work.board_thickness()?,
            lap: work.lap()?,
            nail_line: work.nail_line()?,
        },
        cut,
        rules: work.rules().clone(),
    })
}

/// A board of the book or of a plan, as materials are counted on it.
struct CountedPiece {
    wall: Option<Id>,
    course: Option<i64>,
    place: Option<Placement>,
    /// The full height of its course.
    height: Option<Length>,
    length: Length,
    /// The number of the board that it is cut from, and that board's length.
    number: Option<i64>,
    stock: Option<Length>,
    offcut: bool,
    /// Whether it comes out of a strip, and so takes nothing of that length.
    strip: bool,
}

impl CountedPiece {
    fn of(board: &Record) -> Self {
        Self {
            wall: board.parent,
            course: board.whole(Field::Course),
            place: Placement::of(board),
            height: board.length(Field::Height),
            length: board.length(Field::Length).unwrap_or(Length::ZERO),
            number: board.whole(Field::CutFrom),
            stock: board.length(Field::Stock),
            offcut: board.cut_from_offcut().is_some(),
            strip: is_of_strip(board),
        }
    }

    fn planned(wall: Id, board: &PlannedBoard) -> Self {
        let PlannedBoard { layout, cut_from, .. } = board;
        Self {
            wall: Some(wall),
            course: Some(i64::from(layout.course)),
            place: Some(layout.place),
            height: Some(layout.height),
            length: layout.length,
            number: cut_from.map(|from| from.number),
            stock: cut_from.map(|from| from.stock),
            offcut: cut_from.is_some_and(|from| from.offcut.is_some()),
            strip: cut_from.is_some_and(|from| from.strip),
        }
    }
}

/// The boards that pieces are cut from, those of one number from one, any other from one of its own; and the place of each
/// piece's board among them.
fn cut_boards(stock: &[StockCount], pieces: &[CountedPiece]) -> (Vec<CutBoard>, Vec<usize>) {
    let mut numbered: BTreeMap<i64, usize> = BTreeMap::new();
    let mut cut: Vec<(CutBoard, Length)> = Vec::new();
    let mut from = Vec::new();
    for piece in pieces {
        let least = stock.iter().map(|(stock, _)| *stock).filter(|stock| *stock >= piece.length).min();
        let length = piece.stock.or(least).unwrap_or(piece.length);
        let known = piece.number.and_then(|number| numbered.get(&number).copied());
        let at = known.unwrap_or(cut.len());
        if known.is_none() {
            cut.push((CutBoard { length, offcut: piece.offcut, pieces: 0, rest: true }, Length::ZERO));
            numbered.extend(piece.number.map(|number| (number, at)));
        }
        if let Some((board, taken)) = cut.get_mut(at) {
            board.pieces += 1;
            *taken = if piece.strip { *taken } else { *taken + piece.length };
        }
        from.push(at);
    }
    let rest = |(board, taken): (CutBoard, Length)| CutBoard { rest: taken < board.length, ..board };
    (cut.into_iter().map(rest).collect(), from)
}

fn clad(work: &Work, wall: &WallSite, pieces: &[(CountedPiece, usize)]) -> Result<CountedWall, WorkError> {
    let courses: Vec<CourseLine> = wall.courses()?.iter().map(|course| course.middle).collect();
    let trim = |field| wall.record.length(field).unwrap_or(Length::ZERO).max(Length::ZERO);
    Ok(CountedWall {
        outline: wall.outline()?.clone(),
        studs: wall.studs()?.clone(),
        boards: boards(wall, pieces, work.rules().get_length(keys::JOINT_GAP_LEAST)?)?,
        openings: wall.openings.iter().map(|(_, opening)| *opening).collect(),
        trim_left: trim(Field::TrimLeft),
        trim_right: trim(Field::TrimRight),
        holes: wall.penetrations.iter().map(|penetration| hole(work, &courses, penetration)).collect(),
        parts: parts(work, wall)?,
        courses,
    })
}

/// The boards of a wall in their shapes, course by course and from left to right.
fn boards(
    wall: &WallSite,
    pieces: &[(CountedPiece, usize)],
    joint_gap: Length,
) -> Result<Vec<CountedBoard>, WorkError> {
    let own = pieces.iter().filter(|(piece, _)| piece.wall == Some(wall.id()));
    let mut placed: Vec<(i64, Placement, Length, usize)> =
        own.filter_map(|(piece, from)| Some((piece.course?, piece.place?, piece.height?, *from))).collect();
    placed.sort_unstable();
    let meets = |left: Option<&(i64, Placement, Length, usize)>, right: Option<&(i64, Placement, Length, usize)>| {
        let (Some((course, left, ..)), Some((other, right, ..))) = (left, right) else { return false };
        course == other && right.from - left.to == joint_gap
    };
    let mut boards = Vec::new();
    for (at, own) in placed.iter().enumerate() {
        let (course, place, height, cut_from) = *own;
        let before = at.checked_sub(1).and_then(|before| placed.get(before));
        let (left, right) = (meets(before, Some(own)), meets(Some(own), placed.get(at + 1)));
        let shapes = wall.board_shapes(Some(course), place, height)?;
        let last = shapes.len().saturating_sub(1);
        for (nth, shape) in shapes.iter().enumerate() {
            boards.push(CountedBoard {
                course: u32::try_from(course).unwrap_or(u32::MAX),
                shape: shape.clone(),
                joints: [left && nth == 0, right && nth == last],
                cut_from,
            });
        }
    }
    Ok(boards)
}

/// What is ordered for the details of a wall.
fn parts(work: &Work, wall: &WallSite) -> Result<Vec<WallPart>, WorkError> {
    let each = work.rules().get_length(keys::STEP_FLASHING_EACH)?;
    let mut parts = Vec::new();
    for detail in wall.details(work)? {
        match detail.place() {
            DetailPlace::RoofSide => parts.push(WallPart::StepFlashings(detail.detail.step_flashings(each))),
            DetailPlace::RoofHead | DetailPlace::Ledger | DetailPlace::Ledge => {
                parts.push(WallPart::Flashing(detail.detail.width()));
            }
            DetailPlace::Furring => {
                let outline = wall.outline()?;
                let studs = wall.studs()?.within(Length::ZERO, outline.width(), STUDS).len();
                let strip = WallPart::Furring(outline.top() - outline.bottom());
                parts.extend(std::iter::repeat_n(strip, studs));
            }
            _ => {}
        }
    }
    Ok(parts)
}

/// The most furring strips that are counted on a wall.
const STUDS: usize = 10_000;

fn hole(work: &Work, courses: &[CourseLine], penetration: &Penetration) -> Hole {
    let detail = penetration.detail(work, courses);
    let (x, y) = penetration.outer();
    Hole {
        kind: penetration.kind,
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
