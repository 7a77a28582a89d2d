//! Merging is a union of entries: it may be done in any order, in parts, and twice.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, OptionalExtension, params};
use sha2::{Digest, Sha256};

use super::entry::COLUMNS;
use super::project::apply;
use super::sign::{Seal, seals_of};
use super::{BadEntry, DeviceId, Entry, Hash, Id, Result, Store, StoreError};

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
    /// [`StoreError::BadEntry`] where a hash, a signature or the chain is broken, or two entries claim one place;
    /// [`StoreError::Ahead`] where an entry that is not here yet is stamped after `latest`.
    pub fn take_in(&mut self, entries: &[Entry], latest: i64) -> Result<TakenIn> {
        self.ready()?;
        let own = self.device;
        let tx = self.begin()?;
        let mut taken = TakenIn::default();
        let mut fresh = Vec::new();
        let mut signing = signing(&tx)?;
        signing.extend(entries.iter().filter(|entry| !entry.signature.is_empty()).map(|entry| entry.stamp.device));
        // An entry may be given twice, as by two colleagues at once.
        let mut places: BTreeMap<(DeviceId, i64), Hash> = BTreeMap::new();
        let mut new = Vec::new();
        for entry in entries {
            let place = (entry.stamp.device, entry.sequence);
            if entry.sequence < 1 || entry.hash != entry.true_hash() {
                return refuse(entry, BadEntry::Altered);
            }
            match hash_at(&tx, place.0, place.1)?.or_else(|| places.get(&place).copied()) {
                Some(hash) if hash == entry.hash => {}
                Some(_) => return refuse(entry, BadEntry::PlaceTaken),
                None => {
                    places.insert(place, entry.hash);
                    new.push(entry);
                }
            }
        }
        for (entry, seal) in new.iter().copied().zip(seals_of(&new)) {
            match seal {
                Seal::Good => {}
                Seal::Bad => return refuse(entry, BadEntry::Forged),
                Seal::Absent if signing.contains(&entry.stamp.device) => return refuse(entry, BadEntry::Unsigned),
                Seal::Absent => {}
            }
            if entry.stamp.ms > latest {
                return Err(StoreError::Ahead { device: entry.stamp.device.0, ms: entry.stamp.ms, latest });
            }
            if !(0..=MOST).contains(&entry.stamp.counter) {
                return refuse(entry, BadEntry::Clock);
            }
            fresh.push((entry.insert(&tx)?, entry));
        }
        for (_, entry) in &fresh {
            let before = match entry.sequence {
                1 => Some(Hash::NONE),
                sequence => hash_at(&tx, entry.stamp.device, sequence - 1)?,
            };
            if before.is_some_and(|hash| hash != entry.previous) {
                return refuse(entry, BadEntry::Unchained);
            }
            let after: Option<Hash> = tx
                .prepare_cached("SELECT previous FROM entry WHERE device = ?1 AND sequence = ?2")?
                .query_row(params![entry.stamp.device, entry.sequence.saturating_add(1)], |row| row.get(0))
                .optional()?;
            if after.is_some_and(|previous| previous != entry.hash) {
                return refuse(entry, BadEntry::Unchained);
            }
        }
        if fresh.iter().any(|(_, entry)| entry.stamp.device == own) {
            tx.execute("DELETE FROM here", [])?;
        }
        taken.new = fresh.len();
        taken.touched = apply(&tx, &fresh)?;
        tx.commit()?;
        if taken.new > 0 {
            self.note_taken_in();
        }
        Ok(taken)
    }

    /// The highest sequence per device up to which every entry is here.
    pub fn peers(&self) -> Result<BTreeMap<DeviceId, i64>> {
        peers(&self.conn)
    }

    /// Every entry that a book with these [`Store::peers`] has not seen, by device and sequence. An empty map asks for
    /// all.
    pub fn entries_since(&self, seen: &BTreeMap<DeviceId, i64>) -> Result<Vec<Entry>> {
        let devices = devices(&self.conn)?;
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
        content_hash(&self.conn)
    }
}

pub(super) fn content_hash(conn: &Connection) -> Result<Hash> {
    // The group is the head of the hash, so its index gives the order.
    let mut statement = conn.prepare_cached("SELECT hash FROM entry ORDER BY grp")?;
    let mut rows = statement.query([])?;
    let mut hasher = Sha256::new();
    while let Some(row) = rows.next()? {
        hasher.update(row.get::<_, Hash>(0)?.0);
    }
    Ok(Hash(hasher.finalize().into()))
}

/// The devices of which something signed is here: of these, what is not signed is forged. A device signs from its first entry
/// on, so that one look for each is enough.
pub(super) fn signing(conn: &Connection) -> Result<BTreeSet<DeviceId>> {
    let mut first = conn.prepare_cached("SELECT length(signature) > 0 FROM entry WHERE device = ?1 LIMIT 1")?;
    let mut signing = BTreeSet::new();
    for device in devices(conn)? {
        if first.query_row([device], |row| row.get(0))? {
            signing.insert(device);
        }
    }
    Ok(signing)
}

fn refuse<T>(entry: &Entry, why: BadEntry) -> Result<T> {
    Err(StoreError::BadEntry { device: entry.stamp.device.0, sequence: entry.sequence, why })
}

pub(super) fn hash_at(conn: &Connection, device: DeviceId, sequence: i64) -> Result<Option<Hash>> {
    Ok(conn
        .prepare_cached("SELECT hash FROM entry WHERE device = ?1 AND sequence = ?2")?
        .query_row(params![device, sequence], |row| row.get(0))
        .optional()?)
}

/// The devices that made entries, in order: one step through the index for each.
pub(super) fn devices(conn: &Connection) -> Result<Vec<DeviceId>> {
    let mut next = conn.prepare_cached("SELECT min(device) FROM entry WHERE device > ?1")?;
    let mut devices: Vec<DeviceId> = Vec::new();
    loop {
        let last = devices.last().map(|device| device.0.bytes().to_vec()).unwrap_or_default();
        let Some(device) = next.query_row([last], |row| row.get(0))? else { return Ok(devices) };
        devices.push(device);
    }
}

/// The highest sequence per device up to which every entry is here, worked out from the log: a table of it would be one
/// more page for every tick to write.
pub(super) fn peers(conn: &Connection) -> Result<BTreeMap<DeviceId, i64>> {
    // Sequences start from one, so the first that is not its own place in the row stands behind a gap.
    let mut unbroken = conn.prepare_cached(
        "SELECT count(*) FROM (SELECT sequence, row_number() OVER (ORDER BY sequence) AS place FROM entry \
         WHERE device = ?1) WHERE sequence = place",
    )?;
    devices(conn)?.into_iter().map(|device| Ok((device, unbroken.query_row([device], |row| row.get(0))?))).collect()
}
