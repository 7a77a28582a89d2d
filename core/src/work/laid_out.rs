use crate::book::Field;
use crate::measure::Length;
use crate::notch::{Notch, NotchError, NotchRequest, Several, several};
use crate::rules::keys;

use super::error::Result;
use super::{Board, Tools};

/// The notches of a board, laid out for somebody's tools and judged together: two of them leave a leg between them.
#[derive(Clone, Debug)]
pub struct LaidOut {
    /// In the order of the board's notches; none where the block is not known yet.
    pub notches: Vec<Option<LaidNotch>>,
    /// Legs between two notches that are thin: their places, from left to right, and the width.
    pub thin_between: Vec<(usize, usize, Length)>,
}

/// A notch and what it was laid out from.
#[derive(Clone, Debug)]
pub struct LaidNotch {
    /// What it was laid out from.
    pub request: NotchRequest,
    /// The notch, or why it cannot be laid out.
    pub notch: Result<Notch, NotchError>,
}

impl LaidOut {
    /// The notches of a board; none is known before the board's length is.
    ///
    /// # Errors
    /// [`super::WorkError::Rule`].
    pub fn of(board: &Board, tools: &Tools) -> Result<Self> {
        let mut laid = Self { notches: vec![None; board.notches.len()], thin_between: Vec::new() };
        if board.record.length(Field::Length).is_none() {
            return Ok(laid);
        }
        let (mut places, mut cuts) = (Vec::new(), Vec::new());
        for (at, (notch, slot)) in board.notches.iter().zip(&mut laid.notches).enumerate() {
            let Some(request) = board.request(notch, tools)? else { continue };
            let notch = Notch::lay_out(&request);
            if let Ok(notch) = &notch {
                places.push(at);
                cuts.push(notch.clone());
            }
            *slot = Some(LaidNotch { request, notch });
        }
        let Several { notches, between, thin } = several(cuts, board.rules.get_length(keys::LEG_LEAST)?);
        for (at, together) in places.iter().zip(notches) {
            if let Some(Some(slot)) = laid.notches.get_mut(*at) {
                slot.notch = Ok(together);
            }
        }
        let named = thin.into_iter().filter_map(|at| between.get(at));
        let place = |at: &usize| places.get(*at).copied();
        laid.thin_between =
            named.filter_map(|(first, second, width)| Some((place(first)?, place(second)?, *width))).collect();
        Ok(laid)
    }
}
