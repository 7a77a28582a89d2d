//! Copies and backups: by SQLite's own backup call, checked, written beside, flushed, renamed.
//!
//! A copy holds the book and nothing of the device: no drafts, settings, photo states, seen-marks or device id.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use chrono::{DateTime, Datelike as _, NaiveDateTime};
use rusqlite::{Connection, OpenFlags, backup};

use super::check::{Report, chain, integrity};
use super::device::{beside, sync_folder};
use super::merge::peers;
use super::open::sniff;
use super::{DeviceId, Id, Now, Result, Store, StoreError};

/// A backup in a folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Backup {
    /// Its file.
    pub path: PathBuf,
    /// When it was taken, in milliseconds since 1970 UTC.
    pub ms: i64,
}

const NAME: &str = "book-%Y%m%d-%H%M%S%3f.lapwright";

impl Store {
    /// Copies the book into a file that does not exist, or holds an older copy of the same book.
    ///
    /// # Errors
    /// [`StoreError::InTheWay`] for any other file, this book's own among them: nothing is overwritten.
    pub fn copy(&self, to: impl AsRef<Path>) -> Result<()> {
        let to = to.as_ref();
        if fs::symlink_metadata(to).is_ok() && !self.is_older_copy(to) {
            return Err(StoreError::InTheWay(to.to_owned()));
        }
        let part = beside(to, &format!(".part-{}", self.device));
        let made = self.copy_to_part(&part).and_then(|()| {
            fs::File::open(&part)?.sync_all()?;
            fs::rename(&part, to)?;
            Ok(sync_folder(to)?)
        });
        if made.is_err() {
            for tail in ["", "-journal", "-wal", "-shm"] {
                // The first error is the one to tell; a part that cannot be removed harms nothing.
                let _ = fs::remove_file(beside(&part, tail));
            }
        }
        made
    }

    fn copy_to_part(&self, part: &Path) -> Result<()> {
        if part.try_exists()? {
            fs::remove_file(part)?;
        }
        let mut target = Connection::open(part)?;
        if backup::Backup::new(&self.conn, &mut target)?.step(-1)? != backup::StepResult::Done {
            return Err(StoreError::Busy);
        }
        target.execute_batch(
            "PRAGMA journal_mode = DELETE; PRAGMA secure_delete = ON; BEGIN; DELETE FROM draft; DELETE FROM setting; \
             DELETE FROM photo; DELETE FROM clash_seen; DELETE FROM here; COMMIT; VACUUM;",
        )?;
        let report = inspect(&target)?;
        if !report.is_good() {
            return Err(StoreError::Damaged(format!("{report:?}")));
        }
        target.close().map_err(|(_, error)| error)?;
        Ok(())
    }

    fn is_older_copy(&self, to: &Path) -> bool {
        let same = |own: &PathBuf| matches!((fs::canonicalize(own), fs::canonicalize(to)), (Ok(a), Ok(b)) if a == b);
        if self.path.as_ref().is_some_and(same) || beside(to, ".device").exists() {
            return false;
        }
        let theirs = || -> Result<(Id, BTreeMap<DeviceId, i64>)> {
            let conn = open_copy(to)?;
            Ok((book_in(&conn)?, peers(&conn)?))
        };
        let (Ok((book, theirs)), Ok(ours)) = (theirs(), self.peers()) else { return false };
        book == self.book
            && theirs.iter().all(|(device, unbroken)| ours.get(device).is_some_and(|mine| mine >= unbroken))
    }

