//! What a shell knows and the core does not.

/// What a shell knows and the core does not: who, when, and how to speak. It goes into every view and action.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Context {
    /// Milliseconds since 1970-01-01 UTC.
    pub now_ms: i64,
    /// Minutes that the local time is ahead of UTC.
    pub utc_offset_minutes: i32,
    /// Who holds the phone; empty where nobody has said yet.
    pub signer: String,
    /// `en` or `es`.
    pub language: String,
    /// How lengths are shown: a code such as `in/16`.
    pub show: String,
    /// The tape's smallest mark that cutting is rounded to, such as `1/16"`; showing never changes it.
    pub division: String,
    /// Sixteen random bytes, new for every action: ids are made from them.
    pub entropy: Vec<u8>,
}
