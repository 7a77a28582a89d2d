use std::collections::BTreeMap;

use sha2::{Digest, Sha256};

use crate::measure::Length;

/// The one byte form of a detail, for hashing: named texts and whole numbers, sorted by name, one a line.
///
/// A caller adds what else the work is made from, such as rules and readings, under names of its own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Canonical(BTreeMap<String, String>);

impl Canonical {
    /// An empty detail of a kind, such as `penetration` or `board`.
    pub fn new(kind: &str) -> Self {
        Self(BTreeMap::new()).text("detail", kind)
    }

    /// Adds a text; an earlier one of the same name is replaced.
    #[must_use]
    pub fn text(mut self, name: &str, text: &str) -> Self {
        self.0.insert(name.to_owned(), text.to_owned());
        self
    }

    /// Adds a whole number.
    #[must_use]
    pub fn whole(self, name: &str, number: i64) -> Self {
        self.text(name, &number.to_string())
    }

    /// Adds a length, in nanometres.
    #[must_use]
    pub fn length(self, name: &str, length: Length) -> Self {
        self.whole(name, length.nm())
    }

    /// Adds a yes or no, as 1 or 0.
    #[must_use]
    pub fn flag(self, name: &str, flag: bool) -> Self {
        self.whole(name, i64::from(flag))
    }

    /// The canonical text: `name=value` lines, sorted by name, each ended by a line feed. Backslash, line feed, carriage
    /// return and, in names, the equals sign are written as `\\`, `\n`, `\r` and `\e`, so that no two details share a text.
    pub fn detail_text(&self) -> String {
        let escaped = |text: &str| text.replace('\\', "\\\\").replace('\n', "\\n").replace('\r', "\\r");
        let mut text = String::new();
        for (name, value) in &self.0 {
            text.push_str(&escaped(name).replace('=', "\\e"));
            text.push('=');
            text.push_str(&escaped(value));
            text.push('\n');
        }
        text
    }

    /// The SHA-256 of the canonical text, as 64 lower-case hexadecimal digits.
    pub fn hash(&self) -> String {
        hex::encode(Sha256::digest(self.detail_text()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn is_sorted_and_hashed() {
        let detail = Canonical::new("board").length("lap", Length::from_mm(32)).flag("a", true);
        assert_eq!(detail.detail_text(), "a=1\ndetail=board\nlap=32000000\n");
        let other = Canonical::new("board").flag("a", true).length("lap", Length::from_mm(32));
        assert_eq!(detail.hash(), other.hash());
        // Reference value from the `sha256sum` command over the text above.
        assert_eq!(detail.hash(), "a0f32dab19babdf4229089f0f6dbbecbd0a19fa631423c74270ef5b662f62a0c");
    }

    proptest! {
        #[test]
        fn no_two_details_share_a_text(
            a in proptest::collection::btree_map("[a=\\\\\n\r]{0,3}", "[a=\\\\\n\r]{0,3}", 0..4),
            b in proptest::collection::btree_map("[a=\\\\\n\r]{0,3}", "[a=\\\\\n\r]{0,3}", 0..4),
        ) {
            let same = a == b;
            prop_assert_eq!(Canonical(a).detail_text() == Canonical(b).detail_text(), same);
        }
    }
}
