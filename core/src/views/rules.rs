//! Rules: which numbers apply.

use super::parts::Question;

/// The rules of a house.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RulesView {
    /// The house.
    pub job: String,
    /// Whose rules they are.
    pub family: String,
    /// Who has the last word: the maker's instructions and local code.
    pub who_wins: String,
    /// Every rule.
    pub rules: Vec<RuleLine>,
    /// The question that is asked now: with keys typed and not accepted, else the reason for a value that was typed.
    pub asked: Option<Question>,
}

/// One rule.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RuleLine {
    /// Its stable key.
    pub key: String,
    /// Its name.
    pub name: String,
    /// The value that applies, in the unit of its source or of who changed it.
    pub value: String,
    /// The sign of that unit; empty for counts, shares and years.
    pub unit: String,
    /// The default, where another value applies; else empty.
    pub default: String,
    /// What a change may set; empty for what cannot be changed.
    pub bounds: String,
    /// Where the default comes from, with its country where it is another one than the house's; empty where there is no
    /// published source.
    pub source: String,
    /// The edition of the source; empty where none was noted.
    pub edition: String,
    /// How well the default is known.
    pub status: String,
    /// Whether the default must be read in its source before anyone relies on it.
    pub not_verified: bool,
    /// Whether it is a definition or a fact.
    pub fixed: bool,
    /// Who replaced the default; absent where nobody did.
    pub changed: Option<RuleChanged>,
    /// Where it comes from, how well it is known and who replaced it, in words.
    pub said: String,
    /// What is asked for a change: the value, with the rule's key as its field, and the reason; empty for a fact.
    pub asks: Vec<Question>,
}

/// Who replaced a default.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct RuleChanged {
    /// Who.
    pub signer: String,
    /// Why.
    pub reason: String,
    /// When, in milliseconds since 1970-01-01 UTC.
    pub at_ms: i64,
}

/// What can be done with a rule.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum RulesAction {
    /// Keys that are typed and not yet accepted.
    KeepDraft {
        /// The house.
        job: String,
        /// The field of the question.
        field: String,
        /// The keys.
        text: String,
    },
    /// An answer to a question of a rule: the value waits for its reason, and the reason makes the change.
    Answer {
        /// The house.
        job: String,
        /// The field of the question.
        field: String,
        /// The answer as typed; an empty value gives the change up.
        text: String,
    },
    /// Another value applies to this house.
    Change {
        /// The house.
        job: String,
        /// The rule's key.
        key: String,
        /// The value, as typed.
        value: String,
        /// Why: the maker's page, the code section, the inspector's word.
        reason: String,
    },
    /// The default applies again.
    BackToDefault {
        /// The house.
        job: String,
        /// The rule's key.
        key: String,
    },
}
