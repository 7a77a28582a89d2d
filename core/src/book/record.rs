use std::collections::BTreeMap;

use crate::measure::Length;
use crate::store::{DeviceId, Id, Stamp, Value, Written};

use super::{Field, Kind};

/// The ending of the code of a field that holds what the tape read, where the field without it holds what was planned.
const TAPED: &str = "-taped";

/// The ending of the code of a length, in nanometres, that somebody is sure of.
const SURE: &str = "-sure";

/// A thing of the book and its fields.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    id: Id,
    /// What it is.
    pub kind: Kind,
    /// The job that it was made in; a job was made in none.
    pub made_in: Option<Id>,
    /// What it hangs under.
    pub parent: Option<Id>,
    /// Its place among its like.
    pub sort_key: String,
    fields: BTreeMap<Field, Written>,
    taped: BTreeMap<Field, Written>,
    others: BTreeMap<String, Written>,
}

/// A length of a record and where it comes from.
#[derive(Clone, Copy, Debug)]
pub struct Measured<'a> {
    /// The length.
    pub length: Length,
    /// The unit that it was typed in.
    pub unit: &'a str,
    /// Whether somebody put a tape to it; else it was planned.
    pub taped: bool,
    /// Who wrote it, and when.
    pub written: &'a Written,
}

impl Record {
    /// A thing with no fields yet.
    pub fn new(id: Id, kind: Kind, made_in: Option<Id>, parent: Option<Id>, sort_key: String) -> Self {
        let (fields, taped, others) = (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
        Self { id, kind, made_in, parent, sort_key, fields, taped, others }
    }

    /// A thing that is not in the book yet.
    pub fn unsaved(id: Id, kind: Kind, parent: Id, given: &[(Field, Value)]) -> Self {
        let mut record = Self::new(id, kind, None, Some(parent), String::new());
        for (field, value) in given {
            record.put(*field, value.clone());
        }
        record
    }

    /// The thing as it would be with another answer, which takes the place of what was measured before, too.
    pub fn with(&self, field: Field, value: Value) -> Self {
        let mut record = self.clone();
        record.taped.remove(&field);
        record.put(field, value);
        record
    }

    fn put(&mut self, field: Field, value: Value) {
        self.fields.insert(field, self.unsigned(value));
    }

    /// The same by the field's code.
    pub(super) fn put_code(&mut self, code: String, value: Value, signer: &str) {
        let written = Written { signer: signer.to_owned(), ..self.unsigned(value) };
        self.read(code, written);
    }

    /// A value as it stands before it is in the book.
    fn unsigned(&self, value: Value) -> Written {
        let stamp = Stamp { ms: 0, counter: 0, device: DeviceId(self.id) };
        Written { value, kept: false, stamp, signer: String::new(), group: self.id }
    }

    /// Takes in a field by its code. What a newer program wrote is kept under its code.
    pub(super) fn read(&mut self, code: String, written: Written) {
        if let Some(field) = Field::from_code(&code) {
            self.fields.insert(field, written);
        } else if let Some(field) = code.strip_suffix(TAPED).and_then(Field::from_code) {
            self.taped.insert(field, written);
        } else {
            self.others.insert(code, written);
        }
    }

    /// Its id.
    pub const fn id(&self) -> Id {
        self.id
    }

    /// The job that it belongs to: a job belongs to itself.
    pub fn job(&self) -> Option<Id> {
        if self.kind == Kind::Job { Some(self.id) } else { self.made_in }
    }

    /// What stands in a field, where something does.
    pub fn written(&self, field: Field) -> Option<&Written> {
        held(self.fields.get(&field))
    }

    /// What stands in the measured twin of a field, where something does.
    pub fn taped(&self, field: Field) -> Option<&Written> {
        held(self.taped.get(&field))
    }

    /// Every field that holds something, by its code, measured twins and what a newer program wrote included.
    pub fn iter(&self) -> impl Iterator<Item = (String, &Written)> {
        let fields = self.fields.iter().map(|(field, written)| (field.code().to_owned(), written));
        let taped = self.taped.iter().map(|(field, written)| (taped_code(*field), written));
        let others = self.others.iter().map(|(code, written)| (code.clone(), written));
        fields.chain(taped).chain(others).filter(|(_, written)| written.value != Value::Absent)
    }

    /// The texts kept under codes with this beginning, each with the rest of its code, in the codes' order.
    pub(super) fn texts_under(&self, beginning: &str) -> impl Iterator<Item = (&str, &str)> {
        self.others.iter().filter_map(move |(code, written)| match &written.value {
            Value::Text(text) => Some((code.strip_prefix(beginning)?, text.as_str())),
            _ => None,
        })
    }

    /// A length, taped beats planned, with where it comes from.
    pub fn measured(&self, field: Field) -> Option<Measured<'_>> {
        // What was typed into the field itself is taped, too, unless a plan wrote it.
        let (written, twin) = match self.taped(field) {
            Some(written) => (written, true),
            None => (self.written(field)?, false),
        };
        let Value::Length { length, typed, unit } = &written.value else { return None };
        Some(Measured { length: *length, unit, taped: twin || !typed.is_empty(), written })
    }

    /// Whether somebody said yes to this length of a field when they were asked whether it can be.
    pub fn is_sure(&self, field: Field, length: Length) -> bool {
        self.others.get(&sure_code(field)).is_some_and(|written| written.value == Value::Whole(length.nm()))
    }

    /// Every length that somebody said yes to.
    pub fn sure(&self) -> impl Iterator<Item = (Field, Length)> {
        self.others.iter().filter_map(|(code, written)| match written.value {
            Value::Whole(nm) => Some((Field::from_code(code.strip_suffix(SURE)?)?, Length::from_nm(nm))),
            _ => None,
        })
    }

    /// A length: what the tape read, else what was planned.
    pub fn length(&self, field: Field) -> Option<Length> {
        Some(self.measured(field)?.length)
    }

    /// A text.
    pub fn text(&self, field: Field) -> Option<&str> {
        match &self.written(field)?.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    /// An answer of yes or no.
    pub fn yes(&self, field: Field) -> Option<bool> {
        Some(self.text(field)? == "yes")
    }

    /// A whole number.
    pub fn whole(&self, field: Field) -> Option<i64> {
        match &self.written(field)?.value {
            Value::Whole(whole) => Some(*whole),
            _ => None,
        }
    }

    /// Another thing.
    pub fn reference(&self, field: Field) -> Option<Id> {
        match &self.written(field)?.value {
            Value::Reference(id) => Some(*id),
            _ => None,
        }
    }
}

/// The code of the measured twin of a field.
pub fn taped_code(field: Field) -> String {
    format!("{field}{TAPED}")
}

/// The code under which a thing keeps the length that somebody is sure of, in nanometres.
pub fn sure_code(field: Field) -> String {
    format!("{field}{SURE}")
}

/// The field of a code, and whether it is the measured twin.
pub fn field_of_code(code: &str) -> Option<(Field, bool)> {
    let twin = || Some((Field::from_code(code.strip_suffix(TAPED)?)?, true));
    Field::from_code(code).map(|field| (field, false)).or_else(twin)
}

fn held(written: Option<&Written>) -> Option<&Written> {
    written.filter(|written| written.value != Value::Absent)
}
