use std::collections::BTreeMap;
use std::sync::Arc;

use serde_json::{Map, Value as Json};

use crate::book::{
    Allowed, Book, Field, FieldSpec, House, Kind, Operation, OperationKind, field_of_code, lines_value, offcut_value,
    taped_code,
};
use crate::forms::ask::{self, accept, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::{FormError, Result};
use crate::forms::plausible::{impossible_rule, of_house};
use crate::forms::quantity::quantity;
use crate::measure::{Length, Reader};
use crate::phrases::{Arg, Language, key};
use crate::rules::{Family, RuleChange, RuleSet};
use crate::store::{Id, Value};
use crate::views::{Code, Problem};
use crate::work::{Work, open_field};

use super::json::{self, JsonError};
use super::shape::{BOARD_SHAPE, PASSED_OVER, PartList, fields, is_length, is_named, keeps_lines, parts};

/// The most bytes of a document.
pub(super) const BYTES: usize = 64 << 20;

/// The most things of a house that a document may tell of: as many as are taken in within seconds.
pub(super) const THINGS: usize = 50_000;

/// What a document says, checked field by field.
pub(super) struct DocumentHouse {
    job: Id,
    name: String,
    /// The house that the document tells of, where it says so.
    pub(super) house: Option<String>,
    things: Vec<Thing>,
    /// Rules that cannot be so: where, and why.
    impossible_rules: Vec<(String, String)>,
}

struct Thing {
    id: Id,
    kind: Kind,
    /// None for the house itself.
    parent: Option<Id>,
    /// Where it stands in the document.
    path: String,
    /// By code, measured twins among them.
    fields: Vec<(String, Value)>,
}

/// Reads a document.
pub(super) fn read(terms: &Terms<'_>, text: &str) -> Result<DocumentHouse> {
    let say = |code, key: &str, args: &[(&str, Arg<'_>)]| Problem::new(code, "", terms.phrase(key, args));
    if text.len() > BYTES {
        return Err(say(Code::TooBig, "document-too-big", &[]).into());
    }
    let json = json::read(text, PASSED_OVER).map_err(|error| match error {
        JsonError::NotJson { line, column } => {
            say(Code::Range, "document-not-json", &[("line", line.into()), ("column", column.into())])
        }
        JsonError::Twice(name) => say(Code::Order, "document-twice", &[("name", name.into())]),
        JsonError::TooMany => say(Code::TooBig, "document-too-many", &[("limit", THINGS.to_string().into())]),
    })?;
    let Json::Object(document) = json else { return Err(say(Code::Range, "document-not-ours", &[]).into()) };
    if document.get("lapwright").and_then(Json::as_i64) != Some(1) {
        return Err(say(Code::Range, "document-not-ours", &[]).into());
    }
    // A document says the same whatever language it is taken in with.
    let written = Reader { language: Language::English, ..terms.reader };
    let mut reader = DocumentReader {
        terms: &Terms { reader: written, ..*terms },
        names: BTreeMap::new(),
        things: Vec::new(),
        impossible_rules: Vec::new(),
    };
    let job = reader.thing(Kind::Job, None, &document, "")?;
    if let Some(changes) = document.get("rules-changed") {
        reader.rules(job, &document, changes)?;
    }
    let name = document.get(Field::Name.code()).and_then(Json::as_str).unwrap_or_default().to_owned();
    let house = document.get(Field::House.code()).and_then(Json::as_str).map(str::to_owned);
    Ok(DocumentHouse { job, name, house, things: reader.things, impossible_rules: reader.impossible_rules })
}

struct DocumentReader<'a> {
    terms: &'a Terms<'a>,
    /// The penetrations and offcuts by what the document calls them.
    names: BTreeMap<String, Id>,
    things: Vec<Thing>,
    impossible_rules: Vec<(String, String)>,
}

impl DocumentReader<'_> {
    fn problem(&self, code: Code, path: &str, key: &str, args: &[(&str, Arg<'_>)]) -> FormError {
        Problem::new(code, path, self.terms.phrase(key, args)).into()
    }

    fn thing(&mut self, kind: Kind, parent: Option<Id>, json: &Map<String, Json>, path: &str) -> Result<Id> {
        self.known_names(kind, json, path)?;
        if self.things.len() >= THINGS {
            return Err(self.problem(Code::TooBig, "", "document-too-many", &[("limit", THINGS.to_string().into())]));
        }
        let id = self.terms.fresh(u32::try_from(self.things.len()).unwrap_or(u32::MAX));
        let mut given = Vec::new();
        for spec in fields(kind) {
            let taped = is_length(spec).then(|| taped_code(spec.field));
            for code in std::iter::once(spec.field.code().to_owned()).chain(taped) {
                if let Some(json) = json.get(&code) {
                    let value = self.value(spec, json, &join(path, &code))?;
                    given.push((code, value));
                }
            }
        }
        given.retain(|(_, value)| *value != Value::Absent);
        let has_name = given.iter().any(|(code, _)| code == Field::Name.code());
        if matches!(kind, Kind::Job | Kind::Wall) && !has_name {
            return Err(self.problem(Code::Missing, &join(path, Field::Name.code()), "screen-empty", &[]));
        }
        given.extend(self.special(kind, id, json, path)?.map(|(field, value)| (field.code().to_owned(), value)));
        self.things.push(Thing { id, kind, parent, path: path.to_owned(), fields: given });
        for part in parts(kind) {
            if let Some(json) = json.get(part.name) {
                self.part(id, part, json, &join(path, part.name))?;
            }
        }
        Ok(id)
    }

    fn part(&mut self, parent: Id, part: &PartList, json: &Json, path: &str) -> Result<()> {
        match json {
            Json::Object(one) if part.one => {
                self.thing(part.kind, Some(parent), one, path)?;
            }
            Json::Array(all) if !part.one => {
                for (at, json) in all.iter().enumerate() {
                    let path = format!("{path}[{at}]");
                    let Json::Object(one) = json else {
                        return Err(self.problem(Code::Range, &path, "document-object", &[]));
                    };
                    self.thing(part.kind, Some(parent), one, &path)?;
                }
            }
            _ if part.one => return Err(self.problem(Code::Range, path, "document-object", &[])),
            _ => return Err(self.problem(Code::Range, path, "document-list", &[])),
        }
        Ok(())
    }

    /// What no question asks: the lines of a pole, what a penetration is called, and which one a notch is for.
    fn special(&mut self, kind: Kind, id: Id, json: &Map<String, Json>, path: &str) -> Result<Option<(Field, Value)>> {
        if let Some(lines) = json.get(Field::Lines.code()).filter(|_| keeps_lines(kind)) {
            let lines = self.lines(kind, lines, &join(path, Field::Lines.code()))?;
            return Ok(Some((Field::Lines, lines_value(lines))));
        }
        if let Some(name) = json.get("id").filter(|_| is_named(kind)) {
            let path = join(path, "id");
            let name = name.as_str().filter(|name| !name.is_empty());
            let name = name.ok_or_else(|| self.problem(Code::Missing, &path, "screen-empty", &[]))?;
            if self.names.insert(name.to_owned(), id).is_some() {
                return Err(self.problem(Code::Order, &path, "document-twice", &[("name", name.into())]));
            }
        }
        let field = match kind {
            Kind::Board => Field::Offcut,
            Kind::Notch => Field::Penetration,
            _ => return Ok(None),
        };
        let Some(name) = json.get(field.code()) else { return Ok(None) };
        let found = self.names.get(name.as_str().unwrap_or_default()).copied().ok_or_else(|| {
            let names = self.names.keys().cloned().collect::<Vec<_>>().join(", ");
            self.problem(Code::Unknown, &join(path, field.code()), "screen-pick", &[("choices", names.into())])
        })?;
        let value = if field == Field::Offcut { offcut_value(found) } else { Value::Reference(found) };
        Ok(Some((field, value)))
    }

    /// Course lines, as the book keeps them.
    fn lines(&self, kind: Kind, json: &Json, path: &str) -> Result<Vec<Length>> {
        let Json::Array(lines) = json else {
            return Err(self.problem(Code::Range, path, "document-list", &[]));
        };
        let mut read = Vec::new();
        for (at, line) in lines.iter().enumerate() {
            let line = self.length(line.as_str().unwrap_or_default(), &format!("{path}[{at}]"))?;
            // A pole's lines ascend one by one, those of a wall at each of their three places.
            let below = if kind == Kind::Pole { 1 } else { 3 };
            let below = at.checked_sub(below).and_then(|at| read.get(at));
            if below.is_some_and(|below| line <= *below) {
                return Err(self.problem(Code::Order, &format!("{path}[{at}]"), "document-lines-order", &[]));
            }
            read.push(line);
        }
        if kind == Kind::AsBuilt && read.len() % 3 != 0 {
            return Err(self.problem(Code::Missing, path, "document-lines-threes", &[]));
        }
        Ok(read)
    }

    fn value(&self, spec: &FieldSpec, json: &Json, path: &str) -> Result<Value> {
        let (text, planned) = match json {
            Json::String(text) => (text.clone(), false),
            Json::Number(number) if matches!(spec.allowed, Allowed::Whole(..)) => (number.to_string(), false),
            Json::Object(one) if is_length(spec) && one.len() == 1 => match one.get("planned").and_then(Json::as_str) {
                Some(text) => (text.to_owned(), true),
                None => return Err(self.problem(Code::Range, path, "document-length", &[])),
            },
            _ => return Err(self.problem(Code::Range, path, "document-text", &[])),
        };
        if is_length(spec) {
            self.length(&text, path)?;
        }
        let value = ask::value(self.terms, spec, &text).map_err(|trouble| match trouble {
            FormError::Said(problem) => FormError::Said(Problem { field: path.to_owned(), ..problem }),
            other => other,
        })?;
        Ok(match value {
            Value::Length { length, unit, .. } if planned => Value::Length { length, typed: String::new(), unit },
            value => value,
        })
    }

    /// A length that names its unit, whatever unit the reader of the document has set.
    fn length(&self, text: &str, path: &str) -> Result<Length> {
        let read = Reader::default().read(text).ok().and_then(|written| written.exact.to_length());
        read.ok_or_else(|| self.problem(Code::Length, path, "document-length", &[]))
    }

    fn rules(&mut self, job: Id, document: &Map<String, Json>, changes: &Json) -> Result<()> {
        let Json::Array(changes) = changes else {
            return Err(self.problem(Code::Range, "rules-changed", "document-list", &[]));
        };
        let family =
            document.get(Field::Rules.code()).and_then(Json::as_str).and_then(Family::from_code).unwrap_or_default();
        let mut rules = RuleSet::of(family);
        for (at, change) in changes.iter().enumerate() {
            let path = format!("rules-changed[{at}]");
            let text = |name: &str| change.get(name).and_then(Json::as_str).unwrap_or_default().trim().to_owned();
            let (key, value) = (text(Field::Key.code()), text("value"));
            let reason = text(Field::Reason.code());
            let refused = |trouble: FormError| {
                FormError::Said(Problem { field: path.clone(), ..trouble.into_problem(self.terms.phrases) })
            };
            let rule = rules.rule(&key).map_err(|error| refused(error.into()))?;
            let value = quantity(self.terms, rule, &value).map_err(refused)?;
            self.impossible_rules.extend(impossible_rule(self.terms, rule, value).map(|why| (path.clone(), why)));
            let (by, at_ms) = (self.terms.context.signer.clone(), self.terms.context.now_ms);
            let change = RuleChange { value, by, at_ms, reason: reason.clone() };
            rules.set(&key, change).map_err(|error| refused(error.into()))?;
            let (numerator, denominator) = value.fraction();
            let fields = [
                (Field::Key, Value::Text(key)),
                (Field::Numerator, Value::Whole(numerator)),
                (Field::Denominator, Value::Whole(denominator)),
                (Field::Unit, Value::Text(value.unit().code().to_owned())),
                (Field::Reason, Value::Text(reason)),
            ];
            let id = self.terms.fresh(u32::try_from(self.things.len()).unwrap_or(u32::MAX));
            let fields = fields.map(|(field, value)| (field.code().to_owned(), value)).into();
            self.things.push(Thing { id, kind: Kind::Rule, parent: Some(job), path, fields });
        }
        Ok(())
    }

    /// Refuses what the document names and nothing here understands: it would be lost in silence.
    fn known_names(&self, kind: Kind, json: &Map<String, Json>, path: &str) -> Result<()> {
        let mut known: Vec<&str> = fields(kind).map(|spec| spec.field.code()).collect();
        known.extend(parts(kind).iter().map(|part| part.name));
        if kind == Kind::Board {
            known.extend(BOARD_SHAPE);
        }
        known.extend(match kind {
            Kind::Job => &["lapwright", "rules-changed", "report", "readings"][..],
            kind if keeps_lines(kind) => const { &[Field::Lines.code()] },
            kind if is_named(kind) => &["id"],
            Kind::Board => const { &[Field::Offcut.code()] },
            Kind::Notch => const { &[Field::Penetration.code()] },
            _ => &[],
        });
        let is_twin = |name: &str| {
            let Some((field, true)) = field_of_code(name) else { return false };
            fields(kind).any(|spec| spec.field == field && is_length(spec))
        };
        match json.keys().find(|name| !known.contains(&name.as_str()) && !is_twin(name)) {
            None => Ok(()),
            Some(name) => {
                let args = [("names", known.join(", ").into())];
                Err(self.problem(Code::Unknown, &join(path, name), "document-unknown", &args))
            }
        }
    }
}

impl DocumentHouse {
    /// Judges the house that was written from it: what cannot be is refused, what hardly can be is asked about once. `book` is
    /// the one that it is for, and keeps what was asked.
    pub(super) fn judge(&mut self, book: &mut Book, terms: &Terms<'_>, house: &Arc<House>) -> Result<()> {
        if let Some((path, why)) = self.impossible_rules.first() {
            return Err(Problem::new(Code::Range, path, why.clone()).into());
        }
        let findings = of_house(terms, house);
        let mut problems = Vec::new();
        let mut things: BTreeMap<Id, &mut Thing> = self.things.iter_mut().map(|thing| (thing.id, thing)).collect();
        for finding in &findings {
            let Some(thing) = things.get_mut(&finding.subject) else { continue };
            let path = join(&thing.path, finding.field.code());
            if finding.is_impossible {
                return Err(Problem::new(Code::Range, path, finding.text.clone()).into());
            }
            match finding.is_sure(book, terms, &format!("{}/{path}", self.name))? {
                true => thing.fields.push(finding.sure()),
                false => problems.push((path, finding.text.clone())),
            }
        }
        let Some((first, _)) = problems.first() else { return Ok(()) };
        let first = first.clone();
        // The one path stands before the text already.
        let alone = problems.len() == 1;
        let all = problems.into_iter().map(|(path, text)| if alone { text } else { format!("{path}: {text}") });
        let texts: Vec<String> = all.chain([terms.phrase(key("plausible-again-all"), &[])]).collect();
        Err(Problem::new(Code::Unlikely, first, texts.join("\n")).into())
    }

    /// Gives the house a name that no other one has.
    pub(super) fn name_apart(&mut self, taken: &[String]) {
        let own = self.name.trim().to_owned();
        let numbered = (2..).map(|n: u32| format!("{own} ({n})"));
        let free = std::iter::once(own.clone()).chain(numbered).find(|name| !taken.contains(name)).unwrap_or(own);
        for thing in self.things.iter_mut().filter(|thing| thing.id == self.job) {
            for (_, value) in thing.fields.iter_mut().filter(|(code, _)| code == Field::Name.code()) {
                *value = Value::Text(free.clone());
            }
        }
        self.name = free;
    }

    /// Writes the house: the house itself as one answer, everything under it as another, both or none.
    pub(super) fn write(&self, book: &mut Book, terms: &Terms<'_>) -> Result<(Id, Id)> {
        book.together(|book| self.write_all(book, terms))
    }

    fn write_all(&self, book: &mut Book, terms: &Terms<'_>) -> Result<(Id, Id)> {
        let mut group = None;
        for operation in self.operations(terms).into_iter().filter(|operation| !operation.is_empty()) {
            group = Some(accept(book, terms, operation, &[])?.group);
        }
        Ok((self.job, group.unwrap_or(self.job)))
    }

    /// The house itself, and everything under it.
    fn operations(&self, terms: &Terms<'_>) -> [Operation; 2] {
        [(OperationKind::JobCreated, None), (OperationKind::JobTakenIn, Some(self.job))].map(|(kind, job)| {
            let mut operation = Operation::new(kind, job, [self.name.trim()]);
            let own = |thing: &&Thing| thing.parent.is_none() == job.is_none();
            for (at, thing) in self.things.iter().enumerate().filter(|(_, thing)| own(thing)) {
                operation = operation.create(thing.id, thing.kind, thing.parent, sort_key(terms, at));
                for (code, value) in &thing.fields {
                    operation = operation.set_code(thing.id, code.clone(), value.clone());
                }
            }
            operation
        })
    }

    /// The house as it would be, before any book has it.
    pub(super) fn imagined(&self, terms: &Terms<'_>) -> Arc<House> {
        House::imagined(self.job, &self.operations(terms), &terms.context.signer).into()
    }

    /// Whether what a document says fits together: each wall that is all measured must have an outline.
    pub(super) fn check(&self, terms: &Terms<'_>, house: &Arc<House>) -> Result<()> {
        let work = Work::of(house, None);
        work.job()?;
        for (at, wall) in work.walls().iter().enumerate() {
            if open_field(&wall.record).is_none() {
                wall.outline().map_err(|error| {
                    let problem = FormError::from(error).into_problem(terms.phrases);
                    let field = format!("walls[{at}].{}", problem.field);
                    Problem { field, ..problem }
                })?;
            }
        }
        work.lap()?;
        work.nail_line()?;
        work.board_thickness()?;
        Ok(())
    }
}

fn join(path: &str, name: &str) -> String {
    if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") }
}
