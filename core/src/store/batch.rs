use std::path::PathBuf;

use super::device::Tip;

/// Writes that stand or fall together. Nothing is locked before the first of them.
#[derive(Debug, Default)]
pub(super) struct Batch {
    /// Whether a transaction is open for it, or a savepoint in that of the batch round it.
    pub(super) begun: bool,
    pub(super) within: bool,
    pub(super) tip: Option<Tip>,
    /// Whether entries of other devices were taken in.
    pub(super) taken_in: bool,
    /// Files that are of no use once it is kept.
    pub(super) spent: Vec<PathBuf>,
}
