use std::path::{Path, PathBuf};

use crate::Done;

/// The folder of the workspace.
pub(crate) fn root() -> PathBuf {
    let tasks = Path::new(env!("CARGO_MANIFEST_DIR"));
    tasks.ancestors().nth(2).unwrap_or(tasks).to_path_buf()
}

/// Where cargo puts what it builds: beside this very program, wherever the target folder is.
pub(crate) fn built() -> Done<PathBuf> {
    let own = std::env::current_exe().map_err(|error| format!("this program's own place: {error}"))?;
    own.parent().map(Path::to_path_buf).ok_or_else(|| format!("{} is in no folder", own.display()))
}

/// The folder for what is made once on a machine and used by every checkout.
pub(crate) fn cache() -> Done<PathBuf> {
    let folder = |name: &str| std::env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
    let base = folder("XDG_CACHE_HOME").or_else(|| folder("HOME").map(|home| home.join(".cache")));
    base.map(|base| base.join("lapwright")).ok_or_else(|| "neither XDG_CACHE_HOME nor HOME is set".to_owned())
}
