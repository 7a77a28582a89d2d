use num_rational::BigRational;
use num_traits::{ToPrimitive, Zero};
use proptest::prelude::*;

use super::item::{ratio, whole};
use super::*;
use crate::board::{BoardShape, CourseToHang, Hang, MovedOutline, OutlineGaps, ShapeLimits};
use crate::measure::{Length, Show};
use crate::phrases::{Language, Phrases};
use crate::rules::{Quantity, RuleChange, RuleSet, RuleUnit};
use crate::siding::CourseLine;
use crate::wall::{Finish, Mounting, Opening, OpeningKind, Outline, PenetrationKind, Point, Shape, Span, Studs};

fn inch(n: i64) -> Length {
    Length::from_inches(n)
}

fn board() -> BoardSizes {
    BoardSizes {
        height: Length::from_inches_64(8, 16),
        thickness: Length::from_inches_64(0, 20),
        lap: Length::from_inches_64(1, 16),
        nail_line: Length::from_inches_64(0, 48),
    }
}

/// A wall through these corners in courses of 7 in from `bottom`, nothing jointed.
fn wall(points: &[(i64, i64)], openings: Vec<Opening>) -> CountedWall {
    let points: Vec<Point> = points.iter().map(|(x, y)| Point::new(inch(*x), inch(*y))).collect();
    let outline = Outline::new(points).unwrap();
    let (bottom, top) = (outline.bottom(), outline.top());
    let courses: Vec<CourseLine> = (0_u32..)
        .map(|n| CourseLine { course: n + 1, bottom: bottom + inch(7 * i64::from(n)), height: board().height })
        .take_while(|course| course.bottom < top)
        .collect();
    let boards = courses.iter().flat_map(|line| shapes(&outline, line).into_iter().map(|shape| (line.course, shape)));
    let boards = boards.enumerate().map(|(cut_from, (course, shape))| CountedBoard {
        course,
        shape,
        joints: [false; 2],
        cut_from,
    });
    let boards = boards.collect();
    let studs = Studs::Spaced { first: inch(0), spacing: inch(16) };
    let zero = Length::ZERO;
    CountedWall {
        outline,
        studs,
        courses,
        boards,
        openings,
        trim_left: zero,
        trim_right: zero,
        holes: Vec::new(),
        parts: Vec::new(),
    }
}

/// The boards of a course on a bare wall.
fn shapes(outline: &Outline, line: &CourseLine) -> Vec<BoardShape> {
    let moved = MovedOutline::new(outline, &OutlineGaps::default()).unwrap();
    let course = CourseToHang {
        bottom: line.bottom,
        hang: None,
        height: line.height,
        joints: &[],
        joint_gap: Length::ZERO,
        around: &[],
    };
    course.boards(&moved, &ShapeLimits::default()).unwrap()
}

/// The same wall with each of its boards parted at places along it, without a gap.
fn jointed(mut wall: CountedWall, joints: &[Length]) -> CountedWall {
    let moved = MovedOutline::new(&wall.outline, &OutlineGaps::default()).unwrap();
    wall.boards.clear();
    for line in &wall.courses {
        let course = CourseToHang {
            bottom: line.bottom,
            hang: None,
            height: line.height,
            joints,
            joint_gap: Length::ZERO,
            around: &[],
        };
        for shape in course.boards(&moved, &ShapeLimits::default()).unwrap() {
            let at = |x: Length| joints.contains(&x);
            let joints = [at(shape.at.x), at(shape.at.x + shape.length)];
            wall.boards.push(CountedBoard { course: line.course, shape, joints, cut_from: wall.boards.len() });
        }
    }
    wall
}

fn house(walls: Vec<CountedWall>) -> CountedHouse {
    let pieces = walls.iter().map(|wall| wall.boards.len()).sum();
    let cut = CutBoard { length: inch(144), offcut: false, pieces: 1, rest: true };
    CountedHouse { board: board(), walls, cut: vec![cut; pieces], rules: RuleSet::standard() }
}

