use std::cmp::Ordering;
use std::collections::BTreeMap;

use super::table::{ORDERED, RULES};
use super::{Family, Quantity, Rule};
use crate::measure::Length;

/// A default that somebody replaced.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RuleChange {
    /// The value that applies instead.
    pub value: Quantity,
    /// Who changed it.
    pub by: String,
    /// When, in milliseconds since the start of 1970, UTC.
    pub at_ms: i64,
    /// Why: the maker's instructions, the local code, the inspector's word.
    pub reason: String,
}

/// What is wrong with a rule that was asked for or changed.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RuleError {
    /// There is no such rule.
    #[error("there is no rule {key:?}")]
    Unknown {
        /// The key that was asked for.
        key: String,
    },
    /// The rule holds something else.
    #[error("rule {key:?} is not {expected}")]
    Kind {
        /// The rule's key.
        key: String,
        /// What was asked for.
        expected: &'static str,
    },
    /// The new value measures something else than the default.
    #[error("rule {key:?} needs a value like {like}, not {found}")]
    Unit {
        /// The rule's key.
        key: String,
        /// The default, with its unit.
        like: String,
        /// The refused value.
        found: String,
    },
    /// The new value is out of bounds.
    #[error("rule {key:?} takes {least} to {most}, not {found}")]
    Range {
        /// The rule's key.
        key: String,
        /// The least value allowed.
        least: String,
        /// The greatest value allowed.
        most: String,
        /// The refused value.
        found: String,
    },
    /// The new value stands the wrong way round to another rule.
    #[error("rule {lower:?} may not be over rule {upper:?}")]
    Order {
        /// The rule that must be the lower one.
        lower: &'static str,
        /// The rule that must be the upper one.
        upper: &'static str,
    },
    /// A change needs a reason.
    #[error("a change of rule {key:?} needs a reason")]
    Reason {
        /// The rule's key.
        key: String,
    },
    /// A change needs a signer.
    #[error("a change of rule {key:?} needs the name of who makes it")]
    Signer {
        /// The rule's key.
        key: String,
    },
}

impl RuleError {
    /// The stable code of the fault.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Unknown { .. } => "rule-unknown",
            Self::Kind { .. } => "rule-kind",
            Self::Unit { .. } => "rule-unit",
            Self::Range { .. } => "rule-range",
            Self::Order { .. } => "rule-order",
            Self::Reason { .. } => "rule-reason",
            Self::Signer { .. } => "rule-signer",
        }
    }

    /// The fault in words, in the user's language.
    pub fn text(&self, phrases: &crate::phrases::Phrases) -> String {
        match self {
            Self::Unknown { key } => phrases.phrase("error-rule-unknown", &[("rule", key.into())]),
            Self::Kind { key, .. } => phrases.phrase("error-rule-kind", &[("rule", key.into())]),
            Self::Unit { key, like, found } => phrases
                .phrase("error-rule-unit", &[("rule", key.into()), ("like", like.into()), ("found", found.into())]),
            Self::Range { key, least, most, found } => phrases.phrase(
                "error-rule-range",
                &[("rule", key.into()), ("least", least.into()), ("most", most.into()), ("found", found.into())],
            ),
            Self::Order { lower, upper } => {
                phrases.phrase("error-rule-order", &[("lower", (*lower).into()), ("upper", (*upper).into())])
            }
            Self::Reason { key } => phrases.phrase("error-rule-reason", &[("rule", key.into())]),
            Self::Signer { key } => phrases.phrase("error-rule-signer", &[("rule", key.into())]),
        }
    }
}

/// The rules of a job: the defaults of one family, and what was changed.
///
/// A key is looked up in the family first, then in common practice, in the United States and at last in any other, so
/// that every working
/// rule has a value under every family, always with its own source.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RuleSet {
    family: Family,
    changes: BTreeMap<&'static str, RuleChange>,
}

impl Default for RuleSet {
    fn default() -> Self {
        Self::standard()
    }
}

impl RuleSet {
    /// The defaults of the United States with common practice, nothing changed.
    pub fn standard() -> Self {
        Self::of(Family::UnitedStates)
    }

    /// The defaults of a family, nothing changed.
    pub fn of(family: Family) -> Self {
        Self { family, changes: BTreeMap::new() }
    }

    /// The family whose defaults apply first.
    pub fn family(&self) -> Family {
        self.family
    }

