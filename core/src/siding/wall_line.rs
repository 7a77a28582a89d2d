use crate::measure::Length;

/// A course line on one wall: how high it lies at the left end, in the middle and at the right end. Between these three
/// it is straight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WallLine {
    /// At the wall's left end.
    pub left: Length,
    /// Halfway between the ends.
    pub middle: Length,
    /// At the wall's right end.
    pub right: Length,
}

impl WallLine {
    /// A level line.
    pub const fn level(at: Length) -> Self {
        Self { left: at, middle: at, right: at }
    }

    /// The three heights, from left to right.
    pub const fn heights(self) -> [Length; 3] {
        [self.left, self.middle, self.right]
    }

    /// The lowest of the three.
    pub fn lowest(self) -> Length {
        self.left.min(self.middle).min(self.right)
    }

    /// The highest of the three.
    pub fn highest(self) -> Length {
        self.left.max(self.middle).max(self.right)
    }

    /// How far it is out of level: the highest of the three less the lowest.
    pub fn out_of_level(self) -> Length {
        self.highest() - self.lowest()
    }

    /// The same line so much lower.
    pub fn less(self, by: Length) -> Self {
        Self { left: self.left - by, middle: self.middle - by, right: self.right - by }
    }

    /// Its height at `x` from the left end of a wall of this width, to the nearest nanometre; beyond the ends that of
    /// the end.
    pub fn at(self, x: Length, width: Length) -> Length {
        let half = width.half();
        let (from, to, along, over) = if x <= half {
            (self.left, self.middle, x, half)
        } else {
            (self.middle, self.right, x - half, width - half)
        };
        if from == to || !over.is_positive() {
            return from;
        }
        let along = along.max(Length::ZERO).min(over);
        (to - from).scaled(along.nm(), over.nm()).map_or(from, |rise| from + rise)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MM: fn(i64) -> Length = Length::from_mm;

    #[test]
    fn the_line_is_straight_between_its_three_heights() {
        let line = WallLine { left: MM(100), middle: MM(110), right: MM(104) };
        let at = |x| line.at(MM(x), MM(1000));
        assert_eq!(
            [at(-5), at(0), at(250), at(500), at(750), at(1000), at(1200)].map(Length::nm),
            [100_000_000, 100_000_000, 105_000_000, 110_000_000, 107_000_000, 104_000_000, 104_000_000]
        );
        assert_eq!((line.lowest(), line.highest(), line.out_of_level()), (MM(100), MM(110), MM(10)));
        assert_eq!(WallLine::level(MM(7)).at(MM(3), Length::ZERO), MM(7), "a wall without width is level");
    }
}
