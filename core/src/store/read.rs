use std::collections::BTreeMap;

use rusqlite::{OptionalExtension, Params, Row, params};

use super::change::LoggedChange;
use super::entry::Payload;
use super::project::deeds_of;
use super::project::value;
use super::{Id, Result, SignOff, Stamp, Store, Value};
use crate::store::canon::Canon;

/// Anything with a life of its own in the book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoredSubject {
    /// Its id.
    pub id: Id,
    /// Its kind.
    pub kind: String,
    /// The job it was made in.
    pub job: Option<Id>,
    /// What it hangs under.
    pub parent: Option<Id>,
    /// Its place among its like.
    pub sort_key: String,
    /// When it was removed.
    pub removed: Option<Stamp>,
}

/// What stands in a field, and where it comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// The value in force.
    pub value: Value,
    /// Whether it may no longer change, see [`super::Change::Keep`].
    pub kept: bool,
    /// When it was written.
    pub stamp: Stamp,
    /// Who wrote it.
    pub signer: String,
    /// The group that wrote it.
    pub group: Id,
}

/// A sign-off and the group it came in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signed {
    /// What was signed.
    pub sign_off: SignOff,
    /// When.
    pub stamp: Stamp,
    /// In which group.
    pub group: Id,
    /// Whether that group was taken back.
    pub undone: bool,
}

/// One line of the done list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HistoryEntry {
    /// The group.
    pub group: Id,
    /// When it was accepted.
    pub stamp: Stamp,
    /// Minutes that local time was ahead of UTC.
    pub utc_offset: i32,
    /// The job.
    pub job: Option<Id>,
    /// What was answered; `undo` for an undo.
    pub kind: String,
    /// The version of that kind.
    pub kind_version: i64,
    /// The texts for the line; those of the undone group for an undo; none where a newer program wrote it in a form of its own.
    pub args: Vec<String>,
    /// Who accepted it.
    pub signer: String,
    /// The group it takes back.
    pub undoes: Option<Id>,
    /// What was answered in that group.
    pub undoes_kind: Option<String>,
    /// The undo in force that took it back.
    pub undone_by: Option<Id>,
}

/// A value that lost against another device's without either having seen the other.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clash {
    /// The subject.
    pub subject: Id,
    /// The field.
    pub field: String,
    /// The value that lost.
    pub value: Value,
    /// Who had written it.
    pub signer: String,
    /// The group it came in.
    pub group: Id,
    /// When.
    pub stamp: Stamp,
    /// Who has seen on this device that it lost.
    pub seen_by: Vec<String>,
}

pub(super) const SUBJECT: &str = "SELECT s.id, s.kind, s.job, s.parent, s.sort_key, r.ms, r.counter, r.device \
     FROM subject s LEFT JOIN entry r ON r.id = s.removed";

pub(super) fn subject(row: &Row<'_>) -> rusqlite::Result<StoredSubject> {
    let removed = match row.get(5)? {
        Some(ms) => Some(Stamp { ms, counter: row.get(6)?, device: row.get(7)? }),
        None => None,
    };
    let (id, kind, job) = (row.get(0)?, row.get(1)?, row.get(2)?);
    Ok(StoredSubject { id, kind, job, parent: row.get(3)?, sort_key: row.get(4)?, removed })
}

const DONE: &str = "SELECT e.grp, e.ms, e.counter, e.device, e.utc_offset, e.job, e.kind, e.kind_version, e.form, \
     e.payload, e.signer, e.undoes, (SELECT k.kind FROM entry k WHERE k.grp = e.undoes), (SELECT x.grp FROM entry x WHERE x.undoes = e.grp \
     AND NOT EXISTS (SELECT 1 FROM undone y WHERE y.entry = x.id) ORDER BY x.ms, x.counter, x.device LIMIT 1) \
     FROM entry e";

fn done(row: &Row<'_>) -> rusqlite::Result<HistoryEntry> {
    Ok(HistoryEntry {
        group: row.get(0)?,
        stamp: Stamp { ms: row.get(1)?, counter: row.get(2)?, device: row.get(3)? },
        utc_offset: row.get(4)?,
        job: row.get(5)?,
        kind: row.get(6)?,
        kind_version: row.get(7)?,
        args: Payload::args(row.get(8)?, row.get_ref(9)?.as_str()?),
        signer: row.get(10)?,
        undoes: row.get(11)?,
        undoes_kind: row.get(12)?,
        undone_by: row.get(13)?,
    })
}

