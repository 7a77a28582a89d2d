use std::time::Instant;

use crate::{Done, shell};

/// The tests that put faults in: each says how many in a line that begins with `MARK`.
const TESTS: &[&str] = &[
    "store_faults",
    "store_calls",
    "store_recovery",
    "store_exchange",
    "store_fuzz",
    "store_schema",
    "frozen_book",
    "fuzz_figure",
];
const MARK: &str = "faults: ";

/// Runs them with full counts, and closes with what was done to the book and what came of it.
pub(crate) fn run() -> Done {
    let start = Instant::now();
    let mut command = shell::cargo(&["test", "--package", "lapwright-tests", "--no-fail-fast"]);
    command.args(TESTS.iter().flat_map(|test| ["--test", test])).args(["--", "--nocapture"]);
    command.env("LAPWRIGHT_FAULTS", "full");
    let (printed, done) = shell::watch(command)?;
    // What a test prints may stand behind what the runner has begun to say of another one.
    let counts: Vec<&str> = printed.lines().filter_map(|line| line.get(line.find(MARK)? + MARK.len()..)).collect();
    println!("\n{}\nin {} s", counts.join("\n"), start.elapsed().as_secs());
    if counts.is_empty() {
        return Err("no fault was put in".to_owned());
    }
    done
}
