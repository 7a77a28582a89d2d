use proptest::prelude::*;

use super::*;

fn inches(whole: i64, sixteenths: i64) -> Length {
    Length::from_inches_64(whole, 4 * sixteenths)
}

/// Courses of 7 in from zero; the third one was hung, so that the line at 14 in is read.
fn asked(left: (i64, i64), middle: (i64, i64), right: (i64, i64)) -> AsBuilt {
    let at = |(whole, parts): (i64, i64)| inches(whole, parts);
    AsBuilt {
        hung: WallLine { left: at(left), middle: at(middle), right: at(right) },
        from: Length::ZERO,
        lines: (3..=10).map(|course| inches(7 * course, 0)).collect(),
        reveal_min: inches(6, 0),
        reveal_max: inches(7, 4),
        level_change: inches(0, 2),
        change_max: None,
        marks: Vec::new(),
        division: Division::SIXTEENTH,
    }
}

#[test]
fn a_line_that_hangs_where_it_should_changes_nothing() {
    let asked = asked((14, 0), (14, 0), (14, 0));
    let correction = asked.correct().unwrap();
    assert_eq!(correction.courses, 0);
    let level: Vec<WallLine> = asked.lines.iter().copied().map(WallLine::level).collect();
    assert_eq!(correction.lines, level);
}

/// Half an inch out of level at an eighth a course: four courses, and the corners meet again there.
#[test]
fn half_an_inch_goes_in_four_courses_of_an_eighth() {
    let correction = asked((14, 4), (14, 0), (13, 12)).correct().unwrap();
    assert_eq!(correction.courses, 4);
    let out: Vec<Length> = correction.lines.iter().map(|line| line.out_of_level()).collect();
    assert_eq!(out[..4], [inches(0, 6), inches(0, 4), inches(0, 2), Length::ZERO]);
    assert_eq!(correction.lines[3], WallLine::level(inches(42, 0)));
    assert_eq!(correction.lines.last(), Some(&WallLine::level(inches(70, 0))));
}

#[test]
fn a_sill_is_met_where_the_line_is_level_in_time() {
    let mut asked = asked((14, 2), (14, 1), (14, 0));
    let mark = |at| Mark { name: "Sill".to_owned(), at, want: Want::Land, weight: 1 };
    asked.marks = vec![mark(inches(5, 0)), mark(inches(35, 6))];
    let correction = asked.correct().unwrap();
    assert_eq!(correction.courses, 1);
    assert_eq!(correction.marks.len(), 1, "what is below the course is past");
    assert!(correction.marks[0].ok(), "{correction:?}");
    assert!(correction.lines.contains(&WallLine::level(inches(35, 6))));
    // Level again at the fourth course only, the same sill cannot be met all along the wall.
    asked.hung.left = inches(14, 8);
    let correction = asked.correct().unwrap();
    assert_eq!((correction.courses, correction.marks[0].ok()), (4, false));
}

#[test]
fn a_thin_last_course_of_gauge_blocks_stays_what_is_left() {
    let mut asked = asked((14, 2), (14, 1), (14, 0));
    asked.lines.push(inches(72, 0));
    let correction = asked.correct().unwrap();
    assert_eq!(correction.lines[7..], [WallLine::level(inches(70, 0)), WallLine::level(inches(72, 0))]);
}

#[test]
fn what_cannot_be_corrected_says_what_it_would_need() {
    // Two courses are left for half an inch: a quarter each would do, and no other reveal alone.
    let mut tight = asked((14, 8), (14, 4), (14, 0));
    tight.lines.truncate(2);
    let needs = |asked: &AsBuilt| match asked.correct() {
        Err(AsBuiltError::NoCorrection(needs)) => needs,
        other => panic!("{other:?}"),
    };
    assert_eq!(needs(&tight), Needs { level_change: Some(inches(0, 4)), reveals: None });
    tight.level_change = inches(0, 4);
    assert_eq!(tight.correct().unwrap().courses, 2);
    // A line that hangs an inch low, level, with one course to the end: only a greater reveal helps.
    let mut low = asked((13, 0), (13, 0), (13, 0));
    low.lines.truncate(1);
    assert_eq!(needs(&low), Needs { level_change: None, reveals: Some((inches(5, 4), inches(8, 0))) });
}

/// By hand: the line falls from 14 1/8 to 13 7/8 in and crosses the mark at 14 1/16 in halfway to the middle, though none
/// of its three readings lies there. It touches the mark, so that the whole inch is missing.
#[test]
fn a_sloping_line_that_crosses_a_height_to_stay_clear_of_touches_it() {
    let clear = |at, by| Mark { name: "Block".to_owned(), at, want: Want::Clear(by), weight: 1 };
    let mut asked = asked((14, 2), (14, 0), (13, 14));
    asked.marks = vec![
        clear(inches(14, 1), inches(1, 0)),
        clear(inches(13, 15), inches(1, 0)),
        clear(inches(14, 6), inches(1, 0)),
    ];
    let correction = asked.correct().unwrap();
    let missed: Vec<(Length, bool)> = correction.marks.iter().map(|mark| (mark.miss, mark.ok())).collect();
    // The third mark lies 1/4 in over the left end: 3/4 in are missing.
    assert_eq!(missed, [(inches(1, 0), false), (inches(1, 0), false), (inches(0, 12), false)]);
}

