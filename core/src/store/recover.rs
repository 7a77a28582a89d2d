//! A book that was not found as it was left: what can be saved of it, put together anew.
//!
//! Everything here is done by one process alone ([`Lock::alone`]). What is saved is written beside, flushed, and only
//! then the file that was found is renamed, never deleted. A stop anywhere leaves either the old file in its place, or
//! none and the old one under its new name, where the next opening looks for it.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::Connection;

use super::account::{self, Account, Found, Known};
use super::check::inspect;
use super::copy::{backups, book_in};
use super::device;
use super::exchange;
use super::file::{PartFile, beside, sync_folder};
use super::image::Image;
use super::merge::peers;
use super::project::replay;
use super::salvage::Salvage;
use super::schema::memory;
use super::sign::Key;
use super::{DeviceId, Entry, Id, OpenOptions, Result, StoreError};

/// The names that a file which was set aside gets, in turn.
const ASIDE: &str = ".damaged-";

/// What was found wrong with a book, before anything is done about it.
#[derive(Debug)]
pub(super) struct Wrong {
    pub(super) found: Found,
    pub(super) detail: String,
}

impl Wrong {
    pub(super) fn damaged(why: &str) -> Self {
        Self { found: Found::Damaged, detail: why.to_owned() }
    }
}

/// A file that entries may be in.
struct EntrySource {
    path: PathBuf,
    book: Option<Id>,
    salvage: Salvage,
    /// How far the file beside it says that devices had come.
    ends: BTreeMap<DeviceId, i64>,
}

impl EntrySource {
    fn read(path: &Path) -> Result<Self> {
        let image = Image::read(path)?;
        let side = device::read(path)?;
        let book = match &side {
            Some(side) => Some(side.book),
            None => image.connect(path).and_then(|conn| book_in(&conn)).ok(),
        };
        let mut ends = BTreeMap::new();
        if let Some(side) = side {
            ends.extend(side.tip.map(|tip| (side.device, tip.sequence)));
            ends.extend(side.others);
        }
        Ok(Self { path: path.to_owned(), book, salvage: Salvage::of(&image), ends })
    }
}

/// What is being put together.
struct Rescue {
    book: Option<Id>,
    entries: BTreeMap<(DeviceId, i64), Entry>,
    hurt: BTreeMap<(DeviceId, i64), Entry>,
    ends: BTreeMap<DeviceId, i64>,
    from_copies: u64,
    copy: Option<PathBuf>,
}

impl Rescue {
    /// Adds what fits the entries that are here; with `gaps`, only what is known to be missing.
    fn add(&mut self, source: &EntrySource, gaps: bool) -> u64 {
        let missing = account::missing(&self.entries, &self.ends());
        let asked = |device: DeviceId, sequence: i64| {
            !gaps || missing.iter().any(|gap| gap.0 == device && (gap.1..=gap.2).contains(&sequence))
        };
        let mut added = 0;
        for ((device, sequence), entry) in &source.salvage.entries {
            let neighbour = |sequence: i64| self.entries.get(&(*device, sequence));
            let fits = neighbour(sequence - 1).is_none_or(|before| before.hash == entry.previous)
                && neighbour(sequence + 1).is_none_or(|after| after.previous == entry.hash);
            if asked(*device, *sequence) && neighbour(*sequence).is_none() && fits {
                self.entries.insert((*device, *sequence), entry.clone());
                added += 1;
            }
        }
        for (place, entry) in &source.salvage.hurt {
            self.hurt.entry(*place).or_insert_with(|| entry.clone());
        }
        for (device, sequence) in &source.ends {
            let end = self.ends.entry(*device).or_default();
            *end = (*end).max(*sequence);
        }
        added
    }

    /// How far each device is known to have come: what its own file says, and entries that can be read though they are
    /// hurt, as long as they go on where the others stop.
    fn ends(&self) -> BTreeMap<DeviceId, i64> {
        let mut ends = self.ends.clone();
        for (device, sequence) in self.entries.keys() {
            let end = ends.entry(*device).or_default();
            *end = (*end).max(*sequence);
        }
        for (device, sequence) in self.hurt.keys() {
            if let Some(end) = ends.get_mut(device).filter(|end| *sequence == **end + 1) {
                *end = *sequence;
            }
        }
        ends
    }

    fn is_short(&self) -> bool {
        !account::missing(&self.entries, &self.ends()).is_empty()
    }

    fn account(&self, wrong: Wrong, kept: Option<&Path>, typed_lost: bool) -> Account {
        let gaps = account::missing(&self.entries, &self.ends());
        Account {
            found: wrong.found,
            detail: wrong.detail,
            kept: kept.map(|kept| kept.display().to_string()),
            copy: self.copy.as_ref().map(|copy| copy.display().to_string()),
            saved: self.entries.len() as u64,
            from_copies: self.from_copies,
            newest: self.entries.values().max_by_key(|entry| entry.stamp).map(Known::from),
            lost: account::lost(&self.entries, &self.hurt, &gaps),
            typed_lost,
        }
    }

