//! The device id lies in `NAME.device` beside the book, with the identity of the file it belongs to, the key that it signs
//! with and the newest entry it made there. A copy has no such file, or one of another file, or lacks that entry, and so becomes a device of its
//! own: a number used twice would spoil every merge.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::Path;

use super::file::{PartFile, beside};
use super::sign::Key;
use super::{DeviceId, Hash, Id, Result};

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

/// The newest entry that this device made in the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Tip {
    pub(super) sequence: i64,
    pub(super) hash: Hash,
}

impl Tip {
    const BYTES: u64 = 20 + 1 + 64 + 1;

    fn line(self) -> String {
        format!("{:020} {}\n", self.sequence, self.hash)
    }

    fn read(line: &str) -> Option<Self> {
        let (sequence, hash) = line.split_once(' ')?;
        Some(Self { sequence: sequence.parse().ok()?, hash: hash.parse().ok()? })
    }
}

/// What the side file says.
pub(super) struct SideFile {
    pub(super) device: DeviceId,
    pub(super) book: Id,
    /// None where it was written before devices signed.
    pub(super) key: Option<Key>,
    /// At least this entry must be in the book; `None` where the line cannot be read.
    pub(super) tip: Option<Tip>,
    /// How far other devices had come when it was written: what they made was in the book then.
    pub(super) others: Vec<(DeviceId, i64)>,
    /// Whether it was written for the very file that lies beside it now.
    pub(super) fits: bool,
}

/// The side file, if there is a readable one.
pub(super) fn read(path: &Path) -> io::Result<Option<SideFile>> {
    let text = match fs::read_to_string(beside(path, ".device")) {
        Ok(text) => text,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) if error.kind() == io::ErrorKind::InvalidData => return Ok(None),
        Err(error) => return Err(error),
    };
    let mut lines = text.lines();
    let mut id = || lines.next().and_then(|line| line.parse::<Id>().ok());
    let (Some(device), Some(book)) = (id().map(DeviceId), id()) else { return Ok(None) };
    let told = lines.next();
    let fits = identity(path).is_ok_and(|own| told == Some(own.as_str()));
    let mut others = Vec::new();
    let (mut tip, mut key) = (None, None);
    for line in lines {
        if let Some(text) = line.strip_prefix("key ") {
            key = Key::from_text(text).filter(|key| key.device() == device);
            continue;
        }
        match line.strip_prefix("with ").map(|line| line.split_once(' ')) {
            None => tip = Tip::read(line),
            Some(words) => others.extend(
                words.and_then(|(device, sequence)| Some((DeviceId(device.parse().ok()?), sequence.parse().ok()?))),
            ),
        }
    }
    Ok(Some(SideFile { device, book, key, tip, others, fits }))
}

/// Writes the side file of `path` for `file`, which has that name or is about to get it; `others` are the devices whose
/// entries are in it, and how far.
pub(super) fn write(path: &Path, file: &Path, (key, book): (&Key, Id), others: &BTreeMap<DeviceId, i64>) -> Result<()> {
    let target = beside(path, ".device");
    let tip = Tip { sequence: 0, hash: Hash::NONE };
    let others: String = others.iter().map(|(other, sequence)| format!("with {other} {sequence}\n")).collect();
    let (device, secret) = (key.device(), key.to_text());
    let text = format!("{device}\n{book}\n{}\nkey {secret}\n{others}{}", identity(file)?, tip.line());
    PartFile::write(&target, text.as_bytes(), true)?.replace(&target)
}

/// The last line of the side file, open to be written over.
#[derive(Debug)]
pub(super) struct LastLine {
    file: fs::File,
    at: u64,
}

impl LastLine {
    pub(super) fn open(path: &Path) -> io::Result<Self> {
        let file = fs::File::options().write(true).open(beside(path, ".device"))?;
        let at = file.metadata()?.len().saturating_sub(Tip::BYTES);
        Ok(Self { file, at })
    }

    /// Notes an entry that is in the book for good. Not flushed: a line that is behind the book only finds fewer old
    /// copies put in the book's place, it never takes a book for such a copy.
    pub(super) fn note(&mut self, tip: Tip) -> io::Result<()> {
        let line = tip.line();
        #[cfg(unix)]
        std::os::unix::fs::FileExt::write_all_at(&self.file, line.as_bytes(), self.at)?;
        #[cfg(not(unix))]
        {
            use std::io::{Seek as _, SeekFrom, Write as _};
            self.file.seek(SeekFrom::Start(self.at))?;
            self.file.write_all(line.as_bytes())?;
        }
        Ok(())
    }
}
