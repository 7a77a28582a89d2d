//! What codes ask for at the details that every house has, against the sizes that the program works out.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a check without its answer must fail")]

use lapwright::flashing::{Detail, DetailAssembly, DetailBoard, DetailRequest, Layer, WallRectangle, fall};
use lapwright::measure::Length;
use lapwright::rules::NailedTo::{AnyHeight, Design, Feet};
use lapwright::rules::{Exposure, Family, RuleSet, RuleUnit, keys, nailed_to};
use lapwright::steps::DetailSteps;
use lapwright::wall::{CornerKind, DetailPlace};

fn inch(whole: i64) -> Length {
    Length::from_inches(whole)
}

/// A wall 20 ft long and 8 ft high, with something on it at 60 to 100 in, up to 20 in.
fn detail(family: Family, place: DetailPlace, slope: Option<(Length, Length)>) -> Detail {
    let request = DetailRequest {
        assembly: DetailAssembly::new(place, CornerKind::Outside),
        board: DetailBoard {
            height: inch(8),
            thickness: Length::from_inches_64(0, 20),
            lap: Length::from_inches_64(1, 16),
        },
        wall: WallRectangle { left: inch(0), right: inch(240), bottom: inch(0), top: inch(96) },
        area: WallRectangle { left: inch(60), right: inch(100), bottom: inch(0), top: inch(20) },
        casing: inch(1),
        head: None,
        slope,
    };
    Detail::of(&RuleSet::of(family), request, inch(2)).unwrap()
}

fn size(detail: &Detail, layer: Layer, code: &str) -> Length {
    let sizes = detail.sizes(layer);
    sizes.iter().find(|(own, _)| *own == code).unwrap_or_else(|| panic!("no {code} in {sizes:?}")).1
}

/// IRC R905.2.8.3; DOE Building America Solution Center (read): step flashing 4 in up the wall and 4 in out, siding 1 in off
/// the roof, a kick-out at its foot, set before the first step piece. With the barrier's lap of 2 in a leg of 3 in would do.
#[test]
fn a_roof_against_a_wall_is_flashed_as_the_code_has_it() {
    let roof = detail(Family::UnitedStates, DetailPlace::RoofSide, Some((inch(6), inch(12))));
    assert_eq!(size(&roof, Layer::StepFlashing, "leg"), inch(4));
    assert_eq!(size(&roof, Layer::StepFlashing, "out"), inch(4));
    assert_eq!(size(&roof, Layer::Boards, "clear"), inch(1));
    let put: Vec<Layer> = roof.assembly().layers().to_vec();
    assert_eq!(put.first(), Some(&Layer::KickOut));
    let steps = DetailSteps { assembly: roof.assembly(), head_flashing: false, old_house: false, above_reach: false };
    let first = steps.steps().into_iter().find(|step| step.puts.is_some()).unwrap();
    assert_eq!(first.code, "roof-side/kick-out");
}

/// IRC R905.2.8.3 (read) has step flashing, a piece to a course of shingles, 5 in apart (common practice). Along ten feet of
/// run a roof is ten times the framing square's "length common rafters per foot run" long (quoted): 126.5, 134.2, 144.2 and
/// 169.7 in.
#[test]
fn a_roof_takes_a_step_flashing_a_course() {
    for (rise, tenths, pieces) in [(40, 1265, 26), (60, 1342, 27), (80, 1442, 29), (120, 1697, 34)] {
        let roof = detail(Family::UnitedStates, DetailPlace::RoofSide, Some((inch(rise), inch(120))));
        assert_eq!(roof.step_flashings(inch(5)), pieces, "{rise} in 120");
        // One more would fit no whole course.
        assert!((pieces - 1) * 50 < tenths && tenths <= pieces * 50);
    }
}

