use super::*;
use crate::forms::signing::{DetailHashes, Signing, sign, step_lines};
use crate::steps::{PenetrationDetail, Step};
use crate::store::Hash;
use crate::wall::{Finish, Mounting, PenetrationKind, Shape};
use crate::work::{Work, open_steps};

fn steps() -> Vec<Step> {
    let shape = Shape::Round { diameter: crate::measure::Length::from_mm(25) };
    PenetrationDetail::plain(PenetrationKind::HoseBib, shape, Finish::Block, Mounting::Split).steps()
}

/// What is signed on: the house itself, for want of a thing of its own; `of` is what it is made from.
fn on<'a>(work: &'a Work, steps: &'a [Step], of: &str) -> Signing<'a> {
    let detail = DetailHashes { hash: Hash::of(of), earlier: Vec::new() };
    Signing { work, subject: work.id().unwrap(), about: "wall-kind-hose-bib", steps, detail }
}

fn say_in(book: &mut Book, context: &Context, job: &str, step: &str, said: &StepSaid) -> Result<Id, Problem> {
    in_language(context, |terms| {
        let work = lookup::house(book, terms, job)?;
        sign(book, terms, &on(&work, &steps(), "a"), step, said)
    })
}

fn say(book: &mut Book, n: u8, job: &str, step: &str, said: &StepSaid) -> Result<Id, Problem> {
    say_in(book, &context("en", n), job, step, said)
}

fn said(how: StepHow, note: &str, measured: &str) -> StepSaid {
    StepSaid { how, note: note.to_owned(), measured: measured.to_owned(), photo: None }
}

fn lines(book: &Book, context: &Context, job: &str, of: &str) -> Vec<StepLine> {
    let lines = in_language(context, |terms| {
        let work = lookup::house(book, terms, job)?;
        step_lines(book, terms, &on(&work, &steps(), of))
    });
    lines.unwrap()
}

fn line(book: &Book, job: &str, step: &str, of: &str) -> StepLine {
    lines(book, &context("en", 0), job, of).into_iter().find(|line| line.code == step).unwrap()
}

#[test]
fn a_step_is_ticked_taken_back_and_ticked_again() {
    let (mut book, job) = house();
    say(&mut book, 2, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap();
    assert_eq!(line(&book, &job, "water-line", "a").state, StepState::Done);
    assert!(!line(&book, &job, "water-line", "a").differs);
    assert!(line(&book, &job, "water-line", "b").differs, "the thing has changed since");
    let again = say(&mut book, 3, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap_err();
    assert_eq!((again.code.as_str(), again.field.as_str()), ("order", "step"));
    say(&mut book, 4, &job, "water-line", &said(StepHow::TakeBack, "wrong house", "")).unwrap();
    assert_eq!(line(&book, &job, "water-line", "a").state, StepState::Open);
    say(&mut book, 5, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap();
    assert_eq!(line(&book, &job, "water-line", "a").signer, "Ines");
}

#[test]
fn an_undone_sign_off_counts_for_nothing() {
    let (mut book, job) = house();
    let group = say(&mut book, 2, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap().to_string();
    tap(&mut book, 3, DoneListAction::Undo { job: None, group }).unwrap();
    assert_eq!(line(&book, &job, "water-line", "a").state, StepState::Open);
    say(&mut book, 4, &job, "water-line", &said(StepHow::Tick, "", "")).unwrap();
}

#[test]
fn what_gets_hidden_is_passed_over_with_a_reason_only() {
    let (mut book, job) = house();
    let early = say(&mut book, 2, &job, "sealant", &said(StepHow::Tick, "", "")).unwrap_err();
    assert_eq!((early.code.as_str(), early.field.as_str()), ("first", "note"));
    let silent = say(&mut book, 2, &job, "patch-roll", &said(StepHow::Skip, " ", "")).unwrap_err();
    assert_eq!((silent.code.as_str(), silent.field.as_str()), ("missing", "note"));
    assert!(book.store().sign_offs(job.parse().unwrap()).unwrap().is_empty());
    say(&mut book, 3, &job, "patch-roll", &said(StepHow::Skip, "self-sealing tape", "")).unwrap();
    say(&mut book, 4, &job, "sealant", &said(StepHow::Tick, "rain is coming", "3/8")).unwrap();
    let skipped = line(&book, &job, "patch-roll", "a");
    assert_eq!((skipped.state, skipped.note.as_str()), (StepState::Skipped, "self-sealing tape"));
    let bead = line(&book, &job, "sealant", "a").measured.unwrap();
    assert_eq!((bead.text.as_str(), bead.signer.as_str()), ("3/8\"", "Ines"));
    let (house, steps) = (book.house(job.parse().ok()).unwrap(), steps());
    let open = open_steps(&house, job.parse().unwrap(), &steps);
    assert!(open.contains("barrier-down") && !open.contains("patch-roll") && !open.contains("sealant"));
}

#[test]
fn what_is_measured_fits_its_step() {
    let (mut book, job) = house();
    let tick = |measured: &str| said(StepHow::Tick, "tried", measured);
    say(&mut book, 2, &job, "slope-out", &tick("2.5°")).unwrap();
    assert_eq!(line(&book, &job, "slope-out", "a").note, "2.5° tried");
    for (step, measured, code) in [
        ("water-line", "3\"", "range"),
        ("block-split", "120", "range"),
        ("patch-hole", "wide", "length"),
        ("no-such-step", "", "unknown"),
    ] {
        assert_eq!(say(&mut book, 3, &job, step, &tick(measured)).unwrap_err().code, code, "{step} {measured}");
    }
    let nobody = Context { signer: " ".to_owned(), ..context("en", 3) };
    let refused = say_in(&mut book, &nobody, &job, "patch-hole", &tick(""));
    assert_eq!(refused.unwrap_err().field, "signer");
}

/// Each caution is shown until a step that has it was ticked; on the next day, and in another house, once more.
#[test]
fn a_caution_is_read_once_a_day_and_house() {
    let (mut book, job) = house();
    let action = JobsAction::Create { name: "Lot 13".to_owned(), like: None };
    let Place::House { job: other } = tap(&mut book, 9, action).unwrap().place else { panic!("a new house opens") };
    let unread = |book: &Book, job: &str, context: &Context| {
        let unread = lines(book, context, job, "a").into_iter().filter(|line| !line.cautions_read);
        unread.map(|line| line.code).collect::<Vec<_>>()
    };
    let today = context("en", 3);
    let first = unread(&book, &job, &today);
    let sawn: Vec<_> = first.iter().filter(|code| ["block-hole", "block-split"].contains(&code.as_str())).collect();
    assert_eq!(sawn.len(), 2, "{first:?}");
    say(&mut book, 2, &job, "block-hole", &said(StepHow::Tick, "tried", "")).unwrap();
    let left = unread(&book, &job, &today);
    assert!(!left.contains(&"block-split".to_owned()), "the same saw: {left:?}");
    assert!(!left.is_empty() && left.len() < first.len());
    let tomorrow = Context { now_ms: today.now_ms + 24 * 60 * 60 * 1000, ..today.clone() };
    assert_eq!(unread(&book, &job, &tomorrow), first);
    assert_eq!(unread(&book, &other, &today), first, "another house");
}
