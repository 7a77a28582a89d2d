//! What was saved and what was not, when a book was not found as it was left: kept in the book on this device until
//! somebody acknowledges it.

use rusqlite::{Connection, OptionalExtension};
use serde::{Deserialize, Serialize};

use super::entry::COLUMNS;
use super::held::{EntryMap, Held};
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
    /// How many answers the book held then.
    pub saved: u64,
    /// Where answers were taken from that the file itself no longer gave.
    #[serde(default)]
    pub sources: Vec<AnswersFrom>,
    /// Where further answers lie that were not taken, since nothing says that they were in the book.
    #[serde(default)]
    pub untaken: Vec<AnswersFrom>,
    /// The newest answer that the book held then.
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
        let sql = format!("SELECT {COLUMNS} FROM entry e ORDER BY ms DESC, counter DESC, device DESC LIMIT 1");
        let newest = conn.query_row(&sql, [], Entry::from_row).optional()?.as_ref().map(Known::from);
        Ok(Self {
            found: Found::Another,
            detail: String::new(),
            kept: None,
            saved: saved.unsigned_abs(),
            sources: Vec::new(),
            untaken: Vec::new(),
            newest,
            lost: Vec::new(),
            typed_lost: false,
        })
    }
}

/// Answers in a file beside the book: a copy, or one that was set aside.
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

/// Says of each run of numbers that is missing what is known round it.
pub(super) fn lost(entries: &EntryMap, hurt: &EntryMap, missing: &Held) -> Vec<Lost> {
    let told = |device: DeviceId, sequence: i64| entries.get(&(device, sequence)).map(Known::from);
    let of = |(device, run): (DeviceId, std::ops::RangeInclusive<i64>)| {
        let (first, last) = run.into_inner();
        Lost {
            device: device.to_string(),
            first,
            last,
            after: told(device, first.saturating_sub(1)),
            before: told(device, last.saturating_add(1)),
            read: hurt.range((device, first)..=(device, last)).map(|(_, entry)| Known::from(entry)).collect(),
        }
    };
    missing.runs().map(of).collect()
}

impl Account {
    /// The setting that holds what nobody has acknowledged yet.
    pub const KEY: &str = "account";

    /// What that setting says; of a program that says more or less of it, nothing can be told here.
    pub fn read_all(text: Option<&str>) -> Vec<Self> {
        text.and_then(|text| serde_json::from_str(text).ok()).unwrap_or_default()
    }

    /// What is to stand there.
    pub(super) fn write_all(accounts: &[Self]) -> Result<String> {
        Ok(serde_json::to_string(accounts).map_err(std::io::Error::from)?)
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
        self.setting_put(Account::KEY, &Account::write_all(&all)?)
    }
}
