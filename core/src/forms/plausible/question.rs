//! The question about a value that hardly can be: what was asked, and the answers to choose from.

use crate::book::{Book, DraftKey};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::views::{AnswerKind, Choice, Question, TYPE_ANEW};

/// What stands between the parts of a kept question; nobody types it.
const BETWEEN: char = '\u{1f}';

/// Keeps what is asked: the value, what was typed, and what was probably meant.
pub(super) fn keep(book: &mut Book, key: &DraftKey, value: &str, [typed, meant]: [&str; 2]) -> Result<()> {
    Ok(book.put_asked(key.clone(), [value, typed, meant].join(&BETWEEN.to_string()))?)
}

/// Whether exactly this was asked before.
pub(super) fn was_asked(book: &Book, key: &DraftKey, value: &str) -> Result<bool> {
    let kept = book.draft(key)?;
    Ok(!kept.is_empty() && kept.split(BETWEEN).next() == Some(value))
}

/// A question as it is posed: as a choice, where what is typed is in doubt.
pub(crate) fn posed(book: &Book, terms: &Terms<'_>, about: &str, question: Question) -> Result<Question> {
    let kept = book.draft(&DraftKey::doubt(about, &question.field))?;
    let mut parts = kept.split(BETWEEN).skip(1);
    let (typed, meant) = (parts.next().unwrap_or_default(), parts.next().unwrap_or_default());
    if typed.is_empty() || typed != question.draft.trim() {
        return Ok(question);
    }
    let choice = |code: &str, key: &str, value: &str| Choice {
        code: code.to_owned(),
        label: terms.phrase(key, &[("value", value.into())]),
    };
    let mut choices = vec![choice(typed, "plausible-it-is-right", typed)];
    if !meant.is_empty() {
        choices.push(choice(meant, "plausible-it-was-meant", meant));
    }
    choices.push(choice(TYPE_ANEW, "plausible-type-anew", ""));
    Ok(Question { kind: AnswerKind::ChoiceKind, choices, ..question })
}
