//! A basis as a product of two triangular matrices, kept sparse: columns with one entry left, then rows with one entry
//! left are pivoted without any fill; only the rest is eliminated column by column.
#![expect(clippy::indexing_slicing, reason = "rows, places and steps are all below the number of rows")]

use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// Entries of many short vectors, one behind the other.
#[derive(Clone, Debug, Default)]
struct Bands {
    starts: Vec<u32>,
    at: Vec<u32>,
    value: Vec<f64>,
}

impl Bands {
    fn clear(&mut self) {
        self.starts.clear();
        self.starts.push(0);
        self.at.clear();
        self.value.clear();
    }

    fn push(&mut self, at: usize, value: f64) {
        self.at.push(at as u32);
        self.value.push(value);
    }

    fn close(&mut self) {
        self.starts.push(self.at.len() as u32);
    }

    fn of(&self, band: usize) -> impl Iterator<Item = (usize, f64)> + '_ {
        let range = self.starts[band] as usize..self.starts[band + 1] as usize;
        self.at[range.clone()].iter().map(|at| *at as usize).zip(self.value[range].iter().copied())
    }

    fn len(&self) -> usize {
        self.at.len()
    }
}

/// What one pivot changed: the place in the basis and the new column in terms of the old basis.
#[derive(Clone, Debug)]
struct Pivot {
    place: usize,
    pivot: f64,
}

/// The factors of a basis and the changes since.
#[derive(Clone, Debug, Default)]
pub(super) struct Factor {
    /// The row and the place in the basis that each step eliminates.
    rows: Vec<usize>,
    places: Vec<usize>,
    diagonal: Vec<f64>,
    /// By step, over rows: what lies below the diagonal, as multiples of it.
    lower: Bands,
    /// The steps that have anything below the diagonal.
    lower_steps: Vec<u32>,
    /// By step, over rows: what lies above the diagonal.
    upper: Bands,
    changes: Vec<Pivot>,
    change_entries: Bands,
    /// Multiplications so far.
    pub(super) work: u64,
}

const NONE: usize = usize::MAX;

impl Factor {
    /// Factors the basis whose column at each place has these entries by row. `Err` names rows without a pivot, and the
    /// places that found none: the basis is singular.
    pub(super) fn of(&mut self, columns: &[&[(usize, f64)]]) -> Result<(), Vec<(usize, usize)>> {
        let count = columns.len();
        self.rows.clear();
        self.places.clear();
        self.diagonal.clear();
        self.lower.clear();
        self.upper.clear();
        self.lower_steps.clear();
        self.changes.clear();
        self.change_entries.clear();
        let (order, planned) = order(columns);
        let mut row_counts = vec![0_u32; count];
        for (row, _) in columns.iter().flat_map(|column| column.iter()) {
            row_counts[*row] += 1;
        }
        let mut step_of = vec![NONE; count];
        let mut x = vec![0.0; count];
        let mut marked = vec![false; count];
        let mut touched: Vec<usize> = Vec::new();
        let mut heap: BinaryHeap<Reverse<usize>> = BinaryHeap::new();
        let mut lost = Vec::new();
        for (place, wanted) in order.into_iter().zip(planned) {
            for (row, value) in columns[place] {
                x[*row] += value;
                if !marked[*row] {
                    marked[*row] = true;
                    touched.push(*row);
                    if step_of[*row] != NONE {
                        heap.push(Reverse(step_of[*row]));
                    }
                }
            }
            while let Some(Reverse(step)) = heap.pop() {
                let value = x[self.rows[step]];
                if value == 0.0 {
                    continue;
                }
                self.upper.push(self.rows[step], value);
                for (row, multiple) in self.lower.of(step) {
                    x[row] -= multiple * value;
                    self.work += 1;
                    if !marked[row] {
                        marked[row] = true;
                        touched.push(row);
                        if step_of[row] != NONE {
                            heap.push(Reverse(step_of[row]));
                        }
                    }
                }
            }
            let open = || touched.iter().copied().filter(|row| step_of[*row] == NONE);
            let most = open().map(|row| x[row].abs()).fold(0.0, f64::max);
            let pivot = if wanted != NONE && x[wanted].abs() > 1e-9 {
                Some(wanted)
            } else {
                open().filter(|row| x[*row].abs() >= 0.1 * most).min_by_key(|row| (row_counts[*row], *row))
            };
            match pivot.filter(|_| most > 1e-9) {
                Some(pivot) => {
                    let diagonal = x[pivot];
                    for row in touched.iter().copied().filter(|row| step_of[*row] == NONE && *row != pivot) {
                        if x[row].abs() > 1e-12 {
                            self.lower.push(row, x[row] / diagonal);
                        }
                    }
                    step_of[pivot] = self.rows.len();
                    if self.lower.len() > self.lower.starts[self.rows.len()] as usize {
                        self.lower_steps.push(self.rows.len() as u32);
                    }
                    self.rows.push(pivot);
                    self.places.push(place);
                    self.diagonal.push(diagonal);
                    self.lower.close();
                    self.upper.close();
                }
                None => {
                    let start = self.upper.starts[self.rows.len()] as usize;
                    self.upper.at.truncate(start);
                    self.upper.value.truncate(start);
                    lost.push(place);
                }
            }
            for row in touched.drain(..) {
                x[row] = 0.0;
                marked[row] = false;
            }
        }
        self.work += (self.upper.len() + 4 * count) as u64;
        if lost.is_empty() {
            return Ok(());
        }
        let free = (0..count).filter(|row| step_of[*row] == NONE);
        Err(free.zip(lost).collect())
    }

