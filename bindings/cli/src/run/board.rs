//! The commands of the board in hand.

use lapwright::views::{Action, BoardAction, BoardView, Given, Place, View};

use super::Session;
use crate::book::Book;
use crate::fault::Fault;
use crate::find::{Named, one};
use crate::options::Answers;

/// The answers that are about the board itself; all others are about its notch.
const OWN: [&str; 3] = ["length", "height", "lap"];

impl Session<'_> {
    pub(super) fn board_view(&self, board: &str) -> Result<BoardView, Fault> {
        board_view(&self.book, board)
    }

    /// A loose board, with its notch where readings are given.
    pub(super) fn loose(&mut self, length: &str, house: Option<&str>, answers: &Answers) -> Result<(), Fault> {
        let job = house.map(|house| self.job(house)).transpose()?;
        let given = |(field, text): &(String, String)| Given { field: field.clone(), text: text.clone() };
        let (own, notch): (Vec<_>, Vec<_>) =
            answers.given.iter().map(given).partition(|given| OWN.contains(&given.field.as_str()));
        let mut board = vec![Given { field: "length".to_owned(), text: length.to_owned() }];
        board.extend(own);
        let outcome = self.book.together(|book| {
            let action = BoardAction::CreateLoose { job, answers: board };
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
    let named = |notch: &lapwright::views::NotchView| Named { id: notch.notch.clone(), name: notch.name.clone() };
    one("notch", text.unwrap_or_default(), &board.notches.iter().map(named).collect::<Vec<_>>())
}
