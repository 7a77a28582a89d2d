//! What went wrong in a command.

use std::io::Write as _;
use std::path::Path;

use lapwright::phrases::{Arg, Phrases};
use lapwright::store::StoreError;
use lapwright::views::Problem;
use serde_json::json;

use crate::locale;

/// Why a command was not carried out: a stable code, the field that it is about, and a text.
#[derive(Debug)]
pub(crate) struct Fault {
    code: String,
    field: String,
    text: String,
}

impl Fault {
    fn new(code: &str, field: &str, text: String) -> Self {
        Self { code: code.to_owned(), field: field.to_owned(), text }
    }

    pub(crate) fn said(code: &str, field: &str, key: &str, args: &[(&str, Arg<'_>)]) -> Self {
        Self::new(code, field, Phrases::for_language(locale::chosen()).phrase(key, args))
    }

    /// A file or folder that could not be read or written.
    pub(crate) fn file(path: &Path, error: &std::io::Error) -> Self {
        let args = [("path", path.display().to_string().into()), ("why", error.to_string().into())];
        Self::said("file", "", "cli-file", &args)
    }

    /// No place for the user's data is known.
    pub(crate) fn no_folder() -> Self {
        Self::said("file", "book", "cli-no-folder", &[])
    }

    /// Nothing, or more than one thing, has this name.
    pub(crate) fn unknown(field: &str, text: &str, known: &[String]) -> Self {
        let args = [("text", text.into()), ("known", known.join(", ").into())];
        Self::said("unknown", field, "cli-unknown", &args)
    }

    /// Something else that the machine said.
    pub(crate) fn other(text: String) -> Self {
        Self::new("other", "", text)
    }

    /// Says it: as JSON on standard output, else, or where that takes no more, in words on standard error.
    pub(crate) fn say(&self, as_json: bool) {
        let told = json!({"error": {"code": self.code, "field": self.field, "text": self.text}});
        let mut stdout = std::io::stdout();
        if as_json && writeln!(stdout, "{told:#}").and_then(|()| stdout.flush()).is_ok() {
            return;
        }
        if self.field.is_empty() {
            eprintln!("lapwright: {}", self.text);
        } else {
            eprintln!("lapwright: {}: {}", self.field, self.text);
        }
    }
}

impl From<Problem> for Fault {
    fn from(problem: Problem) -> Self {
        let mut text = problem.text;
        if (problem.code.as_str(), problem.field.as_str()) == ("missing", "signer") {
            let how = Phrases::for_language(locale::chosen()).phrase("cli-signer", &[]);
            text = format!("{text} {how}");
        }
        Self { code: problem.code, field: problem.field, text }
    }
}

impl From<StoreError> for Fault {
    fn from(error: StoreError) -> Self {
        let (code, field) = match &error {
            StoreError::InTheWay(_) => ("book", "file"),
            StoreError::Exists(_) => ("exists", "file"),
            _ => ("book", "book"),
        };
        Self::new(code, field, error.text(Phrases::for_language(locale::chosen())))
    }
}
