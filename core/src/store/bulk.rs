//! Many subjects at once: all that a job is made of in three statements, however old and large the book is.

use rusqlite::{OptionalExtension, Row, params};

use super::project::value;
use super::read::{SUBJECT, signed, subject};
use super::{DeviceId, Id, PhotoState, Result, Signed, Stamp, Store, StoredSubject, Written};
use crate::store::canon::Canon;

/// Which subjects are meant.
#[derive(Clone, Copy, Debug)]
pub enum Scope<'a> {
    /// A job with everything made in it or hanging under it, and what of these kinds belongs to no job; `None` for the latter alone.
    Job(Option<Id>, &'a [&'a str]),
    /// The subjects of a kind that were made in no job.
    Book(&'a str),
    /// These alone.
    These(&'a [Id]),
}

impl Scope<'_> {
    /// What stands behind `WHERE` for a subject `s`.
    fn condition(&self) -> &'static str {
        match self {
            Self::Job(..) => {
                "(s.id = ?1 OR s.job = ?1 OR s.parent = ?1 OR (s.job IS NULL AND s.kind IN (SELECT value FROM json_each(?2))))"
            }
            Self::Book(_) => "s.job IS ?1 AND s.kind = ?2",
            Self::These(_) => "s.id IN (SELECT unhex(value) FROM json_each(?2)) AND ?1 IS NULL",
        }
    }

    fn params(&self) -> (Option<Id>, String) {
        let list = |texts: &mut dyn Iterator<Item = String>| Canon::List(texts.map(Canon::Text).collect()).write();
        match self {
            Self::Job(job, kinds) => (*job, list(&mut kinds.iter().map(|kind| (*kind).to_owned()))),
            Self::Book(kind) => (None, (*kind).to_owned()),
            Self::These(ids) => (None, list(&mut ids.iter().map(Id::to_string))),
        }
    }
}

impl Store {
    fn rows<T>(
        &self,
        sql: &str,
        scope: Scope<'_>,
        read: impl FnMut(&Row<'_>) -> rusqlite::Result<T>,
    ) -> Result<Vec<T>> {
        let (job, list) = scope.params();
        Ok(self.conn.prepare_cached(sql)?.query_map(params![job, list], read)?.collect::<rusqlite::Result<_>>()?)
    }

    /// The subjects of a scope, removed ones too, by sort key, then id.
    pub fn subjects_of(&self, scope: Scope<'_>) -> Result<Vec<StoredSubject>> {
        let sql = format!("{SUBJECT} WHERE {} ORDER BY s.sort_key, s.id", scope.condition());
        self.rows(&sql, scope, subject)
    }

    /// Every field of the subjects of a scope that are not removed. Cleared ones are there, with [`super::Value::Absent`].
    pub fn fields_of(&self, scope: Scope<'_>) -> Result<Vec<(Id, String, Written)>> {
        let sql = format!(
            "SELECT f.subject, f.name, f.value, f.kept, e.ms, e.counter, e.device, e.signer, e.grp \
             FROM subject s JOIN field f ON f.subject = s.id JOIN entry e ON e.id = f.entry \
             WHERE s.removed IS NULL AND {}",
            scope.condition()
        );
        self.rows(&sql, scope, |row| {
            let stamp = Stamp { ms: row.get(4)?, counter: row.get(5)?, device: row.get::<_, DeviceId>(6)? };
            let value = value(row.get_ref(2)?.as_str()?);
            let written = Written { value, kept: row.get(3)?, stamp, signer: row.get(7)?, group: row.get(8)? };
            Ok((row.get(0)?, row.get(1)?, written))
        })
    }

    /// Every sign-off on the subjects of a scope, oldest first, those of undone groups too.
    pub fn signed_of(&self, scope: Scope<'_>) -> Result<Vec<Signed>> {
        let sql = format!(
            "SELECT g.detail, e.ms, e.counter, e.device, e.grp, \
             EXISTS (SELECT 1 FROM undone u WHERE u.entry = g.entry) \
             FROM subject s JOIN sign_off g ON g.subject = s.id JOIN entry e ON e.id = g.entry \
             WHERE s.removed IS NULL AND {} ORDER BY e.ms, e.counter, e.device, g.step",
            scope.condition()
        );
        Ok(self.rows(&sql, scope, signed)?.into_iter().flatten().collect())
    }

    /// The job of a subject: itself, where it is of the kind `job`; else the one it was made in or hangs under, or else that of the
    /// subject that its field `link` refers to. The outer `None` is a subject that is not in the book.
    pub fn job_of(&self, id: Id, job: &str, link: &str) -> Result<Option<Option<Id>>> {
        let sql = "SELECT CASE WHEN s.kind = ?2 THEN s.id ELSE coalesce(s.job, \
             (SELECT p.id FROM subject p WHERE p.id = s.parent AND p.kind = ?2), \
             (SELECT t.job FROM field f JOIN subject t ON t.id = unhex(f.value ->> 'reference') \
              WHERE f.subject = ifnull((SELECT p.id FROM subject p WHERE p.id = s.parent AND p.job IS NULL), s.id) \
              AND f.name = ?3)) END FROM subject s WHERE s.id = ?1";
        Ok(self.conn.prepare_cached(sql)?.query_row(params![id, job, link], |row| row.get(0)).optional()?)
    }

    /// The jobs that are not removed, each with how many subjects of a kind hang under it.
    pub fn job_counts(&self, job: &str, kind: &str) -> Result<Vec<(Id, u32)>> {
        let sql = "SELECT j.id, (SELECT count(*) FROM subject w WHERE w.parent = j.id AND w.kind = ?2 \
             AND w.removed IS NULL) FROM subject j WHERE j.job IS NULL AND j.kind = ?1 AND j.removed IS NULL";
        let mut statement = self.conn.prepare_cached(sql)?;
        let rows = statement.query_map(params![job, kind], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(rows.collect::<rusqlite::Result<_>>()?)
    }

    /// Everything that was typed and not yet accepted, by key.
    pub fn drafts(&self) -> Result<Vec<(String, String)>> {
        self.pairs("SELECT key, text FROM draft")
    }

    /// Every setting of this device, by key.
    pub fn settings(&self) -> Result<Vec<(String, String)>> {
        self.pairs("SELECT key, text FROM setting")
    }

    fn pairs(&self, sql: &str) -> Result<Vec<(String, String)>> {
        let mut statement = self.conn.prepare_cached(sql)?;
        let rows = statement.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
        Ok(rows.collect::<rusqlite::Result<_>>()?)
    }

    /// Where every photo is, as the book has it.
    pub fn photo_states(&self) -> Result<Vec<(Id, PhotoState)>> {
        let mut statement = self.conn.prepare_cached("SELECT id, state FROM photo")?;
        let rows = statement.query_map([], |row| Ok((row.get(0)?, row.get::<_, String>(1)?)))?;
        let rows = rows.collect::<rusqlite::Result<Vec<(Id, String)>>>()?;
        Ok(rows.into_iter().filter_map(|(id, word)| Some((id, PhotoState::of(&word)?))).collect())
    }

    /// A number that changes when, and only when, another connection has written to the book.
    pub fn foreign_writes(&self) -> Result<i64> {
        Ok(self.conn.prepare_cached("PRAGMA data_version")?.query_row([], |row| row.get(0))?)
    }
}
