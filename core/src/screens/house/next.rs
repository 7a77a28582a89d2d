use crate::screens::ask::{open_question, questions};
use crate::screens::context::Terms;
use crate::screens::kept::Facts;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::steps::Step;
use crate::store::Store;
use crate::views::NextWork;

use super::state::{BoardStands, HoleState, House, WallState};

/// What comes next: everything is measured before the pole is laid out, because one pole serves every wall; then wall by
/// wall, lowest course first, what the next course covers before the course, and the sealant after the last board.
pub(super) fn next(store: &Store, terms: &Terms<'_>, house: &House) -> Kept<NextWork> {
    if let Some(question) = open_question(&questions(store, terms, &house.job.facts)?) {
        return Ok(NextWork::AnswerJob { question: question.clone() });
    }
    if Facts::children(store, house.job.id(), kinds::STOCK)?.is_empty() {
        return Ok(NextWork::AddStock);
    }
    if house.walls.is_empty() {
        return Ok(NextWork::AddWall);
    }
    for state in &house.walls {
        if let Some(question) = &state.question {
            let (wall, name) = (state.wall.id().to_string(), state.wall.name().to_owned());
            return Ok(NextWork::MeasureWall { wall, name, question: question.clone() });
        }
    }
    if !house.laid_out {
        return Ok(NextWork::LayOutPole);
    }
    Ok(house.walls.iter().find_map(|state| on_wall(terms, state)).unwrap_or(NextWork::NothingLeft))
}

fn on_wall(terms: &Terms<'_>, state: &WallState) -> Option<NextWork> {
    let (wall, name) = (state.wall.id().to_string(), state.wall.name().to_owned());
    if state.boards.is_empty() {
        return Some(NextWork::PlanWall { wall, name });
    }
    let board = state.boards.iter().find(|board| board.stands != BoardStands::Fixed);
    let covered = state.holes.iter().filter(|hole| {
        let bottom = hole.penetration.outer().1.from;
        board.is_none_or(|board| bottom < board.y.to)
    });
    for hole in covered {
        if let Some(step) = hole.open_before_boards() {
            return Some(make_tight(terms, hole, step));
        }
    }
    for hole in &state.holes {
        if (board.is_none() || state.boarded(hole))
            && let Some(step) = hole.open_step()
        {
            return Some(make_tight(terms, hole, step));
        }
    }
    board.map(|board| NextWork::HangBoard {
        board: board.id.to_string(),
        wall,
        name,
        course: board.course,
        cut: board.stands == BoardStands::Cut,
    })
}

fn make_tight(terms: &Terms<'_>, hole: &HoleState, step: &Step) -> NextWork {
    NextWork::MakeTight {
        penetration: hole.penetration.id().to_string(),
        name: terms.phrase(&format!("wall-kind-{}", hole.penetration.kind.code()), &[]),
        step: step.code.to_owned(),
        text: terms.phrase(step.text, &[]),
    }
}
