use super::demand::Demand;

/// One board: its kind and the sizes of the pieces cut from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pattern {
    pub(super) kind: usize,
    pub(super) pieces: Vec<usize>,
}

/// Boards for all pieces.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Packing {
    pub(super) boards: Vec<Pattern>,
}

impl Pattern {
    /// A board with so many pieces of each size.
    pub(super) fn of(kind: usize, pieces: &[(usize, u32)]) -> Self {
        Self { kind, pieces: pieces.iter().flat_map(|(size, count)| (0..*count).map(|_| *size)).collect() }
    }

    /// What the pieces take, one kerf each.
    pub(super) fn used(&self, demand: &Demand) -> i64 {
        self.pieces.iter().map(|size| demand.size(*size)).sum()
    }

    pub(super) fn cost(&self, demand: &Demand) -> i64 {
        demand.kinds.get(self.kind).map_or(0, |kind| kind.cost)
    }
}

impl Packing {
    /// In the demand's cost unit.
    pub(super) fn cost(&self, demand: &Demand) -> i128 {
        self.boards.iter().map(|board| i128::from(board.cost(demand))).sum()
    }

    /// Whether no kind is used more often than it is there.
    pub(super) fn possible(&self, demand: &Demand) -> bool {
        let mut left = Left::new(demand);
        self.boards.iter().all(|board| {
            let has = left.has(board.kind);
            left.take(board.kind);
            has
        })
    }

    /// Gives every board the cheapest kind that holds its pieces, the fullest first, as far as there are any in `left`.
    pub(super) fn shrink(&mut self, demand: &Demand, mut left: Left) {
        let mut order: Vec<(i64, usize)> =
            self.boards.iter().enumerate().map(|(place, board)| (board.used(demand), place)).collect();
        order.sort_unstable_by(|a, b| b.cmp(a));
        let mut kinds: Vec<usize> = (0..demand.kinds.len()).collect();
        kinds.sort_by_key(|kind| demand.kinds.get(*kind).map(|kind| (kind.cost, kind.capacity)));
        // How long the boards up to each place of that order are: where one fits first is then found without a walk.
        let mut longest = 0;
        let reach: Vec<i64> = kinds
            .iter()
            .map(|kind| {
                longest = demand.kinds.get(*kind).map_or(0, |kind| kind.capacity).max(longest);
                longest
            })
            .collect();
        let mut picked = Vec::new();
        for (used, place) in order {
            let fits = |kind: usize| demand.kinds.get(kind).is_some_and(|kind| kind.capacity >= used);
            let mut fitting = kinds.iter().skip(reach.partition_point(|reach| *reach < used)).copied();
            let Some(kind) = fitting.find(|kind| fits(*kind) && left.has(*kind)) else { return };
            left.take(kind);
            picked.push((place, kind));
        }
        let before = self.cost(demand);
        let kept = self.clone();
        for (place, kind) in picked {
            if let Some(board) = self.boards.get_mut(place) {
                board.kind = kind;
            }
        }
        if self.cost(demand) > before {
            *self = kept;
        }
    }
}

/// How many boards of each kind are still there.
#[derive(Clone, Debug)]
pub(super) struct Left(Vec<Option<u32>>);

impl Left {
    pub(super) fn new(demand: &Demand) -> Self {
        Self(demand.kinds.iter().map(|kind| kind.count).collect())
    }

    pub(super) fn has(&self, kind: usize) -> bool {
        self.0.get(kind).is_some_and(|left| *left != Some(0))
    }

    pub(super) fn take(&mut self, kind: usize) {
        if let Some(Some(left)) = self.0.get_mut(kind) {
            *left = left.saturating_sub(1);
        }
    }
}
