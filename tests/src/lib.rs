//! Helpers shared by the outside checks.

use std::fs;
use std::path::{Path, PathBuf};

use lapwright::book::Book;
use lapwright::screens::take_in_document;
use lapwright::views::{Context, Outcome};
use serde_json::Value;

pub mod book;
pub mod desk;
pub mod golden;
pub mod plan_check;
pub mod random;
pub mod shim;

/// Who speaks to a book in a check, and when: each call with a number of its own, so that no two ids are alike.
pub fn context(n: u8) -> Context {
    Context {
        now_ms: 1_780_000_000_000 + i64::from(n) * 1_000,
        utc_offset_minutes: 0,
        signer: "Ines".to_owned(),
        language: "en".to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        entropy: vec![n; 16],
    }
}

/// Takes a job document in, and says yes to what is asked about it: checks go to the ends of what can be.
///
/// # Panics
/// Where it is refused.
#[allow(clippy::panic, reason = "a check that has no house must fail")]
pub fn taken_in(book: &mut Book, context: &Context, document: &str) -> Outcome {
    let asked = match take_in_document(book, context, document) {
        Err(problem) if problem.code == "unlikely" => take_in_document(book, context, document),
        taken => taken,
    };
    asked.unwrap_or_else(|problem| panic!("{problem:?}"))
}

/// The folder `fixtures` of the project.
pub fn fixtures() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../fixtures")
}

/// Every JSON file directly in a folder, in order, with its name.
///
/// # Panics
/// Where the folder or a file cannot be read: the checks that need it must fail.
#[allow(clippy::panic, reason = "a check that cannot read its cases must fail")]
pub fn json_files(folder: &Path) -> Vec<(String, Value)> {
    let fail = |path: &Path, why: &dyn std::fmt::Display| -> ! { panic!("{}: {why}", path.display()) };
    let entries = fs::read_dir(folder).unwrap_or_else(|error| fail(folder, &error));
    let mut paths: Vec<PathBuf> = entries.filter_map(|entry| entry.ok().map(|entry| entry.path())).collect();
    paths.retain(|path| path.extension().is_some_and(|extension| extension == "json"));
    paths.sort();
    let read = |path: PathBuf| {
        let text = fs::read_to_string(&path).unwrap_or_else(|error| fail(&path, &error));
        let value = serde_json::from_str(&text).unwrap_or_else(|error| fail(&path, &error));
        let name = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        (name, value)
    };
    paths.into_iter().map(read).collect()
}
