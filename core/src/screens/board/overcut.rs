use crate::book::{Book, Setting};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::notch::{LEAST_CUTS, LearnedOvercut, Overcut};
use crate::phrases::key;
use crate::rules::keys;
use crate::views::Note;
use crate::work::{Board, Tools};

/// What was learned of the signer's saw and hands.
pub(super) fn learned(book: &Book, terms: &Terms<'_>) -> Result<Option<LearnedOvercut>> {
    Ok(book.gaps()?.habit(&terms.context.signer, &saw(book)?))
}

/// The saw of this device's settings.
pub(super) fn saw(book: &Book) -> Result<String> {
    Ok(book.setting(&Setting::Saw)?.unwrap_or_default())
}

/// What the signer cuts and measures with: what was learned from enough cuts, else the rules'; the tape of this device, else
/// the rules'.
pub(super) fn tools(book: &Book, terms: &Terms<'_>, board: &Board) -> Result<Tools> {
    let tape = book.setting(&Setting::TapeError)?.and_then(|text| terms.remembered(&text)?.exact.to_length());
    let tape = match tape {
        Some(own) => own,
        None => board.rules.get_length(keys::TAPE_ERROR)?,
    };
    Ok(Tools { overcut: overcut(board, learned(book, terms)?)?, tape, division: terms.division })
}

fn overcut(board: &Board, learned: Option<LearnedOvercut>) -> Result<Overcut> {
    let ruled = board.ruled_overcut()?;
    Ok(learned.map_or(ruled, |habit| habit.overcut_or(ruled)))
}

/// What is known of saw and hands: always shown where there is something to cut round.
pub(super) fn note(terms: &Terms<'_>, board: &Board, learned: Option<&LearnedOvercut>) -> Result<Option<Note>> {
    let cuts = learned.map_or(0, |habit| habit.cuts);
    if cuts == 0 && board.notches.is_empty() {
        return Ok(None);
    }
    let used = overcut(board, learned.cloned())?;
    let key = if cuts >= LEAST_CUTS { key("board-habit") } else { key("board-habit-learning") };
    let args = [
        ("cuts", cuts.into()),
        ("least", terms.shown_finely(used.min).into()),
        ("most", terms.shown_finely(used.max).into()),
    ];
    Ok(Some(Note::know("habit", terms.phrase(key, &args))))
}
