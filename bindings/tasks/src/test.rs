use std::env;
use std::process::Command;
use std::time::Instant;

use crate::count::Count;
use crate::swift::{Swift, sources};
use crate::{Done, bindings, debian, files, packages, project, shell};

/// Tests and checks that run together. Each stands on those before it, so that nobody waits for a phone's tests to learn that a
/// line is too long.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Layer {
    /// What can be said without running anything.
    Form,
    /// Each crate by itself.
    Core,
    /// The whole from outside: published sources, other libraries, faults.
    Outside,
    /// The apps.
    Shells,
}

/// A part of a layer, with its own line in the closing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Suite {
    Form,
    Core,
    Outside,
    Kotlin,
    Swift,
}

impl Suite {
    pub(crate) const ALL: &[Self] = &[Self::Form, Self::Core, Self::Outside, Self::Kotlin, Self::Swift];

    /// What a word of the command asks for.
    pub(crate) fn named(name: &str) -> Option<&'static [Self]> {
        Some(match name {
            "form" => &[Self::Form],
            "core" => &[Self::Core],
            "outside" => &[Self::Outside],
            "rust" => &[Self::Form, Self::Core, Self::Outside],
            "shells" => &[Self::Kotlin, Self::Swift],
            "kotlin" => &[Self::Kotlin],
            "swift" => &[Self::Swift],
            _ => return None,
        })
    }

    fn name(self) -> &'static str {
        match self {
            Self::Form => "form",
            Self::Core => "core",
            Self::Outside => "outside",
            Self::Kotlin => "kotlin",
            Self::Swift => "swift",
        }
    }

    fn layer(self) -> Layer {
        match self {
            Self::Form => Layer::Form,
            Self::Core => Layer::Core,
            Self::Outside => Layer::Outside,
            Self::Kotlin | Self::Swift => Layer::Shells,
        }
    }

    fn run(self, result: &mut Outcome) -> Done {
        match self {
            Self::Form => form(result),
            Self::Core => result.cargo_tests(&["--lib", "--bins"]),
            Self::Outside => {
                // What a check has counted is part of what it found.
                result.cargo_tests(&["--test", "*", "--", "--show-output"])?;
                result.cargo_tests(&["--doc"])
            }
            Self::Kotlin => kotlin(result),
            Self::Swift => swift(result),
        }
    }
}

/// What became of a suite.
#[derive(Default)]
struct Outcome {
    count: Count,
    faults: Vec<String>,
}

impl Outcome {
    /// Runs a check that has no tests to count.
    fn check(&mut self, command: Command) -> Done {
        let (_, done) = shell::watch(command)?;
        self.faults.extend(done.err());
        Ok(())
    }

    /// Looks at something without another program.
    fn look(&mut self, name: &str, faults: Done<Vec<String>>) {
        println!("\n# {name}");
        let faults = faults.unwrap_or_else(|error| vec![error]);
        faults.iter().for_each(|fault| println!("{fault}"));
        self.faults.extend(faults);
    }

    /// Runs tests, and counts them by what the runner prints or has written.
    fn tests(&mut self, command: Command, counted: impl FnOnce(&str) -> Done<Count>) -> Done {
        let (printed, done) = shell::watch(command)?;
        self.faults.extend(done.err());
        let count = counted(&printed)?;
        if count.passed + count.failed == 0 {
            self.faults.push("no test ran".to_owned());
        }
        if count.skipped > 0 {
            self.faults.push(format!("{} tests were skipped", count.skipped));
        }
        self.count += count;
        Ok(())
    }

    fn cargo_tests(&mut self, targets: &[&str]) -> Done {
        let mut tests = shell::cargo(&["test", "--workspace", "--no-fail-fast"]);
        tests.args(targets);
        if env::var_os(SEED.0).is_none() {
            tests.env(SEED.0, SEED.1);
        }
        self.tests(tests, |printed| Ok(Count::libtest(printed)))
    }
}

/// Runs suites layer by layer, up to the first layer with a fault, and closes with the counts.
pub(crate) fn run(suites: &[Suite]) -> Done {
    let mut closing = Vec::new();
    let mut total = Count::default();
    let mut broken: Option<Layer> = None;
    for suite in suites {
        if broken.is_some_and(|layer| layer < suite.layer()) {
            closing.push(format!("{:<8}not run", suite.name()));
            continue;
        }
        let (mut outcome, start) = (Outcome::default(), Instant::now());
        let done = suite.run(&mut outcome);
        outcome.faults.extend(done.err());
        let seconds = start.elapsed().as_secs();
        let Count { passed, failed, .. } = outcome.count;
        closing.push(format!("{:<8}{passed} passed, {failed} failed, in {seconds} s", suite.name()));
        closing.extend(outcome.faults.iter().map(|fault| format!("        {fault}")));
        let whole = failed == 0 && outcome.faults.is_empty();
        // A suite that went wrong beside its tests counts as one failure, so that the last line never hides it.
        let beside = u64::from(failed == 0 && !whole);
        total += Count { failed: failed + beside, ..outcome.count };
        if !whole {
            broken = broken.or(Some(suite.layer()));
        }
    }
    println!("\n{}\n\n{} passed, {} failed", closing.join("\n"), total.passed, total.failed);
    if broken.is_none() { Ok(()) } else { Err("not everything passed".to_owned()) }
}

