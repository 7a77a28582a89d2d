//! The way back to level after a course that hangs out of level, against plain enumeration: every line that can be
//! reached is written down course by course, as three whole numbers, until one is level and leads on to the end.
//!
//! The enumeration shares no code with the core but the plain types. Checked are the fewest courses (and that there are
//! none where there is no correction) and, for those, the least miss of the marks above them.

use std::collections::BTreeSet;

use lapwright::measure::{Division, Length};
use lapwright::siding::{AsBuilt, AsBuiltError, Mark, WallLine, Want};
use proptest::prelude::*;

/// Half a millimetre: readings lie on these, lines on whole millimetres.
const HALF: i64 = 500_000;

#[derive(Clone, Debug)]
struct Case {
    /// In half millimetres.
    hung: [i64; 3],
    end: i64,
    least: i64,
    most: i64,
    taper: i64,
    neighbours: Option<i64>,
    marks: Vec<i64>,
}

/// Every line within the limits above one.
fn above(case: &Case, below: [i64; 3]) -> Vec<[i64; 3]> {
    let reach = |at: i64| (at + case.least..=at + case.most).filter(|line| line % 2 == 0 && *line <= case.end);
    let mut lines = Vec::new();
    for left in reach(below[0]) {
        for middle in reach(below[1]) {
            for right in reach(below[2]) {
                let reveals = [left - below[0], middle - below[1], right - below[2]];
                if reveals.iter().max().unwrap() - reveals.iter().min().unwrap() <= case.taper {
                    lines.push([left, middle, right]);
                }
            }
        }
    }
    lines
}

/// Every way up from a level line to the end.
fn ways(case: &Case, at: i64, before: Option<i64>, lines: &mut Vec<i64>, each: &mut impl FnMut(&[i64])) {
    if at == case.end {
        return each(lines);
    }
    for reveal in (case.least..=case.most).filter(|reveal| reveal % 2 == 0 && at + reveal <= case.end) {
        if before.zip(case.neighbours).is_none_or(|(before, change)| (before - reveal).abs() <= change) {
            lines.push(at + reveal);
            ways(case, at + reveal, Some(reveal), lines, each);
            lines.pop();
        }
    }
}

/// The fewest courses and the least sum of misses of the marks, each to its nearest level line.
fn enumerate(case: &Case) -> Option<(usize, i64)> {
    let mut reached = BTreeSet::from([case.hung]);
    for courses in 1.. {
        reached = reached.iter().flat_map(|line| above(case, *line)).collect();
        if reached.is_empty() {
            return None;
        }
        let mut least: Option<i64> = None;
        for [level, ..] in reached.iter().filter(|[a, b, c]| a == b && b == c) {
            ways(case, *level, None, &mut Vec::new(), &mut |lines| {
                let miss = |mark: &i64| lines.iter().chain([level]).map(|line| (mark - line).abs()).min().unwrap();
                let sum = case.marks.iter().map(miss).sum();
                least = Some(least.map_or(sum, |least| least.min(sum)));
            });
        }
        if let Some(least) = least {
            return Some((courses, least));
        }
    }
    None
}

fn request(case: &Case) -> AsBuilt {
    let at = |halves: i64| Length::from_nm(halves * HALF);
    let [left, middle, right] = case.hung.map(at);
    AsBuilt {
        hung: WallLine { left, middle, right },
        from: Length::ZERO,
        // The pole's own lines say nothing here but where the end is, so that the marks alone decide.
        lines: vec![at(case.end)],
        reveal_min: at(case.least),
        reveal_max: at(case.most),
        level_change: at(case.taper),
        change_max: case.neighbours.map(at),
        marks: case
            .marks
            .iter()
            .map(|&mark| Mark { name: String::new(), at: at(mark), want: Want::Land, weight: 1 })
            .collect(),
        division: Division::MILLIMETRE,
    }
}

fn check(case: &Case) -> Option<usize> {
    match (enumerate(case), request(case).correct()) {
        (None, Err(AsBuiltError::NoCorrection(_))) => None,
        (Some((courses, least)), Ok(correction)) => {
            let level = case.hung.iter().all(|at| *at == case.hung[0]);
            assert_eq!(correction.courses, if level { 0 } else { courses }, "{case:?}");
            let miss: i64 = correction.marks.iter().map(|mark| mark.miss.nm()).sum();
            assert_eq!(miss, least * HALF, "{case:?}: {correction:?}");
            Some(courses)
        }
        (best, found) => panic!("{best:?} but {found:?}: {case:?}"),
    }
}

fn cases() -> impl Strategy<Value = Case> {
    let limits = (5_i64..9, 0_i64..5, 0_i64..5, prop::option::of(0_i64..4));
    (prop::array::uniform3(0_i64..7), limits, 14_i64..26, prop::collection::vec(0.0_f64..1.0, 0..3)).prop_map(
        |(hung, (least, range, taper, neighbours), end, marks)| {
            let end = 2 * end;
            let most = least + range;
            // Marks that only level lines can be nearest to: above all that three courses reach.
            let above = (6 + 3 * most).min(end);
            let marks = marks.iter().map(|share| above + ((end - above) as f64 * share) as i64).collect();
            Case { hung, end, least, most, taper, neighbours, marks }
        },
    )
}

#[test]
fn fewest_courses_and_least_miss_of_random_lines() {
    let mut found = [0_u32; 2];
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig { cases: 400, ..ProptestConfig::default() });
    let seen = std::cell::RefCell::new(&mut found);
    runner
        .run(&cases(), |case| {
            let courses = check(&case);
            // More than three courses would leave the marks among sloped lines: their misses are then no sum of these.
            prop_assume!(courses.is_none_or(|courses| courses <= 3));
            seen.borrow_mut()[usize::from(courses.is_some())] += 1;
            Ok(())
        })
        .unwrap();
    assert!(found[0] > 20 && found[1] > 60, "both kinds must come up: {found:?}");
}

#[test]
fn half_an_inch_out_of_level_at_an_eighth_a_course_takes_four() {
    // In half millimetres: 12 mm out of level, 3 mm a course.
    let case = Case { hung: [24, 12, 0], end: 220, least: 38, most: 44, taper: 6, neighbours: None, marks: Vec::new() };
    let correction = request(&case).correct().unwrap();
    assert_eq!(correction.courses, 4);
}

/// The first course makes up for the odd reading, and only a second one of another reveal lets the rest be alike.
#[test]
fn a_change_finer_than_the_tape_still_leads_on_in_two_courses() {
    let case = Case { hung: [2, 2, 3], end: 38, least: 8, most: 10, taper: 1, neighbours: Some(0), marks: Vec::new() };
    assert_eq!(check(&case), Some(2));
}
