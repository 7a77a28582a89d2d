use num_traits::Signed;

use crate::measure::Unit;
use crate::rules::{Quantity, Rule, RuleUnit};
use crate::views::{Code, Problem};

use super::ask::is_unprintable;
use super::context::Terms;
use super::error::{FormError, Result};

/// A value for a rule as it was typed: a length with its unit, else a number in the rule's own unit.
pub(crate) fn quantity(terms: &Terms<'_>, rule: &Rule, text: &str) -> Result<Quantity> {
    let own = rule.value.unit();
    if text.chars().any(is_unprintable) {
        return Err(Problem::new(Code::Range, "value", terms.phrase("screen-control", &[])).into());
    }
    if rule.value.length().is_some() {
        let (length, unit) = terms.typed("value", text)?;
        let (nm, unit) = match (unit, own) {
            (Unit::Inch | Unit::Foot, RuleUnit::Foot) => (Unit::Foot.nm(), RuleUnit::Foot),
            (Unit::Inch | Unit::Foot, _) => (Unit::Inch.nm(), RuleUnit::Inch),
            (_, RuleUnit::Metre) => (Unit::Metre.nm(), RuleUnit::Metre),
            (_, _) => (Unit::Millimetre.nm(), RuleUnit::Millimetre),
        };
        return Quantity::new(length.nm(), nm, unit).ok_or_else(|| refused(terms, rule, text));
    }
    let trimmed = text.trim();
    // Any unit that measures the same, by its sign: `mL` before `L`.
    let signs = |unit: &RuleUnit| [unit.sign(), unit.sign_in(terms.phrases.language())].map(|sign| (*unit, sign));
    let units = RuleUnit::ALL.iter().filter(|unit| own.measures_same(**unit)).flat_map(signs);
    let ending = units.filter(|(_, sign)| !sign.is_empty() && trimmed.ends_with(sign));
    let (unit, sign) = ending.max_by_key(|(_, sign)| sign.len()).unwrap_or((own, ""));
    let number = trimmed.strip_suffix(sign).unwrap_or(trimmed).trim_end();
    let number = terms.reader.number(number).ok().filter(|number| !number.is_negative());
    number.and_then(|number| Quantity::from_exact(&number, unit)).ok_or_else(|| refused(terms, rule, text))
}

fn refused(terms: &Terms<'_>, rule: &Rule, text: &str) -> FormError {
    let like = rule.value.text_in(terms.phrases.language());
    let text = terms.phrase("rules-value", &[("text", text.trim().into()), ("like", like.into())]);
    Problem::new(Code::Range, "value", text).into()
}
