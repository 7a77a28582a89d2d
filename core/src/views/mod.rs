//! What a screen shows and what is tapped, as plain records: the only types that cross to a shell.
//!
//! One file a screen. Nothing here reads the book or computes; `screens` makes the views and carries out the actions, and
//! `drawing` draws from what a view holds.

mod action;
mod backups;
mod board;
mod context;
mod differences;
mod done_list;
mod drawing;
mod frame;
mod hand_over;
mod house;
mod jobs;
mod measure;
mod new;
mod order;
mod parts;
mod penetration;
mod place;
mod planning;
mod pole;
mod problem;
mod restore;
mod retyped;
mod rules;
mod saw_list;
mod settings;
mod shape;
mod steps;
mod take_in;
mod view;
mod wall;

pub use action::{Action, Outcome};
pub use backups::{BackupsAction, BackupsView, CopyLine};
pub use board::{BoardAction, BoardView, CheckLine, InstructionLine, LevelView, MarksView, NotchView};
pub use context::Context;
pub use differences::{DifferenceLine, DifferencesAction, DifferencesView};
pub use done_list::{DoneLine, DoneListAction, DoneListView, ReopenedAnswer};
pub use drawing::{Drawing, Frame, Subject, Target};
pub use frame::{FrameView, TapeMark, Words};
pub use hand_over::{HandOverAction, HandOverView};
pub use house::{BlockSizeLine, HouseAction, HouseView, NextWork, OpenToWeather, StockLine, WallProgress, WeatherKind};
pub use jobs::{JobLine, JobsAction, JobsView};
pub use measure::{MeasureAction, MeasureView, PartView};
pub use new::{NewAction, NewThing, NewView};
pub use order::{OrderLine, OrderView};
pub use parts::{AnswerKind, Choice, Given, Note, NoteLevel, Offer, Question, Reading, Size, Source};
pub use penetration::{BlockAdvice, LayerLine, PenetrationAction, PenetrationView, Shedding};
pub use place::Place;
pub use planning::PlanProgress;
pub use pole::{AsBuiltLine, ChangedLine, MarkLine, PoleAction, PoleLine, PoleView, PoleWall};
pub(crate) use problem::Code;
pub use problem::Problem;
pub use restore::{RestoreAction, RestoreView};
pub(crate) use retyped::{TYPE_ANEW, retyped};
pub use rules::{RuleChanged, RuleLine, RulesAction, RulesView};
pub use saw_list::{OffcutLine, SawBoardLine, SawListAction, SawListView, SawPieceLine, StockNeed};
pub use settings::{Remembered, SettingsAction, SettingsView, SignerLine};
pub use shape::{RipView, ShapeCutView, ShapeView};
pub use steps::{PhotoPlace, StepHow, StepLine, StepPhoto, StepSaid, StepState};
pub use take_in::{SenderLine, TakeInAction, TakeInView};
pub use view::View;
pub use wall::{BoardLine, Corner, DetailLine, OpeningLine, PenetrationLine, Rectangle, WallAction, WallView};
