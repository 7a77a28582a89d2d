//! Settings: who holds this phone, and how it speaks.

use super::parts::Question;
use super::place::Place;

/// What a phone remembers: a shell makes its [`Context`](super::Context) from it.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Remembered {
    /// Who holds the phone; empty where nobody has said yet.
    pub signer: String,
    /// `en` or `es`.
    pub language: String,
    /// How lengths are shown: a code such as `in/16`.
    pub show: String,
    /// The tape's smallest mark.
    pub division: String,
    /// The hand that holds the phone's thumb half: `right` or `left`.
    pub hand: String,
    /// Whether keys are made for gloves.
    pub gloves: bool,
    /// `light` or `dark`.
    pub theme: String,
    /// Where the signer last was.
    pub place: Place,
}

/// The settings of this phone.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SettingsView {
    /// Everyone who signs on this phone.
    pub signers: Vec<SignerLine>,
    /// Every setting: a question whose `subject` is empty.
    pub settings: Vec<Question>,
    /// The question for a name that is not among the signers yet.
    pub new_signer: Question,
    /// The one that is asked now: with keys typed and not accepted.
    pub asked: Option<Question>,
}

/// One who signs on this phone.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SignerLine {
    /// The name.
    pub name: String,
    /// Whether this one holds the phone now.
    pub current: bool,
}

/// What can be done with the settings.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum SettingsAction {
    /// Somebody takes the phone: a known name, or a new one.
    TakePhone {
        /// The name.
        signer: String,
    },
    /// A name leaves the list; what was signed with it stays.
    DropSigner {
        /// The name.
        signer: String,
    },
    /// Keys that are typed and not yet accepted.
    KeepDraft {
        /// The setting, or the new signer's field.
        field: String,
        /// The keys.
        text: String,
    },
    /// A setting gets another value.
    Answer {
        /// The setting.
        field: String,
        /// The code of the choice, or what was typed.
        text: String,
    },
}
