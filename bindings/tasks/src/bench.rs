use std::fs::{self, File};
use std::path::PathBuf;

use crate::{Done, files, project, shell};

/// The benchmarks that print a time each, and the planner's own, of which a few families give an idea in some minutes.
const TIMED: &[&str] = &[
    "bench",
    "--package",
    "lapwright",
    "--bench",
    "notch",
    "--bench",
    "pole",
    "--bench",
    "shapes",
    "--bench",
    "store",
    "--bench",
    "tap",
];
const PLANNED: &[&str] =
    &["bench", "--package", "lapwright", "--bench", "planner", "--", "--seconds", "2", "four/any/", "house/two/"];

/// Runs the benchmarks of the core and closes with a table: name, time and the goal that `core/benches/goals.txt` has
/// for it, one `NAME GOAL` on a line; below it the statements that each tap costs.
pub(crate) fn run() -> Done {
    shell::run(shell::cargo(PLANNED))?;
    let (printed, done) = shell::watch(shell::cargo(TIMED))?;
    done?;
    let times = times(&printed);
    if times.is_empty() {
        return Err("no benchmark ran".to_owned());
    }
    let goals = fs::read_to_string(project::root().join("core/benches/goals.txt")).unwrap_or_default();
    let goal = |name: &str| {
        let of =
            |line: &str| line.split_once(' ').filter(|(own, _)| *own == name).map(|(_, goal)| goal.trim().to_owned());
        goals.lines().find_map(of).unwrap_or_else(|| "-".to_owned())
    };
    println!("\n{:<40} {:>14}   goal", "benchmark", "time");
    for (name, time) in &times {
        println!("{name:<40} {time:>14}   {}", goal(name));
    }
    println!("\nread from the book");
    statements(&printed).iter().for_each(|line| println!("{line}"));
    Ok(())
}

/// What each tap reads, as the benchmarks print it among their times: `HOUSE: TAP: 14 statements, 5 of them reads`.
fn statements(printed: &str) -> Vec<&str> {
    printed.lines().filter(|line| line.ends_with(" of them reads")).collect()
}

/// Families of the planner's bench that are compared with peers: one board length, and a house on four lengths.
const COMPARED: &[&str] = &[
    "exact/2500/50",
    "triplets/1000/120",
    "one/any/200",
    "one/middle/200",
    "one/inches/200",
    "one/long/200",
    "one/short/500",
    "four/any/50",
    "four/any/200",
    "four/any/500",
    "four/any/2000",
];

/// A crew's year of files, a book of a thousand houses and the largest document, optimised and in full: how long they take and
/// how large they are.
pub(crate) fn scale() -> Done {
    let mut command = shell::cargo(&["test", "--release", "--package", "lapwright-tests"]);
    command
        .args(["--test", "store_scale", "--test", "large_document", "--", "--nocapture", "--test-threads", "1"])
        .env("LAPWRIGHT_FAULTS", "full");
    shell::run(command)
}

/// Cutting plans beside those of peers. Ours come first, so that nobody takes the processor from the other.
pub(crate) fn peers(short: bool) -> Done {
    let python = peers_python()?;
    let (lists, seconds) = if short { ("3", "5") } else { ("10", "10") };
    let mut bench =
        vec!["bench", "--quiet", "--package", "lapwright", "--bench", "planner", "--", "--lines", "--exact"];
    bench.extend(["--lists", lists, "--seconds", seconds]);
    bench.extend(COMPARED);
    let file = project::root().join("target/peers.jsonl");
    let told = |error: std::io::Error| format!("{}: {error}", file.display());
    let mut ours = shell::cargo(&bench);
    ours.stdout(File::create(&file).map_err(told)?);
    shell::run(ours)?;
    let mut theirs = shell::command(&python, &["tests/peers/planner.py", seconds]);
    theirs.stdin(File::open(&file).map_err(told)?);
    shell::run(theirs)
}

/// The Python that has the peers: an environment in the user's cache, filled from PyPI once for each list of versions.
fn peers_python() -> Done<PathBuf> {
    let folder = dirs::cache_dir().ok_or("there is no cache folder for the peers")?.join("lapwright-peers");
    let python = folder.join(if cfg!(windows) { "Scripts/python.exe" } else { "bin/python" });
    let wanted = project::root().join("tests/peers/requirements.txt");
    let wanted_text = files::text(&wanted)?;
    // Written last: what is in here has been installed to the end.
    let installed = folder.join("installed.txt");
    if fs::read_to_string(&installed).is_ok_and(|text| text == wanted_text) {
        return Ok(python);
    }
    println!("bringing the peers from PyPI into {}", folder.display());
    shell::run(shell::command("python3", &["-m", "venv", "--clear", &folder.to_string_lossy()]))?;
    let install = ["-m", "pip", "install", "--quiet", "--requirement", &wanted.to_string_lossy()];
    shell::run(shell::command(&python, &install)).map_err(|error| {
        format!("the peers could not be brought from PyPI: is there a network? Nothing was compared. {error}")
    })?;
    files::write(&installed, wanted_text.as_bytes())?;
    Ok(python)
}

/// The name and the middle estimate of each `name   time:   [1.0 ms 1.1 ms 1.2 ms]`; a long name stands on the line
/// before.
fn times(printed: &str) -> Vec<(String, String)> {
    let mut before = "";
    let mut times = Vec::new();
    for line in printed.lines() {
        if let Some((name, rest)) = line.split_once("time:") {
            let name = if name.trim().is_empty() { before } else { name.trim() };
            let words: Vec<&str> = rest.trim().trim_matches(['[', ']']).split_whitespace().collect();
            if let [_, _, middle, unit, _, _] = words.as_slice() {
                times.push((name.to_owned(), format!("{middle} {unit}")));
            }
        }
        before = line.trim();
    }
    times
}

#[cfg(test)]
mod tests {
    use super::{statements, times};

    #[test]
    fn finds_what_a_tap_reads_among_the_times() {
        let printed =
            "large-house: view: 3 statements, 2 of them reads\nkey-large-house   time: [1.1 µs 1.2 µs 1.3 µs]\n";
        assert_eq!(statements(printed), ["large-house: view: 3 statements, 2 of them reads"]);
    }

    #[test]
    fn reads_short_and_long_names() {
        let printed = "pole/fit                time:   [1.10 ms 1.20 ms 1.30 ms]\n\
            Benchmarking a: Warming up\na name that is longer than its column\n\
            \x20                       time:   [9.0 µs 9.1 µs 9.2 µs]\n";
        let want = [("pole/fit", "1.20 ms"), ("a name that is longer than its column", "9.1 µs")];
        assert_eq!(times(printed), want.map(|(name, time)| (name.to_owned(), time.to_owned())));
    }
}
