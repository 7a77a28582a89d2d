//! Views and actions of every screen as plain data.
//!
//! A screen is a file here: `view` makes what is shown, `act` turns a tap into one answer of the book. Nothing below is
//! drawn here, and no shell computes a length, formats a number, picks a warning or knows a rule.
//!
//! `kinds` names the things of the book and their questions, `ask` reads and writes answers, `kept` makes the trade's
//! own types from what the book holds, `parts` are pieces that several views share.

mod ask;
mod board;
mod cautions;
mod context;
mod copied;
pub(crate) mod document;
mod done_list;
mod drawing;
mod frame;
mod house;
mod jobs;
mod kept;
mod kept_phrase;
mod kinds;
mod measure;
mod moment;
mod new;
mod order;
mod parts;
mod penetration;
mod photo;
mod planning;
mod pole;
mod problem;
mod rules;
mod saw_list;
mod settings;
mod signing;
mod step_asks;
mod trouble;
mod voice;
mod wall;

use crate::store::{Id, Store};

use context::Terms;
use trouble::{Kept, Trouble};

pub use board::{BoardAction, BoardView, LevelView, MarksView, NotchView};
pub use context::Context;
pub use copied::copy;
pub use done_list::{DoneLine, DoneListAction, DoneListView, ReopenedAnswer};
pub use drawing::{Drawing, Frame, Subject, Target, drawing};
pub use frame::{FrameView, TapeMark, Words};
pub use house::{BlockSizeLine, HouseAction, HouseView, NextWork, OpenToWeather, StockLine, WallProgress, WeatherKind};
pub use jobs::{JobLine, JobsAction, JobsView};
pub use measure::{MeasureAction, MeasureView, PartView};
pub use new::{NewAction, NewThing, NewView};
pub(crate) use order::{ORDER_EFFORT, amounts_of_document};
pub use order::{OrderLine, OrderView};
pub use parts::{
    AnswerKind, Choice, Given, Note, PhotoPlace, Question, Reading, Size, Source, StepLine, StepPhoto, StepState,
};
pub use penetration::{BlockAdvice, LayerLine, PenetrationAction, PenetrationView, Shedding};
pub use planning::{HousePlanner, PlanProgress};
pub use pole::{AsBuiltLine, ChangedLine, MarkLine, PoleAction, PoleLine, PoleView, PoleWall};
pub use problem::Problem;
pub use rules::{RuleChanged, RuleLine, RulesAction, RulesView};
pub use saw_list::{OffcutLine, SawBoardLine, SawListAction, SawListView, SawPieceLine, StockNeed};
pub use settings::{Remembered, SettingsAction, SettingsView, SignerLine, remember_place, remembered};
pub use signing::{StepHow, StepSaid};
pub use voice::heard;
pub use wall::{BoardLine, Corner, OpeningLine, PenetrationLine, Rectangle, WallAction, WallView};

/// A screen and what it is about: ids as text.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// Which house.
    Jobs,
    /// How far a house is and what is next.
    House {
        /// The house.
        job: String,
    },
    /// What is where on a wall.
    Wall {
        /// The wall.
        wall: String,
    },
    /// Setting up a wall, question by question.
    Measure {
        /// The wall.
        wall: String,
    },
    /// The board in hand.
    Board {
        /// The board.
        board: String,
    },
    /// A penetration, made weathertight.
    Penetration {
        /// The penetration.
        penetration: String,
    },
    /// Where the lines go.
    Pole {
        /// The house.
        job: String,
    },
    /// Which numbers apply.
    Rules {
        /// The house.
        job: String,
    },
    /// Who holds this phone, and how it speaks.
    Settings,
    /// What happened.
    DoneList {
        /// The house; absent for the whole book.
        job: Option<String>,
    },
    /// A new thing in the making.
    New {
        /// What is being made.
        what: NewThing,
        /// The house, wall or board that it belongs to; empty where it belongs to none.
        parent: String,
    },
    /// What to cut from what.
    SawList {
        /// The house.
        job: String,
    },
    /// What to buy.
    Order {
        /// The house.
        job: String,
    },
}

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
}

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
}

/// What an action of a screen did.
struct Done {
    place: Place,
    group: Option<Id>,
    /// What to show there, where it says more than the place alone does.
    view: Option<View>,
}

