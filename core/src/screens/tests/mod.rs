//! The screens, tapped as a person taps them.

mod again;
mod as_built;
mod board;
mod checks;
mod demo;
mod detail;
mod document;
mod done_list;
mod drawing;
mod exchange;
mod house;
mod live_rules;
mod measure;
mod misfits;
mod new;
mod offer;
mod penetration;
mod photo;
mod planning;
mod plausible;
mod pole;
mod rules;
mod saw_list;
mod settings;
mod signing;
mod voice;
mod wall;

use crate::handover::DEMO_HOUSE;
use crate::measure::Length;
use crate::screens::take_in_document;
use crate::views::*;

use super::*;
use crate::forms::{ask, lookup};
use crate::store::Id;

/// A shell's context: noon UTC of a spring day, seven hours behind; `n` gives each action its own entropy and second.
pub(super) fn context(language: &str, n: u8) -> Context {
    Context {
        now_ms: 1_777_896_000_000 + i64::from(n) * 1_000,
        utc_offset_minutes: -420,
        signer: "Ines".to_owned(),
        language: language.to_owned(),
        show: "in/16".to_owned(),
        division: "1/16\"".to_owned(),
        entropy: vec![n; 16],
    }
}

/// Inches and sixty-fourths in nanometres.
pub(super) fn inches(whole: i64, sixty_fourths: i64) -> i64 {
    Length::from_inches_64(whole, sixty_fourths).nm()
}

/// What was tapped on a screen, and what it led to.
pub(super) fn tap(book: &mut Book, n: u8, action: impl Into<Action>) -> Result<Outcome, Problem> {
    act(book, &context("en", n), &action.into())
}

/// Says what hardly can be: it is asked about once, and the same once more is the yes.
pub(super) fn insist(book: &mut Book, n: u8, action: impl Into<Action>) -> Outcome {
    let action = action.into();
    let asked = tap(book, n, action.clone()).unwrap_err();
    assert_eq!(asked.code, "unlikely", "{asked:?}");
    tap(book, n, action).unwrap()
}

/// Gives a house another value of a rule; where that is asked about, the same once more is the yes.
pub(super) fn change_rule(book: &mut Book, n: u8, job: &str, key: &str, value: &str) {
    let (job, key, value) = (job.to_owned(), key.to_owned(), value.to_owned());
    let action = RulesAction::Change { job, key, value, reason: "as we build here".to_owned() };
    if let Err(asked) = tap(book, n, action.clone()) {
        assert_eq!(asked.code, "unlikely", "{asked:?}");
        tap(book, n, action).unwrap();
    }
}

/// What a place shows, as the view of its screen.
pub(super) fn shown<V: OfScreen>(book: &Book, language: &str, place: Place) -> V {
    V::of(view(book, &context(language, 0), &place).unwrap())
}

/// The view of one screen.
pub(super) trait OfScreen {
    fn of(view: View) -> Self;
}

macro_rules! screens {
    ($($kind:ident: $view:ident $(, $action:ident)?;)+) => {
        $(
            impl OfScreen for $view {
                fn of(view: View) -> Self {
                    match view {
                        View::$kind { view } => view,
                        other => panic!("{other:?} is of another screen"),
                    }
                }
            }

            $(
                impl From<$action> for Action {
                    fn from(action: $action) -> Self {
                        Self::$kind { action }
                    }
                }
            )?
        )+
    };
}

screens! {
    JobsKind: JobsView, JobsAction;
    HouseKind: HouseView, HouseAction;
    PenetrationKind: PenetrationView, PenetrationAction;
    PoleKind: PoleView, PoleAction;
    WallKind: WallView, WallAction;
    BoardKind: BoardView, BoardAction;
    MeasureKind: MeasureView, MeasureAction;
    RulesKind: RulesView, RulesAction;
    SettingsKind: SettingsView, SettingsAction;
    DoneListKind: DoneListView, DoneListAction;
    NewKind: NewView, NewAction;
    SawListKind: SawListView, SawListAction;
    OrderKind: OrderView;
    BackupsKind: BackupsView, BackupsAction;
    RestoreKind: RestoreView, RestoreAction;
    HandOverKind: HandOverView, HandOverAction;
    TakeInKind: TakeInView, TakeInAction;
    DifferencesKind: DifferencesView, DifferencesAction;
}

/// A book with one house.
pub(super) fn house() -> (Book, String) {
    let mut book = Book::in_memory().unwrap();
    let outcome = tap(&mut book, 1, JobsAction::Create { name: "Lot 12".to_owned(), like: None }).unwrap();
    let Place::House { job } = outcome.place else { panic!("a new house opens") };
    (book, job)
}

/// A book with the demo house.
pub(super) fn demo_house() -> (Book, String) {
    let mut book = Book::in_memory().unwrap();
    let outcome = take_in_document(&mut book, &context("en", 1), DEMO_HOUSE).unwrap();
    let Place::House { job } = outcome.place else { panic!("a house opens") };
    (book, job)
}

/// A book with the demo house, its pole laid out.
pub(super) fn demo_laid_out() -> (Book, String) {
    let (mut book, job) = demo_house();
    tap(&mut book, 2, PoleAction::LayOut { job: job.clone() }).unwrap();
    (book, job)
}
