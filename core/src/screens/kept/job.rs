use crate::measure::Length;
use crate::rules::{Change, Family, Quantity, RuleSet, RuleUnit};
use crate::screens::context::Terms;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{Id, Store};

use super::Facts;
use super::facts::first;

/// A house to be clad, its boards and its rules.
pub(crate) struct Job {
    /// What the book holds of it.
    pub(crate) facts: Facts,
    /// Its rules with what was changed.
    pub(crate) rules: RuleSet,
}

impl Job {
    /// The job of an id.
    pub(crate) fn of(store: &Store, terms: &Terms<'_>, id: Id) -> Kept<Self> {
        let facts = Facts::of(store, terms, id, kinds::JOB)?;
        let family = facts.text("rules").and_then(Family::from_code).unwrap_or(Family::UnitedStates);
        let mut rules = RuleSet::of(family);
        for change in Facts::children(store, id, kinds::RULE)? {
            if let Some((key, change)) = kept_change(&change) {
                // A rule that a later program dropped, or whose bounds it narrowed, falls back to the default.
                let _ = rules.set(&key, change);
            }
        }
        Ok(Self { facts, rules })
    }

    /// Its id.
    pub(crate) fn id(&self) -> Id {
        self.facts.id()
    }

    /// What the crew calls it.
    pub(crate) fn name(&self) -> &str {
        self.facts.text("name").unwrap_or_default()
    }

    /// Whether it is out of the way.
    pub(crate) fn archived(&self) -> bool {
        self.facts.text("archived") == Some("yes")
    }

    /// Board height.
    pub(crate) fn board_height(&self, terms: &Terms<'_>) -> Kept<Length> {
        self.facts.need(terms, "board-height", "ask-board-height")
    }

    /// Board thickness: answered, else the rules' own.
    pub(crate) fn board_thickness(&self) -> Kept<Length> {
        self.length_or_rule("board-thickness", crate::rules::keys::BOARD_THICKNESS)
    }

    /// The least lap: answered, else the rules' own.
    pub(crate) fn lap(&self) -> Kept<Length> {
        self.length_or_rule("lap", crate::rules::keys::LAP_LEAST)
    }

    /// How far the nail line lies below the top edge: answered, else the least of the rules.
    pub(crate) fn nail_line(&self) -> Kept<Length> {
        self.length_or_rule("nail-line", crate::rules::keys::NAIL_LINE_LEAST)
    }

    fn length_or_rule(&self, field: &str, key: &str) -> Kept<Length> {
        match self.facts.length(field) {
            Some(length) => Ok(length),
            None => Ok(self.rules.get_length(key)?),
        }
    }

    /// The lengths of the stock with how many there are of each, in their order; `None` is as many as are wanted.
    pub(crate) fn stock(&self, store: &Store) -> Kept<Vec<(Length, Option<i64>)>> {
        let stock = Facts::children(store, self.id(), kinds::STOCK)?;
        Ok(stock.iter().filter_map(|facts| Some((facts.length("length")?, facts.whole("count")))).collect())
    }

    /// The longest stock.
    pub(crate) fn longest_stock(&self, store: &Store, terms: &Terms<'_>) -> Kept<Length> {
        let longest = self.stock(store)?.into_iter().map(|(length, _)| length).max();
        longest.ok_or_else(|| first(terms, "stock", "ask-stock-length").into())
    }
}

/// A changed rule as the book keeps it: the value as a fraction of a unit.
fn kept_change(facts: &Facts) -> Option<(String, Change)> {
    let field = facts.field("numerator")?;
    let unit = facts.text("unit")?;
    let unit = RuleUnit::ALL.iter().copied().find(|known| known.code() == unit)?;
    let value = Quantity::new(facts.whole("numerator")?, facts.whole("denominator")?, unit)?;
    let reason = facts.text("reason")?.to_owned();
    Some((facts.text("key")?.to_owned(), Change { value, by: field.signer.clone(), at_ms: field.stamp.ms, reason }))
}
