use std::fmt;
use std::str::FromStr;

use rusqlite::types::{FromSql, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use rusqlite::{Connection, Row};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use sha2::{Digest, Sha256};

use super::canon::{self, Canon};
use super::change::LoggedChange;
use super::id::{BadId, from_hex, parsed};
use super::{DeviceId, Id, Stamp};

/// The newest payload form that this program projects. Entries of later forms are kept as they are.
pub(super) const FORM: i64 = 1;

/// A SHA-256 hash.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Hash(pub [u8; 32]);

impl Hash {
    /// The hash of no entry: it stands before the first.
    pub const NONE: Self = Self([0; 32]);

    /// The hash of some bytes.
    pub fn of(bytes: impl AsRef<[u8]>) -> Self {
        Self(Sha256::digest(bytes).into())
    }
}

impl fmt::Display for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&hex::encode(self.0))
    }
}

impl fmt::Debug for Hash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl Serialize for Hash {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Hash {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        parsed(from)
    }
}

impl FromStr for Hash {
    type Err = BadId;

    fn from_str(text: &str) -> Result<Self, BadId> {
        from_hex(text).and_then(|bytes| bytes.try_into().ok()).map(Self).ok_or_else(|| BadId(text.to_owned()))
    }
}

impl ToSql for Hash {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::Borrowed(ValueRef::Blob(&self.0)))
    }
}

impl FromSql for Hash {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        <[u8; 32]>::column_result(value).map(Self)
    }
}

/// One accepted answer as it lies in the log, byte for byte the same on every device.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// When and where it was made.
    pub stamp: Stamp,
    /// Its number among the entries of its device, from 1 without gaps.
    pub sequence: i64,
    /// Minutes that local time was ahead of UTC.
    pub utc_offset: i32,
    /// The job; `None` for the book's own.
    pub job: Option<Id>,
    /// What was answered.
    pub kind: String,
    /// The version of that kind.
    pub kind_version: i64,
    /// The first subject it changes.
    pub subject: Option<Id>,
    /// The form of the payload.
    pub form: i64,
    /// The changes, in canonical JSON.
    pub payload: String,
    /// The group it undoes.
    pub undoes: Option<Id>,
    /// Who accepted it.
    pub signer: String,
    /// With which program.
    pub program: String,
    /// The hash of the device's entry before it.
    pub previous: Hash,
    /// The hash of all the above.
    pub hash: Hash,
    /// The public key of its device and its signature of the hash; empty where it was made before devices signed.
    pub signature: Vec<u8>,
}

/// An entry's content, its fields in the order of their names as canonical JSON has it.
#[derive(Serialize)]
struct Content<'a> {
    counter: i64,
    device: Id,
    form: i64,
    #[serde(skip_serializing_if = "Option::is_none")]
    hash: Option<Hash>,
    #[serde(skip_serializing_if = "Option::is_none")]
    job: Option<Id>,
    kind: &'a str,
    kind_version: i64,
    ms: i64,
    payload: &'a str,
    previous: Hash,
    program: &'a str,
    sequence: i64,
    #[serde(skip_serializing_if = "Option::is_none")]
    signature: Option<String>,
    signer: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    subject: Option<Id>,
    #[serde(skip_serializing_if = "Option::is_none")]
    undoes: Option<Id>,
    utc_offset: i32,
}

pub(super) const COLUMNS: &str = "e.ms, e.counter, e.device, e.sequence, e.utc_offset, e.job, e.kind, e.kind_version, \
     e.subject, e.form, e.payload, e.undoes, e.signer, e.program, e.previous, e.hash, e.signature";

/// Every entry of a log as it stands there, whether or not its place in it is one, by device and sequence.
pub(super) fn logged(conn: &Connection) -> super::Result<Vec<Entry>> {
    let mut statement = conn.prepare(&format!("SELECT {COLUMNS} FROM entry e ORDER BY e.device, e.sequence"))?;
    let entries = statement.query_map([], Entry::from_row)?.collect::<rusqlite::Result<_>>()?;
    Ok(entries)
}

impl Entry {
    /// The group's id: the first half of the hash.
    pub fn group(&self) -> Id {
        let mut bytes = [0; 16];
        for (to, from) in bytes.iter_mut().zip(self.hash.0) {
            *to = from;
        }
        Id::from_bytes(bytes)
    }

