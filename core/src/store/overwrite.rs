//! Files of the user's that we write: never over a book, and over nothing else without being asked.

use std::path::Path;
use std::{fs, io};

use super::file::PartFile;
use super::image;
use super::{Result, StoreError};

/// Whether a file that is there may be written over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Overwrite {
    /// What is there stays.
    Never,
    /// A plain file is replaced, as its owner asked. A book, a copy of one and what belongs to a book stay all the same.
    PlainFiles,
}

/// What lies beside a book and belongs to it.
const BESIDE: [&str; 5] = ["-wal", "-shm", "-journal", ".device", ".lock"];

/// Writes a file of the user's that is whole or not there: beside, flushed, renamed, the folder flushed.
///
/// # Errors
/// [`StoreError::InTheWay`] where a book, or what belongs to one, or no plain file lies there; [`StoreError::Exists`]
/// where another file does that may not be written over; else what the file system said. What was there is still there.
pub fn write_file(to: impl AsRef<Path>, bytes: &[u8], overwrite: Overwrite) -> Result<()> {
    let to = to.as_ref();
    allow(to, overwrite)?;
    put(PartFile::write(to, bytes, false)?, to, overwrite)
}

/// Refuses what [`write_file`] refuses, before anything is written.
pub(super) fn allow(to: &Path, overwrite: Overwrite) -> Result<()> {
    match fs::symlink_metadata(to) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => {}
        Err(error) => return Err(error.into()),
        Ok(_) if fs::metadata(to).map_or(true, |data| !data.is_file()) || is_of_a_book(to)? => {
            return Err(StoreError::InTheWay(to.to_owned()));
        }
        Ok(_) if overwrite == Overwrite::Never => return Err(StoreError::Exists(to.to_owned())),
        Ok(_) => {}
    }
    if is_beside_a_book(to)? {
        return Err(StoreError::InTheWay(to.to_owned()));
    }
    Ok(())
}

/// Gives a file that is written its name.
pub(super) fn put(part: PartFile, to: &Path, overwrite: Overwrite) -> Result<()> {
    if overwrite == Overwrite::PlainFiles { part.replace(to) } else { part.place(to) }
}

/// Whether a file is a book, a copy of one, or any other SQLite file, whose write-ahead log would not fit a new content.
fn is_of_a_book(path: &Path) -> Result<bool> {
    Ok(match image::sniff(path)? {
        image::Sniffed::Book | image::Sniffed::OtherDatabase => true,
        image::Sniffed::Nothing | image::Sniffed::Foreign => false,
    })
}

fn is_beside_a_book(path: &Path) -> Result<bool> {
    let Some(text) = path.to_str() else { return Ok(false) };
    for tail in BESIDE {
        if let Some(book) = text.strip_suffix(tail).map(Path::new)
            && book.is_file()
            && is_of_a_book(book)?
        {
            return Ok(true);
        }
    }
    Ok(false)
}
