//! Saw list: what to cut from what.

mod act;
mod boards;

use crate::drawing::SawPattern;
use crate::measure::{Length, Show};
use crate::phrases::key;
use crate::rules::keys;
use crate::store::Store;
use crate::views::{
    Code, Note, OffcutLine, Problem, Question, Reading, SawBoardLine, SawListView, SawPieceLine, Source, StockNeed,
};

use super::ask;
use super::context::Terms;
use super::drawing::saw_revision;
use super::kept::{Facts, Job};
use super::kinds;
use super::trouble::Kept;

use boards::{Boards, Piece, SawBoard};

pub(super) use act::act;

pub(super) fn view(store: &Store, terms: &Terms<'_>, job: &str) -> Kept<SawListView> {
    let job = Job::of(store, terms, terms.id("job", job)?)?;
    let list = Boards::of(store, &job)?;
    let keep = job.rules.get_length(keys::OFFCUT_KEEP_LEAST)?;
    let boards: Vec<SawBoardLine> = list.boards.iter().map(|board| line(terms, board, keep)).collect();
    let whole = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let cut = boards.iter().filter(|board| board.cut).count();
    let used_boards = list.boards.iter().filter(|board| board.offcut.is_none()).count();
    let (used, least) = (list.used(), list.least(&job));
    let proved = !boards.is_empty() && list.unlisted == 0 && least == used;
    let stock = stock(store, terms, &job, &list)?;
    // Where all boards are of one length, the bound is a number of boards.
    let least_boards = one_length(&list).and_then(|length| boards_of(least, length));
    let (used, least) = (far(terms, used), far(terms, least));
    let text = match (boards.is_empty(), proved, least_boards) {
        (true, ..) => terms.phrase(key("saw-not-planned"), &[]),
        (false, true, _) => {
            terms.phrase(key("saw-plan-proved"), &[("boards", used_boards.into()), ("used", used.text.as_str().into())])
        }
        (false, false, Some(least)) => {
            terms.phrase(key("saw-against-boards"), &[("boards", used_boards.into()), ("least", least.into())])
        }
        (false, false, None) => {
            let args = [
                ("boards", used_boards.into()),
                ("used", used.text.as_str().into()),
                ("least", least.text.as_str().into()),
            ];
            terms.phrase(key("saw-plan-open"), &args)
        }
    };
    let args = [("cut", cut.into()), ("all", boards.len().into())];
    Ok(SawListView {
        job: job.id().to_string(),
        name: job.name().to_owned(),
        planned: !boards.is_empty(),
        text,
        used_boards: whole(used_boards),
        used,
        least,
        least_boards,
        proved,
        boards_cut: whole(cut),
        progress: terms.phrase(key("saw-progress"), &args),
        next: boards.iter().find(|board| !board.cut).map(|board| board.number),
        notes: notes(terms, &list, &stock),
        boards,
        asked: stock.iter().find(|need| !need.asks.draft.is_empty()).map(|need| need.asks.clone()),
        stock,
        offcuts: offcuts(store, terms, &job)?,
    })
}

/// What is drawn of a board.
pub(super) fn pattern(store: &Store, terms: &Terms<'_>, job: &str, number: i64) -> Kept<SawPattern> {
    let job = Job::of(store, terms, terms.id("job", job)?)?;
    let list = Boards::of(store, &job)?;
    let unknown = || Problem::new(Code::Unknown, "number", terms.phrase("screen-unknown", &[]));
    let board = list.boards.iter().find(|board| board.number == number).ok_or_else(unknown)?;
    Ok(cuts(terms, board))
}

fn cuts(terms: &Terms<'_>, board: &SawBoard) -> SawPattern {
    let drawn = |length: Length| (length.nm(), terms.shown(length));
    SawPattern {
        length: board.length.nm(),
        text: terms.shown(board.length),
        pieces: board.pieces.iter().map(|piece| drawn(piece.length)).collect(),
        rest: board.rest.is_positive().then(|| drawn(board.rest)),
    }
}

/// The length of every new board, where it is the same.
fn one_length(list: &Boards) -> Option<Length> {
    let mut lengths = list.boards.iter().filter(|board| board.offcut.is_none()).map(|board| board.length);
    let first = lengths.next()?;
    lengths.all(|length| length == first).then_some(first)
}

/// How many boards make at least so much.
fn boards_of(total: Length, board: Length) -> Option<u32> {
    let (total, board) = (total.nm(), board.nm());
    u32::try_from((total + board - 1).checked_div(board)?).ok()
}

