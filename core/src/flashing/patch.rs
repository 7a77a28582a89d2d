use thiserror::Error;

use crate::measure::Length;

/// The board whose course a patch laps over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PatchBoard {
    /// From bottom edge to top edge.
    pub height: Length,
    /// How much the next course covers.
    pub lap: Length,
    /// The nail line below the top edge; less than the lap, so that the next course hides it.
    pub nail_line: Length,
}

/// A rectangle on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rectangle {
    /// The left edge.
    pub left: Length,
    /// The right edge.
    pub right: Length,
    /// The bottom edge.
    pub bottom: Length,
    /// The top edge.
    pub top: Length,
}

/// A round pipe where it comes through the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pipe {
    /// The outer diameter.
    pub diameter: Length,
    /// The center from the wall's left datum.
    pub x: Length,
    /// The center above the base line.
    pub y: Length,
}

/// What a membrane patch is cut from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PatchRequest {
    /// The boards of the wall.
    pub board: PatchBoard,
    /// The bottom edges of the courses, ascending.
    pub bottoms: Vec<Length>,
    /// The mounting block.
    pub block: Rectangle,
    /// The pipe through it.
    pub pipe: Pipe,
    /// How far the patch runs past the block at each side.
    pub beyond_side: Length,
    /// How far the patch runs past the block at the top.
    pub beyond_top: Length,
    /// How much smaller than the pipe the hole is cut.
    pub snug: Length,
    /// How far the cover piece runs past the slit at each side, and past the top edge.
    pub cover_beyond: Length,
}

/// Where the patch ends below.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PatchEnd {
    /// Over the face of a course, on its nail line.
    Course {
        /// The last course wholly below the block, counted from one.
        course: usize,
        /// How much of the patch lies over the board.
        over_board: Length,
        /// How far above the next board's bottom edge it ends: that much it is hidden.
        hidden_by: Length,
    },
    /// No course lies below the block: it laps over the starter strip.
    Starter,
}

/// A patch of self-adhered membrane round a pipe, with its slit and the piece that covers it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Patch {
    /// The outline on the wall.
    pub outline: Rectangle,
    /// Where it ends below.
    pub end: PatchEnd,
    /// The diameter of the hole.
    pub hole: Length,
    /// The hole's center from the patch's left edge.
    pub hole_from_left: Length,
    /// The hole's center above the patch's bottom edge.
    pub hole_from_bottom: Length,
    /// The lower end of the slit above the patch's bottom edge: it runs up from the hole's top.
    pub slit_from_bottom: Length,
    /// The length of the slit, to the patch's top edge.
    pub slit_length: Length,
    /// The width of the cover piece.
    pub cover_width: Length,
    /// The height of the cover piece.
    pub cover_height: Length,
    /// The bottom of the cover piece, level with the pipe's top, above the patch's bottom edge.
    pub cover_from_bottom: Length,
}

/// Why a patch cannot be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum PatchError {
    /// A size is not over zero, or an amount under zero.
    #[error("a patch's sizes must be over zero, its amounts not under zero")]
    NotPositive,
    /// The lap does not leave a visible face.
    #[error("the lap must be less than the board's height")]
    Lap,
    /// The nail line is not hidden by the next course.
    #[error("the nail line must lie less than the lap below the board's top")]
    NailLine,
    /// There is no course at all.
    #[error("there is no course")]
    NoCourse,
    /// A course does not lie above the one before it.
    #[error("course {index} does not lie above the one before it")]
    CourseOrder {
        /// The course, counted from zero.
        index: usize,
    },
    /// A course does not lap over the one before it.
    #[error("course {index} lies a board's height or more above the one before it")]
    CourseGap {
        /// The course, counted from zero.
        index: usize,
    },
    /// The block's right edge is not right of its left one.
    #[error("the block's right edge must lie right of its left edge")]
    BlockWidth,
    /// The block's top is not above its bottom.
    #[error("the block's top must lie above its bottom")]
    BlockHeight,
    /// The pipe leaves the block at a side.
    #[error("the pipe must lie inside the block, from left to right")]
    PipeAcross,
    /// The pipe leaves the block at the bottom or the top, or lies below the patch.
    #[error("the pipe must lie inside the block, from bottom to top, and above the patch's bottom edge")]
    PipeUp,
    /// The hole would have no size.
    #[error("the hole must be cut less than a pipe's diameter smaller than the pipe")]
    Snug,
    /// The patch ends below the next board's bottom edge: it would be seen.
    #[error("the patch ends {below:?} below the next board's bottom edge")]
    Shows {
        /// How far below, at least zero.
        below: Length,
    },
}

impl PatchBoard {
    /// Whether lap and nail line fit the board.
    ///
    /// # Errors
    /// [`PatchError::NotPositive`], [`PatchError::Lap`] or [`PatchError::NailLine`].
    pub fn check(self) -> Result<(), PatchError> {
        if ![self.height, self.lap, self.nail_line].iter().all(|size| size.is_positive()) {
            return Err(PatchError::NotPositive);
        }
        if self.lap >= self.height {
            return Err(PatchError::Lap);
        }
        if self.nail_line >= self.lap { Err(PatchError::NailLine) } else { Ok(()) }
    }

