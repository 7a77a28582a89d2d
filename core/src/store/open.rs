use std::fs;
use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::Duration;

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OptionalExtension, TransactionBehavior};

use super::account::{Account, Found};
use super::aside::{asides, set_aside_from};
use super::check::inspect;
use super::copy::{backups, book_in};
use super::device::SideFile;
use super::entry::COLUMNS;
use super::file::{beside, clear_leftovers, create_private, folder_of};
use super::image::{Image, OpenHere, Sniffed, sniff};
use super::lock::Lock;
use super::merge::devices;
use super::recover::recover;
use super::rescue::Wrong;
use super::schema::{SCHEMA, memory, migrations, refuse_unreadable, version};
use super::sign::Key;
use super::{DeviceId, Entry, Id, Result, Store, StoreError, device};

/// Books of up to so many pages get SQLite's quick check at every opening; larger ones are left to [`Store::check`].
const QUICK_PAGES: i64 = 512;

/// How to open a book.
#[derive(Clone, Debug, Default)]
pub struct OpenOptions {
    /// Where backups lie, to restore a damaged or missing book from.
    pub backups: Option<PathBuf>,
}

/// An opened book and what had to be done for it.
#[derive(Debug)]
pub struct Opened {
    /// The book.
    pub store: Store,
    /// What was found.
    pub opening: BookOpening,
}

/// What opening a book found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BookOpening {
    /// Nothing was there: a new book.
    New,
    /// The book, as it was.
    Existing,
    /// A book of an older program, now of this one's schema.
    Upgraded {
        /// The schema it had.
        from: i64,
    },
    /// The book was damaged, missing, or older than it was left: [`Store::accounts`] say what was saved and what was not.
    Recovered,
}

/// What a look at a book gives.
enum Looked {
    Sound(Box<Opened>),
    Wrong(Wrong),
}

impl Store {
    /// Opens a book, or makes one where nothing is and nothing was. What is not a book is left byte for byte as it is.
    ///
    /// A book that is damaged in SQLite's own judgement, twice over, is put together anew from its own log, its newest
    /// good backup and what else is found; so is a missing one, and one that lacks answers which this device is known to
    /// have accepted. The file that was found is renamed, never deleted, and [`Store::accounts`] say what was saved. No
    /// other error moves anything. A book that may not be written is opened to be read.
    ///
    /// # Errors
    /// [`StoreError::NotABook`], [`StoreError::SetAside`], [`StoreError::NewerBook`], [`StoreError::Busy`] where others have a book open that must
    /// be repaired, or what the file system or SQLite said.
    pub fn open(path: impl AsRef<Path>, options: &OpenOptions) -> Result<Opened> {
        let path = &own_place(path.as_ref())?;
        refuse_foreign(path)?;
        let Some(lock) = Lock::shared(path)? else { return read_only(path) };
        clear_leftovers(folder_of(path))?;
        match look(path, options, Some(lock), true) {
            Ok(Looked::Sound(opened)) => return Ok(*opened),
            Ok(Looked::Wrong(_)) => {}
            Err(StoreError::ReadOnly) => return read_only(path),
            Err(error) => return Err(error),
        }
        let alone = match Lock::alone(path) {
            // Somebody may have put it right and have it open by now.
            Err(StoreError::Busy) => return reopen(path, options).map_err(|_| StoreError::Busy),
            alone => alone?,
        };
        // Another process may have repaired it by now, and a failing disk may read well the second time.
        let account = match look(path, options, None, true)? {
            Looked::Sound(opened) => {
                drop((opened, alone));
                return reopen(path, options);
            }
            Looked::Wrong(wrong) => recover(path, options, wrong)?,
        };
        drop(alone);
        finish(path, options, account)
    }

