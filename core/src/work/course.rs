use std::sync::Arc;

use crate::book::{Field, Record};
use crate::measure::Length;
use crate::siding::{Corner, CourseLine, Obstacle, Run, WallLine};

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
        let heights = lengths(record.text(Field::Lines).unwrap_or_default());
        let line = |heights: &[Length]| match heights {
            [left, middle, right] => Some(WallLine { left: *left, middle: *middle, right: *right }),
            _ => None,
        };
        let above = heights.unwrap_or_default().chunks(3).filter_map(line).collect();
        Some(Self { course, hung: as_built_line(record)?, above, record: Arc::clone(record) })
    }
}

/// Lengths as the book keeps several of them: nanometres with commas; none where one cannot be read.
pub fn lengths(text: &str) -> Option<Vec<Length>> {
    text.split(',').map(|nm| nm.trim().parse().ok().map(Length::from_nm)).collect()
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

    /// Its runs. Where the line is out of level the board's edges meet a rake where they really lie: the wall is
    /// sheared until the line is level, which moves no point to the left or right, and cut there.
    pub fn runs(&self, corners: &[Corner], obstacles: &[Obstacle]) -> Vec<Run> {
        if self.line.out_of_level() == Length::ZERO {
            return self.middle.runs(corners, obstacles);
        }
        let higher = |x: Length| self.bottom_at(x) - self.middle.bottom;
        let sheared: Vec<Corner> =
            split_at(corners, self.width.half()).into_iter().map(|(x, y)| (x, y - higher(x))).collect();
        // Whether an obstacle parts the course is asked where it stands.
        let moved = |obstacle: &Obstacle| {
            let by = higher(obstacle.left.least() + (obstacle.right.most() - obstacle.left.least()).half());
            Obstacle { bottom: obstacle.bottom - by, top: obstacle.top - by, ..*obstacle }
        };
        let obstacles: Vec<Obstacle> = obstacles.iter().map(moved).collect();
        self.middle.runs(&sheared, &obstacles)
    }
}

/// An outline with a corner wherever a side crosses `x`, where a course line may bend.
fn split_at(corners: &[Corner], x: Length) -> Vec<Corner> {
    let mut split = Vec::new();
    for (&from, &to) in corners.iter().zip(corners.iter().cycle().skip(1)) {
        split.push(from);
        if (from.0 < x && x < to.0) || (to.0 < x && x < from.0) {
            let rise = (to.1 - from.1).scaled((x - from.0).nm(), (to.0 - from.0).nm());
            split.extend(rise.map(|rise| (x, from.1 + rise)));
        }
    }
    split
}
