use std::collections::BTreeMap;

use serde_json::{Map, Value as Json, json};

use crate::book::{Field, House, Kind, Record, taped_code};
use crate::forms::board_shape::shape_view;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::{Length, Reader, Rounding, Show};
use crate::store::{Id, Signed, Value};
use crate::work::{Board, Work};

use super::shape::{FURTHER_PIECES, fields, is_length, is_named, keeps_lines, parts};

/// A house as a document.
///
/// # Errors
/// Where it belongs to no house.
pub(super) fn document(work: &Work, terms: &Terms<'_>) -> Result<Json> {
    let mut writer = Writer { work, house: work.house(), names: BTreeMap::new(), signed: Vec::new() };
    let mut document = Map::new();
    document.insert("lapwright".to_owned(), json!(1));
    // A house that came in a document is still that house.
    let job = work.job()?;
    let house = job.text(Field::House).map_or_else(|| job.id().to_string(), str::to_owned);
    document.insert(Field::House.code().to_owned(), house.into());
    document.extend(writer.thing(job));
    let changes = work
        .rules()
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
    work: &'a Work,
    house: &'a House,
    /// What penetrations and offcuts are called in the document.
    names: BTreeMap<Id, String>,
    signed: Vec<Json>,
}

impl Writer<'_> {
    fn thing(&mut self, record: &Record) -> Map<String, Json> {
        let kind = record.kind;
        let mut thing = Map::new();
        if is_named(kind) {
            let letter = if kind == Kind::Offcut { 'o' } else { 'p' };
            let name = format!("{letter}{}", self.names.len() + 1);
            self.names.insert(record.id(), name.clone());
            thing.insert("id".to_owned(), name.into());
        }
        for spec in fields(kind) {
            let plain = record.written(spec.field).map(|written| (spec.field.code().to_owned(), written));
            let taped = record.taped(spec.field).filter(|_| is_length(spec));
            let taped = taped.map(|written| (taped_code(spec.field), written));
            for (code, written) in plain.into_iter().chain(taped) {
                thing.extend(value(&written.value).map(|value| (code, value)));
            }
        }
        // A course that could not be corrected keeps no lines.
        if let Some(lines) = record.lines().filter(|_| keeps_lines(kind)) {
            let lines: Vec<String> = lines.into_iter().map(exact).collect();
            thing.insert(Field::Lines.code().to_owned(), lines.into());
        }
        for (field, named) in
            [(Field::Penetration, record.reference(Field::Penetration)), (Field::Offcut, record.cut_from_offcut())]
        {
            if let Some(name) = named.and_then(|id| self.names.get(&id)) {
                thing.insert(field.code().to_owned(), name.as_str().into());
            }
        }
        if kind == Kind::Board {
            thing.extend(self.shapes(record));
        }
        self.signed.extend(self.house.signed(record.id()).map(|signed| sign_off(signed, record, &self.names)));
        for part in parts(kind) {
            let under = self.house.under(record.id(), part.kind);
            let mut things = under.iter().map(|child| Json::from(self.thing(child))).collect::<Vec<_>>().into_iter();
            if part.one {
                thing.extend(things.next().map(|one| (part.name.to_owned(), one)));
            } else if things.len() > 0 {
                thing.insert(part.name.to_owned(), things.collect::<Vec<_>>().into());
            }
        }
        thing
    }
}

impl Writer<'_> {
    /// The true shape of a board, so that anybody can check it: as a view has it, its cuts named by what the document calls
    /// penetrations, or by what they are. It follows from the rest, and is not read.
    fn shapes(&self, record: &Record) -> Map<String, Json> {
        let Ok(board) = Board::of(self.work, record.id()) else { return Map::new() };
        let around = board.site.as_ref().and_then(|site| site.shapes().ok()).map_or(&[][..], |shapes| shapes.around());
        let code = |name: &String| {
            name.rsplit_once("-kind-")
                .or_else(|| name.split_once("-opening-"))
                .map_or_else(|| name.trim_start_matches("wall-abutment-").to_owned(), |(_, code)| code.to_owned())
        };
        let name = |place: usize| {
            let id = around.get(place).and_then(|own| own.id);
            let named = id.and_then(|id| self.names.get(&id)).cloned();
            named.or_else(|| board.names.get(place).map(code)).unwrap_or_default()
        };
        let mut shapes = board.shapes.iter().map(|shape| shape_view(shape, name));
        let first = shapes.next().and_then(|shape| serde_json::to_value(shape).ok());
        let Some(Json::Object(mut first)) = first else { return Map::new() };
        let more: Vec<Json> = shapes.filter_map(|shape| serde_json::to_value(shape).ok()).collect();
        if !more.is_empty() {
            first.insert(FURTHER_PIECES.to_owned(), more.into());
        }
        first
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

/// Who signed what on a thing.
fn sign_off(signed: &Signed, record: &Record, names: &BTreeMap<Id, String>) -> Json {
    let sign = &signed.sign_off;
    let mut line = Map::new();
    match names.get(&record.id()) {
        Some(name) => line.insert("penetration".to_owned(), name.as_str().into()),
        None => line.insert("course".to_owned(), record.whole(Field::Course).into()),
    };
    line.insert("step".to_owned(), sign.step.as_str().into());
    line.insert("state".to_owned(), sign.state.word().into());
    line.insert("signer".to_owned(), sign.signer.as_str().into());
    line.insert("at-ms".to_owned(), signed.stamp.ms.into());
    let said = if sign.reason.is_empty() { &sign.note } else { &sign.reason };
    if !said.is_empty() {
        line.insert("note".to_owned(), said.as_str().into());
    }
    if let Some(measured) = sign.measured.as_ref().and_then(value) {
        line.insert("measured".to_owned(), measured);
    }
    line.into()
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
