use super::*;

fn tap(store: &mut Store, n: u8, action: DoneListAction) -> Result<(DoneListView, String), Problem> {
    let outcome = act(store, &context("en", n), &Action::DoneListKind { action })?;
    let View::DoneListKind { view } = outcome.view else { panic!("done list") };
    Ok((view, outcome.group))
}

fn shown(store: &Store, language: &str) -> DoneListView {
    let View::DoneListKind { view } = view(store, &context(language, 0), &Place::DoneList { job: None }).unwrap()
    else {
        panic!("done list")
    };
    view
}

fn rename(store: &mut Store, n: u8, job: &str, name: &str) -> String {
    let action = JobsAction::Rename { job: job.to_owned(), name: name.to_owned() };
    act(store, &context("en", n), &Action::JobsKind { action }).unwrap().group
}

#[test]
fn an_undo_opens_the_question_again_filled_in() {
    let (mut store, job) = house();
    let group = rename(&mut store, 2, &job, "Lot 14");
    let (looked, _) = tap(&mut store, 3, DoneListAction::LookAt { job: None, group: group.clone() }).unwrap();
    assert_eq!(looked.looked_at.unwrap().text, "What is the house called? Lot 14");
    assert_eq!(looked.depends, []);
    let undo = DoneListAction::Undo { job: Some(job.clone()), group };
    let (after, undone) = tap(&mut store, 4, undo.clone()).unwrap();
    let [reopened] = &after.reopened[..] else { panic!("{:?}", after.reopened) };
    assert_eq!((reopened.field.as_str(), reopened.text.as_str()), ("name", "Lot 14"));
    assert_eq!(reopened.place, Place::House { job: job.clone() });
    assert_eq!(store.draft_get(&format!("{job}/name")).unwrap().as_deref(), Some("Lot 14"));
    assert_eq!(after.lines[0].text, "Taken back: What is the house called? Lot 14");
    assert!(after.lines[0].is_undo && after.lines[1].undone);
    assert_eq!(tap(&mut store, 5, undo).unwrap_err().code, "order");
    // Taking the undo back puts the answer in force again.
    tap(&mut store, 6, DoneListAction::Undo { job: None, group: undone }).unwrap();
    assert!(!shown(&store, "en").lines.iter().any(|line| line.undone && !line.is_undo));
}

#[test]
fn what_depends_on_an_answer_is_shown_first() {
    let (mut store, job) = house();
    let made = shown(&store, "en").lines[0].group.clone();
    rename(&mut store, 2, &job, "Lot 14");
    let (looked, group) = tap(&mut store, 3, DoneListAction::LookAt { job: None, group: made }).unwrap();
    assert_eq!(group, "");
    let depends: Vec<_> = looked.depends.iter().map(|line| line.text.as_str()).collect();
    assert_eq!(depends, ["What is the house called? Lot 14"]);
}

#[test]
fn pages_go_through_everything_once() {
    let (mut store, job) = house();
    for n in 2..=120 {
        rename(&mut store, n, &job, &format!("Lot {n}"));
    }
    let mut page = shown(&store, "en");
    let mut seen: Vec<String> = page.lines.iter().map(|line| line.group.clone()).collect();
    while let Some(from) = page.older {
        (page, _) = tap(&mut store, 0, DoneListAction::Older { job: None, from }).unwrap();
        seen.extend(page.lines.iter().map(|line| line.group.clone()));
    }
    let once: std::collections::BTreeSet<_> = seen.iter().collect();
    assert_eq!((seen.len(), once.len()), (120, 120));
    for from in ["", "1/2", "x/1/00", "1/2/3/4"] {
        let bad = DoneListAction::Older { job: None, from: from.to_owned() };
        assert_eq!(tap(&mut store, 0, bad).unwrap_err().field, "from");
    }
}

#[test]
fn reads_well_in_both_languages() {
    let (mut store, job) = house();
    let group = rename(&mut store, 2, &job, "Lot 14");
    tap(&mut store, 3, DoneListAction::Undo { job: None, group }).unwrap();
    for language in ["en", "es"] {
        let mut list = shown(&store, language);
        for line in &mut list.lines {
            // The device of a book is random, and so are the ids of what it did.
            line.group.clear();
        }
        insta::assert_json_snapshot!(format!("done-list-{language}"), list);
    }
}
