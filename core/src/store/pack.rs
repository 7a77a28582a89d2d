//! A backup made by hand: one file (ZIP, as its publisher's application note 6.3 has it) with a copy of the book, the photos
//! that are here, and a list of all of them with sizes and hashes. It counts once all of it was read again from the disk.
//!
//! Photos are as they were taken, with the place: their ids are the hashes of the whole files, and it is their owner's own
//! backup. What goes to others goes through [`Store::photo_export`].

use std::collections::BTreeSet;
use std::fs;
use std::io::{self, BufReader, BufWriter, Read as _, Write as _};
use std::path::Path;

use serde::{Deserialize, Serialize};
use zip::result::ZipError;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

use super::check::inspect;
use super::copy::book_in;
use super::file::PartFile;
use super::image::{Image, Sniffed, is_open_here, sniff};
use super::merge::content_hash;
use super::overwrite::{Overwrite, allow, put};
use super::photo;
use super::{Hash, Id, Now, PhotoState, Result, Store, StoreError};

const LIST: &str = "manifest.json";
const BOOK: &str = "book.lapwright";
/// The most bytes of a list: of half a million photos.
const LONGEST_LIST: u64 = 64 << 20;
/// The first bytes of such a file.
const MAGIC: &[u8] = b"PK\x03\x04";

