use std::fmt;
use std::str::FromStr;

use rusqlite::types::{FromSql, FromSqlResult, ToSql, ToSqlOutput, ValueRef};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A random identity of 16 bytes, written as 32 lower-case hexadecimal digits. Subject ids come from above the store.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id([u8; 16]);

impl Id {
    /// The id of these bytes.
    pub const fn from_bytes(bytes: [u8; 16]) -> Self {
        Self(bytes)
    }

    /// The bytes of the id.
    pub const fn bytes(self) -> [u8; 16] {
        self.0
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&hex::encode(self.0))
    }
}

impl fmt::Debug for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

/// Not 32 lower-case hexadecimal digits.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("`{0}` is not an id: 32 lower-case hexadecimal digits are allowed")]
pub struct BadId(pub String);

impl FromStr for Id {
    type Err = BadId;

    fn from_str(text: &str) -> Result<Self, BadId> {
        from_hex(text).and_then(|bytes| bytes.try_into().ok()).map(Self).ok_or_else(|| BadId(text.to_owned()))
    }
}

/// `None` for upper case, too: one content has one text.
pub(super) fn from_hex(text: &str) -> Option<Vec<u8>> {
    let upper = text.bytes().any(|digit| digit.is_ascii_uppercase());
    (!upper).then(|| hex::decode(text).ok()).flatten()
}

impl Serialize for Id {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Id {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        parsed(from)
    }
}

/// What has one text, read from it.
pub(super) fn parsed<'de, D: Deserializer<'de>, T: FromStr<Err: fmt::Display>>(from: D) -> Result<T, D::Error> {
    <std::borrow::Cow<'de, str>>::deserialize(from)?.parse().map_err(serde::de::Error::custom)
}

impl ToSql for Id {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::Borrowed(ValueRef::Blob(&self.0)))
    }
}

impl FromSql for Id {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        <[u8; 16]>::column_result(value).map(Self)
    }
}

/// The identity of one book file on one device: it makes entries, and its sequence numbers are never used twice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DeviceId(pub Id);

impl fmt::Display for DeviceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(&self.0, f)
    }
}

impl ToSql for DeviceId {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        self.0.to_sql()
    }
}

impl FromSql for DeviceId {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        Id::column_result(value).map(Self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_has_one_text() {
        let text = "00017f80fe0123456789abcdefa0b1c2";
        assert_eq!(text.parse::<Id>().map(|id| id.to_string()), Ok(text.to_owned()));
        let upper = text.to_uppercase();
        for bad in ["", &text[1..], &text[2..], &format!("{text}00"), &upper, &text.replace('f', "g")] {
            assert_eq!(bad.parse::<Id>(), Err(BadId((*bad).to_owned())), "{bad}");
        }
    }
}
