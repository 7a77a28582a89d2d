//! The linear programme under column generation: a primal simplex on sparse factors of the basis. Floats guide
//! the search only; everything that is claimed is worked out again in whole numbers. Only `+ - * /` are used, so that
//! every machine takes the same path.
#![expect(clippy::indexing_slicing, reason = "rows and places in the basis are all below the number of rows")]

use super::factor::Factor;

/// A variable: its cost and its entries by row.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub(super) cost: f64,
    pub(super) entries: Vec<(usize, f64)>,
}

/// `min cost x` with `A x = b`, `x >= 0`.
#[derive(Clone, Debug)]
pub(super) struct Simplex {
    pub(super) columns: Vec<Column>,
    right: Vec<f64>,
    /// The column at each place of the basis.
    basis: Vec<usize>,
    /// For each row the column that it started with.
    home: Vec<usize>,
    basic: Vec<bool>,
    factor: Factor,
    values: Vec<f64>,
    pub(super) duals: Vec<f64>,
    /// Columns that were seen to improve.
    candidates: Vec<usize>,
    /// Multiplications so far.
    pub(super) work: u64,
}

const TOLERANCE: f64 = 1e-9;
/// How many improving columns are kept from one look at all of them.
const CANDIDATES: usize = 40;

impl Simplex {
    /// Starts from a basis of one column for each row, in which every value is at least zero.
    pub(super) fn new(columns: Vec<Column>, right: Vec<f64>, basis: Vec<usize>) -> Self {
        let count = right.len();
        let mut basic = vec![false; columns.len()];
        for column in &basis {
            basic[*column] = true;
        }
        let mut simplex = Self {
            columns,
            right,
            home: basis.clone(),
            basis,
            basic,
            factor: Factor::default(),
            values: vec![0.0; count],
            duals: vec![0.0; count],
            candidates: Vec::new(),
            work: 0,
        };
        simplex.refactor();
        simplex
    }

    pub(super) fn add(&mut self, column: Column) {
        self.columns.push(column);
        self.basic.push(false);
        self.candidates.clear();
    }

    /// The value of the objective for another right side, if the basis stays the best.
    pub(super) fn objective(&self, right: &[f64]) -> f64 {
        self.duals.iter().zip(right).map(|(dual, right)| dual * right).sum()
    }