fn net(house: &CountedHouse, code: &str) -> Option<BigRational> {
    amounts(house).unwrap().into_iter().find(|item| item.code == code).map(|item| item.net)
}

fn inches(n: i64) -> BigRational {
    whole(n * Length::NM_PER_INCH)
}

fn hole() -> Hole {
    Hole {
        kind: PenetrationKind::ElectricalBox,
        shape: Shape::Rectangle { width: inch(4), height: inch(5) },
        centre: Point::new(inch(60), inch(30)),
        x: Span { from: inch(56), to: inch(64) },
        y: Span { from: inch(26), to: inch(34) },
        finish: Finish::Block,
        thickness: Some(inch(1)),
        mounting: Mounting::SlipOver,
        head_flashing: true,
        bottom_open: false,
    }
}

/// A wall of 20 ft by 96 in, with rules changed.
fn ruled(holes: Vec<Hole>, changed: &[(&str, i64, RuleUnit)]) -> CountedHouse {
    let mut wall = wall(&[(0, 0), (240, 0), (240, 96), (0, 96)], vec![]);
    wall.holes = holes;
    let mut house = house(vec![wall]);
    for (key, value, unit) in changed {
        let value = Quantity::new(*value, 1, *unit).unwrap();
        house.rules.set(key, RuleChange { value, by: "Ana".into(), at_ms: 0, reason: "test".into() }).unwrap();
    }
    house
}

/// A box and a light stand in a box each, a pipe in none.
#[test]
fn every_box_has_its_ring() {
    let of = |kind| Hole { kind, ..hole() };
    let kinds = [PenetrationKind::ElectricalBox, PenetrationKind::Light, PenetrationKind::Pipe];
    assert_eq!(net(&ruled(kinds.map(of).to_vec(), &[]), "extension-ring"), Some(whole(2)));
    assert_eq!(net(&ruled(vec![of(PenetrationKind::Pipe)], &[]), "extension-ring"), None);
}

/// 240 by 96 in are 160 sq ft: two kits of 100 sq ft. A house that is painted needs none.
#[test]
fn boards_that_come_painted_are_touched_up() {
    let kit = ("touch-up.kit", 100, RuleUnit::SquareFoot);
    assert_eq!(net(&ruled(Vec::new(), &[kit]), "touch-up"), None);
    let house = ruled(Vec::new(), &[kit, ("paint.coats", 0, RuleUnit::Count)]);
    let items = amounts(&house).unwrap();
    assert!(items.iter().all(|item| item.code != "paint"));
    let kits = items.iter().find(|item| item.code == "touch-up").unwrap();
    assert_eq!((kits.packs, kits.text(&kits.net, Show::Inches(16), Language::English).as_str()), (2, "160 sq ft"));
}

/// The top edge of 20 ft takes two lengths of 12 ft, once the house says how wide its soffit is.
#[test]
fn a_soffit_is_ordered_where_its_width_is_said() {
    assert_eq!(net(&ruled(Vec::new(), &[]), "soffit"), None);
    let house = ruled(Vec::new(), &[("soffit.width", 12, RuleUnit::Inch)]);
    let items = amounts(&house).unwrap();
    let soffit = items.iter().find(|item| item.code == "soffit").unwrap();
    assert_eq!((soffit.net.clone(), soffit.packs), (inches(240), 2));
}

