use super::*;
use crate::measure::Length;
use crate::wall::{Outline, Point, Span};

fn mm(length: i64) -> Length {
    Length::from_mm(length)
}

fn point(x: i64, y: i64) -> Point {
    Point::new(mm(x), mm(y))
}

fn outline(corners: &[(i64, i64)]) -> MovedOutline {
    let outline = Outline::new(corners.iter().map(|(x, y)| point(*x, *y)).collect()).unwrap();
    MovedOutline::new(&outline, &OutlineGaps::default()).unwrap()
}

/// A gable of 3 in 4 over eaves at 1,000: its peak is at (2000, 2500).
fn gable() -> MovedOutline {
    outline(&[(0, 0), (4000, 0), (4000, 1000), (2000, 2500), (0, 1000)])
}

fn plain() -> MovedOutline {
    outline(&[(0, 0), (4000, 0), (4000, 2500), (0, 2500)])
}

fn rectangle(left: i64, right: i64, bottom: i64, top: i64) -> Obstruction {
    let gap = ObstructionGaps::default();
    Obstruction::plumb((mm(left), mm(right)), (mm(bottom), mm(top)), gap)
}

fn boards(outline: &MovedOutline, bottom: i64, around: &[Obstruction]) -> Vec<BoardShape> {
    hung(outline, (bottom, None), around)
}

/// The boards of a course that lies `bottom` up and falls as it hangs.
fn hung(outline: &MovedOutline, (bottom, hang): (i64, Option<&Hang>), around: &[Obstruction]) -> Vec<BoardShape> {
    let course =
        CourseToHang { bottom: mm(bottom), hang, height: mm(180), joints: &[], joint_gap: Length::ZERO, around };
    course.boards(outline, &ShapeLimits::default()).unwrap()
}

/// The cuts after the one to length, of the only board.
fn cuts(outline: &MovedOutline, bottom: i64, around: &[Obstruction]) -> Vec<SawCut> {
    let boards = boards(outline, bottom, around);
    let [board] = boards.as_slice() else { panic!("{boards:?}") };
    let instructions = Instructions::of(board, mm(25));
    let mut cuts = instructions.cuts.into_iter().map(|own| own.cut);
    assert_eq!(cuts.next(), Some(SawCut::Length(board.length)));
    cuts.collect()
}

const LEFT: BoardEnd = BoardEnd::Left;
const RIGHT: BoardEnd = BoardEnd::Right;

const fn corner(end: BoardEnd, edge: LongEdge) -> BoardCorner {
    BoardCorner { end, edge }
}

/// At the eaves the rake is 60 over the course's bottom; 120 higher it has come 160 in.
#[test]
fn a_board_across_the_eaves_loses_its_corners() {
    let clip = |end| SawCut::Clip { corner: corner(end, LongEdge::Top), along: mm(160), up: mm(120) };
    assert_eq!(cuts(&gable(), 940, &[]), [clip(RIGHT), clip(LEFT)]);
    let degrees = clip(LEFT).degrees(mm(180)).unwrap();
    assert!((degrees - 36.869_897_645_844_02).abs() < 1e-12, "atan(3/4)");
}

/// From 1,600 to 1,780 the rake goes from 800 to 1,040.
#[test]
fn a_board_between_rakes_is_bevelled_at_both_ends() {
    let bevel = |end| SawCut::Bevel { end, bottom: mm(0), top: mm(240) };
    assert_eq!(cuts(&gable(), 1600, &[]), [bevel(RIGHT), bevel(LEFT)]);
    let board = &boards(&gable(), 1600, &[])[0];
    let instructions = Instructions::of(board, mm(25));
    assert_eq!(instructions.edges, EdgeLengths { bottom: mm(2400), top: mm(1920) });
    assert!((bevel(LEFT).degrees(mm(180)).unwrap() - 53.130_102_354_155_98).abs() < 1e-12, "atan(4/3)");
    // The two bevels are cut edges; the long edges are the factory's.
    assert_eq!(instructions.primed, [[point(2400, 0), point(2160, 180)], [point(240, 180), point(0, 0)]]);
}

