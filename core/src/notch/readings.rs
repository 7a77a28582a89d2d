use thiserror::Error;

use super::{Block, Sides};
use crate::measure::Length;

/// The line from which heights are measured on the wall. Never the top of the board below: that is not where the bottom
/// of this one will lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeightLine {
    /// The line of the story pole where the board's bottom will lie.
    PoleLine,
    /// The top of the gauge blocks that carry the board.
    GaugeBlocks,
}

/// The place from which widths are measured on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WidthLine {
    /// The end of the board.
    BoardEnd,
    /// The face of the trim at the board's left; the board starts one end gap from it.
    Trim {
        /// The gap between trim and board.
        end_gap: Length,
    },
}

/// What the tape reads on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Readings {
    /// The line of the heights.
    pub height_line: HeightLine,
    /// The place of the widths.
    pub width_line: WidthLine,
    /// From there to the block's left side.
    pub left: Length,
    /// From there to the block's right side.
    pub right: Length,
    /// The block's bottom above the line, at its left and right side; under zero where it lies below.
    pub bottom: Sides<Length>,
    /// The block's top above the line, at its left and right side.
    pub top: Sides<Length>,
}

/// Why readings make no block.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum ReadingError {
    /// The end gap is under zero.
    #[error("the end gap must be at least zero")]
    EndGap,
    /// The right side does not lie to the right of the left one.
    #[error("the block's right side must lie to the right of its left side")]
    Width,
    /// The top does not lie above the bottom at one side.
    #[error("the block's top must lie above its bottom at both sides")]
    Height,
}

/// The block in the board's frame, from what the tape reads on the wall.
///
/// # Errors
/// [`ReadingError`], by the reading that cannot be.
pub fn block_from_tape(readings: &Readings) -> Result<Block, ReadingError> {
    let start = match readings.width_line {
        WidthLine::BoardEnd => Length::ZERO,
        WidthLine::Trim { end_gap } if end_gap.is_negative() => return Err(ReadingError::EndGap),
        WidthLine::Trim { end_gap } => end_gap,
    };
    let (bottom, top) = match readings.height_line {
        // Both lines are the board's bottom edge itself.
        HeightLine::PoleLine | HeightLine::GaugeBlocks => (readings.bottom, readings.top),
    };
    let block = Block { left: readings.left - start, right: readings.right - start, bottom, top };
    if block.left >= block.right {
        return Err(ReadingError::Width);
    }
    if !block.height().least().is_positive() {
        return Err(ReadingError::Height);
    }
    Ok(block)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn widths_from_the_trim_lose_the_end_gap() {
        let inch = Length::from_inches;
        let end_gap = Length::from_inches_64(0, 8);
        let readings = Readings {
            height_line: HeightLine::PoleLine,
            width_line: WidthLine::Trim { end_gap },
            left: inch(10),
            right: inch(16),
            bottom: Sides::both(inch(-1)),
            top: Sides::new(inch(4), inch(5)),
        };
        let block = block_from_tape(&readings).unwrap();
        assert_eq!((block.left, block.right), (inch(10) - end_gap, inch(16) - end_gap));
        assert_eq!((block.bottom, block.top), (readings.bottom, readings.top));
        let narrow = Readings { right: inch(10), ..readings };
        assert_eq!(block_from_tape(&narrow), Err(ReadingError::Width));
        let flat = Readings { top: Sides::new(inch(4), inch(-1)), ..readings };
        assert_eq!(block_from_tape(&flat), Err(ReadingError::Height));
        let neither = Readings { width_line: WidthLine::Trim { end_gap: inch(-1) }, ..readings };
        assert_eq!(block_from_tape(&neither), Err(ReadingError::EndGap));
    }
}
