use std::collections::BTreeSet;

use crate::measure::Length;
use crate::screens::ask::{open_question, questions};
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job, Penetration, Wall};
use crate::screens::kinds;
use crate::screens::parts::Question;
use crate::screens::signing::open_steps;
use crate::screens::trouble::Kept;
use crate::siding::CourseLine;
use crate::steps::Step;
use crate::store::{Id, Store};
use crate::wall::Span;

use super::WallProgress;

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
        let mut boards: Vec<_> =
            Facts::children(store, wall.id(), kinds::BOARD)?.iter().filter_map(BoardState::of).collect();
        boards.sort_by_key(|board| (board.course, board.x.from, board.id));
        let mut holes = Vec::new();
        for penetration in Penetration::on_wall(store, terms, job, wall.id())? {
            holes.push(HoleState::of(store, job, penetration, &courses)?);
        }
        holes.sort_by_key(|hole| (hole.penetration.outer().1.from, hole.penetration.id()));
        Ok(Self { wall, question, boards, holes })
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

impl BoardState {
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
