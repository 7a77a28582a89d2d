//! The language of this terminal.

use std::ffi::OsString;
use std::path::PathBuf;
use std::sync::OnceLock;

use lapwright::book::Setting;
use lapwright::phrases::Language;
use lapwright::store::setting_at_rest;

use crate::book::data_folder;

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

/// The language of a call that is not read: the one that it names, else the one that its book remembers, else that of the
/// locale.
pub(crate) fn of_call(args: &[OsString]) -> Language {
    let after = |option: &str| {
        let at = args.iter().position(|arg| arg == option).map(|at| args.get(at + 1).cloned());
        let joined = |arg: &OsString| arg.to_str()?.strip_prefix(option)?.strip_prefix('=').map(OsString::from);
        at.flatten().or_else(|| args.iter().find_map(joined))
    };
    let named = after("--language").and_then(|code| Language::from_code(code.to_str()?));
    let remembered = || {
        let book = after("--book").map(PathBuf::from);
        let book = book.or_else(|| Some(data_folder().ok()?.join("book.lapwright")))?;
        Language::from_code(&setting_at_rest(&book, &Setting::Language.code())?)
    };
    named.or_else(remembered).unwrap_or_else(language)
}
