//! What a tick is held against: one small row, durably, under the pragmas of the book.

use std::path::Path;
use std::time::Instant;

use rusqlite::{Connection, TransactionBehavior};

/// A database of one table.
pub(crate) struct Bare(Connection);

impl Bare {
    pub(crate) fn open(path: &Path) -> rusqlite::Result<Self> {
        let conn = Connection::open(path)?;
        conn.execute_batch(
            "PRAGMA foreign_keys = ON; PRAGMA temp_store = MEMORY; PRAGMA synchronous = FULL; \
             PRAGMA journal_mode = WAL; CREATE TABLE tick (id INTEGER PRIMARY KEY, ms INTEGER, text TEXT) STRICT;",
        )?;
        Ok(Self(conn))
    }

    pub(crate) fn commit(&mut self) -> rusqlite::Result<()> {
        let tx = self.0.transaction_with_behavior(TransactionBehavior::Immediate)?;
        tx.prepare_cached("INSERT INTO tick (ms, text) VALUES (?1, ?2)")?.execute((1, "prime-cut-edges: done"))?;
        tx.commit()
    }
}

/// How long something takes, in microseconds.
pub(crate) fn timed(run: impl FnOnce()) -> f64 {
    let start = Instant::now();
    run();
    start.elapsed().as_secs_f64() * 1e6
}

/// The lower quartile, the median and the upper quartile.
pub(crate) fn quartiles(times: &mut [f64]) -> [f64; 3] {
    times.sort_unstable_by(f64::total_cmp);
    [1, 2, 3].map(|quarter| times.get(times.len() * quarter / 4).copied().unwrap_or_default())
}