    /// Checks a book that nobody has open from end to end, and puts it together anew where anything is wrong with it: as
    /// [`Store::open`] does, with the file that was found kept, too.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn repair(path: impl AsRef<Path>, options: &OpenOptions) -> Result<Opened> {
        let path = &own_place(path.as_ref())?;
        refuse_foreign(path)?;
        let alone = Lock::alone(path)?;
        let wrong = match look(path, options, None, true)? {
            Looked::Wrong(wrong) => Some(wrong),
            Looked::Sound(opened) => {
                drop(opened);
                let report = Image::read(path)?.connect(path).and_then(|conn| inspect(&conn));
                match report {
                    Ok(report) if report.is_good() => None,
                    Ok(report) => Some(Wrong::damaged(report.lines().next().unwrap_or_default())),
                    Err(StoreError::Damaged(why)) => Some(Wrong::damaged(&why)),
                    Err(error) => return Err(error),
                }
            }
        };
        let Some(wrong) = wrong else {
            drop(alone);
            return reopen(path, options);
        };
        let account = recover(path, options, wrong)?;
        drop(alone);
        finish(path, options, account)
    }

    /// A book in memory, for tests.
    pub fn in_memory() -> Result<Self> {
        Ok(Self { settled: true, ..Self::on(memory()?)? })
    }

    /// Stands for a book whose file could not be opened again: nothing is in it and nothing can be written.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn shut() -> Result<Self> {
        let shut = Self::on(memory()?)?;
        shut.conn.execute_batch("PRAGMA query_only = ON;")?;
        Ok(shut)
    }

    /// A book over a connection, in no file and as a device of its own.
    fn on(conn: Connection) -> Result<Self> {
        let (key, book) = (Key::new()?, book_in(&conn)?);
        Ok(Self {
            conn,
            device: key.device(),
            key,
            book,
            path: None,
            backups: None,
            mark: None,
            settled: false,
            batches: Vec::new(),
            here: None,
            _lock: None,
        })
    }
}

/// Opens a book that is sound, and says that it was put right.
fn finish(path: &Path, options: &OpenOptions, account: Option<Account>) -> Result<Opened> {
    // With an account to note, the book is taken as it is: what it lacks is nowhere.
    let lock = Lock::shared(path)?.ok_or(StoreError::ReadOnly)?;
    let Looked::Sound(mut opened) = look(path, options, Some(lock), account.is_none())? else {
        return Err(StoreError::Damaged("it is damaged again".to_owned()));
    };
    if let Some(account) = account {
        opened.store.note_account(account)?;
    }
    opened.opening = BookOpening::Recovered;
    Ok(*opened)
}

fn reopen(path: &Path, options: &OpenOptions) -> Result<Opened> {
    let lock = Lock::shared(path)?.ok_or(StoreError::ReadOnly)?;
    match look(path, options, Some(lock), true)? {
        Looked::Sound(opened) => Ok(*opened),
        Looked::Wrong(wrong) => Err(StoreError::Damaged(wrong.detail)),
    }
}

/// Where a book itself lies: what a link names, since SQLite keeps its log there and not beside the link.
///
/// # Errors
/// What the file system said, such as that a link names nothing.
pub(super) fn own_place(path: &Path) -> Result<PathBuf> {
    match fs::symlink_metadata(path) {
        Ok(data) if data.is_symlink() => Ok(fs::canonicalize(path)?),
        _ => Ok(path.to_owned()),
    }
}

/// What no book of ours ever lay at is left alone, and nothing is made beside it; nor at what one was set aside as, which
/// is kept as it was found.
fn refuse_foreign(path: &Path) -> Result<()> {
    if let Some(book) = set_aside_from(path) {
        return Err(StoreError::SetAside { file: path.to_owned(), book });
    }
    match sniff(path)? {
        Sniffed::Nothing | Sniffed::Book => Ok(()),
        Sniffed::Foreign | Sniffed::OtherDatabase if was_a_book(path)? => Ok(()),
        Sniffed::Foreign | Sniffed::OtherDatabase => Err(StoreError::NotABook(path.to_owned())),
    }
}

/// Whether the very file that lies here was a book, or is one whose making was cut off and will be taken back.
fn was_a_book(path: &Path) -> Result<bool> {
    if !path.is_file() {
        return Ok(false);
    }
    let journal = fs::read(beside(path, "-journal")).unwrap_or_default();
    let unborn = journal.starts_with(&[0xd9, 0xd5, 0x05, 0xf9, 0x20, 0xa1, 0x63, 0xd7])
        && journal.get(16..20) == Some(&[0; 4][..]);
    Ok(unborn || device::read(path)?.is_some_and(|side| side.fits))
}

