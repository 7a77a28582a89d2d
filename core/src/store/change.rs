use super::canon::Canon;
use super::entry::Hash;
use super::{Id, Value};

/// One accepted answer: all its changes are written together, or none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Op {
    /// What was answered, such as `wall.measured`.
    pub kind: String,
    /// The version of that kind.
    pub version: i64,
    /// The job it belongs to; `None` for the book's own.
    pub job: Option<Id>,
    /// A few texts for the done list.
    pub args: Vec<String>,
    /// What changes. Each field, step and subject at most once.
    pub changes: Vec<Change>,
}

/// Who accepted an answer, and with which program.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Author {
    /// The signer's name.
    pub signer: String,
    /// The program's version.
    pub program: String,
}

/// One change of an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// A new subject under an id never used before.
    Create {
        /// Its id.
        subject: Id,
        /// Its kind, such as `wall`.
        kind: String,
        /// The subject it hangs under.
        parent: Option<Id>,
        /// Its place among its like, compared as bytes.
        sort_key: String,
    },
    /// A field gets a value; [`Value::Absent`] clears it.
    Set {
        /// The subject.
        subject: Id,
        /// The field.
        field: String,
        /// The new value.
        value: Value,
    },
    /// Like `Set`, for what a thing was cut or fixed with: once in force, neither `Set` nor `Keep` may change the field;
    /// only undoing the answer frees it.
    Keep {
        /// The subject.
        subject: Id,
        /// The field.
        field: String,
        /// The value to keep.
        value: Value,
    },
    /// The subject leaves a tombstone. Nothing cascades.
    Remove {
        /// The subject.
        subject: Id,
    },
    /// A further sign-off; earlier ones stay.
    SignOff(SignOff),
}

/// One sign-off of one step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SignOff {
    /// The subject.
    pub subject: Id,
    /// The step.
    pub step: String,
    /// What is said of the step.
    pub state: State,
    /// Who says so.
    pub signer: String,
    /// A note.
    pub note: String,
    /// Why it was skipped or taken back.
    pub reason: String,
    /// What was measured.
    pub measured: Option<Value>,
    /// A photo.
    pub photo: Option<Id>,
    /// Hash of the detail, rules and readings it was made under.
    pub detail_hash: Hash,
}

/// What a sign-off says of its step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum State {
    /// Done.
    Done,
    /// Left out.
    Skipped,
    /// Taken back.
    Undone,
    /// A word of a newer or special step list.
    Other(String),
}

impl State {
    /// The word that is written.
    pub fn word(&self) -> &str {
        match self {
            Self::Done => "done",
            Self::Skipped => "skipped",
            Self::Undone => "undone",
            Self::Other(word) => word,
        }
    }

    fn of(word: &str) -> Self {
        match word {
            "done" => Self::Done,
            "skipped" => Self::Skipped,
            "undone" => Self::Undone,
            other => Self::Other(other.to_owned()),
        }
    }
}

/// A change as it is written: a set field also says what it replaced, and which writes its maker saw.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum LoggedChange {
    Create { subject: Id, kind: String, parent: Option<Id>, sort_key: String },
    Set { subject: Id, field: String, new: Value, old: Value, saw: Vec<Id>, kept: bool },
    Remove { subject: Id },
    SignOff(SignOff),
}

impl LoggedChange {
    pub(super) fn subject(&self) -> Id {
        match self {
            Self::Create { subject, .. } | Self::Set { subject, .. } | Self::Remove { subject } => *subject,
            Self::SignOff(sign_off) => sign_off.subject,
        }
    }

    pub(super) fn slot(&self) -> String {
        match self {
            Self::Create { .. } => "+".to_owned(),
            Self::Remove { .. } => "-".to_owned(),
            Self::Set { field, .. } => format!("={field}"),
            Self::SignOff(sign_off) => format!("!{}", sign_off.step),
        }
    }

    pub(super) fn canon(&self) -> Canon {
        let subject = Canon::text(self.subject().to_string());
        match self {
            Self::Create { kind, parent, sort_key, .. } => Canon::map([
                ("do", Canon::text("create")),
                ("subject", subject),
                ("kind", Canon::text(kind.as_str())),
                ("parent", parent.map(|id| Canon::Text(id.to_string()))),
                ("sort", Canon::text(sort_key.as_str())),
            ]),
            Self::Set { field, new, old, saw, kept, .. } => Canon::map([
                ("do", Canon::text(if *kept { "keep" } else { "set" })),
                ("subject", subject),
                ("field", Canon::text(field.as_str())),
                ("new", Some(new.canon())),
                ("old", Some(old.canon())),
                ("saw", Some(Canon::List(saw.iter().map(|id| Canon::Text(id.to_string())).collect()))),
            ]),
            Self::Remove { .. } => Canon::map([("do", Canon::text("remove")), ("subject", subject)]),
            Self::SignOff(sign_off) => sign_off.canon(),
        }
    }

    pub(super) fn from_canon(canon: &Canon) -> Option<Self> {
        let subject = canon.parsed("subject")?;
        match canon.str("do")? {
            "create" => Some(Self::Create {
                subject,
                kind: canon.str("kind")?.to_owned(),
                parent: canon.maybe("parent")?,
                sort_key: canon.str("sort")?.to_owned(),
            }),
            word @ ("set" | "keep") => Some(Self::Set {
                subject,
                field: canon.str("field")?.to_owned(),
                new: Value::from_canon(canon.get("new")?)?,
                old: Value::from_canon(canon.get("old")?)?,
                saw: canon
                    .list("saw")?
                    .iter()
                    .map(|id| if let Canon::Text(id) = id { id.parse().ok() } else { None })
                    .collect::<Option<_>>()?,
                kept: word == "keep",
            }),
            "remove" => Some(Self::Remove { subject }),
            "sign" => SignOff::from_canon(canon).map(Self::SignOff),
            _ => None,
        }
    }
}

impl SignOff {
    pub(super) fn canon(&self) -> Canon {
        Canon::map([
            ("do", Canon::text("sign")),
            ("subject", Canon::text(self.subject.to_string())),
            ("step", Canon::text(self.step.as_str())),
            ("state", Canon::text(self.state.word())),
            ("signer", Canon::text(self.signer.as_str())),
            ("note", Canon::text(self.note.as_str())),
            ("reason", Canon::text(self.reason.as_str())),
            ("measured", self.measured.as_ref().map(Value::canon)),
            ("photo", self.photo.map(|id| Canon::Text(id.to_string()))),
            ("detail", Canon::text(self.detail_hash.to_string())),
        ])
    }

    pub(super) fn from_canon(canon: &Canon) -> Option<Self> {
        Some(Self {
            subject: canon.parsed("subject")?,
            step: canon.str("step")?.to_owned(),
            state: State::of(canon.str("state")?),
            signer: canon.str("signer")?.to_owned(),
            note: canon.str("note")?.to_owned(),
            reason: canon.str("reason")?.to_owned(),
            measured: match canon.get("measured") {
                Some(value) => Some(Value::from_canon(value)?),
                None => None,
            },
            photo: canon.maybe("photo")?,
            detail_hash: canon.parsed("detail")?,
        })
    }
}
