//! The device id lies in `NAME.device` beside the book, with the identity of the file it belongs to, the key that it signs
//! with, the newest entry it made there, and which entries of other devices are in the book. A copy has no such file, or one
//! of another file, or lacks that entry, and so becomes a device of its own: a number used twice would spoil every merge.
//!
//! What is held stands here as well as in the book, so that of a book that is hurt, gone or older than it was left it is still
//! known what was in it: no more, since somebody may have gone back to a copy, and no less.

use std::fs;
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OptionalExtension, params};

use super::file::{PartFile, beside};
use super::held::Held;
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
    const BYTES: u64 = 20 + 1 + 64 + 1 + 8 + 1;
    const NONE: Self = Self { sequence: 0, hash: Hash::NONE };

    /// What is in a book by now.
    pub(super) fn of(conn: &Connection, device: DeviceId) -> Result<Self> {
        let newest = conn
            .prepare_cached("SELECT sequence, hash FROM entry WHERE device = ?1 ORDER BY sequence DESC LIMIT 1")?
            .query_row([device], |row| Ok(Self { sequence: row.get(0)?, hash: row.get(1)? }))
            .optional()?;
        Ok(newest.unwrap_or(Self::NONE))
    }

    /// Whether it is in a book.
    pub(super) fn is_in(self, conn: &Connection, device: DeviceId) -> Result<bool> {
        Ok(conn.query_row(
            "SELECT ?2 = 0 OR EXISTS (SELECT 1 FROM entry WHERE device = ?1 AND sequence = ?2 AND hash = ?3)",
            params![device, self.sequence, self.hash],
            |row| row.get(0),
        )?)
    }

    fn line(self) -> String {
        let said = format!("{:020} {}", self.sequence, self.hash);
        format!("{said} {:.8}\n", Hash::of(&said).to_string())
    }

    /// `None` for a line that was torn, as when the power went while it was written.
    fn read(line: &str) -> Option<Self> {
        let (sequence, rest) = line.split_once(' ')?;
        let (hash, _) = rest.split_once(' ')?;
        let tip = Self { sequence: sequence.parse().ok()?, hash: hash.parse().ok()? };
        Some(tip).filter(|tip| tip.line().trim_end() == line)
    }
}

/// What the side file says.
#[derive(Clone, Debug)]
pub(super) struct SideFile {
    pub(super) device: DeviceId,
    pub(super) book: Id,
    pub(super) key: Option<Key>,
    /// At least this entry must be in the book; `None` where the line cannot be read.
    pub(super) tip: Option<Tip>,
    /// The entries of other devices that are in the book.
    pub(super) held: Held,
    /// The last row of the log that is told of in `held`.
    pub(super) rows: i64,
    /// The end of the name of the file whose place the book is about to take.
    pub(super) replaces: Option<String>,
    /// Whether it was written for the very file that lies beside it now.
    pub(super) fits: bool,
}

impl SideFile {
    /// Of a device that has not answered yet in a book with these entries.
    pub(super) fn new(conn: &Connection, key: &Key, book: Id) -> Result<Self> {
        let device = key.device();
        Ok(Self {
            device,
            book,
            key: Some(key.clone()),
            tip: Some(Tip::NONE),
            held: Held::of(conn, 0)?,
            rows: rows(conn)?,
            replaces: None,
            fits: true,
        })
    }

    /// Writes it beside a book for `file`, which has that name or is about to get it.
    pub(super) fn write(&self, path: &Path, file: &Path) -> Result<()> {
        let target = beside(path, ".device");
        let (device, book, identity) = (self.device, self.book, identity(file)?);
        let mut text = format!("{device}\n{book}\n{identity}\n");
        let key = self.key.as_ref().map(|key| format!("key {}", key.to_text()));
        let replaces = self.replaces.as_ref().map(|name| format!("replaces {name}"));
        let held = self.held.lines().map(|line| format!("with {line}"));
        for line in key.into_iter().chain(replaces).chain(held).chain([format!("rows {}", self.rows)]) {
            text.push_str(&line);
            text.push('\n');
        }
        let sum = Hash::of(&text);
        text.push_str(&format!("sum {sum}\n{}", self.tip.unwrap_or(Tip::NONE).line()));
        PartFile::write(&target, text.as_bytes(), true)?.replace(&target)
    }
}

