//! What a phone heard, as what would have been typed.

use crate::phrases;

use super::problem::Code;
use super::{Context, Problem, spoken};

/// What a voice said as a length or a number, turned into what a person would have typed into the field; it is shown
/// there, and answered like anything typed.
///
/// # Errors
/// [`Problem`] saying what was heard, and how to say a length.
pub fn heard(context: &Context, text: &str) -> Result<String, Problem> {
    spoken(context, |terms| {
        phrases::heard(text, terms.language).ok_or_else(|| {
            let said = terms.phrase("screen-not-heard", &[("heard", text.trim().into())]);
            Problem::new(Code::Length, "heard", said).into()
        })
    })
}