#[test]
fn a_gable_is_painted_to_its_peak_and_primed_along_its_rakes() {
    // 20 ft wide, 96 in high at the eaves, 5 in 12: the peak 50 in higher. 240 x 96 + 240 x 50 / 2 sq in, two coats.
    let gable = house(vec![wall(&[(0, 0), (240, 0), (240, 96), (120, 146), (0, 96)], vec![])]);
    let level = house(vec![wall(&[(0, 0), (240, 0), (240, 96), (0, 96)], vec![])]);
    let square_inches = |n: i64| whole(n) * ratio(254, 10) * ratio(254, 10) / whole(1_000_000);
    let litres = |area: BigRational| area * whole(2) * ratio(3_785_411_784, 92_903_040) / whole(350);
    assert_eq!(net(&gable, "paint"), Some(litres(square_inches(240 * 96 + 120 * 50))));
    assert_eq!(net(&level, "paint"), Some(litres(square_inches(240 * 96))));
    // The last level course is ripped; on a gable only the tip is.
    let primer = |house: &CountedHouse| net(house, "primer").unwrap();
    let per_end = |house: &CountedHouse| primer(house) / whole(house.cut.len());
    assert!(per_end(&gable) < per_end(&level));
    // Each rake's end is 13/12 as long as it is high where it is wholly on the rake: 5, 12, 13.
    let course = CourseLine { course: 1, bottom: inch(0), height: inch(5) };
    let corners = [(0, 0), (240, 0), (120, 50)].map(|(x, y)| Point::new(inch(x), inch(y)));
    let run = shapes(&Outline::new(corners.to_vec()).unwrap(), &course)[0].run(1, Length::ZERO);
    assert_eq!((run.left.bevel(), run.right.bevel()), (inch(12), inch(-12)));
}

#[test]
fn a_stepped_base_has_starter_on_each_level_and_none_under_a_door() {
    let door = |left: i64, right: i64, bottom: i64| Opening {
        kind: OpeningKind::Door,
        left: inch(left),
        right: inch(right),
        head_left: inch(left),
        head_right: inch(right),
        bottom: inch(bottom),
        top: inch(bottom + 80),
    };
    // The base line drops by 14 in at 100 in.
    let stepped = [(0, 0), (100, 0), (100, -14), (216, -14), (216, 94), (0, 94)];
    let mut wall = wall(&stepped, vec![door(120, 150, -14), door(90, 104, 20)]);
    (wall.trim_left, wall.trim_right) = (inch(3), inch(4));
    // 3 to 100 and 100 to 212, less the door's 30; the window over the step stands on nothing.
    assert_eq!(net(&house(vec![wall.clone()]), "starter"), Some(inches(97 + 112 - 30)));
    // Flashing runs on behind the trim.
    assert_eq!(net(&house(vec![wall.clone()]), "base-flashing"), Some(inches(100 + 116 - 30)));
    // Trim: the left end is 94 high, the right one 108.
    let house = house(vec![wall]);
    assert_eq!(net(&house, &format!("trim-{}", inch(3).nm())), Some(inches(94)));
    assert_eq!(net(&house, &format!("trim-{}", inch(4).nm())), Some(inches(108)));
}

#[test]
fn a_gable_takes_rake_trim_and_where_it_is_furred_vents_at_the_foot_and_along_the_rakes() {
    // 5, 12, 13: rakes of 130 in over half of 20 ft.
    let mut gable = wall(&[(0, 0), (240, 0), (240, 96), (120, 146), (0, 96)], vec![]);
    assert_eq!(net(&house(vec![gable.clone()]), "top-trim"), Some(inches(130 + 130)));
    assert_eq!(net(&house(vec![gable.clone()]), "vent-strip"), None);
    gable.parts.push(WallPart::Furring(inch(146)));
    assert_eq!(net(&house(vec![gable]), "vent-strip"), Some(inches(240 + 130 + 130)));
}

#[test]
fn the_barrier_laps_round_the_corners_and_where_a_roll_ends() {
    // 104 in are three courses of 36 in that lap 2 in; each 120 in and 6 in round both corners.
    let short = house(vec![wall(&[(0, 0), (120, 0), (120, 104), (0, 104)], vec![])]);
    assert_eq!(net(&short, "barrier"), Some(inches(3 * (120 + 12))));
    assert_eq!(net(&short, "barrier-tape"), Some(inches(3 * 2 * 36)));
    // 1300 in and both corners are more than a roll of 1200 in: one more lap and seam a course.
    let long = house(vec![wall(&[(0, 0), (1300, 0), (1300, 104), (0, 104)], vec![])]);
    assert_eq!(net(&long, "barrier"), Some(inches(3 * (1300 + 12 + 6))));
    assert_eq!(net(&long, "barrier-tape"), Some(inches(3 * 3 * 36)));
}

