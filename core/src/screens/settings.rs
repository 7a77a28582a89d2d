//! Settings: who holds this phone, and how it speaks. They stay on the device and are no part of the book.

use crate::measure::Reader;
use crate::phrases::key;
use crate::store::{Store, Value};
use crate::views::{
    Choice, Code, Context, Place, Problem, Question, Remembered, SettingsAction, SettingsView, SignerLine, Source,
};

use super::Done;
use super::ask;
use super::context::Terms;
use super::kinds::{Allowed, Ask};
use super::trouble::Kept;

const SIGNERS: &str = "signers";
const SIGNER: &str = "signer";

const fn setting(field: &'static str, title: &'static str, hint: &'static str, allowed: Allowed) -> Ask {
    Ask { field, title, hint, allowed, optional: false }
}

/// Every setting but the signers; the first choice is the one that applies where nothing was chosen.
const SETTINGS: &[Ask] = &[
    setting(
        "language",
        key("setting-language"),
        key("setting-language-hint"),
        Allowed::OneOf(&[("en", key("setting-language-en")), ("es", key("setting-language-es"))]),
    ),
    setting(
        "show",
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
    setting(
        "division",
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
    setting(
        "hand",
        key("setting-hand"),
        key("setting-hand-hint"),
        Allowed::OneOf(&[("right", key("setting-hand-right")), ("left", key("setting-hand-left"))]),
    ),
    setting(
        "gloves",
        key("setting-gloves"),
        key("setting-gloves-hint"),
        Allowed::OneOf(&[("no", key("screen-no")), ("yes", key("screen-yes"))]),
    ),
    setting(
        "theme",
        key("setting-theme"),
        key("setting-theme-hint"),
        Allowed::OneOf(&[("light", key("setting-theme-light")), ("dark", key("setting-theme-dark"))]),
    ),
    Ask {
        optional: true,
        ..setting("tape-error", key("setting-tape-error"), key("setting-tape-error-hint"), Allowed::NotNegative)
    },
    Ask { optional: true, ..setting("saw", key("setting-saw"), key("setting-saw-hint"), Allowed::AnyText) },
];

/// The question for a name that is not among the signers yet.
const NEW_SIGNER: Ask = setting("signer", key("setting-new-signer"), key("setting-new-signer-hint"), Allowed::Text);

/// What the phone remembers; a setting that cannot be read, or that a newer program wrote, is as it was at first.
pub fn remembered(store: &Store) -> Remembered {
    let of = |field: &str| kept(store, field).unwrap_or_default();
    let signer = store.setting_get(SIGNER).ok().flatten().unwrap_or_default();
    let place = store.setting_get(&place_key(&signer)).ok().flatten();
    Remembered {
        language: of("language"),
        show: of("show"),
        division: of("division"),
        hand: of("hand"),
        gloves: of("gloves") == "yes",
        theme: of("theme"),
        place: place.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or(Place::Jobs),
        signer,
    }
}

/// Remembers where the signer is, so that each finds their own place when the phone comes back to them. Writes only where
/// they have moved.
///
/// # Errors
/// [`Problem`] where the book cannot be written.
pub fn remember_place(store: &mut Store, context: &Context, place: &Place) -> Result<(), Problem> {
    let text = serde_json::to_string(place).unwrap_or_default();
    super::spoken(context, |terms| {
        let key = place_key(&terms.context.signer);
        let before = store.setting_get(&key)?;
        if before.as_deref() != Some(&text) {
            // Settings is where the phone is handed over, not where its signer works.
            if let (Place::Settings, Some(before)) = (place, before) {
                store.setting_put(&work_key(&terms.context.signer), &before)?;
            }
            store.setting_put(&key, &text)?;
        }
        Ok(())
    })
}

/// Sends who gives the phone away back to where they worked, if they stood in Settings to do so.
fn leave_settings(store: &mut Store) -> Kept<()> {
    let signer = store.setting_get(SIGNER)?.unwrap_or_default();
    let key = place_key(&signer);
    let place = store.setting_get(&key)?.and_then(|text| serde_json::from_str(&text).ok());
    if let (Some(Place::Settings), Some(work)) = (place, store.setting_get(&work_key(&signer))?) {
        store.setting_put(&key, &work)?;
    }
    Ok(())
}

fn place_key(signer: &str) -> String {
    format!("place/{signer}")
}

/// Where a signer was before they went to Settings.
fn work_key(signer: &str) -> String {
    format!("work/{signer}")
}

/// A setting: what was chosen, else its first choice.
fn kept(store: &Store, field: &str) -> Option<String> {
    let ask = SETTINGS.iter().find(|ask| ask.field == field)?;
    let text = store.setting_get(field).ok().flatten();
    match ask.allowed {
        Allowed::OneOf(choices) => {
            let known = text.filter(|text| choices.iter().any(|(code, _)| code == text));
            known.or_else(|| choices.first().map(|(code, _)| (*code).to_owned()))
        }
        _ => text,
    }
}

fn signers(store: &Store) -> Kept<Vec<String>> {
    let text = store.setting_get(SIGNERS)?.unwrap_or_default();
    Ok(text.lines().map(str::to_owned).collect())
}

pub(super) fn view(store: &Store, terms: &Terms<'_>) -> Kept<SettingsView> {
    let current = store.setting_get(SIGNER)?.unwrap_or_default();
    let signers = signers(store)?.into_iter().map(|name| SignerLine { current: name == current, name }).collect();
    let settings = SETTINGS.iter().map(|ask| question(store, terms, ask)).collect::<Kept<Vec<_>>>()?;
    let new_signer = Question { draft: draft(store, NEW_SIGNER.field)?, ..ask::unanswered(terms, &NEW_SIGNER) };
    let asked = settings.iter().chain([&new_signer]).find(|question| !question.draft.is_empty()).cloned();
    Ok(SettingsView { signers, settings, new_signer, asked })
}

fn draft_key(field: &str) -> String {
    format!("setting/{field}")
}

fn draft(store: &Store, field: &str) -> Kept<String> {
    Ok(store.draft_get(&draft_key(field))?.unwrap_or_default())
}

fn question(store: &Store, terms: &Terms<'_>, ask: &Ask) -> Kept<Question> {
    let text = kept(store, ask.field).unwrap_or_default();
    let choices: Vec<Choice> = match ask.allowed {
        Allowed::OneOf(choices) => choices
            .iter()
            .map(|(code, label)| Choice { code: (*code).to_owned(), label: terms.phrase(label, &[]) })
            .collect(),
        _ => Vec::new(),
    };
    let reading = match ask.allowed {
        Allowed::NotNegative => {
            let typed = terms.typed(ask.field, &text).ok();
            typed.map(|(length, unit)| terms.reading(length, Source::Taped, Some(unit)))
        }
        _ => None,
    };
    let label = choices.iter().find(|choice| choice.code == text).map(|choice| choice.label.clone());
    Ok(Question {
        subject: String::new(),
        field: ask.field.to_owned(),
        title: terms.phrase(ask.title, &[]),
        hint: terms.phrase(ask.hint, &[]),
        kind: ask.kind(),
        answer: label.or_else(|| reading.as_ref().map(|reading| reading.text.clone())).unwrap_or(text),
        choices,
        reading,
        draft: draft(store, ask.field)?,
        optional: ask.optional,
        picture: String::new(),
    })
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &SettingsAction) -> Kept<Done> {
    match action {
        SettingsAction::TakePhone { signer } => {
            let name = name(terms, signer)?;
            let mut all = signers(store)?;
            if !all.contains(&name) {
                all.push(name.clone());
                store.setting_put(SIGNERS, &all.join("\n"))?;
            }
            leave_settings(store)?;
            store.setting_put(SIGNER, &name)?;
            store.draft_clear(&draft_key(NEW_SIGNER.field))?;
        }
        SettingsAction::DropSigner { signer } => {
            let mut all = signers(store)?;
            if !all.contains(signer) {
                return Err(Problem::new(Code::Unknown, "signer", terms.phrase("screen-unknown", &[])).into());
            }
            all.retain(|name| name != signer);
            store.setting_put(SIGNERS, &all.join("\n"))?;
            if store.setting_get(SIGNER)?.as_deref() == Some(signer) {
                store.setting_clear(SIGNER)?;
            }
        }
        SettingsAction::KeepDraft { field, text } => {
            if field != NEW_SIGNER.field {
                setting_of(terms, field)?;
            }
            ask::keep_keys(store, &draft_key(field), text)?;
        }
        SettingsAction::Answer { field, text } => {
            answer(store, terms, field, text)?;
            store.draft_clear(&draft_key(field))?;
        }
    }
    Ok(Done::without_answer(Place::Settings))
}

fn setting_of(terms: &Terms<'_>, field: &str) -> Kept<&'static Ask> {
    SETTINGS.iter().find(|ask| ask.field == field).ok_or_else(|| {
        let fields: Vec<&str> = SETTINGS.iter().map(|ask| ask.field).collect();
        let text = terms.phrase("screen-not-an-answer", &[("fields", fields.join(", ").into())]);
        Problem::new(Code::Unknown, field, text).into()
    })
}

fn answer(store: &mut Store, terms: &Terms<'_>, field: &str, text: &str) -> Kept<()> {
    let ask = setting_of(terms, field)?;
    match ask::value(terms, ask, text)? {
        Value::Absent => store.setting_clear(field)?,
        // With its unit, so that it stays the same length when another unit is shown.
        Value::Length { typed, unit, .. } => {
            let typed = typed.replace(',', ".");
            let whole = if Reader::default().read(&typed).is_ok() { typed } else { format!("{typed} {unit}") };
            store.setting_put(field, &whole)?;
        }
        value => store.setting_put(field, &value.typed())?,
    }
    Ok(())
}

/// A signer's name on one line: that is how it stands on a report.
fn name(terms: &Terms<'_>, signer: &str) -> Kept<String> {
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
