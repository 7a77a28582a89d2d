use crate::phrases::Phrases;
use crate::rules::RuleError;
use crate::store::StoreError;
use crate::views::{Code, Problem};

/// Why something could not be done, before it is put into words: what a screen says itself, or what a room below says.
#[derive(Debug)]
pub(super) enum Trouble {
    /// Said by a screen.
    Said(Problem),
    /// Said by the store.
    Store(StoreError),
    /// Said by the rules.
    Rule(RuleError),
}

/// What a screen's own functions give.
pub(super) type Kept<T> = Result<T, Trouble>;

impl From<Problem> for Trouble {
    fn from(problem: Problem) -> Self {
        Self::Said(problem)
    }
}

impl From<StoreError> for Trouble {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl From<RuleError> for Trouble {
    fn from(error: RuleError) -> Self {
        Self::Rule(error)
    }
}

impl Trouble {
    /// The problem in words.
    pub(super) fn into_problem(self, phrases: &Phrases) -> Problem {
        match self {
            Self::Said(problem) => problem,
            Self::Rule(error) => Problem::new(Code::Range, error.code(), error.text(phrases)),
            Self::Store(error) => Problem::new(
                Code::Book,
                "",
                phrases.phrase("screen-book-trouble", &[("why", error.to_string().into())]),
            ),
        }
    }
}
