//! Board: the board in hand, of a wall's plan or loose.

mod act;
mod again;
mod checks;
mod earlier;
mod hand;
mod notches;
mod overcut;
mod right;

use crate::amounts::siding_nail;
use crate::book::{BoardState, Book, Field};
use crate::phrases::key;
use crate::rules::keys;
use crate::views::{BoardView, NotchView, Question, Size, Source, StepState};

use super::revision::board_revision;
use crate::forms::ask;
use crate::forms::board_shape::shape_warnings;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::instructions;
use crate::forms::lookup::job_id;
use crate::forms::signing::step_lines;
use crate::forms::step_asks;

use hand::InHand;

pub(super) use act::{act, sawn};

/// The step at which the gap is measured.
const GAP_STEP: &str = "board-gap";
/// The step at which it is nailed.
const NAIL_STEP: &str = "board-nail";
/// The step at which the tape is put to the block.
const NOTCH_STEP: &str = "board-measure-notch";

pub(super) fn view(book: &Book, terms: &Terms<'_>, board: &str) -> Result<BoardView> {
    let hand = InHand::of(book, terms, terms.id("board", board)?)?;
    let notches = notches::views(book, terms, &hand)?;
    let plain = hand.steps()?;
    let mut steps = step_lines(book, terms, &hand.signing(book, "", &plain)?)?;
    for line in steps.iter_mut().filter(|line| line.state == StepState::Open) {
        line.opens = match line.code.as_str() {
            GAP_STEP => gap(&notches),
            NOTCH_STEP => untaped(&notches),
            _ => None,
        }
        .cloned();
    }
    for line in steps.iter_mut().filter(|line| line.code == NAIL_STEP) {
        line.sizes = nail_sizes(terms, &hand)?;
    }
    let mut notes = Vec::new();
    notes.extend(overcut::note(terms, &hand.board, hand.learned.as_ref())?);
    notes.extend(hand.cut_differs(terms)?);
    notes.extend(hand.misfit(terms));
    notes.extend(hand.bevels(terms));
    let (length, height) = (terms.answer(&hand.board.record, Field::Length), hand.height_reading(terms));
    let questions = ask::questions(book, terms, &hand.board.record)?;
    let (line_left, line_right) = hand.line(terms).unzip();
    notes.extend(shape_warnings(terms, &hand.board));
    notes.sort_by_key(|note| note.level);
    let instructions = instructions::lines(terms, &hand.board, &notches);
    let mut shapes = hand.shapes(terms).into_iter();
    let (shape, further_pieces) = (shapes.next(), shapes.collect());
    let (said, next_board, next_said) = hand.among_others(terms);
    Ok(BoardView {
        revision: board_revision(terms.phrases, length.as_ref(), &height, &notches, shape.as_ref()),
        board: hand.id().to_string(),
        wall: hand.board.site.as_ref().map(|wall| wall.id().to_string()).unwrap_or_default(),
        job: job_id(&hand.work),
        title: hand.title(terms),
        course: hand.board.record.whole(Field::Course),
        length,
        height,
        asked: step_asks::begun(&steps)
            .or_else(|| asked(&questions, &notches, hand.board.state() == BoardState::Planned)),
        checks: checks::lines(terms, &plain, &steps),
        said,
        next_board,
        next_said,
        questions,
        stock: hand.stock(terms),
        state: hand.board.state().code().to_owned(),
        notes,
        steps,
        notches,
        line_left,
        line_right,
        walls: hand.walls(),
        shape,
        further_pieces,
        instructions,
        gaps_known: hand.learned.as_ref().map_or(0, |habit| u32::try_from(habit.cuts).unwrap_or(u32::MAX)),
    })
}

/// The siding nail, and how far from the board's ends it is driven.
fn nail_sizes(terms: &Terms<'_>, hand: &InHand) -> Result<Vec<Size>> {
    let rules = hand.work.rules();
    let nail = siding_nail(rules, hand.work.board_thickness()?)?;
    let size = |code: &str, label: &str, length| Size {
        code: code.to_owned(),
        label: terms.phrase(label, &[]),
        reading: terms.reading(length, Source::Planned, None),
    };
    Ok(vec![
        size("nail", key("step-size-nail"), nail),
        size("from-end", key("step-size-from-end"), rules.get_length(keys::NAIL_FROM_END)?),
    ])
}

/// What the plan expects at a block is checked with the tape, left and right ends and both heights, until the board is cut.
fn asked(own: &[Question], notches: &[NotchView], uncut: bool) -> Option<Question> {
    let all = || own.iter().chain(notches.iter().flat_map(|notch| &notch.questions));
    let drafted = all().find(|question| !question.draft.is_empty());
    let open = || ask::open_question(own);
    drafted.or_else(open).or_else(|| if uncut { untaped(notches) } else { None }).cloned()
}

/// The first question of a notch that nobody put a tape to.
fn untaped(notches: &[NotchView]) -> Option<&Question> {
    let taped = |question: &&Question| question.reading.as_ref().is_some_and(|reading| reading.source == Source::Taped);
    let questions = notches.iter().flat_map(|notch| &notch.questions);
    questions.filter(|question| !question.optional).find(|question| !taped(question))
}

/// The first gap that came out and that nobody measured.
fn gap(notches: &[NotchView]) -> Option<&Question> {
    let questions = notches.iter().flat_map(|notch| &notch.questions);
    questions.filter(|question| question.field == Field::Gap.code()).find(|question| question.answer.is_empty())
}
