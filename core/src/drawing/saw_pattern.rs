use serde::Serialize;

use super::clip::Dp;
use super::page::{MARGIN, Page, base, row};
use super::role::{Dash, Role};
use super::sheet::{HATCH, HEAVY, PLAIN, Sheet};
use super::stroke::{Anchor, Stroke};

/// A board of the saw list with its cuts: what is drawn of it.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct SawPattern {
    /// The board's length in nanometres.
    pub(crate) length: i64,
    /// Its length as it is read.
    pub(crate) text: String,
    /// Each piece from the left: its length in nanometres, and as it is read.
    pub(crate) pieces: Vec<(i64, String)>,
    /// What is left: its length in nanometres, and as it is read; none where nothing is.
    pub(crate) rest: Option<(i64, String)>,
}

/// How high the board is drawn, in dp.
const BOARD: f64 = 44.0;

impl SawPattern {
    /// The board to scale, each cut across it, each piece's length under it in rows that do not overlap, and the rest
    /// hatched; with how high it comes out.
    pub(crate) fn draw(&self, page: &Page) -> (Vec<Stroke>, f64) {
        let (left, wide) = (MARGIN, page.inner());
        let x = |nm: i64| left + wide * (nm as f64 / self.length.max(1) as f64).clamp(0.0, 1.0);
        let head = row(page.label);
        let (top, bottom) = (head, head + BOARD);
        // As many rows of lengths as there are pieces: each finds the first in which it has room.
        let rows = self.pieces.len() + usize::from(self.rest.is_some());
        let height = bottom + row(page.label) * rows.max(1) as f64;
        let mut sheet = Sheet::new(page.width, height);
        let corners = |from: f64, to: f64| -> [Dp; 4] { [(from, top), (to, top), (to, bottom), (from, bottom)] };
        let label = page.bold(&self.text, Role::Ink);
        sheet.text(&label, Anchor::Middle, (left + wide / 2.0, base(label.em)));
        sheet.fill(Role::Board, &corners(left, left + wide));
        let mut at = 0;
        let mut last = 0;
        for (length, text) in &self.pieces {
            let (from, to) = (x(at), x(at.saturating_add(*length)));
            last = last.max(self.below(&mut sheet, page, text, Role::Ink, (from, to), 0));
            sheet.line(Role::Chalk, Dash::Solid, HEAVY, &[(to, top), (to, bottom)]);
            at = at.saturating_add(*length);
        }
        if let Some((length, text)) = &self.rest {
            let (from, to) = (x(self.length.saturating_sub(*length)), x(self.length));
            sheet.hatch(Role::Cut, HATCH, &corners(from, to));
            // Never over a piece's row, where it would be taken for the piece.
            last = last.max(self.below(&mut sheet, page, text, Role::Cut, (from, to), last));
        }
        sheet.outline(Role::Ink, Dash::Solid, PLAIN, &corners(left, left + wide));
        (sheet.into_strokes(), bottom + row(page.label) * (last + 1) as f64 + 2.0)
    }

    /// Puts a length under its piece, in the first row from `first` on where it has room; gives that row.
    fn below(
        &self,
        sheet: &mut Sheet,
        page: &Page,
        text: &str,
        role: Role,
        (from, to): (f64, f64),
        first: usize,
    ) -> usize {
        let label = page.label(text, role);
        let (half, high) = (label.width() / 2.0, row(page.label));
        let most = (page.width - MARGIN - half).max(MARGIN + half);
        let middle = f64::midpoint(from, to).clamp(MARGIN + half, most);
        let under = high + BOARD;
        let has_room = |at: &usize| {
            let top = under + high * *at as f64;
            sheet.text(&label, Anchor::Middle, (middle, top + base(label.em)))
        };
        (first..=self.pieces.len()).find(has_room).unwrap_or(first)
    }

    /// What a screen reader says.
    pub(crate) fn spoken(&self) -> String {
        let pieces = self.pieces.iter().map(|(_, text)| text.as_str()).collect::<Vec<_>>().join(" + ");
        format!("{}: {pieces}", self.text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page() -> Page {
        Page::new([360.0, 800.0, 20.0, 16.0], false)
    }

    fn pattern(pieces: &[i64], rest: Option<i64>) -> SawPattern {
        let text = |length: &i64| format!("{length} in");
        SawPattern {
            length: 144,
            text: "144 in".to_owned(),
            pieces: pieces.iter().map(|length| (*length, text(length))).collect(),
            rest: rest.map(|rest| (rest, text(&rest))),
        }
    }

    #[test]
    fn cuts_lie_to_scale_and_every_length_is_written() {
        let (strokes, height) = pattern(&[72, 36], Some(36)).draw(&page());
        let cuts: Vec<f32> = strokes
            .iter()
            .filter_map(|stroke| match stroke {
                Stroke::Line { role: Role::Chalk, points, .. } => points.first().map(|point| point.x),
                _ => None,
            })
            .collect();
        // 340 dp between margins of 10: half of it and three quarters.
        assert_eq!(cuts, [180.0, 265.0]);
        let texts = strokes.iter().filter(|stroke| matches!(stroke, Stroke::Text { .. })).count();
        assert_eq!(texts, 4);
        assert!(height > BOARD && height < 160.0, "{height}");
    }

    #[test]
    fn short_pieces_get_rows_of_their_own() {
        let one = pattern(&[70, 70], None).draw(&page());
        let many = pattern(&[10; 12], Some(20)).draw(&page());
        let texts = |strokes: &[Stroke]| strokes.iter().filter(|stroke| matches!(stroke, Stroke::Text { .. })).count();
        assert_eq!((texts(&one.0), texts(&many.0)), (3, 14));
        assert!(many.1 > one.1);
    }

    /// A long piece, a short one beside it, and next to nothing left: with large texts all three want the same room.
    #[test]
    fn what_is_left_is_never_written_where_a_piece_would_be() {
        for label in [18.0, 36.0] {
            let page = Page::new([360.0, 800.0, 2.0 * label, label], false);
            let (strokes, _) = pattern(&[125, 18], Some(1)).draw(&page);
            let line = |of: &str| {
                let found = strokes.iter().find_map(|stroke| match stroke {
                    Stroke::Text { text, at, .. } if text == of => Some(at.y),
                    _ => None,
                });
                found.unwrap()
            };
            assert!(line("1 in") >= line("18 in") && line("18 in") >= line("125 in"), "labels of {label} dp");
        }
    }
}
