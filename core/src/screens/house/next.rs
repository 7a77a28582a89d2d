use crate::book::{BoardState, Book, FieldSpec, Record};
use crate::forms::ask::question;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::screens::penetration::{detail_name, detail_title};
use crate::views;
use crate::work::{NextWork, Site, Work};

/// What comes next, as a view tells it.
pub(super) fn view(book: &Book, terms: &Terms<'_>, work: &Work, next: &NextWork<'_>) -> Result<views::NextWork> {
    let ask = |record: &Record, spec: &FieldSpec| question(book, terms, record, spec);
    let named = |wall: &Site| (wall.id().to_string(), wall.name().to_owned());
    Ok(match next {
        NextWork::AnswerJob(spec) => views::NextWork::AnswerJob { question: ask(work.job()?, spec)? },
        NextWork::AddStock => views::NextWork::AddStock,
        NextWork::AddWall => views::NextWork::AddWall,
        NextWork::MeasureWall(site, spec) => {
            let (wall, name) = named(site);
            views::NextWork::MeasureWall { wall, name, question: ask(&site.record, spec)? }
        }
        NextWork::LayOutPole => views::NextWork::LayOutPole,
        NextWork::PlanWall(site) => {
            let (wall, name) = named(site);
            views::NextWork::PlanWall { wall, name }
        }
        NextWork::MakeTight(penetration, step) => views::NextWork::MakeTight {
            penetration: penetration.id().to_string(),
            name: terms.phrase(&format!("wall-kind-{}", penetration.kind.code()), &[]),
            step: step.code.to_owned(),
            text: terms.phrase(step.text, &[]),
        },
        NextWork::MakeDetail(one, step) => views::NextWork::MakeTight {
            penetration: detail_name(&one.detail),
            name: detail_title(terms, &one.detail),
            step: step.code.to_owned(),
            text: terms.phrase(step.text, &[]),
        },
        NextWork::HangBoard(site, board) => {
            let (wall, name) = named(site);
            let cut = board.state == BoardState::Cut;
            views::NextWork::HangBoard { board: board.id().to_string(), wall, name, course: board.course, cut }
        }
        NextWork::NothingLeft => views::NextWork::NothingLeft,
    })
}
