//! The names under which a book's file is kept when another takes its place: found damaged, or gone back from. They are
//! numbered in one series, so that the highest number is the last of them, whatever became of the others.

use std::cmp::Reverse;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use super::file::{PartFile, beside, folder_of, sync_folder};
use super::{Result, StoreError};

/// What lies beside a file that SQLite has open, and belongs to it.
const TAILS: [&str; 4] = ["", "-wal", "-shm", "-journal"];

/// Why a file was set aside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum AsideCause {
    /// It was found damaged.
    Damaged,
    /// Somebody went back from it to a copy.
    Replaced,
}

impl AsideCause {
    const ALL: [Self; 2] = [Self::Damaged, Self::Replaced];

    const fn mark(self) -> &'static str {
        match self {
            Self::Damaged => ".damaged-",
            Self::Replaced => ".replaced-",
        }
    }
}

/// A file that was set aside.
#[derive(Debug)]
pub(super) struct Aside {
    pub(super) path: PathBuf,
    pub(super) cause: AsideCause,
    number: u64,
}

/// The files that were set aside from a book, the last one first.
pub(super) fn asides(book: &Path) -> io::Result<Vec<Aside>> {
    let mut found: Vec<Aside> = Vec::new();
    let Some(name) = book.file_name().map(|name| name.as_encoded_bytes().to_vec()) else { return Ok(found) };
    let folder = folder_of(book);
    if !folder.try_exists()? {
        return Ok(found);
    }
    for file in fs::read_dir(folder)? {
        let file = file?.file_name();
        let Some(tail) = file.as_encoded_bytes().strip_prefix(&*name).and_then(|tail| std::str::from_utf8(tail).ok())
        else {
            continue;
        };
        // A log may be all that is left.
        let tail = tail.strip_suffix("-wal").unwrap_or(tail);
        let told =
            AsideCause::ALL.into_iter().find_map(|cause| Some((cause, number(tail.strip_prefix(cause.mark())?)?)));
        if let Some((cause, number)) =
            told.filter(|(cause, number)| !found.iter().any(|a| (a.cause, a.number) == (*cause, *number)))
        {
            found.push(Aside { path: beside(book, tail), cause, number });
        }
    }
    found.sort_by_key(|aside| Reverse(aside.number));
    Ok(found)
}

/// A number that we may have given; with more digits it is somebody else's.
fn number(digits: &str) -> Option<u64> {
    digits.parse().ok().filter(|number: &u64| *number < 1_000_000_000 && number.to_string() == digits)
}

/// The next name for a file that is set aside.
pub(super) fn aside_name(book: &Path, cause: AsideCause) -> io::Result<PathBuf> {
    let last = asides(book)?.first().map_or(0, |aside| aside.number);
    Ok(beside(book, &format!("{}{}", cause.mark(), last + 1)))
}

/// The book that a file was set aside from, where it is still beside it.
pub(super) fn set_aside_from(path: &Path) -> Option<PathBuf> {
    let file = path.file_name()?.to_str()?;
    let (name, _) = AsideCause::ALL.into_iter().find_map(|cause| {
        let (name, digits) = file.rsplit_once(cause.mark())?;
        Some((name, number(digits)?))
    })?;
    Some(path.with_file_name(name)).filter(|book| book.exists())
}

/// What stands behind the name of a book in that of a file that was set aside from it.
pub(super) fn tail(book: &Path, aside: &Path) -> Option<String> {
    let (book, aside) = (book.file_name()?.as_encoded_bytes(), aside.file_name()?.as_encoded_bytes());
    String::from_utf8(aside.strip_prefix(book)?.to_vec()).ok()
}

/// Renames a book and what belongs to it. What says of which device it was is written first, so that a file without it was
/// never set aside here; the book itself goes before its log: without it nothing passes for a whole one.
///
/// # Errors
/// [`StoreError::Exists`] where something has that name; what the file system said.
pub(super) fn set_aside(book: &Path, aside: &Path) -> Result<()> {
    let is_there = book.try_exists()? || beside(book, "-wal").try_exists()?;
    match fs::read(beside(book, ".device")) {
        _ if is_there && fs::symlink_metadata(aside).is_ok() => return Err(StoreError::Exists(aside.to_owned())),
        Ok(bytes) if is_there => {
            let side = beside(aside, ".device");
            PartFile::write(&side, &bytes, true)?.replace(&side)?;
        }
        Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error.into()),
        _ => {}
    }
    move_on(book, aside)
}

/// Renames what belongs to a book, or was left of it where a program was stopped at that.
pub(super) fn move_on(book: &Path, aside: &Path) -> Result<()> {
    for tail in TAILS {
        // Nothing that could be read is written over.
        if ["", "-wal"].contains(&tail) && beside(aside, tail).try_exists()? {
            continue;
        }
        match fs::rename(beside(book, tail), beside(aside, tail)) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error.into()),
            _ => {}
        }
    }
    Ok(sync_folder(book)?)
}
