//! The logic of every screen: what is shown, and what a tap leads to. The records of both are in `views`.
//!
//! A screen is a file here: `view` makes what is shown, `act` turns a tap into one answer of the book. Nothing below is
//! drawn here, and no shell computes a length, formats a number, picks a warning or knows a rule.
//!
//! What is asked, and how an answer is read and written, is in `forms`.

mod board;
mod documents;
mod done_list;
mod drawing;
mod frame;
mod house;
mod jobs;
mod measure;
mod new;
mod order;
mod penetration;
mod planning;
mod pole;
mod result;
mod revision;
mod rules;
mod saw_list;
mod settings;
mod sheet;
mod voice;
mod wall;

use crate::book::Book;
use crate::exchange::{backups, differences, hand_over, restore, take_in};
use crate::store::Id;
use crate::views::{
    Action, Context, DifferencesAction, FrameView, Outcome, Place, Problem, TakeInAction, View, retyped,
};

use crate::forms::context::{Terms, in_language};
use crate::forms::error::Result;
use crate::screens::result::ActionResult;

pub use crate::exchange::copied::{copy, keep_copy};
pub use documents::take_in_document;
pub use drawing::drawing;
pub(crate) use order::{ORDER_EFFORT, amounts_of_document};
pub use planning::HousePlanner;
pub use settings::{remember_place, remembered, speak_first};
pub use sheet::sign_off_sheet;
pub use voice::heard;

/// What a screen shows.
///
/// # Errors
/// [`Problem`] where the place names nothing that is in the book, or something else must be answered first.
pub fn view(book: &Book, context: &Context, place: &Place) -> Result<View, Problem> {
    in_language(context, |terms| {
        book.refresh()?;
        show(book, terms, place)
    })
}

/// What stands round every screen: the same until the context's language or unit changes.
///
/// # Errors
/// [`Problem`] where the context is not among its choices.
pub fn frame(context: &Context) -> Result<FrameView, Problem> {
    in_language(context, frame::view)
}

/// Carries out what was tapped at a place: one accepted answer, and the view to show then.
///
/// # Errors
/// [`Problem`]; nothing was changed.
pub fn act(book: &mut Book, context: &Context, action: &Action) -> Result<Outcome, Problem> {
    in_language(context, |terms| {
        book.refresh()?;
        let retyped = retyped(action);
        let action = retyped.as_ref().unwrap_or(action);
        // A key is one write, and there are many of them.
        let done = match action.keeps_a_key() || action.is_about_the_file() {
            true => carry_out(book, terms, action)?,
            false => book.together(|book| carry_out(book, terms, action))?,
        };
        match (done.view, done.group) {
            (Some(view), group) => {
                let said = group.map_or_else(String::new, |group| done_list::said(book, terms, group));
                let group = group.map(|group| group.to_string()).unwrap_or_default();
                Ok(Outcome { place: done.place, view, group, said })
            }
            (None, Some(group)) => accepted(book, terms, done.place, group),
            (None, None) => {
                let view = show(book, terms, &done.place)?;
                Ok(Outcome { place: done.place, view, group: String::new(), said: String::new() })
            }
        }
    })
}

