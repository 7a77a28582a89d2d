use std::cmp::Ordering;

use super::bound::{Bound, Certainty, bounds};
use super::doubt::{against, misread};
use super::{AllowedLengths, Ground, Measurand, Reason, Surroundings, Verdict, Why, slip};
use crate::measure::Length;
use crate::rules::{Quantity, Rule, RuleUnit, keys};

/// Judges one value of a house by what is known around it.
pub fn judge(measurand: Measurand, value: Length, around: &Surroundings) -> Verdict {
    let doubt = against(measurand, value, around);
    // Two readings that were swapped are no slip of the keys.
    let meant = |why: &Why| match why.reason {
        Reason::SidesOrder | Reason::EdgesOrder => None,
        _ => slip::meant(measurand, value, around),
    };
    let doubt = doubt.or_else(|| Some((Certainty::Unlikely, misread(measurand, value, around)?)));
    match doubt {
        None => Verdict::Fine,
        Some((Certainty::Unlikely, why)) => Verdict::Unlikely { suggestion: meant(&why), why },
        Some((Certainty::Impossible, why)) => Verdict::Impossible {
            // A board that is not cut has no gap at all.
            allowed: if why.reason == Reason::NotCut {
                AllowedLengths::default()
            } else {
                allowed(measurand, around, &why)
            },
            suggestion: meant(&why),
            why,
        },
    }
}

/// Where all that is impossible ends. What no house has is said only where nothing nearer is known of that side.
fn allowed(measurand: Measurand, around: &Surroundings, why: &Why) -> AllowedLengths {
    let sure = || bounds(measurand, around).into_iter().filter(|bound| bound.weight == Certainty::Impossible);
    let tighter = |all: AllowedLengths, bound: Bound| AllowedLengths {
        least: all.least.max(bound.range.0),
        most: [all.most, bound.range.1].into_iter().flatten().min(),
    };
    let all = sure().fold(AllowedLengths::default(), tighter);
    if why.reason == Reason::Absurd {
        return all;
    }
    let by_house = sure().filter(|bound| bound.why.reason != Reason::Absurd).fold(AllowedLengths::default(), tighter);
    AllowedLengths { least: by_house.least.and(all.least), most: by_house.most.and(all.most) }
}

/// Judges a change of a rule.
pub fn judge_rule(rule: &Rule, value: Quantity) -> Verdict {
    let none = Quantity::new(0, 1, value.unit());
    let zero = none.is_some_and(|none| value == none);
    if rule.key == keys::HEAD_FLASHING_SLOPE && zero {
        let why = Why::with(Reason::NoFall, AllowedLengths::default(), Ground::Geometry);
        return Verdict::Impossible { why, allowed: AllowedLengths::default(), suggestion: None };
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
            ..Why::with(Reason::FarFromDefault, AllowedLengths::default(), Ground::Rule(rule.key))
        };
        return Verdict::Unlikely { why, suggestion: None };
    }
    Verdict::Fine
}
