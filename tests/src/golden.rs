//! Golden answers: cases of `fixtures/answers` that every language runs.
//!
//! A valid case is `{"question", "source", "request", "answer"}`; with `"compare": [fields]` only these fields of the
//! answer are compared, for questions with more than one right answer. An invalid case is `{"question", "source",
//! "request" or "text", "error": {"code", "field"}}`. `text` stands for `request` where a request is not one JSON object, or
//! where a number must stay as it is written, such as `7.300`. Texts of
//! warnings and errors are not compared, only that there are some. Numbers that are not whole (angles, areas) may differ by
//! one part in 1e12, as the last digit of an arc tangent does between libraries; all else is the same or wrong.

use serde_json::{Map, Value};

/// The request of a case as the text that is asked.
pub fn request(case: &Value) -> String {
    match (case.get("text").and_then(Value::as_str), case.get("request")) {
        (Some(text), _) => text.to_owned(),
        (None, Some(request)) => request.to_string(),
        (None, None) => String::new(),
    }
}

/// What differs between the answer of a case and the answer that was given; empty where nothing does.
pub fn difference(case: &Value, given: &str) -> Option<String> {
    let Ok(given) = serde_json::from_str::<Value>(given) else { return Some(format!("not JSON: {given}")) };
    if let Some(error) = case.get("error") {
        let Some(own) = given.get("error") else { return Some(format!("wanted {error}, got {given}")) };
        let same = ["code", "field"].into_iter().all(|key| own.get(key) == error.get(key));
        let told = own.get("text").and_then(Value::as_str).is_some_and(|text| text.len() > 8);
        return (!same || !told).then(|| format!("wanted {error}, got {given}"));
    }
    let Some(wanted) = case.get("answer") else {
        return Some("the case has neither an answer nor an error".to_owned());
    };
    let (wanted, given) = (without_texts(wanted.clone()), without_texts(given));
    let same = match case.get("compare").and_then(Value::as_array) {
        Some(fields) => {
            fields.iter().filter_map(Value::as_str).all(|field| match (wanted.get(field), given.get(field)) {
                (Some(wanted), Some(given)) => alike(wanted, given),
                (wanted, given) => wanted == given,
            })
        }
        None => alike(&wanted, &given),
    };
    (!same).then(|| format!("wanted {wanted}\n   got {given}"))
}

/// Whether two values are the same but for the last digits of numbers that are not whole.
fn alike(wanted: &Value, given: &Value) -> bool {
    match (wanted, given) {
        (Value::Number(wanted), Value::Number(given)) if wanted.is_f64() && given.is_f64() => {
            let (Some(wanted), Some(given)) = (wanted.as_f64(), given.as_f64()) else { return false };
            (wanted - given).abs() <= 1e-12 * wanted.abs()
        }
        (Value::Array(wanted), Value::Array(given)) => {
            wanted.len() == given.len() && wanted.iter().zip(given).all(|(wanted, given)| alike(wanted, given))
        }
        (Value::Object(wanted), Value::Object(given)) => {
            wanted.len() == given.len()
                && wanted.iter().all(|(name, wanted)| given.get(name).is_some_and(|given| alike(wanted, given)))
        }
        _ => wanted == given,
    }
}

/// An answer whose warnings' texts are taken out, and whose maps do not depend on the order of their keys.
fn without_texts(mut answer: Value) -> Value {
    if let Some(warnings) = answer.get_mut("warnings").and_then(Value::as_array_mut) {
        for warning in warnings.iter_mut().filter_map(Value::as_object_mut) {
            let _: Option<Value> = Map::remove(warning, "text");
        }
    }
    answer
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn a_case_that_says_nothing_and_an_error_that_does_not_come_are_differences() {
        assert!(difference(&json!({"request": {}}), "{}").is_some());
        assert!(difference(&json!({"error": {"code": "range", "field": "x"}}), r#"{"width": "1\""}"#).is_some());
        assert_eq!(difference(&json!({"answer": {"width": 1}}), r#"{"width": 1}"#), None);
        assert!(difference(&json!({"answer": {"width": 1}}), r#"{"width": 2}"#).is_some());
    }
}
