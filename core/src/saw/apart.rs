/// Pairs of sizes that no board may hold together, the same twice where it may hold one only: what a branch of the search
/// has settled.
#[derive(Clone, Debug, Default)]
pub(super) struct Apart {
    pairs: Vec<(usize, usize)>,
}

impl Apart {
    pub(super) fn add(&mut self, a: usize, b: usize) {
        let pair = (a.min(b), a.max(b));
        if !self.pairs.contains(&pair) {
            self.pairs.push(pair);
        }
    }

    pub(super) fn pairs(&self) -> impl Iterator<Item = (usize, usize)> {
        self.pairs.iter().copied()
    }

    /// How many pieces of a size may lie on one board.
    pub(super) fn copies(&self, size: usize) -> u32 {
        if self.pairs.contains(&(size, size)) { 1 } else { u32::MAX }
    }

    /// Sets of sizes to leave out, so that every board that is allowed does without one of them, and what is left may lie
    /// together; `None` where there are more than `most` sets.
    ///
    /// Of a size with pairs, either it is left out or all that it is kept apart from.
    pub(super) fn sets(&self, most: usize) -> Option<Vec<Vec<usize>>> {
        let mut open: Vec<Vec<usize>> = vec![Vec::new()];
        let mut sets: Vec<Vec<usize>> = Vec::new();
        while let Some(out) = open.pop() {
            let live = || self.pairs().filter(|(a, b)| a != b && !out.contains(a) && !out.contains(b));
            let degree = |size: usize| live().filter(|(a, b)| *a == size || *b == size).count();
            match live().flat_map(|(a, b)| [a, b]).max_by_key(|size| (degree(*size), *size)) {
                None => sets.push(out),
                Some(size) => {
                    let others = live().filter(|(a, b)| *a == size || *b == size);
                    let others = others.map(|(a, b)| if a == size { b } else { a });
                    open.push(out.iter().copied().chain(others).collect());
                    open.push(out.iter().copied().chain([size]).collect());
                }
            }
            if sets.len() + open.len() > most {
                return None;
            }
        }
        Some(sets)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_allowed_board_does_without_one_of_the_sets() {
        let mut apart = Apart::default();
        for (a, b) in [(0, 1), (1, 2), (3, 0), (4, 4), (2, 1)] {
            apart.add(a, b);
        }
        assert_eq!((apart.copies(4), apart.copies(0)), (1, u32::MAX));
        let sets = apart.sets(10).unwrap();
        for board in 0_u32..32 {
            let holds = |size: usize| board >> size & 1 == 1;
            let allowed = apart.pairs().all(|(a, b)| a == b || !(holds(a) && holds(b)));
            let priced = sets.iter().any(|out| out.iter().all(|size| !holds(*size)));
            assert_eq!(allowed, priced, "board {board:b}");
        }
        assert_eq!(apart.sets(1), None);
    }
}
