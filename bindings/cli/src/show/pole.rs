use lapwright::phrases::key;
use lapwright::views::PoleView;

use super::call;
use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &PoleView) {
    let title = paper.phrase("screen-pole", &[]);
    paper.title(&title);
    paper.questions(&view.questions);
    paper.notes(&view.notes);
    lines(paper, view);
    marks(paper, view);
    as_built(paper, view);
    if let Some(question) = &view.asked {
        paper.gap();
        let next = paper.phrase("cli-next-answer", &[("question", question.title.as_str().into())]);
        let next = paper.set(Ink::Chalk, &format!("→ {next}"));
        paper.line(&format!("  {next}"));
        paper.call(Some(&call::of_pole(paper, &view.job, question)));
    }
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

/// The courses as they hang, each with the lines that are not where the pole has them.
fn as_built(paper: &mut Paper, view: &PoleView) {
    for entry in &view.as_built {
        paper.gap();
        let args = [
            ("wall", entry.wall_name.as_str().into()),
            ("course", entry.course.into()),
            ("left", entry.left.text.as_str().into()),
            ("middle", entry.middle.text.as_str().into()),
            ("right", entry.right.text.as_str().into()),
        ];
        let text = paper.phrase("cli-pole-as-built", &args);
        paper.line(&text);
        paper.notes(&entry.notes);
        for line in entry.changed.iter().rev() {
            let args = [
                ("course", line.course.into()),
                ("planned", line.planned.as_ref().map_or("–", |planned| planned.text.as_str()).into()),
                ("left", line.left.text.as_str().into()),
                ("middle", line.middle.text.as_str().into()),
                ("right", line.right.text.as_str().into()),
            ];
            let text = paper.phrase("cli-pole-changed", &args);
            paper.line(&format!("  {text}"));
        }
    }
}
