use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::sync::Arc;

use crate::book::{BoardState, Field, Kind, OffcutState, Record};
use crate::measure::{Division, Length, Rounding};
use crate::rules::keys;
use crate::saw::Plan;
use crate::store::Id;

use super::Work;
use super::error::Result;
use super::planned_board::is_of_strip;
use super::ripped::{ripped_to, strip_height};
use super::wall_board::WallBoard;

/// The boards of a house as its saw list cuts them.
#[derive(Clone, Debug)]
pub struct SawBoards {
    /// Each board with what is cut from it, in cutting order: wall by wall, the lowest course first.
    pub boards: Vec<SawBoard>,
    /// Planned boards of the walls that no saw list knows.
    pub unlisted: usize,
    /// No list takes less than this length of new boards: what was cut before the plan was made is as it is, and the
    /// plan's own boards have the bound.
    pub least: Length,
}

/// A board and what is cut from it.
#[derive(Clone, Debug)]
pub struct SawBoard {
    /// Its number in the book.
    pub number: i64,
    /// Its length.
    pub length: Length,
    /// The offcut that it is; none for a new board.
    pub offcut: Option<Id>,
    /// What is cut from it, the longest first, and then what comes out of the strips that are ripped off.
    pub pieces: Vec<SawPiece>,
    /// The lengths of what was cut from it and spoiled.
    pub spoiled: Vec<Length>,
    /// What is left of it.
    pub rest: Length,
}

/// What is left over and worth keeping.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Leftover {
    /// Its length, rounded down to the tape.
    pub length: Length,
    /// How high it is, where it is lower than a board.
    pub height: Option<Length>,
}

/// A piece and where it goes.
#[derive(Clone, Debug)]
pub struct SawPiece {
    /// The board of the wall that it is.
    pub board: Arc<Record>,
    /// The wall's name.
    pub wall: String,
    /// Its length.
    pub length: Length,
    /// Its course, counted on the pole from one.
    pub course: i64,
    /// Its left end on the wall.
    pub from: Length,
    /// Whether it is cut out of the strip that is ripped off others: it takes nothing of its board's length.
    pub strip: bool,
    /// The wall's place among the walls of the house.
    order: usize,
}

impl SawPiece {
    /// Whether it is not cut yet.
    pub fn is_planned(&self) -> bool {
        self.board.board_state() == BoardState::Planned
    }

    /// Whether more than its ends is cut; it cannot be told where its wall is not measured.
    pub fn is_notched(&self, work: &Work) -> bool {
        let wall = self.board.parent.and_then(|wall| work.wall(wall).ok());
        let shapes = wall.zip(WallBoard::of(&self.board)).and_then(|(wall, board)| board.shapes(wall).ok());
        shapes.is_some_and(|shapes| shapes.iter().any(|shape| !shape.cuts.is_empty()))
    }

    fn place(&self) -> (usize, i64, Length) {
        (self.order, self.course, self.from)
    }
}

impl SawBoard {
    fn of(number: i64, mut pieces: Vec<SawPiece>, spoiled: Vec<Length>, kerf: Length) -> Option<Self> {
        pieces.sort_by_key(|piece| (piece.strip, Reverse(piece.length), piece.place()));
        // Where those are gone that it was ripped off, it takes their place.
        if pieces.iter().all(|piece| piece.strip) {
            pieces.iter_mut().for_each(|piece| piece.strip = false);
        }
        let first = &pieces.first()?.board;
        let (length, offcut) = (first.length(Field::Stock)?, first.cut_from_offcut());
        let along = pieces.iter().filter(|piece| !piece.strip).map(|piece| piece.length);
        let gone: Vec<Length> = along.chain(spoiled.iter().copied()).collect();
        let cuts = i64::try_from(gone.len()).unwrap_or(i64::MAX).saturating_sub(1);
        let kerfs = kerf.checked_mul(cuts).unwrap_or(length);
        let rest = length - kerfs - gone.into_iter().sum();
        Some(Self { number, length, offcut, pieces, spoiled, rest: rest.max(Length::ZERO) })
    }

    /// Whether all that it gives is cut.
    pub fn is_cut(&self) -> bool {
        self.pieces.iter().all(|piece| !piece.is_planned())
    }

    /// Whether something is cut from it.
    fn is_begun(&self) -> bool {
        self.pieces.iter().any(|piece| !piece.is_planned())
    }

    /// The rest as an offcut, where it is worth keeping: the cut that frees it takes a kerf, too.
    ///
    /// # Errors
    /// [`WorkError::Rule`](super::WorkError::Rule).
    pub fn offcut_left(&self, work: &Work, division: Division) -> Result<Option<Leftover>> {
        let rules = work.rules();
        let freed = division.round(self.rest - rules.get_length(keys::SAW_KERF)?, Rounding::Down);
        let worth = self.rest >= rules.get_length(keys::OFFCUT_KEEP_LEAST)? && freed.is_positive();
        Ok(worth.then_some(Leftover { length: freed, height: strip_height(work, self.offcut) }))
    }

