use super::CutMarks;
use crate::drawing::clip::{self, Dp};
use crate::drawing::dimension::{self, Begins};
use crate::drawing::font::{self, Weight};
use crate::drawing::page::{MARGIN, Page, base, row};
use crate::drawing::role::{Dash, Role};
use crate::drawing::sheet::{Area, HATCH, HEAVY, PLAIN, Sheet};
use crate::drawing::stroke::Anchor;

/// One cut and the board round it, magnified, with its lines of measure.
pub(super) struct Panel<'a> {
    marks: &'a CutMarks,
    /// The board's length and height in nanometres.
    board: Dp,
    /// Dp in a nanometre along the board.
    scale: f64,
    /// Dp in a nanometre across it: more where a shallow cut could not be seen else.
    up: f64,
    /// What of the board is drawn, in nanometres from its left end.
    from: f64,
    to: f64,
    depths: Vec<Depth<'a>>,
    /// Whether the word for what is cut away has room in the cut.
    word_inside: bool,
}

/// A height of the cut at one of its sides.
struct Depth<'a> {
    right: bool,
    from_top: bool,
    /// The cut's edge above the board's bottom edge, in nanometres.
    at: f64,
    text: &'a str,
    /// Whether the text has room on the board, beside its line of measure.
    beside: bool,
}

/// From a mark to the line of measure beside it, from that to its text, and from the text to whatever is next, in dp.
const AWAY: f64 = 11.0;
const AIR: f64 = 6.0;

/// What is left free under a panel, in dp.
const UNDER: f64 = 12.0;

impl<'a> Panel<'a> {
    /// The panel of a cut, no more than `most` high without its rows.
    pub(super) fn of(page: &Page, board: Dp, marks: &'a CutMarks, most: f64, word: &str) -> Self {
        let (length, height) = board;
        let (left, right) = span(marks);
        let mut depths = depths(marks, board);
        let widest = depths.iter().map(|depth| text_width(page, depth.text)).fold(0.0, f64::max);
        let need = widest + AWAY + 3.0 * AIR;
        let inner = page.inner();
        let wide = (right - left).max(1.0);
        let fit = |side: f64| ((inner - 2.0 * side) / wide).min(most / height);
        let lines = marks.levels.len().max(1) as f64;
        let roomy = fit(need);
        let scale =
            if roomy * height >= lines * row(page.label) && inner - 2.0 * need > 40.0 { roomy } else { fit(34.0) };
        let scale = scale.max((inner / length).min(most / height));
        let window = inner / scale;
        let from = if window < length { (left - (window - wide) / 2.0).clamp(0.0, length - window) } else { 0.0 };
        let to = if window < length { from + window } else { length };
        let up = stretched(marks, scale, most / height);
        for depth in &mut depths {
            let room = if depth.right { to - right } else { left - from } * scale;
            let text = text_width(page, depth.text);
            depth.beside = room >= text + AWAY + 2.0 * AIR && lines * row(page.label) <= height * up;
        }
        let mut panel = Self { marks, board, scale, up, from, to, depths, word_inside: false };
        let inside = panel.inside((0.0, 0.0));
        panel.word_inside = inside.width() >= text_width(page, word) + 8.0 && inside.height() >= row(page.label) + 2.0;
        panel
    }

    /// How high it comes out with its rows.
    pub(super) fn height(&self, page: &Page) -> f64 {
        self.board.1 * self.up + self.rows() as f64 * row(page.label) + UNDER
    }

    fn rows(&self) -> usize {
        let beside = self.depths.iter().filter(|depth| !depth.beside).count();
        self.marks.uprights.len() + beside + usize::from(!self.word_inside) + usize::from(self.is_stretched())
    }

    /// Whether the cut is drawn deeper than it is.
    fn is_stretched(&self) -> bool {
        self.up > self.scale
    }

    /// Where the drawn part of the board begins, in dp.
    fn left(&self, page: &Page) -> f64 {
        (page.width - (self.to - self.from) * self.scale) / 2.0
    }

    /// The part of the cut that a text can lie in, for a panel whose lower left corner is at `origin`.
    fn inside(&self, origin: Dp) -> Area {
        let at =
            |(x, y): Dp| (origin.0 + (x.clamp(self.from, self.to) - self.from) * self.scale, origin.1 - y * self.up);
        let corners: Vec<(i64, i64)> = self.marks.corners.clone();
        let middle = corners.iter().map(|(_, y)| *y as f64).sum::<f64>() / corners.len().max(1) as f64;
        let ys = || corners.iter().map(|(_, y)| *y as f64);
        let low = ys().filter(|y| *y <= middle).fold(0.0, f64::max);
        let high = ys().filter(|y| *y > middle).fold(self.board.1, f64::min);
        let (left, right) = span(self.marks);
        let ((left, bottom), (right, top)) = (at((left, low)), at((right, high)));
        Area { left, top, right, bottom }
    }

