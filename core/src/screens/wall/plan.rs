use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::ask::{Answer, accept, op};
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job, Penetration, Wall, first};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::siding::{Avoid, CourseLine, End, JointRules, PieceError, Plan, Run};
use crate::store::{Change, Id, Store, Value};
use crate::views::{Code, Problem};
use crate::wall::Studs;

use super::follow::planned;

/// The shortest piece beside a joint, in stud bays: it reaches from one stud to the next (common practice, no source).
const LEAST_BAYS: i64 = 1;

/// Plans the boards of a wall: those that are neither cut nor fixed give way, in one answer.
pub(super) fn plan(store: &mut Store, terms: &Terms<'_>, wall: &Wall) -> Kept<Id> {
    let job = Job::of(store, terms, wall.job)?;
    let lines = job.lines(store)?.ok_or_else(|| first(terms, "lines", key("screen-pole")))?;
    let outline = wall.outline(store, terms)?;
    let courses = wall.course_lines(terms, &job, &wall.lines(store, &lines)?, &outline)?;
    let obstacles = wall.obstacles(store, &outline, job.lap()?)?;
    let corners: Vec<_> = outline.points().iter().map(|point| (point.x, point.y)).collect();
    let levels: Vec<CourseLine> = courses.iter().map(|course| course.middle).collect();
    let rules = joint_rules(store, terms, &job, (wall, outline.width()), &levels)?;
    let boards = Facts::children(store, wall.id(), kinds::BOARD)?;
    let (stay, go): (Vec<_>, Vec<_>) =
        boards.iter().partition(|board| board.text("state").unwrap_or("planned") != "planned");
    let whole = courses.iter().flat_map(|course| course.runs(&corners, &obstacles));
    let runs: Vec<Run> = whole.flat_map(|run| bare(run, &stay, &rules)).collect();
    let plan = Plan::from_the_left(&runs, &rules, terms.division).map_err(|error| refused(terms, &runs, &error))?;

    let mut answer = op("boards-planned", Some(job.id()), [wall.name(), &plan.pieces.len().to_string()]);
    for board in go {
        answer = answer.with(Change::Remove { subject: board.id() });
    }
    let mut n = 0;
    for piece in &plan.pieces {
        let Some(course) = courses.iter().find(|course| course.middle.course == piece.course) else { continue };
        let (left, right) = (course.bottom_at(piece.from), course.bottom_at(piece.to));
        let id = terms.fresh(n);
        answer = answer
            .create(id, kinds::BOARD, Some(wall.id()), format!("{:06}-{n:06}", piece.course))
            .set(id, "course", Value::Whole(i64::from(piece.course)))
            .set(id, "from", planned(piece.from))
            .set(id, "to", planned(piece.to))
            .set(id, "length", planned(piece.length))
            .set(id, "bottom", planned(left))
            .set(id, "height", planned(course.middle.height))
            .set(id, "state", Value::Text("planned".to_owned()));
        if left != right {
            answer = answer.set(id, "bottom-right", planned(right));
        }
        // A run of several pieces has joints, which add steps.
        if plan.pieces.iter().filter(|other| other.run == piece.run).count() > 1 {
            answer = answer.set(id, "joint", Value::Text("yes".to_owned()));
        }
        if let Some(run) = runs.get(piece.run) {
            answer = bevelled(answer, id, bevels(run, (piece.from, piece.to), rules.end_gap));
        }
        n += 1;
    }
    if n == 0 && answer.0.changes.is_empty() {
        return Err(Problem::new(Code::First, "wall", terms.phrase(key("wall-nothing-to-plan"), &[])).into());
    }
    Ok(accept(store, terms, answer, &[])?.group)
}

/// How far the top edge of a board ends to the right of its bottom edge, at its left and at its right end: that of the
/// run's end where the board stands there, with its gap, and square elsewhere.
pub(in crate::screens) fn bevels(run: &Run, (from, to): (Length, Length), gap: Length) -> (Length, Length) {
    let at = |stands: bool, end: End| if stands { end.bevel() } else { Length::ZERO };
    (at(from <= run.from() + gap, run.left), at(to >= run.to() - gap, run.right))
}

