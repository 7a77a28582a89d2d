//! The book: an append-only log of entries and its projection, in SQLite.
//!
//! The store knows subjects, fields, entries and sign-offs, not walls and boards. One accepted answer is one [`Op`],
//! is one [`Entry`], is one group: [`Store::transact`] writes it and the tables it changes in one transaction. All
//! tables but the device's own are a projection of the entries that does not depend on the order they came in.

mod account;
mod bulk;
mod canon;
mod change;
mod check;
mod copy;
mod device;
mod entry;
mod error;
mod file;
mod id;
mod image;
mod jpeg;
mod local;
mod lock;
mod merge;
mod open;
mod photo;
mod project;
mod read;
mod recover;
mod salvage;
mod stamp;
#[cfg(test)]
mod tests;
mod trace;
mod value;
mod words;
mod write;

use std::path::PathBuf;

use rusqlite::Connection;

pub use account::{Account, Found, Known, Lost};
pub use bulk::Scope;
pub use change::{Author, Change, Op, SignOff, State};
pub use check::Report;
pub use copy::{Backup, backups, thin};
pub use entry::{Entry, Hash};
pub use error::StoreError;
pub use file::{Overwrite, create_private_folder, write_file};
pub use id::{BadId, DeviceId, Id};
pub use local::PhotoState;
pub use merge::{AHEAD, TakenIn};
pub use open::{APPLICATION_ID, OpenOptions, Opened, Opening, SCHEMA};
pub use read::{Clash, HistoryEntry, Signed, Subject, Written};
pub use stamp::{Now, Stamp};
pub use trace::Statements;
pub use value::Value;
pub use write::{Outcome, Reopened, Undone};

/// What the store's functions give back.
pub type Result<T, E = StoreError> = std::result::Result<T, E>;

/// An open book.
#[derive(Debug)]
pub struct Store {
    conn: Connection,
    device: DeviceId,
    book: Id,
    path: Option<PathBuf>,
    mark: Option<device::Mark>,
    /// Whether this file is a book of this device by now.
    settled: bool,
    /// Dropped behind the connection, as is the lock.
    here: Option<image::OpenHere>,
    _lock: Option<lock::Lock>,
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
}
