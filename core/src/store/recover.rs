//! A book that was not found as it was left: what can be saved of it, put together anew.
//!
//! Everything here is done by one process alone ([`Lock::alone`]). What is saved is written beside, flushed, and only
//! then the file that was found is renamed, never deleted. A stop anywhere leaves either the old file in its place, or
//! none and the old one under its new name, where the next opening looks for it.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use rusqlite::Connection;

use super::account::{self, Account, AnswersFrom, Found, Known};
use super::check::inspect;
use super::copy::{Backup, backups, book_in};
use super::device;
use super::exchange;
use super::file::{PartFile, beside, sync_folder};
use super::image::Image;
use super::merge::peers;
use super::project::replay;
use super::salvage::Salvage;
use super::schema::memory;
use super::sign::Key;
use super::{DeviceId, Entry, Id, OpenOptions, Result};

/// The names that a file gets, in turn, which was found damaged and set aside.
const DAMAGED: &str = ".damaged-";
/// The names of one that a copy took the place of.
pub(super) const REPLACED: &str = ".replaced-";

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
    /// What the file beside it says: which device wrote in it, the number of its newest entry, and how far others had come.
    device: Option<DeviceId>,
    tip: Option<i64>,
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
        let salvage = Salvage::of(&image);
        let (mut device, mut tip, mut ends) = (None, None, BTreeMap::new());
        if let Some(side) = side {
            (device, tip) = (Some(side.device), side.tip.map(|tip| tip.sequence));
            ends.extend(tip.map(|tip| (side.device, tip)));
            ends.extend(side.others);
        }
        Ok(Self { path: path.to_owned(), book, salvage, device, tip, ends })
    }

    /// Whether a file that was set aside may be the one that nothing took the place of, since a program was stopped there:
    /// the same device wrote in it, or the next one has not written yet. A copy is made of what took its place.
    fn is_cut_off(&self, aside: &Self, copies: &[Backup]) -> bool {
        let unknown = || self.device.is_none() || self.tip == Some(0) && !is_copied_since(&aside.path, copies);
        self.book.is_none_or(|book| aside.book == Some(book)) && (self.device == aside.device || unknown())
    }
}

/// What is being put together.
struct Rescue {
    book: Option<Id>,
    entries: BTreeMap<(DeviceId, i64), Entry>,
    hurt: BTreeMap<(DeviceId, i64), Entry>,
    ends: BTreeMap<DeviceId, i64>,
    sources: Vec<AnswersFrom>,
}

impl Rescue {
    /// Adds what fits the entries that are here.
    fn add(&mut self, source: &EntrySource) -> u64 {
        for (device, sequence) in &source.ends {
            let end = self.ends.entry(*device).or_default();
            *end = (*end).max(*sequence);
        }
        self.add_some(source, |_, _| true)
    }

    /// Adds what is known to be missing. What else the source holds or knows of may be what was taken out on purpose when
    /// somebody went back to a copy.
    fn fill_gaps(&mut self, source: &EntrySource) -> u64 {
        let gaps = account::missing(&self.entries, &self.ends());
        self.add_some(source, |device, sequence| {
            gaps.iter().any(|(of, first, last)| *of == device && (*first..=*last).contains(&sequence))
        })
    }

