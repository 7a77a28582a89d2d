use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};

use crate::{Done, project};

/// A command in the project's folder, with nothing on its standard input.
pub(crate) fn command(program: impl AsRef<Path>, args: &[&str]) -> Command {
    let mut command = Command::new(program.as_ref());
    command.args(args).current_dir(project::root()).stdin(Stdio::null());
    command
}

/// The cargo that runs this task.
pub(crate) fn cargo(args: &[&str]) -> Command {
    command(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()).as_os_str(), args)
}

/// Runs a command to its end.
///
/// # Errors
/// Where it cannot be started or fails, in words that name it.
pub(crate) fn run(mut command: Command) -> Done {
    let line = line(&command);
    let status = command.status().map_err(|error| format!("`{line}` did not start: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("`{line}` failed ({status})")) }
}

/// Runs a command to its end, shows what it prints as it comes and keeps it; also whether it succeeded.
pub(crate) fn watch(mut command: Command) -> Done<(String, Done)> {
    let line = line(&command);
    println!("\n$ {line}");
    let told = |error: std::io::Error| format!("`{line}` did not run: {error}");
    // One pipe for both streams keeps their order.
    let (reader, writer) = std::io::pipe().map_err(told)?;
    let mut child = command.stdout(writer.try_clone().map_err(told)?).stderr(writer).spawn().map_err(told)?;
    // The command holds the pipe's writing end too; without this the reader below would never see its end.
    drop(command);
    let (mut reader, mut printed, mut bytes) = (BufReader::new(reader), String::new(), Vec::new());
    while reader.read_until(b'\n', &mut bytes).map_err(told)? > 0 {
        let text = String::from_utf8_lossy(&bytes).into_owned();
        print!("{text}");
        std::io::stdout().flush().map_err(told)?;
        printed.push_str(&text);
        bytes.clear();
    }
    let status = child.wait().map_err(told)?;
    let done = if status.success() { Ok(()) } else { Err(format!("`{line}` failed ({status})")) };
    Ok((printed, done))
}

/// What a command prints on standard output, if it can be run and succeeds.
pub(crate) fn answer(mut command: Command) -> Option<String> {
    let output = command.stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).into_owned())
}

fn line(command: &Command) -> String {
    let program = Path::new(command.get_program());
    let name = program.file_name().unwrap_or(program.as_os_str()).to_string_lossy().into_owned();
    let args = command.get_args().map(|arg| arg.to_string_lossy().into_owned());
    std::iter::once(name).chain(args).collect::<Vec<_>>().join(" ")
}
