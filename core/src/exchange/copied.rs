//! Copies of the book: one for another device, those that are kept when the program is left, and how old they are.

use std::path::Path;

use crate::book::{Book, Setting};
use crate::phrases::{Language, Phrases};
use crate::store::{Backup, Now, StoreError};

use crate::forms::context::Terms;
use crate::forms::error::Result;

/// Writes a checked copy of the book to `path`, and remembers that one was made at `now_ms`, in milliseconds since
/// 1970-01-01 UTC. Copies that a device keeps for itself are lost with it, and are made by [`keep_copy`].
///
/// # Errors
/// As [`Book::copy`]; nothing was overwritten, and the last copy stays the one before.
pub fn copy(book: &mut Book, now_ms: i64, path: impl AsRef<Path>) -> Result<(), StoreError> {
    book.copy(path)?;
    book.put_setting(&Setting::CopiedAt, &now_ms.to_string())
}

/// Keeps a copy of the book in `folder`, if something was answered since the last one, as
/// [`Store::keep_backup`](crate::store::Store::keep_backup) does: to be called when the program is left. Where that fails, the
/// houses say so until one can be kept.
///
/// # Errors
/// As [`Store::backup`](crate::store::Store::backup).
pub fn keep_copy(book: &mut Book, folder: impl AsRef<Path>, now: Now) -> Result<Backup, StoreError> {
    let kept = book.store().keep_backup(folder, now);
    match &kept {
        Ok(_) => kept_one(book)?,
        Err(error) => {
            let language = book.setting(&Setting::Language).ok().flatten();
            let phrases = Phrases::for_language(language.as_deref().and_then(Language::from_code).unwrap_or_default());
            // A disk that takes no copy may take no note of it either; the next time tries both again.
            let _ = book.put_setting(&Setting::CopyFailed, &error.text(phrases));
        }
    }
    kept
}

/// A copy was made that is to leave this device now.
pub(super) fn note(book: &mut Book, terms: &Terms<'_>) -> Result<(), StoreError> {
    book.put_setting(&Setting::CopiedAt, &terms.context.now_ms.to_string())
}

/// A copy was kept: nothing is to be told any more.
pub(super) fn kept_one(book: &mut Book) -> Result<(), StoreError> {
    match book.setting(&Setting::CopyFailed)? {
        Some(_) => book.clear_setting(&Setting::CopyFailed),
        None => Ok(()),
    }
}

/// That no copy could be kept when the program was last left, and why; empty where one was.
pub(crate) fn failed(book: &Book, terms: &Terms<'_>) -> Result<String> {
    let why = book.setting(&Setting::CopyFailed)?;
    Ok(why.map(|why| terms.phrase("backups-failed", &[("why", why.into())])).unwrap_or_default())
}

/// When the last copy was made that left this device.
pub(crate) fn at_ms(book: &Book) -> Result<Option<i64>> {
    Ok(book.setting(&Setting::CopiedAt)?.and_then(|text| text.parse().ok()))
}

/// How old it is, in words.
pub(crate) fn said(book: &Book, terms: &Terms<'_>) -> Result<String> {
    const DAY_MS: i64 = 24 * 60 * 60 * 1000;
    Ok(match at_ms(book)?.map(|at| terms.context.now_ms.saturating_sub(at).max(0) / DAY_MS) {
        None => terms.phrase("house-never-copied", &[]),
        Some(0) => terms.phrase("house-copied-today", &[]),
        Some(days) => terms.phrase("house-copied-days", &[("days", days.into())]),
    })
}