    fn shares_with(&self, source: &EntrySource) -> bool {
        let same = |(place, entry): (&(DeviceId, i64), &Entry)| {
            self.entries.get(place).is_some_and(|own| own.hash == entry.hash)
        };
        source.salvage.entries.iter().any(same)
    }

    fn is_of(&self, source: &EntrySource) -> bool {
        match (self.book, source.book) {
            (Some(own), Some(book)) => own == book,
            _ => self.shares_with(source),
        }
    }
}

/// Puts a book together anew from its own entries, its newest good copy and, where answers are still missing, whatever
/// other copies and files that were set aside hold; leaves it in its place with the account of it. Where nothing can be
/// added to an older state it is left as it lies, and the account is given back, to be noted in it.
///
/// # Errors
/// What the file system or SQLite said; the file that was found is in its place or under a name of its own.
pub(super) fn recover(path: &Path, options: &OpenOptions, wrong: Wrong) -> Result<Option<Account>> {
    let own = EntrySource::read(path)?;
    let image = Image::read(path)?;
    let mut rescue = Rescue {
        book: own.book,
        entries: BTreeMap::new(),
        hurt: BTreeMap::new(),
        ends: BTreeMap::new(),
        from_copies: 0,
        copy: None,
    };
    rescue.add(&own, false);
    let mut older = set_aside_before(path, ASIDE)?;
    let mut log = image;
    if log.is_empty() && !older.is_empty() {
        // A stop in the middle of an earlier rescue leaves the book's own file under its new name.
        let aside = EntrySource::read(&older.remove(0))?;
        rescue.book = rescue.book.or(aside.book);
        if rescue.is_of(&aside) || rescue.entries.is_empty() && rescue.book == aside.book {
            rescue.add(&aside, false);
            log = Image::read(&aside.path)?;
        }
    }
    let copies = options.backups.as_deref().map(backups).transpose()?.unwrap_or_default();
    let mut others = Vec::new();
    for copy in copies {
        // A copy that cannot be read is no reason to give up the others.
        let Ok(source) = EntrySource::read(&copy.path) else { continue };
        let nothing_known = rescue.book.is_none() && rescue.entries.is_empty() && own.salvage.hurt.is_empty();
        if !(rescue.is_of(&source) || nothing_known) {
            continue;
        }
        if rescue.copy.is_none() && is_good(&copy.path) {
            rescue.book = rescue.book.or(source.book);
            rescue.from_copies += rescue.add(&source, false);
            rescue.copy = Some(copy.path);
        } else {
            others.push(source);
        }
    }
    for source in &others {
        if rescue.is_short() {
            rescue.from_copies += rescue.add(source, true);
        }
    }
    for path in older {
        if rescue.is_short()
            && let Ok(source) = EntrySource::read(&path)
            && rescue.is_of(&source)
        {
            rescue.add(&source, true);
        }
    }
    if rescue.from_copies == 0 && wrong.found != Found::Missing {
        rescue.copy = None;
    }
    let seen = || -> Result<u64> {
        Ok(log.connect(path)?.query_row("SELECT count(*) FROM entry", [], |row| row.get::<_, i64>(0))?.unsigned_abs())
    };
    if wrong.found == Found::Older && seen().is_ok_and(|seen| seen >= rescue.entries.len() as u64) {
        return Ok(Some(rescue.account(wrong, None, false)));
    }
    write(path, &log, &rescue, wrong)?;
    Ok(None)
}

fn is_good(copy: &Path) -> bool {
    Image::read(copy).and_then(|image| image.connect(copy)).and_then(|conn| inspect(&conn)).is_ok_and(|r| r.is_good())
}

/// Writes what was saved, sets the old file aside, and puts the new one in its place.
fn write(path: &Path, log: &Image, rescue: &Rescue, wrong: Wrong) -> Result<()> {
    let conn = put_together(rescue.book, rescue.entries.values())?;
    let typed_lost = !log.is_empty() && !carry_over(&log.connect(path), &conn)?;
    let aside = aside_name(path, ASIDE)?;
    let found_there = !Image::read(path)?.is_empty();
    let account = rescue.account(wrong, found_there.then_some(aside.as_path()), typed_lost);
    let told: Option<String> =
        conn.query_row("SELECT max(text) FROM setting WHERE key = ?1", [Account::KEY], |row| row.get(0))?;
    let mut accounts = Account::read_all(told.as_deref());
    accounts.push(account);
    conn.execute("INSERT OR REPLACE INTO setting VALUES (?1, ?2)", [Account::KEY, &account::write(&accounts)])?;
    replace(path, &aside, &conn)
}

