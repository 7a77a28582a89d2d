//! Every golden answer of `fixtures/answers`, and the JSON Schemas of requests and answers.

use std::fs;

use lapwright::figure::{self, QUESTIONS};
use lapwright_tests::{fixtures, golden, json_files};
use serde_json::Value;

fn run(kind: &str) -> usize {
    let cases = json_files(&fixtures().join("answers").join(kind));
    let mut wrong = Vec::new();
    for (name, case) in &cases {
        let question = case["question"].as_str().unwrap_or_default();
        assert!(case["source"].as_str().is_some_and(|source| !source.is_empty()), "{name} names no source");
        let given = figure::answer(question, &golden::request(case));
        assert_eq!(given.is_error, kind == "invalid", "{name}: {}", given.json);
        wrong.extend(golden::difference(case, &given.json).map(|difference| format!("{name}: {difference}")));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    cases.len()
}

#[test]
fn valid_requests_get_their_answers() {
    assert!(run("valid") >= QUESTIONS.len());
}

#[test]
fn invalid_requests_get_their_errors() {
    assert!(run("invalid") > 0);
}

#[test]
fn every_question_answers_its_own_example() {
    for question in QUESTIONS {
        let answered = figure::answer(question.name, question.example);
        assert!(!answered.is_error, "{}: {}", question.name, answered.json);
    }
}

/// The schemas are made from the shapes that requests are checked with; `LAPWRIGHT_WRITE=1` writes them anew.
#[test]
fn schemas_are_up_to_date() {
    let folder = fixtures().join("schemas");
    for question in QUESTIONS {
        for (kind, schema) in
            [("request", figure::request_schema(question)), ("answer", figure::answer_schema(question))]
        {
            let path = folder.join(format!("{}.{kind}.json", question.name));
            if std::env::var_os("LAPWRIGHT_WRITE").is_some() {
                fs::write(&path, format!("{schema:#}\n")).unwrap();
            }
            let kept: Value = serde_json::from_str(&fs::read_to_string(&path).unwrap_or_default()).unwrap_or_default();
            assert_eq!(kept, schema, "{}", path.display());
        }
    }
}

/// Outside check: the requests and answers of the golden cases against their schemas by a JSON Schema validator
/// (draft 2020-12).
#[test]
fn golden_cases_follow_the_schemas() {
    for (name, case) in json_files(&fixtures().join("answers/valid")) {
        let question = figure::question(case["question"].as_str().unwrap_or_default()).unwrap();
        let request = jsonschema::validator_for(&figure::request_schema(question)).unwrap();
        let answer = jsonschema::validator_for(&figure::answer_schema(question)).unwrap();
        let text = golden::request(&case);
        let asked: Value = serde_json::from_str(&text).unwrap();
        assert!(request.is_valid(&asked), "{name}: {:?}", request.iter_errors(&asked).next());
        let given: Value = serde_json::from_str(&figure::answer(question.name, &text).json).unwrap();
        assert!(answer.is_valid(&given), "{name}: {:?}", answer.iter_errors(&given).next());
    }
}
