use crate::measure::Length;

/// What a mark asks of the course lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Want {
    /// A line should lie on the mark: a sill's bottom, a head's top.
    Land,
    /// No line should lie nearer to the mark than this.
    Clear(Length),
}

/// A height that a good layout lands on, or stays clear of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// What the installer calls it.
    pub name: String,
    /// Its height, on the scale of the pole's `from` and `to`.
    pub at: Length,
    /// What it asks of the nearest line.
    pub want: Want,
    /// How much a miss counts against those of other marks; zero leaves it out of the choice.
    pub weight: u16,
}

/// How a mark came out on a pole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MarkResult {
    /// The mark's name.
    pub name: String,
    /// The height of the nearest line above the pole's start (zero is the start itself; the lower of two).
    pub line: Length,
    /// By how much the wish is missed; zero where it is met.
    pub miss: Length,
}

impl MarkResult {
    /// Whether the mark's wish is met.
    pub fn ok(&self) -> bool {
        self.miss == Length::ZERO
    }
}

impl Want {
    /// By how much a nearest line at this distance misses.
    pub(super) fn miss(self, distance: i64) -> i64 {
        match self {
            Self::Land => distance,
            Self::Clear(clear) => clear.nm().saturating_sub(distance).max(0),
        }
    }
}

/// Each mark's nearest line and miss, and the sum of `weight * miss` in nanometres.
///
/// `lines` ascend from the first line above the start; the start counts as a line too.
pub(super) fn judge(marks: &[Mark], from: Length, lines: &[Length]) -> (Vec<MarkResult>, i128) {
    let mut cost = 0_i128;
    let results = marks
        .iter()
        .map(|mark| {
            let at = mark.at - from;
            let above = lines.partition_point(|&line| line < at);
            let lower = above.checked_sub(1).and_then(|i| lines.get(i)).copied().unwrap_or(Length::ZERO);
            let line = match lines.get(above) {
                Some(&upper) if (upper - at).abs() < (at - lower).abs() => upper,
                _ => lower,
            };
            let miss = Length::from_nm(mark.want.miss((at - line).abs().nm()));
            cost += i128::from(mark.weight) * miss.wide();
            MarkResult { name: mark.name.clone(), line, miss }
        })
        .collect();
    (results, cost)
}
