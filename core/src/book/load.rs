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
            house.drop_from_index(*id);
            house.records.remove(id);
            house.removed.remove(id);
            house.signed.remove(id);
        }
        let ids: Vec<Id> = touched.iter().copied().collect();
        house.take(store, Scope::These(&ids))?;
        touched.iter().for_each(|id| house.put_in_index(*id));
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

#[cfg(test)]
mod tests {
    use crate::book::{Book, Field, Kind, Operation, OperationKind};
    use crate::store::{Author, Id, Now, Value};

    use super::House;

    fn id(n: u8) -> Id {
        Id::from_bytes([n; 16])
    }

    /// Things come, change their place among their like, go and come back: what is brought up to date is what is read anew.
    #[test]
    fn a_house_that_followed_its_answers_is_the_one_in_the_store() {
        let mut book = Book::in_memory().unwrap();
        let mut groups = Vec::new();
        let mut say = |book: &mut Book, operation: Operation| {
            let author = Author { signer: "Ines".to_owned(), program: "0".to_owned() };
            let now = Now { ms: 1_800_000_000_000 + groups.len() as i64, utc_offset_minutes: 0 };
            groups.push(book.transact(&operation, &author, now, &[]).unwrap().group);
            *groups.last().unwrap()
        };
        let to = |kind| Operation::new(kind, Some(id(1)), ["A"]);
        let job = Operation::new(OperationKind::JobCreated, None, ["A"]).create(id(1), Kind::Job, None, String::new());
        say(&mut book, job);
        let matches = |book: &Book| {
            let followed = book.house(Some(id(1))).unwrap();
            let read = House::load(book.store(), Some(id(1))).unwrap();
            assert_eq!(format!("{followed:?}"), format!("{read:?}"));
            followed
        };
        matches(&book);
        for (n, key) in [(4, "b"), (3, "c"), (2, "a"), (5, "b")] {
            say(&mut book, to(OperationKind::WallAdded).create(id(n), Kind::Wall, Some(id(1)), key.to_owned()));
            matches(&book);
        }
        let walls = |house: &House| house.own(Kind::Wall).iter().map(|wall| wall.id()).collect::<Vec<_>>();
        assert_eq!(walls(&matches(&book)), [2, 4, 5, 3].map(id));
        say(&mut book, to(OperationKind::Answered).set(id(4), Field::Name, Value::Text("North".to_owned())));
        matches(&book);
        let gone = say(&mut book, to(OperationKind::Removed).remove(id(4)));
        assert_eq!(walls(&matches(&book)), [2, 5, 3].map(id));
        let author = Author { signer: "Ines".to_owned(), program: "0".to_owned() };
        let later = Now { ms: 1_800_000_001_000, utc_offset_minutes: 0 };
        book.undo(gone, &author, later, |_| None).unwrap();
        assert_eq!(walls(&matches(&book)), [2, 4, 5, 3].map(id));
    }
}
