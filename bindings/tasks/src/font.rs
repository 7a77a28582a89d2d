use std::path::{Path, PathBuf};

use crate::{Done, files, packages};

/// The font's files within its package, and what they are called where a shell looks for them.
const FILES: [(&str, &str); 3] = [
    ("ttf/DejaVuSansCondensed.ttf", "regular.ttf"),
    ("ttf/DejaVuSansCondensed-Bold.ttf", "bold.ttf"),
    ("LICENSE", "LICENSE.txt"),
];

/// The package that carries the font, for the core's tests too.
const PACKAGE: &str = "dejavu";

/// Puts the bundled font and its licence into a folder.
pub(crate) fn put(folder: &Path) -> Done {
    let package = package()?;
    for (from, to) in FILES {
        files::copy(&package.join("assets/dejavu-fonts-ttf-2.37").join(from), &folder.join(to))?;
    }
    Ok(())
}

/// Where cargo keeps the package: it is fetched with the core's other dependencies.
fn package() -> Done<PathBuf> {
    let metadata = packages::all()?;
    let found = metadata.packages.iter().find(|package| package.name.as_str() == PACKAGE);
    let folder = found.and_then(|package| package.manifest_path.parent());
    folder.map(|folder| folder.as_std_path().to_owned()).ok_or_else(|| format!("the package {PACKAGE} is not there"))
}
