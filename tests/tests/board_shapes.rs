//! Outside check: shapes of boards against the polygon operations of the `geo` crate, on random walls with rakes of any
//! pitch; and what must hold of them whatever the wall: the courses together cover it once, a mirrored wall has the
//! mirrored boards, and the order in which things are given does not matter.

use geo::{Area, BooleanOps, BoundingRect, Coord, LineString, MultiPolygon, Polygon, Rect};
use lapwright::board::{
    BoardShape, CourseToHang, MovedOutline, Obstruction, ObstructionGaps, OutlineGaps, ShapeLimits, ShapeWarning,
};
use lapwright::measure::Length;
use lapwright::wall::{Outline, Point};
use lapwright_tests::random::Random;

/// A wall as it is asked about, in nanometres.
#[derive(Clone, Debug)]
struct House {
    corners: Vec<(i64, i64)>,
    gaps: OutlineGaps,
    joints: Vec<Length>,
    joint_gap: Length,
    around: Vec<Obstruction>,
}

/// Any number of nanometres between two numbers of millimetres.
fn nm(random: &mut Random, least: i64, most: i64) -> i64 {
    random.between(least * 1_000_000, most * 1_000_000)
}

fn length(random: &mut Random, least: i64, most: i64) -> Length {
    Length::from_nm(nm(random, least, most))
}

/// A wall of some kind, counter-clockwise from its lower left corner: a gable, a shed, a hip, a gable with a bay in its rake,
/// with a base that steps up or down once or twice, or runs along a slope.
fn house(random: &mut Random) -> House {
    let width = nm(random, 3_000, 12_000);
    let part = |random: &mut Random, least: i64, most: i64| width / 100 * random.between(least, most);
    let mut corners = vec![(0, nm(random, -300, 300))];
    for (from, to) in [(15, 45), (55, 85)] {
        match random.between(0, 3) {
            // A step, plumb; or a slope.
            0 | 1 => {
                let (x, y) = (part(random, from, to), nm(random, -300, 300));
                corners.extend([(x, corners.last().unwrap().1), (x, y)]);
            }
            2 => corners.push((part(random, from, to), nm(random, -300, 300))),
            _ => {}
        }
    }
    corners.push((width, nm(random, -300, 300)));
    let eave = |random: &mut Random| nm(random, 1_000, 2_500);
    let right = eave(random);
    corners.push((width, right));
    match random.between(0, 4) {
        0 => corners.push((part(random, 20, 80), nm(random, 2_600, 5_000))),
        1 => {
            let top = nm(random, 2_600, 5_000);
            corners.extend([(part(random, 60, 80), top), (part(random, 20, 40), top)]);
        }
        2 => {
            // Two peaks with a valley between.
            corners.push((part(random, 70, 90), nm(random, 3_000, 5_000)));
            corners.push((part(random, 45, 55), nm(random, 2_000, 2_900)));
            corners.push((part(random, 10, 30), nm(random, 3_000, 5_000)));
        }
        3 => {
            // A rake that goes on further up behind a plumb wall.
            let x = part(random, 50, 60);
            corners.extend([
                (x, nm(random, 2_600, 3_000)),
                (x, nm(random, 3_100, 3_500)),
                (part(random, 20, 40), nm(random, 3_600, 4_500)),
            ]);
        }
        _ => {}
    }
    corners.push((0, eave(random)));
    let gap = |random: &mut Random| if random.between(0, 4) == 0 { Length::ZERO } else { length(random, 0, 25) };
    let gaps = OutlineGaps { side: gap(random), rake: gap(random), top: gap(random), base: gap(random) };
    let joints = (0..random.between(0, 3)).map(|_| length(random, 0, 12_000)).collect();
    let joint_gap = gap(random);
    let around = (0..random.between(0, 7)).map(|_| {
        let (left, bottom) = (length(random, -500, 12_000), length(random, -500, 4_500));
        let (width, height) = if random.between(0, 1) == 0 {
            (nm(random, 30, 200), nm(random, 20, 150))
        } else {
            (nm(random, 300, 2_000), nm(random, 200, 1_500))
        };
        let (right, top) = (left + Length::from_nm(width), bottom + Length::from_nm(height));
        let gap = ObstructionGaps { side: gap(random), top: gap(random), bottom: gap(random) };
        Obstruction::plumb((left, right), (bottom, top), gap)
    });
    let around = around.collect();
    House { corners, gaps, joints, joint_gap, around }
}

