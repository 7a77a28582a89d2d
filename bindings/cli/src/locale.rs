//! The language of this terminal.

use std::sync::OnceLock;

use lapwright::phrases::Language;

static CHOSEN: OnceLock<Language> = OnceLock::new();

/// From here on faults are said in this language.
pub(crate) fn choose(language: Language) {
    CHOSEN.get_or_init(|| language);
}

/// The language that was chosen, else that of the locale.
pub(crate) fn chosen() -> Language {
    CHOSEN.get().copied().unwrap_or_else(language)
}

/// The language of the locale: the first of `LC_ALL`, `LC_MESSAGES` and `LANG` that is set and not empty.
pub(crate) fn language() -> Language {
    let locale = ["LC_ALL", "LC_MESSAGES", "LANG"].into_iter().filter_map(|name| std::env::var(name).ok());
    Language::from_locale(&locale.into_iter().find(|value| !value.is_empty()).unwrap_or_default())
}
