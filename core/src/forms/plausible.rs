//! Whether what somebody says of a house can be: asked of every answer before it is kept.
//!
//! What cannot be is refused with what is allowed and why. What hardly can be is asked about once: the same value once
//! more is the yes, and the book keeps it with the thing, so that nobody is asked again. Lengths are judged by
//! [`crate::rules::plausible`], with what the house says around them.

mod around;
mod finding;
mod measurand;
mod place;
mod question;

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::book::{
    Book, DraftKey, Field, House, Kind, Operation, OperationKind, Record, field_of_code, fields_of, sure_code,
};
use crate::measure::Unit;
use crate::notch::LearnedOvercut;
use crate::rules::plausible::{Verdict, judge, judge_name, judge_rule};
use crate::rules::{Quantity, Rule, RuleSet};
use crate::store::{Id, Value};
use crate::views::{Code, Problem};
use crate::work::{Work, rules};

use super::context::Terms;
use super::error::Result;
use super::lookup;

use self::around::KnownHouse;

pub(crate) use self::finding::Finding;
pub(crate) use self::question::posed;

/// What is said by hand. Everything else that is written follows from it.
const BY_HAND: [OperationKind; 15] = [
    OperationKind::Answered,
    OperationKind::AsBuilt,
    OperationKind::BlockSizeAdded,
    OperationKind::BoardAttached,
    OperationKind::BoardLoose,
    OperationKind::GapFitted,
    OperationKind::JobCreated,
    OperationKind::MarkAdded,
    OperationKind::NotchAdded,
    OperationKind::OffcutAdded,
    OperationKind::PartAdded,
    OperationKind::PenetrationAdded,
    OperationKind::PenetrationSame,
    OperationKind::StockAdded,
    OperationKind::WallAdded,
];

/// Judges an answer before it is kept: gives it back with what somebody is sure of, and the drafts that its questions
/// leave behind.
///
/// # Errors
/// [`Problem`] for what cannot be, and for what hardly can be and was not said before.
pub(crate) fn judged(book: &mut Book, terms: &Terms<'_>, operation: Operation) -> Result<(Operation, Vec<DraftKey>)> {
    if country(&operation).is_none() && !BY_HAND.iter().any(|kind| operation.is(*kind)) {
        return Ok((operation, Vec::new()));
    }
    names(book, terms, &operation)?;
    sizes(book, terms, &operation)?;
    if operation.is(OperationKind::JobCreated) {
        // What it takes over from another house was judged there.
        return Ok((operation, Vec::new()));
    }
    let house = house_of(book, &operation)?;
    let work = lookup::work(book, house.id())?;
    let after = house.with(&operation);
    if let Some(country) = country(&operation) {
        let doubt = judged_country(book, terms, (&work, &after), &country)?;
        return Ok((operation, vec![doubt]));
    }
    let mut known = KnownHouse::of(&after, &work);
    known.learned = learned(book, &known, &operation)?;
    let mut findings = Vec::new();
    for (subject, field) in written(&operation) {
        let Some(record) = after.any(subject) else { continue };
        findings.extend(finding(terms, &known, record, field));
    }
    findings.extend(place::findings(terms, &after, &operation));
    findings.extend(contradicted(terms, (&house, &after), &work, &operation));
    settle(book, terms, operation, findings, &house)
}

/// The first impossible finding refuses the answer; of the others each is asked about once.
fn settle(
    book: &mut Book,
    terms: &Terms<'_>,
    mut operation: Operation,
    findings: Vec<Finding>,
    before: &House,
) -> Result<(Operation, Vec<DraftKey>)> {
    if let Some(finding) = findings.iter().find(|finding| finding.is_impossible) {
        return Err(Problem::new(Code::Range, finding.field.code(), finding.text.clone()).into());
    }
    let (mut answered, mut open) = (Vec::new(), Vec::new());
    // What was asked of a value that is another one by now is answered, too.
    for (subject, field) in written(&operation) {
        let key = DraftKey::doubt(&about(&operation, before, subject), field.code());
        let is_open = findings.iter().any(|finding| (finding.subject, finding.field) == (subject, field));
        if !is_open && !book.draft(&key)?.is_empty() {
            answered.push(key);
        }
    }
    for finding in findings {
        let key = DraftKey::doubt(&about(&operation, before, finding.subject), finding.field.code());
        if question::was_asked(book, &key, &finding.value.nm().to_string())? {
            operation = operation.set_code(finding.subject, sure_code(finding.field), Value::Whole(finding.value.nm()));
            answered.push(key);
        } else {
            open.push((key, finding));
        }
    }
    for (key, finding) in &open {
        finding.ask(book, terms, key)?;
    }
    match open.first() {
        None => Ok((operation, answered)),
        Some((_, first)) => {
            let mut texts: Vec<String> = open.iter().map(|(_, finding)| finding.text.clone()).collect();
            let again = if written(&operation).len() > 1 { "plausible-again-all" } else { "plausible-again" };
            texts.push(terms.phrase(again, &[]));
            Err(Problem::new(Code::Unlikely, first.field.code(), texts.join(" ")).into())
        }
    }
}

