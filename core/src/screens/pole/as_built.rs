use std::sync::Arc;

use crate::book::{Book, Field, Kind, Operation, OperationKind, Record, fields_of};
use crate::forms::ask::{self, accept, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::parts::given;
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::result::ActionResult;
use crate::siding::WallLine;
use crate::views::{AsBuiltLine, ChangedLine, Given, Note, Place, Source};
use crate::work::{AsBuiltEntry, WallSite, Work, WorkError, as_built_line, follow, merge_as_built};

use super::correction;

/// Every course that was taped as it hangs, wall by wall.
pub(super) fn lines(terms: &Terms<'_>, work: &Work) -> Result<Vec<AsBuiltLine>> {
    let Some(pole_lines) = work.lines() else { return Ok(Vec::new()) };
    let mut lines = Vec::new();
    for wall in work.walls() {
        let hanging = wall.lines().unwrap_or_default();
        for entry in &wall.as_built {
            let mut line = line(terms, (work, wall), pole_lines, entry)?;
            let below = entry.course.checked_sub(2).and_then(|at| hanging.get(at));
            if let Some(note) = below.map(|below| lap(terms, work, *below, entry)).transpose()?.flatten() {
                line.notes.insert(0, note);
            }
            lines.push(line);
        }
    }
    Ok(lines)
}

fn line(
    terms: &Terms<'_>,
    (work, wall): (&Work, &WallSite),
    pole_lines: &[Length],
    entry: &AsBuiltEntry,
) -> Result<AsBuiltLine> {
    let reading = |length: Length| terms.reading(length, Source::Planned, None);
    let taped = |field, length| terms.answer(&entry.record, field).unwrap_or_else(|| reading(length));
    let corrected = !entry.above.is_empty();
    let courses = entry.record.whole(Field::Courses).filter(|_| corrected).and_then(|count| u32::try_from(count).ok());
    let mut changed = Vec::new();
    for (at, line) in entry.above.iter().enumerate() {
        let planned = pole_lines.get(entry.course + at).copied();
        if planned.map(WallLine::level) != Some(*line) {
            changed.push(ChangedLine {
                course: u32::try_from(entry.course + at + 1).unwrap_or(u32::MAX),
                planned: planned.map(reading),
                left: reading(line.left),
                middle: reading(line.middle),
                right: reading(line.right),
            });
        }
    }
    let mut notes = Vec::new();
    let course = i64::try_from(entry.course).unwrap_or(i64::MAX);
    let out = entry.hung.out_of_level();
    if out == Length::ZERO {
        notes.push(Note::know("level", terms.phrase(key("pole-as-built-level"), &[("course", course.into())])));
    } else if let Some(courses) = courses {
        let change = work.rules().get_length(keys::LEVEL_CHANGE_MOST)?;
        let args = [
            ("course", course.into()),
            ("out", terms.shown(out).into()),
            ("courses", i64::from(courses).into()),
            ("change", terms.shown(change).into()),
        ];
        notes.push(Note::know("back-to-level", terms.phrase(key("pole-as-built-back"), &args)));
    }
    if corrected {
        if !changed.is_empty() {
            notes.push(Note::check("differs", terms.phrase(key("pole-as-built-differs"), &[])));
        }
        // The marks are judged anew: they may have moved since.
        if let Ok(Ok(correction)) = correction::correct(terms, (work, wall), pole_lines, (entry.course, entry.hung)) {
            for mark in correction.marks.iter().filter(|mark| !mark.ok()) {
                let args = [("name", mark.name.as_str().into()), ("miss", terms.shown(mark.miss).into())];
                notes.push(Note::check("mark-missed", terms.phrase(key("pole-as-built-missed"), &args)));
            }
        }
    } else {
        notes.push(Note::check("no-correction", terms.phrase(key("pole-as-built-none"), &[("course", course.into())])));
        needed(terms, &entry.record, &mut notes);
    }
    notes.sort_by_key(|note| note.level);
    Ok(AsBuiltLine {
        as_built: entry.record.id().to_string(),
        wall: wall.id().to_string(),
        wall_name: wall.name().to_owned(),
        course,
        planned: entry.course.checked_sub(1).and_then(|at| pole_lines.get(at)).copied().map(reading),
        left: taped(Field::Left, entry.hung.left),
        middle: taped(Field::Middle, entry.hung.middle),
        right: taped(Field::Right, entry.hung.right),
        out_of_level: reading(out),
        courses,
        changed,
        notes,
    })
}

/// What is wrong where a course that hangs laps too little over the one below it, at an end or in the middle.
fn lap(terms: &Terms<'_>, work: &Work, below: WallLine, entry: &AsBuiltEntry) -> Result<Option<Note>> {
    let (height, least) = (work.board_height()?, work.lap()?);
    let (low, hung) = (below, entry.hung);
    let laps = [(low.left, hung.left), (low.middle, hung.middle), (low.right, hung.right)]
        .map(|(below, above)| below + height - above);
    let Some(lap) = laps.into_iter().min().filter(|lap| *lap < least) else { return Ok(None) };
    let (code, key) = if lap.is_positive() {
        ("lap-short", key("pole-as-built-lap-short"))
    } else {
        ("no-lap", key("pole-as-built-no-lap"))
    };
    let course = i64::try_from(entry.course).unwrap_or(i64::MAX);
    let args = [("course", course.into()), ("lap", terms.shown(lap).into()), ("least", terms.shown(least).into())];
    let note = if lap.is_positive() { Note::check } else { Note::stop };
    Ok(Some(note(code, terms.phrase(key, &args))))
}

fn needed(terms: &Terms<'_>, record: &Record, notes: &mut Vec<Note>) {
    let change = record.length(Field::NeedChange);
    let reveals = record.length(Field::NeedRevealMin).zip(record.length(Field::NeedRevealMax));
    if let Some(change) = change {
        let args = [("change", terms.shown(change).into())];
        notes.push(Note::know("need-change", terms.phrase(key("pole-as-built-need-change"), &args)));
    }
    if let Some((least, most)) = reveals {
        let args = [("least", terms.shown(least).into()), ("most", terms.shown(most).into())];
        notes.push(Note::know("need-reveals", terms.phrase(key("pole-as-built-need-reveals"), &args)));
    }
    if change.is_none() && reveals.is_none() {
        notes.push(Note::know("need-more", terms.phrase(key("pole-as-built-need-more"), &[])));
    }
}

/// Keeps what the tape reads at a course that hangs; the planned boards above it follow, in the same answer.
pub(super) fn say(book: &mut Book, terms: &Terms<'_>, wall: &str, answers: &[Given]) -> Result<ActionResult> {
    let (work, wall) = lookup::wall(book, terms, wall)?;
    let pole_lines = work.need_lines()?;
    let fields = ask::fields(terms, fields_of(Kind::AsBuilt), &given(answers))?;
    let record = Arc::new(Record::unsaved(terms.fresh(0), Kind::AsBuilt, wall.id(), &fields));
    let course = record.whole(Field::Course).and_then(|course| usize::try_from(course).ok()).unwrap_or_default();
    let hung = as_built_line(&record).ok_or_else(|| WorkError::first(Kind::AsBuilt, Field::Left))?;
    let before = wall.lines().unwrap_or_default();
    correction::plausible(terms, pole_lines, before, (course, hung))?;

    let mut operation = Operation::new(OperationKind::AsBuilt, work.id(), [wall.name(), &course.to_string()]);
    // A course has one entry: the last word replaces it.
    let (old, mut entries): (Vec<_>, Vec<_>) = wall.as_built.iter().cloned().partition(|entry| entry.course == course);
    for old in old {
        operation = operation.remove(old.record.id());
    }
    let id = record.id();
    operation = operation.create(id, Kind::AsBuilt, Some(wall.id()), sort_key(terms, 0)).set_all(id, fields);
    let found = correction::correct(terms, (&work, &wall), pole_lines, (course, hung))?;
    operation = correction::keep(operation, &record, &found);
    let at = entries.partition_point(|entry| entry.course < course);
    entries.insert(at, AsBuiltEntry { record, course, hung, above: correction::lines(&found) });
    operation = follow(operation, (&work, &wall), (before, &merged(pole_lines, &entries)), terms.division)?;
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(Place::Pole { job: lookup::job_id(&work) }, group))
}