fn look(path: &Path, options: &OpenOptions, lock: Option<Lock>, whole: bool) -> Result<Looked> {
    let wrong = |found, detail: &str| Ok(Looked::Wrong(Wrong { found, detail: detail.to_owned() }));
    let side = device::read(path)?;
    match sniff(path)? {
        Sniffed::Nothing => {
            let logged = fs::metadata(beside(path, "-wal")).is_ok_and(|data| data.len() > 0);
            let copied = || options.backups.as_deref().map(backups).transpose();
            if path.exists() && (logged || side.as_ref().is_some_and(|side| side.fits)) {
                return wrong(Found::Damaged, "its file is empty");
            }
            let was_here = device::is_beside(path) || logged || !asides(path)?.is_empty();
            if was_here || copied()?.is_some_and(|copies| !copies.is_empty()) {
                return wrong(Found::Missing, "");
            }
            create_private(path)?;
        }
        Sniffed::Foreign | Sniffed::OtherDatabase if side.as_ref().is_some_and(|side| side.fits) => {
            return wrong(Found::Damaged, "its first page is not that of a book");
        }
        Sniffed::Book | Sniffed::Foreign | Sniffed::OtherDatabase => {}
    }
    match open_file(path, lock, whole) {
        Err(StoreError::Damaged(why)) => wrong(Found::Damaged, &why),
        Ok(Looked::Sound(mut opened)) => {
            opened.store.backups.clone_from(&options.backups);
            Ok(Looked::Sound(opened))
        }
        other => other,
    }
}

/// Opens the file; with `whole` it must hold the newest answer that this device is known to have accepted.
fn open_file(path: &Path, lock: Option<Lock>, whole: bool) -> Result<Looked> {
    let here = OpenHere::note(path)?;
    let mut conn = Connection::open(path)?;
    // Until all that was accepted is seen to be here, a log that SQLite takes for finished must not be cleared away.
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true)?;
    conn.busy_timeout(Duration::from_secs(5))?;
    conn.set_transaction_behavior(TransactionBehavior::Immediate);
    conn.set_prepared_statement_cache_capacity(128);
    conn.execute_batch("PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY; PRAGMA synchronous = FULL;")?;
    #[cfg(target_vendor = "apple")]
    conn.execute_batch("PRAGMA fullfsync = ON; PRAGMA checkpoint_fullfsync = ON;")?;
    if conn.is_readonly("main")? {
        return Err(StoreError::ReadOnly);
    }
    let (from, empty): (i64, bool) = conn.query_row(
        "SELECT user_version, NOT EXISTS (SELECT 1 FROM sqlite_schema) FROM pragma_user_version",
        [],
        |row| Ok((row.get(0)?, row.get(1)?)),
    )?;
    if !empty {
        refuse_unreadable(&conn, from)?;
    }
    let mut another = false;
    if !empty {
        look_over(&conn)?;
        refuse_cut_short(&conn, path)?;
        match kept_up(&conn, path)? {
            Some(Found::Older) if whole => {
                return Ok(Looked::Wrong(Wrong { found: Found::Older, detail: String::new() }));
            }
            found => another = found == Some(Found::Another),
        }
    }
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false)?;
    if from < SCHEMA
        && let Err(error) = migrations().to_latest(&mut conn)
        // Another program may have done it in the meantime.
        && version(&conn)? != SCHEMA
    {
        return Err(StoreError::from_upgrade(error));
    }
    let mut store = Store { path: Some(path.to_owned()), here: Some(here), _lock: lock, ..Store::on(conn)? };
    store.take_up()?;
    if from < SCHEMA || !whole || another {
        store.settle()?;
    }
    // A book that cannot tell beside it what it holds is still a book.
    let _ = store.note_held(!whole);
    if another {
        store.note_account(Account::of_another_book(&store.conn)?)?;
    }
    let opening = match from {
        _ if another => BookOpening::Recovered,
        0 => BookOpening::New,
        SCHEMA.. => BookOpening::Existing,
        from => BookOpening::Upgraded { from },
    };
    Ok(Looked::Sound(Box::new(Opened { store, opening })))
}

/// Opens a book that may not be written, from its bytes.
fn read_only(path: &Path) -> Result<Opened> {
    let image = Image::read(path)?;
    if image.is_empty() {
        return Err(std::io::Error::from(std::io::ErrorKind::NotFound).into());
    }
    let conn = image.connect(path)?;
    look_over(&conn)?;
    conn.execute_batch("PRAGMA query_only = ON;")?;
    let store = Store { path: Some(path.to_owned()), ..Store::on(conn)? };
    Ok(Opened { store, opening: BookOpening::Existing })
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
    book_in(conn)?;
    Ok(())
}

