use std::collections::BTreeSet;

use rusqlite::{Connection, OptionalExtension, params};

use super::change::LoggedChange;
use super::device::Tip;
use super::entry::{FORM, Payload};
use super::project::{apply_new, value};
use super::sign::Key;
use super::{AHEAD, Author, Change, DeviceId, Entry, Hash, Id, Now, Op, Result, Stamp, Store, StoreError, Value};

/// What an accepted answer did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accepted {
    /// The group to name when it is to be undone.
    pub group: Id,
    /// When it was accepted.
    pub stamp: Stamp,
    /// The subjects to draw again.
    pub touched: BTreeSet<Id>,
}

/// A field of an undone answer, for the screen to open again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reopened {
    /// The subject; it is still in the book.
    pub subject: Id,
    /// Its kind.
    pub kind: String,
    /// The field.
    pub field: String,
    /// What the undone answer had said, with its typed text.
    pub answered: Value,
    /// What stood there before it.
    pub before: Value,
}

/// What an undo did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Undone {
    /// The undo is an answer itself, and can be undone.
    pub outcome: Accepted,
    /// The fields of the undone answer.
    pub reopened: Vec<Reopened>,
}

impl Store {
    /// Accepts one answer: writes its entry and the tables, and removes the drafts it came from, all or nothing. When
    /// it returns, the answer is on the disk, or kept with the others of [`Store::begin_together`].
    ///
    /// # Errors
    /// [`StoreError::EmptyOp`], [`StoreError::BadChange`], or what SQLite said; nothing was changed.
    pub fn transact(&mut self, op: &Op, author: &Author, now: Now, drafts_done: &[&str]) -> Result<Accepted> {
        self.settle()?;
        let (device, key) = (self.device, self.key.clone());
        let tx = self.begin()?;
        let deeds = deeds(&tx, &op.changes)?;
        let head = Head { device, key, job: op.job, kind: &op.kind, version: op.version, undoes: None };
        let (outcome, tip) = append(&tx, head, Payload { args: op.args.clone(), deeds }, author, now)?;
        for key in drafts_done {
            tx.prepare_cached("DELETE FROM draft WHERE key = ?1")?.execute([key])?;
        }
        tx.commit()?;
        self.note(Some(tip));
        Ok(outcome)
    }

    /// Takes a group back: an entry that names it. Undoing an undo puts the group in force again. Ask
    /// [`Store::dependents`] first. `reopen` gives the draft, a key and a text, of each answer that is to be asked again;
    /// it is written in the same transaction.
    ///
    /// # Errors
    /// [`StoreError::CannotUndo`] where the group is not here or is undone already; nothing was changed.
    pub fn undo(
        &mut self,
        group: Id,
        author: &Author,
        now: Now,
        reopen: impl Fn(&Reopened) -> Option<(String, String)>,
    ) -> Result<Undone> {
        self.settle()?;
        let (device, key) = (self.device, self.key.clone());
        let tx = self.begin()?;
        let found: Option<(Option<Id>, i64, String)> = tx
            .prepare_cached(
                "SELECT job, form, payload FROM entry e WHERE grp = ?1 \
                 AND NOT EXISTS (SELECT 1 FROM undone u WHERE u.entry = e.id)",
            )?
            .query_row([group], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))
            .optional()?;
        let (job, form, payload) = found.ok_or(StoreError::CannotUndo(group))?;
        let payload = Payload::read(form, &payload).ok_or(StoreError::CannotUndo(group))?;
        let head = Head { device, key, job, kind: "undo", version: 1, undoes: Some(group) };
        let (outcome, tip) = append(&tx, head, Payload { args: payload.args, deeds: Vec::new() }, author, now)?;
        let mut reopened = Vec::new();
        for deed in payload.deeds {
            let LoggedChange::Set { subject, field, new, old, .. } = deed else { continue };
            let kind: Option<String> = tx
                .prepare_cached("SELECT kind FROM subject WHERE id = ?1 AND removed IS NULL")?
                .query_row([subject], |row| row.get(0))
                .optional()?;
            let Some(kind) = kind else { continue };
            let answer = Reopened { subject, kind, field, answered: new, before: old };
            if let Some((key, text)) = reopen(&answer) {
                put_draft(&tx, &key, &text)?;
            }
            reopened.push(answer);
        }
        tx.commit()?;
        self.note(Some(tip));
        Ok(Undone { outcome, reopened })
    }
}

