use crate::book::{Book, DraftKey, Field, Record, sure_code};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::rules::plausible::Suggestion;
use crate::store::{Id, Value};

use super::question;

/// Something to be said of a value.
pub(crate) struct Finding {
    /// The thing.
    pub(crate) subject: Id,
    /// The field of it.
    pub(crate) field: Field,
    /// Whether it cannot be; else it hardly can.
    pub(crate) is_impossible: bool,
    /// Why, what is allowed, and what was probably meant.
    pub(crate) text: String,
    /// The value.
    pub(super) value: Length,
    pub(super) typed: String,
    pub(super) suggestion: Option<Suggestion>,
}

impl Finding {
    /// Whether it was asked before, of something that comes in a document and stands there at a path; else it is from now on.
    pub(crate) fn is_sure(&self, book: &mut Book, terms: &Terms<'_>, path: &str) -> Result<bool> {
        let key = DraftKey::doubt("document", path);
        if question::was_asked(book, &key, &self.value.nm().to_string())? {
            return Ok(true);
        }
        self.ask(book, terms, &key)?;
        Ok(false)
    }

    /// Keeps that it is asked about.
    pub(super) fn ask(&self, book: &mut Book, terms: &Terms<'_>, key: &DraftKey) -> Result<()> {
        let meant = self.suggestion.map(|suggestion| suggestion.shown(terms.show)).unwrap_or_default();
        question::keep(book, key, &self.value.nm().to_string(), [&self.typed, &meant])
    }

    /// What the book keeps of somebody who is sure.
    pub(crate) fn sure(&self) -> (String, Value) {
        (sure_code(self.field), Value::Whole(self.value.nm()))
    }

    /// Something to be said of where a thing stands.
    pub(super) fn of_place(record: &Record, field: Field, at: Length, is_impossible: bool, text: String) -> Self {
        let typed = record.written(field).map(|written| written.value.typed()).unwrap_or_default();
        Self { subject: record.id(), field, is_impossible, text, value: at, typed, suggestion: None }
    }
}
