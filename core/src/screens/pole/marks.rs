//! What the lines of a pole should meet, or stay clear of.

use crate::book::{Field, Kind, Record};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::measure::Length;
use crate::phrases::key;
use crate::rules::keys;
use crate::siding::{Mark, Want};
use crate::store::Id;
use crate::work::Work;

/// A mark with its id, where it is one of the pole's own.
pub(super) struct Wanted {
    pub(super) id: String,
    pub(super) mark: Mark,
}

/// The marks that a wall's lines should meet: its own and the house's.
pub(super) fn marks(terms: &Terms<'_>, work: &Work, wall: Id) -> Result<Vec<Mark>> {
    Ok(wanted(terms, work, Some(wall))?.into_iter().map(|wanted| wanted.mark).collect())
}

/// What the walls, or one of them, ask for (sills and heads to land on, block edges to stay clear of), then the pole's own
/// marks.
pub(super) fn wanted(terms: &Terms<'_>, work: &Work, only: Option<Id>) -> Result<Vec<Wanted>> {
    let mut wanted = Vec::new();
    let clear = Want::Clear(work.rules().get_length(keys::LEG_LEAST)?.half());
    for wall in work.walls().iter().filter(|wall| only.is_none_or(|only| only == wall.id())) {
        let Ok(base) = wall.base() else { continue };
        let mut put = |name: &str, text: &str, at: Length, want: Want| {
            let what = terms.phrase(name, &[]);
            let name = terms.phrase(text, &[("what", what.into()), ("wall", wall.name().into())]);
            wanted.push(Wanted { id: String::new(), mark: Mark { name, at: base + at, want, weight: 1 } });
        };
        for (_, opening) in &wall.openings {
            let name = format!("wall-opening-{}", opening.kind.code());
            if opening.bottom.is_positive() {
                put(&name, key("pole-mark-sill"), opening.bottom, Want::Land);
            }
            put(&name, key("pole-mark-head"), opening.top, Want::Land);
        }
        for penetration in &wall.penetrations {
            let name = format!("wall-kind-{}", penetration.kind.code());
            let (_, y) = penetration.outer();
            put(&name, key("pole-mark-bottom"), y.from, clear);
            put(&name, key("pole-mark-top"), y.to, clear);
        }
    }
    let own = work.pole().map(|pole| work.house().under(pole.id(), Kind::Mark)).unwrap_or_default();
    wanted.extend(own.iter().filter_map(|mark| own_mark(mark)));
    Ok(wanted)
}

fn own_mark(record: &Record) -> Option<Wanted> {
    let (name, at) = (record.text(Field::Name)?.to_owned(), record.length(Field::At)?);
    let want = match record.text(Field::Want) {
        Some("clear") => Want::Clear(record.length(Field::Clear).unwrap_or_default()),
        _ => Want::Land,
    };
    let weight = record.whole(Field::Weight).and_then(|weight| u16::try_from(weight).ok()).unwrap_or(1);
    Some(Wanted { id: record.id().to_string(), mark: Mark { name, at, want, weight } })
}
