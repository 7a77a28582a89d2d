use crate::book::{Field, Kind, Record};
use crate::measure::Length;
use crate::rules::plausible::Measurand;
use crate::wall::{OpeningKind, PenetrationKind};

/// What a length of a thing measures; none where nothing is known of its bounds, or what it belongs to is not told yet.
pub(super) fn of(record: &Record, field: Field) -> Option<Measurand> {
    let opening = || record.text(Field::What).and_then(OpeningKind::from_code);
    let penetration = || record.text(Field::What).and_then(PenetrationKind::from_code);
    Some(match (record.kind, field) {
        (Kind::Job, Field::BoardHeight) | (Kind::Board, Field::Height) => Measurand::BoardHeight,
        (Kind::Job, Field::RoofHeight) => Measurand::RoofHeight,
        (Kind::Job, Field::BoardThickness) => Measurand::BoardThickness,
        (Kind::Job, Field::Lap) => Measurand::Lap,
        // A board without a course below it laps over nothing.
        (Kind::Board, Field::Lap) if record.length(Field::Lap) != Some(Length::ZERO) => Measurand::Lap,
        (Kind::Job, Field::NailLine) => Measurand::NailLine,
        (Kind::Stock, Field::Length) => Measurand::StockLength,
        (Kind::Offcut, Field::Length) => Measurand::Offcut,
        (Kind::BlockSize, Field::Width) | (Kind::Penetration, Field::BlockWidth) => Measurand::BlockWidth,
        (Kind::BlockSize, Field::Height) | (Kind::Penetration, Field::BlockHeight) => Measurand::BlockHeight,
        (Kind::Pole, Field::From) => Measurand::PoleFrom,
        (Kind::Pole, Field::To) => Measurand::PoleTo,
        (Kind::Pole, Field::RevealMax) => Measurand::RevealMost,
        (Kind::Pole, Field::RevealMin) => Measurand::RevealLeast,
        (Kind::Pole, Field::Reveal) => Measurand::Reveal,
        (Kind::Pole, Field::ChangeMax) => Measurand::RevealChange,
        (Kind::Mark, Field::At) => Measurand::MarkHeight,
        (Kind::Mark, Field::Clear) => Measurand::MarkClear,
        (Kind::Wall, Field::Width) => Measurand::WallWidth,
        (Kind::Wall, Field::LeftHeight | Field::RightHeight) => Measurand::WallHeight,
        (Kind::Wall, Field::Base) => Measurand::Base,
        (Kind::Wall, Field::FirstStud) => Measurand::FirstStud,
        (Kind::Wall, Field::StudSpacing) => Measurand::StudSpacing,
        (Kind::Wall, Field::TrimLeft | Field::TrimRight) => Measurand::TrimWidth,
        (Kind::Wall, Field::DiagonalUp) => Measurand::DiagonalUp,
        (Kind::Wall, Field::DiagonalDown) => Measurand::DiagonalDown,
        (Kind::Wall, Field::PeakFromLeft) => Measurand::PeakFromLeft,
        (Kind::Wall, Field::PeakHeight) => Measurand::PeakHeight,
        (Kind::BaseStep, Field::FromLeft) => Measurand::StepFromLeft,
        (Kind::BaseStep, Field::Rise) => Measurand::StepRise,
        (Kind::Stud, Field::At) => Measurand::StudCentre,
        (Kind::Opening, Field::FromLeft | Field::HeadFromLeft) => Measurand::OpeningFromLeft,
        (Kind::Opening, Field::HeadWidth) => Measurand::HeadWidth,
        (Kind::Opening, Field::Width) => Measurand::OpeningWidth(opening()?),
        (Kind::Opening, Field::FromBase) => Measurand::OpeningFromBase(opening()?),
        (Kind::Opening, Field::Height) => Measurand::OpeningHeight(opening()?),
        (Kind::Abutment, Field::FromLeft) => Measurand::AbutmentFromLeft,
        (Kind::Abutment, Field::Width) => Measurand::AbutmentWidth,
        (Kind::Abutment, Field::Top) => Measurand::AbutmentTop,
        (Kind::Abutment, Field::Rise) => Measurand::AbutmentRise,
        (Kind::Penetration, Field::Width) => Measurand::PenetrationWidth(penetration()?),
        (Kind::Penetration, Field::Height) => Measurand::PenetrationHeight(penetration()?),
        (Kind::Penetration, Field::FromLeft) => Measurand::PenetrationFromLeft,
        (Kind::Penetration, Field::FromBase) => Measurand::PenetrationFromBase,
        (Kind::Penetration, Field::BlockThickness) => Measurand::BlockThickness,
        (Kind::Penetration, Field::HoleFromBottom) => Measurand::HoleFromBottom,
        (Kind::Board, Field::Length) => Measurand::BoardLength,
        (Kind::Notch, Field::Left | Field::Right) => Measurand::NotchAcross,
        (Kind::Notch, Field::BottomLeft | Field::BottomRight | Field::TopLeft | Field::TopRight) => Measurand::NotchUp,
        (Kind::AsBuilt, Field::Left | Field::Middle | Field::Right) => Measurand::AsBuiltLine,
        (Kind::Gap, Field::Gap) => Measurand::Gap,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{Allowed, fields_of};
    use crate::store::{Id, Value};

    /// Whatever length somebody is asked for has bounds: a question without any would believe what cannot be.
    #[test]
    fn every_length_that_is_asked_for_is_judged() {
        let mut judged = 0;
        for kind in Kind::all() {
            let specs = || fields_of(kind).iter();
            let what = specs().find(|spec| spec.field == Field::What).and_then(|spec| match spec.allowed {
                Allowed::OneOf(choices) => choices.first(),
                _ => None,
            });
            let told = what.map(|(code, _)| (Field::What, Value::Text((*code).to_owned())));
            let record = Record::unsaved(Id::from_bytes([1; 16]), kind, Id::from_bytes([2; 16]), &Vec::from_iter(told));
            for spec in specs() {
                if matches!(spec.allowed, Allowed::Positive | Allowed::NotNegative | Allowed::AnyLength) {
                    assert!(of(&record, spec.field).is_some(), "{kind} {}", spec.field);
                    judged += 1;
                }
            }
        }
        assert!(judged > 60, "{judged}");
    }
}