    /// The rule that stands under `key`.
    ///
    /// # Errors
    /// [`RuleError::Unknown`] where there is none.
    pub fn rule(&self, key: &str) -> Result<&'static Rule, RuleError> {
        [self.family, Family::Common, Family::UnitedStates]
            .into_iter()
            .find_map(|family| find(family, key))
            .or_else(|| RULES.iter().find(|rule| rule.key == key))
            .ok_or_else(|| RuleError::Unknown { key: key.to_owned() })
    }

    /// The rules that can apply, each key once, in the order of the table.
    pub fn rules(&self) -> impl Iterator<Item = &'static Rule> + '_ {
        RULES.iter().filter(|rule| self.rule(rule.key).is_ok_and(|found| found.family == rule.family))
    }

    /// The value that applies: the changed one, or the default.
    ///
    /// # Errors
    /// [`RuleError::Unknown`].
    pub fn get(&self, key: &str) -> Result<Quantity, RuleError> {
        let rule = self.rule(key)?;
        Ok(self.changes.get(rule.key).map_or(rule.value, |change| change.value))
    }

    /// The length that applies.
    ///
    /// # Errors
    /// [`RuleError::Unknown`], or [`RuleError::Kind`] for a rule that is not a length.
    pub fn get_length(&self, key: &str) -> Result<Length, RuleError> {
        self.get(key)?.length().ok_or_else(|| RuleError::Kind { key: key.to_owned(), expected: "a length" })
    }

    /// The length that applies where a country's own rule must not be lent to another: none where the rule stands only
    /// in another family and nobody changed it.
    ///
    /// # Errors
    /// [`RuleError::Unknown`], or [`RuleError::Kind`] for a rule that is not a length.
    pub fn get_own_length(&self, key: &str) -> Result<Option<Length>, RuleError> {
        if self.is_own(key)? { self.get_length(key).map(Some) } else { Ok(None) }
    }

    /// Whether a rule is the house's own: of its country, of common practice, or changed by somebody.
    ///
    /// # Errors
    /// [`RuleError::Unknown`].
    pub fn is_own(&self, key: &str) -> Result<bool, RuleError> {
        let family = self.rule(key)?.family;
        Ok(family == self.family || family == Family::Common || self.changes.contains_key(key))
    }

    /// The share that applies, as a fraction of one.
    ///
    /// # Errors
    /// [`RuleError::Unknown`], or [`RuleError::Kind`] for a rule that is not a share.
    pub fn get_share(&self, key: &str) -> Result<(i64, i64), RuleError> {
        self.get(key)?.share().ok_or_else(|| RuleError::Kind { key: key.to_owned(), expected: "a share" })
    }

    /// The count, year or whole number of units that applies.
    ///
    /// # Errors
    /// [`RuleError::Unknown`], or [`RuleError::Kind`] for a value that is not whole.
    pub fn get_whole(&self, key: &str) -> Result<i64, RuleError> {
        self.get(key)?.whole().ok_or_else(|| RuleError::Kind { key: key.to_owned(), expected: "a whole number" })
    }

    /// The change of a rule, where there is one.
    pub fn change(&self, key: &str) -> Option<&RuleChange> {
        self.changes.get(key)
    }

    /// Every change, by key.
    pub fn changes(&self) -> &BTreeMap<&'static str, RuleChange> {
        &self.changes
    }

    /// Whether another value than the default applies.
    pub fn differs_from_default(&self, key: &str) -> bool {
        match (self.rule(key), self.changes.get(key)) {
            (Ok(rule), Some(change)) => change.value != rule.value,
            _ => false,
        }
    }

    /// Replaces a default. The set is left as it was where this fails.
    ///
    /// # Errors
    /// Any of [`RuleError`]: an unknown key, a value of another kind or out of bounds, a least over its most, no reason
    /// or no signer.
    pub fn set(&mut self, key: &str, change: RuleChange) -> Result<(), RuleError> {
        let rule = self.rule(key)?;
        let owned = || key.to_owned();
        if change.reason.trim().is_empty() {
            return Err(RuleError::Reason { key: owned() });
        }
        if change.by.trim().is_empty() {
            return Err(RuleError::Signer { key: owned() });
        }
        *self = self.with(rule, change)?;
        Ok(())
    }

    /// The rules as they would be with another value of one of them, whoever says so and why.
    ///
    /// # Errors
    /// As [`RuleSet::set`], but for the reason and who gives it.
    pub fn with_value(&self, key: &str, value: Quantity) -> Result<Self, RuleError> {
        self.with(self.rule(key)?, RuleChange { value, by: String::new(), at_ms: 0, reason: String::new() })
    }

    fn with(&self, rule: &Rule, change: RuleChange) -> Result<Self, RuleError> {
        let owned = || rule.key.to_owned();
        let unit = || RuleError::Unit { key: owned(), like: rule.value.text(), found: change.value.text() };
        let over_least = change.value.compare(rule.least).ok_or_else(unit)? != Ordering::Less;
        let under_most = change.value.compare(rule.most).ok_or_else(unit)? != Ordering::Greater;
        if !over_least || !under_most {
            return Err(RuleError::Range {
                key: owned(),
                least: rule.least.text(),
                most: rule.most.text(),
                found: change.value.text(),
            });
        }
        let mut changed = self.clone();
        changed.changes.insert(rule.key, change);
        changed.check_order(rule.key)?;
        Ok(changed)
    }

    /// Back to the default; whether there was a change.
    ///
    /// # Errors
    /// [`RuleError::Order`] where the default would stand the wrong way round to another changed rule.
    pub fn back_to_default(&mut self, key: &str) -> Result<bool, RuleError> {
        let mut changed = self.clone();
        let Some((key, _)) = changed.changes.remove_entry(key) else { return Ok(false) };
        changed.check_order(key)?;
        *self = changed;
        Ok(true)
    }

    /// Whether the pairs that `key` belongs to stand the right way round.
    fn check_order(&self, key: &str) -> Result<(), RuleError> {
        for (lower, upper) in ORDERED.iter().copied().filter(|(lower, upper)| *lower == key || *upper == key) {
            if self.get(lower)?.compare(self.get(upper)?) == Some(Ordering::Greater) {
                return Err(RuleError::Order { lower, upper });
            }
        }
        Ok(())
    }
}

