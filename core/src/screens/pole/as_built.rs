use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::screens::Done;
use crate::screens::ask::{self, Answer, accept, op, sort_key};
use crate::screens::context::Terms;
use crate::screens::kept::{AsBuiltFacts, Facts, Job, Wall, first, hung, overlaid};
use crate::screens::kinds;
use crate::screens::parts::given;
use crate::screens::trouble::Kept;
use crate::screens::wall::{follow, planned};
use crate::siding::{AsBuilt, AsBuiltError, Correction, Needs, WallLine};
use crate::store::{Change, Store, Value};
use crate::views::{AsBuiltLine, ChangedLine, Code, Given, Note, Place, Problem, Source};

use super::{pole, preview};

/// Every course that was taped as it hangs, wall by wall.
pub(super) fn lines(store: &Store, terms: &Terms<'_>, job: &Job) -> Kept<Vec<AsBuiltLine>> {
    let Some(pole_lines) = job.lines(store)? else { return Ok(Vec::new()) };
    let mut lines = Vec::new();
    for wall in Wall::of_job(store, job.id())? {
        let hanging = wall.lines(store, &pole_lines)?;
        for entry in &wall.as_built(store)? {
            let mut line = line(store, terms, (job, &wall), &pole_lines, entry)?;
            let below = entry.course.checked_sub(2).and_then(|at| hanging.get(at));
            if let Some(note) = below.map(|below| lap(terms, job, *below, entry)).transpose()?.flatten() {
                line.notes.insert(0, note);
            }
            lines.push(line);
        }
    }
    Ok(lines)
}

fn line(
    store: &Store,
    terms: &Terms<'_>,
    (job, wall): (&Job, &Wall),
    pole_lines: &[Length],
    entry: &AsBuiltFacts,
) -> Kept<AsBuiltLine> {
    let reading = |length: Length| terms.reading(length, Source::Planned, None);
    let taped = |field: &str, length: Length| entry.facts.reading(terms, field).unwrap_or_else(|| reading(length));
    let corrected = !entry.above.is_empty();
    let courses = corrected.then(|| entry.facts.whole("courses").and_then(|count| u32::try_from(count).ok())).flatten();
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
    let mut note = |code: &str, text: String| notes.push(Note { code: code.to_owned(), text });
    let course = i64::try_from(entry.course).unwrap_or(i64::MAX);
    let out = entry.hung.out_of_level();
    if out == Length::ZERO {
        note("level", terms.phrase(key("pole-as-built-level"), &[("course", course.into())]));
    } else if let Some(courses) = courses {
        let change = job.rules.get_length(keys::LEVEL_CHANGE_MOST)?;
        let args = [
            ("course", course.into()),
            ("out", terms.shown(out).into()),
            ("courses", i64::from(courses).into()),
            ("change", terms.shown(change).into()),
        ];
        note("back-to-level", terms.phrase(key("pole-as-built-back"), &args));
    }
    if corrected {
        if !changed.is_empty() {
            note("differs", terms.phrase(key("pole-as-built-differs"), &[]));
        }
        // The marks are judged anew: they may have moved since.
        if let Ok(request) = request(store, terms, job, wall, pole_lines, entry.course, entry.hung)
            && let Ok(correction) = request.correct()
        {
            for mark in correction.marks.iter().filter(|mark| !mark.ok()) {
                let args = [("name", mark.name.as_str().into()), ("miss", terms.shown(mark.miss).into())];
                note("mark-missed", terms.phrase(key("pole-as-built-missed"), &args));
            }
        }
    } else {
        note("no-correction", terms.phrase(key("pole-as-built-none"), &[("course", course.into())]));
        needed(terms, &entry.facts, &mut note);
    }
    Ok(AsBuiltLine {
        as_built: entry.facts.id().to_string(),
        wall: wall.id().to_string(),
        wall_name: wall.name().to_owned(),
        course,
        planned: entry.course.checked_sub(1).and_then(|at| pole_lines.get(at)).copied().map(reading),
        left: taped("left", entry.hung.left),
        middle: taped("middle", entry.hung.middle),
        right: taped("right", entry.hung.right),
        out_of_level: reading(out),
        courses,
        changed,
        notes,
    })
}

/// What is wrong where a course that hangs laps too little over the one below it, at an end or in the middle.
fn lap(terms: &Terms<'_>, job: &Job, below: WallLine, entry: &AsBuiltFacts) -> Kept<Option<Note>> {
    let (height, least) = (job.board_height(terms)?, job.lap()?);
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
    Ok(Some(Note { code: code.to_owned(), text: terms.phrase(key, &args) }))
}

