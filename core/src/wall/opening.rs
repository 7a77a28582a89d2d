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

/// A window or a door with its trim, as the siding meets it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Opening {
    /// What closes it.
    pub kind: OpeningKind,
    /// The outer edge of the left trim.
    pub left: Length,
    /// The outer edge of the right trim.
    pub right: Length,
    /// The underside of the sill or its trim.
    pub bottom: Length,
    /// The top of the head trim.
    pub top: Length,
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
