//! Files that we write: beside, flushed, renamed, so that each is whole or not there, and nothing of the user's is lost.

use std::collections::hash_map::RandomState;
use std::ffi::OsString;
use std::fs;
use std::hash::{BuildHasher as _, Hasher as _};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use fs4::FileExt;

use super::{Result, StoreError};

/// The end of the names of files that are being written. A file of such a name that nobody holds is what a stopped run
/// left behind.
const PART: &str = ".lapwright-part";
/// What SQLite has beside a file that it writes.
const JOURNAL: &str = "-journal";

/// `path` with something put behind its name.
pub(super) fn beside(path: &Path, tail: &str) -> PathBuf {
    let mut name: OsString = path.as_os_str().to_owned();
    name.push(tail);
    PathBuf::from(name)
}

/// A file that is written and flushed, and not yet in its place. Dropped, it is gone.
pub(super) struct PartFile {
    path: PathBuf,
    /// Held locked, so that nobody takes it for what a stopped run left behind.
    file: fs::File,
}

impl PartFile {
    /// Writes the bytes of what is to be `to` beside it; `private` for what only its owner may read.
    pub(super) fn write(to: &Path, bytes: &[u8], private: bool) -> Result<Self> {
        Self::fill(to, private, |file| Ok(file.write_all(bytes)?))
    }

    /// The same for what is too large to be in memory at once.
    pub(super) fn fill(to: &Path, private: bool, fill: impl FnOnce(&mut fs::File) -> Result<()>) -> Result<Self> {
        let mut part = Self::make(to, private)?;
        fill(&mut part.file)?;
        part.file.sync_all()?;
        Ok(part)
    }

    /// An empty one, neither written nor flushed.
    pub(super) fn make(to: &Path, private: bool) -> io::Result<Self> {
        clear_leftovers(folder_of(to))?;
        loop {
            let path = beside(to, &format!(".{:016x}{PART}", RandomState::new().build_hasher().finish()));
            let file = create(&path, private)?;
            FileExt::lock(&file)?;
            // Between its making and its locking somebody may have cleared it away.
            if path.try_exists()? {
                return Ok(Self { path, file });
            }
        }
    }

    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    /// Gives it its name, whatever bears that name now.
    pub(super) fn replace(self, to: &Path) -> Result<()> {
        fs::rename(&self.path, to)?;
        Ok(sync_folder(to)?)
    }

    /// Gives it its name, where nothing bears it.
    ///
    /// # Errors
    /// [`StoreError::Exists`] where something does.
    pub(super) fn place(self, to: &Path) -> Result<()> {
        match fs::hard_link(&self.path, to) {
            Ok(()) => {}
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
                return Err(StoreError::Exists(to.to_owned()));
            }
            // Not every file system has links.
            Err(_) if fs::symlink_metadata(to).is_err() => fs::rename(&self.path, to)?,
            Err(error) => return Err(error.into()),
        }
        Ok(sync_folder(to)?)
    }
}

impl Drop for PartFile {
    fn drop(&mut self) {
        // Renamed, it is not there any more; else the first error is the one to tell.
        let _ = fs::remove_file(&self.path);
        let _ = fs::remove_file(beside(&self.path, JOURNAL));
    }
}

fn create(path: &Path, private: bool) -> io::Result<fs::File> {
    let mut options = fs::File::options();
    options.write(true).create_new(true);
    #[cfg(unix)]
    if private {
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    }
    #[cfg(not(unix))]
    let _ = private;
    options.open(path)
}

/// Makes an empty file that only its owner may read, where nothing is.
pub(super) fn create_private(path: &Path) -> io::Result<()> {
    match create(path, true) {
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => Ok(()),
        made => made.map(drop),
    }
}

/// Makes a folder, and those above it, that only their owner may read.
///
/// # Errors
/// What the file system said.
pub fn create_private_folder(path: impl AsRef<Path>) -> io::Result<()> {
    let mut builder = fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(path)
}

/// Removes what stopped runs left behind in a folder: parts by their names that nobody holds.
pub(super) fn clear_leftovers(folder: &Path) -> io::Result<()> {
    if !folder.try_exists()? {
        return Ok(());
    }
    for file in fs::read_dir(folder)? {
        let path = file?.path();
        let name = path.file_name().and_then(|name| name.to_str());
        let part = name.map(|name| name.strip_suffix(JOURNAL).unwrap_or(name));
        let digits = part.and_then(|part| part.strip_suffix(PART)?.rsplit_once('.')).map(|(_, digits)| digits);
        let ours = digits.is_some_and(|digits| digits.len() == 16 && digits.bytes().all(|b| b.is_ascii_hexdigit()));
        let Some(part) = part.filter(|_| ours).map(|part| folder.join(part)) else { continue };
        if fs::symlink_metadata(&path).is_ok_and(|data| data.is_file()) {
            clear(&path, &part);
        }
    }
    Ok(())
}

/// Removes a file of a part that nobody writes. Who has just made a part looks, once he holds it, whether it is still there:
/// so it is held until it is gone.
fn clear(path: &Path, part: &Path) {
    let held = match fs::File::options().write(true).open(part) {
        Ok(file) if FileExt::try_lock(&file).is_ok() => Some(file),
        Err(error) if error.kind() == io::ErrorKind::NotFound => None,
        // Somebody writes it, or may.
        _ => return,
    };
    // Gone by now, or kept from us: there is nothing to clear.
    let _ = fs::remove_file(path);
    drop(held);
}

pub(super) fn folder_of(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// Flushes the folder of a file, so that a rename in it lasts.
pub(super) fn sync_folder(path: &Path) -> io::Result<()> {
    #[cfg(unix)]
    fs::File::open(folder_of(path))?.sync_all()?;
    #[cfg(not(unix))]
    let _ = path;
    Ok(())
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::{AtomicBool, Ordering};

    use super::*;

    #[test]
    fn a_part_stays_while_it_is_written_whoever_clears_the_folder() {
        let folder = tempfile::tempdir().unwrap();
        let to = folder.path().join("book");
        let done = AtomicBool::new(false);
        std::thread::scope(|scope| {
            scope.spawn(|| {
                while !done.load(Ordering::Relaxed) {
                    clear_leftovers(folder.path()).unwrap();
                }
            });
            let gone = (0..20_000).filter(|_| !PartFile::make(&to, true).unwrap().path().exists()).count();
            done.store(true, Ordering::Relaxed);
            assert_eq!(gone, 0);
        });
    }
}