/// The tip is 60 high over 2,440: the course loses 120, and what is left ends in a point.
#[test]
fn the_tip_of_a_gable_is_ripped_and_bevelled_to_a_point() {
    let found = cuts(&gable(), 2440, &[]);
    let rip = SawCut::Rip { edge: LongEdge::Top, left: mm(120), right: mm(120) };
    let bevel = |end| SawCut::Bevel { end, bottom: mm(0), top: mm(80) };
    assert_eq!(found, [rip, bevel(RIGHT), bevel(LEFT)]);
    let nailing = Nailing::of(&boards(&gable(), 2440, &[])[0], mm(25));
    assert!(nailing.is_gone());
    assert_eq!(nailing.face, [Span { from: mm(0), to: mm(160) }]);
}

#[test]
fn a_board_over_a_step_in_the_base_is_an_l() {
    let stepped = outline(&[(0, 0), (1500, 0), (1500, 60), (4000, 60), (4000, 2500), (0, 2500)]);
    let step = SawCut::Step { corner: corner(RIGHT, LongEdge::Bottom), along: mm(2500), up: mm(60) };
    assert_eq!(cuts(&stepped, 0, &[]), [step]);
}

/// The wall ends 100 over the course's bottom at the left and 60 at the right: 80 and 120 are taken off the top.
#[test]
fn a_board_under_a_slanting_top_is_ripped_to_a_taper() {
    let shed = outline(&[(0, 0), (4000, 0), (4000, 960), (0, 1000)]);
    assert_eq!(cuts(&shed, 900, &[]), [SawCut::Rip { edge: LongEdge::Top, left: mm(80), right: mm(120) }]);
    let board = &boards(&shed, 900, &[])[0];
    let instructions = Instructions::of(board, mm(25));
    assert_eq!((instructions.kept, instructions.nailing.is_gone()), (LongEdge::Bottom, true));
    assert_eq!(instructions.primed.len(), 3, "all but the bottom: {:?}", instructions.primed);
}

/// A base that slants leaves no factory edge at the bottom, so that the one at the top stays.
#[test]
fn where_the_bottom_is_cut_all_along_the_top_edge_stays() {
    let slanting = outline(&[(0, 20), (4000, 60), (4000, 2500), (0, 2500)]);
    assert_eq!(cuts(&slanting, 0, &[]), [SawCut::Rip { edge: LongEdge::Bottom, left: mm(20), right: mm(60) }]);
    let instructions = Instructions::of(&boards(&slanting, 0, &[])[0], mm(25));
    assert_eq!(instructions.kept, LongEdge::Top);
    assert!(!instructions.nailing.is_gone());
}

/// A step in the base takes nothing off the bottom edge where it is lowest; a level base gap does, and then the rip is
/// taken off the top, since a board is the same whichever edge it loses.
#[test]
fn a_rip_leaves_the_edge_that_shows() {
    let base = Outline::new(vec![point(0, 0), point(4000, 0), point(4000, 2500), point(0, 2500)]).unwrap();
    let moved = MovedOutline::new(&base, &OutlineGaps { base: mm(10), ..OutlineGaps::default() }).unwrap();
    assert_eq!(cuts(&moved, 0, &[]), [SawCut::Rip { edge: LongEdge::Top, left: mm(10), right: mm(10) }]);
}

#[test]
fn holes_come_first_and_the_thinnest_leg_last() {
    // A hole, a notch in the bottom with 30 left over it, one in the top with much left, a corner.
    let around = [
        rectangle(500, 600, 960, 1000),
        rectangle(1500, 1900, 700, 1050),
        rectangle(2500, 2700, 1040, 1300),
        rectangle(3800, 4100, 1000, 1300),
    ];
    let hole = SawCut::Hole { left: mm(500), right: mm(600), bottom: mm(60), top: mm(100) };
    let low = SawCut::Notch { side: BoxSide::Bottom, from: mm(1500), to: mm(1900), depth: [mm(150); 2] };
    let high = SawCut::Notch { side: BoxSide::Top, from: mm(2500), to: mm(2700), depth: [mm(40); 2] };
    let step = SawCut::Step { corner: corner(RIGHT, LongEdge::Top), along: mm(200), up: mm(80) };
    assert_eq!(cuts(&plain(), 900, &around), [hole, step, high, low]);
    let board = &boards(&plain(), 900, &around)[0];
    let instructions = Instructions::of(board, mm(25));
    let told: Vec<(Vec<usize>, Length)> =
        instructions.cuts.iter().map(|own| (own.around.clone(), own.leaves)).collect();
    let wanted = [(vec![], mm(180)), (vec![0], mm(60)), (vec![3], mm(100)), (vec![2], mm(140)), (vec![1], mm(30))];
    assert_eq!(told, wanted);
    // The nail line is 155 up: over the notch in the bottom 5 stay under it.
    assert_eq!(
        instructions.nailing.face,
        [Span { from: mm(2500), to: mm(2700) }, Span { from: mm(3800), to: mm(4000) }]
    );
}