#[test]
fn trim_of_one_width_is_ordered_together() {
    let mut wall = wall(&[(0, 0), (120, 0), (120, 96), (0, 96)], vec![]);
    (wall.trim_left, wall.trim_right) = (inch(3), Length::from_inches_64(3, 32));
    wall.holes.push(Hole { finish: Finish::Trim, ..hole() });
    wall.openings.push(Opening {
        kind: OpeningKind::Window,
        left: inch(20),
        right: inch(44),
        head_left: inch(20),
        head_right: inch(44),
        bottom: inch(20),
        top: inch(56),
    });
    let house = house(vec![wall]);
    // The right end, 96 in; twice 24 and 36 in round the window, four times 8 in round the fixture: 3 1/2 in wide, the rule's.
    let wide = Length::from_inches_64(3, 32).nm();
    assert_eq!(net(&house, &format!("trim-{wide}")), Some(inches(96 + 2 * (24 + 36) + 4 * 8)));
    assert_eq!(net(&house, &format!("trim-{}", inch(3).nm())), Some(inches(96)));
    // 96, 36 and 8 in are cut from one length of 12 ft, the rest from another.
    let items = amounts(&house).unwrap();
    assert_eq!(items.iter().find(|item| item.code == format!("trim-{wide}")).unwrap().packs, 2);
    assert_eq!(net(&house, "top-trim"), Some(inches(120)));
}

#[test]
fn a_block_brings_its_patch_flashing_bead_and_screws() {
    let mut wall = wall(&[(0, 0), (120, 0), (120, 84), (0, 84)], vec![]);
    let plain = net(&house(vec![wall.clone()]), "sealant").unwrap();
    wall.holes.push(hole());
    let with = house(vec![wall.clone()]);
    // Sides and bottom of the block, the box all round, and behind the block its sides and top; the joint under the
    // flashing stays open. 1/8 in wide and 1/4 in deep.
    let joint = whole(8 + 8 + 8 + 18 + 24) * ratio(1, 32) * ratio(16_387_064, 1_000_000_000);
    assert_eq!(net(&with, "sealant").unwrap() - &plain, joint);
    assert_eq!(net(&with, "screws"), Some(whole(4)));
    // 8 in and an end dam of 25 mm at each end.
    assert_eq!(net(&with, "head-flashing"), Some(inches(8) + whole(50_000_000)));
    wall.holes[0].finish = Finish::Collar;
    wall.holes[0].head_flashing = false;
    let collar = house(vec![wall]);
    assert_eq!(net(&collar, "collar"), Some(whole(1)));
    assert_eq!(net(&collar, "screws"), None);
}

#[test]
fn joints_take_more_nails_and_a_strip() {
    let wall = wall(&[(0, 0), (160, 0), (160, 7), (0, 7)], vec![]);
    // Studs at 0, 16 … 160: eleven.
    assert_eq!(net(&house(vec![wall.clone()]), "nails"), Some(whole(11)));
    let jointed = house(vec![jointed(wall, &[inch(48), inch(112)])]);
    assert_eq!(net(&jointed, "nails"), Some(whole(11 - 2 + 2 * 2)));
    assert_eq!(net(&jointed, "joint-strips"), Some(whole(2)));
}

#[test]
fn offcuts_are_not_bought() {
    let mut house = house(vec![wall(&[(0, 0), (120, 0), (120, 84), (0, 84)], vec![])]);
    let all = house.cut.len();
    house.cut[0].offcut = true;
    assert_eq!(net(&house, &format!("boards-{}", inch(144).nm())), Some(whole(all - 1)));
}

