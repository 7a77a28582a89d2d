use std::collections::BTreeMap;

use crate::measure::Length;
use crate::rules::keys;
use crate::screens::kept::{Facts, Job, Wall};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::Store;

/// The boards of a house as its saw list cuts them.
pub(super) struct Boards {
    /// Each board with what is cut from it, in cutting order: wall by wall, the lowest course first.
    pub(super) boards: Vec<SawBoard>,
    /// Planned boards of the walls that no saw list knows.
    pub(super) unlisted: usize,
}

/// A board and what is cut from it.
pub(super) struct SawBoard {
    /// Its number in the book.
    pub(super) number: i64,
    /// Its length.
    pub(super) length: Length,
    /// The offcut that it is; none for a new board.
    pub(super) offcut: Option<String>,
    /// What is cut from it, the longest first.
    pub(super) pieces: Vec<Piece>,
    /// What is left of it.
    pub(super) rest: Length,
}

/// A piece and where it goes.
pub(super) struct Piece {
    pub(super) facts: Facts,
    pub(super) wall: String,
    pub(super) length: Length,
    pub(super) course: i64,
    pub(super) from: Length,
    /// The wall's place among the walls of the house.
    order: usize,
}

impl Piece {
    /// Whether it is not cut yet.
    pub(super) fn planned(&self) -> bool {
        self.facts.text("state").unwrap_or("planned") == "planned"
    }
}

impl SawBoard {
    /// Whether all that it gives is cut.
    pub(super) fn cut(&self) -> bool {
        self.pieces.iter().all(|piece| !piece.planned())
    }

    /// Whether something is cut from it.
    fn begun(&self) -> bool {
        self.pieces.iter().any(|piece| !piece.planned())
    }
}

impl Boards {
    /// The boards of a house.
    pub(super) fn of(store: &Store, job: &Job) -> Kept<Self> {
        let kerf = job.rules.get_length(keys::SAW_KERF)?;
        let mut numbered: BTreeMap<i64, Vec<Piece>> = BTreeMap::new();
        let mut unlisted = 0;
        for (order, wall) in Wall::of_job(store, job.id())?.into_iter().enumerate() {
            for facts in Facts::children(store, wall.id(), kinds::BOARD)? {
                let piece = facts.length("length").zip(facts.length("from")).zip(facts.whole("course"));
                match (facts.whole("cut-from"), piece) {
                    (Some(number), Some(((length, from), course))) => {
                        let wall = wall.name().to_owned();
                        numbered.entry(number).or_default().push(Piece { facts, wall, length, course, from, order });
                    }
                    _ => unlisted += usize::from(facts.text("state").unwrap_or("planned") == "planned"),
                }
            }
        }
        let board = |(number, mut pieces): (i64, Vec<Piece>)| {
            pieces.sort_by_key(|piece| (std::cmp::Reverse(piece.length), piece.order, piece.course, piece.from));
            let first = pieces.first()?;
            let (length, offcut) = (first.facts.length("stock")?, first.facts.text("offcut").map(str::to_owned));
            let cuts = i64::try_from(pieces.len()).unwrap_or(i64::MAX).saturating_sub(1);
            let kerfs = kerf.checked_mul(cuts).unwrap_or(length);
            let rest = length - kerfs - pieces.iter().map(|piece| piece.length).sum();
            Some(SawBoard { number, length, offcut, pieces, rest: rest.max(Length::ZERO) })
        };
        let mut boards: Vec<SawBoard> = numbered.into_iter().filter_map(board).collect();
        boards.sort_by_key(|board| {
            let lowest = board.pieces.iter().map(|piece| (piece.order, piece.course, piece.from)).min();
            (lowest, board.number)
        });
        Ok(Self { boards, unlisted })
    }

    /// New boards of a length, cut and to cut.
    pub(super) fn new_of(&self, length: Length) -> usize {
        self.boards.iter().filter(|board| board.offcut.is_none() && board.length == length).count()
    }

    /// The length of all new boards.
    pub(super) fn used(&self) -> Length {
        self.boards.iter().filter(|board| board.offcut.is_none()).map(|board| board.length).sum()
    }

    /// The length of the new boards from which something is cut: no further plan changes them.
    pub(super) fn begun(&self) -> Length {
        let begun = self.boards.iter().filter(|board| board.offcut.is_none() && board.begun());
        begun.map(|board| board.length).sum()
    }

    /// No list takes less than this length of new boards: what was cut before the plan was made is as it is, and the plan's
    /// own boards have the bound.
    pub(super) fn least(&self, job: &Job) -> Length {
        let planned = |name: &str| job.facts.length(name).unwrap_or(Length::ZERO);
        (self.used() - planned("plan-used") + planned("plan-least")).max(Length::ZERO)
    }
}