#[test]
fn marks_hold_on_face_and_back() {
    let length = mm(4000);
    let notch = SawCut::Notch { side: BoxSide::Top, from: mm(100), to: mm(300), depth: [mm(40), mm(50)] };
    assert_eq!(notch.marks(LEFT, length), [mm(100), mm(300)]);
    let back = notch.from_behind(length);
    assert_eq!(back, SawCut::Notch { side: BoxSide::Top, from: mm(3700), to: mm(3900), depth: [mm(50), mm(40)] });
    assert_eq!(back.marks(LEFT.from_behind(), length), notch.marks(LEFT, length));
    assert_eq!(notch.marks(RIGHT, length), [mm(3700), mm(3900)]);
    let bevel = SawCut::Bevel { end: RIGHT, bottom: mm(0), top: mm(240) };
    assert_eq!(bevel.marks(LEFT, length), [mm(3760), mm(4000)]);
    assert_eq!(bevel.from_behind(length).marks(RIGHT, length), bevel.marks(LEFT, length));
}

/// Where one end is cut at a rake the marks go from the other one.
#[test]
fn marks_go_from_the_square_end() {
    let shed = outline(&[(0, 0), (4000, 0), (4000, 2500), (0, 1000)]);
    let instructions = Instructions::of(&boards(&shed, 1200, &[])[0], mm(25));
    assert_eq!(instructions.measured_from, RIGHT);
    assert_eq!(Instructions::of(&boards(&plain(), 1200, &[])[0], mm(25)).measured_from, LEFT);
}

#[test]
fn a_board_cut_right_through_is_pieces_of_one_section() {
    let joints = [mm(2000)];
    let around = [rectangle(800, 1000, 0, 2500), rectangle(2600, 3000, 950, 1020)];
    let course = CourseToHang {
        bottom: mm(900),
        hang: None,
        height: mm(180),
        joints: &joints,
        joint_gap: mm(4),
        around: &around,
    };
    let boards = course.boards(&plain(), &ShapeLimits::default()).unwrap();
    let lengths: Vec<Length> = boards.iter().map(|own| own.length).collect();
    assert_eq!(lengths, [mm(800), mm(998), mm(1998)]);
    let sections = Section::of(&boards);
    assert_eq!(
        sections,
        [Section { boards: vec![0, 1], open: vec![mm(200)] }, Section { boards: vec![2], open: Vec::new() }]
    );
}

