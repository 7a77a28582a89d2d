//! Photos of steps: named in the book before a camera opens, taken in when it is back, signed with the next tick.

use crate::steps::Step;
use crate::store::{Id, PhotoState, Signed, Store};
use crate::views::{Code, PhotoPlace, Problem, StepPhoto};

use super::context::Terms;
use super::trouble::Kept;

/// The draft that keeps the id of a step's photo until the step is signed with it.
pub(super) fn draft_key(subject: Id, step: &str) -> String {
    format!("photo/{subject}/{step}")
}

/// Names the file for a photo of a step. One that is still waited for is given up.
pub(super) fn begin(store: &mut Store, terms: &Terms<'_>, subject: Id, steps: &[Step], step: &str) -> Kept<()> {
    if !steps.iter().any(|known| known.code == step) {
        return Err(Problem::new(Code::Unknown, "step", terms.phrase("screen-unknown", &[])).into());
    }
    let key = draft_key(subject, step);
    if let Some(old) = waiting(store, &key)? {
        store.photo_drop(&key, old)?;
    }
    store.photo_begin(&key, terms.fresh(0))?;
    Ok(())
}

/// Takes in what the camera has left for a step; nothing happens where no photo is waited for.
pub(super) fn take_in(store: &mut Store, terms: &Terms<'_>, subject: Id, step: &str, closed: bool) -> Kept<()> {
    let key = draft_key(subject, step);
    let Some(photo) = waiting(store, &key)? else { return Ok(()) };
    let came = store.photo_take_in(&key, photo)?;
    if closed && came.is_none() {
        let something =
            store.photo_file(photo)?.is_some_and(|(_, file)| file.metadata().is_ok_and(|data| data.len() > 0));
        store.photo_drop(&key, photo)?;
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
pub(super) fn here(store: &Store, terms: &Terms<'_>, photo: &str) -> Kept<Id> {
    let id = terms.id("photo", photo)?;
    match store.photo_file(id)? {
        Some((PhotoState::Here, _)) => Ok(id),
        _ => Err(Problem::new(Code::Unknown, "photo", terms.phrase("signing-photo-not-here", &[])).into()),
    }
}

/// The photo of a step: the one that waits for the next tick, else the one of its last sign-off.
pub(super) fn of_step(store: &Store, subject: Id, step: &str, signed: &[Signed]) -> Kept<Option<StepPhoto>> {
    let draft = store.draft_get(&draft_key(subject, step))?.and_then(|text| text.parse().ok());
    let last = || signed.iter().rev().find(|one| one.sign_off.step == step).and_then(|one| one.sign_off.photo);
    let Some(photo) = draft.or_else(last) else { return Ok(None) };
    let Some((state, file)) = store.photo_file(photo)? else { return Ok(None) };
    let place = match state {
        PhotoState::Waiting => PhotoPlace::Waiting,
        PhotoState::Here => PhotoPlace::Here,
        PhotoState::Missing => PhotoPlace::Missing,
    };
    let file = file.display().to_string();
    Ok(Some(StepPhoto { photo: photo.to_string(), place, file, signed: draft.is_none() }))
}

/// The photo that a step waits for.
fn waiting(store: &Store, key: &str) -> Kept<Option<Id>> {
    let Some(photo) = store.draft_get(key)?.and_then(|text| text.parse().ok()) else { return Ok(None) };
    Ok((store.photo(photo)? == Some(PhotoState::Waiting)).then_some(photo))
}
