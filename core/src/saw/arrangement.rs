use std::collections::{BTreeSet, VecDeque};

use crate::measure::{Length, Rounding};

use super::cut_list::{CutList, LIMIT, beside};
use super::random::Random;
use super::{RunToCut, SawError, StudCenters};

/// One way to piece a run: the stud centres of its joints, ascending, and the pieces to cut, from left to right.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Arrangement {
    pub(super) joints: Vec<Length>,
    pub(super) pieces: Vec<Length>,
}

/// The places where a run may be jointed, and the lengths that its pieces may have.
#[derive(Clone, Debug)]
pub(super) struct Piecing {
    from: Length,
    to: Length,
    /// Allowed stud centres, ascending.
    joints: Vec<Length>,
    joint_gap: Length,
    shortest: Length,
    /// The longest distance that is still cut to a board's length.
    longest: Length,
    /// For the start and each joint: the joints (`first..end`) that a piece from there may reach.
    reach: Vec<(usize, usize)>,
    /// For the start and each joint: the fewest joints that are still needed to reach the end.
    need: Vec<usize>,
}

/// No way to the end.
const NEVER: usize = usize::MAX;

impl Piecing {
    /// Finds the fewest joints of one run for itself.
    pub(super) fn new(list: &CutList, index: usize, run: &RunToCut, longest: Length) -> Result<Self, SawError> {
        let (from, to) = (run.from + list.end_gap, run.to - list.end_gap);
        let studs = studs_between(list, from, to)?;
        let joints: Vec<Length> = studs.into_iter().filter(|stud| !avoided(list, run, *stud)).collect();
        if joints.is_empty() {
            return Err(SawError::NoStud { run: index });
        }
        let division = list.division;
        let next = division
            .count(longest, Rounding::Down)
            .and_then(|count| division.multiple(count.saturating_add(1)))
            .unwrap_or(longest);
        let mut piecing = Self {
            from,
            to,
            joints,
            joint_gap: list.joint_gap,
            shortest: division
                .round(list.piece_min, Rounding::Up)
                .max(division.round(Length::from_nm(1), Rounding::Up)),
            longest: (next - Length::from_nm(1)).max(longest),
            reach: Vec::new(),
            need: Vec::new(),
        };
        piecing.measure();
        if piecing.fewest() == NEVER {
            return Err(SawError::NoJoints { run: index });
        }
        Ok(piecing)
    }

    /// The fewest joints that this run can have.
    pub(super) fn fewest(&self) -> usize {
        self.need.first().copied().unwrap_or(NEVER)
    }

    /// Where a piece starts that begins at a knot: 0 is the run's start, `k` its joint `k - 1`.
    fn start(&self, knot: usize) -> Length {
        match knot.checked_sub(1).and_then(|joint| self.joints.get(joint)) {
            Some(joint) => beside(*joint, self.joint_gap).1,
            None => self.from,
        }
    }

    fn fits(&self, length: Length) -> bool {
        length >= self.shortest && length <= self.longest
    }

    fn reaches_end(&self, knot: usize) -> bool {
        self.fits(self.to - self.start(knot))
    }

    /// Fills `reach` and `need` from right to left, with a sliding minimum.
    fn measure(&mut self) {
        let count = self.joints.len();
        let (mut first, mut end) = (0, 0);
        for knot in 0..=count {
            let start = self.start(knot);
            let length = |joint: usize| self.joints.get(joint).map(|at| beside(*at, self.joint_gap).0 - start);
            while length(first).is_some_and(|length| length < self.shortest) {
                first += 1;
            }
            end = end.max(first);
            while length(end).is_some_and(|length| length <= self.longest) {
                end += 1;
            }
            self.reach.push((first, end));
        }
        let mut need = vec![NEVER; count + 1];
        // Joints with their needs, the nearest at the front; needs fall from back to front of what is still in reach.
        let mut window: VecDeque<(usize, usize)> = VecDeque::new();
        let mut added = count;
        for knot in (0..=count).rev() {
            let (first, end) = self.reach.get(knot).copied().unwrap_or((0, 0));
            while added > first {
                added -= 1;
                let value = need.get(added + 1).copied().unwrap_or(NEVER);
                while window.front().is_some_and(|(_, other)| *other >= value) {
                    window.pop_front();
                }
                window.push_front((added, value));
            }
            while window.back().is_some_and(|(joint, _)| *joint >= end) {
                window.pop_back();
            }
            let best = window.back().map_or(NEVER, |(_, value)| *value);
            let value = if self.reaches_end(knot) { 0 } else { best.saturating_add(1) };
            if let Some(slot) = need.get_mut(knot) {
                *slot = value;
            }
        }
        self.need = need;
    }

