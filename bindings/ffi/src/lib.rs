//! The core behind UniFFI: conversions only.
