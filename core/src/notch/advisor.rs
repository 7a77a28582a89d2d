//! Where the block round a hole sits best: the hole is where it is, the block around it is not.
//!
//! Every allowed size is tried with the hole at every mark of the tape that leaves enough wood round it. Best is, in this
//! order: no thin legs and no thin strips (else the fewest), the fewest boards notched, the least move of the block's
//! edges, the earlier size, the lower block. A wall has few courses at a block, so that trying all is fast and exact.

use super::{Block, BoardInHand, EIGHTH, Gap, GapRule, Notch, NotchError, NotchRequest, Overcut, Sides, Warning};
use crate::measure::{Division, Length, Rounding};

/// The face of a mounting block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BlockSize {
    /// From left to right; the hole is in the middle.
    pub width: Length,
    /// From bottom to top.
    pub height: Length,
}

/// A block that is placed round its hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlacedBlock {
    /// Its size.
    pub size: BlockSize,
    /// The hole's centre above the block's bottom.
    pub hole: Length,
}

/// What the advice is worked out from. Heights are the wall's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AdviceRequest {
    /// The height of the hole's centre.
    pub centre: Length,
    /// The block as it is planned now.
    pub placed: PlacedBlock,
    /// The allowed sizes; that of the placed block is always allowed.
    pub sizes: Vec<BlockSize>,
    /// The least width of a block round this hole.
    pub width_least: Length,
    /// How far the hole's centre stays from the block's bottom and top.
    pub hole_least: Length,
    /// The bottom edges of the courses, ascending.
    pub bottoms: Vec<Length>,
    /// The boards' height.
    pub board_height: Length,
    /// The least lap; where courses hang closer, their own counts.
    pub lap: Length,
    /// The gap round the block.
    pub gap: Gap,
    /// What the saw takes beyond the line.
    pub overcut: Overcut,
    /// A leg under this is thin.
    pub leg_min: Length,
    /// A strip of board that shows under or over the block and is lower than this is thin.
    pub strip_min: Length,
    /// The smallest mark used on the tape.
    pub division: Division,
}

/// How a block sits between the courses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seat {
    /// The boards that are cut round it.
    pub boards: usize,
    /// The legs above or below a notch or a hole that are thin.
    pub thin_legs: usize,
    /// The strips under and over it that show and are thin.
    pub thin_strips: usize,
}

/// Another size or another hole that sits better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Advice {
    /// The block as it would sit best.
    pub block: PlacedBlock,
    /// How it would sit.
    pub seat: Seat,
    /// How the block sits as it is planned now.
    pub now: Seat,
}

impl Seat {
    /// What a crew would rather not have: the fewer the better.
    fn faults(self) -> usize {
        self.thin_legs + self.thin_strips
    }
}

impl AdviceRequest {
    /// How a block with its hole at the request's height sits.
    ///
    /// # Errors
    /// [`NotchError`] where boards, lap, gap or block make no sense.
    pub fn seat(&self, block: PlacedBlock) -> Result<Seat, NotchError> {
        let bottom = self.centre - block.hole;
        let top = bottom + block.size.height;
        let mut seat = Seat { boards: 0, thin_legs: 0, thin_strips: 0 };
        for (course, &edge) in self.bottoms.iter().enumerate() {
            if edge >= top || edge + self.board_height <= bottom {
                continue;
            }
            // The lap that hangs counts; one that makes no sense is told at the pole.
            let below = course.checked_sub(1).and_then(|below| self.bottoms.get(below));
            let hangs = |below: &Length| *below + self.board_height - edge;
            let lap = below.map(hangs).filter(|lap| !lap.is_negative() && *lap < self.board_height);
            // Board enough at both sides, so that its ends play no part.
            let beside = self.board_height + self.leg_min;
            let notch = Notch::lay_out(&NotchRequest {
                board: BoardInHand {
                    height: self.board_height,
                    length: beside + block.size.width + beside,
                    lap: Some(lap.unwrap_or(self.lap)),
                },
                block: Block {
                    left: beside,
                    right: beside + block.size.width,
                    bottom: Sides::both(bottom - edge),
                    top: Sides::both(top - edge),
                },
                gap: GapRule::One(self.gap),
                overcut: self.overcut,
                tape: Length::ZERO,
                division: self.division,
                leg_min: self.leg_min,
                level: EIGHTH,
                below: course > 0,
                open_above: false,
            })?;
            let thin = |warning: &&Warning| matches!(warning, Warning::ThinLeg { leg: "above" | "below", .. });
            seat.boards += usize::from(notch.cut.is_some());
            seat.thin_legs += notch.warnings.iter().filter(thin).count();
        }
        let under = self.bottoms.iter().filter(|edge| **edge <= bottom).max().map(|edge| bottom - *edge);
        let over = self.bottoms.iter().filter(|edge| **edge >= top).min().map(|edge| *edge - top);
        let thin = |strip: &Length| strip.is_positive() && *strip < self.strip_min;
        seat.thin_strips = [under, over].into_iter().flatten().filter(thin).count();
        Ok(seat)
    }

    /// A block that sits better than the placed one; `None` where there is none.
    ///
    /// # Errors
    /// [`NotchError`] where boards, lap, gap or the placed block make no sense.
    pub fn advise(&self) -> Result<Option<Advice>, NotchError> {
        let now = self.seat(self.placed)?;
        let mut best: Option<(Score, Advice)> = None;
        let sizes = std::iter::once(&self.placed.size).chain(&self.sizes);
        for (order, &size) in sizes.enumerate() {
            if size.width < self.width_least {
                continue;
            }
            for hole in self.holes(size) {
                let block = PlacedBlock { size, hole };
                let seat = self.seat(block)?;
                let score = (seat.faults(), seat.boards, self.moved(block), order, hole);
                if best.is_none_or(|(least, _)| score < least) {
                    best = Some((score, Advice { block, seat, now }));
                }
            }
        }
        let better = |seat: Seat| (seat.faults(), seat.boards) < (now.faults(), now.boards);
        Ok(best.map(|(_, advice)| advice).filter(|advice| better(advice.seat)))
    }

