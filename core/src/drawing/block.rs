//! A mounting block: the blank from its face with the hole, and its section with the cut that rises toward the wall.

use crate::phrases::{Phrases, key};
use crate::views::Size;

use super::clip::Dp;
use super::dimension;
use super::font::{CAPITAL, DESCENT};
use super::page::{MARGIN, Page, base, row};
use super::role::{Dash, Role};
use super::sheet::{Area, HATCH, HEAVY, Label, PLAIN, Sheet, THIN};
use super::stroke::{Anchor, Stroke};

/// What is drawn of a block: its sizes by their codes, as its view holds them.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(crate) struct BlockDrawing {
    pub(super) sizes: Vec<BlockMeasure>,
    /// Face, wall, side view.
    pub(super) words: [String; 3],
}

/// A size of a block.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct BlockMeasure {
    pub(super) code: String,
    pub(super) label: String,
    pub(super) nm: i64,
    pub(super) text: String,
}

/// An upright measure beside a figure: from the bottom up, at its left or right.
struct Beside<'a> {
    right: bool,
    /// Heights of its ends above the bottom of the figure, in nanometres.
    ends: Dp,
    text: &'a str,
    label: &'a str,
}

impl Beside<'_> {
    /// Whether its text has room at its own size beside a figure that is `tall` dp high.
    fn has_room(&self, page: &Page, tall: f64) -> bool {
        let width = page.label(self.text, Role::Ink).width();
        tall >= 1.25 * row(page.label) && (lies_level(page, width) || width <= tall)
    }
}

/// A figure's place on the sheet.
struct Figure {
    left: f64,
    bottom: f64,
    /// Dp in a nanometre.
    dp: f64,
}

impl Figure {
    fn at(&self, (x, y): Dp) -> Dp {
        (self.left + x * self.dp, self.bottom - y * self.dp)
    }
}

/// From a figure to the line of measure beside it, and from that to its text, in dp.
const AWAY: f64 = 14.0;
const AIR: f64 = 6.0;
/// How wide the wall behind a block is drawn, in dp.
const WALL: f64 = 12.0;

impl BlockDrawing {
    /// What is drawn of a block, from what the view of its penetration holds.
    pub(crate) fn of(phrases: &Phrases, sizes: &[Size]) -> Self {
        let size = |size: &Size| BlockMeasure {
            code: size.code.clone(),
            label: size.label.clone(),
            nm: size.reading.nm,
            text: size.reading.text.clone(),
        };
        let words = [key("screen-face"), key("drawing-wall"), key("drawing-side-view")];
        Self { sizes: sizes.iter().map(size).collect(), words: words.map(|key| phrases.phrase(key, &[])) }
    }

    fn size(&self, code: &str) -> Option<&BlockMeasure> {
        self.sizes.iter().find(|size| size.code == code)
    }

    fn nm(&self, code: &str) -> Option<f64> {
        self.size(code).map(|size| size.nm as f64)
    }

    fn text(&self, code: &str) -> &str {
        self.size(code).map_or("", |size| size.text.as_str())
    }

    /// What a screen reader says of it: every size with its name.
    pub(crate) fn spoken(&self) -> String {
        let said: Vec<String> = self.sizes.iter().map(|size| format!("{}: {}", size.label, size.text)).collect();
        said.join(". ")
    }

