//! What the command says of itself to a shell and to man.

use std::io;

use clap::CommandFactory as _;

use crate::options::{Command, Task};

/// What a task prints that needs no book.
pub(crate) fn printed(task: &Task) -> Option<io::Result<Vec<u8>>> {
    let (mut command, mut text) = (Command::command(), Vec::new());
    match task {
        Task::Completions { shell } => {
            clap_complete::generate(*shell, &mut command, "lapwright", &mut text);
            Some(Ok(text))
        }
        Task::Man => Some(pages(&command, &mut text).map(|()| text)),
        _ => None,
    }
}

/// The page of the command, and behind it what each of its commands takes.
fn pages(command: &clap::Command, text: &mut Vec<u8>) -> io::Result<()> {
    // Built, each command knows its whole name.
    let mut command = command.clone();
    command.build();
    clap_mangen::Man::new(command.clone()).render(text)?;
    for task in command.get_subcommands() {
        let man = clap_mangen::Man::new(task.clone());
        man.render_description_section(text)?;
        man.render_synopsis_section(text)?;
        man.render_options_section(text)?;
    }
    Ok(())
}
