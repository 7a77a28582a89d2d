use crate::book::Book;
use crate::drawing::SawPattern;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::measure::Length;
use crate::views::{Code, Problem};
use crate::work::{SawBoard, SawBoards};

/// What is drawn of a board.
pub(in crate::screens) fn pattern(book: &Book, terms: &Terms<'_>, job: &str, number: i64) -> Result<SawPattern> {
    let work = lookup::house(book, terms, job)?;
    let list = SawBoards::of(&work)?;
    Ok(cuts(terms, board(terms, &list, number)?))
}

/// The board of a number that a shell named.
pub(super) fn board<'a>(terms: &Terms<'_>, list: &'a SawBoards, number: i64) -> Result<&'a SawBoard, Problem> {
    let unknown = || Problem::new(Code::Unknown, "number", terms.phrase("screen-unknown", &[]));
    list.board(number).ok_or_else(unknown)
}

pub(super) fn cuts(terms: &Terms<'_>, board: &SawBoard) -> SawPattern {
    let drawn = |length: Length| (length.nm(), terms.shown(length));
    SawPattern {
        length: board.length.nm(),
        text: terms.shown(board.length),
        pieces: board.pieces.iter().filter(|piece| !piece.strip).map(|piece| drawn(piece.length)).collect(),
        rest: board.rest.is_positive().then(|| drawn(board.rest)),
    }
}
