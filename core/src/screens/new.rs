//! New: a new thing in the making, one question at a time. Until its last question is answered it is all drafts, kept on
//! this device alone, so that a dropped phone goes on at the same question; then it is one accepted answer.

use std::collections::BTreeMap;

use crate::phrases::key;
use crate::store::Store;
use crate::views::{
    BoardAction, Given, HouseAction, JobsAction, MeasureAction, NewAction, NewThing, NewView, Place, PoleAction,
    Question, SawListAction, WallAction,
};

use super::ask;
use super::context::Terms;
use super::kept::{Facts, Job, Wall};
use super::kinds::{self, Allowed, Ask};
use super::trouble::Kept;
use super::{Done, board, house, jobs, measure, pole, saw_list, wall};

impl NewThing {
    const fn kind(self) -> &'static str {
        match self {
            Self::House => kinds::JOB,
            Self::Stock => kinds::STOCK,
            Self::BlockSize => kinds::BLOCK_SIZE,
            Self::Wall => kinds::WALL,
            Self::Mark => kinds::MARK,
            Self::LooseBoard => kinds::BOARD,
            Self::BaseStep => kinds::BASE_STEP,
            Self::Stud => kinds::STUD,
            Self::Opening => kinds::OPENING,
            Self::Abutment => kinds::ABUTMENT,
            Self::Penetration | Self::SamePenetration => kinds::PENETRATION,
            Self::Notch => kinds::NOTCH,
            Self::Offcut => kinds::OFFCUT,
            Self::AsBuilt => kinds::AS_BUILT,
            Self::Spoiled => kinds::SPOILED,
        }
    }

    const fn title(self, has_parent: bool) -> &'static str {
        match self {
            Self::House if has_parent => key("frame-house-like"),
            Self::House => key("frame-new-house"),
            Self::Stock => key("frame-new-stock"),
            Self::BlockSize => key("frame-new-block"),
            Self::Wall => key("frame-new-wall"),
            Self::Mark => key("frame-new-mark"),
            Self::LooseBoard => key("frame-loose-board"),
            Self::BaseStep => key("wall-part-base-step"),
            Self::Stud => key("wall-part-stud"),
            Self::Opening => key("wall-part-opening"),
            Self::Abutment => key("wall-part-abutment"),
            Self::Penetration => key("frame-new-penetration"),
            Self::SamePenetration => key("frame-same-as-last"),
            Self::Notch => key("frame-new-notch"),
            Self::Offcut => key("frame-new-offcut"),
            Self::AsBuilt => key("frame-as-built"),
            Self::Spoiled => key("frame-spoiled"),
        }
    }

    /// Whether a question is asked before the thing is made; the others may be answered afterwards.
    fn asks(self, ask: &Ask, has_parent: bool, answers: &Answers) -> bool {
        match (self, ask.field) {
            (Self::House | Self::Wall, field) => field == "name",
            (Self::Stock, "count") | (Self::AsBuilt, "middle") | (Self::Spoiled, _) => true,
            (Self::Mark, "clear") => answers.get("want").is_some_and(|want| want == "clear"),
            (Self::SamePenetration, field) => matches!(field, "from-left" | "from-base"),
            (Self::LooseBoard, "height" | "lap") => !has_parent,
            _ => !ask.optional,
        }
    }
}

/// What was answered so far, by field.
type Answers = BTreeMap<String, String>;

/// A thing in the making, as the drafts have it.
struct Making<'a> {
    what: NewThing,
    parent: &'a str,
    answers: Answers,
}

impl<'a> Making<'a> {
    fn of(store: &Store, what: NewThing, parent: &'a str) -> Kept<Self> {
        let empty = Self { what, parent, answers: Answers::new() };
        let kept = store.draft_get(&empty.key(""))?.unwrap_or_default();
        Ok(Self { answers: serde_json::from_str(&kept).unwrap_or_default(), ..empty })
    }

    /// The key of the draft of a field; without a field that of the answers.
    fn key(&self, field: &str) -> String {
        format!("new/{:?}/{}/{field}", self.what, self.parent)
    }