fn carry_out(book: &mut Book, terms: &Terms<'_>, action: &Action) -> Result<ActionResult> {
    match action {
        Action::JobsKind { action } => jobs::act(book, terms, action),
        Action::HouseKind { action } => house::act(book, terms, action),
        Action::PenetrationKind { action } => penetration::act(book, terms, action),
        Action::PoleKind { action } => pole::act(book, terms, action),
        Action::WallKind { action } => wall::act(book, terms, action),
        Action::BoardKind { action } => board::act(book, terms, action),
        Action::MeasureKind { action } => measure::act(book, terms, action),
        Action::RulesKind { action } => rules::act(book, terms, action),
        Action::SettingsKind { action } => settings::act(book, terms, action),
        Action::DoneListKind { action } => done_list::act(book, terms, action),
        Action::NewKind { action } => new::act(book, terms, action),
        Action::SawListKind { action } => saw_list::act(book, terms, action),
        Action::BackupsKind { action } => {
            let view = backups::act(book, terms, action)?;
            Ok(ActionResult::showing(Place::Backups, Some(View::BackupsKind { view })))
        }
        Action::RestoreKind { action } => {
            let view = restore::act(book, terms, action)?;
            Ok(ActionResult::showing(Place::Backups, view.map(|view| View::BackupsKind { view })))
        }
        Action::HandOverKind { action } => {
            let view = hand_over::act(book, terms, action)?;
            Ok(ActionResult::showing(Place::HandOver { job: view.job.clone() }, Some(View::HandOverKind { view })))
        }
        Action::TakeInKind { action: TakeInAction::Trust { file, device } } => {
            take_in::trust(book, terms, device)?;
            Ok(ActionResult::without_answer(Place::TakeIn { file: file.clone() }))
        }
        Action::TakeInKind { action: TakeInAction::TakeIn { file, even_ahead } } => {
            let view = take_in::take_in(book, terms, file, *even_ahead)?;
            Ok(ActionResult::showing(Place::Differences, view.map(|view| View::DifferencesKind { view })))
        }
        Action::DifferencesKind { action: DifferencesAction::LookedAt { differences: these } } => {
            differences::look_at(book, terms, these)?;
            Ok(ActionResult::without_answer(Place::Jobs))
        }
    }
}

/// What to show once an answer is kept: an error would say that nothing was changed, so where its own place cannot be shown
/// the houses are.
fn accepted(book: &mut Book, terms: &Terms<'_>, place: Place, group: Id) -> Result<Outcome> {
    let (place, view) = match show(book, terms, &place) {
        Ok(view) => (place, view),
        Err(_) => (Place::Jobs, show(book, terms, &Place::Jobs)?),
    };
    Ok(Outcome { place, view, group: group.to_string(), said: done_list::said(book, terms, group) })
}

pub(crate) fn show(book: &Book, terms: &Terms<'_>, place: &Place) -> Result<View> {
    Ok(match place {
        Place::Jobs => View::JobsKind { view: jobs::view(book, terms)? },
        Place::House { job } => View::HouseKind { view: house::view(book, terms, job)? },
        Place::Penetration { penetration } => {
            View::PenetrationKind { view: penetration::view(book, terms, penetration)? }
        }
        Place::Pole { job } => View::PoleKind { view: pole::view(book, terms, job)? },
        Place::Wall { wall } => View::WallKind { view: wall::view(book, terms, wall)? },
        Place::Board { board } => View::BoardKind { view: board::view(book, terms, board)? },
        Place::Measure { wall } => View::MeasureKind { view: measure::view(book, terms, wall)? },
        Place::Rules { job } => View::RulesKind { view: rules::view(book, terms, job)? },
        Place::Settings => View::SettingsKind { view: settings::view(book, terms)? },
        Place::DoneList { job } => View::DoneListKind { view: done_list::view(book, terms, job.as_deref())? },
        Place::New { what, parent } => View::NewKind { view: new::view(book, terms, *what, parent)? },
        Place::SawList { job } => View::SawListKind { view: saw_list::view(book, terms, job)? },
        Place::Order { job } => View::OrderKind { view: order::view(book, terms, job)? },
        Place::Backups => View::BackupsKind { view: backups::view(book, terms, Vec::new())? },
        Place::Restore { copy } => View::RestoreKind { view: restore::view(book, terms, copy)? },
        Place::HandOver { job } => {
            View::HandOverKind { view: hand_over::view(book, terms, job.as_deref(), Vec::new())? }
        }
        Place::TakeIn { file } => View::TakeInKind { view: take_in::view(book, terms, file)? },
        Place::Differences => View::DifferencesKind { view: differences::view(book, terms, Vec::new())? },
    })
}

#[cfg(test)]
mod tests;
