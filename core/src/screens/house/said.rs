//! What a house view says in words.

use crate::book::BoardState;
use crate::forms::context::Terms;
use crate::forms::misfits;
use crate::phrases::key;
use crate::screens::revision::small_revision;
use crate::views::{NextWork, WallProgress};
use crate::work;

use super::small;

/// What comes next, short enough for the button that goes there.
pub(super) fn next(terms: &Terms<'_>, next: &NextWork) -> String {
    match next {
        NextWork::AnswerJob { question } => question.title.clone(),
        NextWork::AddStock => terms.phrase(key("house-next-stock"), &[]),
        NextWork::AddWall => terms.phrase(key("house-next-wall"), &[]),
        NextWork::MeasureWall { name, question, .. } => {
            let args = [("wall", name.as_str().into()), ("question", question.title.as_str().into())];
            terms.phrase(key("house-next-measure"), &args)
        }
        NextWork::LayOutPole => terms.phrase(key("house-next-pole"), &[]),
        NextWork::PlanWall { name, .. } => terms.phrase(key("house-next-plan"), &[("wall", name.as_str().into())]),
        NextWork::MakeTight { name, text, .. } => {
            terms.phrase(key("house-next-tight"), &[("what", name.as_str().into()), ("step", text.as_str().into())])
        }
        NextWork::HangBoard { name, course, cut, .. } => {
            let text = if *cut { key("house-next-fix") } else { key("house-next-cut") };
            terms.phrase(text, &[("wall", name.as_str().into()), ("course", (*course).into())])
        }
        NextWork::NothingLeft => terms.phrase(key("house-next-nothing"), &[]),
    }
}

/// A number of boards as it crosses to a shell.
pub(super) fn count(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// How many boards of a house are up; nothing where none is planned.
pub(super) fn boards_up(terms: &Terms<'_>, up: u32, all: u32) -> String {
    let args = [("up", up.into()), ("all", all.into())];
    if all == 0 { String::new() } else { terms.phrase(key("house-boards-up"), &args) }
}

/// How far a wall is.
pub(super) fn progress(terms: &Terms<'_>, wall: &work::ProgressOnWall) -> WallProgress {
    let boards = |state| count(wall.boards.iter().filter(|board| board.state == state).count());
    let progress = WallProgress {
        wall: wall.wall.id().to_string(),
        name: wall.wall.name().to_owned(),
        measured: wall.open_field.is_none(),
        planned: boards(BoardState::Planned),
        cut: boards(BoardState::Cut),
        fixed: boards(BoardState::Fixed),
        penetrations: count(wall.penetrations.len()),
        penetrations_open: count(
            wall.penetrations.iter().filter(|one| !one.open.is_empty() || !wall.is_boarded(one)).count(),
        ),
        said: String::new(),
        // A wall whose sizes do not fit together yet is not drawn.
        revision: small::of_progress(wall).map_or(0, |drawn| small_revision(&drawn)),
    };
    let said = [in_words(terms, &progress)]
        .into_iter()
        .chain(details(terms, wall))
        .chain(misfits::on_house(terms, &wall.misfits));
    WallProgress { said: said.collect::<Vec<_>>().join("; "), ..progress }
}

fn in_words(terms: &Terms<'_>, wall: &WallProgress) -> String {
    if !wall.measured {
        return terms.phrase(key("house-wall-not-measured"), &[]);
    }
    let all = wall.planned + wall.cut + wall.fixed;
    let boards = if all == 0 {
        terms.phrase(key("house-wall-no-boards"), &[])
    } else {
        let args = [("fixed", wall.fixed.into()), ("cut", wall.cut.into()), ("all", all.into())];
        terms.phrase(key("house-wall-boards"), &args)
    };
    if wall.penetrations == 0 {
        return boards;
    }
    let args = [("penetrations", wall.penetrations.into()), ("open", wall.penetrations_open.into())];
    format!("{boards}; {}", terms.phrase(key("house-wall-tight"), &args))
}

/// How many of the details of a wall are done; nothing where they are not known yet.
fn details(terms: &Terms<'_>, wall: &work::ProgressOnWall) -> Option<String> {
    let open = wall.details.iter().filter(|one| !one.open.is_empty()).count();
    let args = [("details", wall.details.len().into()), ("open", open.into())];
    (!wall.details.is_empty()).then(|| terms.phrase(key("house-wall-details"), &args))
}

/// A stock length and how many there are.
pub(super) fn stock(terms: &Terms<'_>, length: &str, count: Option<i64>) -> String {
    match count {
        Some(count) => terms.phrase(key("house-stock"), &[("length", length.into()), ("count", count.into())]),
        None => terms.phrase(key("house-stock-any"), &[("length", length.into())]),
    }
}
