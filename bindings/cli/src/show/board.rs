use lapwright::phrases::key;
use lapwright::views::{BoardView, LevelView, MarksView, NotchView};

use super::jobs::short;
use crate::drawing::{self, Drawing};
use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &BoardView) {
    head(paper, view);
    cuts(paper, view);
    paper.questions(&view.questions);
    for notch in &view.notches {
        paper.gap();
        let id = paper.set(Ink::Faint, &format!("({})", short(&notch.notch)));
        let name = paper.set(Ink::Strong, &notch.name);
        paper.line(&format!("{name}  {id}"));
        paper.questions(&notch.questions);
        answer(paper, view, notch);
    }
    paper.gap();
    paper.heading(key("cli-steps"));
    paper.cautions(&view.steps);
    paper.steps(&view.steps);
}

/// What the board is and how long it is cut.
pub(crate) fn head(paper: &mut Paper, view: &BoardView) {
    let id = paper.set(Ink::Faint, &format!("({})", short(&view.board)));
    let title = paper.set(Ink::Strong, &view.title);
    paper.line(&format!("{title}  {id}"));
    let length = view.length.as_ref().map_or_else(|| "?".to_owned(), |length| paper.reading(length));
    let length = paper.set(Ink::Strong, &length);
    let args = [("length", length.into()), ("height", view.height.text.as_str().into())];
    let size = paper.phrase("cli-board-size", &args);
    paper.line(&format!("  {size}"));
    if let Some(stock) = &view.stock {
        let stock = paper.phrase("cli-board-stock", &[("length", stock.text.as_str().into())]);
        paper.line(&format!("  {stock}"));
    }
    paper.notes(&view.notes);
}

/// How it is cut out of a factory board, drawn where more is cut than its length.
pub(crate) fn cuts(paper: &mut Paper, view: &BoardView) {
    if view.instructions.len() < 2 {
        return;
    }
    for shape in view.shape.iter().chain(&view.further_pieces) {
        paper.gap();
        for line in drawing::whole(shape) {
            paper.row(&format!("  {line}"));
        }
    }
    paper.gap();
    for (n, line) in view.instructions.iter().enumerate() {
        paper.line(&format!("  {}. {}", n + 1, line.text));
    }
}

/// The notch as it is marked and cut: the answer first, then both sides of the board.
pub(crate) fn answer(paper: &mut Paper, view: &BoardView, notch: &NotchView) {
    if !notch.cut_text.is_empty() {
        let text = paper.set(Ink::Strong, &notch.cut_text);
        paper.line(&format!("  {text}"));
    }
    if let (Some(offset), Some(least), Some(most)) = (&notch.offset, &notch.gap_least, &notch.gap_most) {
        let text = |reading: &lapwright::views::Reading| reading.text.clone();
        let args = [("offset", text(offset).into()), ("least", text(least).into()), ("most", text(most).into())];
        let key = if offset.nm == 0 { key("cli-notch-gap-on-block") } else { key("cli-notch-gap") };
        let gap = paper.phrase(key, &args);
        paper.line(&format!("  {gap}"));
    }
    paper.sizes(&notch.legs);
    paper.notes(&notch.notes);
    let sides = [(key("screen-face"), &notch.face, false), (key("screen-behind"), &notch.back, true)];
    for (side, marks, back) in sides {
        if let Some(marks) = marks {
            self::side(paper, view, notch, side, marks, back);
        }
    }
}

/// One side of the board; other notches are drawn where they come into the same region.
fn side(paper: &mut Paper, view: &BoardView, notch: &NotchView, side: &'static str, marks: &MarksView, back: bool) {
    let corners = |marks: &MarksView| marks.corners.iter().map(|corner| (corner.x, corner.y)).collect::<Vec<_>>();
    let others = view.notches.iter().filter(|other| other.notch != notch.notch);
    let others = others.filter_map(|other| if back { other.back.as_ref() } else { other.face.as_ref() });
    let (word, cut) = (paper.phrase(side, &[]), paper.phrase("screen-cut", &[]));
    let end = marks.corners.iter().map(|corner| corner.x).max().unwrap_or(1);
    let drawing = Drawing {
        side: &word,
        cut: &cut,
        length: view.length.as_ref().map_or(end, |length| length.nm),
        height: view.height.nm,
        cut_here: corners(marks),
        cut_beside: others.map(corners).collect(),
        across: marks.uprights.iter().map(|upright| (upright.nm, upright.text.clone())).collect(),
    };
    paper.gap();
    for line in drawing.lines() {
        paper.row(format!("  {line}").trim_end());
    }
    for level in &marks.levels {
        let text = self::level(paper, level);
        let text = paper.set(Ink::Chalk, &text);
        paper.line(&format!("  {text}"));
    }
}

fn level(paper: &Paper, level: &LevelView) -> String {
    let edge = if level.from == "top" { key("cli-level-top") } else { key("cli-level-bottom") };
    if level.left.text == level.right.text {
        let edge = if level.from == "top" { key("cli-level-top-even") } else { key("cli-level-bottom-even") };
        return paper.phrase(edge, &[("at", level.left.text.as_str().into())]);
    }
    let args = [("left", level.left.text.as_str().into()), ("right", level.right.text.as_str().into())];
    paper.phrase(edge, &args)
}
