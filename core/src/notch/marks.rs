use super::exact::{ExactCut, Halves, down};
use super::{BoardInHand, CutKind, Notch, Sides};
use crate::measure::Length;

/// The marks of a cut in the board's frame: where the saw goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// The left mark, from the board's left end.
    pub left: Length,
    /// The right mark, from the board's left end.
    pub right: Length,
    /// The lower edge of the cut above the board's bottom edge, at the left and the right mark.
    pub bottom: Sides<Length>,
    /// The upper edge of the cut above the board's bottom edge, at the left and the right mark.
    pub top: Sides<Length>,
}

impl Cut {
    /// Each mark to the nearest nanometre.
    pub(super) fn rounded(exact: &ExactCut) -> Self {
        Self {
            left: exact.left.round(),
            right: exact.right.round(),
            bottom: exact.bottom.map(Halves::round),
            top: exact.top.map(Halves::round),
        }
    }

    /// The same cut seen from behind a board of this length.
    #[must_use]
    pub fn mirrored(&self, length: Length) -> Self {
        Self {
            left: length - self.right,
            right: length - self.left,
            bottom: self.bottom.swapped(),
            top: self.top.swapped(),
        }
    }

    /// The corners of what is cut out, from the lower left one counter-clockwise.
    pub fn outline(&self) -> [BoardPoint; 4] {
        [
            BoardPoint { x: self.left, y: self.bottom.left },
            BoardPoint { x: self.right, y: self.bottom.right },
            BoardPoint { x: self.right, y: self.top.right },
            BoardPoint { x: self.left, y: self.top.left },
        ]
    }
}

/// A point of the board, from its lower left corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct BoardPoint {
    /// To the right of the board's left end.
    pub x: Length,
    /// Above the board's bottom edge.
    pub y: Length,
}

/// The edge of the board from which a height is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeName {
    /// The bottom edge.
    Bottom,
    /// The top edge.
    Top,
}

/// A height to transfer to the board: from its nearer edge, at both sides of the cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotchMark {
    /// The edge from which it is measured, the same at both sides.
    pub from: EdgeName,
    /// The distance from that edge at the left and the right mark.
    pub at: Sides<Length>,
}

/// The marks to transfer to one face of the board; drawings and screens show these and nothing else.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FaceMarks {
    /// The upright lines, each from the board's left end as that face shows it.
    pub uprights: Vec<Length>,
    /// The lines along the board: each with the edge from which it is measured. A notch in an edge is measured from that
    /// edge, any other line from the nearer one.
    pub levels: Vec<NotchMark>,
    /// The cut on this face.
    pub cut: Cut,
}

/// The marks of a notch on the face, or on the back, where left and right change places; `None` where nothing is cut.
pub fn marks(notch: &Notch, board: &BoardInHand, back: bool) -> Option<FaceMarks> {
    let exact = notch.exact.map(|face| if back { face.mirrored(board) } else { face })?;
    let cut = Cut::rounded(&exact);
    let inside = |x: &Length| x.is_positive() && *x < board.length;
    let uprights = [cut.left, cut.right].into_iter().filter(inside).collect();
    let levels = [(exact.bottom, EdgeName::Bottom), (exact.top, EdgeName::Top)]
        .into_iter()
        .filter(|(heights, open)| match open {
            EdgeName::Bottom => heights.most() > Halves::ZERO,
            EdgeName::Top => heights.least() < Halves::of(board.height),
        })
        .map(|(heights, _)| level(notch.kind, heights, board))
        .collect();
    Some(FaceMarks { uprights, levels, cut })
}

fn level(kind: CutKind, heights: Sides<Halves>, board: &BoardInHand) -> NotchMark {
    let down = down(heights, board);
    let from_bottom = match kind {
        kind if kind.is_bottom_notch() => true,
        kind if kind.is_top_notch() => false,
        _ => heights.left + heights.right <= down.left + down.right,
    };
    let (from, at) = if from_bottom { (EdgeName::Bottom, heights) } else { (EdgeName::Top, down) };
    NotchMark { from, at: at.map(Halves::round) }
}
