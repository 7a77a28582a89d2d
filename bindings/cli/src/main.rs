//! The `lapwright` command: the core in a terminal.

mod book;
mod drawing;
mod elevation;
mod fault;
mod figure;
mod find;
mod help;
mod locale;
mod manual;
mod misuse;
mod options;
mod paper;
mod run;
mod show;
mod walk;

use std::ffi::OsString;
use std::process::ExitCode;

use clap::error::ErrorKind;
use clap::{CommandFactory as _, FromArgMatches as _};
use fault::Fault;
use options::{Command, Task};

fn main() -> ExitCode {
    let args: Vec<OsString> = std::env::args_os().collect();
    let read = Command::command().try_get_matches_from(&args);
    let command = match read.and_then(|matches| Ok((Command::from_arg_matches(&matches)?, matches))) {
        Ok((command, matches)) => match misuse::answered_twice(&matches) {
            None => command,
            Some(fault) => return refuse(&fault, &args),
        },
        Err(_) => return explain(&args),
    };
    match command.task.unwrap_or(Task::Demo { anew: false }) {
        Task::Figure { list: true, .. } => figure::list(),
        Task::Figure { question: Some(question), .. } => {
            locale::choose(locale::of_call(&args));
            figure::answer(&question)
        }
        task => match manual::printed(&task, &args) {
            Some(printed) => run::printed(printed),
            None => run::run(&command.options, &task, misuse::example(&args).as_deref()),
        },
    }
}

/// Prints what was asked of the command itself, or says why the call cannot be read: in the language of the call.
fn explain(args: &[OsString]) -> ExitCode {
    locale::choose(locale::of_call(args));
    let Err(error) = help::command(locale::chosen()).try_get_matches_from(args) else { return ExitCode::FAILURE };
    match error.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => match misuse::words(args).as_slice() {
            [figure, question, ..] if figure == "figure" => figure::help(question),
            _ => run::ended(error.print()),
        },
        _ => refuse(&misuse::fault(&error, args), args),
    }
}

/// Says why a call is not carried out; a question is answered in JSON, whatever the answer is.
fn refuse(fault: &Fault, args: &[OsString]) -> ExitCode {
    let asks = misuse::task(args).is_some_and(|task| task == "figure");
    fault.say(asks || args.iter().any(|arg| arg == "--json"));
    ExitCode::from(2)
}