    /// Joints that may follow a knot if no more than `left` joints may still be set.
    fn next(&self, knot: usize, left: usize) -> impl Iterator<Item = usize> + '_ {
        let (first, end) = self.reach.get(knot).copied().unwrap_or((0, 0));
        (first..end).filter(move |joint| self.need.get(joint + 1).is_some_and(|need| *need != NEVER && *need < left))
    }

    /// One arrangement of at most `most` joints that keeps `stagger` from these joints, if there is one.
    pub(super) fn beside(&self, list: &CutList, others: &[Length], most: usize) -> Option<Arrangement> {
        let mut piecing = self.clone();
        piecing.joints.retain(|joint| others.iter().all(|other| (*joint - *other).abs() >= list.stagger));
        piecing.reach.clear();
        piecing.measure();
        if piecing.fewest() > most {
            return None;
        }
        let path = piecing.walk(most, &mut Random::new(others.len() as u64));
        Some(piecing.arrangement(list, &path))
    }

    fn arrangement(&self, list: &CutList, path: &[usize]) -> Arrangement {
        let joints: Vec<Length> = path.iter().filter_map(|joint| self.joints.get(*joint).copied()).collect();
        let starts = std::iter::once(self.from).chain(joints.iter().map(|at| beside(*at, self.joint_gap).1));
        let ends = joints.iter().map(|at| beside(*at, self.joint_gap).0).chain(std::iter::once(self.to));
        let pieces = starts.zip(ends).map(|(start, end)| list.cut(end - start)).collect();
        Arrangement { joints, pieces }
    }

    /// All arrangements of at most `most` joints, or, where there are more than `cap`, a spread sample of them and
    /// `false`.
    pub(super) fn arrangements(&self, list: &CutList, most: usize, cap: usize) -> (Vec<Arrangement>, bool) {
        let paths = self.paths(most, cap);
        if paths.len() <= cap {
            return (paths.iter().map(|path| self.arrangement(list, path)).collect(), true);
        }
        let mut random = Random::new(0x5eed);
        let mut sample: BTreeSet<Vec<usize>> = BTreeSet::new();
        for _ in 0..2 * cap {
            if sample.len() >= cap {
                break;
            }
            sample.insert(self.walk(most, &mut random));
        }
        (sample.iter().map(|path| self.arrangement(list, path)).collect(), false)
    }

    /// Joints of the arrangements, by depth first; stops after the first beyond `cap`.
    fn paths(&self, most: usize, cap: usize) -> Vec<Vec<usize>> {
        let mut paths = Vec::new();
        let mut path: Vec<usize> = Vec::new();
        // The next joint to try after each knot of the path.
        let mut cursors = vec![0];
        while let Some(cursor) = cursors.last_mut() {
            let knot = path.last().map_or(0, |joint| joint + 1);
            let from = *cursor;
            match self.next(knot, most.saturating_sub(path.len())).find(|joint| *joint >= from) {
                Some(joint) => {
                    *cursor = joint + 1;
                    path.push(joint);
                    cursors.push(0);
                    if self.reaches_end(joint + 1) {
                        paths.push(path.clone());
                        if paths.len() > cap {
                            return paths;
                        }
                    }
                }
                None => {
                    cursors.pop();
                    path.pop();
                }
            }
        }
        paths
    }

    fn walk(&self, most: usize, random: &mut Random) -> Vec<usize> {
        let mut path: Vec<usize> = Vec::new();
        loop {
            let knot = path.last().map_or(0, |joint| joint + 1);
            let next: Vec<usize> = self.next(knot, most.saturating_sub(path.len())).collect();
            let done = !path.is_empty() && self.reaches_end(knot);
            if next.is_empty() || (done && random.below(2) == 0) {
                return path;
            }
            path.push(next.get(random.below(next.len())).copied().unwrap_or(0));
        }
    }

    /// About how many operations [`Self::cheapest`] takes.
    pub(super) fn effort(&self, most: usize) -> u64 {
        let steps: u64 = self.reach.iter().map(|(first, end)| end.saturating_sub(*first) as u64).sum();
        10 * steps * (most as u64 + 1)
    }

    /// The least price of the pieces over all arrangements of at most `most` joints, at so much for each length.
    pub(super) fn cheapest(&self, list: &CutList, most: usize, price: impl Fn(Length) -> i64) -> i64 {
        let count = self.joints.len();
        let mut best = vec![i64::MAX; count + 1];
        if let Some(start) = best.first_mut() {
            *start = 0;
        }
        let mut least = i64::MAX;
        for used in 0..=most {
            let mut next = vec![i64::MAX; count + 1];
            for (knot, value) in best.iter().enumerate().filter(|(_, value)| **value != i64::MAX) {
                let start = self.start(knot);
                if used > 0 && self.reaches_end(knot) {
                    least = least.min(value.saturating_add(price(list.cut(self.to - start))));
                }
                for joint in self.next(knot, most - used) {
                    let end = self.joints.get(joint).map_or(start, |at| beside(*at, self.joint_gap).0);
                    let total = value.saturating_add(price(list.cut(end - start)));
                    if let Some(slot) = next.get_mut(joint + 1) {
                        *slot = (*slot).min(total);
                    }
                }
            }
            best = next;
        }
        least
    }
}

