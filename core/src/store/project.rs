//! From entries to tables. The result depends on the set of entries alone, not on the order they came in.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::{Connection, OptionalExtension, Row, params};

use super::change::LoggedChange;
use super::entry::Payload;
use super::{Entry, Id, Result, Stamp, Store, Value};
use crate::store::canon::Canon;

/// Shows entries of the log in the tables; gives the subjects they touched. What many of them wrote is worked out once.
pub(super) fn apply(conn: &Connection, entries: &[(i64, &Entry)]) -> Result<BTreeSet<Id>> {
    let mut changed = Changed::default();
    for (row, entry) in entries {
        for deed in &deeds_of(entry.form, &entry.payload) {
            index(conn, *row, deed)?;
            changed.add(deed);
        }
    }
    for (_, entry) in entries {
        // An undo that came in before what it undoes has been waiting for it.
        refresh_undone(conn, entry.group(), &mut changed)?;
        if let Some(target) = entry.undoes {
            refresh_undone(conn, target, &mut changed)?;
        }
    }
    changed.settle(conn)
}

/// What entries changed, and has to be worked out anew.
#[derive(Default)]
struct Changed {
    subjects: BTreeSet<Id>,
    slots: BTreeSet<(Id, String)>,
}

impl Changed {
    fn add(&mut self, deed: &LoggedChange) {
        self.subjects.insert(deed.subject());
        // A sign-off is only ever added.
        if !matches!(deed, LoggedChange::SignOff(_)) {
            self.slots.insert((deed.subject(), deed.slot()));
        }
    }

    /// Works each slot out; gives the subjects.
    fn settle(self, conn: &Connection) -> Result<BTreeSet<Id>> {
        for (subject, slot) in &self.slots {
            settle(conn, *subject, slot)?;
        }
        Ok(self.subjects)
    }
}

/// The same for an entry that was made just now from these deeds: no undo can name it yet, and of what it makes itself, under
/// an id that was never used, no older write need be looked for.
pub(super) fn apply_new(conn: &Connection, row: i64, entry: &Entry, deeds: &[LoggedChange]) -> Result<BTreeSet<Id>> {
    let mut changed = Changed::default();
    let mut made = BTreeSet::new();
    // In the order of the tables, whose rows then lie one behind the other and not each on a page of its own.
    let mut in_order: Vec<&LoggedChange> = deeds.iter().collect();
    in_order.sort_by_key(|deed| deed.subject());
    for deed in &in_order {
        index(conn, row, deed)?;
        if let LoggedChange::Create { subject, .. } = deed {
            made.insert(*subject);
        }
    }
    for deed in in_order {
        match deed {
            LoggedChange::Create { subject, kind, parent, sort_key } => {
                conn.prepare_cached("INSERT INTO subject VALUES (?1, ?2, ?3, ?4, ?5, ?6, NULL)")?
                    .execute(params![subject, kind, entry.job, parent, sort_key, row])?;
            }
            LoggedChange::Set { subject, field, new, kept, .. } if made.contains(subject) => {
                conn.prepare_cached("INSERT INTO field VALUES (?1, ?2, ?3, ?4, ?5)")?.execute(params![
                    subject,
                    field,
                    new.write(),
                    kept,
                    row
                ])?;
            }
            other => {
                changed.add(other);
                continue;
            }
        }
        changed.subjects.insert(deed.subject());
    }
    if let Some(target) = entry.undoes {
        refresh_undone(conn, target, &mut changed)?;
    }
    changed.settle(conn)
}

/// What an entry of this form says; nothing for one of a later form.
pub(super) fn deeds_of(form: i64, payload: &str) -> Vec<LoggedChange> {
    Payload::read(form, payload).map(|payload| payload.deeds).unwrap_or_default()
}

/// What a change is in the tables that every write has a row in.
pub(super) enum Indexed {
    /// A row of `written`: all but sign-offs.
    Written { value: String, saw: String, kept: bool },
    /// A row of `sign_off`.
    SignOff { step: String, detail: String, photo: Option<Id> },
}

