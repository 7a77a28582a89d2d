//! The advice for a block round its hole, against trying every size and every sixteenth with a second reckoning of what
//! is cut: the table of notches of the trade written down as comparisons, without the core's notch.

use lapwright::measure::{Division, Length};
use lapwright::notch::{AdviceRequest, BlockSize, Gap, Overcut, PlacedBlock};
use proptest::prelude::*;

const SIXTEENTH: i64 = 1_587_500;

/// Everything in sixteenths of an inch.
#[derive(Clone, Debug)]
struct Case {
    centre: i64,
    placed: (i64, i64, i64),
    sizes: Vec<(i64, i64)>,
    width_least: i64,
    hole_least: i64,
    reveal: i64,
    height: i64,
    lap: i64,
    gap: i64,
    leg: i64,
    strip: i64,
}

/// Faults, boards, move, order of the size, hole.
type Score = (i64, i64, i64, usize, i64);

fn score(case: &Case, order: usize, (width, height): (i64, i64), hole: i64) -> Score {
    let (bottom, top) = (case.centre - hole, case.centre - hole + height);
    let (mut faults, mut boards) = (0, 0);
    let mut thin = |leg: i64, least: i64| faults += i64::from(0 < leg && leg < least);
    for course in 0..COURSES {
        let edge = case.reveal * course;
        let (under, over) = (bottom - edge, edge + case.height - top);
        if top <= edge || bottom >= edge + case.height {
            continue;
        }
        boards += 1;
        // A strip over the lap of the board below falls away; the first course has none below.
        let cut_to_bottom = under - case.gap <= 0 || (course > 0 && under < case.lap);
        let cut_to_top = over - case.gap <= 0;
        match (cut_to_bottom, cut_to_top) {
            (true, true) => {}
            (true, false) => thin(over - case.gap, case.leg),
            (false, true) => thin(under - case.gap, case.leg),
            (false, false) => {
                thin(over - case.gap, case.leg);
                thin(under - case.gap, case.leg);
            }
        }
    }
    // What shows: from the line below up to the block, and from the block up to the line above.
    if bottom >= 0 {
        thin(
            bottom.min(case.reveal * (COURSES - 1)).rem_euclid(case.reveal).max(bottom - case.reveal * (COURSES - 1)),
            case.strip,
        );
    }
    if top <= case.reveal * (COURSES - 1) {
        thin((-top).rem_euclid(case.reveal).max(-top), case.strip);
    }
    let (w, h, at) = case.placed;
    let moved = (hole - at).abs() + ((height - hole) - (h - at)).abs() + (width - w).abs();
    (faults, boards, moved, order, hole)
}

const COURSES: i64 = 8;

fn best(case: &Case) -> Option<Score> {
    let (width, height, hole) = case.placed;
    let now = score(case, 0, (width, height), hole);
    let sizes = [(width, height)].into_iter().chain(case.sizes.iter().copied()).enumerate();
    let all = sizes.filter(|(_, size)| size.0 >= case.width_least).flat_map(|(order, size)| {
        (case.hole_least..=size.1 - case.hole_least).map(move |hole| score(case, order, size, hole))
    });
    all.min().filter(|best| (best.0, best.1) < (now.0, now.1))
}

fn length(sixteenths: i64) -> Length {
    Length::from_nm(sixteenths * SIXTEENTH)
}

fn request(case: &Case) -> AdviceRequest {
    let size = |(width, height): (i64, i64)| BlockSize { width: length(width), height: length(height) };
    let (width, height, hole) = case.placed;
    AdviceRequest {
        centre: length(case.centre),
        placed: PlacedBlock { size: size((width, height)), hole: length(hole) },
        sizes: case.sizes.iter().copied().map(size).collect(),
        width_least: length(case.width_least),
        hole_least: length(case.hole_least),
        bottoms: (0..COURSES).map(|course| length(case.reveal * course)).collect(),
        board_height: length(case.height),
        lap: length(case.lap),
        // A saw that takes nothing leaves the marks exactly a gap away.
        gap: Gap { min: length(case.gap), max: length(case.gap) },
        overcut: Overcut::default(),
        leg_min: length(case.leg),
        strip_min: length(case.strip),
        division: Division::SIXTEENTH,
    }
}

fn cases() -> impl Strategy<Value = Case> {
    let block = (32_i64..160, 32_i64..160);
    let sizes = prop::collection::vec(block.clone(), 0..4);
    let boards = (64_i64..120, 8_i64..32, 0_i64..4);
    (100_i64..600, block, 0.0_f64..1.0, sizes, boards, (0_i64..48, 0_i64..48), (16_i64..80, 1_i64..16)).prop_map(
        |(centre, (width, height), at, sizes, (reveal, lap, gap), (leg, strip), (width_least, hole_least))| {
            let hole = hole_least + ((height - 2 * hole_least) as f64 * at) as i64;
            let placed = (width, height, hole);
            Case { centre, placed, sizes, width_least, hole_least, reveal, height: reveal + lap, lap, gap, leg, strip }
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, ..ProptestConfig::default() })]

    #[test]
    fn no_size_and_no_sixteenth_is_better_than_the_advice(case in cases()) {
        let advice = request(&case).advise().unwrap();
        let found = advice.map(|advice| {
            let steps = |length: Length| length.nm() / SIXTEENTH;
            let PlacedBlock { size, hole } = advice.block;
            (advice.seat.thin_legs + advice.seat.thin_strips, advice.seat.boards, (steps(size.width), steps(size.height)), steps(hole))
        });
        let sizes: Vec<(i64, i64)> =
            [(case.placed.0, case.placed.1)].into_iter().chain(case.sizes.iter().copied()).collect();
        let wanted = best(&case).map(|(faults, boards, _, order, hole)| (faults as usize, boards as usize, sizes[order], hole));
        prop_assert_eq!(found, wanted);
    }

    /// Between the marks of the tape nothing is gained that a sixteenth does not gain: four times as fine a grid.
    #[test]
    fn a_finer_grid_saves_no_board(case in cases()) {
        let coarse = request(&case);
        let fine = AdviceRequest { division: Division::new(SIXTEENTH, 4).unwrap(), ..coarse.clone() };
        // The offset of the marks is the same on both grids.
        prop_assume!(coarse.division.multiple_at(coarse.gap.min).is_some());
        let seat = |request: &AdviceRequest| request.advise().unwrap().map(|advice| (advice.seat.thin_legs + advice.seat.thin_strips, advice.seat.boards));
        prop_assert_eq!(seat(&fine), seat(&coarse));
    }
}
