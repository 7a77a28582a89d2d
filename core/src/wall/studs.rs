use crate::measure::Length;

/// The centres of the studs of a wall, from its left datum.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Studs {
    /// A first stud and the spacing to each next one; they repeat to the left of the first, too.
    Spaced {
        /// The centre of one stud.
        first: Length,
        /// From centre to centre, over zero.
        spacing: Length,
    },
    /// Each centre as it was measured, ascending.
    Measured(Vec<Length>),
}

impl Studs {
    /// The centres within `from..=to`, ascending; at most `limit` of them.
    pub fn within(&self, from: Length, to: Length, limit: usize) -> Vec<Length> {
        match self {
            Self::Measured(centres) => {
                centres.iter().copied().filter(|at| (from..=to).contains(at)).take(limit).collect()
            }
            Self::Spaced { first, spacing } if spacing.is_positive() => {
                let steps = (from - *first).nm().div_euclid(spacing.nm());
                let start = first.nm().saturating_add(steps.saturating_mul(spacing.nm()));
                std::iter::successors(Some(start), |at| at.checked_add(spacing.nm()))
                    .map(Length::from_nm)
                    .skip_while(|at| *at < from)
                    .take_while(|at| *at <= to)
                    .take(limit)
                    .collect()
            }
            Self::Spaced { .. } => Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn studs_repeat_to_both_sides() {
        let n = Length::from_inches;
        let studs = Studs::Spaced { first: n(20), spacing: n(16) };
        assert_eq!(studs.within(n(0), n(40), 99), [n(4), n(20), n(36)]);
        assert_eq!(studs.within(n(4), n(4), 99), [n(4)]);
        assert_eq!(studs.within(n(-20), n(0), 99), [n(-12)]);
        assert_eq!(studs.within(n(0), n(1_000_000), 3).len(), 3);
        assert_eq!(Studs::Measured(vec![n(3), n(18)]).within(n(4), n(40), 99), [n(18)]);
    }
}
