//! A book that nobody else writes in: a file read by SQLite where it lies, or all of a book in memory.

use std::path::Path;

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_encode};
use rusqlite::backup::{Backup, StepResult};
use rusqlite::{Connection, OpenFlags};

use super::image::is_open_here;
use super::schema::{APPLICATION_ID, refuse_unreadable, version};
use super::{Result, StoreError};

/// A copy that nobody writes in, to be read where it lies; nothing is locked, changed, or made beside it.
///
/// # Errors
/// [`StoreError::Busy`] where this process has it open as a book, [`StoreError::NotABook`], [`StoreError::NewerBook`]; else what
/// SQLite said.
pub(super) fn look_into(path: &Path) -> Result<Connection> {
    if is_open_here(path) {
        return Err(StoreError::Busy);
    }
    let conn = open_uri(&uri(path, "immutable=1"), OpenFlags::SQLITE_OPEN_READ_ONLY)?;
    conn.execute_batch("PRAGMA temp_store = MEMORY;")?;
    let id: i32 = conn.query_row("PRAGMA application_id", [], |row| row.get(0))?;
    if id != APPLICATION_ID {
        return Err(StoreError::NotABook(path.to_owned()));
    }
    refuse_unreadable(&conn, version(&conn)?)?;
    Ok(conn)
}

/// All of a book in memory, as it is at one moment.
pub(super) fn memory_of(conn: &Connection) -> Result<Connection> {
    let mut copy = Connection::open_in_memory()?;
    match Backup::new(conn, &mut copy)?.step(-1)? {
        StepResult::Done => {}
        _ => return Err(StoreError::Busy),
    }
    copy.execute_batch("PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY;")?;
    copy.set_prepared_statement_cache_capacity(128);
    Ok(copy)
}

/// Opens what [`uri`] names, on one thread.
pub(super) fn open_uri(uri: &str, how: OpenFlags) -> Result<Connection> {
    Ok(Connection::open_with_flags(uri, how | OpenFlags::SQLITE_OPEN_URI | OpenFlags::SQLITE_OPEN_NO_MUTEX)?)
}

/// A path as SQLite reads it with a parameter: <https://www.sqlite.org/uri.html>, section 3.1.
pub(super) fn uri(path: &Path, parameter: &str) -> String {
    const KEPT: &AsciiSet = &NON_ALPHANUMERIC.remove(b'/').remove(b'-').remove(b'.').remove(b'_');
    #[cfg(unix)]
    let bytes = std::os::unix::ffi::OsStrExt::as_bytes(path.as_os_str());
    #[cfg(not(unix))]
    let text = path.to_string_lossy().replace('\\', "/");
    #[cfg(not(unix))]
    let bytes = text.as_bytes();
    // With nothing between the first two strokes and the third, no part of the path is taken for the name of a computer.
    let computer = if bytes.starts_with(b"/") { "//" } else { "" };
    format!("file:{computer}{}?{parameter}", percent_encode(bytes, KEPT))
}
