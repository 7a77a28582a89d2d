use std::path::Path;
use std::thread::{self, Builder};

use rusqlite::{Connection, Transaction, TransactionBehavior};

use super::agree::tables_agree;
use super::at_rest::{look_into, memory_of};
use super::entry::COLUMNS;
use super::project::{dump, replay};
use super::schema::{SCHEMA, memory, version};
use super::sign::{Seal, seals_of, seals_of_known};
use super::{Entry, Hash, Result, Store, StoreError};

/// What "check the data" found. All empty is good.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// What SQLite's integrity check says.
    pub integrity: Vec<String>,
    /// Rows that point nowhere, by table.
    pub foreign_keys: Vec<String>,
    /// Entries that do not fit their hash or their chain.
    pub chain: Vec<String>,
    /// Lines of the tables that a rebuild does not give, and the other way round.
    pub projection: Vec<String>,
    /// Photos that are gone or are no longer those that were taken.
    pub photos: Vec<String>,
}

impl Report {
    /// Whether nothing was found.
    pub fn is_good(&self) -> bool {
        *self == Self::default()
    }

    /// Nothing, where nothing was found.
    ///
    /// # Errors
    /// [`StoreError::Damaged`] with the first of what was.
    pub(super) fn pass(&self) -> Result<()> {
        const TOLD: usize = 3;
        let (all, told) = (self.lines().count(), self.lines().take(TOLD).collect::<Vec<_>>().join("; "));
        match all {
            0 => Ok(()),
            1..=TOLD => Err(StoreError::Damaged(told)),
            _ => Err(StoreError::Damaged(format!("{told}; and {} more", all - TOLD))),
        }
    }

    /// Everything that was found, a line each.
    pub fn lines(&self) -> impl Iterator<Item = &str> {
        [&self.integrity, &self.foreign_keys, &self.chain, &self.projection, &self.photos]
            .into_iter()
            .flatten()
            .map(String::as_str)
    }
}

impl Store {
    /// Checks everything: the file, the references, the chains, that a rebuild gives the tables as they are, and that the
    /// photos are those that were taken. Changes nothing.
    ///
    /// # Errors
    /// What SQLite or the file system said; what is wrong with the book itself stands in the report.
    pub fn check(&self) -> Result<Report> {
        // All of it as it is at one moment, whoever writes meanwhile.
        let begin = || Transaction::new_unchecked(&self.conn, TransactionBehavior::Deferred);
        let moment = self.conn.is_autocommit().then(begin).transpose();
        let mut report = match moment.map_err(Into::into).and_then(|_moment| inspect_by(&self.conn, seals_of_known)) {
            Err(StoreError::Damaged(why)) => Report { integrity: vec![why], ..Report::default() },
            report => report?,
        };
        if report.integrity.is_empty() {
            report.photos = self.photo_faults()?;
        }
        Ok(report)
    }
}

/// How the signatures of entries are looked at.
type LookAtSeals = fn(&[&Entry]) -> Vec<Seal>;

/// Everything that can be checked of a book, wherever it comes from; nothing is written.
pub(super) fn inspect(conn: &Connection) -> Result<Report> {
    inspect_by(conn, seals_of)
}

fn inspect_by(conn: &Connection, seals: LookAtSeals) -> Result<Report> {
    let mut report = Report::default();
    integrity(conn, &mut report)?;
    if report.integrity.is_empty() {
        chain(conn, seals, &mut report)?;
        projection(conn, &mut report)?;
    }
    Ok(report)
}

/// The same of a copy that was written just now of a book of this device, where it lies: the log and the tables side by side.
pub(super) fn inspect_own_copy(path: &Path) -> Result<Report> {
    let (tables, log) = (look_into(path)?, look_into(path)?);
    thread::scope(|scope| {
        let log = Builder::new().spawn_scoped(scope, move || {
            let mut report = Report::default();
            chain(&log, seals_of_known, &mut report).map(|()| report.chain)
        })?;
        let mut report = Report::default();
        integrity(&tables, &mut report)?;
        // Of a file that is damaged its entries are not told of.
        if report.integrity.is_empty() {
            projection(&tables, &mut report)?;
            report.chain =
                log.join().unwrap_or_else(|_| Err(StoreError::Damaged("the check ended early".to_owned())))?;
        }
        Ok(report)
    })
}

