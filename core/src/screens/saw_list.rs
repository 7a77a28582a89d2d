//! Saw list: what to cut from what.

mod act;
mod pattern;

use crate::book::{Book, Field, FieldSpec, Kind, OffcutState, Record};
use crate::measure::{Length, Show};
use crate::phrases::key;
use crate::views::{Note, OffcutLine, Question, Reading, SawBoardLine, SawListView, SawPieceLine, Source, StockNeed};
use crate::work::{Misfits, SawBoard, SawBoards, SawPiece, WallBoard, WallSite, Work};

use super::revision::saw_revision;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::{ask, lookup, misfits};

pub(super) use act::act;
pub(super) use pattern::pattern;

pub(super) fn view(book: &Book, terms: &Terms<'_>, job: &str) -> Result<SawListView> {
    let work = lookup::house(book, terms, job)?;
    let list = SawBoards::of(&work)?;
    let walls: Vec<_> = work.walls().iter().map(|wall| &**wall).zip(Misfits::of_house(&work)).collect();
    let line = |board| line(terms, &work, board, &walls);
    let boards = list.boards.iter().map(line).collect::<Result<Vec<SawBoardLine>>>()?;
    let whole = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let cut = boards.iter().filter(|board| board.cut).count();
    let used_boards = list.new_boards().count();
    let (used, least) = (list.used(), list.least);
    let proved = !boards.is_empty() && list.unlisted == 0 && least == used;
    let stock = stock(book, terms, &work, &list)?;
    // Where all boards are of one length, the bound is a number of boards.
    let least_boards = one_length(&list).and_then(|length| boards_of(least, length));
    let (used, least) = (in_feet(terms, used), in_feet(terms, least));
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
        job: lookup::job_id(&work),
        name: work.name().to_owned(),
        planned: !boards.is_empty(),
        text,
        used_boards: whole(used_boards),
        used,
        least,
        least_boards,
        proved,
        boards_cut: whole(cut),
        progress: terms.phrase(key("saw-progress"), &args),
        cut_said: if cut == 0 { String::new() } else { terms.phrase(key("saw-boards-cut"), &[("cut", cut.into())]) },
        next: boards.iter().find(|board| !board.cut).map(|board| board.number),
        // The worst first: nobody is to cut what no longer fits.
        notes: [no_longer_fit(terms, &work, &walls), notes(terms, &list, &stock)].concat(),
        boards,
        asked: stock.iter().find(|need| !need.asks.draft.is_empty()).map(|need| need.asks.clone()),
        stock,
        offcuts: offcuts(terms, &work),
    })
}

/// The length of every new board, where it is the same.
fn one_length(list: &SawBoards) -> Option<Length> {
    let mut lengths = list.new_boards().map(|board| board.length);
    let first = lengths.next()?;
    lengths.all(|length| length == first).then_some(first)
}

/// How many boards make at least so much.
fn boards_of(total: Length, board: Length) -> Option<u32> {
    let (total, board) = (total.nm(), board.nm());
    u32::try_from((total + board - 1).checked_div(board)?).ok()
}

