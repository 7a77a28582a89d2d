//! From the line as it was hung back to level: the rest of a wall's course lines, planned again.
//!
//! Out of level is worked out over several courses: in one course the reveals at the left end, in the middle and at the
//! right end may differ by a set change only. The line is level again after the fewest courses that this and the limits
//! of the reveals allow; from there on the pole is fitted again ([`super::fit`]), to its marks and, with a small part of
//! their weight, to the lines that the other walls keep, so that corners meet again.
//!
//! That the courses are the fewest rests on one fact about whole numbers. Over `k` courses, `S` divisions at one place
//! are shared out as `floor((S + i) / k)`, `i = 0 .. k - 1`, which adds up to `S` (Hermite's identity). No share leaves
//! the limits if `k * least <= S <= k * most`, and two places' shares in one course differ by at most
//! `ceil(|S - T| / k)`: no more than the change if `|S - T| <= k * change`. Both are necessary, too. Only the first
//! course above readings that lie between two marks of the tape is looked for one by one.

use thiserror::Error;

use super::mark::{Mark, MarkResult, Want};
use super::pole::{Mode, Pole, PoleError, PoleRequest};
use super::wall_line::WallLine;
use crate::measure::{Division, Length, Rounding};

/// How many times more a mark counts than a line of the other walls.
const MARK_OVER_LINE: u16 = 64;

/// Of the heights at which the line may be level again, so many are tried: those nearest to the pole's own line.
const TRIED: usize = 64;

/// What the rest of a wall's lines are planned from. Heights are on the pole's scale.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AsBuilt {
    /// The line of the last course as it was hung: its bottom edge.
    pub hung: WallLine,
    /// The pole's start: lines lie on marks of the tape above it.
    pub from: Length,
    /// The pole's lines above that course, ascending; the last one is the end.
    pub lines: Vec<Length>,
    /// The least reveal, anywhere on the wall.
    pub reveal_min: Length,
    /// The greatest reveal, anywhere on the wall.
    pub reveal_max: Length,
    /// By how much the reveals of one course may differ along the wall.
    pub level_change: Length,
    /// The greatest difference between neighbouring reveals once the lines are level; `None` is no limit.
    pub change_max: Option<Length>,
    /// Heights to land on, or to stay clear of; those below the hung line say nothing any more.
    pub marks: Vec<Mark>,
    /// The smallest mark used on the tape.
    pub division: Division,
}

/// The lines above a course as it was hung.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Correction {
    /// The lines above it, ascending; the last one is the end, which does not move.
    pub lines: Vec<WallLine>,
    /// After how many courses the line is level again; zero where it is.
    pub courses: usize,
    /// How each mark above the hung line comes out, in the order of the request. The line is the nearest one's height
    /// in the middle, on the pole's scale; a mark is met where the line meets it all along the wall.
    pub marks: Vec<MarkResult>,
}

/// What would make a correction possible; each by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Needs {
    /// The least change along one course that is enough, where that alone is.
    pub level_change: Option<Length>,
    /// The least and the greatest reveal that are enough, each wider by the same and by no more than a quarter of the
    /// least reveal, where those alone are.
    pub reveals: Option<(Length, Length)>,
}

/// Why there is no correction.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum AsBuiltError {
    /// The lines do not ascend, or there are none.
    #[error("the lines above the course do not ascend")]
    Lines,
    /// The hung line is not below the end.
    #[error("the line as hung is not below the end")]
    AboveEnd,
    /// A limit under zero, a least reveal that is not over zero, or one over the greatest.
    #[error("the limits must be at least zero, and the least reveal between zero and the greatest")]
    Limits,
    /// Nothing within the limits leads back to level and up to the end.
    #[error("no lines within the limits lead back to level: {0:?}")]
    NoCorrection(Needs),
    /// The rest of the pole cannot be fitted.
    #[error(transparent)]
    Pole(#[from] PoleError),
}

impl AsBuilt {
    /// The lines above the hung one.
    ///
    /// A last course thinner than the least reveal is what was left on the pole: it stays, and the course below it ends
    /// where it did.
    ///
    /// # Errors
    /// [`AsBuiltError`]; where the limits are too narrow it says what would be enough.
    pub fn correct(&self) -> Result<Correction, AsBuiltError> {
        let search = Search::new(self)?;
        match search.courses() {
            Some(courses) => search.best(courses),
            None => Err(AsBuiltError::NoCorrection(search.needs())),
        }
    }
}

