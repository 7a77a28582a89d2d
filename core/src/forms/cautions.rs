//! Cautions are shown where they matter once a day and house; whoever ticks their step has read them.

use crate::book::{Book, Setting};
use crate::steps::{Caution, Step};
use crate::store::Id;
use crate::views::{Code, Problem};

use super::context::Terms;
use super::error::Result;
use super::moment;

/// Whether everything there is to mind at a step was read today on this phone.
pub(crate) fn read(book: &Book, terms: &Terms<'_>, job: Option<Id>, step: &Step) -> Result<bool> {
    Ok(unread(book, terms, job, step)?.is_empty())
}

/// Keeps that what there is to mind at a step was read today.
pub(crate) fn keep_read(book: &mut Book, terms: &Terms<'_>, job: Option<Id>, step: &Step) -> Result<()> {
    for caution in unread(book, terms, job, step)? {
        book.put_setting(&Setting::Caution(job, caution.code()), &today(terms))?;
    }
    Ok(())
}

/// Keeps that what there is to mind at the step of a code was read today.
///
/// # Errors
/// [`Problem`] where it is none of these steps.
pub(crate) fn keep_read_at(
    book: &mut Book,
    terms: &Terms<'_>,
    job: Option<Id>,
    steps: &[Step],
    step: &str,
) -> Result<()> {
    let unknown = || Problem::new(Code::Unknown, "step", terms.phrase("screen-unknown", &[]));
    let step = steps.iter().find(|known| known.code == step).ok_or_else(unknown)?;
    keep_read(book, terms, job, step)
}

/// Those that were not read today.
fn unread<'a>(book: &Book, terms: &Terms<'_>, job: Option<Id>, step: &'a Step) -> Result<Vec<&'a Caution>> {
    let today = today(terms);
    let mut unread = Vec::new();
    for caution in &step.cautions {
        if book.setting(&Setting::Caution(job, caution.code()))?.is_none_or(|day| day != today) {
            unread.push(caution);
        }
    }
    Ok(unread)
}

fn today(terms: &Terms<'_>) -> String {
    moment::day(terms.context.now_ms, terms.context.utc_offset_minutes)
}
