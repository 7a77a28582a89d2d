//! The fitted story pole against plain enumeration: every way to share a small height is written down, each is judged
//! by itself, and the best of the list must be the pole that the dynamic program gives, reveal by reveal.
//!
//! The enumeration shares no code with the core but the plain types: its own division, its own rounding, its own
//! nearest line. Order of the aims: least sum of weight times miss, least sum of changes between neighbours, fewest
//! courses, lexicographically smallest reveals from the bottom.

use lapwright::measure::{Division, Length};
use lapwright::siding::{Mark, Mode, Pole, PoleError, PoleRequest, Want};
use proptest::prelude::*;

const INCH: i64 = 25_400_000;

#[derive(Clone, Debug)]
struct Case {
    /// The division as a fraction of nanometres.
    division: (i64, i64),
    from: i64,
    to: i64,
    least: Option<i64>,
    most: i64,
    change: Option<i64>,
    marks: Vec<(i64, Want, u16)>,
}

/// So many divisions, exact and then to the nearest nanometre (never negative here).
fn step(case: &Case, count: i64) -> i64 {
    let (numerator, denominator) = (i128::from(case.division.0) * i128::from(count), i128::from(case.division.1));
    ((2 * numerator + denominator) / (2 * denominator)) as i64
}

#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Score {
    cost: i128,
    changes: i64,
    courses: usize,
    reveals: Vec<i64>,
}

fn score(case: &Case, reveals: &[i64]) -> Score {
    let mut lines = vec![0];
    let mut count = 0;
    for reveal in reveals {
        count += reveal;
        lines.push(step(case, count));
    }
    let mut cost = 0;
    for (at, want, weight) in &case.marks {
        let distance = lines.iter().map(|line| (at - case.from - line).abs()).min().unwrap();
        let miss = match want {
            Want::Land => distance,
            Want::Clear(clear) => (clear.nm() - distance).max(0),
        };
        cost += i128::from(miss) * i128::from(*weight);
    }
    let changes = reveals.windows(2).map(|pair| (pair[0] - pair[1]).abs()).sum();
    Score { cost, changes, courses: reveals.len(), reveals: reveals.to_vec() }
}

/// Every list of reveals that keeps to the limits.
fn enumerate(case: &Case, left: i64, so_far: &mut Vec<i64>, each: &mut impl FnMut(&[i64])) {
    if left == 0 {
        if !so_far.is_empty() {
            each(so_far);
        }
        return;
    }
    for reveal in 1..=left {
        let length = step(case, reveal);
        let changes = so_far.last().map_or(0, |last| step(case, (reveal - last).abs()));
        if case.least.is_none_or(|least| length >= least)
            && length <= case.most
            && case.change.is_none_or(|change| changes <= change)
        {
            so_far.push(reveal);
            enumerate(case, left - reveal, so_far, each);
            so_far.pop();
        }
    }
}

fn best(case: &Case) -> Option<Score> {
    let mut total = 0;
    while step(case, total + 1) <= case.to - case.from {
        total += 1;
    }
    let mut best: Option<Score> = None;
    enumerate(case, total, &mut Vec::new(), &mut |reveals| {
        let score = score(case, reveals);
        if best.as_ref().is_none_or(|best| score < *best) {
            best = Some(score);
        }
    });
    best
}

fn request(case: &Case) -> PoleRequest {
    PoleRequest {
        from: Length::from_nm(case.from),
        to: Length::from_nm(case.to),
        mode: Mode::Fit { change_max: case.change.map(Length::from_nm) },
        reveal_max: Length::from_nm(case.most),
        reveal_min: case.least.map(Length::from_nm),
        marks: case
            .marks
            .iter()
            .map(|&(at, want, weight)| Mark { name: String::new(), at: Length::from_nm(at), want, weight })
            .collect(),
        division: Division::new(case.division.0, case.division.1).unwrap(),
    }
}

fn check(case: &Case) {
    match (best(case), Pole::lay_out(&request(case))) {
        (None, found) => assert_eq!(found, Err(PoleError::NoLayout), "{case:?}"),
        (Some(best), found) => {
            let pole = found.unwrap_or_else(|error| panic!("{error} where {best:?} exists: {case:?}"));
            let mut count = 0;
            let lines: Vec<i64> = best
                .reveals
                .iter()
                .map(|reveal| {
                    count += reveal;
                    step(case, count)
                })
                .collect();
            assert_eq!(pole.lines.iter().map(|line| line.nm()).collect::<Vec<_>>(), lines, "{best:?} {case:?}");
            assert_eq!(pole.cost, best.cost, "{case:?}");
        }
    }
}

