use std::collections::BTreeMap;
use std::fmt;

use crate::book::{
    Allowed, Book, DraftKey, Field, FieldSpec, Kind, Operation, OperationKind, Record, field_of, fields_of, taped_code,
};
use crate::drawing::has_tape_place;
use crate::phrases::{Arg, plain_word};
use crate::store::{Accepted, Value};
use crate::views::{AnswerKind, Choice, Code, Problem, Question};
use crate::work::WorkError;

use super::context::Terms;
use super::error::Result;
use super::plausible::{judged, posed};

/// Every question of a thing, in its order, with answers and drafts.
pub(crate) fn questions(book: &Book, terms: &Terms<'_>, record: &Record) -> Result<Vec<Question>> {
    fields_of(record.kind).iter().map(|spec| question(book, terms, record, spec)).collect()
}

/// One question of a thing.
pub(crate) fn question(book: &Book, terms: &Terms<'_>, record: &Record, spec: &FieldSpec) -> Result<Question> {
    let reading = terms.answer(record, spec.field);
    let answer = match (&reading, record.written(spec.field).map(|written| &written.value)) {
        (Some(reading), _) => reading.text.clone(),
        (None, Some(Value::Text(code))) => spec.label(code).map_or_else(|| code.clone(), |key| terms.phrase(key, &[])),
        (None, Some(value)) => value.typed(),
        (None, None) => String::new(),
    };
    let draft = book.draft(&DraftKey::field(record.id(), spec.field))?;
    let question = Question { subject: record.id().to_string(), answer, reading, draft, ..unanswered(terms, spec) };
    posed(book, terms, &record.id().to_string(), question)
}

/// A question of a thing that nothing was said of yet.
pub(crate) fn unanswered<F: Copy + fmt::Display>(terms: &Terms<'_>, spec: &FieldSpec<F>) -> Question {
    let choices = match spec.allowed {
        Allowed::OneOf(choices) => choices
            .iter()
            .map(|(code, key)| Choice { code: (*code).to_owned(), label: terms.phrase(key, &[]) })
            .collect(),
        _ => Vec::new(),
    };
    Question {
        field: spec.field.to_string(),
        title: terms.phrase(spec.title, &[]),
        hint: terms.phrase(spec.hint, &[]),
        kind: kind(spec.allowed),
        choices,
        optional: spec.optional,
        picture: picture(spec.title),
        ..Question::default()
    }
}

/// The kind of answer, for a shell.
pub(crate) const fn kind(allowed: Allowed) -> AnswerKind {
    match allowed {
        Allowed::Positive | Allowed::NotNegative | Allowed::AnyLength => AnswerKind::LengthKind,
        Allowed::OneOf(_) => AnswerKind::ChoiceKind,
        Allowed::Whole(..) => AnswerKind::WholeKind,
        Allowed::Text | Allowed::AnyText => AnswerKind::TextKind,
    }
}

/// Says of questions that are asked one after the other whose they are, and which one each is of those that must be answered.
pub(crate) fn count(terms: &Terms<'_>, about: &str, questions: &mut [Question]) {
    let all = questions.iter().filter(|question| !question.optional).count();
    let mut nth = 0_usize;
    for question in questions {
        about.clone_into(&mut question.about);
        if !question.optional && all > 1 {
            nth += 1;
            question.nth = terms.phrase("frame-nth", &[("nth", nth.into()), ("all", all.into())]);
        }
    }
}

/// The picture of where to put the tape, by the key of the question: a shell hands it back to have it drawn.
fn picture(title: &str) -> String {
    if has_tape_place(title) { title.to_owned() } else { String::new() }
}

/// The first question that the work cannot go on without.
pub(crate) fn open_question(questions: &[Question]) -> Option<&Question> {
    questions.iter().find(|question| !question.optional && question.answer.is_empty())
}

/// The question to ask now: one with keys that were typed and not accepted, else one that the work cannot go on without.
pub(crate) fn asked(questions: &[Question]) -> Option<Question> {
    let drafted = questions.iter().find(|question| !question.draft.is_empty());
    drafted.or_else(|| open_question(questions)).cloned()
}

