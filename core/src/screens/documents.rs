use crate::book::Book;
use crate::forms::context::in_language;
use crate::handover;
use crate::views::{Context, Outcome, Place, Problem};

use super::accepted;

/// Takes a job document in as a new house.
///
/// # Errors
/// [`Problem`] whose field is the path to what is wrong, such as `walls[0].openings[1].width`; nothing was kept.
pub fn take_in_document(book: &mut Book, context: &Context, text: &str) -> Result<Outcome, Problem> {
    in_language(context, |terms| {
        book.refresh()?;
        let (job, group) = handover::take_in(book, terms, text)?;
        let place = Place::House { job: job.to_string() };
        accepted(book, terms, place, group)
    })
}
