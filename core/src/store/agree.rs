//! Whether the tables of a book are what its log gives, found out without writing anything: both are read side by side, in
//! the order of the tables, so that a book of any size needs no more memory than one of its subjects and the names of what
//! was taken back.

use std::collections::{BTreeMap, BTreeSet};

use rusqlite::types::ValueRef;
use rusqlite::{Connection, OptionalExtension, Row, Rows, params};

use super::project::{Indexed, SubjectRow, deeds_of, each_subject, holder_and_lost};
use super::{Id, Result};

/// Whether a rebuild would give the tables as they are.
pub(super) fn tables_agree(conn: &Connection) -> Result<bool> {
    // In this order: what each slot holds is worked out from the writes, and from what of them is undone.
    Ok(writes_agree(conn)? && undone_agree(conn)? && slots_agree(conn)?)
}

/// Each write and each sign-off of the log has its row, and there is no other.
fn writes_agree(conn: &Connection) -> Result<bool> {
    let mut entries = conn.prepare("SELECT id, form, payload FROM entry")?;
    let mut written =
        conn.prepare("SELECT value, saw, kept FROM written WHERE subject = ?1 AND slot = ?2 AND entry = ?3")?;
    let mut signed = conn.prepare("SELECT detail FROM sign_off WHERE subject = ?1 AND step = ?2 AND entry = ?3")?;
    let mut rows = entries.query([])?;
    let mut count = 0_i64;
    while let Some(row) = rows.next()? {
        let entry: i64 = row.get(0)?;
        let mut slots = BTreeSet::new();
        for deed in &deeds_of(row.get(1)?, &row.get::<_, String>(2)?) {
            let (subject, slot) = (deed.subject(), deed.slot());
            let key = (subject, slot.clone());
            // Of two changes of one slot in one entry the first has the row.
            if !slots.insert(key) {
                continue;
            }
            count += 1;
            let same = match Indexed::of(deed) {
                Indexed::Written { value, saw, kept } => written
                    .query_row(params![subject, slot, entry], |row| {
                        Ok(is_text(row, 0, &value)?
                            && is_text(row, 1, &saw)?
                            && row.get::<_, i64>(2)? == i64::from(kept))
                    })
                    .optional()?,
                Indexed::SignOff { step, detail, .. } => {
                    signed.query_row(params![subject, step, entry], |row| is_text(row, 0, &detail)).optional()?
                }
            };
            if same != Some(true) {
                return Ok(false);
            }
        }
    }
    let all: i64 =
        conn.query_row("SELECT (SELECT count(*) FROM written) + (SELECT count(*) FROM sign_off)", [], |row| {
            row.get(0)
        })?;
    Ok(all == count)
}

/// A group is undone where an undo that is not undone itself names it.
fn undone_agree(conn: &Connection) -> Result<bool> {
    let mut undos = conn.prepare("SELECT undoes, grp FROM entry WHERE undoes IS NOT NULL")?;
    let mut by_target: BTreeMap<Id, Vec<Id>> = BTreeMap::new();
    for undo in undos.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))? {
        let (target, group) = undo?;
        by_target.entry(target).or_default().push(group);
    }
    let mut found: BTreeMap<Id, bool> = BTreeMap::new();
    for target in by_target.keys() {
        is_undone(*target, &by_target, &mut found);
    }
    // An undo may have come in before what it undoes.
    let mut is_here = conn.prepare("SELECT EXISTS (SELECT 1 FROM entry WHERE grp = ?1)")?;
    let mut want = BTreeSet::new();
    for (group, undone) in found {
        if undone && is_here.query_row([group], |row| row.get(0))? {
            want.insert(group);
        }
    }
    let mut stands = conn.prepare("SELECT e.grp FROM undone u JOIN entry e ON e.id = u.entry")?;
    let stands: BTreeSet<Id> = stands.query_map([], |row| row.get(0))?.collect::<rusqlite::Result<_>>()?;
    let rows: i64 = conn.query_row("SELECT count(*) FROM undone", [], |row| row.get(0))?;
    Ok(stands == want && usize::try_from(rows) == Ok(want.len()))
}

/// Worked out from the last undo back, without recursion, however long the line. A hash can only name an older one; in a file
/// that somebody made up a line may lead back to itself, and ends there.
fn is_undone(group: Id, by_target: &BTreeMap<Id, Vec<Id>>, found: &mut BTreeMap<Id, bool>) {
    let (mut open, mut met) = (vec![group], BTreeSet::from([group]));
    while let Some(group) = open.last().copied() {
        let undos = by_target.get(&group).map(Vec::as_slice).unwrap_or_default();
        let unknown: Vec<Id> =
            undos.iter().copied().filter(|undo| !found.contains_key(undo) && met.insert(*undo)).collect();
        if unknown.is_empty() {
            found.insert(group, undos.iter().any(|undo| found.get(undo) == Some(&false)));
            open.pop();
        } else {
            open.extend(unknown);
        }
    }
}

