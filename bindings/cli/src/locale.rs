//! The language of this terminal.

use lapwright::phrases::Language;

/// The language of the locale: the first of `LC_ALL`, `LC_MESSAGES` and `LANG` that is set and not empty.
pub(crate) fn language() -> Language {
    let locale = ["LC_ALL", "LC_MESSAGES", "LANG"].into_iter().filter_map(|name| std::env::var(name).ok());
    Language::from_locale(&locale.into_iter().find(|value| !value.is_empty()).unwrap_or_default())
}
