use super::*;
use crate::book::Kind;

fn rules(book: &Book, language: &str, job: &str) -> RulesView {
    shown(book, language, Place::Rules { job: job.to_owned() })
}

fn line(book: &Book, job: &str, key: &str) -> RuleLine {
    rules(book, "en", job).rules.into_iter().find(|line| line.key == key).unwrap()
}

fn changing(job: &str, (key, value, reason): (&str, &str, &str)) -> RulesAction {
    let (job, key, value, reason) = (job.to_owned(), key.to_owned(), value.to_owned(), reason.to_owned());
    RulesAction::Change { job, key, value, reason }
}

fn change(book: &mut Book, n: u8, job: &str, said: (&str, &str, &str)) -> Result<Outcome, Problem> {
    tap(book, n, changing(job, said))
}

#[test]
fn a_rule_is_changed_changed_again_and_taken_back() {
    let (mut book, job) = house();
    assert_eq!(line(&book, &job, "lap.least").value, "1 1/4 in");
    change(&mut book, 2, &job, ("lap.least", "30 mm", "maker's page 4")).unwrap();
    let changed = line(&book, &job, "lap.least");
    assert_eq!((changed.value.as_str(), changed.unit.as_str(), changed.default.as_str()), ("30 mm", "mm", "1 1/4 in"));
    let who = changed.changed.unwrap();
    assert_eq!((who.signer.as_str(), who.reason.as_str()), ("Ines", "maker's page 4"));
    change(&mut book, 3, &job, ("lap.least", "1 1/2", "inspector")).unwrap();
    assert_eq!(line(&book, &job, "lap.least").value, "1 1/2 in");
    let changes = |book: &Book| book.house(job.parse().ok()).unwrap().own(Kind::Rule).len();
    assert_eq!(changes(&book), 1, "the same thing is edited");
    let back =
        |n, book: &mut Book| tap(book, n, RulesAction::BackToDefault { job: job.clone(), key: "lap.least".to_owned() });
    back(4, &mut book).unwrap();
    assert_eq!(line(&book, &job, "lap.least").changed, None);
    assert_eq!(back(5, &mut book).unwrap_err().code, "order");
    change(&mut book, 6, &job, ("lap.least", "2", "wind")).unwrap();
    assert_eq!(changes(&book), 1, "and again after the default");
    assert_eq!(line(&book, &job, "lap.least").value, "2 in");
}

/// Whoever reads a published rule also reads which edition has it, or that nobody noted that.
#[test]
fn every_published_rule_says_its_edition() {
    let (book, job) = house();
    let lines = rules(&book, "en", &job).rules;
    let edition = |key: &str| lines.iter().find(|line| line.key == key).unwrap().edition.clone();
    assert_eq!(edition("lap.least"), "2024");
    assert_eq!(edition("stud.spacing"), "2018 (edition from memory)");
    assert_eq!(edition("clearance.roof"), "edition not noted");
    assert_eq!(edition("gap.trim"), "");
    assert_eq!(edition("trim.length"), "", "what packs hold is in no book");
}

#[test]
fn values_of_every_unit_are_taken_as_they_are_printed() {
    let (mut book, job) = house();
    for (n, rule) in (10..).zip(rules(&book, "en", &job).rules) {
        let given = change(&mut book, n, &job, (&rule.key, &rule.value, "as printed"));
        assert!(given.is_ok(), "{}: {given:?}", rule.key);
        let after = line(&book, &job, &rule.key);
        assert_eq!((&after.value, after.default.as_str()), (&rule.value, ""), "{}", rule.key);
    }
}