/// Each subject, field and lost value is the one that its writes come to, and there is no other.
fn slots_agree(conn: &Connection) -> Result<bool> {
    let mut subjects =
        conn.prepare("SELECT id, kind, job, parent, sort_key, made, removed FROM subject ORDER BY id")?;
    let mut fields = conn.prepare("SELECT subject, name, value, kept, entry FROM field ORDER BY subject, name")?;
    let mut clashes = conn.prepare("SELECT subject, name, lost, value FROM clash ORDER BY subject, name, lost")?;
    let (mut subjects, mut fields, mut clashes) = (subjects.query([])?, fields.query([])?, clashes.query([])?);
    let mut agree = true;
    each_subject(conn, |subject, all| {
        if !agree {
            return Ok(());
        }
        if let Some(want) = SubjectRow::of(subject, &all.made, &all.removed) {
            agree &= next_is(&mut subjects, |row| {
                let stands = SubjectRow {
                    id: row.get(0)?,
                    kind: row.get(1)?,
                    job: row.get(2)?,
                    parent: row.get(3)?,
                    sort_key: row.get(4)?,
                    made: row.get(5)?,
                    removed: row.get(6)?,
                };
                Ok(stands == want)
            })?;
        }
        for (name, writes) in &all.fields {
            let Some((holder, mut lost)) = holder_and_lost(writes) else { continue };
            agree &= next_is(&mut fields, |row| {
                Ok(row.get::<_, Id>(0)? == subject
                    && is_text(row, 1, name)?
                    && is_text(row, 2, &holder.value)?
                    && row.get::<_, i64>(3)? == i64::from(holder.kept)
                    && row.get::<_, i64>(4)? == holder.row)
            })?;
            lost.sort_unstable_by_key(|write| write.row);
            for lost in lost {
                agree &= next_is(&mut clashes, |row| {
                    Ok(row.get::<_, Id>(0)? == subject
                        && is_text(row, 1, name)?
                        && row.get::<_, i64>(2)? == lost.row
                        && is_text(row, 3, &lost.value)?)
                })?;
            }
        }
        Ok(())
    })?;
    Ok(agree && subjects.next()?.is_none() && fields.next()?.is_none() && clashes.next()?.is_none())
}

fn next_is(rows: &mut Rows<'_>, same: impl FnOnce(&Row<'_>) -> rusqlite::Result<bool>) -> Result<bool> {
    Ok(rows.next()?.map(same).transpose()? == Some(true))
}

fn is_text(row: &Row<'_>, at: usize, text: &str) -> rusqlite::Result<bool> {
    Ok(row.get_ref(at)? == ValueRef::Text(text.as_bytes()))
}

#[cfg(test)]
mod tests {
    use super::super::{Author, Change, Hash, Now, Op, SignOff, State, Store, Value};
    use super::*;

    fn id(n: u8) -> Id {
        Id::from_bytes([n; 16])
    }

    fn answer(store: &mut Store, ms: i64, changes: Vec<Change>) -> Id {
        let op = Op { kind: "answered".to_owned(), version: 1, job: Some(id(1)), args: Vec::new(), changes };
        let author = Author { signer: "Ada".to_owned(), program: "0".to_owned() };
        store.transact(&op, &author, Now { ms, utc_offset_minutes: 0 }, &[]).unwrap().group
    }

    fn undo(store: &mut Store, ms: i64, group: Id) -> Id {
        let author = Author { signer: "Ada".to_owned(), program: "0".to_owned() };
        store.undo(group, &author, Now { ms, utc_offset_minutes: 0 }, |_| None).unwrap().outcome.group
    }

