use crate::measure::Length;
use crate::screens::context::Terms;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::siding::{Corner, CourseLine, Obstacle, Run, WallLine};
use crate::store::Store;
use crate::wall::Outline;

use super::{Facts, Job, Wall};

/// What the tape read of a course that hangs, and the lines that were planned from there.
pub(crate) struct AsBuiltFacts {
    /// What the book holds of it.
    pub(crate) facts: Facts,
    /// The course, counted on the pole from one.
    pub(crate) course: usize,
    /// Its bottom edge, on the pole's scale.
    pub(crate) hung: WallLine,
    /// The lines above it; empty where no correction was possible.
    pub(crate) above: Vec<WallLine>,
}

/// A course of a wall, in the wall's own heights.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Course {
    /// Its board in the middle of the wall.
    pub(crate) middle: CourseLine,
    /// Where its bottom edge lies, before the first board is ripped.
    line: WallLine,
    width: Length,
}

impl Wall {
    /// What was taped of its courses as they hang, the lowest course first; of one course the last word holds.
    pub(crate) fn as_built(&self, store: &Store) -> Kept<Vec<AsBuiltFacts>> {
        let read = |facts: Facts| {
            let course = facts.whole("course").and_then(|course| usize::try_from(course).ok())?;
            let hung = hung(&facts)?;
            let lines = facts.text("lines").unwrap_or_default();
            let heights: Vec<Length> =
                lines.split(',').filter_map(|nm| nm.trim().parse().ok()).map(Length::from_nm).collect();
            let line = |heights: &[Length]| match heights {
                [left, middle, right] => Some(WallLine { left: *left, middle: *middle, right: *right }),
                _ => None,
            };
            let above = heights.chunks(3).filter_map(line).collect();
            Some(AsBuiltFacts { facts, course, hung, above })
        };
        let mut all: Vec<AsBuiltFacts> =
            Facts::children(store, self.id(), kinds::AS_BUILT)?.into_iter().filter_map(read).collect();
        all.sort_by_key(|entry| entry.course);
        Ok(all)
    }

    /// Its course lines on the pole's scale, the end included: the pole's own, and from a course that was taped as it
    /// hangs on those that were planned from there.
    pub(crate) fn lines(&self, store: &Store, pole: &[Length]) -> Kept<Vec<WallLine>> {
        let entries = self.as_built(store)?;
        Ok(overlaid(pole, entries.iter().map(|entry| (entry.course, entry.hung, entry.above.as_slice()))))
    }

    /// The lines of its courses at `x` from its left corner, on the pole's scale.
    pub(crate) fn lines_at(&self, store: &Store, pole: &[Length], x: Length, width: Length) -> Kept<Vec<Length>> {
        Ok(self.lines(store, pole)?.into_iter().map(|line| line.at(x, width)).collect())
    }

    /// Its courses in its own heights, out of level where they hang or are planned so.
    pub(crate) fn course_lines(
        &self,
        terms: &Terms<'_>,
        job: &Job,
        lines: &[WallLine],
        outline: &Outline,
    ) -> Kept<Vec<Course>> {
        let middles: Vec<Length> = lines.iter().map(|line| line.middle).collect();
        let (base, width) = (self.base(terms)?, outline.width());
        let course = |middle: CourseLine| {
            let at = usize::try_from(middle.course).ok()?.checked_sub(1)?;
            Some(Course { middle, line: lines.get(at)?.less(base), width })
        };
        Ok(self.courses(terms, job, &middles, outline)?.into_iter().filter_map(course).collect())
    }
}

impl Course {
    /// The bottom edge of its board at `x`: the line, or the base line where the first board is ripped.
    pub(crate) fn bottom_at(&self, x: Length) -> Length {
        if self.line.middle < self.middle.bottom { self.middle.bottom } else { self.line.at(x, self.width) }
    }

    /// Its runs. Where the line is out of level the board's edges meet a rake where they really lie: the wall is
    /// sheared until the line is level, which moves no point to the left or right, and cut there.
    pub(crate) fn runs(&self, corners: &[Corner], obstacles: &[Obstacle]) -> Vec<Run> {
        if self.line.out_of_level() == Length::ZERO {
            return self.middle.runs(corners, obstacles);
        }
        let higher = |x: Length| self.bottom_at(x) - self.middle.bottom;
        let sheared: Vec<Corner> =
            bent(corners, self.width.half()).into_iter().map(|(x, y)| (x, y - higher(x))).collect();
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
fn bent(corners: &[Corner], x: Length) -> Vec<Corner> {
    let mut bent = Vec::new();
    for (&from, &to) in corners.iter().zip(corners.iter().cycle().skip(1)) {
        bent.push(from);
        if (from.0 < x && x < to.0) || (to.0 < x && x < from.0) {
            let rise = (to.1 - from.1).scaled((x - from.0).nm(), (to.0 - from.0).nm());
            bent.extend(rise.map(|rise| (x, from.1 + rise)));
        }
    }
    bent
}

/// The line that was taped; without a middle it is straight.
pub(crate) fn hung(facts: &Facts) -> Option<WallLine> {
    let (left, right) = (facts.length("left")?, facts.length("right")?);
    let middle = facts.length("middle").unwrap_or_else(|| left + (right - left).half());
    Some(WallLine { left, middle, right })
}

/// The pole's lines with entries laid over them, the lowest course first.
pub(crate) fn overlaid<'a>(
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
