//! Copies and backups: written beside where they go, flushed, checked, renamed.
//!
//! A copy holds the book and nothing of the device: no drafts, settings, photo states, seen-marks or device id.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use chrono::{DateTime, Datelike as _, NaiveDateTime};
use rusqlite::{Connection, OpenFlags};

use super::at_rest::{look_into, memory_of, open_uri, uri};
use super::check::{Report, inspect, inspect_own_copy, integrity};
use super::file::{PartFile, beside, clear_leftovers, create_private_folder};
use super::image::{Image, without_log};
use super::merge::{content_hash, peers};
use super::{DeviceId, Id, Now, Result, Store, StoreError};

/// A backup in a folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Backup {
    /// Its file.
    pub path: PathBuf,
    /// When it was taken, in milliseconds since 1970 UTC.
    pub ms: i64,
}

impl Backup {
    /// How large it is.
    ///
    /// # Errors
    /// What the file system said.
    pub fn bytes(&self) -> std::io::Result<u64> {
        Ok(fs::metadata(&self.path)?.len())
    }
}

/// So many bytes of copies a phone's maker takes of an app into its cloud; of one byte more it takes nothing at all
/// (Android's Auto Backup, as its publisher documents it).
pub const CLOUD_TAKES: u64 = 25_000_000;

/// So many of the newest copies stay at any size: what was there before a restore or before a colleague's file is among them.
const ALWAYS: usize = 3;

const NAME: &str = "book-%Y%m%d-%H%M%S%3f.lapwright";

impl Store {
    /// Copies the book into a file that does not exist, or holds an older copy of the same book. The copy is checked from
    /// end to end, the tables against the log, before it gets its name.
    ///
    /// # Errors
    /// [`StoreError::InTheWay`] for any other file, this book's own among them: nothing is overwritten.
    /// [`StoreError::Damaged`] where the book does not pass the check.
    pub fn copy(&self, to: impl AsRef<Path>) -> Result<()> {
        let to = to.as_ref();
        let replaces = fs::symlink_metadata(to).is_ok();
        if replaces && !self.is_older_copy(to) {
            return Err(StoreError::InTheWay(to.to_owned()));
        }
        let part = PartFile::fill(to, true, |file| self.copy_into(file))?;
        // What is checked is what lies on the disk.
        inspect_own_copy(part.path())?.pass()?;
        if replaces { part.replace(to) } else { part.place(to) }
    }

    /// Writes the book without what is this device's own. That is taken out beside the book, so that no byte of it gets to
    /// where the copy goes, whenever the program is stopped. What is wrong with an index would be right in the copy, and
    /// nobody would know of it: the book itself is looked at first.
    pub(super) fn copy_into(&self, to: &mut impl Write) -> Result<()> {
        let mut report = Report::default();
        integrity(&self.conn, &mut report)?;
        report.pass()?;
        match self.path.as_ref().filter(|_| !self.is_read_only() && self.conn.is_autocommit()) {
            Some(own) => {
                // Page by page: a large book need not be in memory.
                let part = PartFile::make(own, true)?;
                // Nobody else knows the file. On some systems the lock that we hold on it is one that SQLite would wait for.
                let name = uri(part.path(), "nolock=1");
                self.conn.execute("VACUUM INTO ?1", [&name])?;
                let copy = open_uri(&name, OpenFlags::SQLITE_OPEN_READ_WRITE)?;
                copy.execute_batch("PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF; PRAGMA secure_delete = ON;")?;
                take_out_own(&copy)?;
                copy.close().map_err(|(_, error)| error)?;
                io::copy(&mut fs::File::open(part.path())?, to)?;
            }
            None => {
                let copy = memory_of(&self.conn)?;
                take_out_own(&copy)?;
                copy.execute_batch("VACUUM")?;
                let mut bytes = copy.serialize("main")?.to_vec();
                without_log(&mut bytes);
                to.write_all(&bytes)?;
            }
        }
        Ok(())
    }

    fn is_older_copy(&self, to: &Path) -> bool {
        let same = |own: &PathBuf| matches!((fs::canonicalize(own), fs::canonicalize(to)), (Ok(a), Ok(b)) if a == b);
        if self.path.as_ref().is_some_and(same) || beside(to, ".device").exists() {
            return false;
        }
        let theirs = || -> Result<(Id, BTreeMap<DeviceId, i64>)> {
            let conn = Image::read(to)?.connect(to)?;
            Ok((book_in(&conn)?, peers(&conn)?))
        };
        let (Ok((book, theirs)), Ok(ours)) = (theirs(), self.peers()) else { return false };
        book == self.book
            && theirs.iter().all(|(device, unbroken)| ours.get(device).is_some_and(|mine| mine >= unbroken))
    }

