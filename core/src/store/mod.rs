//! The book: an append-only log of entries and its projection, in SQLite.
