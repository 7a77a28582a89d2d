use std::collections::BTreeMap;

use crate::drawing::has_tape_place;
use crate::phrases::Arg;
use crate::store::{Change, Id, Op, Outcome, Store, Value};
use crate::views::{Choice, Code, Problem, Question};

use super::context::Terms;
use super::kept::Facts;
use super::kinds::{Allowed, Ask, asks};
use super::trouble::Kept;

/// The key of the draft of a field: keys that were typed and not yet accepted.
pub(super) fn draft_key(subject: Id, field: &str) -> String {
    format!("{subject}/{field}")
}

/// Every question of a thing, in its order, with answers and drafts.
pub(super) fn questions(store: &Store, terms: &Terms<'_>, facts: &Facts) -> Kept<Vec<Question>> {
    asks(&facts.subject.kind).iter().map(|ask| question(store, terms, facts, ask)).collect()
}

/// One question of a thing.
pub(super) fn question(store: &Store, terms: &Terms<'_>, facts: &Facts, ask: &Ask) -> Kept<Question> {
    let reading = facts.reading(terms, ask.field);
    let answer = match (&reading, facts.field(ask.field).map(|field| &field.value), ask.allowed) {
        (Some(reading), _, _) => reading.text.clone(),
        (None, Some(Value::Text(code)), Allowed::OneOf(choices)) => {
            label(choices, code).map_or_else(|| code.clone(), |key| terms.phrase(key, &[]))
        }
        (None, Some(value), _) => value.typed(),
        (None, None, _) => String::new(),
    };
    let draft = store.draft_get(&draft_key(facts.id(), ask.field))?.unwrap_or_default();
    Ok(Question { subject: facts.id().to_string(), answer, reading, draft, ..unanswered(terms, ask) })
}

/// A question of a thing that nothing was said of yet.
pub(super) fn unanswered(terms: &Terms<'_>, ask: &Ask) -> Question {
    let choices = match ask.allowed {
        Allowed::OneOf(choices) => choices
            .iter()
            .map(|(code, key)| Choice { code: (*code).to_owned(), label: terms.phrase(key, &[]) })
            .collect(),
        _ => Vec::new(),
    };
    Question {
        subject: String::new(),
        field: ask.field.to_owned(),
        title: terms.phrase(ask.title, &[]),
        hint: terms.phrase(ask.hint, &[]),
        kind: ask.kind(),
        choices,
        answer: String::new(),
        reading: None,
        draft: String::new(),
        optional: ask.optional,
        picture: picture(ask),
    }
}

/// The picture of where to put the tape, by the key of the question: a shell hands it back to have it drawn.
fn picture(ask: &Ask) -> String {
    if has_tape_place(ask.title) { ask.title.to_owned() } else { String::new() }
}

/// The first question that the work cannot go on without.
pub(super) fn open_question(questions: &[Question]) -> Option<&Question> {
    questions.iter().find(|question| !question.optional && question.answer.is_empty())
}

/// The question to ask now: one with keys that were typed and not accepted, else one that the work cannot go on without.
pub(super) fn asked(questions: &[Question]) -> Option<Question> {
    let drafted = questions.iter().find(|question| !question.draft.is_empty());
    drafted.or_else(|| open_question(questions)).cloned()
}