    /// Changes since the factors were made.
    pub(super) fn changed(&self) -> usize {
        self.changes.len()
    }

    /// Whether the changes have grown longer than the factors.
    pub(super) fn worn(&self) -> bool {
        self.changes.len() >= 100
            || self.change_entries.len() > 3 * (self.upper.len() + self.lower.len() + self.rows.len())
    }

    /// Solves `B z = x`: `x` by row, overwritten; `z` by place.
    pub(super) fn forward(&mut self, x: &mut [f64], z: &mut [f64]) {
        let mut work = self.lower_steps.len() + 2 * self.rows.len();
        for step in &self.lower_steps {
            let value = x[self.rows[*step as usize]];
            if value != 0.0 {
                for (row, multiple) in self.lower.of(*step as usize) {
                    x[row] -= multiple * value;
                    work += 1;
                }
            }
        }
        for step in (0..self.rows.len()).rev() {
            let value = x[self.rows[step]];
            if value == 0.0 {
                z[self.places[step]] = 0.0;
                continue;
            }
            let value = value / self.diagonal[step];
            z[self.places[step]] = value;
            for (row, entry) in self.upper.of(step) {
                x[row] -= entry * value;
                work += 1;
            }
        }
        for (index, change) in self.changes.iter().enumerate() {
            let value = z[change.place];
            if value != 0.0 {
                let value = value / change.pivot;
                z[change.place] = value;
                for (place, entry) in self.change_entries.of(index) {
                    z[place] -= entry * value;
                    work += 1;
                }
            }
        }
        self.work += work as u64;
    }

    /// Solves `y B = z`: `z` by place, overwritten; `y` by row.
    pub(super) fn backward(&mut self, z: &mut [f64], y: &mut [f64]) {
        for (index, change) in self.changes.iter().enumerate().rev() {
            let sum: f64 = self.change_entries.of(index).map(|(place, entry)| entry * z[place]).sum();
            z[change.place] = (z[change.place] - sum) / change.pivot;
        }
        for step in 0..self.rows.len() {
            let sum: f64 = self.upper.of(step).map(|(row, entry)| entry * y[row]).sum();
            y[self.rows[step]] = (z[self.places[step]] - sum) / self.diagonal[step];
        }
        for step in self.lower_steps.iter().rev() {
            let sum: f64 = self.lower.of(*step as usize).map(|(row, multiple)| multiple * y[row]).sum();
            y[self.rows[*step as usize]] -= sum;
        }
        self.work += (self.change_entries.len() + self.upper.len() + self.lower.len() + 2 * self.rows.len()) as u64;
    }

    /// Puts a new column, given in terms of the basis, in one place.
    pub(super) fn replace(&mut self, place: usize, direction: &[f64]) {
        for (at, entry) in direction.iter().enumerate() {
            if *entry != 0.0 && at != place {
                self.change_entries.push(at, *entry);
            }
        }
        self.change_entries.close();
        self.changes.push(Pivot { place, pivot: direction[place] });
    }
}

