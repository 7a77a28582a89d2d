//! The boards of a whole house planned as one: made from the book, worked on apart from it, accepted into it.

mod accept;
mod refused;

use std::sync::Arc;

use crate::book::Book;
use crate::measure::Length;
use crate::phrases::key;
use crate::saw;
use crate::store::Id;
use crate::views::{Code, Context, Outcome, Place, PlanProgress, Problem, Source};
use crate::work::{HousePlan, Work};

use super::accepted;
use crate::forms::context::Terms;
use crate::forms::context::in_language;
use crate::forms::error::Result;
use crate::forms::lookup;

pub(super) use accept::accept;
pub(super) use refused::refused;

/// Works on the boards of a house in slices, on a snapshot of the book. Cancelling is not calling again.
#[derive(Clone, Debug)]
pub struct HousePlanner {
    job: Id,
    plan: HousePlan,
}

impl HousePlanner {
    /// A planner for what no board of a house covers that is cut or fixed: those stay.
    ///
    /// # Errors
    /// [`Problem`] where something must be answered first, or the boards at hand allow no plan.
    pub fn of(book: &Book, context: &Context, job: &str) -> Result<Self, Problem> {
        in_language(context, |terms| {
            book.refresh()?;
            let job = terms.id("job", job)?;
            let plan =
                HousePlan::of(&*house(book, job)?, terms.division).map_err(|error| refused(terms, "job", error))?;
            Ok(Self { job, plan })
        })
    }

    /// A planner for what the book holds now, with what this one found: after one change, most joints and boards stay, and
    /// a plan is there in a few milliseconds.
    ///
    /// # Errors
    /// As [`HousePlanner::of`].
    pub fn again(&self, book: &Book, context: &Context) -> Result<Self, Problem> {
        in_language(context, |terms| {
            book.refresh()?;
            let plan = self.plan.again(&*house(book, self.job)?, terms.division);
            Ok(Self { job: self.job, plan: plan.map_err(|error| refused(terms, "job", error))? })
        })
    }

    /// Goes on for about so many steps; 20 take some 50 ms on a phone. The same steps give the same plan everywhere.
    ///
    /// # Errors
    /// [`Problem`] for a context that cannot be read.
    pub fn step(&mut self, context: &Context, effort: u32) -> Result<PlanProgress, Problem> {
        in_language(context, |terms| {
            let done = self.plan.step(u64::from(effort)).done;
            Ok(progress(terms, &self.plan.plan(), done))
        })
    }

    /// Writes the best plan so far into the book as one answer: planned boards give way to it, and every board says out
    /// of which stock or offcut it is cut.
    ///
    /// # Errors
    /// [`Problem`] with the code `first` where what the plan was made from has changed since, else as for any action;
    /// nothing was changed.
    pub fn accept(&self, book: &mut Book, context: &Context) -> Result<Outcome, Problem> {
        in_language(context, |terms| {
            book.refresh()?;
            if !self.plan.is_of(&*house(book, self.job)?, terms.division)? {
                return Err(Problem::new(Code::First, "job", terms.phrase(key("saw-plan-stale"), &[])).into());
            }
            let group = accept(book, terms, self.job, &self.plan)?;
            let place = Place::House { job: self.job.to_string() };
            accepted(book, terms, place, group)
        })
    }

    /// The best plan so far. The cost of a board is its length: a billionth is a nanometre.
    pub fn plan(&self) -> saw::Plan {
        self.plan.plan()
    }
}

/// What follows from the house, which is there.
fn house(book: &Book, job: Id) -> Result<Arc<Work>> {
    let work = lookup::work(book, Some(job))?;
    work.job()?;
    Ok(work)
}

fn progress(terms: &Terms<'_>, plan: &saw::Plan, done: bool) -> PlanProgress {
    let length = |cost: u64| {
        let length = Length::from_nm(i64::try_from(cost).unwrap_or(i64::MAX));
        terms.reading(length, Source::Planned, None)
    };
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let (used, least) = (length(plan.cost), length(plan.bound));
    let (boards, offcuts) = (count(plan.count), count(plan.boards.len() - plan.count));
    let args = [
        ("boards", i64::from(boards).into()),
        ("used", used.text.as_str().into()),
        ("least", least.text.as_str().into()),
    ];
    let said = if plan.proved { key("saw-plan-proved") } else { key("saw-plan-open") };
    PlanProgress { done, proved: plan.proved, boards, offcuts, text: terms.phrase(said, &args), used, least }
}
