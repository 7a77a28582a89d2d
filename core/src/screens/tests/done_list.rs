use super::*;

fn list(book: &Book, language: &str) -> DoneListView {
    shown(book, language, Place::DoneList { job: None })
}

fn listed(book: &mut Book, n: u8, action: DoneListAction) -> Result<(DoneListView, String), Problem> {
    let outcome = tap(book, n, action)?;
    Ok((OfScreen::of(outcome.view), outcome.group))
}

fn rename(book: &mut Book, n: u8, job: &str, name: &str) -> String {
    tap(book, n, JobsAction::Rename { job: job.to_owned(), name: name.to_owned() }).unwrap().group
}

#[test]
fn an_undo_opens_the_question_again_filled_in() {
    let (mut book, job) = house();
    let group = rename(&mut book, 2, &job, "Lot 14");
    let (looked, _) = listed(&mut book, 3, DoneListAction::LookAt { job: None, group: group.clone() }).unwrap();
    assert_eq!(looked.looked_at.unwrap().text, "What is the house called? Lot 14");
    assert_eq!(looked.depends, []);
    let undo = DoneListAction::Undo { job: Some(job.clone()), group };
    let (after, undone) = listed(&mut book, 4, undo.clone()).unwrap();
    let [reopened] = &after.reopened[..] else { panic!("{:?}", after.reopened) };
    assert_eq!((reopened.field.as_str(), reopened.text.as_str()), ("name", "Lot 14"));
    assert_eq!(reopened.place, Place::House { job: job.clone() });
    assert_eq!(book.store().draft_get(&format!("{job}/name")).unwrap().as_deref(), Some("Lot 14"));
    assert_eq!(after.lines[0].text, "Taken back: What is the house called? Lot 14");
    assert!(after.lines[0].is_undo && after.lines[1].undone);
    assert_eq!(listed(&mut book, 5, undo).unwrap_err().code, "order");
    // Taking the undo back puts the answer in force again.
    listed(&mut book, 6, DoneListAction::Undo { job: None, group: undone }).unwrap();
    assert!(!list(&book, "en").lines.iter().any(|line| line.undone && !line.is_undo));
}

#[test]
fn what_depends_on_an_answer_is_shown_first() {
    let (mut book, job) = house();
    let made = list(&book, "en").lines[0].group.clone();
    rename(&mut book, 2, &job, "Lot 14");
    let (looked, group) = listed(&mut book, 3, DoneListAction::LookAt { job: None, group: made }).unwrap();
    assert_eq!(group, "");
    let depends: Vec<_> = looked.depends.iter().map(|line| line.text.as_str()).collect();
    assert_eq!(depends, ["What is the house called? Lot 14"]);
}

#[test]
fn pages_go_through_everything_once() {
    let (mut book, job) = house();
    for n in 2..=120 {
        rename(&mut book, n, &job, &format!("Lot {n}"));
    }
    let mut page = list(&book, "en");
    let mut seen: Vec<String> = page.lines.iter().map(|line| line.group.clone()).collect();
    while let Some(from) = page.older {
        (page, _) = listed(&mut book, 0, DoneListAction::Older { job: None, from }).unwrap();
        seen.extend(page.lines.iter().map(|line| line.group.clone()));
    }
    let once: std::collections::BTreeSet<_> = seen.iter().collect();
    assert_eq!((seen.len(), once.len()), (120, 120));
    for from in ["", "1/2", "x/1/00", "1/2/3/4"] {
        let bad = DoneListAction::Older { job: None, from: from.to_owned() };
        assert_eq!(listed(&mut book, 0, bad).unwrap_err().field, "from");
    }
}

#[test]
fn shows_what_it_showed() {
    let (mut book, job) = house();
    let group = rename(&mut book, 2, &job, "Lot 14");
    listed(&mut book, 3, DoneListAction::Undo { job: None, group }).unwrap();
    let mut list = list(&book, "en");
    for line in &mut list.lines {
        // The device of a book is random, and so are the ids of what it did.
        line.group.clear();
    }
    insta::assert_json_snapshot!("done-list", list);
}
