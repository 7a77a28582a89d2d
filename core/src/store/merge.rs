//! Merging is a union of entries: it may be done in any order, in parts, and twice.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, OptionalExtension, params};
use sha2::{Digest, Sha256};

use super::entry::COLUMNS;
use super::project::apply;
use super::{DeviceId, Entry, Hash, Id, Result, Store, StoreError};

/// What taking in did.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TakenIn {
    /// Entries that were not here before.
    pub new: usize,
    /// Subjects to draw again.
    pub touched: BTreeSet<Id>,
}

/// How far another phone's clock may be ahead of this one's without the user being asked: a day, in milliseconds.
pub const AHEAD: i64 = 86_400_000;

/// No clock counts so far; it leaves room to count on.
const MOST: i64 = 1 << 53;

impl Store {
    /// Takes in entries of other devices, all or none. Those already here are passed over; gaps may be filled later.
    ///
    /// Every later answer here gets a stamp behind all that was taken in, so one wrong clock would misdate the answers
    /// of every phone. `latest`, in milliseconds since 1970 UTC, is the bound: now and [`AHEAD`], unless the user was
    /// asked and wants the entries as they are.
    ///
    /// # Errors
    /// [`StoreError::BadEntry`] where a hash or the chain is broken, or two entries claim one place;
    /// [`StoreError::Ahead`] where an entry that is not here yet is stamped after `latest`.
    pub fn take_in(&mut self, entries: &[Entry], latest: i64) -> Result<TakenIn> {
        let tx = self.begin()?;
        let mut taken = TakenIn::default();
        let mut devices = BTreeSet::new();
        let mut fresh = Vec::new();
        for entry in entries {
            if entry.sequence < 1 || entry.hash != entry.true_hash() {
                return refuse(entry, "its hash does not fit its content");
            }
            match hash_at(&tx, entry.stamp.device, entry.sequence)? {
                Some(hash) if hash == entry.hash => continue,
                Some(_) => return refuse(entry, "another entry has this place"),
                None => {}
            }
            if entry.stamp.ms > latest {
                return Err(StoreError::Ahead { device: entry.stamp.device.0, ms: entry.stamp.ms, latest });
            }
            if !(0..=MOST).contains(&entry.stamp.counter) {
                return refuse(entry, "its clock counts further than any clock does");
            }
            fresh.push((entry.insert(&tx)?, entry));
            devices.insert(entry.stamp.device);
        }
        for (_, entry) in &fresh {
            let before = match entry.sequence {
                1 => Some(Hash::NONE),
                sequence => hash_at(&tx, entry.stamp.device, sequence - 1)?,
            };
            if before.is_some_and(|hash| hash != entry.previous) {
                return refuse(entry, "it does not follow the entry before it");
            }
            let after: Option<Hash> = tx
                .prepare_cached("SELECT previous FROM entry WHERE device = ?1 AND sequence = ?2")?
                .query_row(params![entry.stamp.device, entry.sequence.saturating_add(1)], |row| row.get(0))
                .optional()?;
            if after.is_some_and(|previous| previous != entry.hash) {
                return refuse(entry, "the entry after it does not follow it");
            }
        }
        for (row, entry) in fresh {
            taken.new += 1;
            taken.touched.append(&mut apply(&tx, row, entry)?);
        }
        for device in devices {
            advance_peer(&tx, device)?;
        }
        tx.commit()?;
        Ok(taken)
    }

    /// The highest sequence per device up to which every entry is here.
    pub fn peers(&self) -> Result<BTreeMap<DeviceId, i64>> {
        Ok(self
            .conn
            .prepare_cached("SELECT device, unbroken FROM peer")?
            .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?
            .collect::<rusqlite::Result<_>>()?)
    }

    /// Every entry that a book with these [`Store::peers`] has not seen, by device and sequence. An empty map asks for
    /// all.
    pub fn entries_since(&self, seen: &BTreeMap<DeviceId, i64>) -> Result<Vec<Entry>> {
        let devices: Vec<DeviceId> = self
            .conn
            .prepare_cached("SELECT DISTINCT device FROM entry ORDER BY device")?
            .query_map([], |row| row.get(0))?
            .collect::<rusqlite::Result<_>>()?;
        let sql = format!("SELECT {COLUMNS} FROM entry e WHERE e.device = ?1 AND e.sequence > ?2 ORDER BY e.sequence");
        let mut statement = self.conn.prepare_cached(&sql)?;
        let mut entries = Vec::new();
        for device in devices {
            let from = seen.get(&device).copied().unwrap_or(0);
            for entry in statement.query_map(params![device, from], Entry::from_row)? {
                entries.push(entry?);
            }
        }
        Ok(entries)
    }

    /// SHA-256 over the sorted entry hashes: equal where two books hold the same entries.
    pub fn content_hash(&self) -> Result<Hash> {
        // The group is the head of the hash, so its index gives the order.
        let mut statement = self.conn.prepare_cached("SELECT hash FROM entry ORDER BY grp")?;
        let mut rows = statement.query([])?;
        let mut hasher = Sha256::new();
        while let Some(row) = rows.next()? {
            hasher.update(row.get::<_, Hash>(0)?.0);
        }
        Ok(Hash(hasher.finalize().into()))
    }
}

fn refuse<T>(entry: &Entry, why: &'static str) -> Result<T> {
    Err(StoreError::BadEntry { device: entry.stamp.device.0, sequence: entry.sequence, why })
}

fn hash_at(conn: &Connection, device: DeviceId, sequence: i64) -> Result<Option<Hash>> {
    Ok(conn
        .prepare_cached("SELECT hash FROM entry WHERE device = ?1 AND sequence = ?2")?
        .query_row(params![device, sequence], |row| row.get(0))
        .optional()?)
}

/// Moves the mark of a device up to its first gap.
pub(super) fn advance_peer(conn: &Connection, device: DeviceId) -> Result<()> {
    let mut unbroken: i64 = conn
        .prepare_cached("SELECT unbroken FROM peer WHERE device = ?1")?
        .query_row([device], |row| row.get(0))
        .optional()?
        .unwrap_or(0);
    while hash_at(conn, device, unbroken.saturating_add(1))?.is_some() {
        unbroken += 1;
    }
    conn.prepare_cached("INSERT OR REPLACE INTO peer VALUES (?1, ?2)")?.execute(params![device, unbroken])?;
    Ok(())
}
