//! The commands of the board in hand.

use lapwright::book::{Kind, fields_of};
use lapwright::views::{Action, BoardAction, BoardView, Given, Place, View};

use super::Session;
use crate::book::Book;
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::options::Answers;

/// The answers that are about the board itself; all others are about its notch.
const OWN: [&str; 3] = ["length", "height", "lap"];

/// Every question of a board and of a notch.
fn asked() -> Vec<String> {
    let notch = fields_of(Kind::Notch).iter().map(|spec| spec.field.code());
    OWN.into_iter().chain(notch).map(str::to_owned).collect()
}

/// The questions of a notch that was measured, and of one that is cut.
const LATER: [&str; 2] = ["which-is-right", "gap"];

impl Session<'_> {
    pub(super) fn board_view(&self, board: &str) -> Result<BoardView, Fault> {
        board_view(&self.book, board)
    }

    /// A loose board, with its notch where readings are given.
    pub(super) fn loose(&mut self, length: &str, house: Option<&str>, answers: &Answers) -> Result<(), Fault> {
        let job = house.map(|house| self.job(house)).transpose()?;
        let answers = &with_length(length, answers)?;
        answers.only(&asked())?;
        let given = |(field, text): &(String, String)| Given { field: field.clone(), text: text.clone() };
        let (own, notch): (Vec<_>, Vec<_>) =
            answers.given.iter().map(given).partition(|given| OWN.contains(&given.field.as_str()));
        let outcome = self.book.together(|book| {
            let action = BoardAction::CreateLoose { job, answers: own };
            let created = book.act(&Action::BoardKind { action })?;
            match &created.place {
                Place::Board { board } if !notch.is_empty() => {
                    let action = BoardAction::AddNotch { board: board.clone(), answers: notch };
                    book.act(&Action::BoardKind { action })
                }
                _ => Ok(created),
            }
        })?;
        self.print_outcome(&outcome)
    }

    pub(super) fn board(&mut self, text: &str, notch: Option<&str>, answers: &Answers) -> Result<(), Fault> {
        let board = self.board_id(text)?;
        answers.only(&[asked(), LATER.map(str::to_owned).to_vec()].concat())?;
        let last = self.book.together(|book| {
            let mut last = None;
            for (field, text) in &answers.given {
                let (board, field, text) = (board.clone(), field.clone(), text.clone());
                let action = if OWN.contains(&field.as_str()) {
                    BoardAction::Answer { board, field, text }
                } else {
                    // The first answer to a planned notch makes it a taped one with an id of its own.
                    let notch = notch_id(&board_view(book, &board)?, notch)?;
                    BoardAction::AnswerNotch { board, notch, field, text }
                };
                last = Some(book.act(&Action::BoardKind { action })?);
            }
            Ok(last)
        })?;
        match last {
            Some(outcome) => self.print_outcome(&outcome),
            None => self.show(&Place::Board { board }),
        }
    }

    pub(super) fn attach(&mut self, board: &str, wall: &str) -> Result<(), Fault> {
        let (board, wall) = (self.board_id(board)?, self.wall_id(wall)?);
        self.act(Action::BoardKind { action: BoardAction::Attach { board, wall } })
    }

    pub(super) fn gap(&mut self, board: &str, gap: &str, notch: Option<&str>) -> Result<(), Fault> {
        let board = self.board_id(board)?;
        let (notch, text) = (notch_id(&self.board_view(&board)?, notch)?, gap.to_owned());
        self.act(Action::BoardKind { action: BoardAction::AnswerNotch { board, notch, field: "gap".to_owned(), text } })
    }
}

/// The answers with the length before them. Where the first word is an answer, the length may be any of them.
fn with_length(first: &str, answers: &Answers) -> Result<Answers, Fault> {
    let (field, answer) = first.split_once('=').unwrap_or(("length", first));
    let mut given = vec![(field.to_owned(), answer.to_owned())];
    if let Some((_, other)) = answers.given.iter().find(|(own, _)| own == field) {
        return Err(Fault::twice(field, &[answer, other]));
    }
    given.extend(answers.given.iter().cloned());
    Ok(Answers { given })
}

fn board_view(book: &Book, board: &str) -> Result<BoardView, Fault> {
    match book.view(&Place::Board { board: board.to_owned() })? {
        View::BoardKind { view } => Ok(view),
        _ => Err(Fault::unknown("board", board, &[])),
    }
}

/// The notch that answers go to: the named one, else the only one.
fn notch_id(board: &BoardView, text: Option<&str>) -> Result<String, Fault> {
    if let ([notch], None) = (board.notches.as_slice(), text) {
        return Ok(notch.notch.clone());
    }
    let named = |notch: &lapwright::views::NotchView| Named::new(&notch.notch, &notch.name).told(&notch.cut_text);
    one("notch", text.unwrap_or_default(), &board.notches.iter().map(named).collect::<Vec<_>>())
}