struct Head<'a> {
    device: DeviceId,
    key: Key,
    job: Option<Id>,
    kind: &'a str,
    version: i64,
    undoes: Option<Id>,
}

fn put_draft(conn: &Connection, key: &str, text: &str) -> Result<()> {
    conn.prepare_cached("INSERT OR REPLACE INTO draft VALUES (?1, ?2)")?.execute([key, text])?;
    Ok(())
}

/// No clock that is right says less: 2026-01-01 UTC, before this program was.
const EARLIEST: i64 = 1_767_225_600_000;
/// No clock that is right says more: the last day of the year 9999, which is as far as dates are told.
const LATEST: i64 = 253_402_214_400_000;

/// The stamp of a new entry: behind every other that a clock which is right may have made, so that it is later than all
/// its maker had seen. An entry from a clock that ran ahead by more than a day binds nobody: the answers after it get the
/// time that it is. A clock that stands before this program was counts on from the last answer.
fn stamp(conn: &Connection, device: DeviceId, now: Now) -> Result<Stamp> {
    let now = now.ms.clamp(0, LATEST);
    let mut limit = now.saturating_add(AHEAD);
    if now < EARLIEST {
        let last: Option<i64> = conn
            .prepare_cached("SELECT ms FROM entry ORDER BY id DESC LIMIT 1")?
            .query_row([], |row| row.get(0))
            .optional()?;
        limit = limit.max(last.unwrap_or(0)).min(LATEST);
    }
    let newest: Option<(i64, i64)> = conn
        .prepare_cached("SELECT ms, counter FROM entry WHERE ms <= ?1 ORDER BY ms DESC, counter DESC LIMIT 1")?
        .query_row([limit], |row| Ok((row.get(0)?, row.get(1)?)))
        .optional()?;
    Ok(match newest {
        Some((ms, counter)) if ms >= now => Stamp { ms, counter: counter.saturating_add(1), device },
        _ => Stamp { ms: now, counter: 0, device },
    })
}

fn append(conn: &Connection, head: Head<'_>, payload: Payload, author: &Author, now: Now) -> Result<(Accepted, Tip)> {
    let stamp = stamp(conn, head.device, now)?;
    let Tip { sequence, hash: previous } = Tip::of(conn, head.device)?;
    let mut entry = Entry {
        stamp,
        sequence: sequence.saturating_add(1),
        utc_offset: now.utc_offset_minutes,
        job: head.job,
        kind: head.kind.to_owned(),
        kind_version: head.version,
        subject: payload.deeds.first().map(LoggedChange::subject),
        form: FORM,
        payload: payload.write(),
        undoes: head.undoes,
        signer: author.signer.clone(),
        program: author.program.clone(),
        previous,
        hash: Hash::NONE,
        signature: Vec::new(),
    };
    entry.hash = entry.true_hash();
    entry.signature = head.key.sign(entry.hash);
    let row = entry.insert(conn)?;
    let touched = apply_new(conn, row, &entry, &payload.deeds)?;
    let tip = Tip { sequence: entry.sequence, hash: entry.hash };
    Ok((Accepted { group: entry.group(), stamp: entry.stamp, touched }, tip))
}