/// An order of the places, with the row to pivot on where that is without fill.
fn order(columns: &[&[(usize, f64)]]) -> (Vec<usize>, Vec<usize>) {
    let count = columns.len();
    let mut by_row: Vec<Vec<u32>> = vec![Vec::new(); count];
    for (place, column) in columns.iter().enumerate() {
        for (row, _) in column.iter() {
            by_row[*row].push(place as u32);
        }
    }
    let mut column_left: Vec<usize> = columns.iter().map(|column| column.len()).collect();
    let mut row_left: Vec<usize> = by_row.iter().map(Vec::len).collect();
    let (mut column_open, mut row_open) = (vec![true; count], vec![true; count]);
    let (mut order, mut planned) = (Vec::with_capacity(count), Vec::with_capacity(count));
    let mut single_columns: Vec<usize> = (0..count).filter(|place| column_left[*place] == 1).collect();
    let mut single_rows: Vec<usize> = Vec::new();
    loop {
        let (place, row) = if let Some(place) = single_columns.pop() {
            if !column_open[place] {
                continue;
            }
            let Some(row) = columns[place].iter().map(|(row, _)| *row).find(|row| row_open[*row]) else { continue };
            (place, row)
        } else if let Some(row) = single_rows.pop() {
            if !row_open[row] {
                continue;
            }
            let Some(place) = by_row[row].iter().map(|at| *at as usize).find(|at| column_open[*at]) else { continue };
            (place, row)
        } else {
            // Once all columns of one entry are gone, the rows of one entry are looked for, once.
            single_rows = (0..count).filter(|row| row_open[*row] && row_left[*row] == 1).collect();
            if single_rows.is_empty() {
                break;
            }
            continue;
        };
        column_open[place] = false;
        row_open[row] = false;
        order.push(place);
        planned.push(row);
        for (other, _) in columns[place] {
            if row_open[*other] {
                row_left[*other] -= 1;
                if row_left[*other] == 1 {
                    single_rows.push(*other);
                }
            }
        }
        for other in by_row[row].iter().map(|at| *at as usize).filter(|at| column_open[*at]) {
            column_left[other] -= 1;
            if column_left[other] == 1 {
                single_columns.push(other);
            }
        }
    }
    let mut rest: Vec<usize> = (0..count).filter(|place| column_open[*place]).collect();
    rest.sort_by_key(|place| (column_left[*place], *place));
    planned.extend(rest.iter().map(|_| NONE));
    order.extend(rest);
    (order, planned)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Multiplies back what was solved, for random sparse bases and after changes.
    #[test]
    fn both_ways_solve_what_they_say() {
        let mut random = super::super::random::Random::new(3);
        let mut solved = 0;
        for _ in 0..200 {
            let count = 1 + random.below(30);
            let mut columns: Vec<Vec<(usize, f64)>> = (0..count)
                .map(|place| {
                    let mut column = vec![(place, 1.0 + random.below(4) as f64)];
                    for _ in 0..random.below(4) {
                        let row = random.below(count);
                        if !column.iter().any(|(known, _)| *known == row) {
                            column.push((row, 1.0 + random.below(3) as f64));
                        }
                    }
                    column
                })
                .collect();
            let mut factor = Factor::default();
            let borrowed: Vec<&[(usize, f64)]> = columns.iter().map(Vec::as_slice).collect();
            if factor.of(&borrowed).is_err() {
                continue;
            }
            for _ in 0..5 {
                let right: Vec<f64> = (0..count).map(|_| random.below(9) as f64).collect();
                let (mut z, mut y) = (vec![0.0; count], vec![0.0; count]);
                factor.forward(&mut right.clone(), &mut z);
                let mut product = vec![0.0; count];
                for (column, value) in columns.iter().zip(&z) {
                    column.iter().for_each(|(row, entry)| product[*row] += entry * value);
                }
                assert!(product.iter().zip(&right).all(|(a, b)| (a - b).abs() < 1e-6), "{product:?} {right:?}");
                factor.backward(&mut right.clone(), &mut y);
                for (column, wanted) in columns.iter().zip(&right) {
                    let sum: f64 = column.iter().map(|(row, entry)| entry * y[*row]).sum();
                    assert!((sum - wanted).abs() < 1e-6);
                }
                solved += 1;
                let new: Vec<(usize, f64)> = vec![(random.below(count), 2.0)];
                let mut x = vec![0.0; count];
                new.iter().for_each(|(row, entry)| x[*row] += entry);
                factor.forward(&mut x, &mut z);
                let Some(place) = (0..count).find(|place| z[*place].abs() > 1e-3) else { break };
                factor.replace(place, &z);
                columns[place] = new;
            }
        }
        assert!(solved > 300);
    }
}