/// The request in whole divisions above the pole's start.
#[derive(Clone, Copy)]
struct Search<'a> {
    asked: &'a AsBuilt,
    least: i64,
    most: i64,
    /// The change along one course.
    change: i64,
    /// The highest line that can move, or the end.
    end: i64,
    /// A thin last course above that.
    strip: Option<Length>,
}

impl<'a> Search<'a> {
    fn new(asked: &'a AsBuilt) -> Result<Self, AsBuiltError> {
        let ascending = asked.lines.is_sorted_by(|a, b| a < b);
        let &last = asked.lines.last().filter(|_| ascending).ok_or(AsBuiltError::Lines)?;
        if asked.hung.highest() >= last {
            return Err(AsBuiltError::AboveEnd);
        }
        let negative = [Some(asked.level_change), asked.change_max].into_iter().flatten().any(Length::is_negative);
        if negative || !asked.reveal_min.is_positive() || asked.reveal_min > asked.reveal_max {
            return Err(AsBuiltError::Limits);
        }
        let below = asked.lines.iter().rev().nth(1).copied();
        let thin = below.filter(|&below| last - below < asked.reveal_min && asked.hung.highest() < below);
        let steps = |length: Length, way| {
            asked.division.multiple_at(length).or_else(|| asked.division.count(length, way)).ok_or(PoleError::TooLarge)
        };
        Ok(Self {
            asked,
            least: steps(asked.reveal_min, Rounding::Up)?.max(1),
            most: steps(asked.reveal_max, Rounding::Down)?,
            change: steps(asked.level_change, Rounding::Down)?,
            end: steps(thin.unwrap_or(last) - asked.from, Rounding::Down)?,
            strip: thin.map(|_| last),
        })
    }

    /// The height of a step, on the pole's scale.
    fn height(&self, step: i64) -> Length {
        self.asked.division.multiple(step).map_or(self.asked.from, |above| self.asked.from + above)
    }

    /// The first step at or above a height.
    fn up(&self, at: Length) -> i64 {
        self.step(at, Rounding::Up)
    }

    /// The last step at or below a height.
    fn down(&self, at: Length) -> i64 {
        self.step(at, Rounding::Down)
    }

    fn step(&self, at: Length, way: Rounding) -> i64 {
        let above = at - self.asked.from;
        let division = self.asked.division;
        division.multiple_at(above).or_else(|| division.count(above, way)).unwrap_or(0)
    }

    /// The fewest courses after which the line may be level again, with the rest of the pole within the limits.
    fn courses(&self) -> Option<i64> {
        let room = self.end - self.down(self.asked.hung.lowest());
        let (out, asked) = (self.asked.hung.out_of_level(), self.asked);
        let spread = asked.level_change.min(asked.reveal_max - asked.reveal_min).nm();
        let fewest = match out.nm() {
            0 => 1,
            _ if spread == 0 => return None,
            out => out / spread + i64::from(out % spread != 0),
        };
        (fewest..=room / self.least).find(|&courses| self.levels(courses).any(|level| self.leads_on(courses, level)))
    }

    /// The steps at which the line may be level after so many courses, by the reveals alone.
    fn levels(&self, courses: i64) -> impl Iterator<Item = i64> + use<> {
        let hung = self.asked.hung;
        let from = self.down(hung.highest()) + courses.saturating_mul(self.least);
        let to = self.up(hung.lowest()) + courses.saturating_mul(self.most);
        from..=to.min(self.end)
    }

    fn leads_on(&self, courses: i64, level: i64) -> bool {
        self.joins(self.end - level) && self.first(courses, level).is_some()
    }

    /// Whether level reveals add up to so many steps: with shares that differ by one at most, unless all must be alike.
    fn joins(&self, steps: i64) -> bool {
        if steps == 0 {
            return true;
        }
        let alike = self.asked.change_max.is_some_and(|change| change < self.asked.division.length());
        let fewest = (steps + self.most - 1) / self.most.max(1);
        let most = steps / self.least;
        if alike { (fewest..=most).any(|courses| steps % courses == 0) } else { fewest <= most }
    }

