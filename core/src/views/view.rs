//! What a screen shows.

use super::backups::BackupsView;
use super::board::BoardView;
use super::differences::DifferencesView;
use super::done_list::DoneListView;
use super::hand_over::HandOverView;
use super::house::HouseView;
use super::jobs::JobsView;
use super::measure::MeasureView;
use super::new::NewView;
use super::order::OrderView;
use super::penetration::PenetrationView;
use super::pole::PoleView;
use super::restore::RestoreView;
use super::rules::RulesView;
use super::saw_list::SawListView;
use super::settings::SettingsView;
use super::take_in::TakeInView;
use super::wall::WallView;

/// What a screen shows.
#[allow(clippy::large_enum_variant, reason = "one is made a tap, and a box has no foreign shape")]
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum View {
    /// Jobs.
    JobsKind {
        /// What it shows.
        view: JobsView,
    },
    /// House.
    HouseKind {
        /// What it shows.
        view: HouseView,
    },
    /// Penetration.
    PenetrationKind {
        /// What it shows.
        view: PenetrationView,
    },
    /// Story pole.
    PoleKind {
        /// What it shows.
        view: PoleView,
    },
    /// Wall.
    WallKind {
        /// What it shows.
        view: WallView,
    },
    /// Board.
    BoardKind {
        /// What it shows.
        view: BoardView,
    },
    /// Measure.
    MeasureKind {
        /// What it shows.
        view: MeasureView,
    },
    /// Rules.
    RulesKind {
        /// What it shows.
        view: RulesView,
    },
    /// Settings.
    SettingsKind {
        /// What it shows.
        view: SettingsView,
    },
    /// Done list.
    DoneListKind {
        /// What it shows.
        view: DoneListView,
    },
    /// New.
    NewKind {
        /// What it shows.
        view: NewView,
    },
    /// Saw list.
    SawListKind {
        /// What it shows.
        view: SawListView,
    },
    /// Order.
    OrderKind {
        /// What it shows.
        view: OrderView,
    },
    /// Backups.
    BackupsKind {
        /// What it shows.
        view: BackupsView,
    },
    /// Restore.
    RestoreKind {
        /// What it shows.
        view: RestoreView,
    },
    /// Hand over.
    HandOverKind {
        /// What it shows.
        view: HandOverView,
    },
    /// Take in.
    TakeInKind {
        /// What it shows.
        view: TakeInView,
    },
    /// Differences.
    DifferencesKind {
        /// What it shows.
        view: DifferencesView,
    },
}
