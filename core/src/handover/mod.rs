//! What is handed over: a house as a job document, JSON of a format of our own, for a colleague, a record or another
//! program.
//!
//! `"lapwright": 1` names the format. A thing's fields have the names that the book keeps. A length is the text that was
//! typed, always with its unit; `{"planned": "8 1/4 in"}` is one that was computed. What a document says goes through
//! the same questions as what a person taps, and nothing is kept unless all of it is right. `house` names the house wherever
//! it goes, so that a second version of it is not taken for another house. `report` (who signed what)
//! and `readings` (what the tape reads, for a demonstration) are for reading: taking a document in leaves them out,
//! because nobody signs for somebody else.

mod json;
mod out;
mod schema;
mod shape;
mod take;

use crate::book::{Book, Field, JobRow};
use crate::forms::context::Terms;
use crate::forms::context::in_language;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::store::Id;
use crate::views::{Code, Context, Problem};

pub use schema::job_document_schema;

/// The demo house as a job document: invented, small, and with everything on it that the trade meets.
pub const DEMO_HOUSE: &str = include_str!("../../../fixtures/demo/house.json");

/// A house as a job document.
///
/// # Errors
/// [`Problem`] where there is no such house, the book cannot be read, or the house is larger than a document that could be
/// taken in again.
pub fn job_document(book: &Book, context: &Context, job: &str) -> Result<String, Problem> {
    in_language(context, |terms| {
        book.refresh()?;
        let work = lookup::house(book, terms, job)?;
        let document = out::document(&work, terms)?;
        let mut text = serde_json::to_string_pretty(&document).unwrap_or_default();
        text.push('\n');
        if text.len() > take::BYTES || work.house().all().count() > take::THINGS {
            let args = [("limit", take::THINGS.to_string().into())];
            return Err(Problem::new(Code::TooBig, "job", terms.phrase("document-house-too-big", &args)).into());
        }
        Ok(text)
    })
}

/// Takes a job document into a book that holds nothing else, so that nothing of it need be saved where it is refused.
pub(crate) fn take_into_new(book: &mut Book, terms: &Terms<'_>, text: &str) -> Result<Id> {
    let taken = take::read(terms, text)?;
    taken.check(terms, &taken.imagined(terms))?;
    let (job, _) = taken.write(book, terms)?;
    Ok(job)
}

/// Takes a job document in, and gives the house and the accepted answer.
pub(crate) fn take_in(book: &mut Book, terms: &Terms<'_>, text: &str) -> Result<(Id, Id)> {
    let mut taken = take::read(terms, text)?;
    if let Some(name) = here(book, taken.house.as_deref())? {
        let text = terms.phrase("document-house-here", &[("name", name.into())]);
        return Err(Problem::new(Code::Order, Field::House.code(), text).into());
    }
    // What does not fit together is refused before the book is touched.
    let house = taken.imagined(terms);
    taken.check(terms, &house)?;
    book.together(|book| taken.judge(book, terms, &house))?;
    let names: Vec<_> = book.jobs()?.iter().filter_map(|job| job.record.text(Field::Name).map(str::to_owned)).collect();
    taken.name_apart(&names);
    taken.write(book, terms)
}

/// What the house of a document is called here, if the book holds it: an older or newer version of it would be a second one.
fn here(book: &Book, house: Option<&str>) -> Result<Option<String>> {
    let Some(house) = house else { return Ok(None) };
    let is_it = |job: &JobRow| job.record.id().to_string() == house || job.record.text(Field::House) == Some(house);
    let found = book.jobs()?.into_iter().find(is_it);
    Ok(found.map(|job| job.record.text(Field::Name).unwrap_or_default().to_owned()))
}