    /// The first line above the hung one, where `courses` of them lead up to `level`: as near as may be to an equal
    /// share of the way at each place.
    fn first(&self, courses: i64, level: i64) -> Option<[i64; 3]> {
        let hung = self.asked.hung.heights();
        let (left, taper) = (courses - 1, (courses - 1).saturating_mul(self.change));
        let reach = hung.map(|at| {
            let low = self.up(at + self.asked.reveal_min).max(level - left.saturating_mul(self.most));
            let high = self.down(at + self.asked.reveal_max).min(level - left.saturating_mul(self.least));
            (low, high)
        });
        let wish = hung.map(|at| {
            let whole = self.height(level) - at;
            self.step(at + whole.scaled(1, courses).unwrap_or(whole), Rounding::Nearest)
        });
        let mut best: Option<(i64, [i64; 3])> = None;
        // One of the three has the least reveal of the course.
        for (anchor, &(low, high)) in hung.iter().zip(&reach) {
            for step in low..=high {
                let least = self.height(step) - *anchor;
                let mut ranges = hung.iter().zip(&reach).map(|(at, &(low, high))| {
                    let within = (self.up(*at + least), self.down(*at + least + self.asked.level_change));
                    (low.max(within.0), high.min(within.1))
                });
                let (Some(a), Some(b), Some(c)) = (ranges.next(), ranges.next(), ranges.next()) else { continue };
                let ranges = [a, b, c];
                let (floor, roof) = (a.0.max(b.0).max(c.0), a.1.min(b.1).min(c.1));
                if ranges.iter().any(|(low, high)| low > high) || floor - roof > taper {
                    continue;
                }
                // What is then still out of level must go in the courses that are left.
                let lowest = wish.into_iter().min().unwrap_or(floor).min(roof).max(floor - taper);
                let mut miss = 0;
                let mut line = [0; 3];
                for ((at, (low, high)), wish) in line.iter_mut().zip(ranges).zip(wish) {
                    *at = wish.min(high.min(lowest + taper)).max(low.max(lowest));
                    miss += (*at - wish).abs();
                }
                if best.is_none_or(|(least, _)| miss < least) {
                    best = Some((miss, line));
                }
            }
        }
        best.map(|(_, line)| line)
    }

    /// The lines from the first one up to the level one.
    fn transition(&self, courses: i64, level: i64) -> Option<Vec<WallLine>> {
        let mut line = self.first(courses, level)?;
        let start = line;
        let mut lines = vec![self.wall_line(line)];
        let left = courses - 1;
        for course in 0..left {
            for (at, start) in line.iter_mut().zip(start) {
                *at += (level - start + course).div_euclid(left);
            }
            lines.push(self.wall_line(line));
        }
        Some(lines)
    }

    fn wall_line(&self, [left, middle, right]: [i64; 3]) -> WallLine {
        WallLine { left: self.height(left), middle: self.height(middle), right: self.height(right) }
    }

    /// The best correction that is level after so many courses.
    fn best(&self, courses: i64) -> Result<Correction, AsBuiltError> {
        let own = usize::try_from(courses - 1).ok().and_then(|at| self.asked.lines.get(at)).copied();
        let own = own.map_or(self.end, |line| self.down(line));
        let mut levels: Vec<i64> = self.levels(courses).filter(|level| self.leads_on(courses, *level)).collect();
        levels.sort_by_key(|level| ((level - own).abs(), *level));
        let mut best: Option<(i128, Vec<WallLine>)> = None;
        for level in levels.into_iter().take(TRIED) {
            let Some(lines) = self.transition(courses, level) else { continue };
            let (cost, lines) = self.rest(lines)?;
            if best.as_ref().is_none_or(|(least, _)| cost < *least) {
                best = Some((cost, lines));
            }
        }
        let (_, mut lines) = best.ok_or(PoleError::NoLayout)?;
        lines.extend(self.strip.map(WallLine::level));
        let level = self.asked.hung.out_of_level() == Length::ZERO;
        let courses = if level { 0 } else { usize::try_from(courses).unwrap_or(usize::MAX) };
        let marks = self.above().map(|mark| judge(mark, self.asked.hung, &lines)).collect();
        Ok(Correction { lines, courses, marks })
    }

