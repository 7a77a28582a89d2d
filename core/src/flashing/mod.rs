//! Patch, split block, clearances and the shedding check.
