//! The `lapwright` command: the core in a terminal.

mod book;
mod drawing;
mod elevation;
mod fault;
mod figure;
mod find;
mod locale;
mod manual;
mod options;
mod paper;
mod run;
mod show;
mod walk;

use std::process::ExitCode;

use clap::Parser as _;
use options::{Command, Task};

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args_os().skip(1).map(|arg| arg.to_string_lossy().into_owned()).collect();
    // The questions have a help of their own, so they are taken before the other commands are read.
    if let Some((first, rest)) = args.split_first()
        && first == "figure"
    {
        return figure::run(rest);
    }
    let command = Command::parse();
    if let Some(printed) = command.task.as_ref().and_then(manual::printed) {
        return run::printed(printed);
    }
    run::run(&command.options, &command.task.unwrap_or(Task::Demo { anew: false }))
}