fn outline(corners: &[(i64, i64)]) -> Outline {
    let point = |(x, y): &(i64, i64)| Point::new(Length::from_nm(*x), Length::from_nm(*y));
    Outline::either_way(corners.iter().map(point).collect()).unwrap()
}

/// A rectangle grown by its gaps.
fn grown(own: &Obstruction) -> Obstruction {
    let ObstructionGaps { side, top, bottom } = own.gap;
    let (x, y) = ((own.left - side, own.right + side), (own.bottom - bottom, own.top + top));
    Obstruction::plumb(x, y, ObstructionGaps::default())
}

impl House {
    fn moved(&self) -> Option<MovedOutline> {
        MovedOutline::new(&outline(&self.corners), &self.gaps).ok()
    }

    fn boards(&self, bottom: Length, height: Length) -> Vec<BoardShape> {
        let course = CourseToHang {
            bottom,
            hang: None,
            height,
            joints: &self.joints,
            joint_gap: self.joint_gap,
            around: &self.around,
        };
        course.boards(&self.moved().unwrap(), &ShapeLimits::default()).unwrap()
    }

    /// The moved outline in millimetres, by floats.
    fn polygon(&self) -> Polygon {
        let n = self.corners.len();
        let line = |i: usize| {
            let ((ax, ay), (bx, by)) = (self.corners[i % n], self.corners[(i + 1) % n]);
            let (dx, dy) = ((bx - ax) as f64 / 1e6, (by - ay) as f64 / 1e6);
            let gap = match (bx == ax, by == ay) {
                (true, _) => self.gaps.side,
                (_, true) if bx > ax => self.gaps.base,
                (_, true) => self.gaps.top,
                _ => self.gaps.rake,
            };
            let long = dx.hypot(dy);
            let move_by = gap.nm() as f64 / 1e6;
            let (x, y) = (ax as f64 / 1e6 - dy / long * move_by, ay as f64 / 1e6 + dx / long * move_by);
            (dy, -dx, dy * x - dx * y)
        };
        let corner = |i: usize| {
            let ((a, b, c), (d, e, f)) = (line(i + n - 1), line(i));
            let det = a * e - d * b;
            Coord { x: (c * e - f * b) / det, y: (a * f - d * c) / det }
        };
        Polygon::new(LineString((0..n).map(corner).collect()), vec![])
    }

    /// What is left of a strip, by `geo`, in pieces of more than a hundredth of a square millimetre.
    fn left_over(&self, bottom: Length, height: Length) -> Vec<Polygon> {
        let mm = |length: Length| length.nm() as f64 / 1e6;
        let rect =
            |x: (f64, f64), y: (f64, f64)| Rect::new(Coord { x: x.0, y: y.0 }, Coord { x: x.1, y: y.1 }).to_polygon();
        let mut joints: Vec<f64> = self.joints.iter().map(|joint| mm(*joint)).collect();
        joints.sort_by(f64::total_cmp);
        let half = mm(self.joint_gap) / 2.0;
        let from = std::iter::once(-2e3).chain(joints.iter().map(|joint| joint + half));
        let to = joints.iter().map(|joint| joint - half).chain([1.4e4]);
        let strips = from.zip(to).filter(|(from, to)| from < to);
        let strips: Vec<Polygon> = strips.map(|x| rect(x, (mm(bottom), mm(bottom + height)))).collect();
        let out: Vec<Polygon> = self
            .around
            .iter()
            .map(|own| {
                let own = grown(own);
                rect((mm(own.left), mm(own.right)), (mm(own.bottom), mm(own.top)))
            })
            .collect();
        let mut pieces = Vec::new();
        for strip in strips {
            let mut left = MultiPolygon(vec![self.polygon()]).intersection(&MultiPolygon(vec![strip]));
            for own in &out {
                left = left.difference(&MultiPolygon(vec![own.clone()]));
            }
            pieces.extend(left.0.into_iter().filter(|piece| piece.unsigned_area() > 0.01));
        }
        let least = |piece: &Polygon| {
            let bounds = piece.bounding_rect().unwrap();
            (bounds.min().x, bounds.min().y)
        };
        pieces.sort_by(|a, b| least(a).partial_cmp(&least(b)).unwrap());
        pieces
    }
}

