//! What a screen works on: the house of a thing, and what follows from it.

use std::sync::Arc;

use crate::book::{Book, Kind, Missing};
use crate::store::Id;
use crate::work::{Penetration, WallSite, Work};

use super::context::Terms;
use super::error::{FormError, Result};

/// What follows from a house; `None` for what belongs to no house. It is derived once, and again where the house changed.
pub(crate) fn work(book: &Book, job: Option<Id>) -> Result<Arc<Work>> {
    let house = book.house(job)?;
    Ok(book.derived(&house, |before| Work::of(&house, before)))
}

/// What follows from a house that a shell named.
pub(crate) fn house(book: &Book, terms: &Terms<'_>, job: &str) -> Result<Arc<Work>> {
    let work = work(book, Some(terms.id("job", job)?))?;
    work.job()?;
    Ok(work)
}

/// What follows from the house of a thing of a kind, and the thing's id.
pub(crate) fn of(book: &Book, id: Id, kind: Kind) -> Result<Arc<Work>> {
    let house = book.house_of(id)?.ok_or_else(|| FormError::unknown(kind))?;
    let work = book.derived(&house, |before| Work::of(&house, before));
    work.house().get(id, kind)?;
    Ok(work)
}

/// A wall that a shell named, with what follows from its house.
pub(crate) fn wall(book: &Book, terms: &Terms<'_>, wall: &str) -> Result<(Arc<Work>, Arc<WallSite>)> {
    let id = terms.id("wall", wall)?;
    let work = of(book, id, Kind::Wall)?;
    let site = Arc::clone(work.wall(id)?);
    Ok((work, site))
}

/// A penetration that a shell named, with its wall and what follows from its house.
pub(crate) fn penetration(
    book: &Book,
    terms: &Terms<'_>,
    penetration: &str,
) -> Result<(Arc<Work>, Arc<WallSite>, Penetration)> {
    let id = terms.id("penetration", penetration)?;
    let work = of(book, id, Kind::Penetration)?;
    let record = work.house().get(id, Kind::Penetration)?;
    let wall = record.parent.ok_or(Missing::Unknown(Kind::Wall))?;
    let (site, found) = (Arc::clone(work.wall(wall)?), Penetration::of(&work, record)?);
    Ok((work, site, found))
}

/// The id of the house, as a shell names it; empty for what belongs to no house.
pub(crate) fn job_id(work: &Work) -> String {
    work.id().map(|job| job.to_string()).unwrap_or_default()
}