fn find(family: Family, key: &str) -> Option<&'static Rule> {
    RULES.iter().find(|rule| rule.family == family && rule.key == key)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::phrases::{Language, Phrases};
    use crate::rules::{RuleUnit, Status, keys};
    use proptest::prelude::*;
    use std::collections::BTreeSet;

    fn change(n: i64, d: i64, unit: RuleUnit) -> RuleChange {
        RuleChange {
            value: Quantity::new(n, d, unit).unwrap(),
            by: "Ana".to_owned(),
            at_ms: 1_700_000_000_000,
            reason: "the maker prints it".to_owned(),
        }
    }

    #[test]
    fn a_change_replaces_the_default_until_it_is_taken_back() {
        let mut rules = RuleSet::standard();
        assert_eq!(rules.get_length(keys::LAP_LEAST).unwrap(), Length::from_nm(31_750_000));
        rules.set(keys::LAP_LEAST, change(30, 1, RuleUnit::Millimetre)).unwrap();
        assert_eq!(rules.get_length(keys::LAP_LEAST).unwrap(), Length::from_mm(30));
        assert!(rules.differs_from_default(keys::LAP_LEAST));
        assert_eq!(rules.change(keys::LAP_LEAST).unwrap().by, "Ana");
        assert_eq!(rules.back_to_default(keys::LAP_LEAST), Ok(true));
        assert_eq!(rules, RuleSet::standard());
        assert_eq!(rules.back_to_default(keys::LAP_LEAST), Ok(false));
    }

    #[test]
    fn the_same_value_in_another_unit_does_not_differ() {
        let mut rules = RuleSet::standard();
        rules.set(keys::LAP_LEAST, change(3175, 100, RuleUnit::Millimetre)).unwrap();
        assert!(!rules.differs_from_default(keys::LAP_LEAST));
        assert!(rules.change(keys::LAP_LEAST).is_some());
    }

    /// By the names of the rules alone, so that no pair is forgotten: no least is ever set over its most, nor a most under
    /// its least.
    #[test]
    fn a_least_never_goes_over_its_most() {
        let mut pairs = BTreeSet::new();
        for rule in RULES.iter().filter(|rule| !rule.is_fixed()) {
            let Some(stem) = rule.key.strip_suffix(".least") else { continue };
            if let Some(most) = RULES.iter().find(|other| other.key.strip_suffix(".most") == Some(stem)) {
                pairs.insert((rule.key, most.key));
            }
        }
        assert!(pairs.len() >= 5, "{pairs:?}");
        for family in Family::ALL {
            for (least, most) in &pairs {
                let rules = RuleSet::of(*family);
                let (low, high) = (rules.get(least).unwrap(), rules.get(most).unwrap());
                let set = |key: &str, value: Quantity| {
                    rules.clone().set(key, RuleChange { value, ..change(1, 1, RuleUnit::Inch) })
                };
                // Another pair may speak against it, but not this one.
                let together = |set: Result<(), RuleError>| match set {
                    Err(RuleError::Order { lower, upper }) => (lower, upper) != (*least, *most),
                    other => other.is_ok(),
                };
                // A thousandth beyond the other one, in its own unit.
                let beyond = |quantity: Quantity, by: i64| {
                    let (n, d) = quantity.fraction();
                    Quantity::new(1000 * n + by * d, 1000 * d, quantity.unit()).unwrap()
                };
                assert!(set(least, beyond(high, 1)).is_err(), "{least} over {most}");
                assert!(set(most, beyond(low, -1)).is_err(), "{most} under {least}");
                assert!(together(set(least, high)) && together(set(most, low)), "{least} as {most}");
            }
        }
    }

    #[test]
    fn a_bad_change_is_refused_and_changes_nothing() {
        let mut rules = RuleSet::standard();
        let good = change(3, 2, RuleUnit::Inch);
        let code = |rules: &mut RuleSet, key: &str, change: RuleChange| rules.set(key, change).unwrap_err().code();
        assert_eq!(code(&mut rules, "lap.most", good.clone()), "rule-unknown");
        assert_eq!(code(&mut rules, keys::LAP_LEAST, RuleChange { reason: " ".into(), ..good.clone() }), "rule-reason");
        assert_eq!(code(&mut rules, keys::LAP_LEAST, RuleChange { by: String::new(), ..good }), "rule-signer");
        assert_eq!(code(&mut rules, keys::LAP_LEAST, change(30, 1, RuleUnit::Degree)), "rule-unit");
        assert_eq!(code(&mut rules, keys::LAP_LEAST, change(0, 1, RuleUnit::Inch)), "rule-range");
        assert_eq!(code(&mut rules, keys::LAP_LEAST, change(500, 1, RuleUnit::Millimetre)), "rule-range");
        assert_eq!(code(&mut rules, keys::GAP_BLOCK_LEAST, change(3, 16, RuleUnit::Inch)), "rule-order");
        assert_eq!(code(&mut rules, "unit.inch", change(25, 1, RuleUnit::Millimetre)), "rule-range");
        assert_eq!(rules, RuleSet::standard());
    }

    #[test]
    fn going_back_keeps_least_under_most() {
        let mut rules = RuleSet::standard();
        rules.set(keys::GAP_BLOCK_MOST, change(1, 4, RuleUnit::Inch)).unwrap();
        rules.set(keys::GAP_BLOCK_LEAST, change(3, 16, RuleUnit::Inch)).unwrap();
        assert_eq!(rules.back_to_default(keys::GAP_BLOCK_MOST).unwrap_err().code(), "rule-order");
        assert!(rules.change(keys::GAP_BLOCK_MOST).is_some());
        assert_eq!(rules.back_to_default(keys::GAP_BLOCK_LEAST), Ok(true));
        assert_eq!(rules.back_to_default(keys::GAP_BLOCK_MOST), Ok(true));
    }

    #[test]
    fn a_family_falls_back_to_common_practice_and_the_united_states() {
        let australia = RuleSet::of(Family::Australia);
        assert_eq!(australia.get(keys::LAP_LEAST).unwrap().text(), "25 mm");
        assert_eq!(australia.get(keys::GAP_TRIM).unwrap().text(), "1/8 in");
        assert_eq!(australia.rule("board.height.most").unwrap().family, Family::UnitedStates);
        assert!(RuleSet::of(Family::NewZealand).rule(keys::LAP_LEAST).unwrap().not_verified());
        let keys: Vec<_> = australia.rules().map(|rule| rule.key).collect();
        assert_eq!(keys.len(), keys.iter().collect::<BTreeSet<_>>().len());
    }

    #[test]
    fn a_countrys_own_rule_is_not_lent() {
        let own = |family| RuleSet::of(family).get_own_length(keys::FLASHING_BEYOND_OPENING).unwrap();
        assert_eq!(own(Family::Australia), Some(Length::from_mm(110)));
        assert_eq!(own(Family::UnitedStates), None);
        let mut changed = RuleSet::standard();
        changed.set(keys::FLASHING_BEYOND_OPENING, change(4, 1, RuleUnit::Inch)).unwrap();
        assert_eq!(changed.get_own_length(keys::FLASHING_BEYOND_OPENING), Ok(Some(Length::from_inches(4))));
        assert_eq!(RuleSet::of(Family::Canada).get_own_length(keys::GAP_TRIM), Ok(Some(Length::from_inches_64(0, 8))));
    }

    #[test]
    fn every_rule_is_sound() {
        let mut seen = BTreeSet::new();
        for rule in RULES {
            assert!(seen.insert((rule.family, rule.key)), "{} stands twice", rule.key);
            assert!(rule.key.bytes().all(|b| b.is_ascii_lowercase() || b == b'.' || b == b'-'), "{}", rule.key);
            assert_ne!(rule.value.compare(rule.least), Some(Ordering::Less), "{}", rule.key);
            assert_ne!(rule.value.compare(rule.most), Some(Ordering::Greater), "{}", rule.key);
            assert!(rule.value.compare(rule.least).is_some() && rule.value.compare(rule.most).is_some());
            let sourced = matches!(rule.status, Status::Read | Status::Quoted | Status::Memory);
            assert_eq!(sourced, !rule.source.is_empty(), "{}: a source, or none", rule.key);
            let recalled = rule.edition_recalled;
            assert!(
                rule.is_published() || (rule.edition.is_empty() && !recalled),
                "{}: an edition of nothing",
                rule.key
            );
            assert!(!recalled || !rule.edition.is_empty(), "{}: an edition to recall", rule.key);
            for language in Language::ALL {
                let phrases = Phrases::for_language(*language);
                assert!(phrases.has(&rule.name_phrase()), "no phrase {}", rule.name_phrase());
                assert!(phrases.has(rule.status.phrase()) && phrases.has(rule.family.phrase()));
            }
        }
        for family in Family::ALL {
            let rules = RuleSet::of(*family);
            for (lower, upper) in ORDERED {
                let order = rules.get(lower).unwrap().compare(rules.get(upper).unwrap());
                assert!(matches!(order, Some(Ordering::Less | Ordering::Equal)), "{lower} {upper}");
            }
        }
    }

    #[test]
    fn every_working_rule_is_there_in_every_family() {
        for family in Family::ALL {
            let rules = RuleSet::of(*family);
            for key in keys::LENGTHS {
                assert!(rules.get_length(key).is_ok(), "{key} {family:?}");
            }
            for key in keys::SHARES {
                assert!(rules.get_share(key).is_ok(), "{key} {family:?}");
            }
            for key in keys::WHOLES {
                assert!(rules.get_whole(key).is_ok(), "{key} {family:?}");
            }
            for key in keys::VOLUMES {
                assert!(rules.get(key).is_ok(), "{key} {family:?}");
            }
        }
    }

    #[test]
    fn faults_are_said_in_both_languages() {
        let mut rules = RuleSet::standard();
        let fault = rules.set(keys::LAP_LEAST, change(9, 1, RuleUnit::Foot)).unwrap_err();
        let english = fault.text(Phrases::for_language(Language::English));
        let spanish = fault.text(Phrases::for_language(Language::Spanish));
        assert!(english.contains("9 ft") && spanish.contains("9 ft") && english != spanish, "{english} {spanish}");
    }

    proptest! {
        #[test]
        fn what_is_taken_lies_within_the_bounds(at in 0..RULES.len(), n in -1_000_i64..100_000, d in 1_i64..1_000) {
            let rule = RULES[at];
            let mut rules = RuleSet::of(rule.family);
            let value = Quantity::new(n, d, rule.value.unit()).unwrap();
            let taken = rules.set(rule.key, RuleChange { value, by: "A".into(), at_ms: 0, reason: "b".into() });
            let inside = value.compare(rule.least) != Some(Ordering::Less)
                && value.compare(rule.most) != Some(Ordering::Greater);
            match taken {
                Ok(()) => { prop_assert!(inside); prop_assert_eq!(rules.get(rule.key).unwrap(), value); }
                Err(RuleError::Order { .. }) => prop_assert!(inside),
                Err(_) => { prop_assert!(!inside); prop_assert!(rules.changes().is_empty()); }
            }
        }
    }
}