/// The length of edges that are primed, by the area of an edge 5/16 in thick: one coat at 300 sq ft a gallon.
fn primed(house: &CountedHouse) -> BigRational {
    let litres = net(house, "primer").unwrap();
    // A gallon is 3.785411784 L, a square foot 0.09290304 m2 (NIST SP 811).
    let square_metres = litres / ratio(3_785_411_784, 1_000_000_000) * whole(300) * ratio(9_290_304, 100_000_000);
    square_metres * whole(1_000_000_000_000_000_000_i64) / whole(board().thickness.nm())
}

/// By hand: a new board has two ends from the factory. Cut in two with a rest it shows three ends of the saw, without a
/// rest two; the same pieces from an offcut show four: both its ends were cut before.
#[test]
fn ends_from_the_factory_are_not_primed() {
    // Two courses as high as a board, so that nothing is ripped.
    let mut wall = wall(&[(0, 0), (70, 0), (70, 20), (0, 20)], vec![]);
    wall.boards.truncate(2);
    wall.boards.iter_mut().for_each(|board| board.cut_from = 0);
    let mut house = house(vec![wall]);
    let mut edges = |offcut, rest| {
        house.cut = vec![CutBoard { length: inch(144), offcut, pieces: 2, rest }];
        primed(&house)
    };
    let end = whole(board().height.nm());
    let (rest, no_rest, offcut) = (edges(false, true), edges(false, false), edges(true, true));
    assert_eq!(&rest - &no_rest, end);
    assert_eq!(&offcut - &no_rest, &end * whole(2));
    assert_eq!(edges(true, false), offcut, "what is left of an offcut changes nothing");
}

/// By hand: the only course of a wall 120 in wide is 8 1/4 in high. Where the wall ends with it nothing is ripped off; an
/// inch less and its whole length is, and the end that the saw makes is an inch lower.
#[test]
fn a_course_that_ends_at_the_top_is_not_ripped() {
    let edges = |top: i64| {
        let mut wall = wall(&[(0, 0), (120, 0), (120, 7), (0, 7)], vec![]);
        wall.outline =
            Outline::with_ends(inch(120), Length::from_inches_64(top, 16), Length::from_inches_64(top, 16)).unwrap();
        primed(&house(vec![jointed(wall, &[])]))
    };
    let (exactly, over, under) = (edges(8), edges(9), edges(7));
    assert_eq!(exactly, over);
    assert_eq!(under - exactly, inches(120 - 1));
}

/// By hand, 3-4-5 twice. A board 8 in high over a base that steps up 3 in at 60 of 120 in is an L: the saw goes 60 in along the step
/// and 3 in up it, and makes one end. A triangle 6 in high over 16 in has two slants of 10 in; both are joints at the rake, and
/// its nail line, 3/4 in under the full height, is gone.
#[test]
fn edges_joints_and_nails_are_those_of_the_shape() {
    let corners = |points: &[(i64, i64)]| {
        Outline::new(points.iter().map(|(x, y)| Point::new(inch(*x), inch(*y))).collect()).unwrap()
    };
    let eight = BoardSizes { height: inch(8), ..board() };
    let of = |outline: Outline| {
        let mut wall = wall(&[(0, 0), (120, 0), (120, 7), (0, 7)], vec![]);
        wall.outline = outline;
        wall.courses = vec![CourseLine { course: 1, bottom: inch(0), height: eight.height }];
        CountedHouse { board: eight, ..house(vec![jointed(wall, &[])]) }
    };
    let step = of(corners(&[(0, 0), (60, 0), (60, 3), (120, 3), (120, 8), (0, 8)]));
    assert_eq!(step.walls[0].boards[0].shape.corners.len(), 6);
    // The factory's end is the lower one, 5 in, so that primer suffices whichever end the saw leaves.
    assert_eq!(primed(&step), inches(60 + 3 + 8 + 5 - 5));
    let tip = of(corners(&[(0, 0), (16, 0), (8, 6)]));
    assert_eq!(primed(&tip), inches(10 + 10));
    // 1/8 in wide and 1/4 in deep at the gap of the trim.
    let joint = inches(20) / inches(1) * ratio(1, 32) * ratio(16_387_064, 1_000_000_000);
    assert_eq!(net(&tip, "sealant"), Some(joint));
    let nails = amounts(&tip).unwrap().into_iter().find(|item| item.code == "nails").unwrap();
    assert_eq!(nails.net, whole(2), "studs at 0 and 16 in");
    let face = nails.from.places.iter().find(|(name, _)| *name == "face").map(|(_, place)| place.clone());
    assert_eq!(face, Some(WordingPlace::Whole(2)));
}