    /// A book with rows in every table of the projection.
    fn book() -> Store {
        let make =
            |n: u8, parent| Change::Create { subject: id(n), kind: "wall".to_owned(), parent, sort_key: n.to_string() };
        let set = |n: u8, field: &str, value| Change::Set {
            subject: id(n),
            field: field.to_owned(),
            value: Value::Whole(value),
        };
        let sign = |n: u8| {
            Change::SignOff(SignOff {
                subject: id(n),
                step: "prime".to_owned(),
                state: State::Done,
                signer: "Ada".to_owned(),
                note: String::new(),
                reason: String::new(),
                measured: Some(Value::Absent),
                photo: None,
                detail_hash: Hash::NONE,
            })
        };
        let mut store = Store::in_memory().unwrap();
        answer(&mut store, 1_800_000_000_000, vec![make(1, None), make(2, Some(id(1))), make(3, Some(id(1)))]);
        let mut other = Store::in_memory().unwrap();
        other.take_in(&store.entries_since(&BTreeMap::new()).unwrap(), i64::MAX).unwrap();
        answer(&mut other, 1_800_000_000_001, vec![set(2, "width", 5), set(3, "width", 6)]);
        answer(&mut store, 1_800_000_000_002, vec![set(2, "width", 7), set(3, "width", 8), sign(2), sign(3)]);
        let keep = Change::Keep { subject: id(2), field: "cut".to_owned(), value: Value::Text("1".to_owned()) };
        answer(&mut store, 1_800_000_000_003, vec![keep, Change::Remove { subject: id(3) }]);
        let gone = answer(&mut store, 1_800_000_000_004, vec![set(2, "height", 9)]);
        let back = undo(&mut store, 1_800_000_000_005, gone);
        let again = undo(&mut store, 1_800_000_000_006, back);
        undo(&mut store, 1_800_000_000_007, again);
        store.take_in(&other.entries_since(&BTreeMap::new()).unwrap(), i64::MAX).unwrap();
        store
    }

    #[test]
    fn any_row_that_is_changed_gone_or_too_many_is_noticed() {
        let store = book();
        let conn = &store.conn;
        assert!(tables_agree(conn).unwrap());
        conn.execute_batch("DROP TRIGGER sign_off_stays; PRAGMA foreign_keys = OFF;").unwrap();
        let differs = |sql: &str| {
            conn.execute_batch("BEGIN").unwrap();
            let changed = conn.execute(sql, []).unwrap();
            let agree = tables_agree(conn).unwrap();
            conn.execute_batch("ROLLBACK").unwrap();
            assert!(changed > 0 && !agree, "{sql}");
        };
        let all = [
            ("written", "subject slot entry value saw kept"),
            ("undone", "entry"),
            ("subject", "id kind job parent sort_key made removed"),
            ("field", "subject name value kept entry"),
            ("sign_off", "subject step entry detail"),
            ("clash", "subject name lost value"),
        ];
        for (table, columns) in all {
            let columns: Vec<&str> = columns.split(' ').collect();
            let rows = format!("SELECT count(*) FROM {table}");
            let rows: usize = conn.query_row(&rows, [], |row| row.get::<_, i64>(0)).unwrap().try_into().unwrap();
            assert!(rows >= 2, "{table}");
            for at in 0..rows {
                let one = columns.iter().map(|name| format!("({name})")).collect::<Vec<_>>().join(", ");
                let here = format!("({one}) IS (SELECT {one} FROM {table} LIMIT 1 OFFSET {at})");
                differs(&format!("DELETE FROM {table} WHERE {here}"));
                for column in &columns {
                    let others: &[&str] = match *column {
                        "subject" | "id" | "job" | "parent" => &["CAST(x'63636363636363636363636363636363' AS BLOB)"],
                        "entry" | "made" | "lost" => &["1"],
                        "removed" => &["iif(removed IS NULL, 1, NULL)"],
                        // Not only what it is not, but what is neither.
                        "kept" => &["1 - kept", "2 + kept"],
                        _ => &["CAST('x' || value_of AS TEXT)"],
                    };
                    for other in others {
                        let other = other.replace("value_of", column);
                        let same = format!("SELECT {column} IS {other} FROM {table} WHERE {here}");
                        if !conn.query_row(&same, [], |row| row.get::<_, bool>(0)).unwrap() {
                            differs(&format!("UPDATE OR REPLACE {table} SET {column} = {other} WHERE {here}"));
                        }
                    }
                }
            }
            let places = columns.iter().map(|name| match *name {
                "subject" | "id" | "job" | "parent" => "x'64646464646464646464646464646464'",
                "entry" | "made" | "removed" | "lost" => "1",
                "kept" => "0",
                _ => "'new'",
            });
            let places = places.collect::<Vec<_>>().join(", ");
            differs(&format!("INSERT INTO {table} VALUES ({places})"));
        }
    }

    #[test]
    fn a_line_of_undos_that_leads_back_to_itself_ends() {
        let by_target = BTreeMap::from([(id(1), vec![id(2)]), (id(2), vec![id(1)])]);
        let mut found = BTreeMap::new();
        is_undone(id(1), &by_target, &mut found);
        assert_eq!(found.len(), 2);
    }
}
