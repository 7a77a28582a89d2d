use super::demand::Demand;

/// In which rows of the programme a size counts, and how much.
///
/// In full each size has its own row, hence a price of its own. In spans the prices of neighbouring sizes lie on one line
/// between the first and the last of them: far fewer rows, a bound that is as valid and hardly lower. Without any rest
/// between spans, one line for all would be the bound by length.
#[derive(Clone, Debug)]
pub(super) struct Spans {
    of: Vec<Vec<(usize, f64)>>,
    pub(super) rows: usize,
    pub(super) full: bool,
}

impl Spans {
    /// A row for each size that is wanted.
    pub(super) fn full(copies: &[u32]) -> Self {
        let mut rows = 0;
        let own = |copies: &u32| {
            if *copies == 0 {
                return Vec::new();
            }
            rows += 1;
            vec![(rows - 1, 1.0)]
        };
        let of = copies.iter().map(own).collect();
        Self { of, rows, full: true }
    }

    /// About so many spans of wanted sizes. A new one starts, too, where one piece more or less goes into some board.
    pub(super) fn new(demand: &Demand, copies: &[u32], spans: usize) -> Self {
        let wanted: Vec<usize> =
            (0..copies.len()).filter(|size| copies.get(*size).is_some_and(|count| *count > 0)).collect();
        let each = wanted.len().div_ceil(spans.max(1)).max(1);
        // How often a size goes into the boards decides what it is worth: prices may jump there.
        let fits = |size: usize| -> i64 {
            let length = demand.size(size).max(1);
            demand.kinds.iter().take(8).map(|kind| (kind.capacity / length).min(3)).sum()
        };
        let mut of = vec![Vec::new(); copies.len()];
        let mut rows = 0;
        let mut from = 0;
        while from < wanted.len() {
            let start = wanted.get(from).copied().unwrap_or(0);
            let mut end = from + 1;
            while end - from < each && wanted.get(end).is_some_and(|size| fits(*size) == fits(start)) {
                end += 1;
            }
            let last = wanted.get(end - 1).copied().unwrap_or(start);
            let (long, short) = (demand.size(start), demand.size(last));
            for size in wanted.get(from..end).unwrap_or_default() {
                let share =
                    if long == short { 1.0 } else { (demand.size(*size) - short) as f64 / (long - short) as f64 };
                let both = [(rows, share), (rows + 1, 1.0 - share)];
                if let Some(slot) = of.get_mut(*size) {
                    *slot = both.into_iter().filter(|(_, share)| *share > 0.0).collect();
                }
            }
            rows += if long == short { 1 } else { 2 };
            from = end;
        }
        Self { of, rows, full: false }
    }

    /// The rows of a size with its share in each; none where it is not wanted.
    pub(super) fn of(&self, size: usize) -> &[(usize, f64)] {
        self.of.get(size).map_or(&[], Vec::as_slice)
    }

    /// What a size is worth at these dual values of the rows.
    pub(super) fn price(&self, size: usize, duals: &[f64]) -> f64 {
        self.of(size).iter().map(|(row, share)| share * duals.get(*row).copied().unwrap_or(0.0).max(0.0)).sum()
    }

    /// The entries of a column with so many pieces of each size.
    pub(super) fn entries(&self, pieces: impl Iterator<Item = (usize, f64)>) -> Vec<(usize, f64)> {
        let mut entries: Vec<(usize, f64)> = Vec::new();
        for (size, count) in pieces {
            for (row, share) in self.of(size) {
                match entries.iter_mut().find(|(known, _)| known == row) {
                    Some((_, sum)) => *sum += count * share,
                    None => entries.push((*row, count * share)),
                }
            }
        }
        entries
    }
}
