use std::fmt;

use serde::Deserialize;
use serde::de::{Deserializer, MapAccess, Visitor};
use serde_json::value::RawValue;

use super::{Fault, FaultCode, Say};

/// A JSON value that keeps what the usual tree loses: numbers as written, and fields that stand twice.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Json {
    Null,
    Flag(bool),
    Number(String),
    Text(String),
    List(Vec<Json>),
    Object(Vec<(String, Json)>),
}

/// The deepest nesting that is read.
const LEVELS: usize = 32;

impl Json {
    /// Reads one JSON value.
    pub(super) fn read(text: &str) -> Result<Self, Fault> {
        let raw: &RawValue = serde_json::from_str(text).map_err(|error| not_json(&error))?;
        Self::from_raw(raw.get(), LEVELS)
    }

    fn from_raw(raw: &str, levels: usize) -> Result<Self, Fault> {
        let raw = raw.trim_matches([' ', '\t', '\n', '\r']);
        let deeper = || {
            levels.checked_sub(1).ok_or_else(|| {
                Fault::new(FaultCode::TooBig, "", Say::new("figure-too-deep").with("limit", LEVELS.to_string()))
            })
        };
        Ok(match raw.as_bytes().first() {
            Some(b'{') => {
                let levels = deeper()?;
                let fields: Fields<'_> = serde_json::from_str(raw).map_err(|_| no_text())?;
                let read = |(name, raw): (String, &RawValue)| Ok((name, Self::from_raw(raw.get(), levels)?));
                Self::Object(fields.0.into_iter().map(read).collect::<Result<_, Fault>>()?)
            }
            Some(b'[') => {
                let levels = deeper()?;
                let items: Vec<&RawValue> = serde_json::from_str(raw).map_err(|_| no_text())?;
                Self::List(
                    items.into_iter().map(|raw| Self::from_raw(raw.get(), levels)).collect::<Result<_, Fault>>()?,
                )
            }
            Some(b'"') => Self::Text(serde_json::from_str(raw).map_err(|_| no_text())?),
            Some(b't') => Self::Flag(true),
            Some(b'f') => Self::Flag(false),
            Some(b'n') => Self::Null,
            _ => Self::Number(raw.to_owned()),
        })
    }

    /// The field of an object.
    pub(super) fn get(&self, name: &str) -> Option<&Self> {
        match self {
            Self::Object(fields) => fields.iter().find_map(|(own, value)| (own == name).then_some(value)),
            _ => None,
        }
    }
}

impl fmt::Display for Json {
    /// The same value as JSON text, on one line.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let quoted = |text: &str| serde_json::Value::from(text).to_string();
        match self {
            Self::Null => out.write_str("null"),
            Self::Flag(flag) => write!(out, "{flag}"),
            Self::Number(number) => out.write_str(number),
            Self::Text(text) => out.write_str(&quoted(text)),
            Self::List(items) => {
                for (at, item) in items.iter().enumerate() {
                    write!(out, "{}{item}", if at == 0 { "[" } else { "," })?;
                }
                out.write_str(if items.is_empty() { "[]" } else { "]" })
            }
            Self::Object(fields) => {
                for (at, (name, value)) in fields.iter().enumerate() {
                    write!(out, "{}{}:{value}", if at == 0 { "{" } else { "," }, quoted(name))?;
                }
                out.write_str(if fields.is_empty() { "{}" } else { "}" })
            }
        }
    }
}

/// The library says why in English alone; in words of ours it is where.
fn not_json(error: &serde_json::Error) -> Fault {
    let say = if error.is_eof() { "figure-json-ends" } else { "figure-not-json" };
    let say = Say::new(say).with("line", error.line().to_string()).with("column", error.column().to_string());
    Fault::new(FaultCode::Json, "", say)
}

/// A text whose signs are none, though it is JSON as such.
fn no_text() -> Fault {
    Fault::new(FaultCode::Json, "", Say::new("figure-json-text"))
}

/// The fields of an object in their order, repeated ones included.
struct Fields<'a>(Vec<(String, &'a RawValue)>);

impl<'de: 'a, 'a> Deserialize<'de> for Fields<'a> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct FieldsVisitor;
        impl<'de> Visitor<'de> for FieldsVisitor {
            type Value = Vec<(String, &'de RawValue)>;
            fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
                formatter.write_str("an object")
            }
            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
                let mut fields = Vec::new();
                while let Some(entry) = map.next_entry()? {
                    fields.push(entry);
                }
                Ok(fields)
            }
        }
        deserializer.deserialize_map(FieldsVisitor).map(Fields)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keeps_numbers_as_written_and_fields_that_stand_twice() {
        let json = Json::read(r#"{"a": 1.50e1, "a": [true, null, "x\n"]}"#).unwrap();
        let Json::Object(fields) = json else { panic!("an object") };
        assert_eq!(fields[0], ("a".to_owned(), Json::Number("1.50e1".to_owned())));
        assert_eq!(fields[1].1, Json::List(vec![Json::Flag(true), Json::Null, Json::Text("x\n".to_owned())]));
    }

    #[test]
    fn refuses_what_is_not_json() {
        for text in ["", "{", "{\"a\":}", "{} x", "\u{feff}{}", "[1,]", "\"\\ud800\"", "01", "NaN"] {
            assert_eq!(Json::read(text).map_err(|fault| fault.code), Err(FaultCode::Json), "{text:?}");
        }
    }

    #[test]
    fn what_is_no_json_is_refused_in_the_language_that_is_spoken() {
        use crate::figure::answer_timed;
        use crate::measure::Language;
        use std::time::Duration;
        for (request, said) in
            [("{\n \"text\": }", "línea 2, carácter 10"), ("{", "termina"), ("{\"a\": \"\\ud800\"}", "signo")]
        {
            let [spanish, english] = [Language::Spanish, Language::English]
                .map(|spoken| answer_timed("length", request.as_bytes(), spoken, || Duration::ZERO));
            assert!(spanish.is_error && spanish.json.contains(said), "{}", spanish.json);
            for word in ["expected", "EOF", "input", "line "] {
                assert!(!spanish.json.contains(word), "{word}: {}", spanish.json);
            }
            assert!(english.json.contains("\"json\"") && english.json.contains("input"), "{}", english.json);
        }
        // A request that names its language is answered in that; how it is read is never another language's.
        let named = answer_timed("length", br#"{"text": "x", "language": "en"}"#, Language::Spanish, || Duration::ZERO);
        assert!(named.json.contains("is not a length"), "{}", named.json);
        let comma = answer_timed("length", br#"{"text": "7,3 mm"}"#, Language::Spanish, || Duration::ZERO);
        assert!(comma.json.contains("no es una medida"), "{}", comma.json);
    }

    #[test]
    fn refuses_what_is_too_deep() {
        let nested = |levels: usize| format!("{}{}", "[".repeat(levels), "]".repeat(levels));
        assert!(Json::read(&nested(32)).is_ok());
        assert_eq!(Json::read(&nested(33)).map_err(|fault| fault.code), Err(FaultCode::TooBig));
        assert!(Json::read(&nested(100_000)).is_err());
    }
}