    /// Draws it under `top`; `cuts` are all of the board's, as its neighbours may come into the same region.
    pub(super) fn draw(
        &self,
        sheet: &mut Sheet,
        page: &Page,
        top: f64,
        [side, cut, deeper]: [&str; 3],
        cuts: &[Vec<Dp>],
    ) {
        let bottom = top + self.board.1 * self.up;
        let origin = (self.left(page), bottom);
        self.board(sheet, origin, cuts);
        self.depths(sheet, page, origin);
        let inside = self.inside(origin);
        if self.word_inside {
            let label = page.label(cut, Role::Ink);
            let middle = (inside.left + inside.right) / 2.0;
            let line = (inside.top + inside.bottom + page.label * font::CAPITAL) / 2.0;
            sheet.text_on(Role::Ground, &label, Anchor::Middle, (middle, line));
        }
        self.side(sheet, page, origin, side, cuts);
        self.rows_under(sheet, page, origin, [cut, deeper]);
    }

    fn x(&self, origin: Dp, x: f64) -> f64 {
        origin.0 + (x - self.from) * self.scale
    }

    /// The board with its cuts; where it goes on past the panel its end is broken.
    fn board(&self, sheet: &mut Sheet, origin: Dp, cuts: &[Vec<Dp>]) {
        let (length, height) = self.board;
        let (left, right) = (origin.0, self.x(origin, self.to));
        let (top, bottom) = (origin.1 - height * self.up, origin.1);
        let left_end = end(left, (bottom, top), self.from > 0.0);
        let right_end = end(right, (top, bottom), self.to < length);
        let outline: Vec<Dp> = left_end.iter().chain(&right_end).copied().collect();
        sheet.fill(Role::Board, &outline);
        for cut in cuts {
            self.cut(sheet, origin, cut);
        }
        sheet.outline(Role::Ink, Dash::Solid, PLAIN, &outline);
        // The board's own outline does not run through what is cut away: the chalk line is drawn over it.
        for cut in cuts {
            self.chalk(sheet, origin, cut);
        }
    }

    /// A cut's part within the panel, in dp.
    fn shown(&self, origin: Dp, cut: &[Dp]) -> Vec<Dp> {
        let shifted: Vec<Dp> = cut.iter().map(|(x, y)| (x - self.from, *y)).collect();
        let kept = clip::polygon(&shifted, (self.to - self.from, self.board.1));
        kept.iter().map(|(x, y)| (origin.0 + x * self.scale, origin.1 - y * self.up)).collect()
    }

    fn cut(&self, sheet: &mut Sheet, origin: Dp, cut: &[Dp]) {
        let shown = self.shown(origin, cut);
        sheet.fill(Role::Ground, &shown);
        sheet.hatch(Role::Cut, HATCH, &shown);
    }

    /// The lines that the saw follows: the edges of the cut that do not lie on an edge of the board.
    fn chalk(&self, sheet: &mut Sheet, origin: Dp, cut: &[Dp]) {
        let (length, height) = self.board;
        let on_edge = |a: &Dp, b: &Dp| {
            let both = |on: &dyn Fn(&Dp) -> bool| on(a) && on(b);
            both(&|p| p.0 <= 0.0) || both(&|p| p.0 >= length) || both(&|p| p.1 <= 0.0) || both(&|p| p.1 >= height)
        };
        for (a, b) in cut.iter().zip(cut.iter().cycle().skip(1)) {
            if on_edge(a, b) {
                continue;
            }
            let shifted = [(a.0 - self.from, a.1), (b.0 - self.from, b.1)];
            for part in clip::line(&shifted, (self.to - self.from, height)) {
                let part: Vec<Dp> =
                    part.iter().map(|(x, y)| (origin.0 + x * self.scale, origin.1 - y * self.up)).collect();
                sheet.line(Role::Chalk, Dash::Solid, HEAVY, &part);
            }
        }
    }