/// A length of up to so many divisions, often on one, often halfway between two, seldom anywhere.
fn length((numerator, denominator): (i64, i64), divisions: std::ops::Range<i64>) -> impl Strategy<Value = i64> {
    let exact = move |halves: i64| {
        let n = i128::from(numerator) * i128::from(halves);
        let d = 2 * i128::from(denominator);
        ((2 * n + d).div_euclid(2 * d)) as i64
    };
    let anywhere = exact(2 * divisions.start)..exact(2 * divisions.end);
    prop_oneof![
        4 => divisions.clone().prop_map(move |count| exact(2 * count)),
        2 => (2 * divisions.start..2 * divisions.end).prop_map(exact),
        1 => anywhere,
    ]
}

fn case() -> impl Strategy<Value = Case> {
    let divisions = prop_oneof![
        4 => Just((INCH / 16, 1)),
        1 => Just((1_000_000, 1)),
        2 => Just((INCH, 128)),
        2 => Just((INCH, 48)),
    ];
    (divisions, 1_i64..15).prop_flat_map(|(division, total)| {
        let want = prop_oneof![
            Just(Want::Land),
            length(division, 0..9).prop_map(|clear| Want::Clear(Length::from_nm(clear))),
        ];
        let mark = (length(division, -4..total + 5), want, 0_u16..4);
        (
            length(division, -3..4),
            length(division, total..total + 1),
            proptest::option::of(length(division, 1..5)),
            length(division, 1..total + 2),
            proptest::option::of(length(division, 0..4)),
            proptest::collection::vec(mark, 0..6),
        )
            .prop_map(move |(from, span, least, most, change, marks)| {
                let marks = marks.into_iter().map(|(at, want, weight)| (at + from, want, weight)).collect();
                let most = most.max(least.unwrap_or(1)).max(1);
                Case {
                    division,
                    from,
                    to: from + span.max(1),
                    least: least.map(|least| least.max(1)),
                    most,
                    change,
                    marks,
                }
            })
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, ..ProptestConfig::default() })]

    #[test]
    fn the_fit_is_the_best_of_the_enumeration(case in case()) {
        check(&case);
    }
}

/// The kinds of case that a random one might miss, one by one.
#[test]
fn the_fit_is_the_best_in_the_corners() {
    let plain = Case { division: (1, 1), from: 0, to: 12, least: Some(2), most: 5, change: None, marks: Vec::new() };
    let land = |at, weight| (at, Want::Land, weight);
    let clear = |at, clear, weight| (at, Want::Clear(Length::from_nm(clear)), weight);
    let mut cases = vec![
        plain.clone(),
        // Nothing adds up: 7 from reveals of 4 or 5 alone.
        Case { to: 7, least: Some(4), ..plain.clone() },
        // Adds up, but not with equal neighbours.
        Case { to: 11, least: Some(3), most: 4, change: Some(0), ..plain.clone() },
        // Marks under the start and over the end change nothing but the cost.
        Case { marks: vec![land(-3, 2), land(20, 3), clear(-1, 4, 1), clear(13, 9, 1)], ..plain.clone() },
        // A clearance wider than any reveal: the nearest line alone counts, and it can only be placed halfway.
        Case { marks: vec![clear(6, 40, 1)], ..plain.clone() },
        // Weight zero decides nothing.
        Case { marks: vec![land(7, 0), clear(4, 3, 0)], ..plain.clone() },
        // Several marks in one course, on both sides of its middle and at it.
        Case { marks: vec![land(5, 1), land(6, 1), land(7, 2), clear(6, 1, 1)], ..plain.clone() },
        // A tie between poles that only the last aim parts.
        Case { to: 9, least: Some(4), ..plain.clone() },
        // A tie between a smaller and a greater next reveal: 4 3 5 and 4 5 3 miss nothing and change alike.
        Case { least: Some(3), marks: vec![land(4, 5), clear(8, 1, 5)], ..plain.clone() },
        // One course only.
        Case { to: 4, least: Some(4), ..plain.clone() },
        // The greatest reveal is over the height.
        Case { to: 8, least: None, most: 100, ..plain.clone() },
    ];
    // Every single mark at every height, landing and clear.
    for at in -2..15 {
        for change in [None, Some(0), Some(1)] {
            cases.push(Case { marks: vec![land(at, 1)], change, ..plain.clone() });
            cases.push(Case { marks: vec![clear(at, 2, 1)], change, ..plain.clone() });
        }
    }
    for case in &cases {
        check(case);
    }
}

/// Costs that only the wide integers hold give the same pole as costs that the narrow ones hold.
#[test]
fn a_heavy_weight_does_not_overflow() {
    let case = Case {
        division: (Length::NM_PER_INCH / 16, 1),
        from: 0,
        to: 12 * Length::NM_PER_INCH / 16,
        least: None,
        most: 5 * Length::NM_PER_INCH / 16,
        change: Some(2 * Length::NM_PER_INCH / 16),
        marks: (0..12)
            .map(|k| (k * Length::NM_PER_INCH / 16, Want::Clear(Length::from_nm(900_000_000_000_000 + k)), 1000))
            .collect(),
    };
    check(&case);
}
