use rusqlite::Connection;
use rusqlite::backup::{Backup, StepResult};

use super::entry::COLUMNS;
use super::project::{dump, replay};
use super::sign::{Seal, seals_of};
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
    /// [`StoreError::Damaged`] with everything that was.
    pub(super) fn pass(&self) -> Result<()> {
        if self.is_good() { Ok(()) } else { Err(StoreError::Damaged(self.lines().collect::<Vec<_>>().join("; "))) }
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
        let mut report = match self.in_mind().and_then(|conn| inspect(&conn)) {
            Err(StoreError::Damaged(why)) => Report { integrity: vec![why], ..Report::default() },
            report => report?,
        };
        if report.integrity.is_empty() {
            report.photos = self.photo_faults()?;
        }
        Ok(report)
    }

    /// The whole book in memory, as it is at one moment.
    pub(super) fn in_mind(&self) -> Result<Connection> {
        let mut conn = Connection::open_in_memory()?;
        if Backup::new(&self.conn, &mut conn)?.step(-1)? != StepResult::Done {
            return Err(StoreError::Busy);
        }
        conn.execute_batch("PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY;")?;
        conn.set_prepared_statement_cache_capacity(128);
        Ok(conn)
    }
}

/// Everything that can be checked of a book in memory; its tables are made anew by it.
pub(super) fn inspect(conn: &Connection) -> Result<Report> {
    let mut report = Report::default();
    integrity(conn, &mut report)?;
    if !report.integrity.is_empty() {
        return Ok(report);
    }
    chain(conn, &mut report)?;
    let before = dump(conn)?;
    conn.execute_batch("BEGIN")?;
    replay(conn)?;
    conn.execute_batch("COMMIT")?;
    let after = dump(conn)?;
    report.projection.extend(before.iter().filter(|line| after.binary_search(line).is_err()).cloned());
    report.projection.extend(after.iter().filter(|line| before.binary_search(line).is_err()).cloned());
    Ok(report)
}

/// The outside of the data: SQLite's own checks.
pub(super) fn integrity(conn: &Connection, report: &mut Report) -> Result<()> {
    let lines: Vec<String> =
        conn.prepare("PRAGMA integrity_check")?.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?;
    report.integrity.extend(lines.into_iter().filter(|line| line != "ok"));
    let tables: Vec<String> =
        conn.prepare("PRAGMA foreign_key_check")?.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?;
    report.foreign_keys.extend(tables);
    Ok(())
}

/// Every hash, and every link between neighbours that are here.
pub(super) fn chain(conn: &Connection, report: &mut Report) -> Result<()> {
    /// So many are in memory at once.
    const BLOCK: usize = 4096;
    let mut statement = conn.prepare(&format!("SELECT {COLUMNS}, e.grp FROM entry e ORDER BY device, sequence"))?;
    let mut rows = statement.query_map([], |row| Ok((Entry::from_row(row)?, row.get(17)?)))?;
    let mut last: Option<Entry> = None;
    loop {
        let block: Vec<(Entry, super::Id)> = rows.by_ref().take(BLOCK).collect::<rusqlite::Result<_>>()?;
        if block.is_empty() {
            return Ok(());
        }
        let seals = seals_of(&block.iter().map(|(entry, _)| entry).collect::<Vec<_>>());
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
