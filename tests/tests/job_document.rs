//! The job document against its published schema: JSON Schema draft 2020-12, checked by a library that is not ours.

use std::fs;
use std::path::PathBuf;

use lapwright::book::Book;
use lapwright::handover::{job_document, job_document_schema};
use lapwright::screens::take_in_document;
use lapwright::views::{Context, Place};
use serde_json::{Value, json};

fn read(name: &str) -> String {
    let fixtures = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../fixtures");
    fs::read_to_string(fixtures.join(name)).unwrap()
}

fn context(entropy: u8) -> Context {
    Context {
        now_ms: 1_777_896_000_000,
        utc_offset_minutes: -420,
        signer: "Ines".to_owned(),
        language: "en".to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        entropy: vec![entropy; 16],
    }
}

fn schema() -> jsonschema::Validator {
    let schema: Value = serde_json::from_str(&read("schemas/job-document.json")).unwrap();
    assert!(jsonschema::draft202012::meta::is_valid(&schema));
    jsonschema::draft202012::new(&schema).unwrap()
}

fn through_a_book(text: &str, entropy: u8) -> String {
    let mut book = Book::in_memory().unwrap();
    let outcome = take_in_document(&mut book, &context(entropy), text).unwrap();
    let Place::House { job } = outcome.place else { panic!("a house opens") };
    job_document(&book, &context(entropy), &job).unwrap()
}

/// `LAPWRIGHT_WRITE=1` writes it anew.
#[test]
fn the_published_schema_is_the_programs_own() {
    if std::env::var_os("LAPWRIGHT_WRITE").is_some() {
        std::fs::write(lapwright_tests::fixtures().join("schemas/job-document.json"), job_document_schema()).unwrap();
    }
    assert_eq!(read("schemas/job-document.json"), job_document_schema());
}

#[test]
fn the_demo_and_what_goes_out_are_valid() {
    let demo: Value = serde_json::from_str(&read("demo/house.json")).unwrap();
    let errors: Vec<String> = schema().iter_errors(&demo).map(|error| format!("{error}")).collect();
    assert_eq!(errors, Vec::<String>::new());
    let once = through_a_book(&read("demo/house.json"), 1);
    assert!(schema().is_valid(&serde_json::from_str(&once).unwrap()), "{once}");
    assert_eq!(through_a_book(&once, 2), once);
}

#[test]
fn what_the_schema_refuses_the_program_refuses() {
    let demo: Value = serde_json::from_str(&read("demo/house.json")).unwrap();
    let schema = schema();
    for (pointer, value) in [
        ("/lapwright", json!(2)),
        ("/name", json!("")),
        ("/lap", json!(1.25)),
        ("/rules", json!("moon")),
        ("/stock", json!({})),
        ("/stock/0/count", json!(-1)),
        ("/pole/mode", json!("guess")),
        ("/walls/0/openings/0", json!({ "hinge": "left" })),
        ("/walls/0/width", json!({ "planned": 3 })),
        ("/walls/1/penetrations/0/what", json!("chimney")),
        ("/walls/1/name", json!(7)),
    ] {
        let mut changed = demo.clone();
        *changed.pointer_mut(pointer).unwrap() = value;
        assert!(!schema.is_valid(&changed), "{pointer}: the schema takes it");
        let mut book = Book::in_memory().unwrap();
        let refused = take_in_document(&mut book, &context(3), &changed.to_string());
        assert!(refused.is_err(), "{pointer}: the program takes it");
    }
}