    /// The marks that still can be met.
    fn above(&self) -> impl Iterator<Item = &'a Mark> {
        let lowest = self.asked.hung.lowest();
        self.asked.marks.iter().filter(move |mark| mark.at >= lowest)
    }

    /// The level lines above a transition, fitted to the marks and the pole's own lines, and what all of it costs.
    fn rest(&self, mut lines: Vec<WallLine>) -> Result<(i128, Vec<WallLine>), AsBuiltError> {
        let (from, to) = (lines.last().map_or(self.asked.from, |line| line.left), self.height(self.end));
        let weighed = |mark: &Mark| Mark { weight: mark.weight.saturating_mul(MARK_OVER_LINE), ..mark.clone() };
        let (passed, ahead): (Vec<Mark>, Vec<Mark>) = self.above().map(weighed).partition(|mark| mark.at < from);
        let passed = passed.iter().map(|mark| (i128::from(mark.weight), judge(mark, self.asked.hung, &lines).miss));
        let mut cost: i128 = passed.map(|(weight, miss)| weight * miss.wide()).sum();
        // Lines of the other walls up to here are passed by, whatever the height at which this wall is level.
        let own = self.asked.lines.iter().skip(lines.len().saturating_sub(1));
        let own = own.map(|&at| Mark { name: String::new(), at, want: Want::Land, weight: 1 });
        let marks: Vec<Mark> = ahead.into_iter().chain(own).collect();
        if from < to {
            let pole = Pole::lay_out(&PoleRequest {
                from,
                to,
                mode: Mode::Fit { change_max: self.asked.change_max },
                reveal_max: self.asked.reveal_max,
                reveal_min: Some(self.asked.reveal_min),
                marks,
                division: self.asked.division,
            })?;
            cost += pole.cost;
            lines.extend(pole.lines.iter().map(|line| WallLine::level(from + *line)));
        } else {
            cost += super::mark::judge(&marks, from, &[]).1;
        }
        Ok((cost, lines))
    }

    fn needs(&self) -> Needs {
        let steps = |count: i64| self.asked.division.multiple(count).unwrap_or(Length::LIMIT);
        let out = self.up(self.asked.hung.highest()) - self.down(self.asked.hung.lowest()) + 1;
        let corrects = |asked: &AsBuilt| Search::new(asked).is_ok_and(|search| search.courses().is_some());
        let changed = |change: i64| corrects(&AsBuilt { level_change: steps(change), ..self.asked.clone() });
        let limits = |by: i64| (steps((self.least - by).max(1)), steps(self.most + by));
        let wider = |by: i64| {
            let (reveal_min, reveal_max) = limits(by);
            corrects(&AsBuilt { reveal_min, reveal_max, ..self.asked.clone() })
        };
        let level_change = least(self.change + 1, out, changed).map(steps);
        // Wider by more than a quarter of the least reveal it is no correction but another pole.
        let reveals = least(1, self.least / 4, wider).map(limits);
        Needs { level_change, reveals }
    }
}

/// The least whole number from the first to the last that is enough, where more is always enough, too.
fn least(mut from: i64, mut to: i64, enough: impl Fn(i64) -> bool) -> Option<i64> {
    if from > to || !enough(to) {
        return None;
    }
    while from < to {
        let middle = from + (to - from) / 2;
        if enough(middle) {
            to = middle;
        } else {
            from = middle + 1;
        }
    }
    Some(to)
}

/// How a mark comes out on lines that may be out of level: at the place where the nearest one serves it worst.
fn judge(mark: &Mark, hung: WallLine, lines: &[WallLine]) -> MarkResult {
    let miss = |line: &WallLine| {
        let away = line.heights().map(|at| (mark.at - at).abs());
        let [a, b, c] = away;
        let distance = match mark.want {
            Want::Land => a.max(b).max(c),
            // A line that crosses the mark's height touches it.
            Want::Clear(_) if line.lowest() <= mark.at && mark.at <= line.highest() => Length::ZERO,
            Want::Clear(_) => a.min(b).min(c),
        };
        (distance, Length::from_nm(mark.want.miss(distance.nm())))
    };
    let nearest = lines.iter().fold((hung, miss(&hung)), |best, line| {
        let found = miss(line);
        if found.0 < best.1.0 { (*line, found) } else { best }
    });
    MarkResult { name: mark.name.clone(), line: nearest.0.middle, miss: nearest.1.1 }
}

#[cfg(test)]
mod tests;
