//! The sheet that an inspector is handed: what was done at everything that goes through a house's walls, and at its details.

use crate::book::{Book, Field};
use crate::forms::context::{Terms, in_language};
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::moment;
use crate::forms::parts::join_nonempty;
use crate::phrases::key;
use crate::views::{Context, PenetrationView, Problem, StepLine, StepState};

use super::penetration::{detail_name, view};

/// A house's sign-offs as a text to print: wall by wall every penetration and detail, each step with who signed it, when,
/// what was measured and the note or the reason; open steps too. It is made from the book alone, and changes nothing.
///
/// # Errors
/// [`Problem`] where the book has no such house, or a wall is not measured yet.
pub fn sign_off_sheet(book: &Book, context: &Context, job: &str) -> Result<String, Problem> {
    in_language(context, |terms| {
        book.refresh()?;
        sheet(book, terms, job)
    })
}

fn sheet(book: &Book, terms: &Terms<'_>, job: &str) -> Result<String> {
    let work = lookup::house(book, terms, job)?;
    let mut things = Vec::new();
    for wall in work.walls() {
        things.extend(wall.penetrations.iter().map(|penetration| penetration.id().to_string()));
        things.extend(wall.details(&work)?.iter().map(detail_name));
    }
    let house = work.job()?.text(Field::Name).unwrap_or_default();
    let title = terms.phrase(key("signing-sheet"), &[("house", house.into())]);
    let made = terms.phrase(key("signing-sheet-made"), &[("when", when(terms, terms.context.now_ms).into())]);
    let mut parts = vec![format!("{title}\n{made}")];
    for thing in things {
        parts.push(thing_said(terms, &view(book, terms, &thing)?));
    }
    parts.push(terms.phrase("caution-who-decides", &[]));
    parts.push(terms.phrase(key("signing-sheet-inspected"), &[]));
    Ok(format!("{}\n", parts.join("\n\n")))
}

fn thing_said(terms: &Terms<'_>, thing: &PenetrationView) -> String {
    let done = thing.steps.iter().filter(|step| step.state == StepState::Done).count();
    let counts = [("done", done.into()), ("all", thing.steps.len().into())];
    let progress = terms.phrase("step-progress", &counts);
    let mut lines = vec![format!("{} ({}): {progress}", thing.name, thing.said)];
    lines.extend(thing.steps.iter().map(|step| step_said(terms, step)));
    lines.join("\n")
}

fn step_said(terms: &Terms<'_>, step: &StepLine) -> String {
    let (mark, state) = match step.state {
        StepState::Open => ("[ ]", None),
        StepState::Done => ("[x]", Some(key("step-state-done"))),
        StepState::Skipped => ("[-]", Some(key("step-state-skipped"))),
    };
    let at = step.at_ms.map(|at| when(terms, at)).unwrap_or_default();
    let skipped = step.state == StepState::Skipped;
    let args =
        [("who", step.signer.as_str().into()), ("when", at.as_str().into()), ("reason", step.note.as_str().into())];
    let state = state.map(|state| terms.phrase(state, &args)).unwrap_or_default();
    // A reason tells no time of its own.
    let rest = if skipped { at.as_str() } else { step.note.as_str() };
    let measured = step.measured.as_ref().map(|measured| measured.text.clone()).unwrap_or_default();
    let differs = if step.differs { terms.phrase("step-differs", &[]) } else { String::new() };
    let said = join_nonempty(&[&state, &measured, rest, &differs]);
    let said = if said.is_empty() { said } else { format!("\n      {said}") };
    format!("  {mark} {}{said}", step.text)
}

/// A moment with its day, as a sheet is read on another one.
fn when(terms: &Terms<'_>, at_ms: i64) -> String {
    let offset = terms.context.utc_offset_minutes;
    format!("{} {}", moment::day(at_ms, offset), moment::clock(at_ms, offset))
}
