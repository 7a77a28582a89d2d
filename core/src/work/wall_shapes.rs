use crate::board::{self, BoardShape, Hang, MovedOutline, Obstruction, ObstructionGaps, OutlineGaps, ShapeLimits};
use crate::measure::Length;
use crate::siding::Run;
use crate::store::Id;
use crate::wall::{Outline, Point};

use super::around::Around;
use super::course::Course;
use super::error::Result;
use super::placement::Placement;

/// Where the boards of a wall may be: its outline less the gaps, and everything that they go round.
#[derive(Debug)]
pub struct WallShapes {
    outline: Outline,
    moved: MovedOutline,
    around: Vec<Around>,
    limits: ShapeLimits,
    /// The full height of a board.
    height: Length,
    /// What is left open at an end.
    end_gap: Length,
}

/// A block as the tape read it, in the place of what the plan says of it.
#[derive(Clone, Debug)]
pub struct TapedAround {
    /// What it was planned round; none for what no plan knows.
    pub planned: Option<Id>,
    /// The key of its name.
    pub name: String,
    /// Where it lies on the wall. Its gaps are those of what it was planned round.
    pub at: Obstruction,
}

/// The line that a board hangs on.
#[derive(Clone, Debug)]
struct HangingLine {
    bottom: Length,
    /// Its heights over `bottom`, where it is out of level.
    knots: Vec<Point>,
    /// The full height of its board.
    height: Length,
}

/// What a course's boards are cut out of.
#[derive(Clone, Debug)]
struct Strip {
    bottom: Length,
    height: Length,
    hang: Option<Hang>,
    /// How much of it shows at most, where another course hangs over it.
    reveal: Option<Length>,
    /// What it goes round, by its place among all; none for what only parts it.
    around: Vec<(Option<usize>, Obstruction)>,
}

/// The courses that hang next to one.
#[derive(Clone, Copy, Debug)]
pub struct Neighbours<'a> {
    /// The course below.
    pub below: Option<&'a Course>,
    /// The course above.
    pub above: Option<&'a Course>,
}

impl<'a> Neighbours<'a> {
    /// Those of a course by its place among all of its wall.
    pub fn at(courses: &'a [Course], at: usize) -> Self {
        Self { below: at.checked_sub(1).and_then(|below| courses.get(below)), above: courses.get(at + 1) }
    }
}

/// What rounding leaves between a board's end and that of its run.
const ROUNDING: Length = Length::from_nm(1);

impl WallShapes {
    /// Where the boards of a wall may be. `gaps` are those at the outline; `height` is the full height of a board.
    ///
    /// # Errors
    /// [`WorkError::Board`](super::WorkError::Board) where the gaps are larger than the wall.
    pub(super) fn new(
        outline: &Outline,
        gaps: &OutlineGaps,
        mut around: Vec<Around>,
        limits: ShapeLimits,
        height: Length,
    ) -> Result<Self> {
        let moved = MovedOutline::new(outline, gaps)?;
        // What has no width yet is no obstruction.
        around.retain(|own| own.at.left < own.at.right && own.at.bottom < own.at.top);
        Ok(Self { outline: outline.clone(), moved, around, limits, height, end_gap: gaps.side })
    }

    /// What the boards go round; the cuts of a shape name it by its place here.
    pub fn around(&self) -> &[Around] {
        &self.around
    }

    /// The shapes of a course before it has joints, from left to right.
    ///
    /// # Errors
    /// [`WorkError::Board`](super::WorkError::Board) for what is too large to be worked through.
    pub fn course(&self, course: &Course, neighbours: Neighbours<'_>) -> Result<Vec<BoardShape>> {
        self.boards(&self.strip(&self.line(course), neighbours, &[]), &[])
    }