/// SQLite reads what is missing of the last page as zeros, which is text to it like any other.
fn refuse_cut_short(conn: &Connection, path: &Path) -> Result<()> {
    let sql = "SELECT page_count * page_size FROM pragma_page_count, pragma_page_size";
    let whole: i64 = conn.query_row(sql, [], |row| row.get(0))?;
    // In this order: what is in the log by now will be in the file before the log is empty.
    let logged = fs::metadata(beside(path, "-wal")).is_ok_and(|data| data.len() > 0);
    if !logged && fs::metadata(path)?.len() < whole.unsigned_abs() {
        return Err(StoreError::Damaged("its file is cut short".to_owned()));
    }
    Ok(())
}

/// Whether the book has all that the file beside it knows to be accepted, and is the book that was here.
fn kept_up(conn: &Connection, path: &Path) -> Result<Option<Found>> {
    for _ in 0..5 {
        let Some(side) = device::read(path)? else { return Ok(None) };
        if side.book != book_in(conn)? {
            return Ok(Some(Found::Another));
        }
        if device::is_kept_up(conn, &side)? || is_put_in_place(conn, &side)? {
            return Ok(None);
        }
        // Another process may be writing the very line that was read.
        sleep(Duration::from_millis(20));
    }
    Ok(Some(Found::Older))
}

impl Store {
    /// Goes on as the device that this file was on this device, if it was.
    fn take_up(&mut self) -> Result<()> {
        let Some(path) = self.path.clone() else { return Ok(()) };
        if let Some(key) = agreed(&self.conn, &path, self.book)? {
            (self.device, self.key) = (key.device(), key);
            self.begin_log(&path)?;
        }
        Ok(())
    }

    fn begin_log(&mut self, path: &Path) -> Result<()> {
        self.conn.execute_batch("PRAGMA journal_mode = WAL;")?;
        // A book that cannot note its newest entry beside it is still a book.
        self.mark = device::LastLine::open(path, self.device).ok();
        self.settled = true;
        Ok(())
    }

    /// Makes the file a book of this device, before the first thing is written in it: a copy that is only looked into
    /// stays byte for byte as it is.
    ///
    /// The device is the one beside the file if it was written for this file and this book, is named inside too, has a key,
    /// and the book has the newest entry it is known to have made; else a new one.
    pub(super) fn settle(&mut self) -> Result<()> {
        if self.settled {
            return Ok(());
        }
        let Some(path) = self.path.clone().filter(|_| self.here.is_some()) else { return Err(StoreError::ReadOnly) };
        self.conn.execute_batch("PRAGMA journal_mode = WAL;")?;
        let tx = self.conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
        match agreed(&tx, &path, self.book)? {
            Some(key) => (self.device, self.key) = (key.device(), key),
            None => {
                tx.execute("INSERT OR REPLACE INTO here VALUES (1, ?1)", [self.device])?;
                SideFile::new(&tx, &self.key, self.book)?.write(&path, &path)?;
            }
        }
        tx.commit()?;
        self.begin_log(&path)
    }

    /// Becomes another device, where the book was made nobody's: somebody handed back what this one had made and no longer
    /// knew of, so that there may be more of that, under numbers which it would use again.
    pub(super) fn renew(&mut self) -> Result<()> {
        if self.path.is_none() || here(&self.conn)? == Some(self.device) {
            return Ok(());
        }
        self.key = Key::new()?;
        (self.device, self.settled, self.mark) = (self.key.device(), false, None);
        self.settle()
    }

    /// Whether the book can only be read: its file or its folder may not be written.
    pub fn is_read_only(&self) -> bool {
        !self.settled && self.here.is_none()
    }
}

/// Whether this is the very book that was put together, and a program was stopped before it said so beside it.
fn is_put_in_place(conn: &Connection, side: &SideFile) -> Result<bool> {
    Ok(side.replaces.is_some() && side.fits && here(conn)? == Some(side.device))
}

/// The device that a book belongs to.
fn here(conn: &Connection) -> Result<Option<DeviceId>> {
    Ok(conn.query_row("SELECT device FROM here", [], |row| row.get(0)).optional()?)
}

fn agreed(conn: &Connection, path: &Path, book: Id) -> Result<Option<Key>> {
    let inside = here(conn)?;
    let Some(side) = device::read(path)?.filter(|side| side.fits && side.book == book) else { return Ok(None) };
    let (Some(tip), Some(key), true) = (side.tip, side.key, Some(side.device) == inside) else { return Ok(None) };
    Ok(tip.is_in(conn, side.device)?.then_some(key))
}
