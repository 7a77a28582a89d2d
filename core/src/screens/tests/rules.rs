use super::*;

fn shown(store: &Store, language: &str, job: &str) -> RulesView {
    let View::RulesKind { view } = view(store, &context(language, 0), &Place::Rules { job: job.to_owned() }).unwrap()
    else {
        panic!("rules")
    };
    view
}

fn line(store: &Store, job: &str, key: &str) -> RuleLine {
    shown(store, "en", job).rules.into_iter().find(|line| line.key == key).unwrap()
}

fn change(store: &mut Store, n: u8, job: &str, (key, value, reason): (&str, &str, &str)) -> Result<Outcome, Problem> {
    let (job, key, value, reason) = (job.to_owned(), key.to_owned(), value.to_owned(), reason.to_owned());
    let action = RulesAction::Change { job, key, value, reason };
    act(store, &context("en", n), &Action::RulesKind { action })
}

#[test]
fn a_rule_is_changed_changed_again_and_taken_back() {
    let (mut store, job) = house();
    assert_eq!(line(&store, &job, "lap.least").value, "1 1/4 in");
    change(&mut store, 2, &job, ("lap.least", "30 mm", "maker's page 4")).unwrap();
    let changed = line(&store, &job, "lap.least");
    assert_eq!((changed.value.as_str(), changed.unit.as_str(), changed.default.as_str()), ("30 mm", "mm", "1 1/4 in"));
    let who = changed.changed.unwrap();
    assert_eq!((who.signer.as_str(), who.reason.as_str()), ("Ines", "maker's page 4"));
    change(&mut store, 3, &job, ("lap.least", "1 1/2", "inspector")).unwrap();
    assert_eq!(line(&store, &job, "lap.least").value, "1 1/2 in");
    let id = job.parse().unwrap();
    assert_eq!(store.children(id, kinds::RULE).unwrap().len(), 1, "the same thing is edited");
    let back = |n, store: &mut Store| {
        let action = RulesAction::BackToDefault { job: job.clone(), key: "lap.least".to_owned() };
        act(store, &context("en", n), &Action::RulesKind { action })
    };
    back(4, &mut store).unwrap();
    assert_eq!(line(&store, &job, "lap.least").changed, None);
    assert_eq!(back(5, &mut store).unwrap_err().code, "order");
    change(&mut store, 6, &job, ("lap.least", "2", "wind")).unwrap();
    assert_eq!(store.children(id, kinds::RULE).unwrap().len(), 1, "and again after the default");
    assert_eq!(line(&store, &job, "lap.least").value, "2 in");
}

#[test]
fn values_of_every_unit_are_taken_as_they_are_printed() {
    let (mut store, job) = house();
    for (n, rule) in (10..).zip(shown(&store, "en", &job).rules) {
        let given = change(&mut store, n, &job, (&rule.key, &rule.value, "as printed"));
        assert!(given.is_ok(), "{}: {given:?}", rule.key);
        let after = line(&store, &job, &rule.key);
        assert_eq!((&after.value, after.default.as_str()), (&rule.value, ""), "{}", rule.key);
    }
}

#[test]
fn what_no_rule_allows_changes_nothing() {
    let (mut store, job) = house();
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
        assert_eq!(change(&mut store, 2, &job, (key, value, reason)).unwrap_err().field, field, "{key} {value}");
    }
    let nobody = Context { signer: String::new(), ..context("en", 2) };
    let (key, value, reason) = ("lap.least".to_owned(), "2".to_owned(), "wind".to_owned());
    let action = RulesAction::Change { job: job.clone(), key, value, reason };
    assert_eq!(act(&mut store, &nobody, &Action::RulesKind { action }).unwrap_err().field, "rule-signer");
    assert!(shown(&store, "en", &job).rules.iter().all(|line| line.changed.is_none()));
}

#[test]
fn reads_well_in_both_languages() {
    let (mut store, job) = house();
    change(&mut store, 2, &job, ("lap.least", "30 mm", "maker's page 4")).unwrap();
    for language in ["en", "es"] {
        let mut view = shown(&store, language, &job);
        view.rules
            .retain(|line| ["lap.least", "gap.trim", "unit.inch", "barrier.lap.horizontal"].contains(&&*line.key));
        insta::assert_json_snapshot!(format!("rules-{language}"), view);
    }
}

#[test]
fn a_typed_value_waits_for_its_reason_and_no_key_is_lost() {
    let (mut store, job) = house();
    let key = "lap.least";
    let tap = |store: &mut Store, n: u8, action: RulesAction| {
        let outcome = act(store, &context("en", n), &Action::RulesKind { action })?;
        let View::RulesKind { view } = outcome.view else { panic!("rules") };
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
    assert_eq!(tap(&mut store, 2, keep(key, "3")).unwrap(), asked(key, "3"));
    assert_eq!(tap(&mut store, 3, answer(key, "a lot")).unwrap_err().field, "value");
    assert_eq!(tap(&mut store, 4, answer(key, "30 mm")).unwrap(), asked(&reason, ""));
    assert_eq!(line(&store, &job, key).value, "1 1/4 in", "not without a reason");
    assert!(tap(&mut store, 5, answer(&reason, "  ")).is_err());
    assert_eq!(tap(&mut store, 6, keep(&reason, "maker")).unwrap(), asked(&reason, "maker"));
    assert_eq!(tap(&mut store, 7, answer(&reason, "maker's page 4")).unwrap(), None);
    assert_eq!(line(&store, &job, key).value, "30 mm");
    tap(&mut store, 8, answer(key, "40 mm")).unwrap();
    assert_eq!(tap(&mut store, 9, answer(key, "")).unwrap(), None, "an empty value gives the change up");
    assert_eq!(line(&store, &job, key).value, "30 mm");
    assert_eq!(tap(&mut store, 10, keep("no.such", "1")).unwrap_err().code, "range");
}