    /// The heights of the hole in a block of this size: marks of the tape from its bottom, with enough wood round it.
    fn holes(&self, size: BlockSize) -> impl Iterator<Item = Length> + use<'_> {
        let count = |length, way| self.division.multiple_at(length).or_else(|| self.division.count(length, way));
        let from = count(self.hole_least, Rounding::Up).unwrap_or(1);
        let to = count(size.height - self.hole_least, Rounding::Down).unwrap_or(0);
        (from..=to).filter_map(|count| self.division.multiple(count))
    }

    /// How far the block's four edges move.
    fn moved(&self, block: PlacedBlock) -> Length {
        let above = |block: PlacedBlock| block.size.height - block.hole;
        let (bottom, top) = (block.hole - self.placed.hole, above(block) - above(self.placed));
        bottom.abs() + top.abs() + (block.size.width - self.placed.size.width).abs()
    }
}

/// Less is better: faults, boards notched, how far the block moves, then the first size and the lowest hole.
type Score = (usize, usize, Length, usize, Length);

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(whole: i64, sixteenths: i64) -> Length {
        Length::from_inches_64(whole, 4 * sixteenths)
    }

    /// Boards of 8 1/4 in every 7 in, a block 6 in high round a hole at this height.
    fn asked(centre: Length) -> AdviceRequest {
        let size = BlockSize { width: inches(6, 0), height: inches(6, 0) };
        AdviceRequest {
            centre,
            placed: PlacedBlock { size, hole: inches(3, 0) },
            sizes: Vec::new(),
            width_least: inches(2, 0),
            hole_least: inches(1, 0),
            bottoms: (0..8).map(|course| inches(7 * course, 0)).collect(),
            board_height: inches(8, 4),
            lap: inches(1, 4),
            gap: Gap { min: inches(0, 1), max: inches(0, 2) },
            overcut: Overcut { min: inches(0, 1), max: inches(0, 2) },
            leg_min: inches(2, 0),
            strip_min: inches(2, 0),
            division: Division::SIXTEENTH,
        }
    }

    #[test]
    fn a_block_that_sits_well_is_left_alone() {
        // From 24 to 30 in: through the top of one board and 2 in into the next, 3 and 5 in show under and over it.
        let asked = asked(inches(27, 0));
        assert_eq!(asked.seat(asked.placed).unwrap(), Seat { boards: 2, thin_legs: 0, thin_strips: 0 });
        assert_eq!(asked.advise().unwrap(), None);
    }

    #[test]
    fn a_thin_leg_goes_when_the_block_moves_round_its_hole() {
        // From 22 3/4 to 28 3/4 in: 1 3/4 in show under it, and half an inch stays over it of a board that ends at 29 1/4.
        let asked = asked(inches(25, 12));
        let now = asked.seat(asked.placed).unwrap();
        assert_eq!(now, Seat { boards: 2, thin_legs: 2, thin_strips: 1 });
        let advice = asked.advise().unwrap().unwrap();
        assert_eq!(advice.seat, Seat { boards: 2, thin_legs: 0, thin_strips: 0 });
        assert_eq!(advice.block, PlacedBlock { size: asked.placed.size, hole: inches(2, 8) }, "up to that top edge");
        assert_eq!(advice.now, now);
    }

    #[test]
    fn courses_that_hang_closer_open_a_notch() {
        // Every 6 in: a real lap of 2 1/4 in. The block begins 1 15/16 in over the line at 24 in: by the least lap a hole with a leg of
        // that under it, by the real one a notch.
        let mut asked = asked(inches(29, 0));
        asked.bottoms = (0..8).map(|course| inches(6 * course, 0)).collect();
        asked.strip_min = Length::ZERO;
        asked.placed =
            PlacedBlock { size: BlockSize { width: inches(6, 0), height: inches(4, 0) }, hole: inches(3, 1) };
        assert_eq!(asked.seat(asked.placed).unwrap(), Seat { boards: 2, thin_legs: 0, thin_strips: 0 });
        asked.bottoms.drain(..4);
        let first = asked.seat(asked.placed).unwrap();
        assert_eq!(first.thin_legs, 1, "the first course keeps its hole: {first:?}");
    }

    #[test]
    fn a_lower_block_saves_a_board() {
        let mut asked = asked(inches(28, 0));
        asked.placed =
            PlacedBlock { size: BlockSize { width: inches(6, 0), height: inches(9, 0) }, hole: inches(4, 8) };
        asked.bottoms = (0..12).map(|course| inches(5 * course, 0)).collect();
        asked.board_height = inches(6, 4);
        asked.strip_min = Length::ZERO;
        asked.leg_min = Length::ZERO;
        let sits = asked.seat(asked.placed).unwrap();
        asked.sizes = vec![BlockSize { width: inches(6, 0), height: inches(4, 0) }];
        let advice = asked.advise().unwrap().unwrap();
        assert_eq!(advice.block.size.height, inches(4, 0));
        assert!(advice.seat.boards < sits.boards, "{advice:?}");
    }

    #[test]
    fn a_hole_keeps_its_wood_and_a_narrow_block_is_no_block() {
        let mut asked = asked(inches(25, 12));
        asked.hole_least = inches(3, 0);
        assert_eq!(asked.advise().unwrap(), None, "in the middle only");
        asked.sizes = vec![BlockSize { width: inches(1, 0), height: inches(20, 0) }];
        assert_eq!(asked.advise().unwrap(), None);
    }
}
