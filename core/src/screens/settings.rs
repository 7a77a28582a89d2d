//! Settings: who holds this phone, and how it speaks. They stay on the device and are no part of the book.

use crate::book::{Allowed, Book, DraftKey, FieldSpec, Setting};
use crate::measure::Reader;
use crate::phrases::{Language, key};
use crate::store::{StoreError, Value};
use crate::views::{
    Code, Context, Place, Problem, Question, Remembered, SettingsAction, SettingsView, SignerLine, Source,
};

use crate::forms::ask;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::screens::result::ActionResult;

type SettingSpec = FieldSpec<Setting<'static>>;

/// Every setting but the signers; the first choice is the one that applies where nothing was chosen.
const SETTINGS: &[SettingSpec] = &[
    FieldSpec::new(
        Setting::Language,
        key("setting-language"),
        key("setting-language-hint"),
        Allowed::OneOf(&[("en", key("setting-language-en")), ("es", key("setting-language-es"))]),
    ),
    FieldSpec::new(
        Setting::Show,
        key("setting-show"),
        key("setting-show-hint"),
        Allowed::OneOf(&[
            ("in/16", key("setting-show-in-16")),
            ("in/32", key("setting-show-in-32")),
            ("in/64", key("setting-show-in-64")),
            ("ft-in/16", key("setting-show-ft-in")),
            ("mm", key("setting-show-mm")),
            ("mm/0.5", key("setting-show-mm-half")),
        ]),
    ),
    FieldSpec::new(
        Setting::Division,
        key("setting-division"),
        key("setting-division-hint"),
        Allowed::OneOf(&[
            ("1/16\"", key("setting-division-16")),
            ("1/32\"", key("setting-division-32")),
            ("1/8\"", key("setting-division-8")),
            ("1 mm", key("setting-division-mm")),
            ("0.5 mm", key("setting-division-mm-half")),
        ]),
    ),
    FieldSpec::new(
        Setting::Hand,
        key("setting-hand"),
        key("setting-hand-hint"),
        Allowed::OneOf(&[("right", key("setting-hand-right")), ("left", key("setting-hand-left"))]),
    ),
    FieldSpec::new(
        Setting::Gloves,
        key("setting-gloves"),
        key("setting-gloves-hint"),
        Allowed::OneOf(&[("no", key("screen-no")), ("yes", key("screen-yes"))]),
    ),
    FieldSpec::new(
        Setting::Theme,
        key("setting-theme"),
        key("setting-theme-hint"),
        Allowed::OneOf(&[("light", key("setting-theme-light")), ("dark", key("setting-theme-dark"))]),
    ),
    FieldSpec::new(Setting::TapeError, key("setting-tape-error"), key("setting-tape-error-hint"), Allowed::NotNegative)
        .optional(),
    FieldSpec::new(Setting::Saw, key("setting-saw"), key("setting-saw-hint"), Allowed::AnyText).optional(),
];

/// The question for a name that is not among the signers yet.
const NEW_SIGNER: SettingSpec =
    FieldSpec::new(Setting::Signer, key("setting-new-signer"), key("setting-new-signer-hint"), Allowed::Text);

/// What the phone remembers; a setting that cannot be read, or that a newer program wrote, is as it was at first.
pub fn remembered(book: &Book) -> Remembered {
    // Where this fails, nothing can be read below either, and everything is as it was at first.
    let _ = book.refresh();
    let of = |setting| chosen(book, setting).unwrap_or_default();
    let signer = read(book, Setting::Signer).unwrap_or_default();
    // What was lost is read before the work goes on where it was.
    let place = match book.accounts() {
        Ok(accounts) if !accounts.is_empty() => None,
        _ => read(book, Setting::Place(&signer)),
    };
    Remembered {
        language: of(Setting::Language),
        show: of(Setting::Show),
        division: of(Setting::Division),
        hand: of(Setting::Hand),
        gloves: of(Setting::Gloves) == "yes",
        theme: of(Setting::Theme),
        place: place.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or(Place::Jobs),
        signer,
    }
}

