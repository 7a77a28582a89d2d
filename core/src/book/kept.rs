//! How values that are more than a text stand in a text field of the book: written and read here only.

use crate::measure::Length;
use crate::store::{Id, Value};

use super::{BoardState, Field, OffcutState, Record};

impl From<BoardState> for Value {
    fn from(state: BoardState) -> Self {
        Self::Text(state.code().to_owned())
    }
}

impl From<OffcutState> for Value {
    fn from(state: OffcutState) -> Self {
        state.code().map_or(Self::Absent, |code| Self::Text(code.to_owned()))
    }
}

/// Course lines: their heights in nanometres, with commas; absent where there are none.
pub fn lines_value(heights: impl IntoIterator<Item = Length>) -> Value {
    let heights: Vec<String> = heights.into_iter().map(|height| height.nm().to_string()).collect();
    if heights.is_empty() { Value::Absent } else { Value::Text(heights.join(",")) }
}

/// The offcut that a board is cut from.
pub fn offcut_value(offcut: Id) -> Value {
    Value::Text(offcut.to_string())
}

impl Record {
    /// How far a board is.
    pub fn board_state(&self) -> BoardState {
        BoardState::of(self.text(Field::State))
    }

    /// What became of an offcut.
    pub fn offcut_state(&self) -> OffcutState {
        OffcutState::of(self.text(Field::Used))
    }

    /// Course lines; none where there are none, or one of them cannot be read.
    pub fn lines(&self) -> Option<Vec<Length>> {
        self.text(Field::Lines)?.split(',').map(|nm| nm.trim().parse().ok().map(Length::from_nm)).collect()
    }

    /// The offcut that a board is cut from.
    pub fn cut_from_offcut(&self) -> Option<Id> {
        self.text(Field::Offcut)?.parse().ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::Kind;

    fn pole(lines: Value) -> Record {
        Record::unsaved(Id::from_bytes([1; 16]), Kind::Pole, Id::from_bytes([2; 16]), &[(Field::Lines, lines)])
    }

    #[test]
    fn course_lines_are_read_as_they_were_written() {
        let heights = [-3, 0, 177_800_000].map(Length::from_nm);
        assert_eq!(pole(lines_value(heights)).lines(), Some(heights.to_vec()));
        assert_eq!(lines_value([]), Value::Absent);
    }

    #[test]
    fn the_offcut_of_a_board_is_read_as_it_was_written() {
        let offcut = Id::from_bytes([3; 16]);
        let id = Id::from_bytes([1; 16]);
        let cut_from = |value| Record::unsaved(id, Kind::Board, id, &[(Field::Offcut, value)]).cut_from_offcut();
        assert_eq!(cut_from(offcut_value(offcut)), Some(offcut));
        assert_eq!(cut_from(Value::Absent), None);
    }

    #[test]
    fn lines_of_which_one_cannot_be_read_are_none() {
        for text in ["", "1,,2", "1;2", "1,2,x", "9223372036854775808"] {
            assert_eq!(pole(Value::Text(text.to_owned())).lines(), None, "{text}");
        }
    }
}
