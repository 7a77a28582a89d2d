//! Rules: which numbers apply to a house, where each comes from, and who replaced it.

use crate::book::{Book, DraftKey, Field, Kind, Operation, OperationKind};
use crate::phrases::key;
use crate::rules::{Family, Quantity, Rule, RuleChange, UNWRITTEN};
use crate::store::{Id, Value};
use crate::views::{AnswerKind, Code, Place, Problem, Question, RuleChanged, RuleLine, RulesAction, RulesView};
use crate::work::Work;

use crate::forms::ask::{accept, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::parts::join_nonempty;
use crate::forms::plausible::judged_rule;
use crate::forms::quantity::quantity;
use crate::screens::result::ActionResult;

pub(super) fn view(book: &Book, terms: &Terms<'_>, job: &str) -> Result<RulesView> {
    let work = lookup::house(book, terms, job)?;
    let rules = work.rules().rules().map(|rule| line(book, terms, &work, rule)).collect::<Result<Vec<_>>>()?;
    let asks = || rules.iter().flat_map(|rule| &rule.asks);
    let waits = |question: &&Question| question.field.ends_with(REASON) && !question.optional;
    let asked = asks().find(|question| !question.draft.is_empty()).or_else(|| asks().find(waits)).cloned();
    Ok(RulesView {
        job: lookup::job_id(&work),
        family: terms.phrase(work.rules().family().phrase(), &[]),
        who_wins: terms.phrase("rule-who-wins", &[]),
        rules,
        asked,
    })
}

fn line(book: &Book, terms: &Terms<'_>, work: &Work, rule: &Rule) -> Result<RuleLine> {
    let value = work.rules().get(rule.key)?;
    let status = if rule.not_verified() { "rule-not-verified" } else { rule.status.phrase() };
    let text = |value: Quantity| value.text_in(terms.phrases.language());
    let bounds = [("least", text(rule.least).into()), ("most", text(rule.most).into())];
    let differs = work.rules().differs_from_default(rule.key);
    let name = terms.phrase(&rule.name_phrase(), &[]);
    let mut line = RuleLine {
        key: rule.key.to_owned(),
        name,
        value: text(value),
        unit: value.unit().sign_in(terms.phrases.language()).to_owned(),
        default: if differs { text(rule.value) } else { String::new() },
        bounds: if rule.is_fixed() { String::new() } else { terms.phrase("rule-bounds", &bounds) },
        source: source(terms, work, rule),
        edition: edition(terms, rule),
        status: terms.phrase(status, &[]),
        not_verified: rule.not_verified(),
        fixed: rule.is_fixed(),
        changed: work.rules().change(rule.key).map(|change| RuleChanged {
            signer: change.by.clone(),
            reason: change.reason.clone(),
            at_ms: change.at_ms,
        }),
        said: String::new(),
        asks: Vec::new(),
    };
    line.said = said(terms, &line);
    if !line.fixed {
        line.asks = asks(book, terms, work.job()?.id(), &line, value.length().is_some())?;
    }
    Ok(line)
}

/// The source of a rule, with its country where it is not the house's own; empty where there is none.
fn source(terms: &Terms<'_>, work: &Work, rule: &Rule) -> String {
    if let Some((_, unwritten)) = UNWRITTEN.iter().find(|(source, _)| *source == rule.source) {
        return terms.phrase(unwritten, &[]);
    }
    if rule.source.is_empty() || [work.rules().family(), Family::Common].contains(&rule.family) {
        return rule.source.to_owned();
    }
    let country = terms.phrase(rule.family.phrase(), &[]);
    terms.phrase("rules-source-of", &[("source", rule.source.into()), ("country", country.into())])
}

/// The edition of a publication, and how it is known; empty where a rule has none.
fn edition(terms: &Terms<'_>, rule: &Rule) -> String {
    match (rule.is_published(), rule.edition.is_empty(), rule.edition_recalled) {
        (false, ..) => String::new(),
        (true, true, _) => terms.phrase(key("rule-edition-unknown"), &[]),
        (true, false, true) => terms.phrase(key("rule-edition-recalled"), &[("edition", rule.edition.into())]),
        (true, false, false) => rule.edition.to_owned(),
    }
}

fn said(terms: &Terms<'_>, line: &RuleLine) -> String {
    let source = join_nonempty(&[&line.source, &line.edition]);
    let status = line.status.as_str();
    // A value without a source says so by its status.
    let from = if source.is_empty() {
        status.to_owned()
    } else {
        terms.phrase("rules-from", &[("source", source.into()), ("status", status.into())])
    };
    let changed = line.changed.as_ref().map(|changed| {
        let args = [
            ("default", line.default.as_str().into()),
            ("signer", join_nonempty(&[&changed.signer, &terms.moment(changed.at_ms)]).into()),
            ("reason", changed.reason.as_str().into()),
        ];
        terms.phrase("rules-changed-by", &args)
    });
    let fixed = line.fixed.then(|| terms.phrase("rules-not-to-change", &[]));
    std::iter::once(from).chain(changed).chain(fixed).collect::<Vec<_>>().join("\n")
}

/// What stands behind a rule's key in the field of the reason for a change; the field of the value is the key itself.
const REASON: &str = "/reason";

/// The drafts of a rule: keys of the value, keys of the reason, and the value that waits for its reason.
fn drafts(job: Id, key: &str) -> [DraftKey; 3] {
    ["", REASON, "/value"].map(|tail| DraftKey::named(job, &format!("{key}{tail}")))
}

fn asks(book: &Book, terms: &Terms<'_>, job: Id, line: &RuleLine, is_length: bool) -> Result<Vec<Question>> {
    let [value_draft, reason_draft, waiting] = drafts(job, &line.key);
    let waiting = book.draft(&waiting)?;
    let rule = || line.name.as_str().into();
    let question = |field: String, title: String, hint: String, draft: &DraftKey| -> Result<Question> {
        Ok(Question {
            subject: job.to_string(),
            field,
            title,
            hint,
            draft: book.draft(draft)?,
            optional: true,
            ..Question::default()
        })
    };
    let title = terms.phrase("rules-ask-value", &[("rule", rule())]);
    let now = [("value", line.value.as_str().into()), ("bounds", line.bounds.as_str().into())];
    let hint = terms.phrase("rules-ask-value-hint", &now);
    let mut of_value = question(line.key.clone(), title, hint, &value_draft)?;
    of_value.kind = if is_length { AnswerKind::LengthKind } else { AnswerKind::NumberKind };
    let title = terms.phrase("rules-ask-reason", &[("rule", rule()), ("value", waiting.as_str().into())]);
    let hint = terms.phrase("rules-ask-reason-hint", &[]);
    let mut of_reason = question(format!("{}{REASON}", line.key), title, hint, &reason_draft)?;
    of_reason.optional = waiting.is_empty();
    of_value.answer = if waiting.is_empty() { line.value.clone() } else { waiting };
    Ok(vec![of_value, of_reason])
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &RulesAction) -> Result<ActionResult> {
    let here = |work: &Work| Place::Rules { job: lookup::job_id(work) };
    match action {
        RulesAction::KeepDraft { job, field, text } => {
            let work = lookup::house(book, terms, job)?;
            work.rules().rule(field.strip_suffix(REASON).unwrap_or(field))?;
            book.put_draft(&DraftKey::named(work.job()?.id(), field), text)?;
            Ok(ActionResult::without_answer(here(&work)))
        }
        RulesAction::Answer { job, field, text } => {
            let work = lookup::house(book, terms, job)?;
            let key = field.strip_suffix(REASON).unwrap_or(field);
            let [value_draft, reason_draft, waiting] = drafts(work.job()?.id(), key);
            if key != field {
                let value = book.draft(&waiting)?;
                return change(book, terms, &work, key, &value, text);
            }
            let rule = work.rules().rule(key)?;
            if text.trim().is_empty() {
                book.put_draft(&reason_draft, "")?;
            } else {
                let value = quantity(terms, rule, text)?;
                let after = work.rules().with_value(key, value)?;
                judged_rule(book, terms, (&work, rule), (value, &after), field)?;
            }
            book.put_draft(&waiting, text.trim())?;
            book.put_draft(&value_draft, "")?;
            Ok(ActionResult::without_answer(here(&work)))
        }
        RulesAction::Change { job, key, value, reason } => {
            let work = lookup::house(book, terms, job)?;
            change(book, terms, &work, key, value, reason)
        }
        RulesAction::BackToDefault { job, key } => {
            let work = lookup::house(book, terms, job)?;
            back_to_default(book, terms, &work, key)
        }
    }
}

fn change(
    book: &mut Book,
    terms: &Terms<'_>,
    work: &Work,
    key: &str,
    value: &str,
    reason: &str,
) -> Result<ActionResult> {
    let rule = work.rules().rule(key)?;
    let value = quantity(terms, rule, value)?;
    let by = terms.context.signer.clone();
    let change = RuleChange { value, by, at_ms: terms.context.now_ms, reason: reason.trim().to_owned() };
    let mut after = work.rules().clone();
    after.set(key, change)?;
    let doubt = judged_rule(book, terms, (work, rule), (value, &after), "value")?;
    let (numerator, denominator) = value.fraction();
    let (job, name, shown) = (work.job()?.id(), rule.name_phrase(), value.text());
    let mut operation = Operation::new(OperationKind::RuleChanged, Some(job), [&name, &shown, reason.trim()]);
    let id = match changes_of(work, key).last() {
        Some(id) => id,
        None => {
            let id = terms.fresh(0);
            operation = operation.create(id, Kind::Rule, Some(job), sort_key(terms, 0));
            operation = operation.set(id, Field::Key, Value::Text(key.to_owned()));
            id
        }
    };
    let operation = operation.set_all(
        id,
        [
            (Field::Numerator, Value::Whole(numerator)),
            (Field::Denominator, Value::Whole(denominator)),
            (Field::Unit, Value::Text(value.unit().code().to_owned())),
            (Field::Reason, Value::Text(reason.trim().to_owned())),
        ],
    );
    let drafts = drafts(job, key).into_iter().chain([doubt]).collect::<Vec<_>>();
    let outcome = accept(book, terms, operation, &drafts)?;
    Ok(ActionResult::at(Place::Rules { job: job.to_string() }, outcome.group))
}

fn back_to_default(book: &mut Book, terms: &Terms<'_>, work: &Work, key: &str) -> Result<ActionResult> {
    let rule = work.rules().rule(key)?;
    let mut after = work.rules().clone();
    if !after.back_to_default(key)? {
        return Err(Problem::new(Code::Order, Field::Key.code(), terms.phrase("rules-not-changed", &[])).into());
    }
    let (job, name, shown) = (work.job()?.id(), rule.name_phrase(), rule.value.text());
    let mut operation = Operation::new(OperationKind::RuleDefault, Some(job), [&name, &shown]);
    for id in changes_of(work, key) {
        operation = operation.set(id, Field::Numerator, Value::Absent);
    }
    let doubt = judged_rule(book, terms, (work, rule), (rule.value, &after), "value")?;
    let outcome = accept(book, terms, operation, &[doubt])?;
    Ok(ActionResult::at(Place::Rules { job: job.to_string() }, outcome.group))
}

/// What changes a rule: one thing, unless two phones changed it without having seen each other.
fn changes_of(work: &Work, key: &str) -> impl Iterator<Item = Id> {
    let changes = work.house().own(Kind::Rule).iter();
    changes.filter(move |change| change.text(Field::Key) == Some(key)).map(|change| change.id())
}
