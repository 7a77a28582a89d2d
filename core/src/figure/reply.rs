use serde_json::{Map, Value};

use super::Say;

/// A warning of an answer: a stable code, and the path that it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct FigureWarning {
    pub(super) code: &'static str,
    pub(super) at: String,
    pub(super) say: Say,
}

/// An answer before it is put into a language.
#[derive(Clone, Debug, Default)]
pub(super) struct Reply {
    fields: Map<String, Value>,
    warnings: Vec<FigureWarning>,
}

impl Reply {
    /// Sets a field.
    pub(super) fn set(&mut self, name: &str, value: impl Into<Value>) {
        self.fields.insert(name.to_owned(), value.into());
    }

    /// Sets a field that may be left out.
    pub(super) fn set_if(&mut self, name: &str, value: Option<impl Into<Value>>) {
        if let Some(value) = value {
            self.set(name, value);
        }
    }

    /// Adds a warning, one per code and place.
    pub(super) fn warn(&mut self, code: &'static str, at: impl Into<String>, say: Say) {
        let at = at.into();
        if !self.warnings.iter().any(|known| known.code == code && known.at == at) {
            self.warnings.push(FigureWarning { code, at, say });
        }
    }

    /// The answer as JSON, its warnings' texts made by `text`.
    pub(super) fn into_json(self, text: impl Fn(&Say) -> String) -> Value {
        let Self { mut fields, warnings } = self;
        let warning = |w: &FigureWarning| serde_json::json!({"code": w.code, "at": w.at, "text": text(&w.say)});
        fields.insert("warnings".to_owned(), warnings.iter().map(warning).collect());
        Value::Object(fields)
    }
}