/// What on a house stands in contradiction to another value that an operation changes: a light on a wall that would end
/// before it, a reveal that would be as high as the board.
fn contradicted(
    terms: &Terms<'_>,
    (before, after): (&House, &House),
    work: &Work,
    operation: &Operation,
) -> Vec<Finding> {
    let (was, is) = (KnownHouse::of(before, work), KnownHouse::of(after, work));
    let mut findings = Vec::new();
    for (subject, field) in written(operation) {
        let Some(changed) = before.any(subject).and(after.any(subject)) else { continue };
        let kinds: &[Kind] = match changed.kind {
            Kind::Wall => &[Kind::Stud, Kind::Opening, Kind::Abutment, Kind::Penetration],
            Kind::Job => &[Kind::Pole],
            _ => continue,
        };
        for other in kinds.iter().flat_map(|kind| after.under(subject, *kind)) {
            let specs = fields_of(other.kind).iter().filter(|spec| !spec.title.is_empty());
            let found = specs.filter_map(|spec| Some((spec, finding(terms, &is, other, spec.field)?)));
            for (spec, found) in found.filter(|(_, found)| found.is_impossible) {
                if finding(terms, &was, other, spec.field).is_some_and(|found| found.is_impossible) {
                    continue;
                }
                let text = told(terms, other, spec.title, &found.text);
                findings.push(Finding { subject, field, text, ..found });
            }
        }
    }
    findings
}

/// What is said of a value of another thing than the one that is answered: with the thing's name, where it has one, and its
/// question.
fn told(terms: &Terms<'_>, record: &Record, title: &str, text: &str) -> String {
    let said = format!("{} {text}", terms.phrase(title, &[]));
    match record.kind {
        Kind::Wall => format!("{}: {said}", record.text(Field::Name).unwrap_or_default()),
        Kind::Stud | Kind::Opening | Kind::Abutment | Kind::Penetration => {
            format!("{}: {said}", place::name(terms, record))
        }
        _ => said,
    }
}

/// Judges a change of a rule: it is asked about once where it is far from the default, or where something on the house
/// is right by the rule as it was and is not any more.
///
/// # Errors
/// [`Problem`] for what cannot be, and for what hardly can be and was not said before.
pub(crate) fn judged_rule(
    book: &mut Book,
    terms: &Terms<'_>,
    (work, rule): (&Work, &Rule),
    (value, after): (Quantity, &RuleSet),
    field: &str,
) -> Result<DraftKey> {
    let key = rule_doubt(work.job()?.id(), rule);
    let shown = value.text_in(terms.phrases.language());
    let verdict = judge_rule(rule, value);
    let text = || verdict.text(&shown, &RuleSet::standard(), terms.phrases, terms.show);
    let mut asked = match &verdict {
        Verdict::Fine => Vec::new(),
        Verdict::Impossible { .. } => return Err(Problem::new(Code::Range, field, text()).into()),
        Verdict::Unlikely { .. } => vec![text()],
    };
    asked.extend(against(terms, work, after));
    if asked.is_empty() || question::was_asked(book, &key, &shown)? {
        return Ok(key);
    }
    question::keep(book, &key, &shown, ["", ""])?;
    asked.push(terms.phrase("plausible-again", &[]));
    Err(Problem::new(Code::Unlikely, field, asked.join(" ")).into())
}

/// The country whose rules an answer takes; empty where the answer is taken back.
fn country(operation: &Operation) -> Option<String> {
    operation.writes().find(|(_, code, _)| *code == Field::Rules.code()).map(|(_, _, value)| value.typed())
}

/// Judges the rules of another country: what they do not allow and those of before did is asked about once, by name.
fn judged_country(
    book: &mut Book,
    terms: &Terms<'_>,
    (work, after): (&Work, &House),
    country: &str,
) -> Result<DraftKey> {
    let field = Field::Rules.code();
    let key = DraftKey::doubt(&work.job()?.id().to_string(), field);
    let mut asked = against(terms, work, &rules(after));
    if asked.is_empty() || question::was_asked(book, &key, country)? {
        return Ok(key);
    }
    question::keep(book, &key, country, ["", ""])?;
    asked.push(terms.phrase("plausible-again", &[]));
    Err(Problem::new(Code::Unlikely, field, asked.join(" ")).into())
}