    /// Draws the block; also how high it came out. Nothing where there is no block.
    pub(crate) fn draw(&self, page: &Page) -> (Vec<Stroke>, f64) {
        let (Some(width), Some(height), Some(thick)) = (self.nm("width"), self.nm("height"), self.nm("thickness"))
        else {
            return (Vec::new(), 2.0 * MARGIN);
        };
        let [face, _, side_view] = &self.words;
        let blank = self.nm("blank-height").unwrap_or(height);
        let split = self.size("lower-face").is_some();
        let front = self.front(blank, split);
        let section = self.section();
        // Over each figure the row that says what it is; under the front its width, then what has no line of its own.
        let mut under = self.rows_under();
        let rows = |under: usize| (4 + under) as f64 * row(page.label) + 3.0 * MARGIN + 2.0 * AIR;
        let tall = |under: usize| ((page.height - rows(under)) / 2.0).clamp(24.0, 260.0);
        let columns = |beside: &[Beside<'_>]| {
            [false, true].map(|right| column(page, beside.iter().filter(|side| side.right == right)))
        };
        let scale = |under: usize, wide: f64, extra: f64, columns: [f64; 2]| {
            ((page.inner() - extra - columns.iter().sum::<f64>()).max(10.0) / wide.max(1.0))
                .min(tall(under) / blank.max(1.0))
        };
        let (front_columns, section_columns) = (columns(&front), columns(&section));
        // A flat blank leaves no height for a text that stands beside it: its measure is named under the front.
        let most = under.len() + front.len() + section.len();
        let high = blank * scale(most, width, 0.0, front_columns);
        let section_high = blank * scale(most, thick, WALL, section_columns);
        let crowded = [(&front, high), (&section, section_high)].map(|(beside, high)| {
            let without_room = beside.iter().filter(move |side| !side.has_room(page, high));
            without_room.map(|side| format!("{} {}", side.label, side.text))
        });
        under.extend(crowded.into_iter().flatten());
        let rows = rows(under.len());
        let front_dp = scale(under.len(), width, 0.0, front_columns);
        let section_dp = scale(under.len(), thick, WALL, section_columns);
        let height_dp = (rows + blank * (front_dp + section_dp)).min(page.height);
        let mut sheet = Sheet::new(page.width, height_dp);

        let mut top = MARGIN;
        heading(&mut sheet, page, face, top);
        top += row(page.label);
        let middle = |wide: f64, [left, right]: [f64; 2]| (page.width - wide - left - right) / 2.0 + left;
        let figure =
            Figure { left: middle(width * front_dp, front_columns), bottom: top + blank * front_dp, dp: front_dp };
        self.draw_front(&mut sheet, &figure, (width, blank));
        besides(&mut sheet, page, &figure, (0.0, width * front_dp, blank), &front, high);
        top = figure.bottom + AIR;
        self.width(&mut sheet, page, &figure, width, top);
        top += row(page.label);
        for text in &under {
            sheet.text(&page.label(text, Role::Ink), Anchor::Start, (MARGIN, top + base(page.label)));
            top += row(page.label);
        }
        top += MARGIN;
        heading(&mut sheet, page, side_view, top);
        top += row(page.label);
        let left = middle(thick * section_dp + WALL, section_columns) + WALL;
        let figure = Figure { left, bottom: top + blank * section_dp, dp: section_dp };
        self.draw_section(&mut sheet, page, &figure, (thick, blank));
        besides(&mut sheet, page, &figure, (-WALL, thick * section_dp, blank), &section, section_high);
        (sheet.into_strokes(), height_dp)
    }

