//! Story pole: where the lines go.

mod as_built;
mod preview;

use crate::store::{Id, Store, Value};

use super::ask::{self, accept, draft_key, keep_draft, op, sort_key};
use super::context::Terms;
use super::drawing::pole_revision;
use super::kept::{Facts, Job, Wall};
use super::parts::{Note, Question, Reading};
use super::problem::{Code, Problem};
use super::trouble::Kept;
use super::{Done, Place, kinds};

pub use as_built::{AsBuiltLine, ChangedLine};

/// The story pole of a house.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PoleView {
    /// The house.
    pub job: String,
    /// Its questions with their answers.
    pub questions: Vec<Question>,
    /// The one that is asked now: with keys typed and not accepted, else the first that the work needs.
    pub asked: Option<Question>,
    /// The heights that the lines should meet or stay clear of, and how they come out.
    pub marks: Vec<MarkLine>,
    /// The lines for the stick, from the bottom; empty until the questions are answered.
    pub lines: Vec<PoleLine>,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// Whether a layout is kept: the walls are planned from it.
    pub laid_out: bool,
    /// Whether the kept layout is the one that is shown.
    pub up_to_date: bool,
    /// Whether no other layout misses the marks by less.
    pub proved: bool,
    /// Whether these lines are kept and whether there are better ones, in words; empty where there are none.
    pub said: String,
    /// The courses that were taped as they hang, wall by wall, and what they change.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub as_built: Vec<AsBuiltLine>,
    /// What is asked of a course that hangs.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub as_built_questions: Vec<Question>,
    /// Changes when the drawing does.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub revision: i64,
    /// The walls on which a course can be taped as it hangs; empty until a layout is kept.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub walls: Vec<PoleWall>,
}

/// A wall that the lines of the pole go on.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PoleWall {
    /// The wall.
    pub wall: String,
    /// What the crew calls it.
    pub name: String,
}

/// One line of the pole.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PoleLine {
    /// The course whose bottom edge lies here; one more than there are for the end.
    pub course: u32,
    /// The height above the datum.
    pub height: Reading,
    /// What of the course stays visible; absent for the end.
    pub reveal: Option<Reading>,
    /// Which line it is and what it shows, in words.
    pub said: String,
}

/// A height that lines should meet or stay clear of.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MarkLine {
    /// Its id; empty for one that comes from a wall.
    pub mark: String,
    /// What is there.
    pub name: String,
    /// How high it is above the datum.
    pub at: Reading,
    /// `land` or `clear`.
    pub want: String,
    /// By how much the nearest line misses it; absent until there is a layout.
    pub miss: Option<Reading>,
    /// What is wanted and how it comes out, in words.
    pub said: String,
}

/// What can be done with the story pole.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum PoleAction {
    /// An answer to one of its questions.
    Answer {
        /// The house.
        job: String,
        /// The question's field.
        field: String,
        /// The answer as typed.
        text: String,
    },
    /// Keys that are typed and not yet accepted.
    KeepDraft {
        /// The house.
        job: String,
        /// The question's field.
        field: String,
        /// The keys.
        text: String,
    },
    /// A height of one's own to meet or stay clear of.
    AddMark {
        /// The house.
        job: String,
        /// The answers to its questions.
        answers: Vec<super::parts::Given>,
    },
    /// A height of one's own is no longer asked for.
    RemoveMark {
        /// The house.
        job: String,
        /// The mark.
        mark: String,
    },
    /// Keep the lines that are shown.
    LayOut {
        /// The house.
        job: String,
    },
    /// What the tape reads at the bottom edge of a course that hangs on a wall; the lines above it follow.
    SayAsBuilt {
        /// The wall.
        wall: String,
        /// Course, left, right, and the middle where it was taped.
        answers: Vec<super::parts::Given>,
    },
    /// What was said of a course as it hangs no longer holds.
    RemoveAsBuilt {
        /// The entry.
        as_built: String,
    },
}