/// What the random cases of the tests start from, unless the environment says another: the same in every run, so that a
/// red run comes of a change. Other seeds look for new cases.
const SEED: (&str, &str) = ("PROPTEST_RNG_SEED", "64");

fn form(outcome: &mut Outcome) -> Done {
    outcome.check(shell::cargo(&["fmt", "--all", "--check"]))?;
    outcome.look(
        "licences, sources, versions and use of packages",
        packages::all().and_then(|all| packages::faults(&all)),
    );
    outcome.check(shell::cargo(&["clippy", "--workspace", "--all-targets", "--", "-D", "warnings"]))?;
    let mut doc = shell::cargo(&["doc", "--workspace", "--no-deps"]);
    doc.env("RUSTDOCFLAGS", "-D warnings");
    outcome.check(doc)
}

fn kotlin(outcome: &mut Outcome) -> Done {
    if shell::answer(shell::command("mvn", &["--version"])).is_none() {
        return Err("Maven and a JDK of version 17 or later are needed (on Debian: apt install maven openjdk-17-jdk): `mvn --version` does not run".to_owned());
    }
    for tool in [debian::AAPT, debian::XVFB] {
        debian::ready(&tool)?;
    }
    bindings::kotlin()?;
    let android = project::root().join("android");
    let reports =
        ["bindings", "screens", "app", "desk"].map(|module| android.join(module).join("target/surefire-reports"));
    // Those of an earlier run would be counted, too.
    for folder in &reports {
        files::remove(folder)?;
    }
    let mut maven = shell::command("mvn", &["--batch-mode", "--no-transfer-progress", "--fail-at-end", "test"]);
    // Maven reads `.mvn` of the folder that it is started in.
    maven.current_dir(&android);
    outcome.tests(maven, |_| {
        let mut all = Vec::new();
        for folder in &reports {
            let mut written = files::of_folder(folder)?;
            written.retain(|path| path.extension().is_some_and(|extension| extension == "xml"));
            if written.is_empty() {
                return Err(format!("no test wrote a report in {}", folder.display()));
            }
            all.extend(written);
        }
        Count::junit(&all)
    })
}

fn swift(outcome: &mut Outcome) -> Done {
    let swift = Swift::find()?;
    bindings::swift()?;
    let form = ["format", "lint", "--strict", "--recursive", "Package.swift", "Sources", "Tests", "../App/Sources"];
    outcome.check(swift.command(&form))?;
    // The screens and the app need a phone. Here they are read, and compiled against the names in `Tests/Stubs`.
    let drawn = sources(&["Sources/LapwrightScreens", "../App/Sources"])?;
    outcome.check(swift.tool("swiftc", &with(&["-parse"], &drawn)))?;
    outcome.check(swift.command(&["build", "--build-tests"]))?;
    // On a Mac Xcode compiles the app itself.
    if cfg!(target_os = "linux") {
        let app = sources(&["../App/Sources"])?;
        // Races between threads are looked for behind the types, in the intermediate language of all files together.
        let races = ["-emit-sil", "-wmo", "-o", "/dev/null", "-warnings-as-errors", "-swift-version", "6"];
        let modules = [&races[..], &["-I", ".build/debug/Modules", "-I", "Generated/LapwrightFFI"]].concat();
        outcome.check(swift.tool("swiftc", &with(&modules, &app)))?;
    }
    let report = project::root().join("ios/Lapwright/.build/reports");
    files::remove(&report)?;
    // It writes its reports only where their folder is.
    std::fs::create_dir_all(&report).map_err(|error| format!("{}: {error}", report.display()))?;
    let tests = swift.command(&["test", "--xunit-output", ".build/reports/tests.xml"]);
    outcome.tests(tests, |_| Count::junit(&files::of_folder(&report)?))
}

fn with<'a>(options: &[&'a str], files: &'a [String]) -> Vec<&'a str> {
    options.iter().copied().chain(files.iter().map(String::as_str)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn layers_come_in_their_order_and_each_has_a_word() {
        assert!(Suite::ALL.is_sorted_by_key(|suite| suite.layer()));
        for suite in Suite::ALL {
            assert_eq!(Suite::named(suite.name()), Some(&[*suite][..]));
        }
        let parts = ["rust", "shells"].map(|name| Suite::named(name).unwrap()).concat();
        assert_eq!(parts, Suite::ALL);
    }
}
