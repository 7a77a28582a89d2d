//! The commands of a wall.

use lapwright::views::{Action, AnswerKind, MeasureAction, MeasureView, PartView, Place, View, WallAction, WallView};

use super::Session;
use super::house::given;
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::options::{Answers, PENETRATION};

impl Session<'_> {
    pub(super) fn wall(&mut self, wall: &str) -> Result<(), Fault> {
        let wall = self.wall_id(wall)?;
        self.show(&Place::Wall { wall })
    }

    pub(super) fn plan(&mut self, wall: &str) -> Result<(), Fault> {
        let wall = self.wall_id(wall)?;
        self.act(Action::WallKind { action: WallAction::PlanBoards { wall: wall.clone() } })?;
        self.lead_on(&wall)
    }

    pub(super) fn measure(&mut self, wall: &str, answers: &Answers) -> Result<(), Fault> {
        let wall = self.wall_id(wall)?;
        let place = Place::Measure { wall: wall.clone() };
        self.answered(&place, answers, |field, text| Action::MeasureKind {
            action: MeasureAction::Answer { wall: wall.clone(), field, text },
        })?;
        match self.book.view(&place)? {
            // Where a question of the wall is open, it says so itself.
            View::MeasureKind { view } if view.asked.is_some() => Ok(()),
            _ => self.lead_on(&wall),
        }
    }

    /// Adds a part; of a penetration kind, size and two offsets are enough.
    pub(super) fn add(&mut self, wall: &str, kind: &str, answers: &Answers) -> Result<(), Fault> {
        let (wall, answers, kind) = (self.wall_id(wall)?, given(answers), kind.to_owned());
        self.act(if kind == PENETRATION {
            Action::WallKind { action: WallAction::AddPenetration { wall, answers } }
        } else {
            Action::MeasureKind { action: MeasureAction::AddPart { wall, kind, answers } }
        })
    }

    /// Changes a part of a wall.
    pub(super) fn change(&mut self, wall: &str, part: &str, answers: &Answers) -> Result<(), Fault> {
        let wall = self.wall_id(wall)?;
        let place = Place::Measure { wall: wall.clone() };
        let View::MeasureKind { view } = self.book.view(&place)? else {
            return Err(Fault::unknown("wall", &wall, &[]));
        };
        let part = one("part", part, &view.parts.iter().map(named).collect::<Vec<_>>())?;
        self.answered(&place, answers, |field, text| Action::MeasureKind {
            action: MeasureAction::AnswerPart { wall: wall.clone(), part: part.clone(), field, text },
        })
    }

    /// Takes a part off a wall: a penetration by what it is, any part by its id.
    pub(super) fn remove(&mut self, wall: &str, part: &str) -> Result<(), Fault> {
        let wall = self.wall_id(wall)?;
        let View::MeasureKind { view: MeasureView { parts, .. } } =
            self.book.view(&Place::Measure { wall: wall.clone() })?
        else {
            return Err(Fault::unknown("wall", &wall, &[]));
        };
        let through = match self.book.view(&Place::Wall { wall: wall.clone() }) {
            Ok(View::WallKind { view: WallView { penetrations, .. } }) => penetrations,
            // A wall that is not measured yet has no drawing.
            _ => Vec::new(),
        };
        let is_through = |id: &str| through.iter().any(|penetration| penetration.penetration == id);
        let penetrations = through.iter().map(|part| Named::new(&part.penetration, &part.name));
        let part = one("part", part, &penetrations.chain(parts.iter().map(named)).collect::<Vec<_>>())?;
        self.act(if is_through(&part) {
            Action::WallKind { action: WallAction::RemovePenetration { wall, penetration: part } }
        } else {
            Action::MeasureKind { action: MeasureAction::RemovePart { wall, part } }
        })
    }
}

/// A part by its kind, and by what it is where that is a question; the first sizes tell it from others.
fn named(part: &PartView) -> Named {
    let mut named = Named::new(&part.part, &part.kind).also(&part.title);
    for question in part.questions.iter().filter(|question| question.kind == AnswerKind::ChoiceKind) {
        let said = question.choices.iter().find(|choice| choice.label == question.answer);
        if let Some(choice) = said {
            named = named.also(&choice.code).also(&choice.label);
        }
    }
    let answers = part.questions.iter().map(|question| question.answer.as_str()).filter(|answer| !answer.is_empty());
    named.told(answers.take(2).collect::<Vec<_>>().join(", "))
}