/// The number of the last row of a log. Rows are counted from one and never taken away.
pub(super) fn rows(conn: &Connection) -> Result<i64> {
    Ok(conn.prepare_cached("SELECT coalesce(max(id), 0) FROM entry")?.query_row([], |row| row.get(0))?)
}

/// Whether there is a side file, though nothing of it may be readable.
pub(super) fn is_beside(path: &Path) -> bool {
    beside(path, ".device").exists()
}

/// The side file, if there is a readable one.
pub(super) fn read(path: &Path) -> io::Result<Option<SideFile>> {
    let text = match fs::read_to_string(beside(path, ".device")) {
        Ok(text) => text,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) if error.kind() == io::ErrorKind::InvalidData => return Ok(None),
        Err(error) => return Err(error),
    };
    let Some((said, tip)) = whole(&text) else { return Ok(None) };
    let mut lines = said.lines();
    let mut id = || lines.next().and_then(|line| line.parse::<Id>().ok());
    let (Some(device), Some(book)) = (id().map(DeviceId), id()) else { return Ok(None) };
    let told = lines.next();
    let fits = identity(path).is_ok_and(|own| told == Some(own.as_str()));
    let mut side = SideFile { device, book, key: None, tip, held: Held::default(), rows: 0, replaces: None, fits };
    for line in lines {
        match line.split_once(' ') {
            Some(("key", text)) => side.key = Key::from_text(text).filter(|key| key.device() == device),
            Some(("replaces", name)) => side.replaces = Some(name.to_owned()),
            Some(("with", line)) => drop(side.held.read_line(line)),
            Some(("rows", rows)) => side.rows = rows.parse().unwrap_or(0),
            _ => {}
        }
    }
    Ok(Some(side))
}

/// All that is written once, where its sum is right, and the line that is written over.
fn whole(text: &str) -> Option<(&str, Option<Tip>)> {
    const SUM: &str = "\nsum ";
    let (said, rest) = text.split_at_checked(text.rfind(SUM)? + 1)?;
    let mut lines = rest.lines();
    let sum: Hash = lines.next()?.strip_prefix(SUM.trim_start())?.parse().ok()?;
    (Hash::of(said) == sum).then(|| (said, lines.next().and_then(Tip::read)))
}

/// Whether a book has everything that the file beside it knows to be accepted.
pub(super) fn is_kept_up(conn: &Connection, side: &SideFile) -> Result<bool> {
    let tip = side.tip.unwrap_or(Tip::NONE);
    let mut last = conn.prepare_cached("SELECT EXISTS (SELECT 1 FROM entry WHERE device = ?1 AND sequence = ?2)")?;
    for (device, sequence) in side.held.ends() {
        if !last.query_row(params![device, sequence], |row| row.get(0))? {
            return Ok(false);
        }
    }
    Ok(tip.is_in(conn, side.device)? && side.held.count().saturating_add(tip.sequence) <= rows(conn)?)
}

/// The last line of the side file, open to be written over.
#[derive(Debug)]
pub(super) struct LastLine {
    book: PathBuf,
    device: DeviceId,
    file: fs::File,
    at: u64,
}

impl LastLine {
    /// # Errors
    /// What the file system said, or that the file is another device's.
    pub(super) fn open(path: &Path, device: DeviceId) -> io::Result<Self> {
        let mut file = fs::File::options().read(true).write(true).open(beside(path, ".device"))?;
        let own = device.to_string();
        let mut first = vec![0; own.len()];
        file.read_exact(&mut first)?;
        if first != own.as_bytes() {
            return Err(io::ErrorKind::InvalidData.into());
        }
        let at = file.metadata()?.len().saturating_sub(Tip::BYTES);
        Ok(Self { book: path.to_owned(), device, file, at })
    }

    /// Notes an entry that is in the book for good. Not flushed: a line that is behind the book, or torn, only finds fewer old
    /// copies put in the book's place, it never takes a book for such a copy.
    pub(super) fn note(&mut self, tip: Tip) -> io::Result<()> {
        #[cfg(unix)]
        {
            use std::os::unix::fs::MetadataExt as _;
            let (open, there) = (self.file.metadata()?, fs::metadata(beside(&self.book, ".device"))?);
            // Another program has written the file anew.
            if (open.dev(), open.ino()) != (there.dev(), there.ino()) {
                *self = Self::open(&self.book, self.device)?;
            }
        }
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