    /// The lines of measure from the near edge, with their texts where they have room on the board.
    fn depths(&self, sheet: &mut Sheet, page: &Page, origin: Dp) {
        let (left, right) = span(self.marks);
        for at_right in [false, true] {
            let x = if at_right { self.x(origin, right) + AWAY } else { self.x(origin, left) - AWAY };
            let depths: Vec<&Depth<'_>> = self.depths.iter().filter(|depth| depth.right == at_right).collect();
            for (depth, middle) in depths.iter().zip(self.middles(page, origin, &depths)) {
                let edge = if depth.from_top { self.board.1 } else { 0.0 };
                let ends = (origin.1 - edge * self.up, origin.1 - depth.at * self.up);
                dimension::upright(sheet, x, ends);
                let mark = self.x(origin, if at_right { right } else { left });
                dimension::leader(sheet, &[(mark, ends.1), (if at_right { x + 4.0 } else { x - 4.0 }, ends.1)]);
                if depth.beside {
                    let label = page.label(depth.text, Role::Ink);
                    let line = middle + label.em * font::CAPITAL / 2.0;
                    let (anchor, x) = if at_right { (Anchor::Start, x + AIR) } else { (Anchor::End, x - AIR) };
                    sheet.text_on(Role::Board, &label, anchor, (x, line));
                }
            }
        }
    }

    /// The heights at which the texts of one side are centred: by their lines of measure, on the board, clear of each
    /// other.
    fn middles(&self, page: &Page, origin: Dp, depths: &[&Depth<'_>]) -> Vec<f64> {
        let half = row(page.label) / 2.0;
        let (top, bottom) = (origin.1 - self.board.1 * self.up + half, origin.1 - half);
        let height = |depth: &&Depth<'_>| {
            let edge = if depth.from_top { self.board.1 } else { 0.0 };
            origin.1 - (edge + depth.at) / 2.0 * self.up
        };
        let within = |y: f64| y.min(bottom).max(top);
        match depths {
            [a, b] => {
                let (a, b) = (height(a), height(b));
                let (upper, lower) = (a.min(b), a.max(b));
                let apart = (2.0 * half - (lower - upper)).max(0.0) / 2.0;
                let mut upper = within(upper - apart);
                let mut lower = within(lower + apart);
                if lower - upper < 2.0 * half {
                    lower = within(upper + 2.0 * half);
                    upper = lower - 2.0 * half;
                }
                if a <= b { vec![upper, lower] } else { vec![lower, upper] }
            }
            more => more.iter().map(height).map(within).collect(),
        }
    }

    /// FACE or BACK on the board, in the first corner that is clear.
    fn side(&self, sheet: &mut Sheet, page: &Page, origin: Dp, word: &str, cuts: &[Vec<Dp>]) {
        let label = page.bold(word, Role::Ink);
        let (left, right) = (origin.0 + 10.0, self.x(origin, self.to) - 10.0);
        let upper = origin.1 - self.board.1 * self.up + base(page.label) + 2.0;
        let lower = origin.1 - 4.0 - page.label * font::DESCENT;
        let cuts: Vec<Area> = cuts.iter().map(|cut| bounds(&self.shown(origin, cut))).collect();
        for (x, y, anchor) in [
            (left, upper, Anchor::Start),
            (left, lower, Anchor::Start),
            (right, upper, Anchor::End),
            (right, lower, Anchor::End),
        ] {
            let area = sheet.room(&label, anchor, (x, y));
            let on_board = area.left >= left - 0.01
                && area.right <= right + 0.01
                && area.top >= origin.1 - self.board.1 * self.up
                && area.bottom <= origin.1;
            let grown = Area { left: area.left - AWAY - 4.0, right: area.right + AWAY + 4.0, ..area };
            if on_board && !cuts.iter().any(|cut| cut.meets(&grown)) && sheet.text(&label, anchor, (x, y)) {
                return;
            }
        }
    }