/// A sign-off; none where a newer program wrote it in a form of its own.
pub(super) fn signed(row: &Row<'_>) -> rusqlite::Result<Option<Signed>> {
    let sign_off = SignOff::read(row.get_ref(0)?.as_str()?);
    let stamp = Stamp { ms: row.get(1)?, counter: row.get(2)?, device: row.get(3)? };
    let (group, undone) = (row.get(4)?, row.get(5)?);
    Ok(sign_off.map(|sign_off| Signed { sign_off, stamp, group, undone }))
}

impl Store {
    fn list<T>(
        &self,
        sql: &str,
        params: impl Params,
        read: impl FnMut(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Vec<T>> {
        Ok(self.conn.prepare_cached(sql)?.query_map(params, read)?.collect::<rusqlite::Result<_>>()?)
    }

    /// A subject, removed ones too.
    pub fn subject(&self, id: Id) -> Result<Option<StoredSubject>> {
        Ok(self.conn.prepare_cached(&format!("{SUBJECT} WHERE s.id = ?1"))?.query_row([id], subject).optional()?)
    }

    /// The subjects of a kind under a parent that are not removed, by sort key, then id.
    pub fn children(&self, parent: Id, kind: &str) -> Result<Vec<StoredSubject>> {
        let sql =
            format!("{SUBJECT} WHERE s.parent = ?1 AND s.kind = ?2 AND s.removed IS NULL ORDER BY s.sort_key, s.id");
        self.list(&sql, params![parent, kind], subject)
    }

    /// The subjects of a kind made in a job, `None` being the book itself, that are not removed, by sort key, then id.
    pub fn subjects(&self, job: Option<Id>, kind: &str) -> Result<Vec<StoredSubject>> {
        let sql =
            format!("{SUBJECT} WHERE s.job IS ?1 AND s.kind = ?2 AND s.removed IS NULL ORDER BY s.sort_key, s.id");
        self.list(&sql, params![job, kind], subject)
    }

    /// Those of [`subjects`](Self::subjects) that are part of nothing else.
    pub fn loose(&self, job: Option<Id>, kind: &str) -> Result<Vec<StoredSubject>> {
        let sql = format!(
            "{SUBJECT} WHERE s.parent IS NULL AND s.job IS ?1 AND s.kind = ?2 AND s.removed IS NULL \
             ORDER BY s.sort_key, s.id"
        );
        self.list(&sql, params![job, kind], subject)
    }

    /// The fields of a subject by name. Cleared ones are there, with [`Value::Absent`].
    pub fn fields(&self, subject: Id) -> Result<BTreeMap<String, Written>> {
        let sql = "SELECT f.name, f.value, f.kept, e.ms, e.counter, e.device, e.signer, e.grp \
             FROM field f JOIN entry e ON e.id = f.entry \
             WHERE f.subject = ?1 AND EXISTS (SELECT 1 FROM subject s WHERE s.id = ?1)";
        let fields = self.list(sql, [subject], |row| {
            let stamp = Stamp { ms: row.get(3)?, counter: row.get(4)?, device: row.get(5)? };
            let value = value(&row.get::<_, String>(1)?);
            Ok((row.get(0)?, Written { value, kept: row.get(2)?, stamp, signer: row.get(6)?, group: row.get(7)? }))
        })?;
        Ok(fields.into_iter().collect())
    }

    /// Every sign-off on a subject, oldest first, those of undone groups too.
    pub fn sign_offs(&self, subject: Id) -> Result<Vec<Signed>> {
        let sql = "SELECT s.detail, e.ms, e.counter, e.device, e.grp, \
             EXISTS (SELECT 1 FROM undone u WHERE u.entry = s.entry) \
             FROM sign_off s JOIN entry e ON e.id = s.entry WHERE s.subject = ?1 \
             ORDER BY e.ms, e.counter, e.device, s.step";
        let signed = self.list(sql, [subject], signed)?;
        Ok(signed.into_iter().flatten().collect())
    }

    /// A page of the done list of every job, newest first, from before a stamp on.
    pub fn done(&self, before: Option<Stamp>, count: u32) -> Result<Vec<HistoryEntry>> {
        let (ms, counter, device) = place(before);
        let sql = format!(
            "{DONE} WHERE (e.ms, e.counter, e.device) < (?1, ?2, ?3) ORDER BY e.ms DESC, e.counter DESC, e.device DESC LIMIT ?4"
        );
        self.list(&sql, params![ms, counter, device, count], done)
    }

    /// A page of the done list of one job, `None` being the book itself, newest first, from before a stamp on.
    pub fn done_in(&self, job: Option<Id>, before: Option<Stamp>, count: u32) -> Result<Vec<HistoryEntry>> {
        let (ms, counter, device) = place(before);
        let sql = format!(
            "{DONE} WHERE e.job IS ?5 AND (e.ms, e.counter, e.device) < (?1, ?2, ?3) ORDER BY e.ms DESC, e.counter DESC, e.device DESC LIMIT ?4"
        );
        self.list(&sql, params![ms, counter, device, count, job], done)
    }

    /// One line of the done list.
    pub fn done_one(&self, group: Id) -> Result<Option<HistoryEntry>> {
        Ok(self.conn.prepare_cached(&format!("{DONE} WHERE e.grp = ?1"))?.query_row([group], done).optional()?)
    }

    /// What was answered later, and is in force, on what this group made or wrote, or points to what it made: newest
    /// first. To be shown before an undo. Undos themselves are left out.
    pub fn dependents(&self, group: Id) -> Result<Vec<HistoryEntry>> {
        let found: Option<(i64, String)> = self
            .conn
            .prepare_cached("SELECT form, payload FROM entry WHERE grp = ?1")?
            .query_row([group], |row| Ok((row.get(0)?, row.get(1)?)))
            .optional()?;
        let deeds = found.map(|(form, payload)| deeds_of(form, &payload)).unwrap_or_default();
        let slot =
            |deed: &LoggedChange| Canon::List(vec![Canon::Text(deed.subject().to_string()), Canon::Text(deed.slot())]);
        let slots = Canon::List(deeds.iter().map(slot).collect()).write();
        let sql = format!(
            "WITH m (subject, slot) AS (SELECT unhex(value ->> 0), value ->> 1 FROM json_each(?2)) \
             {DONE} WHERE e.id IN ( \
               SELECT w.entry FROM m JOIN written w ON w.subject = m.subject AND (w.slot = m.slot OR m.slot = '+') \
               UNION SELECT s.entry FROM m JOIN sign_off s ON s.subject = m.subject \
               UNION SELECT s.made FROM m JOIN subject s ON s.parent = m.subject WHERE m.slot = '+' \
               UNION SELECT f.entry FROM field f WHERE f.value IN ( \
                 SELECT '{{\"reference\":\"' || lower(hex(m.subject)) || '\"}}' FROM m WHERE m.slot = '+')) \
             AND EXISTS (SELECT 1 FROM entry g WHERE g.grp = ?1 AND iif(e.device = g.device, e.sequence > g.sequence, \
               (e.ms, e.counter, e.device) > (g.ms, g.counter, g.device))) \
             AND NOT EXISTS (SELECT 1 FROM undone u WHERE u.entry = e.id) \
             ORDER BY e.ms DESC, e.counter DESC, e.device DESC"
        );
        self.list(&sql, params![group, slots], done)
    }

    /// Every value that lost against another device's unseen.
    pub fn clashes(&self) -> Result<Vec<Clash>> {
        let sql = "SELECT c.subject, c.name, c.value, e.signer, e.grp, e.ms, e.counter, e.device FROM clash c \
             JOIN entry e ON e.id = c.lost ORDER BY e.ms, e.counter, e.device, c.subject, c.name";
        let mut clashes = self.list(sql, [], |row| {
            Ok(Clash {
                subject: row.get(0)?,
                field: row.get(1)?,
                value: value(&row.get::<_, String>(2)?),
                signer: row.get(3)?,
                group: row.get(4)?,
                stamp: Stamp { ms: row.get(5)?, counter: row.get(6)?, device: row.get(7)? },
                seen_by: Vec::new(),
            })
        })?;
        for clash in &mut clashes {
            let sql = "SELECT signer FROM clash_seen WHERE subject = ?1 AND name = ?2 AND lost = ?3";
            clash.seen_by = self.list(sql, params![clash.subject, clash.field, clash.group], |row| row.get(0))?;
        }
        Ok(clashes)
    }
}

/// A bound for the done list that is after everything where none is given.
fn place(before: Option<Stamp>) -> (i64, i64, Id) {
    before.map_or((i64::MAX, i64::MAX, Id::from_bytes([255; 16])), |at| (at.ms, at.counter, at.device.0))
}
