use crate::board::BoardError;
use crate::book::{Field, Kind, Missing};
use crate::phrases::{Phrases, key};
use crate::rules::RuleError;
use crate::store::StoreError;
use crate::views::{Code, Problem};
use crate::wall::OutlineError;
use crate::work::WorkError;

/// Why something could not be done, before it is put into words: what a screen says itself, or what a room below says.
#[derive(Debug)]
pub(crate) enum FormError {
    /// Said by a screen.
    Said(Problem),
    /// Said by the store.
    Store(StoreError),
    /// Said by what follows from the house.
    Work(WorkError),
}

/// What a screen's own functions give.
pub(crate) type Result<T, E = FormError> = std::result::Result<T, E>;

impl From<Problem> for FormError {
    fn from(problem: Problem) -> Self {
        Self::Said(problem)
    }
}

impl From<StoreError> for FormError {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl From<RuleError> for FormError {
    fn from(error: RuleError) -> Self {
        Self::Work(error.into())
    }
}

impl From<WorkError> for FormError {
    fn from(error: WorkError) -> Self {
        Self::Work(error)
    }
}

impl From<Missing> for FormError {
    fn from(missing: Missing) -> Self {
        Self::Work(missing.into())
    }
}

impl FormError {
    /// No such thing in the book.
    pub(crate) fn unknown(kind: Kind) -> Self {
        Missing::Unknown(kind).into()
    }

    /// The problem in words.
    pub(crate) fn into_problem(self, phrases: &Phrases) -> Problem {
        match self {
            Self::Said(problem) => problem,
            Self::Store(error) => {
                let why = error.text(phrases);
                Problem::new(Code::Book, "", phrases.phrase("screen-book-trouble", &[("why", why.into())]))
            }
            Self::Work(error) => of_work(error, phrases),
        }
    }
}

fn of_work(error: WorkError, phrases: &Phrases) -> Problem {
    match error {
        WorkError::Missing(Missing::Unknown(kind)) => {
            Problem::new(Code::Unknown, kind.code(), phrases.phrase("screen-unknown", &[]))
        }
        WorkError::Missing(Missing::Removed(kind)) => {
            Problem::new(Code::Unknown, kind.code(), phrases.phrase("screen-removed", &[]))
        }
        WorkError::First { field, title } => {
            let what = phrases.phrase(title, &[]);
            Problem::new(Code::First, field, phrases.phrase("screen-first", &[("what", what.into())]))
        }
        WorkError::Rule(error) => Problem::new(Code::Range, error.code(), error.text(phrases)),
        WorkError::Outline(error) => {
            let field = match error {
                OutlineError::NotPositive(_) => Field::Width,
                _ => Field::PeakHeight,
            };
            let why = phrases.phrase(outline(&error), &[]);
            let why = phrases.phrase("wall-outline-trouble", &[("why", why.into())]);
            Problem::new(Code::Range, field.code(), why)
        }
        WorkError::Peak => {
            Problem::new(Code::Range, Field::PeakHeight.code(), phrases.phrase("wall-peak-trouble", &[]))
        }
        WorkError::Board(error) => {
            let text = match error {
                BoardError::Gaps => key("wall-gaps-trouble"),
                _ => key("wall-shapes-trouble"),
            };
            Problem::new(Code::Range, Field::Width.code(), phrases.phrase(text, &[]))
        }
    }
}

const fn outline(error: &OutlineError) -> &'static str {
    match error {
        OutlineError::TooFew(_) | OutlineError::Clockwise => key("wall-outline-flat"),
        OutlineError::TooMany => key("wall-outline-many"),
        OutlineError::Repeated(_) => key("wall-outline-repeated"),
        OutlineError::Crossing(..) => key("wall-outline-crossing"),
        OutlineError::NotPositive(_) => key("wall-outline-nothing"),
    }
}
