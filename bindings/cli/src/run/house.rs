//! The commands of a house and its story pole.

use lapwright::book::Field;
use lapwright::views::{
    Action, AsBuiltLine, Given, HouseAction, HouseView, NextWork, Outcome, Place, PoleAction, PoleView, View,
};

use super::Session;
use crate::book::Book;
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::options::Answers;
use crate::paper::Paper;
use crate::show;

impl Session<'_> {
    pub(super) fn house_view(&self, job: &str) -> Result<HouseView, Fault> {
        match self.book.view(&Place::House { job: job.to_owned() })? {
            View::HouseKind { view } => Ok(view),
            _ => Err(Fault::unknown("house", job, &[])),
        }
    }

    pub(super) fn house(&mut self, house: &str, answers: &Answers) -> Result<(), Fault> {
        let job = self.job(house)?;
        self.answered(&Place::House { job: job.clone() }, answers, |field, text| Action::HouseKind {
            action: HouseAction::Answer { job: job.clone(), field, text },
        })
    }

    pub(super) fn pole(&mut self, house: &str, lay_out: bool, answers: &Answers) -> Result<(), Fault> {
        let job = self.job(house)?;
        let place = Place::Pole { job: job.clone() };
        let answer = |field, text| Action::PoleKind { action: PoleAction::Answer { job: job.clone(), field, text } };
        if !lay_out {
            return self.answered(&place, answers, answer);
        }
        let outcome = self.book.together(|book| {
            answer_all(book, answers, answer)?;
            book.act(&Action::PoleKind { action: PoleAction::LayOut { job: job.clone() } })
        })?;
        self.print_outcome(&outcome)
    }

    /// A course as it hangs on a wall: the lines above it follow.
    pub(super) fn as_built(&mut self, house: &str, wall: &str, answers: &Answers) -> Result<(), Fault> {
        let job = self.job(house)?;
        let walls = self.house_view(&job)?.walls.into_iter();
        let walls: Vec<Named> = walls.map(|wall| Named::new(wall.wall, wall.name)).collect();
        let action = PoleAction::SayAsBuilt { wall: one("wall", wall, &walls)?, answers: given(answers) };
        self.act(Action::PoleKind { action })
    }

    pub(super) fn not_built(&mut self, house: &str, entry: &str) -> Result<(), Fault> {
        let View::PoleKind { view } = self.book.view(&Place::Pole { job: self.job(house)? })? else {
            return Err(Fault::unknown("house", house, &[]));
        };
        let named = |line: &AsBuiltLine| Named::new(&line.as_built, &line.wall_name).told(line.course.to_string());
        let entries: Vec<Named> = view.as_built.iter().map(named).collect();
        let found = one("entry", entry, &entries);
        let as_built = match found {
            Ok(found) => found,
            // The done list names the answer that it came with.
            Err(fault) => self.as_built_of(&view, entry)?.ok_or(fault)?,
        };
        self.act(Action::PoleKind { action: PoleAction::RemoveAsBuilt { as_built } })
    }

    /// The course that was said to hang in an answer of the done list, by the beginning of its id.
    fn as_built_of(&self, view: &PoleView, group: &str) -> Result<Option<String>, Fault> {
        let house = self.book.inner.house(view.job.parse().ok())?;
        let came_with = |line: &&AsBuiltLine| {
            let record = line.as_built.parse().ok().and_then(|id| house.any(id));
            let written = record.and_then(|record| record.written(Field::Left));
            written.is_some_and(|written| written.group.to_string().starts_with(group))
        };
        Ok(view.as_built.iter().find(came_with).map(|line| line.as_built.clone()))
    }

    pub(super) fn mark(&mut self, house: &str, answers: &Answers) -> Result<(), Fault> {
        let job = self.job(house)?;
        self.act(Action::PoleKind { action: PoleAction::AddMark { job, answers: given(answers) } })
    }

    /// Goes on where the work is: shows the thing that comes next.
    pub(super) fn next(&mut self, house: &str) -> Result<(), Fault> {
        let job = self.job(house)?;
        let next = self.house_view(&job)?.next;
        if !self.options.json {
            let paper = Paper::new(self.phrases()?);
            super::out(&format!("{}\n", show::house::next(&paper, &next)))?;
        }
        let place = match next {
            NextWork::MakeTight { penetration, .. } => Place::Penetration { penetration },
            NextWork::HangBoard { board, .. } => Place::Board { board },
            NextWork::MeasureWall { wall, .. } => Place::Measure { wall },
            NextWork::PlanWall { wall, .. } => Place::Wall { wall },
            NextWork::LayOutPole => Place::Pole { job },
            _ => Place::House { job },
        };
        self.show(&place)
    }

    /// Gives every answer, then shows the place.
    pub(super) fn answered(
        &mut self,
        place: &Place,
        answers: &Answers,
        action: impl Fn(String, String) -> Action,
    ) -> Result<(), Fault> {
        match self.book.together(|book| answer_all(book, answers, action))? {
            Some(outcome) => self.print_outcome(&outcome),
            None => self.show(place),
        }
    }
}

/// Gives every answer, each of them an answer of its own in the done list.
fn answer_all(
    book: &mut Book,
    answers: &Answers,
    action: impl Fn(String, String) -> Action,
) -> Result<Option<Outcome>, Fault> {
    let mut last = None;
    for (field, text) in &answers.given {
        last = Some(book.act(&action(field.clone(), text.clone()))?);
    }
    Ok(last)
}

/// The answers to the questions of a new thing.
pub(super) fn given(answers: &Answers) -> Vec<Given> {
    answers.given.iter().map(|(field, text)| Given { field: field.clone(), text: text.clone() }).collect()
}
