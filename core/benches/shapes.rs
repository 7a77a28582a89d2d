//! How long the true shapes of boards take: one board, and all of a house of 2,500 boards.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use lapwright::board::{CourseToHang, MovedOutline, Obstruction, ObstructionGaps, OutlineGaps, ShapeLimits};
use lapwright::measure::Length;
use lapwright::wall::{Outline, Point};

/// Ten gables of 40 ft by 12 ft under a peak at 24 ft, each with five windows and ten blocks, its courses in ten boards.
const WALLS: usize = 10;
const COURSES: i64 = 25;
const JOINTS: i64 = 9;

fn inch(inches: i64) -> Length {
    Length::from_inches(inches)
}

fn gable() -> Option<MovedOutline> {
    let corners = [(0, 0), (480, 0), (480, 144), (240, 288), (0, 144)];
    let outline = Outline::new(corners.map(|(x, y)| Point::new(inch(x), inch(y))).to_vec()).ok()?;
    let gap = Length::from_inches_64(0, 8);
    MovedOutline::new(&outline, &OutlineGaps { side: gap, rake: gap, top: gap, base: Length::ZERO }).ok()
}

fn around() -> Vec<Obstruction> {
    let gap = Length::from_inches_64(0, 8);
    let gap = ObstructionGaps { side: gap, top: gap, bottom: gap };
    let window = |n: i64| Obstruction::plumb((inch(40 + 90 * n), inch(76 + 90 * n)), (inch(34), inch(82)), gap);
    let block = |n: i64| Obstruction::plumb((inch(20 + 45 * n), inch(25 + 45 * n)), (inch(100), inch(106)), gap);
    (0..5).map(window).chain((0..10).map(block)).collect()
}

fn boards(outline: &MovedOutline, around: &[Obstruction], course: i64, joints: &[Length]) -> usize {
    let course = CourseToHang {
        bottom: inch(7 * course),
        hang: None,
        height: Length::from_inches_64(8, 16),
        joints,
        joint_gap: Length::ZERO,
        around,
    };
    course.boards(outline, &ShapeLimits::default()).map_or(0, |boards| boards.len())
}

fn shapes(criterion: &mut Criterion) {
    let (Some(outline), around) = (gable(), around()) else { return };
    let joints: Vec<Length> = (1..=JOINTS).map(|n| inch(48 * n)).collect();
    criterion.bench_function("shape-one-board", |bencher| {
        bencher.iter(|| boards(black_box(&outline), &[], 10, &[]));
    });
    criterion.bench_function("shapes-2500-boards", |bencher| {
        bencher.iter(|| {
            let wall =
                || (0..COURSES).map(|course| boards(black_box(&outline), &around, course, &joints)).sum::<usize>();
            (0..WALLS).map(|_| wall()).sum::<usize>()
        });
    });
}

criterion_group!(benches, shapes);
criterion_main!(benches);