    /// Under the board: how far each upright mark is from the left end, then the depths that had no room beside the cut.
    fn rows_under(&self, sheet: &mut Sheet, page: &Page, origin: Dp, [cut, deeper]: [&str; 2]) {
        let high = row(page.label);
        let row_top = |at: usize| origin.1 + 4.0 + high * at as f64;
        let foot = self.marks.corners.iter().map(|(_, y)| *y).min().unwrap_or(0) as f64;
        let uprights = self.marks.uprights.iter().map(|upright| self.x(origin, upright.nm as f64));
        let uprights: Vec<f64> = uprights.collect();
        let (left, right) = span(self.marks);
        let mut hung: Vec<(f64, String)> = Vec::new();
        for depth in self.depths.iter().filter(|depth| !depth.beside) {
            let arrow = if depth.from_top { "↓" } else { "↑" };
            hung.push((self.x(origin, if depth.right { right } else { left }), format!("{arrow} {}", depth.text)));
        }
        for (at, x) in uprights.iter().chain(hung.iter().map(|(x, _)| x)).enumerate() {
            let y = row_top(at) + high / 2.0;
            dimension::leader(sheet, &[(*x, origin.1 - foot * self.up), (*x, y + 6.0)]);
        }
        let begins = if self.from > 0.0 { Begins::Beyond } else { Begins::Hook };
        for (at, x) in uprights.iter().enumerate() {
            dimension::across(sheet, (origin.0, *x), row_top(at) + high / 2.0, begins);
        }
        let texts = self.marks.uprights.iter().map(|upright| upright.text.as_str());
        for (at, (text, x)) in texts.zip(&uprights).enumerate() {
            let label = page.label(text, Role::Ink);
            let long = x - origin.0 >= label.width() + 44.0;
            let middle = if long { (origin.0 + x) / 2.0 } else { x + AIR + label.width() / 2.0 };
            put_in_row(sheet, page, text, middle, row_top(at));
        }
        for (at, (x, text)) in hung.iter().enumerate() {
            let label = page.label(text, Role::Ink);
            put_in_row(sheet, page, text, x + AIR + label.width() / 2.0, row_top(uprights.len() + at));
        }
        if !self.word_inside {
            let top = row_top(uprights.len() + hung.len());
            let box_of = Area { left: MARGIN, top: top + 4.0, right: MARGIN + 24.0, bottom: top + high - 4.0 };
            sheet.hatch(Role::Cut, HATCH, &box_of.corners());
            sheet.outline(Role::Chalk, Dash::Solid, PLAIN, &box_of.corners());
            let label = page.label(cut, Role::Ink);
            sheet.text(&label, Anchor::Start, (MARGIN + 30.0, top + base(page.label)));
        }
        if self.is_stretched() {
            let rows = uprights.len() + hung.len() + usize::from(!self.word_inside);
            let label = page.label(deeper, Role::Ink);
            sheet.text(&label, Anchor::Start, (MARGIN, row_top(rows) + base(page.label)));
        }
    }
}

/// How high a cut is drawn at least, in dp, and how many times it is stretched at least where it would be lower.
const DEEP: f64 = 24.0;
const STRETCH: f64 = 3.0;

/// Dp in a nanometre across a board that is drawn with `scale` along, and with no more than `most`: stretched where the cut
/// would be too shallow to be seen.
fn stretched(marks: &CutMarks, scale: f64, most: f64) -> f64 {
    let ys = || marks.corners.iter().map(|(_, y)| *y);
    let deep = (ys().max().unwrap_or(0) - ys().min().unwrap_or(0)) as f64 * scale;
    if deep <= 0.0 || deep >= DEEP { scale } else { (scale * STRETCH.max(DEEP / deep)).min(most).max(scale) }
}

/// A text in a row of its own, its middle as near to `middle` as the drawing allows.
fn put_in_row(sheet: &mut Sheet, page: &Page, text: &str, middle: f64, top: f64) {
    let label = page.label(text, Role::Ink);
    let half = label.width() / 2.0;
    let middle = middle.min(page.width - MARGIN - half).max(MARGIN + half);
    sheet.text_on(Role::Ground, &label, Anchor::Middle, (middle, top + base(page.label)));
}

fn text_width(page: &Page, text: &str) -> f64 {
    font::width(text, Weight::Regular, page.label)
}

fn span(marks: &CutMarks) -> Dp {
    let (left, right) = marks.span();
    (left as f64, right as f64)
}

/// The heights of the cut at the sides that lie within the board.
fn depths<'a>(marks: &'a CutMarks, (length, height): Dp) -> Vec<Depth<'a>> {
    let (left, right) = span(marks);
    let mut depths = Vec::new();
    for level in &marks.levels {
        for (at_right, measure, inside) in [(false, &level.left, left > 0.0), (true, &level.right, right < length)] {
            if inside {
                let nm = measure.nm as f64;
                let at = if level.from_top { height - nm } else { nm };
                let (from_top, text) = (level.from_top, measure.text.as_str());
                depths.push(Depth { right: at_right, from_top, at, text, beside: false });
            }
        }
    }
    depths
}

/// An end of the board, straight or broken in a zigzag where it goes on.
fn end(x: f64, (from, to): Dp, broken: bool) -> Vec<Dp> {
    if !broken {
        return vec![(x, from), (x, to)];
    }
    let at = |n: u32| {
        let aside = if n == 0 || n == 6 {
            0.0
        } else if n.is_multiple_of(2) {
            3.0
        } else {
            -3.0
        };
        (x + aside, from + (to - from) * f64::from(n) / 6.0)
    };
    (0..=6).map(at).collect()
}

fn bounds(corners: &[Dp]) -> Area {
    let fold = |of: fn(&Dp) -> f64, with: fn(f64, f64) -> f64, start: f64| corners.iter().map(of).fold(start, with);
    Area {
        left: fold(|p| p.0, f64::min, f64::INFINITY),
        top: fold(|p| p.1, f64::min, f64::INFINITY),
        right: fold(|p| p.0, f64::max, f64::NEG_INFINITY),
        bottom: fold(|p| p.1, f64::max, f64::NEG_INFINITY),
    }
}
