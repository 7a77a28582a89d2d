use std::collections::BTreeMap;

use lapwright::phrases::key;
use lapwright::views::{BoardLine, WallView};

use super::jobs::short;
use crate::elevation::{glyph, letter, rows};
use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &WallView) {
    let id = paper.set(Ink::Faint, &format!("({})", short(&view.wall)));
    let name = paper.set(Ink::Strong, &view.name);
    let width = paper.reading(&view.width);
    paper.line(&format!("{name}  {width}  {id}"));
    drawing(paper, view);
    paper.notes(&view.notes);
    if !view.penetrations.is_empty() || !view.openings.is_empty() {
        paper.gap();
    }
    for (n, penetration) in view.penetrations.iter().enumerate() {
        let id = paper.set(Ink::Faint, &format!("({})", short(&penetration.penetration)));
        paper.line(&format!("  {} {}  {id}", letter(n), penetration.name));
    }
    for opening in &view.openings {
        let id = paper.set(Ink::Faint, &format!("({})", short(&opening.opening)));
        paper.line(&format!("  ▓ {}  {id}", opening.name));
    }
    details(paper, view);
    boards(paper, view);
}

/// The details that every house has, by what names them and how far each is.
fn details(paper: &mut Paper, view: &WallView) {
    if view.details.is_empty() {
        return;
    }
    paper.gap();
    paper.heading(key("frame-details"));
    for detail in &view.details {
        let (id, place) = detail.detail.split_once('/').unwrap_or((&detail.detail, ""));
        let id = paper.set(Ink::Faint, &format!("({}/{place})", short(id)));
        paper.line(&format!("  {}: {}  {id}", detail.name, detail.said));
    }
}

/// The wall to scale, with what the characters mean.
pub(crate) fn drawing(paper: &mut Paper, view: &WallView) {
    paper.gap();
    for row in rows(view) {
        paper.row(&row);
    }
    let legend = paper.phrase("cli-wall-legend", &[]);
    let legend = paper.set(Ink::Faint, &legend);
    paper.line(&format!("    {legend}"));
}

/// The boards, a course a line, the highest first as in the drawing.
fn boards(paper: &mut Paper, view: &WallView) {
    if view.boards.is_empty() {
        return;
    }
    let mut courses: BTreeMap<i64, Vec<&BoardLine>> = BTreeMap::new();
    for board in &view.boards {
        courses.entry(board.course).or_default().push(board);
    }
    paper.gap();
    paper.heading(key("cli-wall-boards"));
    for (course, boards) in courses.iter().rev() {
        let one = |board: &&BoardLine| {
            let notched = if board.notched { paper.phrase("cli-notched", &[]) } else { String::new() };
            let id = paper.set(Ink::Faint, &format!("({})", short(&board.board)));
            let text = format!("{} {} {notched}", glyph(&board.state), board.length.text);
            format!("{} {id}", text.trim_end())
        };
        let boards = boards.iter().map(one).collect::<Vec<_>>().join("   ");
        paper.line(&format!("{course:>5}  {boards}"));
    }
}
