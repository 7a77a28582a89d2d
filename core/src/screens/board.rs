//! Board: the board in hand, of a wall's plan or loose.

mod act;
mod again;
mod cross;
mod habit;
mod hand;
mod notches;

use crate::store::Store;
use crate::views::{BoardView, NotchView, Question, Source};

use super::ask;
use super::context::Terms;
use super::drawing::board_revision;
use super::signing::step_lines;
use super::step_asks;
use super::trouble::Kept;

use hand::InHand;

pub(super) use act::act;
pub(super) use again::has_loose;

pub(super) fn view(store: &Store, terms: &Terms<'_>, board: &str) -> Kept<BoardView> {
    let hand = InHand::of(store, terms, terms.id("board", board)?)?;
    let notches = notches::views(store, terms, &hand)?;
    let detail = hand.detail(!notches.is_empty());
    let steps = detail.steps();
    let steps = step_lines(store, terms, &hand.signing("", &steps, hand.hash(&detail, &notches)?))?;
    let mut notes = Vec::new();
    notes.extend(habit::note(terms, &hand)?);
    notes.extend(hand.cut_differs(terms, &notches)?);
    notes.extend(hand.bevels(terms));
    let (length, height) = (hand.facts.reading(terms, "length"), hand.height_reading(terms));
    let questions = ask::questions(store, terms, &hand.facts)?;
    let (line_left, line_right) = hand.line(terms).unzip();
    Ok(BoardView {
        revision: board_revision(terms.phrases, length.as_ref(), &height, &notches),
        board: hand.facts.id().to_string(),
        wall: hand.wall.as_ref().map(|wall| wall.id().to_string()).unwrap_or_default(),
        job: hand.job.as_ref().map(|job| job.id().to_string()).unwrap_or_default(),
        title: hand.title(terms),
        course: hand.facts.whole("course"),
        length,
        height,
        asked: step_asks::begun(&steps).or_else(|| asked(&questions, &notches, hand.state() == "planned")),
        questions,
        stock: hand.stock(store, terms)?,
        state: hand.state().to_owned(),
        notes,
        steps,
        notches,
        line_left,
        line_right,
        walls: hand.walls(store)?,
        gaps_known: hand.habit.as_ref().map_or(0, |habit| u32::try_from(habit.cuts).unwrap_or(u32::MAX)),
    })
}

/// What the plan expects at a block is checked with the tape, left and right ends and both heights, until the board is cut.
fn asked(own: &[Question], notches: &[NotchView], uncut: bool) -> Option<Question> {
    let all = || own.iter().chain(notches.iter().flat_map(|notch| &notch.questions));
    let taped = |question: &&Question| question.reading.as_ref().is_some_and(|reading| reading.source == Source::Taped);
    let drafted = all().find(|question| !question.draft.is_empty());
    let open = || own.iter().find(|question| !question.optional && question.answer.is_empty());
    let untaped = || {
        let questions = notches.iter().flat_map(|notch| &notch.questions);
        questions.filter(|question| !question.optional).find(|question| !taped(question))
    };
    drafted.or_else(open).or_else(|| if uncut { untaped() } else { None }).cloned()
}
