use super::exact::{ExactCut, Halves};
use super::{BoardInHand, CutKind};
use crate::measure::Length;

/// What is left of the board beside, above and below a cut, measured from the marks; `None` where nothing is left.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Legs {
    /// Above the cut, at its higher side.
    pub above: Option<Length>,
    /// Below the cut, at its lower side.
    pub below: Option<Length>,
    /// From the board's left end to the cut.
    pub left: Option<Length>,
    /// From the cut to the board's right end.
    pub right: Option<Length>,
}

impl Legs {
    /// The legs of a cut. A board that is cut right through has none: its pieces end at the block.
    pub(super) fn of(kind: CutKind, cut: &ExactCut, board: &BoardInHand) -> Self {
        if kind.is_through() {
            return Self::default();
        }
        let some = |leg: Halves| (leg > Halves::ZERO).then_some(leg.round());
        Self {
            above: some(Halves::of(board.height) - cut.top.most()),
            below: some(cut.bottom.least()),
            left: some(cut.left),
            right: some(Halves::of(board.length) - cut.right),
        }
    }

    /// The legs that there are, with their names.
    pub fn named(&self) -> impl Iterator<Item = (&'static str, Length)> {
        [("above", self.above), ("below", self.below), ("left", self.left), ("right", self.right)]
            .into_iter()
            .filter_map(|(name, leg)| leg.map(|leg| (name, leg)))
    }
}
