use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::store::{Change, Id, Signed};

use super::{Field, Kind, Operation, Record};

/// A house as the book has it: its things, and what was signed on them. Loose boards of no house are there, too, since
/// one of them may have been attached to a wall. A house of `None` is the book itself: it has nothing but those.
#[derive(Clone, Debug, Default)]
pub struct House {
    pub(super) job: Option<Id>,
    pub(super) records: BTreeMap<Id, Arc<Record>>,
    pub(super) removed: BTreeSet<Id>,
    pub(super) signed: BTreeMap<Id, Arc<[Signed]>>,
    /// What hangs under a thing, by kind, in the order of the sort keys.
    pub(super) under: BTreeMap<(Option<Id>, Kind), Vec<Arc<Record>>>,
}

/// Why a house has no such thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// There never was one of this kind.
    Unknown(Kind),
    /// It was removed.
    Removed(Kind),
}

impl House {
    /// The id of the house; none for the book itself.
    pub fn id(&self) -> Option<Id> {
        self.job
    }

    /// The house's own fields.
    ///
    /// # Errors
    /// [`Missing`] for the book itself, or where the house was removed.
    pub fn job(&self) -> Result<&Arc<Record>, Missing> {
        self.get(self.job.unwrap_or(Id::from_bytes([0; 16])), Kind::Job)
    }

    /// A thing of the house.
    ///
    /// # Errors
    /// [`Missing`] where it is not there, is of another kind, or was removed.
    pub fn get(&self, id: Id, kind: Kind) -> Result<&Arc<Record>, Missing> {
        match self.records.get(&id).filter(|record| record.kind == kind) {
            Some(record) => Ok(record),
            None if self.removed.contains(&id) => Err(Missing::Removed(kind)),
            None => Err(Missing::Unknown(kind)),
        }
    }

    /// Whether a thing belongs here; a loose board of no house that hangs on one's wall belongs there.
    pub(super) fn is_home_of(&self, id: Id) -> bool {
        let Some(record) = self.records.get(&id) else { return false };
        let board = match record.kind {
            Kind::Notch => record.parent.and_then(|board| self.records.get(&board)),
            _ => Some(record),
        };
        if record.made_in.is_some() || record.kind == Kind::Job || record.parent == self.job && self.job.is_some() {
            return true;
        }
        let wall = board.and_then(|board| board.reference(Field::Wall));
        match wall {
            Some(wall) => self.records.contains_key(&wall),
            None => self.job.is_none(),
        }
    }

    pub(super) fn has_or_had(&self, id: Id) -> bool {
        self.records.contains_key(&id) || self.removed.contains(&id)
    }

    /// A thing of any kind.
    pub fn any(&self, id: Id) -> Option<&Arc<Record>> {
        self.records.get(&id)
    }

    /// All things of the house.
    pub fn all(&self) -> impl Iterator<Item = &Arc<Record>> {
        self.records.values()
    }

    /// The things of a kind that hang under another, in their order.
    pub fn under(&self, parent: Id, kind: Kind) -> &[Arc<Record>] {
        self.under.get(&(Some(parent), kind)).map(Vec::as_slice).unwrap_or_default()
    }

    /// The things of a kind that hang under the house itself, in their order.
    pub fn own(&self, kind: Kind) -> &[Arc<Record>] {
        self.job.map(|job| self.under(job, kind)).unwrap_or_default()
    }

    /// The boards that hang under no wall and were made in this house, in their order; for the book itself those that
    /// were made in none.
    pub fn loose_boards(&self) -> impl Iterator<Item = &Arc<Record>> {
        let loose = self.under.get(&(None, Kind::Board)).map(Vec::as_slice).unwrap_or_default();
        loose.iter().filter(|board| board.made_in == self.job)
    }

    /// What was signed on a thing and not undone, oldest first.
    pub fn signed(&self, id: Id) -> impl DoubleEndedIterator<Item = &Signed> {
        self.signed.get(&id).into_iter().flat_map(|signed| signed.iter()).filter(|signed| !signed.undone)
    }

    /// A house that no book has yet, as these answers of somebody would make it: a changed rule counts only where it is known
    /// who changed it.
    pub fn imagined(job: Id, operations: &[Operation], signer: &str) -> Self {
        let mut house = Self { job: Some(job), ..Self::default() };
        operations.iter().for_each(|operation| house.take_in(operation, signer));
        house.index();
        house
    }

    /// The house as it would be with an answer that is not in the book yet.
    pub fn with(&self, operation: &Operation) -> Self {
        let mut house = self.clone();
        house.take_in(operation, "");
        house.index();
        house
    }

    fn take_in(&mut self, operation: &Operation, signer: &str) {
        for change in &operation.op().changes {
            match change {
                Change::Create { subject, kind, parent, sort_key } => {
                    let Some(kind) = Kind::from_code(kind) else { continue };
                    let record = Record::new(*subject, kind, operation.job(), *parent, sort_key.clone());
                    self.records.insert(*subject, Arc::new(record));
                }
                Change::Set { subject, field, value } | Change::Keep { subject, field, value } => {
                    if let Some(record) = self.records.get_mut(subject) {
                        Arc::make_mut(record).put_code(field.clone(), value.clone(), signer);
                    }
                }
                Change::Remove { subject } => {
                    self.records.remove(subject);
                }
                Change::SignOff(_) => {}
            }
        }
    }

    /// Puts what hangs under what in order.
    pub(super) fn index(&mut self) {
        let mut under: BTreeMap<(Option<Id>, Kind), Vec<Arc<Record>>> = BTreeMap::new();
        for record in self.records.values() {
            under.entry((record.parent, record.kind)).or_default().push(Arc::clone(record));
        }
        for records in under.values_mut() {
            records.sort_by(|a, b| place(a).cmp(&place(b)));
        }
        self.under = under;
    }

    /// Takes one thing out of what hangs under another.
    pub(super) fn drop_from_index(&mut self, id: Id) {
        let Some(record) = self.records.get(&id) else { return };
        let key = (record.parent, record.kind);
        if let Some(beside) = self.under.get_mut(&key) {
            beside.retain(|other| other.id() != id);
            if beside.is_empty() {
                self.under.remove(&key);
            }
        }
    }

    /// Puts one thing in its place among what hangs under another.
    pub(super) fn put_in_index(&mut self, id: Id) {
        let Some(record) = self.records.get(&id) else { return };
        let beside = self.under.entry((record.parent, record.kind)).or_default();
        let at = beside.partition_point(|other| place(other) < place(record));
        beside.insert(at, Arc::clone(record));
    }
}

/// Where a thing stands among its like.
fn place(record: &Record) -> (&str, Id) {
    (&record.sort_key, record.id())
}
