//! Canonical JSON: sorted keys, no spaces, integers and texts only, so that one content has one byte form.

use std::collections::BTreeMap;

use serde::Serialize;
use serde_json::Value as Loose;

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

impl Canon {
    pub(super) fn map<const N: usize>(pairs: [(&str, Option<Canon>); N]) -> Self {
        Self::Map(pairs.into_iter().filter_map(|(key, value)| Some((key.to_owned(), value?))).collect())
    }

    pub(super) fn text(text: impl Into<String>) -> Option<Self> {
        Some(Self::Text(text.into()))
    }

    pub(super) fn write(&self) -> String {
        // Texts, integers and keys that are texts: nothing that JSON refuses.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Reads the canonical form and nothing else.
    pub(super) fn read(text: &str) -> Option<Self> {
        let canon = Self::tighten(&serde_json::from_str(text).ok()?)?;
        (canon.write() == text).then_some(canon)
    }

    fn tighten(loose: &Loose) -> Option<Self> {
        match loose {
            Loose::Number(number) => number.as_i64().map(Self::Whole),
            Loose::String(text) => Some(Self::Text(text.clone())),
            Loose::Array(items) => items.iter().map(Self::tighten).collect::<Option<_>>().map(Self::List),
            Loose::Object(items) => items
                .iter()
                .map(|(key, item)| Some((key.clone(), Self::tighten(item)?)))
                .collect::<Option<_>>()
                .map(Self::Map),
            Loose::Null | Loose::Bool(_) => None,
        }
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

    pub(super) fn list(&self, key: &str) -> Option<&[Self]> {
        if let Some(Self::List(items)) = self.get(key) { Some(items) } else { None }
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
