//! Restore: going back to a copy of the book, once it was seen what that would do.

use std::path::Path;

use crate::book::Book;
use crate::phrases::key;
use crate::store::{StoreError, backups as backups_in};
use crate::views::{BackupsView, RestoreAction, RestoreView};

use super::{backups, fault};
use crate::forms::context::Terms;
use crate::forms::error::{FormError, Result};

pub(crate) fn view(book: &Book, terms: &Terms<'_>, copy: &str) -> Result<RestoreView> {
    let preview = book.store().preview_restore(copy).map_err(|error| refused(book, terms, Path::new(copy), error))?;
    Ok(RestoreView {
        copy: copy.to_owned(),
        name: name(book, terms, Path::new(copy))?,
        lines: preview.lines(terms.phrases),
    })
}

/// What a copy is called: of the book's own, when it was made; any other by its file.
fn name(book: &Book, terms: &Terms<'_>, copy: &Path) -> Result<String> {
    Ok(moment(book, terms, copy)?.unwrap_or_else(|| fault::file_name(copy)))
}

/// What a file that answers were taken from is called, in a sentence.
pub(crate) fn named_source(book: &Book, terms: &Terms<'_>, file: &Path) -> Result<String> {
    let copy = |when: String| terms.phrase("restore-the-copy", &[("name", when.into())]);
    Ok(moment(book, terms, file)?.map_or_else(|| fault::file_name(file), copy))
}

/// When a copy of the book's own was made; none of any other file.
fn moment(book: &Book, terms: &Terms<'_>, copy: &Path) -> Result<Option<String>> {
    let own = match book.store().backups_folder() {
        Some(folder) => backups_in(folder)?.into_iter().find(|backup| backup.path == copy),
        None => None,
    };
    Ok(own.map(|backup| terms.exact_moment(backup.ms)))
}

/// Why the book does not go back to a copy.
fn refused(book: &Book, terms: &Terms<'_>, copy: &Path, error: StoreError) -> FormError {
    match name(book, terms, copy) {
        Ok(name) => fault::of_file(terms, (copy, name), key("restore-damaged"), error),
        Err(_) => error.into(),
    }
}

/// The copies behind a restore, and that it was done; none where it was done and they cannot be shown.
pub(crate) fn act(book: &mut Book, terms: &Terms<'_>, action: &RestoreAction) -> Result<Option<BackupsView>> {
    let RestoreAction::Restore { copy } = action;
    book.restore(copy, terms.now()).map_err(|error| refused(book, terms, Path::new(copy), error))?;
    let when = terms.exact_moment(terms.context.now_ms);
    let done = terms.phrase("restore-done", &[("when", when.into())]);
    Ok(backups::view(book, terms, vec![done]).ok())
}
