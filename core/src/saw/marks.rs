use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::measure::Length;

use super::arrangement::Arrangement;

/// How many different joints the arrangements of a group may have to be written as bits.
const JOINTS: usize = 256;

/// Joints as bits.
type Bits = [u64; JOINTS / 64];

/// The joints of every arrangement as bits, and the places that stagger closes beside them: whether two arrangements keep
/// their stagger is then one look instead of a walk along both.
#[derive(Clone, Debug)]
pub(super) struct JointBits(Vec<Arc<Vec<(Bits, Bits)>>>);

impl JointBits {
    /// `None` where there are too many different joints.
    pub(super) fn new(choices: &[Arc<Vec<Arrangement>>], stagger: Length) -> Option<Self> {
        // Runs that share their arrangements share the marks.
        let mut seen: BTreeSet<*const Vec<Arrangement>> = BTreeSet::new();
        let different: Vec<&Arc<Vec<Arrangement>>> =
            choices.iter().filter(|choices| seen.insert(Arc::as_ptr(choices))).collect();
        let mut joints: BTreeSet<Length> = BTreeSet::new();
        for arrangement in different.iter().flat_map(|choices| choices.iter()) {
            joints.extend(&arrangement.joints);
            if joints.len() > JOINTS {
                return None;
            }
        }
        let joints: Vec<Length> = joints.into_iter().collect();
        let own = |at: Length| {
            bits(joints.partition_point(|joint| *joint < at)..joints.partition_point(|joint| *joint <= at))
        };
        let closed = |at: Length| {
            let first = joints.partition_point(|joint| at - *joint >= stagger);
            bits(first..joints.partition_point(|joint| *joint - at < stagger))
        };
        let all: BTreeMap<Length, (Bits, Bits)> =
            joints.iter().map(|joint| (*joint, (own(*joint), closed(*joint)))).collect();
        let mark = |arrangement: &Arrangement| {
            let found = arrangement.joints.iter().filter_map(|joint| all.get(joint));
            found.fold(([0; 4], [0; 4]), |mark, joint| (either(mark.0, joint.0), either(mark.1, joint.1)))
        };
        let marks: BTreeMap<_, _> = different
            .iter()
            .map(|choices| (Arc::as_ptr(choices), Arc::new(choices.iter().map(mark).collect::<Vec<_>>())))
            .collect();
        Some(Self(choices.iter().filter_map(|choices| marks.get(&Arc::as_ptr(choices)).cloned()).collect()))
    }

    /// Whether two arrangements, each of a run, keep their stagger.
    pub(super) fn keep(&self, a: (usize, usize), b: (usize, usize)) -> bool {
        let of = |at: (usize, usize)| self.0.get(at.0).and_then(|marks| marks.get(at.1));
        match (of(a), of(b)) {
            (Some((own, _)), Some((_, closed))) => own.iter().zip(closed).all(|(own, closed)| own & closed == 0),
            _ => true,
        }
    }
}

fn either(a: Bits, b: Bits) -> Bits {
    std::array::from_fn(|word| a.get(word).copied().unwrap_or(0) | b.get(word).copied().unwrap_or(0))
}

fn bits(places: std::ops::Range<usize>) -> Bits {
    let mut bits = [0; JOINTS / 64];
    for place in places {
        if let Some(word) = bits.get_mut(place / 64) {
            *word |= 1 << (place % 64);
        }
    }
    bits
}
