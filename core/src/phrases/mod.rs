//! Every text that a person reads or hears, in English and Spanish.
//!
//! The texts are Fluent messages under `en/` and `es/`, one file per room or screen, embedded in the program.
//!
//! **To add a text**: put `room-what = Text with { $name }` into `en/room.ftl` and its Spanish twin, with the same
//! variables, into `es/room.ftl`; then write `phrases.phrase("room-what", &[("name", value.into())])`. A key starts with
//! the name of its room (`rule-`, `step-`, `caution-` …), so that no two files meet. A key that stands in a table and is
//! only later handed to [`Phrases::phrase`] is written `key("room-what")` there. **To add a file**: one line in
//! `files.rs`. Tests compare the two languages (same keys, same variables), and scan the sources for `phrase("…"` and
//! `key("…"`, so that a text that is missing fails a test and not a carpenter.
//!
//! Values go in as texts or whole numbers. A length goes in as the text that `measure` shows. Plurals are chosen in the
//! message: `{ $count -> [one] 1 board *[other] { $count } boards }`.

mod file_error;
mod files;
mod heard;
mod nearest;
mod numbers;
mod spoken;

use std::borrow::Cow;
use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};

pub use heard::{heard, plain_word};
pub use nearest::nearest;
pub use spoken::spoken;

pub use crate::measure::Language;
use crate::measure::ParseErrorKind;

/// Marks a text as the key of a phrase, where it stands apart from the call that looks it up. Gives it back unchanged.
pub const fn key(key: &'static str) -> &'static str {
    key
}

/// The key of the phrase that says why a text is not a length, with the text as `text` and the character at which it
/// stops being one, counted from one, as `position`.
pub const fn misread(kind: ParseErrorKind) -> &'static str {
    match kind {
        ParseErrorKind::UnitMissing => key("figure-unit-missing"),
        ParseErrorKind::TooBig => key("figure-too-far"),
        ParseErrorKind::MaybeThousands => key("figure-length-thousands"),
        ParseErrorKind::FeetNotWhole => key("figure-length-feet"),
        ParseErrorKind::ZeroDenominator => key("figure-length-zero"),
        ParseErrorKind::Empty | ParseErrorKind::NumberExpected | ParseErrorKind::Unexpected => key("figure-length"),
    }
}

/// A value that goes into a phrase.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Arg<'a> {
    /// A text, put in as it is.
    Text(Cow<'a, str>),
    /// A whole number, which may also choose a plural.
    Whole(i64),
}

impl<'a> From<&'a str> for Arg<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl<'a> From<&'a String> for Arg<'a> {
    fn from(text: &'a String) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Arg<'_> {
    fn from(text: String) -> Self {
        Self::Text(Cow::Owned(text))
    }
}

impl From<i64> for Arg<'_> {
    fn from(number: i64) -> Self {
        Self::Whole(number)
    }
}

impl From<i32> for Arg<'_> {
    fn from(number: i32) -> Self {
        Self::Whole(number.into())
    }
}

impl From<u32> for Arg<'_> {
    fn from(number: u32) -> Self {
        Self::Whole(number.into())
    }
}

impl From<usize> for Arg<'_> {
    fn from(number: usize) -> Self {
        Self::Whole(i64::try_from(number).unwrap_or(i64::MAX))
    }
}

/// All texts of one language.
pub struct Phrases {
    language: Language,
    bundle: FluentBundle<FluentResource>,
}

impl Phrases {
    /// The texts of a language, read once per process.
    pub fn for_language(language: Language) -> &'static Self {
        static ENGLISH: OnceLock<Phrases> = OnceLock::new();
        static SPANISH: OnceLock<Phrases> = OnceLock::new();
        match language {
            Language::English => ENGLISH.get_or_init(|| Self::read(language)),
            Language::Spanish => SPANISH.get_or_init(|| Self::read(language)),
        }
    }

    fn read(language: Language) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![language.code().parse().unwrap_or_default()]);
        // Isolation marks show as boxes in a terminal and in printed pages; neither language runs right to left.
        bundle.set_use_isolating(false);
        for file in files::FILES {
            // What could be read of a faulty file is kept; a test refuses any fault.
            let resource = match FluentResource::try_new(file.text(language).to_owned()) {
                Ok(resource) | Err((resource, _)) => resource,
            };
            bundle.add_resource_overriding(resource);
        }
        Self { language, bundle }
    }

    /// The language of these texts.
    pub fn language(&self) -> Language {
        self.language
    }

    /// The text of `key` with its values put in; the key itself where there is no such text.
    pub fn phrase(&self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        let Some(pattern) = self.bundle.get_message(key).and_then(|message| message.value()) else {
            return key.to_owned();
        };
        let mut values = FluentArgs::with_capacity(args.len());
        for (name, arg) in args {
            values.set(
                *name,
                match arg {
                    Arg::Text(text) => FluentValue::from(text.as_ref()),
                    Arg::Whole(number) => FluentValue::from(*number),
                },
            );
        }
        let mut faults = Vec::new();
        self.bundle.format_pattern(pattern, Some(&values), &mut faults).into_owned()
    }

    /// Whether there is a text for `key`.
    pub fn has(&self, key: &str) -> bool {
        self.bundle.get_message(key).is_some_and(|message| message.value().is_some())
    }
}

#[cfg(test)]
mod tests;
