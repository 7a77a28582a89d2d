use std::ops::AddAssign;
use std::path::{Path, PathBuf};

use crate::{Done, files};

/// How many tests a runner says it ran.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Count {
    pub(crate) passed: u64,
    pub(crate) failed: u64,
    pub(crate) skipped: u64,
}

impl AddAssign for Count {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
        self.skipped += other.skipped;
    }
}

impl Count {
    /// What Rust's test programs print, one line each: `test result: ok. 12 passed; 0 failed; 0 ignored; 0 measured; 0
    /// filtered out; finished in 0.01s`. They write reports in no stable form (`core/docs/decisions/counting-tests.md`).
    pub(crate) fn libtest(printed: &str) -> Self {
        let lines = printed.lines().filter(|line| line.starts_with("test result: "));
        total(lines.map(|line| Self {
            passed: before(line, " passed;"),
            failed: before(line, " failed;"),
            skipped: before(line, " ignored;") + before(line, " filtered out;"),
        }))
    }

    /// What JUnit reports say, the XML that test runners agree on.
    ///
    /// # Errors
    /// Where there is none, or one that cannot be read.
    pub(crate) fn junit(reports: &[PathBuf]) -> Done<Self> {
        if reports.is_empty() {
            return Err("no test report was written".to_owned());
        }
        let counts: Vec<Self> = reports.iter().map(|path| of_report(path, &files::text(path)?)).collect::<Done<_>>()?;
        Ok(total(counts.into_iter()))
    }
}

/// `<testsuite tests="5" failures="1" errors="0" skipped="0">`, alone or several in `<testsuites>`.
fn of_report(path: &Path, text: &str) -> Done<Count> {
    let told = |why: &str| format!("{}: {why}", path.display());
    let document = roxmltree::Document::parse(text).map_err(|error| told(&error.to_string()))?;
    let mut sum = Count::default();
    for suite in document.descendants().filter(|node| node.has_tag_name("testsuite")) {
        let number = |name: &str| suite.attribute(name).map_or(Ok(0), str::parse::<u64>);
        let read = || {
            Ok::<_, std::num::ParseIntError>((
                number("tests")?,
                number("failures")? + number("errors")?,
                number("skipped")?,
            ))
        };
        let (tests, failed, skipped) = read().map_err(|error| told(&error.to_string()))?;
        sum += Count { passed: tests.saturating_sub(failed + skipped), failed, skipped };
    }
    Ok(sum)
}

fn total(counts: impl Iterator<Item = Count>) -> Count {
    counts.fold(Count::default(), |mut sum, count| {
        sum += count;
        sum
    })
}

/// The number that stands right before `words`; zero where there is none.
fn before(line: &str, words: &str) -> u64 {
    let number = line.split_once(words).map(|(left, _)| left.rsplit(' ').next().unwrap_or_default());
    number.and_then(|number| number.parse().ok()).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn test_programs_are_added_up() {
        let printed = "test a ... ok\n\
            test result: ok. 12 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.01s\n\
            test result: FAILED. 3 passed; 2 failed; 1 ignored; 0 measured; 4 filtered out; finished in 0.01s\n";
        assert_eq!(Count::libtest(printed), Count { passed: 15, failed: 2, skipped: 5 });
    }

    #[test]
    fn suites_of_a_report_are_added_up() {
        let report = "<?xml version='1.0'?><testsuites><testsuite tests='5' failures='1' errors='1' skipped='1'><testcase/></testsuite>\
            <testsuite tests='2'/></testsuites>";
        assert_eq!(of_report(Path::new("a.xml"), report), Ok(Count { passed: 4, failed: 2, skipped: 1 }));
        assert!(of_report(Path::new("a.xml"), "<testsuite tests='5'").is_err());
        assert!(of_report(Path::new("a.xml"), "<testsuite tests='five'/>").is_err());
    }

    #[test]
    fn no_report_is_no_success() {
        assert!(Count::junit(&[]).is_err());
    }
}
