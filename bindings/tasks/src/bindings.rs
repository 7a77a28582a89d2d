use std::fs;
use std::path::{Path, PathBuf};

use crate::{Done, font, project, shell};

/// The library of this machine and the Kotlin that calls it, where `android/bindings` looks for them, and the font for
/// `android/screens`.
pub(crate) fn kotlin() -> Done {
    let folder = project::root().join("android/bindings/target/generated");
    let library = library()?;
    empty(&folder)?;
    generate("kotlin", &library, &folder.join("kotlin"))?;
    place(&library, &folder.join("library"))?;
    font::put(&project::root().join("android/screens/target/generated/resources/font"))
}

/// The library of this machine, the Swift and C that call it and the font, where the package `ios/Lapwright` looks for
/// them.
pub(crate) fn swift() -> Done {
    let folder = project::root().join("ios/Lapwright/Generated");
    let library = library()?;
    empty(&folder)?;
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

fn empty(folder: &Path) -> Done {
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => Err(told(folder, &error)),
        _ => Ok(()),
    }
}

fn place(library: &Path, folder: &Path) -> Done {
    fs::create_dir_all(folder).map_err(|error| told(folder, &error))?;
    let name = library.file_name().unwrap_or_default();
    fs::copy(library, folder.join(name)).map_err(|error| told(library, &error))?;
    Ok(())
}

fn told(path: &Path, error: &std::io::Error) -> String {
    format!("{}: {error}", path.display())
}
