use super::number::Coordinate;

/// The marks from which and to which something reaches across the rows between neighbouring marks.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reach {
    pub(super) from: usize,
    pub(super) to: usize,
}

/// Sorts marks and leaves each once.
pub(super) fn marks(mut all: Vec<Coordinate>) -> Vec<Coordinate> {
    all.sort();
    all.dedup();
    all
}

/// The place of a mark among sorted ones.
pub(super) fn place(marks: &[Coordinate], mark: &Coordinate) -> usize {
    marks.partition_point(|own| own < mark)
}

/// Goes through the rows between neighbouring marks and hands `each` what crosses a row: the items' places and their
/// positions halfway, in order. `position` is where an item crosses a line between two marks; no two items may change
/// their order within a row.
pub(super) fn walk(
    marks: &[Coordinate],
    items: &[Reach],
    position: impl Fn(usize, &Coordinate) -> Option<Coordinate>,
    mut each: impl FnMut(usize, &[(usize, Coordinate)]),
) {
    let mut waiting: Vec<usize> = (0..items.len()).collect();
    let from = |item: usize| items.get(item).map_or(0, |reach| reach.from);
    let to = |item: usize| items.get(item).map_or(0, |reach| reach.to);
    waiting.sort_by_key(|item| std::cmp::Reverse(from(*item)));
    let mut active: Vec<(usize, Coordinate)> = Vec::new();
    for (row, (low, high)) in marks.iter().zip(marks.iter().skip(1)).enumerate() {
        active.retain(|(item, _)| to(*item) > row);
        while let Some(item) = waiting.pop_if(|item| from(*item) <= row) {
            if to(item) > row {
                active.push((item, Coordinate::ZERO));
            }
        }
        let middle = low.between(high);
        active.retain_mut(|(item, own)| match position(*item, &middle) {
            Some(position) => {
                *own = position;
                true
            }
            None => false,
        });
        // Between one row and the next hardly anything changes its place, and sorting what is sorted takes one pass.
        active.sort_by(|a, b| a.1.cmp(&b.1));
        each(row, &active);
    }
}
