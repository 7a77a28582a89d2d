//! The device id lies in `NAME.device` beside the book, with the identity of the file it belongs to. A copy has no such
//! file, or one of another file, and so becomes a device of its own: a number used twice would spoil every merge.

use std::ffi::OsString;
use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use super::{DeviceId, Id};

/// `path` with something put behind its name.
pub(super) fn beside(path: &Path, tail: &str) -> PathBuf {
    let mut name: OsString = path.as_os_str().to_owned();
    name.push(tail);
    PathBuf::from(name)
}

/// What tells this file from a copy of it. The time of birth guards against an inode number that is used again.
fn identity(path: &Path) -> io::Result<String> {
    let data = fs::metadata(path)?;
    let born = data
        .created()
        .ok()
        .and_then(|time| time.duration_since(std::time::UNIX_EPOCH).ok())
        .map_or(0, |since| since.as_nanos());
    #[cfg(unix)]
    let place = {
        use std::os::unix::fs::MetadataExt as _;
        format!("{}:{}", data.dev(), data.ino())
    };
    #[cfg(not(unix))]
    let place = fs::canonicalize(path)?.display().to_string();
    Ok(format!("{place}:{born}"))
}

/// The device id, if the side file is there and belongs to this very file.
pub(super) fn read(path: &Path) -> io::Result<Option<DeviceId>> {
    let text = match fs::read_to_string(beside(path, ".device")) {
        Ok(text) => text,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) if error.kind() == io::ErrorKind::InvalidData => return Ok(None),
        Err(error) => return Err(error),
    };
    let mut lines = text.lines();
    let device = lines.next().and_then(|line| line.parse::<Id>().ok()).map(DeviceId);
    Ok(if lines.next() == Some(identity(path)?.as_str()) { device } else { None })
}

/// Writes the side file beside, flushes, renames.
pub(super) fn write(path: &Path, device: DeviceId) -> io::Result<()> {
    let (target, part) = (beside(path, ".device"), beside(path, &format!(".device-{device}")));
    let mut file = fs::File::create(&part)?;
    writeln!(file, "{device}\n{}", identity(path)?)?;
    file.sync_all()?;
    fs::rename(&part, &target)?;
    sync_folder(path)
}

/// Flushes the folder of a file, so that a rename in it lasts.
pub(super) fn sync_folder(path: &Path) -> io::Result<()> {
    #[cfg(unix)]
    {
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        fs::File::open(folder)?.sync_all()?;
    }
    #[cfg(not(unix))]
    let _ = path;
    Ok(())
}
