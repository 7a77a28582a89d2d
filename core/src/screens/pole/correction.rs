//! The lines that are planned from a course as it hangs.

use crate::book::{Field, Kind, Operation, Record, lines_value};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::siding::{AsBuilt, AsBuiltError, Correction, Needs, WallLine};
use crate::store::Value;
use crate::views::{Code, Problem};
use crate::work::{WallSite, Work, WorkError, planned};

use super::marks::marks;

/// The lines above a course that hangs, or why there are none.
pub(super) type FoundCorrection = Result<Correction, AsBuiltError>;

/// Plans the lines above a course that hangs, from the pole's own.
pub(super) fn correct(
    terms: &Terms<'_>,
    (work, wall): (&Work, &WallSite),
    pole_lines: &[Length],
    (course, as_built_line): (usize, WallLine),
) -> Result<FoundCorrection> {
    let pole = work.pole().ok_or_else(|| WorkError::first(Kind::Pole, Field::From))?;
    let need = |field| pole.length(field).ok_or_else(|| WorkError::first(Kind::Pole, field));
    let reveals = || pole_lines.windows(2).filter_map(|pair| pair.last().zip(pair.first()).map(|(b, a)| *b - *a));
    // The lap is kept everywhere, unless the pole itself does not keep it; and what the pole has is always allowed.
    let lapped = work.board_height()? - work.lap()?;
    let most = need(Field::RevealMax)?.min(lapped);
    let least = need(Field::RevealMin)?;
    let own = || reveals().take(pole_lines.len().saturating_sub(2));
    let request = AsBuilt {
        hung: as_built_line,
        from: pole_lines.first().copied().unwrap_or_default(),
        lines: pole_lines.iter().skip(course).copied().collect(),
        reveal_min: least.min(own().min().unwrap_or(least)),
        reveal_max: most.max(own().max().unwrap_or(most)),
        level_change: work.rules().get_length(keys::LEVEL_CHANGE_MOST)?,
        change_max: pole.length(Field::ChangeMax).filter(|_| pole.text(Field::Mode) == Some("fit")),
        marks: marks(terms, work, wall.id())?,
        division: terms.division,
    };
    Ok(request.correct())
}

/// The lines that were found.
pub(super) fn lines(found: &FoundCorrection) -> Vec<WallLine> {
    found.as_ref().map(|correction| correction.lines.clone()).unwrap_or_default()
}

/// The answer with the lines that follow from an entry, or what it would need.
pub(super) fn keep(operation: Operation, entry: &Record, found: &FoundCorrection) -> Operation {
    let (lines, courses, needs) = match found {
        Ok(Correction { lines, courses, .. }) => (lines.as_slice(), Some(*courses), None),
        Err(AsBuiltError::NoCorrection(needs)) => (&[][..], None, Some(*needs)),
        Err(_) => (&[][..], None, None),
    };
    let Needs { level_change, reveals } = needs.unwrap_or(Needs { level_change: None, reveals: None });
    let lines = lines_value(lines.iter().flat_map(|line| line.heights()));
    let courses = courses.and_then(|count| i64::try_from(count).ok()).map_or(Value::Absent, Value::Whole);
    let length = |length: Option<Length>| length.map_or(Value::Absent, planned);
    let fields = [
        (Field::Lines, lines),
        (Field::Courses, courses),
        (Field::NeedChange, length(level_change)),
        (Field::NeedRevealMin, length(reveals.map(|(least, _)| least))),
        (Field::NeedRevealMax, length(reveals.map(|(_, most)| most))),
    ];
    let changed = fields.into_iter().filter(|(field, value)| match entry.written(*field) {
        Some(written) => written.value != *value,
        None => *value != Value::Absent,
    });
    operation.set_all(entry.id(), changed)
}

/// A course hangs between the line below it and the pole's line above it, else the tape or the course was misread.
pub(super) fn plausible(
    terms: &Terms<'_>,
    pole: &[Length],
    wall: &[WallLine],
    (course, as_built_line): (usize, WallLine),
) -> Result<()> {
    let at = course.checked_sub(1).filter(|at| at + 1 < pole.len());
    let Some((at, above)) = at.and_then(|at| Some((at, pole.get(at + 1).copied()?))) else {
        let most = i64::try_from(pole.len().saturating_sub(1)).unwrap_or(i64::MAX);
        let text = terms.phrase(key("pole-as-built-course"), &[("most", most.into())]);
        return Err(Problem::new(Code::Range, Field::Course.code(), text).into());
    };
    let below = match at.checked_sub(1).and_then(|at| wall.get(at)) {
        Some(line) => line.highest(),
        // Under the first course there is no other: it may be off by as much as it shows.
        None => pole.first().map_or(above, |own| *own + *own - above),
    };
    let WallLine { left, middle, right } = as_built_line;
    let heights = [(Field::Left, left), (Field::Middle, middle), (Field::Right, right)];
    match heights.into_iter().find(|(_, at)| *at <= below || *at >= above) {
        None => Ok(()),
        Some((field, _)) => {
            let args = [
                ("course", i64::try_from(course).unwrap_or(i64::MAX).into()),
                ("least", terms.shown(below).into()),
                ("most", terms.shown(above).into()),
            ];
            Err(Problem::new(Code::Range, field.code(), terms.phrase(key("pole-as-built-far"), &args)).into())
        }
    }
}
