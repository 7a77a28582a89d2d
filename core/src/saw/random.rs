use rand_xoshiro::SplitMix64;
use rand_xoshiro::rand_core::{Rng, SeedableRng};

/// A generator with a fixed start (SplitMix64, Steele, Lea and Flood 2014): the same plan on every machine.
#[derive(Clone, Debug)]
pub(super) struct Random(SplitMix64);

impl Random {
    pub(super) fn new(seed: u64) -> Self {
        Self(SplitMix64::seed_from_u64(seed))
    }

    /// Some number under `end`; zero where `end` is.
    pub(super) fn below(&mut self, end: usize) -> usize {
        if end == 0 { 0 } else { (self.0.next_u64() % end as u64) as usize }
    }
}