    /// The content as canonical JSON; `sealed` with its hash and signature.
    fn text(&self, sealed: bool) -> String {
        let sealed = sealed.then_some(self);
        let content = Content {
            counter: self.stamp.counter,
            device: self.stamp.device.0,
            form: self.form,
            hash: sealed.map(|entry| entry.hash),
            job: self.job,
            kind: &self.kind,
            kind_version: self.kind_version,
            ms: self.stamp.ms,
            payload: &self.payload,
            previous: self.previous,
            program: &self.program,
            sequence: self.sequence,
            signature: sealed.map(|entry| hex::encode(&entry.signature)),
            signer: &self.signer,
            subject: self.subject,
            undoes: self.undoes,
            utc_offset: self.utc_offset,
        };
        canon::write(&content)
    }

    /// The hash that the content asks for.
    pub fn true_hash(&self) -> Hash {
        Hash::of(self.text(false))
    }

    /// The whole entry as canonical JSON, for exchange.
    pub fn to_text(&self) -> String {
        self.text(true)
    }

    /// Reads what [`Entry::to_text`] wrote; `None` for anything else.
    pub fn from_text(text: &str) -> Option<Self> {
        let canon = Canon::read(text)?;
        let entry = Self {
            stamp: Stamp {
                ms: canon.whole("ms")?,
                counter: canon.whole("counter")?,
                device: DeviceId(canon.parsed("device")?),
            },
            sequence: canon.whole("sequence")?,
            utc_offset: canon.whole("utc_offset")?.try_into().ok()?,
            job: canon.maybe("job")?,
            kind: canon.str("kind")?.to_owned(),
            kind_version: canon.whole("kind_version")?,
            subject: canon.maybe("subject")?,
            form: canon.whole("form")?,
            payload: canon.str("payload")?.to_owned(),
            undoes: canon.maybe("undoes")?,
            signer: canon.str("signer")?.to_owned(),
            program: canon.str("program")?.to_owned(),
            previous: canon.parsed("previous")?,
            hash: canon.parsed("hash")?,
            signature: from_hex(canon.str("signature")?)?,
        };
        // What stands in it besides is in no hash.
        (entry.to_text() == text).then_some(entry)
    }

    pub(super) fn from_row(row: &Row<'_>) -> rusqlite::Result<Self> {
        Ok(Self {
            stamp: Stamp { ms: row.get(0)?, counter: row.get(1)?, device: row.get(2)? },
            sequence: row.get(3)?,
            utc_offset: row.get(4)?,
            job: row.get(5)?,
            kind: row.get(6)?,
            kind_version: row.get(7)?,
            subject: row.get(8)?,
            form: row.get(9)?,
            payload: row.get(10)?,
            undoes: row.get(11)?,
            signer: row.get(12)?,
            program: row.get(13)?,
            previous: row.get(14)?,
            hash: row.get(15)?,
            signature: row.get(16)?,
        })
    }

    /// Puts the entry into the log; gives its row.
    pub(super) fn insert(&self, conn: &Connection) -> rusqlite::Result<i64> {
        conn.prepare_cached(
            "INSERT INTO entry (ms, counter, device, sequence, utc_offset, job, kind, kind_version, subject, form, \
             payload, undoes, signer, program, previous, hash, signature, grp) \
             VALUES (?1,?2,?3,?4,?5,?6,?7,?8,?9,?10,?11,?12,?13,?14,?15,?16,?17,?18)",
        )?
        .insert(rusqlite::params![
            self.stamp.ms,
            self.stamp.counter,
            self.stamp.device,
            self.sequence,
            self.utc_offset,
            self.job,
            self.kind,
            self.kind_version,
            self.subject,
            self.form,
            self.payload,
            self.undoes,
            self.signer,
            self.program,
            self.previous,
            self.hash,
            self.signature,
            self.group(),
        ])
    }
}

/// What a payload of this program's form says.
#[derive(Serialize, Deserialize)]
pub(super) struct Payload {
    pub(super) args: Vec<String>,
    #[serde(rename = "changes")]
    pub(super) deeds: Vec<LoggedChange>,
}

impl Payload {
    pub(super) fn write(&self) -> String {
        canon::write(self)
    }

    /// `None` where the payload is of a newer form or holds a change this program does not know.
    pub(super) fn read(form: i64, payload: &str) -> Option<Self> {
        if form != FORM {
            return None;
        }
        let read: Self = serde_json::from_str(payload).ok()?;
        // One content has one text; what is in this one besides is not understood.
        (read.write() == payload).then_some(read)
    }

    /// The texts for the done list alone, whatever the changes are: one that takes a large house in is read in a moment.
    pub(super) fn args(form: i64, payload: &str) -> Vec<String> {
        #[derive(Deserialize)]
        struct Args {
            args: Vec<String>,
        }
        let read = (form == FORM).then(|| serde_json::from_str::<Args>(payload).ok()).flatten();
        read.map(|read| read.args).unwrap_or_default()
    }
}
