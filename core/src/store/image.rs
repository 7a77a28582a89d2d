//! The bytes of a book on the disk, looked at without SQLite opening the file: looking changes nothing, and what SQLite
//! would pass over in silence, such as the rest of a write-ahead log behind a hurt frame, is still there to be seen.
//!
//! The layout is that of <https://www.sqlite.org/fileformat2.html> (database header, section 1.3; write-ahead log,
//! section 4).

use std::fs;
use std::io::{self, Read as _};
use std::path::Path;
use std::sync::{Mutex, PoisonError};

use rusqlite::Connection;

use super::file::beside;
use super::schema::{APPLICATION_ID, SCHEMA, migrations, refuse_unreadable, version};
use super::{Result, StoreError};

const MAGIC: &[u8] = b"SQLite format 3\0";
const FRAME_HEAD: usize = 24;

/// What a path names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sniffed {
    /// No file, or an empty one.
    Nothing,
    /// A book or a copy of one.
    Book,
    /// A SQLite file of something else.
    OtherDatabase,
    /// Any other file, a folder, a pipe.
    Foreign,
}

/// The books that this process has open. Closing any other handle of such a file would drop the locks that SQLite holds
/// on it (POSIX gives them to the process), and another process could then take the write-ahead log away.
static OPEN_HERE: Mutex<Vec<FileId>> = Mutex::new(Vec::new());

/// Which file it is, whatever its name.
#[cfg(unix)]
type FileId = (u64, u64);
#[cfg(not(unix))]
type FileId = std::path::PathBuf;

fn place(path: &Path) -> io::Result<FileId> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::MetadataExt as _;
        let data = fs::metadata(path)?;
        Ok((data.dev(), data.ino()))
    }
    #[cfg(not(unix))]
    fs::canonicalize(path)
}

/// That this process has a book open; until it is dropped, behind the connection.
#[derive(Debug)]
pub(super) struct OpenHere(FileId);

impl OpenHere {
    pub(super) fn note(path: &Path) -> io::Result<Self> {
        let place = place(path)?;
        OPEN_HERE.lock().unwrap_or_else(PoisonError::into_inner).push(place);
        Ok(Self(place))
    }
}

impl Drop for OpenHere {
    fn drop(&mut self) {
        let mut open = OPEN_HERE.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(at) = open.iter().position(|place| *place == self.0) {
            open.swap_remove(at);
        }
    }
}

/// Whether this process has the book at a path open.
pub(super) fn is_open_here(path: &Path) -> bool {
    let open = OPEN_HERE.lock().unwrap_or_else(PoisonError::into_inner);
    place(path).is_ok_and(|place| open.contains(&place))
}

/// What lies at a path, by its first bytes. SQLite would change a foreign file by opening it.
pub(super) fn sniff(path: &Path) -> io::Result<Sniffed> {
    match fs::metadata(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Sniffed::Nothing),
        Err(error) => return Err(error),
        Ok(data) if !data.is_file() => return Ok(Sniffed::Foreign),
        Ok(data) if data.len() == 0 => return Ok(Sniffed::Nothing),
        Ok(_) => {}
    }
    let open = OPEN_HERE.lock().unwrap_or_else(PoisonError::into_inner);
    if open.contains(&place(path)?) {
        return Ok(Sniffed::Book);
    }
    let mut head = Vec::new();
    fs::File::open(path)?.take(100).read_to_end(&mut head)?;
    drop(open);
    Ok(match head.get(68..72) {
        _ if !head.starts_with(MAGIC) => Sniffed::Foreign,
        Some(id) if id == APPLICATION_ID.to_be_bytes() => Sniffed::Book,
        _ => Sniffed::OtherDatabase,
    })
}

/// A book's file and its write-ahead log, as they lie on the disk.
pub(super) struct Image {
    main: Vec<u8>,
    log: Vec<u8>,
    page: usize,
}

impl Image {
    /// Reads a file and the log beside it; what is missing is empty.
    ///
    /// # Errors
    /// What the file system said; [`StoreError::NotABook`] for what is no plain file, [`StoreError::Busy`] where this
    /// process has the book open.
    pub(super) fn read(path: &Path) -> Result<Self> {
        match fs::metadata(path) {
            Ok(data) if !data.is_file() => return Err(StoreError::NotABook(path.to_owned())),
            _ => {}
        }
        let open = OPEN_HERE.lock().unwrap_or_else(PoisonError::into_inner);
        if place(path).is_ok_and(|place| open.contains(&place)) {
            return Err(StoreError::Busy);
        }
        let main = read_or_nothing(path)?;
        drop(open);
        let log = read_or_nothing(&beside(path, "-wal"))?;
        Ok(Self::of(main, log))
    }

    /// The same from bytes.
    pub(super) fn of(main: Vec<u8>, log: Vec<u8>) -> Self {
        let page = match (main.get(16..18), log.get(8..12)) {
            (Some(size), _) if main.starts_with(MAGIC) && size == [0, 1] => 65_536,
            (Some([high, low]), _) if main.starts_with(MAGIC) => usize::from(*high) << 8 | usize::from(*low),
            (_, Some(_)) => be32(&log, 8).unwrap_or_default() as usize,
            _ => 0,
        };
        // A book is made with pages of this size, and its first page may be what is hurt.
        let page = if page.is_power_of_two() && (512..=65_536).contains(&page) { page } else { 4096 };
        Self { main, log, page }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.main.is_empty() && self.log.is_empty()
    }

