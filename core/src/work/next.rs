use crate::book::{BoardState, FieldSpec, Kind};
use crate::steps::Step;

use super::error::Result;
use super::progress::{DetailProgress, PenetrationProgress, ProgressOnWall, open_field};
use super::wall_board::WallBoard;
use super::{Penetration, WallSite, Work};

/// What comes next in a house.
#[derive(Clone, Debug)]
pub enum NextInHouse<'a> {
    /// A question of the house is open.
    AnswerJob(&'static FieldSpec),
    /// Nobody said which stock there is.
    AddStock,
    /// It has no walls.
    AddWall,
    /// A question of a wall is open.
    MeasureWall(&'a WallSite, &'static FieldSpec),
    /// The pole is not laid out.
    LayOutPole,
    /// A wall has no boards, or the next one no longer fits it.
    PlanWall(&'a WallSite),
    /// A step of a penetration is open.
    MakeTight(&'a Penetration, &'a Step),
    /// A step of a detail that every house has is open.
    MakeDetail(&'a DetailProgress, &'a Step),
    /// A board of a wall is not up.
    HangBoard(&'a WallSite, &'a WallBoard),
    /// Every wall is clad.
    NothingLeft,
}

impl<'a> NextInHouse<'a> {
    /// What comes next: everything is measured before the pole is laid out, because one pole serves every wall; then wall by
    /// wall, lowest course first, what the next course covers or meets before the course, and the sealant after the last
    /// board.
    ///
    /// # Errors
    /// [`WorkError::Missing`](super::WorkError::Missing) for what belongs to no house.
    pub fn of(work: &Work, walls: &'a [ProgressOnWall]) -> Result<Self> {
        let open_wall = || walls.iter().find_map(|wall| Some(Self::MeasureWall(&wall.wall, wall.open_field?)));
        Ok(if let Some(spec) = open_field(work.job()?) {
            Self::AnswerJob(spec)
        } else if work.house().own(Kind::Stock).is_empty() {
            Self::AddStock
        } else if walls.is_empty() {
            Self::AddWall
        } else if let Some(measure) = open_wall() {
            measure
        } else if work.lines().is_none() {
            Self::LayOutPole
        } else {
            walls.iter().find_map(Self::on_wall).unwrap_or(Self::NothingLeft)
        })
    }

    /// What is to be done on the same wall while this waits: the next board beside a penetration or a detail, the board after
    /// a board.
    pub fn then(&self, walls: &'a [ProgressOnWall]) -> Option<Self> {
        let on = |site: &WallSite| walls.iter().find(|wall| wall.wall.id() == site.id());
        let open = |wall: &'a ProgressOnWall, after: Option<&WallBoard>| {
            let boards = wall.boards.iter().filter(|board| board.state != BoardState::Fixed);
            let mut boards = boards.filter(|board| !wall.misfits.planned.contains(&board.id()));
            let next = boards.find(|board| after.is_none_or(|after| after.id() != board.id()))?;
            Some(Self::HangBoard(&wall.wall, next))
        };
        match self {
            Self::MakeTight(penetration, _) => {
                let has =
                    |wall: &&ProgressOnWall| wall.wall.penetrations.iter().any(|one| one.id() == penetration.id());
                open(walls.iter().find(has)?, None)
            }
            Self::MakeDetail(one, _) => {
                let (id, place) = (one.detail.record.id(), one.detail.place());
                let own = |other: &DetailProgress| other.detail.is(id, place);
                open(walls.iter().find(|wall| wall.details.iter().any(own))?, None)
            }
            Self::HangBoard(site, board) => open(on(site)?, Some(board)),
            _ => None,
        }
    }

    fn on_wall(progress: &'a ProgressOnWall) -> Option<Self> {
        if progress.boards.is_empty() {
            return Some(Self::PlanWall(&progress.wall));
        }
        let board = progress.boards.iter().find(|board| board.state != BoardState::Fixed);
        let covered = |one: &&PenetrationProgress| {
            let bottom = one.penetration.outer().1.from;
            board.is_none_or(|board| bottom < board.y().to)
        };
        let height = board.map(|board| board.y().to);
        let met = || {
            let mut details = progress.details.iter();
            details.find_map(|one| Some(Self::MakeDetail(one, one.open_before_boards(height)?)))
        };
        let before = progress
            .penetrations
            .iter()
            .filter(covered)
            .find_map(|one| Some(Self::MakeTight(&one.penetration, one.open_before_boards()?)));
        let after = || {
            let boarded = progress.penetrations.iter().filter(|one| board.is_none() || progress.is_boarded(one));
            boarded.into_iter().find_map(|one| Some(Self::MakeTight(&one.penetration, one.open_step()?)))
        };
        let hang = || {
            let board = board?;
            let misfit = progress.misfits.planned.contains(&board.id());
            // Nobody is sent to cut what no longer fits.
            Some(if misfit { Self::PlanWall(&progress.wall) } else { Self::HangBoard(&progress.wall, board) })
        };
        let finish = || progress.details.iter().find_map(|one| Some(Self::MakeDetail(one, one.open_step()?)));
        met().or(before).or_else(after).or_else(hang).or_else(finish)
    }
}
