//! What an app does in a day, on the book that it is given: opens it, answers, takes back, keeps copies, hands a file on,
//! checks. Prints each group once it is acknowledged. What fails is said and the next thing is tried, as a person would.

use std::io::Write as _;
use std::path::{Path, PathBuf};

use lapwright::store::{Overwrite, StoreError, write_file};
use lapwright_tests::book::{answer, entries, now, open, options};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let path: PathBuf = std::env::args_os().nth(1).ok_or("name a book")?.into();
    let mut failed = 0;
    let mut said = |what: &str, error: StoreError| {
        eprintln!("{what}: {error}");
        failed += 1;
    };
    let mut store = match open(&path) {
        Ok(opened) => {
            eprintln!("opened: {:?}", opened.opening);
            opened.store
        }
        Err(error) => {
            said("open", error);
            std::process::exit(1);
        }
    };
    let from = entries(&store)?.len() as i64 * 100;
    let acknowledge = |group: lapwright::store::Id| {
        let mut out = std::io::stdout().lock();
        let _ = writeln!(out, "{group}").and_then(|()| out.flush());
    };
    for ms in from + 1..from + 4 {
        if entries(&store)?.is_empty() {
            answer(&mut store, 0).map_or_else(|error| said("make", error), |outcome| acknowledge(outcome.group));
        }
        answer(&mut store, ms).map_or_else(|error| said("answer", error), |outcome| acknowledge(outcome.group));
    }
    let copies = options(&path).backups.unwrap_or_default();
    store.backup(copies, now(from + 1_780_000_000_000)).map_or_else(|error| said("backup", error), |_| ());
    store.draft_put("key", "typed").unwrap_or_else(|error| said("draft", error));
    answer(&mut store, from + 10).map_or_else(|error| said("answer", error), |outcome| acknowledge(outcome.group));
    store.copy(beside(&path, "copy")).unwrap_or_else(|error| said("copy", error));
    write_file(beside(&path, "house.json"), &[b'x'; 9_000], Overwrite::PlainFiles)
        .unwrap_or_else(|error| said("file", error));
    match store.check() {
        Ok(report) if report.is_good() => {}
        Ok(report) => said("check", StoreError::Damaged(format!("{report:?}"))),
        Err(error) => said("check", error),
    }
    answer(&mut store, from + 11).map_or_else(|error| said("answer", error), |outcome| acknowledge(outcome.group));
    drop(store);
    std::process::exit(i32::from(failed > 0));
}

fn beside(path: &Path, name: &str) -> PathBuf {
    path.with_file_name(name)
}
