//! Board: the board in hand, of a wall's plan or loose.

mod act;
mod again;
mod earlier;
mod hand;
mod notches;
mod overcut;

use crate::book::{BoardState, Book, Field};
use crate::views::{BoardView, NotchView, Question, Source};

use super::revision::board_revision;
use crate::forms::ask;
use crate::forms::board_shape::shape_warnings;
use crate::forms::context::Terms;
use crate::forms::desk::job_id;
use crate::forms::error::Result;
use crate::forms::instructions;
use crate::forms::signing::step_lines;
use crate::forms::step_asks;

use hand::InHand;

pub(super) use act::act;

pub(super) fn view(book: &Book, terms: &Terms<'_>, board: &str) -> Result<BoardView> {
    let hand = InHand::of(book, terms, terms.id("board", board)?)?;
    let notches = notches::views(book, terms, &hand)?;
    let steps = hand.steps()?;
    let steps = step_lines(book, terms, &hand.signing(book, "", &steps)?)?;
    let mut notes = Vec::new();
    notes.extend(overcut::note(terms, &hand.board, hand.learned.as_ref())?);
    notes.extend(hand.cut_differs(terms)?);
    notes.extend(hand.misfit(terms));
    notes.extend(hand.bevels(terms));
    let (length, height) = (terms.answer(&hand.board.record, Field::Length), hand.height_reading(terms));
    let questions = ask::questions(book, terms, &hand.board.record)?;
    let (line_left, line_right) = hand.line(terms).unzip();
    notes.extend(shape_warnings(terms, &hand.board));
    let instructions = instructions::lines(terms, &hand.board, &notches);
    let mut shapes = hand.shapes(terms).into_iter();
    let (shape, further_pieces) = (shapes.next(), shapes.collect());
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

/// What the plan expects at a block is checked with the tape, left and right ends and both heights, until the board is cut.
fn asked(own: &[Question], notches: &[NotchView], uncut: bool) -> Option<Question> {
    let all = || own.iter().chain(notches.iter().flat_map(|notch| &notch.questions));
    let taped = |question: &&Question| question.reading.as_ref().is_some_and(|reading| reading.source == Source::Taped);
    let drafted = all().find(|question| !question.draft.is_empty());
    let open = || ask::open_question(own);
    let untaped = || {
        let questions = notches.iter().flat_map(|notch| &notch.questions);
        questions.filter(|question| !question.optional).find(|question| !taped(question))
    };
    drafted.or_else(open).or_else(|| if uncut { untaped() } else { None }).cloned()
}
