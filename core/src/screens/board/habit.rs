use crate::measure::Length;
use crate::notch::{FittedGap, Habit, LEAST_CUTS, Overcut, saw_and_hands};
use crate::rules::keys;
use crate::screens::context::Terms;
use crate::screens::kept::Facts;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{Id, Store, Value};
use crate::views::Note;

use super::hand::InHand;

/// The saw of this device's settings.
pub(super) fn saw(store: &Store) -> Kept<String> {
    Ok(store.setting_get("saw")?.unwrap_or_default())
}

/// The measured gaps of a person and a saw, oldest first, with their ids.
pub(super) fn fitted(store: &Store, signer: &str, saw: &str) -> Kept<Vec<(Id, FittedGap)>> {
    let mut gaps = Vec::new();
    for subject in store.subjects(None, kinds::FITTED)? {
        if subject.removed.is_some() {
            continue;
        }
        let fields = store.fields(subject.id)?;
        let text = |name: &str| match fields.get(name).map(|field| &field.value) {
            Some(Value::Text(text)) => text.as_str(),
            _ => "",
        };
        let length = |name: &str| match fields.get(name).map(|field| &field.value) {
            Some(Value::Length { length, .. }) => Some(*length),
            _ => None,
        };
        if text("signer") == signer
            && text("saw") == saw
            && let (Some(gap), Some(offset)) = (length("gap"), length("offset"))
        {
            gaps.push((subject.id, FittedGap { gap, offset }));
        }
    }
    Ok(gaps)
}

/// The gap that was said last of a notch of a board, under any id that the notch goes by.
pub(super) fn said(store: &Store, board: Id, notch: &[String]) -> Kept<Option<Facts>> {
    let mut last = None;
    for subject in store.subjects(None, kinds::FITTED)? {
        let facts = Facts::kept(store, subject)?;
        let of_notch = facts.reference("notch").is_some_and(|id| notch.contains(&id.to_string()));
        if facts.subject.removed.is_none() && facts.reference("board") == Some(board) && of_notch {
            last = Some(facts);
        }
    }
    Ok(last)
}

/// What was learned of the signer's saw and hands.
pub(super) fn habit(store: &Store, terms: &Terms<'_>) -> Kept<Option<Habit>> {
    let gaps: Vec<FittedGap> =
        fitted(store, &terms.context.signer, &saw(store)?)?.into_iter().map(|(_, gap)| gap).collect();
    Ok(saw_and_hands(&gaps))
}

/// The overcut of the rules, for any saw and hands.
pub(super) fn prior(hand: &InHand) -> Kept<Overcut> {
    let rule = |key: &str| hand.rules.get_length(key);
    Ok(Overcut { min: rule(keys::SAW_OVER_LEAST)?, max: rule(keys::SAW_OVER_MOST)? })
}

/// The overcut to reckon with: what was learned from enough cuts, else the rules'.
pub(super) fn overcut(hand: &InHand) -> Kept<Overcut> {
    let prior = prior(hand)?;
    Ok(hand.habit.as_ref().map_or(prior, |habit| habit.overcut_or(prior)))
}

/// How far the tape may be off: the device's own, else the rules'.
pub(super) fn tape(store: &Store, terms: &Terms<'_>, hand: &InHand) -> Kept<Length> {
    let own = store.setting_get("tape-error")?.and_then(|text| terms.reader.length(&text).ok());
    Ok(match own {
        Some(own) => own,
        None => hand.rules.get_length(keys::TAPE_ERROR)?,
    })
}

/// What is known of saw and hands: always shown where there is something to cut round.
pub(super) fn note(terms: &Terms<'_>, hand: &InHand) -> Kept<Option<Note>> {
    let cuts = hand.habit.as_ref().map_or(0, |habit| habit.cuts);
    if cuts == 0 && hand.met.is_empty() && hand.taped.is_empty() {
        return Ok(None);
    }
    let used = overcut(hand)?;
    let key = if cuts >= LEAST_CUTS { "board-habit" } else { "board-habit-learning" };
    let args = [
        ("cuts", cuts.into()),
        ("least", terms.shown_finely(used.min).into()),
        ("most", terms.shown_finely(used.max).into()),
    ];
    Ok(Some(Note { code: "habit".to_owned(), text: terms.phrase(key, &args) }))
}
