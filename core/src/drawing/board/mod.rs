//! A board's face or back: the whole board in true proportion, and every cut magnified under it.

mod lost;
mod panel;
mod whole;

use crate::phrases::{Phrases, key};
use crate::views::{LevelView, MarksView, NotchView, Reading, ShapeView};

use super::clip::Dp;
use super::page::{MARGIN, Page, base, row};
use super::role::Role;
use super::sheet::Sheet;
use super::stroke::{Anchor, Stroke};

use lost::LostCorners;
use panel::Panel;

/// A length with the text that stands for it.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(crate) struct ShownLength {
    pub(super) nm: i64,
    pub(super) text: String,
}

impl From<&Reading> for ShownLength {
    fn from(reading: &Reading) -> Self {
        Self { nm: reading.nm, text: reading.text.clone() }
    }
}

/// What is drawn of a board, on both sides.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(crate) struct BoardDrawing {
    pub(super) length: Option<ShownLength>,
    pub(super) height: ShownLength,
    /// Face, back, what is cut away, and that a depth is not to scale.
    pub(super) words: [String; 4],
    /// From left to right as the side shows them.
    pub(super) face: Vec<CutMarks>,
    pub(super) back: Vec<CutMarks>,
    /// What else is cut away, seen from the face: at a rake, over a step.
    pub(super) lost: Vec<LostCorners>,
}

/// The marks of one cut on one side.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct CutMarks {
    pub(super) uprights: Vec<ShownLength>,
    pub(super) levels: Vec<Level>,
    pub(super) corners: Vec<(i64, i64)>,
}

/// A line along the board, at the left and the right mark from the edge that it is measured from.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub(super) struct Level {
    pub(super) from_top: bool,
    pub(super) left: ShownLength,
    pub(super) right: ShownLength,
}

impl CutMarks {
    fn of(view: &MarksView) -> Self {
        let level = |level: &LevelView| Level {
            from_top: level.from == "top",
            left: (&level.left).into(),
            right: (&level.right).into(),
        };
        let mut uprights: Vec<ShownLength> = view.uprights.iter().map(ShownLength::from).collect();
        uprights.sort_by_key(|upright| upright.nm);
        Self {
            uprights,
            levels: view.levels.iter().map(level).collect(),
            corners: view.corners.iter().map(|corner| (corner.x, corner.y)).collect(),
        }
    }

    /// The leftmost and the rightmost corner, in nanometres from the left end.
    pub(super) fn span(&self) -> (i64, i64) {
        let xs = || self.corners.iter().map(|(x, _)| *x);
        (xs().min().unwrap_or(0), xs().max().unwrap_or(0))
    }
}

/// The sides of a board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    Face,
    Back,
}

impl BoardDrawing {
    /// What is drawn of a board, from what its view holds.
    pub(crate) fn of(
        phrases: &Phrases,
        length: Option<&Reading>,
        height: &Reading,
        notches: &[NotchView],
        shape: Option<&ShapeView>,
    ) -> Self {
        let word = |key: &str| phrases.phrase(key, &[]);
        let side = |of: fn(&NotchView) -> Option<&MarksView>| {
            let mut marks: Vec<CutMarks> = notches.iter().filter_map(of).map(CutMarks::of).collect();
            marks.sort_by_key(CutMarks::span);
            marks
        };
        Self {
            length: length.map(ShownLength::from),
            height: height.into(),
            words: [key("screen-face"), key("screen-behind"), key("screen-cut"), key("drawing-not-to-scale")].map(word),
            face: side(|notch| notch.face.as_ref()),
            back: side(|notch| notch.back.as_ref()),
            lost: shape.map(lost::lost).unwrap_or_default(),
        }
    }

    /// What a screen reader says of one side.
    pub(crate) fn spoken(&self, phrases: &Phrases, side: Side) -> String {
        let [face, back, ..] = &self.words;
        let word = if side == Side::Face { face } else { back };
        let length = self.length.as_ref().map_or("?", |length| &length.text);
        let cuts = self.marks(side).len();
        let args = [("side", word.into()), ("length", length.into()), ("cuts", cuts.into())];
        phrases.phrase("drawing-board-spoken", &args)
    }

    fn marks(&self, side: Side) -> &[CutMarks] {
        if side == Side::Face { &self.face } else { &self.back }
    }

    /// Draws one side; also how high it came out.
    pub(crate) fn draw(&self, page: &Page, side: Side) -> (Vec<Stroke>, f64) {
        let [face, back, cut, deeper] = &self.words;
        let word = if side == Side::Face { face } else { back };
        let marks = self.marks(side);
        let end = marks.iter().map(|marks| marks.span().1).max().unwrap_or(0);
        // A board whose length nobody knows yet goes on past what is known.
        let length =
            self.length.as_ref().map_or((end + 2 * self.height.nm).max(8 * self.height.nm), |length| length.nm);
        let size = (length.max(1) as f64, self.height.nm.max(1) as f64);
        // Where there are marks the picture is about them: how long the board is stands beside it.
        let measured = self.length.as_ref().filter(|_| marks.is_empty());
        let head = MARGIN + row(page.label) + whole::height(page, size, measured.is_some());
        let (panels, height) = self.panels(page, size, marks, head);
        let mut sheet = Sheet::new(page.width, height);
        sheet.text(&page.bold(word, Role::Ink), Anchor::Start, (MARGIN, MARGIN + base(page.label)));
        let lost = if side == Side::Face { self.lost.clone() } else { lost::behind(&self.lost, length) };
        let lost = lost.iter().map(|piece| piece.iter().map(|(x, y)| (*x as f64, *y as f64)).collect());
        let cuts: Vec<Vec<Dp>> = marks.iter().map(corners).chain(lost).collect();
        let top = MARGIN + row(page.label);
        whole::draw(&mut sheet, page, size, top, measured, &cuts);
        let mut top = head;
        for panel in &panels {
            panel.draw(&mut sheet, page, top, [word, cut, deeper], &cuts);
            top += panel.height(page);
        }
        (sheet.into_strokes(), height)
    }

    /// The magnified cuts, as high as the frame allows; the last ones are left out of a frame that is too low.
    fn panels<'a>(&'a self, page: &Page, size: Dp, marks: &'a [CutMarks], head: f64) -> (Vec<Panel<'a>>, f64) {
        let total = |panels: &[Panel<'_>]| head + panels.iter().map(|panel| panel.height(page)).sum::<f64>() + MARGIN;
        let [_, _, cut, _] = &self.words;
        for shown in (1..=marks.len()).rev() {
            for most in [280.0, 220.0, 170.0, 130.0, 100.0, 72.0, 48.0] {
                let panels: Vec<Panel<'_>> =
                    marks.iter().take(shown).map(|marks| Panel::of(page, size, marks, most, cut)).collect();
                if total(&panels) <= page.height {
                    let height = total(&panels);
                    return (panels, height);
                }
            }
        }
        (Vec::new(), total(&[]).min(page.height))
    }
}

fn corners(marks: &CutMarks) -> Vec<Dp> {
    marks.corners.iter().map(|(x, y)| (*x as f64, *y as f64)).collect()
}