    pub(super) fn page_size(&self) -> usize {
        self.page
    }

    /// Pages are counted from one; `None` past the end.
    pub(super) fn page(&self, number: u32) -> Option<&[u8]> {
        let from = (number.checked_sub(1)? as usize).checked_mul(self.page)?;
        let rest = self.main.get(from..)?;
        Some(rest.get(..self.page).unwrap_or(rest)).filter(|page| !page.is_empty())
    }

    /// The pages of the file itself.
    pub(super) fn pages(&self) -> impl Iterator<Item = &[u8]> {
        self.main.chunks(self.page)
    }

    /// The pages in the log with their numbers, up to the last that ends a transaction: hurt ones too, and those behind them.
    pub(super) fn logged(&self) -> Vec<(u32, &[u8])> {
        let mut frames: Vec<(u32, &[u8])> = Vec::new();
        let mut committed = 0;
        for frame in self.frames() {
            let (Some(number), Some(ends), Some(page)) = (be32(frame, 0), be32(frame, 4), frame.get(FRAME_HEAD..))
            else {
                break;
            };
            frames.push((number, page));
            if ends > 0 {
                committed = frames.len();
            }
        }
        frames.truncate(committed);
        frames
    }

    fn frames(&self) -> impl Iterator<Item = &[u8]> {
        self.log.get(32..).unwrap_or_default().chunks(FRAME_HEAD + self.page)
    }

    /// The book as SQLite would see it: the file with every whole transaction of the log on top.
    fn committed(&self) -> Vec<u8> {
        let mut bytes = self.main.clone();
        let little = match be32(&self.log, 0) {
            Some(0x377f_0682) => true,
            Some(0x377f_0683) => false,
            _ => return bytes,
        };
        let Some(head) = self.log.get(..24) else { return bytes };
        let salts = self.log.get(16..24);
        let mut sum = checksum((0, 0), head, little);
        if self.sum_at(24) != Some(sum) {
            return bytes;
        }
        let mut open = Vec::new();
        for (at, frame) in self.frames().enumerate() {
            let (Some(number), Some(size), Some(page)) = (be32(frame, 0), be32(frame, 4), frame.get(FRAME_HEAD..))
            else {
                break;
            };
            sum = checksum(sum, frame.get(..8).unwrap_or_default(), little);
            sum = checksum(sum, page, little);
            let at = 32 + at * (FRAME_HEAD + self.page) + 16;
            if page.len() < self.page || frame.get(8..16) != salts || self.sum_at(at) != Some(sum) {
                break;
            }
            open.push((number, page));
            if size > 0 {
                bytes.resize(size as usize * self.page, 0);
                for (number, page) in open.drain(..) {
                    let from = (number.max(1) as usize - 1) * self.page;
                    if let Some(to) = bytes.get_mut(from..from + self.page) {
                        to.copy_from_slice(page);
                    }
                }
            }
        }
        bytes
    }

    fn sum_at(&self, at: usize) -> Option<(u32, u32)> {
        Some((be32(&self.log, at)?, be32(&self.log, at + 4)?))
    }

    /// The book in memory, in the schema of this program.
    ///
    /// # Errors
    /// [`StoreError::NotABook`], [`StoreError::NewerBook`], or [`StoreError::Damaged`].
    pub(super) fn connect(&self, path: &Path) -> Result<Connection> {
        let mut bytes = self.committed();
        if !bytes.starts_with(MAGIC) || bytes.get(68..72) != Some(&APPLICATION_ID.to_be_bytes()[..]) {
            return Err(StoreError::NotABook(path.to_owned()));
        }
        if be32(&bytes, 28).is_some_and(|pages| pages as usize * self.page > bytes.len()) {
            return Err(StoreError::Damaged("its file is cut short".to_owned()));
        }
        without_log(&mut bytes);
        let mut conn = Connection::open_in_memory()?;
        conn.deserialize_read_exact("main", bytes.as_slice(), bytes.len(), false)?;
        conn.execute_batch("PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY;")?;
        conn.set_prepared_statement_cache_capacity(128);
        let from = version(&conn)?;
        refuse_unreadable(&conn, from)?;
        if from < SCHEMA {
            migrations().to_latest(&mut conn).map_err(StoreError::from_upgrade)?;
        }
        Ok(conn)
    }
}

/// Marks the bytes of a book as one without a write-ahead log, as one in memory is and a copy.
pub(super) fn without_log(bytes: &mut [u8]) {
    if let Some(versions) = bytes.get_mut(18..20) {
        versions.fill(1);
    }
}

fn read_or_nothing(path: &Path) -> io::Result<Vec<u8>> {
    match fs::read(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(Vec::new()),
        read => read,
    }
}

fn be32(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_be_bytes(bytes.get(at..at.checked_add(4)?)?.try_into().ok()?))
}

/// The log's running checksum over a whole number of pairs of words.
fn checksum((mut a, mut b): (u32, u32), bytes: &[u8], little: bool) -> (u32, u32) {
    let word = |four: &[u8]| {
        let four = four.try_into().unwrap_or_default();
        if little { u32::from_le_bytes(four) } else { u32::from_be_bytes(four) }
    };
    for pair in bytes.chunks_exact(8) {
        let (first, second) = pair.split_at(4);
        a = a.wrapping_add(word(first)).wrapping_add(b);
        b = b.wrapping_add(word(second)).wrapping_add(a);
    }
    (a, b)
}
