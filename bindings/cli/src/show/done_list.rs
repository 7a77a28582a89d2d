use lapwright::views::{DoneLine, DoneListView};

use super::jobs::short;
use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &DoneListView) {
    let title = paper.phrase("screen-done-list", &[]);
    paper.title(&title);
    if let Some(looked_at) = &view.looked_at {
        line(paper, looked_at);
        let depends = paper.phrase("cli-depends", &[("count", view.depends.len().into())]);
        paper.line(&format!("  {depends}"));
        for depending in &view.depends {
            line(paper, depending);
        }
        return;
    }
    for reopened in &view.reopened {
        let args = [("question", reopened.title.as_str().into()), ("answer", reopened.text.as_str().into())];
        let text = paper.phrase("cli-reopened", &args);
        let set = paper.set(Ink::Chalk, &text);
        paper.line(&format!("  {set}"));
    }
    for done in &view.lines {
        line(paper, done);
    }
}

fn line(paper: &mut Paper, done: &DoneLine) {
    let id = paper.set(Ink::Faint, &short(&done.group));
    let undone = if done.undone { paper.phrase("cli-undone", &[]) } else { String::new() };
    let text = format!("  {id}  {} {}  {}  {}  {undone}", done.day, done.time, done.signer, done.text);
    paper.line(text.trim_end());
}