#[test]
fn what_no_rule_allows_changes_nothing() {
    let (mut book, job) = house();
    for (key, value, reason, field) in [
        ("lap.least", "1/8\"", "why not", "rule-range"),
        ("lap.least", "a lot", "why not", "value"),
        ("lap.least", "2", "  ", "rule-reason"),
        ("waste.boards", "lots", "why not", "value"),
        ("waste.boards", "900 %", "why not", "rule-range"),
        ("gap.block.least", "1/4", "why not", "rule-order"),
        ("no.such", "1", "why not", "rule-unknown"),
        ("unit.inch", "25 mm", "why not", "rule-range"),
    ] {
        assert_eq!(change(&mut book, 2, &job, (key, value, reason)).unwrap_err().field, field, "{key} {value}");
    }
    let nobody = Context { signer: String::new(), ..context("en", 2) };
    let action = changing(&job, ("lap.least", "2", "wind"));
    assert_eq!(act(&mut book, &nobody, &Action::RulesKind { action }).unwrap_err().field, "rule-signer");
    assert!(rules(&book, "en", &job).rules.iter().all(|line| line.changed.is_none()));
}

#[test]
fn shows_what_it_showed() {
    let (mut book, job) = house();
    change(&mut book, 2, &job, ("lap.least", "30 mm", "maker's page 4")).unwrap();
    let mut view = rules(&book, "en", &job);
    view.rules.retain(|line| ["lap.least", "gap.trim", "unit.inch", "barrier.lap.horizontal"].contains(&&*line.key));
    insta::assert_json_snapshot!("rules", view);
}

#[test]
fn a_typed_value_waits_for_its_reason_and_no_key_is_lost() {
    let (mut book, job) = house();
    let key = "lap.least";
    let asked_then = |book: &mut Book, n: u8, action: RulesAction| {
        let view: RulesView = OfScreen::of(tap(book, n, action)?.view);
        Ok::<_, Problem>(view.asked.map(|question| (question.field, question.draft)))
    };
    let keep = |field: &str, text: &str| RulesAction::KeepDraft {
        job: job.clone(),
        field: field.to_owned(),
        text: text.to_owned(),
    };
    let answer = |field: &str, text: &str| RulesAction::Answer {
        job: job.clone(),
        field: field.to_owned(),
        text: text.to_owned(),
    };
    let reason = format!("{key}/reason");
    let asked = |field: &str, draft: &str| Some((field.to_owned(), draft.to_owned()));
    assert_eq!(asked_then(&mut book, 2, keep(key, "3")).unwrap(), asked(key, "3"));
    assert_eq!(asked_then(&mut book, 3, answer(key, "a lot")).unwrap_err().field, "value");
    assert_eq!(asked_then(&mut book, 4, answer(key, "30 mm")).unwrap(), asked(&reason, ""));
    assert_eq!(line(&book, &job, key).value, "1 1/4 in", "not without a reason");
    assert!(asked_then(&mut book, 5, answer(&reason, "  ")).is_err());
    assert_eq!(asked_then(&mut book, 6, keep(&reason, "maker")).unwrap(), asked(&reason, "maker"));
    assert_eq!(asked_then(&mut book, 7, answer(&reason, "maker's page 4")).unwrap(), None);
    assert_eq!(line(&book, &job, key).value, "30 mm");
    asked_then(&mut book, 8, answer(key, "40 mm")).unwrap();
    assert_eq!(asked_then(&mut book, 9, answer(key, "")).unwrap(), None, "an empty value gives the change up");
    assert_eq!(line(&book, &job, key).value, "30 mm");
    assert_eq!(asked_then(&mut book, 10, keep("no.such", "1")).unwrap_err().code, "range");
}

/// A value is typed on keys of its kind, with the value in force before the eyes.
#[test]
fn a_value_is_asked_for_with_the_one_in_force() {
    let (book, job) = demo_laid_out();
    let view: RulesView = shown(&book, "es", Place::Rules { job });
    let mut kinds = std::collections::BTreeSet::new();
    for rule in view.rules.iter().filter(|rule| !rule.fixed) {
        let asked = &rule.asks[0];
        assert_eq!(asked.answer, rule.value, "{}", rule.key);
        assert_ne!(asked.kind, AnswerKind::TextKind, "{}", rule.key);
        kinds.insert(format!("{:?}", asked.kind));
    }
    assert_eq!(kinds.len(), 2, "{kinds:?}");
}