/// By hand: a course that rises half an inch over 120 in under a top at 5 in is 5 in high at its left end and 4 1/2 in at its right one.
/// These are its joints; its upper edge, which slants by so little, is none.
#[test]
fn an_edge_that_is_level_on_the_wall_is_no_joint_along_a_rake() {
    let mut wall = wall(&[(0, 0), (120, 0), (120, 5), (0, 5)], vec![]);
    let hang =
        Hang::new(vec![Point::new(inch(0), inch(0)), Point::new(inch(120), Length::from_inches_64(0, 32))]).unwrap();
    let moved = MovedOutline::new(&wall.outline, &OutlineGaps::default()).unwrap();
    let course = CourseToHang {
        bottom: inch(0),
        hang: Some(&hang),
        height: board().height,
        joints: &[],
        joint_gap: Length::ZERO,
        around: &[],
    };
    wall.boards[0].shape = course.boards(&moved, &ShapeLimits::default()).unwrap().remove(0);
    let slants = |corners: &[Point]| {
        corners.iter().filter(|corner| corner.y.is_positive()).map(|corner| corner.y).collect::<Vec<_>>()
    };
    assert_eq!(slants(&wall.boards[0].shape.corners), [Length::from_inches_64(4, 32), inch(5)]);
    let joint = ratio(19, 2) * ratio(1, 32) * ratio(16_387_064, 1_000_000_000);
    assert_eq!(net(&house(vec![wall]), "sealant"), Some(joint));
}

/// NIST SP 811, appendix B.8, to the seven digits that it prints: a US fluid ounce is 2.957353E-05 m3, a US gallon
/// 3.785412E-03 m3, a foot 3.048E-01 m, a square foot 9.290304E-02 m2. The imperial ounce would be 2.841306E-05 m3.
#[test]
fn what_a_unit_is_worth_is_that_of_the_standard() {
    let (inches, metric) = (Show::Inches(16), Show::Millimetres(1));
    for (measure, show, exact, unit, published) in [
        (Measure::Sealant, inches, ratio(2_957_353, 100_000_000), "fl oz", 1.0),
        (Measure::Sealant, metric, ratio(1, 1_000), "mL", 1.0),
        (Measure::Coating, inches, ratio(3_785_412, 1_000_000), "gal", 1.0),
        (Measure::Coating, metric, whole(1), "L", 1.0),
        (Measure::Length, inches, whole(304_800_000), "ft", 1.0),
        (Measure::Length, metric, whole(304_800_000), "m", 0.3048),
        (Measure::Area, inches, whole(92_903_040_000_000_000_i64), "sq ft", 1.0),
        (Measure::Area, metric, whole(92_903_040_000_000_000_i64), "m2", 0.092_903_04),
        (Measure::Each, inches, whole(7), "each", 7.0),
    ] {
        let item = amounts(&house(vec![wall(&[(0, 0), (120, 0), (120, 84), (0, 84)], vec![])])).unwrap().remove(0);
        let item = Item { measure, ..item };
        assert_eq!(item.unit(show), unit);
        let shown = item.shown(&exact, show);
        assert!((shown / published - 1.0).abs() < 3e-7, "{shown} {unit} for {published}");
    }
}

