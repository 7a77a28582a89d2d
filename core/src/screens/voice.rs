//! What a phone heard, as what would have been typed.

use crate::phrases;
use crate::views::{Code, Context, Problem};

use crate::forms::context::in_language;

/// What a voice said as a length or a number, turned into what a person would have typed into the field; it is shown
/// there, and answered like anything typed.
///
/// # Errors
/// [`Problem`] saying what was heard, and how to say a length.
pub fn heard(context: &Context, text: &str) -> Result<String, Problem> {
    in_language(context, |terms| {
        // Some phones write down what they hear with the signs of a length, such as 7' 3½": that is typed as it is.
        let written = text.trim().trim_end_matches(['.', '!', '?']);
        let as_written = || terms.reader.length(written).is_ok().then(|| written.to_owned());
        phrases::heard(text, terms.language).or_else(as_written).ok_or_else(|| {
            let said = terms.phrase("screen-not-heard", &[("heard", text.trim().into())]);
            Problem::new(Code::Length, "heard", said).into()
        })
    })
}