impl Indexed {
    pub(super) fn of(deed: &LoggedChange) -> Self {
        match deed {
            LoggedChange::Create { kind, parent, sort_key, .. } => {
                let made = Canon::map([
                    ("kind", Canon::text(kind.as_str())),
                    ("parent", parent.map(|id| Canon::Text(id.to_string()))),
                    ("sort", Canon::text(sort_key.as_str())),
                ]);
                Self::Written { value: made.write(), saw: String::new(), kept: false }
            }
            LoggedChange::Set { new, saw, kept, .. } => Self::Written {
                value: new.write(),
                saw: saw.iter().map(Id::to_string).collect::<Vec<_>>().join(" "),
                kept: *kept,
            },
            LoggedChange::Remove { .. } => Self::Written { value: String::new(), saw: String::new(), kept: false },
            LoggedChange::SignOff(sign_off) => {
                Self::SignOff { step: sign_off.step.clone(), detail: sign_off.write(), photo: sign_off.photo }
            }
        }
    }
}

fn index(conn: &Connection, row: i64, deed: &LoggedChange) -> Result<()> {
    match Indexed::of(deed) {
        Indexed::Written { value, saw, kept } => {
            conn.prepare_cached("INSERT OR IGNORE INTO written VALUES (?1, ?2, ?3, ?4, ?5, ?6)")?.execute(params![
                deed.subject(),
                deed.slot(),
                row,
                value,
                saw,
                kept
            ])?;
        }
        Indexed::SignOff { step, detail, photo } => {
            conn.prepare_cached("INSERT OR IGNORE INTO sign_off VALUES (?1, ?2, ?3, ?4)")?.execute(params![
                deed.subject(),
                step,
                row,
                detail
            ])?;
            if let Some(photo) = photo {
                conn.prepare_cached("INSERT OR IGNORE INTO photo VALUES (?1, 'waiting')")?.execute([photo])?;
            }
        }
    }
    Ok(())
}

/// Works out anew whether a group is undone: whether an undo that is itself in force names it, and so on along `undoes` as far
/// as that changes. What such groups wrote has changed.
fn refresh_undone(conn: &Connection, group: Id, changed: &mut Changed) -> Result<()> {
    let (mut next, mut met) = (Some(group), BTreeSet::new());
    // An undo names an older hash, so the walk ends; in a file that somebody made up it may lead back to where it was.
    while let Some(group) = next.take().filter(|group| met.insert(*group)) {
        let found: Option<(i64, Option<Id>, bool, i64, String)> = conn
            .prepare_cached(
                "SELECT id, undoes, EXISTS (SELECT 1 FROM undone u WHERE u.entry = e.id), form, payload \
                 FROM entry e WHERE grp = ?1",
            )?
            .query_row([group], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?, row.get(4)?)))
            .optional()?;
        let Some((row, undoes, was, form, payload)) = found else { break };
        let is: bool = conn
            .prepare_cached(
                "SELECT EXISTS (SELECT 1 FROM entry e WHERE e.undoes = ?1 \
                 AND NOT EXISTS (SELECT 1 FROM undone u WHERE u.entry = e.id))",
            )?
            .query_row([group], |row| row.get(0))?;
        if is == was {
            break;
        }
        let mark = if is { "INSERT INTO undone VALUES (?1)" } else { "DELETE FROM undone WHERE entry = ?1" };
        conn.prepare_cached(mark)?.execute([row])?;
        deeds_of(form, &payload).iter().for_each(|deed| changed.add(deed));
        next = undoes;
    }
    Ok(())
}

/// One write of a slot. `saw` are the groups of the writes that it was written over.
pub(super) struct Write {
    pub(super) row: i64,
    group: Id,
    stamp: Stamp,
    pub(super) job: Option<Id>,
    pub(super) value: String,
    saw: Vec<Id>,
    pub(super) kept: bool,
    undone: bool,
}

/// The columns of a [`Write`], of `written` as `w` and `entry` as `e`.
const WRITE: &str = "w.entry, e.grp, e.ms, e.counter, e.device, e.job, w.value, w.saw, w.kept, \
                     EXISTS (SELECT 1 FROM undone u WHERE u.entry = w.entry)";

