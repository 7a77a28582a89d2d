use std::fs;
use std::path::{Path, PathBuf};

use crate::{Done, shell};

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
    fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    for (from, to) in FILES {
        let from = package.join("assets/dejavu-fonts-ttf-2.37").join(from);
        fs::copy(&from, folder.join(to)).map_err(|error| format!("{}: {error}", from.display()))?;
    }
    Ok(())
}

/// Where cargo keeps the package: it is fetched with the core's other dependencies.
fn package() -> Done<PathBuf> {
    let host = shell::answer(shell::command("rustc", &["-vV"])).unwrap_or_default();
    let host = host.lines().find_map(|line| line.strip_prefix("host: ")).unwrap_or_default();
    let metadata = ["metadata", "--format-version", "1", "--locked", "--filter-platform", host];
    let told = || format!("cargo does not say where the package {PACKAGE} is");
    let text = shell::answer(shell::cargo(&metadata)).ok_or_else(told)?;
    let metadata: serde_json::Value = serde_json::from_str(&text).map_err(|error| format!("{}: {error}", told()))?;
    let packages = metadata.get("packages").and_then(serde_json::Value::as_array).ok_or_else(told)?;
    let text = |package: &serde_json::Value, field: &str| package.get(field)?.as_str().map(str::to_owned);
    let found = packages.iter().find(|package| text(package, "name").as_deref() == Some(PACKAGE));
    let manifest = found.and_then(|package| text(package, "manifest_path")).ok_or_else(told)?;
    Path::new(&manifest).parent().map(Path::to_path_buf).ok_or_else(told)
}
