//! The page of outside checks against the tests that it lists.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a row without its test must fail")]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// How a source may be known; what is known from memory alone is listed and not counted.
const KNOWN: [&str; 6] = ["read", "quoted", "arithmetic", "reference", "common practice", "memory"];

/// A test with the comment above it, as it stands in its file.
fn test_of(source: &str, name: &str) -> Option<String> {
    let at = source.find(&format!("\nfn {name}()"))?;
    let before = source.get(..at)?;
    let comment: Vec<&str> =
        before.lines().rev().take_while(|line| line.starts_with("///") || line.starts_with("#[")).collect();
    assert!(comment.iter().any(|line| line.starts_with("#[test]")), "{name} is no test");
    let body = source.get(at..)?;
    let end = body.find("\n}\n").map_or(body.len(), |end| end + 3);
    let comment: Vec<&str> = comment.into_iter().rev().collect();
    Some(format!("{}{}", comment.join("\n"), body.get(..end)?))
}

#[test]
fn every_row_has_its_test_and_every_number_stands_in_it() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap();
    let page = fs::read_to_string(root.join("core/docs/outside-checks.md")).unwrap();
    let rows: Vec<Vec<&str>> = page
        .lines()
        .filter(|line| line.starts_with("| tests/") || line.starts_with("| core/"))
        .map(|line| line.trim_matches('|').split(" | ").map(str::trim).collect())
        .collect();
    let (mut counted, mut listed, mut seen) = (0, 0, BTreeSet::new());
    for row in &rows {
        let [file, test, source, known, out] = row.as_slice() else { panic!("{row:?} has not five columns") };
        assert!(seen.insert((*file, *test)), "{test} stands twice");
        assert!(KNOWN.contains(known), "{test}: {known}");
        let code = fs::read_to_string(root.join(file)).unwrap_or_else(|_| panic!("no file {file}"));
        let text = test_of(&code, test).unwrap_or_else(|| panic!("{file} has no test {test}"));
        // The comment may break a line anywhere.
        let text = text.replace("\n/// ", " ");
        assert!(text.contains("assert") || text.contains("close("), "{test} asserts nothing");
        let whole = format!("{code}{text}");
        let named = |source: &str| source.split(['(', ',']).next().is_some_and(|first| whole.contains(first.trim()));
        assert!(source.starts_with("reference: ") || source.split("; ").all(named), "{test} does not name {source}");
        for number in out.split("; ") {
            assert!(text.contains(number) || (*known == "reference" && whole.contains(number)), "{test}: no {number}");
        }
        let checks = out.split("; ").count();
        listed += checks;
        counted += if *known == "memory" { 0 } else { checks };
    }
    println!("outside checks: {counted} counted, {} from memory, in {} tests", listed - counted, rows.len());
    assert!(counted >= LEAST, "{counted} outside checks, less than {LEAST}");
}

/// As many as there are: a check that goes must be seen to go.
const LEAST: usize = 250;
