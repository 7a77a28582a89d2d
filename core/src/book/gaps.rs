use std::collections::BTreeMap;
use std::sync::Arc;

use crate::notch::{FittedGap, LearnedOvercut, learned_overcut};
use crate::store::{Id, Result, Scope, Store};

use super::{Field, Kind, Record};

/// Every gap that was measured after fitting, of every house: a saw is the same on each.
#[derive(Clone, Debug, Default)]
pub struct Gaps {
    all: Vec<Arc<Record>>,
    by_notch: BTreeMap<Id, Vec<usize>>,
    by_saw: BTreeMap<(String, String), Own>,
}

/// The gaps of a person and a saw. What was said again of a notch of the same cut is no further one: the last holds.
#[derive(Clone, Debug, Default)]
struct Own {
    ids: Vec<Id>,
    cuts: BTreeMap<(Id, Id), FittedGap>,
}

impl Own {
    fn learned(&self) -> Option<LearnedOvercut> {
        let cuts: Vec<FittedGap> = self.cuts.values().copied().collect();
        learned_overcut(&cuts)
    }
}

impl Gaps {
    /// All gaps of the store.
    pub(super) fn load(store: &Store) -> Result<Self> {
        Ok(Self::new(read(store, Scope::Book(Kind::Gap.code()))?))
    }

    /// The same gaps after an answer that touched these things.
    pub(super) fn after(&self, store: &Store, touched: &[Id]) -> Result<Self> {
        let mut all: Vec<_> = self.all.iter().filter(|gap| !touched.contains(&gap.id())).cloned().collect();
        all.extend(read(store, Scope::These(touched))?);
        all.sort_by(|a, b| (&a.sort_key, a.id()).cmp(&(&b.sort_key, b.id())));
        Ok(Self::new(all))
    }

    fn new(all: Vec<Arc<Record>>) -> Self {
        let mut by_notch: BTreeMap<Id, Vec<usize>> = BTreeMap::new();
        let mut by_saw: BTreeMap<(String, String), Own> = BTreeMap::new();
        for (at, gap) in all.iter().enumerate() {
            if let Some(notch) = gap.reference(Field::Notch) {
                by_notch.entry(notch).or_default().push(at);
            }
            if let (Some(left), Some(offset)) = (gap.length(Field::Gap), gap.length(Field::Offset)) {
                let text = |field| gap.text(field).unwrap_or_default().to_owned();
                let own = by_saw.entry((text(Field::Signer), text(Field::Saw))).or_default();
                own.ids.push(gap.id());
                // The first books did not say after which cut; there it was the board's only one.
                let cut = gap.reference(Field::Cut).or_else(|| gap.reference(Field::Board)).unwrap_or(gap.id());
                let notch = gap.reference(Field::Notch).unwrap_or(gap.id());
                own.cuts.insert((cut, notch), FittedGap { gap: left, offset });
            }
        }
        Self { all, by_notch, by_saw }
    }

    /// What was learned of a person's hands and a saw; none before the first gap.
    pub fn habit(&self, signer: &str, saw: &str) -> Option<LearnedOvercut> {
        self.by_saw.get(&(signer.to_owned(), saw.to_owned())).and_then(Own::learned)
    }

    /// What was learned of everybody's hands and saws.
    pub fn habits(&self) -> impl Iterator<Item = LearnedOvercut> {
        self.by_saw.values().filter_map(Own::learned)
    }

    /// The gaps of a person and a saw, by their ids.
    pub fn of(&self, signer: &str, saw: &str) -> &[Id] {
        self.by_saw.get(&(signer.to_owned(), saw.to_owned())).map(|own| own.ids.as_slice()).unwrap_or_default()
    }

    /// The gap that was said last of a notch of a board, under any id that the notch goes by.
    pub fn last(&self, board: Id, notch: &[Id]) -> Option<&Arc<Record>> {
        let known = notch.iter().filter_map(|id| self.by_notch.get(id)).flatten();
        let of_board =
            known.filter(|at| self.all.get(**at).is_some_and(|gap| gap.reference(Field::Board) == Some(board)));
        self.all.get(*of_board.max()?)
    }
}

fn read(store: &Store, scope: Scope<'_>) -> Result<Vec<Arc<Record>>> {
    let mut records = BTreeMap::new();
    let mut order = Vec::new();
    for subject in store.subjects_of(scope)? {
        if subject.removed.is_none() && subject.kind == Kind::Gap.code() {
            order.push(subject.id);
            let record = Record::new(subject.id, Kind::Gap, subject.job, subject.parent, subject.sort_key);
            records.insert(record.id(), record);
        }
    }
    for (id, code, written) in store.fields_of(scope)? {
        if let Some(record) = records.get_mut(&id) {
            record.read(code, written);
        }
    }
    Ok(order.into_iter().filter_map(|id| records.remove(&id)).map(Arc::new).collect())
}
