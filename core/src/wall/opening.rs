use num_bigint::BigInt;

use super::{Point, Span};
use crate::measure::Length;

/// What closes an opening.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum OpeningKind {
    /// A window: its sill takes a course line, if it can.
    Window,
    /// A door: it reaches down to the base line.
    Door,
}

impl OpeningKind {
    /// Every kind.
    pub const ALL: [Self; 2] = [Self::Window, Self::Door];

    /// The stable text code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Window => "window",
            Self::Door => "door",
        }
    }

    /// The kind of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.code() == code)
    }
}

/// A window or a door with its trim, as the siding meets it: sill and head are level, the sides are straight and may
/// lean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Opening {
    /// What closes it.
    pub kind: OpeningKind,
    /// The outer edge of the left trim, at the sill.
    pub left: Length,
    /// The outer edge of the right trim, at the sill.
    pub right: Length,
    /// The outer edge of the left trim, at the head.
    pub head_left: Length,
    /// The outer edge of the right trim, at the head.
    pub head_right: Length,
    /// The underside of the sill or its trim.
    pub bottom: Length,
    /// The top of the head trim.
    pub top: Length,
}

impl Opening {
    /// From side to side at the sill.
    pub const fn sill(&self) -> Span {
        Span { from: self.left, to: self.right }
    }

    /// From side to side at the head.
    pub const fn head(&self) -> Span {
        Span { from: self.head_left, to: self.head_right }
    }

    /// Its corners: the ends of its head, left and right, then those of its sill, right and left.
    pub const fn corners(&self) -> [Point; 4] {
        [
            Point::new(self.head_left, self.top),
            Point::new(self.head_right, self.top),
            Point::new(self.right, self.bottom),
            Point::new(self.left, self.bottom),
        ]
    }

    /// From its leftmost to its rightmost point.
    pub fn across(&self) -> Span {
        Span { from: self.left.min(self.head_left), to: self.right.max(self.head_right) }
    }

    /// Its sides at a height, to the nearest nanometre; below the sill and above the head they go on straight.
    pub fn sides_at(&self, y: Length) -> Span {
        let (height, up) = ((self.top - self.bottom).nm(), (y - self.bottom).nm());
        let at = |sill: Length, head: Length| sill + (head - sill).scaled(up, height).unwrap_or_default();
        Span { from: at(self.left, self.head_left), to: at(self.right, self.head_right) }
    }

    /// Its sides at two heights, beyond sill and head at those.
    fn sides_between(&self, from: Length, to: Length) -> [Span; 2] {
        [from, to].map(|y| self.sides_at(y.max(self.bottom).min(self.top)))
    }

    /// From its leftmost to its rightmost point between two heights; beyond sill and head it has none.
    pub fn widest(&self, from: Length, to: Length) -> Span {
        let [a, b] = self.sides_between(from, to);
        Span { from: a.from.min(b.from), to: a.to.max(b.to) }
    }

    /// What it fills at every height between two: a board beside a leaning side reaches into the rest.
    pub fn narrowest(&self, from: Length, to: Length) -> Span {
        let [a, b] = self.sides_between(from, to);
        Span { from: a.from.max(b.from), to: a.to.min(b.to) }
    }

    /// Twice its area in square nanometres (a trapezium).
    pub fn twice_area(&self) -> BigInt {
        let widths = self.sill().length() + self.head().length();
        BigInt::from(widths.nm()) * (self.top - self.bottom).nm()
    }
}

/// What the bottom edge of the siding must keep clear of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Abutment {
    /// The left end.
    pub left: Length,
    /// The right end.
    pub right: Length,
    /// Its upper surface, above the base line (negative where it lies below).
    pub top: Length,
    /// The least distance from it to the siding.
    pub clearance: Length,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sides_of_a_leaning_window_are_straight() {
        // By hand: 40 in wide at the sill and 41 in at the head, whose left side stands 1 in further right, over 48 in.
        let inch = Length::from_inches;
        let window = Opening {
            kind: OpeningKind::Window,
            left: inch(100),
            right: inch(140),
            head_left: inch(101),
            head_right: inch(142),
            bottom: inch(28),
            top: inch(76),
        };
        let half = |x: i64| Length::from_inches_64(x, 32);
        assert_eq!(window.sides_at(inch(52)), Span { from: half(100), to: inch(141) });
        assert_eq!(window.across(), Span { from: inch(100), to: inch(142) });
        assert_eq!(window.widest(inch(20), inch(52)), Span { from: inch(100), to: inch(141) });
        assert_eq!(window.narrowest(inch(52), inch(90)), Span { from: inch(101), to: inch(141) });
        assert_eq!(window.twice_area(), BigInt::from(81 * 48) * inch(1).nm() * inch(1).nm());
    }
}
