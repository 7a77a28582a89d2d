//! Who has a book open: everybody holds `NAME.lock` together, and who repairs or replaces the book holds it alone. A book
//! that somebody has open is never renamed under them, since what they accept would go with it.

use std::fs::File;
use std::io;
use std::path::Path;
use std::thread::sleep;
use std::time::{Duration, Instant};

use fs4::{FileExt, TryLockError};

use super::file::{beside, create_private};
use super::{Result, StoreError};

const PATIENCE: Duration = Duration::from_secs(5);

/// A hold on a book; given up when dropped.
#[derive(Debug)]
pub(super) struct Lock {
    _file: File,
}

impl Lock {
    /// Together with others; `None` in a folder where nothing can be written, where nobody repairs either.
    pub(super) fn shared(book: &Path) -> Result<Option<Self>> {
        match file(book) {
            Ok(file) => wait(file, FileExt::try_lock_shared).map(Some),
            Err(error) if is_read_only(&error) => Ok(None),
            Err(error) => Err(error.into()),
        }
    }

    /// Alone.
    ///
    /// # Errors
    /// [`StoreError::Busy`] where others have the book open.
    pub(super) fn alone(book: &Path) -> Result<Self> {
        wait(file(book)?, FileExt::try_lock)
    }
}

pub(super) fn is_read_only(error: &io::Error) -> bool {
    matches!(error.kind(), io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem)
}

fn file(book: &Path) -> io::Result<File> {
    let path = beside(book, ".lock");
    match File::open(&path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => {
            create_private(&path)?;
            File::open(&path)
        }
        opened => opened,
    }
}

fn wait(file: File, try_lock: impl Fn(&File) -> Result<(), TryLockError>) -> Result<Lock> {
    let start = Instant::now();
    loop {
        match try_lock(&file) {
            Ok(()) => return Ok(Lock { _file: file }),
            Err(TryLockError::Error(error)) => return Err(error.into()),
            Err(TryLockError::WouldBlock) if start.elapsed() > PATIENCE => return Err(StoreError::Busy),
            Err(TryLockError::WouldBlock) => sleep(Duration::from_millis(10)),
        }
    }
}
