use lapwright::phrases::key;
use lapwright::views::JobsView;

use crate::paper::{Ink, Paper};

pub(super) fn show(paper: &mut Paper, view: &JobsView) {
    let title = paper.phrase("screen-jobs", &[]);
    paper.title(&title);
    if view.jobs.is_empty() {
        for way in [key("cli-first-notch"), key("cli-no-jobs")] {
            let way = paper.phrase(way, &[]);
            paper.block(&way);
        }
    }
    for told in [&view.copy_failed, &view.differences].into_iter().filter(|told| !told.is_empty()) {
        paper.block(told);
    }
    for job in &view.jobs {
        let id = paper.set(Ink::Faint, &short(&job.job));
        let walls = paper.phrase("cli-walls", &[("count", job.walls.into())]);
        let archived = if job.archived { paper.phrase("cli-archived", &[]) } else { String::new() };
        paper.line(format!("  {id}  {}  {walls} {archived}", job.name).trim_end());
    }
}

/// The beginning of an id, enough to name it by.
pub(crate) fn short(id: &str) -> String {
    id.chars().take(8).collect()
}