    /// Copies the book into a folder under the name of the moment, then thins this book's backups there, by time and to
    /// [`CLOUD_TAKES`]; gives the backup. Those of other books, and those that cannot be read, stay.
    pub fn backup(&self, folder: impl AsRef<Path>, now: Now) -> Result<Backup> {
        let folder = folder.as_ref();
        create_private_folder(folder)?;
        let time = DateTime::from_timestamp_millis(now.ms).unwrap_or_default();
        let backup = Backup { path: folder.join(time.format(NAME).to_string()), ms: time.timestamp_millis() };
        self.copy(&backup.path)?;
        let mut all = backups(folder)?;
        all.retain(|backup| book_of(&backup.path) == Some(self.book));
        let in_time = thin(&all.iter().map(|backup| backup.ms).collect::<Vec<_>>());
        let stays = all.iter().filter(|old| in_time.contains(&old.ms) || old.ms == backup.ms);
        let sizes = stays.map(|old| Ok((old.ms, old.bytes()?))).collect::<Result<Vec<_>>>()?;
        let mut keep = fit(&sizes, CLOUD_TAKES);
        keep.insert(backup.ms);
        for old in all.iter().filter(|old| !keep.contains(&old.ms)) {
            fs::remove_file(&old.path)?;
        }
        Ok(backup)
    }

    /// The newest backup of this book in a folder, made now if something was accepted since it was.
    ///
    /// # Errors
    /// As [`Store::backup`].
    pub fn keep_backup(&self, folder: impl AsRef<Path>, now: Now) -> Result<Backup> {
        let folder = folder.as_ref();
        // Where none is made now, nothing else would.
        clear_leftovers(folder)?;
        let same = |backup: &Backup| -> Result<bool> {
            let conn = look_into(&backup.path)?;
            Ok(book_in(&conn)? == self.book && content_hash(&conn)? == self.content_hash()?)
        };
        match backups(folder)?.into_iter().next() {
            Some(newest) if same(&newest).unwrap_or(false) => Ok(newest),
            _ => self.backup(folder, now),
        }
    }

    /// Checks a copy or backup from end to end, the tables against the log, without changing it.
    ///
    /// # Errors
    /// [`StoreError::DamagedFile`] or [`StoreError::NotABook`].
    pub fn verify_copy(path: impl AsRef<Path>) -> Result<()> {
        let path = path.as_ref();
        let check = || inspect(&Image::read(path)?.connect(path)?)?.pass();
        check().map_err(|error| error.of_file(path))
    }
}

/// Takes out of a copy what is the device's own.
fn take_out_own(copy: &Connection) -> Result<()> {
    Ok(copy.execute_batch(
        "BEGIN; DELETE FROM draft; DELETE FROM setting; DELETE FROM photo; DELETE FROM clash_seen; DELETE FROM here; COMMIT;",
    )?)
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
    let mut keep: BTreeSet<i64> = newest_first.iter().take(ALWAYS).copied().collect();
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

/// Which of these copies, moments and sizes, to keep so that all are no larger than `most`: the newest ones, and [`ALWAYS`]
/// so many at any size.
fn fit(copies: &[(i64, u64)], most: u64) -> BTreeSet<i64> {
    let mut newest_first = copies.to_vec();
    newest_first.sort_unstable_by_key(|(ms, _)| std::cmp::Reverse(*ms));
    let mut all: u64 = 0;
    let kept = newest_first.into_iter().enumerate().filter(|(at, (_, bytes))| {
        all = all.saturating_add(*bytes);
        *at < ALWAYS || all <= most
    });
    kept.map(|(_, (ms, _))| ms).collect()
}

/// Which book a file is, if it can be told.
fn book_of(path: &Path) -> Option<Id> {
    look_into(path).and_then(|conn| book_in(&conn)).ok()
}

pub(super) fn book_in(conn: &Connection) -> Result<Id> {
    Ok(conn.query_row("SELECT id FROM book", [], |row| row.get(0))?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn copies_fit_into_a_cloud_but_the_newest_stay_at_any_size() {
        let kept = |sizes: &[u64], most| -> Vec<i64> {
            let copies: Vec<(i64, u64)> = (0..).zip(sizes.iter().copied()).collect();
            fit(&copies, most).into_iter().collect()
        };
        assert_eq!(kept(&[5, 5, 5, 5, 5], 25), [0, 1, 2, 3, 4]);
        assert_eq!(kept(&[5, 5, 5, 5, 5], 24), [1, 2, 3, 4], "the oldest goes first");
        assert_eq!(
            kept(&[1, 9, 9, 9, 9], 10),
            [2, 3, 4],
            "what is left of an older book does not come back in between"
        );
        assert_eq!(kept(&[u64::MAX, u64::MAX], 10), [0, 1]);
    }
}
