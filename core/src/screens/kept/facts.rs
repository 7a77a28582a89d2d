use std::collections::BTreeMap;

use crate::measure::{Length, Unit};
use crate::screens::context::Terms;
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{DeviceId, Field, Id, Stamp, Store, Subject, Value};
use crate::views::{Code, Problem, Reading, Source};

/// The ending of a field that holds what the tape read where the field without it holds what was planned.
const TAPED: &str = "-taped";

/// A thing of the book and its fields.
#[derive(Clone)]
pub(crate) struct Facts {
    /// The thing.
    pub(crate) subject: Subject,
    fields: BTreeMap<String, Field>,
}

impl Facts {
    /// The thing of an id that must be of this kind and not removed.
    pub(crate) fn of(store: &Store, terms: &Terms<'_>, id: Id, kind: &str) -> Kept<Self> {
        let unknown = |key: &str| Problem::new(Code::Unknown, kind, terms.phrase(key, &[]));
        let subject =
            store.subject(id)?.filter(|subject| subject.kind == kind).ok_or_else(|| unknown("screen-unknown"))?;
        if subject.removed.is_some() {
            return Err(unknown("screen-removed").into());
        }
        Ok(Self { fields: store.fields(id)?, subject })
    }

    /// The things of a kind under a parent, in their order, without the removed ones.
    pub(crate) fn children(store: &Store, parent: Id, kind: &str) -> Kept<Vec<Self>> {
        let children = store.children(parent, kind)?.into_iter().filter(|subject| subject.removed.is_none());
        children.map(|subject| Self::kept(store, subject)).collect()
    }

    /// A thing that was found already.
    pub(crate) fn kept(store: &Store, subject: Subject) -> Kept<Self> {
        Ok(Self { fields: store.fields(subject.id)?, subject })
    }

    /// The thing as it would be with another answer.
    pub(crate) fn with(&self, name: &str, value: Value) -> Self {
        let mut facts = Self { subject: self.subject.clone(), fields: self.fields.clone() };
        facts.put(name, value);
        facts
    }

    /// A thing that is not in the book yet.
    pub(crate) fn imagined(id: Id, kind: &str, parent: Id, given: &[(&str, Value)]) -> Self {
        let subject = Subject {
            id,
            kind: kind.to_owned(),
            job: None,
            parent: Some(parent),
            sort_key: String::new(),
            removed: None,
        };
        let mut facts = Self { subject, fields: BTreeMap::new() };
        for (name, value) in given {
            facts.put(name, value.clone());
        }
        facts
    }

    fn put(&mut self, name: &str, value: Value) {
        let stamp = Stamp { ms: 0, counter: 0, device: DeviceId(self.subject.id) };
        let field = Field { value, kept: false, stamp, signer: String::new(), group: self.subject.id };
        self.fields.insert(name.to_owned(), field);
    }

    /// The thing's id.
    pub(crate) fn id(&self) -> Id {
        self.subject.id
    }

    /// The job that it belongs to: a job belongs to itself.
    pub(crate) fn job(&self) -> Option<Id> {
        if self.subject.kind == kinds::JOB { Some(self.id()) } else { self.subject.job }
    }

    /// A field as it is kept.
    pub(crate) fn field(&self, name: &str) -> Option<&Field> {
        self.fields.get(name).filter(|field| field.value != Value::Absent)
    }

    /// Every field that holds something, by name.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (&str, &Field)> {
        let held = self.fields.iter().filter(|(_, field)| field.value != Value::Absent);
        held.map(|(name, field)| (name.as_str(), field))
    }

    /// A length: what the tape read, else what was planned.
    pub(crate) fn length(&self, name: &str) -> Option<Length> {
        match &self.measured(name)?.0.value {
            Value::Length { length, .. } => Some(*length),
            _ => None,
        }
    }

    /// A length that the work cannot go on without.
    pub(crate) fn need(&self, terms: &Terms<'_>, name: &str, title: &str) -> Kept<Length> {
        self.length(name).ok_or_else(|| first(terms, name, title).into())
    }

    /// A text.
    pub(crate) fn text(&self, name: &str) -> Option<&str> {
        match &self.field(name)?.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    /// A whole number.
    pub(crate) fn whole(&self, name: &str) -> Option<i64> {
        match &self.field(name)?.value {
            Value::Whole(whole) => Some(*whole),
            _ => None,
        }
    }

    /// Another thing.
    pub(crate) fn reference(&self, name: &str) -> Option<Id> {
        match &self.field(name)?.value {
            Value::Reference(id) => Some(*id),
            _ => None,
        }
    }

    /// The field that speaks for a length, and whether it was taped.
    fn measured(&self, name: &str) -> Option<(&Field, bool)> {
        let taped = self.field(&format!("{name}{TAPED}")).map(|field| (field, true));
        // What was typed into the field itself is taped, too, unless a plan wrote it.
        taped.or_else(|| {
            self.field(name)
                .map(|field| (field, !matches!(&field.value, Value::Length { typed, .. } if typed.is_empty())))
        })
    }

    /// A length as a view shows it: taped beats planned.
    pub(crate) fn reading(&self, terms: &Terms<'_>, name: &str) -> Option<Reading> {
        let (field, taped) = self.measured(name)?;
        let Value::Length { length, unit, .. } = &field.value else { return None };
        let source = if taped { Source::Taped } else { Source::Planned };
        // Nobody typed a planned length in any unit, so that showing it converts nothing.
        let mut reading = terms.reading(*length, source, Unit::from_code(unit).filter(|_| taped));
        if taped {
            terms.by(&mut reading, &field.signer, field.stamp.ms);
        }
        Some(reading)
    }
}

/// Something that must be answered first.
pub(crate) fn first(terms: &Terms<'_>, field: &str, title: &str) -> Problem {
    let what = terms.phrase(title, &[]);
    Problem::new(Code::First, field, terms.phrase("screen-first", &[("what", what.into())]))
}
