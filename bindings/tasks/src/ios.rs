use std::fs;
use std::path::{Path, PathBuf};

use crate::{Done, bindings, project, shell};

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
    bindings::swift()?;
    let generated = project::root().join("ios/Lapwright/Generated");
    let mut framework = shell::command("xcodebuild", &["-create-xcframework"]);
    for (slice, targets) in SLICES {
        framework.arg("-library").arg(library(slice, targets)?);
        framework.arg("-headers").arg(generated.join("LapwrightFFI"));
    }
    framework.arg("-output").arg(generated.join("LapwrightFFI.xcframework"));
    shell::run(framework)?;
    println!("now open ios/App/Lapwright.xcodeproj");
    Ok(())
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
        shell::run(cargo).map_err(|error| format!("{error}; is there `rustup target add {target}`?"))?;
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
