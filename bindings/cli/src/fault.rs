//! What went wrong in a command.

use std::io::Write as _;
use std::path::Path;

use lapwright::book::{Kind, fields_of};
use lapwright::phrases::{Arg, Phrases};
use lapwright::store::StoreError;
use lapwright::views::Problem;
use serde_json::json;

use crate::locale;

/// What a problem of the book is about where no answer is wrong.
const THINGS: [&str; 6] = ["job", "wall", "board", "penetration", "notch", "step"];

/// Why a command was not carried out: a stable code, the field that it is about, and a text.
#[derive(Debug)]
pub(crate) struct Fault {
    code: String,
    field: String,
    text: String,
    /// Whether it is about the name of a thing, and says which there are.
    names: bool,
}

impl Fault {
    pub(crate) fn new(code: &str, field: &str, text: String) -> Self {
        Self { code: code.to_owned(), field: field.to_owned(), text, names: false }
    }

    pub(crate) fn said(code: &str, field: &str, key: &str, args: &[(&str, Arg<'_>)]) -> Self {
        Self::new(code, field, Phrases::for_language(locale::chosen()).phrase(key, args))
    }

    /// A file or folder that could not be read or written.
    pub(crate) fn file(path: &Path, error: &std::io::Error) -> Self {
        let path = path.display().to_string();
        Self::of_io("file", "cli-file", error, &[("path", path.into())])
    }

    /// What was to be printed could not all be.
    pub(crate) fn output(error: &std::io::Error) -> Self {
        Self::of_io("", "cli-out", error, &[])
    }

    /// Standard input could not be read.
    pub(crate) fn input(error: &std::io::Error) -> Self {
        Self::of_io("", "cli-in", error, &[])
    }

    /// What the file system says, put into a phrase as `why`.
    fn of_io(field: &str, key: &str, error: &std::io::Error, args: &[(&str, Arg<'_>)]) -> Self {
        let why = Phrases::for_language(locale::chosen()).io_error(error);
        Self::said("file", field, key, &[args, &[("why", why.into())]].concat())
    }

    /// No place for the user's data is known.
    pub(crate) fn no_folder() -> Self {
        Self::said("file", "book", "cli-no-folder", &[])
    }

    /// Nothing has this name; there is what is known, or nothing of the kind yet.
    pub(crate) fn unknown(field: &str, text: &str, known: &[String]) -> Self {
        if text.contains('=') {
            return Self::said("missing", field, "cli-answer-as-name", &[("text", text.into())]);
        }
        if known.is_empty() {
            let none = format!("cli-none-{field}");
            let phrases = Phrases::for_language(locale::chosen());
            let none = if phrases.has(&none) { phrases.phrase(&none, &[]) } else { String::new() };
            let text = phrases.phrase("cli-unknown-none", &[("text", text.into()), ("none", none.into())]);
            return Self { names: true, ..Self::new("unknown", field, text.trim_end().to_owned()) };
        }
        let args = [("text", text.into()), ("known", known.join("; ").into())];
        Self { names: true, ..Self::said("unknown", field, "cli-unknown", &args) }
    }

    /// A question that is answered more than once.
    pub(crate) fn twice(field: &str, answers: &[&str]) -> Self {
        let args = [("field", field.into()), ("answers", answers.join(", ").into())];
        Self::said("twice", field, "command-error-field-twice", &args)
    }

    /// More than one thing has this name.
    pub(crate) fn several(field: &str, text: &str, known: &[String]) -> Self {
        let args = [("text", text.into()), ("known", known.join("; ").into())];
        Self { names: true, ..Self::said("unknown", field, "cli-several", &args) }
    }

    /// An answer to a question that is not asked.
    pub(crate) fn not_asked(field: &str, asked: Vec<String>) -> Self {
        Self::new("unknown", field, Phrases::for_language(locale::chosen()).not_asked(field, asked))
    }

    /// The same with a right call behind it, where it is the call that is wrong and not what it names or the book.
    pub(crate) fn with_call(self, task: &str) -> Self {
        let of_call = ["missing", "length", "range", "order", "choice", "too-big", "twice", "unknown", "first"];
        if !of_call.contains(&&*self.code) || self.names || self.field.ends_with("signer") {
            return self;
        }
        let phrases = Phrases::for_language(locale::chosen());
        let first = match (&*self.code, &*self.field, task) {
            ("first", field, task) => asked_by(field, task),
            // What comes before is passed over with a reason.
            (_, "note", "tick") => "tick-note",
            (_, _, task) => task,
        };
        let call = crate::help::call(Some(first), phrases);
        let text = format!("{}\n{}", self.text, phrases.phrase("command-error-example", &[("call", call.into())]));
        Self { text, ..self }
    }

    /// Something else that the machine said.
    pub(crate) fn other(text: String) -> Self {
        Self::new("other", "", text)
    }

    /// The same with one more sentence behind its first line.
    pub(crate) fn with_line(self, more: &str) -> Self {
        let (first, rest) = self.text.split_once('\n').unwrap_or((&self.text, ""));
        let text = format!("{first} {more}\n{rest}");
        Self { text: text.trim_end().to_owned(), ..self }
    }

    /// Says it: as JSON on standard output, else, or where that takes no more, in words on standard error.
    pub(crate) fn say(&self, as_json: bool) {
        let told = json!({"error": {"code": self.code, "field": self.field, "text": self.text}});
        let mut stdout = std::io::stdout();
        if as_json && writeln!(stdout, "{told:#}").and_then(|()| stdout.flush()).is_ok() {
            return;
        }
        if self.field.is_empty() {
            eprintln!("lapwright: {}", crate::run::printable(&self.text));
        } else {
            eprintln!("lapwright: {}: {}", crate::run::printable(&self.field), crate::run::printable(&self.text));
        }
    }
}

/// The call that answers what has to be answered first: the own one where it asks that itself.
fn asked_by<'a>(field: &str, task: &'a str) -> &'a str {
    let asks = |kind| fields_of(kind).iter().any(|spec| spec.field.code() == field);
    match task {
        "same-board" => "loose",
        _ if field == "lines" => "pole-lay-out",
        _ if field == "stock" => "stock",
        "plan" | "wall" | "next" | "draw" | "saw" | "order" | "export" | "pole-lay-out" | "penetration" | "board" => {
            match [(Kind::Wall, "measure"), (Kind::Pole, "pole"), (Kind::Job, "house")]
                .iter()
                .find(|(kind, _)| asks(*kind))
            {
                Some((_, call)) => call,
                None => task,
            }
        }
        _ => task,
    }
}

impl From<Problem> for Fault {
    fn from(problem: Problem) -> Self {
        let mut text = problem.text;
        if matches!((&*problem.code, &*problem.field), ("missing", "signer") | (_, "rule-signer")) {
            let how = Phrases::for_language(locale::chosen()).phrase("cli-signer", &[]);
            text = format!("{text} {how}");
        }
        // Of a thing that the book does not know, what there is has been said.
        let names = THINGS.contains(&&*problem.field);
        Self { code: problem.code, field: problem.field, text, names }
    }
}

impl From<StoreError> for Fault {
    fn from(error: StoreError) -> Self {
        // A folder of the user's is in the way of nothing but itself.
        if let StoreError::InTheWay(path) = &error
            && path.is_dir()
        {
            return Self::file(path, &std::io::ErrorKind::IsADirectory.into());
        }
        let (code, field) = match &error {
            StoreError::InTheWay(_) => ("book", "file"),
            StoreError::Exists(_) => ("exists", "file"),
            StoreError::File { .. } => ("file", "file"),
            _ => ("book", "book"),
        };
        Self::new(code, field, error.text(Phrases::for_language(locale::chosen())))
    }
}
