//! What was read of the store, and what somebody above derived from it, kept from one tap to the next.

use std::any::Any;
use std::collections::BTreeMap;
use std::sync::Arc;

use crate::store::{Id, PhotoState};

use super::{Gaps, House};

/// Everything is as the store has it while [`Memory::seen`] is the store's own number.
#[derive(Debug, Default)]
pub(super) struct Memory {
    /// The store's count of writes by others when this was read.
    pub(super) seen: Option<i64>,
    pub(super) house: Option<Arc<House>>,
    pub(super) drafts: Option<BTreeMap<String, String>>,
    pub(super) settings: Option<BTreeMap<String, String>>,
    pub(super) photos: Option<BTreeMap<Id, PhotoState>>,
    pub(super) gaps: Option<Arc<Gaps>>,
    /// What was derived from the house last; it outlives the house, so that what did not change is not derived again.
    pub(super) derived: Option<(Arc<House>, Arc<dyn Any + Send + Sync>)>,
}

impl Memory {
    /// Forgets what was read, since others have written; what was derived is held to its content by whoever derived it.
    pub(super) fn forget(&mut self) {
        *self = Self { derived: self.derived.take(), ..Self::default() };
    }
}
