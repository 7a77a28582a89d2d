//! What a command names: a wall, a penetration or a board of any house, and what is said of its steps.

use lapwright::screens::{Action, PenetrationAction, Place, StepHow, StepSaid, View};

use super::Session;
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::options::Answers;

impl Session<'_> {
    /// The walls of every house that is not archived.
    pub(super) fn walls(&self) -> Result<Vec<Named>, Fault> {
        let View::JobsKind { view } = self.book.view(&Place::Jobs)? else { return Ok(Vec::new()) };
        let mut walls = Vec::new();
        for job in view.jobs.iter().filter(|job| !job.archived) {
            let house = self.house_view(&job.job)?;
            walls.extend(house.walls.into_iter().map(|wall| Named { id: wall.wall, name: wall.name }));
        }
        Ok(walls)
    }

    /// The id of a penetration.
    pub(super) fn penetration_id(&self, text: &str) -> Result<String, Fault> {
        one("penetration", text, &self.penetrations()?)
    }

    fn penetrations(&self) -> Result<Vec<Named>, Fault> {
        Ok(Vec::new())
    }

    pub(super) fn penetration(&mut self, text: &str, answers: &Answers) -> Result<(), Fault> {
        let penetration = self.penetration_id(text)?;
        self.answered(&Place::Penetration { penetration: penetration.clone() }, answers, |field, text| {
            let action = PenetrationAction::Answer { penetration: penetration.clone(), field, text };
            Action::PenetrationKind { action }
        })
    }

    /// Says something of a step of a board or a penetration.
    pub(super) fn sign(
        &mut self,
        thing: &str,
        step: &str,
        how: StepHow,
        note: &str,
        measured: &str,
    ) -> Result<(), Fault> {
        let said = StepSaid { how, note: note.to_owned(), measured: measured.to_owned(), photo: None };
        let (penetration, step) = (self.penetration_id(thing)?, step.to_owned());
        self.act(Action::PenetrationKind { action: PenetrationAction::SignStep { penetration, step, said } })
    }
}
