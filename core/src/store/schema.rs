//! The schema of a book, and books that have nothing but it.

use rusqlite::Connection;
use rusqlite_migration::{M, Migrations};

use super::{Result, StoreError};

/// Marks a SQLite file as a book: "LPRW".
pub const APPLICATION_ID: i32 = 0x4C50_5257;
/// The schema of this program.
pub const SCHEMA: i64 = 1;

/// A new book in memory.
pub(super) fn memory() -> Result<Connection> {
    let mut conn = Connection::open_in_memory()?;
    conn.execute_batch("PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY;")?;
    migrations().to_latest(&mut conn).map_err(StoreError::from_upgrade)?;
    conn.set_prepared_statement_cache_capacity(128);
    Ok(conn)
}

/// Refuses what this program cannot read.
///
/// # Errors
/// [`StoreError::Damaged`] where no version stands in it, [`StoreError::NewerBook`] where only a newer program reads it.
pub(super) fn refuse_unreadable(conn: &Connection, version: i64) -> Result<()> {
    if version < 1 {
        return Err(StoreError::Damaged("its schema version is gone".to_owned()));
    }
    if version > SCHEMA {
        let needs: i64 = conn.query_row("SELECT least_reader FROM book", [], |row| row.get(0))?;
        if needs > SCHEMA {
            return Err(StoreError::NewerBook { needs, reads: SCHEMA });
        }
    }
    Ok(())
}

pub(super) fn version(conn: &Connection) -> Result<i64> {
    Ok(conn.query_row("PRAGMA user_version", [], |row| row.get(0))?)
}

pub(super) fn migrations() -> Migrations<'static> {
    Migrations::new(vec![M::up(include_str!("../../../fixtures/book/schema-1.sql"))])
}
