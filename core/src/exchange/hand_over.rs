//! Hand over: the book, or one house of it, as a file for a colleague.

use crate::book::Book;
use crate::store::Overwrite;
use crate::views::{Code, HandOverAction, HandOverView, Problem};

use super::copied;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;

pub(crate) fn view(book: &Book, terms: &Terms<'_>, job: Option<&str>, done: Vec<String>) -> Result<HandOverView> {
    let name = match job {
        Some(job) => lookup::house(book, terms, job)?.name().to_owned(),
        None => String::new(),
    };
    let words = book.store().known_words();
    let said = words.map(|words| terms.phrase("hand-over-words", &[("words", words.into())])).unwrap_or_default();
    Ok(HandOverView { job: job.map(str::to_owned), name, said, copied: copied::said(book, terms)?, done })
}

/// The view behind what was written.
pub(crate) fn act(book: &mut Book, terms: &Terms<'_>, action: &HandOverAction) -> Result<HandOverView> {
    match action {
        HandOverAction::Book { path } => {
            copied::copy(book, terms.context.now_ms, path)?;
            view(book, terms, None, vec![terms.phrase("hand-over-book", &[])])
        }
        HandOverAction::House { job, all, path } => {
            let house = lookup::house(book, terms, job)?;
            let house = house.job()?.id();
            let handed = book.store_mut().hand_over(house, path, *all, Overwrite::PlainFiles)?;
            if handed.answers == 0 {
                return Err(Problem::new(Code::First, "job", terms.phrase("hand-over-nothing", &[])).into());
            }
            let done = terms.phrase("hand-over-house", &[("count", handed.answers.into())]);
            view(book, terms, Some(job), vec![done])
        }
    }
}
