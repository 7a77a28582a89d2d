use thiserror::Error;

use super::exact::{ExactCut, Halves, down};
use super::kind::Opens;
use super::{Block, BoardInHand, Cut, CutKind, Edge, Gap, GapRule, Legs, Overcut, Sides};
use crate::measure::{Division, Length};

/// Two heights of one edge that differ by no more than this are level where nobody says otherwise, and a cross-check that is
/// off by no more holds: an eighth of an inch.
pub const EIGHTH: Length = Length::from_inches_64(0, 8);

/// What the notch for the board in hand is laid out from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotchRequest {
    /// The board.
    pub board: BoardInHand,
    /// The block, in the board's frame.
    pub block: Block,
    /// The gaps that are wanted, by the edges of the block.
    pub gap: GapRule<Gap>,
    /// What the saw takes beyond the line.
    pub overcut: Overcut,
    /// How far a mark may lie from where it should.
    pub tape: Length,
    /// The smallest mark used on the tape.
    pub division: Division,
    /// A leg under this is thin.
    pub leg_min: Length,
    /// By how much two heights of one edge may differ and still be level.
    pub level: Length,
    /// Whether there is a course under this board.
    pub below: bool,
    /// Whether the gap over the block stays open, as over a head flashing: a board that lies nearer is cut, though the
    /// block itself does not enter it.
    pub open_above: bool,
}

/// The laid out notch, seen from the face.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notch {
    /// The kind of cut.
    pub kind: CutKind,
    /// How far the marks lie outside the block.
    pub offset: GapRule<Length>,
    /// The gaps that will come out.
    pub gap: GapRule<Gap>,
    /// The marks; `None` where the block does not enter the board.
    pub cut: Option<Cut>,
    /// What is left of the board round the cut.
    pub legs: Legs,
    /// What to look at before the saw starts.
    pub warnings: Vec<Warning>,
    /// The marks before they were rounded.
    pub(super) exact: Option<ExactCut>,
}

/// What to look at before the saw starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Warning {
    /// The gap at an edge of the block comes out under the wanted one, or a block that the board does not reach lies
    /// nearer than that.
    GapTight {
        /// Where.
        edge: Edge,
        /// The least gap that comes out.
        least: Length,
        /// The least that is wanted.
        wanted: Length,
    },
    /// The gap at an edge of the block comes out over the wanted one.
    GapWide {
        /// Where.
        edge: Edge,
        /// The greatest gap that comes out.
        most: Length,
        /// The greatest that is wanted.
        wanted: Length,
    },
    /// A leg is thin: fibre cement is brittle.
    ThinLeg {
        /// `above`, `below`, `left` or `right`.
        leg: &'static str,
        /// Its width.
        width: Length,
    },
    /// The two heights of a cut edge differ by more than an eighth of an inch.
    OutOfLevel {
        /// The top or the bottom of the cut.
        edge: Edge,
        /// By how much.
        by: Length,
    },
}

/// How near a block lies that does not enter the board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Touch {
    /// The distance beside the board; zero where they overlap.
    pub beside: Length,
    /// The distance above or below the board; zero where they overlap.
    pub over: Length,
    /// The edge of the block that faces the board above or below it.
    pub edge: Edge,
    /// Whether the block lies beside the board, or touches its end there.
    is_beside: bool,
    /// Whether it lies above or below the board, or touches its edge there.
    is_over: bool,
}

/// Why no notch can be laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum NotchError {
    /// The board has no height or no length.
    #[error("the board's height and length must be over zero")]
    Board,
    /// The lap is under zero or not under the board's height.
    #[error("the lap must be at least zero and under the board's height")]
    Lap,
    /// The block's right side is not to the right of its left side.
    #[error("the block's right side must lie to the right of its left side")]
    BlockWidth,
    /// The block's top is not above its bottom at one of its sides.
    #[error("the block's top must lie above its bottom at both sides")]
    BlockHeight,
    /// A wanted gap is under zero or its least is over its greatest.
    #[error("a gap must be at least zero, and its least not over its greatest")]
    Gap,
    /// The overcut's least is over its greatest.
    #[error("the least overcut must not be over the greatest")]
    Overcut,
    /// The tape's error or the least leg is under zero.
    #[error("the tape's error and the least leg must be at least zero")]
    Negative,
}

