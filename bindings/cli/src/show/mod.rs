//! Views as text, one file a screen.

pub(crate) mod board;
pub(crate) mod call;
mod done_list;
mod exchange;
pub(crate) mod house;
mod jobs;
mod measure;
pub(crate) mod order;
pub(crate) mod penetration;
pub(crate) mod pole;
mod rules;
pub(crate) mod saw_list;
mod settings;
pub(crate) mod wall;

use lapwright::views::View;

use crate::paper::Paper;

/// Writes a view on paper.
pub(crate) fn view(paper: &mut Paper, view: &View) {
    match view {
        View::JobsKind { view } => jobs::show(paper, view),
        View::SettingsKind { view } => settings::show(paper, view),
        View::DoneListKind { view } => done_list::show(paper, view),
        View::RulesKind { view } => rules::show(paper, view),
        View::HouseKind { view } => house::show(paper, view),
        View::PenetrationKind { view } => penetration::show(paper, view),
        View::PoleKind { view } => pole::show(paper, view),
        View::BoardKind { view } => board::show(paper, view),
        View::MeasureKind { view } => measure::show(paper, view),
        View::WallKind { view } => wall::show(paper, view),
        View::NewKind { view } => {
            paper.title(&view.title);
            paper.questions(&view.questions);
        }
        View::SawListKind { view } => saw_list::show(paper, view),
        View::OrderKind { view } => order::show(paper, view),
        View::BackupsKind { .. }
        | View::RestoreKind { .. }
        | View::HandOverKind { .. }
        | View::TakeInKind { .. }
        | View::DifferencesKind { .. } => exchange::show(paper, view),
    }
}