    /// Whether each course laps over the one before it.
    ///
    /// # Errors
    /// [`PatchError::NoCourse`], [`PatchError::CourseOrder`] or [`PatchError::CourseGap`].
    pub fn check_courses(self, bottoms: &[Length]) -> Result<(), PatchError> {
        if bottoms.is_empty() {
            return Err(PatchError::NoCourse);
        }
        for (index, (lower, upper)) in bottoms.iter().zip(bottoms.iter().skip(1)).enumerate() {
            let reveal = *upper - *lower;
            if !reveal.is_positive() {
                return Err(PatchError::CourseOrder { index: index + 1 });
            }
            if reveal >= self.height {
                return Err(PatchError::CourseGap { index: index + 1 });
            }
        }
        Ok(())
    }

    /// The last course whose top edge is not above `height`, counted from one; zero where there is none.
    pub fn last_below(self, bottoms: &[Length], height: Length) -> usize {
        bottoms.iter().rposition(|bottom| *bottom + self.height <= height).map_or(0, |index| index + 1)
    }
}

impl Rectangle {
    /// Whether it has a width and a height.
    ///
    /// # Errors
    /// [`PatchError::BlockWidth`] or [`PatchError::BlockHeight`].
    pub fn check(self) -> Result<(), PatchError> {
        if self.right <= self.left {
            return Err(PatchError::BlockWidth);
        }
        if self.top <= self.bottom { Err(PatchError::BlockHeight) } else { Ok(()) }
    }

    /// From left to right.
    pub fn width(self) -> Length {
        self.right - self.left
    }

    /// From bottom to top.
    pub fn height(self) -> Length {
        self.top - self.bottom
    }

    /// Whether a pipe's circle lies inside; it may touch an edge.
    ///
    /// # Errors
    /// [`PatchError::PipeAcross`] or [`PatchError::PipeUp`].
    pub fn check_pipe(self, pipe: Pipe) -> Result<(), PatchError> {
        // Everything doubled, so that no half is rounded.
        let inside = |center: Length, low: Length, high: Length| {
            center + center - pipe.diameter >= low + low && center + center + pipe.diameter <= high + high
        };
        if !inside(pipe.x, self.left, self.right) {
            return Err(PatchError::PipeAcross);
        }
        if inside(pipe.y, self.bottom, self.top) { Ok(()) } else { Err(PatchError::PipeUp) }
    }
}

impl Patch {
    /// The patch for a request.
    ///
    /// # Errors
    /// [`PatchError`], by what is wrong with the request.
    pub fn cut(request: &PatchRequest) -> Result<Self, PatchError> {
        let PatchRequest { board, bottoms, block, pipe, beyond_side, beyond_top, snug, cover_beyond } = request;
        board.check()?;
        board.check_courses(bottoms)?;
        block.check()?;
        if !pipe.diameter.is_positive() || [beyond_side, beyond_top, snug, cover_beyond].iter().any(|l| l.is_negative())
        {
            return Err(PatchError::NotPositive);
        }
        block.check_pipe(*pipe)?;
        if snug >= &pipe.diameter {
            return Err(PatchError::Snug);
        }
        let (bottom, end) = ending(*board, bottoms, block.bottom)?;
        let outline = Rectangle {
            left: block.left - *beyond_side,
            right: block.right + *beyond_side,
            bottom,
            top: block.top + *beyond_top,
        };
        let hole = pipe.diameter - *snug;
        let hole_from_bottom = pipe.y - bottom;
        if hole_from_bottom < hole.half() {
            return Err(PatchError::PipeUp);
        }
        let slit_from_bottom = hole_from_bottom + hole.half();
        let cover_from_bottom = hole_from_bottom + pipe.diameter.half();
        Ok(Self {
            outline,
            end,
            hole,
            hole_from_left: pipe.x - outline.left,
            hole_from_bottom,
            slit_from_bottom,
            slit_length: outline.height() - slit_from_bottom,
            cover_width: *cover_beyond + *cover_beyond,
            cover_height: outline.height() + *cover_beyond - cover_from_bottom,
            cover_from_bottom,
        })
    }
}

