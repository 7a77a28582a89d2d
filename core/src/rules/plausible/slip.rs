use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::ToPrimitive;

use super::{Around, Measurand, fits};
use crate::measure::{Exact, Length, Show, Unit};
use crate::phrases::key;

/// How a value that cannot be, or hardly, may have come from one that can.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// The number is one of another unit: 24 for 24 ft, 305 for 305 mm.
    Unit(Unit),
    /// The stroke of a fraction was left out, and the lower number with it or not: 6 for 6/16, 516 for 5/16.
    Stroke,
    /// The decimal point was left out or put elsewhere: 825 for 8.25.
    Point,
    /// Two digits change places: 214 for 241.
    Digits,
    /// A digit was struck twice: 1144 for 144.
    Twice,
    /// The minus was left out, or is too much.
    Minus,
}

/// What was probably meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Suggestion {
    /// The value.
    pub meant: Length,
    /// What went wrong.
    pub slip: Slip,
}

impl Suggestion {
    /// The value as it would have been written: in the other unit where the unit was the slip, else as finely as needed.
    pub(super) fn shown(self, show: Show) -> String {
        let metric = matches!(show, Show::Millimetres(_));
        let show = match self.slip {
            Slip::Unit(Unit::Foot) => Show::FeetInches(64),
            Slip::Unit(Unit::Inch) => Show::Inches(64),
            Slip::Unit(_) => Show::Millimetres(10),
            _ if metric => Show::Millimetres(10),
            _ => Show::Inches(64),
        };
        show.text(self.meant)
    }
}

impl Slip {
    /// The key of the phrase that asks about it, with the value as `meant`.
    pub const fn phrase(self) -> &'static str {
        match self {
            Self::Unit(_) => key("plausible-meant-unit"),
            Self::Stroke => key("plausible-meant-fraction"),
            Self::Point | Self::Digits | Self::Twice | Self::Minus => key("plausible-meant"),
        }
    }
}

/// The first slip that turns a value into one that nothing speaks against; where something is planned, into one near it.
pub(super) fn meant(measurand: Measurand, value: Length, around: &Around) -> Option<Suggestion> {
    let unit = around.unit.unwrap_or(Unit::Inch);
    let number = BigRational::new(BigInt::from(value.nm()), BigInt::from(unit.nm()));
    let near = |meant: Length| {
        let off = |planned: Length| (meant - planned).abs();
        around.planned.is_none_or(|planned| off(planned) <= around.tolerance(measurand, planned))
    };
    let to_length = |(number, unit, slip): (BigRational, Unit, Slip)| {
        let meant = Exact::from_units(&number, unit).to_length()?;
        (meant != value && near(meant) && fits(measurand, meant, around)).then_some(Suggestion { meant, slip })
    };
    slips(&number, unit).into_iter().find_map(to_length)
}

/// The numbers that may have been meant, the commonest slip first, each with its unit.
fn slips(number: &BigRational, unit: Unit) -> Vec<(BigRational, Unit, Slip)> {
    let mut all = Vec::new();
    let fraction = |above: i64, below: i64| BigRational::new(BigInt::from(above), BigInt::from(below));
    let whole = number.is_integer().then(|| number.to_integer().to_i64()).flatten();
    // On a tape in inches the other unit is the foot, then the millimetre; on one in millimetres the inch.
    let units: &[Unit] = match unit {
        Unit::Inch => &[Unit::Foot, Unit::Millimetre, Unit::Centimetre],
        Unit::Foot => &[Unit::Inch, Unit::Metre],
        Unit::Millimetre | Unit::Centimetre | Unit::Metre => {
            &[Unit::Inch, Unit::Millimetre, Unit::Centimetre, Unit::Metre, Unit::Foot]
        }
    };
    let mut others =
        units.iter().filter(|other| **other != unit).map(|other| (number.clone(), *other, Slip::Unit(*other)));
    let on_a_tape = whole.filter(|whole| *whole > 0 && unit == Unit::Inch);
    if let Some(whole) = on_a_tape {
        all.extend(others.next());
        let odd = |below: &i64| whole < *below && whole % 2 == 1;
        let strokes = [16, 32, 8, 4, 2, 64].into_iter().filter(odd);
        all.extend(strokes.map(|below| (fraction(whole, below), unit, Slip::Stroke)));
        all.extend(split(whole).into_iter().map(|number| (number, unit, Slip::Stroke)));
    }
    all.extend(others);
    // 6/16 in is read off a tape, too, though it is 3/8 in.
    let even = on_a_tape.filter(|whole| *whole < 16 && whole % 2 == 0);
    all.extend(even.map(|whole| (fraction(whole, 16), unit, Slip::Stroke)));
    if let Some(whole) = whole {
        all.extend(swapped(whole).into_iter().map(|number| (fraction(number, 1), unit, Slip::Digits)));
        all.extend(struck_twice(whole).into_iter().map(|number| (fraction(number, 1), unit, Slip::Twice)));
    }
    for tens in [10, 100] {
        all.push((number * fraction(1, tens), unit, Slip::Point));
    }
    all.push((number * fraction(10, 1), unit, Slip::Point));
    all.push((-number.clone(), unit, Slip::Minus));
    all
}

/// The digits of a number read as a fraction without its stroke: 516 as 5/16, 6116 as 6 1/16.
fn split(whole: i64) -> Vec<BigRational> {
    let mut all = Vec::new();
    for below in [16_i64, 32, 64, 8, 4, 2] {
        let scale = if below > 9 { 100 } else { 10 };
        if whole % scale != below {
            continue;
        }
        let front = whole / scale;
        for digits in [10, 100] {
            let (units, above) = (front / digits, front % digits);
            if above > 0 && above < below && (above % 2 == 1 || below == 16) && (digits == 10 || above > 9) {
                let value = BigRational::new(BigInt::from(above), BigInt::from(below));
                all.push(value + BigRational::from_integer(BigInt::from(units)));
            }
        }
    }
    all
}

/// The number with two neighbouring digits in each other's place.
fn swapped(whole: i64) -> Vec<i64> {
    let digits: Vec<char> = whole.unsigned_abs().to_string().chars().collect();
    let swap = |at: usize| {
        let mut digits = digits.clone();
        digits.swap(at, at + 1);
        number(&digits, whole)
    };
    (0..digits.len().saturating_sub(1)).filter_map(swap).collect()
}

/// The number without one of two equal neighbouring digits.
fn struck_twice(whole: i64) -> Vec<i64> {
    let digits: Vec<char> = whole.unsigned_abs().to_string().chars().collect();
    let doubled = |at: &usize| digits.get(*at) == digits.get(at + 1);
    let without = |at: usize| {
        let mut digits = digits.clone();
        digits.remove(at);
        number(&digits, whole)
    };
    (0..digits.len().saturating_sub(1)).filter(doubled).filter_map(without).collect()
}

fn number(digits: &[char], like: i64) -> Option<i64> {
    let size: i64 = digits.iter().collect::<String>().parse().ok()?;
    Some(size * like.signum())
}
