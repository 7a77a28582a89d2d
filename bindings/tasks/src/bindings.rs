use std::path::{Path, PathBuf};

use crate::{Done, files, font, project, shell};

/// What Xcode links, beside the generated Swift.
pub(crate) const FRAMEWORK: &str = "LapwrightFFI.xcframework";

/// The library of this machine and the Kotlin that calls it, where `android/bindings` looks for them, and the font for
/// `android/screens`.
pub(crate) fn kotlin() -> Done {
    let folder = project::root().join("android/bindings/target/generated");
    let library = library()?;
    files::remove(&folder)?;
    generate("kotlin", &library, &folder.join("kotlin"))?;
    place(&library, &folder.join("library"))?;
    font::put(&project::root().join("android/screens/target/generated/resources/font"))
}

/// The library of this machine, the Swift and C that call it and the font, where the package `ios/Lapwright` looks for
/// them.
pub(crate) fn swift() -> Done {
    let folder = project::root().join("ios/Lapwright/Generated");
    let library = library()?;
    // Xcode links the framework that `cargo xtask ios` made: only that makes it anew.
    files::remove_but(&folder, FRAMEWORK)?;
    generate("swift", &library, &folder)?;
    place(&library, &folder.join("Library"))?;
    font::put(&folder.join("font"))
}

/// Builds the library that the phones load, for this machine.
fn library() -> Done<PathBuf> {
    shell::run(shell::cargo(&["build", "--quiet", "--package", "lapwright-ffi"]))?;
    let name = format!("{}lapwright_ffi{}", std::env::consts::DLL_PREFIX, std::env::consts::DLL_SUFFIX);
    Ok(project::built()?.join(name))
}

fn generate(language: &str, library: &Path, folder: &Path) -> Done {
    let (library, folder) = (library.to_string_lossy(), folder.to_string_lossy());
    shell::run(shell::cargo(&["run", "--quiet", "--package", "lapwright-bindgen", "--", language, &library, &folder]))
}

fn place(library: &Path, folder: &Path) -> Done {
    files::copy(library, &folder.join(library.file_name().unwrap_or_default()))
}