/// What on a house stands against its rules as they would be, and does not stand against them as they are.
fn against(terms: &Terms<'_>, work: &Work, after: &RuleSet) -> Vec<String> {
    let house = work.house();
    let by = |rules| of_fields(terms, &KnownHouse::under(house, work, rules));
    let known: BTreeSet<_> = by(work.rules().clone()).iter().map(|found| (found.subject, found.field)).collect();
    let said = |found: Finding| {
        let record = house.any(found.subject)?;
        let title = fields_of(record.kind).iter().find(|spec| spec.field == found.field)?.title;
        Some(told(terms, record, title, &found.text))
    };
    let found = by(after.clone()).into_iter().filter(|found| !known.contains(&(found.subject, found.field)));
    found.filter_map(said).collect()
}

/// Why a rule cannot have a value; nothing where it can.
pub(crate) fn impossible_rule(terms: &Terms<'_>, rule: &Rule, value: Quantity) -> Option<String> {
    let verdict = judge_rule(rule, value);
    let text = || verdict.text(&value.text_in(terms.language), &RuleSet::standard(), terms.phrases, terms.show);
    matches!(verdict, Verdict::Impossible { .. }).then(text)
}

fn rule_doubt(job: Id, rule: &Rule) -> DraftKey {
    DraftKey::doubt(&job.to_string(), rule.key)
}

/// Judges one answer to a thing in the making, before the next is asked for; `made` is what it would be so far.
pub(crate) fn judged_so_far(book: &mut Book, terms: &Terms<'_>, made: &Operation, field: Field) -> Result<()> {
    let house = house_of(book, made)?;
    let work = lookup::work(book, house.id())?;
    let after = house.with(made);
    let known = KnownHouse::of(&after, &work);
    let records = made.created().filter_map(|(id, _)| after.any(id));
    let findings: Vec<Finding> = records.filter_map(|record| finding(terms, &known, record, field)).collect();
    settle(book, terms, made.clone(), findings, &house).map(|_| ())
}

/// Judges a house that comes as a whole; nothing is known of it but what it says itself.
pub(crate) fn of_house(terms: &Terms<'_>, house: &Arc<House>) -> Vec<Finding> {
    let work = Work::of(house, None);
    let mut findings = of_fields(terms, &KnownHouse::of(house, &work));
    findings.extend(place::of_house(terms, house));
    findings.extend(place::names(terms, house));
    findings
}

/// What is to be said of the lengths of a house, each for itself.
fn of_fields(terms: &Terms<'_>, known: &KnownHouse<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for record in known.house.all() {
        // What is on a board of a plan was judged with the plan.
        if record.kind == Kind::Board && record.parent.is_some() {
            continue;
        }
        let specs = fields_of(record.kind).iter();
        findings.extend(specs.filter_map(|spec| finding(terms, known, record, spec.field)));
    }
    findings
}

/// What is to be said of a field; nothing where all is usual or somebody said already that it is right.
fn finding(terms: &Terms<'_>, known: &KnownHouse<'_>, record: &Record, field: Field) -> Option<Finding> {
    let measurand = measurand::of(record, field)?;
    let measured = record.measured(field)?;
    let around = known.around(record, field);
    let (value, unit) = (measured.length, Unit::from_code(measured.unit));
    let verdict = judge(measurand, value, &around);
    let (is_impossible, suggestion) = match &verdict {
        Verdict::Fine => return None,
        Verdict::Impossible { suggestion, .. } => (true, *suggestion),
        Verdict::Unlikely { .. } if known.is_sure(record, field, value) => return None,
        Verdict::Unlikely { suggestion, .. } => (false, *suggestion),
    };
    let typed = measured.written.value.typed();
    let said = if typed.is_empty() { terms.shown(value) } else { with_unit(&typed, unit) };
    let text = verdict.text(&said, &around.rules, terms.phrases, terms.show);
    Some(Finding { subject: record.id(), field, is_impossible, text, value, typed, suggestion })
}

/// A number as it was typed, with its unit where that went without saying.
fn with_unit(typed: &str, unit: Option<Unit>) -> String {
    let is_bare = typed.chars().all(|c| c.is_ascii_digit() || " ./-,".contains(c));
    match unit {
        Some(unit) if is_bare => format!("{typed} {}", unit.code()),
        _ => typed.to_owned(),
    }
}

/// The lengths that an operation writes, and the height of a board that is put on a wall.
fn written(operation: &Operation) -> Vec<(Id, Field)> {
    let attached = operation.is(OperationKind::BoardAttached);
    let field = |(subject, code, value): (Id, &str, &Value)| {
        let field = field_of_code(code).map(|(field, _)| field)?;
        match value {
            Value::Length { .. } => Some((subject, field)),
            Value::Reference(_) if attached => Some((subject, Field::Height)),
            _ => None,
        }
    };
    operation.writes().filter_map(field).collect()
}

