//! What earlier books hashed for a board's sign-offs, kept so that what was signed there still holds: the last ones before a
//! board had its shape, the first ones with the kinds of its cuts, as the signer's saw had them.

use crate::forms::error::Result;
use crate::measure::{Division, Length};
use crate::notch::{CutKind, Notch, Overcut};
use crate::rules::keys;
use crate::store::Hash;
use crate::work::{Board, BoardNotch, Tools};

/// The hashes of a board as it is, for every overcut that somebody may have cut it with.
pub(super) fn hashes(board: &Board, overcuts: Vec<Overcut>) -> Result<Vec<Hash>> {
    let board = &board.before_shapes();
    let mut hashes = vec![Hash::of(board.canonical()?.detail_text())];
    for overcut in overcuts {
        let hash = hash(board, overcut)?;
        if !hashes.contains(&hash) {
            hashes.push(hash);
        }
    }
    Ok(hashes)
}

fn hash(board: &Board, overcut: Overcut) -> Result<Hash> {
    let (gap, ruled) = (board.gap()?, board.ruled_overcut()?);
    let rules = nanometres(&[gap.min, gap.max, ruled.min, ruled.max]);
    let tools = Tools { overcut, tape: board.rules.get_length(keys::TAPE_ERROR)?, division: Division::SIXTEENTH };
    let mut parts =
        vec![nanometres(&[board.record.length(crate::book::Field::Length).unwrap_or_default(), board.height])];
    for notch in &board.notches {
        let Some(cut) = cut(board, notch, &tools) else { continue };
        let sides = notch.block.map(|block| {
            let (bottom, top) = (block.bottom, block.top);
            nanometres(&[block.left, block.right, bottom.left, bottom.right, top.left, top.right])
        });
        parts.push(format!("{cut}:{}:{rules}", sides.unwrap_or_default()));
    }
    let detail = crate::steps::BoardDetail { notched: parts.len() > 1, ..board.detail()? };
    Ok(Hash::of(detail.canonical().text("numbers", &parts.join(";")).detail_text()))
}

/// The code of a cut, empty where it could not be told; none for what was no notch of the board.
fn cut(board: &Board, notch: &BoardNotch, tools: &Tools) -> Option<&'static str> {
    let Ok(Some(request)) = board.request(notch, tools) else { return Some("") };
    match Notch::lay_out(&request) {
        Err(_) => Some(""),
        Ok(laid) if laid.kind == CutKind::None && laid.warnings.is_empty() && !notch.is_taped() => None,
        Ok(laid) => Some(laid.kind.code()),
    }
}

fn nanometres(lengths: &[Length]) -> String {
    lengths.iter().map(|length| length.nm().to_string()).collect::<Vec<_>>().join(",")
}