    /// The columns in the basis with their values.
    pub(super) fn solution(&self) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.basis.iter().copied().zip(self.values.iter().copied())
    }

    pub(super) fn reduced_cost(&self, column: &Column) -> f64 {
        column.entries.iter().fold(column.cost, |cost, (row, entry)| cost - self.duals[*row] * entry)
    }

    /// The column that improves most among some that were seen to; now and then all are looked at.
    fn entering(&mut self) -> Option<(f64, usize)> {
        for fresh in [false, true] {
            if fresh {
                let mut found: Vec<(f64, usize)> = Vec::new();
                for (index, column) in self.columns.iter().enumerate() {
                    self.work += column.entries.len() as u64 + 1;
                    let reduced = self.reduced_cost(column);
                    if !self.basic[index] && reduced < -TOLERANCE * (1.0 + column.cost) {
                        found.push((reduced / (1.0 + column.cost), index));
                    }
                }
                found.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
                found.truncate(CANDIDATES);
                self.candidates = found.into_iter().map(|(_, index)| index).collect();
            }
            let mut best: Option<(f64, usize)> = None;
            let mut kept = std::mem::take(&mut self.candidates);
            kept.retain(|index| {
                let column = &self.columns[*index];
                self.work += column.entries.len() as u64 + 1;
                let reduced = self.reduced_cost(column);
                let improves = !self.basic[*index] && reduced < -TOLERANCE * (1.0 + column.cost);
                let rate = reduced / (1.0 + column.cost);
                if improves && best.is_none_or(|(known, _)| rate < known) {
                    best = Some((rate, *index));
                }
                improves
            });
            self.candidates = kept;
            if best.is_some() {
                return best;
            }
        }
        None
    }

    /// Goes on until no column improves, or for `most` pivots. Returns whether it is done.
    pub(super) fn solve(&mut self, most: usize) -> bool {
        let count = self.basis.len();
        let (mut row, mut direction, mut unit) = (vec![0.0; count], vec![0.0; count], vec![0.0; count]);
        for _ in 0..most {
            let Some((_, index)) = self.entering() else {
                // What accumulated errors hide is seen with fresh factors.
                if self.factor.changed() == 0 {
                    return true;
                }
                self.refactor();
                continue;
            };
            let before = self.factor.work;
            for (at, entry) in &self.columns[index].entries {
                row[*at] += entry;
            }
            self.factor.forward(&mut row, &mut direction);
            row.fill(0.0);
            let mut leaving: Option<(f64, usize)> = None;
            for (place, step) in direction.iter().enumerate() {
                if *step > 1e-8 {
                    let ratio = self.values[place].max(0.0) / step;
                    let better = leaving.is_none_or(|(known, best)| {
                        ratio < known - 1e-13 || (ratio <= known + 1e-13 && *step > direction[best])
                    });
                    if better {
                        leaving = Some((ratio, place));
                    }
                }
            }
            self.work += count as u64;
            let Some((ratio, place)) = leaving else { return true };
            let reduced = self.reduced_cost(&self.columns[index]);
            for (value, step) in self.values.iter_mut().zip(&direction) {
                *value -= ratio * step;
            }
            self.exchange(place, index, ratio, reduced, &direction, &mut unit, &mut row);
            self.work += self.factor.work - before + count as u64;
        }
        false
    }

    /// Puts a column in a place of the basis, with its value, and moves the duals along.
    #[expect(clippy::too_many_arguments, reason = "three of them are room to work in")]
    fn exchange(
        &mut self,
        place: usize,
        index: usize,
        value: f64,
        reduced: f64,
        direction: &[f64],
        unit: &mut [f64],
        row: &mut [f64],
    ) {
        self.values[place] = value;
        self.basic[self.basis[place]] = false;
        self.basic[index] = true;
        self.basis[place] = index;
        self.factor.replace(place, direction);
        if self.factor.worn() {
            self.refactor();
            return;
        }
        unit[place] = 1.0;
        self.factor.backward(unit, row);
        unit.fill(0.0);
        for (dual, entry) in self.duals.iter_mut().zip(row.iter()) {
            *dual += reduced * entry;
        }
        row.fill(0.0);
    }

    /// Factors, values and duals anew from the basis.
    fn refactor(&mut self) {
        let count = self.basis.len();
        let before = self.factor.work;
        for _ in 0..4 {
            let columns: Vec<&[(usize, f64)]> =
                self.basis.iter().map(|column| self.columns[*column].entries.as_slice()).collect();
            let Err(lost) = self.factor.of(&columns) else { break };
            // Where the basis has become singular, rows take back the columns that they started with.
            for (row, place) in lost {
                self.basic[self.basis[place]] = false;
                self.basis[place] = self.home[row];
                self.basic[self.home[row]] = true;
            }
        }
        self.factor.forward(&mut self.right.clone(), &mut self.values);
        let mut costs: Vec<f64> = self.basis.iter().map(|column| self.columns[*column].cost).collect();
        self.duals.fill(0.0);
        self.factor.backward(&mut costs, &mut self.duals);
        self.work += self.factor.work - before + 4 * count as u64;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two rows by hand: min 2x + 3y with x + 2y = 4 and x + s = 3 is x = 0, y = 2 (6) or x = 3, y = 1/2 (7.5).
    #[test]
    fn a_small_programme() {
        let column = |cost: f64, entries: &[(usize, f64)]| Column { cost, entries: entries.to_vec() };
        let columns = vec![
            column(100.0, &[(0, 1.0)]),
            column(0.0, &[(1, 1.0)]),
            column(2.0, &[(0, 1.0), (1, 1.0)]),
            column(3.0, &[(0, 2.0)]),
        ];
        let mut simplex = Simplex::new(columns, vec![4.0, 3.0], vec![0, 1]);
        assert!(simplex.solve(100));
        assert!((simplex.objective(&[4.0, 3.0]) - 6.0).abs() < 1e-9);
        assert!((simplex.duals[0] - 1.5).abs() < 1e-9);
    }
}
