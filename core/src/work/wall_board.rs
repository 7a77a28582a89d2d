use std::sync::Arc;

use crate::board::BoardShape;
use crate::book::{BoardState, Field, Record};
use crate::measure::Length;
use crate::store::Id;
use crate::wall::Span;

use super::error::Result;
use super::placement::Placement;
use super::{WallSite, Work};

/// A board of a wall's plan, as it lies there.
#[derive(Clone, Debug)]
pub struct WallBoard {
    /// What the book has of it.
    pub record: Arc<Record>,
    /// Its course, counted on the pole from one.
    pub course: i64,
    /// Where it lies.
    pub place: Placement,
    /// How high it is.
    pub height: Length,
    /// How far it is.
    pub state: BoardState,
}

/// The boards that are cut or up, which stay whatever is planned, and the ids of those that give way to a plan.
pub(super) fn stay_and_give_way(boards: &[Arc<Record>]) -> (Vec<&Record>, Vec<Id>) {
    let (give_way, stay): (Vec<&Arc<Record>>, Vec<_>) =
        boards.iter().partition(|board| board.board_state() == BoardState::Planned);
    (stay.into_iter().map(|board| &**board).collect(), give_way.iter().map(|board| board.id()).collect())
}

impl WallBoard {
    /// A board that has a place on a wall.
    pub(super) fn of(record: &Arc<Record>) -> Option<Self> {
        Some(Self {
            course: record.whole(Field::Course)?,
            place: Placement::of(record)?,
            height: record.length(Field::Height)?,
            state: record.board_state(),
            record: Arc::clone(record),
        })
    }

    /// The boards of a wall that have a place on it, lowest course first, then from the left.
    pub fn on_wall(work: &Work, wall: Id) -> Vec<Self> {
        let mut boards: Vec<Self> = work.boards(wall).iter().filter_map(Self::of).collect();
        boards.sort_by_key(|board| (board.course, board.place.from, board.id()));
        boards
    }

    /// Its id.
    pub fn id(&self) -> Id {
        self.record.id()
    }

    /// Its shapes on its wall, as the plan has them: more than one where something goes right through it.
    ///
    /// # Errors
    /// [`WorkError`](super::WorkError) where the wall is not measured yet.
    pub fn shapes(&self, wall: &WallSite) -> Result<Arc<[BoardShape]>> {
        wall.board_shapes(Some(self.course), self.place, self.height)
    }

    /// Left to right on the wall.
    pub fn x(&self) -> Span {
        Span { from: self.place.from, to: self.place.to }
    }

    /// Bottom to top on the wall, at its left end.
    pub fn y(&self) -> Span {
        Span { from: self.place.left, to: self.place.left + self.height }
    }
}