/// What the asked-about field belongs to: a thing that is there, or the next one of its kind in its place.
fn about(operation: &Operation, before: &House, subject: Id) -> String {
    let parent = |id: Id| operation.created().find(|(new, _)| *new == id && before.any(id).is_none());
    let Some((_, mut under)) = parent(subject) else { return subject.to_string() };
    // What it hangs under may be new, too.
    while let Some((_, above)) = under.and_then(parent) {
        under = above;
    }
    about_new(under)
}

/// The same for a thing that is not there yet.
pub(crate) fn about_new(parent: Option<Id>) -> String {
    format!("new/{}", parent.map(|parent| parent.to_string()).unwrap_or_default())
}

/// The house that an operation is about.
fn house_of(book: &Book, operation: &Operation) -> Result<Arc<House>> {
    if let Some(job) = operation.job() {
        return Ok(book.house(Some(job))?);
    }
    let named = operation.writes().flat_map(|(subject, _, value)| match value {
        Value::Reference(id) => vec![subject, *id],
        _ => vec![subject],
    });
    let parents = operation.created().filter_map(|(_, parent)| parent);
    for id in named.chain(parents) {
        if let Some(house) = book.house_of(id)? {
            return Ok(house);
        }
    }
    Ok(book.house(None)?)
}

/// What was learned of the saw that a gap is of.
fn learned(book: &Book, known: &KnownHouse<'_>, operation: &Operation) -> Result<Option<LearnedOvercut>> {
    let Some(gap) = operation.created().find_map(|(id, _)| known.house.get(id, Kind::Gap).ok()) else {
        return Ok(None);
    };
    let text = |field| gap.text(field).unwrap_or_default();
    Ok(book.gaps()?.habit(text(Field::Signer), text(Field::Saw)))
}

/// What is bought in one length stands once on a house's list, and so does a block of one size.
fn sizes(book: &Book, terms: &Terms<'_>, operation: &Operation) -> Result<()> {
    let (kind, fields): (Kind, &[Field]) = match () {
        () if operation.is(OperationKind::StockAdded) => (Kind::Stock, &[Field::Length]),
        () if operation.is(OperationKind::BlockSizeAdded) => (Kind::BlockSize, &[Field::Width, Field::Height]),
        () => return Ok(()),
    };
    let house = house_of(book, operation)?;
    let after = house.with(operation);
    let size = |record: &Record| fields.iter().map(|field| record.length(*field)).collect::<Vec<_>>();
    let Some(added) = operation.created().find_map(|(id, _)| after.get(id, kind).ok()) else { return Ok(()) };
    if house.own(kind).iter().any(|other| size(other) == size(added)) {
        let shown: Vec<String> = size(added).into_iter().flatten().map(|length| terms.shown(length)).collect();
        let text = terms.phrase("plausible-size-taken", &[("size", shown.join(" × ").into())]);
        let field = fields.first().map_or("", |field| field.code());
        return Err(Problem::new(Code::Range, field, text).into());
    }
    Ok(())
}

/// Two walls of a house, or two houses, do not go by one name.
fn names(book: &Book, terms: &Terms<'_>, operation: &Operation) -> Result<()> {
    for (subject, code, value) in operation.writes() {
        let (true, Value::Text(name)) = (code == Field::Name.code(), value) else { continue };
        let house = match operation.job() {
            Some(job) => Some(book.house(Some(job))?),
            None => None,
        };
        let is_house = operation.is(OperationKind::JobCreated) || operation.job() == Some(subject);
        let is_wall = operation.is(OperationKind::WallAdded)
            || house.as_ref().is_some_and(|house| house.get(subject, Kind::Wall).is_ok());
        let taken: Vec<String> = if is_house {
            let others = book.jobs()?.into_iter().filter(|job| job.record.id() != subject);
            others.filter_map(|job| job.record.text(Field::Name).map(str::to_owned)).collect()
        } else if is_wall {
            let walls = house.iter().flat_map(|house| house.own(Kind::Wall)).filter(|wall| wall.id() != subject);
            walls.filter_map(|wall| wall.text(Field::Name).map(str::to_owned)).collect()
        } else {
            continue;
        };
        let taken: Vec<&str> = taken.iter().map(String::as_str).collect();
        let verdict = judge_name(name, &taken);
        if !verdict.is_fine() {
            let text = verdict.text(name, &RuleSet::standard(), terms.phrases, terms.show);
            return Err(Problem::new(Code::Range, Field::Name.code(), text).into());
        }
    }
    Ok(())
}
