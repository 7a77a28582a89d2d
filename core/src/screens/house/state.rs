use std::collections::BTreeSet;

use crate::drawing::Elevation;
use crate::measure::Length;
use crate::screens::ask::{open_question, questions};
use crate::screens::context::Terms;
use crate::screens::drawing::small_revision;
use crate::screens::kept::{Facts, Job, Penetration, Wall};
use crate::screens::kinds;
use crate::screens::signing::open_steps;
use crate::screens::trouble::Kept;
use crate::siding::CourseLine;
use crate::steps::Step;
use crate::store::{Id, Store};
use crate::views::{Corner, Question, Rectangle, WallProgress};
use crate::wall::{Outline, Point, Span};

/// What the book holds of a house, as the work needs it.
pub(super) struct House {
    pub(super) job: Job,
    /// Whether its story pole is laid out.
    pub(super) laid_out: bool,
    pub(super) walls: Vec<WallState>,
}

/// A wall with everything on it.
pub(super) struct WallState {
    pub(super) wall: Wall,
    /// The first question that the work cannot go on without.
    pub(super) question: Option<Question>,
    /// The boards of its plan, lowest course first, then from the left.
    pub(super) boards: Vec<BoardState>,
    /// What goes through it, lowest first.
    pub(super) holes: Vec<HoleState>,
    /// The wall drawn small, where its sizes fit together.
    small: Option<Elevation>,
}

/// A board of the plan.
pub(super) struct BoardState {
    pub(super) id: Id,
    pub(super) course: i64,
    pub(super) x: Span,
    pub(super) y: Span,
    pub(super) stands: BoardStands,
}

/// How far a board is.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum BoardStands {
    Planned,
    Cut,
    Fixed,
}

/// A penetration with its steps and those that are open.
pub(super) struct HoleState {
    pub(super) penetration: Penetration,
    pub(super) steps: Vec<Step>,
    pub(super) open: BTreeSet<&'static str>,
}

impl House {
    pub(super) fn of(store: &Store, terms: &Terms<'_>, id: Id) -> Kept<Self> {
        let job = Job::of(store, terms, id)?;
        let lines = job.lines(store)?;
        let walls = Wall::of_job(store, id)?.into_iter();
        let walls = walls.map(|wall| WallState::of(store, terms, &job, wall, lines.as_deref())).collect::<Kept<_>>()?;
        Ok(Self { job, laid_out: lines.is_some(), walls })
    }
}

impl WallState {
    fn of(store: &Store, terms: &Terms<'_>, job: &Job, wall: Wall, lines: Option<&[Length]>) -> Kept<Self> {
        let question = open_question(&questions(store, terms, &wall.facts)?).cloned();
        // A wall whose sizes do not fit together yet has no courses.
        let courses = lines.and_then(|lines| {
            let outline = wall.outline(store, terms).ok()?;
            let lines = wall.lines_at(store, lines, outline.width().half(), outline.width()).ok()?;
            wall.courses(terms, job, &lines, &outline).ok()
        });
        let courses = courses.unwrap_or_default();
        let boards = BoardState::on_wall(store, &wall)?;
        let mut holes = Vec::new();
        for penetration in Penetration::on_wall(store, terms, job, wall.id())? {
            holes.push(HoleState::of(store, job, penetration, &courses)?);
        }
        holes.sort_by_key(|hole| (hole.penetration.outer().1.from, hole.penetration.id()));
        let through: Vec<_> = holes.iter().map(|hole| hole.penetration.outer()).collect();
        let small = wall.outline(store, terms).ok().map(|outline| small_of(store, &wall, &outline, &boards, &through));
        let small = small.transpose()?;
        Ok(Self { wall, question, boards, holes, small })
    }

    pub(super) fn progress(&self, terms: &Terms<'_>) -> WallProgress {
        let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        let boards = |stands| count(self.boards.iter().filter(|board| board.stands == stands).count());
        let progress = WallProgress {
            wall: self.wall.id().to_string(),
            name: self.wall.name().to_owned(),
            measured: self.question.is_none(),
            planned: boards(BoardStands::Planned),
            cut: boards(BoardStands::Cut),
            fixed: boards(BoardStands::Fixed),
            penetrations: count(self.holes.len()),
            penetrations_open: count(self.holes.iter().filter(|hole| !hole.open.is_empty()).count()),
            said: String::new(),
            revision: self.small.as_ref().map_or(0, small_revision),
        };
        WallProgress { said: super::said::progress(terms, &progress), ..progress }
    }

