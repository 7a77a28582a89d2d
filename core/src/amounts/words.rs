use crate::measure::{Length, Show};
use crate::phrases::{Arg, Phrases};
use crate::rules::{Quantity, RuleUnit};

use super::item::{Measure, System, decimal};

/// A foot in nanometres.
const FOOT: i64 = 12 * Length::NM_PER_INCH;

/// A text before it is put into a language: the key of a phrase and what fills its places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wording {
    /// The phrase's key.
    pub key: &'static str,
    /// Name and value of each place.
    pub places: Vec<(&'static str, WordingPlace)>,
}

/// What fills a place of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WordingPlace {
    /// A count.
    Whole(i64),
    /// A size, read on a tape.
    Size(Length),
    /// The length of a board as it is sold: in whole feet where it has them.
    Stock(Length),
    /// An amount, to a tenth of the unit in which it is bought.
    Amount(num_rational::BigRational, Measure),
    /// A rule's value as its source prints it.
    Rule(Quantity),
}

impl Wording {
    /// A text without places.
    pub(super) const fn new(key: &'static str) -> Self {
        Self { key, places: Vec::new() }
    }

    /// The same text with one more place filled.
    pub(super) fn with(mut self, place: &'static str, value: WordingPlace) -> Self {
        self.places.push((place, value));
        self
    }

    /// The same text with a count put in.
    pub(super) fn count(self, place: &'static str, count: usize) -> Self {
        self.with(place, WordingPlace::Whole(i64::try_from(count).unwrap_or(i64::MAX)))
    }

    /// The text in words.
    pub fn text(&self, phrases: &Phrases, show: Show) -> String {
        let value = |place: &WordingPlace| match place {
            WordingPlace::Whole(whole) => Arg::Whole(*whole),
            WordingPlace::Size(length) => show.text(*length).into(),
            WordingPlace::Stock(length) => match (System::of(show), length.nm() % FOOT) {
                (System::Inches, 0) => {
                    format!("{} {}", length.nm() / FOOT, RuleUnit::Foot.sign_in(phrases.language())).into()
                }
                _ => show.text(*length).into(),
            },
            WordingPlace::Amount(amount, measure) => {
                let system = System::of(show);
                let (number, unit) =
                    (decimal(&measure.shown(amount, system)), measure.unit_in(system, phrases.language()));
                format!("{number} {unit}").trim_end().to_owned().into()
            }
            WordingPlace::Rule(quantity) => quantity.text_in(phrases.language()).into(),
        };
        let args: Vec<(&str, Arg<'_>)> = self.places.iter().map(|(name, place)| (*name, value(place))).collect();
        phrases.phrase(self.key, &args)
    }
}
