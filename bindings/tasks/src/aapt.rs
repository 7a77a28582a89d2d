use std::process::Command;

use crate::{Done, shell};

/// Sees to it that `aapt2` is there, which packs the Android app's resources: the machine's own, else on Debian, as root,
/// the one of its package.
///
/// # Errors
/// Where there is none and none can be brought, with what is missing.
pub(crate) fn ready() -> Done {
    let found = || shell::answer(shell::command("aapt2", &["version"])).is_some();
    if found() {
        return Ok(());
    }
    let missing = |why: &str| format!("`aapt2` does not run and packs the Android app's resources: {why}");
    if shell::answer(shell::command("apt-get", &["--version"])).is_none() {
        return Err(missing("it can only be brought where there is apt; install Android's build tools"));
    }
    if shell::answer(shell::command("id", &["-u"])).as_deref().map(str::trim) != Some("0") {
        return Err(missing("only root can bring it; run as root, or install the package `aapt`"));
    }
    shell::run(apt(&["update"]))?;
    shell::run(apt(&["install", "--yes", "--no-install-recommends", "aapt"]))?;
    if found() { Ok(()) } else { Err(missing("the package `aapt` was installed and has none")) }
}

fn apt(args: &[&str]) -> Command {
    let mut command = shell::command("apt-get", &["--quiet"]);
    command.args(args).env("DEBIAN_FRONTEND", "noninteractive");
    command
}
