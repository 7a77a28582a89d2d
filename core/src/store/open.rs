use std::fs;
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};
use std::time::Duration;

use rusqlite::{Connection, OptionalExtension, TransactionBehavior};
use rusqlite_migration::{M, Migrations};

use super::device::{self, beside};
use super::entry::COLUMNS;
use super::merge::devices;
use super::{DeviceId, Entry, Id, Result, Store, StoreError, copy};

/// Marks a SQLite file as a book: "LPRW".
pub const APPLICATION_ID: i32 = 0x4C50_5257;
/// The schema of this program.
pub const SCHEMA: i64 = 1;

/// Books of up to so many pages get SQLite's quick check at every opening; larger ones are left to [`Store::check`].
const QUICK_PAGES: i64 = 512;

/// How to open a book.
#[derive(Clone, Debug, Default)]
pub struct OpenOptions {
    /// Where backups lie, to restore a damaged book from.
    pub backups: Option<PathBuf>,
}

/// An opened book and what had to be done for it.
#[derive(Debug)]
pub struct Opened {
    /// The book.
    pub store: Store,
    /// What was found.
    pub opening: Opening,
}

/// What opening a book found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Opening {
    /// Nothing was there: a new book.
    New,
    /// The book, as it was.
    Existing,
    /// A book of an older program, now of this one's schema.
    Upgraded {
        /// The schema it had.
        from: i64,
    },
    /// The book was damaged: it was set aside, and this is its newest good backup.
    Restored {
        /// Where the damaged file is now.
        aside: PathBuf,
        /// The backup.
        backup: PathBuf,
    },
    /// The book was damaged and no good backup was found: it was set aside, and this is a new one.
    SetAside {
        /// Where the damaged file is now.
        aside: PathBuf,
    },
}

impl Store {
    /// Opens a book, or makes one where nothing is. What is not a book is left byte for byte as it is; a damaged book
    /// is renamed, never deleted.
    ///
    /// # Errors
    /// [`StoreError::NotABook`], [`StoreError::NewerBook`], [`StoreError::Busy`], or what the file system said.
    pub fn open(path: impl AsRef<Path>, options: &OpenOptions) -> Result<Opened> {
        let path = path.as_ref();
        match open_file(path) {
            Err(StoreError::Damaged(_)) => {
                // Another book's backup must never take this one's place, so a book that cannot be told gets none.
                let book = device::read(path)?.map(|side| side.book).or_else(|| copy::book_of(path));
                let aside = set_aside(path)?;
                let good = match (&options.backups, book) {
                    (Some(folder), Some(book)) => copy::newest_good(folder, book)?,
                    _ => None,
                };
                if let Some(backup) = &good {
                    let part = beside(path, ".restoring");
                    fs::copy(backup, &part)?;
                    fs::File::open(&part)?.sync_all()?;
                    fs::rename(&part, path)?;
                    device::sync_folder(path)?;
                }
                let store = open_file(path)?.store;
                let opening = match good {
                    Some(backup) => Opening::Restored { aside, backup },
                    None => Opening::SetAside { aside },
                };
                Ok(Opened { store, opening })
            }
            other => other,
        }
    }

    /// A book in memory, for tests.
    pub fn in_memory() -> Result<Self> {
        let mut conn = Connection::open_in_memory()?;
        conn.execute_batch("PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY;")?;
        migrations().to_latest(&mut conn).map_err(StoreError::Upgrade)?;
        conn.set_prepared_statement_cache_capacity(128);
        let device = random_device(&conn)?;
        let book = conn.query_row("SELECT id FROM book", [], |row| row.get(0))?;
        Ok(Self { conn, device, book, path: None, mark: None })
    }
}

pub(super) fn migrations() -> Migrations<'static> {
    Migrations::new(vec![M::up(include_str!("../../../fixtures/book/schema-1.sql"))])
}

fn random_device(conn: &Connection) -> Result<DeviceId> {
    Ok(DeviceId(conn.query_row("SELECT randomblob(16)", [], |row| row.get::<_, Id>(0))?))
}

/// Looks at a file's first bytes without SQLite, which would change a foreign file by opening it.
pub(super) fn sniff(path: &Path) -> Result<bool> {
    let mut head = Vec::new();
    match fs::File::open(path) {
        Ok(file) => file.take(100).read_to_end(&mut head)?,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(false),
        Err(error) => return Err(error.into()),
    };
    let ours = head.starts_with(b"SQLite format 3\0") && head.get(68..72) == Some(&APPLICATION_ID.to_be_bytes()[..]);
    if ours {
        return Ok(true);
    }
    if device::read(path)?.is_some_and(|side| side.fits) {
        return Err(StoreError::Damaged("its first page is not that of a book".to_owned()));
    }
    // A book whose making was cut off: an empty file, or one that a journal takes back to an empty one.
    let unborn = head.is_empty() || {
        let mut journal = Vec::new();
        if let Ok(file) = fs::File::open(beside(path, "-journal")) {
            file.take(20).read_to_end(&mut journal)?;
        }
        journal.starts_with(&[0xd9, 0xd5, 0x05, 0xf9, 0x20, 0xa1, 0x63, 0xd7])
            && journal.get(16..20) == Some(&[0; 4][..])
    };
    if unborn { Ok(false) } else { Err(StoreError::NotABook(path.to_owned())) }
}

