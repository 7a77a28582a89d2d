//! The commands of a house and its story pole.

use lapwright::screens::{Action, Given, HouseAction, HouseView, NextWork, Outcome, Place, PoleAction, View};

use super::Session;
use crate::fault::Fault;
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
        self.answer_all(answers, answer)?;
        self.act(Action::PoleKind { action: PoleAction::LayOut { job } })
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
        match self.answer_all(answers, action)? {
            Some(outcome) => self.print_outcome(&outcome),
            None => self.show(place),
        }
    }

    /// Gives every answer, each of them an answer of its own in the done list.
    pub(super) fn answer_all(
        &mut self,
        answers: &Answers,
        action: impl Fn(String, String) -> Action,
    ) -> Result<Option<Outcome>, Fault> {
        let mut last = None;
        for (field, text) in &answers.given {
            last = Some(self.book.act(&action(field.clone(), text.clone()))?);
        }
        Ok(last)
    }
}

/// The answers to the questions of a new thing.
pub(super) fn given(answers: &Answers) -> Vec<Given> {
    answers.given.iter().map(|(field, text)| Given { field: field.clone(), text: text.clone() }).collect()
}
