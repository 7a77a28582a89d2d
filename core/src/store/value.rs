use super::Id;
use super::canon::Canon;
use crate::measure::Length;

/// What a field holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// Any text.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// A reading, with what was typed and the unit it was typed in.
    Length {
        /// The exact length.
        length: Length,
        /// The text as typed.
        typed: String,
        /// The unit it was typed in.
        unit: String,
    },
    /// Another subject.
    Reference(Id),
    /// Cleared, or never written.
    Absent,
}

impl Value {
    pub(super) fn canon(&self) -> Canon {
        match self {
            Self::Text(text) => Canon::map([("text", Canon::text(text.as_str()))]),
            Self::Whole(whole) => Canon::map([("whole", Some(Canon::Whole(*whole)))]),
            Self::Length { length, typed, unit } => Canon::map([
                ("nm", Some(Canon::Whole(length.nm()))),
                ("typed", Canon::text(typed.as_str())),
                ("unit", Canon::text(unit.as_str())),
            ]),
            Self::Reference(id) => Canon::map([("reference", Canon::text(id.to_string()))]),
            Self::Absent => Canon::map([]),
        }
    }

    pub(super) fn from_canon(canon: &Canon) -> Option<Self> {
        let Canon::Map(items) = canon else { return None };
        if items.is_empty() {
            Some(Self::Absent)
        } else if let Some(text) = canon.str("text") {
            Some(Self::Text(text.to_owned()))
        } else if let Some(whole) = canon.whole("whole") {
            Some(Self::Whole(whole))
        } else if let Some(nm) = canon.whole("nm") {
            let (typed, unit) = (canon.str("typed")?.to_owned(), canon.str("unit")?.to_owned());
            Some(Self::Length { length: Length::from_nm(nm), typed, unit })
        } else {
            canon.parsed("reference").map(Self::Reference)
        }
    }

    /// What was typed, as far as the value keeps it.
    pub fn typed(&self) -> String {
        match self {
            Self::Text(text) | Self::Length { typed: text, .. } => text.clone(),
            Self::Whole(whole) => whole.to_string(),
            Self::Reference(_) | Self::Absent => String::new(),
        }
    }
}