/// A course as it hangs was taken for another one, or taped wrongly: its entry goes, and the boards follow.
pub(super) fn remove(book: &mut Book, terms: &Terms<'_>, as_built: &str) -> Result<ActionResult> {
    let id = terms.id("as-built", as_built)?;
    let work = lookup::of(book, id, Kind::AsBuilt)?;
    let record = work.house().get(id, Kind::AsBuilt)?;
    let wall = work.wall(record.parent.unwrap_or(id))?;
    let pole_lines = work.need_lines()?;
    let left: Vec<AsBuiltEntry> = wall.as_built.iter().filter(|entry| entry.record.id() != id).cloned().collect();
    let course = record.whole(Field::Course).unwrap_or_default().to_string();
    let operation = Operation::new(OperationKind::AsBuiltRemoved, work.id(), [wall.name(), &course]).remove(id);
    let lines = (wall.lines().unwrap_or_default(), &*merged(pole_lines, &left));
    let operation = follow(operation, (&work, wall), lines, terms.division)?;
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(Place::Pole { job: lookup::job_id(&work) }, group))
}

/// Plans every wall's lines again where the pole's own lines change: what was taped stays, what follows from it is new.
pub(super) fn laid_out(
    mut operation: Operation,
    terms: &Terms<'_>,
    work: &Work,
    pole_lines: &[Length],
) -> Result<Operation> {
    for wall in work.walls().iter().filter(|wall| !wall.as_built.is_empty()) {
        let mut entries = wall.as_built.clone();
        for entry in &mut entries {
            let found = correction::correct(terms, (work, wall), pole_lines, (entry.course, entry.hung))?;
            entry.above = correction::lines(&found);
            operation = correction::keep(operation, &entry.record, &found);
        }
        let lines = (wall.lines().unwrap_or_default(), &*merged(pole_lines, &entries));
        operation = follow(operation, (work, wall), lines, terms.division)?;
    }
    Ok(operation)
}

fn merged(pole_lines: &[Length], entries: &[AsBuiltEntry]) -> Vec<WallLine> {
    merge_as_built(pole_lines, entries.iter().map(|entry| (entry.course, entry.hung, entry.above.as_slice())))
}