fn needed(terms: &Terms<'_>, facts: &Facts, note: &mut impl FnMut(&str, String)) {
    let change = facts.length("need-change");
    let reveals = facts.length("need-reveal-min").zip(facts.length("need-reveal-max"));
    if let Some(change) = change {
        let args = [("change", terms.shown(change).into())];
        note("need-change", terms.phrase(key("pole-as-built-need-change"), &args));
    }
    if let Some((least, most)) = reveals {
        let args = [("least", terms.shown(least).into()), ("most", terms.shown(most).into())];
        note("need-reveals", terms.phrase(key("pole-as-built-need-reveals"), &args));
    }
    if change.is_none() && reveals.is_none() {
        note("need-more", terms.phrase(key("pole-as-built-need-more"), &[]));
    }
}

/// Keeps what the tape reads at a course that hangs; the planned boards above it follow, in the same answer.
pub(super) fn say(store: &mut Store, terms: &Terms<'_>, wall: &str, answers: &[Given]) -> Kept<Done> {
    let wall = Wall::of(store, terms, terms.id("wall", wall)?)?;
    let job = Job::of(store, terms, wall.job)?;
    let pole_lines = job.lines(store)?.ok_or_else(|| first(terms, "lines", key("screen-pole")))?;
    let fields = ask::fields(terms, kinds::AS_BUILT, &given(answers))?;
    let given: Vec<(&str, Value)> = fields.iter().map(|(field, value)| (*field, value.clone())).collect();
    let facts = Facts::imagined(terms.fresh(0), kinds::AS_BUILT, wall.id(), &given);
    let course = facts.whole("course").and_then(|course| usize::try_from(course).ok()).unwrap_or_default();
    let hung = hung(&facts).ok_or_else(|| first(terms, "left", key("ask-as-built-left")))?;
    let before = wall.lines(store, &pole_lines)?;
    plausible(terms, &pole_lines, &before, course, hung)?;

    let mut answer = op("as-built", Some(job.id()), [wall.name(), &course.to_string()]);
    // A course has one entry: the last word replaces it.
    let mut entries = wall.as_built(store)?;
    for old in entries.iter().filter(|old| old.course == course) {
        answer = answer.with(Change::Remove { subject: old.facts.id() });
    }
    entries.retain(|old| old.course != course);
    answer = answer.create(facts.id(), kinds::AS_BUILT, Some(wall.id()), sort_key(terms, 0));
    for (field, value) in fields {
        answer = answer.set(facts.id(), field, value);
    }
    let found = request(store, terms, &job, &wall, &pole_lines, course, hung)?.correct();
    let above = found.as_ref().map(|correction| correction.lines.clone()).unwrap_or_default();
    answer = keep(answer, &facts, &found);
    let at = entries.partition_point(|entry| entry.course < course);
    entries.insert(at, AsBuiltFacts { facts, course, hung, above });
    let after = overlaid(&pole_lines, entries.iter().map(|entry| (entry.course, entry.hung, entry.above.as_slice())));
    answer = follow(answer, store, terms, (&job, &wall), (&before, &after))?;
    let group = accept(store, terms, answer, &[])?.group;
    Ok(Done::at(Place::Pole { job: job.id().to_string() }, group))
}

/// A course as it hangs was taken for another one, or taped wrongly: its entry goes, and the boards follow.
pub(super) fn remove(store: &mut Store, terms: &Terms<'_>, as_built: &str) -> Kept<Done> {
    let facts = Facts::of(store, terms, terms.id("as-built", as_built)?, kinds::AS_BUILT)?;
    let wall = Wall::of(store, terms, facts.subject.parent.unwrap_or(facts.id()))?;
    let job = Job::of(store, terms, wall.job)?;
    let pole_lines = job.lines(store)?.ok_or_else(|| first(terms, "lines", key("screen-pole")))?;
    let before = wall.lines(store, &pole_lines)?;
    let entries = wall.as_built(store)?;
    let left = entries.iter().filter(|entry| entry.facts.id() != facts.id());
    let after = overlaid(&pole_lines, left.map(|entry| (entry.course, entry.hung, entry.above.as_slice())));
    let course = facts.whole("course").unwrap_or_default().to_string();
    let mut answer = op("as-built-removed", Some(job.id()), [wall.name(), &course]);
    answer = answer.with(Change::Remove { subject: facts.id() });
    answer = follow(answer, store, terms, (&job, &wall), (&before, &after))?;
    let group = accept(store, terms, answer, &[])?.group;
    Ok(Done::at(Place::Pole { job: job.id().to_string() }, group))
}

/// Plans every wall's lines again where the pole's own lines change: what was taped stays, what follows from it is new.
pub(super) fn laid_out(
    mut answer: Answer,
    store: &Store,
    terms: &Terms<'_>,
    job: &Job,
    (old, new): (&[Length], &[Length]),
) -> Kept<Answer> {
    for wall in Wall::of_job(store, job.id())? {
        let mut entries = wall.as_built(store)?;
        if entries.is_empty() {
            continue;
        }
        let before = wall.lines(store, old)?;
        for entry in &mut entries {
            let found = request(store, terms, job, &wall, new, entry.course, entry.hung)?.correct();
            entry.above = found.as_ref().map(|correction| correction.lines.clone()).unwrap_or_default();
            answer = keep(answer, &entry.facts, &found);
        }
        let after = overlaid(new, entries.iter().map(|entry| (entry.course, entry.hung, entry.above.as_slice())));
        answer = follow(answer, store, terms, (job, &wall), (&before, &after))?;
    }
    Ok(answer)
}

