use std::borrow::Cow;

use serde::de::Error;
use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{Id, canon};
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

/// Canonical JSON: the names of a kind in their order.
impl Serialize for Value {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Text(text) => one(to, "text", text),
            Self::Whole(whole) => one(to, "whole", whole),
            Self::Length { length, typed, unit } => {
                let mut map = to.serialize_map(Some(3))?;
                map.serialize_entry("nm", &length.nm())?;
                map.serialize_entry("typed", typed)?;
                map.serialize_entry("unit", unit)?;
                map.end()
            }
            Self::Reference(id) => one(to, "reference", id),
            Self::Absent => to.serialize_map(Some(0))?.end(),
        }
    }
}

fn one<S: Serializer>(to: S, name: &str, value: &(impl Serialize + ?Sized)) -> Result<S::Ok, S::Error> {
    let mut map = to.serialize_map(Some(1))?;
    map.serialize_entry(name, value)?;
    map.end()
}

/// The names of every kind of value: one of these, or none for [`Value::Absent`].
#[derive(Deserialize)]
struct Names<'a> {
    nm: Option<i64>,
    reference: Option<Id>,
    #[serde(borrow)]
    text: Option<Cow<'a, str>>,
    #[serde(borrow)]
    typed: Option<Cow<'a, str>>,
    #[serde(borrow)]
    unit: Option<Cow<'a, str>>,
    whole: Option<i64>,
}

impl<'de> Deserialize<'de> for Value {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        Ok(match Names::deserialize(from)? {
            Names { text: Some(text), .. } => Self::Text(text.into_owned()),
            Names { whole: Some(whole), .. } => Self::Whole(whole),
            Names { nm: Some(nm), typed: Some(typed), unit: Some(unit), .. } => {
                Self::Length { length: Length::from_nm(nm), typed: typed.into_owned(), unit: unit.into_owned() }
            }
            Names { reference: Some(id), .. } => Self::Reference(id),
            Names { nm: Some(_), .. } => return Err(Error::custom("a length names what was typed and its unit")),
            Names { .. } => Self::Absent,
        })
    }
}

impl Value {
    /// What [`Value::write`] wrote.
    pub(super) fn read(text: &str) -> Option<Self> {
        serde_json::from_str(text).ok()
    }

    pub(super) fn write(&self) -> String {
        canon::write(self)
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
