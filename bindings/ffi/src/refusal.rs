/// What every refusal looks like on the other side.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error, uniffi::Error)]
pub enum Refusal {
    /// What was asked for cannot be done.
    #[error("{text}")]
    Refused {
        /// A stable code, for programs.
        code: String,
        /// The field that it is about; empty for the whole.
        field: String,
        /// What is wrong and what is allowed, for people, in their language.
        text: String,
    },
}
