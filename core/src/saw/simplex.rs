//! The linear programme under column generation: a primal simplex on an explicit inverse that skips zeros. Floats guide
//! the search only; everything that is claimed is worked out again in whole numbers. Only `+ - * /` are used, so that
//! every machine takes the same path.
#![expect(clippy::indexing_slicing, reason = "rows and places in the basis are all below the number of rows")]

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
    basic: Vec<bool>,
    /// `inverse[row][place]`: the basis' inverse, by constraint row.
    inverse: Vec<Vec<f64>>,
    values: Vec<f64>,
    pub(super) duals: Vec<f64>,
    pivots: usize,
    /// Multiplications so far.
    pub(super) work: u64,
}

const TOLERANCE: f64 = 1e-9;

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
            basis,
            basic,
            inverse: vec![vec![0.0; count]; count],
            values: vec![0.0; count],
            duals: vec![0.0; count],
            pivots: 0,
            work: 0,
        };
        simplex.invert();
        simplex
    }

    pub(super) fn add(&mut self, column: Column) {
        self.columns.push(column);
        self.basic.push(false);
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

    /// Goes on until no column improves, or for `most` pivots. Returns whether it is done.
    pub(super) fn solve(&mut self, most: usize) -> bool {
        for _ in 0..most {
            let mut entering: Option<(f64, usize)> = None;
            for (index, column) in self.columns.iter().enumerate() {
                if self.basic[index] {
                    continue;
                }
                let reduced = self.reduced_cost(column);
                self.work += column.entries.len() as u64 + 1;
                if reduced < -TOLERANCE * (1.0 + column.cost) && entering.is_none_or(|(known, _)| reduced < known) {
                    entering = Some((reduced, index));
                }
            }
            let Some((reduced, index)) = entering else { return true };
            let direction = self.direction(index);
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
            let Some((ratio, place)) = leaving else { return true };
            self.pivot(place, index, &direction);
            for (value, step) in self.values.iter_mut().zip(&direction) {
                *value -= ratio * step;
            }
            self.values[place] = ratio;
            for (dual, row) in self.duals.iter_mut().zip(&self.inverse) {
                *dual += reduced * row[place];
            }
            self.pivots += 1;
            if self.pivots.is_multiple_of(1000) {
                self.invert();
            }
        }
        false
    }

    fn direction(&mut self, column: usize) -> Vec<f64> {
        let mut direction = vec![0.0; self.basis.len()];
        for (row, entry) in &self.columns[column].entries {
            for (slot, value) in direction.iter_mut().zip(&self.inverse[*row]) {
                *slot += entry * value;
            }
            self.work += direction.len() as u64;
        }
        direction
    }

    fn pivot(&mut self, place: usize, column: usize, direction: &[f64]) {
        let steps: Vec<(usize, f64)> =
            direction.iter().copied().enumerate().filter(|(at, step)| *at != place && *step != 0.0).collect();
        let dense = steps.len() * 3 > direction.len();
        let pivot = direction[place];
        for row in &mut self.inverse {
            if row[place] == 0.0 {
                continue;
            }
            let factor = row[place] / pivot;
            if dense {
                for (slot, step) in row.iter_mut().zip(direction) {
                    *slot -= factor * step;
                }
                self.work += direction.len() as u64;
            } else {
                for (at, step) in &steps {
                    row[*at] -= factor * step;
                }
                self.work += 2 * steps.len() as u64;
            }
            row[place] = factor;
        }
        self.basic[self.basis[place]] = false;
        self.basic[column] = true;
        self.basis[place] = column;
    }

    /// The inverse, values and duals anew from the basis.
    fn invert(&mut self) {
        let count = self.basis.len();
        for (at, row) in self.inverse.iter_mut().enumerate() {
            row.fill(0.0);
            row[at] = 1.0;
        }
        let mut order = self.basis.clone();
        order.sort_by_key(|column| (self.columns[*column].entries.len(), *column));
        let mut free = vec![true; count];
        for column in order {
            let direction = self.direction(column);
            let mut best: Option<usize> = None;
            for (place, step) in direction.iter().enumerate().filter(|(place, _)| free[*place]) {
                if best.is_none_or(|known| step.abs() > direction[known].abs()) {
                    best = Some(place);
                }
            }
            let Some(place) = best.filter(|place| direction[*place].abs() > 1e-11) else { continue };
            free[place] = false;
            self.pivot(place, column, &direction);
        }
        for column in &self.basis {
            self.basic[*column] = true;
        }
        self.values = vec![0.0; count];
        for (row, right) in self.inverse.iter().zip(&self.right) {
            for (value, entry) in self.values.iter_mut().zip(row) {
                *value += entry * right;
            }
        }
        let costs: Vec<f64> = self.basis.iter().map(|column| self.columns[*column].cost).collect();
        for (dual, row) in self.duals.iter_mut().zip(&self.inverse) {
            *dual = row.iter().zip(&costs).map(|(entry, cost)| entry * cost).sum();
        }
        self.work += 2 * (count * count) as u64;
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