    /// The shapes of a board with such a placement and height: more than one where it is cut right through.
    ///
    /// # Errors
    /// [`WorkError::Board`](super::WorkError::Board) for what is too large to be worked through.
    pub fn board(
        &self,
        (place, height): (Placement, Length),
        course: Option<&Course>,
        neighbours: Neighbours<'_>,
        taped: &[TapedAround],
    ) -> Result<Vec<BoardShape>> {
        let Placement { from, to, left, right } = place;
        // A board that hangs on its course's line has that; any other one its own.
        let on_line = course.filter(|course| {
            course.bottom_at(from) == left && course.bottom_at(to) == right && course.middle.height == height
        });
        let line = match on_line {
            Some(course) => self.line(course),
            None if left == right => HangingLine { bottom: left, knots: Vec::new(), height },
            None => {
                let knots = vec![Point::new(from, Length::ZERO), Point::new(to, right - left)];
                HangingLine { bottom: left, knots, height }
            }
        };
        let strip = self.strip(&line, neighbours, taped);
        let within = |shape: &BoardShape| shape.at.x < to - ROUNDING && from + ROUNDING < shape.at.x + shape.length;
        let whole = self.boards(&strip, &[])?;
        let met: Vec<BoardShape> = whole.into_iter().filter(within).collect();
        let far = Length::LIMIT;
        let clip = |x: (Length, Length)| Obstruction::plumb(x, (-far, far), ObstructionGaps::default());
        let mut clips = Vec::new();
        if met.iter().any(|shape| shape.at.x < from - ROUNDING) {
            clips.push(clip((-far, from)));
        }
        if met.iter().any(|shape| shape.at.x + shape.length > to + ROUNDING) {
            clips.push(clip((to, far)));
        }
        if clips.is_empty() {
            return Ok(met);
        }
        Ok(self.boards(&strip, &clips)?.into_iter().filter(within).collect())
    }

    /// The runs of courses that hang on one another, for each of them from left to right.
    ///
    /// # Errors
    /// As [`WallShapes::course`].
    pub fn runs(&self, courses: &[Course]) -> Result<Vec<Vec<Run>>> {
        let runs = |at: usize, course: &Course| {
            let shapes = self.course(course, Neighbours::at(courses, at))?;
            Ok(shapes.iter().map(|shape| self.run(course.middle.course, shape)).collect())
        };
        courses.iter().enumerate().map(|(at, course)| runs(at, course)).collect()
    }

    /// The run that a shape of a course makes.
    pub fn run(&self, course: u32, shape: &BoardShape) -> Run {
        shape.run(course, self.end_gap)
    }

    /// The line of a course at the full height of its boards: the first one may be ripped at its base.
    fn line(&self, course: &Course) -> HangingLine {
        let middle = course.line.middle;
        let half = course.width.half();
        let knots = if course.line.out_of_level() == Length::ZERO {
            Vec::new()
        } else {
            let knot = |x, y: Length| Point::new(x, y - middle);
            vec![knot(Length::ZERO, course.line.left), knot(half, middle), knot(course.width, course.line.right)]
        };
        HangingLine { bottom: middle, knots, height: self.height }
    }

    fn strip(&self, line: &HangingLine, neighbours: Neighbours<'_>, taped: &[TapedAround]) -> Strip {
        let (bottom, height) = (line.bottom, line.height);
        let bottom_at = |x: Length| line.at(x);
        let reveal = neighbours.above.and_then(|above| {
            let width = self.outline.width();
            let places = [Length::ZERO, width.half(), width];
            let most = places.into_iter().map(|x| above.line.at(x, above.width) - bottom_at(x)).max()?;
            (most.is_positive() && most < height).then_some(most)
        });
        let lap = |x: Length| {
            let below = neighbours.below.filter(|_| self.covers_under(bottom_at(x), x))?;
            Some(below.line.at(x, below.width) + self.height - bottom_at(x)).filter(|lap| lap.is_positive())
        };
        let mut around = Vec::new();
        for (place, own) in self.around.iter().enumerate() {
            let read = taped.iter().find(|read| own.id.is_some() && read.planned == own.id);
            let mut at = read.map_or(own.at, |read| Obstruction { gap: own.at.gap, ..read.at });
            let ends = [at.left, at.right].map(bottom_at);
            let above = |edge: [Length; 2]| edge.into_iter().zip(ends).map(|(y, end)| y - end);
            // The strip under it would lie over the board below, which has its own notch.
            let under = at.left + (at.right - at.left).half();
            let low = above(at.bottoms()).min().unwrap_or_default();
            if low.is_positive() && lap(under).is_some_and(|lap| low < lap) {
                at.gap.bottom = at.gap.bottom + height;
            }
            // The strip over it would hang there alone, hidden by the next course.
            let mut over = above(at.tops()).map(|over| over + at.gap.top);
            if own.parts_strips && reveal.is_some_and(|reveal| over.all(|over| over >= reveal)) {
                at.gap.top = at.gap.top + height;
            }
            around.push((Some(place), at));
        }
        for (place, read) in (self.around.len()..).zip(taped) {
            if read.planned.is_none_or(|id| !self.has(id)) {
                around.push((Some(place), read.at));
            }
        }
        if let Some(reveal) = reveal {
            around.extend(self.hidden_over_base(line, reveal).map(|at| (None, at)));
        }
        if line.knots.is_empty() {
            let meets = |at: &Obstruction| {
                let low = at.bottoms().into_iter().min().unwrap_or(at.bottom) - at.gap.bottom;
                let high = at.tops().into_iter().max().unwrap_or(at.top) + at.gap.top;
                low < bottom + height && bottom < high
            };
            around.retain(|(_, at)| meets(at));
        }
        // Knots come from a wall's ends and its middle, or a board's: they go to the right.
        let hang = if line.knots.is_empty() { None } else { Hang::new(line.knots.clone()).ok() };
        Strip { bottom, height, hang, reveal, around }
    }