    /// The strips that are ripped off its pieces, where a rule lets them hang and no piece comes out of them: those that are long
    /// enough to keep, and high enough for a board that shows as little as a strip may.
    ///
    /// # Errors
    /// [`WorkError::Rule`](super::WorkError::Rule), and what the walls' shapes lack.
    pub fn strips_left(&self, work: &Work, division: Division) -> Result<Vec<Leftover>> {
        let rules = work.rules();
        let is_used = self.pieces.iter().any(|piece| is_of_strip(&piece.board));
        if is_used || rules.get_whole(keys::RIPS_PER_BOARD)? < 2 {
            return Ok(Vec::new());
        }
        let (board, kerf) = (work.board_height()?, rules.get_length(keys::SAW_KERF)?);
        let least = work.lap()? + rules.get_length(keys::STRIP_LEAST)?;
        let mut strips = Vec::new();
        for piece in &self.pieces {
            let Some(ripped) = ripped_to(work, &piece.board) else { continue };
            let height = division.round(board - ripped - kerf, Rounding::Down);
            if height >= least && piece.length >= rules.get_length(keys::OFFCUT_KEEP_LEAST)? {
                strips.push(Leftover { length: piece.length, height: Some(height) });
            }
        }
        Ok(strips)
    }
}

impl SawBoards {
    /// The boards of a house.
    ///
    /// # Errors
    /// [`WorkError::Rule`](super::WorkError::Rule).
    pub fn of(work: &Work) -> Result<Self> {
        let kerf = work.rules().get_length(keys::SAW_KERF)?;
        let mut numbered: BTreeMap<i64, Vec<SawPiece>> = BTreeMap::new();
        let mut unlisted = 0;
        for (order, wall) in work.walls().iter().enumerate() {
            for board in work.boards(wall.id()) {
                let piece = || {
                    let (length, from) = (board.length(Field::Length)?, board.length(Field::From)?);
                    let (course, wall) = (board.whole(Field::Course)?, wall.name().to_owned());
                    let strip = is_of_strip(board);
                    Some(SawPiece { board: Arc::clone(board), wall, length, course, from, strip, order })
                };
                match board.whole(Field::CutFrom).zip(piece()) {
                    Some((number, piece)) => numbered.entry(number).or_default().push(piece),
                    None => unlisted += usize::from(board.board_state() == BoardState::Planned),
                }
            }
        }
        let spoiled = spoiled(work);
        let of = |number: i64| -> Vec<Length> {
            spoiled.iter().filter(|(from, _)| *from == number).map(|(_, length)| *length).collect()
        };
        let board = |(number, pieces)| SawBoard::of(number, pieces, of(number), kerf);
        let mut boards: Vec<SawBoard> = numbered.into_iter().filter_map(board).collect();
        boards.sort_by_key(|board| (board.pieces.iter().map(SawPiece::place).min(), board.number));
        let mut list = Self { boards, unlisted, least: Length::ZERO };
        let kept = |field| work.job().ok().and_then(|job| job.length(field)).unwrap_or_default();
        list.least = (list.used() - kept(Field::PlanUsed) + kept(Field::PlanLeast)).max(Length::ZERO);
        Ok(list)
    }

    /// The board of a number.
    pub fn board(&self, number: i64) -> Option<&SawBoard> {
        self.boards.iter().find(|board| board.number == number)
    }

    /// The boards that are no offcuts.
    pub fn new_boards(&self) -> impl Iterator<Item = &SawBoard> {
        self.boards.iter().filter(|board| board.offcut.is_none())
    }

    /// The length of all new boards.
    pub fn used(&self) -> Length {
        self.new_boards().map(|board| board.length).sum()
    }

    /// The length of the new boards from which something is cut: no further plan changes them.
    fn begun(&self) -> Length {
        self.new_boards().filter(|board| board.is_begun()).map(|board| board.length).sum()
    }

    /// Whether a plan of all that is not begun takes less, or more is known of the least.
    pub fn is_bettered_by(&self, plan: &Plan) -> bool {
        let in_all = |nm: u64| self.begun() + Length::from_nm(i64::try_from(nm).unwrap_or(i64::MAX));
        let (used, least) = (in_all(plan.cost), in_all(plan.bound));
        let none = self.boards.is_empty() || self.unlisted > 0;
        none || used < self.used() || used == self.used() && least > self.least
    }
}

/// The pieces that were spoiled: the number of the board that each was cut from, and its length.
pub(super) fn spoiled(work: &Work) -> Vec<(i64, Length)> {
    let pieces = work.house().own(Kind::Offcut).iter().filter(|piece| piece.offcut_state() == OffcutState::Spoiled);
    pieces.filter_map(|piece| Some((piece.whole(Field::CutFrom)?, piece.length(Field::Length)?))).collect()
}

/// The least of the plan in force with a further offcut at hand: one that the plan did not have may stand for one new board,
/// at most the longest, so that a list may take so much less. None where no plan is in force.
pub fn least_with_offcut(work: &Work, offcut: Length) -> Option<Length> {
    let least = work.job().ok()?.length(Field::PlanLeast)?;
    let longest = work.longest_stock().ok();
    let left = longest.filter(|longest| *longest >= offcut).map_or(Length::ZERO, |longest| least - longest);
    Some(left.max(Length::ZERO))
}
