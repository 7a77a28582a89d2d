use std::fs;
use std::process::Stdio;

use crate::{Done, project, shell};

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
    "store",
    "--bench",
    "board_view",
];
const PLANNED: &[&str] =
    &["bench", "--package", "lapwright", "--bench", "planner", "--", "--seconds", "2", "four/any/", "house/two/"];

/// Runs the benchmarks of the core and closes with a table: name, time and the goal that `core/benches/goals.txt` has
/// for it, one `NAME GOAL` on a line.
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
    Ok(())
}

/// Families of the planner's bench that are compared with peers: house-size lists and classes of the literature.
const COMPARED: &[&str] =
    &["four/any/", "four/middle/", "uniform/150/", "triplets/1000/", "spread/3/", "hundred-thousand/"];

/// Cutting plans beside those of peers, which come from PyPI into an environment under `target`.
pub(crate) fn peers() -> Done {
    let folder = project::root().join("target/peers");
    let python = folder.join(if cfg!(windows) { "Scripts/python.exe" } else { "bin/python" });
    if !python.exists() {
        let path = folder.to_string_lossy().into_owned();
        shell::run(shell::command("python3", &["-m", "venv", &path]))?;
    }
    let wanted = "tests/peers/requirements.txt";
    shell::run(shell::command(&python, &["-m", "pip", "install", "--quiet", "--requirement", wanted]))?;
    let mut bench = vec!["bench", "--quiet", "--package", "lapwright", "--bench", "planner", "--", "--lines"];
    bench.extend(COMPARED);
    let mut ours = shell::cargo(&bench);
    let mut ours = ours.stdout(Stdio::piped()).spawn().map_err(|error| format!("the bench did not start: {error}"))?;
    let lines = ours.stdout.take().ok_or("the bench gives no lines")?;
    let mut theirs = shell::command(&python, &["tests/peers/planner.py", "10"]);
    theirs.stdin(lines);
    shell::run(theirs)?;
    let status = ours.wait().map_err(|error| format!("the bench did not end: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("the bench failed ({status})")) }
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
    use super::times;

    #[test]
    fn reads_short_and_long_names() {
        let printed = "pole/fit                time:   [1.10 ms 1.20 ms 1.30 ms]\n\
            Benchmarking a: Warming up\na name that is longer than its column\n\
            \x20                       time:   [9.0 µs 9.1 µs 9.2 µs]\n";
        let want = [("pole/fit", "1.20 ms"), ("a name that is longer than its column", "9.1 µs")];
        assert_eq!(times(printed), want.map(|(name, time)| (name.to_owned(), time.to_owned())));
    }
}