    fn place(&self) -> Place {
        Place::New { what: self.what, parent: self.parent.to_owned() }
    }

    fn asks(&self) -> impl Iterator<Item = &'static Ask> {
        kinds::asks(self.what.kind()).iter().filter(|ask| self.what.asks(ask, !self.parent.is_empty(), &self.answers))
    }

    fn question(&self, store: &Store, terms: &Terms<'_>, ask: &Ask) -> Kept<Question> {
        let draft = store.draft_get(&self.key(ask.field))?.unwrap_or_default();
        let open = ask::unanswered(terms, ask);
        let given = self.answers.get(ask.field).cloned().unwrap_or_default();
        let label = open.choices.iter().find(|choice| choice.code == given).map(|choice| choice.label.clone());
        Ok(Question { subject: self.key(""), answer: label.unwrap_or(given), draft, ..open })
    }

    /// The first question with keys that were typed, else the first one without an answer.
    fn asked(&self, questions: &[Question]) -> Option<Question> {
        let open = |question: &&Question| !self.answers.contains_key(&question.field);
        let drafted = questions.iter().find(|question| !question.draft.is_empty());
        drafted.or_else(|| questions.iter().find(open)).cloned()
    }

    /// Drops everything that was kept of it.
    fn clear(&self, store: &mut Store) -> Kept<()> {
        for ask in kinds::asks(self.what.kind()) {
            store.draft_clear(&self.key(ask.field))?;
        }
        Ok(store.draft_clear(&self.key(""))?)
    }
}

/// The house that a parent is, or belongs to.
fn job_of(store: &Store, terms: &Terms<'_>, what: NewThing, parent: &str) -> Kept<Option<String>> {
    let id = |parent: &str| terms.id("parent", parent);
    let job = match what {
        NewThing::House | NewThing::LooseBoard if parent.is_empty() => None,
        NewThing::House
        | NewThing::Stock
        | NewThing::BlockSize
        | NewThing::Wall
        | NewThing::Mark
        | NewThing::LooseBoard
        | NewThing::Offcut => Some(Job::of(store, terms, id(parent)?)?.id()),
        NewThing::Notch | NewThing::Spoiled => Facts::of(store, terms, id(parent)?, kinds::BOARD)?.subject.job,
        _ => Some(Wall::of(store, terms, id(parent)?)?.job),
    };
    Ok(job.map(|job| job.to_string()))
}

pub(super) fn view(store: &Store, terms: &Terms<'_>, what: NewThing, parent: &str) -> Kept<NewView> {
    let job = job_of(store, terms, what, parent)?;
    let making = Making::of(store, what, parent)?;
    let questions: Vec<Question> = making.asks().map(|ask| making.question(store, terms, ask)).collect::<Kept<_>>()?;
    let asked = making.asked(&questions);
    let title = terms.phrase(what.title(!parent.is_empty()), &[]);
    Ok(NewView { what, parent: parent.to_owned(), job, title, questions, asked })
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &NewAction) -> Kept<Done> {
    match action {
        NewAction::KeepDraft { what, parent, field, text } => {
            let making = Making::of(store, *what, parent)?;
            ask::ask_of(terms, what.kind(), field)?;
            ask::keep_keys(store, &making.key(field), text)?;
            Ok(Done::without_answer(making.place()))
        }
        NewAction::Answer { what, parent, field, text } => {
            job_of(store, terms, *what, parent)?;
            answer(store, terms, Making::of(store, *what, parent)?, field, text)
        }
        NewAction::Leave { what, parent } => {
            let place = above(store, terms, *what, parent)?;
            Making::of(store, *what, parent)?.clear(store)?;
            Ok(Done::without_answer(place))
        }
    }
}

