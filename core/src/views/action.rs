//! What was tapped, and what it led to.

use super::backups::BackupsAction;
use super::board::BoardAction;
use super::differences::DifferencesAction;
use super::done_list::DoneListAction;
use super::hand_over::HandOverAction;
use super::house::HouseAction;
use super::jobs::JobsAction;
use super::measure::MeasureAction;
use super::new::NewAction;
use super::penetration::PenetrationAction;
use super::place::Place;
use super::pole::PoleAction;
use super::restore::RestoreAction;
use super::rules::RulesAction;
use super::saw_list::SawListAction;
use super::settings::SettingsAction;
use super::take_in::TakeInAction;
use super::view::View;
use super::wall::WallAction;

/// What was tapped.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Action {
    /// On Jobs.
    JobsKind {
        /// What was tapped there.
        action: JobsAction,
    },
    /// On House.
    HouseKind {
        /// What was tapped there.
        action: HouseAction,
    },
    /// On Penetration.
    PenetrationKind {
        /// What was tapped there.
        action: PenetrationAction,
    },
    /// On Story pole.
    PoleKind {
        /// What was tapped there.
        action: PoleAction,
    },
    /// On Wall.
    WallKind {
        /// What was tapped there.
        action: WallAction,
    },
    /// On Board.
    BoardKind {
        /// What was tapped there.
        action: BoardAction,
    },
    /// On Measure.
    MeasureKind {
        /// What was tapped there.
        action: MeasureAction,
    },
    /// On Rules.
    RulesKind {
        /// What was tapped there.
        action: RulesAction,
    },
    /// On Settings.
    SettingsKind {
        /// What was tapped there.
        action: SettingsAction,
    },
    /// On Done list.
    DoneListKind {
        /// What was tapped there.
        action: DoneListAction,
    },
    /// On New.
    NewKind {
        /// What was tapped there.
        action: NewAction,
    },
    /// On Saw list.
    SawListKind {
        /// What was tapped there.
        action: SawListAction,
    },
    /// On Backups.
    BackupsKind {
        /// What was tapped there.
        action: BackupsAction,
    },
    /// On Restore.
    RestoreKind {
        /// What was tapped there.
        action: RestoreAction,
    },
    /// On Hand over.
    HandOverKind {
        /// What was tapped there.
        action: HandOverAction,
    },
    /// On Take in.
    TakeInKind {
        /// What was tapped there.
        action: TakeInAction,
    },
    /// On Differences.
    DifferencesKind {
        /// What was tapped there.
        action: DifferencesAction,
    },
}

impl Action {
    /// Whether it keeps what is typed so far, and answers nothing.
    pub const fn keeps_a_key(&self) -> bool {
        match self {
            Self::HouseKind { action } => matches!(action, HouseAction::KeepDraft { .. }),
            Self::PenetrationKind { action } => matches!(action, PenetrationAction::KeepDraft { .. }),
            Self::PoleKind { action } => matches!(action, PoleAction::KeepDraft { .. }),
            Self::BoardKind { action } => matches!(action, BoardAction::KeepDraft { .. }),
            Self::MeasureKind { action } => matches!(action, MeasureAction::KeepDraft { .. }),
            Self::RulesKind { action } => matches!(action, RulesAction::KeepDraft { .. }),
            Self::SettingsKind { action } => matches!(action, SettingsAction::KeepDraft { .. }),
            Self::NewKind { action } => matches!(action, NewAction::KeepDraft { .. }),
            Self::SawListKind { action } => matches!(action, SawListAction::KeepDraft { .. }),
            Self::JobsKind { .. } | Self::WallKind { .. } | Self::DoneListKind { .. } => false,
            Self::BackupsKind { .. }
            | Self::RestoreKind { .. }
            | Self::HandOverKind { .. }
            | Self::TakeInKind { .. }
            | Self::DifferencesKind { .. } => false,
        }
    }

    /// Whether it is about the book as a file: each of these is one whole by itself, and a restore closes the book.
    pub(crate) const fn is_about_the_file(&self) -> bool {
        matches!(
            self,
            Self::BackupsKind { .. } | Self::RestoreKind { .. } | Self::HandOverKind { .. } | Self::TakeInKind { .. }
        )
    }
}

/// What an action led to: the screen to show and its whole view.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Outcome {
    /// The screen to show now.
    pub place: Place,
    /// What it shows.
    pub view: View,
    /// The accepted answer, to undo it by; empty where nothing was accepted (a draft, a setting).
    pub group: String,
    /// What was done, as the done list has it; empty where nothing was accepted.
    #[cfg_attr(feature = "uniffi", uniffi(default = ""))]
    pub said: String,
}
