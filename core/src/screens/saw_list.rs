//! Saw list: what to cut from what.
