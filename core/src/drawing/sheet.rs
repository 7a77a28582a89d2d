use super::clip::{self, Dp};
use super::font::{self, ASCENT, DESCENT, Weight};
use super::role::{Dash, Role};
use super::stroke::{Anchor, Spot, Stroke};

/// A text before it is placed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Label<'a> {
    pub(super) text: &'a str,
    pub(super) role: Role,
    pub(super) weight: Weight,
    pub(super) em: f64,
}

impl Label<'_> {
    pub(super) fn width(&self) -> f64 {
        font::width(self.text, self.weight, self.em)
    }
}

/// A rectangle in dp.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Area {
    pub(super) left: f64,
    pub(super) top: f64,
    pub(super) right: f64,
    pub(super) bottom: f64,
}

impl Area {
    pub(super) fn corners(&self) -> [Dp; 4] {
        [(self.left, self.top), (self.right, self.top), (self.right, self.bottom), (self.left, self.bottom)]
    }

    pub(super) fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    pub(super) fn width(&self) -> f64 {
        self.right - self.left
    }

    pub(super) fn height(&self) -> f64 {
        self.bottom - self.top
    }
}

/// A drawing in the making: strokes cut off at its edges, and texts that never overlap.
pub(super) struct Sheet {
    size: Dp,
    strokes: Vec<Stroke>,
    taken: Vec<Area>,
}

/// How thick lines are, in dp.
pub(super) const THIN: f64 = 1.0;
pub(super) const PLAIN: f64 = 1.5;
pub(super) const HEAVY: f64 = 3.0;
/// From line to line of a hatch, in dp.
pub(super) const HATCH: f64 = 7.0;

impl Sheet {
    pub(super) const fn new(width: f64, height: f64) -> Self {
        Self { size: (width, height), strokes: Vec::new(), taken: Vec::new() }
    }

    /// What was drawn.
    pub(super) fn into_strokes(self) -> Vec<Stroke> {
        self.strokes
    }

    pub(super) fn fill(&mut self, role: Role, corners: &[Dp]) {
        let corners = clip::polygon(corners, self.size);
        if corners.len() > 2 {
            self.strokes.push(Stroke::Fill { role, corners: spots(&corners) });
        }
    }

    pub(super) fn hatch(&mut self, role: Role, spacing: f64, corners: &[Dp]) {
        let corners = clip::polygon(corners, self.size);
        if corners.len() > 2 {
            let (spacing, thickness) = (spacing as f32, PLAIN as f32);
            self.strokes.push(Stroke::Hatch { role, spacing, thickness, corners: spots(&corners) });
        }
    }

    pub(super) fn line(&mut self, role: Role, pattern: Dash, thickness: f64, points: &[Dp]) {
        for part in clip::line(points, self.size) {
            self.push_line(role, pattern, thickness, false, &part);
        }
    }

    /// The outline of a polygon; where it is cut off, the edge of the drawing is no part of it.
    pub(super) fn outline(&mut self, role: Role, pattern: Dash, thickness: f64, corners: &[Dp]) {
        let inside = |(x, y): &Dp| (0.0..=self.size.0).contains(x) && (0.0..=self.size.1).contains(y);
        if corners.iter().all(inside) {
            self.push_line(role, pattern, thickness, true, corners);
        } else {
            let round: Vec<Dp> = corners.iter().chain(corners.first()).copied().collect();
            self.line(role, pattern, thickness, &round);
        }
    }

    fn push_line(&mut self, role: Role, pattern: Dash, thickness: f64, closed: bool, points: &[Dp]) {
        let thickness = thickness as f32;
        self.strokes.push(Stroke::Line { role, pattern, thickness, closed, points: spots(points) });
    }

    /// The room that a text takes up whose base line goes through `at`.
    pub(super) fn room(&self, label: &Label<'_>, anchor: Anchor, at: Dp) -> Area {
        let width = label.width();
        let left = match anchor {
            Anchor::Start => at.0,
            Anchor::Middle => at.0 - width / 2.0,
            Anchor::End => at.0 - width,
        };
        let (top, bottom) = (at.1 - ASCENT * label.em, at.1 + DESCENT * label.em);
        Area { left, top, right: left + width, bottom }
    }

    /// Whether a text has room: on the drawing, and clear of the other texts.
    pub(super) fn is_free(&self, area: &Area) -> bool {
        let inside = area.left >= 0.0 && area.top >= 0.0 && area.right <= self.size.0 && area.bottom <= self.size.1;
        inside && !self.taken.iter().any(|other| other.meets(area))
    }

    /// Keeps texts away from here.
    pub(super) fn take(&mut self, area: Area) {
        self.taken.push(area);
    }

    /// Draws a text where it has room; says whether it did.
    pub(super) fn text(&mut self, label: &Label<'_>, anchor: Anchor, at: Dp) -> bool {
        let area = self.room(label, anchor, at);
        let free = !label.text.is_empty() && self.is_free(&area);
        if free {
            self.taken.push(area);
            self.push_text(label, anchor, at, 0.0);
        }
        free
    }

    /// Draws a text upright, to be read from the right, its middle at `at`, where it has room; says whether it did.
    pub(super) fn upright_text(&mut self, under: Role, label: &Label<'_>, at: Dp) -> bool {
        let (half, width) = ((ASCENT + DESCENT) * label.em / 2.0, label.width());
        let base = at.0 + (ASCENT - DESCENT) * label.em / 2.0;
        let area = Area { left: at.0 - half, top: at.1 - width / 2.0, right: at.0 + half, bottom: at.1 + width / 2.0 };
        let free = !label.text.is_empty() && self.is_free(&area);
        if free {
            self.fill(under, &area.corners());
            self.taken.push(area);
            self.push_text(label, Anchor::Middle, (base, at.1), 90.0);
        }
        free
    }

    fn push_text(&mut self, label: &Label<'_>, anchor: Anchor, at: Dp, turn: f32) {
        self.strokes.push(Stroke::Text {
            role: label.role,
            weight: label.weight,
            anchor,
            at: spot(at),
            em: label.em as f32,
            turn,
            width: label.width() as f32,
            text: label.text.to_owned(),
        });
    }

    /// The same over a patch of `under`, so that no line runs through it.
    pub(super) fn text_on(&mut self, under: Role, label: &Label<'_>, anchor: Anchor, at: Dp) -> bool {
        let area = self.room(label, anchor, at);
        let free = !label.text.is_empty() && self.is_free(&area);
        if free {
            self.fill(under, &area.corners());
        }
        free && self.text(label, anchor, at)
    }
}

fn spot((x, y): Dp) -> Spot {
    Spot { x: x as f32, y: y as f32 }
}

fn spots(points: &[Dp]) -> Vec<Spot> {
    points.iter().copied().map(spot).collect()
}
