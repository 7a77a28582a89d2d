use super::*;
use crate::screens::signing::{Signing, open_steps, sign, step_lines};
use crate::steps::{PenetrationDetail, Step};
use crate::store::Hash;
use crate::wall::{Finish, Mounting, PenetrationKind, Shape};

fn steps() -> Vec<Step> {
    let shape = Shape::Round { diameter: crate::measure::Length::from_mm(25) };
    PenetrationDetail::plain(PenetrationKind::HoseBib, shape, Finish::Block, Mounting::Split).steps()
}

fn say(store: &mut Store, n: u8, job: &str, step: &str, said: &StepSaid) -> Result<Id, Problem> {
    let (subject, steps): (Id, _) = (job.parse().unwrap(), steps());
    let on = Signing { subject, job: Some(subject), about: "wall-kind-hose-bib", steps: &steps, detail: Hash::of("a") };
    spoken(&context("en", n), |terms| sign(store, terms, &on, step, said))
}

fn said(how: StepHow, note: &str, measured: &str) -> StepSaid {
    StepSaid { how, note: note.to_owned(), measured: measured.to_owned(), photo: None }
}

fn line(store: &Store, job: &str, step: &str, detail: &str) -> StepLine {
    let lines = spoken(&context("en", 0), |terms| {
        let (subject, detail) = (job.parse().unwrap(), Hash::of(detail));
        step_lines(store, terms, &Signing { subject, job: Some(subject), about: "", steps: &steps(), detail })
    });
    lines.unwrap().into_iter().find(|line| line.code == step).unwrap()
}

#[test]
fn a_step_is_ticked_taken_back_and_ticked_again() {
    let (mut store, job) = house();
    say(&mut store, 2, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap();
    assert_eq!(line(&store, &job, "water-line", "a").state, StepState::Done);
    assert!(!line(&store, &job, "water-line", "a").differs);
    assert!(line(&store, &job, "water-line", "b").differs, "the thing has changed since");
    let again = say(&mut store, 3, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap_err();
    assert_eq!((again.code.as_str(), again.field.as_str()), ("order", "step"));
    say(&mut store, 4, &job, "water-line", &said(StepHow::TakeBack, "wrong house", "")).unwrap();
    assert_eq!(line(&store, &job, "water-line", "a").state, StepState::Open);
    say(&mut store, 5, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap();
    assert_eq!(line(&store, &job, "water-line", "a").signer, "Ines");
}

#[test]
fn an_undone_sign_off_counts_for_nothing() {
    let (mut store, job) = house();
    let group = say(&mut store, 2, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap().to_string();
    let action = DoneListAction::Undo { job: None, group };
    act(&mut store, &context("en", 3), &Action::DoneListKind { action }).unwrap();
    assert_eq!(line(&store, &job, "water-line", "a").state, StepState::Open);
    say(&mut store, 4, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap();
}

#[test]
fn what_gets_hidden_is_passed_over_with_a_reason_only() {
    let (mut store, job) = house();
    let early = say(&mut store, 2, &job, "sealant", &said(StepHow::Tick, "", "")).unwrap_err();
    assert_eq!((early.code.as_str(), early.field.as_str()), ("first", "note"));
    let silent = say(&mut store, 2, &job, "patch-roll", &said(StepHow::Skip, " ", "")).unwrap_err();
    assert_eq!((silent.code.as_str(), silent.field.as_str()), ("missing", "note"));
    assert!(store.sign_offs(job.parse().unwrap()).unwrap().is_empty());
    say(&mut store, 3, &job, "patch-roll", &said(StepHow::Skip, "self-sealing tape", "")).unwrap();
    say(&mut store, 4, &job, "sealant", &said(StepHow::Tick, "rain is coming", "3/8")).unwrap();
    let skipped = line(&store, &job, "patch-roll", "a");
    assert_eq!((skipped.state, skipped.note.as_str()), (StepState::Skipped, "self-sealing tape"));
    let bead = line(&store, &job, "sealant", "a").measured.unwrap();
    assert_eq!((bead.text.as_str(), bead.signer.as_str()), ("3/8\"", "Ines"));
    let open = spoken(&context("en", 0), |_| open_steps(&store, job.parse().unwrap(), &steps())).unwrap();
    assert!(open.contains("patch-top") && !open.contains("patch-roll") && !open.contains("sealant"));
}

#[test]
fn what_is_measured_fits_its_step() {
    let (mut store, job) = house();
    let tick = |measured: &str| said(StepHow::Tick, "tried", measured);
    say(&mut store, 2, &job, "slope-out", &tick("2.5°")).unwrap();
    assert_eq!(line(&store, &job, "slope-out", "a").note, "2.5° tried");
    for (step, measured, code) in [
        ("water-line", "3\"", "range"),
        ("block-split", "120", "range"),
        ("patch-hole", "wide", "length"),
        ("no-such-step", "", "unknown"),
    ] {
        assert_eq!(say(&mut store, 3, &job, step, &tick(measured)).unwrap_err().code, code, "{step} {measured}");
    }
    let nobody = Context { signer: " ".to_owned(), ..context("en", 3) };
    let (subject, steps): (Id, _) = (job.parse().unwrap(), steps());
    let on = Signing { subject, job: None, about: "", steps: &steps, detail: Hash::NONE };
    let refused = spoken(&nobody, |terms| sign(&mut store, terms, &on, "patch-hole", &tick("")));
    assert_eq!(refused.unwrap_err().field, "signer");
}

/// Each caution is shown until a step that has it was ticked; on the next day, and in another house, once more.
#[test]
fn a_caution_is_read_once_a_day_and_house() {
    let (mut store, job) = house();
    let subject: Id = job.parse().unwrap();
    let unread = |store: &Store, job: Option<Id>, context: &Context| {
        let lines = spoken(context, |terms| {
            let (steps, detail) = (steps(), Hash::of("a"));
            step_lines(store, terms, &Signing { subject, job, about: "", steps: &steps, detail })
        });
        let unread = lines.unwrap().into_iter().filter(|line| !line.cautions_read);
        unread.map(|line| line.code).collect::<Vec<_>>()
    };
    let today = context("en", 3);
    let first = unread(&store, Some(subject), &today);
    let sawn: Vec<_> = first.iter().filter(|code| ["block-hole", "block-split"].contains(&code.as_str())).collect();
    assert_eq!(sawn.len(), 2, "{first:?}");
    say(&mut store, 2, &job, "block-hole", &said(StepHow::Tick, "tried", "")).unwrap();
    let left = unread(&store, Some(subject), &today);
    assert!(!left.contains(&"block-split".to_owned()), "the same saw: {left:?}");
    assert!(!left.is_empty() && left.len() < first.len());
    let tomorrow = Context { now_ms: today.now_ms + 24 * 60 * 60 * 1000, ..today.clone() };
    assert_eq!(unread(&store, Some(subject), &tomorrow), first);
    assert_eq!(unread(&store, None, &today), first, "another house");
}
