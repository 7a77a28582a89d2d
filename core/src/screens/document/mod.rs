//! The job document: a house as JSON, of a format of our own, to pass on and to take in.
//!
//! `"lapwright": 1` names the format. A thing's fields have the names that the book keeps. A length is the text that was
//! typed, always with its unit; `{"planned": "8 1/4 in"}` is one that was computed. What a document says goes through
//! the same questions as what a person taps, and nothing is kept unless all of it is right. `report` (who signed what)
//! and `readings` (what the tape reads, for a demonstration) are for reading: taking a document in leaves them out,
//! because nobody signs for somebody else.

mod out;
mod schema;
mod shape;
mod take;

use super::context::Terms;
use super::trouble::Kept;
use super::{Done, desk, spoken};
use crate::book::Book;
use crate::store::Id;
use crate::views::{Context, Outcome, Place, Problem};

pub use schema::job_document_schema;

/// A house as a job document.
///
/// # Errors
/// [`Problem`] where there is no such house, or the book cannot be read.
pub fn job_document(book: &Book, context: &Context, job: &str) -> Result<String, Problem> {
    spoken(context, |terms| {
        book.refresh()?;
        let work = desk::house(book, terms, job)?;
        let document = out::document(&work, terms)?;
        let mut text = serde_json::to_string_pretty(&document).unwrap_or_default();
        text.push('\n');
        Ok(text)
    })
}

/// Takes a job document in as a new house.
///
/// # Errors
/// [`Problem`] whose field is the path to what is wrong, such as `walls[0].openings[1].width`; nothing was kept.
pub fn take_in_document(book: &mut Book, context: &Context, text: &str) -> Result<Outcome, Problem> {
    spoken(context, |terms| {
        book.refresh()?;
        let done = take_in(book, terms, text)?;
        let view = super::show(book, terms, &done.place)?;
        let group = done.group.map(|group| group.to_string()).unwrap_or_default();
        Ok(Outcome { place: done.place, view, group })
    })
}

/// Takes a job document into a book that holds nothing else, so that nothing of it need be saved where it is refused.
pub(super) fn take_into_new(book: &mut Book, terms: &Terms<'_>, text: &str) -> Kept<Id> {
    let taken = take::read(terms, text)?;
    let (job, _) = taken.write(book, terms)?;
    taken.check(book, terms, job)?;
    Ok(job)
}

/// Takes a job document in, and gives the house to show.
pub(super) fn take_in(book: &mut Book, terms: &Terms<'_>, text: &str) -> Kept<Done> {
    let taken = take::read(terms, text)?;
    // First into a book of its own: what does not fit together is refused before the real one is touched.
    let mut rehearsal = Book::in_memory()?;
    let (job, _) = taken.write(&mut rehearsal, terms)?;
    taken.check(&rehearsal, terms, job)?;
    let (job, group) = taken.write(book, terms)?;
    Ok(Done::at(Place::House { job: job.to_string() }, group))
}