/// By hand: a course that falls by 40 over 4,000, under a level soffit at 1,000, over a block from 1,960 to 2,040.
#[test]
fn a_course_out_of_level_is_ripped_to_a_taper_and_notched_askew() {
    let wall = outline(&[(0, 0), (4000, 0), (4000, 1000), (0, 1000)]);
    let hang = Hang::new(vec![point(0, 20), point(4000, -20)]).unwrap();
    let around = [rectangle(1960, 2040, 860, 940)];
    let course = CourseToHang {
        bottom: mm(900),
        hang: Some(&hang),
        height: mm(180),
        joints: &[],
        joint_gap: Length::ZERO,
        around: &around,
    };
    let boards = course.boards(&wall, &ShapeLimits::default()).unwrap();
    let [board] = boards.as_slice() else { panic!("{boards:?}") };
    assert_eq!((board.at, board.length, board.height), (point(0, 920), mm(4000), mm(120)));
    // Over the course's bottom the soffit is at 80 and 120, the block's top at 39.6 and 40.4.
    let tenths = |length: Length| length.nm() / 100_000;
    let corners: Vec<(i64, i64)> = board.corners.iter().map(|own| (tenths(own.x), tenths(own.y))).collect();
    assert_eq!(
        corners,
        [(0, 0), (19_600, 0), (19_600, 396), (20_400, 404), (20_400, 0), (40_000, 0), (40_000, 1200), (0, 800)]
    );
    let cut = &board.cuts[0];
    assert_eq!((cut.bottom.map(tenths), cut.top.map(tenths)), ([0, 0], [396, 404]));
    assert_eq!(cut.sides, [BoxSide::Bottom]);
    let found: Vec<SawCut> = Instructions::of(board, mm(25)).cuts.into_iter().map(|own| own.cut).skip(1).collect();
    let rip = SawCut::Rip { edge: LongEdge::Top, left: mm(100), right: mm(60) };
    let depth = [Length::from_nm(39_600_000), Length::from_nm(40_400_000)];
    assert_eq!(found, [rip, SawCut::Notch { side: BoxSide::Bottom, from: mm(1960), to: mm(2040), depth }]);
    assert!(board.warnings.is_empty(), "60 stay over the notch: {:?}", board.warnings);
    let narrow = ShapeLimits { leg: mm(61), ..ShapeLimits::default() };
    let warnings = course.boards(&wall, &narrow).unwrap()[0].warnings.clone();
    assert_eq!(warnings, [ShapeWarning::ThinLeg(Leg::Upright)], "60 are under 61");
}

#[test]
fn a_course_that_hangs_level_is_a_level_course() {
    let hang = Hang::new(vec![point(1000, 12), point(2000, 12), point(2500, 12)]).unwrap();
    let around = [rectangle(1500, 2600, 860, 960)];
    let course = |bottom, hang| CourseToHang {
        bottom: mm(bottom),
        hang,
        height: mm(180),
        joints: &[],
        joint_gap: Length::ZERO,
        around: &around,
    };
    let limits = ShapeLimits::default();
    let level = course(912, None).boards(&gable(), &limits).unwrap();
    assert_eq!(course(900, Some(&hang)).boards(&gable(), &limits).unwrap(), level);
    assert_eq!(Hang::new(vec![point(5, 0), point(5, 1)]), Err(BoardError::Knots));
    assert_eq!(Hang::new(Vec::new()), Err(BoardError::Knots));
}

#[test]
fn what_is_wrong_is_refused() {
    let wall = plain();
    let course = |around: &[Obstruction], height: i64, joint_gap: i64| {
        let (height, joint_gap) = (mm(height), mm(joint_gap));
        let course = CourseToHang { bottom: mm(0), hang: None, height, joints: &[], joint_gap, around };
        course.boards(&wall, &ShapeLimits::default()).map(|boards| boards.len())
    };
    let mut grown = rectangle(0, 1, 0, 1);
    grown.gap.top = mm(-1);
    assert_eq!(course(&[], 180, 0), Ok(1));
    assert_eq!(course(&[], 0, 0), Err(BoardError::Height));
    assert_eq!(course(&[], 180, -1), Err(BoardError::Negative));
    assert_eq!(course(&[rectangle(0, 1, 0, 1), rectangle(4, 4, 0, 1)], 180, 0), Err(BoardError::Width(1)));
    assert_eq!(course(&[rectangle(0, 1, 3, 1)], 180, 0), Err(BoardError::Top(0)));
    assert_eq!(course(&[grown], 180, 0), Err(BoardError::Negative));
    assert_eq!(course(&[rectangle(0, i64::MAX / 1_000_000, 0, 1)], 180, 0), Err(BoardError::TooFar));
    let slots: Vec<Obstruction> = (0..10_001).map(|at| rectangle(3 * at, 3 * at + 1, 0, 500)).collect();
    let wide = outline(&[(0, 0), (40_000, 0), (40_000, 500), (0, 500)]);
    let course = CourseToHang {
        bottom: mm(0),
        hang: None,
        height: mm(180),
        joints: &[],
        joint_gap: Length::ZERO,
        around: &slots,
    };
    assert_eq!(course.boards(&wide, &ShapeLimits::default()), Err(BoardError::TooMany));
}

