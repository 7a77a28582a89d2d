//! The commands of a wall.

use lapwright::screens::{Action, Place, View, WallAction};

use super::Session;
use super::house::given;
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::options::Answers;

/// What can be added to a wall, by the words of the command.
const PARTS: [&str; 5] = ["opening", "abutment", "base-step", "stud", "penetration"];

impl Session<'_> {
    pub(super) fn wall(&mut self, wall: &str) -> Result<(), Fault> {
        let wall = self.wall_id(wall)?;
        self.show(&Place::Wall { wall })
    }

    pub(super) fn plan(&mut self, wall: &str) -> Result<(), Fault> {
        let wall = self.wall_id(wall)?;
        self.act(Action::WallKind { action: WallAction::PlanBoards { wall } })
    }

    /// Adds a part; of a penetration kind, size and two offsets are enough.
    pub(super) fn add(&mut self, wall: &str, kind: &str, answers: &Answers) -> Result<(), Fault> {
        let (wall, answers) = (self.wall_id(wall)?, given(answers));
        match kind {
            "penetration" => self.act(Action::WallKind { action: WallAction::AddPenetration { wall, answers } }),
            _ => Err(Fault::unknown("kind", kind, &PARTS.map(str::to_owned))),
        }
    }

    /// Takes a penetration off a wall.
    pub(super) fn remove(&mut self, wall: &str, part: &str) -> Result<(), Fault> {
        let wall = self.wall_id(wall)?;
        let View::WallKind { view } = self.book.view(&Place::Wall { wall: wall.clone() })? else {
            return Err(Fault::unknown("wall", &wall, &[]));
        };
        let parts = view.penetrations.into_iter();
        let parts: Vec<Named> = parts.map(|part| Named { id: part.penetration, name: part.name }).collect();
        let penetration = one("part", part, &parts)?;
        self.act(Action::WallKind { action: WallAction::RemovePenetration { wall, penetration } })
    }
}
