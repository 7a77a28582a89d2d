use std::sync::{Mutex, MutexGuard, PoisonError};

use lapwright::screens::HousePlanner;
use lapwright::views::{Context, Outcome, PlanProgress};

use crate::{Book, Refusal};

/// Plans all boards of a house as one, in slices of some 50 ms. Call it from one background thread; cancelling is not
/// calling again. The book can be used meanwhile.
#[derive(uniffi::Object)]
pub struct Planner {
    planner: Mutex<HousePlanner>,
}

#[uniffi::export]
impl Planner {
    /// A planner on a snapshot of what `book` holds of the house `job`, with a first plan made.
    ///
    /// # Errors
    /// [`Refusal`] where something must be answered first, or the boards at hand allow no plan.
    #[uniffi::constructor]
    pub fn of(book: &Book, context: &Context, job: &str) -> Result<Self, Refusal> {
        Ok(Self { planner: Mutex::new(HousePlanner::of(&book.book(), context, job)?) })
    }

    /// A planner on a new snapshot of the same house that starts from what this one found: for a house in which one thing
    /// has changed.
    ///
    /// # Errors
    /// As for a new planner.
    pub fn again(&self, book: &Book, context: &Context) -> Result<Self, Refusal> {
        Ok(Self { planner: Mutex::new(self.planner().again(&book.book(), context)?) })
    }

    /// Goes on for about `effort` steps, 20 for some 50 ms, and says how far it is.
    ///
    /// # Errors
    /// [`Refusal`] for a context that cannot be read.
    pub fn step(&self, context: &Context, effort: u32) -> Result<PlanProgress, Refusal> {
        Ok(self.planner().step(context, effort)?)
    }

    /// Writes the best plan so far into the book as one answer, and gives the view to show then.
    ///
    /// # Errors
    /// [`Refusal`] with the code `first` where what the plan was made from has changed since; nothing was changed.
    pub fn accept(&self, book: &Book, context: &Context) -> Result<Outcome, Refusal> {
        Ok(self.planner().accept(&mut book.book(), context)?)
    }
}

impl Planner {
    /// A panic in another call leaves the planner with a whole plan, so it can be used on.
    fn planner(&self) -> MutexGuard<'_, HousePlanner> {
        self.planner.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
