use std::borrow::Cow;

use serde::de::Error;
use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::entry::Hash;
use super::{Id, Value, canon};

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

/// Canonical JSON: the names of each change in their order.
impl Serialize for LoggedChange {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        if let Self::SignOff(sign_off) = self {
            return sign_off.serialize(to);
        }
        let mut map = to.serialize_map(None)?;
        match self {
            Self::Create { kind, parent, sort_key, .. } => {
                map.serialize_entry("do", "create")?;
                map.serialize_entry("kind", kind)?;
                if let Some(parent) = parent {
                    map.serialize_entry("parent", parent)?;
                }
                map.serialize_entry("sort", sort_key)?;
            }
            Self::Set { field, new, old, saw, kept, .. } => {
                map.serialize_entry("do", if *kept { "keep" } else { "set" })?;
                map.serialize_entry("field", field)?;
                map.serialize_entry("new", new)?;
                map.serialize_entry("old", old)?;
                map.serialize_entry("saw", saw)?;
            }
            Self::Remove { .. } | Self::SignOff(_) => map.serialize_entry("do", "remove")?,
        }
        map.serialize_entry("subject", &self.subject())?;
        map.end()
    }
}

/// The same.
impl Serialize for SignOff {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let mut map = to.serialize_map(None)?;
        map.serialize_entry("detail", &self.detail_hash)?;
        map.serialize_entry("do", "sign")?;
        if let Some(measured) = &self.measured {
            map.serialize_entry("measured", measured)?;
        }
        map.serialize_entry("note", &self.note)?;
        if let Some(photo) = self.photo {
            map.serialize_entry("photo", &photo)?;
        }
        map.serialize_entry("reason", &self.reason)?;
        map.serialize_entry("signer", &self.signer)?;
        map.serialize_entry("state", self.state.word())?;
        map.serialize_entry("step", &self.step)?;
        map.serialize_entry("subject", &self.subject)?;
        map.end()
    }
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
}

impl SignOff {
    pub(super) fn write(&self) -> String {
        canon::write(self)
    }

    /// What [`SignOff::write`] wrote.
    pub(super) fn read(text: &str) -> Option<Self> {
        match serde_json::from_str(text).ok()? {
            LoggedChange::SignOff(sign_off) => Some(sign_off),
            _ => None,
        }
    }
}

/// The names of every change; which of them belong to one says `do`.
#[derive(Deserialize)]
struct Names<'a> {
    #[serde(rename = "do", borrow)]
    what: Cow<'a, str>,
    subject: Id,
    detail: Option<Hash>,
    field: Option<String>,
    kind: Option<String>,
    measured: Option<Value>,
    new: Option<Value>,
    note: Option<String>,
    old: Option<Value>,
    parent: Option<Id>,
    photo: Option<Id>,
    reason: Option<String>,
    saw: Option<Vec<Id>>,
    signer: Option<String>,
    sort: Option<String>,
    #[serde(borrow)]
    state: Option<Cow<'a, str>>,
    step: Option<String>,
}

impl Names<'_> {
    fn change(self) -> Option<LoggedChange> {
        let subject = self.subject;
        match &*self.what {
            "create" => {
                Some(LoggedChange::Create { subject, kind: self.kind?, parent: self.parent, sort_key: self.sort? })
            }
            word @ ("set" | "keep") => Some(LoggedChange::Set {
                subject,
                field: self.field?,
                new: self.new?,
                old: self.old?,
                saw: self.saw?,
                kept: word == "keep",
            }),
            "remove" => Some(LoggedChange::Remove { subject }),
            "sign" => Some(LoggedChange::SignOff(SignOff {
                subject,
                step: self.step?,
                state: State::of(&self.state?),
                signer: self.signer?,
                note: self.note?,
                reason: self.reason?,
                measured: self.measured,
                photo: self.photo,
                detail_hash: self.detail?,
            })),
            _ => None,
        }
    }
}

impl<'de> Deserialize<'de> for LoggedChange {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        Names::deserialize(from)?.change().ok_or_else(|| Error::custom("a change of a newer program"))
    }
}
