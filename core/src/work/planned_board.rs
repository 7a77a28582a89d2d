use crate::book::{BoardState, Field, Kind, Operation, Record, offcut_value};
use crate::measure::Length;
use crate::siding::{End, Run};
use crate::store::{Id, Value};

use super::course::Course;
use super::placement::Placement;

/// A board of a plan. How the book has one is told here alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlannedBoard {
    /// Where it lies and what it is sawn to.
    pub layout: BoardLayout,
    /// Whether another board of its run meets it at a joint.
    pub joint: bool,
    /// What it is cut from, where the plan goes that far.
    pub cut_from: Option<CutFrom>,
}

/// Where a planned board lies and what it is sawn to: what a course line that moves takes along.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BoardLayout {
    /// Its course, counted on the pole from one.
    pub course: u32,
    /// Its ends and its bottom edge.
    pub place: Placement,
    /// Its length to cut.
    pub length: Length,
    /// How high it is.
    pub height: Length,
    /// How far its top edge ends to the right of its bottom edge, at its left and at its right end.
    pub bevels: (Length, Length),
}

/// The board that a piece is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CutFrom {
    /// Its number, in cutting order.
    pub number: i64,
    /// Its length.
    pub stock: Length,
    /// The offcut that it is; none for a new board.
    pub offcut: Option<Id>,
    /// Whether the piece is cut out of the strip that is ripped off others of that board.
    pub strip: bool,
}

/// Whether a board is cut out of the strip that is ripped off others: it takes nothing of the length that they are cut from.
pub fn is_of_strip(board: &Record) -> bool {
    board.yes(Field::Strip) == Some(true)
}

/// How far the top edge of a board ends to the right of its bottom edge, at its left and at its right end: that of the
/// run's end where the board stands there, with its gap, and square elsewhere.
pub(super) fn bevels(run: &Run, (from, to): (Length, Length), gap: Length) -> (Length, Length) {
    let at = |stands: bool, end: End| if stands { end.bevel() } else { Length::ZERO };
    (at(from <= run.from() + gap, run.left), at(to >= run.to() - gap, run.right))
}

/// A length that a plan wrote and nobody typed.
pub fn planned(length: Length) -> Value {
    Value::Length { length, typed: String::new(), unit: "mm".to_owned() }
}

impl BoardLayout {
    /// A board with these ends on a course.
    pub fn on(course: &Course, (from, to): (Length, Length), length: Length, bevels: (Length, Length)) -> Self {
        let place = Placement { from, to, left: course.bottom_at(from), right: course.bottom_at(to) };
        Self { course: course.middle.course, place, length, height: course.middle.height, bevels }
    }

    /// Its lengths as the book has them: a level bottom edge and square ends have no field of their own.
    fn lengths(&self) -> [(Field, Option<Length>); 8] {
        let Placement { from, to, left, right } = self.place;
        let other_than = |length: Length, usual: Length| (length != usual).then_some(length);
        [
            (Field::From, Some(from)),
            (Field::To, Some(to)),
            (Field::Length, Some(self.length)),
            (Field::Bottom, Some(left)),
            (Field::BottomRight, other_than(right, left)),
            (Field::Height, Some(self.height)),
            (Field::BevelLeft, other_than(self.bevels.0, Length::ZERO)),
            (Field::BevelRight, other_than(self.bevels.1, Length::ZERO)),
        ]
    }

    /// What of a board is no longer so, for one that stays on its course.
    pub fn changes(&self, board: &Record) -> Vec<(Field, Value)> {
        let changed = self.lengths().into_iter().filter(|(field, length)| board.length(*field) != *length);
        changed.map(|(field, length)| (field, length.map_or(Value::Absent, planned))).collect()
    }
}

impl PlannedBoard {
    /// The fields of a new board.
    pub fn fields(&self) -> Vec<(Field, Value)> {
        let text = |text: &str| Value::Text(text.to_owned());
        let mut fields = vec![(Field::Course, Value::Whole(i64::from(self.layout.course)))];
        fields.extend(self.layout.lengths().into_iter().filter_map(|(field, length)| Some((field, planned(length?)))));
        fields.push((Field::State, BoardState::Planned.into()));
        if self.joint {
            fields.push((Field::Joint, text("yes")));
        }
        if let Some(CutFrom { number, stock, offcut, strip }) = self.cut_from {
            fields.push((Field::CutFrom, Value::Whole(number)));
            fields.push((Field::Stock, planned(stock)));
            fields.extend(offcut.map(|offcut| (Field::Offcut, offcut_value(offcut))));
            if strip {
                fields.push((Field::Strip, text("yes")));
            }
        }
        fields
    }

    /// The answer with this as a further board of a wall, the `n`th of the plan; `id` is new.
    pub fn create(&self, operation: Operation, id: Id, wall: Id, n: u32) -> Operation {
        let sort_key = format!("{:06}-{n:06}", self.layout.course);
        operation.create(id, Kind::Board, Some(wall), sort_key).set_all(id, self.fields())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn layout() -> BoardLayout {
        let inch = Length::from_inches;
        let place = Placement { from: inch(10), to: inch(100), left: inch(7), right: inch(8) };
        BoardLayout { course: 2, place, length: inch(90), height: inch(8), bevels: (Length::ZERO, inch(3)) }
    }

    #[test]
    fn a_board_that_stays_has_no_changes_and_one_that_moves_has_those_alone() {
        let [board, wall] = [1, 2].map(|n| Id::from_bytes([n; 16]));
        let from = CutFrom { number: 4, stock: Length::from_inches(144), offcut: Some(wall), strip: false };
        let planned_board = PlannedBoard { layout: layout(), joint: true, cut_from: Some(from) };
        let record = Record::unsaved(board, Kind::Board, wall, &planned_board.fields());
        assert_eq!(layout().changes(&record), []);
        assert_eq!(Placement::of(&record), Some(layout().place));
        // Level and square again: what says otherwise goes.
        let level = Placement { right: layout().place.left, ..layout().place };
        let square = BoardLayout { place: level, bevels: (Length::ZERO, Length::ZERO), ..layout() };
        let gone = [(Field::BottomRight, Value::Absent), (Field::BevelRight, Value::Absent)];
        assert_eq!(square.changes(&record), gone);
        let longer = BoardLayout { length: Length::from_inches(91), ..layout() };
        assert_eq!(longer.changes(&record), [(Field::Length, planned(Length::from_inches(91)))]);
    }
}
