//! Backups: the copies that the book keeps of itself, and one file of everything.

use crate::book::Book;
use crate::store::{Backup, CLOUD_TAKES, Overwrite, StoreError, backups};
use crate::views::{BackupsAction, BackupsView, CopyLine};

use super::copied;
use crate::forms::context::Terms;
use crate::forms::error::Result;

pub(crate) fn view(book: &Book, terms: &Terms<'_>, done: Vec<String>) -> Result<BackupsView> {
    let kept = match book.store().backups_folder() {
        Some(folder) => backups(folder)?,
        None => Vec::new(),
    };
    let line = |backup: &Backup| -> Result<(u64, CopyLine)> {
        let bytes = backup.bytes().map_err(StoreError::Io)?;
        let copy = backup.path.display().to_string();
        Ok((bytes, CopyLine { copy, said: terms.exact_moment(backup.ms), size: size(terms, bytes) }))
    };
    let lines = kept.iter().map(line).collect::<Result<Vec<_>>>()?;
    let all: u64 = lines.iter().map(|(bytes, _)| bytes).sum();
    let mut notes = vec![copied::failed(book, terms)?];
    if all > CLOUD_TAKES {
        notes.push(terms.phrase("backups-too-large", &[("size", size(terms, all).into())]));
    }
    notes.retain(|note| !note.is_empty());
    let copies = lines.into_iter().map(|(_, line)| line).collect();
    Ok(BackupsView { copies, copied: copied::said(book, terms)?, notes, done })
}

/// The view behind what was done.
pub(crate) fn act(book: &mut Book, terms: &Terms<'_>, action: &BackupsAction) -> Result<BackupsView> {
    let done = match action {
        BackupsAction::Keep => {
            let folder = book.store().backups_folder().ok_or(StoreError::NoFolder)?.to_owned();
            book.store().backup(folder, terms.now())?;
            copied::kept_one(book)?;
            terms.phrase("backups-kept", &[])
        }
        BackupsAction::Share { path } => {
            let packed = book.store().pack(path, Overwrite::PlainFiles, terms.now())?;
            copied::note(book, terms)?;
            packed.text(terms.phrases)
        }
    };
    view(book, terms, vec![done])
}

/// A number of bytes in words: in KB, of a thousand, as phones count.
fn size(terms: &Terms<'_>, bytes: u64) -> String {
    let kb = i64::try_from(bytes.div_ceil(1000)).unwrap_or(i64::MAX);
    terms.phrase("backups-size", &[("kb", kb.into())])
}
