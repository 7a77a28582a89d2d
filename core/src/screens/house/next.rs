use crate::book::{BoardState, Book, FieldSpec, Record};
use crate::forms::ask::question;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::screens::penetration::{detail_name, detail_title};
use crate::views;
use crate::work::{NextInHouse, WallSite, Work};

/// What comes next, as a view tells it.
pub(super) fn view(book: &Book, terms: &Terms<'_>, work: &Work, next: &NextInHouse<'_>) -> Result<views::NextWork> {
    let ask = |record: &Record, spec: &FieldSpec| question(book, terms, record, spec);
    let named = |wall: &WallSite| (wall.id().to_string(), wall.name().to_owned());
    Ok(match next {
        NextInHouse::AnswerJob(spec) => views::NextWork::AnswerJob { question: ask(work.job()?, spec)? },
        NextInHouse::AddStock => views::NextWork::AddStock,
        NextInHouse::AddWall => views::NextWork::AddWall,
        NextInHouse::MeasureWall(site, spec) => {
            let (wall, name) = named(site);
            views::NextWork::MeasureWall { wall, name, question: ask(&site.record, spec)? }
        }
        NextInHouse::LayOutPole => views::NextWork::LayOutPole,
        NextInHouse::PlanWall(site) => {
            let (wall, name) = named(site);
            views::NextWork::PlanWall { wall, name }
        }
        NextInHouse::MakeTight(penetration, step) => views::NextWork::MakeTight {
            penetration: penetration.id().to_string(),
            name: terms.phrase(&format!("wall-kind-{}", penetration.kind.code()), &[]),
            step: step.code.to_owned(),
            text: terms.phrase(step.text, &[]),
        },
        NextInHouse::MakeDetail(one, step) => views::NextWork::MakeTight {
            penetration: detail_name(&one.detail),
            name: detail_title(terms, &one.detail),
            step: step.code.to_owned(),
            text: terms.phrase(step.text, &[]),
        },
        NextInHouse::HangBoard(site, board) => {
            let (wall, name) = named(site);
            let cut = board.state == BoardState::Cut;
            views::NextWork::HangBoard { board: board.id().to_string(), wall, name, course: board.course, cut }
        }
        NextInHouse::NothingLeft => views::NextWork::NothingLeft,
    })
}