fn avoided(list: &CutList, run: &RunToCut, at: Length) -> bool {
    list.avoid.iter().any(|avoid| {
        avoid.from < at
            && at < avoid.to
            && avoid.wall.as_ref().is_none_or(|wall| *wall == run.wall)
            && avoid.courses.as_ref().is_none_or(|courses| courses.contains(&run.course))
    })
}

/// Stud centres strictly between two points, ascending.
fn studs_between(list: &CutList, from: Length, to: Length) -> Result<Vec<Length>, SawError> {
    match &list.studs {
        None => Ok(Vec::new()),
        Some(StudCenters::Listed(studs)) => {
            let inside: BTreeSet<Length> = studs.iter().copied().filter(|stud| from < *stud && *stud < to).collect();
            Ok(inside.into_iter().collect())
        }
        Some(StudCenters::Spaced { first, spacing }) => {
            let (step, span) = (spacing.nm().max(1), (to - from).nm());
            if span / step > LIMIT as i64 {
                return Err(SawError::TooMany { what: "studs" });
            }
            let offset = (from - *first).nm().rem_euclid(step);
            let start = from.nm() - offset + step;
            Ok((0..).map(|k| Length::from_nm(start + k * step)).take_while(|stud| *stud < to).collect())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn list(run: (i64, i64)) -> CutList {
        let mut list = CutList::new();
        list.runs.push(RunToCut {
            wall: String::new(),
            course: 1,
            from: Length::from_inches(run.0),
            to: Length::from_inches(run.1),
        });
        list.studs = Some(StudCenters::Spaced { first: Length::ZERO, spacing: Length::from_inches(16) });
        list
    }

    fn joints(list: &CutList, longest: i64, extra: usize) -> Vec<Vec<i64>> {
        let piecing = Piecing::new(list, 0, &list.runs[0], Length::from_inches(longest)).unwrap();
        let (found, complete) = piecing.arrangements(list, piecing.fewest() + extra, 1000);
        assert!(complete);
        found.iter().map(|a| a.joints.iter().map(|j| j.nm() / Length::NM_PER_INCH).collect()).collect()
    }

    #[test]
    fn joints_fall_on_studs_between_the_least_and_the_longest_piece() {
        let mut list = list((0, 100));
        assert_eq!(joints(&list, 60, 0), [[48]]);
        list.piece_min = Length::from_inches(50);
        assert_eq!(
            Piecing::new(&list, 0, &list.runs[0], Length::from_inches(60)).unwrap_err(),
            SawError::NoJoints { run: 0 }
        );
    }

    #[test]
    fn studs_repeat_to_the_left() {
        assert_eq!(joints(&list((-100, 0)), 60, 0), [[-48]]);
    }

    #[test]
    fn extra_joints_and_avoided_stretches() {
        let mut list = list((0, 64));
        assert_eq!(joints(&list, 48, 0), [[16], [32], [48]]);
        assert_eq!(joints(&list, 48, 1).len(), 6);
        list.avoid.push(super::super::JointFree {
            wall: None,
            from: Length::from_inches(16),
            to: Length::from_inches(40),
            courses: None,
        });
        // The interval is open: a joint may lie on its ends.
        assert_eq!(joints(&list, 48, 0), [[16], [48]]);
    }

    #[test]
    fn the_cheapest_way_agrees_with_all_ways() {
        let mut list = list((3, 200));
        list.joint_gap = Length::from_inches_64(0, 8);
        list.end_gap = Length::from_inches_64(0, 8);
        let piecing = Piecing::new(&list, 0, &list.runs[0], Length::from_inches(96)).unwrap();
        let price = |length: Length| (length.nm() % 7_919_000) + 1;
        for most in piecing.fewest()..piecing.fewest() + 3 {
            let (all, complete) = piecing.arrangements(&list, most, 100_000);
            assert!(complete);
            let least = all.iter().map(|a| a.pieces.iter().map(|p| price(*p)).sum::<i64>()).min().unwrap();
            assert_eq!(piecing.cheapest(&list, most, price), least);
        }
    }

    #[test]
    fn a_sample_is_made_of_true_arrangements() {
        let list = list((0, 960));
        let piecing = Piecing::new(&list, 0, &list.runs[0], Length::from_inches(144)).unwrap();
        let (sample, complete) = piecing.arrangements(&list, piecing.fewest() + 1, 50);
        assert!(!complete && !sample.is_empty() && sample.len() <= 50);
        for arrangement in sample {
            assert!(arrangement.pieces.iter().all(|p| *p <= Length::from_inches(144)));
            assert_eq!(Length::checked_sum(arrangement.pieces).unwrap(), Length::from_inches(960));
        }
    }
}
