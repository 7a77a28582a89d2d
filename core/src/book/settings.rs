use std::fmt;

use crate::store::{Account, Id};

use super::Field;

/// A setting of this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting<'a> {
    /// Who holds the phone.
    Signer,
    /// Everybody who ever held it, one a line.
    Signers,
    /// When the book was last copied from here, in milliseconds since 1970-01-01 UTC.
    CopiedAt,
    /// Why no copy could be kept when the program was last left; none where one was.
    CopyFailed,
    /// What was found wrong with the book and nobody has read yet.
    Account,
    /// The language.
    Language,
    /// How lengths are shown.
    Show,
    /// The tape's smallest mark.
    Division,
    /// The hand that holds the phone.
    Hand,
    /// Whether the keys are for gloves.
    Gloves,
    /// Light or dark.
    Theme,
    /// How far the tape may be off.
    TapeError,
    /// The saw that is used.
    Saw,
    /// Where a signer is.
    Place(&'a str),
    /// Where a signer was before they went to Settings.
    Work(&'a str),
    /// The day on which a caution was read last in a house.
    Caution(Option<Id>, &'a str),
}

impl Setting<'_> {
    /// The code that stands in every book.
    pub fn code(&self) -> String {
        match self {
            Self::Signer => "signer".to_owned(),
            Self::Signers => "signers".to_owned(),
            Self::CopiedAt => "copied-at".to_owned(),
            Self::CopyFailed => "copy-failed".to_owned(),
            Self::Account => Account::KEY.to_owned(),
            Self::Language => "language".to_owned(),
            Self::Show => "show".to_owned(),
            Self::Division => "division".to_owned(),
            Self::Hand => "hand".to_owned(),
            Self::Gloves => "gloves".to_owned(),
            Self::Theme => "theme".to_owned(),
            Self::TapeError => "tape-error".to_owned(),
            Self::Saw => "saw".to_owned(),
            Self::Place(signer) => format!("place/{signer}"),
            Self::Work(signer) => format!("work/{signer}"),
            Self::Caution(job, caution) => {
                format!("caution/{}/{caution}", job.map(|job| job.to_string()).unwrap_or_default())
            }
        }
    }
}

impl fmt::Display for Setting<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.code())
    }
}

/// What typed keys, or a photo that was taken, are kept under until they are accepted.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct DraftKey(String);

impl DraftKey {
    /// Keys of an answer to a field of a thing.
    pub fn field(subject: Id, field: Field) -> Self {
        Self::named(subject, field.code())
    }

    /// Keys of a question of a thing that is no field: about a step, or a rule.
    pub fn named(subject: Id, name: &str) -> Self {
        Self(format!("{subject}/{name}"))
    }

    /// The id of the photo of a step.
    pub fn photo(subject: Id, step: &str) -> Self {
        Self(format!("photo/{subject}/{step}"))
    }

    /// Keys of a setting.
    pub fn setting(code: &str) -> Self {
        Self(format!("setting/{code}"))
    }

    /// Keys of a thing in the making, by what it is, what it belongs to, and the field; without a field its answers.
    pub fn new_thing(what: &str, parent: &str, field: &str) -> Self {
        Self(format!("new/{what}/{parent}/{field}"))
    }

    /// What was asked about, of a field of a thing that is there or in the making.
    pub fn doubt(about: &str, field: &str) -> Self {
        Self(format!("doubt/{about}/{field}"))
    }

    /// The key as the store has it.
    pub fn code(&self) -> &str {
        &self.0
    }
}
