//! Order: what to buy.

mod house;

use crate::amounts::{AmountError, Item, amounts};
use crate::phrases::key;
use crate::store::Store;

use super::context::Terms;
use super::document::take_in;
use super::kept::Job;
use super::pole::{self, PoleAction};
use super::problem::{Code, Problem};
use super::trouble::{Kept, Trouble};
use super::{Context, kinds, spoken};

/// Counts a house.
fn count(store: &Store, terms: &Terms<'_>, job: &Job) -> Kept<Vec<Item>> {
    let house = house::house(store, terms, job)?;
    amounts(&house).map_err(|error| refused(terms, error))
}

fn refused(terms: &Terms<'_>, error: AmountError) -> Trouble {
    match error {
        AmountError::Rule(error) => error.into(),
        error => {
            let text = terms.phrase(key("amounts-trouble"), &[("why", error.to_string().into())]);
            Problem::new(Code::TooBig, "", text).into()
        }
    }
}

/// Everything to order for the house of a job document, which is taken into a book of its own.
///
/// # Errors
/// [`Problem`] whose field is the path in the document.
pub(crate) fn amounts_of_document(context: &Context, text: &str) -> Result<Vec<Item>, Problem> {
    spoken(context, |terms| {
        let mut store = Store::in_memory()?;
        take_in(&mut store, terms, text)?;
        let job = store.subjects(None, kinds::JOB)?.into_iter().next().map(|job| job.id);
        let Some(id) = job else { return Ok(Vec::new()) };
        let mut job = Job::of(&store, terms, id)?;
        // A document whose pole was never laid out is counted by the lines that its own marks ask for.
        if job.lines(&store)?.is_none() {
            pole::act(&mut store, terms, &PoleAction::LayOut { job: id.to_string() })?;
            job = Job::of(&store, terms, id)?;
        }
        count(&store, terms, &job)
    })
}
