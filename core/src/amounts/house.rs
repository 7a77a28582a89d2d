use crate::board::BoardShape;
use crate::flashing::Assembly;
use crate::measure::Length;
use crate::rules::RuleSet;
use crate::siding::CourseLine;
use crate::wall::{Finish, Mounting, Opening, Outline, PenetrationKind, Point, Shape, Span, Studs};

/// A house as materials are counted on it.
#[derive(Clone, Debug, PartialEq)]
pub struct CountedHouse {
    /// Its boards.
    pub board: BoardSizes,
    /// Its walls.
    pub walls: Vec<CountedWall>,
    /// Every board that is cut up, new and left over, as the saw list has it.
    pub cut: Vec<CutBoard>,
    /// Coverages, pack sizes and allowances.
    pub rules: RuleSet,
}

/// The sizes of the boards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BoardSizes {
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
#[derive(Clone, Debug, PartialEq)]
pub struct CountedWall {
    /// Its siding.
    pub outline: Outline,
    /// Its studs.
    pub studs: Studs,
    /// Its courses, from the bottom.
    pub courses: Vec<CourseLine>,
    /// Its boards, each in its own shape.
    pub boards: Vec<CountedBoard>,
    /// Its windows and doors, with their trim.
    pub openings: Vec<Opening>,
    /// The width of the trim at its left end; zero for none.
    pub trim_left: Length,
    /// The width of the trim at its right end; zero for none.
    pub trim_right: Length,
    /// What goes through it.
    pub holes: Vec<Hole>,
    /// What is ordered for the details that it has: roofs, ledgers and ledges against it, and furring.
    pub parts: Vec<WallPart>,
}

/// A part of a wall's details that is ordered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WallPart {
    /// Flashing along something level: a roof's upper edge, a ledger, a ledge.
    Flashing(Length),
    /// Pieces of step flashing up a roof, with the kick-out at its foot.
    StepFlashings(i64),
    /// A furring strip.
    Furring(Length),
}

/// A board of a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct CountedBoard {
    /// Its course, counted on the pole from one.
    pub course: u32,
    /// Its shape, where it lies on the wall.
    pub shape: BoardShape,
    /// Whether another board meets it at a joint at its left end, and at its right one.
    pub joints: [bool; 2],
    /// The board of the saw list that it is cut from, by its place in [`CountedHouse::cut`].
    pub cut_from: usize,
}

/// What goes through a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hole {
    /// What it is.
    pub kind: PenetrationKind,
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

impl CountedWall {
    /// The visible height of the board of a course: up to the next course, or to the top of the wall.
    pub(super) fn reveal(&self, course: u32) -> Length {
        let mut lines = self.courses.iter().skip_while(|line| line.course != course);
        let Some(own) = lines.next() else { return Length::ZERO };
        let next = lines.next().map_or_else(|| own.top().min(self.outline.top()), |next| next.bottom);
        (next - own.bottom).max(Length::ZERO)
    }

    /// How much of a board shows over the lowest point of its shape.
    pub(super) fn shows(&self, board: &CountedBoard) -> Length {
        self.reveal(board.course) - board.shape.rip.bottom
    }
}

impl CountedHouse {
    /// How many joints there are.
    pub(super) fn joints(&self) -> usize {
        self.walls.iter().flat_map(|wall| &wall.boards).filter(|board| board.joints[1]).count()
    }

    /// Every part of the walls' details.
    pub(super) fn parts(&self) -> impl Iterator<Item = &WallPart> {
        self.walls.iter().flat_map(|wall| &wall.parts)
    }

    /// Everything that goes through a wall.
    pub(super) fn holes(&self) -> impl Iterator<Item = &Hole> {
        self.walls.iter().flat_map(|wall| &wall.holes)
    }
}
