//! A book that was not found as it was left: what can be saved of it, put together anew.
//!
//! Everything here is done by one process alone ([`super::lock::Lock::alone`]). What is saved is written beside, flushed, and
//! only then the file that was found is renamed, never deleted. A stop anywhere leaves either the old file in its place, or
//! none and the old one under its new name, where the next opening looks for it.

use std::path::Path;

use rusqlite::Connection;

use super::account::{Account, Found};
use super::aside::{Aside, AsideCause, aside_name, asides, move_on, set_aside, tail};
use super::check::inspect;
use super::copy::{backups, book_in};
use super::device::{self, SideFile};
use super::exchange;
use super::file::PartFile;
use super::held::Held;
use super::image::Image;
use super::project::replay;
use super::rescue::{EntrySource, Origin, Rescue, Wrong};
use super::schema::memory;
use super::sign::Key;
use super::{Entry, Id, OpenOptions, Result};

/// How far a program came that was stopped between setting a book aside and putting another in its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stopped {
    /// What was to take its place was not yet settled: the file is all of the book.
    Undecided,
    /// What lies beside the book says what was to be in it.
    Decided,
}

/// Whether the last file that was set aside is one that nothing took the place of.
fn stopped(path: &Path, side: Option<&SideFile>, last: &Aside) -> Result<Option<Stopped>> {
    let Some(side) = side.filter(|_| !path.exists()) else { return Ok(None) };
    if side.replaces.is_some() && side.replaces == tail(path, &last.path) {
        return Ok(Some(Stopped::Decided));
    }
    let same = device::read(&last.path)?.is_some_and(|old| old.device == side.device);
    Ok(same.then_some(Stopped::Undecided))
}

/// Puts a book together anew from its own entries, its copies and the files that were set aside, as far as these are known to
/// have been in it; leaves it in its place with the account of it. Where nothing can be added to an older state it is left as
/// it lies, and the account is given back, to be noted in it.
///
/// # Errors
/// What the file system or SQLite said; the file that was found is in its place or under a name of its own.
pub(super) fn recover(path: &Path, options: &OpenOptions, mut wrong: Wrong) -> Result<Option<Account>> {
    let side = device::read(path)?;
    let mut asides = asides(path)?;
    let mut cut_off = None;
    if let Some(last) = asides.first()
        && let Some(how) = stopped(path, side.as_ref(), last)?
    {
        move_on(path, &last.path)?;
        if last.cause == AsideCause::Damaged {
            wrong.found = Found::Damaged;
        }
        cut_off = Some((asides.remove(0), how));
    }
    let found = Image::read(path)?;
    let own = EntrySource::of(path, Origin::Own, &found);
    // What lies beside it may be that of another book.
    let side = side.filter(|side| own.book.is_none_or(|book| book == side.book));
    let mut sources = vec![own];
    let mut log = None;
    if let Some((aside, how)) = &cut_off {
        let image = Image::read(&aside.path)?;
        let origin = if *how == Stopped::Decided { Origin::Aside(aside.cause) } else { Origin::CutOff };
        sources.push(EntrySource::of(&aside.path, origin, &image));
        log = Some(image);
    }
    let unread = add_others(&mut sources, options, &asides)?;
    let rescue = Rescue::of(sources, side.as_ref());
    if rescue.is_short() {
        let told = [wrong.detail].into_iter().chain(unread).filter(|told| !told.is_empty());
        wrong.detail = told.collect::<Vec<_>>().join("; ");
    }
    if wrong.found == Found::Older && is_all_of(&rescue, &found, path)? {
        return Ok(Some(rescue.account(wrong, None, true)));
    }
    let was_found = !found.is_empty() || cut_off.is_some();
    let log = log.unwrap_or(found);
    let conn = put_together(rescue.book, rescue.entries.values())?;
    let carried = match log.is_empty() {
        true => !device::is_beside(path) && asides.is_empty(),
        false => log.connect(path).map_or(Ok(false), |log| carry_over(&log, &conn))?,
    };
    // What an older file holds of these is older, too.
    let typed_lost = !carried || wrong.found == Found::Older;
    let aside = match cut_off {
        Some((aside, _)) => aside.path,
        None => aside_name(path, AsideCause::Damaged)?,
    };
    add_account(&conn, rescue.account(wrong, was_found.then_some(aside.as_path()), typed_lost))?;
    replace(path, &aside, &conn, Some(&rescue.known))?;
    Ok(None)
}

/// Adds the copies of a book, the newest first, then the files that were set aside, the last first; gives which of them could
/// not be read: that is no reason to give up the others.
fn add_others(sources: &mut Vec<EntrySource>, options: &OpenOptions, asides: &[Aside]) -> Result<Vec<String>> {
    let copies = options.backups.as_deref().map(backups).transpose()?.unwrap_or_default();
    let copies = copies.iter().map(|copy| (&copy.path, Origin::Copy));
    let asides = asides.iter().map(|aside| (&aside.path, Origin::Aside(aside.cause)));
    let mut unread = Vec::new();
    for (path, origin) in copies.chain(asides) {
        match EntrySource::read(path, origin) {
            Ok(source) => sources.push(source),
            Err(error) => unread.push(error.at(path).to_string()),
        }
    }
    Ok(unread)
}

/// Whether a file that is older than it was left has all that there is.
fn is_all_of(rescue: &Rescue, found: &Image, path: &Path) -> Result<bool> {
    let Ok(conn) = found.connect(path) else { return Ok(false) };
    if !rescue.from.is_empty() || !inspect(&conn).is_ok_and(|report| report.is_good()) {
        return Ok(false);
    }
    let rows: i64 = conn.query_row("SELECT count(*) FROM entry", [], |row| row.get(0))?;
    Ok(rows.unsigned_abs() == rescue.entries.len() as u64)
}

/// Adds an account to those that a book holds.
fn add_account(conn: &Connection, account: Account) -> Result<()> {
    let told: Option<String> =
        conn.query_row("SELECT max(text) FROM setting WHERE key = ?1", [Account::KEY], |row| row.get(0))?;
    let mut accounts = Account::read_all(told.as_deref());
    accounts.push(account);
    conn.execute("INSERT OR REPLACE INTO setting VALUES (?1, ?2)", [Account::KEY, &Account::write_all(&accounts)?])?;
    Ok(())
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
/// renamed. `known` is what is known to have been in the book, where that is more: until it is in its place, the next opening
/// must not take what is missing for what nobody asks for.
pub(super) fn replace(path: &Path, aside: &Path, conn: &Connection, known: Option<&Held>) -> Result<()> {
    let key = Key::new()?;
    conn.execute("DELETE FROM setting WHERE substr(key, 1, length(?1)) = ?1", [exchange::MARK])?;
    conn.execute("INSERT OR REPLACE INTO here VALUES (1, ?1)", [key.device()])?;
    inspect(conn)?.pass()?;
    let bytes = conn.serialize("main")?.to_vec();
    let part = PartFile::write(path, &bytes, true)?;
    set_aside(path, aside)?;
    let side = SideFile::new(conn, &key, book_in(conn)?)?;
    let mut meanwhile = side.clone();
    meanwhile.held.clone_from(known.unwrap_or(&side.held));
    meanwhile.replaces = tail(path, aside);
    meanwhile.write(path, part.path())?;
    part.replace(path)?;
    // The book is in its place; where this fails, the next opening does it.
    let _ = side.write(path, path);
    Ok(())
}

/// What stays on this device: drafts, settings, what was seen, where photos are. Gives whether all of it could be read.
pub(super) fn carry_over(from: &Connection, to: &Connection) -> Result<bool> {
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
