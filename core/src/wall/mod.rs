//! The house, its walls and what sits in them.