/// What a typed answer says.
pub(super) fn value(terms: &Terms<'_>, ask: &Ask, text: &str) -> Kept<Value> {
    let say = |code, key: &str, args: &[(&str, Arg<'_>)]| Problem::new(code, ask.field, terms.phrase(key, args));
    let text = text.trim();
    if text.is_empty() {
        let empty = ask.optional || matches!(ask.allowed, Allowed::AnyText);
        return if empty { Ok(Value::Absent) } else { Err(say(Code::Missing, "screen-empty", &[]).into()) };
    }
    if text.chars().count() > 200 {
        return Err(say(Code::TooBig, "figure-too-long", &[("limit", "200".into())]).into());
    }
    let length = |least: Option<i64>, key: &str| {
        let (length, unit) = terms.typed(ask.field, text)?;
        match least {
            Some(least) if length.nm() < least => Err(say(Code::Range, key, &[])),
            _ => Ok(Value::Length { length, typed: text.to_owned(), unit: unit.code().to_owned() }),
        }
    };
    Ok(match ask.allowed {
        Allowed::Positive => length(Some(1), "figure-range-positive")?,
        Allowed::NotNegative => length(Some(0), "figure-range-not-negative")?,
        Allowed::AnyLength => length(None, "")?,
        Allowed::OneOf(choices) => {
            let lower = text.to_lowercase();
            let said = |key: &str| terms.phrase(key, &[]).to_lowercase();
            let found = choices.iter().find(|(code, key)| *code == lower || said(key) == lower);
            let names = || choices.iter().map(|(code, _)| *code).collect::<Vec<_>>().join(", ");
            let (code, _) = found.ok_or_else(|| say(Code::Choice, "screen-pick", &[("choices", names().into())]))?;
            Value::Text((*code).to_owned())
        }
        Allowed::Whole(least, most) => {
            let whole = text.parse::<i64>().ok().filter(|whole| (least..=most).contains(whole));
            let bounds = [("least", Arg::from(least)), ("most", most.into())];
            Value::Whole(whole.ok_or_else(|| say(Code::Range, "figure-range-between", &bounds))?)
        }
        Allowed::Text | Allowed::AnyText => Value::Text(text.to_owned()),
    })
}

/// The question of a field of a kind of thing.
pub(super) fn ask_of(terms: &Terms<'_>, kind: &str, field: &str) -> Kept<&'static Ask> {
    asks(kind).iter().find(|ask| ask.field == field).ok_or_else(|| {
        let fields: Vec<&str> = asks(kind).iter().map(|ask| ask.field).collect();
        let text = terms.phrase("screen-not-an-answer", &[("fields", fields.join(", ").into())]);
        Problem::new(Code::Unknown, field, text).into()
    })
}

/// Accepts one answer: checks it, writes it, and removes its draft with it.
pub(super) fn answer(store: &mut Store, terms: &Terms<'_>, facts: &Facts, field: &str, text: &str) -> Kept<Outcome> {
    let ask = ask_of(terms, &facts.subject.kind, field)?;
    let value = value(terms, ask, text)?;
    let kind = if value == Value::Absent { "cleared" } else { "answered" };
    let op = op(kind, facts.job(), [ask.title, text.trim()]).with(Change::Set {
        subject: facts.id(),
        field: field.to_owned(),
        value,
    });
    accept(store, terms, op, &[&draft_key(facts.id(), field)])
}

/// Keeps what is typed so far: a draft, gone when the answer is accepted.
pub(super) fn keep_draft(store: &mut Store, terms: &Terms<'_>, facts: &Facts, field: &str, text: &str) -> Kept<()> {
    ask_of(terms, &facts.subject.kind, field)?;
    keep_keys(store, &draft_key(facts.id(), field), text)
}

/// Keeps keys under the key of a draft, or drops what was kept where there are none.
pub(super) fn keep_keys(store: &mut Store, draft: &str, text: &str) -> Kept<()> {
    if text.is_empty() {
        return Ok(store.draft_clear(draft)?);
    }
    Ok(store.draft_put(draft, &text.chars().take(200).collect::<String>())?)
}

/// Writes an answer.
pub(super) fn accept(store: &mut Store, terms: &Terms<'_>, op: Answer, drafts: &[&str]) -> Kept<Outcome> {
    Ok(store.transact(&op.0, &terms.author(), terms.now(), drafts)?)
}

/// An answer in the making: the store's own with a short way to add changes.
pub(super) struct Answer(pub(super) Op);

/// An answer of a kind, with the texts of its line in the done list: keys of phrases are put into words there.
pub(super) fn op<const N: usize>(kind: &str, job: Option<Id>, args: [&str; N]) -> Answer {
    let args = args.into_iter().map(str::to_owned).collect();
    Answer(Op { kind: kind.to_owned(), version: 1, job, args, changes: Vec::new() })
}

impl Answer {
    /// The same with one more change.
    pub(super) fn with(mut self, change: Change) -> Self {
        self.0.changes.push(change);
        self
    }

    /// The same with a field set.
    pub(super) fn set(self, subject: Id, field: &str, value: Value) -> Self {
        self.with(Change::Set { subject, field: field.to_owned(), value })
    }

    /// The same with a new thing.
    pub(super) fn create(self, subject: Id, kind: &str, parent: Option<Id>, sort_key: String) -> Self {
        self.with(Change::Create { subject, kind: kind.to_owned(), parent, sort_key })
    }
}

/// A sort key behind every one that is there: the moment, so that two devices' new things interleave in time.
pub(super) fn sort_key(terms: &Terms<'_>, n: usize) -> String {
    format!("{:016}-{n:06}", terms.context.now_ms.max(0))
}

fn label(choices: &'static [(&'static str, &'static str)], code: &str) -> Option<&'static str> {
    choices.iter().find_map(|(own, key)| (*own == code).then_some(*key))
}

/// Answers to several questions of one new thing, checked together: nothing is kept unless all are right.
pub(super) fn fields(terms: &Terms<'_>, kind: &str, given: &BTreeMap<&str, &str>) -> Kept<Vec<(&'static str, Value)>> {
    for field in given.keys() {
        ask_of(terms, kind, field)?;
    }
    let mut values = Vec::new();
    for ask in asks(kind) {
        match given.get(ask.field) {
            Some(text) => values.push((ask.field, value(terms, ask, text)?)),
            None if !ask.optional => return Err(super::kept::first(terms, ask.field, ask.title).into()),
            None => {}
        }
    }
    values.retain(|(_, value)| *value != Value::Absent);
    Ok(values)
}
