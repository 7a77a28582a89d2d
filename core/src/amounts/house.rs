use crate::flashing::Assembly;
use crate::measure::Length;
use crate::rules::RuleSet;
use crate::siding::{CourseLine, Run};
use crate::wall::{Finish, Mounting, Opening, Outline, Point, Shape, Span, Studs};

/// A house as materials are counted on it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct House {
    /// Its boards.
    pub board: Board,
    /// Its walls.
    pub walls: Vec<Wall>,
    /// Every board that is cut up, new and left over, as the saw list has it.
    pub cut: Vec<CutBoard>,
    /// Coverages, pack sizes and allowances.
    pub rules: RuleSet,
}

/// The sizes of the boards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Board {
    /// From edge to edge.
    pub height: Length,
    /// From face to back.
    pub thickness: Length,
    /// The least lap.
    pub lap: Length,
    /// The nail line below the top edge.
    pub nail_line: Length,
}

/// A board of the saw list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CutBoard {
    /// Its length.
    pub length: Length,
    /// Whether it is left over from before: it is not bought.
    pub offcut: bool,
    /// How many pieces are cut from it.
    pub pieces: usize,
    /// Whether anything is left, so that its last piece is cut at both ends.
    pub rest: bool,
}

/// A wall.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wall {
    /// Its siding.
    pub outline: Outline,
    /// Its studs.
    pub studs: Studs,
    /// Its courses, from the bottom.
    pub courses: Vec<CourseLine>,
    /// Its runs and how each is pieced.
    pub runs: Vec<RunPieces>,
    /// Its windows and doors, with their trim.
    pub openings: Vec<Opening>,
    /// The width of the trim at its left end; zero for none.
    pub trim_left: Length,
    /// The width of the trim at its right end; zero for none.
    pub trim_right: Length,
    /// What goes through it.
    pub holes: Vec<Hole>,
}

/// What lies nearer to the edge of what goes through a wall ends there.
const HOLE_GAP_MOST: Length = Length::from_inches_64(0, 32);

/// A run and how many pieces make it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RunPieces {
    /// From trim to trim.
    pub run: Run,
    /// One more than its joints.
    pub pieces: usize,
}

/// What goes through a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hole {
    /// Its outline.
    pub shape: Shape,
    /// Its centre.
    pub centre: Point,
    /// What the boards are cut round, left to right: the block, or the fixture itself.
    pub x: Span,
    /// The same, bottom to top.
    pub y: Span,
    /// How the siding ends at it.
    pub finish: Finish,
    /// The block's thickness; none without a block.
    pub thickness: Option<Length>,
    /// Whether the block is split.
    pub mounting: Mounting,
    /// Whether a head flashing goes on top.
    pub head_flashing: bool,
    /// Whether the sealant leaves the bottom open.
    pub bottom_open: bool,
}

impl Hole {
    /// What goes round it.
    pub(super) const fn assembly(&self) -> Assembly {
        Assembly::new(self.mounting, self.finish, self.head_flashing)
    }
}

impl Wall {
    /// The visible height of the board of a course: up to the next course, or to the top of the wall.
    pub(super) fn reveal(&self, course: u32) -> Length {
        let mut lines = self.courses.iter().skip_while(|line| line.course != course);
        let Some(own) = lines.next() else { return Length::ZERO };
        let next = lines.next().map_or_else(|| own.top().min(self.outline.top()), |next| next.bottom);
        (next - own.bottom).max(Length::ZERO)
    }

    /// Whether an end of a run lies at what goes through the wall, which parts its course.
    pub(super) fn ends_at_hole(&self, run: &Run, x: Length) -> bool {
        let Some(line) = self.course(run) else { return false };
        let beside = |edge: Length| (edge - x).abs() < HOLE_GAP_MOST;
        let meets = |hole: &&Hole| hole.y.from < line.top() && line.bottom < hole.y.to;
        self.holes.iter().filter(meets).any(|hole| beside(hole.x.from) || beside(hole.x.to))
    }

    /// The course line of a run.
    pub(super) fn course(&self, run: &Run) -> Option<&CourseLine> {
        self.courses.iter().find(|line| line.course == run.course)
    }
}

impl House {
    /// How many joints there are.
    pub(super) fn joints(&self) -> usize {
        self.walls.iter().flat_map(|wall| &wall.runs).map(|run| run.pieces.saturating_sub(1)).sum()
    }

    /// Everything that goes through a wall.
    pub(super) fn holes(&self) -> impl Iterator<Item = &Hole> {
        self.walls.iter().flat_map(|wall| &wall.holes)
    }
}