/// What a typed answer says.
pub(crate) fn value<F: Copy + fmt::Display>(terms: &Terms<'_>, spec: &FieldSpec<F>, text: &str) -> Result<Value> {
    let field = spec.field.to_string();
    let say = |code, key: &str, args: &[(&str, Arg<'_>)]| Problem::new(code, field.as_str(), terms.phrase(key, args));
    let text = text.trim();
    if text.is_empty() {
        let empty = spec.optional || matches!(spec.allowed, Allowed::AnyText);
        return if empty { Ok(Value::Absent) } else { Err(say(Code::Missing, "screen-empty", &[]).into()) };
    }
    if text.chars().count() > 200 {
        return Err(say(Code::TooBig, "figure-too-long", &[("limit", "200".into())]).into());
    }
    if text.chars().any(is_unprintable) {
        return Err(say(Code::Range, "screen-control", &[]).into());
    }
    let length = |least: Option<i64>, key: &str| {
        let (length, unit) = terms.typed(&field, text)?;
        match least {
            Some(least) if length.nm() < least => Err(say(Code::Range, key, &[])),
            _ => Ok(Value::Length { length, typed: text.to_owned(), unit: unit.code().to_owned() }),
        }
    };
    Ok(match spec.allowed {
        Allowed::Positive => length(Some(1), "figure-range-positive")?,
        Allowed::NotNegative => length(Some(0), "figure-range-not-negative")?,
        Allowed::AnyLength => length(None, "")?,
        Allowed::OneOf(choices) => {
            let plain = plain_word(text);
            let found =
                choices.iter().find(|(code, key)| *code == plain || plain_word(&terms.phrase(key, &[])) == plain);
            let names = || choices.iter().map(|choice| choice_name(terms, choice)).collect::<Vec<_>>().join(", ");
            let (code, _) = found.ok_or_else(|| say(Code::Choice, "screen-pick", &[("choices", names().into())]))?;
            Value::Text((*code).to_owned())
        }
        Allowed::Whole(least, most) => {
            let whole = text.parse::<i64>().ok().filter(|whole| (least..=most).contains(whole));
            let bounds = [("least", Arg::from(least)), ("most", most.into())];
            Value::Whole(whole.ok_or_else(|| say(Code::Range, "screen-whole", &bounds))?)
        }
        Allowed::Text | Allowed::AnyText => Value::Text(text.to_owned()),
    })
}

/// What a choice is called where it is typed: its code, and its name where that is another word.
fn choice_name(terms: &Terms<'_>, (code, key): &(&str, &str)) -> String {
    let name = terms.phrase(key, &[]);
    if plain_word(&name).replace(' ', "-") == *code { (*code).to_owned() } else { format!("{code} ({name})") }
}

/// Whether a sign prints nothing and changes how others are printed: a control character, or one that turns the direction
/// of writing (Unicode Standard Annex 9, section 2).
pub(crate) fn is_unprintable(sign: char) -> bool {
    sign.is_control() || matches!(sign, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// The question of a field that a shell named.
pub(crate) fn spec_of(terms: &Terms<'_>, kind: Kind, field: &str) -> Result<&'static FieldSpec> {
    let spec = Field::from_code(field).and_then(|field| field_of(kind, field));
    spec.ok_or_else(|| not_an_answer(terms, fields_of(kind), field).into())
}

/// What is said of a field that is not among these questions.
pub(crate) fn not_an_answer<F: fmt::Display>(terms: &Terms<'_>, specs: &[FieldSpec<F>], field: &str) -> Problem {
    let fields = specs.iter().map(|spec| spec.field.to_string()).collect();
    Problem::new(Code::Unknown, field, terms.phrases.not_asked(field, fields))
}

/// Accepts one answer: checks it, writes it, and removes its draft with it.
pub(crate) fn answer(book: &mut Book, terms: &Terms<'_>, record: &Record, field: &str, text: &str) -> Result<Accepted> {
    let spec = spec_of(terms, record.kind, field)?;
    let value = value(terms, spec, text)?;
    let kind = if value == Value::Absent { OperationKind::Cleared } else { OperationKind::Answered };
    let mut operation = Operation::new(kind, record.job(), [spec.title, text.trim()]);
    // What was measured before stands over the field; the new answer takes its place.
    if record.taped(spec.field).is_some() {
        operation = operation.set_code(record.id(), taped_code(spec.field), Value::Absent);
    }
    let operation = operation.set(record.id(), spec.field, value);
    accept(book, terms, operation, &[DraftKey::field(record.id(), spec.field)])
}

/// Keeps what is typed so far: a draft, gone when the answer is accepted.
pub(crate) fn keep_draft(book: &mut Book, terms: &Terms<'_>, record: &Record, field: &str, text: &str) -> Result<()> {
    let spec = spec_of(terms, record.kind, field)?;
    Ok(book.put_draft(&DraftKey::field(record.id(), spec.field), text)?)
}

/// Writes an answer, if it can be.
pub(crate) fn accept(
    book: &mut Book,
    terms: &Terms<'_>,
    operation: Operation,
    drafts: &[DraftKey],
) -> Result<Accepted> {
    let (operation, answered) = judged(book, terms, operation)?;
    let drafts = [drafts, &answered].concat();
    Ok(book.transact(&operation, &terms.author(), terms.now(), &drafts)?)
}

/// A sort key behind every one that is there: the moment, so that two devices' new things interleave in time.
pub(crate) fn sort_key(terms: &Terms<'_>, n: usize) -> String {
    format!("{:016}-{n:06}", terms.context.now_ms.max(0))
}

/// Answers to several questions of one new thing, checked together: nothing is kept unless all are right.
pub(crate) fn fields(
    terms: &Terms<'_>,
    specs: &'static [FieldSpec],
    given: &BTreeMap<&str, &str>,
) -> Result<Vec<(Field, Value)>> {
    for field in given.keys() {
        if !specs.iter().any(|spec| spec.field.code() == *field) {
            return Err(not_an_answer(terms, specs, field).into());
        }
    }
    let mut values = Vec::new();
    for spec in specs {
        match given.get(spec.field.code()) {
            Some(text) => values.push((spec.field, value(terms, spec, text)?)),
            None if !spec.optional => {
                return Err(WorkError::First { field: spec.field.code(), title: spec.title }.into());
            }
            None => {}
        }
    }
    values.retain(|(_, value)| *value != Value::Absent);
    Ok(values)
}