/// Takes the language of the phone where nobody has chosen one yet; one that the program does not speak changes nothing.
///
/// # Errors
/// [`StoreError`] where the book cannot be written.
pub fn speak_first(book: &mut Book, language: &str) -> Result<(), StoreError> {
    match Language::from_code(language) {
        Some(_) if book.setting(&Setting::Language)?.is_none() => book.put_setting(&Setting::Language, language),
        _ => Ok(()),
    }
}

/// Remembers where the signer is, so that each finds their own place when the phone comes back to them. Writes only where
/// they have moved.
///
/// # Errors
/// [`Problem`] where the book cannot be written.
pub fn remember_place(book: &mut Book, context: &Context, place: &Place) -> Result<(), Problem> {
    let text = serde_json::to_string(place).unwrap_or_default();
    super::in_language(context, |terms| {
        book.refresh()?;
        let signer = &terms.context.signer;
        let before = book.setting(&Setting::Place(signer))?;
        if before.as_deref() != Some(&text) {
            // Settings is where the phone is handed over, not where its signer works.
            if let (Place::Settings, Some(before)) = (place, before) {
                book.put_setting(&Setting::Work(signer), &before)?;
            }
            book.put_setting(&Setting::Place(signer), &text)?;
        }
        Ok(())
    })
}

/// Sends who gives the phone away back to where they worked, if they stood in Settings to do so.
fn leave_settings(book: &mut Book) -> Result<()> {
    let signer = book.setting(&Setting::Signer)?.unwrap_or_default();
    let place = book.setting(&Setting::Place(&signer))?.and_then(|text| serde_json::from_str(&text).ok());
    if let (Some(Place::Settings), Some(work)) = (place, book.setting(&Setting::Work(&signer))?) {
        book.put_setting(&Setting::Place(&signer), &work)?;
    }
    Ok(())
}

fn read(book: &Book, setting: Setting<'_>) -> Option<String> {
    book.setting(&setting).ok().flatten()
}

/// A setting: what was chosen, else its first choice.
fn chosen(book: &Book, setting: Setting<'static>) -> Option<String> {
    let text = read(book, setting);
    match SETTINGS.iter().find(|spec| spec.field == setting)?.allowed {
        Allowed::OneOf(choices) => {
            let known = text.filter(|text| choices.iter().any(|(code, _)| code == text));
            known.or_else(|| choices.first().map(|(code, _)| (*code).to_owned()))
        }
        _ => text,
    }
}

fn signers(book: &Book) -> Result<Vec<String>> {
    let text = book.setting(&Setting::Signers)?.unwrap_or_default();
    Ok(text.lines().map(str::to_owned).collect())
}

fn put_signers(book: &mut Book, signers: &[String]) -> Result<()> {
    Ok(book.put_setting(&Setting::Signers, &signers.join("\n"))?)
}

pub(super) fn view(book: &Book, terms: &Terms<'_>) -> Result<SettingsView> {
    let current = book.setting(&Setting::Signer)?.unwrap_or_default();
    let signers = signers(book)?.into_iter().map(|name| SignerLine { current: name == current, name }).collect();
    let settings = SETTINGS.iter().map(|spec| question(book, terms, spec)).collect::<Result<Vec<_>>>()?;
    let new_signer = Question { draft: book.draft(&draft_key(&NEW_SIGNER))?, ..ask::unanswered(terms, &NEW_SIGNER) };
    let asked = settings.iter().chain([&new_signer]).find(|question| !question.draft.is_empty()).cloned();
    Ok(SettingsView { signers, settings, new_signer, asked })
}

fn draft_key(spec: &SettingSpec) -> DraftKey {
    DraftKey::setting(&spec.field.code())
}