/// IRC R507.9.1.5 (read): flashing 2 in above a ledger, 4 in beyond its face, 1/4 in down. Siding that keeps 2 in clear of a
/// deck, under a barrier that laps 2 in (IRC R703.2), asks for a leg of 4 in; the code's least is never undercut.
#[test]
fn a_ledger_is_flashed_as_the_code_has_it() {
    let ledger = detail(Family::UnitedStates, DetailPlace::Ledger, None);
    let above = RuleSet::standard().get_length(keys::LEDGER_FLASHING_ABOVE).unwrap();
    let leg = size(&ledger, Layer::LedgerFlashing, "leg");
    assert_eq!((above, leg), (inch(2), inch(4)));
    assert_eq!(size(&ledger, Layer::LedgerFlashing, "beyond"), inch(4));
    assert_eq!(size(&ledger, Layer::LedgerFlashing, "down"), Length::from_inches_64(0, 16));
    assert_eq!(ledger.wall_layers().faults(), Ok(Vec::new()));
}

/// IRC R703.2 (read): 2 in at level laps, 6 in at upright ones; NBC 9.27.3.3 (read): 100 mm. Each country's details lap so.
#[test]
fn the_barrier_laps_as_the_code_has_it() {
    for (family, level, upright) in
        [(Family::UnitedStates, inch(2), inch(6)), (Family::Canada, Length::from_mm(100), Length::from_mm(100))]
    {
        let barrier = detail(family, DetailPlace::Barrier, None);
        assert_eq!(size(&barrier, Layer::BarrierCourse, "lap-level"), level);
        assert_eq!(size(&barrier, Layer::BarrierTape, "lap-upright"), upright);
        assert_eq!(size(&detail(family, DetailPlace::CornerLeft, None), Layer::CornerWrap, "wrap"), upright);
        // A wider lap makes every leg behind it longer: it sheds all the same.
        assert!(size(&detail(family, DetailPlace::RoofHead, None), Layer::Apron, "leg") >= level + inch(1));
    }
}

/// NCC 2022 Housing Provisions 7.5.6 (read): flashing 110 mm past an opening and 25 mm under the siding, pieces lapped by
/// 75 mm. Past a casing 3 1/2 in (88.9 mm) wide and its gap of 1/8 in the 25 mm ask for 117.075 mm from the frame.
#[test]
fn an_opening_is_flashed_past_its_frame() {
    let window = detail(Family::Australia, DetailPlace::Window, None);
    assert_eq!(size(&window, Layer::JambFlashing, "membrane-past"), Length::from_nm(117_075_000));
    let level = detail(Family::Australia, DetailPlace::RoofHead, None);
    assert_eq!(size(&level, Layer::Apron, "flashing-lap"), Length::from_mm(75));
    let far = RuleSet::of(Family::Australia).get_length(keys::FLASHING_BEYOND_OPENING).unwrap();
    assert!(far == Length::from_mm(110) && size(&window, Layer::JambFlashing, "membrane-past") >= far);
}

/// BRANZ (quoted): a pipe slopes 1.5 degrees outward. The tangent of 1.5 degrees is 0.026186 (tables), so that a metre falls
/// 26.186 mm.
#[test]
fn a_pipe_falls_outward_by_its_angle() {
    let rules = RuleSet::of(Family::NewZealand);
    let degrees = rules.get(keys::PIPE_SLOPE).unwrap().value_in(RuleUnit::Degree).unwrap();
    let fallen = fall(Length::from_mm(1000), &degrees).unwrap();
    assert!((fallen.nm() - 26_186_000).abs() < 1_000, "{fallen:?}");
}

/// IRC 2018 Table R703.3.2 (read): 115 mph not limited, 50 and 20 ft in exposures B, C and D; 120 mph not limited, 30 ft, designed;
/// 130 mph 60 ft, 15 ft, designed; 140 mph 35 ft, designed. A speed between two rows takes the faster one; over 140 mph
/// the nailing is designed.
#[test]
fn a_wind_between_two_rows_takes_the_faster() {
    let us = |speed, exposure| nailed_to(Family::UnitedStates, speed, exposure).unwrap();
    assert_eq!((us(90, Exposure::C), us(116, Exposure::C), us(121, Exposure::C)), (Feet(50), Feet(30), Feet(15)));
    assert_eq!((us(116, Exposure::B), us(125, Exposure::B), us(131, Exposure::B)), (AnyHeight, Feet(60), Feet(35)));
    assert_eq!((us(115, Exposure::D), us(116, Exposure::D), us(141, Exposure::B)), (Feet(20), Design, Design));
}