/// The lines that follow from an entry, or what it would need.
fn keep(answer: Answer, facts: &Facts, found: &Result<Correction, AsBuiltError>) -> Answer {
    let (lines, courses, needs) = match found {
        Ok(Correction { lines, courses, .. }) => (lines.as_slice(), Some(*courses), None),
        Err(AsBuiltError::NoCorrection(needs)) => (&[][..], None, Some(*needs)),
        Err(_) => (&[][..], None, None),
    };
    let Needs { level_change, reveals } = needs.unwrap_or(Needs { level_change: None, reveals: None });
    let heights = lines.iter().flat_map(|line| line.heights()).map(|at| at.nm().to_string()).collect::<Vec<_>>();
    let lines = if heights.is_empty() { Value::Absent } else { Value::Text(heights.join(",")) };
    let courses = courses.and_then(|count| i64::try_from(count).ok()).map_or(Value::Absent, Value::Whole);
    let length = |length: Option<Length>| length.map_or(Value::Absent, planned);
    let kept = [
        ("lines", lines),
        ("courses", courses),
        ("need-change", length(level_change)),
        ("need-reveal-min", length(reveals.map(|(least, _)| least))),
        ("need-reveal-max", length(reveals.map(|(_, most)| most))),
    ];
    let changed = kept.into_iter().filter(|(field, value)| match facts.field(field) {
        Some(kept) => kept.value != *value,
        None => *value != Value::Absent,
    });
    changed.fold(answer, |answer, (field, value)| answer.set(facts.id(), field, value))
}

/// A course hangs between the line below it and the pole's line above it, else the tape or the course was misread.
fn plausible(terms: &Terms<'_>, pole: &[Length], wall: &[WallLine], course: usize, hung: WallLine) -> Kept<()> {
    let at = course.checked_sub(1).filter(|at| at + 1 < pole.len());
    let Some((at, above)) = at.and_then(|at| Some((at, pole.get(at + 1).copied()?))) else {
        let most = i64::try_from(pole.len().saturating_sub(1)).unwrap_or(i64::MAX);
        let text = terms.phrase(key("pole-as-built-course"), &[("most", most.into())]);
        return Err(Problem::new(Code::Range, "course", text).into());
    };
    let below = match at.checked_sub(1).and_then(|at| wall.get(at)) {
        Some(line) => line.highest(),
        // Under the first course there is no other: it may be off by as much as it shows.
        None => pole.first().map_or(above, |own| *own + *own - above),
    };
    let wrong = [("left", hung.left), ("middle", hung.middle), ("right", hung.right)];
    match wrong.into_iter().find(|(_, at)| *at <= below || *at >= above) {
        None => Ok(()),
        Some((field, _)) => {
            let args = [
                ("course", i64::try_from(course).unwrap_or(i64::MAX).into()),
                ("least", terms.shown(below).into()),
                ("most", terms.shown(above).into()),
            ];
            Err(Problem::new(Code::Range, field, terms.phrase(key("pole-as-built-far"), &args)).into())
        }
    }
}

fn request(
    store: &Store,
    terms: &Terms<'_>,
    job: &Job,
    wall: &Wall,
    pole_lines: &[Length],
    course: usize,
    hung: WallLine,
) -> Kept<AsBuilt> {
    let facts = pole(store, job)?.ok_or_else(|| first(terms, "from", key("ask-pole-from")))?;
    let reveals = || pole_lines.windows(2).filter_map(|pair| pair.last().zip(pair.first()).map(|(b, a)| *b - *a));
    // The lap is kept everywhere, unless the pole itself does not keep it; and what the pole has is always allowed.
    let lapped = job.board_height(terms)? - job.lap()?;
    let most = facts.need(terms, "reveal-max", key("ask-reveal-max"))?.min(lapped);
    let least = facts.need(terms, "reveal-min", key("ask-reveal-min"))?;
    let own = || reveals().take(pole_lines.len().saturating_sub(2));
    Ok(AsBuilt {
        hung,
        from: pole_lines.first().copied().unwrap_or_default(),
        lines: pole_lines.iter().skip(course).copied().collect(),
        reveal_min: least.min(own().min().unwrap_or(least)),
        reveal_max: most.max(own().max().unwrap_or(most)),
        level_change: job.rules.get_length(keys::LEVEL_CHANGE_MOST)?,
        change_max: facts.length("change-max").filter(|_| facts.text("mode") == Some("fit")),
        marks: preview::marks(store, terms, job, Some(wall.id()))?,
        division: terms.division,
    })
}