/// What a backup made by hand holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BackupContents {
    /// Answers.
    pub answers: u64,
    /// Photos.
    pub photos: u64,
    /// Photos that the book names and that are not here, or are no longer those that were taken.
    pub missing: u64,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Manifest {
    lapwright_backup: u32,
    book: String,
    made_ms: i64,
    answers: u64,
    content: String,
    missing_photos: u64,
    files: Vec<Listed>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Listed {
    name: String,
    bytes: u64,
    sha256: String,
}

impl Listed {
    fn of(name: String, bytes: &[u8]) -> Self {
        Self { name, bytes: bytes.len() as u64, sha256: Hash::of(bytes).to_string() }
    }

    /// The photo that it is, by its name.
    fn photo(&self) -> Option<Id> {
        self.name.strip_prefix("photos/")?.strip_suffix(".jpg")?.parse().ok()
    }
}

/// A backup made by hand, opened to be read.
pub(super) struct Pack {
    archive: ZipArchive<BufReader<fs::File>>,
    manifest: Manifest,
}

/// Whether a file may be such a backup, by its first bytes.
fn is_pack(path: &Path) -> io::Result<bool> {
    let mut head = Vec::new();
    fs::File::open(path)?.take(MAGIC.len() as u64).read_to_end(&mut head)?;
    Ok(head == MAGIC)
}

/// The book in a file that another phone or an earlier day left, a book itself or a backup made by hand, which comes along;
/// none in a file that is neither.
pub(super) fn book_of_file(path: &Path) -> Result<Option<(Image, Option<Pack>)>> {
    if is_open_here(path) {
        return Err(StoreError::Itself(path.to_owned()));
    }
    match sniff(path)? {
        Sniffed::Book => Ok(Some((Image::read(path)?, None))),
        Sniffed::Foreign if path.is_file() && is_pack(path)? => {
            let mut pack = Pack::open(path)?;
            Ok(Some((pack.book()?, Some(pack))))
        }
        Sniffed::Foreign => Ok(None),
        Sniffed::Nothing => Err(StoreError::Io(io::ErrorKind::NotFound.into())),
        Sniffed::OtherDatabase => Err(StoreError::NotABook(path.to_owned())),
    }
}

fn damaged(error: ZipError) -> StoreError {
    match error {
        ZipError::Io(error) if error.kind() != io::ErrorKind::UnexpectedEof => error.into(),
        other => StoreError::Damaged(other.to_string()),
    }
}

fn wrong<T>(why: &str) -> Result<T> {
    Err(StoreError::Damaged(why.to_owned()))
}

impl Pack {
    /// Opens one and reads its list.
    pub(super) fn open(path: &Path) -> Result<Self> {
        let mut archive = ZipArchive::new(BufReader::new(fs::File::open(path)?)).map_err(damaged)?;
        let text = read(&mut archive, LIST, LONGEST_LIST)?;
        let manifest: Manifest =
            serde_json::from_slice(&text).map_err(|error| StoreError::Damaged(error.to_string()))?;
        if manifest.lapwright_backup != 1 {
            return wrong("its list is of another program");
        }
        let names: BTreeSet<&str> = manifest.files.iter().map(|file| file.name.as_str()).collect();
        let ours = manifest.files.iter().all(|file| file.name == BOOK || file.photo().is_some());
        // A name that stands twice, or a file that is in no list, is nothing that was put there here.
        if !ours || names.len() != manifest.files.len() || archive.len() != manifest.files.len() + 1 {
            return wrong("its list is not that of its files");
        }
        Ok(Self { archive, manifest })
    }

    fn bytes(&mut self, at: usize) -> Result<Vec<u8>> {
        let Some(file) = self.manifest.files.get(at) else { return wrong("its list is not that of its files") };
        let bytes = read(&mut self.archive, &file.name, file.bytes)?;
        if bytes.len() as u64 != file.bytes || Hash::of(&bytes).to_string() != file.sha256 {
            return wrong("a file in it is not the one of its list");
        }
        Ok(bytes)
    }

    /// The copy of the book in it.
    pub(super) fn book(&mut self) -> Result<Image> {
        let at = self.manifest.files.iter().position(|file| file.name == BOOK);
        let Some(at) = at else { return wrong("there is no book in it") };
        Ok(Image::of(self.bytes(at)?, Vec::new()))
    }

    /// Hands each photo over, one at a time.
    pub(super) fn photos(&mut self, mut take: impl FnMut(Id, Vec<u8>) -> Result<()>) -> Result<()> {
        for at in 0..self.manifest.files.len() {
            let Some(photo) = self.manifest.files.get(at).and_then(Listed::photo) else { continue };
            let bytes = self.bytes(at)?;
            if photo::id_of(&bytes) != photo {
                return wrong("a photo in it is not the one that was taken");
            }
            take(photo, bytes)?;
        }
        Ok(())
    }

    /// Checks all of it.
    fn check(&mut self, path: &Path) -> Result<BackupContents> {
        let conn = self.book()?.connect(path)?;
        inspect(&conn)?.pass()?;
        let answers: i64 = conn.query_row("SELECT count(*) FROM entry", [], |row| row.get(0))?;
        let told = (&self.manifest.book, &self.manifest.content, self.manifest.answers);
        let content = content_hash(&conn)?.to_string();
        if told != (&book_in(&conn)?.to_string(), &content, answers.unsigned_abs()) {
            return wrong("the book in it is not the one of its list");
        }
        let mut photos = 0;
        self.photos(|_, _| {
            photos += 1;
            Ok(())
        })?;
        Ok(BackupContents { answers: answers.unsigned_abs(), photos, missing: self.manifest.missing_photos })
    }
}

fn read(archive: &mut ZipArchive<BufReader<fs::File>>, name: &str, most: u64) -> Result<Vec<u8>> {
    let file = archive.by_name(name).map_err(damaged)?;
    if file.compression() != CompressionMethod::Stored {
        return wrong("a file in it is compressed, and none was");
    }
    let mut bytes = Vec::new();
    // Checksums that do not fit come as errors of reading, and are no fault of the disk.
    match file.take(most.saturating_add(1)).read_to_end(&mut bytes) {
        Ok(_) => Ok(bytes),
        Err(error) if error.raw_os_error().is_some() => Err(error.into()),
        Err(error) => Err(StoreError::Damaged(error.to_string())),
    }
}

impl Store {
    /// Writes the book and its photos into one file, which is checked from end to end before it gets its name.
    ///
    /// # Errors
    /// As [`write_file`](super::write_file), and [`StoreError::Damaged`] where the book does not pass the check.
    pub fn pack(&self, to: impl AsRef<Path>, overwrite: Overwrite, now: Now) -> Result<BackupContents> {
        let to = to.as_ref();
        allow(to, overwrite)?;
        let mut book = Vec::new();
        self.copy_into(&mut book)?;
        let answers: i64 = self.conn.query_row("SELECT count(*) FROM entry", [], |row| row.get(0))?;
        let mut manifest = Manifest {
            lapwright_backup: 1,
            book: self.book.to_string(),
            made_ms: now.ms,
            answers: answers.unsigned_abs(),
            content: content_hash(&self.conn)?.to_string(),
            missing_photos: 0,
            files: Vec::new(),
        };
        let photos = self.photo_states()?;
        let part = PartFile::fill(to, true, |file| {
            let mut zip = ZipWriter::new(BufWriter::new(file));
            let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored).large_file(true);
            let mut add = |name: &str, bytes: &[u8]| -> Result<()> {
                zip.start_file(name, stored).map_err(damaged)?;
                Ok(zip.write_all(bytes)?)
            };
            add(BOOK, &book)?;
            manifest.files.push(Listed::of(BOOK.to_owned(), &book));
            for (id, state) in photos {
                let here = self.photo_at(id, state).filter(|(state, _)| *state == PhotoState::Here);
                let bytes = here.map(|(_, file)| fs::read(file)).transpose()?;
                match bytes.filter(|bytes| photo::id_of(bytes) == id) {
                    Some(bytes) => {
                        let name = format!("photos/{id}.jpg");
                        add(&name, &bytes)?;
                        manifest.files.push(Listed::of(name, &bytes));
                    }
                    None => manifest.missing_photos += 1,
                }
            }
            let list = serde_json::to_vec_pretty(&manifest).unwrap_or_default();
            add(LIST, &list)?;
            Ok(zip.finish().map_err(damaged)?.flush()?)
        })?;
        let packed = Pack::open(part.path())?.check(part.path())?;
        put(part, to, overwrite)?;
        Ok(packed)
    }

    /// Checks a backup made by hand from end to end, without changing it.
    ///
    /// # Errors
    /// [`StoreError::DamagedFile`], or what the file system said.
    pub fn verify_pack(path: impl AsRef<Path>) -> Result<BackupContents> {
        let path = path.as_ref();
        Pack::open(path).and_then(|mut pack| pack.check(path)).map_err(|error| error.of_file(path))
    }
}
