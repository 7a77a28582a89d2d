//! Differences: what two phones answered differently, shown until somebody has looked at it.

use crate::book::{Book, Field, FieldSpec, House, Record, field_of, field_of_code};
use crate::store::{Clash, Id, Stamp, Value};
use crate::views::{DifferenceLine, DifferencesView, Place};

use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::parts::join_nonempty;
use crate::forms::place::place_of;

pub(crate) fn view(book: &Book, terms: &Terms<'_>, mut done: Vec<String>) -> Result<DifferencesView> {
    let differences = book.differences()?;
    let differences: Vec<_> = differences.iter().map(|clash| line(book, terms, clash)).collect::<Result<_>>()?;
    if differences.is_empty() {
        done.push(terms.phrase("differences-no-more", &[]));
    }
    Ok(DifferencesView { done, differences })
}

/// How many there are, in words; empty where there are none.
pub(crate) fn said(book: &Book, terms: &Terms<'_>) -> Result<String> {
    Ok(match book.differences()?.len() {
        0 => String::new(),
        count => terms.phrase("differences-said", &[("count", count.into())]),
    })
}

/// Notes that these were looked at.
pub(crate) fn look_at(book: &mut Book, terms: &Terms<'_>, differences: &[String]) -> Result<()> {
    for clash in book.differences()?.iter().filter(|clash| differences.contains(&id(clash))) {
        book.look_at(clash, &terms.context.signer)?;
    }
    Ok(())
}

fn id(clash: &Clash) -> String {
    format!("{}/{}/{}", clash.subject, clash.field, clash.group)
}

fn line(book: &Book, terms: &Terms<'_>, clash: &Clash) -> Result<DifferenceLine> {
    let house = book.house_of(clash.subject)?;
    let record = house.as_ref().and_then(|house| house.any(clash.subject));
    let known = field_of_code(&clash.field);
    let spec = known.zip(record).and_then(|((field, _), record)| field_of(record.kind, field));
    let question = spec.map_or_else(|| clash.field.clone(), |spec| terms.phrase(spec.title, &[]));
    let stands = known.zip(record).and_then(|((field, taped), record)| {
        let written = if taped { record.taped(field) } else { record.written(field) };
        written.map(|written| (&written.value, written.signer.as_str(), written.stamp))
    });
    let told = |answer: Option<(&Value, &str, Stamp)>| {
        let Some((value, signer, stamp)) = answer else { return terms.phrase("differences-none", &[]) };
        let value = answered(terms, house.as_deref(), spec, value);
        join_nonempty(&[&value, signer, &terms.moment(stamp.ms)])
    };
    let other = told(Some((&clash.value, &clash.signer, clash.stamp)));
    Ok(DifferenceLine {
        difference: id(clash),
        title: join_nonempty(&[&named(house.as_deref(), record.map(|record| &**record)), &question]),
        stands: terms.phrase("differences-stands", &[("answer", told(stands).into())]),
        other: terms.phrase("differences-other", &[("answer", other.into())]),
        place: record.map_or(Place::Jobs, |record| place_of(record)),
    })
}

/// What a thing is called, behind its house.
fn named(house: Option<&House>, record: Option<&Record>) -> String {
    let name = |record: &Record| record.text(Field::Name).unwrap_or_default().to_owned();
    let house = house.and_then(|house| house.job().ok());
    let own = record.filter(|record| house.is_none_or(|house| house.id() != record.id()));
    join_nonempty(&[&house.map(|house| name(house)).unwrap_or_default(), &own.map(name).unwrap_or_default()])
}

/// What an answer says.
fn answered(terms: &Terms<'_>, house: Option<&House>, spec: Option<&FieldSpec>, value: &Value) -> String {
    let called = |id: Id| house.and_then(|house| house.any(id)).and_then(|record| record.text(Field::Name));
    match value {
        Value::Length { length, typed, .. } if typed.is_empty() => terms.shown(*length),
        Value::Text(code) => {
            spec.and_then(|spec| spec.label(code)).map_or_else(|| code.clone(), |label| terms.phrase(label, &[]))
        }
        Value::Reference(id) => called(*id).unwrap_or_default().to_owned(),
        Value::Absent => terms.phrase("differences-none", &[]),
        other => other.typed(),
    }
}
