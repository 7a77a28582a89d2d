//! Cutting polygons and lines off at the edges of a drawing.

/// A point in dp, before it is packed.
pub(super) type Dp = (f64, f64);

/// A polygon's part within `(0, 0)` to `size`; empty where there is none. What runs along an edge is kept.
pub(super) fn polygon(corners: &[Dp], size: Dp) -> Vec<Dp> {
    let mut kept = corners.to_vec();
    let sides: [fn(Dp, Dp) -> f64; 4] =
        [|(x, _), _| x, |(x, _), (width, _)| width - x, |(_, y), _| y, |(_, y), (_, height)| height - y];
    for inside in sides {
        let mut next = Vec::with_capacity(kept.len() + 2);
        let befores = kept.iter().cycle().skip(kept.len().saturating_sub(1));
        for (a, b) in befores.zip(&kept) {
            let (from, to) = (inside(*a, size), inside(*b, size));
            if (from < 0.0) != (to < 0.0) {
                next.push(between(*a, *b, from / (from - to)));
            }
            if to >= 0.0 {
                next.push(*b);
            }
        }
        kept = next;
    }
    kept
}

/// The parts of a line within `(0, 0)` to `size`.
pub(super) fn line(points: &[Dp], size: Dp) -> Vec<Vec<Dp>> {
    let mut parts: Vec<Vec<Dp>> = Vec::new();
    for (a, b) in points.iter().zip(points.iter().skip(1)) {
        let Some((from, to)) = share(*a, *b, size) else { continue };
        let (start, end) = (between(*a, *b, from), between(*a, *b, to));
        match parts.last_mut() {
            Some(part) if from <= 0.0 && part.last() == Some(a) => part.push(end),
            _ => parts.push(vec![start, end]),
        }
    }
    parts
}

/// Which share of the way from `a` to `b` lies within: Liang and Barsky, 1984.
fn share(a: Dp, b: Dp, size: Dp) -> Option<(f64, f64)> {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for (step, room) in [(-dx, a.0), (dx, size.0 - a.0), (-dy, a.1), (dy, size.1 - a.1)] {
        if step == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if step < 0.0 {
            from = from.max(room / step);
        } else {
            to = to.min(room / step);
        }
    }
    (from <= to).then_some((from, to))
}

fn between(a: Dp, b: Dp, share: f64) -> Dp {
    if share <= 0.0 {
        a
    } else if share >= 1.0 {
        b
    } else {
        (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const SIZE: Dp = (100.0, 50.0);

    fn area(corners: &[Dp]) -> f64 {
        let next = corners.iter().cycle().skip(1);
        corners.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>().abs() / 2.0
    }

    #[test]
    fn a_polygon_over_a_corner_keeps_its_inner_quarter() {
        let square = [(-10.0, -10.0), (10.0, -10.0), (10.0, 10.0), (-10.0, 10.0)];
        assert!((area(&polygon(&square, SIZE)) - 100.0).abs() < 1e-9);
        let outside = [(200.0, 0.0), (210.0, 0.0), (210.0, 10.0)];
        assert!(polygon(&outside, SIZE).is_empty());
    }

    #[test]
    fn a_line_that_leaves_and_comes_back_is_two() {
        let parts = line(&[(10.0, 10.0), (10.0, -10.0), (20.0, -10.0), (20.0, 10.0)], SIZE);
        assert_eq!(parts, vec![vec![(10.0, 10.0), (10.0, 0.0)], vec![(20.0, 0.0), (20.0, 10.0)]]);
        assert_eq!(line(&[(1.0, 1.0), (2.0, 2.0), (3.0, 1.0)], SIZE).len(), 1);
    }

    proptest! {
        #[test]
        fn nothing_is_left_outside(points in proptest::collection::vec((-200.0..300.0_f64, -200.0..300.0_f64), 2..9)) {
            let all = line(&points, SIZE).concat().into_iter().chain(polygon(&points, SIZE));
            for (x, y) in all {
                prop_assert!((-1e-9..=100.0 + 1e-9).contains(&x) && (-1e-9..=50.0 + 1e-9).contains(&y), "{x} {y}");
            }
        }
    }
}