/// A length of many boards: in feet where inches are shown.
fn in_feet(terms: &Terms<'_>, length: Length) -> Reading {
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

fn line(terms: &Terms<'_>, work: &Work, board: &SawBoard, walls: &[(&WallSite, Misfits)]) -> Result<SawBoardLine> {
    let pieces: Vec<SawPieceLine> = board.pieces.iter().map(|piece| piece_line(terms, work, piece, walls)).collect();
    let rest = length(terms, board.rest);
    let rest_arg = ("rest", rest.text.as_str().into());
    let kept = board.offcut_left(work, terms.division)?;
    let mut rest_said = match kept {
        Some(kept) => terms.phrase(key("saw-rest-keep"), &[rest_arg, ("kept", terms.shown(kept.length).into())]),
        None => terms.phrase(key("saw-rest"), &[rest_arg]),
    };
    let ripped_off = board.strips_left(work, terms.division)?;
    if !ripped_off.is_empty() {
        let kept = ripped_off.iter().map(|own| low(terms, terms.shown(own.length), own.height)).collect::<Vec<_>>();
        rest_said =
            format!("{rest_said}. {}", terms.phrase(key("saw-strips-keep"), &[("kept", kept.join(" + ").into())]));
    }
    if !board.spoiled.is_empty() {
        let spoiled = board.spoiled.iter().map(|length| terms.shown(*length)).collect::<Vec<_>>().join(" + ");
        rest_said = format!("{rest_said}. {}", terms.phrase(key("saw-spoiled"), &[("spoiled", spoiled.into())]));
    }
    let cuts = |strip: bool| {
        let own = board.pieces.iter().zip(&pieces).filter(|(piece, _)| piece.strip == strip);
        own.map(|(_, line)| line.length.text.as_str()).collect::<Vec<_>>().join(" + ")
    };
    let (along, strips) = (cuts(false), cuts(true));
    let whole = length(terms, board.length);
    Ok(SawBoardLine {
        ticket: ticket(terms, work.name(), (board.number, &whole), &pieces, &rest_said),
        number: board.number,
        length: whole,
        offcut: board.offcut.is_some(),
        cut: board.is_cut(),
        cuts: match strips.is_empty() {
            true => along,
            false => terms.phrase(key("saw-cuts-strips"), &[("cuts", along.into()), ("strips", strips.into())]),
        },
        rest_said,
        pieces,
        rest,
        keep: kept.is_some() || !ripped_off.is_empty(),
        revision: saw_revision(&pattern::cuts(terms, board)),
    })
}

/// What is lower than a board, with its height.
fn low(terms: &Terms<'_>, length: String, height: Option<Length>) -> String {
    match height {
        Some(height) => {
            terms.phrase(key("saw-low"), &[("length", length.into()), ("height", terms.shown(height).into())])
        }
        None => length,
    }
}

/// A board's cuts as plain text: one line a piece, in the order of the cuts.
fn ticket(
    terms: &Terms<'_>,
    house: &str,
    (number, length): (i64, &Reading),
    pieces: &[SawPieceLine],
    rest: &str,
) -> String {
    let args = [("house", house.into()), ("number", number.into()), ("length", length.text.as_str().into())];
    let head = terms.phrase(key("saw-ticket"), &args);
    let piece = |(nth, piece): (usize, &SawPieceLine)| format!("{nth}) {}: {}", piece.length.text, piece.said);
    let lines = (1..).zip(pieces).map(piece);
    std::iter::once(head).chain(lines).chain([rest.to_owned()]).collect::<Vec<_>>().join("\n")
}

fn piece_line(terms: &Terms<'_>, work: &Work, piece: &SawPiece, walls: &[(&WallSite, Misfits)]) -> SawPieceLine {
    let wall = piece.board.parent;
    let misfits = walls.iter().find(|(site, _)| Some(site.id()) == wall).map(|(_, misfits)| misfits);
    let from = length(terms, piece.from);
    let args =
        [("wall", piece.wall.as_str().into()), ("course", piece.course.into()), ("from", from.text.as_str().into())];
    let mut goes = terms.phrase(key("saw-piece-goes"), &args);
    if piece.strip {
        goes = terms.phrase(key("saw-piece-strip"), &[("goes", goes.into())]);
    }
    let notched = piece.is_notched(work);
    if notched {
        goes = format!("{goes}; {}", terms.phrase(key("saw-piece-notched"), &[]));
    }
    SawPieceLine {
        notched,
        board: piece.board.id().to_string(),
        length: length(terms, piece.length),
        wall: piece.wall.clone(),
        course: piece.course,
        said: match misfits {
            Some(misfits) => misfits::said_of(terms, goes, misfits, piece.board.id()),
            None => goes,
        },
        from,
    }
}

fn stock(book: &Book, terms: &Terms<'_>, work: &Work, list: &SawBoards) -> Result<Vec<StockNeed>> {
    let count = ask::spec_of(terms, Kind::Stock, Field::Count.code())?;
    // Two lines of one length: the first takes the boards.
    let mut seen = Vec::new();
    let mut needs = Vec::new();
    for stock in work.house().own(Kind::Stock) {
        let Some(length) = stock.length(Field::Length) else { continue };
        let new = list.new_boards().filter(|board| board.length == length).count();
        let used = if seen.contains(&length) { 0 } else { new };
        seen.push(length);
        needs.extend(need(book, terms, stock, count, used)?);
    }
    Ok(needs)
}

fn need(book: &Book, terms: &Terms<'_>, stock: &Record, count: &FieldSpec, used: usize) -> Result<Option<StockNeed>> {
    let Some(length) = terms.answer(stock, Field::Length) else { return Ok(None) };
    let question = ask::question(book, terms, stock, count)?;
    let asks = Question { title: format!("{}: {}", length.text, question.title), ..question };
    let (have, used) = (stock.whole(Field::Count), i64::try_from(used).unwrap_or(i64::MAX));
    let short = have.map_or(0, |have| used.saturating_sub(have).max(0));
    let text = match (have, short) {
        (None, _) => key("saw-stock-open"),
        (Some(_), 0) => key("saw-stock"),
        (Some(_), _) => key("saw-stock-short"),
    };
    let args = [
        ("length", length.text.as_str().into()),
        ("used", used.into()),
        ("have", have.unwrap_or_default().into()),
        ("short", short.into()),
    ];
    let said = terms.phrase(text, &args);
    Ok(Some(StockNeed { stock: stock.id().to_string(), length, have, used, short, said, asks }))
}

fn notes(terms: &Terms<'_>, list: &SawBoards, stock: &[StockNeed]) -> Vec<Note> {
    let mut notes = Vec::new();
    if list.unlisted > 0 {
        let text = terms.phrase(key("saw-unlisted"), &[("count", list.unlisted.into())]);
        notes.push(Note::check("unlisted", text));
    }
    for stock in stock.iter().filter(|stock| stock.short > 0) {
        notes.push(Note::check("stock-short", stock.said.clone()));
    }
    notes
}

/// The boards of all walls that no longer fit.
fn no_longer_fit(terms: &Terms<'_>, work: &Work, walls: &[(&WallSite, Misfits)]) -> Vec<Note> {
    let boards: Vec<WallBoard> = walls.iter().flat_map(|(wall, _)| WallBoard::on_wall(work, wall.id())).collect();
    misfits::notes(terms, walls.iter().map(|(wall, misfits)| (*wall, misfits)), &boards)
}

fn offcuts(terms: &Terms<'_>, work: &Work) -> Vec<OffcutLine> {
    let line = |offcut: &Record| {
        let state = offcut.offcut_state();
        if state == OffcutState::Spoiled {
            return None;
        }
        let at_hand = state == OffcutState::AtHand;
        let mut length = terms.answer(offcut, Field::Length)?;
        length.text = low(terms, length.text, offcut.length(Field::Height));
        Some(OffcutLine { offcut: offcut.id().to_string(), length, at_hand })
    };
    let offcuts = work.house().own(Kind::Offcut).iter();
    let mut lines: Vec<OffcutLine> = offcuts.filter_map(|offcut| line(offcut)).collect();
    lines.sort_by_key(|line| (!line.at_hand, std::cmp::Reverse(line.length.nm)));
    lines
}
