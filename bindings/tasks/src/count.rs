use std::ops::AddAssign;

/// How many tests a runner says it ran, by its own closing lines.
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
    /// `test result: ok. 12 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.01s`, one for each
    /// test program.
    pub(crate) fn cargo(printed: &str) -> Self {
        let lines = printed.lines().filter(|line| line.starts_with("test result: "));
        total(lines.map(|line| Self {
            passed: before(line, " passed;"),
            failed: before(line, " failed;"),
            skipped: before(line, " ignored;") + before(line, " filtered out;"),
        }))
    }

    /// `Tests run: 5, Failures: 0, Errors: 0, Skipped: 0`, one for each module; the lines of single classes go on with
    /// the time that they took.
    pub(crate) fn surefire(printed: &str) -> Self {
        let lines = printed.lines().filter(|line| line.contains("Tests run: ") && !line.contains("Time elapsed"));
        total(lines.map(|line| {
            let (failed, skipped) = (after(line, "Failures: ") + after(line, "Errors: "), after(line, "Skipped: "));
            Self { passed: after(line, "Tests run: ").saturating_sub(failed + skipped), failed, skipped }
        }))
    }

    /// `Test name() passed after 0.1 seconds.`, one for each test, or `with 17 test cases passed after`, whose cases
    /// are counted; the line of the whole run begins with `Test run`.
    pub(crate) fn swift(printed: &str) -> Self {
        let lines = printed.lines().filter_map(|line| line.split_once("Test ").map(|(_, rest)| rest));
        total(lines.filter(|rest| !rest.starts_with("run ")).map(|rest| {
            let cases = before(rest, " test case").max(1);
            let one = |words: &str, count: u64| if rest.contains(words) { count } else { 0 };
            // Of a test with cases that fails only one failure is certain.
            Self { passed: one(" passed after ", cases), failed: one(" failed after ", 1), skipped: one(" skipped", 1) }
        }))
    }
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

/// The number that stands right after `words`; zero where there is none.
fn after(line: &str, words: &str) -> u64 {
    let rest = line.split_once(words).map(|(_, right)| right).unwrap_or_default();
    rest.split(|c: char| !c.is_ascii_digit()).next().and_then(|number| number.parse().ok()).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn test_programs_of_cargo_are_added_up() {
        let printed = "test a ... ok\n\
            test result: ok. 12 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.01s\n\
            test result: FAILED. 3 passed; 2 failed; 1 ignored; 0 measured; 4 filtered out; finished in 0.01s\n";
        assert_eq!(Count::cargo(printed), Count { passed: 15, failed: 2, skipped: 5 });
    }

    #[test]
    fn classes_are_not_counted_beside_their_module() {
        let printed = "[INFO] Tests run: 4, Failures: 0, Errors: 0, Skipped: 0, Time elapsed: 0.1 s -- in BoundaryTest\n\
            [ERROR] Tests run: 21, Failures: 1, Errors: 2, Skipped: 1\n";
        assert_eq!(Count::surefire(printed), Count { passed: 17, failed: 3, skipped: 1 });
    }

    #[test]
    fn cases_of_swift_tests_are_counted() {
        let printed = "◇ Test run started.\n◇ Test cross() started.\n\
            ✔ Test cross() passed after 0.001 seconds.\n\
            ✔ Test answers(_:) with 17 test cases passed after 0.001 seconds.\n\
            ✘ Test errors(_:) with 13 test cases failed after 0.001 seconds with 2 issues.\n\
            ✘ Test run with 3 tests failed after 0.002 seconds with 2 issues.\n";
        assert_eq!(Count::swift(printed), Count { passed: 18, failed: 1, skipped: 0 });
    }
}
