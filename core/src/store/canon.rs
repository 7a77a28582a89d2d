//! Canonical JSON: sorted keys, no spaces, integers and texts only, so that one content has one byte form.

use std::collections::BTreeMap;
use std::fmt;

use serde::de::{Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Serialize};

/// Written by `serde_json`, its keys in the order of the map's. Not by RFC 8785, whose numbers are floats: past 2^53 one
/// would come back as another.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(untagged)]
pub(super) enum Canon {
    Whole(i64),
    Text(String),
    List(Vec<Canon>),
    Map(BTreeMap<String, Canon>),
}

/// The text of what serialises its names in their order, as [`Canon`] does and everything of the log.
pub(super) fn write(canon: &(impl Serialize + ?Sized)) -> String {
    // Texts, integers and keys that are texts: nothing that JSON refuses.
    serde_json::to_string(canon).unwrap_or_default()
}

impl Canon {
    pub(super) fn map<const N: usize>(pairs: [(&str, Option<Canon>); N]) -> Self {
        Self::Map(pairs.into_iter().filter_map(|(key, value)| Some((key.to_owned(), value?))).collect())
    }

    pub(super) fn text(text: impl Into<String>) -> Option<Self> {
        Some(Self::Text(text.into()))
    }

    pub(super) fn write(&self) -> String {
        write(self)
    }

    /// Reads the canonical form and nothing else.
    pub(super) fn read(text: &str) -> Option<Self> {
        let canon: Self = serde_json::from_str(text).ok()?;
        (canon.write() == text).then_some(canon)
    }

    pub(super) fn get(&self, key: &str) -> Option<&Self> {
        if let Self::Map(items) = self { items.get(key) } else { None }
    }

    pub(super) fn str(&self, key: &str) -> Option<&str> {
        if let Some(Self::Text(text)) = self.get(key) { Some(text) } else { None }
    }

    pub(super) fn whole(&self, key: &str) -> Option<i64> {
        if let Some(Self::Whole(whole)) = self.get(key) { Some(*whole) } else { None }
    }

    /// `None` where the key is there but unreadable, `Some(None)` where it is missing.
    pub(super) fn maybe<T: std::str::FromStr>(&self, key: &str) -> Option<Option<T>> {
        match self.get(key) {
            None => Some(None),
            Some(Self::Text(text)) => text.parse().ok().map(Some),
            Some(_) => None,
        }
    }

    pub(super) fn parsed<T: std::str::FromStr>(&self, key: &str) -> Option<T> {
        self.str(key)?.parse().ok()
    }
}

/// Null, truth values and fractions are refused; a key that stands twice would not be written again as it was read.
impl<'de> Deserialize<'de> for Canon {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(CanonVisitor)
    }
}

struct CanonVisitor;

impl<'de> Visitor<'de> for CanonVisitor {
    type Value = Canon;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a whole number of 64 bits, a text, a list or a map")
    }

    fn visit_i64<E>(self, whole: i64) -> Result<Canon, E> {
        Ok(Canon::Whole(whole))
    }

    fn visit_u64<E: Error>(self, whole: u64) -> Result<Canon, E> {
        i64::try_from(whole).map(Canon::Whole).map_err(E::custom)
    }

    fn visit_str<E>(self, text: &str) -> Result<Canon, E> {
        Ok(Canon::Text(text.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Canon, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Canon::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut pairs: A) -> Result<Canon, A::Error> {
        let mut map = BTreeMap::new();
        while let Some((key, item)) = pairs.next_entry()? {
            map.insert(key, item);
        }
        Ok(Canon::Map(map))
    }
}

#[cfg(test)]
mod tests {
    use proptest::collection::{btree_map, vec};
    use proptest::prelude::*;

    use super::*;

    fn canon() -> impl Strategy<Value = Canon> {
        let text = prop_oneof![any::<String>(), "[\\x00-\\x7f]{0,20}"];
        let leaf = prop_oneof![any::<i64>().prop_map(Canon::Whole), text.prop_map(Canon::Text)];
        leaf.prop_recursive(3, 24, 4, |inner| {
            let map = btree_map(any::<String>(), inner.clone(), 0..4).prop_map(Canon::Map);
            prop_oneof![vec(inner, 0..4).prop_map(Canon::List), map]
        })
    }

    proptest! {
        #[test]
        fn what_is_written_is_read(canon in canon()) {
            prop_assert_eq!(Canon::read(&canon.write()), Some(canon));
        }
    }

    /// Escapes by RFC 8785, 3.2.2.2; numbers are whole, as far as 64 bits go, and no floats.
    #[test]
    fn one_content_has_one_text() {
        let text = "{\"\":[],\"a\":[-9223372036854775808,9007199254740993],\"b\":\"\\b\\t\\n\\f\\r\\u0000\\u001f\\\"\\\\/\u{7f}€\"}";
        assert_eq!(Canon::read(text).map(|canon| canon.write()).as_deref(), Some(text));
        for other in [
            "{\"a\": 1}",
            "{\"b\":1,\"a\":1}",
            "{\"a\":1,\"a\":1}",
            "\"\\u0041\"",
            "\"\\/\"",
            "1.0",
            "1e3",
            "-0",
            "01",
            "1 ",
            "9223372036854775808",
            "null",
            "true",
            "",
        ] {
            assert_eq!(Canon::read(other), None, "{other}");
        }
    }
}