impl Write {
    fn from_row(row: &Row<'_>) -> rusqlite::Result<Self> {
        Ok(Self {
            row: row.get(0)?,
            group: row.get(1)?,
            stamp: Stamp { ms: row.get(2)?, counter: row.get(3)?, device: row.get(4)? },
            job: row.get(5)?,
            value: row.get(6)?,
            saw: row.get_ref(7)?.as_str()?.split(' ').filter_map(|group| group.parse().ok()).collect(),
            kept: row.get(8)?,
            undone: row.get(9)?,
        })
    }
}

fn writes(conn: &Connection, subject: Id, slot: &str) -> Result<Vec<Write>> {
    Ok(conn
        .prepare_cached(&format!(
            "SELECT {WRITE} FROM written w JOIN entry e ON e.id = w.entry WHERE w.subject = ?1 AND w.slot = ?2"
        ))?
        .query_map(params![subject, slot], Write::from_row)?
        .collect::<rusqlite::Result<_>>()?)
}

/// The latest write in force. Who wrote over a value had seen it, so what was seen by another write in force gives way to
/// that whatever the clocks said.
fn latest(writes: &[Write]) -> Option<&Write> {
    let in_force = || writes.iter().filter(|write| !write.undone);
    if writes.len() < 2 {
        return in_force().next();
    }
    let over = seen_by(in_force(), writes);
    in_force().filter(|write| !over.contains(&write.row)).max_by_key(|write| write.stamp)
}

/// The rows of the writes that the makers of these had seen, of those that their makers had seen, and so on.
fn seen_by<'a>(these: impl Iterator<Item = &'a Write>, all: &'a [Write]) -> BTreeSet<i64> {
    let by_group: BTreeMap<Id, &Write> = all.iter().map(|write| (write.group, write)).collect();
    let saw = |write: &'a Write| write.saw.iter().filter_map(|group| by_group.get(group).copied());
    let mut seen = BTreeSet::new();
    let mut open: Vec<&Write> = these.flat_map(saw).collect();
    while let Some(write) = open.pop() {
        if seen.insert(write.row) {
            open.extend(saw(write));
        }
    }
    seen
}

/// What a field holds: what the thing was first cut with, if it was cut, whatever was written elsewhere and later.
fn holder(writes: &[Write]) -> Option<&Write> {
    let kept = writes.iter().filter(|write| write.kept && !write.undone);
    kept.min_by_key(|write| write.stamp).or_else(|| latest(writes))
}

/// Works out one slot anew from all its writes that are in force.
fn settle(conn: &Connection, subject: Id, slot: &str) -> Result<()> {
    match slot.strip_prefix('=') {
        Some(name) => {
            conn.prepare_cached("DELETE FROM clash WHERE subject = ?1 AND name = ?2")?
                .execute(params![subject, name])?;
            conn.prepare_cached("DELETE FROM field WHERE subject = ?1 AND name = ?2")?
                .execute(params![subject, name])?;
            put_field(conn, subject, name, &writes(conn, subject, slot)?)
        }
        None => {
            conn.prepare_cached("DELETE FROM subject WHERE id = ?1")?.execute([subject])?;
            put_subject(conn, subject, &writes(conn, subject, "+")?, &writes(conn, subject, "-")?)
        }
    }
}

/// A row of `subject`.
#[derive(PartialEq)]
pub(super) struct SubjectRow {
    pub(super) id: Id,
    pub(super) kind: String,
    pub(super) job: Option<Id>,
    pub(super) parent: Option<Id>,
    pub(super) sort_key: String,
    pub(super) made: i64,
    pub(super) removed: Option<i64>,
}

impl SubjectRow {
    /// What all that was written of making and removing a subject comes to; none where it was not made.
    pub(super) fn of(id: Id, created: &[Write], removed: &[Write]) -> Option<Self> {
        let made = latest(created)?;
        let canon = Canon::read(&made.value)?;
        let text = |key| canon.str(key).unwrap_or_default().to_owned();
        Some(Self {
            id,
            kind: text("kind"),
            job: made.job,
            parent: canon.maybe("parent").flatten(),
            sort_key: text("sort"),
            made: made.row,
            removed: latest(removed).map(|write| write.row),
        })
    }
}

