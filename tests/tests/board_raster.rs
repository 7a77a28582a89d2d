//! Shapes of boards against plain counting: walls, joints and obstructions on whole millimetres with edges that are plumb,
//! level or at 45 degrees. Every square millimetre is cut along its diagonals into four triangles, each of which is board or
//! not as a whole. Boards are then triangles that share an edge, their rings the edges with no such neighbour, and a thin
//! leg is looked for by walking along every row and column of triangles.
//!
//! Nothing here is shared with the core but plain types; every answer must be the same to the last corner.

use std::collections::{BTreeMap, BTreeSet};

use lapwright::board::{
    BoardError, BoardShape, BoxSide, CourseToHang, MovedOutline, Obstruction, ObstructionGaps, OutlineGaps,
    ShapeLimits, ShapeWarning,
};
use lapwright::measure::Length;
use lapwright::wall::{Outline, Point};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

type Xy = (i64, i64);

/// Lengths in millimetres.
#[derive(Clone, Debug)]
struct Case {
    outline: Vec<Xy>,
    /// Side, top, base.
    gaps: [i64; 3],
    bottom: i64,
    height: i64,
    joints: Vec<i64>,
    joint_gap: i64,
    /// Left, right, bottom, top, and the gaps at the side, top and bottom.
    around: Vec<[i64; 7]>,
    leg: i64,
    strip: i64,
}

/// A chain of steps to the right: each as wide as it is, its slope, and how far it is up or down from the one before.
fn chain() -> impl Strategy<Value = Vec<(i64, i64, i64)>> {
    prop::collection::vec((1_i64..6, -1_i64..2, -3_i64..4), 1..5)
}

/// Heights of a chain at each of its corners, kept between two heights.
fn corners(chain: &[(i64, i64, i64)], start: i64, least: i64, most: i64) -> Vec<Xy> {
    let (mut x, mut y) = (0, start);
    let mut corners = Vec::new();
    for (width, slope, jump) in chain {
        y = (y + jump).clamp(least, most);
        corners.push((x, y));
        let rise = (y + width * slope).clamp(least, most) - y;
        // Where the slope meets the limit it goes on level.
        if rise.abs() < *width && rise != 0 {
            corners.push((x + rise.abs(), y + rise));
        }
        x += width;
        y += rise;
        corners.push((x, y));
    }
    corners
}

fn outline() -> impl Strategy<Value = Vec<Xy>> {
    (chain(), chain(), any::<[bool; 3]>()).prop_map(|(low, high, [transposed, mirrored, upside_down])| {
        let bottom = corners(&low, 3, 0, 6);
        let mut top = corners(&high, 10, 7, 14);
        let (low_end, high_end) = (bottom.last().unwrap().0, top.last().unwrap().0);
        // Both chains end at the same x.
        let mut bottom = bottom;
        if low_end < high_end {
            bottom.push((high_end, bottom.last().unwrap().1));
        } else if high_end < low_end {
            top.push((low_end, top.last().unwrap().1));
        }
        top.reverse();
        let ring = bottom.into_iter().chain(top).map(|(x, y)| {
            let (x, y) = if transposed { (y, x) } else { (x, y) };
            (if mirrored { 20 - x } else { x }, if upside_down { 20 - y } else { y })
        });
        let mut ring: Vec<Xy> = ring.collect();
        ring.dedup();
        if ring.first() == ring.last() {
            ring.pop();
        }
        ring
    })
}

/// A wall that is often plain, so that much lies well within it.
fn wall() -> impl Strategy<Value = Vec<Xy>> {
    let plain = (8_i64..22, 6_i64..16).prop_map(|(x, y)| vec![(0, 0), (x, 0), (x, y), (0, y)]);
    prop_oneof![1 => plain, 2 => outline()]
}

/// A rectangle of some millimetres with its gaps, and often another one that meets it in a corner.
fn around() -> impl Strategy<Value = Vec<[i64; 7]>> {
    let sizes = (1_i64..5, 1_i64..4);
    let gaps = prop_oneof![Just([0; 3]), prop::array::uniform3(0_i64..2)];
    ((-1_i64..20, -1_i64..15), sizes.clone(), gaps, sizes, 0_i64..3).prop_map(
        |((x, y), (w, h), gaps, (w2, h2), second)| {
            let [side, top, bottom] = gaps;
            let first = [x, x + w, y, y + h, side, top, bottom];
            let meeting = match second {
                0 => return vec![first],
                1 => [x + w, x + w + w2, y + h, y + h + h2, 0, 0, 0],
                _ => [x - w2, x, y + h, y + h + h2, 0, 0, 0],
            };
            vec![first, meeting]
        },
    )
}