/// Checks the changes against the book and adds to each what it replaces.
fn deeds(conn: &Connection, changes: &[Change]) -> Result<Vec<LoggedChange>> {
    if changes.is_empty() {
        return Err(StoreError::EmptyOp);
    }
    let mut made = BTreeSet::new();
    let mut slots = BTreeSet::new();
    let mut deeds = Vec::with_capacity(changes.len());
    for change in changes {
        let deed = match change {
            Change::Create { subject, kind, parent, sort_key } => {
                let used: bool = conn
                    .prepare_cached(
                        "SELECT EXISTS (SELECT 1 FROM written WHERE subject = ?1) \
                         OR EXISTS (SELECT 1 FROM sign_off WHERE subject = ?1)",
                    )?
                    .query_row([subject], |row| row.get(0))?;
                if used {
                    return bad(*subject, "create", "this id was used before; ids are never used again");
                }
                if let Some(parent) = parent {
                    known(conn, &made, *parent, "parent")?;
                }
                made.insert(*subject);
                let (subject, parent) = (*subject, *parent);
                LoggedChange::Create { subject, kind: kind.clone(), parent, sort_key: sort_key.clone() }
            }
            Change::Set { subject, field, value } => set(conn, &made, *subject, field, value, false)?,
            Change::Keep { subject, field, value } => set(conn, &made, *subject, field, value, true)?,
            Change::Remove { subject } => {
                known(conn, &made, *subject, "remove")?;
                LoggedChange::Remove { subject: *subject }
            }
            Change::SignOff(sign_off) => {
                known(conn, &made, sign_off.subject, &sign_off.step)?;
                LoggedChange::SignOff(sign_off.clone())
            }
        };
        if !slots.insert((deed.subject(), deed.slot())) {
            return bad(deed.subject(), &deed.slot(), "an answer changes each field, step and subject at most once");
        }
        deeds.push(deed);
    }
    Ok(deeds)
}

fn bad<T>(subject: Id, field: &str, why: &'static str) -> Result<T> {
    Err(StoreError::BadChange { subject, field: field.to_owned(), why })
}

fn known(conn: &Connection, made: &BTreeSet<Id>, subject: Id, field: &str) -> Result<()> {
    let here = made.contains(&subject)
        || conn
            .prepare_cached("SELECT EXISTS (SELECT 1 FROM subject WHERE id = ?1 AND removed IS NULL)")?
            .query_row([subject], |row| row.get(0))?;
    if here { Ok(()) } else { bad(subject, field, "the subject is not in the book, or was removed") }
}

fn set(
    conn: &Connection,
    made: &BTreeSet<Id>,
    subject: Id,
    field: &str,
    new: &Value,
    kept: bool,
) -> Result<LoggedChange> {
    known(conn, made, subject, field)?;
    if field.is_empty() {
        return bad(subject, field, "a field needs a name");
    }
    let mut standing: Option<(String, bool, Id)> = None;
    // In what this very answer makes nothing stands yet.
    if !made.contains(&subject) {
        standing = conn
            .prepare_cached(
                "SELECT f.value, f.kept, e.grp FROM field f JOIN entry e ON e.id = f.entry \
                 WHERE f.subject = ?1 AND f.name = ?2",
            )?
            .query_row(params![subject, field], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))
            .optional()?;
    }
    let mut saw = Vec::new();
    let mut old = Value::Absent;
    if let Some((text, is_kept, group)) = standing {
        old = value(&text);
        if is_kept || (kept && old != Value::Absent) {
            return bad(subject, field, "it is kept as it was cut; undo that answer first");
        }
        saw.push(group);
        let lost = conn
            .prepare_cached(
                "SELECT e.grp FROM clash c JOIN entry e ON e.id = c.lost WHERE c.subject = ?1 AND c.name = ?2 \
                 ORDER BY e.grp",
            )?
            .query_map(params![subject, field], |row| row.get(0))?
            .collect::<rusqlite::Result<Vec<Id>>>()?;
        saw.extend(lost);
    }
    Ok(LoggedChange::Set { subject, field: field.to_owned(), new: new.clone(), old, saw, kept })
}
