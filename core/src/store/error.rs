use std::path::{Path, PathBuf};

use rusqlite::ErrorCode;

use super::Id;

/// Why the book could not do what was asked.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// The file was made by a newer program.
    #[error("this book needs a program that reads schema {needs}; this one reads up to {reads}")]
    NewerBook {
        /// The least schema that may read it.
        needs: i64,
        /// The schema of this program.
        reads: i64,
    },
    /// The file is something else; it was not touched.
    #[error("{0} is not a book; it was left as it is")]
    NotABook(PathBuf),
    /// The file was set aside when its book was put together anew; it was not touched.
    #[error("{file} was set aside as it was found; its book is {book}")]
    SetAside {
        /// The file.
        file: PathBuf,
        /// The book that holds what could be read of it.
        book: PathBuf,
    },
    /// The book is damaged.
    #[error("the book is damaged: {0}")]
    Damaged(String),
    /// A file beside the book is: a copy, one that somebody sent, a photo. The book is as it was.
    #[error("{path} is damaged: {why}")]
    DamagedFile {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        why: String,
    },
    /// Another program is writing.
    #[error("another program is writing in the book; try again")]
    Busy,
    /// No room left: nothing was written.
    #[error("there is no room left on the device; nothing was written")]
    DiskFull,
    /// The disk failed to read or write; the book may be whole.
    #[error("the disk could not be read or written: {0}")]
    Disk(String),
    /// The file, or its folder, may only be read.
    #[error("the book can only be read: its file or its folder may not be written")]
    ReadOnly,
    /// The target of a copy exists and is no older copy of this book, or the target of another file is a book.
    #[error("{0} is in the way: a book is not written over, and of copies only an older one of the same book")]
    InTheWay(PathBuf),
    /// The target of a file exists.
    #[error("{0} is there already; it was left as it is")]
    Exists(PathBuf),
    /// A copy of another book cannot take this one's place.
    #[error("{0} is a copy of another book")]
    OtherBook(PathBuf),
    /// The book itself is no copy of it to go back to, and nothing that a colleague handed over.
    #[error("{0} is the book itself, not a copy of it")]
    Itself(PathBuf),
    /// Nobody has compared the words of a device whose answers would be taken in.
    #[error("nobody here has compared the words of the device {words}; nothing was taken in")]
    Untrusted {
        /// Its words.
        words: String,
    },
    /// A book in memory has no folder for photos.
    #[error("this book is in memory only: it has no folder for photos")]
    NoFolder,
    /// The photo is not on this device.
    #[error("photo {0} is not on this device")]
    NoPhoto(Id),
    /// The file system refused.
    #[error("the file system refused: {0}")]
    Io(#[from] std::io::Error),
    /// The file system refused, and which file it was about is known.
    #[error("{path}: {error}")]
    File {
        /// The file or folder.
        path: PathBuf,
        /// What it said.
        error: std::io::Error,
    },
    /// SQLite refused.
    #[error("SQLite refused: {0}")]
    Sqlite(rusqlite::Error),
    /// The upgrade failed.
    #[error("the book could not be upgraded: {0}")]
    Upgrade(rusqlite_migration::Error),
    /// A change that the book does not allow.
    #[error("change of `{field}` on {subject}: {why}")]
    BadChange {
        /// The subject.
        subject: Id,
        /// The field, step or deed.
        field: String,
        /// What is wrong and what is allowed.
        why: &'static str,
    },
    /// An answer without a change.
    #[error("an answer must change something")]
    EmptyOp,
    /// No such group, or it is already undone.
    #[error("{0} cannot be undone: it is not here, or it is already undone")]
    CannotUndo(Id),
    /// An entry that was handed in was made by a clock that is too far ahead.
    #[error(
        "an entry of device {device} says {ms} ms since 1970, and only entries up to {latest} are taken in: one of the \
         two clocks is wrong; nothing was taken in"
    )]
    Ahead {
        /// Its device.
        device: Id,
        /// What its clock said, in milliseconds since 1970 UTC.
        ms: i64,
        /// The latest that is allowed.
        latest: i64,
    },
    /// An entry that was handed in does not fit its hash, its chain or another entry of the same place.
    #[error("entry {sequence} of device {device}: {why}; nothing was taken in")]
    BadEntry {
        /// Its device.
        device: Id,
        /// Its sequence number.
        sequence: i64,
        /// What is wrong.
        why: BadEntry,
    },
}

/// Why an entry that was handed in is not what its maker made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum BadEntry {
    /// Something in it was changed.
    #[error("its hash does not fit its content")]
    Altered,
    /// Somebody else made it, or its signature was changed.
    #[error("its signature is not that of its device")]
    Forged,
    /// The signature is missing.
    #[error("it is not signed, and its device signs what it makes")]
    Unsigned,
    /// Another entry has its number.
    #[error("another entry has this place")]
    PlaceTaken,
    /// It is no link between the entries beside it.
    #[error("it does not fit the entries of its device before and after it")]
    Unchained,
    /// A counter beyond what is ever counted.
    #[error("its clock counts further than any clock does")]
    Clock,
}

impl StoreError {
    /// The same with the file that was to be read or written, where the file system refused.
    pub fn at(self, path: &Path) -> Self {
        match self {
            Self::Io(error) => Self::File { path: path.to_owned(), error },
            other => other,
        }
    }

    /// The same where it was not the book that was read, but a file beside it.
    pub(super) fn of_file(self, path: &Path) -> Self {
        match self {
            Self::Damaged(why) => Self::DamagedFile { path: path.to_owned(), why },
            other => other,
        }
    }

    /// What SQLite said while a book was being upgraded.
    pub(super) fn from_upgrade(error: rusqlite_migration::Error) -> Self {
        match error {
            rusqlite_migration::Error::RusqliteError { err, .. } => err.into(),
            other => Self::Upgrade(other),
        }
    }
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        // The tables are strict and the statements fixed, so these do not come from a sound book.
        if matches!(
            error,
            rusqlite::Error::InvalidColumnType(..)
                | rusqlite::Error::FromSqlConversionFailure(..)
                | rusqlite::Error::IntegralValueOutOfRange(..)
                | rusqlite::Error::Utf8Error(..)
                | rusqlite::Error::QueryReturnedNoRows
        ) {
            return Self::Damaged(error.to_string());
        }
        if let rusqlite::Error::SqliteFailure(_, Some(why)) | rusqlite::Error::SqlInputError { msg: why, .. } = &error
            && why.starts_with("no such ")
        {
            return Self::Damaged(error.to_string());
        }
        match error.sqlite_error_code() {
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::Busy,
            Some(ErrorCode::DiskFull) => Self::DiskFull,
            Some(ErrorCode::SystemIoFailure | ErrorCode::CannotOpen) => Self::Disk(error.to_string()),
            Some(ErrorCode::ReadOnly | ErrorCode::PermissionDenied) => Self::ReadOnly,
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => Self::Damaged(error.to_string()),
            _ => Self::Sqlite(error),
        }
    }
}

/// What the store's functions give back.
pub type Result<T, E = StoreError> = std::result::Result<T, E>;