impl Notch {
    /// The notch for a block.
    ///
    /// A block enters the board where it overlaps it; one that only touches it, or lies beside it by less than the gap,
    /// does not, and is warned of; where the gap over it stays open, its mark is what enters. The marks are the block's
    /// edges moved outward by the offset; a mark on or beyond an
    /// edge of the board opens the cut to that edge, and so does a block that starts less than the lap above the bottom
    /// edge, where there is a course below: the strip under it would lie over the board below, which carries its own
    /// notch. The deeper side of a sloped edge decides; an edge that is open is open along the whole width. The heights
    /// at the block's sides hold at the marks, also where a side lies beyond the board's end.
    ///
    /// # Errors
    /// [`NotchError`], by what is wrong with the request.
    pub fn lay_out(request: &NotchRequest) -> Result<Self, NotchError> {
        request.check()?;
        let NotchRequest { board, block, gap, overcut, tape, division, .. } = request;
        let offset = gap.map(|gap| gap.exact_offset(*overcut, *division));
        let mut notch = Self {
            kind: CutKind::None,
            offset: offset.map(Halves::round),
            gap: offset.map(|offset| Gap::of_exact(offset, *overcut, *tape)),
            cut: None,
            legs: Legs::default(),
            warnings: Vec::new(),
            exact: None,
        };
        let over = if request.open_above { notch.offset.at(Edge::Top) } else { Length::ZERO };
        let reach = Block { top: block.top.map(|height| height + over), ..*block };
        if let Some(touch) = Touch::of(board, &reach).and_then(|_| Touch::of(board, block)) {
            notch.warnings = touch.warnings(gap);
            return Ok(notch);
        }
        let of = Halves::of;
        let beside = offset.at(Edge::Sides);
        let (left, right) = (of(block.left) - beside, of(block.right) + beside);
        let bottom = block.bottom.map(|height| of(height) - offset.at(Edge::Bottom));
        let top = block.top.map(|height| of(height) + offset.at(Edge::Top));
        let (zero, length, height) = (Halves::ZERO, of(board.length), of(board.height));
        let strip_over_lap = request.below && board.lap.is_some_and(|lap| block.bottom.least() < lap);
        let opens = Opens {
            left: left <= zero,
            right: right >= length,
            bottom: bottom.least() <= zero || strip_over_lap,
            top: top.most() >= height,
        };
        let clip = |at: Halves| at.clamp(zero, height);
        let exact = ExactCut {
            left: left.max(zero),
            right: right.min(length),
            bottom: if opens.bottom { Sides::both(zero) } else { bottom.map(clip) },
            top: if opens.top { Sides::both(height) } else { top.map(clip) },
        };
        let cut = Cut::rounded(&exact);
        notch.kind = CutKind::of(opens);
        notch.legs = Legs::of(notch.kind, &exact, board);
        (notch.cut, notch.exact) = (Some(cut), Some(exact));
        notch.warnings = notch.gap_warnings(request, opens);
        let level =
            [(Edge::Top, cut.top), (Edge::Bottom, cut.bottom)].map(|(edge, ends)| (edge, ends.most() - ends.least()));
        notch.warnings.extend(
            level.into_iter().filter(|(_, by)| *by > request.level).map(|(edge, by)| Warning::OutOfLevel { edge, by }),
        );
        let thin = notch.legs.named().filter(|(_, width)| *width < request.leg_min);
        notch.warnings.extend(thin.map(|(leg, width)| Warning::ThinLeg { leg, width }));
        Ok(notch)
    }

    /// The depth of a notch at its left and right side, from the edge of the board that it opens to; `None` where the
    /// cut is no notch in the bottom or top edge.
    pub fn depth(&self, board: &BoardInHand) -> Option<Sides<Length>> {
        let cut = self.exact?;
        let depth = if self.kind.is_bottom_notch() {
            cut.top
        } else if self.kind.is_top_notch() {
            down(cut.bottom, board)
        } else {
            return None;
        };
        Some(depth.map(Halves::round))
    }

    /// The marks seen from behind the board, where left and right change places.
    pub fn behind(&self, board: &BoardInHand) -> Option<Cut> {
        self.exact.map(|cut| Cut::rounded(&cut.mirrored(board)))
    }

