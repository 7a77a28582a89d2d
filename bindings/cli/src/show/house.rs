use lapwright::phrases::key;
use lapwright::views::{HouseView, NextWork};

use super::call;
use super::jobs::short;
use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &HouseView) {
    paper.title(&view.name);
    let next = next(paper, &view.next);
    let next = paper.set(Ink::Chalk, &next);
    paper.line(&format!("  → {next}"));
    paper.call(call::of_next(paper, (&view.name, &view.job), &view.next).as_deref());
    if !view.open_to_weather.is_empty() {
        paper.gap();
        paper.heading(key("cli-open-to-weather"));
        for open in &view.open_to_weather {
            let text = paper.set(Ink::Warning, &format!("▲ {}", open.text));
            paper.line(&format!("  {text}"));
        }
    }
    paper.gap();
    walls(paper, view);
    paper.gap();
    paper.heading(key("cli-house-boards"));
    paper.questions(&view.questions);
    for stock in &view.stock {
        let args = [("length", stock.length.text.as_str().into()), ("count", stock.count.unwrap_or(-1).into())];
        let text = paper.phrase("cli-stock", &args);
        paper.line(&format!("  {text}"));
    }
    for size in &view.block_sizes {
        let args = [("width", size.width.text.as_str().into()), ("height", size.height.text.as_str().into())];
        let text = paper.phrase("cli-block-size", &args);
        paper.line(&format!("  {text}"));
    }
    paper.gap();
    paper.block(&view.copied);
}

/// The walls and how far each is.
pub(crate) fn walls(paper: &mut Paper, view: &HouseView) {
    paper.heading(key("cli-house-walls"));
    let width = view.walls.iter().map(|wall| wall.name.chars().count()).max().unwrap_or(0);
    for wall in &view.walls {
        let id = paper.set(Ink::Faint, &short(&wall.wall));
        paper.line(&format!("  {id}  {:width$}  {}", wall.name, wall.said));
    }
}

/// What comes next, as one sentence.
pub(crate) fn next(paper: &Paper, next: &NextWork) -> String {
    match next {
        NextWork::AnswerJob { question } => {
            paper.phrase("cli-next-answer", &[("question", question.title.as_str().into())])
        }
        NextWork::AddStock => paper.phrase("cli-next-stock", &[]),
        NextWork::AddWall => paper.phrase("cli-next-wall", &[]),
        NextWork::MeasureWall { name, question, .. } => {
            let args = [("wall", name.as_str().into()), ("question", question.title.as_str().into())];
            paper.phrase("cli-next-measure", &args)
        }
        NextWork::LayOutPole => paper.phrase("cli-next-pole", &[]),
        NextWork::PlanWall { name, .. } => paper.phrase("cli-next-plan", &[("wall", name.as_str().into())]),
        NextWork::MakeTight { name, text, .. } => {
            paper.phrase("cli-next-tight", &[("what", name.as_str().into()), ("step", text.as_str().into())])
        }
        NextWork::HangBoard { name, course, cut, .. } => {
            let key = if *cut { key("cli-next-fix") } else { key("cli-next-cut") };
            paper.phrase(key, &[("wall", name.as_str().into()), ("course", (*course).into())])
        }
        NextWork::NothingLeft => paper.phrase("cli-next-nothing", &[]),
    }
}
