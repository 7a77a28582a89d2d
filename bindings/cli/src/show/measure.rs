use lapwright::views::MeasureView;

use super::call;
use super::jobs::short;
use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &MeasureView) {
    let id = paper.set(Ink::Faint, &format!("({})", short(&view.wall)));
    let name = paper.set(Ink::Strong, &view.name);
    paper.line(&format!("{name}  {id}"));
    paper.questions(&view.questions);
    for part in &view.parts {
        paper.gap();
        let id = paper.set(Ink::Faint, &format!("({})", short(&part.part)));
        paper.line(&format!("  {}  {id}", part.kind));
        paper.questions(&part.questions);
    }
    paper.notes(&view.notes);
    if let Some(question) = &view.asked {
        paper.gap();
        let args = [("wall", view.name.as_str().into()), ("question", question.title.as_str().into())];
        let next = paper.phrase("cli-next-measure", &args);
        let next = paper.set(Ink::Chalk, &format!("→ {next}"));
        paper.line(&format!("  {next}"));
        paper.call(Some(&call::of_wall(paper, (&view.name, &view.wall), question)));
        paper.block(&question.hint);
    }
}
