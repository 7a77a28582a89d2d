use std::path::{Path, PathBuf};

use rusqlite::Connection;

use super::batch::Batch;
use super::device::LastLine;
use super::image::OpenHere;
use super::lock::Lock;
use super::sign::Key;
use super::{DeviceId, Id};

/// An open book.
#[derive(Debug)]
pub struct Store {
    pub(super) conn: Connection,
    pub(super) device: DeviceId,
    pub(super) key: Key,
    pub(super) book: Id,
    pub(super) path: Option<PathBuf>,
    /// Where this book's own copies lie.
    pub(super) backups: Option<PathBuf>,
    pub(super) mark: Option<LastLine>,
    /// Whether this file is a book of this device by now.
    pub(super) settled: bool,
    /// What is being held together, the innermost last.
    pub(super) batches: Vec<Batch>,
    /// Dropped behind the connection, as is the lock.
    pub(super) here: Option<OpenHere>,
    pub(super) _lock: Option<Lock>,
}

impl Store {
    /// The identity of this file on this device.
    pub fn device(&self) -> DeviceId {
        self.device
    }

    /// The identity of the book, the same in every copy.
    pub fn book(&self) -> Id {
        self.book
    }

    /// Its file; none for a book in memory.
    pub fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    /// The folder of its own copies, where it was opened with one.
    pub fn backups_folder(&self) -> Option<&Path> {
        self.backups.as_deref()
    }
}
