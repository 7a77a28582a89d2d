//! Penetration: make it weathertight.

mod advice;
mod detail;

pub(in crate::screens) use detail::{lines as detail_lines, name as detail_name, title as detail_title};

use std::sync::Arc;

use crate::book::{Book, Field, Kind, Operation, OperationKind, Record};
use crate::drawing::letter;
use crate::flashing::{Pipe, WallLayers};
use crate::phrases::key;
use crate::steps::Step;
use crate::store::Id;
use crate::views::{PenetrationAction, PenetrationView, Place, StepSaid};
use crate::work::PenetrationSite;

use super::revision::penetration_revision;
use crate::forms::ask::{self, accept, keep_draft};
use crate::forms::context::Terms;
use crate::forms::error::Result;
use crate::forms::lookup;
use crate::forms::penetration::{block, hood, layers, patch, shed, step_sizes};
use crate::forms::signing::{DetailHashes, Signing, sign, step_lines};
use crate::forms::{cautions, photo, step_asks};
use crate::screens::result::ActionResult;

/// A penetration that a shell named.
fn site_of(book: &Book, terms: &Terms<'_>, penetration: &str) -> Result<PenetrationSite> {
    let (work, wall, penetration) = lookup::penetration(book, terms, penetration)?;
    Ok(PenetrationSite::new(work, wall, penetration))
}

/// The key of its name.
fn name_key(site: &PenetrationSite) -> String {
    format!("wall-kind-{}", site.penetration.kind.code())
}

pub(super) fn view(book: &Book, terms: &Terms<'_>, penetration: &str) -> Result<PenetrationView> {
    if let Some(name) = detail::DetailName::of(terms, penetration)? {
        return detail::view(book, terms, name);
    }
    let site = site_of(book, terms, penetration)?;
    let mut notes = Vec::new();
    let (patch, patch_ends) = patch::sizes(terms, &site, &mut notes)?;
    let (block, split) = block::sizes(terms, &site, &mut notes)?;
    let head = shed::head_sizes(terms, &site)?;
    notes.extend(hood::notes(terms, &site)?);
    notes.sort_by_key(|note| note.level);
    let wall_layers = site.wall_layers()?;
    let shedding =
        wall_layers.as_ref().and_then(|layers| shed::check(terms, layers, &|kind| shed::name(terms, &site, kind)));
    let steps = site.detail.steps();
    let lines = layers::lines(terms, &site)?;
    let mut steps_said = step_lines(book, terms, &signing(&site, "", &steps)?)?;
    for (line, step) in steps_said.iter_mut().zip(&steps) {
        line.sizes = step_sizes::of(&line.code, &patch, &block, &head);
        if line.code == "slope-out" {
            line.sizes.extend(step_sizes::slope(terms, site.work.rules())?);
        }
        layers::point_out(line, step, &lines);
    }
    let steps = steps_said;
    let questions = ask::questions(book, terms, &site.penetration.record)?;
    let mut view = PenetrationView {
        penetration: site.penetration.id().to_string(),
        wall: site.wall.id().to_string(),
        job: lookup::job_id(&site.work),
        name: terms.phrase(&name_key(&site), &[]),
        what: site.penetration.kind.code().to_owned(),
        asked: step_asks::begun(&steps).or_else(|| ask::asked(&questions)),
        questions,
        layers: lines,
        shedding,
        patch,
        patch_ends,
        block,
        split,
        head,
        notes,
        steps,
        revision: 0,
        advice: advice::of(terms, &site)?,
        sizes: Vec::new(),
        said: place_of(terms, &site),
    };
    view.revision = penetration_revision(terms.phrases, &view, wall_layers.map(|layers| (layers, site.pipe())));
    Ok(view)
}

/// Its letter on its wall, the wall, and which of the house's it is.
fn place_of(terms: &Terms<'_>, site: &PenetrationSite) -> String {
    let own = site.penetration.id();
    let walls = site.work.walls();
    let before: usize =
        walls.iter().take_while(|wall| wall.id() != site.wall.id()).map(|wall| wall.penetrations.len()).sum();
    let all: usize = walls.iter().map(|wall| wall.penetrations.len()).sum();
    let at = site.wall.penetrations.iter().position(|one| one.id() == own);
    let Some(at) = at else { return site.wall.name().to_owned() };
    let args = [
        ("letter", letter(at).into()),
        ("wall", site.wall.name().into()),
        ("nth", (before + at + 1).into()),
        ("all", all.into()),
    ];
    terms.phrase(key("penetration-said"), &args)
}

/// The layers of a penetration with their extents, and what goes through them, as a drawing shows them; `None` where
/// they cannot be told yet.
pub(super) fn wall_layers(book: &Book, terms: &Terms<'_>, penetration: &str) -> Result<Option<(WallLayers, Pipe)>> {
    if let Some(name) = detail::DetailName::of(terms, penetration)? {
        return detail::wall_layers(book, name).map(Some);
    }
    let site = site_of(book, terms, penetration)?;
    Ok(site.wall_layers()?.map(|layers| (layers, site.pipe())))
}

