use std::fs;
use std::path::{Path, PathBuf};

use crate::{Done, bindings, files, project, shell};

/// A slice of the framework: its name, and the targets of Rust that it is made of.
const SLICES: [(&str, &[&str]); 3] = [
    ("phone", &["aarch64-apple-ios"]),
    ("simulator", &["aarch64-apple-ios-sim", "x86_64-apple-ios"]),
    // The package's own tests run on the Mac.
    ("mac", &["aarch64-apple-darwin", "x86_64-apple-darwin"]),
];

/// Builds what Xcode needs for the app: the generated sources, the font, and the library of all Apple devices as one
/// framework, where the package `ios/Lapwright` looks for it.
///
/// # Errors
/// Anywhere but on a Mac with Xcode, and where the Rust target of a device is missing.
pub(crate) fn build() -> Done {
    if !cfg!(target_os = "macos") {
        return Err("the framework for iPhones can only be built on a Mac with Xcode: nothing was built".to_owned());
    }
    if shell::answer(shell::command("xcodebuild", &["-version"])).is_none() {
        return Err("Xcode is needed: `xcodebuild -version` does not run".to_owned());
    }
    // Where Rust came without it, cargo says which one lacks.
    let installed = shell::answer(shell::command("rustup", &["target", "list", "--installed"]));
    let missing = installed.map(|installed| missing(&installed)).unwrap_or_default();
    if !missing.is_empty() {
        return Err(format!(
            "Rust's targets for Apple's devices are needed: `rustup target add {}`",
            missing.join(" ")
        ));
    }
    bindings::swift()?;
    let generated = project::root().join("ios/Lapwright/Generated");
    let mut framework = shell::command("xcodebuild", &["-create-xcframework"]);
    for (slice, targets) in SLICES {
        framework.arg("-library").arg(library(slice, targets)?);
        framework.arg("-headers").arg(generated.join("LapwrightFFI"));
    }
    let output = generated.join(bindings::FRAMEWORK);
    // It is not written over an older one.
    files::remove(&output)?;
    framework.arg("-output").arg(output);
    shell::run(framework)?;
    println!("now open ios/App/Lapwright.xcodeproj");
    Ok(())
}

/// The targets that are not among the installed ones, one a line: all of them at once.
fn missing(installed: &str) -> Vec<&'static str> {
    let has = |target: &&str| installed.lines().any(|line| line.trim() == *target);
    SLICES.iter().flat_map(|(_, targets)| *targets).copied().filter(|target| !has(target)).collect()
}

/// The static library of a slice, with all its targets in one file.
fn library(slice: &str, targets: &[&str]) -> Done<PathBuf> {
    let built = project::built()?;
    let target_folder = built.parent().unwrap_or(&built).to_path_buf();
    let mut libraries = Vec::new();
    for target in targets {
        let args = ["rustc", "--quiet", "--release", "--package", "lapwright-ffi", "--target", target];
        // The phones of Apple load no library of their own kind: there, and only there, it is a static one.
        let mut cargo = shell::cargo(&args);
        cargo.args(["--crate-type", "staticlib"]);
        shell::run(cargo)?;
        libraries.push(target_folder.join(target).join("release/liblapwright_ffi.a"));
    }
    let folder = target_folder.join("apple").join(slice);
    fs::create_dir_all(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let whole = folder.join("liblapwright_ffi.a");
    let mut lipo = shell::command(Path::new("lipo"), &["-create", "-output"]);
    lipo.arg(&whole).args(libraries);
    shell::run(lipo)?;
    Ok(whole)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn targets_that_lack_are_named_together() {
        assert_eq!(missing("aarch64-apple-ios\nx86_64-unknown-linux-gnu\naarch64-apple-darwin\n").len(), 3);
        assert_eq!(missing("").len(), 5);
        let all: Vec<&str> = missing("");
        assert_eq!(missing(&all.join("\n")), Vec::<&str>::new());
    }
}
