use lapwright::views::OrderView;

use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &OrderView) {
    let title = paper.phrase("screen-order", &[]);
    paper.title(&format!("{title}: {}", view.name));
    lines(paper, view);
    paper.gap();
    paper.notes(&view.notes);
}

/// What to buy of everything, with waste and what it was computed from.
pub(crate) fn lines(paper: &mut Paper, view: &OrderView) {
    for line in &view.lines {
        let name = paper.set(Ink::Chalk, &line.name);
        paper.line(&format!("  {name}"));
        paper.line(&format!("      {}", line.said));
        paper.block(&format!("      {}", line.from));
    }
}
