//! How many statements SQLite runs, by its own trace hook: for tests and benchmarks.

use std::cell::Cell;

use rusqlite::trace::{TraceEvent, TraceEventCodes};

use super::Store;

/// Statements that were run on this thread.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Statements {
    /// Those that only read, outside transactions that write.
    pub reads: u64,
    /// All of them.
    pub all: u64,
}

thread_local! {
    static RUN: Cell<Statements> = const { Cell::new(Statements { reads: 0, all: 0 }) };
    static WRITING: Cell<bool> = const { Cell::new(false) };
}

impl Store {
    /// Counts the statements of this book on this thread from now on, from zero.
    pub fn count_statements(&self) {
        RUN.set(Statements::default());
        WRITING.set(false);
        self.conn.trace_v2(TraceEventCodes::SQLITE_TRACE_STMT, Some(count));
    }

    /// What was run on this thread since the counting began, or since this was asked last.
    pub fn take_statements() -> Statements {
        RUN.replace(Statements::default())
    }
}

fn count(event: TraceEvent<'_>) {
    let TraceEvent::Stmt(_, sql) = event else { return };
    // What a trigger runs is told as a comment.
    if sql.starts_with("--") {
        return;
    }
    let mut run = RUN.get();
    run.all += 1;
    if sql.starts_with("BEGIN") {
        WRITING.set(true);
    } else if sql.starts_with("COMMIT") || sql.starts_with("ROLLBACK") {
        WRITING.set(false);
    } else if !WRITING.get() && (sql.starts_with("SELECT") || sql.starts_with("PRAGMA") || sql.starts_with("WITH")) {
        run.reads += 1;
    }
    RUN.set(run);
}