/// A board's rings on the wall, in millimetres.
fn rings(board: &BoardShape) -> Vec<Vec<Coord>> {
    let mm = |length: Length| length.nm() as f64 / 1e6;
    let on_wall = |point: &Point| Coord { x: mm(board.at.x + point.x), y: mm(board.at.y + point.y) };
    std::iter::once(&board.corners).chain(&board.holes).map(|ring| ring.iter().map(on_wall).collect()).collect()
}

/// The corners of a ring that `geo` gives, without those that stand hardly out of the line between their neighbours.
fn corners(ring: &LineString) -> Vec<Coord> {
    let mut ring: Vec<Coord> = ring.0.clone();
    ring.pop();
    loop {
        let n = ring.len();
        let flat = |i: usize| {
            let (a, b, c) = (ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]);
            let (u, v) = ((b.x - a.x, b.y - a.y), (c.x - a.x, c.y - a.y));
            (u.0 * v.1 - u.1 * v.0).abs() / v.0.hypot(v.1).max(1e-9) < NEAR
        };
        let Some(at) = (0..n).find(|i| flat(*i)) else { return ring };
        ring.remove(at);
    }
}

/// `geo` works on a grid of its own, some hundred-thousandths of a millimetre wide on these walls.
const NEAR: f64 = 2e-4;

fn far(a: &[Coord], b: &[Coord]) -> Option<Coord> {
    let near = |one: &Coord| b.iter().any(|other| (one.x - other.x).hypot(one.y - other.y) < 10.0 * NEAR);
    a.iter().find(|one| !near(one)).copied()
}

/// Whether a level line, halfway between neighbouring heights of corners, meets a stretch shorter than `least` between two
/// plumb edges that is not the whole of the polygon; and how near to `least` any such stretch comes.
fn thin(rings: &[Vec<Coord>], least: f64) -> (bool, f64) {
    let mut ys: Vec<f64> = rings.iter().flatten().map(|corner| corner.y).collect();
    ys.sort_by(f64::total_cmp);
    let xs = || rings.iter().flatten().map(|corner| corner.x);
    let whole = xs().fold(f64::MIN, f64::max) - xs().fold(f64::MAX, f64::min);
    let (mut found, mut near) = (false, f64::MAX);
    for pair in ys.windows(2).filter(|pair| pair[1] - pair[0] > 1e-3) {
        let y = (pair[0] + pair[1]) / 2.0;
        let mut met: Vec<(f64, bool)> = Vec::new();
        for ring in rings {
            for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                if (a.y > y) != (b.y > y) {
                    met.push((a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y), (a.x - b.x).abs() < 1e-6));
                }
            }
        }
        met.sort_by(|a, b| a.0.total_cmp(&b.0));
        for stretch in met.chunks(2).filter(|stretch| stretch.iter().all(|(_, plumb)| *plumb)) {
            let width = stretch[1].0 - stretch[0].0;
            if (width - whole).abs() > 1e-3 {
                found |= width < least;
                near = near.min((width - least).abs());
            }
        }
    }
    (found, near)
}

