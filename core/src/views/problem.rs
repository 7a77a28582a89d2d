//! Why a view cannot be shown or an action was not carried out.

use thiserror::Error;

/// Why a view cannot be shown or an action was not carried out; nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq, Error, serde::Serialize)]
#[error("{field}: {text}")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Problem {
    /// A stable code.
    pub code: String,
    /// The field that it is about; empty for the whole.
    pub field: String,
    /// What is wrong and what is allowed, in the reader's language.
    pub text: String,
}

/// The stable codes of a [`Problem`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Code {
    /// An answer that is needed.
    Missing,
    /// A text that is not a length.
    Length,
    /// A value outside what is allowed.
    Range,
    /// Two values the wrong way round.
    Order,
    /// None of the choices.
    Choice,
    /// A value that hardly can be: the same once more says that it is right.
    Unlikely,
    /// Over a limit.
    TooBig,
    /// No such thing in the book.
    Unknown,
    /// Something else must be done first.
    First,
    /// No answer exists.
    Infeasible,
    /// The book could not be read or written.
    Book,
}

impl Code {
    const fn text(self) -> &'static str {
        match self {
            Self::Missing => "missing",
            Self::Length => "length",
            Self::Range => "range",
            Self::Order => "order",
            Self::Choice => "choice",
            Self::Unlikely => "unlikely",
            Self::TooBig => "too-big",
            Self::Unknown => "unknown",
            Self::First => "first",
            Self::Infeasible => "infeasible",
            Self::Book => "book",
        }
    }
}

impl Problem {
    pub(crate) fn new(code: Code, field: impl Into<String>, text: impl Into<String>) -> Self {
        Self { code: code.text().to_owned(), field: field.into(), text: text.into() }
    }
}
