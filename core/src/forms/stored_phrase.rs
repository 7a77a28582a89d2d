//! A phrase as the book keeps it: its key and what is filled in, so that each reader has it in their own language.

use super::context::Terms;

/// What stands between the key and each thing that is filled in; nobody types it.
const BETWEEN: char = '\u{1f}';

/// A phrase and what is filled in, by name.
pub(crate) fn keep(key: &str, filled_in: &[(&str, &str)]) -> String {
    let filled_in = filled_in.iter().map(|(name, text)| format!("{BETWEEN}{name}={text}"));
    std::iter::once(key.to_owned()).chain(filled_in).collect()
}

/// What was kept, in the reader's language; a text that is no phrase stays as it is.
pub(crate) fn say(terms: &Terms<'_>, kept: &str) -> String {
    let mut parts = kept.split(BETWEEN);
    let key = parts.next().unwrap_or_default();
    if !terms.phrases.has(key) {
        return kept.to_owned();
    }
    let filled_in: Vec<_> =
        parts.filter_map(|part| part.split_once('=')).map(|(name, text)| (name, text.into())).collect();
    terms.phrase(key, &filled_in)
}
