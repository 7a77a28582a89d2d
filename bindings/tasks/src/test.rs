use std::env;
use std::process::Command;
use std::time::Instant;

use crate::count::Count;
use crate::swift::{Swift, sources};
use crate::{Done, bindings, debian, shell};

/// The languages that have suites.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Language {
    Rust,
    Kotlin,
    Swift,
}

impl Language {
    pub(crate) const ALL: [Self; 3] = [Self::Rust, Self::Kotlin, Self::Swift];

    pub(crate) fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.name() == name)
    }

    fn name(self) -> &'static str {
        match self {
            Self::Rust => "rust",
            Self::Kotlin => "kotlin",
            Self::Swift => "swift",
        }
    }

    fn run(self, suite: &mut Suite) -> Done {
        match self {
            Self::Rust => rust(suite),
            Self::Kotlin => kotlin(suite),
            Self::Swift => swift(suite),
        }
    }
}

/// One language's tests and checks, and what became of them.
#[derive(Default)]
struct Suite {
    count: Count,
    faults: Vec<String>,
}

impl Suite {
    /// Runs a check that has no tests to count.
    fn check(&mut self, command: Command) -> Done {
        let (_, done) = shell::watch(command)?;
        self.faults.extend(done.err());
        Ok(())
    }

    /// Runs tests and counts them by what the runner prints.
    fn tests(&mut self, command: Command, counted: fn(&str) -> Count) -> Done {
        let (printed, done) = shell::watch(command)?;
        let count = counted(&printed);
        if count.passed + count.failed == 0 {
            self.faults.push("no test ran".to_owned());
        }
        if count.skipped > 0 {
            self.faults.push(format!("{} tests were skipped", count.skipped));
        }
        self.count += count;
        self.faults.extend(done.err());
        Ok(())
    }
}

/// Runs the suites of these languages, all of them whatever fails, and closes with the counts.
pub(crate) fn run(languages: &[Language]) -> Done {
    let mut closing = Vec::new();
    let mut total = Count::default();
    let mut whole = true;
    for language in languages {
        let (mut suite, start) = (Suite::default(), Instant::now());
        let done = language.run(&mut suite);
        suite.faults.extend(done.err());
        let seconds = start.elapsed().as_secs();
        let Count { passed, failed, .. } = suite.count;
        closing.push(format!("{:<8}{passed} passed, {failed} failed, in {seconds} s", language.name()));
        closing.extend(suite.faults.iter().map(|fault| format!("        {fault}")));
        // A suite that went wrong beside its tests counts as one failure, so that the last line never hides it.
        let beside = u64::from(failed == 0 && !suite.faults.is_empty());
        total += Count { failed: failed + beside, ..suite.count };
        whole &= failed == 0 && suite.faults.is_empty();
    }
    println!("\n{}\n\n{} passed, {} failed", closing.join("\n"), total.passed, total.failed);
    if whole { Ok(()) } else { Err("not everything passed".to_owned()) }
}

/// What the random cases of the tests start from, unless the environment says another: the same in every run, so that a
/// red run comes of a change. Other seeds look for new cases.
const SEED: (&str, &str) = ("PROPTEST_RNG_SEED", "64");

fn rust(suite: &mut Suite) -> Done {
    suite.check(shell::cargo(&["fmt", "--all", "--check"]))?;
    suite.check(shell::cargo(&["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"]))?;
    let mut tests = shell::cargo(&["test", "--workspace", "--no-fail-fast"]);
    if env::var_os(SEED.0).is_none() {
        tests.env(SEED.0, SEED.1);
    }
    suite.tests(tests, Count::cargo)?;
    let mut doc = shell::cargo(&["doc", "--workspace", "--no-deps"]);
    doc.env("RUSTDOCFLAGS", "-D warnings");
    suite.check(doc)
}

fn kotlin(suite: &mut Suite) -> Done {
    if shell::answer(shell::command("mvn", &["--version"])).is_none() {
        return Err("Maven and a JDK of version 17 or later are needed (on Debian: apt install maven openjdk-17-jdk): `mvn --version` does not run".to_owned());
    }
    for tool in [debian::AAPT, debian::XVFB] {
        debian::ready(&tool)?;
    }
    bindings::kotlin()?;
    let mut maven = shell::command("mvn", &["--batch-mode", "--no-transfer-progress", "--fail-at-end", "test"]);
    // Maven reads `.mvn` of the folder that it is started in.
    maven.current_dir(crate::project::root().join("android"));
    suite.tests(maven, Count::surefire)
}

fn swift(suite: &mut Suite) -> Done {
    let swift = Swift::find()?;
    bindings::swift()?;
    let form = ["format", "lint", "--strict", "--recursive", "Package.swift", "Sources", "Tests", "../App/Sources"];
    suite.check(swift.command(&form))?;
    // The screens and the app need a phone. Here they are read, and compiled against the names in `Tests/Stubs`.
    let drawn = sources(&["Sources/LapwrightScreens", "../App/Sources"])?;
    suite.check(swift.tool("swiftc", &with(&["-parse"], &drawn)))?;
    suite.check(swift.command(&["build", "--build-tests"]))?;
    // On a Mac Xcode compiles the app itself.
    if cfg!(target_os = "linux") {
        let app = sources(&["../App/Sources"])?;
        let modules =
            ["-typecheck", "-swift-version", "6", "-I", ".build/debug/Modules", "-I", "Generated/LapwrightFFI"];
        suite.check(swift.tool("swiftc", &with(&modules, &app)))?;
    }
    suite.tests(swift.command(&["test"]), Count::swift)
}

fn with<'a>(options: &[&'a str], files: &'a [String]) -> Vec<&'a str> {
    options.iter().copied().chain(files.iter().map(String::as_str)).collect()
}