/// A book in memory of these entries; without an id it is a book of its own.
pub(super) fn put_together<'a>(book: Option<Id>, entries: impl Iterator<Item = &'a Entry>) -> Result<Connection> {
    let conn = memory()?;
    if let Some(book) = book {
        conn.execute("UPDATE book SET id = ?1", [book])?;
    }
    for entry in entries {
        entry.insert(&conn)?;
    }
    replay(&conn)?;
    Ok(conn)
}

/// Puts a book that is in memory in the place of another one, as a new device, with the old file and what lies beside it
/// renamed.
pub(super) fn replace(path: &Path, aside: &Path, conn: &Connection) -> Result<()> {
    let key = Key::new()?;
    conn.execute("DELETE FROM setting WHERE substr(key, 1, length(?1)) = ?1", [exchange::MARK])?;
    conn.execute("INSERT OR REPLACE INTO here VALUES (1, ?1)", [key.device()])?;
    let report = inspect(conn)?;
    if !report.is_good() {
        return Err(StoreError::Damaged(format!("{report:?}")));
    }
    let bytes = conn.serialize("main")?.to_vec();
    let part = PartFile::write(path, &bytes, true)?;
    set_aside(path, aside)?;
    device::write(path, part.path(), (&key, book_in(conn)?), &peers(conn)?)?;
    part.replace(path)
}

/// What stays on this device: drafts, settings, what was seen, where photos are. Gives whether all of it could be read.
pub(super) fn carry_over(from: &Result<Connection>, to: &Connection) -> Result<bool> {
    let Ok(from) = from else { return Ok(false) };
    let mut whole = true;
    for (table, columns) in [("draft", 2), ("setting", 2), ("clash_seen", 4), ("photo", 2)] {
        let places = if columns == 2 { "?1, ?2" } else { "?1, ?2, ?3, ?4" };
        let mut insert = to.prepare(&format!("INSERT OR REPLACE INTO {table} VALUES ({places})"))?;
        let Ok(mut statement) = from.prepare(&format!("SELECT * FROM {table}")) else {
            whole = false;
            continue;
        };
        let Ok(mut rows) = statement.query([]) else {
            whole = false;
            continue;
        };
        loop {
            let row = match rows.next() {
                Ok(Some(row)) => row,
                Ok(None) => break,
                Err(_) => {
                    whole = false;
                    break;
                }
            };
            let values: rusqlite::Result<Vec<rusqlite::types::Value>> = (0..columns).map(|at| row.get(at)).collect();
            let put = values.and_then(|values| insert.execute(rusqlite::params_from_iter(values)));
            // A value that the table does not take is one that was hurt.
            whole &= put.is_ok();
        }
    }
    Ok(whole)
}

/// The files that were set aside before, the last one first, by the names of what is there of them.
fn set_aside_before(path: &Path, name: &str) -> io::Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    for number in 1.. {
        let aside = beside(path, &format!("{name}{number}"));
        if !is_taken(&aside)? {
            break;
        }
        found.insert(0, aside);
    }
    Ok(found)
}

fn is_taken(aside: &Path) -> io::Result<bool> {
    for tail in ["", "-wal"] {
        if beside(aside, tail).try_exists()? {
            return Ok(true);
        }
    }
    Ok(false)
}

/// The book that a file was set aside from, where it is still beside it.
pub(super) fn set_aside_from(path: &Path) -> Option<PathBuf> {
    let (name, number) = path.file_name()?.to_str()?.rsplit_once(ASIDE)?;
    let book = path.with_file_name(name);
    (number.parse::<usize>().is_ok() && book.exists()).then_some(book)
}

/// Whether files lie here that a book was set aside as.
pub(super) fn was_set_aside(path: &Path) -> io::Result<bool> {
    Ok(!set_aside_before(path, ASIDE)?.is_empty())
}

/// The next name of a sort for a file that is set aside.
pub(super) fn aside_name(path: &Path, name: &str) -> io::Result<PathBuf> {
    let taken = set_aside_before(path, name)?.len();
    Ok(beside(path, &format!("{name}{}", taken + 1)))
}

/// Renames a book and what lies beside it. The book itself goes first: without it nothing passes for a whole one.
fn set_aside(path: &Path, aside: &Path) -> Result<()> {
    for tail in ["", "-wal", "-shm", "-journal"] {
        match fs::rename(beside(path, tail), beside(aside, tail)) {
            Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error.into()),
            _ => {}
        }
    }
    match fs::copy(beside(path, ".device"), beside(aside, ".device")) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error.into()),
        _ => Ok(sync_folder(path)?),
    }
}