    /// Copies the book into a folder under the name of the moment, then thins this book's backups there; gives the
    /// backup. Those of other books, and those that cannot be read, stay.
    pub fn backup(&self, folder: impl AsRef<Path>, now: Now) -> Result<Backup> {
        let folder = folder.as_ref();
        fs::create_dir_all(folder)?;
        let time = DateTime::from_timestamp_millis(now.ms).unwrap_or_default();
        let backup = Backup { path: folder.join(time.format(NAME).to_string()), ms: time.timestamp_millis() };
        self.copy(&backup.path)?;
        let mut all = backups(folder)?;
        all.retain(|backup| book_of(&backup.path) == Some(self.book));
        let mut keep = thin(&all.iter().map(|backup| backup.ms).collect::<Vec<_>>());
        keep.insert(backup.ms);
        for old in all.iter().filter(|old| !keep.contains(&old.ms)) {
            fs::remove_file(&old.path)?;
        }
        Ok(backup)
    }

    /// Checks a copy or backup from end to end, without changing it.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] or [`StoreError::NotABook`].
    pub fn verify_copy(path: impl AsRef<Path>) -> Result<()> {
        let report = inspect(&open_copy(path.as_ref())?)?;
        if report.is_good() { Ok(()) } else { Err(StoreError::Damaged(format!("{report:?}"))) }
    }
}

fn open_copy(path: &Path) -> Result<Connection> {
    if !sniff(path)? {
        return Err(StoreError::NotABook(path.to_owned()));
    }
    Ok(Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY)?)
}

fn inspect(conn: &Connection) -> Result<Report> {
    let mut report = Report::default();
    integrity(conn, &mut report)?;
    if report.integrity.is_empty() {
        chain(conn, &mut report)?;
    }
    Ok(report)
}

/// The backups in a folder, newest first. Other files are passed over.
pub fn backups(folder: impl AsRef<Path>) -> Result<Vec<Backup>> {
    let mut found = Vec::new();
    let folder = folder.as_ref();
    if !folder.try_exists()? {
        return Ok(found);
    }
    for file in fs::read_dir(folder)? {
        let path = file?.path();
        let name = path.file_name().and_then(|name| name.to_str());
        if let Some(time) = name.and_then(|name| NaiveDateTime::parse_from_str(name, NAME).ok()) {
            found.push(Backup { path, ms: time.and_utc().timestamp_millis() });
        }
    }
    found.sort_by_key(|backup| std::cmp::Reverse(backup.ms));
    Ok(found)
}

/// Which of these moments to keep: the three newest, and the newest of each of the last seven days, five weeks and
/// twelve months that have one.
pub fn thin(moments: &[i64]) -> BTreeSet<i64> {
    const DAY: i64 = 86_400_000;
    let mut newest_first = moments.to_vec();
    newest_first.sort_unstable_by_key(|ms| std::cmp::Reverse(*ms));
    let month = |ms: i64| {
        let time = DateTime::from_timestamp_millis(ms).unwrap_or_default();
        i64::from(time.year()) * 12 + i64::from(time.month0())
    };
    let mut keep: BTreeSet<i64> = newest_first.iter().take(3).copied().collect();
    let spans: [(&dyn Fn(i64) -> i64, usize); 3] =
        [(&|ms| ms.div_euclid(DAY), 7), (&|ms| ms.div_euclid(7 * DAY), 5), (&month, 12)];
    for (span, count) in spans {
        let mut seen = BTreeSet::new();
        for ms in &newest_first {
            if seen.len() < count && seen.insert(span(*ms)) {
                keep.insert(*ms);
            }
        }
    }
    keep
}

/// The newest backup of a book that passes every check.
pub(super) fn newest_good(folder: &Path, book: Id) -> Result<Option<PathBuf>> {
    let mut newest_first = backups(folder)?.into_iter().map(|backup| backup.path);
    Ok(newest_first.find(|path| book_of(path) == Some(book) && Store::verify_copy(path).is_ok()))
}

/// Which book a file is, if it can be told.
pub(super) fn book_of(path: &Path) -> Option<Id> {
    open_copy(path).and_then(|conn| book_in(&conn)).ok()
}

fn book_in(conn: &Connection) -> Result<Id> {
    Ok(conn.query_row("SELECT id FROM book", [], |row| row.get(0))?)
}
