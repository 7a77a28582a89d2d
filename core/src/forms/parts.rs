//! Answers as they come in, and texts that are put together.

use crate::views::{Given, Rectangle};
use crate::wall::Span;

impl Rectangle {
    /// From left to right and from bottom to top.
    pub(crate) fn of(x: Span, y: Span) -> Self {
        Self { left: x.from.nm(), right: x.to.nm(), bottom: y.from.nm(), top: y.to.nm() }
    }
}

/// The answers by field.
pub(crate) fn given(answers: &[Given]) -> std::collections::BTreeMap<&str, &str> {
    answers.iter().map(|given| (given.field.as_str(), given.text.as_str())).collect()
}

/// What there is to say of several things, one after the other.
pub(crate) fn join_nonempty(said: &[&str]) -> String {
    said.iter().filter(|text| !text.is_empty()).copied().collect::<Vec<_>>().join(", ")
}
