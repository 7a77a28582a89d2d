use std::cell::OnceCell;
use std::collections::BTreeSet;
use std::sync::Arc;

use crate::book::{BoardState, Field, House, Kind, Record};
use crate::measure::{Length, Unit};
use crate::notch::{LEAST_CUTS, LearnedOvercut};
use crate::rules::plausible::{Surroundings, TypedForm};
use crate::rules::{RuleSet, keys};
use crate::work::{Board, Work, rules};

/// What is known of a house, around a value of it that is judged.
pub(super) struct KnownHouse<'a> {
    /// The house as it would be with the answer.
    pub(super) house: &'a House,
    /// What follows from the house without it: what was planned.
    pub(super) work: &'a Work,
    /// What was learned of the signer's saw and hands, for a gap.
    pub(super) learned: Option<LearnedOvercut>,
    /// The rules in force.
    rules: Arc<RuleSet>,
    /// The lengths that somebody was sure of and that hold for the whole house.
    sure: OnceCell<BTreeSet<(Kind, Field, Length)>>,
}

impl<'a> KnownHouse<'a> {
    /// What a house says by its own rules; nothing was learned of a saw.
    pub(super) fn of(house: &'a House, work: &'a Work) -> Self {
        Self::under(house, work, rules(house))
    }

    /// The same by other rules.
    pub(super) fn under(house: &'a House, work: &'a Work, rules: RuleSet) -> Self {
        Self { house, work, learned: None, rules: rules.into(), sure: OnceCell::new() }
    }

    /// Whether somebody was sure of this value already, here or at another thing of the kind: studs at 24 in are asked about
    /// at the first wall alone.
    pub(super) fn is_sure(&self, record: &Record, field: Field, value: Length) -> bool {
        let all = || self.house.all().flat_map(|record| sure_of_house(record)).collect();
        record.is_sure(field, value) || self.sure.get_or_init(all).contains(&(record.kind, field, value))
    }

    /// What is known around a field of a thing. The field itself is not.
    pub(super) fn around(&self, record: &Record, field: Field) -> Surroundings {
        let known = |other: &Record, of: Field| {
            let own = other.id() == record.id() && of == field;
            if own { None } else { other.length(of) }
        };
        let mut around =
            Surroundings { rules: Arc::clone(&self.rules), unit: unit(record, field), ..Surroundings::default() };
        if let Some(measured) = record.measured(field) {
            around.written = written(&measured.written.value.typed(), around.unit);
        }
        self.job(&mut around, &known);
        if record.kind == Kind::Pole {
            (around.house_bottom, around.house_top) = self.reach();
        }
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
            let run = |from: Length, width: Length| from.min(width - from);
            let from = known(wall, Field::PeakFromLeft).or_else(|| around.wall_width.map(Length::half));
            around.peak_run = from.zip(around.wall_width).map(|(from, width)| run(from, width));
            around.stud_spacing = known(wall, Field::StudSpacing);
        }
        self.own(&mut around, record, field, &known);
        around
    }

    /// The lowest base line and the highest point of the walls, on the pole; none while one is not measured.
    fn reach(&self) -> (Option<Length>, Option<Length>) {
        let mut reach = (None, None);
        for wall in self.house.own(Kind::Wall) {
            let ends = [Field::LeftHeight, Field::RightHeight].map(|field| wall.length(field));
            let ([Some(left), Some(right)], Some(base)) = (ends, wall.length(Field::Base)) else { return (None, None) };
            let steps = self.house.under(wall.id(), Kind::BaseStep).iter().filter_map(|step| step.length(Field::Rise));
            let bottom = base + steps.filter(|rise| rise.is_negative()).sum();
            let top = base + left.max(right).max(wall.length(Field::PeakHeight).unwrap_or_default());
            reach.0 = Some(reach.0.map_or(bottom, |lowest: Length| lowest.min(bottom)));
            reach.1 = Some(reach.1.map_or(top, |highest: Length| highest.max(top)));
        }
        reach
    }

    fn job(&self, around: &mut Surroundings, known: &impl Fn(&Record, Field) -> Option<Length>) {
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
        around: &mut Surroundings,
        record: &Record,
        field: Field,
        known: &impl Fn(&Record, Field) -> Option<Length>,
    ) {
        let own = |of| known(record, of);
        match record.kind {
            Kind::Opening | Kind::Abutment => {
                // The sides of a head that leans are judged with the head.
                let leans = matches!(field, Field::HeadFromLeft | Field::HeadWidth);
                let head = |of| own(of).filter(|_| leans);
                around.own_from_left = head(Field::HeadFromLeft).or(own(Field::FromLeft));
                around.own_width = head(Field::HeadWidth).or(own(Field::Width));
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
                around.is_cut = board.map(|board| board.board_state() != BoardState::Planned);
                let offset = record.length(Field::Offset).unwrap_or_default();
                around.learned_gap = self
                    .learned
                    .filter(|learned| learned.cuts >= LEAST_CUTS)
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
    fn notch(&self, around: &mut Surroundings, record: &Record, field: Field) {
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

/// What somebody was sure of at one thing, and still says of it, that is so on the whole house: how it is framed and trimmed
/// is the same on its walls; where something stands, or how high a wall is, is not.
fn sure_of_house(record: &Record) -> impl Iterator<Item = (Kind, Field, Length)> {
    let is_of_house = |field: Field| {
        matches!(
            field,
            Field::StudSpacing
                | Field::TrimLeft
                | Field::TrimRight
                | Field::BlockWidth
                | Field::BlockHeight
                | Field::BlockThickness
        )
    };
    let still = move |(field, value): &(Field, Length)| is_of_house(*field) && record.length(*field) == Some(*value);
    record.sure().filter(still).map(|(field, value)| (record.kind, field, value))
}

/// What the keys say of a number beyond its value.
fn written(typed: &str, unit: Option<Unit>) -> TypedForm {
    let in_inches = unit.is_none_or(|unit| unit == Unit::Inch);
    let number = typed.trim().trim_end_matches(|c: char| c.is_alphabetic() || "\"\u{201d} ".contains(c));
    let has_point = in_inches && number.contains(['.', ',']);
    TypedForm { has_point, with_blank: number.split_once('/').filter(|_| in_inches).and_then(with_blank) }
}

/// What `11` over `4` is with a blank: 1 1/4.
fn with_blank((above, below): (&str, &str)) -> Option<Length> {
    let (lower, upper): (i64, i64) = (below.parse().ok()?, above.parse().ok()?);
    let (whole, part) = above.split_at_checked(above.len().checked_sub(1)?)?;
    let (whole, part): (i64, i64) = (whole.parse().ok()?, part.parse().ok()?);
    let is_mark = [2, 4, 8, 16, 32, 64].contains(&lower) && upper > lower && part % 2 == 1 && part < lower;
    is_mark.then(|| Length::from_inches_64(whole, part * 64 / lower))
}

/// The unit that a field was typed in; what was planned nobody typed.
fn unit(record: &Record, field: Field) -> Option<Unit> {
    let measured = record.measured(field)?;
    Unit::from_code(measured.unit).filter(|_| !measured.written.value.typed().is_empty())
}