    fn beside(&self, right: bool, code: &str, up: f64) -> Beside<'_> {
        let (text, label) = self.size(code).map_or(("", ""), |size| (&size.text, &size.label));
        Beside { right, ends: (0.0, up), text, label }
    }

    /// The measures beside the front: where to drill, and how high the blank is.
    fn front(&self, blank: f64, split: bool) -> Vec<Beside<'_>> {
        let mut beside = Vec::new();
        for code in ["drill-at", "hole-at"] {
            if let Some(at) = self.nm(code) {
                beside.push(self.beside(false, code, at));
            }
        }
        let whole = if split { "blank-height" } else { "height" };
        beside.push(self.beside(true, whole, blank));
        beside
    }

    /// The measures beside the section: the lower piece at the wall and at the face.
    fn section(&self) -> Vec<Beside<'_>> {
        let side = |right: bool, code: &'static str| Some(self.beside(right, code, self.nm(code)?));
        [side(false, "lower-back"), side(true, "lower-face")].into_iter().flatten().collect()
    }

    /// Sizes without a line of measure, each with its name.
    fn rows_under(&self) -> Vec<String> {
        let codes = ["bit", "hole-width", "hole-height"];
        let sizes = codes.into_iter().filter_map(|code| self.size(code));
        sizes.map(|size| format!("{} {}", size.label, size.text)).collect()
    }

    /// The blank from its face: the hole with its centre, and where the cut comes out.
    fn draw_front(&self, sheet: &mut Sheet, figure: &Figure, (width, blank): Dp) {
        let blank_corners = [(0.0, 0.0), (width, 0.0), (width, blank), (0.0, blank)].map(|at| figure.at(at));
        sheet.fill(Role::Board, &blank_corners);
        sheet.outline(Role::Ink, Dash::Solid, PLAIN, &blank_corners);
        if let Some(at) = self.nm("drill-at").or_else(|| self.nm("hole-at")) {
            let centre = (width / 2.0, at);
            let (half_wide, half_high) = match (self.nm("bit"), self.nm("hole-width"), self.nm("hole-height")) {
                (Some(bit), ..) => (bit / 2.0, bit / 2.0),
                (None, Some(wide), Some(high)) => (wide / 2.0, high / 2.0),
                _ => (0.0, 0.0),
            };
            let round = self.size("bit").is_some();
            let hole: Vec<Dp> =
                ring(centre, (half_wide, half_high), round).into_iter().map(|at| figure.at(at)).collect();
            sheet.fill(Role::Ground, &hole);
            sheet.hatch(Role::Cut, HATCH, &hole);
            sheet.outline(Role::Chalk, Dash::Solid, HEAVY, &hole);
            // The centre is where the bit is set: its cross runs out to the line of measure at the left.
            let across = [(0.0, at), (width / 2.0 + half_wide * 1.3, at)].map(|at| figure.at(at));
            let upright = [(width / 2.0, at - half_high * 1.3), (width / 2.0, at + half_high * 1.3)];
            sheet.line(Role::Chalk, Dash::Dashed, THIN, &across);
            sheet.line(Role::Chalk, Dash::Dashed, THIN, &upright.map(|at| figure.at(at)));
        }
        if let Some(face) = self.nm("lower-face") {
            sheet.line(Role::Chalk, Dash::Solid, HEAVY, &[figure.at((0.0, face)), figure.at((width, face))]);
        }
    }

    /// The section: the wall at the left, the face at the right, the cut rising toward the wall, the hole dotted.
    fn draw_section(&self, sheet: &mut Sheet, page: &Page, figure: &Figure, (thick, blank): Dp) {
        let (left, right) = (figure.left, figure.at((thick, 0.0)).0);
        let top = figure.at((0.0, blank)).1;
        let wall = Area { left: left - WALL, top: top - 4.0, right: left, bottom: figure.bottom + 4.0 };
        sheet.hatch(Role::Planned, HATCH, &wall.corners());
        sheet.line(Role::Ink, Dash::Solid, HEAVY, &[(left, wall.top), (left, wall.bottom)]);
        let block = Area { left, top, right, bottom: figure.bottom };
        sheet.fill(Role::Board, &block.corners());
        sheet.outline(Role::Ink, Dash::Solid, PLAIN, &block.corners());
        let hole = match (
            self.nm("drill-at").or_else(|| self.nm("hole-at")),
            self.nm("bit").or_else(|| self.nm("hole-height")),
        ) {
            (Some(at), Some(high)) => vec![at - high / 2.0, at + high / 2.0],
            _ => Vec::new(),
        };
        for y in hole {
            let line = [(0.0, y), (thick, y)].map(|at| figure.at(at));
            sheet.line(Role::Planned, Dash::Dotted, PLAIN, &line);
        }
        if let (Some(face), Some(back)) = (self.nm("lower-face"), self.nm("lower-back")) {
            let cut = [(thick, face), (0.0, back)].map(|at| figure.at(at));
            sheet.line(Role::Chalk, Dash::Solid, HEAVY, &cut);
        }
        // The wall's side and the face are lettered under the figure, each on its own side.
        let [face, wall, _] = &self.words;
        let (line, middle) = (figure.bottom + AIR + base(page.label), (left + right) / 2.0);
        let (wall, face) = (page.bold(wall, Role::Ink), page.bold(face, Role::Ink));
        sheet.text(&wall, Anchor::End, ((middle - AIR).max(MARGIN + wall.width()), line));
        sheet.text(&face, Anchor::Start, ((middle + AIR).min(page.width - MARGIN - face.width()), line));
    }

    /// The width of the block under its front.
    fn width(&self, sheet: &mut Sheet, page: &Page, figure: &Figure, width: f64, top: f64) {
        let (left, right) = (figure.left, figure.at((width, 0.0)).0);
        let y = top + row(page.label) / 2.0;
        for x in [left, right] {
            sheet.line(Role::Chalk, Dash::Solid, THIN, &[(x, figure.bottom), (x, y + 6.0)]);
        }
        dimension::level(sheet, (left, right), y);
        let label = page.label(self.text("width"), Role::Ink);
        let half = label.width() / 2.0;
        let inside = label.width() + 30.0 <= right - left;
        let middle = if inside { (left + right) / 2.0 } else { right + AIR + half };
        let middle = middle.min(page.width - MARGIN - half).max(MARGIN + half);
        sheet.text_on(Role::Ground, &label, Anchor::Middle, (middle, top + base(page.label)));
    }
}