fn case() -> impl Strategy<Value = Case> {
    let gaps = prop_oneof![2 => Just([0; 3]), 1 => prop::array::uniform3(0_i64..2)];
    let joints = prop_oneof![Just(Vec::new()), prop::collection::vec(-2_i64..22, 0..3)];
    (
        wall(),
        gaps,
        (-2_i64..14, 2_i64..12),
        (joints, prop::sample::select(vec![0, 2, 4])),
        prop::collection::vec(around(), 0..6),
        (0_i64..6, 0_i64..6),
    )
        .prop_map(|(outline, gaps, (bottom, height), (joints, joint_gap), around, (leg, strip))| Case {
            outline,
            gaps,
            bottom,
            height,
            joints,
            joint_gap,
            around: around.concat(),
            leg,
            strip,
        })
}

fn area(ring: &[Xy]) -> i64 {
    ring.iter().zip(ring.iter().cycle().skip(1)).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum()
}

fn turn(a: Xy, b: Xy, c: Xy) -> i64 {
    ((b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0)).signum()
}

/// Whether two closed segments share a point.
fn share(a: Xy, b: Xy, c: Xy, d: Xy) -> bool {
    let on = |a: Xy, b: Xy, c: Xy| {
        turn(a, b, c) == 0
            && (a.0.min(b.0)..=a.0.max(b.0)).contains(&c.0)
            && (a.1.min(b.1)..=a.1.max(b.1)).contains(&c.1)
    };
    (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0)
        || on(a, b, c)
        || on(a, b, d)
        || on(c, d, a)
        || on(c, d, b)
}

fn is_simple(ring: &[Xy]) -> bool {
    let n = ring.len();
    (0..n).all(|i| {
        (i + 1..n).all(|j| {
            let (a, b, c, d) = (ring[i], ring[(i + 1) % n], ring[j], ring[(j + 1) % n]);
            let neighbours = j == i + 1 || (i == 0 && j == n - 1);
            if neighbours {
                // Only the corner in common.
                let (far, corner, other) = if b == c { (a, b, d) } else { (b, a, c) };
                turn(far, corner, other) != 0
                    || (far.0 - corner.0) * (other.0 - corner.0) + (far.1 - corner.1) * (other.1 - corner.1) < 0
            } else {
                !share(a, b, c, d)
            }
        })
    })
}

fn without_straight(ring: &[Xy]) -> Vec<Xy> {
    let n = ring.len();
    (0..n).filter(|i| turn(ring[(i + n - 1) % n], ring[*i], ring[(i + 1) % n]) != 0).map(|i| ring[i]).collect()
}

/// The outline with its edges moved in, counter-clockwise; none where that is not to be had.
fn moved(case: &Case) -> Option<Vec<Xy>> {
    let mut ring = case.outline.clone();
    if area(&ring) < 0 {
        ring.reverse();
    }
    let ring = without_straight(&ring);
    let [side, top, base] = case.gaps;
    let n = ring.len();
    // a x + b y = c, for each edge.
    let line = |i: usize| {
        let (a, b) = (ring[i], ring[(i + 1) % n]);
        let (dx, dy) = ((b.0 - a.0).signum(), (b.1 - a.1).signum());
        let c = dy * a.0 - dx * a.1;
        let gap = match (dx, dy) {
            (0, _) => side,
            (1, 0) => base,
            (-1, 0) => top,
            _ => 0,
        };
        // Inwards is to the left, where dy x - dx y falls.
        (dy, -dx, c - gap)
    };
    let corner = |i: usize| {
        let ((a, b, c), (d, e, f)) = (line((i + n - 1) % n), line(i));
        let det = a * e - d * b;
        ((c * e - f * b) / det, (a * f - d * c) / det)
    };
    let moved: Vec<Xy> = (0..n).map(corner).collect();
    let keeps = |i: usize| {
        let (a, b, c, d) = (ring[i], ring[(i + 1) % n], moved[i], moved[(i + 1) % n]);
        ((b.0 - a.0).signum(), (b.1 - a.1).signum()) == ((d.0 - c.0).signum(), (d.1 - c.1).signum())
    };
    ((0..n).all(keeps) && is_simple(&moved)).then_some(moved)
}

/// One of the four triangles of a square, by its lower left corner: 0 below, 1 right, 2 above, 3 left of the middle.
type Triangle = (i64, i64, usize);

