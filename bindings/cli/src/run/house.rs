//! The commands of a house and its story pole.

use lapwright::book::Field;
use lapwright::views::{
    Action, AsBuiltLine, Given, HouseAction, HouseView, NextWork, Outcome, Place, PoleAction, PoleView, SawListAction,
    View,
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
        let HouseView { name, next, .. } = self.house_view(&job)?;
        if !self.options.json {
            self.say_next((&name, &job), &next)?;
            super::out("")?;
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

    /// Says what comes next on a house, and how.
    fn say_next(&self, house: (&str, &str), next: &NextWork) -> Result<(), Fault> {
        let mut paper = Paper::new(self.phrases()?);
        let said = show::house::next(&paper, next);
        paper.line(&said);
        paper.call(show::call::of_next(&paper, house, next).as_deref());
        super::out(paper.into_text().trim_end())
    }

    /// Leads on from a wall that was worked on to what comes next on its house.
    pub(super) fn lead_on(&self, wall: &str) -> Result<(), Fault> {
        if self.options.json {
            return Ok(());
        }
        for job in self.jobs()? {
            let view = self.house_view(&job)?;
            if view.walls.iter().any(|own| own.wall == wall) {
                super::out("")?;
                return self.say_next((&view.name, &job), &view.next);
            }
        }
        Ok(())
    }

    /// A stock length that is new, or how many there are of one that is on the list.
    pub(super) fn stock(&mut self, house: &str, length: &str, count: &str) -> Result<(), Fault> {
        let job = self.job(house)?;
        let same = self.book.reader()?.length(length).ok();
        let stock = self.house_view(&job)?.stock;
        let same = stock.into_iter().find(|line| same.is_some_and(|same| same.nm() == line.length.nm));
        match same.filter(|_| !count.is_empty()) {
            Some(line) => {
                let action = SawListAction::SayStock { job: job.clone(), stock: line.stock, count: count.to_owned() };
                self.book.act(&Action::SawListKind { action })?;
                self.show(&Place::House { job })
            }
            None => {
                let (length, count) = (length.to_owned(), count.to_owned());
                self.act(Action::HouseKind { action: HouseAction::AddStock { job, length, count } })
            }
        }
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
