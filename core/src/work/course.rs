use std::sync::Arc;

use crate::book::{Field, Record};
use crate::measure::Length;
use crate::siding::{CourseLine, WallLine};

/// What the tape read of a course that hangs, and the lines that were planned from there.
#[derive(Clone, Debug)]
pub struct AsBuiltEntry {
    /// What the book has of it.
    pub record: Arc<Record>,
    /// The course, counted on the pole from one.
    pub course: usize,
    /// Its bottom edge, on the pole's scale.
    pub hung: WallLine,
    /// The lines above it; empty where no correction was possible.
    pub above: Vec<WallLine>,
}

impl AsBuiltEntry {
    /// An entry as the book has it; none where it does not say which course, or where it hangs.
    pub fn of(record: &Arc<Record>) -> Option<Self> {
        let course = record.whole(Field::Course).and_then(|course| usize::try_from(course).ok())?;
        let heights = record.lines();
        let line = |heights: &[Length]| match heights {
            [left, middle, right] => Some(WallLine { left: *left, middle: *middle, right: *right }),
            _ => None,
        };
        let above = heights.unwrap_or_default().chunks(3).filter_map(line).collect();
        Some(Self { course, hung: as_built_line(record)?, above, record: Arc::clone(record) })
    }
}

/// The line that was taped; without a middle it is straight.
pub fn as_built_line(record: &Record) -> Option<WallLine> {
    let (left, right) = (record.length(Field::Left)?, record.length(Field::Right)?);
    let middle = record.length(Field::Middle).unwrap_or_else(|| left + (right - left).half());
    Some(WallLine { left, middle, right })
}

/// The pole's lines with entries laid over them, the lowest course first.
pub fn merge_as_built<'a>(
    pole: &[Length],
    entries: impl Iterator<Item = (usize, WallLine, &'a [WallLine])>,
) -> Vec<WallLine> {
    let mut lines: Vec<WallLine> = pole.iter().copied().map(WallLine::level).collect();
    for (course, hung, above) in entries {
        if course == 0 || course >= lines.len() {
            continue;
        }
        lines.truncate(course - 1);
        lines.push(hung);
        if above.is_empty() {
            lines.extend(pole.iter().skip(course).copied().map(WallLine::level));
        } else {
            lines.extend(above);
        }
    }
    lines
}

/// A course of a wall, in the wall's own heights.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Course {
    /// Its board in the middle of the wall.
    pub middle: CourseLine,
    /// Where its bottom edge lies, before the first board is ripped.
    pub(super) line: WallLine,
    pub(super) width: Length,
}

impl Course {
    /// The bottom edge of its board at `x`: the line, or the base line where the first board is ripped.
    pub fn bottom_at(&self, x: Length) -> Length {
        if self.line.middle < self.middle.bottom { self.middle.bottom } else { self.line.at(x, self.width) }
    }

    /// The top edge of its board at `x`.
    pub fn top_at(&self, x: Length) -> Length {
        self.bottom_at(x) + self.middle.height
    }
}
