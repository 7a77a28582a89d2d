//! The `lapwright` command: the core in a terminal.

mod figure;
mod locale;

use std::process::ExitCode;

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    match args.split_first() {
        Some((command, rest)) if command == "figure" => figure::run(rest),
        _ => {
            eprintln!("usage: lapwright figure QUESTION | --list");
            ExitCode::from(2)
        }
    }
}