fn answer(store: &mut Store, terms: &Terms<'_>, mut making: Making<'_>, field: &str, text: &str) -> Kept<Done> {
    let ask = ask::ask_of(terms, making.what.kind(), field)?;
    let value = ask::value(terms, ask, text)?;
    // A name is any text, but a thing that nobody can call is of no use.
    if matches!(ask.allowed, Allowed::AnyText) && !ask.optional && value.typed().is_empty() {
        return Err(super::kept::first(terms, ask.field, ask.title).into());
    }
    making.answers.insert(field.to_owned(), value.typed());
    let kept = serde_json::to_string(&making.answers).unwrap_or_default();
    let open = making.asks().any(|ask| !making.answers.contains_key(ask.field));
    if open {
        store.draft_put(&making.key(""), &kept)?;
        store.draft_clear(&making.key(field))?;
        return Ok(Done::without_answer(making.place()));
    }
    let done = make(store, terms, &making)?;
    making.clear(store)?;
    Ok(done)
}

/// Makes the thing, through the screen that such things belong to.
fn make(store: &mut Store, terms: &Terms<'_>, making: &Making<'_>) -> Kept<Done> {
    let text = |field: &str| making.answers.get(field).cloned().unwrap_or_default();
    let parent = making.parent.to_owned();
    let given = || -> Vec<Given> {
        let said = making.answers.iter().filter(|(_, text)| !text.is_empty());
        said.map(|(field, text)| Given { field: field.clone(), text: text.clone() }).collect()
    };
    let part = |kind: &str| MeasureAction::AddPart { wall: parent.clone(), kind: kind.to_owned(), answers: given() };
    match making.what {
        NewThing::House => {
            let like = (!parent.is_empty()).then_some(parent);
            jobs::act(store, terms, &JobsAction::Create { name: text("name"), like })
        }
        NewThing::Wall => house::act(store, terms, &HouseAction::AddWall { job: parent, name: text("name") }),
        NewThing::Stock => {
            let action = HouseAction::AddStock { job: parent, length: text("length"), count: text("count") };
            house::act(store, terms, &action)
        }
        NewThing::BlockSize => {
            let action = HouseAction::AddBlockSize { job: parent, width: text("width"), height: text("height") };
            house::act(store, terms, &action)
        }
        NewThing::Mark => pole::act(store, terms, &PoleAction::AddMark { job: parent, answers: given() }),
        NewThing::LooseBoard => {
            let job = (!parent.is_empty()).then_some(parent);
            board::act(store, terms, &BoardAction::CreateLoose { job, answers: given() })
        }
        NewThing::BaseStep | NewThing::Stud | NewThing::Opening | NewThing::Abutment => {
            measure::act(store, terms, &part(making.what.kind()))
        }
        NewThing::Penetration => {
            wall::act(store, terms, &WallAction::AddPenetration { wall: parent, answers: given() })
        }
        NewThing::SamePenetration => {
            let (from_left, from_base) = (text("from-left"), text("from-base"));
            wall::act(store, terms, &WallAction::AddSameAsLast { wall: parent, from_left, from_base })
        }
        NewThing::Notch => board::act(store, terms, &BoardAction::AddNotch { board: parent, answers: given() }),
        NewThing::Offcut => {
            saw_list::act(store, terms, &SawListAction::AddOffcut { job: parent, length: text("length") })
        }
        NewThing::AsBuilt => pole::act(store, terms, &PoleAction::SayAsBuilt { wall: parent, answers: given() }),
        NewThing::Spoiled => {
            board::act(store, terms, &BoardAction::SayItIsSpoiled { board: parent, left: text("left") })
        }
    }
}

/// The screen that a new thing was started from.
fn above(store: &Store, terms: &Terms<'_>, what: NewThing, parent: &str) -> Kept<Place> {
    let (job, parent) = (job_of(store, terms, what, parent)?, parent.to_owned());
    Ok(match (what, job) {
        (NewThing::Notch | NewThing::Spoiled, _) => Place::Board { board: parent },
        (NewThing::Mark | NewThing::AsBuilt, Some(job)) => Place::Pole { job },
        (NewThing::Offcut, Some(job)) => Place::SawList { job },
        (NewThing::Penetration | NewThing::SamePenetration, _) => Place::Wall { wall: parent },
        (NewThing::BaseStep | NewThing::Stud | NewThing::Opening | NewThing::Abutment, _) => {
            Place::Measure { wall: parent }
        }
        (_, Some(job)) => Place::House { job },
        (_, None) => Place::Jobs,
    })
}
