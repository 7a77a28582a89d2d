/// What is cut out of the board for a block, by the edges of the board that the cut opens to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CutKind {
    /// The block does not enter the board.
    None,
    /// A notch in the bottom edge.
    Bottom,
    /// A notch in the top edge.
    Top,
    /// A hole: slip over, or split the board through it.
    Hole,
    /// The block passes right through: two pieces.
    Through,
    /// A corner is cut off: bottom left.
    BottomLeft,
    /// A corner is cut off: bottom right.
    BottomRight,
    /// A corner is cut off: top left.
    TopLeft,
    /// A corner is cut off: top right.
    TopRight,
    /// A notch in the left end.
    LeftEnd,
    /// A notch in the right end.
    RightEnd,
    /// Through, at the left end: the board is cut short there.
    CutShortLeft,
    /// Through, at the right end: the board is cut short there.
    CutShortRight,
    /// Open at both ends and at the bottom: a strip is ripped off along the bottom.
    RipBottom,
    /// Open at both ends and not at the bottom: the board is ripped along the block's underside. Where the block ends
    /// under the board's top edge, the strip above it is a piece of its own.
    RipTop,
    /// The block covers the board.
    Whole,
}

/// The edges of the board that a cut opens to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Opens {
    pub(super) left: bool,
    pub(super) right: bool,
    pub(super) bottom: bool,
    pub(super) top: bool,
}

impl CutKind {
    /// Every kind.
    pub const ALL: [Self; 16] = [
        Self::None,
        Self::Bottom,
        Self::Top,
        Self::Hole,
        Self::Through,
        Self::BottomLeft,
        Self::BottomRight,
        Self::TopLeft,
        Self::TopRight,
        Self::LeftEnd,
        Self::RightEnd,
        Self::CutShortLeft,
        Self::CutShortRight,
        Self::RipBottom,
        Self::RipTop,
        Self::Whole,
    ];

    /// The codes of [`CutKind::ALL`], in the same order.
    pub const CODES: [&str; 16] = [
        "none",
        "bottom",
        "top",
        "hole",
        "through",
        "bottom-left",
        "bottom-right",
        "top-left",
        "top-right",
        "left-end",
        "right-end",
        "cut-short-left",
        "cut-short-right",
        "rip-bottom",
        "rip-top",
        "whole",
    ];

    /// The kind's code, such as `bottom-left`.
    pub fn code(self) -> &'static str {
        let found = Self::ALL.iter().zip(Self::CODES).find_map(|(kind, code)| (*kind == self).then_some(code));
        found.unwrap_or("none")
    }

    /// The kind of a cut that opens to these edges.
    pub(super) const fn of(opens: Opens) -> Self {
        match (opens.left, opens.right, opens.bottom, opens.top) {
            (true, true, true, true) => Self::Whole,
            (true, true, true, false) => Self::RipBottom,
            (true, true, false, _) => Self::RipTop,
            (true, false, true, true) => Self::CutShortLeft,
            (false, true, true, true) => Self::CutShortRight,
            (false, false, true, true) => Self::Through,
            (true, false, true, false) => Self::BottomLeft,
            (false, true, true, false) => Self::BottomRight,
            (true, false, false, true) => Self::TopLeft,
            (false, true, false, true) => Self::TopRight,
            (true, false, false, false) => Self::LeftEnd,
            (false, true, false, false) => Self::RightEnd,
            (false, false, true, false) => Self::Bottom,
            (false, false, false, true) => Self::Top,
            (false, false, false, false) => Self::Hole,
        }
    }

    /// Whether the cut takes the board's whole height, so that no leg stays beside it.
    pub const fn is_through(self) -> bool {
        matches!(self, Self::Through | Self::CutShortLeft | Self::CutShortRight)
    }

    /// Whether it is a notch in the bottom edge, also at an end.
    pub const fn is_bottom_notch(self) -> bool {
        matches!(self, Self::Bottom | Self::BottomLeft | Self::BottomRight)
    }

    /// Whether it is a notch in the top edge, also at an end.
    pub const fn is_top_notch(self) -> bool {
        matches!(self, Self::Top | Self::TopLeft | Self::TopRight)
    }

    /// The kind seen from behind the board.
    #[must_use]
    pub const fn mirrored(self) -> Self {
        match self {
            Self::BottomLeft => Self::BottomRight,
            Self::BottomRight => Self::BottomLeft,
            Self::TopLeft => Self::TopRight,
            Self::TopRight => Self::TopLeft,
            Self::LeftEnd => Self::RightEnd,
            Self::RightEnd => Self::LeftEnd,
            Self::CutShortLeft => Self::CutShortRight,
            Self::CutShortRight => Self::CutShortLeft,
            same => same,
        }
    }
}
