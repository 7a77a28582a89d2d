//! JSON read strictly: a name that stands twice would hide what the first of the two says, and a file that is made to fill
//! the memory is given up before it does.

use std::cell::RefCell;
use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, Error as _, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value as Json};

/// The most objects, and the most values of any kind, that are read.
pub(super) const OBJECTS: usize = 250_000;
const VALUES: usize = 5 * OBJECTS;

/// Why a text was not read.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum JsonError {
    /// It is not JSON, from this place on.
    NotJson {
        /// The line, counted from one.
        line: usize,
        /// The character of the line, counted from one.
        column: usize,
    },
    /// A name stands twice in one object.
    Twice(String),
    /// There is more in it than is read.
    TooMany,
}

/// Reads a text that is JSON as a whole. Of what stands under the names in `passed_over` only the name is kept: it costs no
/// memory, and does not count.
pub(super) fn read(text: &str, passed_over: &[&str]) -> Result<Json, JsonError> {
    let count = RefCell::new(Count::default());
    let mut reader = serde_json::Deserializer::from_str(text);
    let read =
        Strict { count: &count, passed_over }.deserialize(&mut reader).and_then(|json| reader.end().map(|()| json));
    read.map_err(|error| match count.into_inner() {
        Count { twice: Some(name), .. } => JsonError::Twice(name),
        Count { objects, values, .. } if objects > OBJECTS || values > VALUES => JsonError::TooMany,
        _ => JsonError::NotJson { line: error.line(), column: error.column() },
    })
}

#[derive(Default)]
struct Count {
    objects: usize,
    values: usize,
    twice: Option<String>,
}

#[derive(Clone, Copy)]
struct Strict<'a> {
    count: &'a RefCell<Count>,
    passed_over: &'a [&'a str],
}

impl<'de> DeserializeSeed<'de> for Strict<'_> {
    type Value = Json;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Json, D::Error> {
        let mut count = self.count.borrow_mut();
        count.values += 1;
        if count.values > VALUES || count.objects > OBJECTS {
            return Err(D::Error::custom("too many"));
        }
        drop(count);
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Strict<'_> {
    type Value = Json;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value")
    }

    fn visit_unit<E>(self) -> Result<Json, E> {
        Ok(Json::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Json, E> {
        Ok(value.into())
    }

    fn visit_i64<E>(self, value: i64) -> Result<Json, E> {
        Ok(value.into())
    }

    fn visit_u64<E>(self, value: u64) -> Result<Json, E> {
        Ok(value.into())
    }

    fn visit_f64<E>(self, value: f64) -> Result<Json, E> {
        Ok(value.into())
    }

    fn visit_str<E>(self, value: &str) -> Result<Json, E> {
        Ok(value.into())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Json, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(self)? {
            list.push(item);
        }
        Ok(list.into())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut pairs: A) -> Result<Json, A::Error> {
        self.count.borrow_mut().objects += 1;
        let mut map = Map::new();
        while let Some(name) = pairs.next_key::<String>()? {
            if map.contains_key(&name) {
                self.count.borrow_mut().twice = Some(name);
                return Err(A::Error::custom("twice"));
            }
            let value = match self.passed_over.contains(&name.as_str()) {
                true => pairs.next_value::<IgnoredAny>().map(|_| Json::Null)?,
                false => pairs.next_value_seed(self)?,
            };
            map.insert(name, value);
        }
        Ok(map.into())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_read_is_what_the_library_reads() {
        for text in [
            include_str!("../../../fixtures/demo/house.json"),
            "[1, -2, 0.5, 18446744073709551615, null, true, \"\\u0041\", {}]",
        ] {
            assert_eq!(read(text, &[]), Ok(serde_json::from_str(text).unwrap()));
        }
    }

    #[test]
    fn what_is_passed_over_neither_counts_nor_is_kept() {
        let long = format!(r#"{{"a": [{}0], "b": {{"a": 1, "c": 2}}}}"#, "{},".repeat(OBJECTS + 1));
        assert_eq!(read(&long, &["a"]), Ok(serde_json::json!({"a": null, "b": {"a": null, "c": 2}})));
        assert_eq!(read(&long, &["b"]), Err(JsonError::TooMany));
        assert!(matches!(read(r#"{"a": [1}"#, &["a"]), Err(JsonError::NotJson { .. })));
    }

    #[test]
    fn a_name_that_stands_twice_and_more_than_is_read_are_refused() {
        assert_eq!(read(r#"{"a": {"b": 1, "c": 2, "b": 1}}"#, &[]), Err(JsonError::Twice("b".to_owned())));
        assert_eq!(read(r#"{"a": 1, "\u0061": 1}"#, &[]), Err(JsonError::Twice("a".to_owned())));
        let list = |one: &str, count: usize| format!("[{}{one}]", format!("{one},").repeat(count - 1));
        assert!(read(&list("{}", OBJECTS), &[]).is_ok());
        assert_eq!(read(&list("{}", OBJECTS + 2), &[]), Err(JsonError::TooMany));
        assert_eq!(read(&list("0", VALUES), &[]), Err(JsonError::TooMany));
        for text in ["", "{", "{} {}", "{'a': 1}", "[1,]", &"[".repeat(100_000)] {
            assert!(matches!(read(text, &[]), Err(JsonError::NotJson { .. })), "{text:.20}");
        }
    }
}
