//! Views as text, one file a screen.

mod done_list;
mod jobs;
mod settings;

use lapwright::screens::View;

use crate::paper::Paper;

/// Writes a view on paper.
pub(crate) fn view(paper: &mut Paper, view: &View) {
    match view {
        View::JobsKind { view } => jobs::show(paper, view),
        View::SettingsKind { view } => settings::show(paper, view),
        View::DoneListKind { view } => done_list::show(paper, view),
    }
}
