use super::font::{ASCENT, DESCENT, Weight};
use super::role::Role;
use super::sheet::Label;

/// The frame that a drawing is laid out for, in dp: what a shell said of it, kept within what can be drawn in.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Page {
    pub(super) width: f64,
    pub(super) height: f64,
    /// How high labels are set.
    pub(super) label: f64,
    /// How high less weighty texts are set.
    pub(super) small: f64,
    /// Whether the left hand holds the phone: it covers the left side.
    pub(super) left_hand: bool,
}

/// What is left free at the edges, in dp.
pub(super) const MARGIN: f64 = 10.0;

impl Page {
    /// A frame from its width and height and the sizes of labels and small texts; what cannot be drawn in is taken as
    /// the nearest that can.
    pub(crate) fn new([width, height, label, small]: [f32; 4], left_hand: bool) -> Self {
        let within = |value: f32, least: f64, most: f64| {
            if value.is_nan() { least } else { f64::from(value).clamp(least, most) }
        };
        Self {
            width: within(width, 120.0, 20_000.0),
            height: within(height, 48.0, 100_000.0),
            label: within(label, 8.0, 120.0),
            small: within(small, 8.0, 120.0),
            left_hand,
        }
    }

    /// The whole width.
    pub(crate) const fn width(&self) -> f64 {
        self.width
    }

    /// The width between the margins.
    pub(super) fn inner(&self) -> f64 {
        self.width - 2.0 * MARGIN
    }

    /// A label; smaller where its text would otherwise be wider than the drawing.
    pub(super) fn label<'a>(&self, text: &'a str, role: Role) -> Label<'a> {
        self.fitted(Label { text, role, weight: Weight::Regular, em: self.label })
    }

    /// A label in bold.
    pub(super) fn bold<'a>(&self, text: &'a str, role: Role) -> Label<'a> {
        self.fitted(Label { text, role, weight: Weight::Bold, em: self.label })
    }

    /// A less weighty text.
    pub(super) fn small<'a>(&self, text: &'a str, role: Role) -> Label<'a> {
        self.fitted(Label { text, role, weight: Weight::Regular, em: self.small })
    }

    fn fitted<'a>(&self, label: Label<'a>) -> Label<'a> {
        // A hair less than the room, so that rounding to single precision stays inside.
        let (width, room) = (label.width(), self.inner() - 0.01);
        if width <= room { label } else { Label { em: label.em * room / width, ..label } }
    }
}

/// The height of a row of text, with air.
pub(super) fn row(em: f64) -> f64 {
    em * (ASCENT + DESCENT) + 4.0
}

/// How far the base line lies under the top of a row.
pub(super) fn base(em: f64) -> f64 {
    em * ASCENT + 2.0
}