/// Keeps the bevels of a board's ends; square ends are not kept.
pub(in crate::screens) fn bevelled(mut answer: Answer, board: Id, (left, right): (Length, Length)) -> Answer {
    for (field, bevel) in [("bevel-left", left), ("bevel-right", right)] {
        if bevel != Length::ZERO {
            answer = answer.set(board, field, planned(bevel));
        }
    }
    answer
}

/// What of a run is not covered by boards that are cut or up: they stay, with a joint gap at their ends.
pub(in crate::screens) fn bare(run: Run, stay: &[&Facts], rules: &JointRules) -> Vec<Run> {
    // Each part of a run gets the end gap at its ends; at a board that stays it is the joint gap that is wanted.
    let reach = rules.end_gap - rules.joint_gap;
    let mut kept: Vec<(Length, Length)> = stay
        .iter()
        .filter(|board| board.whole("course") == Some(i64::from(run.course)))
        .filter_map(|board| Some((board.length("from")?, board.length("to")?)))
        .filter(|(from, to)| *from < run.to() && run.from() < *to)
        .collect();
    kept.sort_unstable();
    let mut parts = Vec::new();
    let mut left = run.left;
    for (from, to) in kept {
        parts.push(Run { course: run.course, left, right: End::plumb(from + reach) });
        left = End::plumb(to - reach);
    }
    parts.push(Run { course: run.course, left, right: run.right });
    // A sliver between a board and the trim is the gap itself.
    parts.retain(|part| part.to() - part.from() > rules.end_gap + rules.end_gap + SLIVER);
    parts
}

/// What is narrower than this beside a board that stays is a gap, not bare wall.
const SLIVER: Length = Length::from_inches_64(1, 0);

/// The rules that joints on a wall, with its width, keep to.
pub(in crate::screens) fn joint_rules(
    store: &Store,
    terms: &Terms<'_>,
    job: &Job,
    (wall, width): (&Wall, Length),
    courses: &[CourseLine],
) -> Kept<JointRules> {
    let studs = wall.studs(store, terms)?;
    let spacing = match studs {
        Studs::Spaced { spacing, .. } => spacing,
        Studs::Measured(_) => job.rules.get_length(keys::STUD_SPACING)?,
    };
    let bays = job.rules.get_whole(keys::JOINT_STAGGER_LEAST)?;
    let mut avoid = Vec::new();
    for (_, opening) in wall.openings(store)? {
        // A joint in line with a corner of an opening opens there first.
        for (sill, head) in [(opening.left, opening.head_left), (opening.right, opening.head_right)] {
            let (from, to) = (sill.min(head) - spacing.half(), sill.max(head) + spacing.half());
            avoid.push(Avoid { from, to, courses: Vec::new() });
        }
    }
    for penetration in Penetration::on_wall(store, terms, job, wall.id())? {
        let (x, y) = penetration.outer();
        let leg = job.rules.get_length(keys::LEG_LEAST)?;
        let meets = |course: &&CourseLine| course.bottom < y.to && y.from < course.bottom + course.height;
        let courses = courses.iter().filter(meets).map(|course| course.course).collect::<Vec<_>>();
        if !courses.is_empty() {
            avoid.push(Avoid { from: x.from - leg, to: x.to + leg, courses });
        }
    }
    Ok(JointRules {
        studs: studs.within(Length::ZERO, width, 10_000),
        stock: job.longest_stock(store, terms)?,
        end_gap: job.rules.get_length(keys::GAP_TRIM)?,
        joint_gap: job.rules.get_length(keys::JOINT_GAP_LEAST)?,
        stagger: spacing.checked_mul(bays).unwrap_or(spacing),
        piece_min: spacing.checked_mul(LEAST_BAYS).unwrap_or(spacing),
        avoid,
    })
}

fn refused(terms: &Terms<'_>, runs: &[Run], error: &PieceError) -> Problem {
    match error {
        PieceError::NoJoints { run } => {
            let course = runs.get(*run).map_or(0, |run| i64::from(run.course));
            Problem::new(Code::Infeasible, "studs", terms.phrase(key("wall-no-joints"), &[("course", course.into())]))
        }
        _ => Problem::new(
            Code::Range,
            "stock",
            terms.phrase(key("wall-plan-trouble"), &[("why", error.to_string().into())]),
        ),
    }
}