/// The tables against the log. Only where they do not agree is it worked out line by line, in memory, what is wrong.
fn projection(conn: &Connection, report: &mut Report) -> Result<()> {
    if tables_agree(conn)? {
        return Ok(());
    }
    let before = dump(conn)?;
    let anew = memory_of(conn)?;
    replay(&anew)?;
    let after = dump(&anew)?;
    report.projection.extend(before.iter().filter(|line| after.binary_search(line).is_err()).cloned());
    report.projection.extend(after.iter().filter(|line| before.binary_search(line).is_err()).cloned());
    if report.projection.is_empty() {
        report.projection.push("the tables and the log tell different things".to_owned());
    }
    Ok(())
}

/// The outside of the data: SQLite's own checks, and that the tables are those that were made. A letter of a column's name
/// that changed is no fault to SQLite, but nobody could ask for the column any more.
pub(super) fn integrity(conn: &Connection, report: &mut Report) -> Result<()> {
    let lines: Vec<String> =
        conn.prepare("PRAGMA integrity_check")?.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?;
    report.integrity.extend(lines.into_iter().filter(|line| line != "ok"));
    if version(conn)? == SCHEMA && tables_of(conn)? != tables_of(&memory()?)? {
        report.integrity.push("its tables are not those that were made".to_owned());
    }
    let tables: Vec<String> =
        conn.prepare("PRAGMA foreign_key_check")?.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?;
    report.foreign_keys.extend(tables);
    Ok(())
}

/// Every table, index and trigger, and how each was made.
fn tables_of(conn: &Connection) -> Result<Vec<String>> {
    let sql = "SELECT json_array(type, name, tbl_name, sql) FROM sqlite_schema ORDER BY type, name";
    Ok(conn.prepare(sql)?.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?)
}

/// Every hash, and every link between neighbours that are here.
fn chain(conn: &Connection, seals: LookAtSeals, report: &mut Report) -> Result<()> {
    /// So many are in memory at once.
    const BLOCK: usize = 8192;
    let mut statement = conn.prepare(&format!("SELECT {COLUMNS}, e.grp FROM entry e ORDER BY device, sequence"))?;
    let mut rows = statement.query_map([], |row| Ok((Entry::from_row(row)?, row.get(17)?)))?;
    let mut last: Option<Entry> = None;
    loop {
        let block: Vec<(Entry, super::Id)> = rows.by_ref().take(BLOCK).collect::<rusqlite::Result<_>>()?;
        if block.is_empty() {
            return Ok(());
        }
        let seals = seals(&block.iter().map(|(entry, _)| entry).collect::<Vec<_>>());
        for ((entry, group), seal) in block.into_iter().zip(seals) {
            link(&mut last, entry, group, seal, report);
        }
    }
}

/// One entry, and how it hangs on the one before it.
fn link(last: &mut Option<Entry>, entry: Entry, group: super::Id, seal: Seal, report: &mut Report) {
    let place = format!("entry {} of device {}", entry.sequence, entry.stamp.device);
    if entry.hash != entry.true_hash() || group != entry.group() {
        report.chain.push(format!("{place} does not fit its hash"));
    } else if seal == Seal::Bad {
        report.chain.push(format!("{place} does not fit its signature"));
    }
    let before = match &*last {
        _ if entry.sequence == 1 => Some(Hash::NONE),
        Some(last) if last.stamp.device == entry.stamp.device && last.sequence + 1 == entry.sequence => Some(last.hash),
        _ => None,
    };
    if before.is_some_and(|hash| hash != entry.previous) {
        report.chain.push(format!("{place} does not follow the one before it"));
    }
    *last = Some(entry);
}
