//! What was saved and what was not, when a book was not found as it was left: kept in the book on this device until
//! somebody acknowledges it.

use std::collections::BTreeMap;

use rusqlite::{Connection, OptionalExtension};
use serde::{Deserialize, Serialize};

use super::{DeviceId, Entry, Result, Store};

/// What was found wrong with a book, and what became of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Account {
    /// What was found.
    pub found: Found,
    /// SQLite's words, or ours, for who repairs it; empty where there is no more to say.
    pub detail: String,
    /// Where the file that was found lies now; absent where there was none, or it is still in its place.
    pub kept: Option<String>,
    /// How many answers the book holds now.
    pub saved: u64,
    /// Where answers were taken from that the file itself no longer gave.
    #[serde(default)]
    pub sources: Vec<AnswersFrom>,
    /// The newest answer that the book holds now.
    pub newest: Option<Known>,
    /// Answers that are known to have been accepted, and are nowhere.
    pub lost: Vec<Lost>,
    /// Whether what was typed and not yet accepted, and the settings of this device, could not all be read.
    pub typed_lost: bool,
}

impl Account {
    /// Of a book that lies where another one was.
    pub(super) fn of_another_book(conn: &Connection) -> Result<Self> {
        let saved: i64 = conn.query_row("SELECT count(*) FROM entry", [], |row| row.get(0))?;
        let newest = conn
            .query_row(
                "SELECT ms, utc_offset, signer, kind FROM entry ORDER BY ms DESC, counter DESC, device DESC LIMIT 1",
                [],
                |row| Ok(Known { ms: row.get(0)?, utc_offset: row.get(1)?, signer: row.get(2)?, kind: row.get(3)? }),
            )
            .optional()?;
        Ok(Self {
            found: Found::Another,
            detail: String::new(),
            kept: None,
            saved: saved.unsigned_abs(),
            sources: Vec::new(),
            newest,
            lost: Vec::new(),
            typed_lost: false,
        })
    }
}

/// Answers that were taken from a file beside the book: a copy, or one that was set aside.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct AnswersFrom {
    /// The file.
    pub path: String,
    /// How many.
    pub answers: u64,
}

/// What was found where the book should be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Found {
    /// The file was damaged.
    Damaged,
    /// The file was gone.
    Missing,
    /// An older state: answers that this device had accepted were not in it.
    Older,
    /// Another book than the one that was here.
    Another,
}

/// Answers of one device that are lost, by their numbers.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Lost {
    /// The device, as in its entries.
    pub device: String,
    /// The first that is lost.
    pub first: i64,
    /// The last that is lost.
    pub last: i64,
    /// The answer of that device before them.
    pub after: Option<Known>,
    /// The answer of that device behind them.
    pub before: Option<Known>,
    /// What could still be read of them, though not enough to take it in.
    pub read: Vec<Known>,
}

impl Lost {
    /// How many answers these are.
    pub fn count(&self) -> u64 {
        self.last.abs_diff(self.first).saturating_add(1)
    }
}

/// What is known of an answer.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Known {
    /// When, in milliseconds since 1970 UTC.
    pub ms: i64,
    /// Minutes that local time was ahead of UTC.
    pub utc_offset: i32,
    /// By whom.
    pub signer: String,
    /// What was answered, as [`super::Op::kind`].
    pub kind: String,
}

impl From<&Entry> for Known {
    fn from(entry: &Entry) -> Self {
        let (ms, utc_offset) = (entry.stamp.ms, entry.utc_offset);
        Self { ms, utc_offset, signer: entry.signer.clone(), kind: entry.kind.clone() }
    }
}

/// The numbers that are missing among the entries of each device, up to the `ends` that are known to have been reached.
pub(super) fn missing(
    entries: &BTreeMap<(DeviceId, i64), Entry>,
    ends: &BTreeMap<DeviceId, i64>,
) -> Vec<(DeviceId, i64, i64)> {
    let mut gaps = Vec::new();
    let mut reached: BTreeMap<DeviceId, i64> = BTreeMap::new();
    for (device, sequence) in entries.keys() {
        let last = reached.insert(*device, *sequence).unwrap_or(0);
        if last + 1 < *sequence {
            gaps.push((*device, last + 1, *sequence - 1));
        }
    }
    for (device, end) in ends {
        let last = reached.get(device).copied().unwrap_or(0);
        if last < *end {
            gaps.push((*device, last + 1, *end));
        }
    }
    gaps
}

/// Says of each gap what is known round it.
pub(super) fn lost(
    entries: &BTreeMap<(DeviceId, i64), Entry>,
    hurt: &BTreeMap<(DeviceId, i64), Entry>,
    gaps: &[(DeviceId, i64, i64)],
) -> Vec<Lost> {
    let told = |device: DeviceId, sequence: i64| entries.get(&(device, sequence)).map(Known::from);
    gaps.iter()
        .map(|(device, first, last)| Lost {
            device: device.to_string(),
            first: *first,
            last: *last,
            after: told(*device, first - 1),
            before: told(*device, last + 1),
            read: hurt.range((*device, *first)..=(*device, *last)).map(|(_, entry)| Known::from(entry)).collect(),
        })
        .collect()
}

impl Account {
    /// The setting that holds what nobody has acknowledged yet.
    pub const KEY: &str = "account";

    /// What that setting says; of a program that says more or less of it, nothing can be told here.
    pub fn read_all(text: Option<&str>) -> Vec<Self> {
        text.and_then(|text| serde_json::from_str(text).ok()).unwrap_or_default()
    }
}

impl Store {
    /// What was found wrong with this book on this device and has not been acknowledged, oldest first.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn accounts(&self) -> Result<Vec<Account>> {
        Ok(Account::read_all(self.setting_get(Account::KEY)?.as_deref()))
    }

    /// Drops what [`Store::accounts`] gives: somebody has read it.
    ///
    /// # Errors
    /// What SQLite said; it is all still there.
    pub fn acknowledge(&mut self) -> Result<()> {
        self.setting_clear(Account::KEY)
    }

    /// Adds one to what nobody has acknowledged.
    pub(super) fn note_account(&mut self, account: Account) -> Result<()> {
        let mut all = self.accounts()?;
        all.push(account);
        self.setting_put(Account::KEY, &write(&all))
    }
}

pub(super) fn write(accounts: &[Account]) -> String {
    serde_json::to_string(accounts).unwrap_or_default()
}