fn question(book: &Book, terms: &Terms<'_>, spec: &SettingSpec) -> Result<Question> {
    // Before anybody has chosen one, the language that is spoken is the answer.
    let spoken = || terms.language.code().to_owned();
    let is_open = spec.field == Setting::Language && read(book, Setting::Language).is_none();
    let text = if is_open { spoken() } else { chosen(book, spec.field).unwrap_or_default() };
    let reading = match spec.allowed {
        Allowed::NotNegative => {
            let written = terms.remembered(&text);
            let read = written.and_then(|written| Some((written.exact.to_length()?, written.unit)));
            read.map(|(length, unit)| terms.reading(length, Source::Taped, Some(unit)))
        }
        _ => None,
    };
    let label = spec.label(&text).map(|label| terms.phrase(label, &[]));
    let answer = label.or_else(|| reading.as_ref().map(|reading| reading.text.clone())).unwrap_or(text);
    Ok(Question { answer, reading, draft: book.draft(&draft_key(spec))?, ..ask::unanswered(terms, spec) })
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &SettingsAction) -> Result<ActionResult> {
    match action {
        SettingsAction::TakePhone { signer } => {
            let name = name(terms, signer)?;
            let mut all = signers(book)?;
            if !all.contains(&name) {
                all.push(name.clone());
                put_signers(book, &all)?;
            }
            leave_settings(book)?;
            book.put_setting(&Setting::Signer, &name)?;
            book.put_draft(&draft_key(&NEW_SIGNER), "")?;
        }
        SettingsAction::DropSigner { signer } => {
            let mut all = signers(book)?;
            if !all.contains(signer) {
                return Err(Problem::new(Code::Unknown, "signer", terms.phrase("screen-unknown", &[])).into());
            }
            all.retain(|name| name != signer);
            put_signers(book, &all)?;
            if book.setting(&Setting::Signer)?.as_deref() == Some(signer) {
                book.clear_setting(&Setting::Signer)?;
            }
        }
        SettingsAction::KeepDraft { field, text } => {
            let spec = if *field == NEW_SIGNER.field.code() { &NEW_SIGNER } else { spec_of(terms, field)? };
            book.put_draft(&draft_key(spec), text)?;
        }
        SettingsAction::Answer { field, text } => {
            let spec = spec_of(terms, field)?;
            answer(book, terms, spec, text)?;
            book.put_draft(&draft_key(spec), "")?;
        }
    }
    Ok(ActionResult::without_answer(Place::Settings))
}

fn spec_of(terms: &Terms<'_>, field: &str) -> Result<&'static SettingSpec> {
    let found = SETTINGS.iter().find(|spec| spec.field.code() == field);
    found.ok_or_else(|| ask::not_an_answer(terms, SETTINGS, field).into())
}

fn answer(book: &mut Book, terms: &Terms<'_>, spec: &SettingSpec, text: &str) -> Result<()> {
    match ask::value(terms, spec, text)? {
        Value::Absent => book.clear_setting(&spec.field)?,
        // So that it stays the same length when another unit is shown or another language spoken.
        Value::Length { length, typed, .. } => {
            let everywhere = Reader::default().length(&typed) == Ok(length);
            let written = terms.reader.read(&typed).ok().filter(|_| !everywhere);
            book.put_setting(&spec.field, &written.map_or(typed, |written| written.to_string()))?;
        }
        value => book.put_setting(&spec.field, &value.typed())?,
    }
    Ok(())
}

/// A signer's name on one line: that is how it stands on a report.
fn name(terms: &Terms<'_>, signer: &str) -> Result<String> {
    let refuse = |code, key: &str, limit: &str| {
        Problem::new(code, "signer", terms.phrase(key, &[("limit", limit.into())])).into()
    };
    let name = signer.split_whitespace().collect::<Vec<_>>().join(" ");
    match name.chars().count() {
        0 => Err(refuse(Code::Missing, "screen-empty", "")),
        1..=80 => Ok(name),
        _ => Err(refuse(Code::TooBig, "figure-too-long", "80")),
    }
}
