use super::*;
use crate::measure::{Length, Reader, Show, Unit};
use crate::phrases::{Language, Phrases};
use crate::rules::{Family, Quantity, RULES, RuleSet, RuleUnit, keys};
use crate::wall::{OpeningKind, PenetrationKind};
use proptest::prelude::*;

fn length(text: &str) -> Length {
    Reader::default().length(text).unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn typed(text: &str) -> (Length, Option<Unit>) {
    let read = Reader::default().read(text).unwrap();
    (read.exact.to_length().unwrap(), Some(read.unit))
}

/// What is known on a house in inches: boards of 8 1/4 in, a wall of 24 by 9 ft with a gable of 165 1/2 in.
fn house() -> Surroundings {
    let some = |text: &str| Some(length(text));
    Surroundings {
        house_unit: Some(Unit::Inch),
        board_height: some("8 1/4\""),
        board_thickness: some("5/16\""),
        lap: some("1 1/4\""),
        nail_line: some("3/4\""),
        board_length: some("12 ft"),
        longest_stock: some("12 ft"),
        pole_from: some("0\""),
        pole_to: some("165 1/2\""),
        reveal_least: some("6 1/2\""),
        reveal_most: some("7\""),
        wall_width: some("24 ft"),
        left_height: some("9 ft"),
        right_height: some("9 ft"),
        peak_height: some("165 1/2\""),
        stud_spacing: some("16\""),
        ..Surroundings::default()
    }
}

fn metric() -> Surroundings {
    let some = |text: &str| Some(length(text));
    Surroundings {
        house_unit: Some(Unit::Millimetre),
        rules: RuleSet::of(Family::Australia).into(),
        board_height: some("180 mm"),
        board_thickness: some("7.5 mm"),
        lap: some("30 mm"),
        nail_line: some("20 mm"),
        longest_stock: some("4200 mm"),
        pole_from: some("0 mm"),
        pole_to: some("2700 mm"),
        reveal_most: some("150 mm"),
        reveal_least: some("130 mm"),
        wall_width: some("9600 mm"),
        left_height: some("2700 mm"),
        right_height: some("2700 mm"),
        stud_spacing: some("600 mm"),
        ..Surroundings::default()
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Said {
    Asked,
    Refused,
}
use Measurand as M;
use Said::{Asked, Refused};

fn said(verdict: &Verdict) -> Option<(Said, Reason, Option<Suggestion>)> {
    match verdict {
        Verdict::Fine => None,
        Verdict::Unlikely { why, suggestion } => Some((Asked, why.reason, *suggestion)),
        Verdict::Impossible { why, suggestion, .. } => Some((Refused, why.reason, *suggestion)),
    }
}

/// What somebody typed on the house above, what must be said of it, and what was meant; empty where nobody can know.
type SlipRow = (Measurand, &'static str, Said, Reason, &'static str);

#[rustfmt::skip]
const SLIPS: &[SlipRow] = &[
    (M::Lap, "1/4 in", Refused, Reason::NailsHidden, ""),
    (M::Lap, "1 in", Asked, Reason::UnderRule, ""),
    (M::Lap, "20 in", Refused, Reason::LapOfBoard, ""),
    (M::Lap, "114 in", Refused, Reason::LapOfBoard, "1 1/4 in"),
    (M::BoardHeight, "16 in", Asked, Reason::OverRule, ""),
    (M::BoardHeight, "814 in", Refused, Reason::Absurd, "8 1/4 in"),
    (M::BoardHeight, "210 in", Refused, Reason::Absurd, "210 mm"),
    (M::BoardHeight, "825 in", Refused, Reason::Absurd, "8.25 in"),
    (M::BoardHeight, "1 in", Refused, Reason::LapOfBoard, ""),
    (M::BoardThickness, "1/8 in", Refused, Reason::Absurd, ""),
    (M::BoardThickness, "5 in", Refused, Reason::Absurd, "5/16 in"),
    (M::BoardThickness, "516 in", Refused, Reason::Absurd, "5/16 in"),
    (M::BoardThickness, "8 in", Refused, Reason::Absurd, "8 mm"),
    (M::NailLine, "1/16 in", Refused, Reason::Absurd, ""),
    (M::NailLine, "1/2 in", Asked, Reason::UnderRule, ""),
    (M::NailLine, "3 in", Refused, Reason::NailsHidden, "3/4 in"),
    (M::NailLine, "34 in", Refused, Reason::NailsHidden, "3/4 in"),
    (M::StudSpacing, "24 in", Asked, Reason::OverRule, ""),
    (M::StudSpacing, "16 ft", Refused, Reason::Absurd, "16 in"),
    (M::StudSpacing, "61 in", Refused, Reason::Absurd, "16 in"),
    (M::StudSpacing, "400 in", Refused, Reason::Absurd, "400 mm"),
    (M::StudSpacing, "116 in", Refused, Reason::Absurd, "16 in"),
    (M::StockLength, "12 in", Asked, Reason::Unusual, "12 ft"),
    (M::StockLength, "300 ft", Refused, Reason::Absurd, ""),
    (M::StockLength, "144 ft", Refused, Reason::Absurd, "144 in"),
    (M::StockLength, "1144 in", Refused, Reason::Absurd, "144 in"),
    (M::StockLength, "3660 in", Refused, Reason::Absurd, "3660 mm"),
    (M::Offcut, "20 ft", Asked, Reason::LongerThanStock, ""),
    (M::Offcut, "61 ft", Refused, Reason::Absurd, "61 in"),
    (M::SpoiledLeft, "13 ft", Refused, Reason::LongerThanBoard, "13 in"),
    (M::WallWidth, "24 in", Asked, Reason::Feet, "24 ft"),
    (M::WallWidth, "288 ft", Asked, Reason::Unusual, "288 in"),
    (M::WallWidth, "7300 in", Refused, Reason::Absurd, "7300 mm"),
    (M::WallWidth, "7 mm", Refused, Reason::Absurd, "7 m"),
    (M::WallHeight, "9 in", Asked, Reason::Feet, "9 ft"),
    (M::WallHeight, "108 ft", Refused, Reason::Absurd, "108 in"),
    (M::WallHeight, "2740 in", Refused, Reason::Absurd, "2740 mm"),
    (M::PeakHeight, "14 in", Refused, Reason::PeakOverEaves, "14 ft"),
    (M::PeakHeight, "100 in", Refused, Reason::PeakOverEaves, ""),
    (M::PeakFromLeft, "12 in", Asked, Reason::Feet, "12 ft"),
    (M::PeakFromLeft, "60 ft", Refused, Reason::OnWall, "60 in"),
    (M::DiagonalUp, "400 in", Refused, Reason::Triangle, ""),
    (M::DiagonalUp, "370 in", Asked, Reason::OutOfSquare, "307 in"),
    (M::DiagonalUp, "307 ft", Refused, Reason::Triangle, "307 in"),
    (M::DiagonalDown, "250 in", Asked, Reason::OutOfSquare, ""),
    (M::FirstStud, "20 in", Asked, Reason::StudBefore, ""),
    (M::FirstStud, "30 ft", Refused, Reason::OnWall, ""),
    (M::StudCentre, "30 ft", Refused, Reason::OnWall, "30 in"),
    (M::TrimWidth, "13 ft", Refused, Reason::OnWall, ""),
    (M::TrimWidth, "35 in", Refused, Reason::Absurd, ""),
    (M::TrimWidth, "90 in", Refused, Reason::Absurd, "90 mm"),
    (M::Base, "34 ft", Asked, Reason::Unusual, "34 in"),
    (M::StepRise, "0 in", Refused, Reason::OnWall, ""),
    (M::StepRise, "14 ft", Refused, Reason::OnWall, "14 in"),
    (M::StepFromLeft, "100 ft", Refused, Reason::OnWall, "100 in"),
    (M::OpeningWidth(OpeningKind::Window), "36 ft", Refused, Reason::OnWall, "36 in"),
    (M::OpeningWidth(OpeningKind::Window), "4 in", Asked, Reason::Unusual, "4 ft"),
    (M::OpeningWidth(OpeningKind::Door), "3 in", Refused, Reason::Absurd, "3 ft"),
    (M::OpeningHeight(OpeningKind::Door), "7 in", Refused, Reason::Absurd, "7 ft"),
    (M::OpeningHeight(OpeningKind::Door), "82 ft", Refused, Reason::OnWall, "82 in"),
    (M::OpeningHeight(OpeningKind::Window), "48 ft", Refused, Reason::OnWall, "48 in"),
    (M::OpeningFromLeft, "42 ft", Refused, Reason::OnWall, "42 in"),
    (M::OpeningFromBase(OpeningKind::Window), "34 ft", Refused, Reason::OnWall, "34 in"),
    (M::OpeningFromBase(OpeningKind::Door), "160 in", Asked, Reason::Unusual, "160 mm"),
    (M::AbutmentTop, "40 ft", Asked, Reason::OnWall, "40 in"),
    (M::PenetrationFromBase, "300 in", Refused, Reason::OnWall, "300 mm"),
    (M::PenetrationFromLeft, "300 in", Refused, Reason::OnWall, "300 mm"),
    (M::PenetrationWidth(PenetrationKind::Light), "400 in", Refused, Reason::OnWall, "4 in"),
    (M::PenetrationWidth(PenetrationKind::Light), "100 in", Refused, Reason::Absurd, "100 mm"),
    (M::PenetrationWidth(PenetrationKind::HoseBib), "7 in", Asked, Reason::Unusual, "7/8 in"),
    (M::PenetrationWidth(PenetrationKind::HoseBib), "78 in", Refused, Reason::Absurd, "7/8 in"),
    (M::PenetrationWidth(PenetrationKind::Cable), "34 in", Asked, Reason::Unusual, "3/4 in"),
    (M::PenetrationWidth(PenetrationKind::VentHood), "418 in", Refused, Reason::OnWall, "4 1/8 in"),
    (M::PenetrationWidth(PenetrationKind::MeterBase), "8 ft", Refused, Reason::Absurd, "8 in"),
    (M::PenetrationHeight(PenetrationKind::MeterBase), "95 in", Refused, Reason::Absurd, "9.5 in"),
    (M::BlockWidth, "5 ft", Asked, Reason::Unusual, "5 in"),
    (M::BlockHeight, "150 in", Refused, Reason::Absurd, "150 mm"),
    (M::BlockThickness, "1/2 in", Asked, Reason::BlockShallow, ""),
    (M::BlockThickness, "7 in", Refused, Reason::Absurd, "7/8 in"),
    (M::BlockThickness, "112 in", Refused, Reason::Absurd, "1 1/2 in"),
    (M::PoleTo, "13 in", Asked, Reason::Unusual, "13 ft"),
    (M::PoleTo, "-5 in", Refused, Reason::PoleOrder, ""),
    (M::PoleFrom, "170 in", Refused, Reason::PoleOrder, "170 mm"),
    (M::RevealMost, "9 in", Refused, Reason::RevealOfBoard, ""),
    (M::RevealMost, "7 1/2 in", Asked, Reason::LapShort, ""),
    (M::RevealMost, "178 in", Refused, Reason::RevealOfBoard, ""),
    (M::RevealLeast, "8 in", Refused, Reason::RevealOrder, ""),
    (M::RevealLeast, "612 in", Refused, Reason::RevealOrder, "6 1/2 in"),
    (M::RevealLeast, "1 in", Asked, Reason::RevealsUneven, ""),
    (M::RevealChange, "18 in", Refused, Reason::RevealOrder, "1/8 in"),
    (M::RevealChange, "1 in", Asked, Reason::Unusual, "1/16 in"),
    (M::MarkHeight, "200 in", Asked, Reason::OffPole, "200 mm"),
    (M::MarkClear, "12 in", Asked, Reason::Unusual, "1/2 in"),
    (M::NotchAcross, "20 ft", Refused, Reason::OffBoard, "20 in"),
    (M::NotchUp, "6 ft", Asked, Reason::Unusual, "6 in"),
    (M::Gap, "5 in", Refused, Reason::Absurd, "5/32 in"),
    (M::Gap, "18 in", Refused, Reason::Absurd, "1/8 in"),
    (M::Gap, "1/2 in", Asked, Reason::Unusual, ""),
    (M::TrimWidth, "3.12 in", Asked, Reason::OffTape, "3 1/2 in"),
    (M::MarkHeight, "64.316 in", Asked, Reason::OffTape, "64 3/16 in"),
    (M::TrimWidth, "3.5 mm", Asked, Reason::OtherUnit, "3 1/2 in"),
    (M::MarkHeight, "64 mm", Asked, Reason::OtherUnit, "64 in"),
];

#[test]
fn slips_are_noticed_and_read_back() {
    let mut wrong = Vec::new();
    for (measurand, text, how, reason, meant) in SLIPS {
        let (value, unit) = typed(text);
        // A value that is judged is not among what is known around it.
        let mut around = Surroundings { unit, ..house() };
        match measurand {
            M::Lap => around.lap = None,
            M::StudSpacing => around.stud_spacing = None,
            M::PeakHeight => around.peak_height = None,
            M::WallWidth => around.wall_width = None,
            _ => {}
        }
        let verdict = judge(*measurand, value, &around);
        let found = said(&verdict);
        let right = found.is_some_and(|(found_how, found_reason, suggestion)| {
            let found_meant = suggestion.map(|suggestion| suggestion.meant);
            (found_how, found_reason) == (*how, *reason) && (meant.is_empty() || found_meant == Some(length(meant)))
        });
        if !right {
            wrong.push(format!("{measurand:?} {text}: {found:?}, wanted {how:?} {reason:?} {meant}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Values that stand on houses, as somebody reads them off a tape or a board: nothing may be said of any.
type TrueRow = (Measurand, &'static [&'static str]);

const HOSE_BIB: M = M::PenetrationWidth(PenetrationKind::HoseBib);
const METER: M = M::PenetrationHeight(PenetrationKind::MeterBase);

#[rustfmt::skip]
const TRUE_IN_INCHES: &[TrueRow] = &[
    (M::BoardHeight, &["5 1/4 in", "6 1/4 in", "7 1/4 in", "8 1/4 in", "9 1/4 in", "12 in"]),
    (M::BoardThickness, &["5/16 in", "7/16 in", "5/8 in"]),
    (M::Lap, &["1 1/4 in", "1 1/2 in", "2 in"]),
    (M::NailLine, &["3/4 in", "7/8 in", "1 in"]),
    (M::StockLength, &["12 ft", "10 ft", "144 in", "16 ft", "8 ft", "14' 0\""]),
    (M::Offcut, &["23 1/4 in", "6 ft", "71 15/16 in", "16 in", "143 7/8 in"]),
    (M::SpoiledLeft, &["40 in", "8 1/2 in", "100 3/16 in"]),
    (M::BoardLength, &["142 7/8 in", "12 ft", "31 1/16 in", "2 3/4 in"]),
    (M::PoleFrom, &["0 in", "-14 in", "3 1/2 in"]),
    (M::PoleTo, &["165 1/2 in", "108 in", "94 3/8 in", "18 ft", "26' 4\""]),
    (M::RevealMost, &["7 in", "6 15/16 in", "5 in"]),
    (M::RevealLeast, &["6 1/2 in", "6 in", "4 1/2 in"]),
    (M::Reveal, &["7 in", "4 in"]),
    (M::RevealChange, &["1/8 in", "0 in", "1/4 in"]),
    (M::MarkHeight, &["34 1/2 in", "82 1/2 in", "64 in", "0 in", "165 1/2 in"]),
    (M::MarkClear, &["1 in", "0 in", "1/2 in"]),
    (M::WallWidth, &["24 ft", "18 ft", "376 1/4 in", "31' 4\"", "62'", "12 1/2 in", "5 ft", "120 in", "48 in"]),
    (M::WallHeight, &["9 ft", "94 in", "108 1/4 in", "18' 6\"", "97 1/8 in", "3 1/4 in", "26 ft"]),
    (M::DiagonalUp, &["307 5/8 in", "307 1/2 in", "308 in", "305 1/2 in"]),
    (M::DiagonalDown, &["307 1/2 in", "309 1/8 in"]),
    (M::PeakFromLeft, &["12 ft", "144 1/2 in", "60 in", "200 in"]),
    (M::PeakHeight, &["165 1/2 in", "180 in", "109 in", "252 in"]),
    (M::Base, &["0 in", "14 in", "-20 3/4 in", "110 in"]),
    (M::StepFromLeft, &["100 in", "8 ft", "12 3/4 in"]),
    (M::StepRise, &["-14 in", "10 in", "7 1/2 in", "-7 in"]),
    (M::FirstStud, &["3/4 in", "15 1/4 in", "16 in", "0 in"]),
    (M::StudCentre, &["16 3/4 in", "15 1/4 in", "278 in"]),
    (M::StudSpacing, &["16 in", "12 in", "15 15/16 in"]),
    (M::TrimWidth, &["3 1/2 in", "0 in", "5 1/2 in", "1/2 in", "11 1/4 in"]),
    (M::OpeningWidth(OpeningKind::Window), &["48 in", "36 in", "24 1/2 in", "70 3/8 in", "12 in", "6 ft"]),
    (M::OpeningHeight(OpeningKind::Window), &["48 in", "23 in", "60 3/4 in", "12 in"]),
    (M::OpeningWidth(OpeningKind::Door), &["42 in", "38 1/4 in", "72 in", "16 ft", "9 ft"]),
    (M::OpeningHeight(OpeningKind::Door), &["82 1/2 in", "80 in", "84 in", "97 in"]),
    (M::OpeningFromLeft, &["42 in", "180 in", "0 in", "22 1/8 in", "9 in"]),
    (M::OpeningFromBase(OpeningKind::Window), &["34 1/2 in", "20 1/2 in", "0 in", "110 in"]),
    (M::OpeningFromBase(OpeningKind::Door), &["0 in", "7 1/2 in", "30 in", "116 in"]),
    (M::AbutmentFromLeft, &["168 in", "0 in", "100 in"]),
    (M::AbutmentWidth, &["66 in", "100 in", "288 in", "8 in"]),
    (M::AbutmentTop, &["-2 in", "-6 in", "-20 in", "94 in", "12 1/2 in"]),
    (M::PenetrationWidth(PenetrationKind::Light), &["4 in", "3 1/2 in", "3/4 in", "4 3/8 in"]),
    (M::PenetrationWidth(PenetrationKind::Cable), &["3/4 in", "1/4 in", "1/2 in"]),
    (HOSE_BIB, &["7/8 in", "1 1/8 in", "1 in"]),
    (M::PenetrationWidth(PenetrationKind::Pipe), &["1 5/16 in", "2 3/8 in", "4 1/2 in", "7/8 in", "3 1/2 in"]),
    (M::PenetrationWidth(PenetrationKind::Conduit), &["7/8 in", "1 5/16 in", "2 3/8 in"]),
    (M::PenetrationWidth(PenetrationKind::VentHood), &["4 1/8 in", "6 in", "8 in", "4 in"]),
    (M::PenetrationWidth(PenetrationKind::ElectricalBox), &["2 1/8 in", "4 in", "4 9/16 in"]),
    (M::PenetrationWidth(PenetrationKind::MeterBase), &["8 in", "11 in", "13 1/4 in"]),
    (METER, &["9 1/2 in", "14 in", "19 1/8 in"]),
    (M::PenetrationWidth(PenetrationKind::LineSet), &["2 1/2 in", "3 in", "1 3/8 in"]),
    (M::PenetrationFromLeft, &["166 in", "22 in", "3 in", "285 in"]),
    (M::PenetrationFromBase, &["68 1/4 in", "96 in", "51 3/8 in", "6 3/4 in", "-3 in", "13 1/4 in", "150 in"]),
    (M::BlockWidth, &["11 in", "8 1/2 in", "5 1/4 in", "8 in"]),
    (M::BlockHeight, &["12 1/2 in", "5 13/16 in", "8 1/2 in"]),
    (M::BlockThickness, &["7/8 in", "1 in", "1 1/2 in", "1 1/4 in"]),
    (M::HoleFromBottom, &["4 1/4 in", "2 5/8 in", "6 in"]),
    (M::NotchAcross, &["19 3/8 in", "83 7/16 in", "-2 1/4 in", "143 in", "0 in"]),
    (M::NotchUp, &["4 1/16 in", "-9 5/8 in", "16 5/8 in", "0 in", "2 3/16 in"]),
    (M::Gap, &["1/16 in", "1/8 in", "3/32 in", "5/32 in", "0 in", "3/16 in"]),
    (M::AsBuiltLine, &["6 15/16 in", "82 1/2 in", "0 in", "165 1/2 in"]),
];

#[rustfmt::skip]
const TRUE_IN_MILLIMETRES: &[TrueRow] = &[
    (M::BoardHeight, &["180 mm", "230 mm", "300 mm", "170 mm"]),
    (M::BoardThickness, &["7.5 mm", "9 mm", "16 mm", "8.5 mm"]),
    (M::Lap, &["30 mm", "25 mm", "35 mm"]),
    (M::NailLine, &["20 mm", "25 mm"]),
    (M::StockLength, &["4200 mm", "3 m", "3600 mm", "4.2 m"]),
    (M::Offcut, &["1213 mm", "600 mm", "4199 mm"]),
    (M::PoleTo, &["2700 mm", "5.4 m", "2413 mm"]),
    (M::RevealMost, &["150 mm", "149 mm"]),
    (M::RevealLeast, &["130 mm", "120 mm"]),
    (M::WallWidth, &["9600 mm", "7.2 m", "12.35 m", "1215 mm", "450 mm"]),
    (M::WallHeight, &["2700 mm", "2.4 m", "2413 mm", "5.8 m"]),
    (M::DiagonalUp, &["9972 mm", "9.97 m", "9960 mm"]),
    (M::StudSpacing, &["600 mm", "450 mm", "400 mm"]),
    (M::FirstStud, &["0 mm", "22 mm", "600 mm"]),
    (M::TrimWidth, &["90 mm", "42 mm", "0 mm"]),
    (M::OpeningWidth(OpeningKind::Window), &["1810 mm", "610 mm", "1.2 m"]),
    (M::OpeningHeight(OpeningKind::Window), &["1200 mm", "600 mm"]),
    (M::OpeningWidth(OpeningKind::Door), &["870 mm", "2.4 m"]),
    (M::OpeningHeight(OpeningKind::Door), &["2100 mm", "2040 mm"]),
    (HOSE_BIB, &["22 mm", "25 mm", "15 mm"]),
    (M::PenetrationWidth(PenetrationKind::Pipe), &["50 mm", "100 mm", "40 mm", "110 mm"]),
    (M::PenetrationWidth(PenetrationKind::VentHood), &["100 mm", "125 mm", "150 mm"]),
    (M::BlockWidth, &["150 mm", "200 mm"]),
    (M::BlockThickness, &["25 mm", "22 mm", "35 mm"]),
    (M::Gap, &["2 mm", "3 mm", "1.5 mm", "4 mm"]),
    (M::PenetrationFromBase, &["450 mm", "1.5 m", "300 mm"]),
];

/// Values that do stand on some house and are asked about all the same: what the questions cost.
#[rustfmt::skip]
const TRUE_BUT_ASKED: &[TrueRow] = &[
    // A narrow return, a knee wall, a low end of a lean-to: they read like feet.
    (M::WallWidth, &["24 in", "36 in"]),
    (M::WallHeight, &["24 in"]),
    // Boards over the widest of the published rule, studs over its spacing.
    (M::BoardHeight, &["15 3/4 in"]),
    (M::StudSpacing, &["24 in", "19.2 in"]),
    // A cathedral window, a stock length of 20 ft and a bit.
    (M::OpeningHeight(OpeningKind::Window), &["126 in"]),
    (M::StockLength, &["20' 6\""]),
];

/// A house without the value that is judged.
fn without(mut around: Surroundings, measurand: Measurand) -> Surroundings {
    match measurand {
        M::Lap => around.lap = None,
        M::NailLine => around.nail_line = None,
        M::StudSpacing => around.stud_spacing = None,
        M::PeakHeight => around.peak_height = None,
        M::RevealMost | M::RevealLeast => (around.reveal_most, around.reveal_least) = (None, None),
        M::StockLength | M::Offcut => {}
        M::WallWidth => around.wall_width = None,
        M::WallHeight => (around.left_height, around.right_height, around.peak_height) = (None, None, None),
        M::BoardHeight => (around.lap, around.reveal_most, around.reveal_least) = (None, None, None),
        _ => {}
    }
    around
}

#[test]
fn true_values_are_taken_without_a_word() {
    let (mut count, mut wrong) = (0, Vec::new());
    for (rows, around) in [(TRUE_IN_INCHES, house()), (TRUE_IN_MILLIMETRES, metric())] {
        for (measurand, texts) in rows {
            for text in *texts {
                let (value, unit) = typed(text);
                let around = Surroundings { unit, ..without(around.clone(), *measurand) };
                let verdict = judge(*measurand, value, &around);
                count += 1;
                if !verdict.is_fine() {
                    wrong.push(format!("{measurand:?} {text}: {verdict:?}"));
                }
            }
        }
    }
    assert!(count > 250 && wrong.is_empty(), "{} of {count} are false alarms:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn rare_true_values_are_asked_about_and_never_refused() {
    for (measurand, texts) in TRUE_BUT_ASKED {
        for text in *texts {
            let (value, unit) = typed(text);
            let verdict = judge(*measurand, value, &Surroundings { unit, ..without(house(), *measurand) });
            assert!(matches!(verdict, Verdict::Unlikely { .. }), "{measurand:?} {text}: {verdict:?}");
        }
    }
}

#[test]
fn a_reading_far_from_the_plan_is_asked_about() {
    // A block that is planned at 161 13/16 in and read at 16 1 13/16, with two digits swapped, or in the other unit.
    let around = |planned: &str| Surroundings { planned: Some(length(planned)), ..house() };
    for (measurand, planned, text, meant) in [
        (M::NotchAcross, "124 in", "142 in", Some("124 in")),
        (M::NotchAcross, "16 13/16 in", "16 1/4 in", None),
        (M::AsBuiltLine, "69 in", "96 in", Some("69 in")),
        (M::WallWidth, "24 ft", "24 in", Some("24 ft")),
        (M::WallWidth, "288 in", "287 3/8 in", None),
        (M::PenetrationFromBase, "48 in", "-48 in", Some("48 in")),
        (M::BoardHeight, "8 1/4 in", "7 1/4 in", None),
    ] {
        let (value, unit) = typed(text);
        let verdict = judge(measurand, value, &Surroundings { unit, ..around(planned) });
        let found = said(&verdict).and_then(|(_, _, suggestion)| suggestion).map(|suggestion| suggestion.meant);
        assert_eq!(found, meant.map(length), "{measurand:?} {text}: {verdict:?}");
    }
    let off = judge(M::BoardHeight, length("7 1/4 in"), &around("8 1/4 in"));
    assert_eq!(said(&off), Some((Asked, Reason::OffPlan, None)));
    // Course 10 is planned at 62 in, course 11 at 69 in.
    let course = judge(M::AsBuiltLine, length("69 in"), &around("62 in"));
    assert_eq!(said(&course), Some((Asked, Reason::AnotherCourse, None)));
    assert!(judge(M::AsBuiltLine, length("62 7/16 in"), &around("62 in")).is_fine());
}

#[test]
fn a_gap_is_of_a_cut_board_and_near_what_the_saw_leaves() {
    let around = |is_cut, learned: Option<(&str, &str)>| {
        let learned_gap = learned.map(|(least, most)| (Some(length(least)), Some(length(most))));
        Surroundings { is_cut, learned_gap, ..house() }
    };
    let says = |text: &str, around: &Surroundings| {
        said(&judge(M::Gap, length(text), around)).map(|(how, reason, _)| (how, reason))
    };
    assert_eq!(says("1/8 in", &around(Some(true), None)), None);
    // Before it is cut not even the size of the number matters.
    for text in ["1/8 in", "5 in"] {
        assert_eq!(says(text, &around(Some(false), None)), Some((Refused, Reason::NotCut)), "{text}");
    }
    let learned = around(Some(true), Some(("1/16 in", "1/8 in")));
    for (text, found) in [
        ("0 in", None),
        ("3/16 in", None),
        ("13/64 in", Some((Asked, Reason::FarFromLearned))),
        ("5 in", Some((Refused, Reason::Absurd))),
    ] {
        assert_eq!(says(text, &learned), found, "{text}");
    }
}

#[test]
fn two_things_cannot_be_in_one_place() {
    let placed = |name, [left, right, bottom, top]: [i64; 4]| Placed {
        name,
        left: Length::from_inches(left),
        right: Length::from_inches(right),
        bottom: Length::from_inches(bottom),
        top: Length::from_inches(top),
    };
    let window = placed("Window", [42, 90, 34, 82]);
    let others = [window, placed("Door", [180, 222, 0, 82])];
    let verdict = judge_place(&placed("Light", [60, 64, 50, 54]), &others);
    assert!(
        matches!(&verdict, Verdict::Impossible { why, .. } if why.reason == Reason::Overlaps && why.name == "Window")
    );
    assert!(!judge_place(&placed("Window 2", [80, 130, 30, 60]), &others).is_fine());
    // One that holds the other, and one that crosses it without a corner inside.
    assert!(!judge_place(&placed("Big", [30, 100, 20, 100]), &others).is_fine());
    assert!(!judge_place(&placed("Strip", [0, 170, 50, 51]), &others).is_fine());
    for beside in [[90, 100, 34, 82], [10, 42, 34, 82], [42, 90, 82, 90], [42, 90, 0, 34], [100, 110, 0, 90]] {
        assert!(judge_place(&placed("Beside", beside), &others).is_fine(), "{beside:?}");
    }
}

#[test]
fn a_name_calls_one_thing() {
    for name in ["East", "east", "  EAST ", "Street  gable"] {
        assert!(!judge_name(name, &["East", "Street gable"]).is_fine(), "{name}");
    }
    for name in ["West", "East 2", "Eas t"] {
        assert!(judge_name(name, &["East", "Street gable"]).is_fine(), "{name}");
    }
}

#[test]
fn a_rule_is_not_turned_into_something_else_without_a_word() {
    let rule = |key: &str| RULES.iter().find(|rule| rule.key == key).unwrap();
    let quantity = |n, d, unit| Quantity::new(n, d, unit).unwrap();
    let slope = rule(keys::HEAD_FLASHING_SLOPE);
    let of = |n| judge_rule(slope, quantity(n, 1, RuleUnit::Percent));
    assert!(matches!(of(0), Verdict::Impossible { ref why, .. } if why.reason == Reason::NoFall));
    assert!(of(6).is_fine() && of(8).is_fine() && of(12).is_fine());
    assert!(matches!(of(60), Verdict::Unlikely { ref why, .. } if why.reason == Reason::FarFromDefault));
    let lap = rule(keys::LAP_LEAST);
    assert!(judge_rule(lap, quantity(3, 2, RuleUnit::Inch)).is_fine());
    assert!(judge_rule(lap, quantity(32, 1, RuleUnit::Millimetre)).is_fine());
    assert!(!judge_rule(lap, quantity(1, 4, RuleUnit::Inch)).is_fine());
    assert!(!judge_rule(lap, quantity(20, 1, RuleUnit::Inch)).is_fine());
    for rule in RULES {
        assert!(judge_rule(rule, rule.value).is_fine(), "{}", rule.key);
    }
}

#[test]
fn a_verdict_says_what_is_wrong_what_is_allowed_and_where_it_comes_from() {
    let says = |measurand, text: &str, language| {
        let (value, unit) = typed(text);
        let around = Surroundings { unit, ..without(house(), measurand) };
        judge(measurand, value, &around).text(text, &around.rules, Phrases::for_language(language), Show::Inches(16))
    };
    let gap = says(M::Gap, "5 in", Language::English);
    assert_eq!(
        gap,
        "5 in cannot be: it must be 0\" to 1\". (Common practice, no source.) Did you mean the fraction 5/32\"?"
    );
    let lap = says(M::Lap, "1 in", Language::English);
    assert_eq!(lap, "1 in is under the 1 1/4\" that the rule asks. (IRC R703.10.2 2024.)");
    let width = says(M::WallWidth, "24 in", Language::Spanish);
    assert_eq!(
        width,
        "24 in parece una medida en pies. (Práctica común, sin fuente.) ¿Quiso decir 24' 0\", en otra unidad?"
    );
    let lap = says(M::Lap, "20 in", Language::Spanish);
    assert!(lap.contains("alto de la tabla") && lap.contains("8 1/4\""), "{lap}");
}

#[test]
fn every_reason_has_a_text_in_both_languages() {
    for reason in Reason::ALL {
        for language in Language::ALL {
            let args = [("value", "1\"".into()), ("least", "2\"".into()), ("most", "3\"".into()), ("name", "4".into())];
            let text = Phrases::for_language(*language).phrase(reason.phrase(), &args);
            assert!(text.len() > 8 && !text.contains("plausible-"), "{reason:?}: {text}");
        }
    }
}

/// Every measurand, so that none is left out.
fn every_measurand() -> Vec<Measurand> {
    let rows = TRUE_IN_INCHES.iter().map(|(measurand, _)| *measurand);
    rows.chain(PenetrationKind::ALL.iter().map(|kind| M::PenetrationWidth(*kind))).collect()
}

/// Whether a suggestion is taken as it is shown, in its own unit.
fn is_fine_as_shown(measurand: Measurand, suggestion: Suggestion, around: &Surroundings) -> bool {
    let unit = match suggestion.slip {
        Slip::Unit(unit) => Some(unit),
        _ => around.unit,
    };
    judge(measurand, suggestion.meant, &Surroundings { unit, ..around.clone() }).is_fine()
}

proptest! {
    #[test]
    fn what_is_suggested_is_fine_and_what_is_allowed_is_possible(
        at in 0..every_measurand().len(),
        inches in prop_oneof![-20_000_i64..20_000, 1_i64..400],
        parts in prop_oneof![Just(0_i64), 0_i64..64],
        metric in any::<bool>(),
    ) {
        let measurand = every_measurand()[at];
        let (around, value) = if metric {
            (self::metric(), Length::from_mm(inches))
        } else {
            (house(), Length::from_inches_64(inches, parts))
        };
        let unit = Some(if metric { Unit::Millimetre } else { Unit::Inch });
        let around = Surroundings { unit, ..without(around, measurand) };
        match judge(measurand, value, &around) {
            Verdict::Fine => {}
            Verdict::Unlikely { suggestion, .. } => {
                if let Some(suggestion) = suggestion {
                    prop_assert!(is_fine_as_shown(measurand, suggestion, &around), "{suggestion:?}");
                }
            }
            Verdict::Impossible { allowed, suggestion, .. } => {
                if let Some(suggestion) = suggestion {
                    prop_assert!(is_fine_as_shown(measurand, suggestion, &around), "{suggestion:?}");
                }
                let outside = allowed.least.is_some_and(|least| value < least) || allowed.most.is_some_and(|most| value > most);
                let nothing = measurand == M::StepRise && value == Length::ZERO;
                prop_assert!(outside || nothing, "{measurand:?} {value:?} {allowed:?}");
                for edge in [allowed.least, allowed.most].into_iter().flatten() {
                    let at_edge = judge(measurand, edge, &around);
                    prop_assert!(!matches!(at_edge, Verdict::Impossible { .. }), "{measurand:?} {edge:?} {at_edge:?}");
                }
            }
        }
    }
}