/// What the shedding check says once the layers were spoilt.
#[cfg(test)]
pub(super) fn spoilt(
    book: &Book,
    terms: &Terms<'_>,
    penetration: &str,
    spoil: impl FnOnce(&mut WallLayers),
) -> Result<crate::views::Shedding> {
    let site = site_of(book, terms, penetration)?;
    let mut layers = site.wall_layers()?.unwrap();
    spoil(&mut layers);
    Ok(shed::check(terms, &layers, &|kind| shed::name(terms, &site, kind)).unwrap())
}

pub(super) fn act(book: &mut Book, terms: &Terms<'_>, action: &PenetrationAction) -> Result<ActionResult> {
    if let Some(name) = detail::DetailName::of(terms, named(action))? {
        return detail::act(book, terms, name, action);
    }
    let here = |id: &str| Place::Penetration { penetration: id.to_owned() };
    let record = |book: &Book, id: &str| -> Result<Arc<Record>> {
        let id = terms.id("penetration", id)?;
        let work = lookup::of(book, id, Kind::Penetration)?;
        Ok(Arc::clone(work.house().get(id, Kind::Penetration)?))
    };
    match action {
        PenetrationAction::Answer { penetration, field, text } => {
            let site = site_of(book, terms, penetration)?;
            let record = &site.penetration.record;
            let group = match step_asks::said(book, terms, record.id(), &site.detail.steps(), field, text)? {
                Some((step, said)) => sign_step(book, terms, &site, step, &said)?,
                None => ask::answer(book, terms, record, field, text)?.group,
            };
            Ok(ActionResult::at(here(penetration), group))
        }
        PenetrationAction::KeepDraft { penetration, field, text } => {
            let site = site_of(book, terms, penetration)?;
            let record = &site.penetration.record;
            if !step_asks::keep(book, record.id(), &site.detail.steps(), field, text)? {
                keep_draft(book, terms, record, field, text)?;
            }
            Ok(ActionResult::without_answer(here(penetration)))
        }
        PenetrationAction::TakeSameAs { penetration, like } => {
            let (own, model) = (record(book, penetration)?, record(book, like)?);
            let same = SAME.into_iter().filter_map(|field| Some((field, model.written(field)?.value.clone())));
            let operation = Operation::new(OperationKind::PenetrationSame, own.made_in, []).set_all(own.id(), same);
            let outcome = accept(book, terms, operation, &[])?;
            Ok(ActionResult::at(here(penetration), outcome.group))
        }
        PenetrationAction::TakeAdvice { penetration } => {
            let site = site_of(book, terms, penetration)?;
            let group = advice::take(book, terms, &site)?;
            Ok(ActionResult::at(here(penetration), group))
        }
        PenetrationAction::SignStep { penetration, step, said } => {
            let site = site_of(book, terms, penetration)?;
            Ok(ActionResult::at(here(penetration), sign_step(book, terms, &site, step, said)?))
        }
        PenetrationAction::ReadCautions { penetration, step } => {
            let site = site_of(book, terms, penetration)?;
            cautions::keep_read_at(book, terms, site.work.id(), &site.detail.steps(), step)?;
            Ok(ActionResult::without_answer(here(penetration)))
        }
        PenetrationAction::BeginPhoto { penetration, step } => {
            let site = site_of(book, terms, penetration)?;
            photo::begin(book, terms, site.penetration.id(), &site.detail.steps(), step)?;
            Ok(ActionResult::without_answer(here(penetration)))
        }
        PenetrationAction::TakePhotoIn { penetration, step, closed } => {
            let record = record(book, penetration)?;
            photo::take_in(book, terms, record.id(), step, *closed)?;
            Ok(ActionResult::without_answer(here(penetration)))
        }
    }
}

/// What an action is about.
fn named(action: &PenetrationAction) -> &str {
    match action {
        PenetrationAction::Answer { penetration, .. }
        | PenetrationAction::KeepDraft { penetration, .. }
        | PenetrationAction::TakeSameAs { penetration, .. }
        | PenetrationAction::TakeAdvice { penetration }
        | PenetrationAction::SignStep { penetration, .. }
        | PenetrationAction::ReadCautions { penetration, .. }
        | PenetrationAction::BeginPhoto { penetration, .. }
        | PenetrationAction::TakePhotoIn { penetration, .. } => penetration,
    }
}

fn sign_step(book: &mut Book, terms: &Terms<'_>, site: &PenetrationSite, step: &str, said: &StepSaid) -> Result<Id> {
    let (about, steps) = (name_key(site), site.detail.steps());
    sign(book, terms, &signing(site, &about, &steps)?, step, said)
}

fn signing<'a>(site: &'a PenetrationSite, about: &'a str, steps: &'a [Step]) -> Result<Signing<'a>> {
    let detail = DetailHashes { hash: site.hash()?, earlier: vec![site.earlier_hash()?] };
    Ok(Signing { work: &site.work, subject: site.penetration.id(), about, steps, detail })
}

/// What one penetration has in common with the next: not its place.
const SAME: [Field; 8] = [
    Field::Mounting,
    Field::Finish,
    Field::BlockWidth,
    Field::BlockHeight,
    Field::BlockThickness,
    Field::HoleFromBottom,
    Field::Painted,
    Field::Height,
];
