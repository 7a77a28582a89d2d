//! A copy of the book for another device, and how old the last one is.

use std::path::Path;

use crate::book::{Book, Setting};
use crate::store::StoreError;

use crate::forms::context::Terms;
use crate::forms::error::Result;

/// Writes a checked copy of the book to `path`, and remembers that one was made at `now_ms`, in milliseconds since
/// 1970-01-01 UTC. Copies that a device keeps for itself are lost with it, and are made by [`Store::backup`](crate::store::Store::backup).
///
/// # Errors
/// As [`Book::copy`]; nothing was overwritten, and the last copy stays the one before.
pub fn copy(book: &mut Book, now_ms: i64, path: impl AsRef<Path>) -> Result<(), StoreError> {
    book.copy(path)?;
    book.put_setting(&Setting::CopiedAt, &now_ms.to_string())
}

/// When the last copy was made.
pub(super) fn at_ms(book: &Book) -> Result<Option<i64>> {
    Ok(book.setting(&Setting::CopiedAt)?.and_then(|text| text.parse().ok()))
}

/// How old a copy is, in words.
pub(super) fn said(terms: &Terms<'_>, at_ms: Option<i64>) -> String {
    const DAY_MS: i64 = 24 * 60 * 60 * 1000;
    match at_ms.map(|at| terms.context.now_ms.saturating_sub(at).max(0) / DAY_MS) {
        None => terms.phrase("house-never-copied", &[]),
        Some(0) => terms.phrase("house-copied-today", &[]),
        Some(days) => terms.phrase("house-copied-days", &[("days", days.into())]),
    }
}
