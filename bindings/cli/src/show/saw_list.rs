use lapwright::phrases::key;
use lapwright::views::{SawBoardLine, SawListView};

use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &SawListView) {
    let title = paper.phrase("screen-saw-list", &[]);
    paper.title(&format!("{title}: {}", view.name));
    summary(paper, view);
    if !view.boards.is_empty() {
        paper.gap();
        for board in &view.boards {
            line(paper, board);
        }
    }
    let at_hand: Vec<&str> =
        view.offcuts.iter().filter(|offcut| offcut.at_hand).map(|offcut| offcut.length.text.as_str()).collect();
    if !at_hand.is_empty() {
        paper.gap();
        paper.heading(key("cli-offcuts"));
        paper.line(&format!("  {}", at_hand.join(", ")));
    }
}

/// How many boards against the least possible, what of them is cut, and what is lacking.
pub(crate) fn summary(paper: &mut Paper, view: &SawListView) {
    paper.block(&view.text);
    if view.planned {
        paper.block(&view.progress);
    }
    paper.notes(&view.notes);
    for stock in view.stock.iter().filter(|stock| stock.short == 0) {
        paper.line(&format!("  {}", stock.said));
    }
}

/// A board as a strip to scale, its cuts under it, and where each piece goes.
pub(crate) fn line(paper: &mut Paper, board: &SawBoardLine) {
    let mark = if board.cut { paper.set(Ink::Done, "[✓]") } else { "[ ]".to_owned() };
    let length = paper.set(Ink::Chalk, &board.length.text);
    let kind = if board.offcut { paper.phrase("cli-offcut", &[]) } else { String::new() };
    paper.line(format!("{mark} {:>3}  {length} {kind}", board.number).trim_end());
    paper.row(&format!("         {}", strip(board)));
    for (at, piece) in board.pieces.iter().enumerate() {
        paper.line(&format!("         {} {}  {}", letter(at), piece.length.text, piece.said));
    }
    if board.rest.nm > 0 {
        paper.line(&format!("         {}", board.rest_said));
    }
}

/// The characters that a whole board takes on paper.
const WIDE: i64 = 48;

/// `|---A---|--B--|····|`: the pieces to scale, the rest dotted.
fn strip(board: &SawBoardLine) -> String {
    let wide = |nm: i64| usize::try_from(nm.saturating_mul(WIDE) / board.length.nm.max(1)).unwrap_or(0);
    let mut strip = "|".to_owned();
    for (at, piece) in board.pieces.iter().enumerate() {
        strip.push_str(&format!("{:-^1$}|", letter(at), wide(piece.length.nm).saturating_sub(1).max(3)));
    }
    let rest = wide(board.rest.nm).saturating_sub(1);
    if rest > 0 {
        strip.push_str(&"·".repeat(rest));
        strip.push('|');
    }
    strip
}

fn letter(at: usize) -> char {
    char::from(b'A' + u8::try_from(at % 26).unwrap_or(0))
}
