//! What speaks against a value.

use super::bound::{Bound, Certainty, bounds};
use super::{AllowedLengths, Ground, Measurand, Reason, Surroundings, Why};
use crate::measure::{Length, Unit};

/// Whether nothing speaks against a value.
fn fits(measurand: Measurand, value: Length, around: &Surroundings) -> bool {
    against(measurand, value, around).is_none()
}

/// What speaks loudest against a value.
pub(super) fn against(measurand: Measurand, value: Length, around: &Surroundings) -> Option<(Certainty, Why)> {
    if measurand == Measurand::Gap && around.is_cut == Some(false) {
        return Some((Certainty::Impossible, Why::with(Reason::NotCut, AllowedLengths::default(), Ground::Geometry)));
    }
    let (mut impossible, mut unlikely): (Vec<Bound>, Vec<Bound>) =
        bounds(measurand, around).into_iter().partition(|bound| bound.weight == Certainty::Impossible);
    impossible.retain(|bound| !bound.allows(value));
    if let Some(bound) = impossible.into_iter().next() {
        return Some((Certainty::Impossible, bound.why));
    }
    if measurand == Measurand::StepRise && value == Length::ZERO {
        return Some((Certainty::Impossible, Why::with(Reason::OnWall, AllowedLengths::default(), Ground::Geometry)));
    }
    unlikely.retain(|bound| !bound.allows(value));
    if around.written.with_blank.is_some() {
        return Some((Certainty::Unlikely, Why::with(Reason::OverOne, AllowedLengths::default(), Ground::Geometry)));
    }
    let reads_like_feet = || reads_like_feet(measurand, value, around).map(|why| (Certainty::Unlikely, why));
    unlikely.into_iter().next().map(|bound| (Certainty::Unlikely, bound.why)).or_else(reads_like_feet)
}

/// A value that can be, and is written as nobody writes it here: between the marks of a tape, or in the units of another
/// tape where the number would be right on this one.
pub(super) fn misread(measurand: Measurand, value: Length, around: &Surroundings) -> Option<Why> {
    let metric = |unit: Unit| !matches!(unit, Unit::Inch | Unit::Foot);
    let unit = around.unit?;
    if unit == Unit::Inch && !is_on_tape(value) {
        return Some(Why::habit(Reason::OffTape, (None, None)));
    }
    let others = around.house_unit.filter(|house| metric(*house) != metric(unit))?;
    let (own, other) = if metric(others) { (Unit::Inch, Unit::Millimetre) } else { (Unit::Millimetre, Unit::Inch) };
    let read_there = value.scaled(other.nm(), own.nm())?;
    let fits = unit == own && around.planned.is_none() && read_there != value && fits(measurand, read_there, around);
    fits.then(|| Why::geometry(Reason::OtherUnit, read_there))
}

/// Whether nothing speaks against a value as it is written, in the unit that `around` says.
pub(super) fn fits_as_written(measurand: Measurand, value: Length, around: &Surroundings) -> bool {
    fits(measurand, value, around) && misread(measurand, value, around).is_none()
}

/// Whether a tape in inches has a mark there: none is finer than a 64th.
pub(super) fn is_on_tape(value: Length) -> bool {
    value.nm() % Length::from_inches_64(0, 1).nm() == 0
}

/// A whole number of inches, or one with a point, so small that it reads like one of feet, where nothing planned says that it
/// is right.
fn reads_like_feet(measurand: Measurand, value: Length, around: &Surroundings) -> Option<Why> {
    let typed_in = around.unit.unwrap_or(Unit::Inch);
    let whole = value.nm() % Length::NM_PER_INCH == 0;
    let small = value.is_positive() && value <= Length::from_inches(measurand.habit().feet_up_to);
    let why = || Why::habit(Reason::Feet, (Some(value), value.checked_mul(12)));
    (typed_in == Unit::Inch && (whole || around.written.has_point) && small && around.planned.is_none()).then(why)
}