#[test]
fn boards_are_what_polygon_operations_leave() {
    let mut random = Random::new(0x5EED_0301);
    let (mut boards, mut holes, mut legs, mut walls) = (0, 0, [0, 0], 0);
    for case in 0..2_500 {
        let own = house(&mut random);
        if own.moved().is_none() {
            continue;
        }
        walls += 1;
        for _ in 0..3 {
            let (bottom, height) = (length(&mut random, -400, 5_000), length(&mut random, 30, 320));
            let (given, wanted) = (own.boards(bottom, height), own.left_over(bottom, height));
            let given: Vec<BoardShape> = given.into_iter().filter(|board| board.area_mm2 > 0.01).collect();
            assert_eq!(given.len(), wanted.len(), "case {case}: {own:?} {bottom:?} {height:?}");
            for (board, piece) in given.iter().zip(&wanted) {
                let area = piece.unsigned_area();
                assert!((board.area_mm2 - area).abs() < 0.05 + area * 1e-6, "case {case}: {board:?} {area}");
                assert_eq!(board.holes.len(), piece.interiors().len(), "case {case}");
                let ours = rings(board);
                let theirs: Vec<Vec<Coord>> =
                    std::iter::once(piece.exterior()).chain(piece.interiors()).map(corners).collect();
                let (all, their) = (ours.concat(), theirs.concat());
                assert_eq!(far(&all, &their), None, "case {case}: {own:?} {bottom:?} {height:?}");
                assert_eq!(far(&their, &all), None, "case {case}: {own:?} {bottom:?} {height:?}");
                let turned = |rings: &[Vec<Coord>]| -> Vec<Vec<Coord>> {
                    rings.iter().map(|ring| ring.iter().map(|c| Coord { x: c.y, y: c.x }).collect()).collect()
                };
                let (across, upright) = (thin(&ours, 50.8), thin(&turned(&ours), 50.8));
                let told = board.warnings.iter().any(|warning| matches!(warning, ShapeWarning::ThinLeg(_)));
                assert!(across.1.min(upright.1) > 1e-5, "a leg too near to tell: another seed, please");
                assert_eq!(told, across.0 || upright.0, "case {case}: {board:?}");
                legs[usize::from(told)] += 1;
                holes += board.holes.len();
            }
            boards += given.len();
        }
    }
    assert!(walls > 2_000 && boards > 6_000 && holes > 40 && legs[1] > 150, "{walls} {boards} {holes} {legs:?}");
}

/// Courses one over the other cover the moved outline less what is taken out, all of it and nothing twice.
#[test]
fn courses_together_cover_the_wall_once() {
    let mut random = Random::new(0x5EED_0302);
    let mut walls = 0;
    for case in 0..150 {
        let mut own = house(&mut random);
        own.joint_gap = Length::ZERO;
        if own.moved().is_none() {
            continue;
        }
        walls += 1;
        let whole = own.boards(Length::from_mm(-1_000), Length::from_mm(7_000));
        let total: f64 = whole.iter().map(|board| board.area_mm2).sum();
        let (mut bottom, mut sum, mut pieces) = (Length::from_mm(-1_000), 0.0, MultiPolygon(Vec::new()));
        while bottom < Length::from_mm(6_000) {
            let height = length(&mut random, 100, 320).min(Length::from_mm(6_000) - bottom);
            for board in own.boards(bottom, height) {
                sum += board.area_mm2;
                let mut rings = rings(&board).into_iter().map(LineString);
                pieces.0.push(Polygon::new(rings.next().unwrap(), rings.collect()));
            }
            bottom = bottom + height;
        }
        assert!((sum - total).abs() <= 1e-9 * total, "case {case}: {sum} {total}");
        let mut left = MultiPolygon(vec![own.polygon()]);
        for own in own.around.iter().map(grown) {
            let [l, r, b, t] = [own.left, own.right, own.bottom, own.top].map(|length| length.nm() as f64 / 1e6);
            let rect = Rect::new(Coord { x: l, y: b }, Coord { x: r, y: t }).to_polygon();
            left = left.difference(&MultiPolygon(vec![rect]));
        }
        let area = left.unsigned_area();
        assert!((total - area).abs() < 0.1 + 1e-6 * area, "case {case}: {total} {area}");
    }
    assert!(walls > 100, "{walls}");
}