/// How wide the column beside a figure is: texts lie level where they leave the figure room, else they stand upright.
fn column<'a>(page: &Page, beside: impl Iterator<Item = &'a Beside<'a>>) -> f64 {
    let widest = beside.map(|beside| page.label(beside.text, Role::Ink).width()).fold(0.0, f64::max);
    if widest == 0.0 {
        AIR
    } else if lies_level(page, widest) {
        AWAY + AIR + widest + 2.0
    } else {
        AWAY + AIR + row(page.label)
    }
}

fn lies_level(page: &Page, width: f64) -> bool {
    AWAY + AIR + width <= page.inner() * 0.32
}

/// Lines of measure beside a figure: `(left, right)` are its sides in dp from its own left, `height` in nanometres.
/// A text that does not fit into `room` dp of height is named elsewhere.
fn besides(
    sheet: &mut Sheet,
    page: &Page,
    figure: &Figure,
    (left, right, height): (f64, f64, f64),
    beside: &[Beside<'_>],
    room: f64,
) {
    for measure in beside {
        let edge = figure.left + if measure.right { right } else { left };
        let out = if measure.right { 1.0 } else { -1.0 };
        let x = edge + out * AWAY;
        let (from, to) = (figure.at((0.0, measure.ends.0)).1, figure.at((0.0, measure.ends.1)).1);
        for y in [from, to] {
            dimension::leader(sheet, &[(edge, y), (x + out * 4.0, y)]);
        }
        dimension::upright(sheet, x, (from, to));
        if !measure.has_room(page, room) {
            continue;
        }
        let label = page.label(measure.text, Role::Ink);
        let middle = (from + to) / 2.0;
        if lies_level(page, label.width()) {
            let anchor = if measure.right { Anchor::Start } else { Anchor::End };
            // A low measure's text stays off the row under the figure.
            let line = (middle + label.em * CAPITAL / 2.0).min(figure.bottom - label.em * DESCENT);
            sheet.text(&label, anchor, (x + out * AIR, line));
        } else {
            // Upright it has the whole height of the figure.
            let tall = height * figure.dp;
            let em = label.em.min(label.em * tall / label.width());
            let label = Label { em, ..label };
            let middle = figure.bottom - tall / 2.0;
            sheet.upright_text(Role::Ground, &label, (x + out * (AIR + row(page.label) / 2.0), middle));
        }
    }
}

/// A word over a figure, at the left.
fn heading(sheet: &mut Sheet, page: &Page, word: &str, top: f64) {
    sheet.text(&page.bold(word, Role::Ink), Anchor::Start, (MARGIN, top + base(page.label)));
}

/// A hole round `centre`: a polygon that the eye takes for a ring, or a rectangle.
pub(super) fn ring(centre: Dp, half: Dp, round: bool) -> Vec<Dp> {
    if !round {
        return [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
            .map(|(x, y)| (centre.0 + x * half.0, centre.1 + y * half.1))
            .to_vec();
    }
    let at = |n: u32| {
        let angle = f64::from(n) * std::f64::consts::TAU / 48.0;
        (centre.0 + half.0 * libm::cos(angle), centre.1 + half.1 * libm::sin(angle))
    };
    (0..48).map(at).collect()
}
