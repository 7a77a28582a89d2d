//! Views and actions of every screen as plain data.
