use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::{Done, project, shell};

/// A Swift of version 6 or later.
pub(crate) enum Swift {
    /// The machine's own.
    Own,
    /// One inside a root folder of a Debian release that carries it.
    Root(PathBuf),
}

impl Swift {
    /// The machine's own Swift where it is new enough, else one that is brought once and kept in the cache folder.
    ///
    /// # Errors
    /// Where there is none and none can be brought, with what is missing.
    pub(crate) fn find() -> Done<Self> {
        let own = shell::answer(shell::command("swift", &["--version"]));
        if own.as_deref().and_then(major).is_some_and(|major| major >= 6) {
            return Ok(Self::Own);
        }
        let root = project::cache()?.join("swift-root");
        shell::run(shell::command(script(), &["build", &root.to_string_lossy()]))?;
        Ok(Self::Root(root))
    }

    /// A Swift command in the package's folder.
    pub(crate) fn command(&self, args: &[&str]) -> Command {
        self.tool("swift", args)
    }

    /// A program of the Swift toolchain in the package's folder.
    pub(crate) fn tool(&self, program: &str, args: &[&str]) -> Command {
        let repository = project::root();
        let package = repository.join("ios/Lapwright");
        match self {
            Self::Own => {
                let mut command = shell::command(program, args);
                command.current_dir(package);
                command
            }
            Self::Root(root) => {
                let mut command = shell::command(script(), &["run"]);
                command.arg(root).arg(repository).arg(package).arg(program).args(args);
                command
            }
        }
    }
}

/// The Swift sources in folders beside or below the package's, by their paths from there.
///
/// # Errors
/// Where a folder cannot be read, or holds none: a check of nothing would always pass.
pub(crate) fn sources(folders: &[&str]) -> Done<Vec<String>> {
    let package = project::root().join("ios/Lapwright");
    let mut found = Vec::new();
    for folder in folders {
        let before = found.len();
        walk(&package.join(folder), folder, &mut found)?;
        if found.len() == before {
            return Err(format!("no Swift source in {folder}"));
        }
    }
    found.sort();
    Ok(found)
}

fn walk(folder: &Path, name: &str, found: &mut Vec<String>) -> Done {
    let told = |error: std::io::Error| format!("{}: {error}", folder.display());
    for entry in fs::read_dir(folder).map_err(told)? {
        let path = entry.map_err(told)?.path();
        let own = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let name = format!("{name}/{own}");
        if path.is_dir() {
            walk(&path, &name, found)?;
        } else if path.extension().is_some_and(|extension| extension == "swift") {
            found.push(name);
        }
    }
    Ok(())
}

fn script() -> PathBuf {
    project::root().join("bindings/tasks/scripts/swift-root")
}

/// The major version in `Swift version 6.0.3 (swift-6.0.3-RELEASE)`.
fn major(printed: &str) -> Option<u32> {
    printed.split_once("Swift version ")?.1.split('.').next()?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::major;

    #[test]
    fn reads_the_major_version() {
        assert_eq!(major("Swift version 6.0.3 (swift-6.0.3-RELEASE)\nTarget: x86_64"), Some(6));
        assert_eq!(major("Apple Swift version 5.10 (swiftlang-5.10)"), Some(5));
        assert_eq!(major("swift: command not found"), None);
    }
}
