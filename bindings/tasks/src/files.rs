use std::fs::{self, File};
use std::io::{self, Read, Write as _};
use std::path::Path;

use tempfile::Builder;

use crate::Done;

/// Writes a file that is whole or not there, and makes its folder where there is none.
pub(crate) fn write(path: &Path, content: impl Read) -> Done {
    put(path, content).map_err(|error| told(path, &error))
}

/// Copies a file, so that a program which still uses the one that was there before keeps it.
pub(crate) fn copy(from: &Path, to: &Path) -> Done {
    write(to, File::open(from).map_err(|error| told(from, &error))?)
}

/// Takes a folder away with all that is in it; it is nothing to take away where there is none.
pub(crate) fn remove(folder: &Path) -> Done {
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(told(folder, &error)),
        _ => Ok(()),
    }
}

/// Takes everything in a folder away but what has a name.
pub(crate) fn remove_but(folder: &Path, kept: &str) -> Done {
    let entries = match fs::read_dir(folder) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(()),
        entries => entries.map_err(|error| told(folder, &error))?,
    };
    for entry in entries {
        let path = entry.map_err(|error| told(folder, &error))?.path();
        if path.file_name().is_some_and(|name| name == kept) {
            continue;
        }
        let removed = if path.is_dir() { fs::remove_dir_all(&path) } else { fs::remove_file(&path) };
        removed.map_err(|error| told(&path, &error))?;
    }
    Ok(())
}

/// The files of a folder, in order; none where there is no folder.
pub(crate) fn of_folder(folder: &Path) -> Done<Vec<std::path::PathBuf>> {
    let entries = match fs::read_dir(folder) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        entries => entries.map_err(|error| told(folder, &error))?,
    };
    let paths = entries.map(|entry| entry.map(|entry| entry.path()));
    let mut paths: Vec<_> = paths.collect::<Result<_, _>>().map_err(|error| told(folder, &error))?;
    paths.sort();
    Ok(paths)
}

/// What a file says.
pub(crate) fn text(path: &Path) -> Done<String> {
    fs::read_to_string(path).map_err(|error| told(path, &error))
}

pub(crate) fn told(path: &Path, error: &io::Error) -> String {
    format!("{}: {error}", path.display())
}

fn put(path: &Path, mut content: impl Read) -> io::Result<()> {
    let folder = path.parent().unwrap_or(Path::new("."));
    fs::create_dir_all(folder)?;
    let mut builder = Builder::new();
    // Else only the user that runs this could read it.
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let mut part = builder.tempfile_in(folder)?;
    io::copy(&mut content, &mut part)?;
    part.flush()?;
    part.as_file().sync_all()?;
    part.persist(path)?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_has_the_name_stays_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        for name in ["kept/inside", "gone/inside", "file"] {
            write(&folder.path().join(name), name.as_bytes()).unwrap();
        }
        remove_but(folder.path(), "kept").unwrap();
        let left: Vec<_> = fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
        assert_eq!(left, ["kept"]);
        assert!(folder.path().join("kept/inside").exists());
        remove_but(&folder.path().join("nowhere"), "kept").unwrap();
    }

    #[test]
    fn a_file_that_cannot_be_written_whole_is_left_as_it_was() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("new/file");
        write(&path, &b"before"[..]).unwrap();
        struct Broken;
        impl Read for Broken {
            fn read(&mut self, _: &mut [u8]) -> io::Result<usize> {
                Err(io::Error::other("the disk is full"))
            }
        }
        assert!(write(&path, Read::chain(&b"aft"[..], Broken)).is_err());
        assert_eq!(text(&path).unwrap(), "before");
        assert_eq!(of_folder(path.parent().unwrap()).unwrap(), [path]);
    }
}
