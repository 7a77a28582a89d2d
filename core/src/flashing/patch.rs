use thiserror::Error;

use crate::measure::Length;
use crate::wall::Shape;

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
pub struct WallRectangle {
    /// The left edge.
    pub left: Length,
    /// The right edge.
    pub right: Length,
    /// The bottom edge.
    pub bottom: Length,
    /// The top edge.
    pub top: Length,
}

/// What comes through the wall: a pipe, a duct, a box, or several lines taken together; not its hood or its flange.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pipe {
    /// Its outline.
    pub shape: Shape,
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
    pub block: WallRectangle,
    /// What goes through it.
    pub pipe: Pipe,
    /// How far the patch runs past the block at each side.
    pub beyond_side: Length,
    /// How far the patch runs past the block at the top.
    pub beyond_top: Length,
    /// How much smaller than the pipe the hole is cut.
    pub snug: Length,
    /// Whether it is slit to get round what stays in the wall; what comes off lets it slip over.
    pub slit: bool,
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

/// A patch of self-adhered membrane round what comes through the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Patch {
    /// The outline on the wall.
    pub outline: WallRectangle,
    /// Where it ends below.
    pub end: PatchEnd,
    /// The hole.
    pub hole: Shape,
    /// The hole's center from the patch's left edge.
    pub hole_from_left: Length,
    /// The hole's center above the patch's bottom edge.
    pub hole_from_bottom: Length,
    /// The slit with the piece over it; none where the patch slips over.
    pub slit: Option<PatchSlit>,
}

/// The slit in a patch, which runs up from the hole's top to the patch's top edge, and the piece that covers it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PatchSlit {
    /// The lower end of the slit above the patch's bottom edge.
    pub from_bottom: Length,
    /// The length of the slit.
    pub length: Length,
    /// The width of the cover piece, the slit in its middle.
    pub cover_width: Length,
    /// The height of the cover piece, past the patch's top edge.
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
    /// The pipe leaves the block.
    #[error("the pipe must lie inside the block")]
    PipeOutside,
    /// The hole does not lie above the patch's bottom edge.
    #[error("the hole must lie above the patch's bottom edge")]
    HoleLow,
    /// The hole would have no size.
    #[error("the hole must be cut less smaller than the pipe than the pipe is wide and high")]
    Snug,
    /// The patch ends below the next board's bottom edge: it would be seen.
    #[error("the patch ends {below:?} below the next board's bottom edge")]
    Shows {
        /// How far below, at least zero.
        below: Length,
    },
}

impl Pipe {
    /// The least upright rectangle round it.
    pub fn area(self) -> WallRectangle {
        let (across, up) = (self.shape.width(), self.shape.height());
        let (left, bottom) = (self.x - across.half(), self.y - up.half());
        WallRectangle { left, right: left + across, bottom, top: bottom + up }
    }

    /// Whether something is left of a hole that is cut so much smaller.
    ///
    /// # Errors
    /// [`PatchError::Snug`].
    pub fn check_snug(self, snug: Length) -> Result<(), PatchError> {
        if snug >= self.shape.width().min(self.shape.height()) { Err(PatchError::Snug) } else { Ok(()) }
    }
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
        let pairs = bottoms.iter().zip(bottoms.iter().skip(1));
        (1..).zip(pairs).try_for_each(|(index, (below, own))| self.check_course(index, *below, *own))
    }

    /// Whether the course at `index` laps over the one below it.
    ///
    /// # Errors
    /// [`PatchError::CourseOrder`] or [`PatchError::CourseGap`].
    pub fn check_course(self, index: usize, below: Length, own: Length) -> Result<(), PatchError> {
        let reveal = own - below;
        if !reveal.is_positive() {
            return Err(PatchError::CourseOrder { index });
        }
        if reveal >= self.height { Err(PatchError::CourseGap { index }) } else { Ok(()) }
    }

    /// The bottom edge of a patch round a block that stands on `block_bottom`, and what the patch ends on.
    ///
    /// # Errors
    /// [`PatchError::NoCourse`] or [`PatchError::Shows`].
    pub fn ending(self, bottoms: &[Length], block_bottom: Length) -> Result<(Length, PatchEnd), PatchError> {
        let course = self.last_below(bottoms, block_bottom);
        let Some(own) = course.checked_sub(1).and_then(|index| bottoms.get(index)) else {
            return Ok((bottoms.first().copied().ok_or(PatchError::NoCourse)?, PatchEnd::Starter));
        };
        let bottom = *own + self.height - self.nail_line;
        let hidden_by = bottoms.get(course).map_or(self.lap - self.nail_line, |next| bottom - *next);
        if !hidden_by.is_positive() {
            return Err(PatchError::Shows { below: -hidden_by });
        }
        Ok((bottom, PatchEnd::Course { course, over_board: self.nail_line, hidden_by }))
    }

    /// The last course whose top edge is not above `height`, counted from one; zero where there is none.
    pub fn last_below(self, bottoms: &[Length], height: Length) -> usize {
        bottoms.iter().rposition(|bottom| *bottom + self.height <= height).map_or(0, |index| index + 1)
    }
}

