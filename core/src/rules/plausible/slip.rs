//! How a value that cannot be, or hardly, may have come from one that can.

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Signed, ToPrimitive};

use super::doubt::{fits_as_written, is_on_tape};
use super::{Measurand, Slip, Suggestion, Surroundings, TypedForm};
use crate::measure::{Exact, Length, Unit};

/// The first slip that turns a value into one that nothing speaks against; where something is planned, into one near it.
pub(super) fn meant(measurand: Measurand, value: Length, around: &Surroundings) -> Option<Suggestion> {
    let unit = around.unit.unwrap_or(Unit::Inch);
    let number = BigRational::new(BigInt::from(value.nm()), BigInt::from(unit.nm()));
    let near = |meant: Length| {
        let off = |planned: Length| (meant - planned).abs();
        around.planned.is_none_or(|planned| off(planned) <= around.tolerance(measurand, planned))
    };
    if let Some(meant) = around.written.with_blank {
        return Some(Suggestion { meant, slip: Slip::Blank });
    }
    let to_length = |(number, unit, slip): (BigRational, Unit, Slip)| {
        let meant = Exact::from_units(&number, unit).to_length()?;
        let written = Surroundings { unit: Some(unit), written: TypedForm::default(), ..around.clone() };
        // Nobody reads a foot in tenths.
        let is_read = unit != Unit::Foot || is_on_tape(meant);
        (is_read && meant != value && near(meant) && fits_as_written(measurand, meant, &written))
            .then_some(Suggestion { meant, slip })
    };
    slips(measurand, &number, unit).into_iter().find_map(to_length)
}

/// The numbers that may have been meant, the commonest slip first, each with its unit.
fn slips(measurand: Measurand, number: &BigRational, unit: Unit) -> Vec<(BigRational, Unit, Slip)> {
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
    // Nobody reads a quarter of a foot, nor one of a meter.
    let small = |other: Unit| *number < fraction(1, 1) && matches!(other, Unit::Foot | Unit::Metre);
    let mut others = units
        .iter()
        .filter(|other| **other != unit && !small(**other))
        .map(|other| (number.clone(), *other, Slip::Unit(*other)));
    let on_a_tape = whole.filter(|whole| *whole > 0 && unit == Unit::Inch);
    if let Some(whole) = on_a_tape {
        all.extend(others.next());
        let odd = |below: &i64| whole < *below && whole % 2 == 1;
        // Only a gap is read finer than a sixteenth.
        let marks: &[i64] = if measurand == Measurand::Gap { &[16, 32, 8, 4, 2, 64] } else { &[16, 8, 4, 2] };
        let strokes = marks.iter().copied().filter(odd);
        all.extend(strokes.map(|below| (fraction(whole, below), unit, Slip::Stroke)));
        all.extend(split(whole).into_iter().map(|number| (number, unit, Slip::Stroke)));
    }
    // 34.12 for 34 1/2: the point is where the blank was, and the stroke is lost.
    if unit == Unit::Inch {
        all.extend(stroke_behind_point(number).map(|number| (number, unit, Slip::Stroke)));
    }
    all.extend(others);
    // 6/16 in is read off a tape, too, though it is 3/8 in.
    let even = on_a_tape.filter(|whole| *whole < 16 && whole % 2 == 0);
    all.extend(even.map(|whole| (fraction(whole, 16), unit, Slip::Stroke)));
    if let Some(whole) = whole {
        all.extend(swapped(whole).into_iter().map(|number| (fraction(number, 1), unit, Slip::Digits)));
        all.extend(struck_twice(whole).into_iter().map(|number| (fraction(number, 1), unit, Slip::Twice)));
    }
    // What is read off a tape in inches has a stroke where it is no whole number, and no point to lose.
    if whole.is_some() || unit != Unit::Inch {
        let points = [fraction(1, 10), fraction(1, 100), fraction(10, 1)];
        all.extend(points.map(|tens| (number * tens, unit, Slip::Point)));
    }
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

/// The decimals of a number read as a fraction without its stroke: 34.12 as 34 1/2, 8.516 as 8 5/16.
fn stroke_behind_point(number: &BigRational) -> Option<BigRational> {
    let (whole, part) = (number.trunc(), number.fract());
    let decimals = |tens: u32| {
        let digits = &part * BigRational::from_integer(BigInt::from(10_i64.pow(tens)));
        (digits.is_integer() && digits.is_positive()).then(|| digits.to_integer().to_i64()).flatten()
    };
    let digits = (2..=4).find_map(decimals)?;
    let below_one = |part: &BigRational| *part < BigRational::from_integer(BigInt::from(1));
    split(digits).into_iter().find(below_one).map(|part| whole + part)
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