    /// Whether every board round a penetration is fixed; not so where none is planned there yet.
    pub(super) fn boarded(&self, hole: &HoleState) -> bool {
        let (x, y) = hole.penetration.outer();
        let mut round = self.boards.iter().filter(|board| overlap(board.x, x) && overlap(board.y, y)).peekable();
        round.peek().is_some() && round.all(|board| board.stands == BoardStands::Fixed)
    }
}

/// A wall drawn small.
///
/// # Errors
/// Where its sizes do not fit together yet.
pub(in crate::screens) fn small(store: &Store, terms: &Terms<'_>, wall: &Wall) -> Kept<Elevation> {
    let (outline, boards) = (wall.outline(store, terms)?, BoardState::on_wall(store, wall)?);
    let mut holes = Penetration::on_wall(store, terms, &Job::of(store, terms, wall.job)?, wall.id())?;
    holes.sort_by_key(|hole| (hole.outer().1.from, hole.id()));
    let through: Vec<_> = holes.iter().map(Penetration::outer).collect();
    small_of(store, wall, &outline, &boards, &through)
}

fn small_of(
    store: &Store,
    wall: &Wall,
    outline: &Outline,
    boards: &[BoardState],
    through: &[(Span, Span)],
) -> Kept<Elevation> {
    let corner = |point: Point| Corner { x: point.x.nm(), y: point.y.nm() };
    let openings = wall.openings(store)?.into_iter().map(|(_, opening)| {
        let at = Rectangle::of(opening.across(), Span { from: opening.bottom, to: opening.top });
        (at, opening.corners().map(corner).to_vec())
    });
    let state = |board: &BoardState| match board.stands {
        BoardStands::Planned => "planned",
        BoardStands::Cut => "cut",
        BoardStands::Fixed => "fixed",
    };
    Ok(Elevation::plain(
        wall.name(),
        outline.points().iter().copied().map(corner).collect(),
        openings.collect(),
        through.iter().map(|(x, y)| Rectangle::of(*x, *y)).collect(),
        boards.iter().map(|board| (Rectangle::of(board.x, board.y), state(board))).collect(),
    ))
}

impl BoardState {
    /// The boards of a wall's plan, lowest course first, then from the left.
    fn on_wall(store: &Store, wall: &Wall) -> Kept<Vec<Self>> {
        let mut boards: Vec<_> = Facts::children(store, wall.id(), kinds::BOARD)?.iter().filter_map(Self::of).collect();
        boards.sort_by_key(|board| (board.course, board.x.from, board.id));
        Ok(boards)
    }

    fn of(facts: &Facts) -> Option<Self> {
        let (from, bottom) = (facts.length("from")?, facts.length("bottom")?);
        Some(Self {
            id: facts.id(),
            course: facts.whole("course")?,
            x: Span { from, to: facts.length("to")? },
            y: Span { from: bottom, to: bottom + facts.length("height")? },
            stands: match facts.text("state") {
                Some("fixed") => BoardStands::Fixed,
                Some("cut") => BoardStands::Cut,
                _ => BoardStands::Planned,
            },
        })
    }
}

impl HoleState {
    fn of(store: &Store, job: &Job, penetration: Penetration, courses: &[CourseLine]) -> Kept<Self> {
        let steps = penetration.detail(job, courses).steps();
        let open = open_steps(store, penetration.id(), &steps)?;
        Ok(Self { penetration, steps, open })
    }

    /// The first open step before the boards are put round it.
    pub(super) fn open_before_boards(&self) -> Option<&Step> {
        let before = self.steps.iter().take_while(|step| step.code != "boards-cut");
        before.into_iter().find(|step| self.open.contains(step.code))
    }

    /// The first open step.
    pub(super) fn open_step(&self) -> Option<&Step> {
        self.steps.iter().find(|step| self.open.contains(step.code))
    }

    /// Whether a step is in its list and open.
    pub(super) fn is_open(&self, code: &str) -> bool {
        self.open.contains(code)
    }

    /// Whether a step is in its list and done or left out.
    pub(super) fn is_signed(&self, code: &str) -> bool {
        self.steps.iter().any(|step| step.code == code) && !self.is_open(code)
    }
}

fn overlap(a: Span, b: Span) -> bool {
    a.from < b.to && b.from < a.to
}