/// Corners in half millimetres, counter-clockwise.
fn triangle((x, y, k): Triangle) -> [Xy; 3] {
    let square = [(2 * x, 2 * y), (2 * x + 2, 2 * y), (2 * x + 2, 2 * y + 2), (2 * x, 2 * y + 2)];
    [square[k], square[(k + 1) % 4], (2 * x + 1, 2 * y + 1)]
}

fn inside(ring: &[Xy], of: Triangle) -> bool {
    // Sixths of a millimetre, where the middle of no triangle lies on an edge.
    let corners = triangle(of);
    let (x, y) = (corners.iter().map(|c| c.0).sum::<i64>(), corners.iter().map(|c| c.1).sum::<i64>());
    let crosses = |(a, b): (&Xy, &Xy)| {
        let ((ax, ay), (bx, by)) = ((6 * a.0, 6 * a.1), (6 * b.0, 6 * b.1));
        // To the right of the point: its side of the way up.
        (ay > y) != (by > y) && ((bx - ax) * (y - ay) - (x - ax) * (by - ay)) * (by - ay).signum() > 0
    };
    ring.iter().zip(ring.iter().cycle().skip(1)).filter(|pair| crosses(*pair)).count() % 2 == 1
}

fn grown([left, right, bottom, top, side, over, under]: [i64; 7]) -> [i64; 4] {
    [left - side, right + side, bottom - under, top + over]
}

/// The neighbour across each edge of a triangle, in the order of its corners.
fn neighbours((x, y, k): Triangle) -> [Triangle; 3] {
    let across = [(x, y - 1, 2), (x + 1, y, 3), (x, y + 1, 0), (x - 1, y, 1)][k];
    [across, (x, y, (k + 1) % 4), (x, y, (k + 3) % 4)]
}

#[derive(Debug, PartialEq)]
struct Counted {
    at: Xy,
    size: Xy,
    shape: Vec<Xy>,
    holes: Vec<Vec<Xy>>,
    quarter_area: i64,
    thin: [bool; 2],
}

fn counted(case: &Case, ring: &[Xy]) -> Vec<Counted> {
    let bands = case.joints.iter().map(|j| [j - case.joint_gap / 2, j + case.joint_gap / 2, -99, 99]);
    let out: Vec<[i64; 4]> = case.around.iter().map(|own| grown(*own)).chain(bands).collect();
    let mut board = BTreeSet::new();
    for y in case.bottom..case.bottom + case.height {
        for (x, k) in (-6..30).flat_map(|x| (0..4).map(move |k| (x, k))) {
            let taken = out.iter().any(|[l, r, b, t]| *l <= x && x < *r && *b <= y && y < *t);
            if !taken && inside(ring, (x, y, k)) {
                board.insert((x, y, k));
            }
        }
    }
    let parted = |(x, _, k): Triangle, edge: usize| {
        case.joint_gap == 0
            && edge == 0
            && ((k == 1 && case.joints.contains(&(x + 1))) || (k == 3 && case.joints.contains(&x)))
    };
    let mut boards = Vec::new();
    while let Some(first) = board.pop_first() {
        let (mut part, mut waiting) = (BTreeSet::from([first]), vec![first]);
        while let Some(own) = waiting.pop() {
            for (edge, next) in neighbours(own).into_iter().enumerate() {
                if !parted(own, edge) && board.remove(&next) {
                    part.insert(next);
                    waiting.push(next);
                }
            }
        }
        boards.push(part);
    }
    let mut boards: Vec<Counted> = boards.iter().map(|part| count(part, case)).collect();
    boards.sort_by_key(|own| (own.at, own.shape[0].1, own.shape[0].0));
    boards
}

