//! Wall: what is where.

mod changed;
mod elevation;
mod plan;

pub(in crate::screens) use elevation::board_box;

use std::collections::BTreeSet;

use crate::book::{Book, Field, Kind, Operation, OperationKind, Record, fields_of};
use crate::store::Value;
use crate::views::{Code, Place, Problem, View, WallAction, WallView};
use crate::work::{WallSite, Work, WorkError};

use self::changed::Planned;
use super::revision::wall_revision;
use crate::forms::ask::{self, accept, sort_key};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::parts::given;
use crate::screens::result::ActionResult;

pub(super) fn view(book: &Book, terms: &Terms<'_>, wall: &str) -> Result<WallView> {
    let (work, wall) = lookup::wall(book, terms, wall)?;
    let mut view = elevation::view(terms, &work, &wall)?;
    view.notes.sort_by_key(|note| note.level);
    view.revision = wall_revision(terms.phrases, &view);
    Ok(view)
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &WallAction) -> Result<ActionResult> {
    match action {
        WallAction::AddPenetration { wall, answers } => {
            let (work, wall) = lookup::wall(book, terms, wall)?;
            let fields = ask::fields(terms, fields_of(Kind::Penetration), &given(answers))?;
            add(book, terms, (&work, &wall), fields)
        }
        WallAction::AddSameAsLast { wall, from_left, from_base } => {
            let (work, wall) = lookup::wall(book, terms, wall)?;
            let last = work.house().under(wall.id(), Kind::Penetration).last();
            let last = last.ok_or_else(|| WorkError::first(Kind::Penetration, Field::What))?;
            let fields = same(terms, last, [from_left, from_base])?;
            add(book, terms, (&work, &wall), fields)
        }
        WallAction::RemovePenetration { wall, penetration } => remove(book, terms, wall, penetration),
        WallAction::PlanBoards { wall } => {
            let (work, site) = lookup::wall(book, terms, wall)?;
            let before = changed::planned(&work, &site);
            let group = plan::plan(book, terms, &work, &site)?;
            let mut done = ActionResult::at(here(&site), group);
            // The plan is kept: where the wall cannot be shown with what changed, it is shown without, or the houses are.
            done.view = with_changes(book, terms, wall, &before).ok().flatten();
            Ok(done)
        }
    }
}

/// The wall with a note of what planning it again changed; none where nothing did.
fn with_changes(book: &mut Book, terms: &Terms<'_>, wall: &str, before: &BTreeSet<Planned>) -> Result<Option<View>> {
    let (work, site) = lookup::wall(book, terms, wall)?;
    let Some(note) = changed::note(terms, before, &changed::planned(&work, &site)) else { return Ok(None) };
    let mut view = self::view(book, terms, wall)?;
    view.notes.push(note);
    Ok(Some(View::WallKind { view }))
}

fn here(wall: &WallSite) -> Place {
    Place::Wall { wall: wall.id().to_string() }
}

fn add(
    book: &mut Book,
    terms: &Terms<'_>,
    (work, wall): (&Work, &WallSite),
    fields: Vec<(Field, Value)>,
) -> Result<ActionResult> {
    let id = terms.fresh(0);
    let what = fields.iter().find_map(|(field, value)| (*field == Field::What).then(|| value.typed()));
    let name = format!("wall-kind-{}", what.unwrap_or_default());
    let operation = Operation::new(OperationKind::PenetrationAdded, work.id(), [&*name, wall.name()])
        .create(id, Kind::Penetration, Some(wall.id()), sort_key(terms, 0))
        .set_all(id, fields);
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(Place::Penetration { penetration: id.to_string() }, group))
}

/// The fields of a penetration like another one at another place.
fn same(terms: &Terms<'_>, like: &Record, [from_left, from_base]: [&str; 2]) -> Result<Vec<(Field, Value)>> {
    let place = [(Field::FromLeft, from_left), (Field::FromBase, from_base)];
    let mut fields = Vec::new();
    for spec in fields_of(Kind::Penetration) {
        let value = match place.iter().find(|(field, _)| *field == spec.field) {
            Some((_, text)) => ask::value(terms, spec, text)?,
            // What was worked out for the other one's place, and typed by nobody, holds there alone.
            None => match like.written(spec.field).filter(|written| !written.value.typed().is_empty()) {
                Some(written) => written.value.clone(),
                None if spec.optional => continue,
                None => return Err(WorkError::First { field: spec.field.code(), title: spec.title }.into()),
            },
        };
        fields.push((spec.field, value));
    }
    Ok(fields)
}

fn remove(book: &mut Book, terms: &Terms<'_>, wall: &str, penetration: &str) -> Result<ActionResult> {
    let (work, wall) = lookup::wall(book, terms, wall)?;
    let id = terms.id("penetration", penetration)?;
    let penetration = work.house().get(id, Kind::Penetration)?;
    if penetration.parent != Some(wall.id()) {
        return Err(Problem::new(Code::Unknown, "penetration", terms.phrase("screen-unknown", &[])).into());
    }
    let name = format!("wall-kind-{}", penetration.text(Field::What).unwrap_or_default());
    let operation = Operation::new(OperationKind::Removed, work.id(), [&*name]).remove(id);
    let group = accept(book, terms, operation, &[])?.group;
    Ok(ActionResult::at(here(&wall), group))
}
