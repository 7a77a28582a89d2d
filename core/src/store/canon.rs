//! Canonical JSON: sorted keys, no spaces, integers and texts only, so that one content has one byte form.

use std::collections::BTreeMap;

use serde_json::Value as Loose;

/// Most texts need no escapes, and then the form is the text between quotes.
fn quote(text: &str, out: &mut String) {
    if text.bytes().any(|byte| byte < b' ' || byte == b'"' || byte == b'\\') {
        out.push_str(&Loose::from(text).to_string());
    } else {
        out.push('"');
        out.push_str(text);
        out.push('"');
    }
}

#[derive(Clone, Debug, PartialEq, Eq)]
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
        let mut out = String::new();
        self.write_to(&mut out);
        out
    }

    fn write_to(&self, out: &mut String) {
        match self {
            Self::Whole(whole) => out.push_str(&whole.to_string()),
            Self::Text(text) => quote(text, out),
            Self::List(items) => {
                out.push('[');
                for (at, item) in items.iter().enumerate() {
                    if at > 0 {
                        out.push(',');
                    }
                    item.write_to(out);
                }
                out.push(']');
            }
            Self::Map(items) => {
                out.push('{');
                for (at, (key, item)) in items.iter().enumerate() {
                    if at > 0 {
                        out.push(',');
                    }
                    quote(key, out);
                    out.push(':');
                    item.write_to(out);
                }
                out.push('}');
            }
        }
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