fn count(part: &BTreeSet<Triangle>, case: &Case) -> Counted {
    let mut ways: BTreeMap<Xy, Vec<Xy>> = BTreeMap::new();
    for own in part {
        let corners = triangle(*own);
        for (edge, next) in neighbours(*own).into_iter().enumerate() {
            if !part.contains(&next) {
                ways.entry(corners[edge]).or_default().push(corners[(edge + 1) % 3]);
            }
        }
    }
    // Any way on at a corner; a ring that comes back to one of its corners is parted there.
    let mut rings: Vec<Vec<Xy>> = Vec::new();
    while let Some(start) = ways.iter().find(|(_, to)| !to.is_empty()).map(|(from, _)| *from) {
        let mut path: Vec<Xy> = vec![start];
        while let Some(next) = ways.get_mut(path.last().unwrap()).and_then(Vec::pop) {
            if let Some(at) = path.iter().position(|own| *own == next) {
                rings.push(path.split_off(at));
            }
            path.push(next);
        }
    }
    let xs = || part.iter().flat_map(|own| triangle(*own)).map(|c| c.0);
    let ys = || part.iter().flat_map(|own| triangle(*own)).map(|c| c.1);
    let (left, right, low, high) = (xs().min().unwrap(), xs().max().unwrap(), ys().min().unwrap(), ys().max().unwrap());
    let tidy = |ring: &Vec<Xy>| {
        let mut ring = without_straight(ring);
        let first = (0..ring.len()).min_by_key(|i| (ring[*i].1, ring[*i].0)).unwrap();
        ring.rotate_left(first);
        ring.into_iter().map(|(x, y)| ((x - left) / 2, (y - low) / 2)).collect::<Vec<_>>()
    };
    let mut shapes: Vec<Vec<Xy>> = rings.iter().filter(|ring| area(ring) > 0).map(tidy).collect();
    let mut holes: Vec<Vec<Xy>> = rings.iter().filter(|ring| area(ring) < 0).map(tidy).collect();
    holes.sort_by_key(|ring| (ring[0].1, ring[0].0));
    assert_eq!(shapes.len(), 1, "{rings:?}");
    // The board as it is, and turned over its diagonal: columns are then rows.
    let turned: BTreeSet<Triangle> = part.iter().map(|(x, y, k)| (*y, *x, 3 - *k)).collect();
    let thin = [thin(part, (left / 2, right / 2), case.leg), thin(&turned, (low / 2, high / 2), case.leg)];
    Counted {
        at: (left / 2, low / 2),
        size: ((right - left) / 2, (high - low) / 2),
        shape: shapes.remove(0),
        holes,
        quarter_area: i64::try_from(part.len()).unwrap(),
        thin,
    }
}

/// Whether a level line a quarter or three quarters up a row meets a stretch shorter than `least` between two plumb edges.
/// Plumb edges lie at whole millimetres, a slope is met at a quarter or three quarters.
fn thin(part: &BTreeSet<Triangle>, whole: Xy, least: i64) -> bool {
    let rows: BTreeSet<i64> = part.iter().map(|own| own.1).collect();
    rows.into_iter().any(|y| {
        [0, 2].into_iter().any(|near| {
            // Quarters from left to right: the left triangle, the one in the middle twice, the right one.
            let met = |q: i64| {
                let k = [3, near, near, 1][usize::try_from(q.rem_euclid(4)).unwrap()];
                part.contains(&(q.div_euclid(4), y, k))
            };
            let starts = (4 * -8..4 * 32).filter(|q| met(*q) && !met(q - 1));
            starts.into_iter().any(|from| {
                let to = (from..).find(|q| !met(*q)).unwrap();
                let plumb = from % 4 == 0 && to % 4 == 0;
                plumb && to - from < 4 * least && (from, to) != (4 * whole.0, 4 * whole.1)
            })
        })
    })
}

fn mm(xy: Xy) -> Point {
    Point::new(Length::from_mm(xy.0), Length::from_mm(xy.1))
}

fn ask(case: &Case) -> Result<Vec<BoardShape>, BoardError> {
    let outline = Outline::either_way(case.outline.iter().map(|xy| mm(*xy)).collect()).unwrap();
    let [side, top, base] = case.gaps.map(Length::from_mm);
    let moved = MovedOutline::new(&outline, &OutlineGaps { side, rake: Length::ZERO, top, base })?;
    let around = case.around.iter().map(|own| {
        let [left, right, bottom, top, side, over, under] = own.map(Length::from_mm);
        Obstruction::plumb((left, right), (bottom, top), ObstructionGaps { side, top: over, bottom: under })
    });
    let (around, joints): (Vec<_>, Vec<_>) =
        (around.collect(), case.joints.iter().map(|j| Length::from_mm(*j)).collect());
    let course = CourseToHang {
        bottom: Length::from_mm(case.bottom),
        hang: None,
        height: Length::from_mm(case.height),
        joints: &joints,
        joint_gap: Length::from_mm(case.joint_gap),
        around: &around,
    };
    course.boards(&moved, &ShapeLimits { leg: Length::from_mm(case.leg), strip: Length::from_mm(case.strip) })
}

fn whole(point: &Point) -> Xy {
    let mm = |length: Length| {
        assert_eq!(length.nm() % 1_000_000, 0, "{length:?}");
        length.nm() / 1_000_000
    };
    (mm(point.x), mm(point.y))
}

