//! Photos of steps: named in the book before a camera opens, taken in when it is back, signed with the next tick.

use crate::book::{Book, DraftKey};
use crate::steps::Step;
use crate::store::{Id, PhotoState, Signed};
use crate::views::{Code, PhotoPlace, Problem, StepPhoto};

use super::context::Terms;
use super::error::Result;

/// Names the file for a photo of a step. One that is still waited for is given up.
pub(crate) fn begin(book: &mut Book, terms: &Terms<'_>, subject: Id, steps: &[Step], step: &str) -> Result<()> {
    if !steps.iter().any(|known| known.code == step) {
        return Err(Problem::new(Code::Unknown, "step", terms.phrase("screen-unknown", &[])).into());
    }
    let key = DraftKey::photo(subject, step);
    if let Some(old) = waiting(book, &key)? {
        book.drop_photo(&key, old)?;
    }
    book.begin_photo(&key, terms.fresh(0))?;
    Ok(())
}

/// Takes in what the camera has left for a step; nothing happens where no photo is waited for.
pub(crate) fn take_in(book: &mut Book, terms: &Terms<'_>, subject: Id, step: &str, closed: bool) -> Result<()> {
    let key = DraftKey::photo(subject, step);
    let Some(photo) = waiting(book, &key)? else { return Ok(()) };
    let came = book.take_photo_in(&key, photo)?;
    if closed && came.is_none() {
        let something = book.photo(photo)?.is_some_and(|(_, file)| file.metadata().is_ok_and(|data| data.len() > 0));
        book.drop_photo(&key, photo)?;
        if something {
            return Err(Problem::new(Code::Range, "photo", terms.phrase("signing-photo-not-whole", &[])).into());
        }
    }
    Ok(())
}

/// The id of a photo that is on this device.
///
/// # Errors
/// [`Problem`] for any other: a tick must not name what nobody can show.
pub(crate) fn here(book: &Book, terms: &Terms<'_>, photo: &str) -> Result<Id> {
    let id = terms.id("photo", photo)?;
    match book.photo(id)? {
        Some((PhotoState::Here, _)) => Ok(id),
        _ => Err(Problem::new(Code::Unknown, "photo", terms.phrase("signing-photo-not-here", &[])).into()),
    }
}

/// The photo of a step: the one that waits for the next tick, else the one of its last sign-off.
pub(crate) fn of_step(book: &Book, subject: Id, step: &str, signed: &[&Signed]) -> Result<Option<StepPhoto>> {
    let draft = book.draft(&DraftKey::photo(subject, step))?.parse().ok();
    let last = || signed.iter().rev().find(|one| one.sign_off.step == step).and_then(|one| one.sign_off.photo);
    let Some(photo) = draft.or_else(last) else { return Ok(None) };
    let Some((state, file)) = book.photo(photo)? else { return Ok(None) };
    let place = match state {
        PhotoState::Waiting => PhotoPlace::Waiting,
        PhotoState::Here => PhotoPlace::Here,
        PhotoState::Missing => PhotoPlace::Missing,
    };
    let file = file.display().to_string();
    Ok(Some(StepPhoto { photo: photo.to_string(), place, file, signed: draft.is_none() }))
}

/// The photo that a step waits for.
fn waiting(book: &Book, key: &DraftKey) -> Result<Option<Id>> {
    let Ok(photo) = book.draft(key)?.parse() else { return Ok(None) };
    let known = book.photo(photo)?;
    Ok(known.filter(|(state, _)| *state == PhotoState::Waiting).map(|_| photo))
}
