//! The `figure` questions: one request in, one answer out, no book.