#[test]
fn boards_are_what_counting_gives() {
    // Walls that the gaps leave nothing of, holes, boards with more than one hole, thin legs, boards with a hole in a corner.
    let seen = std::cell::RefCell::new([0_u32; 5]);
    let cases = ProptestConfig::default().cases.max(6_000);
    let mut runner = TestRunner::new(ProptestConfig { cases, failure_persistence: None, ..ProptestConfig::default() });
    let checked = runner.run(&case(), |case| {
        prop_assume!(is_simple(&without_straight(&case.outline)));
        let given = ask(&case);
        let Some(ring) = moved(&case) else {
            prop_assert_eq!(given, Err(BoardError::Gaps));
            seen.borrow_mut()[0] += 1;
            return Ok(());
        };
        let (given, wanted) = (given.unwrap(), counted(&case, &ring));
        prop_assert_eq!(given.len(), wanted.len());
        for (board, own) in given.iter().zip(&wanted) {
            alike(&case, board, own)?;
            let touching =
                own.holes.iter().flatten().any(|xy| {
                    own.shape.contains(xy) || own.holes.iter().filter(|other| other.contains(xy)).count() > 1
                });
            for (kind, found) in
                [!own.holes.is_empty(), own.holes.len() > 1, own.thin.contains(&true), touching].iter().enumerate()
            {
                seen.borrow_mut()[kind + 1] += u32::from(*found);
            }
        }
        Ok(())
    });
    checked.unwrap();
    assert!(seen.borrow().iter().all(|count| *count > 10), "every kind must come up: {seen:?}");
}

fn alike(case: &Case, board: &BoardShape, own: &Counted) -> Result<(), TestCaseError> {
    let corners = |ring: &Vec<Point>| ring.iter().map(whole).collect::<Vec<_>>();
    let told = (
        whole(&board.at),
        whole(&Point::new(board.length, board.height)),
        corners(&board.corners),
        board.holes.iter().map(corners).collect::<Vec<_>>(),
    );
    prop_assert_eq!(&told, &(own.at, own.size, own.shape.clone(), own.holes.clone()));
    prop_assert!((board.area_mm2 - own.quarter_area as f64 / 4.0).abs() < 1e-9);
    let thin = board.warnings.iter().any(|warning| matches!(warning, ShapeWarning::ThinLeg(_)));
    prop_assert_eq!(thin, own.thin.contains(&true), "{:?}", own);
    prop_assert_eq!(board.warnings.contains(&ShapeWarning::ThinStrip), own.size.1 < case.strip);
    prop_assert_eq!(board.warnings.contains(&ShapeWarning::ShortPiece), own.size.0 < case.leg);
    let lost = (own.at.1 - case.bottom, case.bottom + case.height - own.at.1 - own.size.1);
    prop_assert_eq!((board.rip.bottom, board.rip.top), (Length::from_mm(lost.0), Length::from_mm(lost.1)));
    prop_assert_eq!(cuts(board), cuts_of(case, own));
    Ok(())
}

type Cut = (usize, Vec<BoxSide>, [i64; 4]);

fn cuts(board: &BoardShape) -> Vec<Cut> {
    let of = |cut: &lapwright::board::BoardCut| {
        let ((left, bottom), (right, top)) =
            (whole(&Point::new(cut.left, cut.bottom[0])), whole(&Point::new(cut.right, cut.top[0])));
        (cut.around, cut.sides.clone(), [left, right, bottom, top])
    };
    board.cuts.iter().map(of).collect()
}

/// What lies in the box of what is taken out, and which of the box's sides it comes up to.
fn cuts_of(case: &Case, own: &Counted) -> Vec<Cut> {
    let of = |(at, around): (usize, &[i64; 7])| {
        let [l, r, b, t] = grown(*around);
        let (l, r, b, t) = (l - own.at.0, r - own.at.0, b - own.at.1, t - own.at.1);
        let clipped = [l.max(0), r.min(own.size.0), b.max(0), t.min(own.size.1)];
        let sides = [
            (BoxSide::Left, l <= 0),
            (BoxSide::Right, r >= own.size.0),
            (BoxSide::Bottom, b <= 0),
            (BoxSide::Top, t >= own.size.1),
        ];
        let reached = sides.into_iter().filter(|(_, reached)| *reached).map(|(side, _)| side).collect();
        (clipped[0] < clipped[1] && clipped[2] < clipped[3]).then_some((at, reached, clipped))
    };
    case.around.iter().enumerate().filter_map(of).collect()
}
