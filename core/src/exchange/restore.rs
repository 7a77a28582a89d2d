//! Restore: going back to a copy of the book, once it was seen what that would do.

use std::path::Path;

use crate::book::Book;
use crate::store::backups as backups_in;
use crate::views::{BackupsView, RestoreAction, RestoreView};

use super::backups;
use crate::forms::context::Terms;
use crate::forms::error::Result;

pub(crate) fn view(book: &Book, terms: &Terms<'_>, copy: &str) -> Result<RestoreView> {
    let lines = book.store().preview_restore(copy)?.lines(terms.phrases);
    Ok(RestoreView { copy: copy.to_owned(), name: name(book, terms, Path::new(copy))?, lines })
}

/// When a copy of the book's own was made; of any other file its name.
fn name(book: &Book, terms: &Terms<'_>, copy: &Path) -> Result<String> {
    let own = match book.store().backups_folder() {
        Some(folder) => backups_in(folder)?.into_iter().find(|backup| backup.path == copy),
        None => None,
    };
    let file = || copy.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    Ok(own.map_or_else(file, |backup| terms.exact_moment(backup.ms)))
}

/// The copies behind a restore, and that it was done; none where it was done and they cannot be shown.
pub(crate) fn act(book: &mut Book, terms: &Terms<'_>, action: &RestoreAction) -> Result<Option<BackupsView>> {
    let RestoreAction::Restore { copy } = action;
    book.restore(copy, terms.now())?;
    let when = terms.exact_moment(terms.context.now_ms);
    let done = terms.phrase("restore-done", &[("when", when.into())]);
    Ok(backups::view(book, terms, vec![done]).ok())
}