pub(super) fn view(store: &Store, terms: &Terms<'_>, job: &str) -> Kept<PoleView> {
    let job = Job::of(store, terms, terms.id("job", job)?)?;
    let mut view = preview::view(store, terms, &job)?;
    view.revision = pole_revision(terms.phrases, &view);
    Ok(view)
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &PoleAction) -> Kept<Done> {
    let of = |store: &Store, job: &str| Job::of(store, terms, terms.id("job", job)?);
    let here = |job: &Job| Place::Pole { job: job.id().to_string() };
    match action {
        PoleAction::Answer { job, field, text } => {
            let job = of(store, job)?;
            let group = answer(store, terms, &job, field, text)?;
            Ok(Done::at(here(&job), group))
        }
        PoleAction::KeepDraft { job, field, text } => {
            let job = of(store, job)?;
            // Before the pole has an id its drafts have no place; the first accepted answer makes it.
            if let Some(pole) = pole(store, &job)? {
                keep_draft(store, terms, &pole, field, text)?;
            }
            Ok(Done::without_answer(here(&job)))
        }
        PoleAction::AddMark { job, answers } => {
            let job = of(store, job)?;
            let fields = ask::fields(terms, kinds::MARK, &super::parts::given(answers))?;
            let id = terms.fresh(0);
            let name = answers.iter().find(|given| given.field == "name").map_or("", |given| &given.text);
            let mut answer = op("mark-added", Some(job.id()), [name.trim()]);
            let pole = match pole(store, &job)? {
                Some(pole) => pole.id(),
                None => {
                    answer = answer.create(terms.fresh(1), kinds::POLE, Some(job.id()), sort_key(terms, 0));
                    terms.fresh(1)
                }
            };
            answer = answer.create(id, kinds::MARK, Some(pole), sort_key(terms, 0));
            for (field, value) in fields {
                answer = answer.set(id, field, value);
            }
            let group = accept(store, terms, answer, &[])?.group;
            Ok(Done::at(here(&job), group))
        }
        PoleAction::RemoveMark { job, mark } => {
            let job = of(store, job)?;
            let mark = Facts::of(store, terms, terms.id("mark", mark)?, kinds::MARK)?;
            if pole(store, &job)?.is_none_or(|pole| mark.subject.parent != Some(pole.id())) {
                return Err(Problem::new(Code::Unknown, "mark", terms.phrase("screen-unknown", &[])).into());
            }
            let name = mark.text("name").unwrap_or_default().to_owned();
            let answer =
                op("removed", Some(job.id()), [&name]).with(crate::store::Change::Remove { subject: mark.id() });
            let group = accept(store, terms, answer, &[])?.group;
            Ok(Done::at(here(&job), group))
        }
        PoleAction::LayOut { job } => {
            let job = of(store, job)?;
            let group = lay_out(store, terms, &job)?;
            Ok(Done::at(here(&job), group))
        }
        PoleAction::SayAsBuilt { wall, answers } => as_built::say(store, terms, wall, answers),
        PoleAction::RemoveAsBuilt { as_built } => as_built::remove(store, terms, as_built),
    }
}

/// The pole of a job, where anything was said of it.
fn pole(store: &Store, job: &Job) -> Kept<Option<Facts>> {
    Ok(Facts::children(store, job.id(), kinds::POLE)?.into_iter().next())
}

fn answer(store: &mut Store, terms: &Terms<'_>, job: &Job, field: &str, text: &str) -> Kept<Id> {
    if let Some(pole) = pole(store, job)? {
        return Ok(ask::answer(store, terms, &pole, field, text)?.group);
    }
    let question = ask::ask_of(terms, kinds::POLE, field)?;
    let value = ask::value(terms, question, text)?;
    let id = terms.fresh(0);
    let answer = op("answered", Some(job.id()), [question.title, text.trim()])
        .create(id, kinds::POLE, Some(job.id()), sort_key(terms, 0))
        .set(id, field, value);
    Ok(accept(store, terms, answer, &[&draft_key(id, field)])?.group)
}

/// Keeps the layout: what is up stays, so no line that a fixed board stands on may move.
fn lay_out(store: &mut Store, terms: &Terms<'_>, job: &Job) -> Kept<Id> {
    let pole = pole(store, job)?.ok_or_else(|| super::kept::first(terms, "from", "ask-pole-from"))?;
    let lines = preview::lines(store, terms, job, &pole)?;
    let up = fixed_courses(store, job)?;
    if let Some(kept) = job.lines(store)? {
        let same = kept.iter().zip(&lines).take_while(|(old, new)| old == new).count();
        if same < up {
            let text = terms.phrase("pole-boards-are-up", &[("course", up.into())]);
            return Err(Problem::new(Code::First, "lines", text).into());
        }
    }
    let text = lines.iter().map(|line| line.nm().to_string()).collect::<Vec<_>>().join(",");
    let courses = lines.len().saturating_sub(1).to_string();
    let mut answer = op("pole-laid-out", Some(job.id()), [&courses]).set(pole.id(), "lines", Value::Text(text));
    let kept = job.lines(store)?.unwrap_or_default();
    answer = as_built::laid_out(answer, store, terms, job, (&kept, &lines))?;
    Ok(accept(store, terms, answer, &[])?.group)
}

/// The highest course of which a board is fixed; zero where none is.
fn fixed_courses(store: &Store, job: &Job) -> Kept<usize> {
    let mut highest = 0;
    for wall in Wall::of_job(store, job.id())? {
        for board in Facts::children(store, wall.id(), kinds::BOARD)? {
            if board.text("state") == Some("fixed") {
                highest =
                    highest.max(board.whole("course").and_then(|course| usize::try_from(course).ok()).unwrap_or(0));
            }
        }
    }
    Ok(highest)
}