#[test]
fn every_text_is_there_in_both_languages() {
    let mut wall = wall(&[(0, 0), (160, 0), (160, 84), (0, 84)], vec![]);
    wall.holes = vec![hole(), Hole { finish: Finish::Collar, ..hole() }, Hole { finish: Finish::Trim, ..hole() }];
    wall.holes.push(Hole { mounting: Mounting::Split, ..hole() });
    wall = jointed(wall, &[inch(80)]);
    (wall.trim_left, wall.trim_right) = (inch(3), inch(4));
    wall.openings.push(Opening {
        kind: OpeningKind::Window,
        left: inch(20),
        right: inch(40),
        head_left: inch(20),
        head_right: inch(40),
        bottom: inch(20),
        top: inch(50),
    });
    for language in Language::ALL {
        let phrases = Phrases::for_language(*language);
        for item in amounts(&house(vec![wall.clone()])).unwrap() {
            for words in [&item.name, &item.pack_name, &item.from] {
                let text = words.text(phrases, Show::Inches(16));
                assert!(!text.contains('{') && !text.starts_with("amounts-"), "{text}");
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// Whatever the house: what is ordered is what goes on it and the waste, in packs that hold it and no pack to spare
    /// but where pieces ask for it.
    #[test]
    fn packs_hold_what_is_ordered(
        width in 30_i64..600, left in 20_i64..200, right in 20_i64..200, peak in 0_i64..150, step in -20_i64..20,
        waste in 0_i64..=50, pieces in 1_usize..4, block in 2_i64..20, at in 30_i64..200,
    ) {
        let mut points = vec![(0, 0)];
        if step != 0 {
            points.extend([(width / 2, 0), (width / 2, step)]);
        }
        let level = step;
        points.extend([(width, level), (width, right.max(level + 1))]);
        if peak > 0 {
            points.push((width / 3, left.max(right) + peak));
        }
        points.push((0, left));
        let joints: Vec<Length> = (1..pieces).map(|n| inch(width).scaled(n as i64, pieces as i64).unwrap()).collect();
        let mut wall = jointed(wall(&points, vec![]), &joints);
        let span = |size: i64| Span { from: inch(at), to: inch(at + size) };
        wall.holes.push(Hole { x: span(block), y: span(block), ..hole() });
        wall.trim_left = inch(4);
        let mut house = house(vec![wall]);
        let change = |key: &str, rules: &mut RuleSet| rules.set(key, crate::rules::RuleChange {
            value: crate::rules::Quantity::new(waste, 1, crate::rules::RuleUnit::Percent).unwrap(),
            by: "Ana".into(), at_ms: 0, reason: "test".into(),
        }).unwrap();
        for key in crate::rules::keys::SHARES.iter().filter(|key| key.starts_with("waste.")) {
            change(key, &mut house.rules);
        }
        for item in amounts(&house).unwrap() {
            prop_assert!(item.net > BigRational::zero() && item.waste >= BigRational::zero());
            // What is counted by the piece has no allowance; all else is what goes on the house and its share of waste.
            let by_the_piece = ["block", "collar", "extension-ring"].iter().any(|code| item.code.starts_with(code));
            let share = if by_the_piece { whole(1) } else { ratio(100 + waste, 100) };
            prop_assert_eq!(item.amount(), &item.net * share, "{}", &item.code);
            prop_assert!(&item.pack * whole(item.packs) >= item.amount(), "{}", item.code);
            let pieces_ask = item.code.starts_with("trim") || item.code == "head-flashing" || item.code == "membrane";
            prop_assert!(pieces_ask || &item.pack * whole(item.packs - 1) < item.amount(), "{}", item.code);
            // What a person reads is never less than what is needed.
            let shown = item.text(&item.amount(), Show::Inches(16), Language::English);
            let number: f64 = shown.split(' ').next().unwrap().parse().unwrap();
            prop_assert!(number + 1e-9 >= item.shown(&item.amount(), Show::Inches(16)).to_f64().unwrap());
        }
    }
}
