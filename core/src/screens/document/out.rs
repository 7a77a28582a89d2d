use std::collections::BTreeMap;

use serde_json::{Map, Value as Json, json};

use crate::measure::{Length, Reader, Rounding, Show};
use crate::screens::context::Terms;
use crate::screens::kept::{Facts, Job};
use crate::screens::kinds;
use crate::screens::trouble::Kept;
use crate::store::{Id, Store, Value};

use super::shape::{fields, is_length, keeps_lines, parts};

/// A house as a document.
pub(super) fn document(store: &Store, terms: &Terms<'_>, job: &Job) -> Kept<Json> {
    let mut writer = Writer { store, names: BTreeMap::new(), signed: Vec::new() };
    let mut document = Map::new();
    document.insert("lapwright".to_owned(), json!(1));
    document.extend(writer.thing(&job.facts)?);
    let changes = job
        .rules
        .changes()
        .iter()
        .map(|(key, change)| json!({ "key": key, "value": change.value.text(), "reason": change.reason }));
    let changes: Vec<Json> = changes.collect();
    if !changes.is_empty() {
        document.insert("rules-changed".to_owned(), changes.into());
    }
    if !writer.signed.is_empty() {
        let report = json!({ "made-at-ms": terms.context.now_ms, "sign-offs": writer.signed });
        document.insert("report".to_owned(), report);
    }
    Ok(document.into())
}

struct Writer<'a> {
    store: &'a Store,
    /// What penetrations and offcuts are called in the document.
    names: BTreeMap<Id, String>,
    signed: Vec<Json>,
}

impl Writer<'_> {
    fn thing(&mut self, facts: &Facts) -> Kept<Map<String, Json>> {
        let kind = facts.subject.kind.as_str();
        let mut thing = Map::new();
        let letter = match kind {
            kinds::PENETRATION => Some('p'),
            kinds::OFFCUT => Some('o'),
            _ => None,
        };
        if let Some(letter) = letter {
            let name = format!("{letter}{}", self.names.len() + 1);
            self.names.insert(facts.id(), name.clone());
            thing.insert("id".to_owned(), name.into());
        }
        for ask in fields(kind) {
            let taped = is_length(ask).then(|| format!("{}-taped", ask.field));
            for field in [Some(ask.field.to_owned()), taped].into_iter().flatten() {
                if let Some(value) = facts.field(&field).and_then(|kept| value(&kept.value)) {
                    thing.insert(field, value);
                }
            }
        }
        if let Some(lines) = facts.text("lines").filter(|_| keeps_lines(kind)) {
            let nm = lines.split(',').filter_map(|nm| nm.trim().parse().ok());
            thing.insert("lines".to_owned(), nm.map(|nm| exact(Length::from_nm(nm))).collect::<Vec<_>>().into());
        }
        if let Some(name) = facts.reference("penetration").and_then(|id| self.names.get(&id)) {
            thing.insert("penetration".to_owned(), name.as_str().into());
        }
        let offcut = facts.text("offcut").and_then(|id| id.parse().ok());
        if let Some(name) = offcut.and_then(|id: Id| self.names.get(&id)) {
            thing.insert("offcut".to_owned(), name.as_str().into());
        }
        self.signed.extend(sign_offs(self.store, facts, &self.names)?);
        for part in parts(kind) {
            let mut things = Vec::new();
            for child in Facts::children(self.store, facts.id(), part.kind)? {
                things.push(Json::from(self.thing(&child)?));
            }
            if part.one {
                thing.extend(things.into_iter().next().map(|one| (part.name.to_owned(), one)));
            } else if !things.is_empty() {
                thing.insert(part.name.to_owned(), things.into());
            }
        }
        Ok(thing)
    }
}

fn value(value: &Value) -> Option<Json> {
    match value {
        Value::Text(text) => Some(text.as_str().into()),
        Value::Whole(whole) => Some((*whole).into()),
        Value::Length { length, typed, .. } if typed.is_empty() => Some(json!({ "planned": exact(*length) })),
        Value::Length { length, typed, unit } => {
            let whole = |text: &str| {
                let read = Reader::default().read(text).ok()?;
                (read.exact.to_length()? == *length).then(|| text.to_owned())
            };
            let text = whole(typed).or_else(|| whole(&format!("{typed} {unit}"))).unwrap_or_else(|| exact(*length));
            Some(text.into())
        }
        Value::Reference(_) | Value::Absent => None,
    }
}

/// A length as a text that reads back as the same nanometres: inches where it lies on a sixty-fourth, else millimetres.
fn exact(length: Length) -> String {
    let inches = Show::Inches(64);
    if inches.shown(length, Rounding::Nearest) == length {
        return inches.text(length);
    }
    let (sign, nm) = (if length.nm() < 0 { "-" } else { "" }, length.nm().unsigned_abs());
    let part = format!("{:06}", nm % 1_000_000);
    let part = part.trim_end_matches('0');
    let point = if part.is_empty() { "" } else { "." };
    format!("{sign}{}{point}{part} mm", nm / 1_000_000)
}

/// Who signed what on a thing: what was undone is left out.
fn sign_offs(store: &Store, facts: &Facts, names: &BTreeMap<Id, String>) -> Kept<Vec<Json>> {
    let signed = store.sign_offs(facts.id())?.into_iter().filter(|signed| !signed.undone);
    let line = |signed: crate::store::Signed| {
        let sign = signed.sign_off;
        let mut line = Map::new();
        match names.get(&facts.id()) {
            Some(name) => line.insert("penetration".to_owned(), name.as_str().into()),
            None => line.insert("course".to_owned(), facts.whole("course").into()),
        };
        line.insert("step".to_owned(), sign.step.into());
        line.insert("state".to_owned(), sign.state.word().into());
        line.insert("signer".to_owned(), sign.signer.into());
        line.insert("at-ms".to_owned(), signed.stamp.ms.into());
        let said = if sign.reason.is_empty() { sign.note } else { sign.reason };
        if !said.is_empty() {
            line.insert("note".to_owned(), said.into());
        }
        if let Some(measured) = sign.measured.as_ref().and_then(value) {
            line.insert("measured".to_owned(), measured);
        }
        Json::from(line)
    };
    Ok(signed.map(line).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn an_exact_text_reads_back_as_the_same_length(nm in -1_000_000_000_000_i64..1_000_000_000_000) {
            for length in [Length::from_nm(nm), Length::from_nm(nm / 396_875 * 396_875)] {
                let read = Reader::default().read(&exact(length)).unwrap();
                prop_assert_eq!(read.exact.to_length(), Some(length));
            }
        }
    }
}
