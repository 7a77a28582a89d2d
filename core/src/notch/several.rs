use super::{Legs, Notch, Warning};
use crate::measure::Length;

/// The cuts for several blocks on one board.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Several {
    /// Each block's own notch, in the order of the blocks.
    pub notches: Vec<Notch>,
    /// What is left between neighbouring cuts: the places of both in `notches`, from left to right, and the width
    /// (zero where the cuts meet or overlap).
    pub between: Vec<(usize, usize, Length)>,
    /// The places in `between` of legs that are thin.
    pub thin: Vec<usize>,
}

/// The notches of one board together, each laid out by itself. Each notch's `legs` reach to the neighbouring cut where that
/// is nearer than the board's end, and what is warned of is that leg: a leg under `leg_min` is thin.
pub fn several(mut notches: Vec<Notch>, leg_min: Length) -> Several {
    let mut order: Vec<(usize, Length, Length)> =
        notches.iter().enumerate().filter_map(|(at, notch)| notch.cut.map(|cut| (at, cut.left, cut.right))).collect();
    order.sort_by_key(|(at, left, right)| (*left, *right, *at));
    let pairs = order.iter().zip(order.iter().skip(1));
    let between: Vec<(usize, usize, Length)> = pairs
        .map(|((first, _, end), (second, start, _))| (*first, *second, (*start - *end).max(Length::ZERO)))
        .collect();
    for (first, second, width) in &between {
        let leg = width.is_positive().then_some(*width);
        set_leg(&mut notches, *first, "right", |legs| legs.right = leg);
        set_leg(&mut notches, *second, "left", |legs| legs.left = leg);
    }
    let thin =
        |(at, (_, _, width)): (usize, &(usize, usize, Length))| (width.is_positive() && *width < leg_min).then_some(at);
    let thin = between.iter().enumerate().filter_map(thin).collect();
    Several { notches, between, thin }
}

fn set_leg(notches: &mut [Notch], at: usize, side: &str, set: impl Fn(&mut Legs)) {
    if let Some(notch) = notches.get_mut(at).filter(|notch| !notch.kind.is_through()) {
        set(&mut notch.legs);
        // The leg to the board's end is none of its own any more.
        notch.warnings.retain(|warning| !matches!(warning, Warning::ThinLeg { leg, .. } if *leg == side));
    }
}