fn put_subject(conn: &Connection, subject: Id, created: &[Write], removed: &[Write]) -> Result<()> {
    if let Some(row) = SubjectRow::of(subject, created, removed) {
        conn.prepare_cached("INSERT INTO subject VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)")?.execute(params![
            row.id,
            row.kind,
            row.job,
            row.parent,
            row.sort_key,
            row.made,
            row.removed
        ])?;
    }
    Ok(())
}

/// Who holds a field and who lost it unseen: whatever the holder's maker had not seen, made on another device. None where
/// nothing in force was written.
pub(super) fn holder_and_lost(all: &[Write]) -> Option<(&Write, Vec<&Write>)> {
    let winner = holder(all)?;
    if all.iter().all(|write| write.stamp.device == winner.stamp.device) {
        return Some((winner, Vec::new()));
    }
    let mut seen = seen_by(std::iter::once(winner), all);
    seen.insert(winner.row);
    // A write that another loser had seen was answered there: only the last of such a line is shown.
    let losers = || all.iter().filter(|write| !write.undone && !seen.contains(&write.row));
    let answered: BTreeSet<Id> = losers().flat_map(|write| write.saw.iter().copied()).collect();
    let lost = losers().filter(|write| {
        write.stamp.device != winner.stamp.device && write.value != winner.value && !answered.contains(&write.group)
    });
    Some((winner, lost.collect()))
}

fn put_field(conn: &Connection, subject: Id, name: &str, all: &[Write]) -> Result<()> {
    let Some((winner, lost)) = holder_and_lost(all) else { return Ok(()) };
    conn.prepare_cached("INSERT INTO field VALUES (?1, ?2, ?3, ?4, ?5)")?.execute(params![
        subject,
        name,
        winner.value,
        winner.kept,
        winner.row
    ])?;
    for lost in lost {
        conn.prepare_cached("INSERT INTO clash VALUES (?1, ?2, ?3, ?4)")?
            .execute(params![subject, name, lost.row, lost.value])?;
    }
    Ok(())
}

/// All that was ever written of a subject.
#[derive(Default)]
pub(super) struct SubjectWrites {
    pub(super) made: Vec<Write>,
    pub(super) removed: Vec<Write>,
    /// By the field's name.
    pub(super) fields: BTreeMap<String, Vec<Write>>,
}

impl SubjectWrites {
    fn add(&mut self, slot: &str, write: Write) {
        match slot {
            "+" => self.made.push(write),
            "-" => self.removed.push(write),
            field => self.fields.entry(field.strip_prefix('=').unwrap_or(field).to_owned()).or_default().push(write),
        }
    }
}

/// Hands over every subject that was ever written of, in order.
pub(super) fn each_subject(conn: &Connection, mut take: impl FnMut(Id, &SubjectWrites) -> Result<()>) -> Result<()> {
    let sql = format!(
        "SELECT {WRITE}, w.subject, w.slot FROM written w JOIN entry e ON e.id = w.entry ORDER BY w.subject, w.slot"
    );
    let mut statement = conn.prepare(&sql)?;
    let mut rows = statement.query([])?;
    let mut at: Option<(Id, SubjectWrites)> = None;
    while let Some(row) = rows.next()? {
        let subject = row.get(10)?;
        if let Some((done, all)) = at.take_if(|(own, _)| *own != subject) {
            take(done, &all)?;
        }
        let (_, all) = at.get_or_insert_with(|| (subject, SubjectWrites::default()));
        all.add(row.get_ref(11)?.as_str().map_err(rusqlite::Error::from)?, Write::from_row(row)?);
    }
    at.map_or(Ok(()), |(subject, all)| take(subject, &all))
}

