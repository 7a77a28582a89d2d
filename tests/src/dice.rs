//! Numbers by chance that are the same every time (SplitMix64, Steele, Lea and Flood 2014).

/// A generator with a fixed start.
#[derive(Clone, Debug)]
pub struct Dice(u64);

impl Dice {
    /// A generator that starts from `seed`.
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A whole number from `least` to `most`, both included.
    pub fn roll(&mut self, least: i64, most: i64) -> i64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        least + ((z ^ (z >> 31)) % (most - least + 1).unsigned_abs()) as i64
    }
}
