use crate::book::{BoardState, Field, Operation};
use crate::measure::{Division, Length, Rounding};
use crate::rules::keys;
use crate::siding::{Run, WallLine};

use super::error::Result;
use super::planned_board::{BoardLayout, bevels};
use super::wall_site::course_lines;
use super::{Course, WallSite, Work};

/// The answer with the planned boards of a wall that follow its course lines from where they were to where they are now:
/// their bottom edges, and their ends where a rake moves them. What is cut or up stays; a course that is no more loses
/// its boards.
///
/// # Errors
/// [`WorkError`](super::WorkError) where the wall's base or the boards' sizes are not known.
pub fn follow(
    mut operation: Operation,
    (work, wall): (&Work, &WallSite),
    (before, after): (&[WallLine], &[WallLine]),
    division: Division,
) -> Result<Operation> {
    // A wall that is not measured yet has no boards.
    let Ok(outline) = wall.outline() else { return Ok(operation) };
    let shapes = wall.shapes()?;
    let courses = |lines| course_lines(work, &wall.record, lines, outline);
    let (before, after) = (courses(before)?, courses(after)?);
    let (runs_before, runs_after) = (shapes.runs(&before)?, shapes.runs(&after)?);
    let gap = work.rules().get_length(keys::GAP_TRIM)?;
    for board in work.boards(wall.id()).iter().filter(|board| board.board_state() == BoardState::Planned) {
        let of = |courses: &[Course]| {
            let own = |course: &Course| board.whole(Field::Course) == Some(i64::from(course.middle.course));
            courses.iter().position(own)
        };
        let (Some(from), Some(to)) = (board.length(Field::From), board.length(Field::To)) else { continue };
        let Some((course, now)) = of(&after).and_then(|at| after.get(at).zip(runs_after.get(at))) else {
            operation = operation.remove(board.id());
            continue;
        };
        let was = of(&before).and_then(|at| runs_before.get(at)).map_or(&[][..], Vec::as_slice);
        let ends = moved((from, to), was, now, gap);
        let length = board.length(Field::Length).filter(|_| ends == (from, to));
        let length = length.unwrap_or_else(|| division.round(ends.1 - ends.0, Rounding::Down));
        let bevels = match run_of(now, ends) {
            Some(run) => bevels(run, ends, gap),
            None => {
                let kept = |field| board.length(field).unwrap_or_default();
                (kept(Field::BevelLeft), kept(Field::BevelRight))
            }
        };
        let layout = BoardLayout::on(course, ends, length, bevels);
        operation = operation.set_all(board.id(), layout.changes(board));
    }
    Ok(operation)
}

/// A board's ends on the runs as they are now: an end that stood at its run's end with the gap stays there.
fn moved((from, to): (Length, Length), was: &[Run], now: &[Run], gap: Length) -> (Length, Length) {
    let at = was.iter().position(|run| holds(run, (from, to))).filter(|_| was.len() == now.len());
    let Some((was, now)) = at.and_then(|at| was.get(at).zip(now.get(at))) else { return (from, to) };
    let left = if from == was.from() + gap { now.from() + gap } else { from };
    let right = if to == was.to() - gap { now.to() - gap } else { to };
    if left < right { (left, right) } else { (from, to) }
}

fn run_of(runs: &[Run], ends: (Length, Length)) -> Option<&Run> {
    runs.iter().find(|run| holds(run, ends))
}

fn holds(run: &Run, (from, to): (Length, Length)) -> bool {
    run.from() <= from && to <= run.to()
}
