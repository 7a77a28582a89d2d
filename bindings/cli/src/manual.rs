//! What the command says of itself to a shell and to man.

use std::ffi::OsString;
use std::io;

use lapwright::phrases::{Language, Phrases};

use crate::help;
use crate::locale;
use crate::options::Task;

/// What a task prints that needs no book.
pub(crate) fn printed(task: &Task, args: &[OsString]) -> Option<io::Result<String>> {
    match task {
        Task::Completions { shell } => {
            let mut text = Vec::new();
            clap_complete::generate(*shell, &mut help::command(locale::of_call(args)), "lapwright", &mut text);
            Some(Ok(String::from_utf8_lossy(&text).into_owned()))
        }
        Task::Man => Some(pages(locale::of_call(args))),
        _ => None,
    }
}

/// The page of the command, and behind it what each of its commands takes.
fn pages(language: Language) -> io::Result<String> {
    // Built, each command knows its whole name.
    let mut command = help::command(language);
    command.build();
    let mut text = Vec::new();
    clap_mangen::Man::new(command.clone()).render(&mut text)?;
    for task in command.get_subcommands() {
        let man = clap_mangen::Man::new(task.clone());
        man.render_description_section(&mut text)?;
        man.render_synopsis_section(&mut text)?;
        man.render_options_section(&mut text)?;
        man.render_extra_section(&mut text)?;
    }
    Ok(headed(&String::from_utf8_lossy(&text), Phrases::for_language(language)))
}

/// The pages with headings in their language: the library writes its own in English.
fn headed(pages: &str, phrases: &Phrases) -> String {
    let heading = |line: &str| {
        let key = match line.strip_prefix(".SH ")? {
            "NAME" => "command-man-name",
            "SYNOPSIS" => "command-man-synopsis",
            "DESCRIPTION" => "command-man-description",
            "VERSION" => "command-man-version",
            "OPTIONS" => "command-options",
            "EXTRA" => return Some(String::new()),
            _ => return None,
        };
        Some(format!(".SH {}", phrases.phrase(key, &[]).to_uppercase()))
    };
    let line = |line: &str| heading(line).unwrap_or_else(|| line.to_owned());
    pages.lines().map(|text| line(text) + "\n").collect()
}
