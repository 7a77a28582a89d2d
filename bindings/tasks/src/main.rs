//! `cargo xtask`: the chores of the project.

mod android;
mod app;
mod bench;
mod bindings;
mod count;
mod debian;
mod faults;
mod files;
mod font;
mod ios;
mod packages;
mod project;
mod shell;
mod swift;
mod test;

use std::process::ExitCode;

const USAGE: &str = "usage: cargo xtask TASK
  app [--demo] [--book FILE] [--pictures FOLDER [--only NAME]...]
                             the screens in a window, or as pictures
  test [LAYER]               every suite, layer by layer up to the first with a fault: form, core, outside, shells;
                             or one layer, or rust (the first three), kotlin, swift
  bindings [kotlin|swift]    the library of this machine and the generated sources that call it
  android                    the libraries of Android's processors, for Gradle; needs the NDK
  ios                        on a Mac: all that Xcode needs for the app in ios/App
  faults                     the book under faults, with full counts: kills, failing calls, damage, cut and changed files
  bench                      the times of the core, beside their goals
  bench --scale              a crew that hands files to each other for a year, and a book of a thousand houses
  bench --peers [--short]    cutting plans beside those of peers, which Python brings in; short: three lists of a family";

/// What a task ends with: a text that says what went wrong.
type Done<T = ()> = Result<T, String>;

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = args.iter().map(String::as_str).collect();
    let done = match words.as_slice() {
        ["test"] => test::run(test::Suite::ALL),
        ["test", name] if let Some(suites) = test::Suite::named(name) => test::run(suites),
        ["bindings"] => bindings::kotlin().and_then(|()| bindings::swift()),
        ["bindings", "kotlin"] => bindings::kotlin(),
        ["bindings", "swift"] => bindings::swift(),
        ["android"] => android::build(),
        ["app", args @ ..] => app::run(args),
        ["ios"] => ios::build(),
        ["faults"] => faults::run(),
        ["bench"] => bench::run(),
        ["bench", "--scale"] => bench::scale(),
        ["bench", "--peers"] => bench::peers(false),
        ["bench", "--peers", "--short"] => bench::peers(true),
        _ => {
            eprintln!("{USAGE}");
            return ExitCode::from(2);
        }
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("xtask: {error}");
            ExitCode::FAILURE
        }
    }
}