/// By hand: the wall hangs at 13 1/2 in, the lines above are 21 and 27 in, and the last course is as thin as the least
/// reveal allows, no thinner. It is a course like any other: 6 3/4 in and 6 3/4 in lead up, 7 1/2 and 6 in would not do.
#[test]
fn a_last_course_of_exactly_the_least_reveal_is_no_strip() {
    let mut asked = asked((13, 8), (13, 8), (13, 8));
    asked.lines = vec![inches(21, 0), inches(27, 0)];
    let lines = asked.correct().unwrap().lines;
    assert_eq!(lines.len(), 2);
    assert_eq!(lines[1], WallLine::level(inches(27, 0)));
    for (from, to) in [(asked.hung, lines[0]), (lines[0], lines[1])] {
        let reveal = to.left - from.left;
        assert!(asked.reveal_min <= reveal && reveal <= asked.reveal_max, "{reveal:?}");
    }
    // One nanometre more for the least reveal, and the last course is what was left: it stays, and nothing leads up to it.
    asked.reveal_min = inches(6, 0) + Length::from_nm(1);
    assert!(matches!(asked.correct(), Err(AsBuiltError::NoCorrection(_))));
}

#[test]
fn nonsense_is_refused() {
    let good = asked((14, 0), (14, 0), (14, 0));
    let wrong = |change: fn(&mut AsBuilt)| {
        let mut asked = good.clone();
        change(&mut asked);
        asked.correct().unwrap_err()
    };
    assert_eq!(wrong(|asked| asked.lines.clear()), AsBuiltError::Lines);
    assert_eq!(wrong(|asked| asked.lines.swap(0, 1)), AsBuiltError::Lines);
    assert_eq!(wrong(|asked| asked.hung.middle = inches(70, 0)), AsBuiltError::AboveEnd);
    assert_eq!(wrong(|asked| asked.level_change = inches(-1, 0)), AsBuiltError::Limits);
    assert_eq!(wrong(|asked| asked.reveal_min = Length::ZERO), AsBuiltError::Limits);
    assert_eq!(wrong(|asked| asked.reveal_max = inches(5, 0)), AsBuiltError::Limits);
}

proptest! {
    /// Whatever was hung: no course changes by more than allowed, no reveal leaves its limits, lines ascend to the same
    /// end, and they are level from the said course on.
    #[test]
    fn the_allowed_change_is_never_exceeded_and_the_line_ends_level(
        read in prop::array::uniform3(-24_i64..24),
        odd in 0_i64..1_587_500,
        change in 0_i64..6,
        neighbours in prop::option::of(0_i64..8),
        (least, most) in (88_i64..113, 112_i64..120),
        mark in 300_i64..1_000,
    ) {
        let at = |parts: i64| inches(14, parts) + Length::from_nm(odd);
        let [left, middle, right] = read.map(at);
        let asked = AsBuilt {
            hung: WallLine { left, middle, right },
            level_change: inches(0, change),
            change_max: neighbours.map(|change| inches(0, change)),
            reveal_min: inches(0, least),
            reveal_max: inches(0, most),
            marks: vec![Mark { name: String::new(), at: inches(0, mark), want: Want::Land, weight: 3 }],
            ..asked((14, 0), (14, 0), (14, 0))
        };
        let check = |asked: &AsBuilt, correction: &Correction| {
            let mut below = asked.hung;
            for (at, line) in correction.lines.iter().enumerate() {
                let reveals = [line.left - below.left, line.middle - below.middle, line.right - below.right];
                let (least, most) = (reveals.iter().min().unwrap(), reveals.iter().max().unwrap());
                prop_assert!(*most - *least <= asked.level_change, "course {at}: {reveals:?}");
                prop_assert!(asked.reveal_min <= *least && *most <= asked.reveal_max, "course {at}: {reveals:?}");
                prop_assert!(at + 1 < correction.courses || line.out_of_level() == Length::ZERO);
                below = *line;
            }
            prop_assert_eq!(below, WallLine::level(*asked.lines.last().unwrap()));
            Ok(())
        };
        match asked.correct() {
            Ok(correction) => check(&asked, &correction)?,
            Err(AsBuiltError::NoCorrection(needs)) => {
                // What is said to be enough is.
                if let Some(level_change) = needs.level_change {
                    let asked = AsBuilt { level_change, ..asked.clone() };
                    check(&asked, &asked.correct().unwrap())?;
                }
                if let Some((reveal_min, reveal_max)) = needs.reveals {
                    let asked = AsBuilt { reveal_min, reveal_max, ..asked };
                    check(&asked, &asked.correct().unwrap())?;
                }
            }
            Err(other) => prop_assert!(false, "{other}"),
        }
    }
}
