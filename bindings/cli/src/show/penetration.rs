use lapwright::phrases::key;
use lapwright::views::PenetrationView;

use super::jobs::short;
use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &PenetrationView) {
    let id = paper.set(Ink::Faint, &format!("({})", short(&view.penetration)));
    let title = paper.set(Ink::Strong, &view.name);
    paper.line(&format!("{title}  {id}"));
    paper.questions(&view.questions);
    paper.notes(&view.notes);
    layers(paper, view);
    shedding(paper, view);
    sizes(paper, view);
    paper.gap();
    paper.heading(key("cli-steps"));
    paper.cautions(&view.steps);
    paper.steps(&view.steps);
}

/// The layers, counted from the wall outward.
pub(crate) fn layers(paper: &mut Paper, view: &PenetrationView) {
    paper.gap();
    paper.heading(key("cli-layers"));
    for (at, layer) in view.layers.iter().enumerate() {
        paper.line(&format!("  {} {}", at + 1, layer.text));
    }
}

/// Whether the layers shed water, where they can be told.
fn shedding(paper: &mut Paper, view: &PenetrationView) {
    if let Some(shedding) = &view.shedding {
        paper.gap();
        paper.heading(key("cli-shed"));
        match (shedding.sheds, shedding.lines.first()) {
            (true, Some(line)) => paper.block(&line.text),
            _ => paper.notes(&shedding.lines),
        }
    }
}

/// What to cut for it: the patch, then the block, then the head flashing.
pub(crate) fn sizes(paper: &mut Paper, view: &PenetrationView) {
    if !view.patch.is_empty() {
        paper.gap();
        paper.heading(key("cli-patch"));
        paper.sizes(&view.patch);
        paper.block(&view.patch_ends);
    }
    if !view.block.is_empty() {
        paper.gap();
        let trimmed = view.layers.iter().any(|layer| layer.code == "trim");
        paper.heading(match (view.split, trimmed) {
            (true, _) => key("cli-block-split"),
            (false, true) => key("cli-block-trim"),
            (false, false) => key("cli-block"),
        });
        paper.sizes(&view.block);
    }
    if let Some(advice) = &view.advice {
        let args = [
            ("width", advice.width.text.as_str().into()),
            ("height", advice.height.text.as_str().into()),
            ("hole", advice.hole_from_bottom.text.as_str().into()),
            ("gain", advice.gain.as_str().into()),
        ];
        let text = paper.phrase("cli-block-advice", &args);
        paper.block(&text);
    }
    if !view.head.is_empty() {
        paper.gap();
        paper.heading(key("cli-head"));
        paper.sizes(&view.head);
    }
    if !view.sizes.is_empty() {
        paper.gap();
        paper.sizes(&view.sizes);
    }
}
