//! What a phone heard.

use super::*;

#[test]
fn what_a_phone_writes_with_signs_is_typed_as_it_is() {
    for text in ["7' 3 1/2\"", "7’ 3½”", "6'3\"", "3 1/2\"", "154.5 mm"] {
        assert_eq!(heard(&context("en", 1), &format!(" {text}. ")), Ok(text.to_owned()));
    }
    assert_eq!(heard(&context("en", 1), "3½ in"), Ok("3½\"".to_owned()));
    assert_eq!(heard(&context("es", 1), "3,5 mm"), Ok("3,5 mm".to_owned()));
}

#[test]
fn what_is_no_length_is_said_back() {
    for text in ["", "a cup of coffee", "7' 3' 2'", "½½"] {
        let told = heard(&context("en", 1), text).unwrap_err();
        assert_eq!(told.field, "heard");
        assert!(told.text.contains(text), "{told:?}");
    }
}