fn open_file(path: &Path) -> Result<Opened> {
    sniff(path)?;
    let mut conn = Connection::open(path)?;
    conn.busy_timeout(Duration::from_secs(5))?;
    conn.set_transaction_behavior(TransactionBehavior::Immediate);
    conn.set_prepared_statement_cache_capacity(128);
    conn.execute_batch("PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY; PRAGMA synchronous = FULL;")?;
    #[cfg(target_vendor = "apple")]
    conn.execute_batch("PRAGMA fullfsync = ON; PRAGMA checkpoint_fullfsync = ON;")?;
    let (from, empty): (i64, bool) = conn.query_row(
        "SELECT user_version, NOT EXISTS (SELECT 1 FROM sqlite_schema) FROM pragma_user_version",
        [],
        |row| Ok((row.get(0)?, row.get(1)?)),
    )?;
    if from < 1 && !empty {
        return Err(StoreError::Damaged("its schema version is gone".to_owned()));
    }
    if from > SCHEMA {
        let needs: i64 = conn.query_row("SELECT least_reader FROM book", [], |row| row.get(0))?;
        if needs > SCHEMA {
            return Err(StoreError::NewerBook { needs, reads: SCHEMA });
        }
    } else if from < SCHEMA
        && let Err(error) = migrations().to_latest(&mut conn)
        // Another program may have done it in the meantime.
        && version(&conn)? != SCHEMA
    {
        return Err(match error {
            rusqlite_migration::Error::RusqliteError { err, .. } => err.into(),
            other => StoreError::Upgrade(other),
        });
    }
    conn.execute_batch("PRAGMA journal_mode = WAL;")?;
    look_over(&conn)?;
    let book: Id = conn
        .query_row("SELECT id FROM book", [], |row| row.get(0))
        .optional()?
        .ok_or_else(|| StoreError::Damaged("it has no id".to_owned()))?;
    let device = settle_device(&mut conn, path, book)?;
    // A book that cannot note its newest entry beside it is still a book.
    let mark = device::Mark::open(path).ok();
    let opening = match from {
        0 => Opening::New,
        SCHEMA.. => Opening::Existing,
        from => Opening::Upgraded { from },
    };
    Ok(Opened { store: Store { conn, device, book, path: Some(path.to_owned()), mark }, opening })
}

fn version(conn: &Connection) -> Result<i64> {
    Ok(conn.query_row("PRAGMA user_version", [], |row| row.get(0))?)
}

/// The cheap look for damage: the size, the newest entry of each device, and, in small books, SQLite's quick check.
fn look_over(conn: &Connection) -> Result<()> {
    let pages: i64 = conn.query_row("PRAGMA page_count", [], |row| row.get(0))?;
    if pages <= QUICK_PAGES {
        let found: String = conn.query_row("PRAGMA quick_check(1)", [], |row| row.get(0))?;
        if found != "ok" {
            return Err(StoreError::Damaged(found));
        }
    }
    let sql = format!("SELECT {COLUMNS} FROM entry e WHERE e.device = ?1 ORDER BY e.sequence DESC LIMIT 1");
    let mut newest = conn.prepare(&sql)?;
    for device in devices(conn)? {
        let entry = newest.query_row([device], Entry::from_row)?;
        if entry.hash != entry.true_hash() {
            return Err(StoreError::Damaged(format!("entry {} does not fit its hash", entry.sequence)));
        }
    }
    Ok(())
}

/// The device id of this file: the one beside it if it was written for this file and this book, is named inside too,
/// and the book has the newest entry it is known to have made; else a new one.
fn settle_device(conn: &mut Connection, path: &Path, book: Id) -> Result<DeviceId> {
    if let Some(device) = agreed(conn, path, book)? {
        return Ok(device);
    }
    let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
    if let Some(device) = agreed(&tx, path, book)? {
        return Ok(device);
    }
    let device = random_device(&tx)?;
    tx.execute("INSERT OR REPLACE INTO here VALUES (1, ?1)", [device])?;
    device::write(path, device, book)?;
    tx.commit()?;
    Ok(device)
}

fn agreed(conn: &Connection, path: &Path, book: Id) -> Result<Option<DeviceId>> {
    let inside: Option<DeviceId> = conn.query_row("SELECT device FROM here", [], |row| row.get(0)).optional()?;
    let Some(side) = device::read(path)?.filter(|side| side.fits && side.book == book) else { return Ok(None) };
    let (Some(tip), true) = (side.tip, Some(side.device) == inside) else { return Ok(None) };
    let has_tip: bool = conn.query_row(
        "SELECT ?2 = 0 OR EXISTS (SELECT 1 FROM entry WHERE device = ?1 AND sequence = ?2 AND hash = ?3)",
        rusqlite::params![side.device, tip.sequence, tip.hash],
        |row| row.get(0),
    )?;
    Ok(has_tip.then_some(side.device))
}

/// Renames a damaged book and what lies beside it to the first free name.
fn set_aside(path: &Path) -> Result<PathBuf> {
    let mut number = 1;
    let aside = loop {
        let aside = beside(path, &format!(".damaged-{number}"));
        if !aside.try_exists()? {
            break aside;
        }
        number += 1;
    };
    fs::rename(path, &aside)?;
    for tail in ["-wal", "-shm", "-journal", ".device"] {
        match fs::rename(beside(path, tail), beside(&aside, tail)) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error.into()),
            _ => {}
        }
    }
    device::sync_folder(path)?;
    Ok(aside)
}
