//! The edges of a board's shape, and how long they are.

use num_bigint::BigInt;
use num_traits::{Signed, Zero};

use crate::board::BoardShape;
use crate::measure::Length;
use crate::wall::Point;

/// All edges of a shape and of its holes.
pub(super) fn edges(shape: &BoardShape) -> impl Iterator<Item = [Point; 2]> + '_ {
    let rings = std::iter::once(&shape.corners).chain(&shape.holes);
    rings.flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)).map(|(from, to)| [*from, *to]))
}

/// How long an edge is, in whole nanometres.
pub(super) fn length([from, to]: [Point; 2]) -> BigInt {
    let (across, up) = (BigInt::from((to.x - from.x).nm()), BigInt::from((to.y - from.y).nm()));
    (&across * &across + &up * &up).sqrt()
}

/// How long an edge is that is not level, as far as it lies between the bottom of its shape and a height.
pub(super) fn length_under(edge: [Point; 2], height: Length) -> BigInt {
    let [from, to] = edge;
    let all = BigInt::from((to.y - from.y).nm()).abs();
    let (low, high) = (from.y.min(to.y).max(Length::ZERO), from.y.max(to.y).min(height));
    if all.is_zero() || low >= high {
        return BigInt::zero();
    }
    length(edge) * (high - low).nm() / all
}
