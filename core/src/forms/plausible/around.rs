use crate::book::{BoardState, Field, House, Kind, Record};
use crate::measure::{Length, Unit};
use crate::notch::LearnedOvercut;
use crate::rules::keys;
use crate::rules::plausible::Around;
use crate::work::{Board, Work, rules};

/// What is known of a house, around a value of it that is judged.
pub(super) struct Known<'a> {
    /// The house as it would be with the answer.
    pub(super) house: &'a House,
    /// What follows from the house without it: what was planned.
    pub(super) work: &'a Work,
    /// What was learned of the signer's saw and hands, for a gap.
    pub(super) learned: Option<LearnedOvercut>,
}

impl Known<'_> {
    /// What is known around a field of a thing. The field itself is not.
    pub(super) fn around(&self, record: &Record, field: Field) -> Around {
        let known = |other: &Record, of: Field| {
            let own = other.id() == record.id() && of == field;
            if own { None } else { other.length(of) }
        };
        let mut around = Around { rules: rules(self.house), unit: unit(record, field), ..Around::default() };
        self.job(&mut around, &known);
        if let Some(pole) = self.house.own(Kind::Pole).first() {
            around.pole_from = known(pole, Field::From);
            around.pole_to = known(pole, Field::To);
            around.reveal_least = known(pole, Field::RevealMin);
            around.reveal_most = known(pole, Field::RevealMax);
        }
        let wall = match record.kind {
            Kind::Wall => Some(record),
            _ => record.parent.and_then(|parent| self.house.get(parent, Kind::Wall).ok()).map(|wall| &**wall),
        };
        if let Some(wall) = wall {
            around.wall_width = known(wall, Field::Width);
            around.left_height = known(wall, Field::LeftHeight);
            around.right_height = known(wall, Field::RightHeight);
            around.peak_height = known(wall, Field::PeakHeight);
            around.stud_spacing = known(wall, Field::StudSpacing);
        }
        self.own(&mut around, record, field, &known);
        around
    }

    fn job(&self, around: &mut Around, known: &impl Fn(&Record, Field) -> Option<Length>) {
        let Ok(job) = self.house.job() else { return };
        around.board_height = known(job, Field::BoardHeight);
        around.house_unit = around.board_height.and_then(|_| unit(job, Field::BoardHeight));
        around.board_thickness = known(job, Field::BoardThickness);
        // What nobody said is what the rules say: the work goes on with it.
        around.lap = known(job, Field::Lap).or_else(|| around.rules.get_length(keys::LAP_LEAST).ok());
        around.nail_line = known(job, Field::NailLine).or_else(|| around.rules.get_length(keys::NAIL_LINE_LEAST).ok());
        around.longest_stock = self.house.own(Kind::Stock).iter().filter_map(|stock| known(stock, Field::Length)).max();
    }

    /// What the thing itself, or what it lies on, says.
    fn own(
        &self,
        around: &mut Around,
        record: &Record,
        field: Field,
        known: &impl Fn(&Record, Field) -> Option<Length>,
    ) {
        let own = |of| known(record, of);
        match record.kind {
            Kind::Opening | Kind::Abutment => {
                around.own_from_left = own(Field::FromLeft);
                around.own_width = own(Field::Width);
                around.own_from_base = own(Field::FromBase);
                around.own_height = own(Field::Height);
            }
            Kind::Penetration => {
                around.through_width = own(Field::Width);
                around.through_height = own(Field::Height);
                around.own_height = own(Field::BlockHeight);
            }
            Kind::Board => {
                let of_house = std::mem::take(&mut around.board_height);
                if field == Field::Height {
                    around.planned = of_house;
                }
                (around.board_height, around.lap) = (own(Field::Height).or(of_house), own(Field::Lap));
                around.nail_line = None;
            }
            Kind::Notch => self.notch(around, record, field),
            Kind::AsBuilt => around.planned = self.hanging(record, field),
            Kind::Gap => {
                let board = record.reference(Field::Board).and_then(|board| self.house.get(board, Kind::Board).ok());
                around.is_cut = board.map(|board| BoardState::of(board.text(Field::State)) != BoardState::Planned);
                let offset = record.length(Field::Offset).unwrap_or_default();
                around.learned_gap = self
                    .learned
                    .map(|learned| (learned.overcut.min.checked_add(offset), learned.overcut.max.checked_add(offset)));
            }
            // A gable between equal ends has its peak in the middle.
            Kind::Wall if field == Field::PeakFromLeft && around.left_height == around.right_height => {
                around.planned = around.wall_width.map(Length::half);
            }
            _ => {}
        }
    }

    /// The board that a notch is on, what the plan says of it, and its other side.
    fn notch(&self, around: &mut Around, record: &Record, field: Field) {
        around.board_length =
            record.parent.and_then(|board| self.house.get(board, Kind::Board).ok()?.length(Field::Length));
        let board = record.parent.and_then(|board| Board::of(self.work, board).ok());
        let about = [Some(record.id()), record.reference(Field::Penetration)];
        let notch = board
            .iter()
            .flat_map(|board| &board.notches)
            .find(|notch| about.into_iter().flatten().any(|id| notch.goes_by(id)));
        around.planned = notch.and_then(|notch| notch.planned_reading(field));
        match field {
            Field::Left => around.less_than = record.length(Field::Right),
            Field::Right => around.more_than = record.length(Field::Left),
            Field::BottomLeft => around.less_than = record.length(Field::TopLeft),
            Field::TopLeft => around.more_than = record.length(Field::BottomLeft),
            Field::BottomRight => around.less_than = record.length(Field::TopRight).or(record.length(Field::TopLeft)),
            Field::TopRight => {
                around.more_than = record.length(Field::BottomRight).or(record.length(Field::BottomLeft))
            }
            _ => {}
        }
    }

    /// Where the course that was taped should hang.
    fn hanging(&self, record: &Record, field: Field) -> Option<Length> {
        let course = usize::try_from(record.whole(Field::Course)?).ok()?.checked_sub(1)?;
        let line = *self.work.wall(record.parent?).ok()?.lines()?.get(course)?;
        Some(match field {
            Field::Left => line.left,
            Field::Right => line.right,
            _ => line.middle,
        })
    }
}

/// The unit that a field was typed in; what was planned nobody typed.
fn unit(record: &Record, field: Field) -> Option<Unit> {
    let measured = record.measured(field)?;
    Unit::from_code(measured.unit).filter(|_| !measured.written.value.typed().is_empty())
}
