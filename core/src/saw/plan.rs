use crate::measure::Length;

/// One piece of board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Piece {
    /// The run that it covers.
    pub run: usize,
    /// Its left end on the wall, gaps taken off.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// The length to cut: between its ends, rounded down to the tape.
    pub length: Length,
}

/// One board and what is cut from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SawnBoard {
    /// Index into the stock, or into the offcuts and, behind them, the strips left over.
    pub source: usize,
    /// Whether it is an offcut.
    pub offcut: bool,
    /// The board's length.
    pub length: Length,
    /// Indices of its pieces.
    pub pieces: Vec<usize>,
    /// Indices of further pieces, which are cut out of the strips that are ripped off these; of all that is cut from a strip
    /// left over.
    pub strips: Vec<usize>,
    /// What is left of it.
    pub left: Length,
    /// Whether the rest is worth keeping.
    pub keep: bool,
}

/// A cutting plan and what is known about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// All pieces, by run and from left to right.
    pub pieces: Vec<Piece>,
    /// All boards, new and left over.
    pub boards: Vec<SawnBoard>,
    /// How many new boards.
    pub count: usize,
    /// What the new boards cost, in the cut list's billionths.
    pub cost: u64,
    /// No plan costs less than this, in the cut list's billionths.
    pub bound: u64,
    /// Whether the bound meets the cost, in whole numbers.
    pub proved: bool,
}

impl Plan {
    /// The share of the boards used that is not in the pieces; zero without boards.
    pub fn waste_share(&self) -> f64 {
        let cut: i128 = self.pieces.iter().map(|piece| piece.length.wide()).sum();
        let boards: i128 = self.boards.iter().map(|board| board.length.wide()).sum();
        if boards == 0 { 0.0 } else { (boards - cut) as f64 / boards as f64 }
    }
}
