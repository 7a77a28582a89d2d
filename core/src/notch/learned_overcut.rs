use super::Overcut;
use crate::measure::Length;

/// How many cuts it takes before the learned overcut is used.
pub const LEAST_CUTS: usize = 3;

/// A gap measured after fitting, and the offset that its line was drawn with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FittedGap {
    /// The finished gap.
    pub gap: Length,
    /// The offset of the line.
    pub offset: Length,
}

/// What was learned of a saw and a pair of hands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LearnedOvercut {
    /// The least and the greatest overcut that was seen.
    pub overcut: Overcut,
    /// From how many cuts.
    pub cuts: usize,
}

impl LearnedOvercut {
    /// The overcut to reckon with: the learned one from [`LEAST_CUTS`] cuts on, before that `given`.
    pub const fn overcut_or(&self, given: Overcut) -> Overcut {
        if self.cuts >= LEAST_CUTS { self.overcut } else { given }
    }
}

/// The overcut interval of a saw and a pair of hands: each cut took `gap - offset` beyond its line. `None` without cuts.
pub fn learned_overcut(fitted: &[FittedGap]) -> Option<LearnedOvercut> {
    let taken = || fitted.iter().map(|cut| cut.gap - cut.offset);
    let overcut = Overcut { min: taken().min()?, max: taken().max()? };
    Some(LearnedOvercut { overcut, cuts: fitted.len() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn learns_the_interval_and_uses_it_from_three_cuts_on() {
        let fitted = |gap, offset| FittedGap { gap: Length::from_nm(gap), offset: Length::from_nm(offset) };
        let cuts = [fitted(2_000_000, 1_500_000), fitted(1_800_000, 1_500_000), fitted(700_000, 800_000)];
        assert_eq!(learned_overcut(&[]), None);
        let habit = learned_overcut(&cuts).unwrap();
        let learned = Overcut { min: Length::from_nm(-100_000), max: Length::from_nm(500_000) };
        assert_eq!(habit, LearnedOvercut { overcut: learned, cuts: 3 });
        let given = Overcut::default();
        assert_eq!(habit.overcut_or(given), learned);
        assert_eq!(learned_overcut(&cuts[..2]).unwrap().overcut_or(given), given);
    }
}
