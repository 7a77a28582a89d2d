//! What stays on this device: drafts, settings, photo states, seen-marks. Never merged, never copied, in no hash.

use std::path::Path;

use rusqlite::{Connection, OpenFlags, OptionalExtension, params};

use super::image::{Sniffed, is_open_here, sniff};
use super::{Clash, Id, Result, Store};

/// A setting of this device in a book that is not open, read without a trace: nothing is written, put right or waited for.
/// Nothing where the book cannot be read like that.
pub fn setting_at_rest(book: &Path, key: &str) -> Option<String> {
    if is_open_here(book) || !matches!(sniff(book), Ok(Sniffed::Book)) {
        return None;
    }
    let name = book.canonicalize().ok()?;
    let name = name.to_str()?.replace('%', "%25").replace('?', "%3f").replace('#', "%23");
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_URI | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let book = Connection::open_with_flags(format!("file:{name}?immutable=1"), flags).ok()?;
    book.query_row("SELECT text FROM setting WHERE key = ?1", [key], |row| row.get(0)).ok()
}

/// Where a photo is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotoState {
    /// Named by a sign-off, not yet here.
    Waiting,
    /// On this device.
    Here,
    /// Was here, and cannot be found.
    Missing,
}

impl PhotoState {
    fn word(self) -> &'static str {
        match self {
            Self::Waiting => "waiting",
            Self::Here => "here",
            Self::Missing => "missing",
        }
    }

    pub(super) fn of(word: &str) -> Option<Self> {
        [Self::Waiting, Self::Here, Self::Missing].into_iter().find(|state| state.word() == word)
    }
}

impl Store {
    fn put(&mut self, table: &str, key: &str, text: &str) -> Result<()> {
        self.ready()?;
        self.conn.prepare_cached(&format!("INSERT OR REPLACE INTO {table} VALUES (?1, ?2)"))?.execute([key, text])?;
        Ok(())
    }

    fn get(&self, table: &str, key: &str) -> Result<Option<String>> {
        let sql = format!("SELECT text FROM {table} WHERE key = ?1");
        Ok(self.conn.prepare_cached(&sql)?.query_row([key], |row| row.get(0)).optional()?)
    }

    fn clear(&mut self, table: &str, key: &str) -> Result<()> {
        self.ready()?;
        self.conn.prepare_cached(&format!("DELETE FROM {table} WHERE key = ?1"))?.execute([key])?;
        Ok(())
    }

    /// Keeps what was typed and not yet accepted, durably.
    pub fn draft_put(&mut self, key: &str, text: &str) -> Result<()> {
        self.put("draft", key, text)
    }

    /// What was typed and not yet accepted.
    pub fn draft_get(&self, key: &str) -> Result<Option<String>> {
        self.get("draft", key)
    }

    /// Drops a draft.
    pub fn draft_clear(&mut self, key: &str) -> Result<()> {
        self.clear("draft", key)
    }

    /// Keeps a setting of this device, durably.
    pub fn setting_put(&mut self, key: &str, text: &str) -> Result<()> {
        self.put("setting", key, text)
    }

    /// A setting of this device.
    pub fn setting_get(&self, key: &str) -> Result<Option<String>> {
        self.get("setting", key)
    }

    /// Drops a setting.
    pub fn setting_clear(&mut self, key: &str) -> Result<()> {
        self.clear("setting", key)
    }

    /// Says where a photo is.
    pub fn photo_mark(&mut self, photo: Id, state: PhotoState) -> Result<()> {
        self.ready()?;
        self.conn
            .prepare_cached("INSERT OR REPLACE INTO photo VALUES (?1, ?2)")?
            .execute(params![photo, state.word()])?;
        Ok(())
    }

    /// Where a photo is; `None` for one that nothing names.
    pub fn photo(&self, photo: Id) -> Result<Option<PhotoState>> {
        let word: Option<String> = self
            .conn
            .prepare_cached("SELECT state FROM photo WHERE id = ?1")?
            .query_row([photo], |row| row.get(0))
            .optional()?;
        Ok(word.as_deref().and_then(PhotoState::of))
    }

    /// Notes that a signer has seen which value lost.
    pub fn clash_mark_seen(&mut self, clash: &Clash, signer: &str) -> Result<()> {
        self.ready()?;
        self.conn.prepare_cached("INSERT OR IGNORE INTO clash_seen VALUES (?1, ?2, ?3, ?4)")?.execute(params![
            clash.subject,
            clash.field,
            clash.group,
            signer
        ])?;
        Ok(())
    }
}
