use crate::measure::{Division, Length, Rounding};
use crate::rules::keys;
use crate::screens::ask::Answer;
use crate::screens::context::Terms;
use crate::screens::kept::{Course, Facts, Job, Wall};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::siding::{Run, WallLine};
use crate::store::{Change, Store, Value};

use super::plan::bevels;

/// Lets the planned boards of a wall follow its course lines from where they were to where they are now: their bottom
/// edges, and their ends where a rake moves them. What is cut or up stays; a course that is no more loses its boards.
pub(in crate::screens) fn follow(
    mut answer: Answer,
    store: &Store,
    terms: &Terms<'_>,
    (job, wall): (&Job, &Wall),
    (before, after): (&[WallLine], &[WallLine]),
) -> Kept<Answer> {
    // A wall that is not measured yet has no boards.
    let Ok(outline) = wall.outline(store, terms) else { return Ok(answer) };
    let obstacles = wall.obstacles(store, &outline, job.lap()?)?;
    let corners: Vec<_> = outline.points().iter().map(|point| (point.x, point.y)).collect();
    let courses = |lines| wall.course_lines(terms, job, lines, &outline);
    let (before, after) = (courses(before)?, courses(after)?);
    let gap = job.rules.get_length(keys::GAP_TRIM)?;
    for board in Facts::children(store, wall.id(), kinds::BOARD)? {
        if board.text("state").unwrap_or("planned") != "planned" {
            continue;
        }
        let of = |courses: &[Course]| {
            courses.iter().position(|course| board.whole("course") == Some(i64::from(course.middle.course)))
        };
        let (Some(from), Some(to)) = (board.length("from"), board.length("to")) else { continue };
        let Some(now) = of(&after).and_then(|at| after.get(at)) else {
            answer = answer.with(Change::Remove { subject: board.id() });
            continue;
        };
        let runs = |course: &Course| course.runs(&corners, &obstacles);
        let was = of(&before).and_then(|at| before.get(at)).map(runs).unwrap_or_default();
        let ends = moved((from, to), &was, &runs(now), gap);
        for (field, old, new) in [("from", from, ends.0), ("to", to, ends.1)] {
            if old != new {
                answer = answer.set(board.id(), field, planned(new));
            }
        }
        if ends != (from, to) {
            answer = answer.set(board.id(), "length", planned(cut(ends, terms.division)));
        }
        answer = set_bevels(answer, &board, &runs(now), ends, gap);
        answer = set_on_line(answer, &board, now, ends);
    }
    Ok(answer)
}

/// The bevels of a board's ends on the runs as they are now.
fn set_bevels(mut answer: Answer, board: &Facts, runs: &[Run], (from, to): (Length, Length), gap: Length) -> Answer {
    let Some(run) = runs.iter().find(|run| run.from() <= from && to <= run.to()) else { return answer };
    let (left, right) = bevels(run, (from, to), gap);
    for (field, bevel) in [("bevel-left", left), ("bevel-right", right)] {
        let bevel = (bevel != Length::ZERO).then_some(bevel);
        if board.length(field) != bevel {
            answer = answer.set(board.id(), field, bevel.map_or(Value::Absent, planned));
        }
    }
    answer
}

/// Puts a board on its course line: its bottom edge at both ends, and its height.
fn set_on_line(mut answer: Answer, board: &Facts, course: &Course, (from, to): (Length, Length)) -> Answer {
    let (left, right) = (course.bottom_at(from), course.bottom_at(to));
    let right = (right != left).then_some(right);
    if board.length("bottom") != Some(left) {
        answer = answer.set(board.id(), "bottom", planned(left));
    }
    if board.length("bottom-right") != right {
        answer = answer.set(board.id(), "bottom-right", right.map_or(Value::Absent, planned));
    }
    if board.length("height") != Some(course.middle.height) {
        answer = answer.set(board.id(), "height", planned(course.middle.height));
    }
    answer
}

/// A board's ends on the runs as they are now: an end that stood at its run's end with the gap stays there.
fn moved((from, to): (Length, Length), was: &[Run], now: &[Run], gap: Length) -> (Length, Length) {
    let at = was.iter().position(|run| run.from() <= from && to <= run.to()).filter(|_| was.len() == now.len());
    let Some((was, now)) = at.and_then(|at| was.get(at).zip(now.get(at))) else { return (from, to) };
    let left = if from == was.from() + gap { now.from() + gap } else { from };
    let right = if to == was.to() - gap { now.to() - gap } else { to };
    if left < right { (left, right) } else { (from, to) }
}

fn cut((from, to): (Length, Length), division: Division) -> Length {
    division.round(to - from, Rounding::Down)
}

/// A length that a plan wrote and nobody typed.
pub(in crate::screens) fn planned(length: Length) -> Value {
    Value::Length { length, typed: String::new(), unit: "mm".to_owned() }
}
