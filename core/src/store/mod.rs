//! The book: an append-only log of entries and its projection, in SQLite.
//!
//! The store knows subjects, fields, entries and sign-offs, not walls and boards. One accepted answer is one [`Op`],
//! is one [`Entry`], is one group: [`Store::transact`] writes it and the tables it changes in one transaction. All
//! tables but the device's own are a projection of the entries that does not depend on the order they came in.

mod account;
mod agree;
mod aside;
mod at_rest;
mod batch;
mod bulk;
mod canon;
mod change;
mod check;
mod copy;
mod device;
mod entry;
mod error;
mod exchange;
mod file;
mod handle;
mod held;
mod id;
mod image;
mod jpeg;
mod local;
mod lock;
mod merge;
mod open;
mod overwrite;
mod pack;
mod photo;
mod project;
mod read;
mod recover;
mod rescue;
mod restore;
mod salvage;
mod schema;
mod sign;
mod stamp;
#[cfg(test)]
mod tests;
mod together;
mod trace;
mod value;
mod write;

pub use account::{Account, Found, Known, Lost};
pub use bulk::Scope;
pub use change::{Author, Change, Op, SignOff, State};
pub use check::Report;
pub use copy::{Backup, CLOUD_TAKES, backups, thin};
pub use entry::{Entry, Hash};
pub use error::{BadEntry, Result, StoreError};
pub use exchange::{ExchangeOffer, HandedOver, Preview, Refused, Sender, Standing};
pub use file::create_private_folder;
pub use handle::Store;
pub use id::{BadId, DeviceId, Id};
pub use local::{PhotoState, setting_at_rest};
pub use merge::{AHEAD, TakenIn};
pub use open::{BookOpening, OpenOptions, Opened};
pub use overwrite::{Overwrite, write_file};
pub use pack::BackupContents;
pub use read::{Clash, HistoryEntry, Signed, StoredSubject, Written};
pub use restore::Restoring;
pub use schema::{APPLICATION_ID, SCHEMA};
pub use stamp::{Now, Stamp};
pub use trace::Statements;
pub use value::Value;
pub use write::{Accepted, Reopened, Undone};
