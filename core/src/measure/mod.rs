//! Exact lengths, tape divisions, parsing and showing.