    fn add_some(&mut self, source: &EntrySource, asked: impl Fn(DeviceId, i64) -> bool) -> u64 {
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
            if asked(place.0, place.1) {
                self.hurt.entry(*place).or_insert_with(|| entry.clone());
            }
        }
        added
    }

    /// Notes that answers came from a file that is not the book's own.
    fn note(&mut self, source: &EntrySource, answers: u64) {
        if answers > 0 {
            self.sources.push(AnswersFrom { path: source.path.display().to_string(), answers });
        }
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
            saved: self.entries.len() as u64,
            sources: self.sources.clone(),
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

/// Whether a copy was made after a file was set aside.
fn is_copied_since(aside: &Path, copies: &[Backup]) -> bool {
    let copied = |copy: &Backup| fs::metadata(&copy.path).and_then(|data| data.modified()).ok();
    let set_aside = when_set_aside(aside);
    copies.iter().any(|copy| copied(copy) > set_aside)
}

/// When a file was set aside: what lies beside it was written then.
fn when_set_aside(aside: &Path) -> Option<SystemTime> {
    fs::metadata(beside(aside, ".device")).and_then(|data| data.modified()).ok()
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
        sources: Vec::new(),
    };
    rescue.add(&own);
    let copies = options.backups.as_deref().map(backups).transpose()?.unwrap_or_default();
    let mut older = set_aside_before(path)?;
    let mut log = image;
    if log.is_empty()
        && let Some(last) = older.first()
    {
        let aside = EntrySource::read(last)?;
        if own.is_cut_off(&aside, &copies) {
            older.remove(0);
            rescue.book = rescue.book.or(aside.book);
            let answers = rescue.add(&aside);
            rescue.note(&aside, answers);
            log = Image::read(&aside.path)?;
        }
    }
    let mut others = Vec::new();
    let mut has_copy = false;
    for copy in copies {
        // A copy that cannot be read is no reason to give up the others.
        let Ok(source) = EntrySource::read(&copy.path) else { continue };
        let nothing_known = rescue.book.is_none() && rescue.entries.is_empty() && own.salvage.hurt.is_empty();
        if !(rescue.is_of(&source) || nothing_known) {
            continue;
        }
        if !has_copy && is_good(&copy.path) {
            has_copy = true;
            rescue.book = rescue.book.or(source.book);
            let answers = rescue.add(&source);
            rescue.note(&source, answers);
        } else {
            others.push(source);
        }
    }
    let older = older.iter().filter_map(|path| EntrySource::read(path).ok());
    for source in others.into_iter().chain(older) {
        if rescue.is_short() && rescue.is_of(&source) {
            let answers = rescue.fill_gaps(&source);
            rescue.note(&source, answers);
        }
    }
    let seen = || -> Result<u64> {
        Ok(log.connect(path)?.query_row("SELECT count(*) FROM entry", [], |row| row.get::<_, i64>(0))?.unsigned_abs())
    };
    if wrong.found == Found::Older && seen().is_ok_and(|seen| seen >= rescue.entries.len() as u64) {
        return Ok(Some(rescue.account(wrong, None, false)));
    }
    write(path, (&log, own.device.is_some()), &rescue, wrong)?;
    Ok(None)
}

fn is_good(copy: &Path) -> bool {
    Image::read(copy).and_then(|image| image.connect(copy)).and_then(|conn| inspect(&conn)).is_ok_and(|r| r.is_good())
}

/// Writes what was saved, sets the old file aside, and puts the new one in its place.
fn write(path: &Path, (log, has_written): (&Image, bool), rescue: &Rescue, wrong: Wrong) -> Result<()> {
    let conn = put_together(rescue.book, rescue.entries.values())?;
    let typed_lost = match log.is_empty() {
        true => has_written,
        false => !carry_over(&log.connect(path), &conn)?,
    };
    let aside = aside_name(path, DAMAGED)?;
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
    inspect(conn)?.pass()?;
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

/// The files that were set aside before, of both sorts, the last one first.
fn set_aside_before(path: &Path) -> io::Result<Vec<PathBuf>> {
    let mut found = numbered(path, DAMAGED)?;
    found.extend(numbered(path, REPLACED)?);
    found.sort_by_cached_key(|path| Reverse(when_set_aside(path)));
    Ok(found)
}

/// The names of a sort under which something lies, the last one first.
fn numbered(path: &Path, name: &str) -> io::Result<Vec<PathBuf>> {
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
    let (name, number) = path.file_name()?.to_str()?.rsplit_once(DAMAGED)?;
    let book = path.with_file_name(name);
    (number.parse::<usize>().is_ok() && book.exists()).then_some(book)
}

/// Whether files lie here that a book was set aside as.
pub(super) fn was_set_aside(path: &Path) -> io::Result<bool> {
    Ok(!set_aside_before(path)?.is_empty())
}

/// The next name of a sort for a file that is set aside.
pub(super) fn aside_name(path: &Path, name: &str) -> io::Result<PathBuf> {
    let taken = numbered(path, name)?.len();
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
