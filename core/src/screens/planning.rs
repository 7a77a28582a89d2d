//! The boards of a whole house planned as one: made from the book, worked on apart from it, accepted into it.

mod accept;
mod house;

use crate::measure::Length;
use crate::phrases::key;
use crate::saw::{self, Planner, SawError};
use crate::store::{Id, Store};
use crate::views::{Code, Context, Outcome, PlanProgress, Problem, Source};
use crate::wall::Span;

use super::context::Terms;
use super::spoken;
use super::trouble::Kept;

use house::House;

/// Works on the boards of a house in slices, on a snapshot of the book. Cancelling is not calling again.
#[derive(Clone, Debug)]
pub struct HousePlanner {
    job: Id,
    house: House,
    planner: Planner,
}

impl HousePlanner {
    /// A planner for what is bare of a house: boards that are cut or fixed stay.
    ///
    /// # Errors
    /// [`Problem`] where something must be answered first, or the boards at hand allow no plan.
    pub fn of(store: &Store, context: &Context, job: &str) -> Result<Self, Problem> {
        spoken(context, |terms| {
            let job = terms.id("job", job)?;
            let house = House::of(store, terms, job)?;
            if house.list.runs.is_empty() {
                return Err(Problem::new(Code::First, "job", terms.phrase(key("wall-nothing-to-plan"), &[])).into());
            }
            let planner = Planner::new(&house.list).map_err(|error| house.refused(terms, &error))?;
            Ok(Self { job, house, planner })
        })
    }

    /// A planner for what the book holds now, with what this one found: after one change, most joints and boards stay, and
    /// a plan is there in a few milliseconds.
    ///
    /// # Errors
    /// As [`HousePlanner::of`].
    pub fn again(&self, store: &Store, context: &Context) -> Result<Self, Problem> {
        spoken(context, |terms| {
            let house = House::of(store, terms, self.job)?;
            if house.list.runs.is_empty() {
                return Err(Problem::new(Code::First, "job", terms.phrase(key("wall-nothing-to-plan"), &[])).into());
            }
            let planner = Planner::again(&house.list, &self.planner).map_err(|error| house.refused(terms, &error))?;
            Ok(Self { job: self.job, house, planner })
        })
    }

    /// Goes on for about so many steps; 20 take some 50 ms on a phone. The same steps give the same plan everywhere.
    ///
    /// # Errors
    /// [`Problem`] for a context that cannot be read.
    pub fn step(&mut self, context: &Context, effort: u32) -> Result<PlanProgress, Problem> {
        spoken(context, |terms| {
            let progress = self.planner.step(u64::from(effort));
            let plan = self.planner.plan();
            let length = |cost: u64| {
                let length = Length::from_nm(i64::try_from(cost).unwrap_or(i64::MAX));
                terms.reading(length, Source::Planned, None)
            };
            let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
            let (used, least) = (length(plan.cost), length(plan.bound));
            let offcuts = count(plan.boards.len() - plan.count);
            let args = [
                ("boards", i64::from(count(plan.count)).into()),
                ("used", used.text.as_str().into()),
                ("least", least.text.as_str().into()),
            ];
            let said = if plan.proved { key("saw-plan-proved") } else { key("saw-plan-open") };
            let text = terms.phrase(said, &args);
            let boards = count(plan.count);
            Ok(PlanProgress { done: progress.done, proved: plan.proved, boards, offcuts, used, least, text })
        })
    }

    /// Writes the best plan so far into the book as one answer: planned boards give way to it, and every board says out
    /// of which stock or offcut it is cut.
    ///
    /// # Errors
    /// [`Problem`] with the code `first` where what the plan was made from has changed since, else as for any action;
    /// nothing was changed.
    pub fn accept(&self, store: &mut Store, context: &Context) -> Result<Outcome, Problem> {
        spoken(context, |terms| {
            if House::of(store, terms, self.job)? != self.house {
                return Err(Problem::new(Code::First, "job", terms.phrase(key("saw-plan-stale"), &[])).into());
            }
            accept::accept(store, terms, self.job, &self.house, &self.planner.plan())
        })
    }

    /// The best plan so far. The cost of a board is its length: a billionth is a nanometre.
    pub fn plan(&self) -> saw::Plan {
        self.planner.plan()
    }
}

impl HousePlanner {
    /// A planner for a house to order for: where the boards at hand do not suffice, it plans as if more were bought.
    pub(super) fn buying(store: &Store, terms: &Terms<'_>, job: Id) -> Kept<Self> {
        let mut house = House::of(store, terms, job)?;
        let planner = match Planner::new(&house.list) {
            Err(SawError::NotEnough) => {
                house.list.stock.iter_mut().for_each(|stock| stock.count = None);
                Planner::new(&house.list)
            }
            planner => planner,
        };
        let planner = planner.map_err(|error| house.refused(terms, &error))?;
        Ok(Self { job, house, planner })
    }

    /// Goes on for so many steps; whether more can change nothing.
    pub(super) fn work(&mut self, effort: u64) -> bool {
        self.planner.step(effort).done
    }

    /// Where the pieces of the best plan so far lie, in the plan's order.
    pub(super) fn on_walls(&self) -> Vec<OnWall> {
        let pieces = self.planner.plan().pieces;
        let on_wall = |piece: saw::Piece| {
            let strip = self.house.runs.get(piece.run)?;
            let x = Span { from: piece.from - strip.moved, to: piece.to - strip.moved };
            Some(OnWall { wall: strip.wall, course: i64::from(strip.course.middle.course), x })
        };
        pieces.into_iter().filter_map(on_wall).collect()
    }

    /// Writes the best plan so far into the book, which has not moved on.
    pub(super) fn keep(&self, store: &mut Store, terms: &Terms<'_>) -> Kept<Id> {
        let outcome = accept::accept(store, terms, self.job, &self.house, &self.planner.plan())?;
        Ok(terms.id("group", &outcome.group)?)
    }
}

/// Where a piece lies.
pub(super) struct OnWall {
    pub(super) wall: Id,
    pub(super) course: i64,
    pub(super) x: Span,
}

/// Whether an error comes from joints that do not fit beside those that are up.
fn of_joints(error: &SawError) -> bool {
    matches!(error, SawError::NoJoints { .. } | SawError::NoStud { .. } | SawError::NoStagger { .. })
}
