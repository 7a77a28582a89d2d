//! A house read from the store in three statements, and brought up to date after an answer in three more.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::store::{Id, Result, Scope, Signed, Store};

use super::{House, Kind, Record};

/// The kinds that a house takes in from no house: loose boards with all that hangs under one, since it may be attached to
/// the house's walls.
const LOOSE: [&str; 4] = ["board", "notch", "cut", "cut-notch"];

/// After an answer that touches more things than this, a house is read anew.
const FEW: usize = 64;

impl House {
    /// A house of the store, whole.
    pub(super) fn load(store: &Store, job: Option<Id>) -> Result<Self> {
        let mut house = Self { job, ..Self::default() };
        house.take(store, Scope::Job(job, &LOOSE))?;
        house.index();
        Ok(house)
    }

    /// The same house after an answer that touched these things.
    pub(super) fn after(&self, store: &Store, touched: &BTreeSet<Id>) -> Result<Self> {
        if touched.len() > FEW {
            return Self::load(store, self.job);
        }
        let mut house = self.clone();
        for id in touched {
            house.records.remove(id);
            house.removed.remove(id);
            house.signed.remove(id);
        }
        let ids: Vec<Id> = touched.iter().copied().collect();
        house.take(store, Scope::These(&ids))?;
        house.index();
        Ok(house)
    }

    /// Takes in what of a scope belongs to the house.
    fn take(&mut self, store: &Store, scope: Scope<'_>) -> Result<()> {
        let mut records = BTreeMap::new();
        for subject in store.subjects_of(scope)? {
            let loose = subject.job.is_none() && LOOSE.contains(&subject.kind.as_str());
            let ours = [subject.job, subject.parent, Some(subject.id)].contains(&self.job) && self.job.is_some();
            if !(loose || ours) {
                continue;
            }
            if subject.removed.is_some() {
                self.removed.insert(subject.id);
            } else if let Some(kind) = Kind::from_code(&subject.kind) {
                // A kind that a newer program wrote stays in the store, byte for byte, and out of the house.
                let record = Record::new(subject.id, kind, subject.job, subject.parent, subject.sort_key);
                records.insert(record.id(), record);
            }
        }
        for (id, code, written) in store.fields_of(scope)? {
            if let Some(record) = records.get_mut(&id) {
                record.read(code, written);
            }
        }
        let mut signed: BTreeMap<Id, Vec<Signed>> = BTreeMap::new();
        for one in store.signed_of(scope)? {
            signed.entry(one.sign_off.subject).or_default().push(one);
        }
        self.signed.extend(signed.into_iter().map(|(id, signed)| (id, signed.into())));
        self.records.extend(records.into_iter().map(|(id, record)| (id, Arc::new(record))));
        Ok(())
    }
}