/// A length of many boards: in feet where inches are shown.
fn far(terms: &Terms<'_>, length: Length) -> Reading {
    let show = match terms.show {
        Show::Inches(parts) => Show::FeetInches(parts),
        show => show,
    };
    terms.reading_as(length, Source::Planned, None, show)
}

/// A length that was computed.
fn length(terms: &Terms<'_>, length: Length) -> Reading {
    terms.reading(length, Source::Planned, None)
}

fn line(terms: &Terms<'_>, board: &SawBoard, keep: Length) -> SawBoardLine {
    let pieces: Vec<SawPieceLine> = board.pieces.iter().map(|piece| piece_line(terms, piece)).collect();
    let rest = length(terms, board.rest);
    let worth = board.rest >= keep && board.rest.is_positive();
    let said = if worth { key("saw-rest-keep") } else { key("saw-rest") };
    SawBoardLine {
        number: board.number,
        length: length(terms, board.length),
        offcut: board.offcut.is_some(),
        cut: board.cut(),
        cuts: pieces.iter().map(|piece| piece.length.text.as_str()).collect::<Vec<_>>().join(" + "),
        rest_said: terms.phrase(said, &[("rest", rest.text.as_str().into())]),
        pieces,
        rest,
        keep: worth,
        revision: saw_revision(&cuts(terms, board)),
    }
}

fn piece_line(terms: &Terms<'_>, piece: &Piece) -> SawPieceLine {
    let from = length(terms, piece.from);
    let args =
        [("wall", piece.wall.as_str().into()), ("course", piece.course.into()), ("from", from.text.as_str().into())];
    SawPieceLine {
        board: piece.facts.id().to_string(),
        length: length(terms, piece.length),
        wall: piece.wall.clone(),
        course: piece.course,
        said: terms.phrase(key("saw-piece-goes"), &args),
        from,
    }
}

fn stock(store: &Store, terms: &Terms<'_>, job: &Job, list: &Boards) -> Kept<Vec<StockNeed>> {
    let lines = Facts::children(store, job.id(), kinds::STOCK)?;
    // Two lines of one length: the first takes the boards.
    let mut seen = Vec::new();
    let count = ask::ask_of(terms, kinds::STOCK, "count")?;
    let mut line = |facts: &Facts| {
        let (reading, length) = (facts.reading(terms, "length")?, facts.length("length")?);
        let question = ask::question(store, terms, facts, count);
        let asks = match question {
            Ok(question) => Question { title: format!("{}: {}", reading.text, question.title), ..question },
            Err(trouble) => return Some(Err(trouble)),
        };
        let used = if seen.contains(&length) { 0 } else { list.new_of(length) };
        seen.push(length);
        let (have, used) = (facts.whole("count"), i64::try_from(used).unwrap_or(i64::MAX));
        let short = have.map_or(0, |have| used.saturating_sub(have).max(0));
        let text = match (have, short) {
            (None, _) => key("saw-stock-open"),
            (Some(_), 0) => key("saw-stock"),
            (Some(_), _) => key("saw-stock-short"),
        };
        let args = [
            ("length", reading.text.as_str().into()),
            ("used", used.into()),
            ("have", have.unwrap_or_default().into()),
            ("short", short.into()),
        ];
        let said = terms.phrase(text, &args);
        Some(Ok(StockNeed { stock: facts.id().to_string(), length: reading, have, used, short, said, asks }))
    };
    lines.iter().filter_map(&mut line).collect()
}

fn notes(terms: &Terms<'_>, list: &Boards, stock: &[StockNeed]) -> Vec<Note> {
    let mut notes = Vec::new();
    if list.unlisted > 0 {
        let text = terms.phrase(key("saw-unlisted"), &[("count", list.unlisted.into())]);
        notes.push(Note { code: "unlisted".to_owned(), text });
    }
    for stock in stock.iter().filter(|stock| stock.short > 0) {
        notes.push(Note { code: "stock-short".to_owned(), text: stock.said.clone() });
    }
    notes
}

fn offcuts(store: &Store, terms: &Terms<'_>, job: &Job) -> Kept<Vec<OffcutLine>> {
    let line = |facts: &Facts| {
        let at_hand = facts.text("used").is_none();
        Some(OffcutLine { offcut: facts.id().to_string(), length: facts.reading(terms, "length")?, at_hand })
    };
    let mut lines: Vec<OffcutLine> = Facts::children(store, job.id(), kinds::OFFCUT)?.iter().filter_map(line).collect();
    lines.sort_by_key(|line| (!line.at_hand, std::cmp::Reverse(line.length.nm)));
    Ok(lines)
}
