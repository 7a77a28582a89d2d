use std::collections::BTreeSet;
use std::sync::Arc;

use crate::book::{BoardState, FieldSpec, Record, fields_of};
use crate::flashing::Layer;
use crate::measure::Length;
use crate::siding::CourseLine;
use crate::steps::Step;
use crate::store::Value;
use crate::wall::Span;

use super::signed::open_steps;
use super::wall_board::WallBoard;
use super::{Misfits, Penetration, WallDetail, WallSite, Work};

/// How far a wall is, with everything on it.
#[derive(Clone, Debug)]
pub struct ProgressOnWall {
    /// The wall.
    pub wall: Arc<WallSite>,
    /// The first question of it that the work cannot go on without.
    pub open_field: Option<&'static FieldSpec>,
    /// The boards of its plan, lowest course first, then from the left.
    pub boards: Vec<WallBoard>,
    /// What goes through it, lowest first.
    pub penetrations: Vec<PenetrationProgress>,
    /// What every house has, in the order in which a crew comes to it; empty where the boards' height is not known yet.
    pub details: Vec<DetailProgress>,
    /// The boards that no longer fit it.
    pub misfits: Misfits,
}

/// A detail of a wall with its steps and those that are open.
#[derive(Clone, Debug)]
pub struct DetailProgress {
    /// The detail.
    pub detail: WallDetail,
    /// Its steps in their order.
    pub steps: Vec<Step>,
    /// The codes of those that are open.
    pub open: BTreeSet<&'static str>,
}

/// A penetration with its steps and those that are open.
#[derive(Clone, Debug)]
pub struct PenetrationProgress {
    /// The penetration.
    pub penetration: Penetration,
    /// Its steps in their order.
    pub steps: Vec<Step>,
    /// The codes of those that are open.
    pub open: BTreeSet<&'static str>,
}

/// The first question of a thing that the work cannot go on without and nobody answered.
pub fn open_field(record: &Record) -> Option<&'static FieldSpec> {
    let answered = |spec: &FieldSpec| {
        let written = record.written(spec.field).map(|written| &written.value);
        record.length(spec.field).is_some() || written.is_some_and(|value| *value != Value::Text(String::new()))
    };
    fields_of(record.kind).iter().find(|spec| !spec.optional && !answered(spec))
}

impl ProgressOnWall {
    /// How far each wall of a house is, in their order.
    pub fn of_house(work: &Work) -> Vec<Self> {
        let walls = work.walls().iter().zip(Misfits::of_house(work));
        walls.map(|(wall, misfits)| Self::with(work, wall, misfits)).collect()
    }

    /// How far a wall is.
    pub fn of(work: &Work, wall: &Arc<WallSite>) -> Self {
        Self::with(work, wall, Misfits::on_wall(work, wall))
    }

    fn with(work: &Work, wall: &Arc<WallSite>, misfits: Misfits) -> Self {
        let of = |one: &Penetration| {
            // As they lie at its centre; a wall whose sizes do not fit together yet has none.
            let courses = wall.courses_at(work, one.centre.x).unwrap_or_default();
            PenetrationProgress::of(work, one, &courses)
        };
        let mut penetrations: Vec<PenetrationProgress> = wall.penetrations.iter().map(of).collect();
        penetrations.sort_by_key(|one| (one.penetration.outer().1.from, one.penetration.id()));
        let details = wall.details(work).unwrap_or_default();
        Self {
            open_field: open_field(&wall.record),
            boards: WallBoard::on_wall(work, wall.id()),
            details: details.into_iter().map(|detail| DetailProgress::of(work, detail)).collect(),
            misfits,
            wall: Arc::clone(wall),
            penetrations,
        }
    }

    /// Whether every board round a penetration is fixed; not so where none is planned there yet.
    pub fn is_boarded(&self, one: &PenetrationProgress) -> bool {
        let (x, y) = one.penetration.outer();
        let mut round = self.boards.iter().filter(|board| overlap(board.x(), x) && overlap(board.y(), y)).peekable();
        round.peek().is_some() && round.all(|board| board.state == BoardState::Fixed)
    }
}

impl DetailProgress {
    fn of(work: &Work, detail: WallDetail) -> Self {
        let steps = detail.steps.steps();
        let open = open_steps(work.house(), detail.record.id(), &steps);
        Self { detail, steps, open }
    }

    /// The first open step of what is put before the boards that come as high as this; none asks for all of it.
    pub fn open_before_boards(&self, height: Option<Length>) -> Option<&Step> {
        let mut before = self.steps.iter().take_while(|step| step.puts != Some(Layer::Boards));
        before
            .find(|step| self.open.contains(step.code))
            .filter(|_| height.is_none_or(|height| self.detail.meets < height))
    }

    /// The first open step.
    pub fn open_step(&self) -> Option<&Step> {
        self.steps.iter().find(|step| self.open.contains(step.code))
    }
}

impl PenetrationProgress {
    fn of(work: &Work, penetration: &Penetration, courses: &[CourseLine]) -> Self {
        let steps = penetration.detail(work, courses).steps();
        let open = open_steps(work.house(), penetration.id(), &steps);
        Self { penetration: penetration.clone(), steps, open }
    }

    /// The first open step before the boards are put round it.
    pub fn open_before_boards(&self) -> Option<&Step> {
        let mut before = self.steps.iter().take_while(|step| step.code != "boards-cut");
        before.find(|step| self.is_open(step.code))
    }

    /// The first open step.
    pub fn open_step(&self) -> Option<&Step> {
        self.steps.iter().find(|step| self.is_open(step.code))
    }

    /// Whether a step is in its list and open.
    pub fn is_open(&self, code: &str) -> bool {
        self.open.contains(code)
    }

    /// Whether a step is in its list and done or left out.
    pub fn is_signed(&self, code: &str) -> bool {
        self.steps.iter().any(|step| step.code == code) && !self.is_open(code)
    }
}

fn overlap(a: Span, b: Span) -> bool {
    a.from < b.to && b.from < a.to
}
