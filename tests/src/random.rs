//! Random numbers that are the same every time (SplitMix64, Steele, Lea and Flood 2014).

use lapwright::measure::Length;
use rand_xoshiro::SplitMix64;
use rand_xoshiro::rand_core::{Rng, SeedableRng};

/// A generator with a fixed start.
#[derive(Clone, Debug)]
pub struct Random(SplitMix64);

impl Random {
    /// A generator that starts from `seed`.
    pub fn new(seed: u64) -> Self {
        Self(SplitMix64::seed_from_u64(seed))
    }

    /// A whole number from `least` to `most`, both included.
    pub fn between(&mut self, least: i64, most: i64) -> i64 {
        least + (self.0.next_u64() % (most - least + 1).unsigned_abs()) as i64
    }

    /// A length from `least` to `most`, both included, to the nanometre.
    pub fn length(&mut self, least: Length, most: Length) -> Length {
        Length::from_nm(self.between(least.nm(), most.nm()))
    }

    /// A place in a list of `count`; 0 in an empty one.
    pub fn below(&mut self, count: usize) -> usize {
        (self.0.next_u64() % count.max(1) as u64) as usize
    }

    /// One of several.
    ///
    /// # Panics
    /// Where there are none.
    #[allow(clippy::indexing_slicing, reason = "a check that has nothing to choose from must fail")]
    pub fn of<'a, T: ?Sized>(&mut self, choices: &[&'a T]) -> &'a T {
        choices[self.below(choices.len())]
    }
}
