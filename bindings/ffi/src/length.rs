use lapwright::figure::FaultCode;
use lapwright::measure::{Length, Show};
use lapwright::phrases::{Language, Phrases};

use crate::Refusal;

// Lengths cross as whole nanometres; every i64 is one.
uniffi::custom_type!(Length, i64, {
    remote,
    lower: |length| length.nm(),
    try_lift: |nm| Ok(Length::from_nm(nm)),
});

/// A length as it is shown: `show` is one of `in/16`, `in/32`, `in/64`, `ft-in/16`, `mm` and `mm/0.5`.
///
/// # Errors
/// [`Refusal`] with the code `choice` for another `show`, in the language of the locale `language`.
#[uniffi::export]
pub fn length_text(length: Length, show: &str, language: &str) -> Result<String, Refusal> {
    let show = Show::from_code(show).ok_or_else(|| {
        let choices = Show::CODES.join(", ");
        let phrases = Phrases::for_language(Language::from_locale(language));
        let text = phrases.phrase("figure-choice", &[("choices", (&choices).into())]);
        Refusal::Refused { code: FaultCode::Choice.text().to_owned(), field: "show".to_owned(), text }
    })?;
    Ok(show.text(length))
}