/// A window whose left side leans by 20 to the right and whose right side by 40 to the left over 400: by hand, at 100 over
/// its sill they lie 5 and 10 further in, at 280 they lie 14 and 28.
#[test]
fn boards_beside_a_leaning_window_are_bevelled_along_it() {
    let lean = Lean { left: mm(20), right: mm(-40) };
    let window = Obstruction { lean, ..rectangle(1000, 2000, 800, 1200) };
    let found = boards(&plain(), 900, &[window]);
    let [left, right] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!(left.corners, [point(0, 0), point(1005, 0), point(1014, 180), point(0, 180)]);
    assert_eq!((right.at, right.length), (point(1972, 900), mm(2028)));
    assert_eq!(right.corners, [point(18, 0), point(2028, 0), point(2028, 180), point(0, 180)]);
    let cuts: Vec<SawCut> = Instructions::of(left, mm(25)).cuts.into_iter().map(|own| own.cut).collect();
    let bevel = SawCut::Bevel { end: RIGHT, bottom: mm(9), top: mm(0) };
    assert_eq!(cuts, [SawCut::Length(mm(1014)), bevel]);
    // Seen from a course that hangs by nothing all is the same.
    let hang = Hang::new(vec![point(100, 0), point(3000, 0)]).unwrap();
    let around = [window];
    let course = CourseToHang {
        bottom: mm(900),
        hang: Some(&hang),
        height: mm(180),
        joints: &[],
        joint_gap: Length::ZERO,
        around: &around,
    };
    assert_eq!(course.boards(&plain(), &ShapeLimits::default()).unwrap(), found);
    let narrow = Obstruction { lean: Lean { left: mm(600), right: mm(-600) }, ..window };
    let course = CourseToHang { hang: None, around: &[narrow], ..course };
    assert_eq!(course.boards(&plain(), &ShapeLimits::default()), Err(BoardError::Width(0)));
}

/// A block 200 wide that falls by 4 to the right, from 30 under the course's bottom at its left, 60 high; a gap of 2 round it. By hand:
/// its marks are at 998 and 1202, and over them its upper edge lies 32 and 28 up. One that lies inside is a hole.
#[test]
fn boards_go_round_a_block_as_it_slopes() {
    let gap = ObstructionGaps { side: mm(2), top: mm(2), bottom: mm(2) };
    let fall = Slope { bottom: mm(-4), top: mm(-4) };
    let block = |bottom: i64| Obstruction { gap, slope: fall, ..rectangle(1000, 1200, bottom, bottom + 60) };
    let found = boards(&plain(), 900, &[block(870)]);
    let [board] = found.as_slice() else { panic!("{found:?}") };
    let notch = [point(0, 0), point(998, 0), point(998, 32), point(1202, 28), point(1202, 0)];
    assert_eq!(board.corners, [&notch[..], &[point(4000, 0), point(4000, 180), point(0, 180)]].concat());
    assert_eq!((board.cuts[0].bottom, board.cuts[0].top), ([mm(0); 2], [mm(32), mm(28)]));
    let told = cuts(&plain(), 900, &[block(870)]);
    let side = BoxSide::Bottom;
    assert_eq!(told, [SawCut::Notch { side, from: mm(998), to: mm(1202), depth: [mm(32), mm(28)] }]);
    let found = boards(&plain(), 900, &[block(950)]);
    assert_eq!(found[0].holes, [[point(1202, 44), point(998, 48), point(998, 112), point(1202, 108)]]);
    // It leaves 180 - 152 = 28 and 32 over itself: a leg under the least of 50.8, as a level one would.
    let found = boards(&plain(), 900, &[block(990)]);
    assert_eq!(found[0].warnings, [ShapeWarning::ThinLeg(Leg::Upright)]);
    // Where its lower edge comes down to the course's own the notch opens along a part of it: 4 in 204, 1 of it below.
    let found = boards(&plain(), 900, &[block(905)]);
    assert_eq!(found[0].corners[1..4], [point(1151, 0), point(998, 3), point(998, 67)]);
    // Seen from a course that falls as it does, it is level.
    let hang = Hang::new(vec![point(0, 0), point(4080, -80)]).unwrap();
    let shape = hung(&plain(), (900, Some(&hang)), &[block(870)]).remove(0);
    assert_eq!(shape.cuts[0].top[0] - shape.cuts[0].top[1], Length::from_nm(0));
}
