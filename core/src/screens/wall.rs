//! Wall: what is where.

mod changed;
mod elevation;
mod follow;
pub(in crate::screens) mod plan;

use crate::store::{Change, Store};
use crate::views::{Code, Given, Place, Problem, View, WallAction, WallView};

use super::ask::{self, accept, op, sort_key};
use super::context::Terms;
use super::drawing::wall_revision;
use super::kept::{Facts, Wall};
use super::parts::given;
use super::trouble::Kept;
use super::{Done, kinds};

pub(super) use follow::{follow, planned};

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
                done.view = Some(View::WallKind { view });
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
