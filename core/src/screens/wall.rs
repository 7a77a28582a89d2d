//! Wall: what is where.

mod changed;
mod elevation;
mod follow;
pub(in crate::screens) mod plan;

use crate::store::{Change, Store};

use super::ask::{self, accept, op, sort_key};
use super::context::Terms;
use super::drawing::wall_revision;
use super::kept::{Facts, Wall};
use super::parts::{Given, Note, Reading, given};
use super::problem::{Code, Problem};
use super::trouble::Kept;
use super::{Done, Place, kinds};

pub use elevation::{Corner, Rectangle};
pub(super) use follow::{follow, planned};

/// A wall to scale and what sits in it.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WallView {
    /// The wall.
    pub wall: String,
    /// The house.
    pub job: String,
    /// What the crew calls it.
    pub name: String,
    /// Its width.
    pub width: Reading,
    /// Its outline, counter-clockwise, in nanometres from the left corner and the base line.
    pub outline: Vec<Corner>,
    /// The bottom edges of its courses, in nanometres above the base line; empty without a pole.
    pub courses: Vec<i64>,
    /// The centres of its studs, in nanometres from the left corner.
    pub studs: Vec<i64>,
    /// Its windows and doors.
    pub openings: Vec<OpeningLine>,
    /// What goes through it.
    pub penetrations: Vec<PenetrationLine>,
    /// Its boards, from the lowest course up and from left to right.
    pub boards: Vec<BoardLine>,
    /// What needs attention.
    pub notes: Vec<Note>,
    /// Changes when the drawing does.
    #[cfg_attr(feature = "uniffi", uniffi(default = 0))]
    pub revision: i64,
}

/// A window or a door.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct OpeningLine {
    /// Its id.
    pub opening: String,
    /// What it is, in words.
    pub name: String,
    /// Where it lies, with its trim: from its leftmost to its rightmost point.
    pub at: Rectangle,
    /// Its corners: the ends of its head, left and right, then those of its sill, right and left; its sides may lean.
    #[cfg_attr(feature = "uniffi", uniffi(default = []))]
    pub corners: Vec<Corner>,
}

/// What goes through a wall.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PenetrationLine {
    /// Its id.
    pub penetration: String,
    /// What it is, in words.
    pub name: String,
    /// What the boards are cut round: its block, or itself.
    pub at: Rectangle,
}

/// A board of the wall.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BoardLine {
    /// Its id.
    pub board: String,
    /// Its course, counted on the pole from one.
    pub course: i64,
    /// How long it is cut.
    pub length: Reading,
    /// Where it lies.
    pub at: Rectangle,
    /// `planned`, `cut` or `fixed`.
    pub state: String,
    /// Whether it is cut round a block, a window or a door.
    pub notched: bool,
    /// Course, state and notch in words.
    pub said: String,
}

/// What can be done with a wall.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum WallAction {
    /// A new penetration: kind, size and two offsets are enough.
    AddPenetration {
        /// The wall.
        wall: String,
        /// The answers to its questions.
        answers: Vec<Given>,
    },
    /// A penetration like the last one, at another place.
    AddSameAsLast {
        /// The wall.
        wall: String,
        /// Its center from the left corner, as typed.
        from_left: String,
        /// Its center above the base line, as typed.
        from_base: String,
    },
    /// A penetration is no longer there.
    RemovePenetration {
        /// The wall.
        wall: String,
        /// The penetration.
        penetration: String,
    },
    /// Plan the boards from the pole; what is cut or fixed stays.
    PlanBoards {
        /// The wall.
        wall: String,
    },
}

pub(super) fn view(store: &Store, terms: &Terms<'_>, wall: &str) -> Kept<WallView> {
    let mut view = elevation::view(store, terms, &Wall::of(store, terms, terms.id("wall", wall)?)?)?;
    view.revision = wall_revision(terms.phrases, &view);
    Ok(view)
}

pub(super) fn act(store: &mut Store, terms: &Terms<'_>, action: &WallAction) -> Kept<Done> {
    let of = |store: &Store, wall: &str| Wall::of(store, terms, terms.id("wall", wall)?);
    let here = |wall: &Wall| Place::Wall { wall: wall.id().to_string() };
    match action {
        WallAction::AddPenetration { wall, answers } => {
            let wall = of(store, wall)?;
            add(store, terms, &wall, answers, None)
        }
        WallAction::AddSameAsLast { wall, from_left, from_base } => {
            let wall = of(store, wall)?;
            let last = Facts::children(store, wall.id(), kinds::PENETRATION)?.into_iter().next_back();
            let last = last.ok_or_else(|| super::kept::first(terms, "what", "ask-penetration-what"))?;
            let put = |field: &str, text: &str| Given { field: field.to_owned(), text: text.to_owned() };
            let mut answers = vec![put("from-left", from_left), put("from-base", from_base)];
            let place = ["from-left", "from-base"];
            for (field, kept) in last.iter().filter(|(field, _)| !place.contains(field)) {
                answers.push(put(field, &kept.value.typed()));
            }
            add(store, terms, &wall, &answers, Some(&last))
        }
        WallAction::RemovePenetration { wall, penetration } => {
            let wall = of(store, wall)?;
            let facts = Facts::of(store, terms, terms.id("penetration", penetration)?, kinds::PENETRATION)?;
            if facts.subject.parent != Some(wall.id()) {
                return Err(Problem::new(Code::Unknown, "penetration", terms.phrase("screen-unknown", &[])).into());
            }
            let name = format!("wall-kind-{}", facts.text("what").unwrap_or_default());
            let answer = op("removed", Some(wall.job), [&name]).with(Change::Remove { subject: facts.id() });
            let group = accept(store, terms, answer, &[])?.group;
            Ok(Done::at(here(&wall), group))
        }
        WallAction::PlanBoards { wall } => {
            let wall = of(store, wall)?;
            let before = changed::planned(store, &wall)?;
            let group = plan::plan(store, terms, &wall)?;
            let mut done = Done::at(here(&wall), group);
            if let Some(note) = changed::note(terms, &before, &changed::planned(store, &wall)?) {
                let mut view = self::view(store, terms, &wall.id().to_string())?;
                view.notes.push(note);
                done.view = Some(super::View::WallKind { view });
            }
            Ok(done)
        }
    }
}

fn add(store: &mut Store, terms: &Terms<'_>, wall: &Wall, answers: &[Given], like: Option<&Facts>) -> Kept<Done> {
    let mut fields = ask::fields(terms, kinds::PENETRATION, &given(answers))?;
    // What is taken over from another one keeps the unit it was typed in.
    for (field, value) in &mut fields {
        if let Some(kept) = like.and_then(|like| like.field(field)).filter(|kept| kept.value.typed() == value.typed()) {
            value.clone_from(&kept.value);
        }
    }
    let id = terms.fresh(0);
    let what = answers.iter().find(|given| given.field == "what").map_or("", |given| given.text.trim());
    let mut answer = op("penetration-added", Some(wall.job), [&format!("wall-kind-{what}"), wall.name()]);
    answer = answer.create(id, kinds::PENETRATION, Some(wall.id()), sort_key(terms, 0));
    for (field, value) in fields {
        answer = answer.set(id, field, value);
    }
    let group = accept(store, terms, answer, &[])?.group;
    Ok(Done::at(Place::Penetration { penetration: id.to_string() }, group))
}