/// The patch's bottom edge and what it ends on.
fn ending(board: PatchBoard, bottoms: &[Length], block_bottom: Length) -> Result<(Length, PatchEnd), PatchError> {
    let course = board.last_below(bottoms, block_bottom);
    let Some(own) = course.checked_sub(1).and_then(|index| bottoms.get(index)) else {
        return Ok((bottoms.first().copied().ok_or(PatchError::NoCourse)?, PatchEnd::Starter));
    };
    let bottom = *own + board.height - board.nail_line;
    let hidden_by = bottoms.get(course).map_or(board.lap - board.nail_line, |next| bottom - *next);
    if !hidden_by.is_positive() {
        return Err(PatchError::Shows { below: -hidden_by });
    }
    Ok((bottom, PatchEnd::Course { course, over_board: board.nail_line, hidden_by }))
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use proptest::prelude::*;

    fn inches(whole: i64, sixty_fourths: i64) -> Length {
        Length::from_inches_64(whole, sixty_fourths)
    }

    pub(in crate::flashing) fn hose_bib() -> PatchRequest {
        PatchRequest {
            board: PatchBoard { height: inches(7, 16), lap: inches(1, 16), nail_line: inches(0, 48) },
            bottoms: [0, 6, 12, 18].map(Length::from_inches).to_vec(),
            block: Rectangle { left: inches(30, 0), right: inches(36, 0), bottom: inches(15, 0), top: inches(22, 32) },
            pipe: Pipe { diameter: inches(1, 0), x: inches(33, 0), y: inches(18, 48) },
            beyond_side: inches(4, 0),
            beyond_top: inches(4, 0),
            snug: inches(0, 8),
            cover_beyond: inches(2, 0),
        }
    }

    #[test]
    fn ends_on_the_nail_line_of_the_last_course_below() {
        let patch = Patch::cut(&hose_bib()).unwrap();
        // Course 2: 6 + 7 1/4 - 3/4 = 12 1/2 in; the next board's bottom at 12 in hides 1/2 in.
        assert_eq!(patch.outline.bottom, inches(12, 32));
        let end = PatchEnd::Course { course: 2, over_board: inches(0, 48), hidden_by: inches(0, 32) };
        assert_eq!(patch.end, end);
    }

    #[test]
    fn a_course_that_just_reaches_the_block_is_below_it() {
        let mut request = hose_bib();
        request.block.bottom = inches(13, 16);
        assert!(matches!(Patch::cut(&request).unwrap().end, PatchEnd::Course { course: 2, .. }));
        request.block.bottom = inches(13, 15);
        assert!(matches!(Patch::cut(&request).unwrap().end, PatchEnd::Course { course: 1, .. }));
        request.block.bottom = inches(7, 15);
        let patch = Patch::cut(&request).unwrap();
        assert_eq!((patch.end, patch.outline.bottom), (PatchEnd::Starter, Length::ZERO));
    }

    #[test]
    fn the_last_course_hides_it_by_the_lap() {
        let mut request = hose_bib();
        request.bottoms.truncate(2);
        let end = Patch::cut(&request).unwrap().end;
        assert_eq!(end, PatchEnd::Course { course: 2, over_board: inches(0, 48), hidden_by: inches(0, 32) });
    }

    #[test]
    fn a_patch_that_would_be_seen_is_refused() {
        let mut request = hose_bib();
        // The next course starts on the nail line, or above it.
        request.bottoms = vec![Length::ZERO, inches(6, 0), inches(12, 32)];
        assert_eq!(Patch::cut(&request), Err(PatchError::Shows { below: Length::ZERO }));
    }

    #[test]
    fn says_what_cannot_be() {
        type Spoil = fn(&mut PatchRequest);
        let cases: [(Spoil, PatchError); 10] = [
            (|r| r.board.nail_line = r.board.lap, PatchError::NailLine),
            (|r| r.board.lap = r.board.height, PatchError::Lap),
            (|r| r.bottoms.clear(), PatchError::NoCourse),
            (|r| r.bottoms[2] = r.bottoms[1], PatchError::CourseOrder { index: 2 }),
            (|r| r.bottoms[3] = r.bottoms[2] + r.board.height, PatchError::CourseGap { index: 3 }),
            (|r| r.block.right = r.block.left, PatchError::BlockWidth),
            (|r| r.block.top = r.block.bottom, PatchError::BlockHeight),
            (|r| r.pipe.x = r.block.left, PatchError::PipeAcross),
            (|r| r.pipe.y = r.block.top, PatchError::PipeUp),
            (|r| r.snug = r.pipe.diameter, PatchError::Snug),
        ];
        for (spoil, want) in cases {
            let mut request = hose_bib();
            spoil(&mut request);
            assert_eq!(Patch::cut(&request), Err(want));
        }
        let mut touching = hose_bib();
        touching.pipe.x = touching.block.left + inches(0, 32);
        assert!(Patch::cut(&touching).is_ok());
    }

    proptest! {
        #[test]
        fn the_parts_add_up(
            bottom in 0_i64..400, height in 80_i64..200, diameter in 8_i64..32, snug in 0_i64..8, side in 0_i64..100,
        ) {
            let sixteenth = |count: i64| Length::from_inches_64(0, 4 * count);
            let mut request = hose_bib();
            request.block.bottom = sixteenth(bottom);
            request.block.top = sixteenth(bottom + height);
            request.pipe = Pipe { diameter: sixteenth(diameter), x: inches(33, 0), y: sixteenth(bottom + height / 2) };
            request.snug = sixteenth(snug);
            request.beyond_side = sixteenth(side);
            let patch = Patch::cut(&request).unwrap();
            prop_assert_eq!(patch.slit_from_bottom + patch.slit_length, patch.outline.height());
            prop_assert_eq!(patch.cover_from_bottom + patch.cover_height, patch.outline.height() + inches(2, 0));
            prop_assert!(patch.outline.bottom <= request.block.bottom);
            if let PatchEnd::Course { hidden_by, .. } = patch.end {
                prop_assert!(hidden_by.is_positive());
            }
        }
    }
}
