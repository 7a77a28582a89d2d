//! A book's file that nobody writes in, read by SQLite where it lies.

use std::path::Path;

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_encode};
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
    format!("file:{}?{parameter}", percent_encode(bytes, KEPT))
}