#[test]
fn mirrored_walls_and_other_orders_give_the_same_boards() {
    let mut random = Random::new(0x5EED_0303);
    let mut boards = 0;
    for case in 0..300 {
        let mut own = house(&mut random);
        // Half of a joint's gap in whole nanometres: halves are rounded away from zero, which a mirror turns round.
        own.joint_gap = Length::from_nm(own.joint_gap.nm() * 2);
        if own.moved().is_none() {
            continue;
        }
        let (bottom, height) = (length(&mut random, -400, 5_000), length(&mut random, 30, 320));
        let given = own.boards(bottom, height);
        boards += given.len();

        let mut other = own.clone();
        other.corners.rotate_left(usize::try_from(random.between(0, 3)).unwrap());
        other.corners.reverse();
        other.joints.reverse();
        other.around.reverse();
        let again = other.boards(bottom, height);
        let last = own.around.len().saturating_sub(1);
        let unmixed = |mut board: BoardShape| {
            board.cuts.reverse();
            board.cuts.iter_mut().for_each(|cut| cut.around = last - cut.around);
            board
        };
        assert_eq!(again.into_iter().map(unmixed).collect::<Vec<_>>(), given, "case {case}: {own:?}");

        let mut mirrored = own.clone();
        mirrored.corners.iter_mut().for_each(|corner| corner.0 = -corner.0);
        mirrored.joints.iter_mut().for_each(|joint| *joint = -*joint);
        mirrored.around.iter_mut().for_each(|own| (own.left, own.right) = (-own.right, -own.left));
        let back = mirrored.boards(bottom, height);
        let key = |own: &BoardShape| (own.at.x, own.at.y, own.length);
        let mut turned: Vec<BoardShape> = back.iter().map(mirror).collect();
        let mut given = given;
        turned.sort_by_key(key);
        given.sort_by_key(key);
        assert_eq!(turned.len(), given.len());
        for (turned, board) in turned.iter().zip(&given) {
            assert_eq!(
                (turned.at, turned.length, turned.height),
                (board.at, board.length, board.height),
                "case {case}"
            );
            assert_eq!(sorted(turned), sorted(board), "case {case}: {own:?}");
            assert_eq!((turned.rip, &turned.warnings), (board.rip, &board.warnings), "case {case}");
            assert!((turned.area_mm2 - board.area_mm2).abs() <= 1e-15 * board.area_mm2, "case {case}");
        }
    }
    assert!(boards > 300, "{boards}");
}

/// A board seen from behind, on the wall seen from behind.
fn mirror(board: &BoardShape) -> BoardShape {
    let turn = |point: &Point| Point::new(board.length - point.x, point.y);
    let ring = |corners: &Vec<Point>| corners.iter().map(turn).collect();
    BoardShape {
        at: Point::new(-(board.at.x + board.length), board.at.y),
        corners: ring(&board.corners),
        holes: board.holes.iter().map(ring).collect(),
        ..board.clone()
    }
}

/// A board's corners and its holes' corners in an order that does not depend on where a ring begins.
fn sorted(board: &BoardShape) -> (Vec<Point>, Vec<Vec<Point>>) {
    let ring = |corners: &Vec<Point>| {
        let mut corners = corners.clone();
        corners.sort();
        corners
    };
    let mut holes: Vec<Vec<Point>> = board.holes.iter().map(ring).collect();
    holes.sort();
    (ring(&board.corners), holes)
}