/// Empties the projection and makes it anew from every entry: first all writes, then what stands in each slot.
pub(super) fn replay(conn: &Connection) -> Result<()> {
    conn.execute_batch(
        "DELETE FROM clash; DELETE FROM sign_off; DELETE FROM field; DELETE FROM subject; DELETE FROM undone; \
         DELETE FROM written;",
    )?;
    let mut statement = conn.prepare("SELECT id, form, payload FROM entry")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        for deed in &deeds_of(row.get(1)?, &row.get::<_, String>(2)?) {
            index(conn, row.get(0)?, deed)?;
        }
    }
    let mut undone = conn.prepare("SELECT undoes FROM entry WHERE undoes IS NOT NULL")?;
    for target in undone.query_map([], |row| row.get(0))? {
        refresh_undone(conn, target?, &mut Changed::default())?;
    }
    each_subject(conn, |subject, all| {
        put_subject(conn, subject, &all.made, &all.removed)?;
        all.fields.iter().try_for_each(|(name, writes)| put_field(conn, subject, name, writes))
    })
}

/// The whole projection as text, free of row numbers, to compare two of them.
pub(super) fn dump(conn: &Connection) -> Result<Vec<String>> {
    const TABLES: [&str; 6] = [
        "SELECT 'written', hex(w.subject), w.slot, hex(e.hash), w.value, w.saw, w.kept FROM written w JOIN entry e ON e.id = w.entry",
        "SELECT 'undone', hex(e.hash), '', '', '', '', 0 FROM undone u JOIN entry e ON e.id = u.entry",
        "SELECT 'subject', hex(s.id), s.kind, ifnull(hex(s.job), '-'), ifnull(hex(s.parent), '-') || s.sort_key, hex(e.hash) || ifnull(hex(r.hash), '-'), 0 FROM subject s JOIN entry e ON e.id = s.made LEFT JOIN entry r ON r.id = s.removed",
        "SELECT 'field', hex(f.subject), f.name, f.value, hex(e.hash), '', f.kept FROM field f JOIN entry e ON e.id = f.entry",
        "SELECT 'sign_off', hex(s.subject), s.step, hex(e.hash), s.detail, '', 0 FROM sign_off s JOIN entry e ON e.id = s.entry",
        "SELECT 'clash', hex(c.subject), c.name, hex(e.hash), c.value, '', 0 FROM clash c JOIN entry e ON e.id = c.lost",
    ];
    let mut lines = Vec::new();
    for table in TABLES {
        let mut statement = conn.prepare(table)?;
        let mut rows = statement.query([])?;
        while let Some(row) = rows.next()? {
            let texts: Vec<String> = (0..6).map(|at| row.get(at)).collect::<rusqlite::Result<_>>()?;
            lines.push(format!("{texts:?} {}", row.get::<_, i64>(6)?));
        }
    }
    lines.sort();
    Ok(lines)
}

/// What stands in the fields of some subjects, what lost there, and what was signed: a line each, to compare two books.
pub(super) fn lines_of(conn: &Connection, subjects: &BTreeSet<Id>) -> Result<BTreeSet<String>> {
    const TABLES: [&str; 3] = [
        "SELECT 'field', f.name, f.value FROM field f WHERE f.subject = ?1",
        "SELECT 'clash', c.name, c.value || hex(e.hash) FROM clash c JOIN entry e ON e.id = c.lost WHERE c.subject = ?1",
        "SELECT 'sign_off', s.step, hex(e.hash) FROM sign_off s JOIN entry e ON e.id = s.entry WHERE s.subject = ?1",
    ];
    let mut lines = BTreeSet::new();
    for table in TABLES {
        let mut statement = conn.prepare_cached(table)?;
        for subject in subjects {
            let mut rows = statement.query([subject])?;
            while let Some(row) = rows.next()? {
                let (kind, name, what): (String, String, String) = (row.get(0)?, row.get(1)?, row.get(2)?);
                lines.insert(format!("{kind} {subject} {name:?} {what}"));
            }
        }
    }
    Ok(lines)
}

pub(super) fn value(text: &str) -> Value {
    Value::read(text).unwrap_or(Value::Absent)
}

impl Store {
    /// Makes all tables anew from the entries, in one transaction.
    pub fn rebuild(&mut self) -> Result<()> {
        let tx = self.begin()?;
        replay(&tx)?;
        tx.commit()
    }
}
