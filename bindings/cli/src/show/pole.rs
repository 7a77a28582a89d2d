use lapwright::phrases::key;
use lapwright::screens::PoleView;

use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &PoleView) {
    let title = paper.phrase("screen-pole", &[]);
    paper.title(&title);
    paper.questions(&view.questions);
    paper.notes(&view.notes);
    lines(paper, view);
    marks(paper, view);
    if !view.lines.is_empty() {
        paper.gap();
        let key = match (view.laid_out, view.up_to_date) {
            (true, true) => key("cli-pole-kept"),
            (true, false) => key("cli-pole-differs"),
            (false, _) => key("cli-pole-not-kept"),
        };
        let said = paper.phrase(key, &[]);
        paper.block(&said);
        if view.proved {
            let proved = paper.phrase("cli-pole-proved", &[]);
            paper.block(&proved);
        }
    }
}

/// The stick, its top end first, as it stands against the wall.
pub(crate) fn lines(paper: &mut Paper, view: &PoleView) {
    if view.lines.is_empty() {
        return;
    }
    paper.gap();
    paper.heading(key("cli-pole-lines"));
    let width = view.lines.iter().map(|line| line.height.text.chars().count()).max().unwrap_or(0);
    for line in view.lines.iter().rev() {
        let height = paper.set(Ink::Chalk, &format!("{:>width$}", line.height.text));
        let course = match &line.reveal {
            Some(reveal) => {
                let args = [("course", line.course.into()), ("reveal", reveal.text.as_str().into())];
                paper.phrase("cli-pole-line", &args)
            }
            None => paper.phrase("cli-pole-end", &[]),
        };
        paper.line(&format!("  {height} ┤ {course}"));
    }
}

/// The heights to meet or stay clear of.
pub(crate) fn marks(paper: &mut Paper, view: &PoleView) {
    if view.marks.is_empty() {
        return;
    }
    paper.gap();
    paper.heading(key("cli-pole-marks"));
    for mark in &view.marks {
        let key = if mark.want == "land" { key("cli-mark-land") } else { key("cli-mark-clear") };
        let args = [("name", mark.name.as_str().into()), ("at", mark.at.text.as_str().into())];
        let what = paper.phrase(key, &args);
        let how = match &mark.miss {
            None => "?".to_owned(),
            Some(miss) if miss.nm == 0 => paper.set(Ink::Done, "✓"),
            Some(miss) => {
                let text = paper.phrase("cli-mark-missed", &[("miss", miss.text.as_str().into())]);
                paper.set(Ink::Warning, &format!("▲ {text}"))
            }
        };
        paper.line(&format!("  {what}  {how}"));
    }
}