    /// How far the depth and the other board's depth over the same block are from closing on each other, on the worse
    /// side: `(depth - offset) + other_depth - (block height + lap - between * reveal)`, where `between` boards are cut
    /// right through between the two and `other_depth` is measured to the block itself. `None` where the cut is no notch
    /// in the bottom or top edge.
    pub fn cross_check(
        &self,
        board: &BoardInHand,
        block: &Block,
        other_depth: Length,
        lap: Length,
        through: Length,
    ) -> Option<Length> {
        let depth = self.depth(board)?;
        let edge = if self.kind.is_bottom_notch() { Edge::Top } else { Edge::Bottom };
        let offset = self.offset.at(edge);
        let height = block.height();
        let miss = |depth: Length, height: Length| depth - offset + other_depth - (height + lap - through);
        let (left, right) = (miss(depth.left, height.left), miss(depth.right, height.right));
        Some(if right.abs() > left.abs() { right } else { left })
    }

    /// Whether a cross-check is off by more than a tape explains.
    pub fn is_off(miss: Length) -> bool {
        miss.abs() > EIGHTH
    }

    fn gap_warnings(&self, request: &NotchRequest, opens: Opens) -> Vec<Warning> {
        let cut = |edge: &Edge| match edge {
            Edge::Sides => !(opens.left && opens.right),
            Edge::Top => !opens.top,
            Edge::Bottom => !opens.bottom,
        };
        let mut edges: Vec<Edge> = Edge::ALL.into_iter().filter(cut).collect();
        if matches!(request.gap, GapRule::One(_)) {
            edges.truncate(1);
        }
        let mut warnings = Vec::new();
        for edge in edges {
            let (comes, wanted) = (self.gap.at(edge), request.gap.at(edge));
            if comes.min < wanted.min {
                warnings.push(Warning::GapTight { edge, least: comes.min, wanted: wanted.min });
            }
            if comes.max > wanted.max {
                warnings.push(Warning::GapWide { edge, most: comes.max, wanted: wanted.max });
            }
        }
        warnings
    }
}

impl NotchRequest {
    fn check(&self) -> Result<(), NotchError> {
        let Self { board, block, gap, overcut, tape, leg_min, .. } = self;
        let gaps = Edge::ALL.map(|edge| gap.at(edge));
        let height = block.height();
        let checks = [
            (board.height.is_positive() && board.length.is_positive(), NotchError::Board),
            (board.lap.is_none_or(|lap| !lap.is_negative() && lap < board.height), NotchError::Lap),
            (block.left < block.right, NotchError::BlockWidth),
            (height.least().is_positive(), NotchError::BlockHeight),
            (gaps.iter().all(|gap| !gap.min.is_negative() && gap.min <= gap.max), NotchError::Gap),
            (overcut.min <= overcut.max, NotchError::Overcut),
            (!tape.is_negative() && !leg_min.is_negative(), NotchError::Negative),
        ];
        checks.into_iter().find(|(right, _)| !right).map_or(Ok(()), |(_, error)| Err(error))
    }
}

impl Touch {
    /// How near the block lies; `None` where it enters the board.
    pub fn of(board: &BoardInHand, block: &Block) -> Option<Self> {
        let beside = (-block.right).max(block.left - board.length);
        let (under, above) = (-block.top.most(), block.bottom.least() - board.height);
        let over = under.max(above);
        if beside.is_negative() && over.is_negative() {
            return None;
        }
        let edge = if under >= above { Edge::Top } else { Edge::Bottom };
        let (is_beside, is_over) = (!beside.is_negative(), !over.is_negative());
        Some(Self { beside: beside.max(Length::ZERO), over: over.max(Length::ZERO), edge, is_beside, is_over })
    }

    /// Off a corner the distance is that between the corners; otherwise straight across.
    fn warnings(&self, gap: &GapRule<Gap>) -> Vec<Warning> {
        let facing: &[Edge] = match (self.is_beside, self.is_over) {
            (true, false) => &[Edge::Sides],
            (false, _) => &[self.edge],
            (true, true) => &[Edge::Sides, self.edge],
        };
        let square = self.beside.wide().saturating_pow(2).saturating_add(self.over.wide().saturating_pow(2));
        // Down to the nanometre: a gap is never said to be wider than it is.
        let least = Length::from_wide(square.isqrt()).unwrap_or(Length::LIMIT);
        let near = |edge: &&Edge| square < gap.at(**edge).min.wide().saturating_pow(2);
        let mut warnings: Vec<Warning> = facing
            .iter()
            .filter(near)
            .map(|edge| Warning::GapTight { edge: *edge, least, wanted: gap.at(*edge).min })
            .collect();
        if matches!(gap, GapRule::One(_)) {
            warnings.truncate(1);
        }
        warnings
    }
}
