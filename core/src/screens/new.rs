//! New: a new thing in the making, one question at a time. Until its last question is answered it is all drafts, kept on
//! this device alone, so that a dropped phone goes on at the same question; then it is one accepted answer.

use std::collections::BTreeMap;

use crate::book::{
    Allowed, Book, DraftKey, Field, FieldSpec, Kind, Operation, OperationKind, SPOILED_FIELDS, fields_of,
};
use crate::phrases::key;
use crate::store::Id;
use crate::views::{
    BoardAction, Given, HouseAction, JobsAction, MeasureAction, NewAction, NewThing, NewView, Place, PoleAction,
    Question, SawListAction, WallAction,
};
use crate::work::WorkError;

use super::{board, house, jobs, measure, pole, saw_list, wall};
use crate::forms::ask::{self, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::offer;
use crate::forms::plausible::{about_new, judged_so_far, posed};
use crate::screens::result::ActionResult;

impl NewThing {
    /// What it will be in the book; that a board is spoiled is no thing of its own.
    const fn kind(self) -> Option<Kind> {
        Some(match self {
            Self::House => Kind::Job,
            Self::Stock => Kind::Stock,
            Self::BlockSize => Kind::BlockSize,
            Self::Wall => Kind::Wall,
            Self::Mark => Kind::Mark,
            Self::LooseBoard => Kind::Board,
            Self::BaseStep => Kind::BaseStep,
            Self::Stud => Kind::Stud,
            Self::Opening => Kind::Opening,
            Self::Abutment => Kind::Abutment,
            Self::Penetration | Self::SamePenetration => Kind::Penetration,
            Self::Notch => Kind::Notch,
            Self::Offcut => Kind::Offcut,
            Self::AsBuilt => Kind::AsBuilt,
            Self::Spoiled => return None,
        })
    }

    /// Every question that there is of such a thing.
    const fn specs(self) -> &'static [FieldSpec] {
        match self.kind() {
            Some(kind) => fields_of(kind),
            None => SPOILED_FIELDS,
        }
    }

    fn spec(self, terms: &Terms<'_>, field: &str) -> Result<&'static FieldSpec> {
        let found = self.specs().iter().find(|spec| spec.field.code() == field);
        found.ok_or_else(|| ask::not_an_answer(terms, self.specs(), field).into())
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
    fn asks(self, spec: &FieldSpec, has_parent: bool, answers: &Answers) -> bool {
        match (self, spec.field) {
            (Self::House | Self::Wall, field) => field == Field::Name,
            (Self::Stock, Field::Count) | (Self::AsBuilt, Field::Middle) | (Self::Spoiled, _) => true,
            (Self::Mark, Field::Clear) => answers.get(Field::Want.code()).is_some_and(|want| want == "clear"),
            (Self::SamePenetration, field) => matches!(field, Field::FromLeft | Field::FromBase),
            (Self::LooseBoard, Field::Height | Field::Lap) => !has_parent,
            _ => !spec.optional,
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
    fn of(book: &Book, what: NewThing, parent: &'a str) -> Result<Self> {
        let empty = Self { what, parent, answers: Answers::new() };
        let kept = book.draft(&empty.key(""))?;
        Ok(Self { answers: serde_json::from_str(&kept).unwrap_or_default(), ..empty })
    }

    /// The key of the draft of a field; without a field that of the answers.
    fn key(&self, field: &str) -> DraftKey {
        DraftKey::new_thing(&format!("{:?}", self.what), self.parent, field)
    }

    fn place(&self) -> Place {
        Place::New { what: self.what, parent: self.parent.to_owned() }
    }

    fn answer(&self, field: Field) -> String {
        self.answers.get(field.code()).cloned().unwrap_or_default()
    }

    fn asks(&self) -> impl Iterator<Item = &'static FieldSpec> {
        self.what.specs().iter().filter(|spec| self.what.asks(spec, !self.parent.is_empty(), &self.answers))
    }

    fn question(&self, book: &Book, terms: &Terms<'_>, spec: &FieldSpec) -> Result<Question> {
        let draft = book.draft(&self.key(spec.field.code()))?;
        let open = ask::unanswered(terms, spec);
        let given = self.answer(spec.field);
        let label = open.choices.iter().find(|choice| choice.code == given).map(|choice| choice.label.clone());
        let question =
            Question { subject: self.key("").code().to_owned(), answer: label.unwrap_or(given), draft, ..open };
        let (_, under) = self.hangs_under(book, terms)?;
        posed(book, terms, &about_new(under), question)
    }

    /// The house that it belongs to, and what it will hang under, as far as that is there.
    fn hangs_under(&self, book: &Book, terms: &Terms<'_>) -> Result<(Option<Id>, Option<Id>)> {
        if self.what == NewThing::House || self.parent.is_empty() {
            return Ok((None, None));
        }
        let parent = terms.id("parent", self.parent)?;
        let job = job_of(book, terms, self.what, self.parent)?.and_then(|job| job.parse().ok());
        let under = match self.what {
            NewThing::LooseBoard => None,
            NewThing::Mark => Some(lookup::work(book, Some(parent))?.pole().map_or(parent, |pole| pole.id())),
            _ => Some(parent),
        };
        Ok((job, under))
    }

    /// Judges an answer by what was answered so far, before the next question.
    fn judge(&self, book: &mut Book, terms: &Terms<'_>, field: Field) -> Result<()> {
        let Some(kind) = self.what.kind() else { return Ok(()) };
        let (job, under) = self.hangs_under(book, terms)?;
        let id = terms.fresh(0);
        let mut made = Operation::new(OperationKind::Answered, job, []).create(id, kind, under, sort_key(terms, 0));
        for spec in self.what.specs() {
            if let Some(text) = self.answers.get(spec.field.code()) {
                made = made.set(id, spec.field, ask::value(terms, spec, text)?);
            }
        }
        judged_so_far(book, terms, &made, field)
    }

    /// The first question with keys that were typed, else the first one without an answer.
    fn asked(&self, questions: &[Question]) -> Option<Question> {
        let open = |question: &&Question| !self.answers.contains_key(&question.field);
        let drafted = questions.iter().find(|question| !question.draft.is_empty());
        drafted.or_else(|| questions.iter().find(open)).cloned()
    }

    /// Drops everything that was kept of it.
    fn clear(&self, book: &mut Book) -> Result<()> {
        let fields = self.what.specs().iter().map(|spec| spec.field.code());
        for key in fields.chain([""]).map(|field| self.key(field)) {
            if !book.draft(&key)?.is_empty() {
                book.put_draft(&key, "")?;
            }
        }
        Ok(())
    }
}

/// The house that a parent is, or belongs to.
fn job_of(book: &Book, terms: &Terms<'_>, what: NewThing, parent: &str) -> Result<Option<String>> {
    if let (NewThing::House | NewThing::LooseBoard, true) = (what, parent.is_empty()) {
        return Ok(None);
    }
    let id = terms.id("parent", parent)?;
    let job = match what {
        NewThing::House
        | NewThing::Stock
        | NewThing::BlockSize
        | NewThing::Wall
        | NewThing::Mark
        | NewThing::LooseBoard
        | NewThing::Offcut => Some(lookup::work(book, Some(id))?.job()?.id()),
        // A loose board is of no house, whichever wall it was attached to.
        NewThing::Notch | NewThing::Spoiled => lookup::of(book, id, Kind::Board)?.house().get(id, Kind::Board)?.made_in,
        _ => lookup::of(book, id, Kind::Wall)?.id(),
    };
    Ok(job.map(|job| job.to_string()))
}

pub(super) fn view(book: &Book, terms: &Terms<'_>, what: NewThing, parent: &str) -> Result<NewView> {
    let job = job_of(book, terms, what, parent)?;
    let making = Making::of(book, what, parent)?;
    let mut questions: Vec<Question> =
        making.asks().map(|spec| making.question(book, terms, spec)).collect::<Result<_>>()?;
    if let (NewThing::LooseBoard, None) = (what, &job) {
        offer::of_loose_board(terms, lookup::work(book, None)?.as_ref(), &mut questions)?;
    }
    let asked = making.asked(&questions);
    let title = terms.phrase(what.title(!parent.is_empty()), &[]);
    Ok(NewView { what, parent: parent.to_owned(), job, title, questions, asked })
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &NewAction) -> Result<ActionResult> {
    match action {
        NewAction::KeepDraft { what, parent, field, text } => {
            let making = Making::of(book, *what, parent)?;
            what.spec(terms, field)?;
            book.put_draft(&making.key(field), text)?;
            Ok(ActionResult::without_answer(making.place()))
        }
        NewAction::Answer { what, parent, field, text } => {
            job_of(book, terms, *what, parent)?;
            answer(book, terms, Making::of(book, *what, parent)?, field, text)
        }
        NewAction::Leave { what, parent } => {
            let place = above(book, terms, *what, parent)?;
            Making::of(book, *what, parent)?.clear(book)?;
            Ok(ActionResult::without_answer(place))
        }
    }
}

fn answer(book: &mut Book, terms: &Terms<'_>, mut making: Making<'_>, field: &str, text: &str) -> Result<ActionResult> {
    let spec = making.what.spec(terms, field)?;
    let value = ask::value(terms, spec, text)?;
    // A name is any text, but a thing that nobody can call is of no use.
    if matches!(spec.allowed, Allowed::AnyText) && !spec.optional && value.typed().is_empty() {
        return Err(WorkError::First { field: spec.field.code(), title: spec.title }.into());
    }
    making.answers.insert(field.to_owned(), value.typed());
    making.judge(book, terms, spec.field)?;
    let open = making.asks().any(|spec| !making.answers.contains_key(spec.field.code()));
    if open {
        book.put_long_draft(&making.key(""), serde_json::to_string(&making.answers).unwrap_or_default())?;
        book.put_draft(&making.key(field), "")?;
        return Ok(ActionResult::without_answer(making.place()));
    }
    let done = make(book, terms, &making)?;
    making.clear(book)?;
    Ok(done)
}

/// Makes the thing, through the screen that such things belong to.
fn make(book: &mut Book, terms: &Terms<'_>, making: &Making<'_>) -> Result<ActionResult> {
    let text = |field| making.answer(field);
    let parent = making.parent.to_owned();
    let given = || -> Vec<Given> {
        let said = making.answers.iter().filter(|(_, text)| !text.is_empty());
        said.map(|(field, text)| Given { field: field.clone(), text: text.clone() }).collect()
    };
    let part =
        |kind: Kind| MeasureAction::AddPart { wall: parent.clone(), kind: kind.code().to_owned(), answers: given() };
    match making.what {
        NewThing::House => {
            let like = (!parent.is_empty()).then_some(parent);
            jobs::act(book, terms, &JobsAction::Create { name: text(Field::Name), like })
        }
        NewThing::Wall => house::act(book, terms, &HouseAction::AddWall { job: parent, name: text(Field::Name) }),
        NewThing::Stock => {
            let action = HouseAction::AddStock { job: parent, length: text(Field::Length), count: text(Field::Count) };
            house::act(book, terms, &action)
        }
        NewThing::BlockSize => {
            let action =
                HouseAction::AddBlockSize { job: parent, width: text(Field::Width), height: text(Field::Height) };
            house::act(book, terms, &action)
        }
        NewThing::Mark => pole::act(book, terms, &PoleAction::AddMark { job: parent, answers: given() }),
        NewThing::LooseBoard => {
            let job = (!parent.is_empty()).then_some(parent);
            board::act(book, terms, &BoardAction::CreateLoose { job, answers: given() })
        }
        NewThing::BaseStep => measure::act(book, terms, &part(Kind::BaseStep)),
        NewThing::Stud => measure::act(book, terms, &part(Kind::Stud)),
        NewThing::Opening => measure::act(book, terms, &part(Kind::Opening)),
        NewThing::Abutment => measure::act(book, terms, &part(Kind::Abutment)),
        NewThing::Penetration => wall::act(book, terms, &WallAction::AddPenetration { wall: parent, answers: given() }),
        NewThing::SamePenetration => {
            let (from_left, from_base) = (text(Field::FromLeft), text(Field::FromBase));
            wall::act(book, terms, &WallAction::AddSameAsLast { wall: parent, from_left, from_base })
        }
        NewThing::Notch => board::act(book, terms, &BoardAction::AddNotch { board: parent, answers: given() }),
        NewThing::Offcut => {
            saw_list::act(book, terms, &SawListAction::AddOffcut { job: parent, length: text(Field::Length) })
        }
        NewThing::AsBuilt => pole::act(book, terms, &PoleAction::SayAsBuilt { wall: parent, answers: given() }),
        NewThing::Spoiled => {
            board::act(book, terms, &BoardAction::SayItIsSpoiled { board: parent, left: text(Field::Left) })
        }
    }
}

/// The screen that a new thing was started from.
fn above(book: &Book, terms: &Terms<'_>, what: NewThing, parent: &str) -> Result<Place> {
    let (job, parent) = (job_of(book, terms, what, parent)?, parent.to_owned());
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