    fn has(&self, id: Id) -> bool {
        self.around.iter().any(|own| own.id == Some(id))
    }

    /// Whether the wall goes on under a height at `x`.
    fn covers_under(&self, y: Length, x: Length) -> bool {
        self.outline.spans_at(y - ROUNDING).iter().any(|span| span.from <= x && x <= span.to)
    }

    /// Where the base line lies so high that the next course hides all that the strip would cover there.
    fn hidden_over_base<'a>(&'a self, line: &'a HangingLine, reveal: Length) -> impl Iterator<Item = Obstruction> + 'a {
        let sides = self.outline.sides().filter(|(from, to)| from.y == to.y && from.x < to.x);
        sides.filter_map(move |(from, to)| {
            let over = [from, to].map(|end| end.y - line.at(end.x));
            let hidden = over.iter().all(|over| *over >= reveal) && over.iter().any(|over| *over < line.height);
            let gap = ObstructionGaps { side: self.end_gap, ..ObstructionGaps::default() };
            let high = from.y + line.height + line.height;
            hidden.then(|| Obstruction::plumb((from.x, to.x), (from.y - line.height, high), gap))
        })
    }

    fn boards(&self, strip: &Strip, clips: &[Obstruction]) -> Result<Vec<BoardShape>> {
        let around: Vec<Obstruction> = strip.around.iter().map(|(_, at)| *at).chain(clips.iter().copied()).collect();
        let course = board::CourseToHang {
            bottom: strip.bottom,
            hang: strip.hang.as_ref(),
            height: strip.height,
            joints: &[],
            joint_gap: Length::ZERO,
            around: &around,
        };
        let mut boards = course.boards(&self.moved, &self.limits)?;
        // What begins only where the next course hides it is no board.
        boards.retain(|board| strip.reveal.is_none_or(|reveal| board.rip.bottom < reveal));
        for board in &mut boards {
            board.cuts.retain_mut(|cut| match strip.around.get(cut.around) {
                Some((Some(place), _)) => {
                    cut.around = *place;
                    true
                }
                _ => false,
            });
        }
        Ok(boards)
    }
}

impl HangingLine {
    fn at(&self, x: Length) -> Length {
        let rise = match self.knots.as_slice() {
            [] => Length::ZERO,
            knots => {
                let pair = knots.iter().zip(knots.iter().skip(1)).find(|(_, to)| x <= to.x);
                let pair = pair.or_else(|| knots.iter().zip(knots.iter().skip(1)).next_back());
                pair.map_or(Length::ZERO, |(from, to)| {
                    let (along, over) = (x.max(from.x).min(to.x) - from.x, to.x - from.x);
                    from.y + (to.y - from.y).scaled(along.nm(), over.nm()).unwrap_or_default()
                })
            }
        };
        self.bottom + rise
    }
}