impl Done {
    /// An accepted answer, and where to go.
    const fn at(place: Place, group: Id) -> Self {
        Self { place, group: Some(group), view: None }
    }

    /// Nothing of the book changed: a draft, a setting, a look.
    const fn without_answer(place: Place) -> Self {
        Self { place, group: None, view: None }
    }
}

/// What a screen shows.
///
/// # Errors
/// [`Problem`] where the place names nothing that is in the book, or something else must be answered first.
pub fn view(store: &Store, context: &Context, place: &Place) -> Result<View, Problem> {
    spoken(context, |terms| show(store, terms, place))
}

/// What stands round every screen: the same until the context's language or unit changes.
///
/// # Errors
/// [`Problem`] where the context is not among its choices.
pub fn frame(context: &Context) -> Result<FrameView, Problem> {
    spoken(context, frame::view)
}

/// Carries out what was tapped at a place: one accepted answer, and the view to show then.
///
/// # Errors
/// [`Problem`]; nothing was changed.
pub fn act(store: &mut Store, context: &Context, action: &Action) -> Result<Outcome, Problem> {
    spoken(context, |terms| {
        let done = match action {
            Action::JobsKind { action } => jobs::act(store, terms, action)?,
            Action::HouseKind { action } => house::act(store, terms, action)?,
            Action::PenetrationKind { action } => penetration::act(store, terms, action)?,
            Action::PoleKind { action } => pole::act(store, terms, action)?,
            Action::WallKind { action } => wall::act(store, terms, action)?,
            Action::BoardKind { action } => board::act(store, terms, action)?,
            Action::MeasureKind { action } => measure::act(store, terms, action)?,
            Action::RulesKind { action } => rules::act(store, terms, action)?,
            Action::SettingsKind { action } => settings::act(store, terms, action)?,
            Action::DoneListKind { action } => done_list::act(store, terms, action)?,
            Action::NewKind { action } => new::act(store, terms, action)?,
            Action::SawListKind { action } => saw_list::act(store, terms, action)?,
        };
        let (place, view) = match done.view {
            Some(view) => (done.place, view),
            None => match show(store, terms, &done.place) {
                Ok(view) => (done.place, view),
                // The answer is kept: an error now would say that nothing was changed.
                Err(_) if done.group.is_some() => (Place::Jobs, show(store, terms, &Place::Jobs)?),
                Err(trouble) => return Err(trouble),
            },
        };
        let group = done.group.map(|group| group.to_string()).unwrap_or_default();
        Ok(Outcome { place, view, group })
    })
}

fn show(store: &Store, terms: &Terms<'_>, place: &Place) -> Kept<View> {
    Ok(match place {
        Place::Jobs => View::JobsKind { view: jobs::view(store, terms)? },
        Place::House { job } => View::HouseKind { view: house::view(store, terms, job)? },
        Place::Penetration { penetration } => {
            View::PenetrationKind { view: penetration::view(store, terms, penetration)? }
        }
        Place::Pole { job } => View::PoleKind { view: pole::view(store, terms, job)? },
        Place::Wall { wall } => View::WallKind { view: wall::view(store, terms, wall)? },
        Place::Board { board } => View::BoardKind { view: board::view(store, terms, board)? },
        Place::Measure { wall } => View::MeasureKind { view: measure::view(store, terms, wall)? },
        Place::Rules { job } => View::RulesKind { view: rules::view(store, terms, job)? },
        Place::Settings => View::SettingsKind { view: settings::view(store, terms)? },
        Place::DoneList { job } => View::DoneListKind { view: done_list::view(store, terms, job.as_deref())? },
        Place::New { what, parent } => View::NewKind { view: new::view(store, terms, *what, parent)? },
        Place::SawList { job } => View::SawListKind { view: saw_list::view(store, terms, job)? },
        Place::Order { job } => View::OrderKind { view: order::view(store, terms, job)? },
    })
}

/// Reads the context and puts trouble into its language.
fn spoken<T>(context: &Context, work: impl FnOnce(&Terms<'_>) -> Kept<T>) -> Result<T, Problem> {
    let terms = Terms::read(context)?;
    work(&terms).map_err(|trouble: Trouble| trouble.into_problem(terms.phrases))
}

#[cfg(test)]
mod tests;
