use std::process::Command;

use crate::{Done, shell};

/// A program that the tests need and that a package of Debian has.
pub(crate) struct Tool {
    program: &'static str,
    /// What it answers when it is asked whether it runs.
    question: &'static str,
    package: &'static str,
    /// What it does for us, and where it comes from where there is no `apt`.
    does: &'static str,
    elsewhere: &'static str,
}

/// Packs the Android app's resources.
pub(crate) const AAPT: Tool = Tool {
    program: "aapt2",
    question: "version",
    package: "aapt",
    does: "packs the Android app's resources",
    elsewhere: "install Android's build tools",
};

/// The display on which the window is clicked.
pub(crate) const XVFB: Tool = Tool {
    program: "Xvfb",
    question: "-help",
    package: "xvfb",
    does: "is the display that the window is clicked on",
    elsewhere: "install it from the X.Org project",
};

/// Sees to it that a tool is there: the machine's own, else on Debian, as root, the one of its package.
///
/// # Errors
/// Where there is none and none can be brought, with what is missing.
pub(crate) fn ready(tool: &Tool) -> Done {
    let Tool { program, question, package, does, elsewhere } = tool;
    // Whether it starts at all: not every program answers a question with success.
    let found = || shell::command(program, &[question]).output().is_ok();
    if found() {
        return Ok(());
    }
    let missing = |why: &str| format!("`{program}` does not run, which {does}: {why}");
    if shell::answer(shell::command("apt-get", &["--version"])).is_none() {
        return Err(missing(&format!("it can only be brought where there is apt; {elsewhere}")));
    }
    if shell::answer(shell::command("id", &["-u"])).as_deref().map(str::trim) != Some("0") {
        return Err(missing(&format!("only root can bring it; run as root, or install the package `{package}`")));
    }
    shell::run(apt(&["update"]))?;
    shell::run(apt(&["install", "--yes", "--no-install-recommends", package]))?;
    if found() { Ok(()) } else { Err(missing(&format!("the package `{package}` was installed and has none"))) }
}

fn apt(args: &[&str]) -> Command {
    let mut command = shell::command("apt-get", &["--quiet"]);
    command.args(args).env("DEBIAN_FRONTEND", "noninteractive");
    command
}
