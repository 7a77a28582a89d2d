//! Whether what somebody typed can be: a question where a value is unlikely, an error where it is impossible.
//!
//! Every quantity of a house has the range that is possible at all and the one that is usual (jobsite habit: common
//! practice, no source), the bounds of the rules of the house, and those that follow from its other values. A value outside
//! is explained with where the bound comes from, and with what was probably meant: a number of feet typed for inches, a
//! fraction without its stroke, two digits that changed places. Nothing here knows a book or a screen.

mod around;
mod bound;
mod measurand;
mod place;
mod slip;
#[cfg(test)]
mod tests;
mod verdict;

pub use around::Around;
pub use measurand::Measurand;
pub use place::{Placed, judge_name, judge_place};
pub use slip::{Slip, Suggestion};
pub use verdict::{Allowed, Ground, Reason, Verdict, Why};

use std::cmp::Ordering;

use self::bound::{Bound, Weight, bounds};
use super::{Quantity, Rule, RuleUnit, keys};
use crate::measure::{Length, Unit};

/// Judges one value of a house by what is known around it.
pub fn judge(measurand: Measurand, value: Length, around: &Around) -> Verdict {
    match against(measurand, value, around) {
        None => Verdict::Fine,
        Some((Weight::Unlikely, why)) => Verdict::Unlikely { why, suggestion: slip::meant(measurand, value, around) },
        Some((Weight::Impossible, why)) => Verdict::Impossible {
            why,
            allowed: allowed(measurand, around),
            suggestion: slip::meant(measurand, value, around),
        },
    }
}

/// Whether nothing speaks against a value.
fn fits(measurand: Measurand, value: Length, around: &Around) -> bool {
    against(measurand, value, around).is_none()
}

/// What speaks loudest against a value.
fn against(measurand: Measurand, value: Length, around: &Around) -> Option<(Weight, Why)> {
    let (mut impossible, mut unlikely): (Vec<Bound>, Vec<Bound>) =
        bounds(measurand, around).into_iter().partition(|bound| bound.weight == Weight::Impossible);
    impossible.retain(|bound| !bound.allows(value));
    if let Some(bound) = impossible.into_iter().next() {
        return Some((Weight::Impossible, bound.why));
    }
    if measurand == Measurand::Gap {
        if around.is_cut == Some(false) {
            return Some((Weight::Impossible, Why::with(Reason::NotCut, Allowed::default(), Ground::Geometry)));
        }
        if let Some(told) = around.told_gap {
            return Some((Weight::Unlikely, Why::geometry(Reason::ToldBefore, told)));
        }
    }
    if measurand == Measurand::StepRise && value == Length::ZERO {
        return Some((Weight::Impossible, Why::with(Reason::OnWall, Allowed::default(), Ground::Geometry)));
    }
    unlikely.retain(|bound| !bound.allows(value));
    let reads_like_feet = || reads_like_feet(measurand, value, around).map(|why| (Weight::Unlikely, why));
    unlikely.into_iter().next().map(|bound| (Weight::Unlikely, bound.why)).or_else(reads_like_feet)
}

/// A whole number of inches, so small that it reads like one of feet, where nothing planned says that it is right.
fn reads_like_feet(measurand: Measurand, value: Length, around: &Around) -> Option<Why> {
    let typed_in = around.unit.unwrap_or(Unit::Inch);
    let whole = value.nm() % Length::NM_PER_INCH == 0;
    let small = value.is_positive() && value <= Length::from_inches(measurand.habit().feet_up_to);
    let why = || Why::habit(Reason::Feet, (Some(value), value.checked_mul(12)));
    (typed_in == Unit::Inch && whole && small && around.planned.is_none()).then(why)
}

/// Where all that is impossible ends.
fn allowed(measurand: Measurand, around: &Around) -> Allowed {
    let sure = bounds(measurand, around).into_iter().filter(|bound| bound.weight == Weight::Impossible);
    let tighter = |all: Allowed, bound: Bound| Allowed {
        least: all.least.max(bound.range.0),
        most: [all.most, bound.range.1].into_iter().flatten().min(),
    };
    sure.fold(Allowed::default(), tighter)
}

/// Judges a change of a rule.
pub fn judge_rule(rule: &Rule, value: Quantity) -> Verdict {
    let none = Quantity::new(0, 1, value.unit());
    let zero = none.is_some_and(|none| value == none);
    if rule.key == keys::HEAD_FLASHING_SLOPE && zero {
        let why = Why::with(Reason::NoFall, Allowed::default(), Ground::Geometry);
        return Verdict::Impossible { why, allowed: Allowed::default(), suggestion: None };
    }
    let (numerator, denominator) = rule.value.fraction();
    // What is nothing, a year or a share of everything by default has no half and no double.
    if numerator == 0 || rule.value.unit() == RuleUnit::Year {
        return Verdict::Fine;
    }
    let times =
        |n: i64, d: i64| Quantity::new(numerator.checked_mul(n)?, denominator.checked_mul(d)?, rule.value.unit());
    let far = |bound: Option<Quantity>, order: Ordering| {
        bound.and_then(|bound| value.compare(bound)).is_some_and(|found| found == order)
    };
    if far(times(1, 2), Ordering::Less) || far(times(2, 1), Ordering::Greater) {
        let why = Why {
            name: rule.value.text(),
            ..Why::with(Reason::FarFromDefault, Allowed::default(), Ground::Rule(rule.key))
        };
        return Verdict::Unlikely { why, suggestion: None };
    }
    Verdict::Fine
}
