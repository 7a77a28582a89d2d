//! Photos: in `NAME.photos` beside the book, each under its id, which is the first 16 bytes of the SHA-256 of the file.
//!
//! A photo is named before there is one: `incoming/<id>`, with an id by chance, is what a camera fills. Taking it in
//! copies it under its own id, then tells the book, then removes the incoming file, so that a stop anywhere leaves
//! either the one or the other. A sign-off that names a photo so names its contents.

use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::params;
use sha2::{Digest as _, Sha256};

use super::file::{PartFile, beside, create_private_folder};
use super::jpeg;
use super::overwrite::{Overwrite, write_file};
use super::{Id, PhotoState, Result, Store, StoreError};

impl Store {
    /// Names the file for a photo that a camera is about to take, and keeps its id as the draft `key`.
    ///
    /// # Errors
    /// [`StoreError::NoFolder`] for a book in memory, or what the file system said.
    pub fn photo_begin(&mut self, key: &str, photo: Id) -> Result<PathBuf> {
        let file = self.incoming(photo)?;
        if let Some(folder) = file.parent() {
            create_private_folder(folder)?;
        }
        let tx = self.begin()?;
        tx.execute("INSERT OR REPLACE INTO photo VALUES (?1, 'waiting')", [photo])?;
        tx.execute("INSERT OR REPLACE INTO draft VALUES (?1, ?2)", params![key, photo.to_string()])?;
        tx.commit()?;
        Ok(file)
    }

    /// Takes in what the camera has put into the file of [`Store::photo_begin`], and keeps the photo's own id as the
    /// draft `key`; `None` where there is no whole photo, which leaves everything as it is.
    ///
    /// # Errors
    /// What the file system or SQLite said.
    pub fn photo_take_in(&mut self, key: &str, photo: Id) -> Result<Option<Id>> {
        let incoming = self.incoming(photo)?;
        let bytes = match fs::read(&incoming) {
            Ok(bytes) if jpeg::is_whole(&bytes) => bytes,
            Ok(_) => return Ok(None),
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(None),
            Err(error) => return Err(error.into()),
        };
        let own = id_of(&bytes);
        let kept = self.photos()?.join(name(own));
        PartFile::write(&kept, &bytes, true)?.replace(&kept)?;
        let tx = self.begin()?;
        tx.execute("INSERT OR REPLACE INTO photo VALUES (?1, 'here')", [own])?;
        tx.execute("DELETE FROM photo WHERE id = ?1", [photo])?;
        tx.execute("INSERT OR REPLACE INTO draft VALUES (?1, ?2)", params![key, own.to_string()])?;
        tx.commit()?;
        self.spend(incoming)?;
        Ok(Some(own))
    }

    /// Gives up a photo that did not come: its row, its draft `key` and what there is of its file.
    ///
    /// # Errors
    /// What the file system or SQLite said.
    pub fn photo_drop(&mut self, key: &str, photo: Id) -> Result<()> {
        let tx = self.begin()?;
        tx.execute("DELETE FROM photo WHERE id = ?1 AND state = 'waiting'", [photo])?;
        tx.execute("DELETE FROM draft WHERE key = ?1", [key])?;
        tx.commit()?;
        let incoming = self.incoming(photo)?;
        Ok(self.spend(incoming)?)
    }

    /// Where a photo is now, looking at its file, and the file to show or to fill: `None` for one that nothing names.
    ///
    /// # Errors
    /// What SQLite said.
    pub fn photo_file(&self, photo: Id) -> Result<Option<(PhotoState, PathBuf)>> {
        Ok(self.photo(photo)?.and_then(|state| self.photo_at(photo, state)))
    }

    /// The same for a photo whose state in the book is known; none for a book in memory.
    pub fn photo_at(&self, photo: Id, state: PhotoState) -> Option<(PhotoState, PathBuf)> {
        let photos = self.photos().ok()?;
        let file = photos.join(name(photo));
        Some(match state {
            _ if file.is_file() => (PhotoState::Here, file),
            PhotoState::Waiting => (PhotoState::Waiting, photos.join("incoming").join(name(photo))),
            PhotoState::Here | PhotoState::Missing => (PhotoState::Missing, file),
        })
    }

    /// Writes a photo for others to `to`: the picture and which way up it is, without the place where it was taken and
    /// whatever else a camera adds.
    ///
    /// # Errors
    /// [`StoreError::NoPhoto`] where it is not here, [`StoreError::DamagedFile`] where its file is another one by now; else as
    /// [`write_file`].
    pub fn photo_export(&self, photo: Id, to: impl AsRef<Path>, overwrite: Overwrite) -> Result<()> {
        let Some((PhotoState::Here, file)) = self.photo_file(photo)? else { return Err(StoreError::NoPhoto(photo)) };
        let bytes = fs::read(&file)?;
        if id_of(&bytes) != photo {
            return Err(StoreError::DamagedFile { path: file, why: "it is not the photo that was taken".to_owned() });
        }
        let bare = jpeg::bare(&bytes).ok_or(StoreError::NoPhoto(photo))?;
        write_file(to, &bare, overwrite)
    }

    /// Puts a photo from a backup in its place, where none is.
    pub(super) fn photo_put(&self, photo: Id, bytes: &[u8]) -> Result<()> {
        let file = self.photos()?.join(name(photo));
        if file.is_file() {
            return Ok(());
        }
        create_private_folder(self.photos()?)?;
        PartFile::write(&file, bytes, true)?.replace(&file)
    }

    /// The photos that should be here and are not, or are no longer those that were taken, each with what is wrong.
    pub(super) fn photo_faults(&self) -> Result<Vec<String>> {
        let Ok(photos) = self.photos() else { return Ok(Vec::new()) };
        let mut statement = self.conn.prepare_cached("SELECT id, state FROM photo ORDER BY id")?;
        let rows = statement.query_map([], |row| Ok((row.get::<_, Id>(0)?, row.get::<_, String>(1)?)))?;
        let mut faults = Vec::new();
        for row in rows {
            let (photo, state) = row?;
            match fs::read(photos.join(name(photo))) {
                Ok(bytes) if id_of(&bytes) == photo => {}
                Ok(_) => faults.push(format!("photo {photo} is not the one that was taken")),
                Err(error) if error.kind() == std::io::ErrorKind::NotFound => {
                    if state == "here" {
                        faults.push(format!("photo {photo} is missing"));
                    }
                }
                Err(error) => return Err(error.into()),
            }
        }
        Ok(faults)
    }

    fn photos(&self) -> Result<PathBuf> {
        self.path.as_deref().map(|path| beside(path, ".photos")).ok_or(StoreError::NoFolder)
    }

    fn incoming(&self, photo: Id) -> Result<PathBuf> {
        Ok(self.photos()?.join("incoming").join(name(photo)))
    }
}

fn name(photo: Id) -> String {
    format!("{photo}.jpg")
}

pub(super) fn id_of(bytes: &[u8]) -> Id {
    let digest: [u8; 32] = Sha256::digest(bytes).into();
    let (id, _) = digest.split_at(16);
    Id::from_bytes(id.try_into().unwrap_or_default())
}

#[cfg(test)]
mod tests;
