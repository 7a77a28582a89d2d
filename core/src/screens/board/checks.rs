//! What is checked of a board with one tap, for all the steps that it stands for.

use crate::book::{Book, DraftKey, Operation};
use crate::forms::ask::accept;
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::parts::join_nonempty;
use crate::forms::signing::{operation_of, signed_after, step_lines};
use crate::forms::{cautions, step_asks};
use crate::phrases::key;
use crate::steps::Step;
use crate::store::Id;
use crate::views::{CheckLine, Code, Note, PhotoPlace, Problem, StepHow, StepLine, StepSaid, StepState};
use crate::work::sign_offs;

use super::hand::InHand;

/// The steps that are checked together, each group with its code and the key of its text. Any other step is checked by
/// itself: what keeps somebody safe, what a first course needs, a gap that is measured.
const TOGETHER: [(&str, &str, &[&str]); 3] = [
    (
        "cut",
        key("board-check-cut"),
        &["board-measure", "board-measure-notch", "board-mark", "board-cut", "board-rip", "board-notch", "board-try"],
    ),
    ("primed", key("board-check-primed"), &["board-prime"]),
    ("up", key("board-check-up"), &["board-backing", "board-set", "board-nail", "board-touch-up"]),
];

/// A check and its steps.
struct Check<'a> {
    code: &'a str,
    /// The key of its text.
    text: &'a str,
    steps: Vec<&'a Step>,
}

/// The checks of a list of steps, each where its first step stands.
fn checks(steps: &[Step]) -> Vec<Check<'_>> {
    let mut checks: Vec<Check<'_>> = Vec::new();
    for step in steps {
        let group = TOGETHER.iter().find(|(.., codes)| codes.contains(&step.code));
        let (code, text) = group.map_or((step.code, step.text), |(code, text, _)| (*code, *text));
        match checks.iter_mut().find(|check| check.code == code) {
            Some(check) => check.steps.push(step),
            None => checks.push(Check { code, text, steps: vec![step] }),
        }
    }
    checks
}

/// The checks of a board, from its steps and what was said of each.
pub(super) fn lines(terms: &Terms<'_>, steps: &[Step], said: &[StepLine]) -> Vec<CheckLine> {
    checks(steps).iter().map(|check| line(terms, check, said)).collect()
}

fn line(terms: &Terms<'_>, check: &Check<'_>, said: &[StepLine]) -> CheckLine {
    let own = |line: &&StepLine| check.steps.iter().any(|step| step.code == line.code);
    let all: Vec<&StepLine> = said.iter().filter(own).collect();
    let state = all.last().map_or(StepState::Open, |last| last.state);
    let open = || all.iter().filter(|line| line.state == StepState::Open);
    let mut cautions: Vec<Note> = Vec::new();
    for caution in open().flat_map(|line| &line.cautions) {
        if !cautions.contains(caution) {
            cautions.push(caution.clone());
        }
    }
    let is_open = state == StepState::Open;
    let here = |line: &StepLine| line.photo.as_ref().is_some_and(|photo| photo.place == PhotoPlace::Here);
    let camera = open().find(|line| is_open && line.photo_asked && !here(line));
    let when = all.last().and_then(|last| last.at_ms).map(|at| terms.moment(at)).unwrap_or_default();
    let by = all.last().map_or("", |last| &last.signer);
    CheckLine {
        code: check.code.to_owned(),
        text: terms.phrase(check.text, &[]),
        steps: check.steps.iter().map(|step| step.code.to_owned()).collect(),
        state,
        said: if is_open { String::new() } else { join_nonempty(&[by, &when]) },
        cautions_read: !is_open || open().all(|line| line.cautions_read),
        cautions: if is_open { cautions } else { Vec::new() },
        camera: camera.map(|line| line.code.clone()).unwrap_or_default(),
        opens: open().find_map(|line| line.opens.clone()).filter(|_| is_open),
    }
}

/// The steps of a check, or the one step of that code.
pub(super) fn steps_of<'a>(steps: &'a [Step], code: &str) -> Vec<&'a Step> {
    let found = checks(steps).into_iter().find(|check| check.code == code);
    found.map_or_else(|| steps.iter().filter(|step| step.code == code).collect(), |check| check.steps)
}

/// Signs every step of a check that is still open, or takes back every one that is not, in one answer.
pub(super) fn sign(book: &mut Book, terms: &Terms<'_>, hand: &InHand, code: &str, how: StepHow) -> Result<Id> {
    let (name, steps) = (hand.name(), hand.steps()?);
    let on = hand.signing(book, &name, &steps)?;
    let said = step_lines(book, terms, &on)?;
    let unknown = || Problem::new(Code::Unknown, "check", terms.phrase("screen-unknown", &[]));
    let check = checks(&steps).into_iter().find(|check| check.code == code).ok_or_else(unknown)?;
    let is_meant = |line: &&StepLine| {
        let own = check.steps.iter().any(|step| step.code == line.code);
        own && (line.state == StepState::Open) == (how == StepHow::Tick)
    };
    let mut meant: Vec<&StepLine> = said.iter().filter(is_meant).collect();
    if meant.is_empty() {
        let text = if how == StepHow::Tick { key("board-check-done") } else { key("board-check-open") };
        return Err(Problem::new(Code::Order, "check", terms.phrase(text, &[])).into());
    }
    let (kind, _) = operation_of(how);
    // The last one first, so that none is open before one that is done.
    if how == StepHow::TakeBack {
        meant.reverse();
    }
    let mut history = sign_offs(hand.work.house().signed(hand.id()));
    let mut operation = Operation::new(kind, hand.work.id(), [name.as_str(), check.text, ""]);
    let mut used = Vec::new();
    for line in meant {
        let photo = line.photo.as_ref().filter(|photo| photo.place == PhotoPlace::Here && !photo.signed);
        let photo = photo.filter(|_| how == StepHow::Tick).map(|photo| photo.photo.clone());
        used.extend(step_asks::drafts(hand.id(), &line.code));
        if photo.is_some() {
            used.push(DraftKey::photo(hand.id(), &line.code));
        }
        let one = StepSaid { how, note: String::new(), measured: String::new(), photo };
        let (signed, sign_off) = signed_after(book, terms, &on, &history, &line.code, &one)?;
        history.push(sign_off);
        operation = hand.with_state(terms, operation.also(signed), &line.code, how)?;
    }
    let group = accept(book, terms, operation, &used)?.group;
    if how == StepHow::Tick {
        for step in check.steps {
            // It is signed: a caution that is not known as read is shown once more, that is all.
            let _ = cautions::keep_read(book, terms, hand.work.id(), step);
        }
    }
    Ok(group)
}