impl WallRectangle {
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

    /// Whether a pipe lies inside; it may touch an edge.
    ///
    /// # Errors
    /// [`PatchError::PipeOutside`].
    pub fn check_pipe(self, pipe: Pipe) -> Result<(), PatchError> {
        // Everything doubled, so that no half is rounded.
        let inside = |center: Length, size: Length, low: Length, high: Length| {
            center + center - size >= low + low && center + center + size <= high + high
        };
        let across = inside(pipe.x, pipe.shape.width(), self.left, self.right);
        let up = inside(pipe.y, pipe.shape.height(), self.bottom, self.top);
        if across && up { Ok(()) } else { Err(PatchError::PipeOutside) }
    }
}

impl Patch {
    /// The patch for a request.
    ///
    /// # Errors
    /// [`PatchError`], by what is wrong with the request.
    pub fn cut(request: &PatchRequest) -> Result<Self, PatchError> {
        let PatchRequest { board, bottoms, block, pipe, beyond_side, beyond_top, snug, slit, cover_beyond } = request;
        board.check()?;
        board.check_courses(bottoms)?;
        let (bottom, end) = board.ending(bottoms, block.bottom)?;
        block.check()?;
        let (width, height) = (pipe.shape.width(), pipe.shape.height());
        let amounts = [beyond_side, beyond_top, snug, cover_beyond];
        if !width.is_positive() || !height.is_positive() || amounts.iter().any(|amount| amount.is_negative()) {
            return Err(PatchError::NotPositive);
        }
        block.check_pipe(*pipe)?;
        pipe.check_snug(*snug)?;
        let outline = WallRectangle {
            left: block.left - *beyond_side,
            right: block.right + *beyond_side,
            bottom,
            top: block.top + *beyond_top,
        };
        let hole = match pipe.shape {
            Shape::Round { diameter } => Shape::Round { diameter: diameter - *snug },
            Shape::Rectangle { width, height } => Shape::Rectangle { width: width - *snug, height: height - *snug },
        };
        let hole_from_bottom = pipe.y - bottom;
        if hole_from_bottom + hole_from_bottom <= hole.height() {
            return Err(PatchError::HoleLow);
        }
        let slit = slit.then(|| {
            // Everything doubled, so that no half is rounded before its sum is.
            let twice = |length: Length| length + length;
            let from_bottom = twice(hole_from_bottom) + hole.height();
            let cover_from_bottom = twice(hole_from_bottom) + height;
            PatchSlit {
                from_bottom: from_bottom.half(),
                length: (twice(outline.height()) - from_bottom).half(),
                cover_width: twice(*cover_beyond),
                cover_height: (twice(outline.height() + *cover_beyond) - cover_from_bottom).half(),
                cover_from_bottom: cover_from_bottom.half(),
            }
        });
        Ok(Self { outline, end, hole, hole_from_left: pipe.x - outline.left, hole_from_bottom, slit })
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use proptest::prelude::*;

    const ONE_INCH: Shape = Shape::Round { diameter: Length::from_inches_64(1, 0) };

    fn inches(whole: i64, sixty_fourths: i64) -> Length {
        Length::from_inches_64(whole, sixty_fourths)
    }

    pub(in crate::flashing) fn hose_bib() -> PatchRequest {
        PatchRequest {
            board: PatchBoard { height: inches(7, 16), lap: inches(1, 16), nail_line: inches(0, 48) },
            bottoms: [0, 6, 12, 18].map(Length::from_inches).to_vec(),
            block: WallRectangle {
                left: inches(30, 0),
                right: inches(36, 0),
                bottom: inches(15, 0),
                top: inches(22, 32),
            },
            pipe: Pipe { shape: ONE_INCH, x: inches(33, 0), y: inches(18, 48) },
            beyond_side: inches(4, 0),
            beyond_top: inches(4, 0),
            snug: inches(0, 8),
            slit: true,
            cover_beyond: inches(2, 0),
        }
    }

    /// By hand: the hose bib's hole is 1 in less 1/64; its top at 6 3/4 in less 1/128 lies 171,251,562.5 nm up, and the slit is what
    /// is left of the patch's 14 in: each is rounded for itself.
    #[test]
    fn half_a_nanometre_is_rounded_once() {
        let patch = Patch::cut(&PatchRequest { snug: inches(0, 1), ..hose_bib() }).unwrap();
        let slit = patch.slit.unwrap();
        assert_eq!((patch.outline.height(), patch.hole_from_bottom), (inches(14, 0), inches(6, 16)));
        assert_eq!((slit.from_bottom.nm(), slit.length.nm()), (171_251_563, 184_348_438));
        let box_of = Shape::Rectangle { width: inches(2, 0), height: inches(1, 1) };
        let patch =
            Patch::cut(&PatchRequest { pipe: Pipe { shape: box_of, ..hose_bib().pipe }, ..hose_bib() }).unwrap();
        // 16 in less 6 1/4 and 65/128 in: 9 31/128 in.
        assert_eq!(patch.slit.unwrap().cover_height.nm(), 234_751_563);
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
            (|r| r.pipe.x = r.block.left, PatchError::PipeOutside),
            (|r| r.pipe.y = r.block.top, PatchError::PipeOutside),
            (|r| r.snug = r.pipe.shape.width(), PatchError::Snug),
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

    /// By hand: the hole of a box 3 x 5 in, cut 1/8 in smaller, is 2 7/8 x 4 7/8; its top lies 2 7/16 over its centre at
    /// 6 1/4 in, the box's own top 2 1/2 over it.
    #[test]
    fn a_box_takes_a_hole_of_both_its_sizes() {
        let shape = Shape::Rectangle { width: inches(3, 0), height: inches(5, 0) };
        let request = PatchRequest { pipe: Pipe { shape, ..hose_bib().pipe }, ..hose_bib() };
        let patch = Patch::cut(&request).unwrap();
        assert_eq!(patch.hole, Shape::Rectangle { width: inches(2, 56), height: inches(4, 56) });
        let slit = patch.slit.unwrap();
        assert_eq!((slit.from_bottom, slit.length), (inches(8, 44), inches(5, 20)));
        assert_eq!((slit.cover_from_bottom, slit.cover_height), (inches(8, 48), inches(7, 16)));
        let narrow = Shape::Rectangle { width: inches(0, 8), height: inches(5, 0) };
        let gone = PatchRequest { pipe: Pipe { shape: narrow, ..request.pipe }, ..request.clone() };
        assert_eq!(Patch::cut(&gone), Err(PatchError::Snug));
        let tall = Shape::Rectangle { width: inches(6, 0), height: inches(7, 33) };
        let outside = PatchRequest { pipe: Pipe { shape: tall, ..request.pipe }, ..request };
        assert_eq!(Patch::cut(&outside), Err(PatchError::PipeOutside));
    }

    #[test]
    fn what_slips_over_has_neither_slit_nor_cover() {
        let whole = Patch::cut(&PatchRequest { slit: false, ..hose_bib() }).unwrap();
        assert_eq!(whole, Patch { slit: None, ..Patch::cut(&hose_bib()).unwrap() });
    }

    /// At the first course the patch starts at the base line, and a hole that only touches it has nothing under it.
    #[test]
    fn the_hole_lies_above_the_bottom_edge() {
        let mut low = hose_bib();
        low.block = WallRectangle { bottom: Length::ZERO, top: inches(7, 0), ..low.block };
        low.snug = Length::ZERO;
        low.pipe.y = inches(0, 32);
        assert_eq!(Patch::cut(&low), Err(PatchError::HoleLow));
        low.snug = inches(0, 1);
        assert!(Patch::cut(&low).is_ok());
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
            let shape = Shape::Round { diameter: sixteenth(diameter) };
            request.pipe = Pipe { shape, x: inches(33, 0), y: sixteenth(bottom + height / 2) };
            request.snug = sixteenth(snug);
            request.beyond_side = sixteenth(side);
            let patch = Patch::cut(&request).unwrap();
            let slit = patch.slit.unwrap();
            prop_assert_eq!(slit.from_bottom + slit.length, patch.outline.height());
            prop_assert_eq!(slit.cover_from_bottom + slit.cover_height, patch.outline.height() + inches(2, 0));
            prop_assert!(patch.outline.bottom <= request.block.bottom);
            if let PatchEnd::Course { hidden_by, .. } = patch.end {
                prop_assert!(hidden_by.is_positive());
            }
        }
    }
}
