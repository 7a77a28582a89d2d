use super::{BoardInHand, BoardPoint};
use crate::measure::Length;

/// A round pipe that passes the board without a block, in the board's frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RoundPipe {
    /// Its outside diameter.
    pub diameter: Length,
    /// Its centre.
    pub center: BoardPoint,
}

/// What is cut for a round pipe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PipeCut {
    /// The pipe does not reach the board.
    None,
    /// A hole round the pipe's centre.
    Hole {
        /// Its diameter.
        diameter: Length,
    },
    /// A U, as wide as the hole would be, open to the edges that it crosses.
    U {
        /// Its width: the diameter of the bit.
        width: Length,
        /// Open to the left end.
        left: bool,
        /// Open to the right end.
        right: bool,
        /// Open to the bottom edge.
        bottom: bool,
        /// Open to the top edge.
        top: bool,
    },
}

/// The cut for a round pipe: a hole of `diameter + 2 gap`; where it reaches an edge of the board, a U open to that edge.
/// [`PipeCut::None`] where the pipe does not cross the board's face. The pipe's circle is judged by its bounding square.
pub fn round_pipe(board: &BoardInHand, pipe: &RoundPipe, gap: Length) -> PipeCut {
    let diameter = pipe.diameter + gap + gap;
    // Doubled, so that half a diameter needs no rounding.
    let twice = |length: Length| length.wide() * 2;
    let (x, y) = (twice(pipe.center.x), twice(pipe.center.y));
    let (length, height) = (twice(board.length), twice(board.height));
    let own = pipe.diameter.wide();
    if x + own <= 0 || x - own >= length || y + own <= 0 || y - own >= height {
        return PipeCut::None;
    }
    let hole = diameter.wide();
    let (left, right) = (x - hole <= 0, x + hole >= length);
    let (bottom, top) = (y - hole <= 0, y + hole >= height);
    if left || right || bottom || top {
        PipeCut::U { width: diameter, left, right, bottom, top }
    } else {
        PipeCut::Hole { diameter }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut(x: i64, y: i64) -> PipeCut {
        let board = BoardInHand { height: Length::from_inches(8), length: Length::from_inches(100), lap: None };
        let center = BoardPoint { x: Length::from_inches(x), y: Length::from_inches(y) };
        round_pipe(&board, &RoundPipe { diameter: Length::from_inches(1), center }, Length::from_inches_64(0, 8))
    }

    #[test]
    fn a_pipe_inside_gets_a_hole_and_one_across_an_edge_a_u() {
        let width = Length::from_inches_64(1, 16);
        assert_eq!(cut(50, 4), PipeCut::Hole { diameter: width });
        assert_eq!(cut(50, 0), PipeCut::U { width, left: false, right: false, bottom: true, top: false });
        assert_eq!(cut(100, 8), PipeCut::U { width, left: false, right: true, bottom: false, top: true });
        assert_eq!(cut(50, 9), PipeCut::None);
    }
}
