use super::ShownLength;
use crate::drawing::clip::Dp;
use crate::drawing::dimension::{self, Begins};
use crate::drawing::page::{MARGIN, Page, base, row};
use crate::drawing::role::{Dash, Role};
use crate::drawing::sheet::{PLAIN, Sheet, THIN};
use crate::drawing::stroke::Anchor;

/// From line to line of the hatch of a small cut, in dp.
const FINE_HATCH: f64 = 4.0;

/// Dp in a nanometre: the board is as wide as the frame, unless it is so short that it would take up all of its height.
fn scale(page: &Page, (length, height): Dp) -> f64 {
    (page.inner() / length).min(page.height.min(page.width) * 0.4 / height)
}

/// How high the whole board comes out with its line of measure.
pub(super) fn height(page: &Page, board: Dp, measured: bool) -> f64 {
    let measure = if measured { row(page.label) } else { 0.0 };
    board.1 * scale(page, board) + measure + 12.0
}

/// The whole board, as wide as the frame, with its length from the left end.
pub(super) fn draw(
    sheet: &mut Sheet,
    page: &Page,
    board: Dp,
    top: f64,
    measure: Option<&ShownLength>,
    cuts: &[Vec<Dp>],
) {
    let scale = scale(page, board);
    let bottom = top + board.1 * scale;
    let (left, right) = (MARGIN, MARGIN + board.0 * scale);
    let board = [(left, top), (right, top), (right, bottom), (left, bottom)];
    sheet.fill(Role::Board, &board);
    for cut in cuts {
        let cut: Vec<Dp> = cut.iter().map(|(x, y)| (left + x * scale, bottom - y * scale)).collect();
        sheet.fill(Role::Ground, &cut);
        sheet.hatch(Role::Cut, FINE_HATCH, &cut);
        sheet.outline(Role::Chalk, Dash::Solid, PLAIN, &cut);
    }
    sheet.outline(Role::Ink, Dash::Solid, PLAIN, &board);
    let Some(measure) = measure else { return };
    let row_top = bottom + 4.0;
    let y = row_top + row(page.label) / 2.0;
    for x in [left, right] {
        sheet.line(Role::Chalk, Dash::Solid, THIN, &[(x, bottom), (x, y + 6.0)]);
    }
    dimension::across(sheet, (left, right), y, Begins::Hook);
    let text = page.label(&measure.text, Role::Ink);
    let half = text.width() / 2.0;
    let middle = ((left + right) / 2.0).max(MARGIN + half);
    sheet.text_on(Role::Ground, &text, Anchor::Middle, (middle, row_top + base(page.label)));
}
